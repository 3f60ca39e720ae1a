#pragma once
// Some boards of a plan taken back and planned anew, as a problem of their own.

#include "cutting/bound.hpp"
#include "cutting/lot.hpp"
#include "cutting/pattern.hpp"

namespace rayfleck::cutting {

/// Goes on until `limit` steps are used or the cost is down to `bound`.
void replan(const Model& model, Solution& solution, Cost bound, Lot& lot, std::int64_t& work,
            std::int64_t limit);

} // namespace rayfleck::cutting
