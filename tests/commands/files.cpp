// What is read and what is written: only inside the folder of the text, and whole or not at all. A full disk
// is played by a limit on the size of files, a folder without leave to write by one that the system itself
// guards.

#include <catch2/catch.hpp>

#include "program.hpp"

using namespace rayfleck::testing;

TEST_CASE("one PDF, one CSV and one JSON per piece") {
    const Folder folder;
    folder.write("board.fleck", board);
    const Ran ran = folder.run("compile board.fleck -o out/deep");
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(folder.names("out/deep") == std::set<std::string>{"board.pdf", "board.csv", "board.json"});
    CHECK(holds(ran.err, "wrote out/deep/board.pdf\n"));
    CHECK(bytes_of(folder / "out/deep/board.csv").rfind("reference,name,count,", 0) == 0);
}

TEST_CASE("without a folder the files are written where the program runs") {
    const Folder folder;
    folder.write("designs/board.fleck", board);
    CHECK(folder.run("compile designs/board.fleck").status == 0);
    CHECK(folder.names().count("board.pdf") == 1);
    CHECK(folder.names("designs") == std::set<std::string>{"board.fleck"});
}

TEST_CASE("pictures are written on request") {
    const Folder folder;
    folder.write("board.fleck", board);
    CHECK(folder.run("compile board.fleck -o out --svg").status == 0);
    CHECK(holds(bytes_of(folder / "out/board-1.svg"), "<svg"));
}

TEST_CASE("the same text gives the same bytes, whenever and wherever") {
    const Folder folder;
    folder.write("board.fleck", board);
    folder.write("elsewhere/board.fleck", board);
    CHECK(folder.run("compile board.fleck -o one").status == 0);
    CHECK(
        folder.shell("cd elsewhere && TZ=Asia/Tokyo LC_ALL=C \"$R\" compile board.fleck -o ../two").status ==
        0);
    for (const std::string name : {"board.pdf", "board.csv", "board.json"}) {
        INFO(name);
        const std::string bytes = bytes_of(folder / ("one/" + name));
        CHECK(!bytes.empty());
        CHECK((bytes == bytes_of(folder / ("two/" + name)))); // in parentheses: not to be printed
    }
}

TEST_CASE("a table of sizes gives a PDF of each, --size that one alone") {
    const std::string sizes = R"(piece "Board"
units mm
climate 35% to 60% humidity at 20 C
sizes
  name  reach
  small 300
  tall  700
part board
  wood cherry, quarter sawn
  size 20 x 100 x reach, runs across, face side up, loose
  left at 0, front at 0, bottom at 0
)";
    const Folder folder;
    folder.write("board.fleck", sizes);
    const Ran all = folder.run("compile board.fleck -o all");
    INFO(all.err);
    CHECK(all.status == 0);
    CHECK(folder.names("all") == std::set<std::string>{"board-small.pdf", "board-small.csv",
                                                       "board-small.json", "board-tall.pdf", "board-tall.csv",
                                                       "board-tall.json"});
    CHECK(folder.run("compile board.fleck -o one --size tall").status == 0);
    CHECK(folder.names("one") ==
          std::set<std::string>{"board-tall.pdf", "board-tall.csv", "board-tall.json"});
    CHECK((bytes_of(folder / "one/board-tall.pdf") == bytes_of(folder / "all/board-tall.pdf")));
    const Ran unknown = folder.run("compile board.fleck -o none --size tal");
    INFO(unknown.err);
    CHECK(unknown.status == 2);
    CHECK(holds(unknown.err, "tall"));
    CHECK(!fs::exists(folder / "none"));
}

TEST_CASE("standard input is read from - and named after the title") {
    const Folder folder;
    folder.write("board.fleck", board);
    const Ran ran = folder.shell("\"$R\" compile - -o out <board.fleck");
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(folder.names("out").count("Board.pdf") == 1);
    CHECK(folder.shell("\"$R\" check - <board.fleck").status == 0);
    const Ran wrong = folder.shell("echo 'piece' | \"$R\" check -");
    CHECK(wrong.status == 2);
    CHECK(holds(wrong.err, "standard input:1:"));
}

TEST_CASE("a text that no longer compiles leaves its old files whole") {
    const Folder folder;
    folder.write("board.fleck", board);
    CHECK(folder.run("compile board.fleck -o out").status == 0);
    const std::string before = bytes_of(folder / "out/board.pdf");
    folder.write("board.fleck", broken);
    CHECK(folder.run("compile board.fleck -o out").status == 2);
    CHECK((bytes_of(folder / "out/board.pdf") == before));
}

TEST_CASE("a disk too full leaves old files whole and nothing half-written") {
    const Folder folder;
    folder.write("board.fleck", board);
    folder.write("out/board.pdf", "old");
    folder.write("out/board.csv", "old");
    // Blocks of 512 bytes in a POSIX shell, 1024 in some: the cut list fits, the PDF does not.
    const Ran ran = folder.shell("ulimit -f 2; \"$R\" compile board.fleck -o out");
    INFO(ran.err);
    CHECK(ran.status == 3);
    CHECK(holds(ran.err, "cannot write out/board.pdf: File too large"));
    CHECK(folder.names("out") == std::set<std::string>{"board.pdf", "board.csv"});
    CHECK(bytes_of(folder / "out/board.pdf") == "old");
    CHECK(bytes_of(folder / "out/board.csv") == "old");
}

