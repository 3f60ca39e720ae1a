// Prisms of waste, turned profiles and blanks sawn to an outline.
//
// A prism that runs along one of the part's directions is told by its corners across it. Words take over
// where they can: an arc by its radius over the chord in the columns, a dovetail by the width to which it
// narrows and its slope, a slot by its round ends. What is left is told corner by corner, a smooth curve by
// ordinates. A hollow whose section is a rectangle and that leans two ways is told by its place on the
// surface, two angles, and the section; all other leaning prisms with one side along the part are prisms
// along that side.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "drawing/cut_atoms.hpp"
#include "drawing/part_borders.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::Point;
using measure::Vector;

constexpr double same_place = 1e-3; // mm
constexpr double along_an_axis = 1 - 1e-9;
constexpr std::size_t most_corners = 8; ///< told one by one; more are told by ordinates

int axis_of(Vector v) {
    for (int k = 0; k < 3; ++k)
        if (std::abs(v[k]) > along_an_axis) return k;
    return -1;
}

struct Rectangle {
    double low_x = 0, high_x = 0, low_y = 0, high_y = 0;
};
/// The outline when it is a rectangle along its frame's axes.
std::optional<Rectangle> rectangle_of(const solid::Outline& outline) {
    if (outline.edges.size() != 4) return std::nullopt;
    Rectangle r{outline.start.x, outline.start.x, outline.start.y, outline.start.y};
    solid::Point2 at = outline.start;
    for (const solid::Edge2& edge : outline.edges) {
        if (edge.centre) return std::nullopt;
        if (std::abs(edge.to.x - at.x) > 1e-9 && std::abs(edge.to.y - at.y) > 1e-9) return std::nullopt;
        at = edge.to;
        r.low_x = std::min(r.low_x, at.x), r.high_x = std::max(r.high_x, at.x);
        r.low_y = std::min(r.low_y, at.y), r.high_y = std::max(r.high_y, at.y);
    }
    return r;
}

bool is_straight(const std::vector<CutPoint>& points) {
    return std::none_of(points.begin(), points.end(),
                        [](const CutPoint& p) { return p.arc || p.smooth > 0; });
}

double doubled_area(const std::vector<CutPoint>& points) {
    double sum = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const CutPoint &a = points[i], &b = points[(i + 1) % points.size()];
        sum += a.x * b.y - b.x * a.y;
    }
    return sum;
}

bool is_convex(const std::vector<CutPoint>& points) {
    bool left = false, right = false;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const CutPoint &a = points[i], &b = points[(i + 1) % points.size()],
                       &c = points[(i + 2) % points.size()];
        const double turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
        left = left || turn > 1e-9, right = right || turn < -1e-9;
    }
    return !(left && right);
}

/// The part of a convex polygon on one side of a level.
std::vector<CutPoint> clipped(const std::vector<CutPoint>& points, bool on_x, double level, bool keep_above) {
    std::vector<CutPoint> kept;
    const auto height = [&](const CutPoint& p) {
        const double h = (on_x ? p.x : p.y) - level;
        return keep_above ? h : -h;
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        const CutPoint &a = points[i], &b = points[(i + 1) % points.size()];
        const double ha = height(a), hb = height(b);
        if (ha >= 0) kept.push_back(a);
        if ((ha > 0 && hb < 0) || (ha < 0 && hb > 0)) {
            CutPoint p;
            const double t = ha / (ha - hb);
            p.x = a.x + t * (b.x - a.x), p.y = a.y + t * (b.y - a.y);
            (on_x ? p.x : p.y) = level;
            kept.push_back(p);
        }
    }
    return kept;
}

std::vector<CutPoint> without_repeats(const std::vector<CutPoint>& points) {
    std::vector<CutPoint> kept;
    for (const CutPoint& p : points)
        if (kept.empty() || std::hypot(p.x - kept.back().x, p.y - kept.back().y) > 1e-6) kept.push_back(p);
    while (kept.size() > 1 &&
           std::hypot(kept.front().x - kept.back().x, kept.front().y - kept.back().y) < 1e-6)
        kept.pop_back();
    return kept;
}

