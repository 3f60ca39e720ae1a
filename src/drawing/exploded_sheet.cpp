// The exploded view: every part by itself, moved off along the way in which it goes to its place.
//
// Isometric, as large as the sheet allows, balloons with the numbers of the cut list, no dimensions
// (conventions §3: thin phantom lines join mating points, from memory and common practice). Where a part
// would hide behind others, its move is taken so far that it is clear of them, and all is looked at once
// more.

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "drawing/apart.hpp"
#include "drawing/balloons.hpp"
#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;

/// Gap between parts, as a share of the piece's diagonal; our own choice.
constexpr double gap_share = 0.06;
constexpr double most_share = 0.6;
/// A part of whose lines less than this is seen hides.
constexpr double hides = 0.2;
/// Traces shorter than this on paper say nothing, mm.
constexpr double least_trace = 2.5;
constexpr double least_line_gap = 0.7;

struct Exploded {
    std::vector<solid::Placed> placed;
    SeenApart seen;
    Seen lines; ///< of all parts
};

/// A hidden part is taken farther by the move that brought it; if it had none, or that was no use, what came
/// later from the eye's side is. Gives false when every part is seen.
bool move_farther(const Job& job, const SeenApart& seen, const solid::View& view, ApartBy& by) {
    std::vector<bool> hidden;
    for (const double share : seen.share) hidden.push_back(share < hides);
    if (std::none_of(hidden.begin(), hidden.end(), [](bool h) { return h; })) return false;
    const auto is_hidden = [&](int p) { return hidden[static_cast<std::size_t>(p)]; };
    bool farther = false;
    for (std::size_t m = 0; m < job.order.moves.size(); ++m) {
        const assembly::Move& move = job.order.moves[m];
        if (std::all_of(move.parts.begin(), move.parts.end(), is_hidden)) {
            farther = farther || !by.clear[m];
            by.clear[m] = true;
        } else if (dot(move.direction, view.towards) < -0.3 &&
                   std::any_of(move.onto.begin(), move.onto.end(), is_hidden)) {
            by.times[m] *= 1.8;
            farther = true;
        }
    }
    return farther;
}

Exploded explode(const Job& job) {
    const solid::View view = solid::isometric_view();
    const double size = diagonal(job.placed);
    std::vector<int> moves(job.order.moves.size()), parts(job.placed.size());
    std::iota(moves.begin(), moves.end(), 0);
    std::iota(parts.begin(), parts.end(), 0);
    ApartBy by{gap_share * size, most_share * size, std::vector<bool>(moves.size(), false),
               std::vector<double>(moves.size(), 1.0)};
    Exploded out;
    constexpr int rounds = 4;
    for (int round = 1; round <= rounds; ++round) {
        const Apart apart = taken_apart(job, moves, by);
        out.placed = placed_apart(job, parts, apart);
        out.seen = look_apart(out.placed, apart.traces, view);
        if (round == rounds || !move_farther(job, out.seen, view, by)) break;
    }
    std::vector<Point2> corners;
    for (const auto& lines : out.seen.of_part) {
        out.lines.visible.insert(out.lines.visible.end(), lines.begin(), lines.end());
        for (const Segment2& s : lines) corners.push_back(s.a), corners.push_back(s.b);
    }
    out.lines.visible = united(out.lines.visible);
    out.lines.box = around(corners);
    // What nothing could bring to light is drawn dashed, so that its balloon has something to point at.
    for (const cutlist::Row& row : job.cut_list.rows) {
        const bool seen = std::any_of(row.parts.begin(), row.parts.end(), [&](int p) {
            return !out.seen.of_part[static_cast<std::size_t>(p)].empty();
        });
        if (seen || row.parts.empty()) continue;
        const Seen alone = look_at({out.placed[static_cast<std::size_t>(row.parts.front())]}, view, false);
        out.lines.hidden.insert(out.lines.hidden.end(), alone.visible.begin(), alone.visible.end());
    }
    out.lines.hidden = without(united(out.lines.hidden), out.lines.visible);
    return out;
}

