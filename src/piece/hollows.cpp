// Holes, grooves and notches: waste with faces along the part's own axes.
//
// Places are read on the rods; a groove lies so far from a side of the part itself. Directions that a notch
// does not name run through.

#include <algorithm>

#include "piece/shaping.hpp"

namespace rayfleck::piece {
namespace {

/// The own axes on which the two positions of a bore lie, neither being the bored face's.
std::optional<std::array<int, 2>> axes_of_positions(Shaper& s, const syntax::Bore& says, int face_axis) {
    std::array<std::optional<int>, 2> told;
    for (std::size_t i = 0; i < 2; ++i) {
        const auto d = direction_of(s.e, says.at[i], *s.instance.part->scope, s.instance.each);
        if (!d) continue;
        for (int k = 0; k < 3; ++k)
            if (s.pose.readings[static_cast<std::size_t>(k)].direction == *d) told[i] = k;
        if (told[i] == face_axis) {
            s.e.error("two-rods", says.at[i].span,
                      "this place is on the rod " + text(*d) + ", along which the hole is bored")
                .mend = "give the place on the other two rods";
            return std::nullopt;
        }
    }
    // What is left: the length first.
    std::array<int, 2> left{face_axis == 0 ? 1 : 0, face_axis == 2 ? 1 : 2};
    if (!told[0] && !told[1]) return left;
    if (!told[0]) told[0] = 3 - face_axis - *told[1];
    if (!told[1]) told[1] = 3 - face_axis - *told[0];
    if (*told[0] == *told[1]) {
        s.e.error("two-rods", says.at[1].span, "both places are on the same rod").mend =
            "a hole needs a place on each of two rods";
        return std::nullopt;
    }
    return std::array{*told[0], *told[1]};
}

} // namespace

void shape_bore(Shaper& s, const syntax::Bore& says, Span span) {
    const auto face = own_side(s.e, s.instance, says.face);
    const auto diameter = s.positive(says.diameter, "the diameter of the bore");
    if (!face || !diameter || says.at.size() != 2) return;
    std::optional<double> deep;
    if (says.deep) {
        deep = s.positive(*says.deep, "the depth of the bore");
        if (!deep) return;
        if (*deep >= s.size(face->axis)) deep.reset();
    }
    const auto axes = axes_of_positions(s, says, face->axis);
    if (!axes) return;
    Point first;
    first[face->axis] = face->high ? s.size(face->axis) : 0;
    for (std::size_t i = 0; i < 2; ++i) {
        const auto at = s.along(says.at[i], (*axes)[i]);
        if (!at) return;
        first[(*axes)[i]] = *at;
    }
    int count = 1;
    Vector step;
    if (says.row_count && says.row_step && says.row_direction) {
        const auto n = count_of(s.e, *says.row_count, s.context(), "the number of holes", limits.copies);
        const auto by = s.positive(*says.row_step, "the step from hole to hole");
        if (!n || !by) return;
        count = *n;
        for (int k = 0; k < 3; ++k) {
            const Pose::Reading& reading = s.pose.readings[static_cast<std::size_t>(k)];
            if (reading.direction == *says.row_direction && k != face->axis)
                step[k] = reading.high ? *by : -*by;
        }
        if (norm(step) == 0) {
            s.e.error("which-direction", span,
                      "a row of holes cannot run " + text(*says.row_direction) + ", the way they are bored");
            return;
        }
    }
    for (int i = 0; i < count; ++i) {
        BoreCut cut{*face, first + step * i, *diameter, deep, {}};
        for (int k = 0; k < 3; ++k) {
            if (k == face->axis) continue;
            if (cut.centre[k] > 0 && cut.centre[k] < s.size(k)) continue;
            s.e.error(
                "outside-part", i == 0 ? says.at[k == (*axes)[0] ? 0 : 1].span : span,
                (count > 1 ? "hole " + std::to_string(i + 1) + " of the row" : std::string("the hole")) +
                    " lies outside `" + s.name() + "`");
            return;
        }
        s.add("bore", cut, span);
    }
}

void shape_groove(Shaper& s, const syntax::Groove& says, Span span) {
    const auto wide = s.positive(says.wide, "the width of the groove"),
               deep = s.positive(says.deep, "the depth of the groove");
    const auto from = s.length(says.from_side);
    const auto face = own_side(s.e, s.instance, says.face);
    if (!wide || !deep || !from || !face) return;
    std::optional<LocalSide> side;
    for (const LocalSide& one : own_sides(s.e, s.instance, says.side))
        if (!side && one.axis != face->axis) side = one;
    if (!side) {
        if (!own_sides(s.e, s.instance, says.side).empty())
            s.e.error("which-side", says.side.span,
                      "the groove is cut into the face that it should lie so far from")
                .mend = "measure from a side that meets the " + text(says.face.side);
        return;
    }
    if (*from < Length() || from->value() + *wide > s.size(side->axis) || *deep >= s.size(face->axis)) {
        s.e.error("no-room", span,
                  "a groove " + s.e.shown(Length::from_geometry(*wide)) + " wide and " +
                      s.e.shown(Length::from_geometry(*deep)) + " deep, " + s.e.shown(*from) + " from the " +
                      text(says.side.side) + ", has no room in `" + s.name() + "`");
        return;
    }
    const int along = 3 - face->axis - side->axis;
    const auto reach = stopped_reach(s, along, says.stopped);
    if (!reach) return;
    BoxCut cut;
    cut.box.low[face->axis] = face->high ? s.size(face->axis) - *deep : 0;
    cut.box.high[face->axis] = face->high ? s.size(face->axis) : *deep;
    const double near = from->value(), far = near + *wide, whole = s.size(side->axis);
    cut.box.low[side->axis] = side->high ? whole - far : near;
    cut.box.high[side->axis] = side->high ? whole - near : far;
    cut.box.low[along] = reach->first;
    cut.box.high[along] = reach->second;
    s.add("groove", cut, span);
}

void shape_notch(Shaper& s, const syntax::Notch& says, Span span) {
    BoxCut cut;
    for (int k = 0; k < 3; ++k) cut.box.high[k] = s.size(k);
    std::array<bool, 3> told{};
    for (const syntax::FromTo& reach : says.spans) {
        auto d = direction_of(s.e, reach.from, *s.instance.part->scope, s.instance.each);
        if (!d) d = direction_of(s.e, reach.to, *s.instance.part->scope, s.instance.each);
        if (!d) {
            s.e.error("which-direction", reach.from.span,
                      "it is not clear along which rod this part of the notch lies")
                .mend = "use the names of lines or sides, as in `notch from left to 30 from left`";
            return;
        }
        int axis = -1;
        for (int k = 0; k < 3; ++k)
            if (s.pose.readings[static_cast<std::size_t>(k)].direction == *d) axis = k;
        if (axis < 0) return;
        if (told[static_cast<std::size_t>(axis)]) {
            s.e.error("said-twice", reach.from.span, "the notch is told twice " + text(*d));
            return;
        }
        told[static_cast<std::size_t>(axis)] = true;
        const auto from = s.along(reach.from, axis), to = s.along(reach.to, axis);
        if (!from || !to) return;
        const double low = std::max(0.0, std::min(*from, *to)),
                     high = std::min(s.size(axis), std::max(*from, *to));
        if (high - low < 1e-9) {
            s.e.error("outside-part", reach.from.span,
                      "the notch takes nothing from `" + s.name() + "` " + text(*d));
            return;
        }
        cut.box.low[axis] = low;
        cut.box.high[axis] = high;
    }
    bool whole = true;
    for (int k = 0; k < 3; ++k) whole = whole && cut.box.low[k] <= 0 && cut.box.high[k] >= s.size(k);
    if (whole) {
        s.e.error("nothing-left", span, "the notch would take away the whole of `" + s.name() + "`");
        return;
    }
    s.add("notch", cut, span);
}

} // namespace rayfleck::piece
