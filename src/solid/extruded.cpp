// Shapes drawn out along an axis: boxes, prisms, round bars, and the big blocks that stand for half a space.
//
// A prism has the outline twice, joined by flat sides. Where its axes lie along those of the frame around it,
// its corners may later be drawn to those of other shapes: any move of an outline point shifts both its
// corners, so the sides stay flat. Points within a curve may only move along the prism.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "solid/outline.hpp"

namespace rayfleck::solid {
namespace {

/// The axis of the surrounding frame along which a direction runs, or -1.
int axis_along(Vector direction) {
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(std::abs(direction[axis]) - 1.0) < 1e-12) return axis;
    return -1;
}

Shape drawn_out(const Frame& frame, const FlatOutline& flat, double from, double to) {
    if (!(from < to)) throw std::invalid_argument("a prism must end beyond its start");
    const int n = static_cast<int>(flat.points.size());
    if (n < 3) throw std::invalid_argument("a prism needs an outline of at least three sides");
    const int along = axis_along(frame.z);
    std::vector<Shape::Corner> corners;
    corners.reserve(static_cast<std::size_t>(2 * n));
    for (const double level : {from, to})
        for (int i = 0; i < n; ++i) {
            const Point2 p = flat.points[i];
            unsigned may_snap = 0;
            if (along >= 0) may_snap = flat.within_curve[i] ? 1u << along : 7u;
            corners.push_back({to_grid(frame.out({p.x, p.y, level})), may_snap});
        }
    std::vector<std::vector<int>> rings;
    std::vector<int> curves;
    std::vector<int> bottom, top;
    for (int i = 0; i < n; ++i) {
        top.push_back(n + i);
        bottom.push_back(n - 1 - i);
    }
    rings.push_back(bottom);
    rings.push_back(top);
    curves.assign(2, 0);
    for (int i = 0; i < n; ++i) {
        const int next = (i + 1) % n;
        rings.push_back({i, next, n + next, n + i});
        curves.push_back(flat.curve[i]);
    }
    return Shape::from_facets(std::move(corners), rings, curves);
}

FlatOutline rectangle(Point low, Point high) {
    return {{{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}},
            std::vector<int>(4, 0),
            std::vector<bool>(4, false)};
}

} // namespace

Shape box(const Frame& frame, Point low, Point high) {
    if (!(low.x < high.x && low.y < high.y && low.z < high.z))
        throw std::invalid_argument("a box must have length, width and thickness");
    return drawn_out(frame, rectangle(low, high), low.z, high.z);
}

Shape prism(const Frame& frame, const Outline& outline, double from, double to) {
    return drawn_out(frame, flattened(outline), from, to);
}

Shape half_space(const Plane& plane, const Box& around) {
    const Vector n = plane.normal;
    // An axis at right angles to the normal, if there is one, keeps the block's sides on the grid.
    int flattest = 0;
    for (int axis = 1; axis < 3; ++axis)
        if (std::abs(n[axis]) < std::abs(n[flattest])) flattest = axis;
    Vector axis;
    axis[flattest] = 1;
    Frame frame;
    frame.z = n;
    frame.x = measure::unit(measure::cross(axis, n));
    frame.y = measure::cross(n, frame.x);
    const Point centre = (around.low + around.high) * 0.5;
    frame.origin = centre + n * (plane.offset - measure::dot(n, centre));
    Point low, high;
    for (int corner = 0; corner < 8; ++corner) {
        const Point p{corner & 1 ? around.high.x : around.low.x, corner & 2 ? around.high.y : around.low.y,
                      corner & 4 ? around.high.z : around.low.z};
        const Point q = frame.in(p);
        for (int i = 0; i < 3; ++i) {
            low[i] = std::min(low[i], q[i]);
            high[i] = std::max(high[i], q[i]);
        }
    }
    // Well past everything, so that no side of the block comes to lie in a face of the part.
    const double margin = 10.0;
    low = low - Vector{margin, margin, 0};
    high = high + Vector{margin, margin, margin};
    const bool square = axis_along(n) >= 0;
    // A slanting block is a prism along the axis at right angles to its normal: drawn out along y.
    if (square || n[flattest] != 0.0) return drawn_out(frame, rectangle(low, high), 0, high.z);
    Frame along;
    along.origin = frame.origin;
    along.z = frame.y;
    along.x = frame.z;
    along.y = frame.x;
    FlatOutline slanting = rectangle({0, low.x, 0}, {high.z, high.x, 0});
    // Its corners are nobody's: drawing one to a coordinate that happens to be near would tilt the plane.
    slanting.within_curve.assign(4, true);
    return drawn_out(along, slanting, low.y, high.y);
}

Shape cylinder(const Frame& frame, double radius, double from, double to) {
    if (!(radius > 0)) throw std::invalid_argument("a round bar needs a radius above zero");
    const int n = sides_per_turn(radius);
    const double r = radius * area_true_radius(n);
    FlatOutline flat;
    for (int i = 0; i < n; ++i) {
        const double angle = 2 * 3.14159265358979323846 * i / n;
        flat.points.push_back({r * std::cos(angle), r * std::sin(angle)});
    }
    flat.curve.assign(static_cast<std::size_t>(n), 1);
    flat.within_curve.assign(static_cast<std::size_t>(n), true);
    return drawn_out(frame, flat, from, to);
}

} // namespace rayfleck::solid
