// Texts are convex boxes, strokes are segments; both are compared by separating axes, written here anew so
// that a fault in the drawing room's own test of overlaps cannot hide itself.

#include "audit.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include "audit_subjects.hpp"

namespace rayfleck::testing {
namespace {

using namespace drawing;

struct Line {
    Point2 a, b;
    const Stroke* stroke = nullptr;
    bool level() const { return std::abs(a.y - b.y) < 0.002; }
    bool plumb() const { return std::abs(a.x - b.x) < 0.002; }
};

struct Boxed {
    const Text* text = nullptr;
    std::vector<Point2> box;
};

bool overlap(const std::vector<Point2>& p, const std::vector<Point2>& q, double slack) {
    for (const auto* polygon : {&p, &q})
        for (std::size_t i = 0; i < polygon->size(); ++i) {
            const Point2 a = (*polygon)[i], b = (*polygon)[(i + 1) % polygon->size()];
            const double length = std::hypot(b.x - a.x, b.y - a.y);
            if (length < 1e-9) continue;
            const double nx = (b.y - a.y) / length, ny = (a.x - b.x) / length;
            double low[2] = {1e9, 1e9}, high[2] = {-1e9, -1e9};
            for (int k = 0; k < 2; ++k)
                for (const Point2& c : k == 0 ? p : q) {
                    low[k] = std::min(low[k], c.x * nx + c.y * ny);
                    high[k] = std::max(high[k], c.x * nx + c.y * ny);
                }
            if (high[0] <= low[1] + slack || high[1] <= low[0] + slack) return false;
        }
    return true;
}

class SheetAudit {
  public:
    SheetAudit(const Sheet& sheet, int number, std::vector<std::string>& faults)
        : sheet_(sheet), number_(number), faults_(faults) {
        for (const Item& item : sheet.items) {
            if (const auto* stroke = std::get_if<Stroke>(&item))
                for (std::size_t i = 1; i < stroke->points.size(); ++i)
                    lines_.push_back({stroke->points[i - 1], stroke->points[i], stroke});
            if (const auto* text = std::get_if<Text>(&item)) texts_.push_back({text, text_box(*text)});
        }
    }

    void look() {
        paper();
        title_block();
        lettering();
        pens();
        texts_apart();
        texts_clear_of_lines();
        arrowheads_clear_of_texts();
        dimension_lines();
        edges_drawn_once();
    }

  private:
    template <typename... Args> void fault(fmt::format_string<Args...> words, Args&&... args) {
        faults_.push_back(fmt::format("sheet {} ({}): ", number_, sheet_.title) +
                          fmt::format(words, std::forward<Args>(args)...));
    }

    void paper() {
        const std::pair<double, double> sizes[] = {
            {210, 297}, {420, 297}, {594, 420}, {215.9, 279.4}, {431.8, 279.4}};
        if (std::none_of(std::begin(sizes), std::end(sizes), [&](const auto& s) {
                return std::abs(s.first - sheet_.width) < 0.1 && std::abs(s.second - sheet_.height) < 0.1;
            }))
            fault("sheet of {} × {} mm is no listed size", sheet_.width, sheet_.height);
        const double left = 20, bottom = 10, right = sheet_.width - 10, top = sheet_.height - 10;
        const auto outside = [&](Point2 p) {
            return p.x < left - 0.01 || p.y < bottom - 0.01 || p.x > right + 0.01 || p.y > top + 0.01;
        };
        for (const Line& line : lines_)
            if (outside(line.a) || outside(line.b))
                fault("a line runs outside the frame at {:.1f}, {:.1f}", line.a.x, line.a.y);
        for (const Boxed& t : texts_)
            if (std::any_of(t.box.begin(), t.box.end(), outside))
                fault("text `{}` stands outside the frame", t.text->words);
        bool framed = false;
        for (const Item& item : sheet_.items)
            if (const auto* stroke = std::get_if<Stroke>(&item);
                stroke && stroke->role == Role::frame && stroke->points.size() == 5) {
                double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
                for (const Point2& p : stroke->points)
                    x0 = std::min(x0, p.x), y0 = std::min(y0, p.y), x1 = std::max(x1, p.x),
                    y1 = std::max(y1, p.y);
                framed = framed || (x0 == left && y0 == bottom && std::abs(x1 - right) < 1e-6 &&
                                    std::abs(y1 - top) < 1e-6);
            }
        if (!framed) fault("no frame 20 mm from the left and 10 mm from the other sides");
    }

