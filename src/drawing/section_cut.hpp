#pragma once
// What a saw through the piece lays open: the cut areas, and behind them the edges that come into sight.
//
// The wood before the plane is taken away without carving the parts again: each face that crosses the plane
// loses what lies before it, ring by ring, and the cut area closes the gap as a face of its own. A part may
// be cropped by several planes in the same way. Even-odd areas stay right although a clipped ring may run to
// and fro along the plane.

#include <deque>
#include <optional>
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

/// Adds a part without what lies beyond the planes (dot(normal, p) > offset, piece's frame); the rims of the
/// cuts become edges of it. Nothing is added when nothing is left.
void add_clipped(Clipped& to, const solid::Placed& part, const std::vector<measure::Plane>& planes);

struct CutThrough {
    /// In mm of wood in the picture plane; `part` counts the parts given.
    std::vector<solid::CutArea> areas;
    /// Edges seen beyond the plane.
    std::vector<Segment2> beyond;
    /// Round all of it.
    Rect box;
};

/// Where edges beyond a cut are looked for.
struct Beyond {
    std::optional<double> deep; ///< mm beyond the plane
    std::optional<Rect> window; ///< of the picture plane, mm
};

CutThrough cut_through(const std::vector<solid::Placed>& parts, const solid::View& view, double offset,
                       const Beyond& beyond = {});

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
