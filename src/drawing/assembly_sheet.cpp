// The piece as a whole, in the order a builder reads: a pictorial view with balloons and parts list, then the
// principal views.
//
// The views get the largest scale of the list at which they find room on a sheet of the set. If picture and
// list find room beside them then, all stand on one sheet, and of the ways to place them the one with the
// largest picture is taken; else the picture and the list fill a sheet of their own. The picture carries no
// measures and takes whatever size fills its place.

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

/// How the parts list may stand: one stretch with the sizes, or two with names alone.
enum class ListForm { sizes, names };

Table parts_table(const Job& job, ListForm form) {
    const bool sizes = form == ListForm::sizes;
    const double name_width = sizes ? 60 : 71;
    Table table;
    table.columns = {{"ref", sizes ? 10.0 : 9.0, true, Typeface::sans_bold},
                     {"off", sizes ? 10.0 : 10.0, true, Typeface::sans},
                     {"part", name_width, false, Typeface::sans}};
    if (sizes) {
        const double room = job.in_inches() ? 16 : 13;
        for (const char* axis : {"T", "W", "L"}) table.columns.push_back({axis, room, true, Typeface::sans});
        table.columns.push_back({"wood", 100 - 3 * room, false, Typeface::sans});
    }
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        TableRow line;
        line.cells = {std::to_string(row.reference), std::to_string(row.count),
                      cut_to(row.name, name_width - 3, note_height, Typeface::sans)};
        if (sizes) {
            for (const measure::Length size : {row.thickness, row.width, row.length})
                line.cells.push_back(job.figure(size));
            line.cells.push_back(cut_to(row.sawn.empty() ? row.wood : row.wood + ", " + row.sawn,
                                        table.columns.back().width - 3, note_height, Typeface::sans));
        }
        line.to_sheet = link_to_row + static_cast<int>(r);
        table.rows.push_back(std::move(line));
    }
    return table;
}

constexpr double list_width = 180;

/// Notes, wrapped, their lower left corner at (0, 0).
Block notes_block(const std::vector<std::string>& notes) {
    Block block;
    double y = 0;
    for (auto note = notes.rbegin(); note != notes.rend(); ++note) {
        const auto lines = wrapped(*note, list_width - 4, note_height, Typeface::sans);
        for (auto line = lines.rbegin(); line != lines.rend(); ++line, y += note_step)
            block.text({{2, y + 1}, *line, note_height, Typeface::sans, Ink::black, 0});
    }
    return block;
}

/// What stands on the title block: the list, and the notes above it.
Block corner_block(const Job& job, std::optional<ListForm> list, const std::vector<std::string>& notes) {
    Block block;
    if (list) block.add(rising_list(parts_table(job, *list), *list == ListForm::names ? 2 : 1), {0, 0});
    if (!notes.empty()) block.add(notes_block(notes), {0, list ? block.box().top + 3 : 2.0});
    return block;
}

Point2 centred_in(const Block& block, const Rect& rect) {
    return {rect.middle().x - block.box().middle().x, rect.middle().y - block.box().middle().y};
}

constexpr double air = 6; ///< between blocks

/// The picture as large as it fits into one of the rectangles, and where. It carries no measures, so its
/// scale need not be of the list.
struct PicturePlace {
    Block block;
    Rect rect;
    double factor = 0;
};
/// at_least  a picture smaller than this factor is not wanted
std::optional<PicturePlace> place_picture(const Job& job, const Picture& picture, std::size_t first,
                                          std::size_t last, const std::vector<Rect>& rects,
                                          double at_least = 0) {
    // Balloons and caption take about that much round the drawn view, at the least.
    constexpr double beside = 30, below_and_above = 38, full_size = 1.2247, step = 0.95;
    const double width = picture.seen.box.width(), height = picture.seen.box.height();
    if (width <= 0 || height <= 0) return std::nullopt;
    const auto room = [&](const Rect& r) {
        return std::min({(r.width() - beside) / width, (r.height() - below_and_above) / height, full_size});
    };
    const auto widest = std::max_element(rects.begin(), rects.end(),
                                         [&](const Rect& a, const Rect& b) { return room(a) < room(b); });
    if (widest == rects.end()) return std::nullopt;
    double factor = room(*widest);
    for (int tries = 0; tries < 16 && factor > 0 && factor >= at_least; ++tries, factor *= step) {
        Block block = pictorial_view(job, picture, factor, first, last);
        if (block.box().width() <= widest->width() && block.box().height() <= widest->height())
            return PicturePlace{std::move(block), *widest, factor};
    }
    return std::nullopt;
}

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

/// What the views leave to say.
std::vector<std::string> notes_of(const PrincipalViews& views) {
    std::vector<std::string> notes = views.notes;
    notes.insert(notes.begin(), "Sizes, angles and joints of each part stand in its own drawing.");
    return notes;
}

