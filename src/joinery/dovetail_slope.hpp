#pragma once
// The slope of dovetails, for those at corners and those that slide.

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// Rise of the tail's side for one unit along the grain; noted among the joint's sizes. As stated, else the
/// custom for A's wood: 1 in 6 in softwood, 1 in 8 in all other.
double dovetail_slope(const Bench& bench, int joint, const Pair& pair, const Options& options);

} // namespace rayfleck::joinery
