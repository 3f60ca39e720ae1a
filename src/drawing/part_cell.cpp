// One part: face view with its length level, edge view below it, end view beside it, in the projection of the
// set.
//
// The part lies in its own frame, face side to the eye. First angle: below stands the part seen from above
// (its high edge), at the right the part seen from the left (its near end). Third angle: seen from below, and
// from the right. Dimensions: along the length above the face view (what shows on the face) and below the
// edge view (what shows on the edge alone) with the overall length outermost; widths at the left; thicknesses
// below the end view. Chains leave their longest link open, since the overall closes them; equal links in a
// row become one, n×. The scale is the largest of the list at which the cell keeps its width, long parts
// being broken where nothing happens. Everything that a view cannot show without crowding stands in the notes
// below.

#include "drawing/part_cell.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/part_borders.hpp"
#include "drawing/part_notes.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;
using measure::Vector;

/// Directions of sight on a part in its own frame.
constexpr solid::View on_face{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
constexpr solid::View on_high_edge{{1, 0, 0}, {0, 0, -1}, {0, 1, 0}};
constexpr solid::View on_low_edge{{1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
constexpr solid::View on_near_end{{0, 0, 1}, {0, 1, 0}, {-1, 0, 0}};
constexpr solid::View on_far_end{{0, 0, -1}, {0, 1, 0}, {1, 0, 0}};

struct Views {
    Seen face, edge, end;
    solid::View edge_view, end_view;
};

Views look_at_part(const Job& job, const Made& made) {
    const std::vector<solid::Placed> alone{{&made.solid, &made.blank_shape, &made.tools, {}}};
    Views views;
    views.edge_view = job.first_angle ? on_high_edge : on_low_edge;
    views.end_view = job.first_angle ? on_near_end : on_far_end;
    views.face = look_at(alone, on_face, true);
    views.edge = look_at(alone, views.edge_view, true);
    views.end = look_at(alone, views.end_view, true);
    return views;
}

constexpr double longest_on_paper = 500; ///< a part is not broken by more than this shortens
constexpr double widest_on_paper = 46, thickest_on_paper = 32;

struct Layout {
    Scale scale;
    LengthMap map{0, 1, 1};
};

Layout layout_of(const Job& job, const Made& made, const Borders& borders, double length_room) {
    const measure::Box& box = made.solid.box;
    std::vector<double> nodes = borders.length_on_face;
    nodes.insert(nodes.end(), borders.length_on_edge.begin(), borders.length_on_edge.end());
    std::sort(nodes.begin(), nodes.end());
    const std::vector<Scale>& list = scales(job.manner.unit);
    for (const Scale& scale : list) {
        const bool last = &scale == &list.back();
        if (scale.factor > 1.0 + 1e-9) continue;
        const double length = box.high.x - box.low.x;
        if (!last && ((box.high.y - box.low.y) * scale.factor > widest_on_paper ||
                      (box.high.z - box.low.z) * scale.factor > thickest_on_paper ||
                      length * scale.factor > longest_on_paper))
            continue;
        LengthMap map = LengthMap::broken(box.low.x, box.high.x, scale.factor, nodes, length_room);
        // A part with an outline is broken only as a last resort: its curve is its shape.
        if (!last && map.length_on_paper() > length_room + 0.5) continue;
        if (!last && map.is_broken() && (made.part->outline || scale.factor * length > 3 * length_room))
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

/// Room for an upright rectangle inside `where`, free of lines and texts; tried from the middle outwards.
std::optional<Point2> free_place(const Block& block, const Rect& where, double width, double height) {
    const int nx = std::max(1, static_cast<int>((where.width() - width) / 2)),
              ny = std::max(1, static_cast<int>((where.height() - height) / 1));
    std::optional<Point2> best;
    double best_distance = 0;
    for (int i = 0; i <= nx; ++i)
        for (int j = 0; j <= ny; ++j) {
            const Point2 p{where.left + width / 2 + (where.width() - width) * i / nx,
                           where.bottom + height / 2 + (where.height() - height) * j / ny};
            const Rect rect{p.x - width / 2, p.y - height / 2, p.x + width / 2, p.y + height / 2};
            if (rect.left < where.left || rect.right > where.right || rect.bottom < where.bottom ||
                rect.top > where.top)
                continue;
            const double distance = std::hypot(p.x - where.middle().x, p.y - where.middle().y);
            if (best && distance >= best_distance) continue;
            if (!block.occupied().free_for_text(corners(rect), 0.6)) continue;
            best = p;
            best_distance = distance;
        }
    return best;
}

void draw_grain_arrow(Block& block, const Rect& face, const Made& made) {
    if (made.part->species->is_sheet()) return;
    const double turn = made.part->grain.in_degrees(), radians = made.part->grain.in_radians();
    for (const double length : {18.0, 12.0, 8.0}) {
        const double width = std::abs(length * std::cos(radians)) + 2,
                     height = std::abs(length * std::sin(radians)) + 2;
        if (const auto at = free_place(block, face, width, height)) {
            grain_arrow(block, *at, length, turn);
            return;
        }
    }
    // No room in the wood: beside it.
    grain_arrow(block, {face.right + 8, face.top + 3}, 10, turn);
}

/// Growth rings in the end view, as the part was sawn; on paper the bark lies where the maker said, else at
/// the face side.
void draw_rings(Block& block, const Rect& end, const Made& made, const solid::View& view) {
    const piece::Part& part = *made.part;
    if (part.species->is_sheet() || part.glue_up || std::min(end.width(), end.height()) < 5) return;
    Vector bark{0, 0, 1};
    if (part.bark) {
        bark = {};
        bark[part.bark->axis] = part.bark->high ? 1 : -1;
    } else if (part.rings.in_degrees() > 60) {
        bark = {0, 1, 0};
    }
    Point2 on_paper{dot(bark, view.right), dot(bark, view.up)};
    const double rings = part.rings.in_degrees();
    if (rings > 30 && rings < 60)
        on_paper = {on_paper.x * 0.7071 + on_paper.y * 0.7071, on_paper.y * 0.7071 - on_paper.x * 0.7071};
    if (std::hypot(on_paper.x, on_paper.y) < 0.5) return;
    growth_rings(block, grown(end, -0.4), on_paper, rings > 60 ? 60 : 25);
}

void draw_marks(Block& block, const Rect& face, const Rect& edge, const Made& made, bool high_edge_shown) {
    const bool high = made.part->face_edge_high;
    const double arris = high ? face.top : face.bottom, into = high ? -1 : 1;
    const double size = std::clamp(face.height() * 0.5, 3.0, 6.0);
    for (const double share : {0.25, 0.75, 0.15, 0.85, 0.35, 0.65}) {
        const Point2 at{face.left + face.width() * share, arris};
        const Rect room = grown(face_side_mark_box(at, into, size), -0.3);
        if (!block.occupied().free_for_text(corners(room), 0.1)) continue;
        face_side_mark(block, at, into, size);
        break;
    }
    if (high != high_edge_shown)
        return; // the face edge is the hidden one here; the loop on the face ends on it
    // The face side's arris in the edge view: below in first angle's view from above (face side down), above
    // else.
    const double face_arris = high_edge_shown ? edge.bottom : edge.top, up = high_edge_shown ? 1 : -1;
    const double v = std::clamp(edge.height() * 0.6, 2.0, 4.0);
    for (const double share : {0.25, 0.75, 0.15, 0.85, 0.35, 0.65}) {
        const Point2 at{edge.left + edge.width() * share, face_arris};
        const Rect room{at.x - v / 2, std::min(at.y + up * 0.4, at.y + up * v), at.x + v / 2,
                        std::max(at.y + up * 0.4, at.y + up * v)};
        if (!block.occupied().free_for_text(corners(room), 0.3)) continue;
        face_edge_mark(block, at, up, v);
        break;
    }
}

/// Heading: reference, name, number off; wood and sizes below it. Upper left corner at (0, 0); gives its
/// lower end.
double heading(Block& block, const Job& job, const cutlist::Row& row, const Scale& scale, double width) {
    const std::string name = fmt::format("{}  {}", row.reference, row.name);
    Text title = fitted(name, width - 40, {heading_height, note_height}, Typeface::sans_bold);
    title.at = {0, -heading_height};
    block.text(title);
    const std::string off = fmt::format("{} off    {}", row.count, scale.ratio);
    block.text({{width - text_width(off, note_height, Typeface::sans_bold), -heading_height},
                off,
                note_height,
                Typeface::sans_bold,
                Ink::black,
                0});
    std::string what = row.wood + (row.sawn.empty() ? "" : ", " + row.sawn) +
                       (row.stock.empty() ? "" : ", from " + row.stock);
    what += fmt::format(",  blank T {}  W {}  L {}", job.figure(row.thickness), job.figure(row.width),
                        job.figure(row.length));
    if (!row.joinery.empty()) what += ",  " + row.joinery;
    return set_lines(block, wrapped(what, width, note_height, Typeface::sans), 0, -heading_height - 2.2);
}

/// Views, dimensions and marks of a part, its length taking no more than `length_room` of the paper where
/// that can be had.
struct Drawn {
    Block block;
    Scale scale;
};
Drawn draw_views(const Job& job, const cutlist::Row& row, const Made& made, const Borders& borders,
                 const Views& views, double length_room) {
    const std::string& name = row.name;
    const measure::Box& box = made.solid.box;
    const Layout layout = layout_of(job, made, borders, length_room);
    const double s = layout.scale.factor;
    const double length = layout.map.length_on_paper();
    const Rect face{0, 0, length, (box.high.y - box.low.y) * s};
    Block block;
    draw_seen(block, views.face, layout.map, {0, 0});
    const double figure = note_height;
    const auto along = [&](double x) { return layout.map.on_paper(x); };
    const auto across = [&](double y) { return (y - box.low.y) * s; };

    draw_dimensions(block, ViewSide::above, face.top,
                    {chain(job, borders.length_on_face, box.low.x, box.high.x, face.top, name, 'L', along)},
                    figure);
    draw_dimensions(block, ViewSide::left, 0,
                    {chain(job, borders.width, box.low.y, box.high.y, 0, name, 'W', across),
                     overall(job, box.low.y, box.high.y, 0, name, 'W', across)},
                    figure);

    constexpr double between = 9;
    const double thick = (box.high.z - box.low.z) * s;
    const Rect edge{0, -between - thick, length, -between};
    draw_seen(block, views.edge, layout.map, {0, edge.bottom});
    draw_dimensions(block, ViewSide::below, edge.bottom,
                    {chain(job, borders.length_on_edge, box.low.x, box.high.x, edge.bottom, name, 'L', along),
                     overall(job, box.low.x, box.high.x, edge.bottom, name, 'L', along)},
                    figure);

    const double end_at = length + 16;
    const Rect end{end_at, 0, end_at + thick, face.top};
    draw_seen(block, views.end, s, {end_at, 0});
    const double right_is = dot(views.end_view.right, Vector{0, 0, 1});
    const auto through = [&](double z) {
        return right_is > 0 ? end_at + (z - box.low.z) * s : end_at + (box.high.z - z) * s;
    };
    draw_dimensions(block, ViewSide::above, face.top,
                    {chain(job, borders.thickness, box.low.z, box.high.z, face.top, name, 'T', through),
                     overall(job, box.low.z, box.high.z, face.top, name, 'T', through)},
                    figure);

    draw_grain_arrow(block, face, made);
    draw_marks(block, face, edge, made, job.first_angle);
    draw_rings(block, end, made, views.end_view);

    return {std::move(block), layout.scale};
}

} // namespace

Block part_cell(const Job& job, const cutlist::Row& row, double width) {
    const Made& made = job.made(row.parts.front());
    const Borders borders = borders_of(job.model, row.parts.front(), finest_step(job));
    const Views views = look_at_part(job, made);
    // Widths stand at the left, the end view at the right: how much they take shows only when they are drawn.
    double length_room = width - 64;
    Drawn drawn_views = draw_views(job, row, made, borders, views, length_room);
    for (int attempt = 0; attempt < 4 && drawn_views.block.box().width() > width; ++attempt) {
        length_room -= drawn_views.block.box().width() - width + 1;
        if (length_room < 20) break;
        drawn_views = draw_views(job, row, made, borders, views, length_room);
    }
    const Block& block = drawn_views.block;

    // Heading above, notes below, all left-aligned with the leftmost thing drawn.
    Block cell;
    const double heading_end = heading(cell, job, row, drawn_views.scale, width);
    const Rect drawn = block.box();
    const Point2 by{-drawn.left, heading_end - 2 - drawn.top};
    cell.add(block, by);
    double y = drawn.bottom + by.y - 3;
    const auto list = [&](const std::vector<std::string>& notes) {
        for (const std::string& note : notes)
            y = set_lines(cell, wrapped(note, width, note_height, Typeface::sans), 0, y) - 0.4;
    };
    list(cut_notes(job, row));
    list(joint_notes(job, row));
    list(bench_notes(job, row));
    return cell;
}

bool wants_whole_width(const Job& job, const cutlist::Row& row, double narrow, double wide) {
    const Made& made = job.made(row.parts.front());
    const Borders borders = borders_of(job.model, row.parts.front(), finest_step(job));
    const double in_narrow = layout_of(job, made, borders, narrow - 64).scale.factor;
    // Thinner than this on paper, no joint can be read.
    constexpr double legible = 4;
    if ((made.solid.box.high.z - made.solid.box.low.z) * in_narrow >= legible &&
        (made.solid.box.high.y - made.solid.box.low.y) * in_narrow >= legible)
        return false;
    return layout_of(job, made, borders, wide - 64).scale.factor > 1.3 * in_narrow;
}

Block legend_of_marks(const Job& job) {
    Block block;
    double y = 0;
    const auto line = [&](const std::string& words) {
        block.text({{16, y - note_height}, words, note_height, Typeface::sans, Ink::black, 0});
        y -= 7;
    };
    block.text({{0, y - note_height}, "marks", note_height, Typeface::sans_bold, Ink::black, 0});
    y -= 6;
    grain_arrow(block, {7, y - 1.2}, 12, 0);
    line("fibre runs this way");
    face_side_mark(block, {7, y + 0.6}, -1, 4);
    line("face side; the loop ends on the face edge");
    face_edge_mark(block, {7, y - 2.6}, 1, 3);
    line("face edge; the point touches the face side");
    growth_rings(block, {3, y - 3, 11, y + 0.6}, {0, 1}, 8);
    line("growth rings on the end; hollow towards the pith");
    block.text({{0, y - note_height},
                job.first_angle ? "views in first angle: below seen from above, right seen from the left"
                                : "views in third angle: below seen from below, right seen from the right",
                note_height,
                Typeface::sans,
                Ink::black,
                0});
    return block;
}

Block rules_block(const Job& job, double width) {
    Block block;
    const std::vector<std::string> rules = rules_of_sizes(job);
    if (rules.empty()) return block;
    double y = set_lines(block, {"sizes left out, and the rules they follow"}, 0, 0, note_height,
                         Typeface::sans_bold) -
               0.8;
    for (const std::string& rule : rules)
        y = set_lines(block, wrapped(rule, width, note_height, Typeface::sans), 0, y) - 0.4;
    return block;
}

} // namespace rayfleck::drawing
