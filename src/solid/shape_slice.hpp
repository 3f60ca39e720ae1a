#pragma once
// Cutting shapes by a plane, one-sidedly, into rings on the plane.
//
// A plane of the grid drops its dominant axis: the other two coordinates of a point are its place on the
// plane, so corners of shapes keep their whole numbers. Rings run anticlockwise round material seen from the
// plane's normal, which always looks along its dominant axis upwards.

#include <polyclipping/clipper.hpp>
#include <vector>

#include "solid/shape.hpp"

namespace rayfleck::solid {

/// Points this close to a plane (grid steps; 0.1 µm) lie on it.
constexpr double on_plane_within = 16.0;

struct GridPlane {
    measure::Vector normal; ///< its component along `dropped` is above 0
    double offset = 0;      ///< grid steps
    int dropped = 2;        ///< dominant axis
    int across = 0, up = 1; ///< the axes kept; across, up, dropped are right-handed

    /// The same plane as given, turned over if need be.
    static GridPlane through(measure::Vector normal, double offset);
    double height(GridPoint p) const {
        return normal.x * static_cast<double>(p.x) + normal.y * static_cast<double>(p.y) +
               normal.z * static_cast<double>(p.z) - offset;
    }
    bool is_axis_plane() const { return normal[dropped] == 1.0; }
    /// The point of the plane above or below a place, in grid steps.
    measure::Vector lifted(double x, double y) const {
        measure::Vector p;
        p[across] = x;
        p[up] = y;
        p[dropped] = (offset - normal[across] * x - normal[up] * y) / normal[dropped];
        return p;
    }
};

/// Which limit of the section is meant: of planes approaching from under the plane, or from over it.
enum class Side { below, above };

/// Sections of shapes; keeps its working memory between calls.
class Slicer {
  public:
    /// Adds the section's rings to `rings`. Gives false, adding none, when the plane misses the shape.
    bool slice(const Shape& shape, const GridPlane& plane, Side side, ClipperLib::Paths& rings);

  private:
    struct Crossing {
        int edge = 0;
        double place = 0, drift = 0;
    };
    void pair_up(const Shape& shape, const Shape::Facet& facet, const GridPlane& plane, Side side);

    std::vector<double> height_;
    std::vector<signed char> above_, on_;
    std::vector<int> next_; ///< per edge: the edge that follows on the ring; -1 not crossed, -2 done
    std::vector<ClipperLib::IntPoint> at_;
    std::vector<Crossing> down_, up_;
};

} // namespace rayfleck::solid
