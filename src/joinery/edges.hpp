#pragma once
// Moulded edges: chamfer, bevel, round-over, ovolo, ogee, cove, bead as waste along an edge.

#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// Waste of an edge's profile in the plane square to the edge: x along the first face, y along the second, both
/// measured from the edge.
solid::Outline edge_profile(const piece::EdgeCut& cut);

/// The waste along the edge of the part's body. Edges that meet at a corner are mitred by each other: each runs to
/// the body's end, and what both leave is the mitre.
std::vector<solid::Shape> edge_tools(const Bench& bench, int part_id, const piece::EdgeCut& cut);

} // namespace rayfleck::joinery
