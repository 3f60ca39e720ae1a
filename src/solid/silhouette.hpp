#pragma once
// The outline of a solid as seen from one side.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::solid {

/// Rings in the picture plane, mm, even-odd; outer ones anticlockwise. Rings inside others are seen right
/// through. Empty for a solid of which nothing is left.
std::vector<std::vector<Point2>> silhouette(const Solid& solid, const View& view);

} // namespace rayfleck::solid
