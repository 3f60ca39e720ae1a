#pragma once
// The drawing of one distinct part: its views with dimensions, marks and notes, as one block.

#include <vector>

#include "drawing/part_features.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Paper that a cell may take, mm.
struct CellRoom {
    double width = 0, height = 0;
    /// Table and notes stand at the right of the views, in half of the width.
    bool words_beside = false;
};

/// features  of the row's first part
/// rooms     tried in this order; the first in which the part can be read is taken, else the one in which it
/// is
///           largest. A cell is wider or higher than its room only when its words alone are.
Block part_cell(const Job& job, const cutlist::Row& row, std::vector<Feature> features,
                const std::vector<CellRoom>& rooms);

/// Where the sizes come from that the maker left out; empty when he left none.
Block rules_block(const Job& job, double width);

} // namespace rayfleck::drawing
