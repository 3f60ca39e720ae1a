// Glue, dowels, screws, buttons: what is bored, what is held, what may move, what has to be bought.

#include <cmath>

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;

namespace {

std::string board(const std::string& name, const std::string& phrases) {
    return "part " + name + "\n  wood cherry, flat sawn\n  " + phrases + "\n";
}

constexpr double pi = 3.14159265358979;

/// A top over a rail 20 thick, and the rail's inside towards the back.
const std::string top_and_rail =
    board("top", "size 20 x 400, runs across, face side top, from 0 to 500, bottom at 500, front at 0") +
    board("rail", "size 20 x 80, runs across, face side front, from 0 to 500, top at 500, front at 20");

/// A batten lies across a panel: long grain over cross grain.
const std::string panel_and_batten =
    board("panel", "size 20 x 400, runs across, face side top, from 0 to 600, bottom at 100, front at 0") +
    board("batten", "size 20 x 50, runs deep, face side bottom, from 0 to 400, top at 100, left at 100");

} // namespace

TEST_CASE("glue holds the whole patch and cuts nothing") {
    const auto built = build_case(panel_and_batten + "join batten to panel with glue\n");
    REQUIRE(built->sound());
    CHECK(built->area("batten", "panel", Hold::glued) == Approx(50 * 400).epsilon(1e-6));
    CHECK(built->made("panel").cuts.empty());
    CHECK(built->made("batten").cuts.empty());
}

TEST_CASE("glue at one side leaves the rest free") {
    const auto built = build_case(panel_and_batten + "join batten to panel with glue, glued at front\n");
    // A fifth of the reach from the front.
    CHECK(built->area("batten", "panel", Hold::glued) == Approx(50 * 80).epsilon(1e-6));
    CHECK(built->area("batten", "panel", Hold::free) == Approx(50 * 320).epsilon(1e-6));
}

TEST_CASE("dowels are bored into both parts and bought") {
    const auto built = build_case(
        board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500") +
        board("rail",
              "24 thick, 60 wide, runs across, face side front, from 40 to 440, bottom at 200, front at 8") +
        "join rail to post with dowels, 2 dowels, 20 deep\n");
    REQUIRE(built->sound());
    CHECK(built->size("dowel diameter") == 8);
    CHECK(built->from("dowel diameter").find("US Navy NAVEDTRA 14119") != std::string::npos);
    const double bores = 2 * pi * 16 * 22;
    CHECK(built->volume("rail") == Approx(24 * 60 * 400 - bores).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(40 * 40 * 500 - bores).epsilon(1e-6));
    REQUIRE(built->model.hardware.size() == 1);
    CHECK(built->model.hardware[0].name == "dowel 8 x 40");
    CHECK(built->model.hardware[0].count == 2);
    // The face less the two mouths.
    CHECK(built->area("rail", "post", Hold::glued) == Approx(24 * 60 - 2 * pi * 16).epsilon(1e-5));
}

TEST_CASE("screws go through the thinner part and say where they hold") {
    const auto built = build_case(
        board("rail", "size 40 x 60, runs across, face side front, from 0 to 500, bottom at 0, front at 20") +
        board("cleat",
              "size 20 x 30, runs across, face side front, from 0 to 500, bottom at 10, front at 0") +
        "join cleat to rail with screws, 3 screws\n");
    REQUIRE(built->sound());
    // Three times 20 would come out of the far face: 60 - 5.
    CHECK(built->size("screw length") == 55);
    CHECK(built->model.hardware.at(0).count == 3);
    const auto contacts = built->contacts("cleat", "rail");
    REQUIRE(contacts.size() == 1);
    CHECK(contacts[0]->hold == Hold::fastened);
    CHECK(contacts[0]->held_at.size() == 3);
    CHECK(contacts[0]->may_slide.empty());
    int through = 0;
    for (const auto& cut : built->made("cleat").cuts)
        if (cut.word == "clearance bore") ++through;
    CHECK(through == 3);
    CHECK(built->made("rail").cuts.at(0).word == "lead hole");
}

TEST_CASE("a stated screw is used and named") {
    const auto built = build_case(
        board("rail", "size 40 x 60, runs across, face side front, from 0 to 500, bottom at 0, front at 20") +
        board("cleat",
              "size 20 x 30, runs across, face side front, from 0 to 500, bottom at 10, front at 0") +
        "join cleat to rail with screws, \"5 x 50 countersunk\", 50 long, 5 diameter, every 100\n");
    REQUIRE(built->sound());
    CHECK(built->from("screw length") == "stated");
    CHECK(built->model.hardware.at(0).name == "screw 5 x 50 countersunk");
}

