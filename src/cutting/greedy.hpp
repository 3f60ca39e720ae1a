#pragma once
// Boards filled one after the other, each part put where it first fits. Quick, sees defects, never fails.

#include <vector>

#include "cutting/pattern.hpp"

namespace rayfleck::cutting {

/// Where a lie is free of the defects its type does not bear: the least u from `from` on with the whole of it
/// before `end`; none: -1. `v` is its lower edge.
Measure first_free(const Model& model, const Sheet& sheet, const Lie& lie, Measure from, Measure end,
                   Measure v);

/// One sheet filled, lies tried in the order given; takes what it places out of `residual`.
Pattern fill_in_order(const Model& model, int sheet, const std::vector<Lie>& order,
                      std::vector<std::int64_t>& residual);

/// The best of several orders of the parts; `available` is per sheet. Counts its steps in `work`.
Solution greedy(const Model& model, const std::vector<std::int64_t>& demand,
                const std::vector<std::int64_t>& available, std::int64_t& work);

} // namespace rayfleck::cutting
