#pragma once
// What is seen of the whole piece from its three principal sides.
//
// The front is the maker's own: the side from which he says left and right, in the position of use. First
// angle takes the view from the left, third angle the one from the right.
//
// Hidden edges tell something when they show a part that would otherwise not be seen, or where a seen part
// goes on behind another; they clutter when there are many. So: hidden edges of whole parts (no mortises, no
// bores) are dashed in a view that has few of them; where there are many, only those of parts of which no
// view shows any copy; and in a view that shows less than half of the parts (a plan under a broad top) also
// those of covered parts, kind by kind in the order of the list, until it is full. The same holds for covered
// parts that lean in the view, so that their angle can be told.

#include <optional>
#include <string>
#include <vector>

#include "drawing/sheets.hpp"
#include "drawing/view.hpp"
#include "drawing/whole_parts.hpp"

namespace rayfleck::drawing {

/// How a part stands askew in a view.
struct Lean {
    Point2 along;     ///< unit, in the picture: the longest of the part's directions as it shows there
    Point2 reference; ///< unit, upright or level, at most 45° from it
    double angle = 0; ///< radians between them, > 0
};
/// Nothing for a part that stands straight in the view, nor in the plan for one that leans in two ways.
std::optional<Lean> lean_of(const piece::Part& part, const solid::View& view);

struct PieceView {
    std::string name; ///< `front`, `plan`, `from the left`
    solid::View view;
    int right = 0, up = 2;              ///< axes of the piece that run across and up the picture
    double right_sign = 1, up_sign = 1; ///< which way
    Seen seen;
    std::vector<bool> shows; ///< of each part, whether enough of it is seen here

    /// Does an edge stand at that place of the axis, within the part's picture? 2 seen, 1 dashed, 0 none.
    int edge_at(int axis, double place, const measure::Box& part) const;
};

struct Principal {
    PieceView front, plan, side;
    WholeParts whole;
    measure::Box box; ///< round all wood

    std::vector<const PieceView*> views() const { return {&front, &plan, &side}; }
};

Principal look_at_piece(const Job& job);

} // namespace rayfleck::drawing
