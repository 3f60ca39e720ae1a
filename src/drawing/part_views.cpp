// The part lies level in its own frame, face side to the eye; its other sides are rolled out above and below
// it, and the end stands at the right, in the projection of the set. First angle: what is seen from above
// stands below, and the near end at the right. Third angle: what is seen from above stands above, and the far
// end at the right. Dimensions: lengths above each view for what that view shows, the overall below the last
// one; widths at the left of the face, thicknesses above the end. Letters come last, where room is left.

#include "drawing/part_views.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/part_detail.hpp"
#include "drawing/part_letters.hpp"
#include "drawing/part_marks.hpp"
#include "drawing/part_notes.hpp"
#include "drawing/part_strings.hpp"
#include "drawing/part_waste.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;
using measure::Vector;

/// How far a chain above a view reaches up from it, with its figures; 0 for none.
double reach_above(const MeasureString& string, double figure) {
    if (string.empty()) return 0;
    Block trial;
    draw_dimensions(trial, ViewSide::above, 0, {string}, figure);
    return trial.box().top;
}

PartViews draw_views(const Job& job, const cutlist::Row& row, const Made& made,
                     const std::vector<Feature>& features, const PartSeen& views, const ViewsRoom& room,
                     double beside) {
    const Borders& borders = views.borders;
    const std::string& name = row.name;
    const measure::Box& box = made.solid.box;
    const Layout layout = layout_of(job, made, views, room, beside);
    const double s = layout.scale.factor, length = layout.map.length_on_paper();
    const double wide = (box.high.y - box.low.y) * s, thick = (box.high.z - box.low.z) * s;
    const double figure = job.part_figure_height();
    constexpr double between = 9;
    const auto along = [&](double x) { return layout.map.on_paper(x); };

    Block block;
    std::vector<Rect> places;
    std::vector<ViewOnPaper> shown;
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
        shown.push_back({view_of(side), local_side(side), places.back(), layout.map, box, s});
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
    shown.push_back({views.end_view,
                     piece::LocalSide{0, !job.first_angle},
                     {end_at + end.left, face.bottom + end.bottom, end_at + end.right, face.bottom + end.top},
                     layout.map,
                     box,
                     s});
    if (const Rect* back = place_of(PartSide::back))
        block.text({{length + 3, back->middle().y - note_height / 2},
                    "back",
                    note_height,
                    Typeface::lettering,
                    Ink::black,
                    0});
    const GaugeFrame gauge(made);
    set_centres(block, shown, gauge, features);
    set_detail(block, job, shown, views, gauge, features, room.width);
    set_letters(block, shown, gauge, features, grown(block.box(), 3));
    set_end_names(block, face, where_it_looks(*made.part, {-1, 0, 0}), where_it_looks(*made.part, {1, 0, 0}));
    // Last, since its lines give way to texts.
    hatch_waste(block, shown, gauge, features);
    return {std::move(block), layout.scale};
}

} // namespace

PartViews part_views(const Job& job, const cutlist::Row& row, const std::vector<Feature>& features,
                     const PartSeen& seen, const ViewsRoom& room) {
    const Made& made = job.made(row.parts.front());
    // Widths stand at the left, the end view at the right: how much they take shows only when they are drawn.
    double beside = usually_beside;
    PartViews drawn = draw_views(job, row, made, features, seen, room, beside);
    for (int attempt = 0; attempt < 4 && drawn.block.box().width() > room.width; ++attempt) {
        beside += drawn.block.box().width() - room.width + 1;
        if (room.width - beside < 20) break;
        drawn = draw_views(job, row, made, features, seen, room, beside);
    }
    return drawn;
}

} // namespace rayfleck::drawing
