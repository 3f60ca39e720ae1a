// Fillets of one eighth, quirks of one sixth, unequal rounds as quarter ellipses in eight chords.

#include "rebuilt_mouldings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "solid/outline.hpp"

namespace rayfleck::testing {

using solid::Outline;
using solid::Point2;

/// Waste of a profile, x along the first face and y along the second, from the arris.
solid::Outline moulding_profile(const std::string& name, double w, double h) {
    Outline o;
    Point2 at{0, 0};
    int run = 0;
    const auto line = [&](Point2 to) {
        if (std::hypot(to.x - at.x, to.y - at.y) < 1e-9) return;
        o.edges.push_back({to, std::nullopt, true});
        o.smooth.push_back(0);
        at = to;
    };
    const auto round = [&](Point2 to, Point2 centre, bool anticlockwise) {
        const Point2 a{at.x - centre.x, at.y - centre.y}, b{to.x - centre.x, to.y - centre.y};
        if (std::abs(std::hypot(a.x, a.y) - std::hypot(b.x, b.y)) < 1e-7) {
            o.edges.push_back({to, centre, anticlockwise});
            o.smooth.push_back(0);
            at = to;
            return;
        }
        ++run;
        for (int i = 1; i <= 8; ++i) {
            const double t = std::numbers::pi / 16 * i;
            const Point2 p{centre.x + std::cos(t) * a.x + std::sin(t) * b.x,
                           centre.y + std::cos(t) * a.y + std::sin(t) * b.y};
            o.edges.push_back({i == 8 ? to : p, std::nullopt, true});
            o.smooth.push_back(run);
        }
        at = to;
    };
    const double fillet = std::min(w, h) / 8;
    if (name == "round-over") {
        line({w, 0});
        round({0, h}, {w, h}, false);
    } else if (name == "cove") {
        line({w, 0});
        round({0, h}, {0, 0}, true);
    } else if (name == "ovolo") {
        line({w, 0}), line({w, fillet});
        round({fillet, h}, {w, h}, false);
        line({0, h});
    } else if (name == "ogee") {
        line({w, 0}), line({w, fillet});
        round({(w + fillet) / 2, (h + fillet) / 2}, {w, (h + fillet) / 2}, false);
        round({fillet, h}, {fillet, (h + fillet) / 2}, true);
        line({0, h});
    } else if (name == "bead") {
        const double all = std::min(w, h), below = all / 50, r = all * 5 / 12, c = r + below;
        line({all, 0}), line({all, c}), line({c + r, c});
        round({c, below}, {c, c}, false);
        round({below, c}, {c, c}, false);
        round({c, c + r}, {c, c}, false);
        line({c, all}), line({0, all});
    } else {
        line({w, 0}), line({0, h});
    }
    line({0, 0});
    return o;
}

/// Wood taken by a moulding all round an outline. At each depth the section is the outline moved in by
/// what the profile takes there, mitred at its corners: A(p) = A - U p + sum of tan(half the turn) p².
double moulded_off_round(const solid::Outline& outline, const solid::Outline& profile) {
    const solid::FlatOutline flat = solid::flattened(outline);
    const std::size_t n = flat.points.size();
    double around = 0, miters = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const Point2 a = flat.points[i], b = flat.points[(i + 1) % n], c = flat.points[(i + 2) % n];
        around += std::hypot(b.x - a.x, b.y - a.y);
        const double turn = std::atan2((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x),
                                       (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y));
        miters += std::tan(turn / 2);
    }
    const solid::FlatOutline waste = solid::flattened(profile);
    // Between two levels of the profile what it takes in from the edge is a straight line: Simpson is
    // exact.
    std::vector<double> depths;
    for (const Point2 p : waste.points) depths.push_back(p.y);
    std::sort(depths.begin(), depths.end());
    const auto taken_at = [&](double depth, double towards) {
        const double y = depth + (towards - depth) * 1e-9;
        double most = 0;
        for (std::size_t i = 0; i < waste.points.size(); ++i) {
            const Point2 a = waste.points[i], b = waste.points[(i + 1) % waste.points.size()];
            if ((a.y - y) * (b.y - y) > 0 || a.y == b.y) continue;
            most = std::max(most, a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
        }
        return around * most - miters * most * most;
    };
    double sum = 0;
    for (std::size_t i = 0; i + 1 < depths.size(); ++i) {
        const double a = depths[i], b = depths[i + 1], m = (a + b) / 2;
        if (b - a < 1e-9) continue;
        sum += (b - a) / 6 * (taken_at(a, m) + 4 * taken_at(m, m) + taken_at(b, m));
    }
    return sum;
}

} // namespace rayfleck::testing
