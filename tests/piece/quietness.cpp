// One cause, one error: what follows from it, and what a broken line may have told, stays quiet. And no text,
// however large or wound up in itself, takes long.

#include <chrono>

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;

namespace {

std::size_t count_of(const std::string& text, const std::string& what) {
    std::size_t n = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
    return n;
}

const std::string rods = "piece \"t\"\nunits mm\nrod across  left 0, right 480\nrod deep  front 0, back "
                         "360\nrod up  floor 0, low 500, high 600\n";

} // namespace

TEST_CASE("an unknown value poisons without noise") {
    CHECK(outcome("piece \"t\"\nunits mm\nvalue size = leg-sise\nvalue leg-size = 38\nrod across  left 0, "
                  "right 20 * size\n"
                  "rod deep  front 0, back 360\nrod up  floor 0, high 600\n"
                  "part leg, at each corner\n  wood cherry\n  size size x size, stands, from floor to high, "
                  "left at left, front at front\n"
                  "part rail\n  wood cherry\n  20 thick, runs across, between leg, from 500 to high, front "
                  "at front\n"
                  "join rail to leg with mortise and tenon\nrequire right > 100 \"too small\"\n") ==
          "3: there is no value and no line `leg-sise` [unknown-name]\n  mend: did you mean `leg-size`?\n");
}

TEST_CASE("all errors come in one run, in the order of the text") {
    const std::string told = outcome(
        rods +
        "part a\n  wood chery\n  size 20 x 20, stands, from flor to high, left at left, front at front\n"
        "part b\n  size 20 x 20, stands, from floor to high, left at left, front at front\n"
        "join a to c with dado\n");
    CHECK(count_of(told, "[") == 4);
    CHECK(told.find("flor") < told.find("[no-wood]"));
    CHECK(told.find("[no-wood]") < told.find("`c`"));
}

TEST_CASE("a broken rod line may have told the missing name") {
    const std::string told = outcome(
        "piece \"t\"\nunits mm\nrod across  left 0, right 480, seam ==\n"
        "rod deep  front 0, back 360\nrod up  floor 0, high 600\n"
        "part p\n  wood cherry\n  size 20 x 20, stands, from floor to high, left at seam, front at front\n");
    CHECK(count_of(told, "[") == 1);
}

TEST_CASE("a broken phrase may have told the place") {
    const std::string told = outcome(rods + "part p\n  wood cherry\n  size 20 x 20, stands, from floor to "
                                            "high, front at front\n  left att left\n");
    CHECK(count_of(told, "[") == 1);
}

TEST_CASE("a broken part statement hides no misspelt line") {
    const std::string told = outcome(rods + "part\n  wood cherry\npart p\n  wood cherry\n  size 20 x 20, "
                                            "stands, from flor to high, left at left, front at front\n"
                                            "join p to lost with dado\n");
    CHECK(told.find("did you mean `floor`?") != std::string::npos);
    CHECK(told.find("`lost`") == std::string::npos);
}

TEST_CASE("names twice are told with the first place") {
    CHECK(outcome(rods + "part p\n  wood cherry\n  size 20 x 20, stands, from floor to high, left at left, "
                         "front at front\npart p\n  wood cherry\n")
              .find("9: there are two parts `p` [name-twice]\n  6: the first\n") != std::string::npos);
    CHECK(outcome("piece \"t\"\nvalue a = 1\nvalue a = 2\n") ==
          "3: there are two values `a` [name-twice]\n  2: the first\n");
}

TEST_CASE("woods that are unknown or may mean several") {
    const auto told = [](const std::string& wood) {
        return outcome(rods + "part p\n  wood " + wood +
                       "\n  size 20 x 20, stands, from floor to high, left at left, front at front\n");
    };
    CHECK(told("wallnut").find("did you mean `walnut`?") != std::string::npos);
    CHECK(told("oak").find("`oak` may mean several woods [unknown-wood]") != std::string::npos);
}

TEST_CASE("bark looks only where faces and edges are") {
    const auto told = [](const std::string& bark) {
        return outcome(rods + "part p\n  wood cherry\n  " + bark +
                       "\n  20 thick, runs across, from left to right, from low to high, front at front\n");
    };
    CHECK(told("bark edge up").find("bark +y") != std::string::npos);
    CHECK(told("heart edge up").find("bark -y") != std::string::npos);
    CHECK(told("bark face front").find("bark +z") != std::string::npos);
    CHECK(told("bark face up").find("the bark face of `p` cannot look top: its faces look front and back") !=
          std::string::npos);
}

