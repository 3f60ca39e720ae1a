// Equilibrium moisture by Wood Handbook Eq 4-5, climates and regions made from it or from Table 13-2.
//
// The coefficients are those for degrees Celsius; the form for Fahrenheit agrees within 0.013 % MC. The
// friendlier names of regions are ours; they stand only for the published three and promise nothing of other
// places.

#include "wood/moisture.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "wood/naming.hpp"

namespace rayfleck::wood {
namespace {

Climate climate(Moisture one, Moisture other, std::string basis) {
    return {std::min(one, other), std::max(one, other), std::move(basis)};
}

constexpr std::string_view averages = "Wood Handbook 2010, Fig. 13-1 and Table 13-2, interior";
constexpr Confirmation memory = Confirmation::from_memory;

Region region(std::string_view name, std::vector<std::string_view> also, double average, double least,
              double greatest) {
    return {name, std::move(also), Figure{average, "% MC", averages, Confirmation::read_secondary},
            Figure{least, "% MC", averages, memory}, Figure{greatest, "% MC", averages, memory}};
}

} // namespace

Moisture emc(double humidity, double celsius) {
    const double h = std::clamp(humidity, 0.0, 1.0), t = celsius;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * h, once = k1 * kh, twice = k1 * k2 * kh * kh;
    return Moisture::percent(1800 / w * (kh / (1 - kh) + (once + 2 * twice) / (1 + once + twice)));
}

Climate climate_from_humidity(double one, double other, double celsius) {
    const double low = std::min(one, other), high = std::max(one, other);
    return climate(emc(low, celsius), emc(high, celsius),
                   fmt::format("{:.3g} to {:.3g} % humidity at {:.3g} C", low * 100, high * 100, celsius));
}

Climate climate_from_seasons(double humidity, double celsius, double other_humidity, double other_celsius) {
    return climate(emc(humidity, celsius), emc(other_humidity, other_celsius),
                   fmt::format("{:.3g} % humidity at {:.3g} C, {:.3g} % at {:.3g} C", humidity * 100, celsius,
                               other_humidity * 100, other_celsius));
}

Climate climate_from_moisture(Moisture one, Moisture other) {
    const Moisture low = std::min(one, other), high = std::max(one, other);
    return {low, high, fmt::format("{:.3g} to {:.3g} % moisture", low.in_percent(), high.in_percent())};
}

Climate Region::climate() const {
    return {Moisture::percent(least.value), Moisture::percent(greatest.value),
            fmt::format("indoors, {}: {:.3g} to {:.3g} % moisture", name, least.value, greatest.value)};
}

const std::vector<Region>& regions() {
    static const std::vector<Region> list{
        region("most of the United States", {"temperate", "heated house", "inland", "most of the country"}, 8,
               6, 10),
        region("dry southwestern", {"dry southwest", "desert", "dry", "high desert"}, 6, 4, 9),
        region("damp warm coastal", {"damp warm coast", "warm coast", "humid coast", "damp"}, 11, 8, 13),
    };
    return list;
}

const Region* find_region(std::string_view name) {
    const std::string plain = plain_name(name);
    for (const Region& region : regions()) {
        if (plain_name(region.name) == plain) return &region;
        for (const std::string_view other : region.also)
            if (plain_name(other) == plain) return &region;
    }
    return nullptr;
}

Figure fibre_saturation(const Species& species) {
    struct Known {
        std::string_view id;
        double percent;
    };
    // Groups of the table, spelled out by the species of our list that belong to them.
    static constexpr Known known[] = {
        {"yellow_poplar", 31},    {"cedar_alaska", 28},      {"douglas_fir_coast", 28},
        {"hemlock_western", 28},  {"spruce_sitka", 28},      {"pine_loblolly", 26},
        {"pine_longleaf", 26},    {"cedar_western_red", 18}, {"spruce_engelmann", 30},
        {"oak_northern_red", 30},
    };
    double percent = 30;
    for (const Known& row : known)
        if (row.id == species.id) percent = row.percent;
    return {percent, "% MC", "ICC 400, Table 304", Confirmation::read_secondary};
}

} // namespace rayfleck::wood
