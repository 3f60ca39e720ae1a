#pragma once
// From the tree of splits to moves in order and to steps that fit a maker's day.

#include "assembly/tree.hpp"

namespace rayfleck::assembly {

/// Writes moves, sub-assemblies and steps of a tree into an order.
void write_steps(const Node& tree, const Ways& ways, Order& order);

} // namespace rayfleck::assembly
