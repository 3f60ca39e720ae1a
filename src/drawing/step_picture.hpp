#pragma once
// The small picture of an assembly step: what stands in thin lines, what is added in wide ones.

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Isometric, at most width × height mm, lower left corner at (0, 0): the parts added stand off along their
/// way in, an arrow shows it, balloons give the numbers of the parts added and of those they are joined to.
Block step_picture(const Job& job, const assembly::Step& step, double width, double height);

} // namespace rayfleck::drawing
