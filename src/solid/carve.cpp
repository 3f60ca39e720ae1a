// Carving: blank and tools on common coordinates, boundary by planes, one face per connected patch, edges.
//
// Volume = 1/3 sum over faces of distance to a point times area, the point being the blank's centre; the
// centroid comes from the tetrahedra over the loops. If the edges do not close, corners are welded once more
// with four times the tolerance; what stays open then is reported in open_edges.

#include <algorithm>
#include <cmath>

#include "solid/boundary.hpp"
#include "solid/edges.hpp"
#include "solid/snap.hpp"
#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

using ClipperLib::Path;
using ClipperLib::Paths;

constexpr double weld_within = 0.002; // mm

/// A curve of one shape; facets of the same curve meet in smooth edges.
struct CurveOf {
    int shape, curve;
    friend bool operator==(CurveOf, CurveOf) = default;
};

/// Clipper says 1 inside, 0 outside, -1 on the border.
bool is_inside(const Path& hole, const Path& outer) {
    for (const auto& p : hole)
        if (const int where = ClipperLib::PointInPolygon(p, outer); where >= 0) return where > 0;
    for (std::size_t i = 0; i < hole.size(); ++i) {
        const auto &a = hole[i], &b = hole[(i + 1) % hole.size()];
        const ClipperLib::IntPoint middle((a.X + b.X) / 2, (a.Y + b.Y) / 2);
        if (const int where = ClipperLib::PointInPolygon(middle, outer); where >= 0) return where > 0;
    }
    return true;
}

/// A ring that touches itself at a corner becomes several, so that patches which only touch stay apart.
void split_where_touching(const Path& ring, Paths& simple) {
    Path open;
    for (const auto& p : ring) {
        const auto before = std::find(open.begin(), open.end(), p);
        if (before != open.end()) {
            simple.emplace_back(before, open.end());
            open.erase(before, open.end());
        }
        open.push_back(p);
    }
    simple.push_back(std::move(open));
}

/// Rings sorted into connected patches: each an outer ring followed by its holes.
std::vector<Paths> patches_of(const Paths& touching_rings) {
    Paths rings;
    for (const Path& ring : touching_rings) split_where_touching(ring, rings);
    drop_slivers(rings);
    std::vector<Paths> patches;
    std::vector<double> areas;
    std::vector<const Path*> holes;
    for (const Path& ring : rings) {
        const double area = ring_area(ring);
        if (area > 0) {
            patches.push_back({ring});
            areas.push_back(area);
        } else {
            holes.push_back(&ring);
        }
    }
    for (const Path* hole : holes) {
        std::size_t home = patches.size();
        for (std::size_t i = 0; i < patches.size(); ++i) {
            if (patches.size() > 1 && !is_inside(*hole, patches[i][0])) continue;
            if (home == patches.size() || areas[i] < areas[home]) home = i;
        }
        if (home < patches.size()) patches[home].push_back(*hole);
    }
    return patches;
}

/// Which shapes made a patch: those of the facing's sources that really cover some of it, largest share first
/// in made_by.
void set_makers(Face& face, const Paths& patch, const Facing& facing, const Cut& cut) {
    for (const Source& source : facing.sources)
        if (std::find(face.makers.begin(), face.makers.end(), source.shape) == face.makers.end())
            face.makers.push_back(source.shape);
    std::sort(face.makers.begin(), face.makers.end());
    face.made_by = face.makers.front();
    if (face.makers.size() == 1) return;
    double largest = 0;
    std::vector<int> real;
    for (const int maker : face.makers) {
        Paths cover;
        for (const Source& source : facing.sources)
            if (source.shape == maker)
                cover.push_back(
                    facet_on(maker < 0 ? *cut.blank : *cut.tools[maker], source.facet, facing.plane));
        Paths shared = clipped(ClipperLib::ctIntersection, patch, cover);
        drop_slivers(shared);
        double area = 0;
        for (const Path& ring : shared) area += ring_area(ring);
        if (area <= 0) continue;
        real.push_back(maker);
        if (area > largest) {
            largest = area;
            face.made_by = maker;
        }
    }
    if (!real.empty()) face.makers = std::move(real);
}

