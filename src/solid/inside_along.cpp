// Stretches of a line inside a solid.
//
// The line is met with every face; entering and leaving must take turns. A line that runs in a face, along an
// edge or through a corner is no sound question, so it is first moved 2 µm inwards off every face that it
// runs in, and then by a few thousandths of a µm in fixed odd directions until its crossings do take turns.
// Deterministic: the directions are always the same.

#include <algorithm>
#include <cmath>

#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

constexpr double runs_in_face = 0.001;    // mm from a face's plane
constexpr double nudge = 0.002;           // mm
constexpr double shortest_stretch = 1e-4; // mm

/// Crosses the face's loops an odd number of times on the way out: inside.
bool in_loops(const Face& face, Point p, int dropped) {
    const int across = (dropped + 1) % 3, up = (dropped + 2) % 3;
    bool inside = false;
    for (const auto& loop : face.loops) {
        const Point* before = &loop.back();
        for (const Point& here : loop) {
            const double h1 = (*before)[up] - p[up], h2 = here[up] - p[up];
            if ((h1 > 0) != (h2 > 0)) {
                const double at = (*before)[across] + (here[across] - (*before)[across]) * (h1 / (h1 - h2));
                if (at > p[across]) inside = !inside;
            }
            before = &here;
        }
    }
    return inside;
}

int dominant_axis(Vector n) {
    int axis = 0;
    for (int i = 1; i < 3; ++i)
        if (std::abs(n[i]) > std::abs(n[axis])) axis = i;
    return axis;
}

/// A face's loops come within reach of a line in its plane.
bool line_meets_loops(const Face& face, Point p, Vector direction) {
    const Vector side = cross(face.plane.normal, direction);
    double low = 1e300, high = -1e300;
    for (const Point& q : face.loops[0]) {
        const double h = dot(side, q - p);
        low = std::min(low, h);
        high = std::max(high, h);
    }
    return low <= runs_in_face && high >= -runs_in_face;
}

Vector inwards(const Solid& solid, Point p, Vector direction) {
    Vector shift;
    for (const Face& face : solid.faces) {
        const Vector n = face.plane.normal;
        if (std::abs(dot(n, direction)) > 1e-7 || std::abs(dot(n, p) - face.plane.offset) > runs_in_face)
            continue;
        // Two faces back to back: the first one decides.
        if (dot(n, shift) > 0 || !line_meets_loops(face, p, direction)) continue;
        const double already = -dot(n, shift);
        if (already < nudge) shift = shift - n * (nudge - already);
    }
    return shift;
}

} // namespace

std::vector<std::pair<double, double>> inside_along(const Solid& solid, Point p, Vector direction) {
    // Two directions at right angles to the line, for the small moves.
    Vector helper;
    helper[(dominant_axis(direction) + 1) % 3] = 1;
    const Vector u = measure::unit(cross(direction, helper)), v = cross(direction, u);
    const Point start = p + inwards(solid, p, direction);

    std::vector<std::pair<double, bool>> crossings; // (t, enters)
    std::vector<std::pair<double, double>> stretches;
    for (int attempt = 0; attempt < 8; ++attempt) {
        const double reach = 3e-6 * (attempt + 1), angle = 0.7 + 2.399963 * attempt;
        const Point from = start + u * (reach * std::cos(angle)) + v * (reach * std::sin(angle));
        crossings.clear();
        for (const Face& face : solid.faces) {
            const double slope = dot(face.plane.normal, direction);
            if (std::abs(slope) < 1e-9) continue;
            const double t = (face.plane.offset - dot(face.plane.normal, from)) / slope;
            const Point q = from + direction * t;
            bool near = true;
            for (int axis = 0; axis < 3; ++axis)
                near = near && q[axis] >= face.box.low[axis] - 1e-3 && q[axis] <= face.box.high[axis] + 1e-3;
            if (near && in_loops(face, q, dominant_axis(face.plane.normal)))
                crossings.push_back({t, slope < 0});
        }
        // Where one face ends as the next begins, leaving comes before entering.
        std::sort(crossings.begin(), crossings.end());
        bool sound = crossings.size() % 2 == 0;
        for (std::size_t i = 0; i < crossings.size(); ++i)
            sound = sound && crossings[i].second == (i % 2 == 0);
        if (!sound) continue;
        for (std::size_t i = 0; i < crossings.size(); i += 2) {
            const double enter = crossings[i].first, leave = crossings[i + 1].first;
            if (leave - enter > shortest_stretch) stretches.push_back({enter, leave});
        }
        return stretches;
    }
    return stretches;
}

} // namespace rayfleck::solid
