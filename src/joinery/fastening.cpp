// The patch in which two parts meet, as a row along its longer way, and even places on it.
//
// As a rule the row runs along one of A's axes. Where the parts are turned against each other (a top on
// crosses that stand cornerwise) both lie over each other in a slanting patch: then the row runs along that
// edge of the patch over which it is narrowest. A row ends where an outline of either part ends, as that of a
// round top. The end distance is given up where the row is too short for it; the count is stated, or as many
// as keep the distance between neighbours. Left out: staggered and double rows.

#include "joinery/fastening.hpp"

#include <algorithm>
#include <cmath>

#include "solid/outline.hpp"

namespace rayfleck::joinery {

namespace {

/// A patch that fills less than this of its bounds along A's axes lies slanting to them.
constexpr double well_filled = 0.75;

double cross(solid::Point2 a, solid::Point2 b) { return a.x * b.y - a.y * b.x; }
double along(solid::Point2 p, solid::Point2 way) { return p.x * way.x + p.y * way.y; }

struct Extent {
    double low = 0, high = 0;
};

Extent extent_along(const std::vector<solid::Point2>& patch, solid::Point2 way) {
    Extent e{along(patch.front(), way), along(patch.front(), way)};
    for (const solid::Point2 p : patch) {
        e.low = std::min(e.low, along(p, way));
        e.high = std::max(e.high, along(p, way));
    }
    return e;
}

/// The edge of the patch over which it is narrowest; nothing where the patch fills its bounds.
std::optional<solid::Point2> slanting_way(const std::vector<solid::Point2>& patch) {
    if (patch.size() < 3) return std::nullopt;
    double twice = 0;
    for (std::size_t i = 0; i < patch.size(); ++i) twice += cross(patch[i], patch[(i + 1) % patch.size()]);
    const Extent x = extent_along(patch, {1, 0}), y = extent_along(patch, {0, 1});
    if (std::abs(twice) / 2 >= well_filled * (x.high - x.low) * (y.high - y.low)) return std::nullopt;
    std::optional<solid::Point2> best;
    double narrowest = 0;
    for (std::size_t i = 0; i < patch.size(); ++i) {
        const solid::Point2 p = patch[i], q = patch[(i + 1) % patch.size()];
        const double length = std::hypot(q.x - p.x, q.y - p.y);
        if (length < touching_within) continue;
        const solid::Point2 way{(q.x - p.x) / length, (q.y - p.y) / length};
        const Extent aside = extent_along(patch, {-way.y, way.x});
        if (best && aside.high - aside.low >= narrowest - 1e-6) continue;
        best = way;
        narrowest = aside.high - aside.low;
    }
    // One way of the two, whichever edge came first.
    if (best && (best->x < -1e-9 || (best->x < 1e-9 && best->y < 0))) best = {-best->x, -best->y};
    return best;
}

/// Ends the row where the outline of a part ends that it crosses with its face.
void end_with_outline(Row& row, const piece::Part& a, const piece::Part& part) {
    if (!part.outline) return;
    const Vector way = part.frame.turn_in(row.line);
    if (std::abs(way.z) > 1e-6 || std::abs(part.frame.turn_in(row.aside).z) > 1e-6) return;
    const Point start = part.frame.in(row.at(a, 0, row.middle));
    const std::vector<solid::Point2> points = solid::flattened(*part.outline).points;
    std::vector<double> crossings;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const solid::Point2 p{points[i].x - start.x, points[i].y - start.y};
        const solid::Point2 next = points[(i + 1) % points.size()];
        const solid::Point2 q{next.x - start.x, next.y - start.y}, line{way.x, way.y};
        const double from = cross(line, p), to = cross(line, q);
        if ((from > 0) == (to > 0)) continue;
        const double t = from / (from - to);
        crossings.push_back(along({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)}, line));
    }
    std::sort(crossings.begin(), crossings.end());
    // The longest stretch within the outline.
    Extent longest;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        const double low = std::max(row.low, crossings[i]), high = std::min(row.high, crossings[i + 1]);
        if (high - low > longest.high - longest.low) longest = {low, high};
    }
    if (longest.high - longest.low < touching_within) return;
    if (longest.low > row.low + touching_within) row.low = longest.low;
    if (longest.high < row.high - touching_within) row.high = longest.high;
}

} // namespace

Point Row::at(const piece::Part& a, double along_at, double across_at) const {
    return a.frame.out(origin + own_line * along_at + own_aside * across_at);
}

double Row::set_across(const Bench& bench, const Pair& pair) const {
    const Options options(*pair.wanted);
    const piece::OptionGiven* set = options.find("set");
    if (set == nullptr || !set->side || set->lengths.empty()) return middle;
    const double towards = dot(bench.towards(*set->side, pair.a), aside);
    const double from = set->lengths.front().value();
    if (std::abs(towards) <= 0.7) return middle;
    return towards > 0 ? across_high - from : across_low + from;
}

std::optional<Row> row_of(Bench& bench, const Pair& pair, Prefer prefer) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto meeting = meeting_for(bench, pair, prefer);
    if (!meeting) return std::nullopt;
    Row row;
    row.meeting = *meeting;
    const int k = meeting->axis(), u = (k + 1) % 3, v = (k + 2) % 3;
    const Box& window = meeting->window;
    row.origin[k] = coordinate(a, meeting->from, meeting->gap);
    const std::vector<solid::Point2> patch =
        meeting->aligned ? std::vector<solid::Point2>{} : overlap_of(a, b, *meeting);
    if (const auto way = slanting_way(patch)) {
        const solid::Point2 aside{-way->y, way->x};
        row.own_line[u] = way->x;
        row.own_line[v] = way->y;
        row.own_aside[u] = aside.x;
        row.own_aside[v] = aside.y;
        const Extent across = extent_along(patch, aside);
        row.across_low = across.low;
        row.across_high = across.high;
        const Extent whole = extent_along(patch, *way);
        row.low = whole.low;
        row.high = whole.high;
    } else {
        const bool u_longer = window.high[u] - window.low[u] >= window.high[v] - window.low[v];
        const int line = u_longer ? u : v, aside = u_longer ? v : u;
        row.own_line = outward({line, true});
        row.own_aside = outward({aside, true});
        row.low = window.low[line];
        row.high = window.high[line];
        row.across_low = window.low[aside];
        row.across_high = window.high[aside];
    }
    row.middle = (row.across_low + row.across_high) / 2;
    row.width = row.across_high - row.across_low;
    row.line = a.frame.turn_out(row.own_line);
    row.aside = a.frame.turn_out(row.own_aside);
    end_with_outline(row, a, a);
    end_with_outline(row, a, b);
    return row;
}

std::vector<double> places(const Row& row, std::optional<int> count, double every, double end) {
    const double inset = std::min(end, row.length() / 2);
    const double reach = row.length() - 2 * inset;
    int n =
        count.value_or(std::max(reach > 1 ? 2 : 1, static_cast<int>(std::ceil(reach / every - 1e-9)) + 1));
    n = std::clamp(n, 1, 500);
    std::vector<double> found;
    for (int i = 0; i < n; ++i)
        found.push_back(n == 1 ? (row.low + row.high) / 2 : row.low + inset + reach * i / (n - 1));
    return found;
}

} // namespace rayfleck::joinery
