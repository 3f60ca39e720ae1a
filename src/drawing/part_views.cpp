// The part lies level in its own frame, face side to the eye; its other sides are rolled out above and below
// it, and the end stands at the right, in the projection of the set. First angle: what is seen from above
// stands below, and the near end at the right. Third angle: what is seen from above stands above, and the far
// end at the right. The face is always shown; an edge when something opens on it alone, else the face edge;
// the back, under the edge, only when something opens on it alone. Dimensions: lengths above each view for
// what that view shows, the overall below the last one; widths at the left of the face, thicknesses above the
// end. Chains leave their longest link open, since the overall closes them; equal links in a row become one,
// n×. The scale is the largest of the list at which the views keep their width, long parts being broken where
// nothing happens.

#include "drawing/part_views.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/part_marks.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;
using measure::Vector;

/// Directions of sight on a part in its own frame.
constexpr solid::View on_near_end{{0, 0, 1}, {0, 1, 0}, {-1, 0, 0}};
constexpr solid::View on_far_end{{0, 0, -1}, {0, 1, 0}, {1, 0, 0}};
constexpr solid::View view_of(PartSide side) {
    switch (side) {
    case PartSide::back:
        return {{1, 0, 0}, {0, -1, 0}, {0, 0, -1}};
    case PartSide::high_edge:
        return {{1, 0, 0}, {0, 0, -1}, {0, 1, 0}};
    case PartSide::low_edge:
        return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
    case PartSide::face:
        break;
    }
    return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
}

/// The long sides shown, from the top of the paper downwards.
std::vector<PartSide> sides_shown(const Job& job, const Made& made, const Borders& borders) {
    bool high = borders.shows(PartSide::high_edge), low = borders.shows(PartSide::low_edge);
    if (!high && !low) (made.part->face_edge_high ? high : low) = true;
    std::vector<PartSide> sides;
    const PartSide above = job.first_angle ? PartSide::low_edge : PartSide::high_edge;
    const PartSide below = job.first_angle ? PartSide::high_edge : PartSide::low_edge;
    const auto shown = [&](PartSide side) { return side == PartSide::high_edge ? high : low; };
    if (shown(above)) sides.push_back(above);
    sides.push_back(PartSide::face);
    if (shown(below)) sides.push_back(below);
    if (borders.shows(PartSide::back)) sides.push_back(PartSide::back);
    return sides;
}

struct Shown {
    PartSide side;
    Seen seen;
};
struct AllViews {
    std::vector<Shown> sides;
    Seen end;
    solid::View end_view;
};

AllViews look_at_part(const Job& job, const Made& made, const Borders& borders) {
    const std::vector<solid::Placed> alone{{&made.solid, &made.blank_shape, &made.tools, {}}};
    AllViews views;
    for (const PartSide side : sides_shown(job, made, borders))
        views.sides.push_back({side, look_at(alone, view_of(side), true)});
    views.end_view = job.first_angle ? on_near_end : on_far_end;
    views.end = look_at(alone, views.end_view, true);
    return views;
}

constexpr double longest_on_paper = 500; ///< a part is not broken by more than this shortens
/// A board with work on it is drawn larger than a plain one.
constexpr double widest_on_paper = 85, widest_plain = 46, widest_with_back = 50, thickest_on_paper = 32;

struct Layout {
    Scale scale;
    LengthMap map{0, 1, 1};
};

Layout layout_of(const Job& job, const Made& made, const Borders& borders, double length_room) {
    const measure::Box& box = made.solid.box;
    std::vector<double> nodes;
    for (const auto& along : borders.along) nodes.insert(nodes.end(), along.begin(), along.end());
    std::sort(nodes.begin(), nodes.end());
    const double widest = borders.shows(PartSide::back)            ? widest_with_back
                          : nodes.empty() && borders.width.empty() ? widest_plain
                                                                   : widest_on_paper;
    const std::vector<Scale>& list = scales(job.manner.unit);
    for (const Scale& scale : list) {
        const bool last = &scale == &list.back();
        if (scale.factor > 1.0 + 1e-9) continue;
        const double length = box.high.x - box.low.x;
        if (!last && ((box.high.y - box.low.y) * scale.factor > widest ||
                      (box.high.z - box.low.z) * scale.factor > thickest_on_paper ||
                      length * scale.factor > longest_on_paper))
            continue;
        LengthMap map = LengthMap::broken(box.low.x, box.high.x, scale.factor, nodes, length_room);
        if (!last && map.length_on_paper() > length_room + 0.5) continue;
        // A break spares paper, but the part no longer looks like itself: never for a part with an outline,
        // and of the others for slender ones only, and not more than twice.
        if (!last && map.is_broken() &&
            (made.part->outline || scale.factor * length > 3 * length_room || map.kept().size() > 3 ||
             (box.high.y - box.low.y) * scale.factor > widest_plain))
            continue;
        return {scale, std::move(map)};
    }
    return {list.back(), LengthMap(box.low.x, box.high.x, list.back().factor)};
}

