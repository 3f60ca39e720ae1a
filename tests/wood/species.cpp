// See: the woods a maker names are found, and carry the figures of the handbook with their source.

#include <cmath>
#include <set>

#include <catch2/catch.hpp>

#include "wood/elastic.hpp"
#include "wood/movement.hpp"
#include "wood/species.hpp"

using namespace rayfleck::wood;

namespace {

std::string id_of(std::string_view name) {
    const Species* wood = find(name);
    return wood == nullptr ? "nothing" : std::string(wood->id);
}

} // namespace

TEST_CASE("trade names lead to the wood a shop means") {
    const std::pair<const char*, const char*> names[] = {
        {"cherry", "cherry_black"},
        {"black cherry", "cherry_black"},
        {"white oak", "oak_white"},
        {"red oak", "oak_northern_red"},
        {"hard maple", "maple_sugar"},
        {"sugar maple", "maple_sugar"},
        {"soft maple", "maple_red"},
        {"silver maple", "maple_silver"},
        {"ash", "ash_white"},
        {"walnut", "walnut_black"},
        {"poplar", "yellow_poplar"},
        {"yellow-poplar", "yellow_poplar"},
        {"tulipwood", "yellow_poplar"},
        {"beech", "beech_european"},
        {"American beech", "beech_american"},
        {"pine", "pine_eastern_white"},
        {"douglas fir", "douglas_fir_coast"},
        {"spruce", "spruce_sitka"},
        {"redwood", "redwood_young_growth"},
        {"mahogany", "mahogany_true"},
        {"teak", "teak"},
        {"western red cedar", "cedar_western_red"},
    };
    for (const auto& [name, id] : names) {
        CAPTURE(name);
        CHECK(id_of(name) == id);
    }
}

TEST_CASE("case, hyphens, commas and spaces make no difference to a name") {
    CHECK(id_of("BLACK-Cherry") == "cherry_black");
    CHECK(id_of("  yellow   poplar ") == "yellow_poplar");
    CHECK(id_of("oak, white") == "oak_white");
    CHECK(id_of("Prunus serotina") == "cherry_black");
    CHECK(id_of("Douglas-fir") == "douglas_fir_coast");
}

TEST_CASE("a word that leaves the wood open is not found but answered with its meanings") {
    CHECK(find("oak") == nullptr);
    CHECK(meanings("oak") == std::vector<std::string>{"red oak", "white oak"});
    CHECK(find("maple") == nullptr);
    CHECK(meanings("Maple") == std::vector<std::string>{"hard maple", "red maple", "silver maple"});
    CHECK(meanings("").empty());
    CHECK(meanings("unobtainium").empty());
    CHECK(find("") == nullptr);
    CHECK(find("chery") == nullptr);
}

TEST_CASE("sheet goods are found and know that they are sheets") {
    for (const char* name :
         {"birch plywood", "plywood", "MDF", "veneered MDF", "chipboard", "Baltic birch", "blockboard"}) {
        CAPTURE(name);
        REQUIRE(find(name) != nullptr);
        CHECK(find(name)->is_sheet());
        CHECK(find(name)->sheet_along.has_value());
        CHECK(find(name)->sheet_across.has_value());
        CHECK(find(name)->sheet_thickness.has_value());
        CHECK_FALSE(find(name)->note.size() > 200);
    }
    CHECK_FALSE(find("birch")->is_sheet());
}

TEST_CASE("plywood with a face of any known wood is hardwood plywood") {
    CHECK(id_of("cherry plywood") == "plywood_hardwood");
    CHECK(id_of("oak plywood") == "plywood_hardwood");
    CHECK(id_of("pine plywood") == "plywood");
    CHECK(id_of("walnut veneered MDF") == "mdf_veneered");
    CHECK(id_of("unobtainium plywood") == "nothing");
    CHECK(id_of("mdf plywood") == "nothing");
}

TEST_CASE("every known name is found, and every wood is known by its trade name") {
    for (const std::string& name : known_names()) {
        CAPTURE(name);
        CHECK(find(name) != nullptr);
    }
    std::set<std::string_view> ids;
    for (const Species& wood : all()) {
        CAPTURE(wood.trade_name);
        CHECK(find(wood.trade_name) == &wood);
        CHECK(ids.insert(wood.id).second);
    }
}

