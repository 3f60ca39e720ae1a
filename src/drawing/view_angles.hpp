#pragma once
// Angles at which parts stand askew in a principal view: splay, rake, cant, the slope of a brace.
//
// Each kind of part that leans in a view gets one angle there, measured from the upright or the level,
// whichever is nearer, between that line and a seen edge along the part. Of the edges, their ends and a few
// radii the first is taken at which nothing is crossed and the figure stands free. Left out: tapers and sawn
// ends, which the part's own drawing tells, and angles under a fifth of a degree, which no eye sees.

#include "drawing/seen_piece.hpp"

namespace rayfleck::drawing {

/// Draws them into the block of the view, the lower left corner of its wood at (0, 0).
void draw_angles(Block& block, const Job& job, const PieceView& view, double scale);

} // namespace rayfleck::drawing
