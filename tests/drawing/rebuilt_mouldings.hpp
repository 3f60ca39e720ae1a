#pragma once
// Profiles of mouldings as the legend of the marks states them, and what they take off a curved outline.

#include <string>

#include "solid/solid.hpp"

namespace rayfleck::testing {

/// Waste of a profile in the plane square to the arris, x along the first face and y along the second, from
/// the arris.
solid::Outline moulding_profile(const std::string& name, double w, double h);

/// Wood taken, mm³, by a profile that runs all round an outline on one face.
double moulded_off_round(const solid::Outline& outline, const solid::Outline& profile);

} // namespace rayfleck::testing
