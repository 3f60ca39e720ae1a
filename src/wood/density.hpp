#pragma once
// How heavy wood is, and how much water it can hold.
//
// A board's mass follows from its specific gravity and its moisture: Wood Handbook Eq 4-14 (density), Eq 4-13
// (specific gravity at another moisture, form from memory), Eq 4-3 (most water that fits). For the weight of
// a piece, a door, a leaf, and for whether it tips. Left out: sap, resin, and the scatter of a tenth or so
// between boards.

#include <optional>

#include "measure/quantity.hpp"
#include "wood/species.hpp"

namespace rayfleck::wood {

/// Density in kg/m3 at a moisture.
/// gravity   oven-dry mass by volume at that moisture, against water
/// source    Wood Handbook, Eq 4-14; read (secondary)
double density_from_gravity(double gravity, measure::Moisture moisture);

/// Specific gravity at a moisture from the one at green volume.
/// source  Wood Handbook, Eq 4-13, form from memory; agrees with the example read to 0.005
double gravity_at(double gravity_green, measure::Moisture moisture);

/// Most water wood can hold, percent, with every hollow full.
/// source  Wood Handbook, Eq 4-3; read (secondary)
double greatest_moisture(double gravity_green);

/// Density of a wood at a moisture, kg/m3; nothing when the list has no specific gravity of it.
std::optional<double> density(const Species& species, measure::Moisture moisture);

} // namespace rayfleck::wood
