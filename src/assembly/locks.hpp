#pragma once
// Locks: the smallest sets of parts that bar one another.

#include "assembly/ways.hpp"

namespace rayfleck::assembly {

/// Of parts for none of which a straight way is free, a smallest set of which that is still true: without any
/// one of its parts the others come apart. Parts that are tied into one of the blocks count as one part.
/// first_out  of several such sets one without these parts is wanted
PartSet knot_in(const Ways& ways, const PartSet& together, const std::vector<PartSet>& blocks,
                const PartSet& first_out);

} // namespace rayfleck::assembly
