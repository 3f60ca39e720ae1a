// Outlines: area, faults, and laying arcs down as sides.
//
// Faults are looked for on the laid-down polygon: every pair of sides that are not neighbours must stay
// apart, and neighbours must not fold back on each other. All pairs are tried after sorting by x, which is
// quick for the few hundred sides that an outline has. Two arcs closer to each other than 0.01 mm may be
// taken for touching.
//
// Area-true arcs: a sector of angle t cut into m equal parts of angle d, end points at radius r, inner points
// at q. Area = sin d · (r q + (m - 2) q² / 2), which must be r² t / 2; solved for q.

#include "solid/outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rayfleck::solid {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double chord_tolerance = 0.01;  // mm
constexpr double same_place = 1e-6;       // mm
constexpr double tangent_within = 0.0087; // radians, half a degree

double distance(Point2 a, Point2 b) { return std::hypot(b.x - a.x, b.y - a.y); }
double cross(Point2 a, Point2 b) { return a.x * b.y - a.y * b.x; }
Point2 operator-(Point2 a, Point2 b) { return {a.x - b.x, a.y - b.y}; }

/// Signed angle that an arc turns through; a full turn when it ends where it starts.
double turn_of(Point2 from, const Edge2& edge) {
    const Point2 a = from - *edge.centre, b = edge.to - *edge.centre;
    double turn = std::atan2(cross(a, b), a.x * b.x + a.y * b.y);
    if (distance(from, edge.to) < same_place) return edge.anticlockwise ? 2 * pi : -2 * pi;
    if (edge.anticlockwise && turn < 0) turn += 2 * pi;
    if (!edge.anticlockwise && turn > 0) turn -= 2 * pi;
    return turn;
}

/// Direction (radians) in which an edge leaves its start, or arrives at its end.
double heading(Point2 from, const Edge2& edge, bool at_end) {
    if (!edge.centre) return std::atan2(edge.to.y - from.y, edge.to.x - from.x);
    const Point2 spoke = (at_end ? edge.to : from) - *edge.centre;
    return std::atan2(spoke.y, spoke.x) + (edge.anticlockwise ? pi / 2 : -pi / 2);
}

/// Number of the curve per edge: given smooth runs, arcs, and what joins an arc without a corner.
std::vector<int> curve_numbers(const Outline& outline, const std::vector<Point2>& starts) {
    const std::size_t n = outline.edges.size();
    std::vector<int> group(n);
    for (std::size_t i = 0; i < n; ++i) group[i] = static_cast<int>(i);
    const auto join = [&](std::size_t a, std::size_t b) {
        const int keep = group[a], drop = group[b];
        for (int& g : group)
            if (g == drop) g = keep;
    };
    const auto run = [&](std::size_t i) { return i < outline.smooth.size() ? outline.smooth[i] : 0; };
    std::vector<bool> curved(n);
    for (std::size_t i = 0; i < n; ++i) curved[i] = outline.edges[i].centre.has_value() || run(i) > 0;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t next = (i + 1) % n;
        if (next == i) continue;
        const bool same_run = run(i) > 0 && run(i) == run(next);
        const bool has_arc = outline.edges[i].centre.has_value() || outline.edges[next].centre.has_value();
        const double bend = std::remainder(heading(starts[next], outline.edges[next], false) -
                                               heading(starts[i], outline.edges[i], true),
                                           2 * pi);
        if (!same_run && !(has_arc && std::abs(bend) < tangent_within)) continue;
        join(i, next);
        curved[i] = curved[next] = true;
    }
    std::vector<int> number(n, 0);
    for (std::size_t i = 0; i < n; ++i) number[i] = curved[i] ? group[i] + 1 : 0;
    return number;
}

bool sides_meet(Point2 a, Point2 b, Point2 c, Point2 d) {
    const auto near_side = [](Point2 p, Point2 q, Point2 r) {
        const Point2 pq = q - p, pr = r - p;
        const double length = distance(p, q);
        if (length < same_place) return distance(p, r) < same_place;
        const double along = (pq.x * pr.x + pq.y * pr.y) / length;
        return along > -same_place && along < length + same_place &&
               std::abs(cross(pq, pr)) / length < same_place;
    };
    if (near_side(a, b, c) || near_side(a, b, d) || near_side(c, d, a) || near_side(c, d, b)) return true;
    const double abc = cross(b - a, c - a), abd = cross(b - a, d - a);
    const double cda = cross(d - c, a - c), cdb = cross(d - c, b - c);
    return (abc > 0) != (abd > 0) && (cda > 0) != (cdb > 0);
}

bool crosses_itself(const std::vector<Point2>& points) {
    struct Side {
        double low, high;
        std::size_t index;
    };
    const std::size_t n = points.size();
    std::vector<Side> sides;
    for (std::size_t i = 0; i < n; ++i) {
        const double a = points[i].x, b = points[(i + 1) % n].x;
        sides.push_back({std::min(a, b) - same_place, std::max(a, b) + same_place, i});
    }
    std::sort(sides.begin(), sides.end(), [](const Side& a, const Side& b) {
        return a.low != b.low ? a.low < b.low : a.index < b.index;
    });
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = i + 1; j < n && sides[j].low <= sides[i].high; ++j) {
            const std::size_t p = sides[i].index, q = sides[j].index;
            const Point2 a = points[p], b = points[(p + 1) % n], c = points[q], d = points[(q + 1) % n];
            if ((p + 1) % n == q || (q + 1) % n == p) {
                // Neighbours share a point; they may only fold back on each other.
                const bool p_first = (p + 1) % n == q;
                const Point2 back = p_first ? a - b : c - d, on = p_first ? d - c : b - a;
                const double lengths = std::hypot(back.x, back.y) * std::hypot(on.x, on.y);
                if (std::abs(cross(back, on)) <= 1e-9 * lengths && back.x * on.x + back.y * on.y > 0)
                    return true;
                continue;
            }
            if (sides_meet(a, b, c, d)) return true;
        }
    return false;
}

