// Laps, bridles, notches, dovetails, fingers and miters: what each part loses, worked out by hand.
//
// In every joint that fits, both parts together fill exactly the space that their bodies take up together;
// nothing clashes and nothing is missing.

#include <cmath>

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;
using rayfleck::measure::Length;

namespace {

std::string board(const std::string& name, const std::string& phrases) {
    return "part " + name + "\n  wood cherry, flat sawn\n  " + phrases + "\n";
}

} // namespace

TEST_CASE("a cross lap takes half of each") {
    const auto built = build_case(
        board("one", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 100, front at 0") +
        board("two", "size 20 x 60, stands, face side front, from 0 to 400, left at 100, front at 0") +
        "join one to two with cross lap\n");
    REQUIRE(built->sound());
    CHECK(built->volume("one") == Approx(20 * 60 * 400 - 60 * 60 * 10).epsilon(1e-6));
    CHECK(built->volume("two") == Approx(20 * 60 * 400 - 60 * 60 * 10).epsilon(1e-6));
    CHECK(built->clashes() == 0);
    CHECK(built->size("lap depth") == 10);
    // The lap's face, and two cheeks of 60 x 10 on either part.
    CHECK(built->area("one", "two", Hold::glued) == Approx(60 * 60 + 4 * 60 * 10).epsilon(1e-6));
}

TEST_CASE("a cross lap of parts that cross at a slant takes a rhombus from each") {
    // Both 20 x 60; the brace rises 300 in 400 (3-4-5), so its lap along the rail is 60 / sin = 60 * 5 / 3.
    const auto built = build_case(
        board("rail",
              "size 20 x 60, runs across, face side front, from 0 to 800, bottom at 270, front at 0") +
        board("brace", "size 20 x 60, face side front, from point (0, 10, 0) to point (800, 10, 600)") +
        "join rail to brace with cross lap\n");
    REQUIRE(built->sound());
    const double rhombus = 60 * 60 * 5.0 / 3;
    CHECK(built->volume("rail") == Approx(20 * 60 * 800 - rhombus * 10).epsilon(1e-6));
    CHECK(built->volume("brace") == Approx(20 * 60 * 1000 - rhombus * 10).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a half lap grows the end across the other part") {
    const auto built = build_case(
        board("rail",
              "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 100, front at 0") +
        board("post", "size 20 x 50, stands, face side front, from 0 to 100, left at 300, front at 0") +
        "join post to rail with half lap\n");
    REQUIRE(built->sound());
    CHECK(built->made("post").length == Length::mm(160));
    CHECK(built->volume("post") == Approx(20 * 50 * 100 + 10 * 50 * 60).epsilon(1e-6));
    CHECK(built->volume("rail") == Approx(20 * 60 * 400 - 10 * 50 * 60).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a half lap at a corner where both run full") {
    const auto built = build_case(
        board("rail", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 0, front at 0") +
        board("post", "size 20 x 50, stands, face side front, from 0 to 300, left at 0, front at 0") +
        "join rail to post with half lap\n");
    REQUIRE(built->sound());
    CHECK(built->all_volume() == Approx(20 * (60 * 400 + 50 * 300 - 60 * 50)).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a bridle at a corner is a tongue in a fork") {
    const auto built = build_case(
        board("stile", "size 24 x 60, stands, face side front, from 0 to 400, left at 0, front at 0") +
        board("rail", "size 24 x 50, runs across, face side front, from 60 to 400, top at 400, front at 0") +
        "join rail to stile with bridle\n");
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(24 * 50 * 340 + 8 * 50 * 60).epsilon(1e-6));
    CHECK(built->volume("stile") == Approx(24 * 60 * 400 - 8 * 50 * 60).epsilon(1e-6));
    CHECK(built->size("tongue thickness") == 8);
    CHECK(built->clashes() == 0);
}

TEST_CASE("a bridle along a part is a fork astride it") {
    const auto built = build_case(
        board("rail",
              "size 24 x 60, runs across, face side front, from 0 to 400, bottom at 300, front at 0") +
        board("leg", "size 24 x 40, stands, face side front, from 0 to 300, left at 100, front at 0") +
        "join leg to rail with bridle\n");
    REQUIRE(built->sound());
    CHECK(built->made("leg").length == Length::mm(360));
    CHECK(built->volume("leg") == Approx(24 * 40 * 300 + 2 * 8 * 40 * 60).epsilon(1e-6));
    CHECK(built->volume("rail") == Approx(24 * 60 * 400 - 2 * 8 * 40 * 60).epsilon(1e-6));
    CHECK(built->model.joints[0].kind == "bridle, astride");
    CHECK(built->clashes() == 0);
}

TEST_CASE("a notch takes what both share from the part that sits over the other") {
    const auto built = build_case(
        board("ledger", "size 30 x 30, runs across, from 0 to 400, bottom at 0, front at 100") +
        board("bearer", "size 25 x 50, runs deep, face side left, from 0 to 300, bottom at 20, left at 100") +
        "join bearer to ledger with notch over\n");
    REQUIRE(built->sound());
    CHECK(built->volume("ledger") == Approx(30 * 30 * 400).epsilon(1e-9));
    CHECK(built->volume("bearer") == Approx(25 * 50 * 300 - 25 * 30 * 10).epsilon(1e-6));
    CHECK(built->size("notch depth") == Approx(10));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a loose notch bears on its seat and does not touch at the sides") {
    const auto built = build_case(
        board("ledger", "size 30 x 30, runs across, from 0 to 400, bottom at 0, front at 100") +
        board("bearer", "size 25 x 50, runs deep, face side left, from 0 to 300, bottom at 20, left at 100") +
        "join bearer to ledger with notch over, gap 1\n");
    CHECK(built->area("bearer", "ledger", Hold::free) == Approx(25 * 30).epsilon(1e-6));
    CHECK(built->area("bearer", "ledger", Hold::glued) == 0);
}

namespace {

/// A side 12 x 120 that stops at the back of a front 20 thick; the front covers its end.
const std::string drawer_corner =
    board("front", "size 20 x 120, runs across, face side front, from 0 to 400, bottom at 0, front at 0") +
    board("side", "size 12 x 120, runs deep, face side left, from 20 to 300, bottom at 0, left at 0");

} // namespace

TEST_CASE("half-blind tails stop short of the front's face") {
    const auto built = build_case(drawer_corner + "join side to front with half-blind dovetail, 3 tails\n");
    REQUIRE(built->sound());
    // Tails 2/3 of 20 long; half way up a tail is 2/3 of the pitch of 40.
    const double tails = 3 * 40 * 2 / 3.0 * (40 / 3.0) * 12;
    CHECK(built->volume("side") == Approx(12 * 120 * 280 + tails).epsilon(1e-6));
    CHECK(built->volume("front") == Approx(20 * 120 * 400 - tails).epsilon(1e-6));
    CHECK(built->made("side").length.value() == Approx(280 + 40 / 3.0));
    CHECK(built->size("slope: 1 in") == 8);
    CHECK(built->clashes() == 0);
    // Tails drop in sideways, away from the front's end.
    CHECK(built->model.joints[0].assembly == rayfleck::measure::Vector{1, 0, 0});
}

TEST_CASE("through dovetails fill the corner however the bodies were placed") {
    const std::string tail = "join side to front with dovetail, 4 tails\n";
    const std::string stops = build_case(drawer_corner + tail)->model.joints.empty() ? "" : "made";
    REQUIRE(stops == "made");
    // The side stops at the front; the front stops at the side; both run full.
    const std::string fronts[] = {"from 0 to 400", "from 12 to 400", "from 0 to 400"};
    const std::string sides[] = {"from 20 to 300", "from 0 to 300", "from 0 to 300"};
    for (int i = 0; i < 3; ++i) {
        const auto built = build_case(board("front", "size 20 x 120, runs across, face side front, " +
                                                         fronts[i] + ", bottom at 0, front at 0") +
                                      board("side", "size 12 x 120, runs deep, face side left, " + sides[i] +
                                                        ", bottom at 0, left at 0") +
                                      tail);
        INFO(i << "\n" << built->said());
        REQUIRE(built->sound());
        CHECK(built->made("front").length == Length::mm(400));
        CHECK(built->made("side").length == Length::mm(300));
        // The corner 20 x 12 x 120 is shared two to one in the middle of its depth.
        CHECK(built->volume("side") == Approx(12 * 120 * 280 + 20 * 12 * 120 * 2 / 3.0).epsilon(1e-6));
        CHECK(built->all_volume() == Approx(12 * 120 * 280 + 20 * 120 * 400).epsilon(1e-6));
        CHECK(built->clashes() == 0);
    }
}

TEST_CASE("the slope of a tail is as stated, its cheeks glued") {
    const auto built = build_case(drawer_corner + "join side to front with dovetail, 2 tails, slope 1:6\n");
    REQUIRE(built->sound());
    CHECK(built->size("slope: 1 in") == 6);
    // Four slanting cheeks, each as long as the hypotenuse of 20 along and 20/6 across, 12 thick.
    double slanting = 0;
    for (const Contact* contact : built->contacts("side", "front"))
        if (std::abs(contact->plane.normal.z) > 0.9) slanting += contact->area;
    CHECK(slanting == Approx(4 * 12 * std::hypot(20, 20 / 6.0)).epsilon(1e-6));
}

TEST_CASE("tails too many for the board are refused") {
    const auto built = build_case(drawer_corner + "join side to front with dovetail, 40 tails\n");
    CHECK(built->said().find("dovetails-have-no-room") != std::string::npos);
}

TEST_CASE("finger joints share the corner evenly") {
    const auto built = build_case(
        board("a", "size 12 x 84, runs deep, face side left, from 0 to 300, bottom at 0, left at 0") +
        board("b", "size 12 x 84, runs across, face side front, from 0 to 300, bottom at 0, front at 0") +
        "join a to b with finger joint\n");
    REQUIRE(built->sound());
    CHECK(built->size("fingers") == 7);
    CHECK(built->size("finger width") == Approx(12));
    // A has four fingers of seven, B three.
    CHECK(built->volume("a") == Approx(12 * 84 * 300 - 3 * 12 * 12 * 12).epsilon(1e-6));
    CHECK(built->volume("b") == Approx(12 * 84 * 300 - 4 * 12 * 12 * 12).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a miter halves a square corner") {
    for (const std::string& start : {std::string("from 0"), std::string("from 60")}) {
        const auto built = build_case(
            board("a", "size 20 x 60, runs across, face side front, " + start +
                           " to 400, bottom at 0, front at 0") +
            board("b", "size 20 x 60, stands, face side front, from 0 to 400, left at 0, front at 0") +
            "join a to b with miter\n");
        INFO(built->said());
        REQUIRE(built->sound());
        CHECK(built->volume("a") == Approx(20 * (60 * 400 - 60 * 60 / 2)).epsilon(1e-6));
        CHECK(built->volume("b") == Approx(20 * (60 * 400 - 60 * 60 / 2)).epsilon(1e-6));
        CHECK(built->made("a").length == Length::mm(400));
        CHECK(built->clashes() == 0);
        CHECK(built->area("a", "b", Hold::glued) == Approx(20 * 60 * std::sqrt(2)).epsilon(1e-6));
        const auto& cut = std::get<rayfleck::piece::PlaneCut>(built->made("a").cuts.back().shape);
        CHECK(cut.miter->in_degrees() == Approx(45));
        CHECK(cut.bevel->in_degrees() == Approx(0));
    }
}

TEST_CASE("a miter of unequal widths runs from corner to corner") {
    const auto built = build_case(
        board("a", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 0, front at 0") +
        board("b", "size 20 x 40, stands, face side front, from 0 to 400, left at 0, front at 0") +
        "join a to b with miter\n");
    REQUIRE(built->sound());
    CHECK(built->volume("a") == Approx(20 * (60 * 400 - 40 * 60 / 2)).epsilon(1e-6));
    CHECK(built->volume("b") == Approx(20 * (40 * 400 - 40 * 60 / 2)).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a case miter is a bevel, and a spline runs along it") {
    const auto built = build_case(
        board("top", "size 20 x 100, runs across, face side top, from 0 to 400, bottom at 480, front at 0") +
        board("side", "size 20 x 100, stands, face side left, from 0 to 500, left at 0, front at 0") +
        "join top to side with miter, spline 4\n");
    REQUIRE(built->sound());
    const auto& top = built->made("top");
    const auto miter =
        std::find_if(top.cuts.begin(), top.cuts.end(), [](const auto& cut) { return cut.word == "miter"; });
    const auto& cut = std::get<rayfleck::piece::PlaneCut>(miter->shape);
    CHECK(cut.miter->in_degrees() == Approx(0));
    CHECK(cut.bevel->in_degrees() == Approx(45));
    // Each part loses half of the slot: 4 thick, half the miter (20 sqrt 2 / 2) wide in all, 100 long.
    const double slot = 4 * 20 * std::sqrt(2) / 4 * 100;
    CHECK(built->volume("top") == Approx(100 * (20 * 400 - 200) - slot).epsilon(1e-6));
    CHECK(built->volume("side") == Approx(100 * (20 * 500 - 200) - slot).epsilon(1e-6));
    CHECK(built->model.hardware.at(0).name == "spline 4 x 14.1 x 100, grain across the miter");
}

TEST_CASE("keys are let into the outer corner") {
    const auto built = build_case(
        board("a", "size 20 x 60, runs across, face side front, from 0 to 400, bottom at 0, front at 0") +
        board("b", "size 20 x 60, stands, face side front, from 0 to 400, left at 0, front at 0") +
        "join a to b with miter, keys 2\n");
    REQUIRE(built->sound());
    // Each slot is a triangle of two thirds of the miter's height, on a right angle: height squared, 3 thick.
    const double height = 60 * std::sqrt(2) * 2 / 3;
    CHECK(built->all_volume() ==
          Approx(20 * (2 * 60 * 400 - 60 * 60) - 2 * 3 * height * height).epsilon(1e-6));
    CHECK(built->model.hardware.at(0).count == 2);
}

TEST_CASE("sides canted 15 degrees meet in a compound miter") {
    // For a box of four sides that lean s out of the upright: miter = atan(sin s), bevel = asin(cos s / sqrt
    // 2); plane trigonometry, s = 15 degrees: 14.511 and 43.080.
    const auto built = build_text(R"(piece "tray"
units mm
climate 6% to 12% moisture
rod across left 0, right 400
rod deep front 0, back 300
rod up floor 0, rim 120
part front, front and back
  wood cherry, flat sawn
  15 thick, 120 wide, runs across, face side outside, from 0 to 400, bottom at 0, front at 0, canted 15 degrees outside
part side, left and right
  wood cherry, flat sawn
  15 thick, 120 wide, runs deep, face side outside, from 0 to 300, bottom at 0, left at 0, canted 15 degrees outside
join side to front with miter
)");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->model.joints.size() == 4);
    CHECK(built->clashes() == 0);
    for (const Made& made : built->model.made)
        for (const auto& cut : made.cuts) {
            const auto& plane = std::get<rayfleck::piece::PlaneCut>(cut.shape);
            CHECK(plane.miter->in_degrees() == Approx(14.511).epsilon(1e-4));
            CHECK(plane.bevel->in_degrees() == Approx(43.080).epsilon(1e-4));
        }
}
