// The piece as a whole: front, plan and side in projection, a pictorial view with balloons, a short parts list.
//
// Dimensions: below the front view the rod across, below the side view the rod deep, left of the front view the rod up,
// each as a string from line to line with the overall size outside. A link of a string that repeats the overall is
// left out. First angle puts the plan below the front and the view from the left at its right; third angle puts the
// plan above and the view from the right at its right. The scale is the largest of the list at which views, list and a
// pictorial view of fair size find room.
// Hidden edges: those of whole parts only (see view.hpp).

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

/// Parts as if no joint were cut: body and shaping alone. Keeps the solids that the placed parts point to.
struct PlainParts {
    std::deque<solid::Solid> solids;
    std::vector<solid::Placed> placed;
};

PlainParts plain_parts(const Job& job) {
    PlainParts plain;
    for (std::size_t i = 0; i < job.model.made.size(); ++i) {
        const joinery::Made& made = job.model.made[i];
        const piece::Part& part = *made.part;
        const double length = part.length.value();
        std::vector<solid::Shape> tools;
        for (std::size_t t = 0; t < made.tools.size(); ++t) {
            const int cut = made.tool_cut[t];
            if (cut < 0 || made.cuts[static_cast<std::size_t>(cut)].joint < 0) tools.push_back(made.tools[t]);
        }
        if (made.blank.high.x > length + 1e-6) tools.push_back(solid::half_space({{1, 0, 0}, length}, made.blank));
        if (made.blank.low.x < -1e-6) tools.push_back(solid::half_space({{-1, 0, 0}, 0}, made.blank));
        plain.solids.push_back(tools.size() == made.tools.size() && made.tools.empty() ? made.solid : solid::carve(made.blank_shape, tools));
        solid::Placed placed = job.placed[i];
        placed.solid = &plain.solids.back();
        placed.tools = nullptr;
        plain.placed.push_back(placed);
    }
    return plain;
}

struct Principal {
    Seen front, plan, side;
    /// The piece's own coordinate of a picture coordinate of the side view: +1 from the right, -1 from the left.
    double side_sign = 1;
};

