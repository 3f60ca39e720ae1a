// Convex areas against one another by separating axes; empty space as maximal rectangles, as in bin packing.

#include "drawing/placement.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rayfleck::drawing {
namespace {

/// Touching borders do not count as meeting; coordinates are rounded to 0.001 mm.
constexpr double touch = 1e-6;

/// True when some axis square to a side of `a` keeps both apart.
bool apart_along_sides_of(const Quad& a, const Quad& b) {
    for (std::size_t i = 0; i < a.size(); ++i) {
        const Point2 p = a[i], q = a[(i + 1) % a.size()];
        const double nx = q.y - p.y, ny = p.x - q.x;
        const double length = std::hypot(nx, ny);
        if (length < 1e-12) continue;
        double a_low = std::numeric_limits<double>::infinity(), a_high = -a_low, b_low = a_low,
               b_high = -a_low;
        for (const Point2& c : a) {
            const double at = (c.x * nx + c.y * ny) / length;
            a_low = std::min(a_low, at), a_high = std::max(a_high, at);
        }
        for (const Point2& c : b) {
            const double at = (c.x * nx + c.y * ny) / length;
            b_low = std::min(b_low, at), b_high = std::max(b_high, at);
        }
        if (a_high <= b_low + touch || b_high <= a_low + touch) return true;
    }
    return false;
}

/// A convex box moved outwards by `by` on all sides; exact for rectangles, which is all that is asked.
Quad grown_quad(const Quad& box, double by) {
    if (box.size() != 4) return box;
    const double ux = box[1].x - box[0].x, uy = box[1].y - box[0].y, vx = box[3].x - box[0].x,
                 vy = box[3].y - box[0].y;
    const double u = std::hypot(ux, uy), v = std::hypot(vx, vy);
    if (u < 1e-9 || v < 1e-9) return box;
    const Point2 a{ux / u * by, uy / u * by}, b{vx / v * by, vy / v * by};
    return {{box[0].x - a.x - b.x, box[0].y - a.y - b.y},
            {box[1].x + a.x - b.x, box[1].y + a.y - b.y},
            {box[2].x + a.x + b.x, box[2].y + a.y + b.y},
            {box[3].x - a.x + b.x, box[3].y - a.y + b.y}};
}

bool line_meets(const Quad& box, const Rect& box_rect, Point2 a, Point2 b) {
    if (std::max(a.x, b.x) < box_rect.left || std::min(a.x, b.x) > box_rect.right ||
        std::max(a.y, b.y) < box_rect.bottom || std::min(a.y, b.y) > box_rect.top)
        return false;
    return meet(box, Quad{a, b});
}

} // namespace

Rect grown(Rect rect, double by) {
    return {rect.left - by, rect.bottom - by, rect.right + by, rect.top + by};
}

Rect joined(const Rect& a, const Rect& b) {
    return {std::min(a.left, b.left), std::min(a.bottom, b.bottom), std::max(a.right, b.right),
            std::max(a.top, b.top)};
}

bool meet(const Rect& a, const Rect& b) {
    return a.left < b.right - touch && b.left < a.right - touch && a.bottom < b.top - touch &&
           b.bottom < a.top - touch;
}

Rect around(const std::vector<Point2>& points) {
    Rect rect{points.front().x, points.front().y, points.front().x, points.front().y};
    for (const Point2& p : points) rect = joined(rect, {p.x, p.y, p.x, p.y});
    return rect;
}

Quad corners(const Rect& rect) {
    return {
        {rect.left, rect.bottom}, {rect.right, rect.bottom}, {rect.right, rect.top}, {rect.left, rect.top}};
}

bool meet(const Quad& a, const Quad& b) { return !apart_along_sides_of(a, b) && !apart_along_sides_of(b, a); }

void Occupied::add_text(Quad box) {
    text_rects_.push_back(around(box));
    texts_.push_back(std::move(box));
}

void Occupied::add_line(Point2 a, Point2 b, Role role) { lines_.push_back({a, b, role}); }

bool Occupied::free_for_text(const Quad& box, double clearance) const {
    const Quad wide = grown_quad(box, clearance);
    const Rect rect = around(wide);
    for (std::size_t i = 0; i < texts_.size(); ++i)
        if (meet(rect, text_rects_[i]) && meet(wide, texts_[i])) return false;
    return std::none_of(lines_.begin(), lines_.end(),
                        [&](const Line& line) { return line_meets(wide, rect, line.a, line.b); });
}

bool Occupied::free_for_line(Point2 a, Point2 b, double clearance) const {
    for (std::size_t i = 0; i < texts_.size(); ++i)
        if (line_meets(grown_quad(texts_[i], clearance), grown(text_rects_[i], 2 * clearance), a, b))
            return false;
    return true;
}

int Occupied::crossings(Point2 a, Point2 b, const std::vector<Role>& roles) const {
    int count = 0;
    const Rect rect = around({a, b});
    for (const Line& line : lines_)
        if (std::find(roles.begin(), roles.end(), line.role) != roles.end() &&
            line_meets(Quad{a, b}, grown(rect, touch), line.a, line.b))
            ++count;
    return count;
}

void Occupied::add(const Occupied& other, Point2 by) {
    const auto moved = [&](Point2 p) { return Point2{p.x + by.x, p.y + by.y}; };
    for (Quad box : other.texts_) {
        for (Point2& p : box) p = moved(p);
        add_text(std::move(box));
    }
    for (const Line& line : other.lines_) lines_.push_back({moved(line.a), moved(line.b), line.role});
}

void FreeSpace::take(const Rect& rect) {
    std::vector<Rect> left;
    for (const Rect& r : rects_) {
        if (!meet(r, rect)) {
            left.push_back(r);
            continue;
        }
        if (rect.left > r.left) left.push_back({r.left, r.bottom, rect.left, r.top});
        if (rect.right < r.right) left.push_back({rect.right, r.bottom, r.right, r.top});
        if (rect.bottom > r.bottom) left.push_back({r.left, r.bottom, r.right, rect.bottom});
        if (rect.top < r.top) left.push_back({r.left, rect.top, r.right, r.top});
    }
    rects_.clear();
    const auto within = [](const Rect& a, const Rect& b) {
        return a.left >= b.left && a.right <= b.right && a.bottom >= b.bottom && a.top <= b.top;
    };
    for (std::size_t i = 0; i < left.size(); ++i) {
        bool needless = false;
        for (std::size_t j = 0; j < left.size() && !needless; ++j) {
            if (i == j || !within(left[i], left[j])) continue;
            // Of two equal ones the first stays.
            needless = !within(left[j], left[i]) || j < i;
        }
        if (!needless) rects_.push_back(left[i]);
    }
}

std::optional<Rect> FreeSpace::find(double width, double height) const {
    const Rect* best = nullptr;
    for (const Rect& r : rects_) {
        if (r.width() < width - 1e-6 || r.height() < height - 1e-6) continue;
        if (!best || r.top > best->top + 1e-6 || (r.top > best->top - 1e-6 && r.left < best->left)) best = &r;
    }
    if (!best) return std::nullopt;
    return Rect{best->left, best->top - height, best->left + width, best->top};
}

} // namespace rayfleck::drawing
