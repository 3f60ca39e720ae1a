#pragma once
// An audit of finished sheets: what a draughtsman would mark in red, as far as a program can judge from
// strokes and texts alone.
//
// It knows no wood and no layout code: it reads a Set as a writer would and applies published rules of
// drawing (ISO 5457 frame, ISO 7200 title block, ISO 128 lines, ISO 129 dimensions, ISO 3098 lettering) with
// the house values that the drawing room states. Left out: whether the views are the right ones, whether what
// is drawn is true.

#include <string>
#include <vector>

#include "drawing/sheet.hpp"
#include "measure/length.hpp"

namespace rayfleck::testing {

/// One line per fault: sheet, rule, place. Empty for sound sheets.
std::vector<std::string> audit(const drawing::Set& set, const measure::Manner& manner);

} // namespace rayfleck::testing
