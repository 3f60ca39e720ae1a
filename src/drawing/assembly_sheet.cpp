// The piece as a whole: front, plan and side in projection, a pictorial view with balloons, a short parts
// list.
//
// Dimensions: below the front view the rod across, below the side view the rod deep, left of the front view
// the rod up, each as a string from line to line with the overall size outside. A link of a string that
// repeats the overall is left out. First angle puts the plan below the front and the view from the left at
// its right; third angle puts the plan above and the view from the right at its right. The scale is the
// largest of the list at which views, list and a pictorial view of fair size find room. Hidden edges in the
// principal views: those of whole parts, as if no joint were cut. Where they would be many, only those of
// parts that are seen in none of the three views. In the pictorial view a part of which nothing is seen is
// drawn dashed, so that its balloon has something to point at.

#include <algorithm>
#include <cmath>
#include <deque>
#include <limits>

#include "drawing/balloons.hpp"
#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "drawing/table.hpp"
#include "drawing/view.hpp"

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

struct Principal {
    Seen front, plan, side;
    /// The piece's own coordinate of a picture coordinate of the side view: +1 from the right, -1 from the
    /// left.
    double side_sign = 1;
};

/// More dashed lines than this in one view hide more than they show.
constexpr std::size_t many_hidden_lines = 40;