    void title_block() {
        const double block_left = sheet_.width - 10 - 180;
        for (const char* label :
             {"owner", "number", "date", "sheet", "title", "approved by", "created by", "document type",
              "rev.", "scale", "units", "material", "sizes at moisture"}) {
            const Boxed* found = nullptr;
            for (const Boxed& t : texts_)
                if (t.text->words == label && t.text->at.x >= block_left && t.text->at.y < 45) found = &t;
            if (!found) {
                fault("the title block lacks the field `{}`", label);
                continue;
            }
            const bool filled = std::any_of(texts_.begin(), texts_.end(), [&](const Boxed& t) {
                return std::abs(t.text->at.x - found->text->at.x) < 0.01 &&
                       t.text->at.y < found->text->at.y && t.text->at.y > found->text->at.y - 8 &&
                       !t.text->words.empty();
            });
            if (!filled) fault("the field `{}` is empty", label);
        }
    }

    void lettering() {
        for (const Boxed& t : texts_) {
            if (t.text->height < 2.5 - 1e-9)
                fault("text `{}` is {:.2f} mm high", t.text->words, t.text->height);
            if (t.text->turn != 0 && t.text->turn != 90)
                fault("text `{}` is turned by {}°", t.text->words, t.text->turn);
            // Repeats are told by their number of places.
            if (t.text->words.find("TYP") != std::string::npos)
                fault("`{}` says TYP instead of a number", t.text->words);
        }
    }

    /// ISO 128: two widths, one twice the other; edges wide or narrow dashed, what belongs to dimensions
    /// narrow.
    void pens() {
        const auto is = [](double a, double b) { return std::abs(a - b) < 1e-9; };
        const double wide = width_of(Pen::visible), narrow = width_of(Pen::thin);
        if (!is(wide, 2 * narrow)) fault("the two line widths are {} and {} mm", wide, narrow);
        // 12 and 3 line widths, within a tenth.
        const std::vector<double> dashes = dashes_of(Pen::hidden);
        if (dashes.size() != 2 || std::abs(dashes[0] / (12 * narrow) - 1) > 0.1 ||
            std::abs(dashes[1] / (3 * narrow) - 1) > 0.1)
            fault("hidden edges are not dashed 12 and 3 line widths");
        for (const Item& item : sheet_.items) {
            const auto* stroke = std::get_if<Stroke>(&item);
            if (!stroke || stroke->points.empty()) continue;
            const double width = width_of(stroke->pen);
            const Point2 at = stroke->points.front();
            if (!is(width, wide) && !is(width, narrow))
                fault("a line {} mm wide at {:.1f}, {:.1f}", width, at.x, at.y);
            switch (stroke->role) {
            case Role::edge:
                if (stroke->pen != Pen::visible && stroke->pen != Pen::hidden)
                    fault("an edge drawn neither wide nor dashed at {:.1f}, {:.1f}", at.x, at.y);
                break;
            case Role::dimension:
            case Role::extension:
            case Role::leader:
            case Role::hatch:
                if (stroke->pen != Pen::thin)
                    fault("a dimension, leader or hatch line not narrow at {:.1f}, {:.1f}", at.x, at.y);
                break;
            default:
                break;
            }
        }
    }

