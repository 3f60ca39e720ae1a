// Parts are left out one by one as long as the rest stays locked. What is left is smallest in the sense that
// nothing more can be left out; other knots may exist beside it, and each is told when this one is untied.

#include "assembly/locks.hpp"

#include <algorithm>

#include "assembly/split.hpp"

namespace rayfleck::assembly {

PartSet knot_in(const Ways& ways, const PartSet& together, const std::vector<PartSet>& blocks,
                const PartSet& first_out) {
    std::vector<PartSet> units;
    PartSet rest = together;
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
    std::sort(units.begin(), units.end(), [&](const PartSet& a, const PartSet& b) {
        const bool p = a.within(first_out), q = b.within(first_out);
        return p != q ? p : a.first() < b.first();
    });
    PartSet knot = together;
    std::size_t left = units.size();
    for (const PartSet& unit : units) {
        PartSet without = knot - unit;
        if (left > 2 && !comes_apart(ways, without)) {
            knot = std::move(without);
            --left;
        }
    }
    return knot;
}

} // namespace rayfleck::assembly
