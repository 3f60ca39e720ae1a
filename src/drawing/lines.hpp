#pragma once
// Where the dashes of a broken line fall. The widths and patterns of the pens are declared in sheet.hpp.

#include <vector>

#include "drawing/sheet.hpp"

namespace rayfleck::drawing {

/// How far into the pattern of dashes_of(pen) a line of this length starts, mm, so that it begins and ends on
/// a dash (a long dash for chain lines). 0 for continuous lines.
double dash_start(Pen pen, double length);

/// A polyline cut where it turns by more than 30 degrees, so that each piece starts and ends on a dash:
/// dashed lines meet and turn on a dash, while the short steps of a curve stay one line. Continuous pens get
/// it back whole.
std::vector<std::vector<Point2>> dash_pieces(const Stroke& stroke);

/// Length of a polyline, mm.
double length_of(const std::vector<Point2>& points);

} // namespace rayfleck::drawing
