#pragma once
// What is taken on the paper, and where there is still room.
//
// Two questions come up while a sheet is laid out. Close up: may this figure stand here, or would it touch a
// line or another figure? Occupied keeps every text as a convex box and every line as a segment and answers
// that exactly (separating axes). From afar: where on the sheet does a block of this size still fit?
// FreeSpace keeps the largest empty rectangles left. Labels are placed greedily with a list of alternatives,
// which is enough for the few labels of a view; nothing is moved again once it stands. Left out: curved text
// and anything but straight lines.

#include <optional>
#include <vector>

#include "drawing/sheet.hpp"

namespace rayfleck::drawing {

/// An upright rectangle on paper, mm.
struct Rect {
    double left = 0, bottom = 0, right = 0, top = 0;
    double width() const { return right - left; }
    double height() const { return top - bottom; }
    Point2 middle() const { return {(left + right) / 2, (bottom + top) / 2}; }
};
Rect grown(Rect rect, double by);
Rect joined(const Rect& a, const Rect& b);
/// They share more than a border.
bool meet(const Rect& a, const Rect& b);
/// The upright rectangle round some points; there must be at least one.
Rect around(const std::vector<Point2>& points);

/// Corners of a convex area, in order.
using Quad = std::vector<Point2>;
Quad corners(const Rect& rect);
/// Two convex areas share more than a border. A segment counts as an area of two corners.
bool meet(const Quad& a, const Quad& b);

/// Texts and lines that already stand.
class Occupied {
  public:
    void add_text(Quad box);
    void add_line(Point2 a, Point2 b, Role role);
    /// No text and no line comes nearer to the box than `clearance` mm.
    bool free_for_text(const Quad& box, double clearance) const;
    /// The line comes no nearer to any text than `clearance` mm.
    bool free_for_line(Point2 a, Point2 b, double clearance) const;
    /// How many of the lines of these roles the segment meets.
    int crossings(Point2 a, Point2 b, const std::vector<Role>& roles) const;
    const std::vector<Quad>& texts() const { return texts_; }
    void add(const Occupied& other, Point2 by);

  private:
    struct Line {
        Point2 a, b;
        Role role;
    };
    std::vector<Quad> texts_;
    std::vector<Rect> text_rects_;
    std::vector<Line> lines_;
};

/// The empty part of a rectangle as its largest empty rectangles, which may overlap one another.
class FreeSpace {
  public:
    explicit FreeSpace(Rect all) : rects_{all} {}
    void take(const Rect& rect);
    const std::vector<Rect>& rects() const { return rects_; }
    /// The highest place for a block of that size, of the highest the leftmost; its rectangle.
    std::optional<Rect> find(double width, double height) const;

  private:
    std::vector<Rect> rects_;
};

} // namespace rayfleck::drawing