    void texts_apart() {
        for (std::size_t i = 0; i < texts_.size(); ++i)
            for (std::size_t j = i + 1; j < texts_.size(); ++j)
                if (overlap(texts_[i].box, texts_[j].box, 0.01))
                    fault("texts `{}` and `{}` overlap at {:.1f}, {:.1f}", texts_[i].text->words,
                          texts_[j].text->words, texts_[i].text->at.x, texts_[i].text->at.y);
    }

    void texts_clear_of_lines() {
        for (const Boxed& t : texts_) {
            double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
            for (const Point2& p : t.box)
                x0 = std::min(x0, p.x), y0 = std::min(y0, p.y), x1 = std::max(x1, p.x),
                y1 = std::max(y1, p.y);
            for (const Line& line : lines_) {
                if (std::max(line.a.x, line.b.x) < x0 || std::min(line.a.x, line.b.x) > x1 ||
                    std::max(line.a.y, line.b.y) < y0 || std::min(line.a.y, line.b.y) > y1)
                    continue;
                if (overlap(t.box, {line.a, line.b}, 0.01)) {
                    fault("a line crosses the text `{}` at {:.1f}, {:.1f}", t.text->words, t.text->at.x,
                          t.text->at.y);
                    break;
                }
            }
        }
    }

    void arrowheads_clear_of_texts() {
        for (const Item& item : sheet_.items) {
            const auto* fill = std::get_if<Fill>(&item);
            if (!fill || fill->ink != Ink::black || fill->rings.size() != 1) continue;
            for (const Boxed& t : texts_)
                if (overlap(fill->rings[0], t.box, 0.01))
                    fault("an arrowhead or dot stands in the text `{}`", t.text->words);
        }
    }

    /// Stretch that two parallel lines share.
    static double shared(const Line& a, const Line& b) {
        const auto along = [&](Point2 p) { return a.level() ? p.x : p.y; };
        const double low = std::max(std::min(along(a.a), along(a.b)), std::min(along(b.a), along(b.b)));
        const double high = std::min(std::max(along(a.a), along(a.b)), std::max(along(b.a), along(b.b)));
        return high - low;
    }
    static double apart(const Line& a, const Line& b) {
        return a.level() ? std::abs(a.a.y - b.a.y) : std::abs(a.a.x - b.a.x);
    }

    void dimension_lines() {
        std::vector<const Line*> dims;
        for (const Line& line : lines_)
            if (line.stroke->role == Role::dimension) dims.push_back(&line);
        for (std::size_t i = 0; i < dims.size(); ++i) {
            if (!dims[i]->level() && !dims[i]->plumb()) continue;
            for (std::size_t j = i + 1; j < dims.size(); ++j) {
                const bool parallel =
                    (dims[i]->level() && dims[j]->level()) || (dims[i]->plumb() && dims[j]->plumb());
                if (parallel && shared(*dims[i], *dims[j]) > 0.5 && apart(*dims[i], *dims[j]) < 7 - 0.01)
                    fault("dimension lines {:.2f} mm apart at {:.1f}, {:.1f}", apart(*dims[i], *dims[j]),
                          dims[i]->a.x, dims[i]->a.y);
                if (!parallel && overlap({dims[i]->a, dims[i]->b}, {dims[j]->a, dims[j]->b}, 0.01))
                    fault("dimension lines cross at {:.1f}, {:.1f}", dims[i]->a.x, dims[i]->a.y);
            }
            for (const Line& line : lines_) {
                if (line.stroke->role != Role::edge) continue;
                const bool parallel =
                    (dims[i]->level() && line.level()) || (dims[i]->plumb() && line.plumb());
                if (parallel && shared(*dims[i], line) > 0.5 && apart(*dims[i], line) < 7 - 0.01)
                    fault("a dimension line lies {:.2f} mm off an outline at {:.1f}, {:.1f}",
                          apart(*dims[i], line), dims[i]->a.x, dims[i]->a.y);
                if (!parallel && overlap({dims[i]->a, dims[i]->b}, {line.a, line.b}, 0.01))
                    fault("a dimension line crosses an outline at {:.1f}, {:.1f}", dims[i]->a.x,
                          dims[i]->a.y);
            }
        }
    }

