// A unit is left out, and what is left is taken apart as far as it goes. If a piece of more than one unit is
// left that does not come apart, the knot lies in it, and the search goes on there; if nothing is left for
// any unit, nothing more can be left out. Other knots may exist beside it; each is told when this one is
// untied.

#include "assembly/locks.hpp"

#include <algorithm>

#include "assembly/split.hpp"

namespace rayfleck::assembly {
namespace {

/// Single parts, and blocks as one.
std::vector<PartSet> units_of(const Ways& ways, const PartSet& set, const std::vector<PartSet>& blocks) {
    std::vector<PartSet> units;
    PartSet rest = set;
    // The last tied first: a block may hold an earlier one.
    for (auto block = blocks.rbegin(); block != blocks.rend(); ++block)
        if (block->within(rest)) {
            units.push_back(*block);
            rest -= *block;
        }
    for (int p = rest.first(); p >= 0; p = rest.next(p + 1)) {
        units.emplace_back(ways.parts());
        units.back().add(p);
    }
    return units;
}

/// A piece of several units that does not come apart; nothing when all of it does.
std::optional<PartSet> stuck_in(const Ways& ways, const PartSet& set, const std::vector<PartSet>& blocks) {
    std::vector<PartSet> pieces{set};
    while (!pieces.empty()) {
        PartSet piece = std::move(pieces.back());
        pieces.pop_back();
        if (piece.size() < 2) continue;
        if (const auto off = some_that_come_off(ways, piece)) {
            pieces.push_back(piece - *off);
            pieces.push_back(*off);
        } else if (units_of(ways, piece, blocks).size() > 1) {
            return piece;
        }
    }
    return std::nullopt;
}

} // namespace

PartSet knot_in(const Ways& ways, const PartSet& together, const std::vector<PartSet>& blocks,
                const PartSet& first_out) {
    PartSet knot = together;
    for (bool smaller = true; smaller;) {
        smaller = false;
        std::vector<PartSet> units = units_of(ways, knot, blocks);
        std::sort(units.begin(), units.end(), [&](const PartSet& a, const PartSet& b) {
            const bool p = a.within(first_out), q = b.within(first_out);
            return p != q ? p : a.first() < b.first();
        });
        for (const PartSet& unit : units)
            if (auto left = stuck_in(ways, knot - unit, blocks)) {
                knot = std::move(*left);
                smaller = true;
                break;
            }
    }
    return knot;
}

} // namespace rayfleck::assembly
