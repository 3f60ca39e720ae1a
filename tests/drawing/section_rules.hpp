#pragma once
// What a program can judge of sections and details: rules D16 to D23 of our list of drawing conventions.

#include <string>
#include <vector>

#include "drawing/sheet.hpp"

namespace rayfleck::testing {

/// One line for each fault, with the sheet it is on; empty for a sound set.
///   D16  the letter of a section stands at both ends of its cutting-plane line
///   D17  end grain is hatched at 30, 45 or 60 degrees, and not along an edge of the area
///   D18  areas of two parts that touch differ in direction or pitch; a part keeps the lean of its hatch
///   D19  a legend explains the hatches
///   D20  areas thinner than 2 mm are filled, others hatched
///   D22  no hidden line runs through a cut area, and no hatch leaves its area
///   D23  each detail's letter stands on the view that tells where it is
std::vector<std::string> faults_of_sections(const drawing::Set& set);

} // namespace rayfleck::testing
