#pragma once
// Every check of this room, one file each. checks.cpp puts them into reading order; a new check is declared
// here, listed there, and has its cases in a .fleck file beside its .cpp.

#include "checks/checks.hpp"

namespace rayfleck::checks {

extern const Check short_grain;
extern const Check slope_of_grain;
extern const Check length_across_grain;
extern const Check short_grain_land;
extern const Check joint_across_grain;
extern const Check dovetail_slope;
extern const Check fine_pins;
extern const Check slight_tenon;
extern const Check thin_wall;
extern const Check bore_near_edge;
extern const Check screws_in_end_grain;
extern const Check end_grain_glue;
extern const Check cross_grain_glue;
extern const Check opening_miter;
extern const Check unbalanced_face;
extern const Check captured_panel;
extern const Check slide_without_room;
extern const Check fixed_without_allowance;
extern const Check tight_opening;
extern const Check racking_drawer;
extern const Check cupping;
extern const Check perishable_wood;
extern const Check nominal_for_actual;
extern const Check stock_too_small;
extern const Check machine_limit;
extern const Check overlapping_parts;
extern const Check unconnected_part;
extern const Check held_at_one_end;
extern const Check held_by_hardware;
extern const Check locked_assembly;
extern const Check sagging;
extern const Check tipping;

} // namespace rayfleck::checks
