#pragma once
// The drawing of one distinct part: its views with dimensions, marks and notes, as one block.

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// width  of the cell, mm of paper; nothing of it is wider
Block part_cell(const Job& job, const cutlist::Row& row, double width);

/// A long thin part that would be illegible in a narrow cell and is not in a wide one.
bool wants_whole_width(const Job& job, const cutlist::Row& row, double narrow, double wide);

/// What the marks on the parts mean; once in a set.
Block legend_of_marks(const Job& job);

/// Where the sizes come from that the maker left out; empty when he left none.
Block rules_block(const Job& job, double width);

} // namespace rayfleck::drawing
