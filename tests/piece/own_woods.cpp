// See: a wood that the shop file tells is a wood like any other, and what cannot be one is refused.
// See: the pith on the board's end tells rings, sawing and bark side.

#include <cmath>

#include <catch2/catch.hpp>

#include "elaborated.hpp"
#include "wood/density.hpp"

using namespace rayfleck::piece;
namespace wood = rayfleck::wood;
using rayfleck::measure::Length;
using rayfleck::measure::Moisture;

namespace {

const std::string board =
    "rod across left 0, right 400\nrod deep front 0, back 100\nrod up floor 0, top 20\n";

std::string piece_of(const std::string& phrases) {
    return "piece \"t\"\nshop \"shop.fleck\"\n" + board + "part top\n" + phrases +
           "\n  runs across, from left to right, from front to back, from floor to top\n";
}

Result with_shop(const std::string& statement, const std::string& phrases = "  wood hornbeam") {
    return elaborate_text(piece_of(phrases), {{"shop.fleck", "shop file \"s\"\n" + statement + "\n"}});
}

std::string faults(const std::string& figures) { return errors_in(with_shop("wood hornbeam, " + figures)); }

const std::string both = "radial shrinkage 6.8 %, tangential shrinkage 11.5 %";

} // namespace

TEST_CASE("a part may be made of a wood that the shop file tells") {
    const Result made = with_shop("wood hornbeam, density 750 kg/m3, " + both + ", stiffness 14 GPa");
    REQUIRE(errors_in(made) == "");
    const wood::Species& hornbeam = *made.piece.parts.front().species;
    CHECK(hornbeam.trade_name == "hornbeam");
    CHECK(hornbeam.modulus_of_elasticity->value == Approx(14000));
    CHECK_FALSE(hornbeam.modulus_of_rupture);
    CHECK(wood::text_with_source(*hornbeam.shrinkage_radial) ==
          "6.8 % (the maker's own figure; not verified)");
    // Eq 4-14 backwards: at 12 % moisture it weighs what was told.
    CHECK(*wood::density(hornbeam, Moisture::percent(12)) == Approx(750).margin(0.5));
    // Wood Handbook Eq 13-3 by hand: 1000 x (12 - 8) / (3000 / 11.5 - 30 + 8) = 16.746
    CHECK(wood::movement(Length::mm(1000), Moisture::percent(8), Moisture::percent(12), wood::Sawn::flat,
                         hornbeam)
              .value() == Approx(16.746).margin(0.002));
    CHECK(wood::movement_source(hornbeam).find("the maker's own") == 0);
    // A copy of the piece still has its wood.
    const Piece copy = made.piece;
    CHECK(copy.shop.find_wood("Hornbeam") == copy.parts.front().species);
}

TEST_CASE("a wood of the shop goes before one of the tables, and a value may hold it") {
    const Result own = with_shop("wood cherry, " + both, "  wood cherry");
    CHECK(own.piece.parts.front().species->shrinkage_radial->value == Approx(6.8));
    const std::string text =
        "piece \"t\"\nshop \"shop.fleck\"\nvalue timber = hornbeam\n" + board +
        "part top\n  wood timber\n  runs across, from left to right, from front to back, "
        "from floor to top\n";
    CHECK(outcome(text, {{"shop.fleck", "shop file \"s\"\nwood hornbeam, " + both + "\n"}})
              .find("20 x 100 x 400, hornbeam") != std::string::npos);
}

