#pragma once
// The cut list as a table for a spreadsheet or a script.

#include <string>

#include "cutlist/cutlist.hpp"

namespace rayfleck::writers {

/// RFC 4180: a header line, one line a row, CR LF line ends, quotes where a cell needs them.
///
/// Every measured column says its unit in its name. Millimetres stand always; a piece in
/// inches or feet has the same sizes in decimal inches too, because a fraction like 3/4 turns into a date in
/// a spreadsheet.
std::string write_csv(const cutlist::CutList& list, const measure::Manner& manner);

} // namespace rayfleck::writers
