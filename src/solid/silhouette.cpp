// The silhouette of a solid: where light from the eye would throw its shadow.
//
// Faces that look towards the eye are laid flat on the picture plane, on the same grid as everything else,
// and united. Neighbouring faces share their corners, so their sides fall on one another to the last step of
// the grid; what rounding leaves between slanting faces is a sliver and goes. Holes that are seen right
// through stay holes.

#include "solid/silhouette.hpp"

#include <cmath>

#include "solid/boundary.hpp"

namespace rayfleck::solid {
namespace {

/// Faces turned away less than this from the line of sight (sine of the angle) show no area.
constexpr double edge_on = 1e-6;

} // namespace

std::vector<std::vector<Point2>> silhouette(const Solid& solid, const View& view) {
    ClipperLib::Paths shadow;
    for (const Face& face : solid.faces) {
        if (dot(face.plane.normal, view.towards) < edge_on) continue;
        for (const auto& loop : face.loops) {
            ClipperLib::Path path;
            for (const Point& p : loop) {
                const ClipperLib::IntPoint q(std::llround(dot(view.right, p) * grid_steps_per_mm),
                                             std::llround(dot(view.up, p) * grid_steps_per_mm));
                if (path.empty() || path.back() != q) path.push_back(q);
            }
            shadow.push_back(std::move(path));
        }
    }
    ClipperLib::Paths rings = clipped(ClipperLib::ctUnion, shadow, {});
    drop_slivers(rings);
    std::vector<std::vector<Point2>> out;
    for (const ClipperLib::Path& ring : rings) {
        out.emplace_back();
        for (const auto& q : ring)
            out.back().push_back(
                {static_cast<double>(q.X) / grid_steps_per_mm, static_cast<double>(q.Y) / grid_steps_per_mm});
    }
    return out;
}

} // namespace rayfleck::solid