/// Outline points in the gauge's frame, seen across `axis`.
/// to_gauge  carries a point of the outline's plane
template <typename Carry>
std::vector<CutPoint> carried(const solid::Outline& outline, int axis, Carry to_gauge) {
    const int p = (axis + 1) % 3, q = (axis + 2) % 3;
    const Point zero = to_gauge(solid::Point2{0, 0}), x = to_gauge(solid::Point2{1, 0}) - zero,
                y = to_gauge(solid::Point2{0, 1}) - zero;
    const bool turned_over = x[p] * y[q] - x[q] * y[p] < 0;
    std::vector<CutPoint> points;
    for (std::size_t i = 0; i < outline.edges.size(); ++i) {
        const solid::Edge2& edge = outline.edges[i];
        const Point at = to_gauge(edge.to);
        CutPoint point;
        point.x = at[p], point.y = at[q];
        if (edge.centre) {
            const Point c = to_gauge(*edge.centre);
            point.arc = true;
            point.centre_x = c[p], point.centre_y = c[q];
            point.anticlockwise = edge.anticlockwise != turned_over;
        }
        point.smooth = i < outline.smooth.size() ? outline.smooth[i] : 0;
        points.push_back(point);
    }
    return points;
}

Box extent(const std::vector<CutPoint>& points, int axis) {
    const int p = (axis + 1) % 3, q = (axis + 2) % 3;
    Box box;
    box.low[p] = box.low[q] = 1e12;
    box.high[p] = box.high[q] = -1e12;
    const auto take = [&](double x, double y) {
        box.low[p] = std::min(box.low[p], x), box.high[p] = std::max(box.high[p], x);
        box.low[q] = std::min(box.low[q], y), box.high[q] = std::max(box.high[q], y);
    };
    CutPoint before = points.back();
    for (const CutPoint& point : points) {
        take(point.x, point.y);
        if (point.arc) {
            // The arc's own extremes that lie on it.
            const double r = std::hypot(point.x - point.centre_x, point.y - point.centre_y);
            double from = std::atan2(before.y - point.centre_y, before.x - point.centre_x),
                   to = std::atan2(point.y - point.centre_y, point.x - point.centre_x);
            if (!point.anticlockwise) std::swap(from, to);
            while (to <= from + 1e-12) to += 2 * std::numbers::pi;
            for (int quarter = -4; quarter <= 8; ++quarter) {
                const double a = quarter * std::numbers::pi / 2;
                if (a > from && a < to)
                    take(point.centre_x + r * std::cos(a), point.centre_y + r * std::sin(a));
            }
        }
        before = point;
    }
    return box;
}

const char* axis_letter(int axis) { return axis == 0 ? "L" : axis == 1 ? "W" : "T"; }

std::string corners_words(const Telling& telling, const std::vector<CutPoint>& points, int axis) {
    const std::string head = fmt::format("{}/{} ", axis_letter((axis + 1) % 3), axis_letter((axis + 2) % 3));
    std::string words;
    const bool curved = points.size() > most_corners;
    // Of many points as many ordinates as a batten needs to be bent by them.
    constexpr std::size_t ordinates = 12;
    const std::size_t step = curved ? std::max<std::size_t>(1, points.size() / ordinates) : 1;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const CutPoint& p = points[i];
        const CutPoint& next = points[(i + 1) % points.size()];
        // Ends of smooth runs and of arcs are always told.
        const bool within = curved && p.smooth > 0 && next.smooth == p.smooth && !p.arc && !next.arc;
        if (within && i % step != 0) continue;
        words += words.empty() ? "" : ", ";
        if (p.arc)
            words += "arc R" + telling.figure(std::hypot(p.x - p.centre_x, p.y - p.centre_y)) + " to ";
        else if (p.smooth > 0)
            words += "curve to ";
        words += telling.figure(p.x) + "/" + telling.figure(p.y);
    }
    return "corners " + head + words;
}

