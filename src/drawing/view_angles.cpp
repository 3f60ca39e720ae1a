// The arc ends in arrowheads, inside it where it is long enough for two of them, else outside.

#include "drawing/view_angles.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>

#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;

constexpr double degree = std::numbers::pi / 180;

/// An angle as it would stand on paper.
struct Attempt {
    Point2 corner;
    double radius = 0;
    double from = 0, to = 0; ///< radians anticlockwise, from < to
    double edge = 0;         ///< which of the two the edge is
    bool inside = false;     ///< arrowheads
    Text figure;

    Point2 at(double turn, double r) const {
        return {corner.x + r * std::cos(turn), corner.y + r * std::sin(turn)};
    }
    /// Of the tails outside, in radians.
    double tail() const { return inside ? 0 : 5.0 / radius; }
    /// chord  longest side of the polyline, mm
    std::vector<Point2> arc(double chord) const {
        std::vector<Point2> points;
        const double a = from - tail(), b = to + tail();
        const int steps = std::max(4, static_cast<int>(std::ceil((b - a) * radius / chord)));
        for (int i = 0; i <= steps; ++i) points.push_back(at(a + (b - a) * i / steps, radius));
        return points;
    }
};

class Angles {
  public:
    Angles(Block& block, const Job& job, const PieceView& view, double scale)
        : block_(block), job_(job), view_(view), scale_(scale) {}

    void draw() {
        std::set<std::pair<int, long>> told;
        for (std::size_t i = 0; i < job_.model.made.size(); ++i) {
            const piece::Part& part = *job_.model.made[i].part;
            if (part.upright) continue;
            const auto lean = lean_of(part, view_.view);
            if (!lean) continue;
            const std::pair<int, long> key{job_.row_of_part[i], std::lround(lean->angle / degree * 100)};
            if (told.count(key)) continue;
            if (place(part, *lean)) told.insert(key);
        }
    }

  private:
    /// Edges along the part, seen or dashed, on paper, the longest first.
    std::vector<Segment2> edges_along(const piece::Part& part, const Lean& lean) const {
        std::vector<Point2> corners;
        for (int i = 0; i < 8; ++i) {
            const measure::Point p =
                part.frame.out({i & 1 ? part.length.value() : 0, i & 2 ? part.width.value() : 0,
                                i & 4 ? part.thickness.value() : 0});
            corners.push_back({dot(p, view_.view.right), dot(p, view_.view.up)});
        }
        const Rect reach = grown(around(corners), 0.5);
        const auto within = [&](Point2 p) {
            return p.x > reach.left && p.x < reach.right && p.y > reach.bottom && p.y < reach.top;
        };
        std::vector<Segment2> found, all = view_.seen.visible;
        all.insert(all.end(), view_.seen.hidden.begin(), view_.seen.hidden.end());
        for (Segment2 s : all) {
            const double dx = s.b.x - s.a.x, dy = s.b.y - s.a.y, length = std::hypot(dx, dy);
            constexpr double least_on_paper = 8, same_turn = 2e-3;
            if (length * scale_ < least_on_paper || !within(s.a) || !within(s.b)) continue;
            if (std::abs(dx * lean.along.y - dy * lean.along.x) > same_turn * length) continue;
            if (dx * lean.along.x + dy * lean.along.y < 0) std::swap(s.a, s.b);
            const auto paper = [&](Point2 p) {
                return Point2{scale_ * (p.x - view_.seen.box.left), scale_ * (p.y - view_.seen.box.bottom)};
            };
            found.push_back({paper(s.a), paper(s.b)});
        }
        std::stable_sort(found.begin(), found.end(), [](const Segment2& a, const Segment2& b) {
            const auto size = [](const Segment2& s) {
                return std::lround(1000 * std::hypot(s.b.x - s.a.x, s.b.y - s.a.y));
            };
            return size(a) > size(b);
        });
        constexpr std::size_t enough = 6;
        if (found.size() > enough) found.resize(enough);
        return found;
    }

    /// How much of the reference is drawn already, as an edge of the view.
    enum class Along { nothing, some, all };
    Along along_an_edge(const Attempt& a) const {
        const Point2 from = a.at(reference(a), 1), to = a.at(reference(a), a.radius + 2);
        const Point2 d{std::cos(reference(a)), std::sin(reference(a))};
        Along found = Along::nothing;
        for (const auto* lines : {&view_.seen.visible, &view_.seen.hidden})
            for (const Segment2& s : *lines) {
                const auto paper = [&](Point2 p) {
                    return Point2{scale_ * (p.x - view_.seen.box.left) - from.x,
                                  scale_ * (p.y - view_.seen.box.bottom) - from.y};
                };
                const Point2 p = paper(s.a), q = paper(s.b);
                constexpr double same_line = 0.05;
                if (std::abs(p.x * d.y - p.y * d.x) > same_line ||
                    std::abs(q.x * d.y - q.y * d.x) > same_line)
                    continue;
                const double u = p.x * d.x + p.y * d.y, v = q.x * d.x + q.y * d.y,
                             length = std::hypot(to.x - from.x, to.y - from.y);
                if (std::min(u, v) < 0.01 && std::max(u, v) > length - 0.01) return Along::all;
                if (std::min(u, v) < length && std::max(u, v) > 0) found = Along::some;
            }
        return found;
    }

