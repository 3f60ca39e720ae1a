// Lines, places and widths of texts, held against what an editor shows for the same bytes.

#include <catch2/catch.hpp>

#include "source/text.hpp"

using namespace rayfleck::source;

TEST_CASE("a text is cut at LF, CR LF and lone CR") {
    const Text text("a.fleck", "one\ntwo\r\nthree\rfour");
    REQUIRE(text.line_count() == 4);
    CHECK(text.line(1) == "one");
    CHECK(text.line(2) == "two");
    CHECK(text.line(3) == "three");
    CHECK(text.line(4) == "four");
    CHECK(text.line_of(3) == 1);
    CHECK(text.line_of(4) == 2);
    CHECK(text.line_of(9) == 3);
}

TEST_CASE("an empty text has one empty line, a last line end opens one more") {
    CHECK(Text("a", "").line_count() == 1);
    CHECK(Text("a", "").line(1).empty());
    CHECK(Text("a", "x\n").line_count() == 2);
    CHECK(Text("a", "x\n").line(2).empty());
    CHECK(Text("a", "x\r\n").line(1) == "x");
}

TEST_CASE("a place counts what a person sees") {
    const Text text("a", "\xEF\xBB\xBFpart \"Bücher\" x\n\twood\n");
    CHECK(text.place(3).column == 1);
    CHECK(text.place(0).column == 1);
    // ü takes two bytes and one column: x is byte 3 + 15, column 15.
    CHECK(text.bytes()[18] == 'x');
    CHECK(text.place(18).column == 15);
    const std::size_t wood = text.bytes().find("wood");
    CHECK(text.place(wood).line == 2);
    CHECK(text.place(wood).column == 9);
    CHECK(text.place(100000).line == 3);
}

TEST_CASE("display width of tabs, marks, wide characters and broken bytes") {
    CHECK(display_width("abc") == 3);
    CHECK(display_width("\t") == 8);
    CHECK(display_width("abc\tx") == 9);
    CHECK(display_width("\t", 3) == 5);
    CHECK(display_width("e\xCC\x81") == 1);        // e and combining acute
    CHECK(display_width("\xE6\x9C\xA8") == 2);     // the character for tree
    CHECK(display_width("\xF0\x9F\xAA\x91") == 2); // chair
    CHECK(display_width("\xC2\xBD") == 1);         // one half
    CHECK(display_width("\xFF\xFE") == 2);
    CHECK(display_width("\xE2\x82") == 2);
}

TEST_CASE("texts keep their numbers and spans join") {
    Texts texts;
    CHECK(texts.add(Text("a", "1")) == 0);
    CHECK(texts.add(Text("b", "2")) == 1);
    CHECK(texts[1].name() == "b");
    CHECK(join(Span{1, 4, 6}, Span{1, 1, 5}) == Span{1, 1, 6});
}
