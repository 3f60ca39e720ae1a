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
/// tight  no dimensions above the front view in first angle, nor outside the plan, and less room between the
/// views
PrincipalViews principal_views(const Job& job, const Principal& seen, double scale, bool tight = false);

} // namespace rayfleck::drawing
