#pragma once
// Balloons round a picture: one number for each kind of part, in rows beside, above and below it.

#include <string>
#include <vector>

#include "drawing/block.hpp"
#include "drawing/seen_points.hpp"

namespace rayfleck::drawing {

struct BalloonWanted {
    std::string reference;
    std::vector<Point2> anchors; ///< places on paper at which the leader may end; at least one
    int to_sheet = -1;           ///< where a click leads
};

/// Sides of a picture at which balloons may stand; one of them at least.
struct BalloonSides {
    bool left = true, right = true, above = true, below = true;
};

/// Draws balloons and leaders outside `picture`, the rectangle round the drawn view.
void draw_balloons(Block& block, const Rect& picture, const std::vector<BalloonWanted>& wanted,
                   double diameter, const BalloonSides& sides = {});

} // namespace rayfleck::drawing
