#pragma once
// What is written beside a part: each cut with its sizes, saw settings, joints with their rules, hands,
// notes.

#include <string>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// One paragraph each, in the order of the text; equal cuts are counted: `2× mortise 80 × 12.7, 20 deep`.
std::vector<std::string> cut_notes(const Job& job, const cutlist::Row& row);
/// Joints of the row's first part: kind, other part, and the sizes that no cut tells, with where they come
/// from.
std::vector<std::string> joint_notes(const Job& job, const cutlist::Row& row);
/// Names of the copies, hands, glue-up, bark, notes for the bench.
std::vector<std::string> bench_notes(const Job& job, const cutlist::Row& row);

/// The rules by which joints of the piece got sizes that were left out, each once, with its source.
std::vector<std::string> rules_of_sizes(const Job& job);

} // namespace rayfleck::drawing
