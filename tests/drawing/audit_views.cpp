// Judged from strokes and view records alone: where a view says its wood lies, edges must reach to its
// borders and no farther, at the scale that the title block names.

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "audit_subjects.hpp"

namespace rayfleck::testing {
namespace {

using namespace drawing;

struct Straight {
    Point2 a, b;
    const Stroke* stroke;
    bool level() const { return std::abs(a.y - b.y) < 0.002; }
    bool plumb() const { return std::abs(a.x - b.x) < 0.002; }
    double across() const { return level() ? a.y : a.x; }
    double low() const { return level() ? std::min(a.x, b.x) : std::min(a.y, b.y); }
    double high() const { return level() ? std::max(a.x, b.x) : std::max(a.y, b.y); }
};

class Views {
  public:
    Views(const Sheet& sheet, int number, Faults& faults) : sheet_(sheet), number_(number), faults_(faults) {
        for (const Item& item : sheet.items)
            if (const auto* stroke = std::get_if<Stroke>(&item))
                for (std::size_t i = 1; i < stroke->points.size(); ++i) {
                    const Straight s{stroke->points[i - 1], stroke->points[i], stroke};
                    if (std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) > 1e-6) lines_.push_back(s);
                }
    }
    void look() {
        centre_lines();
        coincident();
        crowded();
        projection();
        scale();
    }

  private:
    template <typename... Args> void fault(fmt::format_string<Args...> words, Args&&... args) {
        faults_.push_back(fmt::format("sheet {} ({}): ", number_, sheet_.title) +
                          fmt::format(words, std::forward<Args>(args)...));
    }

    /// D9: narrow long-dash dot, 3 to 7 mm past the wood. (That both ends lie on a dash is tested with the
    /// dashes.)
    void centre_lines() {
        for (const Straight& line : lines_) {
            if (line.stroke->role != Role::centre) continue;
            if (line.stroke->pen != Pen::centre) {
                fault("a centre line is not drawn long-dash dot at {:.1f}, {:.1f}", line.a.x, line.a.y);
                continue;
            }
            const double length = std::hypot(line.b.x - line.a.x, line.b.y - line.a.y);
            for (const ViewRecord& view : sheet_.views) {
                // Of lines through the middle of the whole view; others run past their own part only.
                const bool upright = line.plumb();
                const double from = upright ? view.low.y : view.low.x,
                             to = upright ? view.high.y : view.high.x;
                const double aside_low = upright ? view.low.x : view.low.y,
                             aside_high = upright ? view.high.x : view.high.y;
                if (std::abs(line.across() - (aside_low + aside_high) / 2) > 0.05) continue;
                if (line.high() < from + 0.5 || line.low() > to - 0.5 || length < 0.6 * (to - from)) continue;
                for (const double past : {from - line.low(), line.high() - to})
                    if (past > 0.02 && (past < 3 - 0.01 || past > 7 + 0.01))
                        fault("a centre line runs {:.2f} mm past its view at {:.1f}, {:.1f}", past, line.a.x,
                              line.a.y);
            }
        }
    }

    /// D10: no two of edges, centre lines and extension lines lie on each other.
    void coincident() {
        std::vector<const Straight*> some;
        for (const Straight& line : lines_)
            if ((line.level() || line.plumb()) &&
                (line.stroke->role == Role::edge || line.stroke->role == Role::centre ||
                 line.stroke->role == Role::extension))
                some.push_back(&line);
        for (std::size_t i = 0; i < some.size(); ++i)
            for (std::size_t j = i + 1; j < some.size(); ++j) {
                const Straight &a = *some[i], &b = *some[j];
                if (a.level() != b.level() || std::abs(a.across() - b.across()) > 0.004) continue;
                if (std::min(a.high(), b.high()) - std::max(a.low(), b.low()) > 0.3)
                    fault("two lines lie on each other at {:.1f}, {:.1f}", a.a.x, a.a.y);
            }
    }

    /// D11: edges of a view side by side at least 0.7 mm apart.
    void crowded() {
        std::vector<const Straight*> edges;
        for (const Straight& line : lines_)
            if (line.stroke->role == Role::edge && (line.level() || line.plumb())) edges.push_back(&line);
        for (std::size_t i = 0; i < edges.size(); ++i)
            for (std::size_t j = i + 1; j < edges.size(); ++j) {
                const Straight &a = *edges[i], &b = *edges[j];
                if (a.level() != b.level()) continue;
                const double apart = std::abs(a.across() - b.across());
                if (apart > 0.004 && apart < 0.7 - 0.01 &&
                    std::min(a.high(), b.high()) - std::max(a.low(), b.low()) > 1.0)
                    fault("edges only {:.2f} mm apart at {:.1f}, {:.1f}", apart, a.a.x, a.a.y);
            }
    }

    const ViewRecord* view(const std::string& name) const {
        for (const ViewRecord& v : sheet_.views)
            if (v.name == name) return &v;
        return nullptr;
    }

