#pragma once
// Where finished parts lie against each other, and how the joint between them holds those places.

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// Fills model.contacts from the finished solids.
void find_contacts(Model& model, const std::vector<HoldRule>& rules);

} // namespace rayfleck::joinery