Principal look_at_piece(const Job& job) {
    const PlainParts plain = plain_parts(job);
    Principal p;
    p.front = look_at(job.placed, solid::front_view(), plain.placed);
    p.plan = look_at(job.placed, solid::top_view(), plain.placed);
    p.side = look_at(job.placed, job.first_angle ? solid::left_view() : solid::right_view(), plain.placed);
    p.side_sign = job.first_angle ? -1 : 1;
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
std::vector<MeasureString> strings_of(const Job& job, int direction, const Seen& seen, bool level, double sign, Point2 origin, double scale) {
    const double low = level ? seen.box.left : seen.box.bottom, high = level ? seen.box.right : seen.box.top;
    const double outline = level ? seen.box.bottom : seen.box.left;
    const char axis = "XYZ"[direction];
    const auto measure_between = [&](double a, double b, const std::string& figure) {
        // a, b in the piece; the picture may run the other way.
        double from = sign * a, to = sign * b;
        if (from > to) std::swap(from, to);
        Measure m;
        const auto paper = [&](double picture) { return (level ? origin.x : origin.y) + scale * (picture - low); };
        const auto across = [&](double picture) {
            return (level ? origin.y : origin.x) + scale * (wood_at(seen, picture, level, true, outline) - outline);
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
        for (const piece::Line& line : job.model.piece->rods[static_cast<std::size_t>(direction)].lines) lines.push_back(line.at);
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

Block principal_views(const Job& job, const Principal& seen, double scale) {
    constexpr double between = 16;
    Block block;
    const double width = seen.front.box.width() * scale, height = seen.front.box.height() * scale, depth = seen.plan.box.height() * scale;
    draw_seen(block, seen.front, scale, {0, 0});
    const double side_at = width + between;
    draw_seen(block, seen.side, scale, {side_at, 0});
    const double figure = job.paper.figure;
    const double below = draw_dimensions(block, ViewSide::below, 0, strings_of(job, 0, seen.front, true, 1, {0, 0}, scale), figure);
    draw_dimensions(block, ViewSide::left, 0, strings_of(job, 2, seen.front, false, 1, {0, 0}, scale), figure);
    draw_dimensions(block, ViewSide::below, 0, strings_of(job, 1, seen.side, true, seen.side_sign, {side_at, 0}, scale), figure);
    if (job.first_angle)
        draw_seen(block, seen.plan, scale, {0, -std::max(between, below + 8) - depth});
    else
        draw_seen(block, seen.plan, scale, {0, height + between});
    return block;
}

/// What of the picture does not depend on its scale.
struct Picture {
    Seen seen;
    std::vector<std::vector<Point2>> anchors; ///< of each row
};

Picture look_at_picture(const Job& job) {
    Picture picture;
    picture.seen = look_at(job.placed, solid::isometric_view());
    for (const cutlist::Row& row : job.cut_list.rows) {
        std::vector<Point2> points;
        // The first few copies are enough to find a good place.
        for (std::size_t i = 0; i < row.parts.size() && i < 6; ++i)
            for (const Point2 p : seen_points(job.placed, row.parts[i], solid::isometric_view())) points.push_back(p);
        picture.anchors.push_back(std::move(points));
    }
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
            w.anchors.push_back({(p.x - picture.seen.box.left) * factor, (p.y - picture.seen.box.bottom) * factor});
        w.to_sheet = link_to_row + static_cast<int>(r);
        if (!w.anchors.empty()) wanted.push_back(std::move(w));
    }
    draw_balloons(block, drawn, wanted, 8);
    const std::string caption = "pictorial view, " + scale.ratio + " along the axes";
    const double width = text_width(caption, note_height, Typeface::lettering);
    block.text({{drawn.middle().x - width / 2, block.box().bottom - 5 - note_height}, caption, note_height, Typeface::lettering, Ink::black, 0});
    return block;
}

Table parts_table(const Job& job, bool narrow) {
    Table table;
    table.columns = {{"ref", 10, true, Typeface::sans_bold}, {"off", 10, true, Typeface::sans}, {"part", narrow ? 70.0 : 85.0, false, Typeface::sans}};
    if (!narrow) table.columns.push_back({"wood", 75, false, Typeface::sans});
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        TableRow line;
        line.cells = {std::to_string(row.reference), std::to_string(row.count), cut_to(row.name, narrow ? 67 : 82, note_height, Typeface::sans)};
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

Point2 lower_left_for(const Block& block, Point2 corner) { return {corner.x - block.box().left, corner.y - block.box().bottom}; }
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
std::optional<PicturePlace> place_picture(const Job& job, const Picture& picture, const std::vector<Rect>& rects) {
    for (const Scale& scale : scales(job.manner.unit)) {
        if (scale.factor > 1) continue;
        const double factor = scale.factor * std::sqrt(1.5);
        const Rect* best = nullptr;
        const double rough_width = picture.seen.box.width() * factor, rough_height = picture.seen.box.height() * factor;
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

/// Views, picture and list on one sheet, at the largest scale that leaves the picture a fair size.
std::optional<OneSheet> on_one_sheet(const Job& job, const Principal& seen, const Picture& picture) {
    const Block list = parts_list(job);
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const Rect list_rect{title.right - list.box().width(), title.top, title.right, title.top + list.box().height()};
    FreeSpace base(usable);
    base.take(grown(title, 2));
    base.take(grown(list_rect, air));
    for (const Scale& scale : scales(job.manner.unit)) {
        if (seen.front.box.width() * scale.factor > usable.width() || seen.front.box.height() * scale.factor > usable.height()) continue;
        const Block views = principal_views(job, seen, scale.factor);
        const auto found = base.find(views.box().width(), views.box().height());
        if (!found) continue;
        FreeSpace rest = base;
        rest.take(grown(*found, air));
        auto place = place_picture(job, picture, rest.rects());
        if (!place || place->factor < scale.factor / 5) continue;
        OneSheet one;
        one.factor = scale.factor;
        one.leaf.scale = scale.words;
        one.leaf.block.add(list, lower_left_for(list, {list_rect.left, list_rect.bottom}));
        const Point2 at = centred_in(place->block, place->rect);
        const Rect& pb = place->block.box();
        one.leaf.block.add(place->block, at);
        // The views stand in the middle of the room they have.
        FreeSpace room = base;
        room.take(grown({pb.left + at.x, pb.bottom + at.y, pb.right + at.x, pb.top + at.y}, air));
        Rect best = *found;
        for (const Rect& r : room.rects())
            if (r.left <= found->left + 1e-6 && r.bottom <= found->bottom + 1e-6 && r.right >= found->right - 1e-6 && r.top >= found->top - 1e-6 &&
                r.width() * r.height() > best.width() * best.height())
                best = r;
        one.leaf.block.add(views, centred_in(views, best));
        return one;
    }
    return std::nullopt;
}

/// Views alone: the largest scale at which they fit beside the title block.
OneSheet views_alone(const Job& job, const Principal& seen) {
    FreeSpace space(job.paper.usable());
    space.take(grown(job.paper.title_block(), 2));
    const std::vector<Scale>& list = scales(job.manner.unit);
    for (const Scale& scale : list) {
        if (&scale != &list.back() && seen.front.box.width() * scale.factor > job.paper.width) continue;
        const Block views = principal_views(job, seen, scale.factor);
        const auto found = space.find(views.box().width(), views.box().height());
        if (!found && &scale != &list.back()) continue;
        Rect best = found.value_or(job.paper.usable());
        for (const Rect& r : space.rects())
            if (r.width() >= views.box().width() && r.height() >= views.box().height() && r.width() * r.height() > best.width() * best.height()) best = r;
        OneSheet one;
        one.factor = scale.factor;
        one.leaf.scale = scale.words;
        one.leaf.block.add(views, centred_in(views, best));
        return one;
    }
    return {};
}

/// Picture and parts list. A list too long to leave the picture room goes without: the cut list names every part.
Leaf picture_alone(const Job& job, const Picture& picture) {
    Leaf leaf;
    const Block list = parts_list(job);
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    for (const bool with_list : {true, false}) {
        FreeSpace space(usable);
        space.take(grown(title, 2));
        if (with_list) {
            if (list.box().height() > 0.5 * usable.height()) continue;
            space.take(grown({title.right - list.box().width(), title.top, title.right, title.top + list.box().height()}, air));
        }
        auto place = place_picture(job, picture, space.rects());
        if (!place) continue;
        if (with_list) leaf.block.add(list, lower_left_for(list, {title.right - list.box().width(), title.top}));
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
