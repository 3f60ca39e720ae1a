// Turned waste: the ring that a lathe takes off between a profile and a wider cylinder.
//
// A round tenon or a turned stretch between square ones is not the whole part, so it cannot be the blank; it
// is what remains when a ring of waste is cut away. Ring and solid share their corners' directions, so both
// have the true area of a circle in every section. Between the wide cylinder and the profile each step of the
// turn is bounded by flat trapezoids; end rings are one trapezoid per step.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "solid/outline.hpp"

namespace rayfleck::solid {

Shape turned_waste(const Frame& frame, const std::vector<Station>& profile, double outer_radius) {
    constexpr double pi = 3.14159265358979323846;
    if (profile.size() < 2) throw std::invalid_argument("turned waste needs at least two stations");
    double largest = 0;
    for (std::size_t i = 0; i < profile.size(); ++i) {
        if (!(profile[i].radius > 0)) throw std::invalid_argument("turned waste needs radii above zero");
        if (i > 0 && !(profile[i].x >= profile[i - 1].x))
            throw std::invalid_argument("the stations of turned waste must ascend");
        largest = std::max(largest, profile[i].radius);
    }
    if (!(profile.back().x > profile.front().x)) throw std::invalid_argument("turned waste needs a length");
    const int n = sides_per_turn(largest);
    const double outwards = area_true_radius(n);
    // Flats no nearer than the radius asked for, and well outside the profile: a ring has a thickness
    // everywhere.
    const double outer = std::max(outer_radius / std::cos(pi / n), largest * outwards + 1.0);

    unsigned may_snap = 0;
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(std::abs(frame.x[axis]) - 1.0) < 1e-12) may_snap = 1u << axis;

    // One closed loop per direction: along the profile, back along the outer cylinder.
    std::vector<Station> loop;
    for (const Station& station : profile)
        if (loop.empty() || station.x != loop.back().x || station.radius != loop.back().radius)
            loop.push_back(station);
    const int inner = static_cast<int>(loop.size());
    loop.push_back({profile.back().x, outer, false});
    loop.push_back({profile.front().x, outer, false});
    const int m = static_cast<int>(loop.size());

    std::vector<Shape::Corner> corners;
    for (int i = 0; i < n; ++i)
        for (int s = 0; s < m; ++s) {
            const double angle = 2 * pi * i / n;
            const double r = loop[static_cast<std::size_t>(s)].radius * (s < inner ? outwards : 1.0);
            corners.push_back({to_grid(frame.out({loop[static_cast<std::size_t>(s)].x, r * std::cos(angle),
                                                  r * std::sin(angle)})),
                               may_snap});
        }
    std::vector<std::vector<int>> rings;
    std::vector<int> curves;
    int curve = 1;
    for (int s = 0; s < m; ++s) {
        const int next = (s + 1) % m;
        const bool on_profile = s + 1 < inner;
        if (on_profile && s > 0 &&
            !(loop[static_cast<std::size_t>(s)].smooth && loop[static_cast<std::size_t>(s - 1)].smooth))
            ++curve;
        for (int i = 0; i < n; ++i) {
            const int here = i * m, there = (i + 1) % n * m;
            // Seen from the waste's outside, which on the profile is the side of the axis.
            rings.push_back({here + s, here + next, there + next, there + s});
            curves.push_back(on_profile ? curve : s == inner ? curve + 1000 : 0);
        }
    }
    return Shape::from_facets(std::move(corners), rings, curves);
}

} // namespace rayfleck::solid
