#pragma once
// Front, plan and side of the whole piece in projection, with all that is measured on them.

#include "drawing/seen_piece.hpp"

namespace rayfleck::drawing {

/// The three views at one scale; the areas they take stand apart, since nothing stands beside the plan.
struct PrincipalViews {
    Block block;
    std::vector<Rect> areas;
    std::vector<std::string> notes; ///< what the views leave to other drawings, in whole sentences
};

/// scale  mm of paper per mm of wood
PrincipalViews principal_views(const Job& job, const Principal& seen, double scale);

} // namespace rayfleck::drawing
