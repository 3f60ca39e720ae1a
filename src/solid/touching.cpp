// Touching: where faces of two parts lie against each other.
//
// Every pair of faces that look at each other in one plane is laid on that plane's grid and intersected.
// Parts of a fraction of a degree off, or further apart than the gap, do not touch. Round parts in round
// holes meet along facets that seldom fall together, so their contact is not found here; it is known by
// formula where the joint is made.

#include <algorithm>
#include <cmath>

#include "solid/boundary.hpp"
#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

using ClipperLib::Path;
using ClipperLib::Paths;

/// Faces that look at each other within this (a sine; 0.06 degrees) may lie in one plane.
constexpr double parallel_within = 1e-3;

bool near(const Box& a, const Box& b, double gap) {
    for (int axis = 0; axis < 3; ++axis)
        if (a.low[axis] > b.high[axis] + gap || b.low[axis] > a.high[axis] + gap) return false;
    return true;
}

struct FaceInFrame {
    Plane plane;
    std::vector<std::vector<Point>> loops;
    Box box;
};

std::vector<FaceInFrame> faces_in(const Solid& solid, const Frame& frame) {
    std::vector<FaceInFrame> faces;
    for (const Face& face : solid.faces) {
        FaceInFrame moved;
        moved.plane.normal = frame.turn_out(face.plane.normal);
        moved.plane.offset = face.plane.offset + dot(moved.plane.normal, frame.origin);
        bool first = true;
        for (const auto& loop : face.loops) {
            moved.loops.emplace_back();
            for (const Point& q : loop) {
                const Point p = frame.out(q);
                moved.loops.back().push_back(p);
                if (first) moved.box = {p, p};
                first = false;
                for (int axis = 0; axis < 3; ++axis) {
                    moved.box.low[axis] = std::min(moved.box.low[axis], p[axis]);
                    moved.box.high[axis] = std::max(moved.box.high[axis], p[axis]);
                }
            }
        }
        faces.push_back(std::move(moved));
    }
    return faces;
}

Paths on_plane(const std::vector<std::vector<Point>>& loops, const GridPlane& plane, bool turned_over) {
    Paths paths;
    for (const auto& loop : loops) {
        Path path;
        for (const Point& p : loop) {
            const GridPoint q = to_grid(p);
            path.emplace_back(q[plane.across], q[plane.up]);
        }
        if (turned_over) std::reverse(path.begin(), path.end());
        paths.push_back(std::move(path));
    }
    return paths;
}

} // namespace

std::vector<Touch> touching(const Placed& a, const Placed& b, double gap) {
    std::vector<Touch> touches;
    const std::vector<FaceInFrame> of_a = faces_in(*a.solid, a.frame), of_b = faces_in(*b.solid, b.frame);
    for (std::size_t i = 0; i < of_a.size(); ++i)
        for (std::size_t j = 0; j < of_b.size(); ++j) {
            const FaceInFrame &fa = of_a[i], &fb = of_b[j];
            if (dot(fa.plane.normal, fb.plane.normal) > 0 || !near(fa.box, fb.box, gap)) continue;
            if (norm(fa.plane.normal + fb.plane.normal) > parallel_within) continue;
            const GridPlane plane = GridPlane::through(fa.plane.normal, fa.plane.offset * grid_steps_per_mm);
            const bool a_turned = dot(fa.plane.normal, plane.normal) < 0;
            Paths common = clipped(ClipperLib::ctIntersection, on_plane(fa.loops, plane, a_turned),
                                   on_plane(fb.loops, plane, !a_turned));
            drop_slivers(common);
            Touch touch;
            bool within = true;
            for (const Path& ring : common) {
                touch.area += ring_area(ring);
                std::vector<Point> loop;
                for (const auto& q : ring) {
                    const Point p = plane.lifted(static_cast<double>(q.X), static_cast<double>(q.Y)) *
                                    (1 / grid_steps_per_mm);
                    within = within && std::abs(dot(fb.plane.normal, p) - fb.plane.offset) <= gap;
                    loop.push_back(p);
                }
                if (a_turned) std::reverse(loop.begin(), loop.end());
                touch.loops.push_back(std::move(loop));
            }
            if (touch.loops.empty() || !within) continue;
            touch.area /= plane.normal[plane.dropped] * grid_steps_per_mm * grid_steps_per_mm;
            touch.face_a = static_cast<int>(i);
            touch.face_b = static_cast<int>(j);
            touch.plane = fa.plane;
            touches.push_back(std::move(touch));
        }
    return touches;
}

} // namespace rayfleck::solid
