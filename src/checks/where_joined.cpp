// See where_joined.hpp.

#include "checks/where_joined.hpp"

#include <algorithm>
#include <cmath>

#include "checks/fibres.hpp"

namespace rayfleck::checks {

const joinery::Size* size_named(const joinery::Joint& joint, std::string_view what) {
    const auto found = std::find_if(joint.sizes.begin(), joint.sizes.end(),
                                    [&](const joinery::Size& size) { return size.what == what; });
    return found == joint.sizes.end() ? nullptr : &*found;
}

piece::LocalSide side_of_joint(const joinery::Made& made, const joinery::Joint& joint) {
    const measure::Point at = made.part->frame.in(joint.at);
    const double size[2] = {made.part->length.value(), made.part->width.value()};
    const auto beyond = [&](int axis, bool high) { return high ? at[axis] - size[axis] : -at[axis]; };
    const piece::LocalSide end{0, beyond(0, true) > beyond(0, false)},
        edge{1, beyond(1, true) > beyond(1, false)};
    const double of_end = beyond(0, end.high), of_edge = beyond(1, edge.high);
    if (of_end >= of_edge) return end;
    return of_end > -std::min(size[1] / 2, size[0] / 4) && of_edge < 0 ? end : edge;
}

measure::Angle fibre_against(const piece::Part& part, piece::LocalSide side) {
    measure::Vector out;
    out[side.axis] = 1;
    return fibre_against(part, part.frame.turn_out(out));
}

measure::Angle fibre_against(const piece::Part& part, measure::Vector direction) {
    const double along = std::abs(dot(part.frame.turn_out(fibre_direction(part)), direction));
    return measure::Angle::radians(std::acos(std::min(along, 1.0)));
}

} // namespace rayfleck::checks
