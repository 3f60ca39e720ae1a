#pragma once
// The audit's rules by subject, each in a file of its own; audit.cpp runs them all.
//
// D numbers are those of the project's list of drawing conventions.

#include <string>
#include <vector>

#include "drawing/sheet.hpp"
#include "measure/length.hpp"

namespace rayfleck::testing {

using Faults = std::vector<std::string>;

/// Views of the whole piece: centre lines, coincident and crowded lines, projection, scale (D9–D11, D13, D14,
/// D39).
void audit_views(const drawing::Sheet& sheet, int number, Faults& faults);
/// How dimensions stand on a sheet with views: order, arrowheads, figures (D29, D31, D32).
void audit_dimension_layout(const drawing::Sheet& sheet, int number, Faults& faults);
/// What dimensions of the whole piece say: parentheses, repeats, chains (D26–D28).
void audit_dimension_figures(const drawing::Sheet& sheet, int number, const measure::Manner& manner,
                             Faults& faults);
/// Balloons, parts list and cut list (D36–D38).
void audit_references(const drawing::Set& set, Faults& faults);

/// The number that a printed length stands for, in the unit of the drawing (feet in inches); nothing when it
/// is none.
bool printed_number(const std::string& shown, double& value);

} // namespace rayfleck::testing