/// `narrows to 25.4 at the back, slope 1:8` for a trapezoid that is alike on either side.
std::string trapezoid_words(const Telling& telling, Feature& feature, const std::vector<CutPoint>& points,
                            int axis, const Box& box) {
    if (points.size() != 4) return "";
    for (const bool along_x : {true, false}) {
        // Parallel sides along one axis, at the two borders of the other.
        const int deep_axis = along_x ? (axis + 2) % 3 : (axis + 1) % 3;
        std::vector<double> low, high;
        for (const CutPoint& p : points) {
            const double w = along_x ? p.x : p.y, d = along_x ? p.y : p.x;
            if (std::abs(d - box.low[deep_axis]) < same_place) low.push_back(w);
            if (std::abs(d - box.high[deep_axis]) < same_place) high.push_back(w);
        }
        if (low.size() != 2 || high.size() != 2) continue;
        const double at_low = std::abs(low[0] - low[1]), at_high = std::abs(high[0] - high[1]);
        if (std::abs((low[0] + low[1]) - (high[0] + high[1])) > 2 * same_place ||
            std::abs(at_low - at_high) < same_place)
            continue;
        const bool narrow_high = at_high < at_low;
        const double narrow = std::min(at_low, at_high);
        const double deep = box.high[deep_axis] - box.low[deep_axis];
        const std::string shown = telling.figure(narrow);
        telling.add(feature, "narrows to", narrow, shown);
        const bool at_border = narrow_high ? box.high[deep_axis] > telling.gauge.size(deep_axis) - same_place
                                           : box.low[deep_axis] < same_place;
        const double slope = 2 * deep / std::abs(at_low - at_high);
        const std::string ratio = fmt::format("(1:{:g})", std::round(slope * 10) / 10);
        feature.record.figures.push_back({"slope", slope, ratio, true});
        return "narrows to " + shown +
               (at_border ? " at the " + side_name(deep_axis, narrow_high) : std::string(" inwards")) +
               ", slope " + ratio;
    }
    return "";
}

bool is_rectangle(const std::vector<CutPoint>& points, const Box& box, int axis) {
    const int p = (axis + 1) % 3, q = (axis + 2) % 3;
    return std::all_of(points.begin(), points.end(), [&](const CutPoint& c) {
        return (std::abs(c.x - box.low[p]) < same_place || std::abs(c.x - box.high[p]) < same_place) &&
               (std::abs(c.y - box.low[q]) < same_place || std::abs(c.y - box.high[q]) < same_place);
    });
}

void tell_shape(const Telling& telling, Feature& feature, const std::vector<CutPoint>& points, int axis,
                const Box& box) {
    const std::size_t arcs = static_cast<std::size_t>(
        std::count_if(points.begin(), points.end(), [](const CutPoint& p) { return p.arc; }));
    std::string& words = feature.words;
    const auto tell = [&](const std::string& more) { words += (words.empty() ? "" : ", ") + more; };
    if (arcs == 1 && points.size() == 2) {
        for (const CutPoint& p : points)
            if (p.arc) {
                const double r = std::hypot(p.x - p.centre_x, p.y - p.centre_y);
                const std::string shown = "R" + telling.figure(r);
                telling.add(feature, "radius", r, shown);
                tell("arc " + shown + " over the chord");
            }
        return;
    }
    if (arcs == 2 && points.size() == 4) {
        tell("round ends");
        return;
    }
    if (arcs == 0 && is_straight(points)) {
        if (is_rectangle(points, box, axis) && points.size() == 4) return;
        if (const std::string trapezoid = trapezoid_words(telling, feature, points, axis, box);
            !trapezoid.empty()) {
            tell(trapezoid);
            return;
        }
    }
    feature.below = corners_words(telling, points, axis);
}

/// A rectangle that lies at an angle to the outline's axes.
struct TurnedRectangle {
    Point middle;                ///< in the gauge's frame
    Vector way;                  ///< along its longer sides, towards high coordinates of `main`
    double longer = 0, wide = 0; ///< mm along and across `way`
    int main = 0, aside = 0;     ///< axes that `way` follows most, and to which it leans
    double lean = 0;             ///< degrees, positive to high coordinates of `aside`
};

