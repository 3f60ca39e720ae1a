// What findings look like, in which order they come, and which word a slip of the finger meant.

#include <catch2/catch.hpp>

#include "findings/finding.hpp"
#include "findings/show.hpp"

using namespace rayfleck;
using namespace rayfleck::findings;

namespace {

Finding finding(std::string name, Severity severity, std::size_t begin, std::size_t end) {
    Finding f;
    f.name = std::move(name);
    f.severity = severity;
    f.span = {0, begin, end};
    f.message = "fibres run 20 mm through a limb 30 mm wide";
    return f;
}

} // namespace

TEST_CASE("findings come in the order of the text, the worst first, equal ones once") {
    Findings list;
    list.add(finding("b", Severity::note, 5, 6));
    list.add(finding("a", Severity::fault, 5, 6));
    list.add(finding("c", Severity::caution, 1, 2));
    list.add(finding("a", Severity::fault, 5, 6));
    list.sort();
    REQUIRE(list.size() == 3);
    std::string order;
    for (const Finding& f : list) order += f.name;
    CHECK(order == "cab");
    CHECK(list.any(Severity::fault));
    CHECK_FALSE(list.any(Severity::error));
}

TEST_CASE("an accepted finding stays listed and no longer counts") {
    Findings list;
    list.add(finding("a", Severity::fault, 5, 6)).accepted_because = "it is a plaque";
    CHECK(list.size() == 1);
    CHECK_FALSE(list.any(Severity::note));
}

TEST_CASE("a finding is shown with its line, marker, second place, limit and remedy") {
    source::Texts texts;
    texts.add(source::Text("chair.fleck", "part crest\n\toutline ear # here\n"));
    Finding f = finding("short-grain", Severity::caution, 19, 22);
    f.limit = "45 mm, common practice, no published source";
    f.mend = "turn the outline with the grain";
    f.labels.push_back({{0, 0, 10}, "of this part"});
    CHECK(show(f, texts, {}) ==
          "chair.fleck:2:16: caution: fibres run 20 mm through a limb 30 mm wide [short-grain]\n"
          "  2 |         outline ear # here\n"
          "    |                ^^^\n"
          "    > chair.fleck:1:1\n"
          "  1 | part crest\n"
          "    | ^^^^^^^^^^ of this part\n"
          "    = limit: 45 mm, common practice, no published source\n"
          "    = mend: turn the outline with the grain\n");
    CHECK(show(f, texts, {.colour = false, .brief = true}) ==
          "chair.fleck:2:16: caution: fibres run 20 mm through a limb 30 mm wide [short-grain]\n");
    CHECK(show(f, texts, {.colour = true, .brief = true}).find("\x1b[1;33mcaution:\x1b[0m") !=
          std::string::npos);
}

TEST_CASE("the marker stands under its words behind tabs, marks and wide characters") {
    source::Texts texts;
    // Two columns for each of the three characters, one for e with its accent, then a tab to column 16.
    const std::string line = "part \xE6\x9C\xA8\xE3\x81\xAE\xE6\xA3\x9A e\xCC\x81\tHERE \xE6\x9C\xA8";
    texts.add(source::Text("a.fleck", line));
    const auto marker = [&](const std::string& word) {
        const std::size_t begin = line.find(word);
        const std::string shown = show(finding("a", Severity::error, begin, begin + word.size()), texts, {});
        const std::size_t row = shown.find("    |");
        return shown.substr(row + 6, shown.find('\n', row) - row - 6);
    };
    CHECK(marker("HERE") == std::string(16, ' ') + "^^^^");
    CHECK(marker("\xE3\x81\xAE") == std::string(7, ' ') + "^^");
    CHECK(marker("e\xCC\x81") == std::string(12, ' ') + "^");
    CHECK(texts[0].place(line.find("HERE")).column == 17);
}

TEST_CASE("a marker of several lines ends with its first, one of nothing has one sign") {
    source::Texts texts;
    texts.add(source::Text("a.fleck", "part leg\n  stands\n"));
    const std::string across = show(finding("a", Severity::error, 5, 17), texts, {});
    CHECK(across.find("    |      ^^^\n") != std::string::npos);
    const std::string nothing = show(finding("a", Severity::error, 8, 8), texts, {});
    CHECK(nothing.find("    |         ^\n") != std::string::npos);
    CHECK(nothing.find("a.fleck:1:9: error") == 0);
}

TEST_CASE("a text from elsewhere cannot steer the terminal") {
    source::Texts texts;
    texts.add(source::Text("a.fleck", std::string("x \x1b[2J\x00y\xC2\x9Bz", 10)));
    const std::string shown = show(finding("a", Severity::error, 0, 1), texts, {});
    CHECK(shown.find('\x1b') == std::string::npos);
    CHECK(shown.find("\xC2\x9B") == std::string::npos);
    CHECK(shown.find('\0') == std::string::npos);
}

TEST_CASE("of a long line the stretch around the marker is shown") {
    source::Texts texts;
    const std::string line = std::string(2000, 'a') + "HERE" + std::string(2000, 'b');
    texts.add(source::Text("a.fleck", line));
    const std::string shown = show(finding("a", Severity::error, 2000, 2004), texts, {});
    CHECK(shown.size() < 600);
    const auto at = shown.find("HERE");
    REQUIRE(at != std::string::npos);
    const auto row = shown.rfind('\n', at);
    const auto mark = shown.find("^^^^");
    REQUIRE(mark != std::string::npos);
    CHECK(mark - shown.rfind('\n', mark) == at - row);
}

TEST_CASE("a finding without a place in any text is shown without one") {
    source::Texts texts;
    CHECK(show(finding("a", Severity::error, 0, 0), texts, {}) ==
          "error: fibres run 20 mm through a limb 30 mm wide [a]\n");
}

TEST_CASE("near words") {
    const std::vector<std::string> known{"across", "deep", "up", "part", "taper", "rod", "row"};
    CHECK(near_word("acros", known) == "across");
    CHECK(near_word("arcoss", known) == "across");
    CHECK(near_word("prat", known) == "part");
    CHECK(near_word("PART", known) == "part");
    CHECK(near_word("tapper", known) == "taper");
    CHECK(near_word("peice", {"price", "piece"}) == "piece"); // equally near, but of the same letters
    CHECK(near_word("peice", {"piece", "price"}) == "piece");
    CHECK_FALSE(near_word("stae", {"stab", "stag", "stay"}));
    CHECK(near_word("länge", {"lange", "across"}) == "lange"); // two bytes away, of six
    CHECK_FALSE(near_word("ro", known));                  // too short to tell
    CHECK_FALSE(near_word("rob", {"rod", "row", "rot"})); // three equally near
    CHECK_FALSE(near_word("chamfer", known));
    CHECK_FALSE(near_word("", known));
    CHECK_FALSE(near_word(std::string(100000, 'a'), known));
}