// Wood Handbook 2010, pages of Tables 4-3 and 13-5 that were read, and Table 5-3 as transcribed publicly.
TEST_CASE("figures of black cherry are those of the handbook") {
    const Species& cherry = *find("cherry");
    CHECK(cherry.shrinkage_radial->value == 3.7);
    CHECK(cherry.shrinkage_tangential->value == 7.1);
    CHECK(cherry.shrinkage_volumetric->value == 11.5);
    CHECK(cherry.coefficient_radial->value == 0.00126);
    CHECK(cherry.coefficient_tangential->value == 0.00248);
    CHECK(cherry.modulus_of_elasticity->value == 10300);
    CHECK(cherry.modulus_of_rupture->value == 85000);
    CHECK(cherry.shear_along->value == 11700);
    CHECK(cherry.shrinkage_radial->confirmation == Confirmation::read);
    CHECK(cherry.modulus_of_rupture->confirmation == Confirmation::read_secondary);
}

TEST_CASE("a figure from memory says so") {
    CHECK(find("teak")->shrinkage_tangential->confirmation == Confirmation::from_memory);
    CHECK(find("sweetgum")->tension_across->confirmation == Confirmation::from_memory);
    CHECK(find("sugar pine")->shrinkage_radial->confirmation == Confirmation::from_memory);
    CHECK(find("MDF")->sheet_along->confirmation == Confirmation::from_memory);
}

TEST_CASE("what no table gives is absent, and what is there has a source") {
    CHECK_FALSE(find("sapele")->coefficient_tangential.has_value());
    CHECK_FALSE(find("European beech")->gravity_green.has_value());
    CHECK_FALSE(find("hard maple")->tension_across.has_value());
    for (const Species& wood : all()) {
        CAPTURE(wood.trade_name);
        for (const auto* field :
             {&wood.gravity_green, &wood.gravity_12, &wood.shrinkage_radial, &wood.shrinkage_tangential,
              &wood.shrinkage_volumetric, &wood.coefficient_radial, &wood.coefficient_tangential,
              &wood.modulus_of_rupture, &wood.modulus_of_elasticity, &wood.compression_along,
              &wood.compression_across, &wood.shear_along, &wood.tension_across, &wood.side_hardness,
              &wood.sheet_along, &wood.sheet_across, &wood.sheet_thickness}) {
            if (!*field) continue;
            CHECK((*field)->value > 0);
            CHECK_FALSE((*field)->source.empty());
        }
    }
}

TEST_CASE("a solid wood can move: it has shrinkage, and swells more along the rings than across them") {
    for (const Species& wood : all()) {
        if (wood.is_sheet()) continue;
        CAPTURE(wood.trade_name);
        REQUIRE(wood.shrinkage_radial.has_value());
        REQUIRE(wood.shrinkage_tangential.has_value());
        CHECK(wood.shrinkage_tangential->value > wood.shrinkage_radial->value);
        CHECK(tangential_coefficient(wood)->value > radial_coefficient(wood)->value);
    }
}

TEST_CASE("a figure prints with unit, source and confirmation") {
    const Species& maple = *find("hard maple");
    CHECK(text(*maple.coefficient_tangential) == "0.00353 per 1 % MC");
    CHECK(text_with_source(*maple.coefficient_tangential) ==
          "0.00353 per 1 % MC (Wood Handbook 2010, Table 13-5; read)");
    CHECK(text(*maple.modulus_of_elasticity) == "12600 MPa");
    CHECK(text(Figure{5, "", "here", Confirmation::none}) == "5");
    CHECK_THROWS_AS(length(*maple.modulus_of_elasticity), std::logic_error);
}

// Wood Handbook Table 5-1 (sugar maple: read in a transcription).
TEST_CASE("stiffness across the grain is a small share of that along it") {
    CHECK(across_stiffness(*find("hard maple"))->tangential.value == 0.065);
    CHECK(across_stiffness(*find("hard maple"))->radial.value == 0.132);
    CHECK_FALSE(across_stiffness(*find("teak")).has_value());
    int with_ratios = 0;
    for (const Species& wood : all())
        if (across_stiffness(wood)) ++with_ratios;
    // Every row of the ratio table names a wood of the list.
    CHECK(with_ratios == 26);
}
