#pragma once
// Moulded edges: chamfer, bevel, round-over, ovolo, ogee, cove, bead as waste along an edge.

#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// Waste of an edge's profile in the plane square to the edge: x along the first face, y along the second,
/// both measured from the edge.
solid::Outline edge_profile(const piece::EdgeCut& cut);

/// The waste along the edge of the part's body. Edges that meet at a corner are mitred by each other: each
/// runs to the body's end, and what both leave is the mitre.
std::vector<solid::Shape> edge_tools(const Bench& bench, int part_id, const piece::EdgeCut& cut);

/// The same round a part's outline, for an edge between a face and the outline (see moulding.cpp). All edges
/// of one face with one profile are made by the first of their cuts. `cut` must be one of the part's own.
/// fails  std::invalid_argument when the profile does not go round a hollow
std::vector<solid::Shape> moulded_outline(const piece::Part& part, const piece::EdgeCut& cut);

/// The blank of a shaped part with the mouldings that go all round its faces; nothing when there are none.
std::optional<solid::Shape> moulded_blank(const piece::Part& part);
/// The cut is one of those that moulded_blank has made. `cut` must be one of the part's own.
bool is_in_moulded_blank(const piece::Part& part, const piece::EdgeCut& cut);

} // namespace rayfleck::joinery
