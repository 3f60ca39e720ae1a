#pragma once
// Waste beyond a plane: the pieces that a saw takes off round whatever must stay.
//
// All wood beyond a plane, between two levels of one of the part's axes, is a prism whose axis lies both in
// the plane and in the levels. Shoulders of a rail that meets a splayed leg, tapers that stop at a body's
// end, and trims that leave a tenon are made of such prisms, so they stay exact at any angle.

#include <limits>
#include <optional>
#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

using CutShape = decltype(piece::Cut::shape);

inline constexpr double unlimited = std::numeric_limits<double>::infinity();

/// Wood of `around` beyond the plane, with the axis' coordinate between low and high.
/// gives  nothing when that is empty
std::optional<CutShape> beyond(const Plane& plane, int axis, double low, double high, const Box& around);

/// Wood of `around` beyond the plane, save the tongues (boxes; their coordinates along `axis` do not matter).
std::vector<CutShape> beyond_except(const Plane& plane, int axis, const std::vector<Box>& tongues,
                                    const Box& around);

/// Cuts the shoulders of all that stands beyond the part's body.
void cut_shoulders(Bench& bench, int part_id);

/// Box cuts of joints end with the blank, so that their sizes are those of the wood that is taken; what lies
/// wholly outside is dropped.
void end_cuts_with_blank(Bench& bench, int part_id);

/// The part's blank in its own frame: the body and what has been grown.
Box blank_of(const Bench& bench, int part_id);

} // namespace rayfleck::joinery
