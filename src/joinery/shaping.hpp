#pragma once
// Cuts to shapes: what the solids' room takes away from a blank for each cut of a part.

#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// The blank of a part as a closed shape: a box, its outline drawn out, or its turned profile; with what
/// joints leave standing beyond the body.
solid::Shape blank_shape(const Bench& bench, int part_id);

/// Waste of one cut. Shaping cuts stop at the body's ends where joints have made the blank longer: a taper
/// does not cut off a tenon, and a slanting end trim goes round it.
std::vector<solid::Shape> tools_of(const Bench& bench, int part_id, const piece::Cut& cut);

} // namespace rayfleck::joinery
