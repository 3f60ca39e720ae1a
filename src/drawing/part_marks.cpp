// Places are tried in a fixed order, from the middle outwards or at set shares of the length; the first free
// one is taken.

#include "drawing/part_marks.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;
using measure::Vector;

/// Room for an upright rectangle inside `where`, free of lines and texts; tried from the middle outwards.
std::optional<Point2> free_place(const Block& block, const Rect& where, double width, double height) {
    const int nx = std::max(1, static_cast<int>((where.width() - width) / 4)),
              ny = std::max(1, static_cast<int>((where.height() - height) / 2));
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

} // namespace

void set_grain_arrow(Block& block, const Rect& face, const Made& made) {
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

void set_face_side_mark(Block& block, const Rect& face, const Made& made) {
    const bool high = made.part->face_edge_high;
    const double arris = high ? face.top : face.bottom, into = high ? -1 : 1;
    const double size = std::clamp(face.height() * 0.5, 3.0, 6.0);
    // Best where no line is crossed; a loop over a moulding's lines is still read.
    for (const bool over_lines : {false, true})
        for (const double share : {0.25, 0.75, 0.15, 0.85, 0.35, 0.65}) {
            const Point2 at{face.left + face.width() * share, arris};
            const Rect room = grown(face_side_mark_box(at, into, size), -0.3);
            if (!over_lines && !block.occupied().free_for_text(corners(room), 0.1)) continue;
            if (!block.occupied().free_for_line({room.left, room.bottom}, {room.right, room.top}, 0.3))
                continue;
            face_side_mark(block, at, into, size);
            return;
        }
}

void set_face_edge_mark(Block& block, const Rect& edge, bool face_side_below) {
    const double face_arris = face_side_below ? edge.bottom : edge.top, up = face_side_below ? 1 : -1;
    const double v = std::clamp(edge.height() * 0.6, 2.0, 4.0);
    for (const bool over_lines : {false, true})
        for (const double share : {0.25, 0.75, 0.15, 0.85, 0.35, 0.65}) {
            const Point2 at{edge.left + edge.width() * share, face_arris};
            const Rect room{at.x - v / 2, std::min(at.y + up * 0.4, at.y + up * v), at.x + v / 2,
                            std::max(at.y + up * 0.4, at.y + up * v)};
            if (!over_lines && !block.occupied().free_for_text(corners(room), 0.3)) continue;
            if (!block.occupied().free_for_line({room.left, room.bottom}, {room.right, room.top}, 0.3))
                continue;
            face_edge_mark(block, at, up, v);
            return;
        }
}

void set_growth_rings(Block& block, const Rect& end, const Made& made, const solid::View& view) {
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

void set_end_names(Block& block, const Rect& face, const std::string& near_end, const std::string& far_end) {
    for (const bool far : {false, true}) {
        const std::string& words = far ? far_end : near_end;
        const double width = text_width(words, note_height, Typeface::lettering);
        const double reach = std::min(width + 10, face.width() / 3);
        const Rect at_end =
            far ? Rect{face.right - reach, face.bottom + 0.8, face.right - 1.2, face.top - 0.8}
                : Rect{face.left + 1.2, face.bottom + 0.8, face.left + reach, face.top - 0.8};
        if (at_end.width() < width || at_end.height() < note_height + 1) continue;
        if (const auto at = free_place(block, at_end, width, note_height + 0.8))
            block.text({{at->x - width / 2, at->y - note_height / 2},
                        words,
                        note_height,
                        Typeface::lettering,
                        Ink::black,
                        0});
    }
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
    y += 1.5;
    constexpr double width = 168;
    const auto paragraph = [&](const std::string& words) {
        y = set_lines(block, wrapped(words, width, note_height, Typeface::sans), 0, y) - 0.6;
    };
    paragraph(
        job.first_angle
            ? "first angle: below a view what is seen from above it, at its right what is seen from its left"
            : "third angle: above a view what is seen from above it, at its right what is seen from its "
              "right");
    paragraph("tables: letters stand at the cuts in the views; L along the length, W across the width, T "
              "through the "
              "thickness; places are measured on the squared blank from its near end (drawn at the left), "
              "its face edge "
              "and its face side; 32 + 4× 84.5: the first at 32, four more, each 84.5 on; corners L/W 10/5: "
              "10 from the "
              "near end, 5 from the face edge; in parentheses what the strings of the views tell already");
    paragraph("tenons and tongues are told as they stand; all else at that side is waste down to the deepest "
              "shoulder");
    const bool sawn = std::any_of(job.model.made.begin(), job.model.made.end(), [](const Made& made) {
        return std::any_of(made.cuts.begin(), made.cuts.end(), [](const piece::Cut& cut) {
            const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape);
            return plane != nullptr && (plane->miter || plane->bevel);
        });
    });
    if (sawn)
        paragraph("saw settings: miter is the turn of the cut across the face, bevel the tilt of the blade, "
                  "both from "
                  "square; try every setting on scrap first; the safety rules of the machine apply");
    const auto has_profile = [&](const char* name) {
        return std::any_of(job.model.made.begin(), job.model.made.end(), [&](const Made& made) {
            return std::any_of(made.cuts.begin(), made.cuts.end(), [&](const piece::Cut& cut) {
                const auto* edge = std::get_if<piece::EdgeCut>(&cut.shape);
                return edge != nullptr && edge->profile == name;
            });
        });
    };
    if (has_profile("ovolo") || has_profile("ogee"))
        paragraph("ovolo and ogee: fillets of one eighth of the smaller size; the rounds between them fill "
                  "what is left");
    if (has_profile("bead")) paragraph("bead: a round with quirks of one sixth of its size on either face");
    return block;
}

} // namespace rayfleck::drawing
