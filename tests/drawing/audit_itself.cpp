// The audit held against sheets spoilt on purpose: a check that never speaks proves nothing. Also what the
// lettering calls a fraction of an inch.

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "drawing/text_metrics.hpp"
#include "pieces.hpp"

using namespace rayfleck;
using namespace rayfleck::drawing;

namespace {

bool reported(const Item& spoilt, const std::string& words) {
    const testing::BuiltPiece board = testing::one_board();
    Set set = draw({board.model, board.findings, board.cut_list}, {});
    set.sheets.front().items.push_back(spoilt);
    for (const std::string& fault : testing::audit(set, board.piece->manner))
        if (fault.find(words) != std::string::npos) return true;
    return false;
}

Text words_at(double x, double y, const std::string& words, double height = 2.5) {
    return {{x, y}, words, height, Typeface::sans, Ink::black, 0};
}

} // namespace

TEST_CASE("the audit speaks of every fault planted on a sheet") {
    CHECK(reported(words_at(5, 100, "in the margin"), "outside the frame"));
    CHECK(reported(words_at(100, 60, "small", 2), "2.00 mm high"));
    CHECK(reported(words_at(100, 60, "R5 TYP"), "TYP"));
    CHECK(reported(Stroke{{{100, 60}, {120, 60}}, Pen::thin, Ink::black, Role::edge}, "neither wide"));
    CHECK(reported(Stroke{{{100, 60}, {120, 60}}, Pen::visible, Ink::black, Role::dimension}, "not narrow"));
    CHECK(reported(Stroke{{{5, 60}, {120, 60}}, Pen::thin, Ink::black, Role::table}, "outside the frame"));
    // Through the label of the title block's lowest row.
    CHECK(reported(Stroke{{{20, 10}, {200, 55}}, Pen::thin, Ink::black, Role::table}, "crosses the text"));
}

TEST_CASE("inch fractions are built and other strokes between numbers are not") {
    const auto bars = [](const std::string& words) {
        std::size_t count = 0;
        for (const TextPiece& piece : measure_text(words, 2.5, Typeface::lettering).pieces)
            count += piece.bars.size();
        return count;
    };
    CHECK(bars("17-5/8") == 1);
    CHECK(bars("3/4 × 1-1/2") == 2);
    CHECK(bars("8/4") == 0);
    CHECK(bars("1/3") == 0);
    CHECK(text_width("17-5/8", 2.5, Typeface::lettering) < text_width("17-5/8", 2.5, Typeface::sans));
}
