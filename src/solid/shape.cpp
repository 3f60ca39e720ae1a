// Shapes in general: corners on the grid, edges found from rings of corners, facet planes.
//
// A facet's normal comes from Newell's sum over its corners, taken relative to the first one, so that a facet
// in an axis plane gets exactly that axis. Rounding to the grid leaves slanting facets flat only to half a
// step; the offset is therefore the mean over the corners.

#include "solid/shape.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

namespace rayfleck::solid {

using measure::Frame;
using measure::Point;
using measure::Vector;

GridPoint to_grid(Point mm) {
    constexpr double farthest = 1e7; // mm; the polygon library's own limit is a thousand times further
    for (int axis = 0; axis < 3; ++axis)
        if (!(std::abs(mm[axis]) <= farthest))
            throw std::invalid_argument("a shape reaches beyond all measure");
    return {std::llround(mm.x * grid_steps_per_mm), std::llround(mm.y * grid_steps_per_mm),
            std::llround(mm.z * grid_steps_per_mm)};
}

Point to_mm(GridPoint p) {
    return {static_cast<double>(p.x) / grid_steps_per_mm, static_cast<double>(p.y) / grid_steps_per_mm,
            static_cast<double>(p.z) / grid_steps_per_mm};
}

Shape Shape::from_facets(std::vector<Corner> corners, const std::vector<std::vector<int>>& rings,
                         const std::vector<int>& curves) {
    Shape shape;
    shape.corners_ = std::move(corners);
    std::map<std::array<int, 2>, int> edge_of;
    shape.facets_.reserve(rings.size());
    for (std::size_t f = 0; f < rings.size(); ++f) {
        Facet facet;
        facet.curve = curves[f];
        facet.first_side = static_cast<int>(shape.sides_.size());
        const std::vector<int>& ring = rings[f];
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const int from = ring[i], to = ring[(i + 1) % ring.size()];
            const auto other = edge_of.find({to, from});
            if (other != edge_of.end()) {
                shape.sides_.push_back(~other->second);
                continue;
            }
            const int edge = static_cast<int>(shape.edges_.size());
            if (!edge_of.emplace(std::array<int, 2>{from, to}, edge).second)
                throw std::invalid_argument("a shape's side occurs twice in one direction");
            shape.edges_.push_back({from, to});
            shape.sides_.push_back(edge);
        }
        facet.past_side = static_cast<int>(shape.sides_.size());
        shape.facets_.push_back(facet);
    }
    shape.measure_facets();
    return shape;
}

Shape Shape::carried_out(const Frame& frame) const {
    Shape moved = *this;
    for (Corner& corner : moved.corners_) {
        corner.at = to_grid(frame.out(to_mm(corner.at)));
        corner.may_snap = 0;
    }
    moved.measure_facets();
    return moved;
}

Shape Shape::with_corners(const std::vector<GridPoint>& places) const {
    Shape moved = *this;
    for (std::size_t i = 0; i < places.size(); ++i) moved.corners_[i].at = places[i];
    moved.measure_facets();
    return moved;
}

void Shape::measure_facets() {
    low_ = high_ = corners_.empty() ? GridPoint{} : corners_[0].at;
    for (const Corner& corner : corners_)
        for (int axis = 0; axis < 3; ++axis) {
            low_[axis] = std::min(low_[axis], corner.at[axis]);
            high_[axis] = std::max(high_[axis], corner.at[axis]);
        }

    for (Facet& facet : facets_) {
        const std::span<const int> around = sides(facet);
        const GridPoint first = start_of(around[0]);
        facet.low = facet.high = first;
        Vector sum, before;
        Vector middle;
        const auto relative = [&](int side) {
            const GridPoint p = start_of(side);
            return Vector{static_cast<double>(p.x - first.x), static_cast<double>(p.y - first.y),
                          static_cast<double>(p.z - first.z)};
        };
        before = relative(around.back());
        for (const int side : around) {
            const GridPoint p = start_of(side);
            for (int axis = 0; axis < 3; ++axis) {
                facet.low[axis] = std::min(facet.low[axis], p[axis]);
                facet.high[axis] = std::max(facet.high[axis], p[axis]);
            }
            const Vector here = relative(side);
            sum = sum + measure::cross(before, here);
            middle = middle + here;
            before = here;
        }
        const double twice_area = measure::norm(sum);
        // A facet thinner than a grid step has no direction worth keeping.
        if (!(twice_area > 4.0)) {
            facet.area = 0;
            facet.normal = {0, 0, 1};
            facet.offset = static_cast<double>(first.z);
            continue;
        }
        facet.area = twice_area / 2;
        // Divided, not multiplied by the inverse: an axis normal must come out as exactly 1.
        facet.normal = {sum.x / twice_area, sum.y / twice_area, sum.z / twice_area};
        facet.offset = facet.normal.x * static_cast<double>(first.x) +
                       facet.normal.y * static_cast<double>(first.y) +
                       facet.normal.z * static_cast<double>(first.z) +
                       measure::dot(facet.normal, middle) / static_cast<double>(around.size());
    }

    is_axis_box_ = corners_.size() == 8 && facets_.size() == 6;
    for (const Facet& facet : facets_) {
        if (!is_axis_box_) break;
        const Vector n = facet.normal;
        is_axis_box_ = facet.area > 0 && std::abs(n.x) + std::abs(n.y) + std::abs(n.z) == 1.0;
    }
    if (is_axis_box_)
        for (const Corner& corner : corners_)
            for (int axis = 0; axis < 3; ++axis)
                is_axis_box_ =
                    is_axis_box_ && (corner.at[axis] == low_[axis] || corner.at[axis] == high_[axis]);
}

} // namespace rayfleck::solid
