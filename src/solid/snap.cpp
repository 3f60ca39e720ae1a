// Snapping: per axis, all coordinates that may move are sorted; a run of values within 10 µm becomes one.
//
// Sizes that were reached by different sums differ in the last digits, and a wall of 5 µm is never meant.
// Only corners that can move without bending a facet take part (see Shape::Corner). Runs are limited to 10 µm
// in all, so that a fine curve is not drawn together step by step.

#include "solid/snap.hpp"

#include <algorithm>

namespace rayfleck::solid {
namespace {

constexpr std::int64_t snaps_within = 1600; // grid steps: 10 µm

struct Coordinate {
    std::int64_t value;
    bool of_blank;
};

/// New value for each distinct old value, both ascending; only those that change.
std::vector<std::pair<std::int64_t, std::int64_t>> moves(std::vector<Coordinate>& values) {
    std::sort(values.begin(), values.end(),
              [](const Coordinate& a, const Coordinate& b) { return a.value < b.value; });
    std::vector<std::pair<std::int64_t, std::int64_t>> changed;
    for (std::size_t i = 0; i < values.size();) {
        std::size_t end = i;
        std::int64_t keep = values[i].value;
        bool from_blank = false;
        for (; end < values.size() && values[end].value - values[i].value <= snaps_within; ++end)
            if (values[end].of_blank && !from_blank) {
                keep = values[end].value;
                from_blank = true;
            }
        for (; i < end; ++i)
            if (values[i].value != keep && !(from_blank && values[i].of_blank))
                changed.push_back({values[i].value, keep});
    }
    changed.erase(std::unique(changed.begin(), changed.end()), changed.end());
    return changed;
}

} // namespace

Snapped::Snapped(const Shape& blank, const std::vector<Shape>& tools) : cut_{&blank, {}} {
    std::array<std::vector<std::pair<std::int64_t, std::int64_t>>, 3> change;
    std::vector<Coordinate> values;
    for (int axis = 0; axis < 3; ++axis) {
        values.clear();
        const auto collect = [&](const Shape& shape, bool of_blank) {
            for (const Shape::Corner& corner : shape.corners())
                if (corner.may_snap & 1u << axis) values.push_back({corner.at[axis], of_blank});
        };
        collect(blank, true);
        for (const Shape& tool : tools) collect(tool, false);
        change[axis] = moves(values);
    }
    const bool all_stay = change[0].empty() && change[1].empty() && change[2].empty();
    std::vector<GridPoint> places;
    for (const Shape& tool : tools) {
        cut_.tools.push_back(&tool);
        if (all_stay) continue;
        places.clear();
        bool moves_at_all = false;
        for (const Shape::Corner& corner : tool.corners()) {
            GridPoint p = corner.at;
            for (int axis = 0; axis < 3; ++axis) {
                if (!(corner.may_snap & 1u << axis)) continue;
                const auto found = std::lower_bound(change[axis].begin(), change[axis].end(),
                                                    std::pair{p[axis], std::int64_t{INT64_MIN}});
                if (found != change[axis].end() && found->first == p[axis]) p[axis] = found->second;
            }
            moves_at_all = moves_at_all || !(p == corner.at);
            places.push_back(p);
        }
        if (moves_at_all) cut_.tools.back() = &moved_.emplace_back(tool.with_corners(places));
    }
}

} // namespace rayfleck::solid
