// Seen points: middles of faces and points between the middle and the corners, tried by looking from them
// towards the eye through every part whose picture covers the point.

#include "drawing/seen_points.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drawing/placement.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Point;
using measure::Vector;

/// Round a part's box as it shows in the view.
Rect shadow(const solid::Placed& part, const solid::View& view) {
    const measure::Box& box = part.solid->box;
    std::vector<Point2> points;
    for (int i = 0; i < 8; ++i) {
        const Point corner = part.frame.out(
            {i & 1 ? box.high.x : box.low.x, i & 2 ? box.high.y : box.low.y, i & 4 ? box.high.z : box.low.z});
        points.push_back({dot(corner, view.right), dot(corner, view.up)});
    }
    return around(points);
}

/// What lies ahead of the point passes the box by, or ends where `blocked` begins to count.
bool misses_box(const measure::Box& box, Point from, Vector direction) {
    double enter = 0.04, leave = std::numeric_limits<double>::infinity();
    for (int axis = 0; axis < 3; ++axis) {
        const double low = box.low[axis] - 0.01 - from[axis], high = box.high[axis] + 0.01 - from[axis];
        const double step = direction[axis];
        if (std::abs(step) < 1e-9) {
            if (low > 0 || high < 0) return true;
            continue;
        }
        enter = std::max(enter, std::min(low / step, high / step));
        leave = std::min(leave, std::max(low / step, high / step));
    }
    return leave < enter;
}

bool blocked(const std::vector<solid::Placed>& parts, const std::vector<Rect>& shadows, Point p,
             const solid::View& view) {
    const Point2 at{dot(p, view.right), dot(p, view.up)};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Rect& s = shadows[i];
        if (at.x < s.left || at.x > s.right || at.y < s.bottom || at.y > s.top) continue;
        const Point from = parts[i].frame.in(p);
        const Vector eye = parts[i].frame.turn_in(view.towards);
        if (misses_box(parts[i].solid->box, from, eye)) continue;
        const auto stretches = solid::inside_along(*parts[i].solid, from, eye);
        for (const auto& [enter, leave] : stretches)
            if (leave > 0.05 && leave - std::max(enter, 0.0) > 0.02) return true;
    }
    return false;
}

bool inside_face(const solid::Face& face, Point p) {
    // Even-odd in the plane of the two axes that the normal leans on least.
    const Vector n = face.plane.normal;
    const int drop = std::abs(n.x) > std::abs(n.y) ? (std::abs(n.x) > std::abs(n.z) ? 0 : 2)
                                                   : (std::abs(n.y) > std::abs(n.z) ? 1 : 2);
    const int u = (drop + 1) % 3, v = (drop + 2) % 3;
    bool inside = false;
    for (const auto& loop : face.loops)
        for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++)
            if ((loop[i][v] > p[v]) != (loop[j][v] > p[v]) &&
                p[u] <
                    (loop[j][u] - loop[i][u]) * (p[v] - loop[i][v]) / (loop[j][v] - loop[i][v]) + loop[i][u])
                inside = !inside;
    return inside;
}

} // namespace

std::vector<solid::Point2> seen_points(const std::vector<solid::Placed>& parts, int part,
                                       const solid::View& view) {
    std::vector<Rect> shadows;
    for (const solid::Placed& p : parts) shadows.push_back(shadow(p, view));
    const solid::Placed& own = parts[static_cast<std::size_t>(part)];
    struct Candidate {
        Point2 at;
        double weight;
    };
    std::vector<Candidate> found;
    // The broadest faces first; a dozen places to choose from are enough.
    struct Facing {
        const solid::Face* face;
        double facing;
    };
    std::vector<Facing> faces;
    for (const solid::Face& face : own.solid->faces) {
        const double facing = dot(own.frame.turn_out(face.plane.normal), view.towards);
        if (facing >= 0.15 && !face.loops.empty() && face.area >= 25) faces.push_back({&face, facing});
    }
    std::stable_sort(faces.begin(), faces.end(), [](const Facing& a, const Facing& b) {
        return a.face->area * a.facing > b.face->area * b.facing;
    });
    constexpr std::size_t enough = 12, faces_tried = 8;
    if (faces.size() > faces_tried) faces.resize(faces_tried);
    for (const auto& [seen_face, facing] : faces) {
        if (found.size() >= enough) break;
        const solid::Face& face = *seen_face;
        const auto& loop = face.loops.front();
        Point middle;
        for (const Point& p : loop) middle = middle + p * (1.0 / static_cast<double>(loop.size()));
        std::vector<std::pair<Point, double>> tries{{middle, 1.0}};
        for (const double t : {0.35, 0.7})
            for (std::size_t i = 0; i < loop.size(); i += std::max<std::size_t>(1, loop.size() / 8)) {
                const Point between = (loop[i] + loop[(i + 1) % loop.size()]) * 0.5;
                tries.push_back({middle + (loop[i] - middle) * t, 1 - t});
                tries.push_back({middle + (between - middle) * t, 1 - t});
            }
        for (const auto& [p, weight] : tries) {
            if (!inside_face(face, p)) continue;
            const Point out = own.frame.out(p + face.plane.normal * 0.02);
            if (blocked(parts, shadows, out, view)) continue;
            found.push_back(
                {{dot(out, view.right), dot(out, view.up)}, weight * std::sqrt(face.area * facing)});
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Candidate& a, const Candidate& b) { return a.weight > b.weight; });
    std::vector<Point2> points;
    for (const Candidate& c : found) points.push_back(c.at);
    return points;
}

} // namespace rayfleck::drawing
