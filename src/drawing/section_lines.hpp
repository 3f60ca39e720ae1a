#pragma once
// Lines laid across a cut: where they run in wood, where in the open, and where a leader may end.

#include <utility>
#include <vector>

#include "drawing/hatch.hpp"

namespace rayfleck::drawing {

/// A line's way into wood or out of it.
struct Crossing {
    double at = 0;
    bool square = false; ///< the side that is crossed stands square to the line
    int part = 0;        ///< of the cut area
};

/// Stretches of wood along a line across the picture plane, ascending by where they begin; those of different
/// parts may touch.
/// level  the line runs along x at y = place; else along y at x = place
std::vector<std::pair<Crossing, Crossing>> wood_along(const std::vector<solid::CutArea>& areas, bool level,
                                                      double place);

struct Opening {
    double from = 0, to = 0;
    bool same_part = false; ///< one part lies on both sides
};

/// Openings wider than `least` between wood on both sides, both faces square to the line.
std::vector<Opening> openings_along(const std::vector<solid::CutArea>& areas, bool level, double place,
                                    double least);

/// Where lines are worth a try: middles between the corners of the cut areas, across the line's way.
std::vector<double> places_for_lines(const std::vector<solid::CutArea>& areas, bool level);

/// Places well inside a cut area: the middle of the widest stretch of a line through it, and places nearer to
/// its ends.
std::vector<Point2> places_within(const Rings& rings);

} // namespace rayfleck::drawing