Face face_of(const Paths& patch, const Facing& facing) {
    Face face;
    const GridPlane& plane = facing.plane;
    const double sign = facing.looks_up ? 1 : -1;
    face.plane = {plane.normal * sign + Vector{}, sign * plane.offset / grid_steps_per_mm};
    double area = 0;
    for (const Path& ring : patch) {
        area += ring_area(ring);
        std::vector<Point> loop;
        loop.reserve(ring.size());
        for (const auto& p : ring) {
            const Vector q = plane.lifted(static_cast<double>(p.X), static_cast<double>(p.Y));
            loop.push_back({q.x / grid_steps_per_mm, q.y / grid_steps_per_mm, q.z / grid_steps_per_mm});
        }
        if (!facing.looks_up) std::reverse(loop.begin(), loop.end());
        face.loops.push_back(std::move(loop));
    }
    face.area = area / plane.normal[plane.dropped] / grid_steps_per_mm / grid_steps_per_mm;
    face.box = {face.loops[0][0], face.loops[0][0]};
    for (const Point& p : face.loops[0])
        for (int axis = 0; axis < 3; ++axis) {
            face.box.low[axis] = std::min(face.box.low[axis], p[axis]);
            face.box.high[axis] = std::max(face.box.high[axis], p[axis]);
        }
    return face;
}

void measure_solid(Solid& solid, Point middle, const std::vector<int>& shell) {
    std::vector<double> shell_volume(shell.empty() ? 0 : *std::max_element(shell.begin(), shell.end()) + 1,
                                     0.0);
    Vector moment;
    double by_tetrahedra = 0;
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        const Face& face = solid.faces[f];
        const double volume = (face.plane.offset - dot(face.plane.normal, middle)) * face.area / 3;
        solid.volume += volume;
        shell_volume[shell[f]] += volume;
        solid.surface += face.area;
        for (const auto& loop : face.loops)
            for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
                const Vector a = loop[0] - middle, b = loop[i] - middle, c = loop[i + 1] - middle;
                const double six = dot(a, cross(b, c));
                by_tetrahedra += six;
                moment = moment + (a + b + c) * (six / 4);
            }
        for (int axis = 0; axis < 3; ++axis) {
            if (f == 0) solid.box = face.box;
            solid.box.low[axis] = std::min(solid.box.low[axis], face.box.low[axis]);
            solid.box.high[axis] = std::max(solid.box.high[axis], face.box.high[axis]);
        }
    }
    solid.centroid = by_tetrahedra > 0 ? middle + moment * (1 / by_tetrahedra) : middle;
    // A shell with negative volume is the wall of a hollow.
    solid.bodies = static_cast<int>(
        std::count_if(shell_volume.begin(), shell_volume.end(), [](double v) { return v > 1e-9; }));
}

} // namespace

Solid carve(const Shape& blank, const std::vector<Shape>& tools) {
    const Snapped common(blank, tools);
    const Cut& cut = common.cut();

    Solid solid;
    std::vector<std::vector<CurveOf>> curves; // per face
    for (const Facing& facing : boundary_of({cut}, nullptr)) {
        std::vector<CurveOf> of_facing;
        for (const Source& source : facing.sources) {
            const Shape& shape = source.shape < 0 ? *cut.blank : *cut.tools[source.shape];
            if (const int curve = shape.facets()[source.facet].curve; curve != 0)
                of_facing.push_back({source.shape, curve});
        }
        for (const Paths& patch : patches_of(facing.rings)) {
            Face face = face_of(patch, facing);
            set_makers(face, patch, facing, cut);
            solid.faces.push_back(std::move(face));
            curves.push_back(of_facing);
        }
    }

    JoinedEdges joined = join(solid.faces, weld_within);
    if (joined.open != 0) {
        JoinedEdges again = join(solid.faces, 4 * weld_within);
        if (again.open < joined.open) joined = std::move(again);
    }
    solid.edges = std::move(joined.edges);
    solid.open_edges = joined.open;
    for (Edge& edge : solid.edges) {
        const auto &left = curves[edge.face_left], &right = curves[edge.face_right];
        edge.smooth = std::find_first_of(left.begin(), left.end(), right.begin(), right.end()) != left.end();
    }
    const Box around = blank.bounds();
    measure_solid(solid, (around.low + around.high) * 0.5, joined.shell);
    return solid;
}

} // namespace rayfleck::solid
