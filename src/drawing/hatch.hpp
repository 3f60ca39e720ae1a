#pragma once
// Hatching: what a cut through wood looks like on paper, by how its fibres run.
//
// End grain is hatched with oblique lines, long grain with lines along the fibre, sheet goods with lines
// square to their face (German teaching and a school book of the 1890s, both known here from excerpts). Wood
// whose fibres run between the two shows what is nearer: end grain when the fibre stands less than 45 degrees
// from square to the cut, long grain when it does not; the border is our own choice. Parts that touch get
// different numbers, and with the number the lean of the oblique lines and the pitch change; a part keeps its
// number on every sheet. An oblique hatch that would run along an edge of its area leans 30 or 60 degrees
// instead of 45. Areas thinner than 2 mm on paper are filled. Dowels, pegs, screws and wedges are no parts of
// the model, so that their holes stay empty and none of them can be hatched.

#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

using Rings = std::vector<std::vector<Point2>>;

/// A connected cut area: its rim, then its holes.
std::vector<Rings> connected(const Rings& rings);
/// Area within the rings, even-odd, when holes run the other way round than rims.
double area_of(const Rings& rings);
/// Thickness of the strip of the same area and girth, which is the smaller side of a rectangle; of a plump
/// area the side of the square.
double strip_thickness(const Rings& rings);

/// Areas under this are filled, mm of paper.
constexpr double filled_below = 2.0;
/// Lines of one hatch are never closer, mm of paper.
constexpr double closest_hatch = 0.8;

/// How the cut areas of one part are hatched in one view.
struct Hatch {
    CutGrain grain = CutGrain::end_grain;
    double turn = 45; ///< degrees anticlockwise from the horizontal, 0 to 180
    double pitch = 1; ///< line to line, mm of paper
    Point2 through;   ///< a place midway between two lines
};

/// The hatches of all parts of a piece.
class Hatching {
  public:
    explicit Hatching(const Job& job);
    /// areas  the part's cut areas in this view, in mm of paper
    /// scale  mm of paper per mm of wood
    /// centre where the middle of the part's body comes to lie on paper
    Hatch of(int part, const solid::View& view, double scale, Point2 centre, const Rings& areas) const;
    /// Parts of different numbers look different where they touch.
    int number(int part) const { return numbers_[static_cast<std::size_t>(part)]; }

  private:
    const Job& job_;
    std::vector<int> numbers_;
};

/// Strokes of a hatch over an area, even-odd, left open round `texts`.
void draw_hatch(Block& block, const Rings& rings, const Hatch& hatch, const std::vector<Quad>& texts);

/// The kinds of hatch with their names; once in a set.
Block legend_of_hatches(const Job& job);

} // namespace rayfleck::drawing
