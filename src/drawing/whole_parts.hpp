#pragma once
// Parts as if no joint were cut, nor anything bored or moulded: body, outline, tapers, curves.
//
// Two things need them. The views dash the hidden edges of whole parts, so that a mortise inside a leg does
// not clutter the elevation; and a part's place in the piece is told by the box of its body, without the
// tenons that reach into its neighbours. Left out: turned parts stay as they are, since carving their many
// facets again would take longer than everything else on the sheet.

#include <deque>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

struct WholeParts {
    std::deque<solid::Solid> solids; ///< what the placed parts point to
    std::vector<solid::Placed> placed;
    /// Box round each in the piece's frame.
    std::vector<measure::Box> boxes;
};

WholeParts whole_parts(const Job& job);

} // namespace rayfleck::drawing
