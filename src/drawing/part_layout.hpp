#pragma once
// Which views a part gets and at what scale.

#include <vector>

#include "drawing/part_borders.hpp"
#include "drawing/sheets.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// What is seen of a part, before it is laid out.
struct PartSeen {
    Borders borders;
    struct OnSide {
        PartSide side;
        Seen seen;
    };
    std::vector<OnSide> sides; ///< from the top of the paper downwards
    Seen end;
    solid::View end_view;
};
/// The direction of sight on a side; the length runs to the right.
solid::View view_of(PartSide side);

/// features  of that part
PartSeen see_part(const Job& job, int part, const std::vector<Feature>& features);

/// Paper that the views and their dimensions may take, mm.
struct ViewsRoom {
    double width = 0, height = 0;
};

struct Layout {
    Scale scale;
    LengthMap map{0, 1, 1};
};
/// The largest scale of the list at which the views stay within the room; long parts are broken where nothing
/// happens. beside  mm of the width that stand beside the long views: widths at the left, the end view at the
/// right
Layout layout_of(const Job& job, const joinery::Made& made, const PartSeen& seen, const ViewsRoom& room,
                 double beside);
constexpr double usually_beside = 64;

} // namespace rayfleck::drawing
