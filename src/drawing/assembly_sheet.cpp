// The piece as a whole: its three principal views, a pictorial view with balloons and a short parts list, on
// one sheet where they find room at fair sizes, else on several.

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "drawing/lettering.hpp"
#include "drawing/pictorial_view.hpp"
#include "drawing/principal_views.hpp"
#include "drawing/sheets.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

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
std::optional<PicturePlace> place_picture(const Job& job, const Picture& picture, std::size_t first,
                                          std::size_t last, const std::vector<Rect>& rects) {
    for (const Scale& scale : scales(job.manner.unit)) {
        if (scale.factor > 1) continue;
        const double factor = scale.factor * std::sqrt(1.5);
        const Rect* best = nullptr;
        const double rough_width = picture.seen.box.width() * factor,
                     rough_height = picture.seen.box.height() * factor;
        for (const Rect& r : rects)
            if (rough_width < r.width() && rough_height < r.height()) best = &r;
        if (!best) continue;
        Block block = pictorial_view(job, picture, scale, first, last);
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
        auto place = place_picture(job, picture, 0, job.cut_list.rows.size(), rest.rects());
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

/// Picture and parts list; nothing when so many balloons find no room. A list too long to leave the picture
/// room goes without: the cut list names every part.
std::optional<Leaf> picture_alone(const Job& job, const Picture& picture, std::size_t first,
                                  std::size_t last) {
    Leaf leaf;
    const Block list = parts_list(job);
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    for (const bool with_list : {first == 0, false}) {
        FreeSpace space(usable);
        space.take(grown(title, 2));
        if (with_list) {
            if (list.box().height() > 0.5 * usable.height()) continue;
            space.take(grown(
                {title.right - list.box().width(), title.top, title.right, title.top + list.box().height()},
                air));
        }
        auto place = place_picture(job, picture, first, last, space.rects());
        if (!place) continue;
        if (with_list)
            leaf.block.add(list, lower_left_for(list, {title.right - list.box().width(), title.top}));
        leaf.block.add(place->block, centred_in(place->block, place->rect));
        for (const Scale& scale : scales(job.manner.unit))
            if (scale.factor == place->factor) leaf.scale = scale.words;
        return leaf;
    }
    return std::nullopt;
}

/// How many balloons find room in two columns on a sheet; more rows go on on the next.
std::size_t balloons_on(const Paper& paper) {
    constexpr double pitch = 10;
    return 2 * static_cast<std::size_t>(0.75 * paper.usable().height() / pitch);
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
        const std::size_t rows = job.cut_list.rows.size();
        std::size_t at_once = std::min(rows, balloons_on(job.paper));
        for (std::size_t first = 0; first < rows; first += at_once) {
            auto leaf = picture_alone(job, picture, first, std::min(rows, first + at_once));
            while (!leaf && at_once > 1) {
                at_once = (at_once + 1) / 2;
                leaf = picture_alone(job, picture, first, std::min(rows, first + at_once));
            }
            if (!leaf) break;
            leaves.push_back(std::move(*leaf));
            leaves.back().title = first == 0 ? "Pictorial view" : "Pictorial view, continued";
        }
    }
    for (Leaf& leaf : leaves) leaf.document_type = "assembly drawing";
    return leaves;
}

} // namespace rayfleck::drawing
