#pragma once
// Centre lines of the principal views: where the piece is symmetrical, where parts are centred on a line of
// the maker's, and through what is round: turned parts, circular outlines, bores seen end on.
//
// Long-dash dot, narrow (ISO 128, type 04.1); they run a little past what they belong to and give way to
// edges, which stand above them in the order of lines that coincide. Left out: bores too small to be drawn as
// circles (under 2 mm on paper), and round parts of which the view shows nothing.

#include <vector>

#include "drawing/piece_places.hpp"

namespace rayfleck::drawing {

/// In mm of wood in the picture plane.
std::vector<Segment2> centre_lines(const Job& job, const Principal& seen, const PieceView& view,
                                   const std::vector<AxisPlaces>& places, double scale);

/// Draws them where no edge lies, the lower left corner of the view's wood at (0, 0) of the block.
void draw_centre_lines(Block& block, const PieceView& view, const std::vector<Segment2>& lines, double scale);

} // namespace rayfleck::drawing
