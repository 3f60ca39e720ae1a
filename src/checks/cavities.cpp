// See cavities.hpp.

#include "checks/cavities.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rayfleck::checks {
namespace {

constexpr double touching = 0.02;

bool open_at(const measure::Box& box, const joinery::Made& made, piece::LocalSide side) {
    const measure::Box& solid = made.solid.box;
    return side.high ? box.high[side.axis] >= solid.high[side.axis] - touching
                     : box.low[side.axis] <= solid.low[side.axis] + touching;
}

bool in_a_box_of_waste(const joinery::Made& made, measure::Point p) {
    return std::any_of(made.cuts.begin(), made.cuts.end(), [&](const piece::Cut& cut) {
        const auto* box = std::get_if<piece::BoxCut>(&cut.shape);
        if (box == nullptr) return false;
        for (int axis = 0; axis < 3; ++axis)
            if (p[axis] < box->box.low[axis] || p[axis] > box->box.high[axis]) return false;
        return true;
    });
}

} // namespace

std::optional<Hollow> hollow_of(const piece::Cut& cut, const joinery::Made& made) {
    const auto* waste = std::get_if<piece::BoxCut>(&cut.shape);
    if (waste == nullptr) return std::nullopt;
    Hollow hollow;
    hollow.cut = &cut;
    hollow.box = waste->box;
    for (int axis = 0; axis < 3; ++axis) {
        hollow.box.low[axis] = std::max(hollow.box.low[axis], made.solid.box.low[axis]);
        hollow.box.high[axis] = std::min(hollow.box.high[axis], made.solid.box.high[axis]);
        if (hollow.size(axis) < touching) return std::nullopt;
    }
    bool any = false;
    for (int axis = 0; axis < 3; ++axis) {
        const bool low = open_at(hollow.box, made, {axis, false}),
                   high = open_at(hollow.box, made, {axis, true});
        hollow.open_sides += low + high;
        if (low == high) continue; // closed, or through
        if (any && hollow.size(axis) >= hollow.depth) continue;
        any = true;
        hollow.mouth = {axis, high};
        hollow.depth = hollow.size(axis);
    }
    if (!any) {
        // Through from side to side: as deep as it is long that way; a through mortise.
        for (int axis = 0; axis < 3; ++axis)
            if (open_at(hollow.box, made, {axis, false}) && (!any || hollow.size(axis) < hollow.depth)) {
                any = true;
                hollow.mouth = {axis, true};
                hollow.depth = hollow.size(axis);
            }
    }
    return any ? std::optional(hollow) : std::nullopt;
}

std::vector<Wall> walls_of(const Hollow& hollow, const joinery::Made& made) {
    std::vector<Wall> walls;
    constexpr std::array<double, 3> shares{0.09, 0.517, 0.93}; // off planes of symmetry
    for (int axis = 0; axis < 3; ++axis)
        for (bool high : {false, true}) {
            if (open_at(hollow.box, made, {axis, high})) continue;
            Wall wall;
            wall.side = {axis, high};
            bool any = false;
            const int u = (axis + 1) % 3, v = (axis + 2) % 3;
            measure::Vector out;
            out[axis] = high ? 1 : -1;
            for (double su : shares)
                for (double sv : shares) {
                    measure::Point from;
                    from[axis] = high ? hollow.box.high[axis] : hollow.box.low[axis];
                    from[u] = hollow.box.low[u] + su * hollow.size(u);
                    from[v] = hollow.box.low[v] + sv * hollow.size(v);
                    const auto inside = solid::inside_along(made.solid, from - out * 0.01, out);
                    std::size_t i = 0;
                    while (i < inside.size() && inside[i].second < 0.02) ++i;
                    if (i == inside.size() || inside[i].first > 0.05)
                        continue; // another hollow begins at once
                    const double start = std::max(inside[i].first, 0.01);
                    double leave = inside[i].second;
                    // A bore in the wall is no end of it.
                    while (i + 1 < inside.size() &&
                           !in_a_box_of_waste(made, from + out * ((leave + inside[i + 1].first) / 2 - 0.01)))
                        leave = inside[++i].second;
                    const double thick = leave - start;
                    if (any && thick >= wall.thickness) continue;
                    any = true;
                    wall.thickness = thick;
                    wall.to_hollow = i + 1 < inside.size();
                    wall.at = from + out * (thick / 2);
                }
            if (any) walls.push_back(wall);
        }
    return walls;
}

} // namespace rayfleck::checks
