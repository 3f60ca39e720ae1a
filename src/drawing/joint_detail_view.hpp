#pragma once
// The drawing of one joint: sections through it, both parts pulled apart in isometric, its sizes in words and
// the places where it occurs.

#include "drawing/joint_detail.hpp"
#include "drawing/section_cut.hpp"

namespace rayfleck::drawing {

/// Sections and picture of one detail, to be set side by side or one below the other.
using DetailViews = std::vector<Block>;

/// parts  boxes_of_parts(job.placed)
DetailViews joint_detail_views(const Job& job, const Hatching& hatching, const JointDetail& detail,
                               const std::vector<measure::Box>& parts);

/// Letter, name, views and words as one block.
/// width  mm of paper; nothing is wider but a view that is so by itself
Block joint_detail_block(const Job& job, const JointDetail& detail, const DetailViews& views, double width);

} // namespace rayfleck::drawing