std::optional<TurnedRectangle> turned_rectangle(const std::vector<CutPoint>& points, int axis) {
    if (points.size() != 4 || !is_straight(points)) return std::nullopt;
    const int p = (axis + 1) % 3, q = (axis + 2) % 3;
    std::array<Vector, 4> sides;
    TurnedRectangle r;
    for (std::size_t i = 0; i < 4; ++i) {
        const CutPoint &a = points[i], &b = points[(i + 1) % 4];
        sides[i][p] = b.x - a.x, sides[i][q] = b.y - a.y;
        r.middle[p] += a.x / 4, r.middle[q] += a.y / 4;
    }
    const double a = measure::norm(sides[0]), b = measure::norm(sides[1]);
    if (a < same_place || b < same_place || measure::norm(sides[0] + sides[2]) > same_place ||
        std::abs(dot(sides[0], sides[1])) > 1e-6 * a * b)
        return std::nullopt;
    r.way = measure::unit(a > b ? sides[0] : sides[1]);
    r.longer = std::max(a, b), r.wide = std::min(a, b);
    r.main = std::abs(r.way[p]) > std::abs(r.way[q]) ? p : q;
    r.aside = r.main == p ? q : p;
    if (r.way[r.main] < 0) r.way = -r.way;
    r.lean = std::atan2(r.way[r.aside], r.way[r.main]) * 180 / std::numbers::pi;
    if (std::abs(r.lean) < 0.01) return std::nullopt;
    return r;
}

/// A slanting hollow is told as it is set out: its own width (and length, where its ends lie within the
/// wood), its angle, and one place that can be marked: its middle, or, when it runs out of the wood or is cut
/// short, where its near side, drawn on, meets the marked edge or face.
/// within  nothing of it was cut off by the blank's borders
/// Returns the place to which the columns refer; nothing where there is none on the wood.
std::optional<Point> tell_turned(const Telling& telling, Feature& feature, const TurnedRectangle& r,
                                 bool within) {
    const std::string wide = telling.figure(r.wide), angle = telling.degrees(std::abs(r.lean));
    std::string words = wide + " wide";
    telling.add(feature, "true width", r.wide, wide);
    if (within) {
        const std::string longer = telling.figure(r.longer);
        telling.add(feature, "true length", r.longer, longer);
        words = longer + " × " + wide;
    }
    telling.add(feature, "turned", r.lean, angle);
    words += ", " + angle + (r.main == 0 ? " off the length" : " off square") + ", towards the " +
             side_name(r.aside, r.lean > 0) + " at the " + side_name(r.main, true);
    std::optional<Point> place;
    if (within) {
        place = r.middle;
        words += "; placed by its middle";
    } else if (r.main != 0 && r.aside == 0) {
        // Half the width back along the length, then along the side to the border.
        Point mark;
        mark[0] = r.middle[0] - r.wide / 2 / r.way[r.main] - r.middle[r.main] * r.way[0] / r.way[r.main];
        if (mark[0] > 0 && mark[0] < telling.gauge.size(0)) {
            place = mark;
            words += "; placed where its near side meets the " + side_name(r.main, false);
        }
    }
    feature.words += (feature.words.empty() ? "" : ", ") + words;
    feature.placed_by_mark = place.has_value();
    return place;
}

