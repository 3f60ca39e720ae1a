// Pieces that strain the layout: whatever comes in, the sheets stay sound.

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "pieces.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;

namespace {

std::string told(const std::vector<std::string>& faults) {
    std::string all;
    for (const std::string& fault : faults) all += fault + "\n";
    return all;
}

} // namespace

TEST_CASE("many distinct parts with impossible names and sizes are still laid out soundly") {
    for (const int parts : {1, 4, 17, 60})
        for (const char* sheet : {"A4", "A3", "Tabloid"}) DYNAMIC_SECTION(parts << " parts on " << sheet) {
                const BuiltPiece piece = hard_piece(parts, sheet);
                const auto faults = audit(drawing::draw({piece.model, piece.findings, piece.cut_list}, {}),
                                          piece.piece->manner);
                INFO(told(faults));
                CHECK(faults.empty());
            }
}

TEST_CASE("every part of a long list has its balloon and its cell") {
    const BuiltPiece piece = hard_piece(60, "A4");
    const drawing::Set set = drawing::draw({piece.model, piece.findings, piece.cut_list}, {});
    for (const cutlist::Row& row : piece.cut_list.rows) {
        int balloons = 0, cells = 0;
        const std::string reference = std::to_string(row.reference);
        for (const drawing::Sheet& sheet : set.sheets)
            for (const drawing::Item& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item)) {
                    if (sheet.title.starts_with("Pictorial") && text->words == reference) ++balloons;
                    if (sheet.title.starts_with("Part") && text->words.starts_with(reference + "  ")) ++cells;
                }
        INFO("row " << row.reference);
        CHECK(balloons >= 1);
        CHECK(cells == 1);
    }
}

TEST_CASE("a piece of which no part is left gives a cut list and a warnings page") {
    const BuiltPiece piece = no_parts();
    const drawing::Set set = drawing::draw({piece.model, piece.findings, piece.cut_list}, {});
    REQUIRE(set.sheets.size() >= 2);
    CHECK(set.sheets.back().title == "Warnings");
}
