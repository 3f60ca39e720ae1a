// Exit status and messages, as CI recipes and newcomers meet them. Statuses are those of the charter of the
// command line: 0 sound, 1 findings, 2 does not compile, 3 wrong usage or a failure around it.

#include <catch2/catch.hpp>

#include "program.hpp"

using namespace rayfleck::testing;

TEST_CASE("a sound text ends with 0, faults with 1, errors with 2, a missing file with 3") {
    const Folder folder;
    folder.write("board.fleck", board);
    folder.write("overlap.fleck", overlapping);
    folder.write("broken.fleck", broken);
    for (const std::string command : {"check ", "compile -o out "}) {
        INFO(command);
        const Ran sound = folder.run(command + "board.fleck");
        INFO(sound.err);
        CHECK(sound.status == 0);
        const Ran faulty = folder.run(command + "overlap.fleck");
        INFO(faulty.err);
        CHECK(faulty.status == 1);
        CHECK(folder.run(command + "broken.fleck").status == 2);
        CHECK(folder.run(command + "nowhere.fleck").status == 3);
    }
}

TEST_CASE("the failing level decides over findings and never over errors") {
    const Folder folder;
    folder.write("overlap.fleck", overlapping);
    folder.write("broken.fleck", broken);
    CHECK(folder.run("check overlap.fleck --fail-on fault").status == 1);
    CHECK(folder.run("check overlap.fleck --fail-on note").status == 1);
    CHECK(folder.run("check overlap.fleck --fail-on never").status == 0);
    CHECK(folder.run("check broken.fleck --fail-on never").status == 2);
}

TEST_CASE("of several texts the worst decides, and none stops the others") {
    const Folder folder;
    folder.write("a-broken.fleck", broken);
    folder.write("board.fleck", board);
    folder.write("overlap.fleck", overlapping);
    const Ran ran =
        folder.run("compile a-broken.fleck nowhere.fleck board.fleck overlap.fleck -o out --brief");
    CHECK(ran.status == 3);
    CHECK(fs::exists(folder / "out/board.pdf"));
    CHECK(fs::exists(folder / "out/overlap.pdf"));
    CHECK(!fs::exists(folder / "out/a-broken.pdf"));
    CHECK(holds(ran.err, "cannot read nowhere.fleck: No such file or directory"));
    CHECK(holds(ran.err, "a-broken.fleck does not compile, nothing written"));
}

TEST_CASE("every error has its place and its name, in one run") {
    const Folder folder;
    folder.write("broken.fleck", broken);
    const Ran ran = folder.run("check broken.fleck");
    INFO(ran.err);
    CHECK(holds(ran.err, "broken.fleck:2:1: error: "));
    CHECK(holds(ran.err, "broken.fleck:4:3: error: "));
    CHECK(holds(ran.err, "unitz mm\n"));
    CHECK(holds(ran.err, "1 text: 2 errors\n"));
    CHECK(ran.out.empty());
}

TEST_CASE("wrong usage ends with 3 and names what would be right") {
    const Folder folder;
    const auto says = [&](const std::string& words, const std::string& expected) {
        const Ran ran = folder.run(words);
        INFO(words << "\n" << ran.err);
        CHECK(ran.status == 3);
        CHECK(holds(ran.err, expected));
        CHECK(ran.out.empty());
    };
    says("", "Usage: rayfleck");
    says("comple x.fleck", "there is no command comple; the nearest is compile");
    says("x.fleck", "`rayfleck compile x.fleck` or `rayfleck check x.fleck`");
    says("compile", "FILE is required");
    says("compile x.fleck --fial-on note", "--fial-on does not belong here; the nearest is --fail-on");
    says("check x.fleck --fail-on fualt", "the nearest is fault");
    says("check x.fleck --format xml", "xml is none of json, text");
    says("explain short-gain", "there is no check named short-gain; the nearest is short-grain");
    says("explain nothing-of-the-sort", "`rayfleck explain` lists them all");
}

TEST_CASE("help and version are answers on standard output") {
    const Folder folder;
    for (const std::string words :
         {"--help", "compile --help", "check -h", "explain --help", "start --help"}) {
        INFO(words);
        const Ran ran = folder.run(words);
        CHECK(ran.status == 0);
        CHECK(holds(ran.out, "Usage: rayfleck"));
        CHECK(ran.err.empty());
    }
    CHECK(holds(folder.run("--help").out, "rayfleck compile stool.fleck -o out"));
    CHECK(folder.run("--version").out.rfind("rayfleck ", 0) == 0);
}

TEST_CASE("colour only when asked for or on a terminal") {
    const Folder folder;
    folder.write("broken.fleck", broken);
    const std::string escape = "\x1b[";
    CHECK(!holds(folder.run("check broken.fleck").err, escape));
    CHECK(holds(folder.run("check broken.fleck --color always").err, escape));
    CHECK(holds(folder.shell("CLICOLOR_FORCE=1 \"$R\" check broken.fleck").err, escape));
    CHECK(!holds(folder.shell("CLICOLOR_FORCE=1 NO_COLOR=1 \"$R\" check broken.fleck").err, escape));
    CHECK(holds(folder.shell("NO_COLOR=1 \"$R\" check broken.fleck --color=always").err, escape));
    CHECK(holds(folder.shell("NO_COLOR= FORCE_COLOR=1 \"$R\" check broken.fleck").err, escape));
}

TEST_CASE("a closed or full stream is noticed where it matters and never ends the program") {
    const Folder folder;
    folder.write("board.fleck", board);
    folder.write("overlap.fleck", overlapping);
    // The answer was asked for on standard output: losing it is a failure.
    CHECK(folder.shell("\"$R\" check board.fleck --format json >/dev/full").status == 3);
    CHECK(folder.shell("\"$R\" check board.fleck --format json >&-").status == 3);
    CHECK(folder.shell("\"$R\" explain >/dev/full").status == 3);
    // Messages can be lost, the status stays.
    CHECK(folder.shell("\"$R\" check overlap.fleck 2>/dev/full").status == 1);
    CHECK(folder.shell("\"$R\" check board.fleck 2>&-").status == 0);
    CHECK(folder.shell("\"$R\" check - <&-").status == 3);
    // A reader that has seen enough is no failure.
    CHECK(folder.shell("{ \"$R\" explain; echo $? >left; } | true; sleep 0.2; cat left").out == "0\n");
    // A file must not take the place of a closed stream and have messages written into it.
    const Ran ran = folder.shell("\"$R\" compile board.fleck -o out >&- 2>&- <&-");
    CHECK(ran.status == 0);
    CHECK(bytes_of(folder / "out/board.pdf").rfind("%PDF-", 0) == 0);
    CHECK(bytes_of(folder / "out/board.json").rfind("{", 0) == 0);
}