TEST_CASE("a folder that cannot be written to is a failure in plain words") {
    const Folder folder;
    folder.write("board.fleck", board);
    folder.write("taken", "a file");
    const Ran file = folder.run("compile board.fleck -o taken");
    CHECK(file.status == 3);
    CHECK(holds(file.err, "taken is not a folder"));
    const Ran below = folder.run("compile board.fleck -o taken/out");
    CHECK(below.status == 3);
    CHECK(holds(below.err, "cannot make the folder taken/out"));
    CHECK(folder.run("compile board.fleck -o /proc/rayfleck").status == 3);
    fs::create_directories(folder / "out/board.json");
    const Ran name = folder.run("compile board.fleck -o out");
    CHECK(name.status == 3);
    CHECK(holds(name.err, "cannot write out/board.json: there is a folder of that name"));
    CHECK(folder.names("out") == std::set<std::string>{"board.json"});
}

TEST_CASE("a file replaced keeps its permissions, a new one has those of the shell") {
    const Folder folder;
    folder.write("board.fleck", board);
    CHECK(folder.shell("umask 027; \"$R\" compile board.fleck -o out -q").status == 0);
    CHECK(folder.shell("stat -c %a out/board.pdf").out == "640\n");
    CHECK(folder.shell("chmod 604 out/board.pdf; \"$R\" compile board.fleck -o out -q").status == 0);
    CHECK(folder.shell("stat -c %a out/board.pdf").out == "604\n");
}

TEST_CASE("two texts of one name do not overwrite each other in one run") {
    const Folder folder;
    folder.write("a/board.fleck", board);
    folder.write("b/board.fleck", board);
    const Ran ran = folder.run("compile a/board.fleck b/board.fleck -o out");
    CHECK(ran.status == 3);
    CHECK(holds(ran.err, "out/board.pdf would be written twice"));
}

TEST_CASE("nothing outside the folder of the text is read") {
    const Folder folder;
    folder.write("secret.fleck", "recipe stolen\n");
    const auto refused = [&](const std::string& line, const std::string& expected) {
        folder.write("designs/board.fleck", std::string(board) + line + "\n");
        const Ran ran = folder.run("check designs/board.fleck");
        INFO(line << "\n" << ran.err);
        CHECK(ran.status == 2);
        CHECK(holds(ran.err, expected));
        CHECK(holds(ran.err, "designs/board.fleck:8:"));
    };
    refused("bring in \"../secret.fleck\"", "\"../secret.fleck\" lies outside the folder of the piece");
    refused("shop \"../secret.fleck\"", "lies outside the folder of the piece");
    refused("bring in \"/etc/passwd\"", "lies outside the folder of the piece");
    fs::create_symlink("../secret.fleck", folder / "designs/link.fleck");
    refused("bring in \"link.fleck\"", "lies outside the folder of the piece");
    fs::create_symlink("..", folder / "designs/up");
    refused("bring in \"up/secret.fleck\"", "lies outside the folder of the piece");
    refused("bring in \"door.fleck\"", "there is no file \"door.fleck\" in the folder of the piece");
    refused("bring in \"bord.fleck\"", "write \"board.fleck\" if that is the file");
    folder.shell("mkfifo designs/pipe.fleck");
    refused("bring in \"pipe.fleck\"", "\"pipe.fleck\" cannot be read: is not an ordinary file");
    fs::create_directory(folder / "designs/kitchen");
    refused("bring in \"kitchen\"", "\"kitchen\" cannot be read: is a folder");
    refused("bring in \"board.fleck\"", "\"board.fleck\" leads back to itself");
}

TEST_CASE("a detour back to the same file is told once, with the way") {
    const Folder folder;
    folder.write("board.fleck", std::string(board) + "bring in \"a.fleck\"\n");
    folder.write("a.fleck", "bring in \"b.fleck\"\n");
    folder.write("b.fleck", "bring in \"a.fleck\"\n");
    const Ran ran = folder.run("check board.fleck");
    INFO(ran.err);
    CHECK(ran.status == 2);
    CHECK(holds(ran.err, "b.fleck:1:"));
    CHECK(holds(ran.err, "a.fleck → b.fleck → a.fleck"));
    CHECK(holds(ran.err, "1 text: 1 error\n"));
}

TEST_CASE("what is too large or no text is refused before it is read") {
    const Folder folder;
    CHECK(folder.run("check /dev/zero").status == 3);
    CHECK(holds(folder.run("check /dev/zero").err, "larger than 4 MiB"));
    fs::create_directory(folder / "empty");
    const Ran ran = folder.run("compile empty");
    CHECK(ran.status == 3);
    CHECK(holds(ran.err, "cannot read empty: is a folder"));
    const Ran none = folder.run("check empty");
    CHECK(none.status == 3);
    CHECK(holds(none.err, "there is no text (*.fleck) in empty"));
}
