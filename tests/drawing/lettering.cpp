// Words that must fit.

#include <catch2/catch.hpp>

#include "drawing/lettering.hpp"

using namespace rayfleck::drawing;

TEST_CASE("wrapped lines are never wider than asked") {
    const std::string words =
        "a rail between two legs, with anunbreakablewordthatislongerthanthelineitself and ½ an é";
    for (const double width : {8.0, 20.0, 55.0})
        for (const std::string& line : wrapped(words, width, 2.5, Typeface::sans)) {
            INFO(line);
            CHECK(text_width(line, 2.5, Typeface::sans) <= width + 1e-9);
        }
}

TEST_CASE("wrapping loses no letter") {
    const std::string words = "one two  three\nfour abcdefghijklmnopqrstuvwxyz";
    std::string kept;
    for (const std::string& line : wrapped(words, 14, 2.5, Typeface::sans)) kept += line;
    std::string letters;
    for (const char c : words)
        if (c != ' ' && c != '\n') letters += c;
    std::erase(kept, ' ');
    CHECK(kept == letters);
}

TEST_CASE("words that do not fit end in an ellipsis") {
    const std::string cut = cut_to("a title far too long for its field", 20, 3.5, Typeface::lettering);
    CHECK(cut.ends_with("…"));
    CHECK(text_width(cut, 3.5, Typeface::lettering) <= 20);
    CHECK(cut_to("short", 40, 2.5, Typeface::sans) == "short");
}

TEST_CASE("a field takes the largest height that fits") {
    CHECK(fitted("ab", 40, {5, 3.5, 2.5}, Typeface::sans).height == 5);
    CHECK(fitted("a rather long entry here", 40, {5, 3.5, 2.5}, Typeface::sans).height == 2.5);
}
