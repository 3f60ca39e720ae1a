// Arrowheads and dots cut a dimension line into the links that it carries; links, figures and records are
// then held against each other.

#include <algorithm>
#include <cmath>
#include <regex>

#include <fmt/format.h>

#include "audit_subjects.hpp"

namespace rayfleck::testing {
namespace {

using namespace drawing;

struct Mark {
    double at = 0;   ///< along the line
    double body = 0; ///< which way the arrowhead's body lies from its tip; 0 for a dot
    double length = 0;
};

/// A dimension line, along x or y.
struct DimensionLine {
    bool level = true;
    double across = 0, low = 0, high = 0;
    std::vector<Mark> marks; ///< ascending
    double wood = 0;         ///< > 0: its extension lines come from higher coordinates
    double first() const { return marks.front().at; }
    double last() const { return marks.back().at; }
};

std::vector<DimensionLine> dimension_lines(const Sheet& sheet) {
    std::vector<DimensionLine> lines;
    for (const Item& item : sheet.items) {
        const auto* s = std::get_if<Stroke>(&item);
        if (!s || s->role != Role::dimension || s->points.size() != 2) continue;
        const Point2 a = s->points[0], b = s->points[1];
        const bool level = std::abs(a.y - b.y) < 0.002;
        if (!level && std::abs(a.x - b.x) > 0.002) continue;
        lines.push_back({level,
                         level ? a.y : a.x,
                         level ? std::min(a.x, b.x) : std::min(a.y, b.y),
                         level ? std::max(a.x, b.x) : std::max(a.y, b.y),
                         {},
                         0});
    }
    for (const Item& item : sheet.items) {
        const auto* fill = std::get_if<Fill>(&item);
        if (!fill || fill->ink != Ink::black || fill->rings.size() != 1) continue;
        const std::vector<Point2>& ring = fill->rings.front();
        for (DimensionLine& line : lines) {
            const auto along = [&](Point2 p) { return line.level ? p.x : p.y; };
            const auto across = [&](Point2 p) { return line.level ? p.y : p.x; };
            Mark mark;
            Point2 place = ring.front();
            if (ring.size() == 3) {
                const double back = (along(ring[1]) + along(ring[2])) / 2;
                if (std::abs(across(ring[1]) + across(ring[2]) - 2 * line.across) > 0.01) continue;
                mark = {along(ring[0]), back > along(ring[0]) ? 1.0 : -1.0, std::abs(back - along(ring[0]))};
            } else {
                Point2 sum;
                for (const Point2& p : ring) sum = {sum.x + p.x, sum.y + p.y};
                place = {sum.x / static_cast<double>(ring.size()), sum.y / static_cast<double>(ring.size())};
                mark = {along(place), 0, 0};
            }
            if (std::abs(across(place) - line.across) < 0.01 && mark.at > line.low - 0.01 &&
                mark.at < line.high + 0.01)
                line.marks.push_back(mark);
        }
    }
    std::erase_if(lines, [](const DimensionLine& line) { return line.marks.empty(); });
    for (const Item& item : sheet.items) {
        const auto* s = std::get_if<Stroke>(&item);
        if (!s || s->role != Role::extension || s->points.size() != 2) continue;
        for (DimensionLine& line : lines) {
            const auto along = [&](Point2 p) { return line.level ? p.x : p.y; };
            const auto across = [&](Point2 p) { return line.level ? p.y : p.x; };
            const Point2 a = s->points[0], b = s->points[1];
            const bool square = std::abs(along(a) - along(b)) < 0.002,
                       over = (across(a) - line.across) * (across(b) - line.across) < 0;
            if (square && over && std::any_of(line.marks.begin(), line.marks.end(), [&](const Mark& m) {
                    return std::abs(m.at - along(a)) < 0.01;
                }))
                line.wood += across(a) + across(b) - 2 * line.across;
        }
    }
    for (DimensionLine& line : lines)
        std::sort(line.marks.begin(), line.marks.end(),
                  [](const Mark& a, const Mark& b) { return a.at < b.at; });
    return lines;
}

std::string where(const Sheet& sheet, int number) {
    return fmt::format("sheet {} ({}): ", number, sheet.title);
}

/// D29: on one side of a view no link lies inside a shorter one that it covers.
void order(const Sheet& sheet, int number, const std::vector<DimensionLine>& lines, Faults& faults) {
    for (const ViewRecord& view : sheet.views)
        for (const DimensionLine& inner : lines)
            for (const DimensionLine& outer : lines) {
                if (&inner == &outer || inner.level != outer.level) continue;
                const double low = inner.level ? view.low.y : view.low.x,
                             high = inner.level ? view.high.y : view.high.x;
                const double from = inner.level ? view.low.x : view.low.y,
                             to = inner.level ? view.high.x : view.high.y;
                const auto beside = [&](const DimensionLine& line) {
                    return line.first() > from - 0.1 && line.last() < to + 0.1;
                };
                const bool both_below = inner.across < low && outer.across < inner.across && inner.wood > 0 &&
                                        outer.wood > 0,
                           both_above = inner.across > high && outer.across > inner.across &&
                                        inner.wood < 0 && outer.wood < 0;
                if (!(both_below || both_above) || !beside(inner) || !beside(outer)) continue;
                // Not those of another view farther off, nor links of a hair's breadth, which go where room
                // is.
                const bool beyond_another =
                    std::any_of(sheet.views.begin(), sheet.views.end(), [&](const ViewRecord& other) {
                        const double a = inner.level ? other.low.y : other.low.x,
                                     b = inner.level ? other.high.y : other.high.x;
                        const bool in_line = inner.level
                                                 ? other.low.x < view.high.x && other.high.x > view.low.x
                                                 : other.low.y < view.high.y && other.high.y > view.low.y;
                        return in_line &&
                               (both_below ? b < low && a > outer.across : a > high && b < outer.across);
                    });
                constexpr double hair = 3;
                if (beyond_another || outer.last() - outer.first() < hair) continue;
                for (std::size_t i = 1; i < inner.marks.size(); ++i) {
                    const double a = inner.marks[i - 1].at, b = inner.marks[i].at;
                    if (outer.first() > a - 0.01 && outer.last() < b + 0.01 &&
                        outer.last() - outer.first() < b - a - 0.5)
                        faults.push_back(where(sheet, number) +
                                         fmt::format("a dimension from {:.1f} to {:.1f} lies outside a "
                                                     "longer one from {:.1f} to {:.1f}, {:.1f} farther out",
                                                     outer.first(), outer.last(), a, b,
                                                     std::abs(outer.across - inner.across)));
                }
            }
}

/// D31: one kind of arrowhead; outside where the link is shorter than 10 mm.
void arrowheads(const Sheet& sheet, int number, const std::vector<DimensionLine>& lines, Faults& faults) {
    double length = 0;
    for (const DimensionLine& line : lines)
        for (std::size_t i = 0; i < line.marks.size(); ++i) {
            const Mark& mark = line.marks[i];
            if (mark.body == 0) continue;
            if (length == 0) length = mark.length;
            if (std::abs(mark.length - length) > 0.01)
                faults.push_back(where(sheet, number) +
                                 fmt::format("arrowheads of {:.2f} and {:.2f} mm", length, mark.length));
            for (const Mark& other : line.marks)
                if ((other.at - mark.at) * mark.body > 0.01 && other.body == -mark.body &&
                    std::abs(other.at - mark.at) < 10 - 0.01) {
                    // Arrows that point away from each other with another mark between them are not one link.
                    const bool adjacent =
                        std::none_of(line.marks.begin(), line.marks.end(), [&](const Mark& between) {
                            return (between.at - mark.at) * mark.body > 0.01 &&
                                   (other.at - between.at) * mark.body > 0.01;
                        });
                    if (adjacent)
                        faults.push_back(where(sheet, number) +
                                         fmt::format("arrowheads within {:.1f} mm at {:.1f}",
                                                     std::abs(other.at - mark.at), mark.at));
                }
        }
}

/// D32: every figure just above a dimension line that reads the same way.
void figures(const Sheet& sheet, int number, const std::vector<DimensionLine>& lines, Faults& faults) {
    for (const Item& item : sheet.items) {
        const auto* text = std::get_if<Text>(&item);
        if (!text) continue;
        const bool recorded =
            std::any_of(sheet.dimensions.begin(), sheet.dimensions.end(), [&](const DimensionRecord& r) {
                return r.axis != 'A' && r.axis != 'R' && r.axis != 'D' && r.shown == text->words;
            });
        // Numbers of balloons, of lists and of the title block are no figures of dimensions.
        if (!recorded || text->face != Typeface::lettering ||
            (text->at.y < 40 && text->at.x > sheet.width - 190))
            continue;
        const bool level = text->turn == 0;
        const double width = text_width(text->words, text->height, text->face);
        double bottom = 1e9, right = -1e9;
        for (const Point2& p : text_box(*text)) bottom = std::min(bottom, p.y), right = std::max(right, p.x);
        const bool above = std::any_of(lines.begin(), lines.end(), [&](const DimensionLine& line) {
            const double lift = level ? bottom - line.across : line.across - right;
            const double middle = (level ? text->at.x : text->at.y) + width / 2;
            return line.level == level && lift > 0.3 && lift < 1.7 && middle > line.low - 1 &&
                   middle < line.high + 1;
        });
        if (!above)
            faults.push_back(where(sheet, number) +
                             fmt::format("the figure `{}` stands on no dimension line at {:.1f}, {:.1f}",
                                         text->words, text->at.x, text->at.y));
    }
}

double number_in(const std::string& text) {
    double value = 0;
    return printed_number(text, value) ? value : std::nan("");
}

} // namespace

bool printed_number(const std::string& shown, double& value) {
    static const std::regex form(R"((?:(\d+)')?-?(?:(\d+(?:\.\d+)?)(?:-|(?![\d/])))?(?:(\d+)/(\d+))?)");
    std::smatch m;
    if (shown.empty() || !std::regex_match(shown, m, form)) return false;
    value = 0;
    if (m[1].matched) value += 12 * std::stod(m[1]);
    if (m[2].matched) value += std::stod(m[2]);
    if (m[3].matched) value += std::stod(m[3]) / std::stod(m[4]);
    return m[1].matched || m[2].matched || m[3].matched;
}

void audit_dimension_layout(const drawing::Sheet& sheet, int number, Faults& faults) {
    if (sheet.views.empty()) return;
    const std::vector<DimensionLine> lines = dimension_lines(sheet);
    order(sheet, number, lines, faults);
    arrowheads(sheet, number, lines, faults);
    figures(sheet, number, lines, faults);
}

void audit_dimension_figures(const drawing::Sheet& sheet, int number, const measure::Manner& manner,
                             Faults& faults) {
    for (const DimensionRecord& r : sheet.dimensions) {
        if (!r.part.empty()) continue;
        // D26
        if (r.auxiliary != r.shown.starts_with("("))
            faults.push_back(where(sheet, number) +
                             fmt::format("`{}` and its parentheses disagree", r.shown));
        // D27
        static const std::regex repeat(R"((\d+)× (\(?)([^ )]+)\)? = (.+))");
        std::smatch m;
        if (r.shown.find("×") != std::string::npos && !std::regex_match(r.shown, m, repeat)) {
            faults.push_back(where(sheet, number) + fmt::format("`{}` is no repeat as n×", r.shown));
        } else if (!m.empty()) {
            const double pitch = number_in(m[3]), whole = number_in(m[4]);
            const std::string exact = measure::text(measure::Length::from_geometry(r.to - r.from), manner);
            if (m[2].length() == 0 && std::abs(std::stod(m[1]) * pitch - whole) > 1e-6)
                faults.push_back(where(sheet, number) + fmt::format("`{}` does not add up", r.shown));
            if (m[4] != exact)
                faults.push_back(where(sheet, number) +
                                 fmt::format("`{}` where the wood measures {}", r.shown, exact));
        }
    }
    // D28: a chain from end to end of the overall size adds up as printed, or has a link in parentheses.
    for (const char axis : {'X', 'Y', 'Z'}) {
        const DimensionRecord* overall = nullptr;
        std::vector<const DimensionRecord*> links;
        for (const DimensionRecord& r : sheet.dimensions)
            if (r.part.empty() && r.axis == axis && (!overall || r.to - r.from > overall->to - overall->from))
                overall = &r;
        for (const DimensionRecord& r : sheet.dimensions)
            if (r.part.empty() && r.axis == axis && &r != overall) links.push_back(&r);
        if (!overall) continue;
        std::sort(links.begin(), links.end(),
                  [](const DimensionRecord* a, const DimensionRecord* b) { return a->from < b->from; });
        double at = overall->from, sum = 0;
        bool open = false, any = false;
        for (const DimensionRecord* link : links) {
            if (std::abs(link->from - at) > 0.01) continue;
            at = link->to, any = true;
            std::string shown = link->shown;
            if (link->auxiliary || shown.starts_with("(")) open = true;
            if (const auto equals = shown.rfind("= "); equals != std::string::npos)
                shown = shown.substr(equals + 2);
            sum += open ? 0 : number_in(shown);
        }
        if (any && !open && std::abs(at - overall->to) < 0.01 &&
            std::abs(sum - number_in(overall->shown)) > 1e-6)
            faults.push_back(where(sheet, number) +
                             fmt::format("the links along {} make {} of {}", axis, sum, overall->shown));
    }
}

} // namespace rayfleck::testing
