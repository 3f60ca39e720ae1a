// Whole sets of sheets, held against the audit, and the promises of the set: order, numbering, links, same
// bytes.

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "pieces.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;

namespace {

drawing::Set drawn(const BuiltPiece& built, const std::string& sheet = "") {
    drawing::Wishes wishes;
    wishes.sheet = sheet;
    wishes.date = "2026-02-01";
    return drawing::draw({built.model, built.findings, built.cut_list}, wishes);
}

std::string told(const std::vector<std::string>& faults) {
    std::string all;
    for (const std::string& fault : faults) all += fault + "\n";
    return all;
}

BuiltPiece built(const std::string& name) {
    if (name == "side table") return side_table();
    if (name == "wall shelf") return wall_shelf();
    if (name == "one board") return one_board();
    if (name == "slatted rack") return slatted_rack();
    return odd_shapes();
}

std::vector<std::string> words_on(const drawing::Sheet& sheet) {
    std::vector<std::string> words;
    for (const drawing::Item& item : sheet.items)
        if (const auto* text = std::get_if<drawing::Text>(&item)) words.push_back(text->words);
    return words;
}

/// Wrapped lines count as one text.
bool says(const drawing::Sheet& sheet, const std::string& part) {
    std::string all;
    for (const std::string& words : words_on(sheet)) all += words + " ";
    return all.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("a hand-built piece passes the audit on every size of sheet") {
    for (const char* name : {"side table", "wall shelf", "one board", "slatted rack", "odd shapes"})
        for (const char* sheet : {"A4", "A3", "A2", "Letter", "Tabloid"})
            DYNAMIC_SECTION(name << " on " << sheet) {
                const BuiltPiece piece = built(name);
                const auto faults = audit(drawn(piece, sheet), piece.piece->manner);
                INFO(told(faults));
                CHECK(faults.empty());
            }
}

TEST_CASE("every sample passes the audit on its own sheet and on A4") {
    for (const std::string& file : sample_files()) DYNAMIC_SECTION(file) {
            const auto sample = studied_sample(file);
            REQUIRE(sample);
            for (const char* sheet : {"", "A4"}) {
                drawing::Wishes wishes;
                wishes.sheet = sheet;
                wishes.texts = &sample->texts;
                const auto faults = audit(drawing::draw({sample->model, sample->findings, sample->cut_list,
                                                         nullptr, &sample->lumber},
                                                        wishes),
                                          sample->piece.manner);
                INFO("sheet " << sheet << "\n" << told(faults));
                CHECK(faults.empty());
            }
        }
}

TEST_CASE("the sheets come in the order in which a builder reads them") {
    const drawing::Set set = drawn(side_table());
    REQUIRE(set.sheets.size() >= 6);
    CHECK(set.sheets.front().title == "Assembly");
    std::vector<std::string> kinds;
    for (const drawing::Sheet& sheet : set.sheets) {
        const std::string kind = sheet.title.substr(0, 4);
        if (kinds.empty() || kinds.back() != kind) kinds.push_back(kind);
    }
    const auto place = [&](const char* kind) { return std::find(kinds.begin(), kinds.end(), kind); };
    CHECK(place("Sect") < place("Join"));
    CHECK(place("Sect") < place("Expl"));
    CHECK(place("Expl") < place("Join"));
    CHECK(place("Join") < place("Part"));
    CHECK(place("Part") < place("Cut "));
    CHECK(std::count(kinds.begin(), kinds.end(), "Part") == 1);
    CHECK(set.sheets[set.sheets.size() - 3].title == "Assembly steps");
    CHECK(set.sheets[set.sheets.size() - 2].title == "Through the year");
    CHECK(set.sheets.back().title == "Warnings");
}

TEST_CASE("balloons and the parts list carry the numbers of the cut list") {
    const BuiltPiece piece = side_table();
    const drawing::Set set = drawn(piece);
    const auto words = words_on(set.sheets.front());
    for (const cutlist::Row& row : piece.cut_list.rows) {
        // Once in its balloon, once in the list.
        INFO(row.name);
        CHECK(std::count(words.begin(), words.end(), std::to_string(row.reference)) >= 2);
    }
}

TEST_CASE("links lead to sheets of the set") {
    const drawing::Set set = drawn(slatted_rack());
    int links = 0;
    for (const drawing::Sheet& sheet : set.sheets)
        for (const drawing::Item& item : sheet.items)
            if (const auto* link = std::get_if<drawing::Link>(&item)) {
                ++links;
                CHECK(link->to_sheet >= 0);
                CHECK(link->to_sheet < static_cast<int>(set.sheets.size()));
            }
    CHECK(links > 0);
}

TEST_CASE("a finding leads to the drawing of the part it blames") {
    const BuiltPiece piece = side_table();
    const drawing::Set set = drawn(piece);
    const auto blaming = static_cast<std::size_t>(
        std::count_if(piece.findings.begin(), piece.findings.end(),
                      [](const findings::Finding& finding) { return !finding.parts.empty(); }));
    REQUIRE(blaming > 0);
    std::size_t links = 0;
    for (const drawing::Item& item : set.sheets.back().items)
        if (const auto* link = std::get_if<drawing::Link>(&item)) {
            ++links;
            CHECK(set.sheets[static_cast<std::size_t>(link->to_sheet)].title.starts_with("Part"));
        }
    CHECK(links == blaming);
}

TEST_CASE("a piece without findings says so and still carries the cautions") {
    const drawing::Set set = drawn(one_board());
    CHECK(says(set.sheets.back(), "No check found anything"));
    CHECK(says(set.sheets.back(), "no engineering approval"));
}

TEST_CASE("findings are all listed and the accepted ones come last with their reason") {
    const drawing::Set set = drawn(side_table());
    const auto words = words_on(set.sheets.back());
    const auto at = [&](const std::string& w) {
        return std::find(words.begin(), words.end(), w) - words.begin();
    };
    const auto size = static_cast<std::ptrdiff_t>(words.size());
    REQUIRE(at("FAULT") < size);
    REQUIRE(at("CAUTION") < size);
    REQUIRE(at("ACCEPTED") < size);
    CHECK(at("FAULT") < at("CAUTION"));
    CHECK(at("CAUTION") < at("ACCEPTED"));
    CHECK(says(set.sheets.back(), "have rested for a year"));
}

TEST_CASE("the same piece gives the same sheets") {
    const drawing::Set a = drawn(odd_shapes()), b = drawn(odd_shapes());
    REQUIRE(a.sheets.size() == b.sheets.size());
    for (std::size_t i = 0; i < a.sheets.size(); ++i) {
        REQUIRE(a.sheets[i].items.size() == b.sheets[i].items.size());
        for (std::size_t k = 0; k < a.sheets[i].items.size(); ++k) {
            const auto *s = std::get_if<drawing::Stroke>(&a.sheets[i].items[k]),
                       *t = std::get_if<drawing::Stroke>(&b.sheets[i].items[k]);
            REQUIRE((s == nullptr) == (t == nullptr));
            if (!s) continue;
            REQUIRE(s->points.size() == t->points.size());
            for (std::size_t p = 0; p < s->points.size(); ++p) {
                REQUIRE(s->points[p].x == t->points[p].x);
                REQUIRE(s->points[p].y == t->points[p].y);
            }
        }
    }
}

TEST_CASE("front and plan of the assembly share their left and right borders") {
    // Hand calculation: the table's top is 540 wide and 420 deep, the whole 620 high.
    const drawing::Set set = drawn(side_table());
    double overall = 0;
    std::set<double> spans;
    for (const drawing::DimensionRecord& r : set.sheets.front().dimensions)
        if (r.part.empty() && r.axis == 'X') overall = std::max(overall, r.to - r.from);
    CHECK(overall == Approx(540));
    for (const auto& [axis, size] : {std::pair{'Y', 420.0}, {'Z', 620.0}}) {
        double most = 0;
        for (const drawing::DimensionRecord& r : set.sheets.front().dimensions)
            if (r.part.empty() && r.axis == axis) most = std::max(most, r.to - r.from);
        CHECK(most == Approx(size));
    }
}
