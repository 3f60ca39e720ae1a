#pragma once
// One cut through what stands together: which parts move off which, and along which way.
//
// For each way and each part, all that must move with it is followed to the end (what it runs into, and what
// may not be parted yet); what is left stays. Of all such cuts that one is taken, backwards, which a maker
// would make last at the bench:
// - what is not joined to the rest (a drawer, a door, a lid) comes off before screws and dry joints are
// undone,
//   these before what is glued on face to face, and that before glued joints that are let in;
// - both halves hold together by themselves, so that no step asks for five hands;
// - a part that lies dry but for one glued edge comes out first (the bottom of a drawer);
// - of glued frames the one that closes along the greatest extent: a table's two ends are glued first, and
// the
//   long aprons between them last;
// - what stands later in the text;
// - along the way that opens the largest contact, upwards rather than to a side.
// These preferences are common practice, no published source.

#include <optional>

#include "assembly/ways.hpp"

namespace rayfleck::assembly {

struct Split {
    PartSet mover, base;
    Vector off; ///< unit: the way in which the mover comes off
    Class breaks = Class::nothing;
    std::vector<int> joints; ///< between the two
};

/// The best split of some parts that stand together; nothing when no straight way is free for any of them.
std::optional<Split> best_split(const Ways& ways, const PartSet& together);

/// The same parts, as far as bonds of any kind hold them together, counted.
std::size_t bodies(const Ways& ways, const PartSet& set);

/// Some that can be moved off the others, whichever is found first; nothing when no way is free.
std::optional<PartSet> some_that_come_off(const Ways& ways, const PartSet& together);

/// Joints between two sets.
std::vector<int> joints_between(const Ways& ways, const PartSet& a, const PartSet& b);

} // namespace rayfleck::assembly
