// Isometric, at the scale that fills its place: nothing is measured on it. A part of which nothing is seen is
// drawn dashed, so that its balloon has something to point at.

#include "drawing/pictorial_view.hpp"

#include <cmath>

#include "drawing/balloons.hpp"
#include "drawing/lettering.hpp"

namespace rayfleck::drawing {

Picture look_at_picture(const Job& job) {
    const solid::View view = solid::isometric_view();
    Picture picture;
    picture.seen = look_at(job.placed, view, false);
    std::vector<Segment2> unseen;
    for (const cutlist::Row& row : job.cut_list.rows) {
        std::vector<Point2> points;
        // The first few copies are enough to find a good place.
        constexpr std::size_t copies = 6, enough = 24;
        for (std::size_t i = 0; i < row.parts.size() && i < copies && points.size() < enough; ++i)
            for (const Point2 p : seen_points(job.placed, row.parts[i], view)) points.push_back(p);
        if (points.empty() && !row.parts.empty()) {
            const std::vector<solid::Placed> alone{job.placed[static_cast<std::size_t>(row.parts.front())]};
            const Seen part = look_at(alone, view, false);
            unseen.insert(unseen.end(), part.visible.begin(), part.visible.end());
            points = seen_points(alone, 0, view);
            // A splinter has no face broad enough to choose a place on.
            const measure::Point middle = alone.front().frame.out(alone.front().solid->centroid);
            if (points.empty()) points.push_back({dot(middle, view.right), dot(middle, view.up)});
        }
        picture.anchors.push_back(std::move(points));
    }
    picture.seen.hidden = without(united(unseen), picture.seen.visible);
    return picture;
}

Block pictorial_view(const Job& job, const Picture& picture, double factor, std::size_t first,
                     std::size_t last) {
    Block block;
    draw_seen(block, picture.seen, factor, {0, 0}, Role::picture);
    const Rect drawn = block.box();
    std::vector<BalloonWanted> wanted;
    for (std::size_t r = first; r < last; ++r) {
        BalloonWanted w;
        w.reference = std::to_string(job.cut_list.rows[r].reference);
        for (const Point2 p : picture.anchors[r])
            w.anchors.push_back(
                {(p.x - picture.seen.box.left) * factor, (p.y - picture.seen.box.bottom) * factor});
        w.to_sheet = link_to_row + static_cast<int>(r);
        if (!w.anchors.empty()) wanted.push_back(std::move(w));
    }
    draw_balloons(block, drawn, wanted, 8);
    std::string caption = "pictorial view, not to scale";
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

} // namespace rayfleck::drawing
