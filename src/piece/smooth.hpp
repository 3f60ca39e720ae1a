#pragma once
// A smooth curve through points, as short straight lines; inside this room only.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::piece {

/// Chords of a smooth curve lie within this of it, mm. Finer than any bench work, coarse enough to draw.
constexpr double chord_error = 0.01;

/// The curve through the points, in their order (centripetal Catmull-Rom: passes through each, no loops
/// between them); at its ends it leaves along the parabola through the first and last three. Two points give
/// the straight line. gives  all points after the first, the given ones among them
std::vector<solid::Point2> smooth_through(const std::vector<solid::Point2>& points);

/// The outline walked the other way round.
solid::Outline reversed(const solid::Outline& outline);

} // namespace rayfleck::piece
