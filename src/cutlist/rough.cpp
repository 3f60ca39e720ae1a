// See rough.hpp for the rules and what is left out.

#include "cutlist/rough.hpp"

#include <algorithm>
#include <charconv>

namespace rayfleck::cutlist {

using measure::Length;
using measure::Rational;

std::optional<Length> quarters(const std::string& stock) {
    const std::size_t bar = stock.find('/');
    if (bar == std::string::npos || stock.substr(bar) != "/4") return std::nullopt;
    int count = 0;
    const auto [end, error] = std::from_chars(stock.data(), stock.data() + bar, count);
    if (error != std::errc() || end != stock.data() + bar || count <= 0 || count > 64) return std::nullopt;
    return Length::in(Rational(count, 4));
}

int pieces_glued(const joinery::Made& made) {
    const auto& glue_up = made.part->glue_up;
    if (!glue_up) return 1;
    if (glue_up->count) return std::max(1, *glue_up->count);
    if (!glue_up->at_most_wide || *glue_up->at_most_wide <= Length()) return 1;
    const Rational staves = made.width / *glue_up->at_most_wide;
    const std::int64_t whole = measure::floor(staves);
    return static_cast<int>(
        std::clamp<std::int64_t>(Rational(whole) == staves ? whole : whole + 1, 1, 10000));
}

RoughSize rough_size(const joinery::Made& made, const piece::Shop& shop) {
    const piece::Part& part = *made.part;
    RoughSize rough{made.thickness, made.width, made.length};
    if (part.species != nullptr && part.species->is_sheet()) return rough;
    rough.length += shop.allow_length;
    if (part.size_from_stock) return rough;

    const bool laminated = part.glue_up && part.glue_up->laminated;
    const Rational glued = pieces_glued(made);
    const std::optional<Length> bought = quarters(part.stock);
    if (bought && *bought >= made.thickness && !laminated)
        rough.thickness = *bought;
    else
        rough.thickness += shop.allow_thickness * (laminated ? glued : Rational(1));
    rough.width += shop.allow_width * (laminated ? Rational(1) : glued);
    return rough;
}

double board_feet(const RoughSize& size) {
    try {
        return (size.thickness.in_inches() * size.width.in_inches() * size.length.in_inches() / Rational(144))
            .value();
    } catch (const measure::TooLarge&) {
        // Sizes handed back by geometry have long fractions; their product may not fit, and needs no
        // exactness.
        return size.thickness.value() * size.width.value() * size.length.value() / (144 * 25.4 * 25.4 * 25.4);
    }
}

std::optional<double> density(const wood::Species& species, measure::Moisture at) {
    const double water = 1 + at.in_percent() / 100;
    double volumetric = 0; // percent, green to oven-dry
    if (species.shrinkage_volumetric)
        volumetric = species.shrinkage_volumetric->value;
    else if (species.shrinkage_radial && species.shrinkage_tangential)
        volumetric = species.shrinkage_radial->value + species.shrinkage_tangential->value;
    const auto volume_at = [&](measure::Moisture moisture) {
        return volumetric > 0 ? 1 - wood::shrinkage_at(volumetric, moisture) / 100 : 1.0;
    };
    if (species.gravity_12)
        return 1000 * species.gravity_12->value * volume_at(measure::Moisture::percent(12)) / volume_at(at) *
               water;
    if (species.gravity_green) return 1000 * species.gravity_green->value / volume_at(at) * water;
    return std::nullopt;
}

} // namespace rayfleck::cutlist
