// Curved edges and outlines.
//
// An edge curved by a rise is a circular arc between two places on the edge, hollowed by the rise in the
// middle:
//
//     edge  ____                ____        radius = (chord² / 4 + rise²) / (2 rise)
//               '.            .'
//                 ''--....--''   | rise
//
// Through points it is a smooth curve; each point tells how far along the edge and how deep the waste is.
// Arcs stay arcs, smooth curves become lines of one smooth run. An outline is drawn on the face, along the
// length and across the width from the low corner of the body.

#include <algorithm>
#include <cmath>

#include "piece/shaping.hpp"
#include "piece/smooth.hpp"

namespace rayfleck::piece {
namespace {

using solid::Edge2;
using solid::Outline;
using solid::Point2;

Outline anticlockwise(Outline outline) { return solid::area(outline) < 0 ? reversed(outline) : outline; }

void line_to(Outline& outline, Point2 p, int smooth = 0) {
    outline.edges.push_back({p, std::nullopt, true});
    outline.smooth.push_back(smooth);
}

/// Where the outline's pen is.
Point2 pen(const Outline& outline) { return outline.edges.empty() ? outline.start : outline.edges.back().to; }

double distance(Point2 a, Point2 b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// Centre of the circle through three points; nothing when they lie on a line.
std::optional<Point2> centre_through(Point2 a, Point2 b, Point2 c) {
    const double d = 2 * ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
    if (std::abs(d) < 1e-9) return std::nullopt;
    const double bb = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
    const double cc = (c.x - a.x) * (c.x - a.x) + (c.y - a.y) * (c.y - a.y);
    return Point2{a.x + ((c.y - a.y) * bb - (b.y - a.y) * cc) / d,
                  a.y + ((b.x - a.x) * cc - (c.x - a.x) * bb) / d};
}

bool is_left_turn(Point2 a, Point2 b, Point2 c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;
}

/// The waste of a curved edge, u along the edge and v into the wood.
std::optional<Outline> hollow_by_rise(Shaper& s, const syntax::CurveEdge& says, int along, int across,
                                      Span span) {
    double from = 0, to = s.size(along);
    if (says.reach) {
        const auto a = s.along(says.reach->from, along), b = s.along(says.reach->to, along);
        if (!a || !b) return std::nullopt;
        from = std::max(0.0, std::min(*a, *b));
        to = std::min(s.size(along), std::max(*a, *b));
    }
    const auto rise = s.positive(*says.rise, "the rise of the curve");
    if (!rise) return std::nullopt;
    const double chord = to - from;
    if (chord < 1e-6) {
        s.e.error("no-size", span, "the curve begins and ends at the same place on `" + s.name() + "`");
        return std::nullopt;
    }
    if (*rise > chord / 2) {
        s.e.error("too-steep", says.rise->span,
                  "a curve that rises " + s.e.shown(Length::from_geometry(*rise)) + " over " +
                      s.e.shown(Length::from_geometry(chord)) + " is more than half a circle")
            .mend = "make it less, or draw an outline";
        return std::nullopt;
    }
    if (*rise >= s.size(across)) {
        s.e.error("nothing-left", says.rise->span,
                  "the curve goes right through `" + s.name() + "`, " +
                      s.e.shown(s.pose.size[static_cast<std::size_t>(across)]) + " there");
        return std::nullopt;
    }
    const double radius = (chord * chord / 4 + *rise * *rise) / (2 * *rise);
    Outline out;
    out.start = {from, 0};
    line_to(out, {to, 0});
    out.edges.push_back({{from, 0}, Point2{(from + to) / 2, *rise - radius}, true});
    out.smooth.push_back(0);
    return out;
}

/// The waste between an edge and a line that goes along it, u along the edge and v into the wood. Where the
/// line touches the edge or runs outside it nothing is taken, so an arch whose crown reaches the edge leaves
/// one piece of waste on either side.
std::vector<Outline> waste_under(const std::vector<Point2>& line) {
    constexpr double at_edge = 1e-3; // mm
    std::vector<Outline> all;
    std::vector<Point2> run; // off the edge, with where it leaves the edge and comes back
    const auto finish = [&] {
        if (run.size() > 1) {
            Outline out;
            out.start = run.front();
            for (std::size_t i = 1; i < run.size(); ++i) line_to(out, run[i], 1);
            if (run.back().y > 0) line_to(out, {run.back().x, 0});
            if (run.front().y > 0) line_to(out, {run.front().x, 0});
            line_to(out, out.start);
            all.push_back(std::move(out));
        }
        run.clear();
    };
    for (std::size_t i = 0; i < line.size(); ++i) {
        const Point2 p = line[i];
        const bool off = p.y > at_edge, was_off = i > 0 && line[i - 1].y > at_edge;
        if (i > 0 && off != was_off) {
            const Point2 q = line[i - 1];
            const double low = off ? q.y : p.y;
            // Comes down to the edge at the point itself, or crosses it before.
            const double t = low >= 0 ? (off ? 0 : 1) : q.y / (q.y - p.y);
            run.push_back({q.x + t * (p.x - q.x), 0});
        }
        if (off)
            run.push_back(p);
        else if (was_off)
            finish();
    }
    finish();
    return all;
}

std::vector<Outline> hollow_through(Shaper& s, const syntax::CurveEdge& says, int along, int across,
                                    Span span) {
    std::vector<Point2> points;
    const double start = s.pose.readings[static_cast<std::size_t>(along)].start;
    for (const auto& [x, depth] : says.through) {
        const auto u = s.length(x), v = s.length(depth);
        if (!u || !v) return {};
        if (!points.empty() && u->value() + start <= points.back().x) {
            s.e.error("out-of-order", x.span,
                      "the points of a curved edge go along it, each further than the last");
            return {};
        }
        if (*v < Length() || v->value() >= s.size(across)) {
            s.e.error("outside-part", depth.span,
                      "the waste at this point is " + s.e.shown(*v) + " deep, and `" + s.name() + "` is " +
                          s.e.shown(s.pose.size[static_cast<std::size_t>(across)]) + " there");
            return {};
        }
        points.push_back({u->value() + start, v->value()});
    }
    if (points.size() < 2) {
        s.e.error("too-few-points", span, "a curve needs two points at least");
        return {};
    }
    if (points.front().x < -1e-9 || points.back().x > s.size(along) + 1e-9) {
        s.e.error("outside-part", span,
                  "the curve reaches beyond `" + s.name() + "`, which is " +
                      s.e.shown(s.pose.size[static_cast<std::size_t>(along)]) + " long there");
        return {};
    }
    std::vector<Point2> line{points.front()};
    for (const Point2& p : smooth_through(points)) line.push_back(p);
    std::vector<Outline> waste = waste_under(line);
    if (waste.empty())
        s.e.error("bad-outline", span, "the curve of `" + s.name() + "` takes nothing away").mend =
            "let some of its points lie deeper than the edge";
    return waste;
}

} // namespace

void shape_curve(Shaper& s, const syntax::CurveEdge& says, Span span) {
    const auto edge = own_side(s.e, s.instance, says.edge);
    if (!edge) return;
    const int along = edge->axis == 0 ? 1 : 0, across = edge->axis;
    std::vector<Outline> waste;
    if (!says.rise)
        waste = hollow_through(s, says, along, across, span);
    else if (auto arc = hollow_by_rise(s, says, along, across, span))
        waste.push_back(std::move(*arc));
    for (const Outline& outline : waste)
        if (const auto fault = solid::fault_of(outline)) {
            s.e.error("bad-outline", span, "the curve of `" + s.name() + "` does not work: " + *fault);
            return;
        }
    // u along the edge, v inwards from it; the third axis to the right hand.
    PrismCut cut;
    Vector x, y;
    x[along] = 1;
    y[across] = edge->high ? -1 : 1;
    const Vector z = cross(x, y);
    cut.frame = {{}, x, y, z};
    cut.frame.origin[across] = edge->high ? s.size(across) : 0;
    const int third = 3 - along - across;
    const bool up = z[third] > 0;
    cut.from = up ? 0 : -s.size(third);
    cut.to = up ? s.size(third) : 0;
    for (const Outline& outline : waste) {
        cut.outline = anticlockwise(outline);
        s.add("curve", cut, span);
    }
}

namespace {

struct Drawing {
    Shaper& s;
    Outline outline;
    bool started = false, closed = false, failed = false;
    int runs = 0;