/// Places for a leader on the parts of each row.
std::vector<std::vector<Point2>> anchors_of(const Job& job, const Exploded& exploded) {
    const solid::View view = solid::isometric_view();
    std::vector<std::vector<Point2>> all;
    for (const cutlist::Row& row : job.cut_list.rows) {
        std::vector<Point2>& points = all.emplace_back();
        // The first copies are enough to find a good place.
        constexpr std::size_t copies = 4;
        for (std::size_t i = 0; i < row.parts.size() && i < copies; ++i)
            for (const Point2 p : seen_points(exploded.placed, row.parts[i], view)) points.push_back(p);
        if (points.empty() && !row.parts.empty()) {
            for (const int part : row.parts)
                if (const auto& lines = exploded.seen.of_part[static_cast<std::size_t>(part)]; !lines.empty())
                    points.push_back({(lines.front().a.x + lines.front().b.x) / 2,
                                      (lines.front().a.y + lines.front().b.y) / 2});
            if (points.empty())
                points = seen_points({exploded.placed[static_cast<std::size_t>(row.parts.front())]}, 0, view);
        }
    }
    return all;
}

Block exploded_view(const Job& job, const Exploded& exploded, const std::vector<std::vector<Point2>>& anchors,
                    double factor, std::size_t first, std::size_t last) {
    Block block;
    const Rect& box = exploded.lines.box;
    const auto on_paper = [&](Point2 p) {
        return Point2{(p.x - box.left) * factor, (p.y - box.bottom) * factor};
    };
    draw_seen(block, exploded.lines, factor, {0, 0}, Role::picture);
    std::vector<Segment2> wood, traces;
    for (const Segment2& s : exploded.lines.visible) wood.push_back({on_paper(s.a), on_paper(s.b)});
    for (const auto& trace : exploded.seen.of_trace)
        for (const Segment2& s : trace) traces.push_back({on_paper(s.a), on_paper(s.b)});
    for (const Segment2& s : thinned(united(traces), least_line_gap, wood))
        if (std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) > least_trace)
            block.line(s.a, s.b, Pen::phantom, Role::mark);
    const Rect drawn = block.box();
    std::vector<BalloonWanted> wanted;
    for (std::size_t r = first; r < last; ++r) {
        if (anchors[r].empty()) continue;
        BalloonWanted w;
        w.reference = std::to_string(job.cut_list.rows[r].reference);
        for (const Point2 p : anchors[r]) w.anchors.push_back(on_paper(p));
        w.to_sheet = link_to_row + static_cast<int>(r);
        wanted.push_back(std::move(w));
    }
    draw_balloons(block, drawn, wanted, 8);
    const std::string caption = "exploded view, not to scale; chain lines join what goes together";
    block.text({{drawn.middle().x - text_width(caption, note_height, Typeface::lettering) / 2,
                 block.box().bottom - 5 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

/// As large as the free part of the sheet allows.
Leaf leaf_with(const Job& job, const Exploded& exploded, const std::vector<std::vector<Point2>>& anchors,
               std::size_t first, std::size_t last) {
    FreeSpace space(job.paper.usable());
    space.take(grown(job.paper.title_block(), 2));
    const Rect& box = exploded.lines.box;
    const auto fits = [](const Rect& rect, double width, double height) {
        return std::min(rect.width() / width, rect.height() / height);
    };
    Rect best = space.rects().front();
    // Room for balloons and caption is taken off before rectangles are compared.
    constexpr double border = 44;
    for (const Rect& rect : space.rects())
        if (fits(grown(rect, -border / 2), box.width(), box.height()) >
            fits(grown(best, -border / 2), box.width(), box.height()))
            best = rect;
    double factor = fits(grown(best, -border / 3), box.width(), box.height());
    Block block;
    for (int round = 0; round < 12; ++round) {
        block = exploded_view(job, exploded, anchors, factor, first, last);
        const Rect& drawn = block.box();
        if (drawn.width() <= best.width() && drawn.height() <= best.height()) break;
        factor = smaller_factor(factor, box, drawn, best.width(), best.height());
    }
    Leaf leaf;
    leaf.title = first == 0 ? "Exploded view" : "Exploded view, continued";
    leaf.document_type = "assembly drawing";
    leaf.block.add(block,
                   {best.middle().x - block.box().middle().x, best.middle().y - block.box().middle().y});
    return leaf;
}

} // namespace

std::vector<Leaf> exploded_sheets(const Job& job) {
    if (job.order.moves.empty()) return {};
    const Exploded exploded = explode(job);
    const auto anchors = anchors_of(job, exploded);
    const std::size_t rows = job.cut_list.rows.size();
    // So many balloons find room round a picture; more go on on the next sheet.
    constexpr double pitch = 10;
    const auto room = static_cast<std::size_t>(1.5 * job.paper.usable().height() / pitch);
    std::vector<Leaf> leaves;
    for (std::size_t first = 0; first < rows; first += room)
        leaves.push_back(leaf_with(job, exploded, anchors, first, std::min(rows, first + room)));
    return leaves;
}

} // namespace rayfleck::drawing
