// Dimensions: below the front view the rod across, below the side view the rod deep, left of the front view
// the rod up, each as a string from line to line, as far as there is wood, with the overall size outside. A
// link of a string that repeats the overall is left out. First angle puts the plan below the front and the
// view from the left at its right; third angle puts the plan above and the view from the right at its right.
// Hidden edges: those of whole parts, as if no joint were cut. Where they would be many, only those of parts
// of which no copy is seen in any of the three views.

#include "drawing/principal_views.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

#include "drawing/dimension.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Length;

/// Parts as if no joint were cut, nor anything bored or moulded: body, outline, tapers, curves. Keeps the
/// solids that the placed parts point to.
struct PlainParts {
    std::deque<solid::Solid> solids;
    std::vector<solid::Placed> placed;
};

bool changes_outline(const piece::Cut& cut) {
    return cut.joint < 0 && !std::holds_alternative<piece::EdgeCut>(cut.shape) &&
           !std::holds_alternative<piece::BoreCut>(cut.shape);
}

bool same(const solid::Shape& a, const solid::Shape& b) {
    return a.corners().size() == b.corners().size() &&
           std::equal(a.corners().begin(), a.corners().end(), b.corners().begin(),
                      [](const auto& p, const auto& q) { return p.at == q.at; });
}

PlainParts plain_parts(const Job& job) {
    PlainParts plain;
    struct Carved {
        solid::Shape blank;
        std::vector<solid::Shape> tools;
        const solid::Solid* solid;
    };
    // Copies of a part come out alike, so each form is carved once.
    std::vector<Carved> carved;
    for (std::size_t i = 0; i < job.model.made.size(); ++i) {
        const joinery::Made& made = job.model.made[i];
        const piece::Part& part = *made.part;
        std::vector<solid::Shape> tools;
        for (std::size_t t = 0; t < made.tools.size(); ++t) {
            const int cut = made.tool_cut[t];
            if (cut < 0 || changes_outline(made.cuts[static_cast<std::size_t>(cut)]))
                tools.push_back(made.tools[t]);
        }
        // What joints leave standing beyond the body goes too.
        const double body[] = {part.length.value(), part.width.value(), part.thickness.value()};
        for (int axis = 0; axis < 3; ++axis) {
            measure::Vector outwards;
            outwards[axis] = 1;
            if (made.blank.high[axis] > body[axis] + 1e-6)
                tools.push_back(solid::half_space({outwards, body[axis]}, made.blank));
            if (made.blank.low[axis] < -1e-6) tools.push_back(solid::half_space({-outwards, 0}, made.blank));
        }
        solid::Placed placed = job.placed[i];
        placed.tools = nullptr;
        // A turned part stays as it is: carving its many facets again would take longer than all else here.
        constexpr std::size_t many_corners = 1000;
        std::size_t tool_corners = 0;
        for (const solid::Shape& tool : tools) tool_corners += tool.corners().size();
        if (tool_corners > many_corners) {
            plain.placed.push_back(placed);
            continue;
        }
        // The blank of a part with an outline may carry its moulding; the body is the plain outline.
        solid::Shape body_shape =
            part.outline ? solid::prism({}, *part.outline, 0, part.thickness.value()) : made.blank_shape;
        const auto known = std::find_if(carved.begin(), carved.end(), [&](const Carved& c) {
            return same(c.blank, body_shape) && c.tools.size() == tools.size() &&
                   std::equal(tools.begin(), tools.end(), c.tools.begin(), same);
        });
        if (known == carved.end()) {
            plain.solids.push_back(solid::carve(body_shape, tools));
            carved.push_back({std::move(body_shape), std::move(tools), &plain.solids.back()});
            placed.solid = carved.back().solid;
        } else {
            placed.solid = known->solid;
        }
        plain.placed.push_back(placed);
    }
    return plain;
}

/// More dashed lines than this in one view hide more than they show.
constexpr std::size_t many_hidden_lines = 40;

/// Where the wood ends under a place of a string: the outermost end of a line there, else the outline.
double wood_at(const Seen& seen, double at, bool level, bool low_side, double outline) {
    double found = outline;
    bool any = false;
    for (const Segment2& s : seen.visible)
        for (const Point2 p : {s.a, s.b}) {
            if (std::abs((level ? p.x : p.y) - at) > 0.05) continue;
            const double across = level ? p.y : p.x;
            found = !any ? across : low_side ? std::min(found, across) : std::max(found, across);
            any = true;
        }
    return found;
}

