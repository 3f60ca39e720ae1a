// Boundary labelling with straight leaders. The places for balloons are fixed: rows at one pitch on the four
// sides of a rectangle round the picture. Each part may be pointed at in several places. Parts and places are
// matched so that the sum of the leaders' lengths is the least there is (assignment problem, solved exactly
// with potentials and shortest augmenting paths, O(n² m) for n balloons and m places; Kuhn 1955 and Munkres
// 1957, from memory).
//
// What is guaranteed: every part gets its balloon; balloons stand in rows and do not touch; no leader crosses
// another, for if two crossed, exchanging their balloons would make the sum shorter; among these rows no
// other arrangement has shorter leaders in all. What is only sought: that no leader runs through another
// balloon, nor level or plumb. Several rectangles and shifts of the rows are tried, and the best by these
// two, then by length, is taken.
//
// A leader ends in a dot, since it ends within an area; of the places to point at those clear of lines are
// preferred.

#include "drawing/balloons.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

struct Standing {
    const BalloonWanted* wanted = nullptr;
    Point2 anchor, at;
    double length() const { return std::hypot(anchor.x - at.x, anchor.y - at.y); }
};

/// A part with the places that it may be pointed at.
struct Site {
    const BalloonWanted* wanted;
    std::vector<Point2> anchors;
};

std::vector<Site> sites_of(const Block& block, const std::vector<BalloonWanted>& wanted) {
    // Room round the dot.
    constexpr double clear = 1.2;
    std::vector<Site> sites;
    for (const BalloonWanted& w : wanted) {
        Site site{&w, {}};
        for (const Point2 p : w.anchors)
            if (block.occupied().free_for_text(corners(grown({p.x, p.y, p.x, p.y}, clear)), 0))
                site.anchors.push_back(p);
        if (site.anchors.empty()) site.anchors = w.anchors;
        if (!site.anchors.empty()) sites.push_back(std::move(site));
    }
    return sites;
}

/// Middles of places along a stretch, `shift` of a pitch from its beginning.
void add_row(std::vector<Point2>& places, Point2 from, Point2 to, double pitch, double shift) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    for (double at = shift * pitch; at <= length + 1e-9; at += pitch) {
        const double t = length > 0 ? at / length : 0;
        places.push_back({from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t});
    }
}

std::vector<Point2> places_round(const Rect& picture, double away, double pitch, double shift,
                                 std::size_t needed, const BalloonSides& sides) {
    const Rect ring = grown(picture, away);
    for (double beyond = 0;; beyond += pitch) {
        std::vector<Point2> places;
        // Columns run on past the picture; rows do where there are no columns.
        const double more = sides.left || sides.right ? 0 : beyond;
        for (const auto& [there, x] : {std::pair{sides.left, ring.left}, std::pair{sides.right, ring.right}})
            if (there) add_row(places, {x, picture.bottom - beyond}, {x, picture.top + beyond}, pitch, shift);
        for (const auto& [there, y] : {std::pair{sides.above, ring.top}, std::pair{sides.below, ring.bottom}})
            if (there)
                add_row(places, {picture.left + 2 - more, y}, {picture.right - 2 + more, y}, pitch, shift);
        if (places.size() >= needed) return places;
    }
}

/// For each row of costs the column it gets; sum least. At least as many columns as rows.
std::vector<std::size_t> cheapest(const std::vector<std::vector<double>>& costs) {
    const std::size_t n = costs.size(), m = costs.front().size();
    const double far = std::numeric_limits<double>::infinity();
    // Counted from 1; column 0 stands for the row that is being placed.
    std::vector<double> row_price(n + 1, 0.0), column_price(m + 1, 0.0);
    std::vector<std::size_t> row_of(m + 1, 0), before(m + 1, 0);
    for (std::size_t i = 1; i <= n; ++i) {
        row_of[0] = i;
        std::size_t here = 0;
        std::vector<double> least(m + 1, far);
        std::vector<char> done(m + 1, 0);
        do {
            done[here] = 1;
            const std::size_t row = row_of[here];
            std::size_t next = 0;
            double step = far;
            for (std::size_t j = 1; j <= m; ++j) {
                if (done[j]) continue;
                const double cost = costs[row - 1][j - 1] - row_price[row] - column_price[j];
                if (cost < least[j]) least[j] = cost, before[j] = here;
                if (least[j] < step) step = least[j], next = j;
            }
            for (std::size_t j = 0; j <= m; ++j)
                if (done[j])
                    row_price[row_of[j]] += step, column_price[j] -= step;
                else
                    least[j] -= step;
            here = next;
        } while (row_of[here] != 0);
        for (; here != 0; here = before[here]) row_of[here] = row_of[before[here]];
    }
    std::vector<std::size_t> column(n, 0);
    for (std::size_t j = 1; j <= m; ++j)
        if (row_of[j] != 0) column[row_of[j] - 1] = j - 1;
    return column;
}

