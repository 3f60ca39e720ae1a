#pragma once
// Waste of the blank in the views of a part: what is sawn away beside a taper, a mitre, a curve or an
// outline.

#include "drawing/part_letters.hpp"

namespace rayfleck::drawing {

/// Hatches the waste on the view in which it shows in profile and draws the border of the blank there as what
/// was before (ISO 128 type 05.1). Waste too small to be hatched, and what a break cuts through, is left as
/// it is.
void hatch_waste(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features);

} // namespace rayfleck::drawing
