// `check` over folders and for other programs, `explain`, `start`.

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "checks/checks.hpp"
#include "program.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;

TEST_CASE("a folder is walked in the order of names, without hidden folders and links") {
    const Folder folder;
    folder.write("designs/b.fleck", broken);
    folder.write("designs/a/z.fleck", broken);
    folder.write("designs/.old/hidden.fleck", broken);
    folder.write("designs/readme.txt", "no text of ours");
    folder.write("designs/c.fleck", board);
    folder.write("elsewhere/d.fleck", broken);
    fs::create_symlink("../elsewhere", folder / "designs/link");
    const Ran ran = folder.run("check designs --brief");
    INFO(ran.err);
    CHECK(ran.status == 2);
    CHECK(ran.err.find("designs/a/z.fleck:2:1") < ran.err.find("designs/b.fleck:2:1"));
    CHECK(!holds(ran.err, "hidden"));
    CHECK(!holds(ran.err, "d.fleck:"));
    CHECK(holds(ran.err, "3 texts: 4 errors\n"));
}

TEST_CASE("shop files and recipes are no pieces, but their errors are told, once") {
    const Folder folder;
    folder.write("designs/shop.fleck", "shop file \"Hollow Lane Workshop\"\nsheet A3\n");
    folder.write("designs/board.fleck", std::string(board) + "shop \"shop.fleck\"\n");
    const Ran sound = folder.run("check designs");
    INFO(sound.err);
    CHECK(sound.status == 0);
    CHECK(holds(sound.err, "2 texts: nothing found\n"));
    folder.write("designs/shop.fleck", "shop file \"Hollow Lane Workshop\"\nshet A3\n");
    const Ran wrong = folder.run("check designs --brief");
    INFO(wrong.err);
    CHECK(wrong.status == 2);
    CHECK(holds(wrong.err, "designs/shop.fleck:2:1: error: "));
    CHECK(holds(wrong.err, "2 texts: 1 error\n"));
}

TEST_CASE("findings as JSON, alone on standard output") {
    const Folder folder;
    folder.write("overlap.fleck", overlapping);
    folder.write("broken.fleck", broken);
    const Ran ran = folder.run("check overlap.fleck broken.fleck nowhere.fleck --format json");
    CHECK(ran.status == 3);
    const auto json = nlohmann::json::parse(ran.out);
    CHECK(json.at("schema") == 1);
    REQUIRE(json.at("texts").size() == 3);
    const auto& overlap = json.at("texts").at(0);
    CHECK(overlap.at("title") == "Overlap");
    const auto& finding = overlap.at("findings").at(0);
    CHECK(finding.at("name") == "overlapping-parts");
    CHECK(finding.at("severity") == "fault");
    CHECK(finding.at("place").at("file") == "overlap.fleck");
    CHECK(finding.at("place").at("line").get<int>() >= 4);
    CHECK(json.at("texts").at(1).at("findings").size() == 2);
    CHECK(json.at("texts").at(2).at("unreadable") == "No such file or directory");
    CHECK(json.at("counts").at("errors") == 2);
    CHECK(json.at("counts").at("unreadable") == 1);
}

TEST_CASE("every check is listed and explained") {
    const Folder folder;
    const Ran list = folder.run("explain");
    CHECK(list.status == 0);
    for (const checks::Check& check : checks::all()) {
        INFO(check.name);
        CHECK(holds(list.out, std::string(check.name) + " "));
        const Ran one = folder.run("explain " + std::string(check.name));
        CHECK(one.status == 0);
        CHECK(holds(one.out, "Why it matters"));
        CHECK(holds(one.out, "How to mend it"));
        CHECK(holds(one.out, "accept " + std::string(check.name) + " because"));
    }
}

TEST_CASE("the piece to begin from compiles without a finding and is never overwritten") {
    const Folder folder;
    CHECK(folder.run("start low-stool").status == 0);
    const Ran ran = folder.run("check low-stool.fleck --fail-on note");
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(holds(ran.err, "1 text: nothing found"));
    CHECK(holds(bytes_of(folder / "low-stool.fleck"), "piece \"Low stool\""));
    folder.write("low-stool.fleck", "mine");
    const Ran again = folder.run("start low-stool.fleck");
    CHECK(again.status == 3);
    CHECK(holds(again.err, "it is there already"));
    CHECK(bytes_of(folder / "low-stool.fleck") == "mine");
}
