#pragma once
// Places along a joint at which something fastens it: screws, dowels, buttons.

#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// The patch in which two parts meet, laid out along its longer way. Places are told along the row and
/// across it, from `origin`, in A's frame.
struct Row {
    Meeting meeting;
    Point origin;               ///< on the joint's surface
    Vector own_line, own_aside; ///< along and across, A's frame, unit
    double low = 0, high = 0;   ///< along
    double across_low = 0, across_high = 0;
    double middle = 0; ///< across
    double width = 0;  ///< across
    Vector line;       ///< along, piece's frame, unit
    Vector aside;      ///< across, piece's frame, unit

    double length() const { return high - low; }
    /// A point on the joint's surface, piece's frame.
    Point at(const piece::Part& a, double along_at, double across_at) const;
    /// `set 8 from SIDE`: so far from the patch's border that looks there; the middle if that is no border of
    /// the row's long sides.
    double set_across(const Bench& bench, const Pair& pair) const;
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
