#pragma once
// A board as cut, told for the saw bench: end trims, cuts with fence settings and words, offcuts.

#include "lumber/orders.hpp"

namespace rayfleck::lumber {

/// Fills cuts, offcuts of a board whose placements are told already.
/// cut     the board in tenths of a millimetre, end trims taken off
/// trim    taken off each end
void tell_cuts(Board& board, const cutting::Board& cut, Length kerf_rip, Length kerf_crosscut, Length trim,
               const piece::Shop& shop, const measure::Manner& manner);
/// Fills in the flaws that the shop file tells of.
void tell_flaws(Board& board, const piece::Shop::Board& told);

} // namespace rayfleck::lumber
