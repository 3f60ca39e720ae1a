#pragma once
// What a saw through the piece lays open: the cut areas, and behind them the edges that come into sight.
//
// The wood before the plane is taken away without carving the parts again: each face that crosses the plane
// loses what lies before it, ring by ring, and the cut area closes the gap as a face of its own. A part may
// be cropped by several planes in the same way. Even-odd areas stay right although a clipped ring may run to
// and fro along the plane.

#include <deque>
#include <vector>

#include "drawing/hatch.hpp"
#include "drawing/view.hpp"
#include "solid/solid.hpp"

namespace rayfleck::drawing {

/// Parts of which pieces were taken away; keeps the solids that the placed parts point to.
struct Clipped {
    std::deque<solid::Solid> solids;
    std::vector<solid::Placed> placed;
    /// For each of them the rims of the cuts, in the piece's frame.
    std::vector<std::vector<std::pair<measure::Point, measure::Point>>> rims;
};

/// Adds a part without what lies beyond the planes (dot(normal, p) > offset, piece's frame). Nothing is added
/// when nothing is left.
/// with_rims  the rims of the cuts become edges of the part
/// gives      whether something is left
bool add_clipped(Clipped& to, const solid::Placed& part, const std::vector<measure::Plane>& planes,
                 bool with_rims);

struct CutThrough {
    /// In mm of wood in the picture plane; `part` counts the parts given.
    std::vector<solid::CutArea> areas;
    /// Edges seen beyond the plane.
    std::vector<Segment2> beyond;
    /// Round all of it.
    Rect box;
};

/// depth  how far beyond the plane edges are looked for, mm
CutThrough cut_through(const std::vector<solid::Placed>& parts, const solid::View& view, double offset,
                       double depth = 1e9);

/// Sides of the rings as segments.
std::vector<Segment2> sides_of(const Rings& rings);

/// The cut areas hatched, outlined and recorded.
/// parts   the model's number of each part given to cut_through
/// scale, origin  paper = origin + scale * picture
/// texts   left open by the hatch
/// gives   the outlines on paper
std::vector<Segment2> draw_cut_areas(Block& block, const Job& job, const Hatching& hatching,
                                     const std::vector<solid::CutArea>& areas, const std::vector<int>& parts,
                                     const solid::View& view, double scale, Point2 origin,
                                     const std::string& section);

} // namespace rayfleck::drawing
