// Where the shapes of the marks come from: the projection symbol from the standard (proportions from memory),
// the loop and the V as described in the trade press for face side and face edge; the double arrow for the
// grain is common practice, no published source.

#include "drawing/marks.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

/// The stretch of a segment inside a rectangle.
std::optional<std::pair<Point2, Point2>> clipped(Point2 a, Point2 b, const Rect& rect) {
    double from = 0, to = 1;
    const double dx = b.x - a.x, dy = b.y - a.y;
    const auto cut = [&](double step, double room) {
        // Keeps t with step * t <= room.
        if (std::abs(step) < 1e-12) return room >= 0;
        const double t = room / step;
        if (step > 0)
            to = std::min(to, t);
        else
            from = std::max(from, t);
        return from < to;
    };
    if (!cut(-dx, a.x - rect.left) || !cut(dx, rect.right - a.x) || !cut(-dy, a.y - rect.bottom) ||
        !cut(dy, rect.top - a.y))
        return std::nullopt;
    return std::pair{Point2{a.x + dx * from, a.y + dy * from}, Point2{a.x + dx * to, a.y + dy * to}};
}

/// Points of the looped line, from the edge into the face, in units of its size.
std::vector<Point2> loop_points() {
    // A stroke rises from the edge to the right, turns back over the top and crosses itself like a script f.
    std::vector<Point2> points;
    for (int i = 0; i <= 24; ++i) {
        const double t = static_cast<double>(i) / 24;
        const double a = -0.35 * std::numbers::pi + t * 1.7 * std::numbers::pi;
        points.push_back({0.28 * std::cos(a) * (1 - 0.2 * t), 0.72 + 0.28 * std::sin(a)});
    }
    std::vector<Point2> all{{-0.22, 0.0}};
    all.insert(all.end(), points.begin(), points.end());
    all.push_back({0.3, 0.22});
    return all;
}

} // namespace

std::vector<Point2> arrowhead(Point2 tip, Point2 direction, double length) {
    const double half = length / 6;
    const Point2 back{tip.x - direction.x * length, tip.y - direction.y * length};
    return {tip,
            {back.x - direction.y * half, back.y + direction.x * half},
            {back.x + direction.y * half, back.y - direction.x * half}};
}

void projection_symbol(Block& block, Point2 middle, double h, bool first_angle) {
    const double gap = h * 0.8;
    const double whole = 2 * h + gap + 2 * h;
    const double left = middle.x - whole / 2;
    const double cone = first_angle ? left : left + 2 * h + gap;
    const Point2 circles{first_angle ? left + 2 * h + gap + h : left + h, middle.y};
    block.stroke({{cone, middle.y - h / 2},
                  {cone + 2 * h, middle.y - h},
                  {cone + 2 * h, middle.y + h},
                  {cone, middle.y + h / 2},
                  {cone, middle.y - h / 2}},
                 Pen::thin, Role::mark);
    block.circle(circles, h, Pen::thin, Role::mark);
    block.circle(circles, h / 2, Pen::thin, Role::mark);
    const double past = h * 0.35;
    block.line({cone - past, middle.y}, {cone + 2 * h + past, middle.y}, Pen::thin, Role::mark, Ink::grey);
    block.line({circles.x - h - past, middle.y}, {circles.x + h + past, middle.y}, Pen::thin, Role::mark,
               Ink::grey);
    block.line({circles.x, middle.y - h - past}, {circles.x, middle.y + h + past}, Pen::thin, Role::mark,
               Ink::grey);
}

void grain_arrow(Block& block, Point2 middle, double length, double turn) {
    const double a = turn * std::numbers::pi / 180;
    const Point2 d{std::cos(a), std::sin(a)};
    const auto at = [&](double along, double aside) {
        return Point2{middle.x + d.x * along - d.y * aside, middle.y + d.y * along + d.x * aside};
    };
    const double half = length / 2, barb = 2.0, spread = 0.9;
    block.line(at(-half, 0), at(half, 0), Pen::thin, Role::mark);
    // Open barbs on opposite sides at the two ends tell it from a dimension line.
    block.stroke({at(half - barb, spread), at(half, 0), at(half - barb, -spread)}, Pen::thin, Role::mark);
    block.stroke({at(-half + barb, spread), at(-half, 0), at(-half + barb, -spread)}, Pen::thin, Role::mark);
}

void face_side_mark(Block& block, Point2 at, double into, double size) {
    std::vector<Point2> points = loop_points();
    for (Point2& p : points) p = {at.x + p.x * size, at.y + into * p.y * size};
    block.stroke(std::move(points), Pen::thin, Role::mark);
}

Rect face_side_mark_box(Point2 at, double into, double size) {
    std::vector<Point2> points = loop_points();
    for (Point2& p : points) p = {at.x + p.x * size, at.y + into * p.y * size};
    return around(points);
}

void face_edge_mark(Block& block, Point2 at, double into, double size) {
    block.stroke({{at.x - size / 2, at.y + into * size}, at, {at.x + size / 2, at.y + into * size}},
                 Pen::thin, Role::mark);
}

void growth_rings(Block& block, const Rect& end, Point2 bark, double radius) {
    const Point2 middle = end.middle();
    const Point2 pith{middle.x - bark.x * radius, middle.y - bark.y * radius};
    const double reach = std::hypot(end.width(), end.height()) / 2;
    // Rings closer than 0.7 mm would run together in print.
    const double pitch = std::clamp(std::min(end.width(), end.height()) / 5, 1.0, 2.5);
    const double towards = std::atan2(bark.y, bark.x);
    for (double r = std::max(radius - reach, pitch) + pitch / 2; r < radius + reach; r += pitch) {
        const double half = std::min(std::numbers::pi, std::asin(std::min(1.0, reach / radius)) + 0.3);
        const int steps = std::clamp(static_cast<int>(2 * half * r / 0.8), 12, 200);
        std::vector<Point2> run;
        const auto finish = [&] {
            if (run.size() >= 2) block.stroke(run, Pen::thin, Role::hatch, Ink::grey);
            run.clear();
        };
        for (int i = 0; i < steps; ++i) {
            const double a = towards - half + 2 * half * i / steps,
                         b = towards - half + 2 * half * (i + 1) / steps;
            const Point2 p{pith.x + r * std::cos(a), pith.y + r * std::sin(a)},
                q{pith.x + r * std::cos(b), pith.y + r * std::sin(b)};
            const auto inside = clipped(p, q, end);
            if (!inside) {
                finish();
                continue;
            }
            if (run.empty()) run.push_back(inside->first);
            run.push_back(inside->second);
            if (inside->second.x != q.x || inside->second.y != q.y) finish();
        }
        finish();
    }
}

void balloon(Block& block, Point2 middle, double diameter, const std::string& reference) {
    block.circle(middle, diameter / 2, Pen::thin, Role::mark);
    // Two figures fill the circle less when they are a little lower.
    const double height = std::max(note_height, diameter * (reference.size() > 2 ? 0.32 : 0.44));
    const double width = text_width(reference, height, Typeface::sans_bold);
    block.text({{middle.x - width / 2, middle.y - height / 2},
                reference,
                height,
                Typeface::sans_bold,
                Ink::black,
                0});
}

} // namespace rayfleck::drawing