std::optional<Atom> leaning_atom(const Telling& telling, const piece::Cut& cut, const piece::PrismCut& prism,
                                 const Rectangle& r) {
    if (cut.joint < 0) return std::nullopt;
    const joinery::Joint& joint = telling.job.model.joints[static_cast<std::size_t>(cut.joint)];
    const Vector way = telling.made.part->frame.turn_in(joint.assembly);
    const solid::Frame& f = prism.frame;
    struct Side {
        Vector axis;
        double low, high;
    };
    std::array<Side, 3> sides{
        {{f.x, r.low_x, r.high_x}, {f.y, r.low_y, r.high_y}, {f.z, prism.from, prism.to}}};
    std::size_t deep = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(dot(sides[i].axis, way)) > std::abs(dot(sides[deep].axis, way))) deep = i;
    const Side &d = sides[deep], &u = sides[(deep + 1) % 3], &v = sides[(deep + 2) % 3];
    // The bottom of the hollow lies inside the blank, the mouth outside.
    const Vector origin = f.origin + u.axis * ((u.low + u.high) / 2) + v.axis * ((v.low + v.high) / 2);
    int axis = 0;
    for (int k = 1; k < 3; ++k)
        if (std::abs(d.axis[k]) > std::abs(d.axis[axis])) axis = k;
    const Box& blank = telling.made.blank;
    const auto outside = [&](double t) {
        const double x = (origin + d.axis * t)[axis];
        return x < blank.low[axis] + same_place || x > blank.high[axis] - same_place;
    };
    const bool mouth_at_high = outside(d.high) && !outside(d.low);
    const bool both = outside(d.high) && outside(d.low);
    const Vector into = mouth_at_high ? -d.axis : d.axis;
    const double bottom = mouth_at_high ? d.low : d.high;
    Atom atom;
    Feature& feature = atom.feature;
    CutRecord& record = feature.record;
    record.form = CutForm::leaning;
    record.word = cut.word;
    record.axis = axis;
    record.through = both;
    const Vector direction = telling.gauge.turn(into);
    // Into the wood from low coordinates means from the near side of the gauge's frame.
    record.far = direction[axis] < 0;
    record.side = side_name(axis, record.far);
    const double surface = record.far ? telling.gauge.size(axis) : 0;
    const Point middle = telling.gauge.in(origin);
    const double t = (surface - middle[axis]) / direction[axis];
    const Point entry = middle + direction * t;
    atom.at = entry;
    for (int k = 0; k < 3; ++k) atom.placed[static_cast<std::size_t>(k)] = k != axis;
    const int first = axis == 0 ? 1 : 0;
    Vector reference;
    reference[first] = 1;
    reference = measure::unit(reference - direction * direction[first]);
    const Vector across = cross(direction, reference);
    const Vector gu = telling.gauge.turn(u.axis);
    double twist = std::atan2(dot(gu, across), dot(gu, reference)) * 180 / std::numbers::pi;
    double a = u.high - u.low, b = v.high - v.low;
    // The first size is the one nearer to the reference.
    while (twist > 45 + 1e-9) twist -= 90, std::swap(a, b);
    while (twist < -45 - 1e-9) twist += 90, std::swap(a, b);
    const std::string shown_a = telling.figure(a), shown_b = telling.figure(b);
    telling.add(feature, "first side", a, shown_a);
    telling.add(feature, "second side", b, shown_b);
    feature.words = shown_a + " × " + shown_b;
    if (both) {
        feature.words += ", through";
    } else {
        const double reach =
            dot(telling.gauge.in(f.origin + d.axis * bottom + u.axis * ((u.low + u.high) / 2) +
                                 v.axis * ((v.low + v.high) / 2)) -
                    entry,
                direction);
        const std::string shown = telling.figure(reach);
        telling.add(feature, "deep", reach, shown);
        feature.words += ", " + shown + " deep";
    }
    feature.words += ", in the " + record.side + ", ";
    feature.words += leaning_words(telling, feature, direction, axis);
    const std::string shown_twist = telling.degrees(std::abs(twist));
    if (std::abs(twist) > 1e-7) {
        telling.add(feature, "twist", twist, shown_twist);
        feature.words += ", turned " + shown_twist +
                         ((twist > 0) == telling.gauge.face_edge_high ? " clockwise" : " anticlockwise") +
                         ", seen from the " + record.side;
    }
    atom.box = {entry, entry};
    for (int k = 0; k < 3; ++k)
        if (k != axis) {
            atom.box.low[k] -= k == first ? a / 2 : b / 2;
            atom.box.high[k] += k == first ? a / 2 : b / 2;
        }
    feature.seen_from = piece::LocalSide{axis, axis == 0   ? record.far
                                               : axis == 1 ? record.far != telling.gauge.face_edge_high
                                                           : !record.far};
    if (!cut.remark.empty()) feature.words += " (" + cut.remark + ")";
    return atom;
}

} // namespace

