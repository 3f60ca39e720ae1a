// Grooves, dados, rabbets, tongue and groove, breadboard ends, sliding dovetails: volumes by hand, and what
// may move.

#include <cmath>

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;
using rayfleck::measure::Length;

namespace {

std::string board(const std::string& name, const std::string& phrases) {
    return "part " + name + "\n  wood cherry, flat sawn\n  " + phrases + "\n";
}

const std::string door_rods =
    "piece \"door\"\nunits mm\nclimate 6% to 12% moisture\nrod across left 0, right 500\n"
    "rod deep front 0, back 21\nrod up bottom 0, top 600\n";

/// Stiles and rails 21 x 60, a panel 7 thick between them.
const std::string door = door_rods + R"(
part stile, left and right
  wood cherry, flat sawn
  size 21 x 60, stands, face side front, from bottom to top, left at left, front at front
part rail, top and bottom
  wood cherry, flat sawn
  size 21 x 60, runs across, face side front, between stile, bottom at bottom, front at front
part panel
  wood cherry, flat sawn
  7 thick, stands, face side front, from 60 to 540, left at 60, right at 440, front at 7
join rail to stile with mortise and tenon, haunched
join panel to stile with groove
join panel to rail with groove
)";

const std::string case_side =
    board("side", "size 21 x 300, stands, face side left, from 0 to 500, left at 0, front at 0");

} // namespace

TEST_CASE("a panel grows into its grooves on four sides, less the play") {
    const auto built = build_text(door);
    INFO(built->said());
    REQUIRE(built->sound());
    // Groove half of 21 deep, play 2: tongues of 8.5 on each side.
    CHECK(built->size("groove depth", 4) == Approx(10.5));
    CHECK(built->made("panel").length == Length::mm(497));
    CHECK(built->made("panel").width == Length::mm(397));
    CHECK(built->volume("panel") == Approx(7.0 * 497 * 397).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a panel may move in its grooves as far as the play") {
    const auto built = build_text(door);
    const auto contacts = built->contacts("panel", "stile at left");
    REQUIRE(contacts.size() == 2);
    for (const Contact* contact : contacts) {
        CHECK(contact->hold == Hold::free);
        CHECK(contact->room == 2);
        CHECK(contact->may_slide.size() == 2);
        CHECK(std::abs(contact->plane.normal.y) == Approx(1));
    }
}

TEST_CASE("the tenon beside a groove is clear of it and its haunch fills it") {
    const auto built = build_text(door);
    // Noyes: half of what the groove leaves of the rail's width.
    const double width = (60 - 10.5) / 2;
    CHECK(built->size("tenon width", 0) == Approx(width));
    CHECK(built->size("haunch length", 0) == Approx(10.5));
    // The rail: body, tenons 7 thick and 7/8 of 60 long, haunches, less its groove.
    const double tenons = 2 * 7 * width * 52.5, haunches = 2 * 7 * width * 10.5;
    CHECK(built->volume("rail at bottom") ==
          Approx(21 * 60 * 380 + tenons + haunches - 7 * 10.5 * 380).epsilon(1e-6));
    // The stile: mortises, haunch sockets, and the groove between the rails and 10.5 beyond.
    CHECK(built->volume("stile at left") ==
          Approx(21 * 60 * 600 - 2 * 7 * width * (52.5 + 10.5) - 7 * 10.5 * (480 + 2 * 10.5)).epsilon(1e-6));
}

TEST_CASE("a thick panel gets a tongue with shoulders set back by the play") {
    std::string text = door;
    text.replace(text.find("7 thick, stands"), 15, "15 thick, stands");
    text.replace(text.find("front at 7"), 10, "front at 3");
    const auto built = build_text(text);
    REQUIRE(built->sound());
    // A third of 21 is 7: the field keeps 15 up to 2 mm from the frame, the tongue has 7.
    CHECK(built->size("groove width", 4) == Approx(7));
    CHECK(built->volume("panel") == Approx(8.0 * 476 * 376 + 7.0 * 497 * 397).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("gap and depth of a groove are as stated") {
    std::string text = door;
    for (std::size_t at; (at = text.find("with groove\n")) != std::string::npos;)
        text.replace(at, 12, "with groove, 8 deep, gap 3\n");
    const auto built = build_text(text);
    REQUIRE(built->sound());
    CHECK(built->made("panel").width == Length::mm(390));
    CHECK(built->contacts("panel", "stile at left").at(0)->room == 3);
}

TEST_CASE("a panel glued at its middle is glued only there") {
    std::string text = door;
    text.replace(text.find("panel to rail with groove"), 25,
                 "panel to rail with groove, glued in the middle");
    const auto built = build_text(text);
    // A tenth of the reach to either side of the middle of the rail, at most 40: 2 cheeks 8.5 high.
    CHECK(built->area("panel", "rail at bottom", Hold::glued) == Approx(2 * 8.5 * 2 * 38).epsilon(0.06));
    CHECK(built->area("panel", "rail at bottom", Hold::free) > 4000);
}

TEST_CASE("a dado is a third deep and the shelf stands in it") {
    const auto built = build_case(
        case_side +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 21 to 500, bottom at 200, front at 0") +
        "join shelf to side with dado\n");
    REQUIRE(built->sound());
    CHECK(built->made("shelf").length == Length::mm(486));
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - 7 * 18 * 300).epsilon(1e-6));
    CHECK(built->volume("shelf") == Approx(18 * 300 * 486).epsilon(1e-6));
    CHECK(built->area("shelf", "side", Hold::glued) == Approx(300 * (18 + 2 * 7)).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a shelf placed into the side is not lengthened again") {
    const auto built = build_case(
        case_side +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 15 to 500, bottom at 200, front at 0") +
        "join shelf to side with dado\n");
    REQUIRE(built->sound());
    CHECK(built->made("shelf").length == Length::mm(485));
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - 6 * 18 * 300).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a stopped dado leaves a notch at the shelf's corner") {
    const auto built = build_case(
        case_side +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 21 to 500, bottom at 200, front at 0") +
        "join shelf to side with dado, stopped 20 from front\n");
    REQUIRE(built->sound());
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - 7 * 18 * 280).epsilon(1e-6));
    CHECK(built->volume("shelf") == Approx(18 * 300 * 486 - 7 * 18 * 20).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a dado thinner than the shelf leaves shoulders") {
    const auto built = build_case(
        case_side +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 21 to 500, bottom at 200, front at 0") +
        "join shelf to side with dado, 8 thick\n");
    REQUIRE(built->sound());
    CHECK(built->volume("shelf") == Approx(18 * 300 * 479 + 7 * 8 * 300).epsilon(1e-6));
    CHECK(built->all_volume() == Approx(21 * 300 * 500 + 18 * 300 * 479).epsilon(1e-6));
}

