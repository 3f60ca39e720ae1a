// Circles of bores are looked for among the edges that the view shows, so that one covered by another part
// gets no cross.

#include "drawing/centre_lines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Point;
using measure::Vector;

/// Past the outline, mm of paper.
constexpr double overrun = 4;
constexpr double same_place = 0.05;
/// Of a line between two kept edges, what is shorter than this says nothing; mm of paper.
constexpr double least_piece = 3.5;

class CentreLines {
  public:
    CentreLines(const PieceView& view, double scale) : view_(view), scale_(scale) {}

    Point2 in_picture(Point p) const { return {dot(p, view_.view.right), dot(p, view_.view.up)}; }

    /// Upright or level through the picture at a place of an axis of the piece, from low to high of the other
    /// one.
    void through(int axis, double place, double low, double high) {
        const double past = overrun / scale_;
        if (axis == view_.right) {
            const double x = view_.right_sign * place;
            lines_.push_back({{x, low - past}, {x, high + past}});
        } else if (axis == view_.up) {
            const double y = view_.up_sign * place;
            lines_.push_back({{low - past, y}, {high + past, y}});
        }
    }
    void along(Point2 a, Point2 b) {
        const double length = std::hypot(b.x - a.x, b.y - a.y), past = overrun / scale_;
        const Point2 d{(b.x - a.x) / length * past, (b.y - a.y) / length * past};
        lines_.push_back({{a.x - d.x, a.y - d.y}, {b.x + d.x, b.y + d.y}});
    }
    void cross(Point2 middle, double radius) {
        const double reach = radius + overrun * 0.75 / scale_;
        lines_.push_back({{middle.x - reach, middle.y}, {middle.x + reach, middle.y}});
        lines_.push_back({{middle.x, middle.y - reach}, {middle.x, middle.y + reach}});
    }
    /// Enough of that circle is among the visible edges.
    bool circle_seen(Point2 middle, double radius) const {
        double length = 0;
        const double slack = std::max(0.1, 0.03 * radius);
        for (const Segment2& s : view_.seen.visible) {
            const auto on = [&](Point2 p) {
                return std::abs(std::hypot(p.x - middle.x, p.y - middle.y) - radius) < slack;
            };
            if (on(s.a) && on(s.b)) length += std::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
        }
        return length > 0.3 * 2 * std::numbers::pi * radius;
    }

    std::vector<Segment2> lines() && { return united(lines_); }

  private:
    const PieceView& view_;
    double scale_;
    std::vector<Segment2> lines_;
};

/// The circle that an outline is, if its arcs go all the way round one centre.
bool is_circle(const solid::Outline& outline, Point2& middle, double& radius) {
    if (outline.edges.empty() || !outline.edges.front().centre) return false;
    middle = *outline.edges.front().centre;
    radius = std::hypot(outline.start.x - middle.x, outline.start.y - middle.y);
    return std::all_of(outline.edges.begin(), outline.edges.end(), [&](const solid::Edge2& e) {
        return e.centre && std::hypot(e.centre->x - middle.x, e.centre->y - middle.y) < same_place;
    });
}

void of_part(CentreLines& lines, const joinery::Made& made, const PieceView& view, double scale) {
    const piece::Part& part = *made.part;
    const auto end_on = [&](Vector direction) {
        return std::abs(dot(direction, view.view.towards)) > 0.9999;
    };
    const auto axis_of = [&](Point from, Point to, double radius) {
        const Point2 a = lines.in_picture(part.frame.out(from)), b = lines.in_picture(part.frame.out(to));
        if (end_on(measure::unit(part.frame.turn_out(to - from))))
            lines.cross(a, radius);
        else
            lines.along(a, b);
    };
    const double length = part.length.value(), width = part.width.value(), thickness = part.thickness.value();
    const bool turned = std::any_of(made.cuts.begin(), made.cuts.end(), [](const piece::Cut& cut) {
        return cut.joint < 0 && std::holds_alternative<piece::TurnedCut>(cut.shape);
    });
    if (turned) axis_of({0, width / 2, thickness / 2}, {length, width / 2, thickness / 2}, width / 2);
    Point2 middle;
    double radius = 0;
    if (part.outline && is_circle(*part.outline, middle, radius))
        axis_of({middle.x, middle.y, 0}, {middle.x, middle.y, thickness}, radius);
    for (const piece::Cut& cut : made.cuts) {
        const auto* bore = std::get_if<piece::BoreCut>(&cut.shape);
        constexpr double least_on_paper = 2;
        if (!bore || bore->diameter * scale < least_on_paper) continue;
        Vector direction = bore->direction.value_or(Vector{});
        if (!bore->direction) direction[bore->face.axis] = bore->face.high ? -1 : 1;
        const Point2 at = lines.in_picture(part.frame.out(bore->centre));
        if (end_on(part.frame.turn_out(direction)) && lines.circle_seen(at, bore->diameter / 2))
            lines.cross(at, bore->diameter / 2);
    }
}

} // namespace

std::vector<Segment2> centre_lines(const Job& job, const Principal& seen, const PieceView& view,
                                   const std::vector<AxisPlaces>& places, double scale) {
    CentreLines lines(view, scale);
    const Rect& box = view.seen.box;
    for (const int axis : {view.right, view.up}) {
        const AxisPlaces& along = places[static_cast<std::size_t>(axis)];
        const bool level = axis == view.up;
        if (along.symmetric)
            lines.through(axis, (along.low + along.high) / 2, level ? box.left : box.bottom,
                          level ? box.right : box.top);
        for (const double place : along.middles) {
            // From end to end of the parts that are centred there.
            const int other = level ? view.right : view.up;
            const double sign = level ? view.right_sign : view.up_sign;
            double low = 0, high = 0;
            bool any = false;
            for (std::size_t i = 0; i < seen.whole.boxes.size(); ++i) {
                const measure::Box& part = seen.whole.boxes[i];
                if (!view.shows[i] || std::abs((part.low[axis] + part.high[axis]) / 2 - place) > same_place)
                    continue;
                const double a = sign * part.low[other], b = sign * part.high[other];
                low = any ? std::min({low, a, b}) : std::min(a, b);
                high = any ? std::max({high, a, b}) : std::max(a, b);
                any = true;
            }
            if (any) lines.through(axis, place, low, high);
        }
    }
    for (std::size_t i = 0; i < job.model.made.size(); ++i)
        if (view.shows[i]) of_part(lines, job.model.made[i], view, scale);
    return std::move(lines).lines();
}

void draw_centre_lines(Block& block, const PieceView& view, const std::vector<Segment2>& lines,
                       double scale) {
    const auto on_paper = [&](const std::vector<Segment2>& segments) {
        std::vector<Segment2> out;
        for (const Segment2& s : segments)
            out.push_back({{scale * (s.a.x - view.seen.box.left), scale * (s.a.y - view.seen.box.bottom)},
                           {scale * (s.b.x - view.seen.box.left), scale * (s.b.y - view.seen.box.bottom)}});
        return out;
    };
    std::vector<Segment2> edges = on_paper(view.seen.visible);
    const std::vector<Segment2> hidden = on_paper(view.seen.hidden);
    edges.insert(edges.end(), hidden.begin(), hidden.end());
    constexpr double least_gap = 0.7;
    for (const Segment2& s : thinned(on_paper(lines), least_gap, edges))
        if (std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) >= least_piece)
            block.line(s.a, s.b, Pen::centre, Role::centre);
}

} // namespace rayfleck::drawing
