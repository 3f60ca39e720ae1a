#pragma once
// Strength at an angle to the grain: how much of its strength wood keeps when the fibres do not follow the
// load.
//
// Two roads: Hankinson's formula between the strength along and across the grain, with exponents per kind of
// strength (Wood Handbook ch. 5, Eq 5-2), and the measured shares for a slope of grain of 1 in n (Wood
// Handbook Table 5-12, and the more cautious ratios of ASTM D245 for graded lumber). The table is for
// straight slopes up to 1 in 5; beyond it Hankinson's curve goes on from the table's last value. Left out:
// knots, wavy grain, the speed of loading.

#include <optional>
#include <span>

#include "measure/quantity.hpp"
#include "wood/figure.hpp"
#include "wood/species.hpp"

namespace rayfleck::wood {

using measure::Angle;

/// Strength at an angle to the grain by Hankinson's formula, in the unit of its two strengths.
///
/// along, across  strength parallel and perpendicular to the grain, both > 0
/// angle          between load and fibres; taken as its acute angle
/// exponent       2 in the classic form; see hankinson_range
/// source         Wood Handbook, Eq 5-2 (number from memory); the same as Eq 8-16 for bearing, read
/// (secondary)
double hankinson(double along, double across, Angle angle, double exponent = 2);

/// What the exponent is taken for.
enum class Property { tension, compression, bending, stiffness, toughness };

/// Exponents of Hankinson's formula and shares of strength across the grain that the handbook gives for a
/// property.
struct HankinsonRange {
    Property property;
    Figure exponent_least, exponent_greatest;
    Figure across_least, across_greatest; ///< strength across against along the grain
};
const HankinsonRange& hankinson_range(Property property);

/// Kinds of load for which shares by slope of grain are published.
enum class Load {
    bending, ///< modulus of rupture, and tension along the piece
    impact,  ///< impact bending: a dropped chair, a mallet blow
    compression,
};

/// One line of a table of slopes; shares in percent of straight-grained wood.
struct SlopeRow {
    double one_in; ///< slope of 1 in so many
    std::optional<double> bending, impact, compression;
};

/// Wood Handbook Table 5-12, from 1 in 25 to 1 in 5; straight grain is 100. From memory.
std::span<const SlopeRow> slope_of_grain_clear_wood();
/// ASTM D245, strength ratios of graded lumber, from 1 in 20 to 1 in 6. From memory.
std::span<const SlopeRow> slope_of_grain_graded_lumber();

inline constexpr std::string_view slope_of_grain_source = "Wood Handbook, Table 5-12";
inline constexpr Confirmation slope_of_grain_confirmation = Confirmation::from_memory;

/// Share of the strength of straight-grained wood, 0 to 1, that is left at an angle between load and fibres.
///
/// grain  taken as its acute angle; 90 degrees is across the grain
/// gives  Table 5-12, linear in the slope between its lines; beyond 1 in 5 its last value carried on by
/// Hankinson's
///        curve with the exponents that the handbook lays through the same tests (1.5 with 0.1, 1.5 with
///        0.05, 2.5 with 0.1), so the share falls without a jump
double share_of_strength(Load load, Angle grain);

/// Angle of a slope of 1 in n, n > 0.
Angle slope_angle(double one_in);

/// Bending strength at another moisture, kPa; Wood Handbook Eq 5-3, near 21 C.
/// at_12, green  bending strength at 12 % MC and green, kPa, both > 0
/// moisture      percent, below the intersection moisture
/// intersection  percent: 25 for most woods, 24 for white ash and Douglas-fir
double strength_at_moisture(double at_12, double green, double moisture, double intersection);

} // namespace rayfleck::wood
