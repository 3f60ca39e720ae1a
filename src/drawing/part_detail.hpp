#pragma once
// An enlarged detail of what is too small to be seen in the views of a part.

#include "drawing/part_layout.hpp"
#include "drawing/part_letters.hpp"

namespace rayfleck::drawing {

/// Draws the finest profile of the part once more, lettered, in a circle at a larger scale, and the circle on
/// the view that it comes from; nothing where all can be seen, or where there is no room. width  the block
/// must not become wider
void set_detail(Block& block, const Job& job, const std::vector<ViewOnPaper>& views, const PartSeen& seen,
                const GaugeFrame& gauge, const std::vector<Feature>& features, double width);

} // namespace rayfleck::drawing
