#pragma once
// How much water wood holds: from the air it stands in, and over the seasons of a place.
//
// Wood left alone comes to a moisture content set by the relative humidity and, a little, by the temperature
// of the air (equilibrium moisture content, EMC). Computed by Equation 4-5 of the Wood Handbook, from which
// its Table 4-2 was made; every cell of that table lies within 0.06 % MC. A climate is the driest and the
// dampest state of the year. Left out: how long thick or finished wood lags behind the air, so a climate is
// the outer bound.

#include <string>
#include <string_view>
#include <vector>

#include "measure/quantity.hpp"
#include "wood/species.hpp"

namespace rayfleck::wood {

using measure::Moisture;

/// Equilibrium moisture content of solid wood in still air.
///
/// humidity  relative, 0 to 1; values outside count as the nearer end
/// celsius   air temperature; the equation is made for -1 to about 120 C
/// fails     never
/// source    Wood Handbook 2010, Eq 4-5 with the coefficients for degrees Celsius; read (secondary)
Moisture emc(double humidity, double celsius);

/// The driest and the dampest state of wood through the year.
struct Climate {
    Moisture driest;
    Moisture dampest;
    std::string basis; ///< how it was stated, for a finding: "35 to 60 % humidity at 20 C"
};

/// Humidities as fractions, in either order.
Climate climate_from_humidity(double one, double other, double celsius);
/// Two seasons with a temperature each, as a heated winter and a summer: moisture in either order.
Climate climate_from_seasons(double humidity, double celsius, double other_humidity, double other_celsius);
/// Moisture contents, in either order.
Climate climate_from_moisture(Moisture one, Moisture other);

/// A part of the country with its usual moisture of wood indoors.
struct Region {
    std::string_view name;              ///< as published: "dry southwestern"
    std::vector<std::string_view> also; ///< our friendlier names for it: "desert"
    Figure average;                     ///< % MC
    Figure least, greatest;             ///< % MC of single pieces
    Climate climate() const;
};

/// The regions of Wood Handbook Table 13-2 for interior woodwork and furniture.
const std::vector<Region>& regions();
/// A region by its published or friendlier name; case, hyphens and spaces as in find(); nullptr when unknown.
const Region* find_region(std::string_view name);

/// Moisture content at which cell walls are full and below which wood shrinks; 30 % where nothing better is
/// known. source  ICC 400, Table 304, as reproduced by a public page; read (secondary)
Figure fibre_saturation(const Species& species);

} // namespace rayfleck::wood
