// Separating axes of two oriented boxes, and the line by which one part goes into the other.
//
// For boxes fifteen axes are enough: three faces of each and nine pairs of edges (the usual theorem on convex
// bodies). The section of A over B is A's rectangle clipped by B's planes just inside B's surface.

#include "joinery/meeting.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace rayfleck::joinery {
namespace {

constexpr double square_within = 1e-9;
constexpr double infinite = std::numeric_limits<double>::infinity();

std::array<Point, 8> corners_of(const piece::Part& part) {
    std::array<Point, 8> corners;
    for (int c = 0; c < 8; ++c)
        corners[static_cast<std::size_t>(c)] = part.frame.out(
            {c & 1 ? size_of(part, 0) : 0, c & 2 ? size_of(part, 1) : 0, c & 4 ? size_of(part, 2) : 0});
    return corners;
}

struct Range {
    double low = infinite, high = -infinite;
};

Range along(const std::array<Point, 8>& corners, Vector direction) {
    Range range;
    for (const Point p : corners) {
        range.low = std::min(range.low, dot(p, direction));
        range.high = std::max(range.high, dot(p, direction));
    }
    return range;
}

std::array<Vector, 3> axes_of(const Frame& frame) { return {frame.x, frame.y, frame.z}; }

/// A polygon of the plane of A's section: coordinates along the two other axes.
struct SectionPoint {
    double u = 0, v = 0;
};

std::vector<SectionPoint> clipped(const std::vector<SectionPoint>& polygon, double nu, double nv,
                                  double offset) {
    std::vector<SectionPoint> kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const SectionPoint p = polygon[i], q = polygon[(i + 1) % polygon.size()];
        const double sp = nu * p.u + nv * p.v - offset, sq = nu * q.u + nv * q.v - offset;
        if (sp <= 0) kept.push_back(p);
        if ((sp < 0 && sq > 0) || (sp > 0 && sq < 0)) {
            const double t = sp / (sp - sq);
            kept.push_back({p.u + t * (q.u - p.u), p.v + t * (q.v - p.v)});
        }
    }
    return kept;
}

/// A's section at `level` of its axis, clipped by planes of A's frame.
std::vector<SectionPoint> section_polygon(const piece::Part& a, int k, double level,
                                          const std::vector<Plane>& own, const std::vector<Plane>& others) {
    const int u = (k + 1) % 3, v = (k + 2) % 3;
    std::vector<SectionPoint> polygon{
        {0, 0}, {size_of(a, u), 0}, {size_of(a, u), size_of(a, v)}, {0, size_of(a, v)}};
    for (const std::vector<Plane>* planes : {&own, &others})
        for (const Plane& plane : *planes) {
            polygon =
                clipped(polygon, plane.normal[u], plane.normal[v], plane.offset - plane.normal[k] * level);
            if (polygon.empty()) return polygon;
        }
    return polygon;
}

/// The same as bounds.
std::optional<Box> clipped_section(const piece::Part& a, int k, double level, const std::vector<Plane>& own,
                                   const std::vector<Plane>& others) {
    const int u = (k + 1) % 3, v = (k + 2) % 3;
    const std::vector<SectionPoint> polygon = section_polygon(a, k, level, own, others);
    if (polygon.empty()) return std::nullopt;
    Range ru, rv;
    for (const SectionPoint p : polygon) {
        ru.low = std::min(ru.low, p.u);
        ru.high = std::max(ru.high, p.u);
        rv.low = std::min(rv.low, p.v);
        rv.high = std::max(rv.high, p.v);
    }
    if (ru.high - ru.low < touching_within || rv.high - rv.low < touching_within) return std::nullopt;
    Box box;
    box.low[u] = ru.low;
    box.high[u] = ru.high;
    box.low[v] = rv.low;
    box.high[v] = rv.high;
    return box;
}

/// A's own long planes (tapers) that narrow its section at `level`, not trims of this end.
std::vector<Plane> tapers_of(const piece::Part& a, int k) {
    std::vector<Plane> tapers;
    for (const Plane& plane : body_planes(a))
        if (std::abs(plane.normal[k]) < 0.5) tapers.push_back(plane);
    return tapers;
}

