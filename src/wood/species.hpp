#pragma once
// The woods a maker can name, and what is known of each.
//
// Figures are those of the Wood Handbook (Forest Products Laboratory, FPL-GTR-190, 2010, and FPL-GTR-282,
// 2021; United States government work): shrinkage from Tables 4-3 and 4-4, movement coefficients from Table
// 13-5, strength at 12 % moisture from Tables 5-3 and 5-5. Every field keeps how it was confirmed; what no
// table gives is absent. Sheet goods stand in the same list, since a part may be "wood birch plywood": their
// movement in the plane is small and does not depend on rings. Left out: reaction wood, juvenile wood,
// grades, and the scatter between trees.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wood/figure.hpp"

namespace rayfleck::wood {

enum class Kind { hardwood, softwood, imported, sheet };

/// "hardwood", "softwood", "imported hardwood", "sheet goods".
std::string_view text(Kind kind);

/// One wood, or one sort of sheet goods. Strengths are at 12 % moisture, small clear pieces.
struct Species {
    std::string_view id;              ///< stable key: "cherry_black"
    std::string_view trade_name;      ///< as a maker says it and as lists print it: "black cherry"
    std::string_view scientific_name; ///< empty for sheet goods
    Kind kind = Kind::hardwood;

    std::optional<Figure> gravity_green; ///< oven-dry mass by volume when green, against water
    std::optional<Figure> gravity_12;    ///< oven-dry mass by volume at 12 % moisture, against water

    std::optional<Figure> shrinkage_radial;     ///< %, green to oven-dry
    std::optional<Figure> shrinkage_tangential; ///< %, green to oven-dry
    std::optional<Figure> shrinkage_volumetric; ///< %, green to oven-dry

    std::optional<Figure> coefficient_radial;     ///< per 1 % MC, Table 13-5
    std::optional<Figure> coefficient_tangential; ///< per 1 % MC, Table 13-5

    std::optional<Figure> modulus_of_rupture; ///< kPa
    std::optional<Figure>
        modulus_of_elasticity;                ///< MPa, from bending (about a tenth below the true axial one)
    std::optional<Figure> compression_along;  ///< kPa, parallel to grain, at maximum
    std::optional<Figure> compression_across; ///< kPa, perpendicular to grain, at the proportional limit
    std::optional<Figure> shear_along;        ///< kPa
    std::optional<Figure> tension_across;     ///< kPa, perpendicular to grain
    std::optional<Figure> side_hardness;      ///< N

    /// Sheet goods only: strain per 1 % MC with the face grain (or the long side), across it, and in
    /// thickness.
    std::optional<Figure> sheet_along, sheet_across, sheet_thickness;

    /// What a reader of the figures should know; empty for most.
    std::string_view note;

    bool is_sheet() const { return kind == Kind::sheet; }
    bool is_softwood() const { return kind == Kind::softwood; }
};

/// The wood a maker means: trade names, a few other customary names, scientific names.
///
/// name   in any case; hyphens, underscores and runs of spaces count as one space; "black-cherry" is found
/// gives  nullptr when unknown, or when the word alone leaves open which wood is meant ("oak": see meanings).
///        "<wood> plywood" and "<wood> veneered mdf" give the sheet, whatever wood its face shows.
const Species* find(std::string_view name);

/// The woods whose name contains the given word, for a name that leaves open which is meant: "oak" gives
/// "northern red oak" and "white oak". In the order of the list; empty when there are none.
std::vector<std::string> meanings(std::string_view word);

/// Every name that find accepts, except scientific names and made-up "<wood> plywood"; sorted, for near
/// words.
std::vector<std::string> known_names();

/// All woods, hardwoods first, then softwoods, imported woods, sheet goods; by name within each.
const std::vector<Species>& all();

} // namespace rayfleck::wood
