#pragma once
// The drawing of one distinct part: its views with dimensions, marks and notes, as one block.

#include <vector>

#include "drawing/part_features.hpp"
#include "drawing/part_layout.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Paper that a cell may take, mm.
struct CellRoom {
    double width = 0, height = 0;
    /// Table and notes stand at the right of the views, in half of the width.
    bool words_beside = false;
};

/// A cell as it comes on paper.
struct CellLaid {
    Block block;
    /// What it covers, in the block's own coordinates: less than its box where the words stand beside the
    /// views.
    std::vector<Rect> covers;
    double scale = 0;
};

/// One row of the cut list, ready to be laid out in one room or another.
class PartCell {
  public:
    PartCell(const Job& job, const cutlist::Row& row);

    /// Lays the cell out. Of the rooms the first in which the part can be read is taken, else the one in
    /// which it is largest. A cell is wider or higher than its room only when its words alone are.
    void lay_out(const std::vector<CellRoom>& rooms);
    /// Lays it out in that room if the part stays readable there and not below half of its scale; false, and
    /// nothing changed, when it does not.
    bool squeeze_into(const CellRoom& room);
    const CellLaid& laid() const { return laid_; }

  private:
    struct Fitting {
        CellRoom room;
        ViewsRoom views;
        double scale = 0;
    };
    Fitting fit(const CellRoom& room) const;
    /// The cell in that room, its views made smaller until it keeps the height.
    CellLaid laid_out_in(Fitting fitting) const;

    const Job& job_;
    const cutlist::Row& row_;
    std::vector<Feature> features_;
    PartSeen seen_;
    CellLaid laid_;
};

/// Where the sizes come from that the maker left out; empty when he left none.
Block rules_block(const Job& job, double width);

} // namespace rayfleck::drawing
