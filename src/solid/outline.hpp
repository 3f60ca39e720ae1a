#pragma once
// Outlines as the rest of the room sees them: arcs laid down as short sides.
//
// An arc becomes at least 24 sides per full turn, more where a chord would leave the arc by over 0.01 mm. The
// inner points lie slightly outside the arc, so that the polygon has exactly the area of the arc's sector.
// Volumes are therefore those of true cylinders.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::solid {

/// A closed polygon, anticlockwise, without a repeated last point. Side i runs from points[i] to the next.
struct FlatOutline {
    std::vector<Point2> points;
    /// Per side: 0, or the number of the curve it is part of.
    std::vector<int> curve;
    /// Per point: it lies inside an arc or smooth run, where no other shape's corner can be meant to be.
    std::vector<bool> within_curve;
};

FlatOutline flattened(const Outline& outline);

/// Sides for a full turn of that radius (mm): a multiple of 4, at least 24, chords within 0.01 mm.
int sides_per_turn(double radius);
/// Radius of the corners of a regular polygon that has the area of a circle of radius 1.
double area_true_radius(int sides);

} // namespace rayfleck::solid