/// The plane of a convex body that a line crosses at t; sign -1 where it enters, 1 where it leaves.
Plane plane_met(const std::vector<Plane>& planes, Point p, Vector direction, double t, int sign) {
    Plane met;
    double nearest = infinite;
    for (const Plane& plane : planes) {
        const double slope = dot(plane.normal, direction) * sign;
        if (slope < 1e-9) continue;
        const double miss = std::abs((plane.offset - dot(plane.normal, p)) * sign / slope - t);
        if (miss < nearest) {
            nearest = miss;
            met = plane;
        }
    }
    return met;
}

/// The other planes of a body as limits in the section: where lines along `out` arrive at the leaning `face`,
/// a hair inside it. The result has no component along the section's axis k.
std::vector<Plane> projected(const std::vector<Plane>& planes, const Plane& face, Vector out, int k) {
    constexpr double inside = 0.01; // mm
    std::vector<Plane> limits;
    for (const Plane& plane : planes) {
        const double along = plane.normal[k] / face.normal[k];
        Plane limit{plane.normal - face.normal * along,
                    plane.offset - face.offset * along - plane.normal[k] * out[k] * inside};
        limit.normal[k] = 0;
        if (norm(limit.normal) > 1e-6) limits.push_back(limit);
    }
    return limits;
}

struct Sides {
    LocalSide from, onto;
    double score = -infinite; ///< separation, mm; the side with the greatest is the one that meets
};

/// Every side of A against the sides of B that look its way.
std::array<Sides, 6> sides_of(const piece::Part& a, const piece::Part& b) {
    std::array<Sides, 6> all;
    const auto ca = corners_of(a), cb = corners_of(b);
    const auto ax = axes_of(a.frame), bx = axes_of(b.frame);
    for (int s = 0; s < 6; ++s) {
        Sides& sides = all[static_cast<std::size_t>(s)];
        sides.from = {s / 2, s % 2 == 1};
        const Vector out = ax[static_cast<std::size_t>(s / 2)] * (s % 2 ? 1.0 : -1.0);
        const double own = along(cb, out).low - along(ca, out).high;
        sides.onto = side_towards(b, -out);
        const Vector n = bx[static_cast<std::size_t>(sides.onto.axis)] * (sides.onto.high ? 1.0 : -1.0);
        const double theirs = along(ca, n).low - along(cb, n).high;
        sides.score = std::max(own, theirs);
    }
    return all;
}

} // namespace

double size_of(const piece::Part& part, int axis) { return exact_size_of(part, axis).value(); }

measure::Length exact_size_of(const piece::Part& part, int axis) {
    return axis == 0 ? part.length : axis == 1 ? part.width : part.thickness;
}

Vector outward(LocalSide side) {
    Vector v;
    v[side.axis] = side.high ? 1.0 : -1.0;
    return v;
}

double coordinate(const piece::Part& part, LocalSide side, double beyond) {
    return side.high ? size_of(part, side.axis) + beyond : -beyond;
}

LocalSide side_towards(const piece::Part& part, Vector direction) {
    const Vector own = part.frame.turn_in(direction);
    int axis = 0;
    // A tie (a part turned by 45 degrees) goes to the lower axis; the margin keeps rounding out of the
    // choice.
    for (int i = 1; i < 3; ++i)
        if (std::abs(own[i]) > std::abs(own[axis]) + 1e-9) axis = i;
    return {axis, own[axis] > 0};
}

std::vector<Plane> body_planes(const piece::Part& part) {
    std::vector<Plane> planes;
    for (int axis = 0; axis < 3; ++axis)
        for (const bool high : {false, true})
            planes.push_back({outward({axis, high}), high ? size_of(part, axis) : 0.0});
    for (const piece::Cut& cut : part.shaping)
        if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape)) planes.push_back(plane->plane);
    return planes;
}

std::optional<std::pair<double, double>> inside_convex(const std::vector<Plane>& planes, Point p,
                                                       Vector direction) {
    double enter = -infinite, leave = infinite;
    for (const Plane& plane : planes) {
        const double slope = dot(plane.normal, direction), height = plane.offset - dot(plane.normal, p);
        if (std::abs(slope) < 1e-12) {
            if (height < -1e-9) return std::nullopt;
        } else if (slope > 0) {
            leave = std::min(leave, height / slope);
        } else {
            enter = std::max(enter, height / slope);
        }
    }
    if (!(enter < leave)) return std::nullopt;
    return std::pair{enter, leave};
}