TEST_CASE("a narrow shelf has a short dado unless it goes through") {
    const std::string shelf = board(
        "shelf", "size 18 x 250, runs across, face side top, from 21 to 500, bottom at 200, back at 300");
    CHECK(build_case(case_side + shelf + "join shelf to side with dado\n")->volume("side") ==
          Approx(21 * 300 * 500 - 7 * 18 * 250).epsilon(1e-6));
    CHECK(build_case(case_side + shelf + "join shelf to side with dado, through\n")->volume("side") ==
          Approx(21 * 300 * 500 - 7 * 18 * 300).epsilon(1e-6));
}

TEST_CASE("a back lies in a rabbet that is open at the edge") {
    // The back stops at the side's inner face, flush with its back edge: the rabbet is half of 21 deep.
    const auto built = build_case(
        case_side +
        board("rear", "size 12 x 500, stands, face side front, from 0 to 500, left at 21, back at 300") +
        "join rear to side with rabbet\n");
    REQUIRE(built->sound());
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - 10.5 * 12 * 500).epsilon(1e-6));
    CHECK(built->made("rear").width == Length::mm(rayfleck::measure::Rational(1021, 2)));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a back placed 3 mm inside the edge still lies in an open rabbet") {
    const auto built = build_case(
        case_side +
        board("rear", "size 12 x 500, stands, face side front, from 0 to 500, left at 11, back at 297") +
        "join rear to side with rabbet\n");
    REQUIRE(built->sound());
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - 10 * 15 * 500).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("tongue and groove is a third thick, as long, and free") {
    const auto built = build_case(
        board("one", "size 18 x 100, stands, face side front, from 0 to 500, left at 0, front at 0") +
        board("two", "size 18 x 100, stands, face side front, from 0 to 500, left at 100, front at 0") +
        "join one to two with tongue and groove\n");
    REQUIRE(built->sound());
    CHECK(built->made("one").width == Length::mm(106));
    CHECK(built->volume("one") == Approx(18 * 100 * 500 + 6 * 6 * 500).epsilon(1e-6));
    CHECK(built->volume("two") == Approx(18 * 100 * 500 - 6 * 6 * 500).epsilon(1e-6));
    CHECK(built->area("one", "two", Hold::glued) == 0);
    CHECK(built->area("one", "two", Hold::free) == Approx(500 * (18 + 12)).epsilon(1e-6));
}

