#pragma once
// Dimensions along one side of a view: strings in tiers, the shortest nearest to the wood, the overall
// outermost.
//
// Every measure gets an extension line from each of its ends, a line between them with arrowheads, and its
// figure above the line, so that it reads from the bottom of the sheet or from its right-hand side (ISO
// 129-1). The first tier lies 10 mm off the outline, each further one 8 mm. Where figure and arrows find no
// room between the extension lines, the arrows go outside, then the figure too, then the measure moves one
// tier out; between two short links a dot stands for the arrows. An extension line is broken where it would
// run through a figure. All of one side is planned before anything is drawn, so equal arrows and overlapping
// lines are drawn once.

#include <string>
#include <vector>

#include "drawing/block.hpp"

namespace rayfleck::drawing {

enum class ViewSide { below, above, left, right };

/// One dimension, in paper coordinates along the side (x for below and above, y for left and right).
struct Measure {
    double from = 0, to = 0;             ///< from < to
    double start_from = 0, start_to = 0; ///< where the wood ends under each end, in the other coordinate
    std::string figure;
    DimensionRecord record;
};

/// Measures that belong together, as a rod does; they share a tier as far as they do not overlap.
using MeasureString = std::vector<Measure>;

/// Spacing of tiers, mm.
constexpr double first_tier = 10, next_tier = 8;

/// Draws the strings, the innermost first, outside of `outline` (the coordinate of that side of the view).
/// Gives how far out the outermost tier lies from the outline, 0 when there is nothing to draw.
double draw_dimensions(Block& block, ViewSide side, double outline, const std::vector<MeasureString>& strings,
                       double figure_height);

} // namespace rayfleck::drawing
