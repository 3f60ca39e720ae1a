#pragma once
// A sheet as an SVG picture in true size, for the browser, a manual or a change log.

#include <string>

#include "drawing/sheet.hpp"

namespace rayfleck::writers {

/// Links to other sheets are left out: an SVG file holds one sheet.
/// fails  std::invalid_argument when a place on the sheet is no number
std::string write_svg(const drawing::Sheet& sheet);

} // namespace rayfleck::writers
