// `lumber`: the plan of one or several pieces as text, the boards left, and wrong usage.

#include <catch2/catch.hpp>

#include "program.hpp"

using namespace rayfleck::testing;

namespace {
const std::string samples = std::string(RAYFLECK_ROOT) + "/samples/";
}

TEST_CASE("the plan of a sample names what to buy, every cut, and the proved bound") {
    const Folder folder;
    const Ran ran = folder.run("lumber " + samples + "side-table.fleck");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "To buy"));
    CHECK(holds(ran.out, "square both ends, 25 mm off each"));
    CHECK(holds(ran.out, "set the fence to "));
    CHECK(holds(ran.out, "no such plan costs less than"));
}

TEST_CASE("several pieces are planned as one lot, each blank told with its piece") {
    const Folder folder;
    const Ran ran =
        folder.run("lumber " + samples + "side-table.fleck " + samples + "tea-chest.fleck --effort 0");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "birch plywood"));
    CHECK(holds(ran.out, "P1  Side table"));
    CHECK(holds(ran.out, "P2 1 "));
}

TEST_CASE("the plan of a lot is written as sheets, lists and pictures, and its rack plans the next lot") {
    const Folder folder;
    const std::string both = samples + "side-table.fleck " + samples + "tea-chest.fleck";
    const Ran ran = folder.run("lumber " + both + " --effort 0 -o out");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    for (const char* end : {".pdf", ".json", ".csv", "-hardware.csv", "-blanks.csv", "-purchases.csv",
                            "-steps.csv", "-rack.fleck", "-board-1.svg"}) {
        INFO(end);
        CHECK(folder.names("out").count(std::string("lumber") + end) == 1);
    }
    CHECK(holds(bytes_of(folder / "out/lumber.csv"), "piece,reference,name"));
    CHECK(holds(bytes_of(folder / "out/lumber-steps.csv"), "table saw"));
    CHECK(bytes_of(folder / "out/lumber-rack.fleck").rfind("# Boards on hand", 0) == 0);
    CHECK(folder.run("lumber " + samples + "side-table.fleck --inventory").out.rfind("# Boards on hand", 0) ==
          0);
    // A folder that cannot be made.
    CHECK(folder.run("lumber " + samples + "side-table.fleck -o out/lumber.csv/x").status == 3);
}

TEST_CASE("the boards left are statements of a shop file") {
    const Folder folder;
    const Ran ran = folder.run("lumber " + samples + "side-table.fleck --inventory");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out.rfind("# Boards on hand", 0) == 0);
    CHECK(holds(ran.out, "\nboard "));
    CHECK(!holds(ran.out, "To buy"));
}

TEST_CASE("a plan of nothing readable or of a broken text ends as compile does") {
    const Folder folder;
    CHECK(folder.run("lumber nothing.fleck").status == 3);
    CHECK(folder.run("lumber").status == 3);
    CHECK(folder.run("lumber " + samples + "side-table.fleck --effort -1").status == 3);
}
