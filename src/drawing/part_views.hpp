#pragma once
// The views of one part with their dimensions and marks, as one block.

#include "drawing/part_borders.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

struct PartViews {
    Block block;
    Scale scale;
};

/// row    its first part is drawn
/// width  mm of paper that the views and their dimensions may take, where that can be had
PartViews part_views(const Job& job, const cutlist::Row& row, double width);

/// A long thin part that would be illegible in a narrow cell and is not in a wide one.
bool wants_whole_width(const Job& job, const cutlist::Row& row, double narrow, double wide);

} // namespace rayfleck::drawing
