// Parts that lean, and round ones: shoulders in the leaning face, round tenons, notches at a slant. Volumes
// by hand.
//
// The leg of these cases leans 1 in 4 (150 across in 600 up) and is 40 square. Its right-hand face at height
// z lies 20 / cos of the lean beyond its middle line: x = 100 + z/4 + 20 * sqrt(17) / 4.

#include <cmath>

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;
using rayfleck::measure::Length;

namespace {

std::string board(const std::string& name, const std::string& phrases) {
    return "part " + name + "\n  wood cherry, flat sawn\n  " + phrases + "\n";
}

const std::string leg =
    board("leg", "size 40 x 40, face side front, from point (100, 50, 0) to point (250, 50, 600)");
const double leg_body = 40 * 40 * std::hypot(150, 600);
double face_at(double z) { return 100 + z / 4 + 20 * std::sqrt(17.0) / 4; }

constexpr double pi = 3.14159265358979;

} // namespace

TEST_CASE("the shoulders of a rail lie in the leaning face of the leg") {
    for (const std::string& start : {std::string("from 165"), std::string("from 185")}) {
        const auto built = build_case(leg +
                                      board("rail", "20 thick, 60 wide, runs across, face side front, " +
                                                        start + " to 600, bottom at 200, front at 40") +
                                      "join rail to leg with mortise and tenon, 20 long\n");
        INFO(built->said());
        REQUIRE(built->sound());
        const double tenon = 6.0 * 48 * 20;
        CHECK(built->volume("rail") == Approx(20 * 60 * (600 - face_at(230)) + tenon).epsilon(1e-6));
        CHECK(built->volume("leg") == Approx(leg_body - tenon).epsilon(1e-6));
        CHECK(built->clashes() == 0);
        // Shoulder contact: the rail's section less the tenon's, as it lies in the slanting plane.
        double shoulder = 0;
        for (const Contact* contact : built->contacts("rail", "leg"))
            if (std::abs(contact->plane.normal.x) > 0.9 && std::abs(contact->plane.normal.x) < 0.999)
                shoulder += contact->area;
        CHECK(shoulder == Approx((20 * 60 - 6.0 * 48) * std::sqrt(17.0) / 4).epsilon(1e-6));
    }
}