std::vector<Point2> starts_of(const Outline& outline) {
    std::vector<Point2> starts;
    Point2 from = outline.start;
    for (const Edge2& edge : outline.edges) {
        starts.push_back(from);
        from = edge.to;
    }
    return starts;
}

} // namespace

int sides_per_turn(double radius) {
    if (!(radius > chord_tolerance)) return 24;
    const double half_step = std::acos(1.0 - chord_tolerance / radius);
    const int needed = static_cast<int>(std::ceil(pi / half_step));
    return std::max(24, (needed + 3) / 4 * 4);
}

double area_true_radius(int sides) {
    const double step = 2 * pi / sides;
    return std::sqrt(step / std::sin(step));
}

double area(const Outline& outline) {
    double twice = 0;
    Point2 from = outline.start;
    for (const Edge2& edge : outline.edges) {
        // Relative to the start, so that an outline far from the origin loses no digits.
        twice += cross(from - outline.start, edge.to - outline.start);
        if (edge.centre) {
            const double radius = distance(from, *edge.centre), turn = turn_of(from, edge);
            twice += radius * radius * (turn - (std::abs(turn) > 6.28318 ? 0.0 : std::sin(turn)));
        }
        from = edge.to;
    }
    return twice / 2;
}

std::optional<std::string> fault_of(const Outline& outline) {
    if (outline.edges.empty()) return "the outline has no sides";
    if (!outline.smooth.empty() && outline.smooth.size() != outline.edges.size())
        return "the outline's smooth runs do not match its sides";
    const auto finite = [](Point2 p) { return std::isfinite(p.x) && std::isfinite(p.y); };
    if (!finite(outline.start)) return "the outline has a point that is not a number";
    Point2 from = outline.start;
    for (const Edge2& edge : outline.edges) {
        if (!finite(edge.to) || (edge.centre && !finite(*edge.centre)))
            return "the outline has a point that is not a number";
        if (edge.centre) {
            const double r1 = distance(from, *edge.centre), r2 = distance(edge.to, *edge.centre);
            if (r1 < same_place) return "an arc of the outline has no radius";
            if (std::abs(r1 - r2) > same_place)
                return "the ends of an arc are not equally far from its centre";
        } else if (distance(from, edge.to) < same_place) {
            return "a side of the outline has no length";
        }
        from = edge.to;
    }
    if (distance(from, outline.start) > same_place) return "the outline is not closed";
    const FlatOutline flat = flattened(outline);
    if (flat.points.size() < 3) return "the outline has fewer than three sides";
    if (crosses_itself(flat.points)) return "the outline crosses or touches itself";
    if (std::abs(area(outline)) < same_place) return "the outline holds no area";
    return std::nullopt;
}

FlatOutline flattened(const Outline& outline) {
    FlatOutline flat;
    const std::vector<Point2> starts = starts_of(outline);
    const std::vector<int> numbers = curve_numbers(outline, starts);
    const auto is_straight = [&](std::size_t i) {
        return !outline.edges[i].centre && (i >= outline.smooth.size() || outline.smooth[i] == 0);
    };
    for (std::size_t i = 0; i < outline.edges.size(); ++i) {
        const Edge2& edge = outline.edges[i];
        const Point2 from = starts[i];
        const std::size_t last = (i + outline.edges.size() - 1) % outline.edges.size();
        flat.points.push_back(from);
        flat.curve.push_back(numbers[i]);
        // Where a straight side runs into an arc, the corner still belongs to the straight side.
        flat.within_curve.push_back(numbers[i] != 0 && numbers[i] == numbers[last] && !is_straight(i) &&
                                    !is_straight(last));
        if (!edge.centre) continue;
        const Point2 c = *edge.centre;
        const double radius = distance(from, c), turn = turn_of(from, edge);
        const int whole = sides_per_turn(radius);
        const int parts = std::max(2, static_cast<int>(std::ceil(whole * std::abs(turn) / (2 * pi) - 1e-9)));
        const double step = turn / parts;
        // (m - 2) q² / 2 + r q = r² t / (2 sin d), in units of r.
        const double right = std::abs(turn) / (2 * std::sin(std::abs(step)));
        const double inner =
            parts == 2 ? right
                       : (std::sqrt(1 + 2 * (parts - 2) * right) - 1) / static_cast<double>(parts - 2);
        const double start = std::atan2(from.y - c.y, from.x - c.x);
        for (int k = 1; k < parts; ++k) {
            const double angle = start + step * k;
            flat.points.push_back(
                {c.x + radius * inner * std::cos(angle), c.y + radius * inner * std::sin(angle)});
            flat.curve.push_back(numbers[i]);
            flat.within_curve.push_back(true);
        }
    }
    double twice = 0;
    const std::size_t n = flat.points.size();
    for (std::size_t i = 0; i < n; ++i)
        twice += cross(flat.points[i] - flat.points[0], flat.points[(i + 1) % n] - flat.points[0]);
    if (twice < 0) {
        std::reverse(flat.points.begin(), flat.points.end());
        std::reverse(flat.within_curve.begin(), flat.within_curve.end());
        // Side i joined points i and i+1; reversed, it starts at the later one.
        std::reverse(flat.curve.begin(), flat.curve.end());
        std::rotate(flat.curve.begin(), flat.curve.begin() + 1, flat.curve.end());
    }
    return flat;
}

} // namespace rayfleck::solid
