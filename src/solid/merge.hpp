#pragma once
// Lines of a picture that fall on each other, drawn once.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::solid {

/// One line for every stretch: visible before hidden, then the lowest part. Sorted by part, then place.
std::vector<Line2> merged(const std::vector<Line2>& lines);

} // namespace rayfleck::solid
