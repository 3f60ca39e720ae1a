#pragma once
// Balloons round a picture: one number for each kind of part, in columns at the left and right, leaders not
// crossing.

#include <string>
#include <vector>

#include "drawing/block.hpp"
#include "solid/solid.hpp"

namespace rayfleck::drawing {

struct BalloonWanted {
    std::string reference;
    std::vector<Point2> anchors; ///< places on paper at which the leader may end; at least one
    int to_sheet = -1;           ///< where a click leads
};

/// Points of a part that are seen in a view, in mm of wood in the picture plane; those in the middle of faces
/// first.
std::vector<Point2> seen_points(const std::vector<solid::Placed>& parts, int part, const solid::View& view);

/// Draws balloons and leaders outside `picture`, the rectangle round the drawn view.
void draw_balloons(Block& block, const Rect& picture, const std::vector<BalloonWanted>& wanted,
                   double diameter);

} // namespace rayfleck::drawing
