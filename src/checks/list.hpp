#pragma once
// Every check of this room, one file each. checks.cpp puts them into reading order; a new check is declared
// here, listed there, and has its cases in a .fleck file beside its .cpp.

#include "checks/checks.hpp"

namespace rayfleck::checks {

extern const Check short_grain;
extern const Check length_across_grain;
extern const Check short_grain_land;
extern const Check cross_grain_glue;
extern const Check captured_panel;
extern const Check fixed_without_allowance;
extern const Check nominal_for_actual;
extern const Check overlapping_parts;
extern const Check unconnected_part;

} // namespace rayfleck::checks