std::vector<Standing> matched(const std::vector<Site>& sites, const std::vector<Point2>& places) {
    std::vector<std::vector<double>> costs;
    std::vector<std::vector<std::size_t>> nearest;
    for (const Site& site : sites) {
        costs.emplace_back().reserve(places.size());
        nearest.emplace_back().reserve(places.size());
        for (const Point2 p : places) {
            double least = std::numeric_limits<double>::infinity();
            std::size_t which = 0;
            for (std::size_t i = 0; i < site.anchors.size(); ++i) {
                const double dx = site.anchors[i].x - p.x, dy = site.anchors[i].y - p.y;
                const double square = dx * dx + dy * dy;
                if (square < least) least = square, which = i;
            }
            costs.back().push_back(std::sqrt(least));
            nearest.back().push_back(which);
        }
    }
    const std::vector<std::size_t> column = cheapest(costs);
    std::vector<Standing> standing;
    for (std::size_t i = 0; i < sites.size(); ++i)
        standing.push_back({sites[i].wanted, sites[i].anchors[nearest[i][column[i]]], places[column[i]]});
    return standing;
}

/// Squared.
double distance(Point2 p, Point2 a, Point2 b) {
    const double dx = b.x - a.x, dy = b.y - a.y, length = dx * dx + dy * dy;
    const double t = length > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0.0, 1.0) : 0;
    const double x = p.x - a.x - t * dx, y = p.y - a.y - t * dy;
    return x * x + y * y;
}

/// Leaders through another balloon, and such as lie level or plumb.
std::pair<int, int> faults(const std::vector<Standing>& all, double diameter) {
    const double near = (diameter / 2 + 0.3) * (diameter / 2 + 0.3);
    int through = 0, level = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const double dx = std::abs(all[i].anchor.x - all[i].at.x),
                     dy = std::abs(all[i].anchor.y - all[i].at.y);
        constexpr double least_slope = 0.06;
        if (std::min(dx, dy) < least_slope * std::max(dx, dy)) ++level;
        for (std::size_t j = 0; j < all.size(); ++j)
            if (i != j && distance(all[j].at, all[i].at, all[i].anchor) < near) ++through;
    }
    return {through, level};
}

} // namespace

void draw_balloons(Block& block, const Rect& picture, const std::vector<BalloonWanted>& wanted,
                   double diameter, const BalloonSides& sides) {
    const std::vector<Site> sites = sites_of(block, wanted);
    if (sites.empty()) return;
    std::vector<Standing> best;
    std::pair<int, int> least{std::numeric_limits<int>::max(), 0};
    double shortest = 0;
    for (const double away : {6.0, 12.0, 20.0, 32.0}) {
        for (const double shift : {0.5, 0.0, 0.25, 0.75}) {
            std::vector<Standing> trial = matched(
                sites, places_round(picture, diameter / 2 + away, diameter + 2, shift, sites.size(), sides));
            const std::pair<int, int> count = faults(trial, diameter);
            double sum = 0;
            for (const Standing& s : trial) sum += s.length();
            if (count < least || (count == least && sum < shortest - 1e-6))
                best = std::move(trial), least = count, shortest = sum;
        }
        // Farther out leaders only get longer.
        if (least.first == 0 && least.second == 0) break;
    }
    for (const Standing& s : best) {
        const double length = s.length();
        const Point2 start{s.at.x + (s.anchor.x - s.at.x) * diameter / 2 / length,
                           s.at.y + (s.anchor.y - s.at.y) * diameter / 2 / length};
        block.line(start, s.anchor, Pen::thin, Role::leader);
        block.dot(s.anchor, 1.2);
        balloon(block, s.at, diameter, s.wanted->reference);
        if (s.wanted->to_sheet >= 0)
            block.link(grown({s.at.x, s.at.y, s.at.x, s.at.y}, diameter / 2), s.wanted->to_sheet);
    }
}

} // namespace rayfleck::drawing
