// Density from specific gravity.
//
// Where both gravities are known the one at 12 % is taken, since furniture is near it, and Eq 4-13 is solved
// for the green one that belongs to it. Sheet goods keep their volume, as near as matters, and take the
// figure as it is.

#include "wood/density.hpp"

#include <algorithm>

namespace rayfleck::wood {

double density_from_gravity(double gravity, measure::Moisture moisture) {
    return 1000 * gravity * (1 + moisture.in_percent() / 100);
}

double gravity_at(double gravity_green, measure::Moisture moisture) {
    const double below = std::clamp(moisture.in_percent(), 0.0, 30.0);
    return gravity_green / (1 - 0.265 * gravity_green * (1 - below / 30));
}

double greatest_moisture(double gravity_green) {
    return 100 * (1.54 - gravity_green) / (1.54 * gravity_green);
}

std::optional<double> density(const Species& species, measure::Moisture moisture) {
    if (species.gravity_12) {
        const double at_12 = species.gravity_12->value;
        if (species.is_sheet()) return density_from_gravity(at_12, moisture);
        const double green = at_12 / (1 + 0.265 * at_12 * (1 - 12.0 / 30));
        return density_from_gravity(gravity_at(green, moisture), moisture);
    }
    if (species.gravity_green)
        return density_from_gravity(gravity_at(species.gravity_green->value, moisture), moisture);
    return std::nullopt;
}

} // namespace rayfleck::wood
