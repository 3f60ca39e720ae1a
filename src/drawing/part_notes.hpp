#pragma once
// What is written below the table of cuts of a part: hands, bark, glue-up, notes; and once in the set the
// rules by which sizes came about.

#include <string>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// How the drawn copy stands in the piece: which of its ends and sides look where.
std::string stance_line(const Job& job, const cutlist::Row& row);
/// The same for one direction of the part's own frame: `bottom`, `left`, `outside`; with `leaning` when it is
/// off.
std::string where_it_looks(const piece::Part& part, measure::Vector own);

/// Names of the copies, hands, glue-up, bark, notes for the bench.
std::vector<std::string> bench_notes(const Job& job, const cutlist::Row& row);

/// The rules by which joints of the piece got sizes that were left out, each once, with its source.
std::vector<std::string> rules_of_sizes(const Job& job);

} // namespace rayfleck::drawing
