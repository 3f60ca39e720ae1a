#pragma once
// Front, plan and side of the whole piece in projection, with the strings of its rods.

#include "drawing/sheets.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// What is seen of the piece from its three principal sides; does not depend on the scale.
struct Principal {
    Seen front, plan, side;
    /// The piece's own coordinate of a picture coordinate of the side view: +1 from the right, -1 from the
    /// left.
    double side_sign = 1;
};

Principal look_at_piece(const Job& job);

/// The three views; the areas they take are two, since nothing stands beside the plan.
struct PrincipalViews {
    Block block;
    std::vector<Rect> areas;
};

/// scale  mm of paper per mm of wood
PrincipalViews principal_views(const Job& job, const Principal& seen, double scale);

} // namespace rayfleck::drawing
