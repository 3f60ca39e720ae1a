#pragma once
// The small picture beside a finding: the part most to blame, where on it, and how its fibres run.

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Isometric, from the corner that shows it best, of the first part that the finding names, others it names
/// in thin lines, a ring round the place, fibres on the broadest face seen; the line along which it breaks,
/// and arrows for what moves, with their figures below. At most width × height mm, lower left
/// corner at (0, 0); empty when no part is named.
Block finding_picture(const Job& job, const findings::Finding& finding, double width, double height,
                      Ink mark);

} // namespace rayfleck::drawing