Frame seen_from(const piece::Part& part, const Frame& frame) {
    return {part.frame.in(frame.origin), part.frame.turn_in(frame.x), part.frame.turn_in(frame.y),
            part.frame.turn_in(frame.z)};
}

Plane seen_from(const piece::Part& part, const Plane& plane) {
    return {part.frame.turn_in(plane.normal), plane.offset - dot(plane.normal, part.frame.origin)};
}

Plane carried_out(const piece::Part& part, const Plane& plane) {
    const Vector normal = part.frame.turn_out(plane.normal);
    return {normal, plane.offset + dot(normal, part.frame.origin)};
}

bool axes_agree(const piece::Part& a, const piece::Part& b) {
    for (const Vector axis : axes_of(a.frame)) {
        const Vector own = b.frame.turn_in(axis);
        if (std::max({std::abs(own.x), std::abs(own.y), std::abs(own.z)}) < 1.0 - square_within) return false;
    }
    return true;
}

Apart apart(const piece::Part& a, const piece::Part& b) {
    const auto ca = corners_of(a), cb = corners_of(b);
    Apart most{-infinite, {}};
    const auto try_axis = [&](Vector axis) {
        const double length = norm(axis);
        if (length < 1e-6) return;
        axis = axis * (1.0 / length);
        const Range ra = along(ca, axis), rb = along(cb, axis);
        if (rb.low - ra.high > most.gap + 1e-9) most = {rb.low - ra.high, axis};
        if (ra.low - rb.high > most.gap + 1e-9) most = {ra.low - rb.high, -axis};
    };
    for (const Vector axis : axes_of(a.frame)) try_axis(axis);
    for (const Vector axis : axes_of(b.frame)) try_axis(axis);
    for (const Vector one : axes_of(a.frame))
        for (const Vector other : axes_of(b.frame)) try_axis(cross(one, other));
    return most;
}

bool do_meet(const piece::Part& a, const piece::Part& b, bool corners_count) {
    if (apart(a, b).gap > touching_within) return false;
    if (corners_count) return true;
    const auto ca = corners_of(a), cb = corners_of(b);
    for (const auto& axes : {axes_of(a.frame), axes_of(b.frame)}) {
        int only_touching = 0;
        for (const Vector axis : axes) {
            const Range ra = along(ca, axis), rb = along(cb, axis);
            if (std::max(rb.low - ra.high, ra.low - rb.high) > -touching_within) ++only_touching;
        }
        if (only_touching > 1) return false;
    }
    return true;
}

