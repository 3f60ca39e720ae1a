// Hankinson's formula and the tables of slope of grain.
//
// Tables are kept as printed and read linearly in the slope (1/n), with straight grain as slope 0, since the
// strength falls about evenly with the slope between their lines.

#include "wood/strength.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rayfleck::wood {
namespace {

constexpr auto memory = Confirmation::from_memory;
constexpr std::string_view eq_5_2 = "Wood Handbook, ch. 5, beside Eq 5-2";

constexpr Figure exponent(double value, Confirmation confirmation = memory) {
    return {value, "", eq_5_2, confirmation};
}
constexpr Figure across(double value) { return {value, "", eq_5_2, memory}; }

constexpr HankinsonRange ranges[] = {
    {Property::tension, exponent(1.5, Confirmation::read_secondary),
     exponent(2, Confirmation::read_secondary), across(0.04), across(0.07)},
    {Property::compression, exponent(2), exponent(2.5), across(0.03), across(0.4)},
    {Property::bending, exponent(1.5), exponent(2), across(0.04), across(0.1)},
    {Property::stiffness, exponent(2), exponent(2), across(0.04), across(0.12)},
    {Property::toughness, exponent(1.5), exponent(2), across(0.06), across(0.1)},
};

constexpr SlopeRow clear_wood[] = {
    {25, 96, 95, 100}, {20, 93, 90, 100}, {15, 89, 81, 100}, {10, 81, 62, 99}, {5, 55, 36, 93},
};

constexpr SlopeRow graded_lumber[] = {
    {20, 100, {}, {}}, {18, 85, {}, {}}, {16, 80, {}, {}}, {15, 76, {}, 100}, {14, 74, {}, 87},
    {12, 69, {}, 82},  {10, 61, {}, 74}, {8, 53, {}, 66},  {6, 40, {}, 56},
};

double printed(const SlopeRow& row, Load load) {
    return *(load == Load::bending ? row.bending : load == Load::impact ? row.impact : row.compression);
}

/// Curve that the handbook lays through the tests of Table 5-12, as a share.
double curve(Load load, Angle grain) {
    switch (load) {
    case Load::bending:
        return hankinson(1, 0.1, grain, 1.5);
    case Load::impact:
        return hankinson(1, 0.05, grain, 1.5);
    case Load::compression:
        break;
    }
    return hankinson(1, 0.1, grain, 2.5);
}

/// The angle between two lines: 0 to 90 degrees.
Angle acute(Angle angle) {
    const double turned = std::fmod(std::abs(angle.in_degrees()), 180);
    return Angle::degrees(turned > 90 ? 180 - turned : turned);
}

} // namespace

double hankinson(double along, double across_grain, Angle angle, double exponent_n) {
    const double a = acute(angle).in_radians();
    const double s = std::pow(std::sin(a), exponent_n);
    // The cosine of a right angle comes out a hair off zero, on either side; a power of that must not be
    // taken.
    const double c = std::pow(std::max(0.0, std::cos(a)), exponent_n);
    return along * across_grain / (along * s + across_grain * c);
}

const HankinsonRange& hankinson_range(Property property) { return ranges[static_cast<int>(property)]; }

std::span<const SlopeRow> slope_of_grain_clear_wood() { return clear_wood; }
std::span<const SlopeRow> slope_of_grain_graded_lumber() { return graded_lumber; }

Angle slope_angle(double one_in) { return Angle::radians(std::atan(1 / one_in)); }

double share_of_strength(Load load, Angle grain) {
    const Angle angle = acute(grain);
    const SlopeRow& steepest = clear_wood[std::size(clear_wood) - 1];
    const Angle last = slope_angle(steepest.one_in);
    if (angle > last) return printed(steepest, load) / 100 * curve(load, angle) / curve(load, last);
    const double slope = std::tan(angle.in_radians());
    double slope_before = 0, share_before = 100;
    for (const SlopeRow& row : clear_wood) {
        const double slope_here = 1 / row.one_in, share_here = printed(row, load);
        if (slope <= slope_here)
            return (share_before +
                    (share_here - share_before) * (slope - slope_before) / (slope_here - slope_before)) /
                   100;
        slope_before = slope_here;
        share_before = share_here;
    }
    return share_before / 100;
}

double strength_at_moisture(double at_12, double green, double moisture, double intersection) {
    return at_12 * std::pow(at_12 / green, (12 - moisture) / (intersection - 12));
}

} // namespace rayfleck::wood
