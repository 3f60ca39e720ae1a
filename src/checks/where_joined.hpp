#pragma once
// What a joint says of its own sizes, and which side of a part it takes.
//
// Joinery notes every size that it uses by its trade name; checks of joints read them there instead of
// measuring them again. Which side of a part a joint takes is told by where the joint lies: beyond, or
// nearest to, one of its ends; else one of its edges.

#include <string_view>

#include "joinery/model.hpp"

namespace rayfleck::checks {

/// The joint's size of that name (`tenon width`), or nullptr where the joint has none.
const joinery::Size* size_named(const joinery::Joint& joint, std::string_view what);

/// The end (axis 0) or edge (axis 1) of a part at which the joint lies. What lies within half the width of an
/// end belongs to the end.
piece::LocalSide side_of_joint(const joinery::Made& made, const joinery::Joint& joint);

/// Angle between the fibres of a part and the way out of that side, 0 to 90 degrees.
measure::Angle fibre_against(const piece::Part& part, piece::LocalSide side);
/// Angle between the fibres of a part and a direction of the piece (length 1), 0 to 90 degrees.
measure::Angle fibre_against(const piece::Part& part, measure::Vector direction);

} // namespace rayfleck::checks
