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

TEST_CASE("a question in words is answered in words") {
    const Folder folder;
    // Equilibrium moisture by Wood Handbook Eq 4-5 at 20 C: 7.0 % in 35 % humidity, 12.0 % in 65 %. Table
    // 13-5: 0.00248 and 0.00126 for 1 %; 300 mm flat sawn 3.8 mm, quarter sawn 1.9 mm (computed by hand from
    // the two).
    const Ran ran =
        folder.run("wood 'How much does a 300 mm flat-sawn cherry board move from 35 % to 65 %?'");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "black cherry, flat sawn, 300 mm wide, gets 3.7 mm wider"));
    CHECK(holds(ran.out, "quarter sawn 1.9 mm"));
    CHECK(holds(ran.out, "Wood Handbook 2010, Eq 13-2 and Table 13-5"));
    // Without quotes, with moisture, drying, and in inches: 12 in × 0.00353 × 4 = 0.169 in (hard maple).
    const Ran maple = folder.run("wood a hard maple top 12 in wide, flat sawn, from 10% to 6% moisture");
    INFO(maple.out << maple.err);
    CHECK(maple.status == 0);
    CHECK(holds(maple.out, "gets 0.169 in narrower"));
}

TEST_CASE("a question that lacks something is told what") {
    const Folder folder;
    CHECK(holds(folder.run("wood '300 mm oak from 35% to 65%'").err, "oak may mean"));
    CHECK(holds(folder.run("wood 'cherry from 35% to 65%'").err, "how wide is the board"));
    CHECK(holds(folder.run("wood 'cherry 300 mm from 35%'").err, "from which percentage to which"));
    CHECK(folder.run("wood 'cherry 300 mm from 35% to 165%'").status == 3);
    CHECK(folder.run("wood 'how wide is 300 mm'").status == 3);
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

TEST_CASE("a wood of the shop file is listed, told and asked for") {
    const Folder folder;
    folder.write("shop.fleck", "shop file \"s\"\nwood hornbeam, density 750 kg/m3, radial shrinkage 6.8 %, "
                               "tangential shrinkage 11.5 %\n");
    CHECK(holds(folder.run("wood --shop shop.fleck").out, "hornbeam"));
    const Ran one = folder.run("wood hornbeam --shop shop.fleck --width 1000 --from 8 --to 12");
    CHECK(holds(one.out, "11.5 % (the maker's own figure; not verified)"));
    CHECK(holds(one.out, "+16.75 mm")); // Eq 13-3: 4000 / (3000 / 11.5 - 30 + 8)
    CHECK(holds(folder.run("wood 'a 300 mm hornbeam board from 35% to 65%' --shop shop.fleck").out,
                "A board of hornbeam"));
    CHECK(folder.run("wood hornbeam").status == 3);
    CHECK(holds(folder.run("wood hornbean --shop shop.fleck").err, "the nearest is hornbeam"));
    CHECK(folder.run("wood --shop nothing.fleck").status == 3);
    folder.write("shop.fleck", "shop file \"s\"\nwood hornbeam, gravity 75\n");
    CHECK(holds(folder.run("wood --shop shop.fleck").err, "[out-of-range]"));
}