TEST_CASE("figures that no wood has are refused, each with its bounds") {
    CHECK(faults(both) == "");
    CHECK(faults("gravity 7.5, " + both).find("it lies between 0.05 and 1.5") != std::string::npos);
    CHECK(faults("density 75 lb/ft3, " + both) == "");
    CHECK(faults("density 750 lb/ft3, " + both).find("[out-of-range]") != std::string::npos);
    CHECK(faults("radial shrinkage 12 %, tangential shrinkage 6 %").find("may be swapped") !=
          std::string::npos);
    CHECK(faults("radial shrinkage 6 %, tangential shrinkage 6 %") == "");
    CHECK(faults("tangential shrinkage 6 %").find("[no-figure]") != std::string::npos);
    CHECK(faults("radial shrinkage 0 %, tangential shrinkage 6 %").find("[out-of-range]") !=
          std::string::npos);
    CHECK(faults("stiffness 14 kg, " + both).find("[unknown-unit]") != std::string::npos);
    CHECK(faults("stiffness, " + both).find("[no-figure]") != std::string::npos);
    CHECK(faults("stifness 14 GPa, " + both).find("did you mean `stiffness`?") != std::string::npos);
    CHECK(faults("hardwood, softwood, " + both).find("[said-twice]") != std::string::npos);
    CHECK(faults("hardwood 3, " + both).find("[out-of-range]") != std::string::npos);
    CHECK(faults("gravity 0.6, density 700 kg/m3, " + both).find("[said-twice]") != std::string::npos);
    CHECK(errors_in(with_shop("wood hornbeam, " + both + "\nwood Hornbeam, " + both)).find("[name-twice]") !=
          std::string::npos);
    CHECK(outcome("piece \"t\"\nwood cherry\n").find("[out-of-place]") != std::string::npos);
    CHECK(
        errors_in(with_shop("wood hornbeam, " + both, "  wood hornbean")).find("did you mean `hornbeam`?") !=
        std::string::npos);
}

TEST_CASE("the pith tells rings, sawing and bark side") {
    const auto part = [](const std::string& phrases) {
        const Result made = elaborate_text("piece \"t\"\n" + board + "part top\n  wood cherry\n" + phrases +
                                           "  runs across, from left to right, from front to back, from "
                                           "floor to top, face side up\n");
        REQUIRE(errors_in(made) == "");
        return made.piece.parts.front();
    };
    // Straight below the middle: flat sawn, bark up.
    const Part below = part("  pith 40 beyond bottom\n");
    CHECK(below.rings.in_degrees() == Approx(0).margin(1e-9));
    CHECK(below.sawn == wood::Sawn::flat);
    REQUIRE(below.bark);
    CHECK((below.bark->axis == 2 && below.bark->high == (below.frame.z.z > 0)));
    // Beside an edge: quarter sawn, bark on the far edge.
    const Part beside = part("  pith 100 beyond front\n");
    CHECK(std::abs(beside.rings.in_degrees()) == Approx(90));
    CHECK(beside.sawn == wood::Sawn::quarter);
    CHECK(beside.bark->axis == 1);
    // By hand: the middle is 50 behind the front and 10 above the bottom; the pith 30 below the bottom and 10
    // before the front, so it lies 40 below and 60 before the middle; rings at arctan(60 / 40).
    const Part askew = part("  pith 30 beyond bottom and 10 beyond front\n");
    CHECK(std::abs(askew.rings.in_degrees()) == Approx(56.30993).margin(1e-4));
    CHECK(askew.sawn == wood::Sawn::rift);
    // The other way round the same angle with the other sign.
    const Part mirrored = part("  pith 30 beyond bottom and 10 beyond back\n");
    CHECK(mirrored.rings.in_degrees() == Approx(-askew.rings.in_degrees()));
    // Inwards of an edge.
    CHECK(std::abs(part("  pith 30 beyond bottom and 20 from front\n").rings.in_degrees()) ==
          Approx(std::atan2(30.0, 40.0) * 180 / std::acos(-1.0)).margin(1e-4));
}

TEST_CASE("a pith that cannot lie there, or contradicts the rest, is an error") {
    const auto errors = [](const std::string& phrases) {
        return outcome("piece \"t\"\n" + board + "part top\n  wood cherry\n" + phrases +
                       "  runs across, from left to right, from front to back, from floor to top\n");
    };
    for (const std::string phrases :
         {"  pith 30 beyond left\n", "  pith 30 beyond bottom and 40 beyond top\n", "  pith 10 from bottom\n",
          "  quarter sawn, pith 40 beyond bottom\n", "  rings at 10 degrees, pith 40 beyond bottom\n",
          "  bark face down, pith 40 beyond bottom\n",
          "  glued up of 2 staves, pith 40 beyond bottom and 10 from front\n"}) {
        INFO(phrases << errors(phrases));
        CHECK(errors(phrases).find("[pith-elsewhere]") != std::string::npos);
    }
    CHECK(errors("  pith 4000 beyond bottom\n").find("[out-of-range]") != std::string::npos);
    CHECK(errors("  flat sawn, bark face up, pith 40 beyond bottom\n").find("part top") != std::string::npos);
    CHECK(errors("  glued up of 2 staves, pith 40 beyond bottom\n").find("part top") != std::string::npos);
}