TEST_CASE("slots run the way in which the panel moves") {
    const auto built = build_case(panel_and_batten + "join batten to panel with slotted screws, 3 screws\n");
    INFO(built->said());
    REQUIRE(built->sound());
    const auto contacts = built->contacts("batten", "panel");
    REQUIRE(contacts.size() == 1);
    REQUIRE(contacts[0]->may_slide.size() == 1);
    // The panel is cherry, flat sawn, 400 wide: it moves across, which is along the batten.
    CHECK(std::abs(contacts[0]->may_slide[0].y) == Approx(1));
    CHECK(contacts[0]->room >= 1);
    int slots = 0;
    for (const auto& cut : built->made("batten").cuts)
        if (cut.word == "screw slot") ++slots;
    // The middle one of three is fixed.
    CHECK(slots == 2);
}

TEST_CASE("slots under a top run across the rail") {
    const auto built = build_case(
        board("top", "size 20 x 400, runs across, face side top, from 0 to 500, bottom at 500, front at 0") +
        board("cleat",
              "size 20 x 20, runs across, face side front, from 50 to 450, top at 500, front at 40") +
        "join cleat to top with slotted screws, 3 screws, gap 4\n");
    INFO(built->said());
    REQUIRE(built->sound());
    const auto contacts = built->contacts("cleat", "top");
    REQUIRE(contacts.size() == 1);
    CHECK(std::abs(contacts[0]->may_slide.at(0).y) == Approx(1));
    CHECK(contacts[0]->room == 4);
    int slots = 0;
    for (const auto& cut : built->made("cleat").cuts)
        if (cut.word == "screw slot") ++slots;
    CHECK(slots == 3);
}

TEST_CASE("buttons hold a top down and let it move") {
    const auto built = build_case(top_and_rail + "join top to rail with buttons, every 150\n");
    INFO(built->said());
    REQUIRE(built->sound());
    // Ends 60 in, so 380 between the outer ones: four buttons.
    CHECK(built->model.hardware.at(0).count == 4);
    const auto contacts = built->contacts("top", "rail");
    REQUIRE(contacts.size() == 1);
    CHECK(contacts[0]->hold == Hold::fastened);
    CHECK(contacts[0]->held_at.size() == 4);
    CHECK(contacts[0]->may_slide.size() == 2);
    CHECK(contacts[0]->room > 0);
    // Slots lie in the rail's inside (back) face: own z runs to the front, so they begin at z = 0.
    for (const auto& cut : built->made("rail").cuts) {
        const auto& box = std::get<rayfleck::piece::BoxCut>(cut.shape).box;
        CHECK(box.low.z == Approx(0).margin(1e-9));
        CHECK(box.high.z == Approx(10));
        CHECK(box.high.y == Approx(70)); // 10 below the top of 80
    }
}

TEST_CASE("screws between parts turned against each other lie where both lie over each other") {
    // A round top of 400 on a bar of 40 that lies on the diagonal and is longer than the top's box is wide.
    for (const std::string join :
         {"join top to bar with screws, 3 screws", "join bar to top with screws, 3 screws"}) {
        INFO(join);
        const auto built = build_case("part bar\n  wood cherry, flat sawn\n  size 20 x 40 x 560, runs "
                                      "across, face side top, centred across, "
                                      "centred deep, bottom at 480\n  turned 45 degrees\n"
                                      "part top\n  wood cherry, flat sawn\n  size 20 x 400 x 400, runs "
                                      "across, face side top, centred across, "
                                      "centred deep, bottom at 500\n  outline\n    start 0, 200\n    arc to "
                                      "400, 200 through 200, 0\n    arc "
                                      "to 0, 200 through 200, 400\n    close\n" +
                                      join + "\n");
        INFO(built->said());
        REQUIRE(built->sound());
        std::size_t held = 0;
        double farthest = 0;
        for (const Contact* contact : built->contacts("top", "bar"))
            for (const auto& p : contact->held_at) {
                ++held;
                CHECK(p.x - 500 == Approx(p.y - 500).margin(1e-6));
                farthest = std::max(farthest, std::hypot(p.x - 500, p.y - 500));
            }
        CHECK(held == 3);
        // 25 from the rim.
        CHECK(farthest == Approx(175).margin(0.1));
    }
}
