#pragma once
// How big a piece has to be sawn before it is jointed, planed and cut to its finished size.
//
// Rough size = finished blank + the shop's allowances. Hardwood bought by the quarter (`8/4`) is as thick as
// it is called; dressed lumber is used at its dressed thickness and width; a sheet is cut to size by the saw
// that leaves its finished edge, so it has no allowance. A glued-up part needs the allowance of its width
// once for every stave, a laminated one that of its thickness once for every layer. Left out: the trim at the
// ends of a board, which belongs to the board and not to the part, and kerfs, which belong to the lumber
// plan.

#include "joinery/model.hpp"

namespace rayfleck::cutlist {

struct RoughSize {
    measure::Length thickness, width, length;
};

RoughSize rough_size(const joinery::Made& made, const piece::Shop& shop);

/// Staves or layers of a glued-up part, at least 1.
int pieces_glued(const joinery::Made& made);

/// Board feet of one rough blank, not rounded as a yard would.
double board_feet(const RoughSize& size);

} // namespace rayfleck::cutlist
