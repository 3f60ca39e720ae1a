#pragma once
// Where on a part a leader may end: points of its faces that nothing stands before.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::drawing {

/// Points of a part that are seen in a view, in mm of wood in the picture plane; those in the middle of faces
/// first.
std::vector<solid::Point2> seen_points(const std::vector<solid::Placed>& parts, int part,
                                       const solid::View& view);

} // namespace rayfleck::drawing
