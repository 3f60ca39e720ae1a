// The face is always shown; an edge when something opens on it alone, else the face edge; the back only when
// something opens on it alone. A break spares paper, but the part no longer looks like itself: never for a
// part with an outline, of the others for slender ones only, and not more than twice.

#include "drawing/part_layout.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/part_features.hpp"
#include "drawing/part_strings.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;

constexpr double longest_on_paper = 500; ///< a part is not broken by more than this shortens
constexpr double widest_broken = 46, thickest_on_paper = 32;
/// A board without work on it need not be large.
constexpr double widest_plain = 100;
/// mm of paper: between two views with and without a string of dimensions, below the last one for its two
/// strings, above the first one for its string, or for the thicknesses over the end view when the face comes
/// first.
constexpr double for_a_string = 17, for_none = 9, below_the_last = 22, above_an_edge = 13,
                 above_the_face = 24;

/// Directions of sight on the ends of a part in its own frame.
constexpr solid::View on_near_end{{0, 0, 1}, {0, 1, 0}, {-1, 0, 0}};
constexpr solid::View on_far_end{{0, 0, -1}, {0, 1, 0}, {1, 0, 0}};

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

double height_of(const Made& made, const PartSeen& seen, double scale) {
    double height = below_the_last;
    const PartSide first = seen.sides.front().side;
    if (first == PartSide::face)
        height += above_the_face;
    else if (!seen.borders.on(first).empty())
        height += above_an_edge;
    const measure::Box& box = made.solid.box;
    for (const PartSeen::OnSide& on : seen.sides) {
        const bool edge = on.side == PartSide::high_edge || on.side == PartSide::low_edge;
        height += (edge ? box.high.z - box.low.z : box.high.y - box.low.y) * scale;
        // The string of the last view stands below it, those of the others above them.
        if (&on != &seen.sides.front())
            height += &on == &seen.sides.back() || seen.borders.on(on.side).empty() ? for_none : for_a_string;
    }
    return height;
}

} // namespace

solid::View view_of(PartSide side) {
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

PartSeen see_part(const Job& job, int part, const std::vector<Feature>& features) {
    const Made& made = job.made(part);
    PartSeen seen;
    seen.borders = borders_of(made, features, finest_step(job));
    const std::vector<solid::Placed> alone{{&made.solid, &made.blank_shape, &made.tools, {}}};
    for (const PartSide side : sides_shown(job, made, seen.borders))
        seen.sides.push_back({side, look_at(alone, view_of(side), true)});
    seen.end_view = job.first_angle ? on_near_end : on_far_end;
    seen.end = look_at(alone, seen.end_view, true);
    return seen;
}

Layout layout_of(const Job& job, const Made& made, const PartSeen& seen, const ViewsRoom& room,
                 double beside) {
    const measure::Box& box = made.solid.box;
    const double length = box.high.x - box.low.x, width = box.high.y - box.low.y,
                 thickness = box.high.z - box.low.z;
    const double length_room = room.width - beside;
    const bool plain = seen.borders.busy.empty() && seen.borders.width.empty();
    const std::vector<Scale>& list = scales(job.manner.unit);
    for (const Scale& scale : list) {
        if (&scale == &list.back()) break;
        const double s = scale.factor;
        if (s > 1.0 + 1e-9 || thickness * s > thickest_on_paper || length * s > longest_on_paper) continue;
        if (height_of(made, seen, s) > room.height || (plain && width * s > widest_plain)) continue;
        LengthMap map = LengthMap::broken(box.low.x, box.high.x, s, seen.borders.busy, length_room);
        if (map.length_on_paper() > length_room + 0.5) continue;
        if (map.is_broken() && (made.part->outline || s * length > 3 * length_room || map.kept().size() > 3 ||
                                width * s > widest_broken))
            continue;
        return {scale, std::move(map)};
    }
    return {list.back(), LengthMap(box.low.x, box.high.x, list.back().factor)};
}

} // namespace rayfleck::drawing
