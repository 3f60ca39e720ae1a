// See: moisture of wood in air as in the handbook's Table 4-2, and climates made of it.

#include <catch2/catch.hpp>

#include "wood/moisture.hpp"

using namespace rayfleck::wood;

namespace {

struct CellOfTable {
    double fahrenheit, humidity_percent, emc;
};

double celsius(double fahrenheit) { return (fahrenheit - 32) / 1.8; }

} // namespace

// Wood Handbook 2010 and 2021, Table 4-2. 70 F at 40 and 65 % were read in a transcription, the others are
// from memory of the table; the table was computed from the same equation and rounded to 0.1, sometimes
// downwards.
TEST_CASE("equilibrium moisture agrees with the handbook's table") {
    const CellOfTable cells[] = {
        {30, 30, 6.3}, {30, 80, 16.5}, {50, 50, 9.5},  {70, 30, 6.2},   {70, 40, 7.7},
        {70, 50, 9.2}, {70, 65, 12.0}, {70, 80, 16.0}, {70, 95, 23.9},  {80, 60, 10.8},
        {90, 40, 7.4}, {90, 70, 12.6}, {100, 20, 4.2}, {110, 85, 16.6}, {120, 50, 8.2},
    };
    for (const CellOfTable& cell : cells) {
        CAPTURE(cell.fahrenheit, cell.humidity_percent);
        CHECK(emc(cell.humidity_percent / 100, celsius(cell.fahrenheit)).in_percent() ==
              Approx(cell.emc).margin(0.1));
    }
}

// A public encyclopedia page on the equation gives 8.4 % by its Fahrenheit form; both forms agree within
// 0.02.
TEST_CASE("equilibrium moisture of a drying kiln at 140 F and 55 % humidity") {
    CHECK(emc(0.55, celsius(140)).in_percent() == Approx(8.4).margin(0.05));
}

TEST_CASE("bone-dry air dries wood entirely, and humidity beyond its range counts as the nearer end") {
    CHECK(emc(0, 20).in_percent() == 0);
    CHECK(emc(-1, 20).in_percent() == 0);
    CHECK(emc(1, 20).in_percent() == emc(2, 20).in_percent());
    CHECK(emc(1, 20).in_percent() > 25);
}

TEST_CASE("a climate from humidity is ordered whatever way it is written") {
    const Climate one = climate_from_humidity(0.35, 0.60, 20), other = climate_from_humidity(0.60, 0.35, 20);
    CHECK(one.driest == other.driest);
    CHECK(one.dampest == other.dampest);
    CHECK(one.driest < one.dampest);
    CHECK(one.driest == emc(0.35, 20));
    CHECK(one.basis == "35 to 60 % humidity at 20 C");
    const Climate seasons = climate_from_seasons(0.65, 24, 0.30, 21);
    CHECK(seasons.driest == emc(0.30, 21));
    CHECK(seasons.dampest == emc(0.65, 24));
    CHECK(climate_from_moisture(Moisture::percent(12), Moisture::percent(6)).driest == Moisture::percent(6));
}

// Wood Handbook 2010, Table 13-2: interior woodwork.
TEST_CASE("regions give the handbook's moisture of interior woodwork") {
    REQUIRE(find_region("most of the United States") != nullptr);
    CHECK(find_region("Dry-Southwestern")->average.value == 6);
    CHECK(find_region("damp warm coastal")->climate().driest == Moisture::percent(8));
    CHECK(find_region("damp warm coastal")->climate().dampest == Moisture::percent(13));
    CHECK(find_region("desert") == find_region("dry southwestern"));
    CHECK(find_region("the moon") == nullptr);
    for (const Region& region : regions()) {
        CHECK(region.least.value < region.average.value);
        CHECK(region.average.value < region.greatest.value);
    }
}

// ICC 400, Table 304.
TEST_CASE("fibre saturation is 30 percent unless a better figure is known") {
    CHECK(fibre_saturation(*find("hard maple")).value == 30);
    CHECK(fibre_saturation(*find("western redcedar")).value == 18);
    CHECK(fibre_saturation(*find("loblolly pine")).value == 26);
    CHECK(fibre_saturation(*find("poplar")).value == 31);
}
