// What build does as a whole: which copies are paired, what it says when they do not meet, order, print,
// contacts without a joint, parts that come apart.

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;

namespace {

std::string board(const std::string& name, const std::string& phrases) {
    return "part " + name + "\n  wood cherry, flat sawn\n  " + phrases + "\n";
}

const std::string table = R"(piece "table"
units mm
climate 6% to 12% moisture
rod across left 0, right 400
rod deep front 0, back 300
rod up floor 0, apron-low 400, apron-top 500
part leg, at each corner
  wood cherry, flat sawn
  size 40 x 40, stands, left at left, front at front, from floor to apron-top
part long apron, front and back
  wood cherry, flat sawn
  20 thick, runs across, face side outside, between leg, from apron-low to apron-top, set back 10 from outside of leg
part short apron like long apron, left and right
  runs deep
join long apron to leg with mortise and tenon, haunched
join short apron to leg with mortise and tenon, haunched
)";

} // namespace

TEST_CASE("only copies that meet are joined") {
    const auto built = build_text(table);
    INFO(built->said());
    REQUIRE(built->sound());
    // Each of four aprons meets two of four legs.
    CHECK(built->model.joints.size() == 8);
    CHECK(built->clashes() == 0);
    for (const Joint& joint : built->model.joints)
        CHECK(joint.wanted == (&joint - built->model.joints.data() < 4 ? 0 : 1));
}

TEST_CASE("a copy that meets nothing is told how far it is off") {
    const auto built = build_case(
        board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500") +
        board("rail",
              "20 thick, 60 wide, runs across, face side front, from 43 to 440, bottom at 200, front at 10") +
        "join rail to post with mortise and tenon\n");
    CHECK(built->said() ==
          "joint-does-not-meet: rail does not reach post: 3 mm are missing towards the left\n");
    CHECK(built->model.joints.empty());
    REQUIRE(built->findings.begin()->at.has_value());
}

TEST_CASE("the middle copies of a row may be held by another joint") {
    const auto seat = [](const std::string& joins, const std::string& side_at) {
        return build_case(
            board("front rail", "size 20 x 40 x 180, runs across, face side front, left at 0, bottom at 0, "
                                "front at 0") +
            board("back rail", "size 20 x 40 x 180, runs across, face side front, left at 0, bottom at 0, "
                               "front at 220") +
            board("slat, row of 3 across spaced 50",
                  "size 10 x 40, runs deep, face side top, left at 20, bottom at 0, from 20 to 220") +
            board("side", "size 20 x 40, runs deep, face side left, right at " + side_at +
                              ", bottom at 0, from 20 to 220") +
            joins);
    };
    const std::string by_ends = "join slat to front rail with glue\njoin slat to back rail with glue\n";
    const std::string by_sides = "join slat to side with glue\n";
    const auto held = seat(by_ends + by_sides, "20");
    CHECK(held->said() == "");
    CHECK(held->model.joints.size() == 7);
    CHECK(seat(by_sides, "20")->said() ==
          "joint-does-not-meet: slat at 2 does not reach side: 50 mm are missing towards the left\n"
          "joint-does-not-meet: slat at 3 does not reach side: 100 mm are missing towards the left\n");
    // Where no copy meets, the nearest was meant to.
    CHECK(seat(by_ends + by_sides, "18")->said().find("slat at 1 does not reach side: 2 mm are missing") !=
          std::string::npos);
}

TEST_CASE("parts that touch along a line only are told so") {
    const auto built = build_case(
        board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500") +
        board("rail",
              "20 thick, 60 wide, runs across, face side front, from 40 to 440, bottom at 200, front at 40") +
        "join rail to post with mortise and tenon\n");
    CHECK(built->said().find("touches post along a line only") != std::string::npos);
}

TEST_CASE("parts that only touch have a free contact without a joint") {
    const auto built = build_case(
        board("one", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 0, front at 0") +
        board("two", "size 20 x 60, runs across, face side front, from 0 to 300, bottom at 60, front at 0"));
    REQUIRE(built->model.contacts.size() == 1);
    CHECK(built->model.contacts[0].joint == -1);
    CHECK(built->model.contacts[0].hold == Hold::free);
    CHECK(built->model.contacts[0].area == Approx(20 * 300));
}

TEST_CASE("a part that its cuts part is reported") {
    const auto built = build_case(
        board("bar", "size 20 x 60, runs across, face side top, from 0 to 400, bottom at 0, front at 0") +
        board("beam",
              "size 40 x 100, runs deep, face side left, from 0 - 20 to 100, bottom at 0 - 20, left at 100") +
        "join bar to beam with notch over\n");
    CHECK(built->said() == "cut-in-two: the cuts part bar into 2 pieces\n");
}

TEST_CASE("cuts of the text come first, then the joints' in the order of the text") {
    const auto built = build_text(table + "join long apron to leg with glue\n");
    for (const Made& made : built->model.made) {
        int before = -1;
        for (const auto& cut : made.cuts) {
            CHECK(cut.joint >= before);
            before = cut.joint;
        }
        CHECK(made.tools.size() == made.tool_cut.size());
    }
}

TEST_CASE("stated hardware stands in the list") {
    const auto built = build_text(table + "hardware \"Glide\", 4 off, on leg\n");
    REQUIRE(built->model.hardware.size() == 1);
    CHECK(built->model.hardware[0].from == "stated");
    CHECK(built->model.hardware[0].count == 4);
}

TEST_CASE("the model prints blanks, cuts, joints and contacts") {
    const auto built = build_case(
        board("side", "size 21 x 300, stands, face side left, from 0 to 500, left at 0, front at 0") +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 21 to 500, bottom at 200, front at 0") +
        "join shelf to side with dado\n");
    CHECK(print(built->model) == "part side: blank 21 x 300 x 500, volume 3112200\n"
                                 "  dado: box 200..218 0..300 0..7 [joint 1]\n"
                                 "part shelf: blank 18 x 300 x 486, volume 2624400\n"
                                 "joint 1: shelf to side, dado, together along (-1 0 0)\n"
                                 "  dado depth 7 mm: 1/3 of the thickness of the piece that is cut; common "
                                 "practice, no published source\n"
                                 "  dado width 18 mm: as thick as the part that stands in it\n"
                                 "contact shelf on side (0 0 -1): 2100 mm2 glued [joint 1]\n"
                                 "contact shelf on side (0 0 1): 2100 mm2 glued [joint 1]\n"
                                 "contact shelf on side (-1 0 0): 5400 mm2 glued [joint 1]\n");
}

TEST_CASE("a second build gives the same model") {
    CHECK(print(build_text(table)->model) == print(build_text(table)->model));
}

TEST_CASE("joints that the parts' positions rule out are refused by name") {
    const std::string one =
        board("one", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 0, front at 0");
    const std::string below =
        board("two", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 60, front at 0");
    const auto said = [&](const std::string& kind) {
        return build_case(one + below + "join one to two with " + kind + "\n")->said();
    };
    CHECK(said("miter").find("no-corner-to-miter") != std::string::npos);
    CHECK(said("dovetail").find("corner-not-square") != std::string::npos);
    CHECK(said("finger joint").find("corner-not-square") != std::string::npos);
    CHECK(said("cross lap").find("lap-has-no-wood") ==
          std::string::npos); // one level: it laps along their length
    CHECK(said("notch over").find("notch-has-no-wood") != std::string::npos);
    CHECK(said("breadboard end").find("breadboard-needs-an-end") != std::string::npos);
    CHECK(said("bridle").find("bridle-needs-an-end") != std::string::npos);
    CHECK(said("glue").empty());
}
