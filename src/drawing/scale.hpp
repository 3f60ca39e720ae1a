#pragma once
// Scales that a drawing may have, and how they are written.
//
// Millimetre drawings take the recommended scales of ISO 5455; inch drawings the customary list of so many
// inches to the foot. A scale between two of the list is never used: a maker reads sizes off with a scale
// rule.

#include <string>
#include <vector>

#include "measure/length.hpp"

namespace rayfleck::drawing {

struct Scale {
    double factor = 1; ///< mm of paper per mm of wood
    std::string words; ///< `1:5`, `3" = 1'-0" (1:4)`
    std::string ratio; ///< `1:5`, always the plain ratio
};

/// Largest first.
const std::vector<Scale>& scales(measure::Unit unit);

} // namespace rayfleck::drawing
