// Tapers: wood planed off a face along a slope, from where it begins to where a stated size is left.
//
//        from                 to
//   ______|                    .      the plane goes through the face at `from` and leaves `size` at `to`,
//         |'''-----......______|      measured across from the opposite face
//   ______|____________________|
//
// Beyond `to` the slope goes on to the end of the part, as a plane would.

#include <algorithm>
#include <cmath>

#include "piece/shaping.hpp"

namespace rayfleck::piece {

void shape_taper(Shaper& s, const syntax::Taper& says, Span span) {
    const auto remain = s.length(says.to);
    // Along the length, unless the places are on another rod: the end of a board may taper across its width.
    const auto told = direction_of(s.e, says.from_position, *s.instance.part->scope, s.instance.each);
    int along = 0;
    for (int k = 0; k < 3 && told; ++k)
        if (s.pose.readings[static_cast<std::size_t>(k)].direction == *told) along = k;
    const auto from = s.along(says.from_position, along), to = s.along(says.to_position, along);
    if (!remain || !from || !to) return;
    if (std::abs(*from - *to) < 1e-9) {
        s.e.error("no-size", span, "the taper begins and ends at the same place");
        return;
    }
    std::vector<LocalSide> all;
    for (const syntax::SideName& face : says.faces)
        for (const LocalSide& side : own_sides(s.e, s.instance, face)) all.push_back(side);
    for (const syntax::SideName& face : says.faces) {
        for (const LocalSide& side : own_sides(s.e, s.instance, face)) {
            if (side.axis == along) {
                s.e.error("taper-on-end", face.span,
                          "the " + text(face.side) + " of `" + s.name() +
                              "` lies across the way the taper runs")
                    .mend = "name a face along it";
                continue;
            }
            const double whole = s.size(side.axis);
            if (*remain <= Length() || remain->value() >= whole) {
                s.e.error("no-taper", says.to.span,
                          "a taper to " + s.e.shown(*remain) + " does not fit a part of " +
                              s.e.shown(s.pose.size[static_cast<std::size_t>(side.axis)]))
                    .mend = "what is left must be more than nought and less than the whole";
                continue;
            }
            // In the plane of length and this axis: through (from, face) and (to, left). Where the opposite
            // face tapers too, the size that is left lies in the middle.
            const bool both =
                std::find(all.begin(), all.end(), LocalSide{side.axis, !side.high}) != all.end();
            const double left = both ? (whole + remain->value()) / 2 : remain->value();
            const double face_at = side.high ? whole : 0, left_at = side.high ? left : whole - left;
            Vector normal;
            normal[along] = face_at - left_at;
            normal[side.axis] = *to - *from;
            if ((normal[side.axis] > 0) != side.high) normal = -normal;
            normal = unit(normal);
            PlaneCut cut;
            cut.plane = {normal, normal[along] * *from + normal[side.axis] * face_at};
            set_saw(cut, side.axis);
            s.add("taper", cut, span);
        }
    }
}

} // namespace rayfleck::piece
