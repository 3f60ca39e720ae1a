#pragma once
// Marks of the workshop and of the drawing: grain arrow, face and edge marks, growth rings, projection
// symbol.

#include "drawing/block.hpp"

namespace rayfleck::drawing {

/// Truncated cone and two circles, centred on `middle`: how the views are arranged.
/// h  half the height of the symbol, mm; the cone is 2h long, the circles 2h and h across
/// source  proportions from memory of ISO 5456-2; the cone keeps its small end to the left
void projection_symbol(Block& block, Point2 middle, double h, bool first_angle);

/// Double-headed arrow along the fibre, centred on `middle`.
/// turn  degrees anticlockwise from the horizontal
void grain_arrow(Block& block, Point2 middle, double length, double turn);

/// The looped line that marks a face side; it ends on the edge from which all is gauged.
/// at   point on that edge
/// into unit vector from the edge into the face (up or down)
void face_side_mark(Block& block, Point2 at, double into, double size);
/// Round what face_side_mark draws.
Rect face_side_mark_box(Point2 at, double into, double size);

/// The V that marks a face edge; its point touches the arris of the face side.
/// at       point on the arris
/// into     +1 when the edge lies above the point, -1 when below
void face_edge_mark(Block& block, Point2 at, double into, double size);

/// Growth rings seen on the end of a board, clipped to a rectangle: arcs about a pith that lies `radius` away
/// from the middle of the rectangle, on the side away from the bark. bark   unit direction on paper in which
/// the bark lies
void growth_rings(Block& block, const Rect& end, Point2 bark, double radius);

/// A circle with a reference in it: the balloon of a part.
void balloon(Block& block, Point2 middle, double diameter, const std::string& reference);

/// A filled arrowhead with its point at `tip`, coming from `direction` (unit, pointing towards the tip).
std::vector<Point2> arrowhead(Point2 tip, Point2 direction, double length);

} // namespace rayfleck::drawing
