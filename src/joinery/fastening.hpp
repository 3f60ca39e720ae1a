#pragma once
// Places along a joint at which something fastens it: screws, dowels, buttons.

#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// The patch in which two parts meet, laid out along its longer way.
struct Row {
    Meeting meeting;
    int along = 1, across = 2; ///< axes of A
    double low = 0, high = 0;  ///< along, A's frame
    double middle = 0;         ///< across, A's frame
    double width = 0;          ///< across
    Vector line;               ///< along, piece's frame, unit

    double length() const { return high - low; }
    /// A point on the joint's surface, piece's frame.
    Point at(const piece::Part& a, double along_at, double across_at) const;
};

std::optional<Row> row_of(Bench& bench, const Pair& pair, Prefer prefer);

/// Even places along a row.
///
/// count     stated number, or nothing
/// every     greatest distance between neighbours
/// end       least distance from the row's ends
/// gives     places along the row, A's frame; at least one
std::vector<double> places(const Row& row, std::optional<int> count, double every, double end);

} // namespace rayfleck::joinery
