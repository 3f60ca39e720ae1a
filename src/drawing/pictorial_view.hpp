#pragma once
// The piece in isometric, with the numbers of the cut list in balloons round it.

#include "drawing/sheets.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// What of the picture does not depend on its scale.
struct Picture {
    Seen seen;
    std::vector<std::vector<Point2>> anchors; ///< of each row
};

Picture look_at_picture(const Job& job);

/// The picture with balloons for rows [first, last) of the cut list.
/// factor  mm of paper per mm of the picture plane
Block pictorial_view(const Job& job, const Picture& picture, double factor, std::size_t first,
                     std::size_t last);

} // namespace rayfleck::drawing
