#pragma once
// A shape: a closed polyhedron with flat facets, the only thing that carving, cutting and clashing work on.
//
// Its corners lie on a grid of whole numbers, 160000 to the millimetre. That makes both 0.001 mm and 1/256 in
// exact, so faces that the maker meant to be flush are flush to the last bit, and it keeps 6.7 m within the
// range in which the polygon library computes fastest. Curves are facets; facets of one curve share a number,
// so that no lines are drawn between them. Facets of a slanting plane lie within half a grid step of it.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "measure/space.hpp"

namespace rayfleck::solid {

/// Grid steps: 1 mm = 160000.
constexpr double grid_steps_per_mm = 160000.0;

struct GridPoint {
    std::int64_t x = 0, y = 0, z = 0;
    constexpr std::int64_t operator[](int axis) const { return axis == 0 ? x : axis == 1 ? y : z; }
    constexpr std::int64_t& operator[](int axis) { return axis == 0 ? x : axis == 1 ? y : z; }
    friend constexpr bool operator==(GridPoint, GridPoint) = default;
};

/// Throws std::invalid_argument for a point that is not a number or over 10 km away.
GridPoint to_grid(measure::Point mm);
measure::Point to_mm(GridPoint p);

class Shape {
  public:
    struct Corner {
        GridPoint at;
        /// Bit per axis: this coordinate may be drawn to a neighbouring shape's without bending a facet.
        unsigned may_snap = 0;
    };
    struct Facet {
        /// Where its sides stand in the shape's list of sides.
        int first_side = 0, past_side = 0;
        /// 0, or the number of the curve that the facet is part of.
        int curve = 0;
        measure::Vector normal;
        double offset = 0; ///< grid steps
        double area = 0;   ///< square grid steps; 0 for a facet that snapping has flattened
        GridPoint low, high;
    };

    const std::vector<Corner>& corners() const { return corners_; }
    /// Start and end corner of each edge.
    const std::vector<std::array<int, 2>>& edges() const { return edges_; }
    const std::vector<Facet>& facets() const { return facets_; }
    /// The facet's sides, anticlockwise seen from outside; ~e is edge e walked from its end to its start.
    std::span<const int> sides(const Facet& facet) const {
        return {sides_.data() + facet.first_side,
                static_cast<std::size_t>(facet.past_side - facet.first_side)};
    }
    GridPoint start_of(int side) const {
        return corners_[static_cast<std::size_t>(side >= 0 ? edges_[side][0] : edges_[~side][1])].at;
    }
    GridPoint low() const { return low_; }
    GridPoint high() const { return high_; }
    /// It fills its bounding box.
    bool is_axis_box() const { return is_axis_box_; }
    measure::Box bounds() const { return {to_mm(low_), to_mm(high_)}; }

    /// The same shape, given in `frame`, as seen from the frame around it.
    Shape carried_out(const measure::Frame& frame) const;
    /// Moves corners to new places (one per corner); facets must stay flat.
    Shape with_corners(const std::vector<GridPoint>& places) const;

    /// A shape from facets given as rings of corners, anticlockwise seen from outside. Every side must occur
    /// once in each direction.
    static Shape from_facets(std::vector<Corner> corners, const std::vector<std::vector<int>>& rings,
                             const std::vector<int>& curves);

  private:
    void measure_facets();

    std::vector<Corner> corners_;
    std::vector<std::array<int, 2>> edges_;
    std::vector<Facet> facets_;
    std::vector<int> sides_; ///< of all facets, one after the other
    GridPoint low_, high_;
    bool is_axis_box_ = false;
};

} // namespace rayfleck::solid
