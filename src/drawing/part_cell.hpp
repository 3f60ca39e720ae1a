#pragma once
// The drawing of one distinct part: its views with dimensions, marks and notes, as one block.

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// width  of the cell, mm of paper; nothing of it is wider
Block part_cell(const Job& job, const cutlist::Row& row, double width);

/// Where the sizes come from that the maker left out; empty when he left none.
Block rules_block(const Job& job, double width);

} // namespace rayfleck::drawing
