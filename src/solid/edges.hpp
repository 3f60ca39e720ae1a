#pragma once
// Edges of a finished solid, found by joining its faces' loops.

#include <cstdint>
#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::solid {

struct JoinedEdges {
    std::vector<Edge> edges; ///< without curves' marks: those are the caller's to set
    int open = 0;
    /// Per face: the number of the closed shell that it belongs to, counted from 0.
    std::vector<int> shell;
};

/// Joins loops whose corners lie within `weld` mm of each other.
JoinedEdges join(const std::vector<Face>& faces, double weld);

} // namespace rayfleck::solid