/// A chain from `low` over the places to `high`: equal links in a row become one, and the longest single link
/// stays open.
struct Link {
    double from = 0, to = 0;
    int times = 1;
    bool derived = false; ///< follows from the overall and the other links; told in parentheses
};
std::vector<Link> links_of(const std::vector<double>& places, double low, double high) {
    std::vector<Link> links;
    double at = low;
    for (const double p : places) {
        links.push_back({at, p, 1});
        at = p;
    }
    if (links.empty()) return {};
    links.push_back({at, high, 1});
    std::vector<Link> grouped;
    for (std::size_t i = 0; i < links.size();) {
        std::size_t j = i + 1;
        while (j < links.size() &&
               std::abs((links[j].to - links[j].from) - (links[i].to - links[i].from)) < 0.01)
            ++j;
        if (j - i >= 3) {
            grouped.push_back({links[i].from, links[j - 1].to, static_cast<int>(j - i)});
            i = j;
        } else {
            grouped.push_back(links[i]);
            ++i;
        }
    }
    auto longest = grouped.end();
    for (auto link = grouped.begin(); link != grouped.end(); ++link)
        if (link->times == 1 &&
            (longest == grouped.end() || link->to - link->from > longest->to - longest->from))
            longest = link;
    if (longest != grouped.end())
        grouped.erase(longest);
    else
        // Only runs of equal links: the longest run is told all the same, as what it is.
        std::max_element(grouped.begin(), grouped.end(), [](const Link& a, const Link& b) {
            return a.to - a.from < b.to - b.from;
        })->derived = true;
    return grouped;
}

/// Half of the finest step that the maker's figures tell: what is nearer would print as 0.
double finest_step(const Job& job) {
    const bool metric = job.manner.unit == measure::Unit::mm || job.manner.unit == measure::Unit::cm ||
                        job.manner.unit == measure::Unit::m;
    return metric ? 0.05 : std::max(0.05, 25.4 / job.manner.finest / 2 + 0.01);
}

std::string figure_of(const Job& job, const Link& link) {
    const double each = (link.to - link.from) / link.times;
    const std::string figure =
        link.times > 1 ? fmt::format("{}× {}", link.times, job.figure(each)) : job.figure(each);
    return link.derived ? "(" + figure + ")" : figure;
}

/// The chain as measures along a side; `paper` carries a place of the part to the paper.
template <typename Paper>
MeasureString chain(const Job& job, const std::vector<double>& places, double low, double high, double wood,
                    const std::string& part, char axis, Paper paper) {
    MeasureString string;
    for (const Link& link : links_of(places, low, high)) {
        double from = paper(link.from), to = paper(link.to);
        if (from > to) std::swap(from, to);
        if (to - from < 0.05) continue;
        const std::string figure = figure_of(job, link);
        string.push_back(
            {from, to, wood, wood, figure, {part, axis, link.from, link.to, figure, link.derived}});
    }
    std::sort(string.begin(), string.end(),
              [](const Measure& a, const Measure& b) { return a.from < b.from; });
    return string;
}

template <typename Paper>
MeasureString overall(const Job& job, double low, double high, double wood, const std::string& part,
                      char axis, Paper paper) {
    double from = paper(low), to = paper(high);
    if (from > to) std::swap(from, to);
    const std::string figure = job.figure(high - low);
    return {{from, to, wood, wood, figure, {part, axis, low, high, figure, false}}};
}

/// How far a chain above a view reaches up from it, with its figures; 0 for none.
double reach_above(const MeasureString& string, double figure) {
    if (string.empty()) return 0;
    Block trial;
    draw_dimensions(trial, ViewSide::above, 0, {string}, figure);
    return trial.box().top;
}

