#pragma once
// The boundary of blanks minus tools, plane by plane: what carving and clashing share.

#include <polyclipping/clipper.hpp>
#include <vector>

#include "solid/shape.hpp"
#include "solid/shape_slice.hpp"

namespace rayfleck::solid {

/// A blank with tools taken away.
struct Cut {
    const Shape* blank = nullptr;
    std::vector<const Shape*> tools;
};

/// A facet that lies in a plane: which cut, -1 for its blank or else the tool, and which facet.
struct Source {
    int cut = 0, shape = -1, facet = 0;
};

/// The part of a boundary that lies in one plane and looks one way.
struct Facing {
    GridPlane plane;
    /// It looks along plane.normal; otherwise against it.
    bool looks_up = true;
    /// Anticlockwise seen from plane.normal, holes clockwise, either way that it looks.
    ClipperLib::Paths rings;
    /// Facets that can have made it.
    std::vector<Source> sources;
};

struct GridBox {
    GridPoint low, high;
};

/// The boundary of what all cuts have in common. `limit`, if given, holds all of that.
std::vector<Facing> boundary_of(const std::vector<Cut>& cuts, const GridBox* limit);

/// A facet's corners on a plane, anticlockwise seen from the plane's normal.
ClipperLib::Path facet_on(const Shape& shape, int facet, const GridPlane& plane);

/// NonZero on both sides.
ClipperLib::Paths clipped(ClipperLib::ClipType type, const ClipperLib::Paths& subject,
                          const ClipperLib::Paths& clip);
/// Square grid steps on the plane's two kept axes, exact to the last digit of a double; holes count negative.
double ring_area(const ClipperLib::Path& ring);
/// Removes rings thinner than 0.1 µm.
void drop_slivers(ClipperLib::Paths& rings);

} // namespace rayfleck::solid