/// Rod string and overall of one direction, in paper coordinates: paper = origin + scale * picture.
std::vector<MeasureString> strings_of(const Job& job, int direction, const Seen& seen, bool level,
                                      double sign, Point2 origin, double scale) {
    const double low = level ? seen.box.left : seen.box.bottom, high = level ? seen.box.right : seen.box.top;
    const double outline = level ? seen.box.bottom : seen.box.left;
    const char axis = "XYZ"[direction];
    const auto measure_between = [&](double a, double b, const std::string& figure) {
        // a, b in the piece; the picture may run the other way.
        double from = sign * a, to = sign * b;
        if (from > to) std::swap(from, to);
        Measure m;
        const auto paper = [&](double picture) {
            return (level ? origin.x : origin.y) + scale * (picture - low);
        };
        const auto across = [&](double picture) {
            return (level ? origin.y : origin.x) +
                   scale * (wood_at(seen, picture, level, true, outline) - outline);
        };
        m.from = paper(from);
        m.to = paper(to);
        m.start_from = across(from);
        m.start_to = across(to);
        m.figure = figure;
        m.record = {"", axis, a, b, figure, false};
        return m;
    };
    const double overall_from = sign > 0 ? low : -high, overall_to = sign > 0 ? high : -low;

    std::vector<Length> lines;
    if (static_cast<std::size_t>(direction) < job.model.piece->rods.size())
        for (const piece::Line& line : job.model.piece->rods[static_cast<std::size_t>(direction)].lines)
            lines.push_back(line.at);
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    // A line where there is no wood (a wall, a neighbour's place) has nothing on the drawing to point at.
    std::erase_if(lines, [&](Length line) {
        return line.value() < overall_from - 0.01 || line.value() > overall_to + 0.01;
    });
    MeasureString string;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const double a = lines[i].value(), b = lines[i + 1].value();
        // A link too short to see, or one that says what the overall says.
        if ((b - a) * scale < 0.5) continue;
        if (std::abs(a - overall_from) < 0.01 && std::abs(b - overall_to) < 0.01) continue;
        string.push_back(measure_between(a, b, job.figure(lines[i + 1] - lines[i])));
    }
    return {string, {measure_between(overall_from, overall_to, job.figure(overall_to - overall_from))}};
}

} // namespace

Principal look_at_piece(const Job& job) {
    const PlainParts plain = plain_parts(job);
    Principal p;
    p.side_sign = job.first_angle ? -1 : 1;
    const std::pair<Seen*, solid::View> views[] = {
        {&p.front, solid::front_view()},
        {&p.plan, solid::top_view()},
        {&p.side, job.first_angle ? solid::left_view() : solid::right_view()}};
    // A speck seen through a gap does not tell what a part is.
    constexpr double enough_seen = 0.1;
    std::vector<bool> is_seen(job.placed.size(), false);
    const auto length = [](const Segment2& s) { return std::hypot(s.b.x - s.a.x, s.b.y - s.a.y); };
    for (const auto& [seen, view] : views) {
        std::vector<double> shown(job.placed.size(), 0.0), all(job.placed.size(), 0.0);
        for (const solid::Line2& line : solid::hidden_lines(job.placed, view)) {
            const auto part = static_cast<std::size_t>(line.part);
            all[part] += length(line.at);
            if (!line.visible) continue;
            seen->visible.push_back(line.at);
            shown[part] += length(line.at);
        }
        for (std::size_t part = 0; part < all.size(); ++part)
            if (shown[part] > enough_seen * all[part]) is_seen[part] = true;
        std::vector<Point2> points;
        for (const Segment2& s : seen->visible) points.push_back(s.a), points.push_back(s.b);
        if (!points.empty()) seen->box = around(points);
        seen->visible = united(seen->visible);
    }
    // One copy in sight tells of all that share its row; dashing a single one of four legs would puzzle.
    std::vector<bool> row_seen(job.cut_list.rows.size(), false);
    for (std::size_t part = 0; part < is_seen.size(); ++part)
        if (const int row = job.row_of_part[part]; row >= 0 && is_seen[part])
            row_seen[static_cast<std::size_t>(row)] = true;
    for (std::size_t part = 0; part < is_seen.size(); ++part)
        if (const int row = job.row_of_part[part]; row >= 0 && row_seen[static_cast<std::size_t>(row)])
            is_seen[part] = true;
    for (const auto& [seen, view] : views) {
        std::vector<Segment2> all, unseen;
        for (const solid::Line2& line : solid::hidden_lines(plain.placed, view)) {
            if (line.visible) continue;
            all.push_back(line.at);
            if (!is_seen[static_cast<std::size_t>(line.part)]) unseen.push_back(line.at);
        }
        seen->hidden = without(united(all), seen->visible);
        if (seen->hidden.size() > many_hidden_lines) seen->hidden = without(united(unseen), seen->visible);
    }
    return p;
}

PrincipalViews principal_views(const Job& job, const Principal& seen, double scale) {
    constexpr double between = 16;
    PrincipalViews views;
    Block& block = views.block;
    const double width = seen.front.box.width() * scale, height = seen.front.box.height() * scale,
                 depth = seen.plan.box.height() * scale;
    draw_seen(block, seen.front, scale, {0, 0});
    const double side_at = width + between;
    draw_seen(block, seen.side, scale, {side_at, 0});
    const double figure = job.figure_height();
    const double below = draw_dimensions(block, ViewSide::below, 0,
                                         strings_of(job, 0, seen.front, true, 1, {0, 0}, scale), figure);
    draw_dimensions(block, ViewSide::left, 0, strings_of(job, 2, seen.front, false, 1, {0, 0}, scale),
                    figure);
    draw_dimensions(block, ViewSide::below, 0,
                    strings_of(job, 1, seen.side, true, seen.side_sign, {side_at, 0}, scale), figure);
    views.areas.push_back(block.box());
    const double plan_at = job.first_angle ? -std::max(between, below + 8) - depth : height + between;
    draw_seen(block, seen.plan, scale, {0, plan_at});
    views.areas.push_back({0, plan_at, width, plan_at + depth});
    return views;
}

} // namespace rayfleck::drawing