PartViews draw_views(const Job& job, const cutlist::Row& row, const Made& made, const Borders& borders,
                     const AllViews& views, double length_room) {
    const std::string& name = row.name;
    const measure::Box& box = made.solid.box;
    const Layout layout = layout_of(job, made, borders, length_room);
    const double s = layout.scale.factor, length = layout.map.length_on_paper();
    const double wide = (box.high.y - box.low.y) * s, thick = (box.high.z - box.low.z) * s;
    const double figure = job.part_figure_height();
    constexpr double between = 9;
    const auto along = [&](double x) { return layout.map.on_paper(x); };

    Block block;
    std::vector<Rect> places;
    double bottom = 0;
    for (std::size_t i = 0; i < views.sides.size(); ++i) {
        const auto& [side, seen] = views.sides[i];
        const bool last = i + 1 == views.sides.size();
        const bool edge = side == PartSide::high_edge || side == PartSide::low_edge;
        const auto string = [&](double wood) {
            return chain(job, borders.on(side), box.low.x, box.high.x, wood, name, 'L', along);
        };
        const double needed = last ? 0 : reach_above(string(0), figure);
        const double top = i == 0 ? 0 : bottom - std::max(between, needed + 4);
        bottom = top - (edge ? thick : wide);
        places.push_back({0, bottom, length, top});
        draw_seen(block, seen, layout.map, {0, bottom});
        if (last)
            draw_dimensions(block, ViewSide::below, bottom,
                            {string(bottom), overall(job, box.low.x, box.high.x, bottom, name, 'L', along)},
                            figure);
        else
            draw_dimensions(block, ViewSide::above, top, {string(top)}, figure);
    }
    const auto place_of = [&](PartSide side) -> const Rect* {
        for (std::size_t i = 0; i < views.sides.size(); ++i)
            if (views.sides[i].side == side) return &places[i];
        return nullptr;
    };
    const Rect face = *place_of(PartSide::face);

    const auto across = [&](double y) { return face.bottom + (y - box.low.y) * s; };
    draw_dimensions(block, ViewSide::left, 0,
                    {chain(job, borders.width, box.low.y, box.high.y, 0, name, 'W', across),
                     overall(job, box.low.y, box.high.y, 0, name, 'W', across)},
                    figure);

    // The end view with its thicknesses stands clear of whatever the other dimensions reach.
    Block end_block;
    const Rect end{0, 0, thick, face.height()};
    draw_seen(end_block, views.end, s, {0, 0});
    const double right_is = dot(views.end_view.right, Vector{0, 0, 1});
    const auto through = [&](double z) { return (right_is > 0 ? z - box.low.z : box.high.z - z) * s; };
    draw_dimensions(end_block, ViewSide::above, end.top,
                    {chain(job, borders.thickness, box.low.z, box.high.z, end.top, name, 'T', through),
                     overall(job, box.low.z, box.high.z, end.top, name, 'T', through)},
                    figure);
    set_growth_rings(end_block, end, made, views.end_view);
    const double end_at = std::max(length + 16, block.box().right + 4 - end_block.box().left);

    set_grain_arrow(block, face, made);
    set_face_side_mark(block, face, made);
    const PartSide face_edge = made.part->face_edge_high ? PartSide::high_edge : PartSide::low_edge;
    // Seen on its high edge the part's face side is the lower border, on its low edge the upper one.
    if (const Rect* edge = place_of(face_edge)) set_face_edge_mark(block, *edge, made.part->face_edge_high);
    block.add(end_block, {end_at, face.bottom});
    if (const Rect* back = place_of(PartSide::back))
        block.text({{length + 3, back->middle().y - note_height / 2},
                    "back",
                    note_height,
                    Typeface::lettering,
                    Ink::black,
                    0});
    return {std::move(block), layout.scale};
}

} // namespace

PartViews part_views(const Job& job, const cutlist::Row& row, double width) {
    const Made& made = job.made(row.parts.front());
    const Borders borders = borders_of(job.model, row.parts.front(), finest_step(job));
    const AllViews views = look_at_part(job, made, borders);
    // Widths stand at the left, the end view at the right: how much they take shows only when they are drawn.
    double length_room = width - 64;
    PartViews drawn = draw_views(job, row, made, borders, views, length_room);
    for (int attempt = 0; attempt < 4 && drawn.block.box().width() > width; ++attempt) {
        length_room -= drawn.block.box().width() - width + 1;
        if (length_room < 20) break;
        drawn = draw_views(job, row, made, borders, views, length_room);
    }
    return drawn;
}

bool wants_whole_width(const Job& job, const cutlist::Row& row, double narrow, double wide) {
    const Made& made = job.made(row.parts.front());
    const Borders borders = borders_of(job.model, row.parts.front(), finest_step(job));
    const double in_narrow = layout_of(job, made, borders, narrow - 64).scale.factor;
    // Thinner than this on paper, no joint can be read.
    constexpr double legible = 4;
    const double wide_side = made.solid.box.high.y - made.solid.box.low.y;
    if ((made.solid.box.high.z - made.solid.box.low.z) * in_narrow >= legible &&
        wide_side * in_narrow >= legible)
        return false;
    const double in_wide = layout_of(job, made, borders, wide - 64).scale.factor;
    return in_wide > 1.3 * in_narrow && wide_side * in_wide <= widest_plain;
}

} // namespace rayfleck::drawing