TEST_CASE("a breadboard end is glued in the middle and lets the panel move elsewhere") {
    const auto built = build_case(
        board("panel", "size 21 x 500, runs across, face side top, from 60 to 900, bottom at 0, front at 0") +
        board("clamp", "size 21 x 60, runs deep, face side top, from 0 to 500, bottom at 0, left at 0") +
        "join panel to clamp with breadboard end, gap 3\n");
    REQUIRE(built->sound());
    // Tongue 7 x 10.5, three tenons 60 wide that reach 40 in.
    CHECK(built->made("panel").length == Length::mm(880));
    CHECK(built->volume("panel") ==
          Approx(21 * 500 * 840 + 7 * 10.5 * 500 + 3 * 7 * 60 * 29.5).epsilon(1e-6));
    // The outer mortises are 3 longer at both ends.
    CHECK(built->volume("clamp") ==
          Approx(21 * 60 * 500 - 7 * 10.5 * 500 - 7 * 29.5 * (60 + 2 * 66)).epsilon(1e-6));
    CHECK(built->clashes() == 0);
    // Glued in the stretch of the middle tenon: its cheeks 60 x 40 on either side, and what lies square to
    // them there.
    double glued_cheeks = 0, free_cheeks = 0;
    for (const Contact* contact : built->contacts("panel", "clamp"))
        if (std::abs(contact->plane.normal.z) > 0.9)
            (contact->hold == Hold::glued ? glued_cheeks : free_cheeks) += contact->area;
    CHECK(glued_cheeks == Approx(2 * 60 * 40).epsilon(1e-6));
    CHECK(free_cheeks == Approx(2 * (440 * 10.5 + 2 * 60 * 29.5)).epsilon(1e-6));
    for (const Contact* contact : built->contacts("panel", "clamp"))
        if (contact->hold == Hold::free) {
            CHECK(contact->room == 3);
            REQUIRE(contact->may_slide.size() == 1);
            CHECK(std::abs(contact->may_slide[0].y) == Approx(1));
        }
}

TEST_CASE("a breadboard end may be named either way round") {
    const auto built = build_case(
        board("panel", "size 21 x 500, runs across, face side top, from 60 to 900, bottom at 0, front at 0") +
        board("clamp", "size 21 x 60, runs deep, face side top, from 0 to 500, bottom at 0, left at 0") +
        "join clamp to panel with breadboard end\n");
    REQUIRE(built->sound());
    CHECK(built->made("panel").length == Length::mm(880));
}

TEST_CASE("a sliding dovetail widens towards its end") {
    const auto built = build_case(
        case_side +
        board("shelf",
              "size 18 x 300, runs across, face side top, from 21 to 500, bottom at 200, front at 0") +
        "join shelf to side with sliding dovetail\n");
    REQUIRE(built->sound());
    // 7 deep, 18 at its end, 18 - 2 * 7/8 at its root.
    const double tail = 7 * (18 + 18 - 14.0 / 8) / 2 * 300;
    CHECK(built->volume("side") == Approx(21 * 300 * 500 - tail).epsilon(1e-6));
    CHECK(built->all_volume() == Approx(21 * 300 * 500 + 18 * 300 * 479).epsilon(1e-6));
    CHECK(built->clashes() == 0);
    CHECK(std::abs(built->model.joints[0].assembly.y) == Approx(1));
}

TEST_CASE("boards of one floor get a tongue on one edge and a groove on the other") {
    const auto built = build_case("part plank, row of 3 deep spaced 100\n  wood cherry\n  size 18 x 100 x "
                                  "400, runs across, face side top\n"
                                  "  left at 0, bottom at 0, front at 0\n"
                                  "join plank to plank with tongue and groove\n");
    REQUIRE(built->sound());
    CHECK(built->model.joints.size() == 2);
    // A tongue of a third, 6 × 6, is let into the next plank: together no more wood than three planks.
    CHECK(built->all_volume() == Approx(3.0 * 18 * 100 * 400).epsilon(1e-6));
    CHECK(built->made("plank at 2").width == Length::mm(106));
    CHECK(built->clashes() == 0);
}
