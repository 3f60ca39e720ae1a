#pragma once
// A piece of a drawing that is laid out by itself and then put somewhere on a sheet as a whole.
//
// Views with their dimensions, tables, cells and findings are blocks. Each keeps what it has taken of its own
// paper, so that figures can be tried against it; blocks are then set side by side without touching. All
// coordinates are rounded to 0.001 mm when they come in, so the same piece gives the same bytes on every
// machine.

#include <string>
#include <vector>

#include "drawing/placement.hpp"
#include "drawing/sheet.hpp"

namespace rayfleck::drawing {

class Block {
  public:
    void stroke(std::vector<Point2> points, Pen pen, Role role, Ink ink = Ink::black);
    void line(Point2 a, Point2 b, Pen pen, Role role, Ink ink = Ink::black) {
        stroke({a, b}, pen, role, ink);
    }
    void circle(Point2 centre, double radius, Pen pen, Role role, Ink ink = Ink::black);
    void frame(const Rect& rect, Pen pen, Role role, Ink ink = Ink::black);
    void fill(std::vector<std::vector<Point2>> rings, Ink ink);
    void fill(const Rect& rect, Ink ink) { fill({corners(rect)}, ink); }
    /// A round dot of that diameter.
    void dot(Point2 centre, double diameter, Ink ink = Ink::black);
    void text(Text text);
    void link(const Rect& area, int to_sheet);
    void record(DimensionRecord record) { dimensions_.push_back(std::move(record)); }
    void record(ViewRecord record) { views_.push_back(std::move(record)); }
    void record(CutRecord record) { cuts_.push_back(std::move(record)); }
    void record_section(SectionRecord record) { sections_.push_back(std::move(record)); }
    /// Everything of another block, moved.
    void add(const Block& other, Point2 by);
    /// Room to keep free round the block although nothing is drawn there.
    void claim(const Rect& rect) { grow(rect); }

    const Occupied& occupied() const { return occupied_; }
    bool empty() const { return !any_; }
    /// Round everything drawn or claimed.
    const Rect& box() const { return box_; }
    const std::vector<Item>& items() const { return items_; }
    const std::vector<DimensionRecord>& dimensions() const { return dimensions_; }
    const std::vector<CutRecord>& cuts() const { return cuts_; }
    /// Puts everything on a sheet.
    void put_on(Sheet& sheet) const;

  private:
    void grow(const Rect& rect);

    std::vector<Item> items_;
    std::vector<DimensionRecord> dimensions_;
    std::vector<ViewRecord> views_;
    std::vector<CutRecord> cuts_;
    std::vector<SectionRecord> sections_;
    Occupied occupied_;
    Rect box_;
    bool any_ = false;
};

/// To the nearest 0.001 mm.
double rounded_mm(double value);

} // namespace rayfleck::drawing
