#pragma once
// Stiffness of wood across the grain, against that along it.
//
// Wood Handbook Table 5-1, at about 12 % moisture: measured ratios of the stiffness along the tangent and
// along the radius to that along the grain. Needed to turn a prevented movement into a stress. The bending
// stiffness of the tables is raised by a tenth to get the one along the grain. Left out: shear moduli and
// Poisson's ratios, which no check uses.

#include <optional>

#include "wood/species.hpp"

namespace rayfleck::wood {

/// Stiffness across the grain against along it; nothing where the table lacks the wood.
struct AcrossStiffness {
    Figure tangential, radial;
};
std::optional<AcrossStiffness> across_stiffness(const Species& species);

/// True stiffness along the grain against the one from bending, which has the sag by shear in it.
inline constexpr Figure axial_over_bending{1.1, "", "Wood Handbook 2021, Table 5-1, note",
                                           Confirmation::read_secondary};

} // namespace rayfleck::wood
