#pragma once
// What the seasons do to a part: its strain from the day it was made to the driest and the dampest of the
// year.
//
// Strains are tensors in the piece's frame, so that two parts can be compared in any direction, whatever
// their grain and rings. Both seasons are kept apart: a panel must not burst its frame in the damp one nor
// leave its groove in the dry one.

#include "joinery/model.hpp"
#include "wood/movement.hpp"

namespace rayfleck::checks {

struct Seasons {
    wood::StrainTensor dry;  ///< made → driest
    wood::StrainTensor damp; ///< made → dampest
};

/// In the piece's frame.
Seasons seasons_of(const joinery::Made& made, const piece::Piece& piece);

/// Mismatch of two parts along a direction over a length, both seasons, in mm: a's growth less b's.
struct Mismatch {
    double dry = 0, damp = 0;
    /// From driest to dampest: what a rigid joint has to suffer in a year.
    double range() const { return damp - dry < 0 ? dry - damp : damp - dry; }
};
Mismatch mismatch(const Seasons& a, const Seasons& b, measure::Vector direction, double length);

/// `between 6.2 % and 11.0 % moisture`, for messages.
std::string season_words(const piece::Piece& piece);

} // namespace rayfleck::checks