TEST_CASE("limits end in clear errors, and quickly") {
    const auto start = std::chrono::steady_clock::now();
    const std::string slat =
        "\n  wood cherry\n  size 1 x 1, stands, from floor to high, left at left, front at front\n";
    CHECK(outcome(rods + "part slat, row of 501 across spaced 2" + slat).find("more than 500 [too-many]") !=
          std::string::npos);
    CHECK(outcome(rods + "part slat, row of 500 across spaced 2, row of 500 deep spaced 2" + slat)
              .find("more than 2000 copies [too-many]") != std::string::npos);
    CHECK(outcome(rods + "recipe r\n  rod across  a 0, b 1\n  rod deep  c 0, d 1\n  rod up  g 0, h 1\n  part "
                         "p, row of 100 across spaced 1\n    wood cherry\n"
                         "    size 1 x 1, stands, from g to h, left at a, front at c, face side front\nmake "
                         "many from r, row of 400 across spaced 3\n")
              .find("more than 2000 parts [too-many]") != std::string::npos);
    std::string chain =
        rods +
        "part p0\n  wood cherry\n  size 1 x 1 x 1, stands, bottom at floor, left at left, front at front\n";
    for (int i = 1; i < 600; ++i)
        chain += "part p" + std::to_string(i) +
                 "\n  wood cherry\n  size 1 x 1 x 1, stands, bottom at floor, left at right of p" +
                 std::to_string(i - 1) + ", front at front\n";
    CHECK(count_of(outcome(chain), "part ") == 600);
    // The same chain asked for from its far end.
    std::string back = rods;
    for (int i = 600; i > 0; --i)
        back += "part p" + std::to_string(i) +
                "\n  wood cherry\n  size 1 x 1 x 1, stands, bottom at floor, left at right of p" +
                std::to_string(i - 1) + ", front at front\n";
    back +=
        "part p0\n  wood cherry\n  size 1 x 1 x 1, stands, bottom at floor, left at left, front at front\n";
    CHECK(outcome(back).find("[too-deep]") != std::string::npos);
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(20));
}

TEST_CASE("the same text gives the same piece") {
    const std::string text = rods + "part leg, at each corner\n  wood cherry\n  size 30 x 30, stands, from "
                                    "floor to high, left at left, front at front\n  splayed 8 degrees left\n";
    CHECK(outcome(text) == outcome(text));
}

TEST_CASE("an unknown stock is one error") {
    const std::string told = outcome(rods + "part board\n  wood cherry, stock 2x7, runs deep, from front to "
                                            "back, left at left, bottom at floor\n");
    CHECK(count_of(told, "[") == 1);
    CHECK(told.find("[unknown-stock]") != std::string::npos);
}

TEST_CASE("a phrase said twice names both places") {
    const auto told = [](const std::string& phrases) {
        return outcome(rods + "part p\n  from left to right, front at front, bottom at floor\n" + phrases);
    };
    CHECK(told("  wood cherry\n  wood teak\n  size 20 x 60, runs across\n") ==
          "9: the wood of `p` is told twice [said-twice]\n  8: the first time\n  mend: leave one of them "
          "out\n");
    CHECK(told("  wood cherry, size 20 x 60, runs across\n  30 thick\n") ==
          "9: the thickness of `p` is told twice [said-twice]\n  8: the first time\n  mend: leave one of "
          "them out\n");
    for (const std::string pair :
         {"flat sawn, quarter sawn", "bark face up, bark face down", "stock 8/4, stock 4/4",
          "grain at 10 degrees, grain at 20 degrees", "glued up of 2 staves, glued up of 3 staves",
          "face side front, face side back", "runs across"}) {
        INFO(pair);
        const std::string found = told("  wood cherry, size 20 x 60, runs across\n  " + pair + "\n");
        CHECK(count_of(found, "[") == 1);
        CHECK(found.find("[said-twice]") != std::string::npos);
    }
    // Face and edge, word and angle of the sawing are two things each; and `like` is answered, not repeated.
    CHECK(told("  wood cherry, flat sawn, rings at 20 degrees, size 20 x 60, runs across\n  face side front, "
               "face edge top\npart q like p\n  wood teak, front at front + 40\n")
              .find("said-twice") == std::string::npos);
}

TEST_CASE("an option of a joint said twice names both places") {
    const std::string parts =
        rods + "part leg, left and right\n  wood cherry, size 40 x 40, stands, from floor to high\n  left at "
               "left, front at front\npart rail\n  wood cherry, 20 thick, runs across, between leg, from low "
               "to high, front at front + 10\njoin rail to leg with mortise and tenon, ";
    CHECK(outcome(parts + "8 thick, 10 thick\n") ==
          "11: `thick` of this `mortise and tenon` is told twice [said-twice]\n  11: the first time\n  mend: "
          "leave one of them out, or write a joint of its own for the other\n");
    CHECK(outcome(parts + "glued, dry\n").find("[said-twice]") != std::string::npos);
    CHECK(outcome(parts + "8 thick, 40 wide\n").find("[") == std::string::npos);
}
