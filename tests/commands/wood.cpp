// `wood`: figures with their sources, and movement held against the Wood Handbook's own coefficients.

#include <catch2/catch.hpp>

#include "program.hpp"

using namespace rayfleck::testing;

TEST_CASE("the woods are listed, one is told with its sources") {
    const Folder folder;
    const Ran all = folder.run("wood");
    CHECK(all.status == 0);
    CHECK(holds(all.out, "black cherry"));
    CHECK(holds(all.out, "white oak"));
    const Ran one = folder.run("wood 'black cherry'");
    CHECK(one.status == 0);
    CHECK(holds(one.out, "Wood Handbook 2010, Table"));
}

TEST_CASE("movement is width by coefficient by change of moisture") {
    const Folder folder;
    // Black cherry, Wood Handbook Table 13-5: 0.00248 tangential, 0.00126 radial for 1 % of moisture;
    // 1000 mm from 6 to 14 %: 19.84 mm flat sawn, 10.08 mm quarter sawn.
    const Ran ran = folder.run("wood cherry --width 1000 --from 6 --to 14");
    INFO(ran.out);
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "+19.84 mm"));
    CHECK(holds(ran.out, "+10.08 mm"));
    CHECK(holds(folder.run("wood cherry --width 100cm --from 14 --to 6").out, "-19.84 mm"));
    CHECK(
        holds(folder.run("wood cherry --width 10in --from 6 --to 14").out, "+5.04 mm")); // 254 × 0.00248 × 8
}

TEST_CASE("a wood that is not known or not told apart ends with 3") {
    const Folder folder;
    const Ran oak = folder.run("wood oak");
    CHECK(oak.status == 3);
    CHECK(holds(oak.err, "white oak"));
    CHECK(holds(folder.run("wood chery").err, "the nearest is cherry"));
    CHECK(folder.run("wood cherry --width wide").status == 3);
    CHECK(folder.run("wood cherry --width -3").status == 3);
    CHECK(folder.run("wood cherry --width 1e308in").status == 3);
    CHECK(folder.run("wood cherry --from 300").status == 3);
}
