// One-sided sections.
//
// A corner on the plane counts as lying where the plane would leave it if it moved a little to the asked
// side. So every corner is above or below, every edge either crosses or does not, and a facet lying in the
// plane needs no special case: it comes out whole on one side and not at all on the other. Each crossed edge
// is one point of the section: the corner itself if that end lies on the plane.
//
// A facet's crossed edges lie along one line and pair up in order, entering and leaving. Where two fall
// together (at a corner on the plane), the way in which they would part as the plane moves decides their
// order.

#include "solid/shape_slice.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::solid {

using ClipperLib::IntPoint;
using measure::Vector;

GridPlane GridPlane::through(Vector normal, double offset) {
    GridPlane plane;
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(normal[axis]) > std::abs(normal[plane.dropped]) + 1e-9) plane.dropped = axis;
    const bool turned_over = normal[plane.dropped] < 0;
    plane.normal = turned_over ? -normal : normal;
    plane.offset = turned_over ? -offset : offset;
    plane.across = (plane.dropped + 1) % 3;
    plane.up = (plane.dropped + 2) % 3;
    return plane;
}

bool Slicer::slice(const Shape& shape, const GridPlane& plane, Side side, ClipperLib::Paths& rings) {
    if (plane.is_axis_plane()) {
        const double low = static_cast<double>(shape.low()[plane.dropped]) - plane.offset;
        const double high = static_cast<double>(shape.high()[plane.dropped]) - plane.offset;
        if (low > on_plane_within || high < -on_plane_within) return false;
    }
    const auto& corners = shape.corners();
    height_.resize(corners.size());
    above_.resize(corners.size());
    on_.resize(corners.size());
    int above = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const double h = plane.height(corners[i].at);
        height_[i] = h;
        on_[i] = std::abs(h) <= on_plane_within;
        above_[i] = on_[i] ? side == Side::below : h > 0;
        above += above_[i];
    }
    if (above == 0 || above == static_cast<int>(corners.size())) return false;

    const auto& edges = shape.edges();
    next_.assign(edges.size(), -1);
    at_.resize(edges.size());
    for (std::size_t e = 0; e < edges.size(); ++e) {
        const int a = edges[e][0], b = edges[e][1];
        if (above_[a] == above_[b]) continue;
        const GridPoint pa = corners[a].at, pb = corners[b].at;
        if (on_[a] || on_[b]) {
            const GridPoint p = on_[a] ? pa : pb;
            at_[e] = IntPoint(p[plane.across], p[plane.up]);
            continue;
        }
        const double t = height_[a] / (height_[a] - height_[b]);
        const auto between = [t](std::int64_t from, std::int64_t to) {
            return from + std::llround(t * static_cast<double>(to - from));
        };
        at_[e] = IntPoint(between(pa[plane.across], pb[plane.across]), between(pa[plane.up], pb[plane.up]));
    }
    for (const Shape::Facet& facet : shape.facets()) pair_up(shape, facet, plane, side);

    bool any = false;
    for (std::size_t e = 0; e < edges.size(); ++e) {
        if (next_[e] < 0) continue;
        ClipperLib::Path ring;
        for (int at = static_cast<int>(e); next_[at] >= 0;) {
            if (ring.empty() || ring.back() != at_[at]) ring.push_back(at_[at]);
            const int following = next_[at];
            next_[at] = -2;
            at = following;
        }
        while (ring.size() > 1 && ring.back() == ring.front()) ring.pop_back();
        if (ring.size() < 3) continue;
        rings.push_back(std::move(ring));
        any = true;
    }
    return any;
}

void Slicer::pair_up(const Shape& shape, const Shape::Facet& facet, const GridPlane& plane, Side side) {
    // Walked anticlockwise, a facet is left downwards where its chord starts and upwards where it ends.
    int first_down = -1, first_up = -1, count = 0;
    for (const int s : shape.sides(facet)) {
        const int e = s >= 0 ? s : ~s;
        const int from = shape.edges()[e][s >= 0 ? 0 : 1], to = shape.edges()[e][s >= 0 ? 1 : 0];
        if (above_[from] == above_[to]) continue;
        ++count;
        if (above_[from]) {
            if (first_down < 0) first_down = e;
        } else if (first_up < 0) {
            first_up = e;
        }
    }
    if (count == 0) return;
    if (count == 2) {
        next_[first_down] = first_up;
        return;
    }
    const Vector along = measure::cross(plane.normal, facet.normal);
    const double x = along[plane.across], y = along[plane.up];
    down_.clear();
    up_.clear();
    for (const int s : shape.sides(facet)) {
        const int e = s >= 0 ? s : ~s;
        const int a = shape.edges()[e][0], b = shape.edges()[e][1];
        if (above_[a] == above_[b]) continue;
        const GridPoint pa = shape.corners()[a].at, pb = shape.corners()[b].at;
        const double run = x * static_cast<double>(pb[plane.across] - pa[plane.across]) +
                           y * static_cast<double>(pb[plane.up] - pa[plane.up]);
        double drift = run / (height_[b] - height_[a]);
        if (side == Side::below) drift = -drift;
        const double place = x * static_cast<double>(at_[e].X) + y * static_cast<double>(at_[e].Y);
        (above_[s >= 0 ? a : b] ? down_ : up_).push_back({e, place, drift});
    }
    const auto in_order = [](const Crossing& p, const Crossing& q) {
        return p.place != q.place   ? p.place < q.place
               : p.drift != q.drift ? p.drift < q.drift
                                    : p.edge < q.edge;
    };
    std::sort(down_.begin(), down_.end(), in_order);
    std::sort(up_.begin(), up_.end(), in_order);
    for (std::size_t i = 0; i < down_.size() && i < up_.size(); ++i) next_[down_[i].edge] = up_[i].edge;
}

} // namespace rayfleck::solid