    std::optional<Point2> point(const std::pair<Expression, Expression>& at) {
        const auto x = s.length(at.first), y = s.length(at.second);
        if (!x || !y) {
            failed = true;
            return std::nullopt;
        }
        return Point2{x->value(), y->value()};
    }

    void fault(Span span, const std::string& message, const std::string& mend = {}) {
        failed = true;
        s.e.error("bad-outline", span, message).mend = mend;
    }

    void arc(Point2 to, Point2 centre, bool left, Span span) {
        if (distance(pen(outline), to) < 1e-9)
            return fault(span, "the arc begins and ends at the same point");
        outline.edges.push_back({to, centre, left});
        outline.smooth.push_back(0);
    }

    void arc_by_radius(const syntax::OutlineStep& step, Point2 to) {
        const auto r = step.radius ? s.positive(*step.radius, "the radius") : std::nullopt;
        if (!r) {
            failed = true;
            return;
        }
        const Point2 a = pen(outline);
        const double chord = distance(a, to);
        // A half circle may be told with its radius rounded.
        double radius = *r;
        if (radius < chord / 2 - 1e-6) {
            return fault(step.span,
                         "an arc of radius " + s.e.shown(Length::from_geometry(radius)) +
                             " does not reach over " + s.e.shown(Length::from_geometry(chord)),
                         "its radius is " + s.e.shown(Length::from_geometry(chord / 2)) + " at least");
        }
        radius = std::max(radius, chord / 2);
        // Bulging left, the centre lies to the right of the way from start to end, and the arc turns right.
        const bool bulges_left = step.bulge != "right";
        const double h =
            std::sqrt(std::max(0.0, radius * radius - chord * chord / 4)) * (bulges_left ? 1 : -1);
        if (chord < 1e-9) return fault(step.span, "the arc begins and ends at the same point");
        const Point2 right{(to.y - a.y) / chord, -(to.x - a.x) / chord};
        arc(to, {(a.x + to.x) / 2 + right.x * h, (a.y + to.y) / 2 + right.y * h}, !bulges_left, step.span);
    }

