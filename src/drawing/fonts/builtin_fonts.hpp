#pragma once
// The three fonts compiled into the program: DejaVu Sans Condensed, its bold, and Routed Gothic.

#include <cstdint>
#include <span>

#include "drawing/fonts/truetype.hpp"
#include "drawing/sheet.hpp"

namespace rayfleck::drawing {

/// The bytes of the font file of a typeface; they live as long as the program.
std::span<const std::uint8_t> font_file(Typeface face);
/// The same font, read. Read once, at first use.
const TrueType& font(Typeface face);

} // namespace rayfleck::drawing
