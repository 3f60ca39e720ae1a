// Items of a block, and their copies when one block becomes part of another.

#include "drawing/block.hpp"

#include <cmath>
#include <numbers>

namespace rayfleck::drawing {
namespace {

Point2 rounded_point(Point2 p) { return {rounded_mm(p.x), rounded_mm(p.y)}; }

std::vector<Point2> ring(Point2 centre, double radius, bool closed) {
    // Chords within 0.02 mm of the circle.
    const int sides = std::max(
        24, static_cast<int>(std::ceil(std::numbers::pi / std::acos(1 - 0.02 / std::max(radius, 0.1)))));
    std::vector<Point2> points;
    for (int i = 0; i < sides; ++i) {
        const double a = 2 * std::numbers::pi * i / sides;
        points.push_back({centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)});
    }
    if (closed) points.push_back(points.front());
    return points;
}

} // namespace

double rounded_mm(double value) {
    const double rounded = std::round(value * 1000) / 1000;
    // No minus zero in the output.
    return rounded == 0 ? 0 : rounded;
}

void Block::grow(const Rect& rect) {
    box_ = any_ ? joined(box_, rect) : rect;
    any_ = true;
}

void Block::stroke(std::vector<Point2> points, Pen pen, Role role, Ink ink) {
    if (points.size() < 2) return;
    for (Point2& p : points) p = rounded_point(p);
    for (std::size_t i = 1; i < points.size(); ++i) occupied_.add_line(points[i - 1], points[i], role);
    grow(around(points));
    items_.emplace_back(std::in_place_type<Stroke>);
    auto& stroke = std::get<Stroke>(items_.back());
    stroke.points = std::move(points);
    stroke.pen = pen, stroke.ink = ink, stroke.role = role;
}

void Block::circle(Point2 centre, double radius, Pen pen, Role role, Ink ink) {
    stroke(ring(centre, radius, true), pen, role, ink);
}

void Block::frame(const Rect& rect, Pen pen, Role role, Ink ink) {
    Quad points = corners(rect);
    points.push_back(points.front());
    stroke(std::move(points), pen, role, ink);
}

void Block::fill(std::vector<std::vector<Point2>> rings, Ink ink) {
    for (auto& points : rings)
        for (Point2& p : points) p = rounded_point(p);
    for (const auto& points : rings)
        if (!points.empty()) grow(around(points));
    items_.emplace_back(std::in_place_type<Fill>, Fill{std::move(rings), ink});
}

void Block::dot(Point2 centre, double diameter, Ink ink) { fill({ring(centre, diameter / 2, false)}, ink); }

void Block::text(Text text) {
    if (text.words.empty()) return;
    text.at = rounded_point(text.at);
    Quad box = text_box(text);
    grow(around(box));
    occupied_.add_text(std::move(box));
    items_.emplace_back(std::in_place_type<Text>, std::move(text));
}

void Block::link(const Rect& area, int to_sheet) {
    items_.emplace_back(std::in_place_type<Link>, Link{rounded_point({area.left, area.bottom}),
                                                       rounded_point({area.right, area.top}), to_sheet});
}

void Block::add(const Block& other, Point2 by) {
    by = rounded_point(by);
    const auto moved = [&](Point2 p) { return rounded_point({p.x + by.x, p.y + by.y}); };
    items_.reserve(items_.size() + other.items_.size());
    for (const Item& theirs : other.items_) {
        items_.push_back(theirs);
        Item& item = items_.back();
        if (auto* stroke = std::get_if<Stroke>(&item))
            for (Point2& p : stroke->points) p = moved(p);
        else if (auto* fill = std::get_if<Fill>(&item))
            for (auto& points : fill->rings)
                for (Point2& p : points) p = moved(p);
        else if (auto* text = std::get_if<Text>(&item))
            text->at = moved(text->at);
        else if (auto* link = std::get_if<Link>(&item))
            link->low = moved(link->low), link->high = moved(link->high);
    }
    dimensions_.insert(dimensions_.end(), other.dimensions_.begin(), other.dimensions_.end());
    for (ViewRecord view : other.views_) {
        for (Point2* p : {&view.origin, &view.low, &view.high}) *p = {p->x + by.x, p->y + by.y};
        views_.push_back(std::move(view));
    }
    cuts_.insert(cuts_.end(), other.cuts_.begin(), other.cuts_.end());
    for (SectionRecord cut : other.sections_) {
        for (auto& ring : cut.rings)
            for (Point2& p : ring) p = moved(p);
        sections_.push_back(std::move(cut));
    }
    occupied_.add(other.occupied_, by);
    if (other.any_)
        grow({other.box_.left + by.x, other.box_.bottom + by.y, other.box_.right + by.x,
              other.box_.top + by.y});
}

void Block::put_on(Sheet& sheet) const {
    sheet.items.insert(sheet.items.end(), items_.begin(), items_.end());
    sheet.dimensions.insert(sheet.dimensions.end(), dimensions_.begin(), dimensions_.end());
    sheet.views.insert(sheet.views.end(), views_.begin(), views_.end());
    sheet.cuts.insert(sheet.cuts.end(), cuts_.begin(), cuts_.end());
    sheet.sections.insert(sheet.sections.end(), sections_.begin(), sections_.end());
}

} // namespace rayfleck::drawing
