#pragma once
// Sheets and pictures of pieces that are planned together: one cut list after the other and what they add up
// to, the lumber plan of all, the work at the machines, labels; and each board as a picture of its own.

#include <vector>

#include "drawing/draw.hpp"
#include "drawing/sheet.hpp"
#include "lumber/lumber.hpp"

namespace rayfleck::drawing {

/// pieces  at least one, as they were planned; the first tells the paper, the title block and the units
Set draw_lot(const std::vector<lumber::Source>& pieces, const lumber::Plan& plan, const Wishes& wishes);

/// One sheet as large as needs be for each board in use, in the order of the plan.
std::vector<Sheet> board_pictures(const std::vector<lumber::Source>& pieces, const lumber::Plan& plan,
                                  const Wishes& wishes);

} // namespace rayfleck::drawing