std::optional<Meeting> meeting_of(const piece::Part& a, const piece::Part& b, Prefer prefer) {
    const auto all = sides_of(a, b);
    const Sides* chosen = nullptr;
    const auto better = [&](const Sides& s) { return chosen == nullptr || s.score > chosen->score + 1e-6; };
    if (prefer == Prefer::ends)
        for (int s = 0; s < 2; ++s) {
            const Sides& sides = all[static_cast<std::size_t>(s)];
            const double reach = -sides.score;
            // Not an end that lies beside B (a rail along a rail), nor one that has come out on the far side.
            const auto cb = corners_of(b);
            const Range rb = along(cb, a.frame.x);
            if (reach < 0.5 * size_of(a, 0) && reach <= rb.high - rb.low + touching_within && better(sides))
                chosen = &sides;
        }
    if (chosen == nullptr)
        for (const Sides& sides : all)
            if (better(sides)) chosen = &sides;

    Meeting meeting;
    meeting.from = chosen->from;
    meeting.onto = chosen->onto;
    meeting.aligned = axes_agree(a, b);
    const int k = meeting.from.axis;
    const Vector out = outward(meeting.from);
    meeting.into = a.frame.turn_out(out);

    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    const double side = coordinate(a, meeting.from, 0);
    const std::vector<Plane> tapers = tapers_of(a, k);

    // First where the middle of A's section goes, or else just inside B; then the section over B; then its
    // own middle.
    Point middle{size_of(a, 0) / 2, size_of(a, 1) / 2, size_of(a, 2) / 2};
    middle[k] = side;
    const Range near_b = along(corners_of(b), meeting.into);
    const double near = near_b.low - dot(a.frame.out(middle), meeting.into), deep = near_b.high - near_b.low;
    // B may begin later than its box, where it has been planed; so look farther and farther in.
    std::vector<double> levels;
    for (double in = std::min(0.5, deep / 2); in < deep; in *= 2) levels.push_back(near + in);
    if (const auto passage = inside_convex(of_b, middle, out))
        levels.insert(levels.begin(), passage->first + std::min(0.5, (passage->second - passage->first) / 2));
    std::optional<Box> window;
    for (std::size_t i = 0; i < levels.size() && !window; ++i)
        window = clipped_section(a, k, side + levels[i] * out[k], tapers, of_b);
    if (!window) return std::nullopt;
    meeting.window = *window;
    // A leaning surface is met at another level by every line of the section, so the section over it is
    // clipped where each line arrives; that gives a new middle, which is good enough after one round.
    for (int round = 0; round < 2; ++round) {
        Point at = (meeting.window.low + meeting.window.high) * 0.5;
        at[k] = side;
        const auto passage = inside_convex(of_b, at, out);
        if (!passage) return std::nullopt;
        meeting.gap = passage->first;
        meeting.deep = passage->second - passage->first;
        meeting.face = plane_met(of_b, at, out, passage->first, -1);
        meeting.far = plane_met(of_b, at, out, passage->second, 1);
        if (std::abs(dot(meeting.face.normal, out)) > 1.0 - square_within) break;
        const auto leaning = clipped_section(a, k, 0, tapers, projected(of_b, meeting.face, out, k));
        if (!leaning) break;
        meeting.window = *leaning;
    }
    meeting.square = std::abs(dot(meeting.face.normal, out)) > 1.0 - square_within;
    if (meeting.square) meeting.face.normal = -out;
    if (std::abs(meeting.gap) < touching_within && meeting.square) {
        // Meant to touch: the part's own side is the shoulder.
        meeting.deep += meeting.gap;
        meeting.gap = 0;
        meeting.face.offset = meeting.face.normal[k] * side;
    }
    return meeting;
}

std::vector<solid::Point2> overlap_of(const piece::Part& a, const piece::Part& b, const Meeting& meeting) {
    const int k = meeting.axis();
    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    const double level = coordinate(a, meeting.from, meeting.gap + std::min(0.5, meeting.deep / 2));
    std::vector<solid::Point2> polygon;
    for (const SectionPoint p : section_polygon(a, k, level, tapers_of(a, k), of_b))
        polygon.push_back({p.u, p.v});
    return polygon;
}

bool Meeting::over_whole_section(const piece::Part& a) const {
    for (int i = 0; i < 3; ++i)
        if (i != from.axis &&
            (window.low[i] > touching_within || window.high[i] < size_of(a, i) - touching_within))
            return false;
    return true;
}

std::pair<double, double> Meeting::reach_of(const piece::Part& a, const Plane& plane,
                                            const Box& section) const {
    const int k = from.axis, u = (k + 1) % 3, v = (k + 2) % 3;
    const Vector out = outward(from);
    const double slope = dot(plane.normal, out);
    std::pair<double, double> reach{infinite, -infinite};
    for (const double at_u : {section.low[u], section.high[u]})
        for (const double at_v : {section.low[v], section.high[v]}) {
            Point p;
            p[u] = at_u;
            p[v] = at_v;
            p[k] = coordinate(a, from, 0);
            const double t = (plane.offset - dot(plane.normal, p)) / slope;
            reach.first = std::min(reach.first, t);
            reach.second = std::max(reach.second, t);
        }
    return reach;
}

Box Meeting::box(const piece::Part& a, const Box& section, double near, double beyond) const {
    Box box = section;
    const double p = coordinate(a, from, near), q = coordinate(a, from, beyond);
    box.low[from.axis] = std::min(p, q);
    box.high[from.axis] = std::max(p, q);
    return box;
}

} // namespace rayfleck::joinery
