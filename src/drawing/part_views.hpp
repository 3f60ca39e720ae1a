#pragma once
// The views of one part with their dimensions and marks, as one block.

#include "drawing/part_features.hpp"
#include "drawing/part_layout.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

struct PartViews {
    Block block;
    Scale scale;
};

/// row       its first part is drawn
/// features  of that part; their letters stand in the views
/// seen      the same part as see_part gives it
/// room      the views keep within it where that can be had
PartViews part_views(const Job& job, const cutlist::Row& row, const std::vector<Feature>& features,
                     const PartSeen& seen, const ViewsRoom& room);

} // namespace rayfleck::drawing
