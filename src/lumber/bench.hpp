#pragma once
// A board as cut, told for the saws: end trims, straightened edges, cuts with fence settings, offcuts; and
// the work of all boards together, machine by machine.

#include "lumber/orders.hpp"

namespace rayfleck::lumber {

/// What the saws take.
struct Takes {
    Length kerf_rip, kerf_crosscut;
    Length trim; ///< off each end
    Length edge; ///< off the lower edge, where it is straightened
};

/// Fills cuts, offcuts of a board whose placements are told already.
/// cut     the board in tenths of a millimetre, end trims and straightened edge taken off
void tell_cuts(Board& board, const cutting::Board& cut, const Takes& takes, const piece::Shop& shop);
/// Sections beside each other that are ripped alike stay one until they are ripped: fewer cuts, longer
/// pieces. Only of boards that are crosscut first. width  of the board, its edge straightened
void join_sections(cutting::Board& board, cutting::Measure kerf_crosscut, cutting::Measure kerf_rip,
                   cutting::Measure width);
/// Fills in the flaws, and says which side the bark is and how the rings run, as the shop file tells.
void tell_flaws(Board& board, const piece::Shop::Board& told);

/// Puts the cuts of all boards in order, machine by machine and setting by setting; numbers them; writes the
/// words of cuts and steps.
void tell_steps(Plan& plan, const std::vector<Source>& sources, const piece::Shop& shop);

} // namespace rayfleck::lumber
