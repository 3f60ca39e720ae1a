// See bench.hpp. The line is on the side of the stop or fence; the blade and its kerf lie beyond it. What is
// cut off in front of the line is named when it is a finished blank or an offcut; otherwise the names of all
// blanks in it are told, so that the maker can write them on the piece.

#include "lumber/bench.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace rayfleck::lumber {
namespace {

using measure::Rational;

std::string label(const Placement& placement) {
    return fmt::format("{} {} {}", placement.reference, placement.name, placement.instance);
}

/// What lies in a rectangle of the board, in words; empty: nothing but waste.
std::string held(const Board& board, Length x, Length y, Length length, Length width) {
    std::vector<std::string> labels;
    bool whole = false;
    for (const Placement& p : board.placements) {
        if (p.x < x || p.y < y || p.x + p.along > x + length || p.y + p.across > y + width) continue;
        labels.push_back(label(p));
        whole = p.along == length && p.across == width;
    }
    if (labels.empty()) return "";
    constexpr std::size_t told_at_most = 3;
    if (labels.size() == 1) return (whole ? "this is " : "holds ") + labels.front();
    if (labels.size() <= told_at_most) return fmt::format("holds {}", fmt::join(labels, ", "));
    return fmt::format("holds {} and {} more", labels.front(), labels.size() - 1);
}

Cut trim_cut(const Board& board, int number, bool left, Length kerf, Length trim,
             const measure::Manner& manner) {
    Cut cut;
    cut.number = number;
    cut.end_trim = true;
    cut.kerf = kerf;
    cut.piece_x = left ? Length() : trim;
    cut.piece_length = board.length - cut.piece_x;
    cut.piece_width = board.width;
    cut.at = left ? std::max(Length(), trim - kerf) : board.length - trim;
    cut.fence = cut.at - cut.piece_x;
    cut.words = fmt::format("square the {} end: {} off with the kerf", left ? "left" : "right",
                            measure::text_with_unit(trim, manner));
    return cut;
}

} // namespace

void tell_cuts(Board& board, const cutting::Board& from, Length kerf_rip, Length kerf_crosscut, Length trim,
               const piece::Shop& shop, const measure::Manner& manner) {
    int number = 0;
    if (trim > Length()) {
        board.cuts.push_back(trim_cut(board, ++number, true, kerf_crosscut, trim, manner));
        board.cuts.push_back(trim_cut(board, ++number, false, kerf_crosscut, trim, manner));
    }
    for (const cutting::Cut& one : from.cuts) {
        Cut cut;
        cut.number = ++number;
        const bool rip = one.direction == cutting::Cut::Direction::rip;
        cut.direction = rip ? Cut::Direction::rip : Cut::Direction::crosscut;
        cut.kerf = rip ? kerf_rip : kerf_crosscut;
        cut.piece_x = from_tenths(one.piece.x) + trim;
        cut.piece_y = from_tenths(one.piece.y);
        cut.piece_length = from_tenths(one.piece.length);
        cut.piece_width = from_tenths(one.piece.width);
        cut.at = rip ? from_tenths(one.at) : from_tenths(one.at) + trim;
        cut.fence = cut.at - (rip ? cut.piece_y : cut.piece_x);
        const std::string near = rip ? held(board, cut.piece_x, cut.piece_y, cut.piece_length, cut.fence)
                                     : held(board, cut.piece_x, cut.piece_y, cut.fence, cut.piece_width);
        cut.words = fmt::format("{} at {} from the {}, blade beyond the line; {}", rip ? "rip" : "crosscut",
                                measure::text_with_unit(cut.fence, manner), rip ? "lower edge" : "left end",
                                near.empty() ? "what comes off is left over" : near);
        board.cuts.push_back(std::move(cut));
    }
    for (const cutting::Rectangle& rest : from.leftovers) {
        Offcut offcut{from_tenths(rest.x) + trim, from_tenths(rest.y), from_tenths(rest.length),
                      from_tenths(rest.width)};
        const auto large_enough = [&](Length length, Length width) {
            return length >= shop.keep_length && width >= shop.keep_width;
        };
        offcut.worth_keeping = large_enough(offcut.length, offcut.width) ||
                               (board.sheet && large_enough(offcut.width, offcut.length));
        board.offcuts.push_back(offcut);
    }
}

void tell_flaws(Board& board, const piece::Shop::Board& told) {
    const auto add = [&](const std::string& kind, bool round, Length x, Length y, Length length,
                         Length width) {
        if (length > Length() && width > Length()) board.flaws.push_back({kind, round, x, y, length, width});
    };
    add("sapwood", false, Length(), Length(), told.length, told.sapwood_front);
    add("sapwood", false, Length(), told.width - told.sapwood_back, told.length, told.sapwood_back);
    add("checks", false, Length(), Length(), told.checks_left, told.width);
    add("checks", false, told.length - told.checks_right, Length(), told.checks_right, told.width);
    for (const piece::Shop::Board::Flaw& flaw : told.flaws)
        add(flaw.kind, flaw.round, flaw.along, flaw.across, flaw.length, flaw.width);
    if (board.flaws.empty()) return;
    std::vector<std::string> kinds;
    for (const Flaw& flaw : board.flaws)
        if (std::find(kinds.begin(), kinds.end(), flaw.kind) == kinds.end()) kinds.push_back(flaw.kind);
    board.remarks.push_back(fmt::format(
        "grey outlines: {}; as it lies, better face up, lower edge to the front", fmt::join(kinds, ", ")));
}

} // namespace rayfleck::lumber
