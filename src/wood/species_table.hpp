#pragma once
// Rows of figures from which the list of species is made; seen inside this room only.
//
// A row is a species as the tables print it: figures in the tables' units, each with the mark of how it was
// confirmed. Which table a figure comes from follows from its column and the kind of wood, so species.cpp
// adds the source.

#include <span>
#include <string_view>

#include "wood/species.hpp"

namespace rayfleck::wood {

/// How a figure of a row was confirmed; agreeing: from memory, but Eq 13-3 makes a read coefficient of it
/// exactly.
enum class Mark { absent, read, secondary, memory, agreeing };

struct Cell {
    double value = 0;
    Mark mark = Mark::absent;
};

struct Row {
    std::string_view id, trade_name, scientific_name;
    Kind kind;
    Cell gravity_green, gravity_12, shrinkage_radial, shrinkage_tangential, shrinkage_volumetric;
    Cell coefficient_radial, coefficient_tangential;
    Cell modulus_of_rupture, modulus_of_elasticity, compression_along, compression_across, shear_along;
    Cell tension_across, side_hardness;
    std::string_view note;
};

/// Solid woods: hardwoods, softwoods, imported woods, by trade name within each.
std::span<const Row> rows_of_solid_wood();
/// Sheet goods, complete: their sources differ from sheet to sheet.
std::span<const Species> sheet_goods();

struct OtherName {
    std::string_view name; ///< as a maker types it
    std::string_view id;
};

/// Customary names besides the trade name of the list.
std::span<const OtherName> other_names();

} // namespace rayfleck::wood
