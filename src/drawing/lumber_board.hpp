#pragma once
// One board of the lumber plan to scale: the parts that lie in it, the lines to saw along, what is left over.

#include "drawing/sheets.hpp"
#include "lumber/lumber.hpp"

namespace rayfleck::drawing {

/// The board with its name and size above it, its cuts by number in the picture, and the list of them below.
/// width  mm of paper; nothing of it is wider
Block lumber_board(const Job& job, const lumber::Board& board, double width);

} // namespace rayfleck::drawing
