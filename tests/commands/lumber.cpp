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
    CHECK(holds(ran.out, "cut 1: square the left end"));
    CHECK(holds(ran.out, "no such plan costs less than"));
}

TEST_CASE("several pieces are planned as one lot, each blank told with its piece") {
    const Folder folder;
    const Ran ran =
        folder.run("lumber " + samples + "side-table.fleck " + samples + "tea-chest.fleck --effort 0");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(holds(ran.out, "birch plywood"));
}

TEST_CASE("the boards left are statements of a shop file") {
    const Folder folder;
    const Ran ran = folder.run("lumber " + samples + "side-table.fleck --inventory");
    INFO(ran.out << ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out.rfind("board ", 0) == 0);
    CHECK(!holds(ran.out, "To buy"));
}

TEST_CASE("a plan of nothing readable or of a broken text ends as compile does") {
    const Folder folder;
    CHECK(folder.run("lumber nothing.fleck").status == 3);
    CHECK(folder.run("lumber").status == 3);
    CHECK(folder.run("lumber " + samples + "side-table.fleck --effort -1").status == 3);
}