Principal look_at_piece(const Job& job) {
    const PlainParts plain = plain_parts(job);
    Principal p;
    p.side_sign = job.first_angle ? -1 : 1;
    const std::pair<Seen*, solid::View> views[] = {
        {&p.front, solid::front_view()},
        {&p.plan, solid::top_view()},
        {&p.side, job.first_angle ? solid::left_view() : solid::right_view()}};
    std::vector<bool> is_seen(job.placed.size(), false);
    for (const auto& [seen, view] : views) {
        for (const solid::Line2& line : solid::hidden_lines(job.placed, view)) {
            if (!line.visible) continue;
            seen->visible.push_back(line.at);
            is_seen[static_cast<std::size_t>(line.part)] = true;
        }
        std::vector<Point2> points;
        for (const Segment2& s : seen->visible) points.push_back(s.a), points.push_back(s.b);
        if (!points.empty()) seen->box = around(points);
        seen->visible = united(seen->visible);
    }
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

/// The three views; the areas they take are two, since nothing stands beside the plan.
struct PrincipalViews {
    Block block;
    std::vector<Rect> areas;
};

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

/// What of the picture does not depend on its scale.
struct Picture {
    Seen seen;
    std::vector<std::vector<Point2>> anchors; ///< of each row
};

Picture look_at_picture(const Job& job) {
    const solid::View view = solid::isometric_view();
    Picture picture;
    picture.seen = look_at(job.placed, view, false);
    std::vector<Segment2> unseen;
    for (const cutlist::Row& row : job.cut_list.rows) {
        std::vector<Point2> points;
        // The first few copies are enough to find a good place.
        for (std::size_t i = 0; i < row.parts.size() && i < 6; ++i)
            for (const Point2 p : seen_points(job.placed, row.parts[i], view)) points.push_back(p);
        if (points.empty() && !row.parts.empty()) {
            const std::vector<solid::Placed> alone{job.placed[static_cast<std::size_t>(row.parts.front())]};
            const Seen part = look_at(alone, view, false);
            unseen.insert(unseen.end(), part.visible.begin(), part.visible.end());
            points = seen_points(alone, 0, view);
        }
        picture.anchors.push_back(std::move(points));
    }
    picture.seen.hidden = without(united(unseen), picture.seen.visible);
    return picture;
}

/// Isometric with true lengths along the axes: true isometric shortens them to the square root of two thirds.
Block pictorial_view(const Job& job, const Picture& picture, const Scale& scale) {
    Block block;
    const double factor = scale.factor * std::sqrt(1.5);
    draw_seen(block, picture.seen, factor, {0, 0}, Role::picture);
    const Rect drawn = block.box();
    std::vector<BalloonWanted> wanted;
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        BalloonWanted w;
        w.reference = std::to_string(job.cut_list.rows[r].reference);
        for (const Point2 p : picture.anchors[r])
            w.anchors.push_back(
                {(p.x - picture.seen.box.left) * factor, (p.y - picture.seen.box.bottom) * factor});
        w.to_sheet = link_to_row + static_cast<int>(r);
        if (!w.anchors.empty()) wanted.push_back(std::move(w));
    }
    draw_balloons(block, drawn, wanted, 8);
    std::string caption = "pictorial view, " + scale.ratio + " along the axes";
    if (!picture.seen.hidden.empty()) caption += "; parts out of sight dashed";
    const double width = text_width(caption, note_height, Typeface::lettering);
    block.text({{drawn.middle().x - width / 2, block.box().bottom - 5 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

Table parts_table(const Job& job, bool narrow) {
    Table table;
    table.columns = {{"ref", 10, true, Typeface::sans_bold},
                     {"off", 10, true, Typeface::sans},
                     {"part", narrow ? 70.0 : 85.0, false, Typeface::sans}};
    if (!narrow) table.columns.push_back({"wood", 75, false, Typeface::sans});
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        TableRow line;
        line.cells = {std::to_string(row.reference), std::to_string(row.count),
                      cut_to(row.name, narrow ? 67 : 82, note_height, Typeface::sans)};
        if (!narrow) line.cells.push_back(row.sawn.empty() ? row.wood : row.wood + ", " + row.sawn);
        line.to_sheet = link_to_row + static_cast<int>(r);
        table.rows.push_back(std::move(line));
    }
    return table;
}

Block parts_list(const Job& job) {
    const bool narrow = job.cut_list.rows.size() > 9;
    return rising_list(parts_table(job, narrow), narrow ? 2 : 1);
}

Point2 lower_left_for(const Block& block, Point2 corner) {
    return {corner.x - block.box().left, corner.y - block.box().bottom};
}
Point2 centred_in(const Block& block, const Rect& rect) {
    return {rect.middle().x - block.box().middle().x, rect.middle().y - block.box().middle().y};
}

constexpr double air = 6; ///< between blocks

/// The largest scale of the list at which the picture fits into one of the rectangles, and where.
struct PicturePlace {
    Block block;
    Rect rect;
    double factor = 0;
};
std::optional<PicturePlace> place_picture(const Job& job, const Picture& picture,
                                          const std::vector<Rect>& rects) {
    for (const Scale& scale : scales(job.manner.unit)) {
        if (scale.factor > 1) continue;
        const double factor = scale.factor * std::sqrt(1.5);
        const Rect* best = nullptr;
        const double rough_width = picture.seen.box.width() * factor,
                     rough_height = picture.seen.box.height() * factor;
        for (const Rect& r : rects)
            if (rough_width < r.width() && rough_height < r.height()) best = &r;
        if (!best) continue;
        Block block = pictorial_view(job, picture, scale);
        best = nullptr;
        for (const Rect& r : rects)
            if (block.box().width() <= r.width() && block.box().height() <= r.height() &&
                (!best || r.width() * r.height() > best->width() * best->height()))
                best = &r;
        if (best) return PicturePlace{std::move(block), *best, scale.factor};
    }
    return std::nullopt;
}

struct OneSheet {
    Leaf leaf;
    double factor = 0;
};

Rect moved(const Rect& r, Point2 by) {
    return {r.left + by.x, r.bottom + by.y, r.right + by.x, r.top + by.y};
}

/// How far some areas may go on in one direction before one meets the border or an obstacle.
/// dx, dy  one of them 1 or -1, the other 0
double slack(const std::vector<Rect>& areas, const Rect& within, const std::vector<Rect>& obstacles, int dx,
             int dy) {
    double least = std::numeric_limits<double>::infinity();
    for (const Rect& a : areas) {
        least = std::min(least, dx > 0   ? within.right - a.right
                                : dx < 0 ? a.left - within.left
                                : dy > 0 ? within.top - a.top
                                         : a.bottom - within.bottom);
        for (const Rect& o : obstacles) {
            const bool beside =
                dx != 0 ? o.bottom < a.top && o.top > a.bottom : o.left < a.right && o.right > a.left;
            if (!beside) continue;
            const double room = dx > 0   ? o.left - a.right
                                : dx < 0 ? a.left - o.right
                                : dy > 0 ? o.bottom - a.top
                                         : a.bottom - o.top;
            if (room > -1e-6) least = std::min(least, room);
        }
    }
    return std::max(least, 0.0);
}

/// Where the views may stand: in the upper left corner or the lower left one. Nothing when neither is free.
std::optional<Point2> corner_for(const PrincipalViews& views, const Rect& within,
                                 const std::vector<Rect>& obstacles) {
    const Rect all = views.block.box();
    if (all.width() > within.width() + 1e-6 || all.height() > within.height() + 1e-6) return std::nullopt;
    for (const double y : {within.top - all.top, within.bottom - all.bottom}) {
        const Point2 by{within.left - all.left, y};
        const bool free = std::none_of(views.areas.begin(), views.areas.end(), [&](const Rect& area) {
            return std::any_of(obstacles.begin(), obstacles.end(),
                               [&](const Rect& o) { return meet(moved(area, by), o); });
        });
        if (free) return by;
    }
    return std::nullopt;
}

/// The views moved to the middle of the room they have.
Point2 settled(const PrincipalViews& views, Point2 by, const Rect& within,
               const std::vector<Rect>& obstacles) {
    for (const bool level : {true, false}) {
        std::vector<Rect> areas;
        for (const Rect& area : views.areas) areas.push_back(moved(area, by));
        const double ahead = slack(areas, within, obstacles, level, !level),
                     behind = slack(areas, within, obstacles, -int(level), -int(!level));
        (level ? by.x : by.y) += (ahead - behind) / 2;
    }
    return by;
}

/// Measuring is done on the views, so their size counts for more than the picture's.
constexpr double views_weigh = 2.5;

/// Views, picture and list on one sheet. Of the scales at which all find room the one that fills the sheet
/// best, as long as the picture is not below a quarter of the views' scale.
std::optional<OneSheet> on_one_sheet(const Job& job, const Principal& seen, const Picture& picture) {
    const Block list = parts_list(job);
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const Rect list_rect{title.right - list.box().width(), title.top, title.right,
                         title.top + list.box().height()};
    const std::vector<Rect> fixed{grown(title, 2), grown(list_rect, air)};
    std::optional<OneSheet> best;
    double best_fill = 0;
    for (const Scale& scale : scales(job.manner.unit)) {
        if (best && scale.factor < 0.3 * best->factor) break;
        if (seen.front.box.width() * scale.factor > usable.width() ||
            seen.front.box.height() * scale.factor > usable.height())
            continue;
        const PrincipalViews views = principal_views(job, seen, scale.factor);
        const auto corner = corner_for(views, usable, fixed);
        if (!corner) continue;
        FreeSpace rest(usable);
        for (const Rect& f : fixed) rest.take(f);
        double fill = 0;
        for (const Rect& area : views.areas) {
            rest.take(grown(moved(area, *corner), air));
            fill += views_weigh * area.width() * area.height();
        }
        auto place = place_picture(job, picture, rest.rects());
        if (!place || place->factor < scale.factor / 4.01) continue;
        const Point2 picture_at = centred_in(place->block, place->rect);
        const Rect picture_rect = moved(place->block.box(), picture_at);
        fill += picture_rect.width() * picture_rect.height();
        if (best && fill <= best_fill) continue;
        best_fill = fill;
        best.emplace();
        best->factor = scale.factor;
        best->leaf.scale = scale.words;
        best->leaf.block.add(list, lower_left_for(list, {list_rect.left, list_rect.bottom}));
        std::vector<Rect> obstacles = fixed;
        obstacles.push_back(grown(picture_rect, air));
        best->leaf.block.add(views.block, settled(views, *corner, usable, obstacles));
        best->leaf.block.add(place->block, picture_at);
    }
    return best;
}

/// Views alone: the largest scale at which they fit beside the title block.
OneSheet views_alone(const Job& job, const Principal& seen) {
    const Rect usable = job.paper.usable();
    const std::vector<Rect> fixed{grown(job.paper.title_block(), 2)};
    const std::vector<Scale>& list = scales(job.manner.unit);
    for (const Scale& scale : list) {
        const bool last = &scale == &list.back();
        if (!last && (seen.front.box.width() * scale.factor > usable.width() ||
                      seen.front.box.height() * scale.factor > usable.height()))
            continue;
        const PrincipalViews views = principal_views(job, seen, scale.factor);
        const auto corner = corner_for(views, usable, fixed);
        if (!corner && !last) continue;
        OneSheet one;
        one.factor = scale.factor;
        one.leaf.scale = scale.words;
        const Rect& box = views.block.box();
        one.leaf.block.add(views.block, corner ? settled(views, *corner, usable, fixed)
                                               : Point2{usable.left - box.left, usable.top - box.top});
        return one;
    }
    return {};
}

/// Picture and parts list. A list too long to leave the picture room goes without: the cut list names every
/// part.
Leaf picture_alone(const Job& job, const Picture& picture) {
    Leaf leaf;
    const Block list = parts_list(job);
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    for (const bool with_list : {true, false}) {
        FreeSpace space(usable);
        space.take(grown(title, 2));
        if (with_list) {
            if (list.box().height() > 0.5 * usable.height()) continue;
            space.take(grown(
                {title.right - list.box().width(), title.top, title.right, title.top + list.box().height()},
                air));
        }
        auto place = place_picture(job, picture, space.rects());
        if (!place) continue;
        if (with_list)
            leaf.block.add(list, lower_left_for(list, {title.right - list.box().width(), title.top}));
        leaf.block.add(place->block, centred_in(place->block, place->rect));
        for (const Scale& scale : scales(job.manner.unit))
            if (scale.factor == place->factor) leaf.scale = scale.words;
        break;
    }
    return leaf;
}

} // namespace

std::vector<Leaf> assembly_sheets(const Job& job) {
    if (job.placed.empty()) return {};
    const Principal seen = look_at_piece(job);
    const Picture picture = look_at_picture(job);
    const OneSheet alone = views_alone(job, seen);
    const auto together = on_one_sheet(job, seen, picture);
    std::vector<Leaf> leaves;
    if (together && together->factor >= 0.45 * alone.factor) {
        leaves.push_back(together->leaf);
        leaves.back().title = "Assembly";
    } else {
        leaves.push_back(alone.leaf);
        leaves.back().title = "Principal views";
        leaves.push_back(picture_alone(job, picture));
        leaves.back().title = "Pictorial view";
    }
    for (Leaf& leaf : leaves) leaf.document_type = "assembly drawing";
    return leaves;
}

} // namespace rayfleck::drawing
