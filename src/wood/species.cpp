// The list of woods, made from the rows, and the index of names that leads into it.
//
// Both are made once, at first use, from constants. Names are compared in plain form (naming.hpp). The source
// of a figure follows from its column and the kind of wood; the exceptions stand in sources_of.

#include "wood/species.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "wood/naming.hpp"
#include "wood/species_table.hpp"

namespace rayfleck::wood {
namespace {

constexpr std::string_view handbook_shrinkage_domestic = "Wood Handbook 2010, Table 4-3";
constexpr std::string_view handbook_shrinkage_imported = "Wood Handbook 2010, Table 4-4";
constexpr std::string_view handbook_coefficient = "Wood Handbook 2010, Table 13-5";
constexpr std::string_view handbook_strength_domestic = "Wood Handbook 2010 and 2021, Table 5-3, at 12 % MC";
constexpr std::string_view handbook_strength_imported = "Wood Handbook 2010 and 2021, Table 5-5, at 12 % MC";
constexpr std::string_view species_pages = "public species pages";

/// Where the figures of a row come from, by group of columns.
struct Sources {
    std::string_view gravity, shrinkage, strength, hardness;
};

Sources sources_of(const Row& row) {
    if (row.id == "padauk_african") {
        const std::string_view sheet = "M. Chudnoff, Tropical Timbers of the World, fact sheet";
        return {sheet, sheet, sheet, species_pages};
    }
    if (row.id == "beech_european") {
        const std::string_view pages = "European timber trade pages";
        return {pages, pages, pages, pages};
    }
    if (row.kind == Kind::imported)
        return {handbook_strength_imported, handbook_shrinkage_imported, handbook_strength_imported,
                handbook_strength_imported};
    const bool hardness_from_pages = row.id == "cedar_eastern_red" || row.id == "hickory_shagbark";
    return {handbook_strength_domestic, handbook_shrinkage_domestic, handbook_strength_domestic,
            hardness_from_pages ? species_pages : handbook_strength_domestic};
}

std::optional<Figure> figure(Cell cell, std::string_view unit, std::string_view source) {
    switch (cell.mark) {
    case Mark::absent:
        break;
    case Mark::read:
        return Figure{cell.value, unit, source, Confirmation::read};
    case Mark::secondary:
        return Figure{cell.value, unit, source, Confirmation::read_secondary};
    case Mark::memory:
        return Figure{cell.value, unit, source, Confirmation::from_memory};
    case Mark::agreeing:
        return Figure{cell.value, unit, "Wood Handbook 2010, Table 4-3; gives the read Table 13-5 by Eq 13-3",
                      Confirmation::from_memory};
    }
    return std::nullopt;
}

Species species_of(const Row& row) {
    const Sources from = sources_of(row);
    Species made;
    made.id = row.id;
    made.trade_name = row.trade_name;
    made.scientific_name = row.scientific_name;
    made.kind = row.kind;
    made.gravity_green = figure(row.gravity_green, "", from.gravity);
    made.gravity_12 = figure(row.gravity_12, "", from.gravity);
    made.shrinkage_radial = figure(row.shrinkage_radial, "%", from.shrinkage);
    made.shrinkage_tangential = figure(row.shrinkage_tangential, "%", from.shrinkage);
    made.shrinkage_volumetric = figure(row.shrinkage_volumetric, "%", from.shrinkage);
    made.coefficient_radial = figure(row.coefficient_radial, "per 1 % MC", handbook_coefficient);
    made.coefficient_tangential = figure(row.coefficient_tangential, "per 1 % MC", handbook_coefficient);
    made.modulus_of_rupture = figure(row.modulus_of_rupture, "kPa", from.strength);
    made.modulus_of_elasticity = figure(row.modulus_of_elasticity, "MPa", from.strength);
    made.compression_along = figure(row.compression_along, "kPa", from.strength);
    made.compression_across = figure(row.compression_across, "kPa", from.strength);
    made.shear_along = figure(row.shear_along, "kPa", from.strength);
    made.tension_across = figure(row.tension_across, "kPa", from.strength);
    made.side_hardness = figure(row.side_hardness, "N", from.hardness);
    made.note = row.note;
    return made;
}

/// Every accepted name in plain form, with the place of its species in the list.
using Index = std::map<std::string, std::size_t, std::less<>>;

Index made_index() {
    Index index;
    std::map<std::string_view, std::size_t> place_of_id;
    const std::vector<Species>& list = all();
    for (std::size_t i = 0; i < list.size(); ++i) {
        place_of_id[list[i].id] = i;
        index.emplace(plain_name(list[i].trade_name), i);
        // Catalogues print "oak, white", which is the key with spaces.
        index.emplace(plain_name(list[i].id), i);
        if (!list[i].scientific_name.empty()) index.emplace(plain_name(list[i].scientific_name), i);
    }
    for (const OtherName& other : other_names())
        index.emplace(plain_name(other.name), place_of_id.at(other.id));
    return index;
}

const Index& names_index() {
    static const Index index = made_index();
    return index;
}

const Species* find_plain(std::string_view plain) {
    const Index& index = names_index();
    const auto at = index.find(plain);
    return at == index.end() ? nullptr : &all()[at->second];
}

bool has_word(std::string_view text, std::string_view word) {
    for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
        const bool starts = at == 0 || text[at - 1] == ' ';
        const auto end = at + word.size();
        if (starts && (end == text.size() || text[end] == ' ')) return true;
    }
    return false;
}

/// "cherry plywood", "oak veneered mdf": the sheet under the face.
const Species* find_faced_sheet(std::string_view plain) {
    struct Ending {
        std::string_view words, sheet;
    };
    static constexpr Ending endings[] = {
        {" veneered particleboard", "veneered particleboard"},
        {" veneered chipboard", "veneered particleboard"},
        {" veneered mdf", "veneered mdf"},
        {" mdf", "veneered mdf"},
        {" lumber core", "lumber core plywood"},
        {" plywood", "hardwood plywood"},
        {" ply", "hardwood plywood"},
    };
    for (const Ending& ending : endings) {
        if (!plain.ends_with(ending.words)) continue;
        const std::string_view face = plain.substr(0, plain.size() - ending.words.size());
        const Species* wood = find_plain(face);
        if (wood != nullptr && wood->is_sheet()) return nullptr;
        if (wood == nullptr && meanings(face).empty()) return nullptr;
        const bool softwood_plywood =
            ending.sheet == "hardwood plywood" && wood != nullptr && wood->is_softwood();
        return find_plain(softwood_plywood ? "plywood" : ending.sheet);
    }
    return nullptr;
}

} // namespace