    void draw(const syntax::OutlineStep& step) {
        using Kind = syntax::OutlineStep::Kind;
        if (step.kind == Kind::broken) {
            failed = true;
            return;
        }
        if (step.kind == Kind::start) {
            if (started) return fault(step.span, "the outline starts twice");
            started = true;
            if (const auto p = step.points.empty() ? std::nullopt : point(step.points.back()))
                outline.start = *p;
            return;
        }
        if (!started && !failed)
            return fault(step.span, "the outline has no start", "begin with `start 0, 0`");
        if (closed) return fault(step.span, "the outline is closed already");
        if (step.kind == Kind::close) {
            closed = true;
            if (distance(pen(outline), outline.start) > 1e-9) line_to(outline, outline.start);
            return;
        }
        std::vector<Point2> points;
        for (const auto& at : step.points) {
            const auto p = point(at);
            if (!p) return;
            points.push_back(*p);
        }
        if (points.empty()) {
            failed = true;
            return;
        }
        const Point2 to = points.back();
        if (step.kind == Kind::line) {
            if (distance(pen(outline), to) < 1e-9) return fault(step.span, "this line has no length");
            line_to(outline, to);
        } else if (step.kind == Kind::arc_through && points.size() == 2) {
            const auto centre = centre_through(pen(outline), points.front(), to);
            if (!centre)
                return fault(step.span, "the three points of this arc lie on a line",
                             "write `line to`, or move the middle point");
            arc(to, *centre, is_left_turn(pen(outline), points.front(), to), step.span);
        } else if (step.kind == Kind::arc_radius) {
            arc_by_radius(step, to);
        } else if (step.kind == Kind::curve) {
            points.insert(points.begin(), pen(outline));
            ++runs;
            for (const Point2& p : smooth_through(points)) line_to(outline, p, runs);
        }
    }
};

/// Farthest that the outline lies outside the body.
double overshoot(const Outline& outline, double length, double width) {
    double most = 0;
    const auto look = [&](Point2 p) { most = std::max({most, -p.x, p.x - length, -p.y, p.y - width}); };
    look(outline.start);
    Point2 from = outline.start;
    for (const Edge2& edge : outline.edges) {
        look(edge.to);
        if (edge.centre) {
            // The four outermost points of the circle, where the arc passes them.
            const double r = distance(*edge.centre, from);
            const auto angle = [&](Point2 p) {
                return std::atan2(p.y - edge.centre->y, p.x - edge.centre->x);
            };
            constexpr double whole = 2 * 3.14159265358979323846;
            const double a = angle(from);
            double sweep = edge.anticlockwise ? angle(edge.to) - a : a - angle(edge.to);
            while (sweep <= 0) sweep += whole;
            for (int q = 0; q < 4; ++q) {
                const double at = q * whole / 4;
                double turn = edge.anticlockwise ? at - a : a - at;
                while (turn < 0) turn += whole;
                while (turn >= whole) turn -= whole;
                if (turn < sweep)
                    look({edge.centre->x + r * std::cos(at), edge.centre->y + r * std::sin(at)});
            }
        }
        from = edge.to;
    }
    return most;
}

} // namespace

void shape_outline(Shaper& s, const syntax::OutlineIs& says, Span span) {
    Drawing drawing{s, {}, false, false, false, 0};
    for (const syntax::OutlineStep& step : says.steps) drawing.draw(step);
    if (drawing.failed) return;
    if (s.part.outline) return drawing.fault(span, "`" + s.name() + "` has two outlines");
    Outline& outline = drawing.outline;
    if (distance(pen(outline), outline.start) > 1e-6)
        return drawing.fault(span, "the outline is not closed", "end with `close`");
    if (const auto fault = solid::fault_of(outline))
        return drawing.fault(span, "the outline does not work: " + *fault);
    if (const double over = overshoot(outline, s.size(0), s.size(1)); over > 0.01)
        return drawing.fault(
            span,
            "the outline reaches " + s.e.shown(Length::from_geometry(over)) + " beyond the body of `" +
                s.name() + "`, " + s.e.shown(s.pose.size[1]) + " wide and " + s.e.shown(s.pose.size[0]) +
                " long",
            "its points are measured along the length and across the width, from the low corner");
    s.part.outline = anticlockwise(outline);
}

} // namespace rayfleck::piece
