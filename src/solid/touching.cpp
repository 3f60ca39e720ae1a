// Touching: where faces of two parts lie against each other.
//
// Every pair of faces that look at each other in one plane is laid on that plane's grid and intersected.
// Parts of a fraction of a degree off, or further apart than the gap, do not touch. Round parts in round
// holes meet along facets that seldom fall together, so their contact is not found here; it is known by
// formula where the joint is made.

#include <algorithm>
#include <cmath>

#include "solid/boundary.hpp"
#include "solid/box_round.hpp"
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

/// A face in the piece's frame.
struct FaceInPiece {
    Plane plane;
    Box box;
    int index = 0;
};

/// The faces that come near `other`.
std::vector<FaceInPiece> faces_near(const Placed& part, const Box& other, double gap) {
    std::vector<FaceInPiece> faces;
    // First in the part's own frame, where it costs nothing: a part may have thousands of faces far from the
    // other.
    const Frame& frame = part.frame;
    const Frame back{frame.in({}), frame.turn_in({1, 0, 0}), frame.turn_in({0, 1, 0}),
                     frame.turn_in({0, 0, 1})};
    const Box other_in_part = box_round(other, back);
    for (std::size_t f = 0; f < part.solid->faces.size(); ++f) {
        const Face& face = part.solid->faces[f];
        if (!near(face.box, other_in_part, gap + 1e-6)) continue;
        FaceInPiece moved;
        moved.box = box_round(face.box, part.frame);
        if (!near(moved.box, other, gap)) continue;
        moved.plane.normal = part.frame.turn_out(face.plane.normal);
        moved.plane.offset = face.plane.offset + dot(moved.plane.normal, part.frame.origin);
        moved.index = static_cast<int>(f);
        faces.push_back(moved);
    }
    return faces;
}

Paths on_plane(const Placed& part, int face, const GridPlane& plane, bool turned_over) {
    Paths paths;
    for (const auto& loop : part.solid->faces[static_cast<std::size_t>(face)].loops) {
        Path path;
        for (const Point& p : loop) {
            const GridPoint q = to_grid(part.frame.out(p));
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
    const Box box_a = box_round(a.solid->box, a.frame), box_b = box_round(b.solid->box, b.frame);
    if (!near(box_a, box_b, gap)) return touches;
    const std::vector<FaceInPiece> of_a = faces_near(a, box_b, gap), of_b = faces_near(b, box_a, gap);
    for (const FaceInPiece& fa : of_a)
        for (const FaceInPiece& fb : of_b) {
            if (dot(fa.plane.normal, fb.plane.normal) > 0 || !near(fa.box, fb.box, gap)) continue;
            if (norm(fa.plane.normal + fb.plane.normal) > parallel_within) continue;
            const GridPlane plane = GridPlane::through(fa.plane.normal, fa.plane.offset * grid_steps_per_mm);
            const bool a_turned = dot(fa.plane.normal, plane.normal) < 0;
            Paths common = clipped(ClipperLib::ctIntersection, on_plane(a, fa.index, plane, a_turned),
                                   on_plane(b, fb.index, plane, !a_turned));
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
            touch.face_a = fa.index;
            touch.face_b = fb.index;
            touch.plane = fa.plane;
            touches.push_back(std::move(touch));
        }
    return touches;
}

} // namespace rayfleck::solid
