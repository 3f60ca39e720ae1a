#pragma once
// Holds a lumber plan against the pieces it was made for, with code of its own: nothing of the lumber or the
// cutting room is called, and all is computed in floating millimetres.
//
// Every blank exactly once and large enough, inside its board after the end trims, kerf between neighbours,
// wood, thickness and sawing right, nothing over flaws, leaves and their kerfs in one thickness, parts that
// match together, boards on hand not used more often than they are there, kerfs as the shop file says, and
// the cuts carried out one after the other on the pieces that lie there: each must go through one whole
// piece, and what remains in the end must be the blanks and the offcuts. Every cut stands in one step at its
// setting.

#include <string>
#include <vector>

#include "lumber/lumber.hpp"

namespace rayfleck::lumber_tests {

/// What is wrong, one line each; empty when all is well.
std::vector<std::string> faults_of(const lumber::Plan& plan, const std::vector<lumber::Source>& sources,
                                   const piece::Shop& shop);

} // namespace rayfleck::lumber_tests
