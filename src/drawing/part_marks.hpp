#pragma once
// The shop's marks set on the views of a part where they touch nothing, and what they mean.

#include "drawing/block.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// Along the fibre, inside the face view where there is room, else beside it.
void set_grain_arrow(Block& block, const Rect& face, const joinery::Made& made);
/// The looped line on the face view, ending on the face edge.
void set_face_side_mark(Block& block, const Rect& face, const joinery::Made& made);
/// The V on a view of the face edge; its point touches the arris of the face side.
/// face_side_below  in that view the face side is the lower border
void set_face_edge_mark(Block& block, const Rect& edge, bool face_side_below);
/// Growth rings in the end view, as the part was sawn, the bark where the maker said, else at the face side.
/// Nothing for sheet goods, glued-up parts and ends too small on paper.
void set_growth_rings(Block& block, const Rect& end, const joinery::Made& made, const solid::View& view);

/// Where the two ends of the part come to lie in the piece, beside them on the face view if there is room.
void set_end_names(Block& block, const Rect& face, const std::string& near_end, const std::string& far_end);

/// What the marks on the parts mean; once in a set.
Block legend_of_marks(const Job& job);

} // namespace rayfleck::drawing
