// Sheet goods: plywood, fibreboard, particleboard, lumber core.
//
// A sheet moves little in its plane, since crossed veneers or felted fibres hold each other, and much in
// thickness. It matters where solid wood is glued to it: then all the movement of the wood is mismatch.
// Strains are per 1 % moisture of the sheet; a sheet takes up less water than solid wood in the same air, so
// computing it with the moisture of solid wood overstates the movement a little. Every figure here is from
// memory or shop practice: product sheets go before. Left out: thickness left swollen after wetting, and the
// difference between makers.

#include "wood/species_table.hpp"

namespace rayfleck::wood {
namespace {

constexpr auto memory = Confirmation::from_memory;
constexpr auto none = Confirmation::none;

constexpr std::string_view per_percent = "per 1 % MC";
constexpr std::string_view plywood_source = "older Wood Handbook, plywood from soaked to oven-dry: 0.45 % "
                                            "with, 0.67 % across the face grain, over 30 % MC";
constexpr std::string_view birch_source = "handbooks of European birch plywood makers: 0.015 % per 1 % MC";
constexpr std::string_view board_source = "about 0.4 % in the plane and 6 % in thickness between 35 and 85 % "
                                          "humidity (tests after EN 318), over 7 % MC";
constexpr std::string_view core_source =
    "common practice, no published source; between plywood and solid wood";
constexpr std::string_view thickness_source =
    "common practice, no published source; as the wood of the veneers";
constexpr std::string_view mdf_strength = "EN 622-5, least for dry use, 12 to 19 mm";
constexpr std::string_view chip_strength = "EN 312, least for type P2, 13 to 20 mm";
constexpr std::string_view birch_strength =
    "handbooks of European birch plywood makers, 18 mm, face grain lengthwise";
constexpr std::string_view plain = "common practice, no published source";

Species sheet(std::string_view id, std::string_view name) {
    Species made;
    made.id = id;
    made.trade_name = name;
    made.kind = Kind::sheet;
    return made;
}

Species moving(Species made, Figure along, Figure across, Figure thickness) {
    made.sheet_along = along;
    made.sheet_across = across;
    made.sheet_thickness = thickness;
    return made;
}

Species plywood(std::string_view id, std::string_view name, Figure gravity, Figure stiffness) {
    Species made =
        moving(sheet(id, name), {0.00015, per_percent, plywood_source, memory},
               {0.00022, per_percent, plywood_source, memory}, {0.0028, per_percent, thickness_source, none});
    made.gravity_12 = gravity;
    made.modulus_of_elasticity = stiffness;
    return made;
}

Species birch_plywood() {
    Species made =
        moving(sheet("plywood_birch", "birch plywood"), {0.00015, per_percent, birch_source, memory},
               {0.00015, per_percent, birch_source, memory}, {0.0035, per_percent, birch_source, memory});
    made.gravity_12 = Figure{0.61, "", "680 kg/m3 at 12 % MC, makers' handbooks", memory};
    made.modulus_of_elasticity = Figure{9500, "MPa", birch_strength, memory};
    made.modulus_of_rupture = Figure{40000, "kPa", birch_strength, memory};
    return made;
}

Species pressed(std::string_view id, std::string_view name, Figure gravity) {
    Species made =
        moving(sheet(id, name), {0.0006, per_percent, board_source, memory},
               {0.0006, per_percent, board_source, memory}, {0.008, per_percent, board_source, memory});
    made.gravity_12 = gravity;
    return made;
}

Species fibreboard(std::string_view id, std::string_view name) {
    Species made = pressed(id, name, {0.67, "", "750 kg/m3 at 12 % MC, common practice", none});
    made.modulus_of_elasticity = Figure{2200, "MPa", mdf_strength, memory};
    made.modulus_of_rupture = Figure{20000, "kPa", mdf_strength, memory};
    return made;
}

Species particleboard(std::string_view id, std::string_view name) {
    Species made = pressed(id, name, {0.58, "", "650 kg/m3 at 12 % MC, common practice", none});
    made.modulus_of_elasticity = Figure{1600, "MPa", chip_strength, memory};
    made.modulus_of_rupture = Figure{11000, "kPa", chip_strength, memory};
    return made;
}

Species lumber_core() {
    Species made =
        moving(sheet("lumber_core", "lumber core plywood"), {0.00015, per_percent, core_source, none},
               {0.0004, per_percent, core_source, none}, {0.0028, per_percent, thickness_source, none});
    made.gravity_12 = Figure{0.45, "", plain, none};
    made.modulus_of_elasticity = Figure{7000, "MPa", plain, none};
    made.note = "Length is the direction of the core strips.";
    return made;
}

} // namespace

std::span<const Species> sheet_goods() {
    static const Species sheets[] = {
        birch_plywood(),
        pressed("hardboard", "hardboard", {0.85, "", plain, none}),
        plywood("plywood_hardwood", "hardwood plywood", {0.53, "", plain, none}, {8000, "MPa", plain, none}),
        lumber_core(),
        fibreboard("mdf", "MDF"),
        particleboard("particleboard", "particleboard"),
        plywood("plywood", "plywood", {0.50, "", plain, none}, {8000, "MPa", plain, none}),
        fibreboard("mdf_veneered", "veneered MDF"),
        particleboard("particleboard_veneered", "veneered particleboard"),
    };
    return sheets;
}

} // namespace rayfleck::wood
