// Placement: what fixes a part, what is left open, what contradicts; which way it lies.
// Truth: hand calculation on the lines of the rods.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;

namespace {

const std::string rods =
    "piece \"t\"\nunits mm\n"
    "rod across  left 0, right 480\nrod deep  front 0, back 360\nrod up  floor 0, low 500, high 600\n";

/// The first two printed lines of the last part: its sizes and its frame.
std::string part_of(const std::string& text) {
    const std::string out = outcome(rods + text);
    const std::size_t at = out.rfind("part ");
    if (at == std::string::npos || out.find("rod across") == std::string::npos) return out;
    std::size_t end = out.find('\n', out.find('\n', at) + 1);
    return out.substr(at, end - at + 1);
}

std::string box(const std::string& phrases) {
    return part_of("part p\n  wood cherry, flat sawn\n  " + phrases + "\n");
}

} // namespace

TEST_CASE("two of low, high, middle and size fix a direction") {
    const std::string stand =
        "runs up, from floor to high, size 20 x 40, front at front + 5, face side front, ";
    const auto across = [&](const std::string& phrases) { return box(stand + phrases); };
    const std::string at_220 = "part p: 20 x 40 x 600, black cherry, flat sawn\n  at (260 25 0), x up, y "
                               "-across, z -deep, face edge +y\n";
    CHECK(across("left at 220") == at_220);
    CHECK(across("right at 260") == at_220);
    CHECK(across("centred across") == at_220);
    CHECK(across("centred across on 240") == at_220);
    CHECK(across("centred between 200 and right - 200") == at_220);
    CHECK(across("left at 220, right at 260") == at_220);
}

TEST_CASE("a contradiction names both phrases with their figures") {
    CHECK(box("runs up, from floor to high, size 20 x 40, front at front, face side front, left at left, "
              "right at 50") == "8: `p` cannot have its left at 0 mm, its right at 50 mm and its width 40 mm "
                                "(across) [contradiction]\n"
                                "  8: its left at 0 mm\n"
                                "  8: its right at 50 mm\n"
                                "  mend: leave one of them out, or change it to agree\n");
    CHECK(box("stands, size 20 x 40 x 600, front at front, left at left\n  bottom at floor\n  bottom at 4")
              .find("`p` cannot have its bottom at 0 mm and its bottom at 4 mm (up) [contradiction]") !=
          std::string::npos);
}

TEST_CASE("what is told twice alike is no contradiction") {
    CHECK(box("stands, size 20 x 40 x 600, front at front, left at left, from floor to high")
              .find("20 x 40 x 600") != std::string::npos);
}

TEST_CASE("what is left open is said with the remedy") {
    CHECK(box("stands, size 20 x 40, from floor to high, front at front") ==
          "6: nothing tells where `p` stands across [open-place]\n"
          "  8: tells its width 40 mm\n"
          "  mend: write `left at ...`, `right at ...`, `centred across`, or `from ... to ...`; or say which "
          "way the face side looks\n");
    CHECK(box("stands, 20 thick, face side front, from floor to high, front at front, left at left") ==
          "6: nothing tells how far `p` reaches across (its width) [open-size]\n"
          "  8: tells its left at 0 mm\n"
          "  mend: give its width, as in `size 60 wide`, or the lines it lies between, as in `from ... to "
          "...`\n");
    CHECK(box("size 20 x 20 x 100, left at left, front at front, bottom at floor") ==
          "6: it is not told which way the length of `p` runs [no-direction]\n"
          "  mend: the length goes with the grain: write `runs across`, `runs deep` or `stands`\n");
}

TEST_CASE("the length may be left unsaid when there is one reading only") {
    CHECK(box("size 20 x 20, left at left, front at front, from floor to high").find("20 x 20 x 600") !=
          std::string::npos);
}

TEST_CASE("the direction spanned by lines is the width, the other the thickness") {
    CHECK(box("20 thick, runs across, from left to right, from low to high, front at 4") ==
          "part p: 20 x 100 x 480, black cherry, flat sawn\n  at (0 24 500), x across, y up, z -deep, face "
          "edge +y\n");
    CHECK(box("20 thick, runs across, from left to right, from front to back, top at high") ==
          "part p: 20 x 360 x 480, black cherry, flat sawn\n  at (0 0 580), x across, y deep, z up, face "
          "edge -y\n");
}

TEST_CASE("spanned both ways, the shorter is the thickness") {
    CHECK(box("runs across, from left to right, from low to high, from front to 30").find("30 x 100 x 480") !=
          std::string::npos);
    CHECK(
        box("runs across, from left to right, from low to 530, from front to back").find("30 x 360 x 480") !=
        std::string::npos);
}

TEST_CASE("a span as long as the part is thick is its thickness") {
    CHECK(box("12 thick, 46 wide, runs across, from left to right, from floor to 12, front at front") ==
          "part p: 12 x 46 x 480, black cherry, flat sawn\n  at (0 0 0), x across, y deep, z up, face edge "
          "-y\n");
}

TEST_CASE("the face side is taken as told, and cannot look along the grain") {
    CHECK(box("20 thick, runs across, from left to right, from low to high, back at back, face side back") ==
          "part p: 20 x 100 x 480, black cherry, flat sawn\n  at (0 340 600), x across, y -up, z deep, face "
          "edge -y\n");
    CHECK(box("size 20 x 40, stands, from floor to high, front at front, left at left, face side top") ==
          "8: the face side of `p` cannot look along its length, which runs up [looks-along-grain]\n"
          "  mend: let it look left, right, front or back\n");
}