std::optional<Atom> prism_atom(const Telling& telling, const piece::Cut& cut, const piece::PrismCut& prism) {
    const solid::Frame& f = prism.frame;
    const auto rectangle = rectangle_of(prism.outline);
    int axis = axis_of(f.z);
    std::vector<CutPoint> points;
    double low = 0, high = 0;
    const auto range = [&](Vector along, double from, double to) {
        const Point a = telling.gauge.in(f.origin + along * from),
                    b = telling.gauge.in(f.origin + along * to);
        low = std::max(0.0, std::min(a[axis], b[axis]));
        high = std::min(telling.gauge.size(axis), std::max(a[axis], b[axis]));
    };
    if (axis >= 0) {
        const auto carry = [&](solid::Point2 p) { return telling.gauge.in(f.out({p.x, p.y, 0})); };
        points = carried(prism.outline, axis, carry);
        range(f.z, prism.from, prism.to);
    } else if (rectangle) {
        const bool on_x = axis_of(f.x) >= 0;
        axis = on_x ? axis_of(f.x) : axis_of(f.y);
        if (axis < 0) return leaning_atom(telling, cut, prism, *rectangle);
        const Vector across = on_x ? f.y : f.x;
        const double a = on_x ? rectangle->low_y : rectangle->low_x,
                     b = on_x ? rectangle->high_y : rectangle->high_x;
        const int p = (axis + 1) % 3, q = (axis + 2) % 3;
        for (const auto& [s, t] : {std::pair{a, prism.from}, {b, prism.from}, {b, prism.to}, {a, prism.to}}) {
            const Point at = telling.gauge.in(f.origin + across * s + f.z * t);
            CutPoint point;
            point.x = at[p], point.y = at[q];
            points.push_back(point);
        }
        range(on_x ? f.x : f.y, on_x ? rectangle->low_x : rectangle->low_y,
              on_x ? rectangle->high_x : rectangle->high_y);
    } else {
        return std::nullopt;
    }
    const int p = (axis + 1) % 3, q = (axis + 2) % 3;
    const std::optional<TurnedRectangle> turned = turned_rectangle(points, axis);
    const double uncut = std::abs(doubled_area(points));
    if (is_straight(points) && is_convex(points)) {
        for (const bool on_x : {true, false}) {
            points = clipped(points, on_x, 0, true);
            points = clipped(points, on_x, telling.gauge.size(on_x ? p : q), false);
        }
        points = without_repeats(points);
    }
    if (points.size() < 2 || high - low < same_place) return std::nullopt;
    if (is_straight(points) && std::abs(doubled_area(points)) < 1e-6) return std::nullopt;
    Box box = extent(points, axis);
    box.low[axis] = low, box.high[axis] = high;
    Atom atom;
    Feature& feature = atom.feature;
    feature.record.form = CutForm::prism;
    feature.record.word = cut.word;
    feature.record.axis = axis;
    atom.at = box.low;
    if (cut.remark == "haunch")
        feature.words = cut.remark;
    else if (!cut.remark.empty())
        feature.words = "(" + cut.remark + ")";
    bool within = false;
    if (turned) {
        within = std::abs(std::abs(doubled_area(points)) - uncut) < same_place;
        if (const auto mark = tell_turned(telling, feature, *turned, within)) {
            atom.at[p] = (*mark)[p], atom.at[q] = (*mark)[q];
        }
    }
    for (std::size_t k = 0; k < 3; ++k) {
        const int a = static_cast<int>(k);
        const double size = box.high[a] - box.low[a];
        // The box round a slanting hollow is a size of nothing.
        if (!turned || a == axis) telling.add(feature, size_names[k], size);
        atom.placed[k] = size < telling.gauge.size(a) - same_place;
        if (feature.placed_by_mark && a != axis) atom.placed[k] = std::abs(atom.at[a]) > 1e-9;
    }
    if (!within) tell_shape(telling, feature, points, axis, box);
    feature.record.points = points;
    for (CutPoint& point : feature.record.points) {
        point.x -= atom.at[p], point.y -= atom.at[q];
        if (point.arc) point.centre_x -= atom.at[p], point.centre_y -= atom.at[q];
    }
    for (int k = 0; k < 3; ++k) {
        atom.box.low[k] = std::clamp(box.low[k], 0.0, telling.gauge.size(k));
        atom.box.high[k] = std::clamp(box.high[k], 0.0, telling.gauge.size(k));
    }
    feature.seen_from =
        side_seen(telling.gauge.out(atom.box), telling.made.blank, telling.gauge.face_edge_high);
    return atom;
}

Feature blank_feature(const Telling& telling) {
    Feature feature;
    CutRecord& record = feature.record;
    record.form = CutForm::blank;
    record.word = "blank";
    for (std::size_t k = 0; k < 3; ++k)
        telling.add(feature, size_names[k], telling.gauge.size(static_cast<int>(k)));
    if (telling.made.part->outline) {
        const solid::Outline outline = outline_with_what_stands(telling);
        record.points = carried(outline, 2, [&](solid::Point2 p) {
            return telling.gauge.in(Point{p.x, p.y, 0});
        });
        record.word = "outline";
        feature.below = corners_words(telling, record.points, 2);
    }
    return feature;
}

} // namespace rayfleck::drawing