    void edges_drawn_once() {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            const Line& a = lines_[i];
            if (a.stroke->role != Role::edge || (!a.level() && !a.plumb())) continue;
            for (std::size_t j = i + 1; j < lines_.size(); ++j) {
                const Line& b = lines_[j];
                if (b.stroke->role != Role::edge) continue;
                const bool parallel = (a.level() && b.level()) || (a.plumb() && b.plumb());
                if (parallel && apart(a, b) < 0.004 && shared(a, b) > 0.3)
                    fault("two edges lie on each other at {:.1f}, {:.1f}", a.a.x, a.a.y);
            }
        }
    }

    const Sheet& sheet_;
    int number_;
    std::vector<std::string>& faults_;
    std::vector<Line> lines_;
    std::vector<Boxed> texts_;
};

/// Places of one part along one axis, joined by dimensions: a tree, so that none is told twice.
class Tree {
  public:
    /// false when the two places were already joined
    bool join(double a, double b) {
        const std::size_t x = root(place(a)), y = root(place(b));
        if (x == y) return false;
        up_[x] = y;
        return true;
    }

  private:
    std::size_t place(double at) {
        for (std::size_t i = 0; i < at_.size(); ++i)
            if (std::abs(at_[i] - at) < 0.01) return i;
        at_.push_back(at);
        up_.push_back(up_.size());
        return up_.size() - 1;
    }
    std::size_t root(std::size_t i) const {
        while (up_[i] != i) i = up_[i];
        return i;
    }
    std::vector<double> at_;
    std::vector<std::size_t> up_;
};

void records(const Set& set, const measure::Manner& manner, std::vector<std::string>& faults) {
    std::map<std::pair<std::string, char>, Tree> trees;
    std::map<char, std::pair<double, int>> overall;
    for (const Sheet& sheet : set.sheets)
        for (const DimensionRecord& r : sheet.dimensions) {
            const bool along_axis = r.axis != 'A' && r.axis != 'R' && r.axis != 'D';
            if (along_axis && !r.auxiliary && !r.part.empty() && !trees[{r.part, r.axis}].join(r.from, r.to))
                faults.push_back(
                    fmt::format("{}: dimension {} of axis {} follows from others", r.part, r.shown, r.axis));
            if (r.part.empty()) {
                auto& [size, times] = overall[r.axis];
                const double span = std::abs(r.to - r.from);
                if (span > size + 0.01)
                    size = span, times = 1;
                else if (span > size - 0.01)
                    ++times;
            }
            if (along_axis && r.shown.find("×") == std::string::npos) {
                const std::string exact =
                    measure::text(measure::Length::from_geometry(std::abs(r.to - r.from)), manner);
                if (r.shown != exact && r.shown != "(" + exact + ")")
                    faults.push_back(
                        fmt::format("{}: figure {} where the wood measures {}", r.part, r.shown, exact));
            }
        }
    for (const char axis : {'X', 'Y', 'Z'})
        if (overall[axis].second != 1)
            faults.push_back(
                fmt::format("the overall size along {} is given {} times", axis, overall[axis].second));
}

} // namespace

std::vector<std::string> audit(const drawing::Set& set, const measure::Manner& manner) {
    std::vector<std::string> faults;
    for (std::size_t i = 0; i < set.sheets.size(); ++i)
        SheetAudit(set.sheets[i], static_cast<int>(i) + 1, faults).look();
    for (std::size_t i = 0; i < set.sheets.size(); ++i) {
        const int number = static_cast<int>(i) + 1;
        audit_views(set.sheets[i], number, faults);
        audit_dimension_layout(set.sheets[i], number, faults);
        audit_dimension_figures(set.sheets[i], number, manner, faults);
    }
    audit_references(set, faults);
    records(set, manner, faults);
    return faults;
}

} // namespace rayfleck::testing