TEST_CASE("a wrong guess that contradicts says how to settle it") {
    // Guessed to look to the front: 40 wide up, which from 500 to 520 is not.
    CHECK(box("size 20 x 40, runs across, from left to right, top at 520, bottom at 500, front at front, "
              "back at 30")
              .find("[contradiction]") != std::string::npos);
    CHECK(box("size 20 x 40, runs across, from left to right, top at high, front at 0, back at 40")
              .find("cannot have its front at 0 mm") == std::string::npos);
}

TEST_CASE("parts are placed by other parts") {
    const std::string leg = "part leg, at each corner\n  wood cherry\n  size 38 x 38, stands, from floor to "
                            "high, left at left, front at front\n";
    const auto rail = [&](const std::string& phrases) {
        return part_of(leg + "part rail\n  wood cherry\n  20 thick, runs across, " + phrases + "\n");
    };
    CHECK(rail("between leg, from low to high, set back 4 from outside of leg") ==
          "part rail: 20 x 100 x 404, black cherry, flat sawn (not told)\n  at (38 24 500), x across, y up, "
          "z -deep, face edge +y\n");
    CHECK(rail("between leg at back-left and leg at back-right, from low to high, flush with back of leg at "
               "back-left") == "part rail: 20 x 100 x 404, black cherry, flat sawn (not told)\n  at (38 360 "
                               "500), x across, y up, z -deep, face edge +y\n");
    CHECK(rail("overhanging leg by 30 all round, over leg") ==
          "part rail: 20 x 420 x 540, black cherry, flat sawn (not told)\n  at (-30 -30 600), x across, y "
          "deep, z up, face edge -y\n");
    CHECK(rail("overhanging leg by 30 at left and right, front at front of leg, 100 wide, under leg") ==
          "part rail: 20 x 100 x 540, black cherry, flat sawn (not told)\n  at (-30 0 -20), x across, y "
          "deep, z up, face edge -y\n");
    CHECK(rail("from left of leg to right of leg at front-right, from low to high, centred on leg deep") ==
          "part rail: 20 x 100 x 480, black cherry, flat sawn (not told)\n  at (0 29 500), x across, y up, z "
          "-deep, face edge +y\n");
    CHECK(rail("between leg, 60 wide, front at inside of leg, bottom at thickness of leg")
              .find("at (38 38 38), x across, y deep, z up") != std::string::npos);
}

TEST_CASE("the gap between a part's own copies needs two of them") {
    CHECK(part_of("part leg\n  wood cherry\n  size 38 x 38, stands, from floor to high, left at left, front "
                  "at front\n"
                  "part rail\n  wood cherry\n  20 thick, runs across, between leg, from low to high, front "
                  "at front\n") ==
          "11: `leg` stands in one place only across, so nothing lies between [between-what]\n"
          "  mend: name both, as in `between leg and ...`\n");
    CHECK(part_of("part slat, row of 3 across spaced 100\n  wood cherry\n  size 20 x 38, stands, from floor "
                  "to high, left at left, front at front\n"
                  "part rail\n  wood cherry\n  20 thick, runs across, between slat, from low to high, front "
                  "at front\n")
              .find("`slat` stands in 3 places across [between-what]") != std::string::npos);
}

TEST_CASE("a circle of places is reported with the whole loop") {
    CHECK(part_of("part a\n  wood cherry\n  size 20 x 20 x 100, stands, bottom at floor, front at front, "
                  "left at right of b\n"
                  "part b\n  wood cherry\n  size 20 x 20 x 100, stands, bottom at floor, front at front, "
                  "left at right of a\n") ==
          "6: a across hangs on itself: a across → b across → a across [circle]\n"
          "  9: b across is asked for from here on\n"
          "  mend: give one of them a figure of its own\n");
}

TEST_CASE("one missing part is reported once, and nothing that follows from it") {
    CHECK(part_of("part rail\n  wood cherry\n  20 thick, runs across, between legg, from low to high, front "
                  "at front\n"
                  "part upper rail\n  wood cherry\n  20 thick, runs across, from left of rail to right of "
                  "rail, front at front, over rail, 50 wide\n"
                  "join upper rail to rail with glue\n")
              .find("there is no part `legg`") != std::string::npos);
}

TEST_CASE("stock gives the size where nothing else tells it") {
    // 2x4 dry: 1 1/2 by 3 1/2 in (DOC PS 20); 8/4 surfaced two sides: 1 3/4 in (NHLA).
    CHECK(box("stock 2x4, runs across, from left to right, front at front, top at high, face side front")
              .find("38.1 x 88.9 x 480") != std::string::npos);
    CHECK(box("stock 8/4, 60 wide, stands, from floor to high, front at front, left at left")
              .find("44.45 x 60 x 600") != std::string::npos);
    CHECK(box("stock 8/4, size 38 x 38, stands, from floor to high, front at front, left at left")
              .find("38 x 38 x 600, black cherry, flat sawn, stock 8/4") != std::string::npos);
    CHECK(box("stock 9/4, 60 wide, stands, from floor to high, front at front, left at left, 20 thick")
              .find("[unknown-stock]") != std::string::npos);
}
