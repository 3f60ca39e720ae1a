// The sides of a part: which own face or end the maker means by left, top, inside.
//
// Sides are those of the part as it stands before leaning. Inside and outside look to and from the middle of
// the piece, along each direction in which the part stands wholly to one side of it: a corner leg has two
// inside faces, an apron one, a part that stands across the middle none.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

PartRef itself(Instance& instance) {
    return {&instance, {}, {}, instance.part->name, instance.part->name, ""};
}

std::optional<LocalSide> plain_side(const Pose& pose, Direction d, bool high) {
    for (int k = 0; k < 3; ++k)
        if (pose.readings[static_cast<std::size_t>(k)].direction == d)
            return LocalSide{k, high == pose.readings[static_cast<std::size_t>(k)].high};
    return std::nullopt;
}

} // namespace

std::optional<bool> looks_high(Elaboration& e, Instance& instance, Direction d, bool edge) {
    for (const syntax::Phrase* phrase : instance.part->phrases) {
        const auto* looks = std::get_if<syntax::FaceLooks>(&phrase->says);
        if (!looks || looks->edge != edge) continue;
        return faces_high(e, itself(instance), looks->towards.side, d, *instance.part->scope,
                          looks->towards.span);
    }
    // Upwards and to the front, where the face is seen; of uprights seen from the side, outwards.
    if (d == Direction::up) return true;
    if (d == Direction::deep) return false;
    const auto reach = reach_of(e, *instance.part->scope, d);
    const Spot& spot = spot_of(e, instance, d);
    return reach && spot.known && spot.low >= (reach->low + reach->high) / Rational(2) &&
           reach->low != reach->high;
}

std::vector<LocalSide> own_sides(Elaboration& e, Instance& instance, const syntax::SideName& side) {
    const Pose& pose = pose_of(e, instance);
    if (!pose.known) return {};
    if (const auto d = direction_of(side.side)) {
        if (const auto own = plain_side(pose, *d, is_high(side.side))) return {*own};
        e.error("which-side", side.span,
                "`" + instance.part->name + "` lies askew; none of its sides is its " + text(side.side));
        return {};
    }
    std::vector<LocalSide> out;
    for (std::size_t k = 1; k < 3; ++k) {
        const Direction d = pose.readings[k].direction;
        const auto at = interval_of(e, itself(instance), d);
        const auto middle = middle_of(e, *instance.part->scope, d);
        if (!at || !middle || (at->low < *middle && at->high > *middle)) continue;
        const bool high = (side.side == Side::outside) == (at->low >= *middle);
        if (const auto own = plain_side(pose, d, high)) out.push_back(*own);
    }
    if (out.empty())
        e.error("no-inside", side.span,
                "`" + instance.part->name + "` stands across the middle of the piece, so it has no " +
                    text(side.side) + " face")
            .mend = "name the side: left, right, front, back, top or bottom";
    return out;
}

std::optional<LocalSide> own_side(Elaboration& e, Instance& instance, const syntax::SideName& side) {
    const std::vector<LocalSide> sides = own_sides(e, instance, side);
    if (sides.empty()) return std::nullopt;
    if (sides.size() == 1) return sides.front();
    // Of a face and an edge that both look inwards, the wide face is meant, unless the section is square.
    const Pose& pose = pose_of(e, instance);
    if (pose.size[1] != pose.size[2])
        for (const LocalSide& one : sides)
            if (one.axis == 2) return one;
    e.error("which-side", side.span,
            "`" + instance.part->name + "` has two faces that look " + text(side.side))
        .mend = "name the one: left, right, front or back";
    return std::nullopt;
}

double own_coordinate(const Pose& pose, int axis, Length position) {
    const Pose::Reading& r = pose.readings[static_cast<std::size_t>(axis)];
    const double along = position.value() - r.origin;
    return r.start + r.scale * (r.high ? along : -along);
}

} // namespace rayfleck::piece