/// The largest scale of the list at which the views find room beside what stands in the corner.
struct ViewsPlace {
    PrincipalViews views;
    Scale scale;
    Point2 at;
};
std::optional<ViewsPlace> place_views(const Job& job, const Principal& seen) {
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const std::vector<Scale>& list = scales(job.manner.unit);
    const double across = seen.front.seen.box.width(), deep = seen.plan.seen.box.height(),
                 up = seen.front.seen.box.height();
    // The strings of dimensions take at least that much beside three views.
    constexpr double least_room = 30;
    for (const Scale& scale : list) {
        const bool last = &scale == &list.back();
        if (!last && ((across + deep) * scale.factor + least_room > usable.width() ||
                      (up + deep) * scale.factor + least_room > usable.height()))
            continue;
        for (const bool tight : {false, true}) {
            PrincipalViews views = principal_views(job, seen, scale.factor, tight);
            const Block corner = corner_block(job, std::nullopt, notes_of(views));
            const std::vector<Rect> fixed{
                grown(title, 2), {title.left, title.top, title.right, title.top + corner.box().top + 2}};
            if (const auto corner_at = corner_for(views, usable, fixed)) {
                const Point2 at = settled(views, *corner_at, usable, fixed);
                return ViewsPlace{std::move(views), scale, at};
            }
            if (last && tight) {
                const Rect box = views.block.box();
                return ViewsPlace{std::move(views), scale, {usable.left - box.left, usable.top - box.top}};
            }
        }
    }
    return std::nullopt;
}

/// Views, picture and list together, where the views lose nothing by it: of the places for views and list the
/// one that leaves the picture most room, which must be half of the size that the views have.
std::optional<Leaf> on_one_sheet(const Job& job, const ViewsPlace& placed, const Picture& picture) {
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const PrincipalViews& views = placed.views;
    struct Best {
        PicturePlace picture;
        Block corner;
        Point2 views_at;
        std::vector<Rect> fixed;
    };
    constexpr double along_axes = 1.2247, least_share = 0.5;
    const double smallest = least_share * along_axes * placed.scale.factor;
    std::optional<Best> best;
    for (const ListForm form : {ListForm::sizes, ListForm::names}) {
        Block corner = corner_block(job, form, notes_of(views));
        const std::vector<Rect> fixed{
            grown(title, 2), {title.left - air, title.top, title.right, title.top + corner.box().top + air}};
        const auto at = corner_for(views, usable, fixed);
        if (!at) continue;
        FreeSpace rest(usable);
        for (const Rect& f : fixed) rest.take(f);
        for (const Rect& area : views.areas) rest.take(grown(moved(area, *at), air));
        // Sizes in the list are worth a somewhat smaller picture.
        constexpr double clearly_larger = 1.15;
        auto place = place_picture(job, picture, 0, job.cut_list.rows.size(), rest.rects(),
                                   best ? clearly_larger * best->picture.factor : smallest);
        if (!place) continue;
        best = Best{std::move(*place), std::move(corner), *at, fixed};
    }
    if (!best) return std::nullopt;
    Leaf leaf;
    leaf.scale = placed.scale.words;
    leaf.block.add(best->corner, {title.left, title.top});
    const Point2 picture_at = centred_in(best->picture.block, best->picture.rect);
    std::vector<Rect> obstacles = best->fixed;
    obstacles.push_back(grown(moved(best->picture.block.box(), picture_at), air));
    leaf.block.add(views.block, settled(views, best->views_at, usable, obstacles));
    leaf.block.add(best->picture.block, picture_at);
    return leaf;
}

Leaf views_alone(const Job& job, const ViewsPlace& placed) {
    Leaf leaf;
    leaf.scale = placed.scale.words;
    leaf.block.add(placed.views.block, placed.at);
    const Rect title = job.paper.title_block();
    leaf.block.add(corner_block(job, std::nullopt, notes_of(placed.views)), {title.left, title.top});
    return leaf;
}

/// Picture and parts list; nothing when so many balloons find no room. A list too long to leave the picture
/// room goes without: the cut list names every part.
std::optional<Leaf> picture_alone(const Job& job, const Picture& picture, std::size_t first,
                                  std::size_t last) {
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    std::vector<std::optional<ListForm>> forms{std::nullopt};
    if (first == 0) forms = {ListForm::sizes, ListForm::names, std::nullopt};
    for (const auto& form : forms) {
        const Block list = corner_block(job, form, {});
        FreeSpace space(usable);
        space.take(grown(title, 2));
        if (form) {
            constexpr double most = 0.45;
            if (list.box().height() > most * usable.height()) continue;
            space.take(grown({title.left, title.top, title.right, title.top + list.box().height()}, air));
        }
        auto place = place_picture(job, picture, first, last, space.rects());
        if (!place) continue;
        Leaf leaf;
        if (form) leaf.block.add(list, {title.left, title.top});
        leaf.block.add(place->block, centred_in(place->block, place->rect));
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

std::vector<Leaf> assembly_sheets(const Job& job, WholeSeen& whole) {
    if (job.placed.empty()) return {};
    const Principal seen = look_at_piece(job);
    const Picture picture = look_at_picture(job);
    whole = {seen.front.seen, seen.plan.seen, picture.seen};
    for (Seen* view : {&whole.front, &whole.plan, &whole.isometric}) view->hidden.clear();
    const auto views = place_views(job, seen);
    if (!views) return {};
    std::vector<Leaf> leaves;
    if (auto together = on_one_sheet(job, *views, picture)) {
        leaves.push_back(std::move(*together));
        leaves.back().title = "Assembly";
    } else {
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
        leaves.push_back(views_alone(job, *views));
        leaves.back().title = "Principal views";
    }
    for (Leaf& leaf : leaves) leaf.document_type = "assembly drawing";
    return leaves;
}

} // namespace rayfleck::drawing