std::string_view text(Kind kind) {
    switch (kind) {
    case Kind::hardwood:
        return "hardwood";
    case Kind::softwood:
        return "softwood";
    case Kind::imported:
        return "imported hardwood";
    case Kind::sheet:
        break;
    }
    return "sheet goods";
}

const std::vector<Species>& all() {
    static const std::vector<Species> list = [] {
        std::vector<Species> made;
        for (const Row& row : rows_of_solid_wood()) made.push_back(species_of(row));
        for (const Species& sheet : sheet_goods()) made.push_back(sheet);
        return made;
    }();
    return list;
}

const Species* find(std::string_view name) {
    const std::string plain = plain_name(name);
    if (const Species* wood = find_plain(plain)) return wood;
    return find_faced_sheet(plain);
}

std::vector<std::string> meanings(std::string_view word) {
    const std::string plain = plain_name(word);
    if (plain.empty()) return {};
    std::set<std::size_t> places;
    for (const auto& [name, place] : names_index())
        if (has_word(name, plain)) places.insert(place);
    std::vector<std::string> found;
    for (const std::size_t place : places)
        if (!all()[place].is_sheet()) found.emplace_back(all()[place].trade_name);
    return found;
}

std::vector<std::string> known_names() {
    std::set<std::string> names;
    for (const Species& wood : all()) names.emplace(wood.trade_name);
    for (const OtherName& other : other_names()) names.emplace(other.name);
    return {names.begin(), names.end()};
}

} // namespace rayfleck::wood
