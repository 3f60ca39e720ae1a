#pragma once
// The cut list as a table for a spreadsheet or a script.

#include <string>
#include <vector>

#include "lumber/lumber.hpp"

namespace rayfleck::writers {

/// The cut list. RFC 4180: a header line, one line a row, CR LF line ends, quotes where a cell needs them.
///
/// Every measured column says its unit in its name. Millimetres stand always; a piece in
/// inches or feet has the same sizes in decimal inches too, because a fraction like 3/4 turns into a date in
/// a spreadsheet.
std::string write_csv(const cutlist::CutList& list, const measure::Manner& manner);
/// Of several pieces one below the other, with the piece in the first column; at least one.
std::string write_csv(const std::vector<lumber::Source>& pieces);

/// Hinges, screws, pegs, of each piece.
std::string write_hardware_csv(const std::vector<lumber::Source>& pieces);
/// Every blank, a line each, with the board it comes from; of a blank that is resawn every leaf.
std::string write_blanks_csv(const lumber::Plan& plan, const std::vector<lumber::Source>& pieces);
/// What to buy.
std::string write_purchases_csv(const lumber::Plan& plan);
/// The work at the machines, a line for each cut.
std::string write_steps_csv(const lumber::Plan& plan);

} // namespace rayfleck::writers