    /// Where the cone of the symbol stands: left of the circles in first angle.
    std::optional<bool> symbol_is_first_angle() const {
        std::optional<double> cone, circle;
        for (const Item& item : sheet_.items) {
            const auto* stroke = std::get_if<Stroke>(&item);
            if (!stroke || stroke->role != Role::mark || stroke->points.front().x < sheet_.width - 190 ||
                stroke->points.front().y > 40)
                continue;
            double low = 1e9, high = -1e9;
            for (const Point2& p : stroke->points) low = std::min(low, p.x), high = std::max(high, p.x);
            if (stroke->points.size() == 5) cone = (low + high) / 2;
            if (stroke->points.size() > 20) circle = (low + high) / 2;
        }
        if (!cone || !circle) return std::nullopt;
        return *cone < *circle;
    }

    /// D13, D14: views share their axes to 0.1 mm, and stand where the symbol says.
    void projection() {
        const ViewRecord *front = view("front"), *plan = view("plan");
        if (!front) return;
        const auto first = symbol_is_first_angle();
        if (!first) fault("no projection symbol");
        if (plan) {
            if (std::abs(front->origin.x - plan->origin.x) > 0.1)
                fault("the plan is out of line with the front");
            if (first && (plan->high.y < front->low.y) != *first)
                fault("the plan stands on the wrong side of the front");
        }
        for (const ViewRecord& side : sheet_.views) {
            if (side.right != 1 || side.up != 2) continue;
            if (std::abs(front->origin.y - side.origin.y) > 0.1)
                fault("the side view is out of line with the front");
            // Seen from the left it stands at the right in first angle.
            const bool from_left = side.right_sign<0, at_right = side.low.x> front->high.x;
            if (first && (from_left == at_right) != *first)
                fault("the side view stands on the wrong side of the front");
        }
    }

    /// D39: the scale of the views is of the lists, stands in the title block, and the edges keep it.
    void scale() {
        for (const ViewRecord& v : sheet_.views) {
            const double n = v.scale > 1 ? v.scale : 1 / v.scale;
            static const std::vector<double> listed{1,  2,  4,  5,  8,  10,  12,  16,  20,  24,
                                                    32, 48, 50, 64, 96, 100, 128, 200, 500, 1000};
            if (std::none_of(listed.begin(), listed.end(),
                             [&](double l) { return std::abs(l - n) < 1e-6 * n; }))
                fault("the {} has a scale of no list: {}", v.name, v.scale);
            const std::string words = v.scale > 1 ? fmt::format("{:g}:1", n) : fmt::format("1:{:g}", n);
            const bool shown = std::any_of(sheet_.items.begin(), sheet_.items.end(), [&](const Item& item) {
                const auto* text = std::get_if<Text>(&item);
                return text && text->at.y < 40 && text->at.x > sheet_.width - 190 &&
                       text->words.find(words) != std::string::npos;
            });
            if (!shown) fault("the scale {} of the {} does not stand in the title block", words, v.name);
            double left = 1e9, right = -1e9, bottom = 1e9, top = -1e9;
            for (const Straight& line : lines_) {
                if (line.stroke->role != Role::edge || line.stroke->pen != Pen::visible) continue;
                for (const Point2 p : {line.a, line.b}) {
                    if (p.x < v.low.x - 2 || p.x > v.high.x + 2 || p.y < v.low.y - 2 || p.y > v.high.y + 2)
                        continue;
                    left = std::min(left, p.x), right = std::max(right, p.x);
                    bottom = std::min(bottom, p.y), top = std::max(top, p.y);
                }
            }
            if (std::max({std::abs(left - v.low.x), std::abs(right - v.high.x), std::abs(bottom - v.low.y),
                          std::abs(top - v.high.y)}) > 0.1)
                fault("the edges of the {} miss the place it names by {:.2f}, {:.2f}, {:.2f}, {:.2f}", v.name,
                      left - v.low.x, right - v.high.x, bottom - v.low.y, top - v.high.y);
            // The overall sizes, as they stand in the records, at that scale.
            for (const auto& [axis, size] :
                 {std::pair{v.right, v.high.x - v.low.x}, {v.up, v.high.y - v.low.y}}) {
                double most = 0;
                for (const DimensionRecord& r : sheet_.dimensions)
                    if (r.part.empty() && r.axis == "XYZ"[axis]) most = std::max(most, r.to - r.from);
                if (std::abs(most * v.scale - size) > 0.1)
                    fault("the {} is {:.2f} mm where its overall size makes {:.2f}", v.name, size,
                          most * v.scale);
            }
        }
    }

    const Sheet& sheet_;
    int number_;
    Faults& faults_;
    std::vector<Straight> lines_;
};

} // namespace

void audit_views(const drawing::Sheet& sheet, int number, Faults& faults) {
    if (!sheet.views.empty()) Views(sheet, number, faults).look();
}

} // namespace rayfleck::testing