    int faults(const Attempt& a) const {
        const std::vector<Role> lines{Role::edge, Role::dimension, Role::extension, Role::centre};
        int count =
            block_.occupied().crossings(a.at(reference(a), 1.5), a.at(reference(a), a.radius + 2), lines);
        const std::vector<Point2> arc = a.arc(coarse);
        for (std::size_t i = 1; i < arc.size(); ++i)
            count += block_.occupied().crossings(arc[i - 1], arc[i], lines) > 0;
        return count;
    }
    static double reference(const Attempt& a) { return a.edge == a.from ? a.to : a.from; }

    bool place(const piece::Part& part, const Lean& lean) {
        const std::string words =
            measure::decimal(measure::Rational::nearest(lean.angle / degree, 10), 1) + "°";
        const double height = job_.figure_height(), width = text_width(words, height, Typeface::lettering);
        std::optional<Attempt> best;
        int least = 1000000;
        for (const Segment2& s : edges_along(part, lean)) {
            if (least == 0) break;
            const double length = std::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
            for (const bool at_start : {true, false})
                for (const double radius : {14.0, 20.0, 28.0, 40.0, 10.0}) {
                    if (radius > length + 1) continue;
                    Attempt a;
                    a.corner = at_start ? s.a : s.b;
                    a.radius = radius;
                    const double sign = at_start ? 1 : -1;
                    a.edge = std::atan2(sign * lean.along.y, sign * lean.along.x);
                    // The shorter way from the edge to the reference.
                    const double turn = lean.along.x * lean.reference.y - lean.along.y * lean.reference.x > 0
                                            ? lean.angle
                                            : -lean.angle;
                    a.from = std::min(a.edge, a.edge + turn);
                    a.to = std::max(a.edge, a.edge + turn);
                    a.inside = lean.angle * radius > 3 * arrow + 1;
                    if (along_an_edge(a) == Along::some) continue;
                    const int crossed = faults(a);
                    for (const Point2 middle : places_for(a, width, height)) {
                        a.figure = {{middle.x - width / 2, middle.y - height / 2},
                                    words,
                                    height,
                                    Typeface::lettering,
                                    Ink::black,
                                    0};
                        if (crossed >= least || !stands_free(a)) continue;
                        best = a, least = crossed;
                    }
                }
        }
        if (!best) return false;
        commit(*best, lean);
        return true;
    }

    /// Middles of places for the figure: beyond the arc, or past one of its ends.
    static std::vector<Point2> places_for(const Attempt& a, double width, double height) {
        const auto room = [&](Point2 way) {
            return 1.0 + (std::abs(way.x) * width + std::abs(way.y) * height) / 2;
        };
        const double half = (a.from + a.to) / 2;
        std::vector<Point2> places;
        for (const double more : {0.0, 3.0})
            places.push_back(a.at(half, a.radius + more + room({std::cos(half), std::sin(half)})));
        for (const double sign : {1.0, -1.0}) {
            const double end = sign > 0 ? a.to + a.tail() : a.from - a.tail();
            const Point2 way{-sign * std::sin(end), sign * std::cos(end)}, from = a.at(end, a.radius);
            places.push_back({from.x + way.x * room(way), from.y + way.y * room(way)});
        }
        return places;
    }

    bool stands_free(const Attempt& a) const {
        const std::vector<Point2> box = text_box(a.figure);
        constexpr double clear = 0.7;
        if (!block_.occupied().free_for_text(box, clear)) return false;
        const std::vector<Point2> arc = a.arc(coarse);
        for (std::size_t i = 1; i < arc.size(); ++i) {
            if (meet(corners(grown(around(box), clear)), Quad{arc[i - 1], arc[i]})) return false;
            if (!block_.occupied().free_for_line(arc[i - 1], arc[i], clear)) return false;
        }
        const Point2 from = a.at(reference(a), 1.5), to = a.at(reference(a), a.radius + 2);
        return !meet(corners(grown(around(box), clear)), Quad{from, to}) &&
               block_.occupied().free_for_line(from, to, clear);
    }

    void commit(const Attempt& a, const Lean& lean) {
        if (along_an_edge(a) != Along::all)
            block_.line(a.at(reference(a), 1), a.at(reference(a), a.radius + 2), Pen::thin, Role::extension);
        block_.stroke(a.arc(0.4), Pen::thin, Role::dimension);
        for (const double end : {a.from, a.to}) {
            // Along the arc towards the end, from within or from without.
            const double way = (end == a.to) == a.inside ? 1 : -1;
            const Point2 tip = a.at(end, a.radius);
            const double lag = end - way * arrow / 2 / a.radius;
            block_.fill({arrowhead(tip, {-way * std::sin(lag), way * std::cos(lag)}, arrow)}, Ink::black);
        }
        block_.text(a.figure);
        block_.record(DimensionRecord{"", 'A', 0, lean.angle / degree, a.figure.words, false});
    }

    static constexpr double arrow = 3;
    /// Fine enough to find what an arc would cross.
    static constexpr double coarse = 2;
    Block& block_;
    const Job& job_;
    const PieceView& view_;
    double scale_;
};

} // namespace

void draw_angles(Block& block, const Job& job, const PieceView& view, double scale) {
    Angles(block, job, view, scale).draw();
}

} // namespace rayfleck::drawing
