// Turned solids: rings of corners about frame's x axis, joined by flat trapezoids.
//
// All rings have the same number of corners in the same directions, so the four corners of each trapezoid lie
// in one plane whatever the radii. Each ring's corners lie so far out that its polygon has the area of the
// circle; a stretch between two rings then has exactly the volume of the cone frustum, h/3 (A1 + sqrt(A1 A2)
// + A2). Two stations at the same x make a square shoulder. A radius of 0 makes a point.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "solid/outline.hpp"

namespace rayfleck::solid {
namespace {

constexpr double pi = 3.14159265358979323846;
/// A smooth curve ends where its profile turns by more than this at one station: there is a visible line.
constexpr double sharpest_bend = pi / 6;

double slope(const Station& a, const Station& b) { return std::atan2(b.radius - a.radius, b.x - a.x); }

std::vector<Station> checked(const std::vector<Station>& profile) {
    if (profile.size() < 2) throw std::invalid_argument("a turned solid needs at least two stations");
    std::vector<Station> stations;
    for (const Station& station : profile) {
        if (!(station.radius >= 0))
            throw std::invalid_argument("a turned solid's radius must not be below zero");
        if (!stations.empty() && !(station.x >= stations.back().x))
            throw std::invalid_argument("the stations of a turned solid must ascend");
        if (!stations.empty() && station.x == stations.back().x && station.radius == stations.back().radius) {
            stations.back().smooth = station.smooth;
            continue;
        }
        stations.push_back(station);
    }
    if (!(stations.back().x > stations.front().x))
        throw std::invalid_argument("a turned solid needs a length");
    for (std::size_t i = 0; i + 1 < stations.size(); ++i)
        if (stations[i].radius == 0 && stations[i + 1].radius == 0)
            throw std::invalid_argument("a turned solid must not shrink to a line");
    return stations;
}

} // namespace

Shape turned(const Frame& frame, const std::vector<Station>& profile) {
    const std::vector<Station> stations = checked(profile);
    double largest = 0;
    for (const Station& station : stations) largest = std::max(largest, station.radius);
    const int n = sides_per_turn(largest);
    const double outwards = area_true_radius(n);

    unsigned may_snap = 0;
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(std::abs(frame.x[axis]) - 1.0) < 1e-12) may_snap = 1u << axis;

    std::vector<Shape::Corner> corners;
    std::vector<int> first; // per station: its first corner
    for (const Station& station : stations) {
        first.push_back(static_cast<int>(corners.size()));
        if (station.radius == 0) {
            corners.push_back({to_grid(frame.out({station.x, 0, 0})), may_snap});
            continue;
        }
        for (int i = 0; i < n; ++i) {
            const double angle = 2 * pi * i / n, r = station.radius * outwards;
            corners.push_back(
                {to_grid(frame.out({station.x, r * std::cos(angle), r * std::sin(angle)})), may_snap});
        }
    }

    std::vector<std::vector<int>> rings;
    std::vector<int> curves;
    const auto is_point = [&](std::size_t s) { return stations[s].radius == 0; };
    const auto corner = [&](std::size_t s, int i) { return first[s] + (is_point(s) ? 0 : i % n); };
    // Seen from +x the corners run anticlockwise about the axis, so the far end keeps their order.
    if (!is_point(0)) {
        std::vector<int> end;
        for (int i = n - 1; i >= 0; --i) end.push_back(corner(0, i));
        rings.push_back(end);
        curves.push_back(0);
    }
    int curve = 0;
    for (std::size_t s = 0; s + 1 < stations.size(); ++s) {
        const bool goes_on = s > 0 && stations[s].smooth && stations[s - 1].smooth &&
                             std::abs(slope(stations[s], stations[s + 1]) -
                                      slope(stations[s - 1], stations[s])) < sharpest_bend;
        if (!goes_on) ++curve;
        for (int i = 0; i < n; ++i) {
            std::vector<int> ring{corner(s, i)};
            for (const int next : {corner(s, i + 1), corner(s + 1, i + 1), corner(s + 1, i)})
                if (next != ring.back() && next != ring.front()) ring.push_back(next);
            rings.push_back(ring);
            curves.push_back(curve);
        }
    }
    if (!is_point(stations.size() - 1)) {
        std::vector<int> end;
        for (int i = 0; i < n; ++i) end.push_back(corner(stations.size() - 1, i));
        rings.push_back(end);
        curves.push_back(0);
    }
    return Shape::from_facets(std::move(corners), rings, curves);
}

} // namespace rayfleck::solid
