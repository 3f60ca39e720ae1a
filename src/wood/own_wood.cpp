// The figures a maker may tell of a wood, and the bounds within which they can be those of a wood.
//
// The bounds are wide: from balsa to lignum vitae and beyond. They catch a misplaced point and a mistaken
// unit, not an unusual wood. They are our own choice, with the Wood Handbook's lightest and heaviest woods
// (gravity 0.16 and 1.05, from memory) well inside. A pound on the square inch is 6.894757 kPa, a pound 4.448
// N, a pound in the cubic foot 16.0185 kg/m³ (exact definitions, rounded).

#include "wood/own_wood.hpp"

#include <array>

#include "wood/naming.hpp"

namespace rayfleck::wood {
namespace {

constexpr double psi_in_kpa = 6.894757, pound_in_newton = 4.448222, pound_per_cubic_foot = 16.01846;

constexpr OwnFigure::Unit plain[] = {{"", 1}};
constexpr OwnFigure::Unit percent[] = {{"%", 1}};
// A density at 12 % moisture holds 12 parts of water on 100 of wood (Wood Handbook, Eq 4-14).
constexpr OwnFigure::Unit density[] = {{"kg/m3", 1 / 1120.0}, {"lb/ft3", pound_per_cubic_foot / 1120}};
constexpr OwnFigure::Unit in_kpa[] = {{"MPa", 1000}, {"kPa", 1}, {"GPa", 1e6}, {"psi", psi_in_kpa}};
constexpr OwnFigure::Unit in_mpa[] = {{"MPa", 1}, {"kPa", 0.001}, {"GPa", 1000}, {"psi", psi_in_kpa / 1000}};
constexpr OwnFigure::Unit force[] = {{"N", 1}, {"kN", 1000}, {"lbf", pound_in_newton}};

const std::array<OwnFigure, 11>& table() {
    static const std::array<OwnFigure, 11> all{{
        {"gravity", plain, "", 0.05, 1.5, &Species::gravity_12},
        {"density", density, "", 0.05, 1.5, &Species::gravity_12},
        {"radial shrinkage", percent, "%", 0.3, 20, &Species::shrinkage_radial},
        {"tangential shrinkage", percent, "%", 0.5, 25, &Species::shrinkage_tangential},
        {"bending strength", in_kpa, "kPa", 10000, 350000, &Species::modulus_of_rupture},
        {"stiffness", in_mpa, "MPa", 1000, 40000, &Species::modulus_of_elasticity},
        {"compression along the grain", in_kpa, "kPa", 5000, 150000, &Species::compression_along},
        {"compression across the grain", in_kpa, "kPa", 300, 50000, &Species::compression_across},
        {"shear along the grain", in_kpa, "kPa", 1000, 40000, &Species::shear_along},
        {"tension across the grain", in_kpa, "kPa", 300, 20000, &Species::tension_across},
        {"hardness", force, "N", 100, 30000, &Species::side_hardness},
    }};
    return all;
}

std::string id_of(std::string_view name) {
    std::string id = "own_" + plain_name(name);
    for (char& c : id)
        if (c == ' ') c = '_';
    return id;
}

} // namespace

OwnWood::OwnWood(std::string name, Kind kind) : name_(std::move(name)), id_(id_of(name_)) {
    species_.id = id_;
    species_.trade_name = name_;
    species_.kind = kind;
    species_.note = "The figures are the maker's own, from the shop file.";
}

Figure own(double value, std::string_view unit) { return {value, unit, own_figure, Confirmation::stated}; }

const Species* find(std::string_view name, std::span<const std::shared_ptr<const OwnWood>> own) {
    const std::string plain = plain_name(name);
    for (const auto& wood : own)
        if (plain_name(wood->species().trade_name) == plain) return &wood->species();
    return find(name);
}

std::span<const OwnFigure> own_figures() { return table(); }

} // namespace rayfleck::wood