TEST_CASE("a through tenon in a leaning leg is cut flush with its far face") {
    const auto built = build_case(
        leg +
        board(
            "rail",
            "20 thick, 60 wide, runs across, face side front, from 170 to 600, bottom at 200, front at 40") +
        "join rail to leg with mortise and tenon, through\n");
    REQUIRE(built->sound());
    const double through = 40 * std::sqrt(17.0) / 4; // level, across the leg
    CHECK(built->volume("rail") ==
          Approx(20 * 60 * (600 - face_at(230)) + 6.0 * 48 * through).epsilon(1e-6));
    CHECK(built->volume("leg") == Approx(leg_body - 6.0 * 48 * through).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a rail dowelled to a leaning leg is trimmed to its face") {
    const auto built = build_case(
        leg +
        board(
            "rail",
            "20 thick, 60 wide, runs across, face side front, from 170 to 600, bottom at 200, front at 40") +
        "join rail to leg with dowels, 2 dowels, 8 diameter, 20 deep\n");
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    // Each bore: 22 deep from the face (2 for the glue), in either part.
    const double bores = 2 * pi * 16 * 22;
    CHECK(built->volume("rail") == Approx(20 * 60 * (600 - face_at(230)) - bores).epsilon(1e-5));
    CHECK(built->volume("leg") == Approx(leg_body - bores).epsilon(1e-5));
    CHECK(built->model.hardware.at(0).name == "dowel 8 x 40");
    CHECK(built->model.hardware.at(0).count == 2);
}

TEST_CASE("screws hold a rail to a leaning leg") {
    const auto built = build_case(
        leg +
        board(
            "rail",
            "20 thick, 60 wide, runs across, face side front, from 170 to 600, bottom at 200, front at 40") +
        "join rail to leg with screws, 2 screws\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    CHECK(built->area("rail", "leg", Hold::fastened) > 1000);
}

TEST_CASE("a notch takes the shape of a leaning part") {
    const auto built = build_case(
        leg +
        board("rail",
              "20 thick, 60 wide, runs across, face side front, from 0 to 600, bottom at 200, front at 20") +
        "join rail to leg with notch over\n");
    REQUIRE(built->sound());
    // The rail's back half (y 30 to 40) meets the leg: 60 high, level across the leg.
    CHECK(built->volume("rail") == Approx(20 * 60 * 600 - 10 * 60 * 40 * std::sqrt(17.0) / 4).epsilon(1e-6));
    CHECK(built->volume("leg") == Approx(leg_body).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a bridle astride a leaning leg has its slot's bottom in the leg's face") {
    const auto built = build_case(
        leg +
        board(
            "rail",
            "40 thick, 60 wide, runs across, face side front, from 170 to 600, bottom at 200, front at 30") +
        "join rail to leg with bridle\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    const double cheeks = 2 * 40.0 / 3 * 60 * 40 * std::sqrt(17.0) / 4;
    CHECK(built->volume("rail") == Approx(40 * 60 * (600 - face_at(230)) + cheeks).epsilon(1e-6));
    CHECK(built->volume("leg") == Approx(leg_body - cheeks).epsilon(1e-6));
}

TEST_CASE("a turned stretcher has round tenons of two thirds") {
    const auto built =
        build_case(board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500") +
                   board("stretcher", "size 24 x 24, runs across, from 40 to 440, bottom at 200, front at "
                                      "8\n  turned\n    diameter 24 at 0\n    diameter 24 at 400") +
                   "join stretcher to post with mortise and tenon\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->size("tenon diameter") == Approx(16));
    CHECK(built->made("stretcher").length == Length::mm(435));
    CHECK(built->volume("stretcher") == Approx(pi * (144 * 400 + 64 * 35)).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(40 * 40 * 500 - pi * 64 * 35).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a square stretcher gets a round tenon when a diameter is stated") {
    const auto built = build_case(
        board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500") +
        board("stretcher", "size 24 x 24, runs across, from 40 to 440, bottom at 200, front at 8") +
        "join stretcher to post with mortise and tenon, 14 diameter, 25 long\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("stretcher") == Approx(24 * 24 * 400 + pi * 49 * 25).epsilon(1e-6));
    CHECK(built->volume("post") == Approx(40 * 40 * 500 - pi * 49 * 25).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}

TEST_CASE("a turned leg stands through a seat, leaning") {
    const auto built = build_case(
        board("seat", "size 32 x 300 x 400, runs across, from 0 to 400, front at 0, bottom at 400") +
        board("leg", "size 36 x 36, from point (60, 150, 0) to point (160, 150, 400), face side front\n  "
                     "turned\n    diameter 30 at 0\n    diameter 36 at 412.3") +
        "join leg to seat with mortise and tenon, through\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    // A bore of two thirds of 36, slanting through 32 of seat: its length is 32 * sqrt(17) / 4.
    CHECK(built->volume("seat") ==
          Approx(32 * 300 * 400 - pi * 144 * 32 * std::sqrt(17.0) / 4).epsilon(1e-6));
    // The tenon's end is flush with the seat.
    CHECK(built->made("leg").solid.volume < pi * 324 * 412.32 + pi * 144 * 40);
}

TEST_CASE("a baluster keeps its square blocks") {
    const auto built =
        build_case(board("post", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500\n  turned\n    "
                                 "diameter 30 at 100\n    diameter 30 at 400"));
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("post") == Approx(1600 * 200 + pi * 225 * 300).epsilon(1e-6));
}

TEST_CASE("a tapered leg is met at its taper") {
    // The leg tapers on its right-hand face from 40 at 400 to 20 at the floor: 1 in 20. The stretcher sits at
    // 100 to 140.
    const auto built = build_case(
        board("leg", "size 40 x 40, stands, left at 0, front at 0, from 0 to 500\n  taper right face to 20 "
                     "from 400 to 0") +
        board("stretcher",
              "20 thick, 40 wide, runs across, face side front, from 40 to 440, bottom at 100, front at 10") +
        "join stretcher to leg with mortise and tenon, 15 long\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->clashes() == 0);
    // Mid-height 120: the face is at 26, so the body grows by 14 and the tenon by 15 more.
    const double width = 40 - 2 * 6, tenon = 6.0 * width * 15;
    CHECK(built->volume("stretcher") == Approx(20 * 40 * (400 + 14) + tenon).epsilon(1e-6));
    CHECK(built->volume("leg") == Approx(40 * 40 * 500 - 20 * 400 / 2 * 40 - tenon).epsilon(1e-6));
}

TEST_CASE("a taper stops at the body's end and leaves the tenon alone") {
    // A leg that is thinner at the top, with a tenon into a seat above it.
    const auto built = build_case(
        board("seat", "size 30 x 200 x 200, runs across, from 0 to 200, front at 0, bottom at 400") +
        board("leg", "size 40 x 40, stands, left at 80, front at 80, from 0 to 400\n  taper left face to 30 "
                     "from 0 to 400") +
        "join leg to seat with mortise and tenon, 10 thick, 20 wide, 20 long\n");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("leg") == Approx(40 * 40 * 400 - 10 * 400 / 2 * 40 + 10 * 20 * 20).epsilon(1e-6));
    CHECK(built->volume("seat") == Approx(30 * 200 * 200 - 10 * 20 * 20).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}
