// Shaping: edges, tapers, bores, turned stretches and mouldings round an outline, as volumes worked out by
// hand.
//
// A round-over of radius r takes (1 - pi/4) r² along its edge, a cove pi/4 r², a chamfer of c half of c².
// Where two chamfered edges of a face meet at a corner they share c³/3 (a pyramid on a square of c).

#include <cmath>

#include <catch2/catch.hpp>

#include "bench.hpp"

using namespace rayfleck::joinery;

namespace {

constexpr double pi = 3.14159265358979;

double volume_of(const std::string& phrases) {
    const auto built = build_case(
        "part bar\n  wood cherry, flat sawn\n  size 20 x 60, runs across, face side top, from 0 to 400, "
        "bottom at 0, front at 0\n  " +
        phrases + "\n");
    INFO(phrases << "\n" << built->said());
    REQUIRE(built->sound());
    return built->volume("bar");
}

constexpr double bar = 20 * 60 * 400;

} // namespace

TEST_CASE("edges lose their profile along their length") {
    CHECK(volume_of("chamfer 3 on long edges") == Approx(bar - 4 * 4.5 * 400).epsilon(1e-6));
    CHECK(volume_of("round over 5 on front top edge") == Approx(bar - (1 - pi / 4) * 25 * 400).epsilon(1e-6));
    CHECK(volume_of("mould cove 5 x 5 on front top edge") == Approx(bar - pi / 4 * 25 * 400).epsilon(1e-6));
    // Ovolo 8: fillets of 1, so a quarter round of 7 stays of the square.
    CHECK(volume_of("mould ovolo 8 x 8 on front top edge") ==
          Approx(bar - (64 - pi * 49 / 4) * 400).epsilon(1e-6));
    // Ogee 8: fillets of 1, a full and a hollow quarter of 3.5 that make up for each other: 2 squares of 3.5
    // stay.
    CHECK(volume_of("mould ogee 8 x 8 on front top edge") ==
          Approx(bar - (64 - 2 * 3.5 * 3.5) * 400).epsilon(1e-6));
    // Bead 6: a round of 5 (three quarters of it stand clear), 0.12 below both faces, with quirks behind it.
    const double quirk_square = 6 - 2.62;
    CHECK(volume_of("mould bead 6 x 6 on front top edge") ==
          Approx(bar - (36 - quirk_square * quirk_square - 0.75 * pi * 6.25) * 400).epsilon(1e-6));
}

TEST_CASE("chamfers all round a face are mitred at its corners") {
    CHECK(volume_of("chamfer 3 on top edges") == Approx(bar - 4.5 * 2 * (400 + 60) + 4 * 9).epsilon(1e-6));
}

TEST_CASE("a chamfer of two sizes goes further on the wider face") {
    CHECK(volume_of("chamfer 6 x 3 on long edges") == Approx(bar - 4 * 9 * 400).epsilon(1e-6));
}

TEST_CASE("tapers, bevels, bores and grooves") {
    CHECK(volume_of("taper front face to 40 from 0 to 400") == Approx(bar - 20 * 400 / 2 * 20).epsilon(1e-6));
    CHECK(volume_of("bore 10 through in top face at 100 and 30") == Approx(bar - pi * 25 * 20).epsilon(1e-6));
    CHECK(volume_of("bore 10 12 deep in top face at 100 and 30") == Approx(bar - pi * 25 * 12).epsilon(1e-6));
    CHECK(volume_of("groove 6 wide 8 deep in top face 10 from front") ==
          Approx(bar - 6 * 8 * 400).epsilon(1e-6));
}

TEST_CASE("a moulding follows an outline round its corners") {
    // Area of the L moved in by d: 30000 - 800 d + 4 d² (five corners out, one in); a chamfer of 5 takes the
    // sum of what is lost from 0 to 5: 800 * 25/2 - 4 * 125/3.
    const auto built = build_case(R"(part ell
  wood cherry, flat sawn
  size 20 x 200 x 200, runs across, face side top, from 0 to 200, front at 0, bottom at 0
  outline
    start 0, 0
    line to 200, 0
    line to 200, 100
    line to 100, 100
    line to 100, 200
    line to 0, 200
    close
  chamfer 5 on top edges
)");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("ell") == Approx(20 * 30000 - (800 * 12.5 - 4 * 125 / 3.0)).epsilon(1e-6));
}

TEST_CASE("a moulding follows a curve") {
    // A disc of radius 50: the chamfer of 4 is a ring of 8 mm² on a circle of radius 50 - 4/3 (Pappus).
    const auto built = build_case(R"(part disc
  wood cherry, flat sawn
  size 20 x 100 x 100, runs across, face side top, from 0 to 100, front at 0, bottom at 0
  outline
    start 100, 50
    arc to 0, 50 through 50, 100
    arc to 100, 50 through 50, 0
    close
  chamfer 4 on top edges
)");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("disc") == Approx(20 * pi * 2500 - 8 * 2 * pi * (50 - 4 / 3.0)).epsilon(2e-6));
}

TEST_CASE("a moulding on some sides of an outline runs out straight") {
    // A trapezium: the chamfer on its front edge only, 200 long between slanting ends, goes with their slant.
    const auto built = build_case(R"(part plate
  wood cherry, flat sawn
  size 20 x 100 x 200, runs across, face side top, from 0 to 200, front at 0, bottom at 0
  outline
    start 0, 0
    line to 200, 0
    line to 190, 100
    line to 10, 100
    close
  chamfer 5 on front top edge
)");
    INFO(built->said());
    REQUIRE(built->sound());
    // Triangle 12.5 along 200, narrowing by 2/10 of its depth: centroid 5/3 in.
    CHECK(built->volume("plate") == Approx(20 * 190 * 100 - 12.5 * (200 - 0.2 * 5 / 3)).epsilon(1e-6));
}

TEST_CASE("a chamfer stops where a tenon begins") {
    const auto built = build_case(R"(part post
  wood cherry, flat sawn
  size 40 x 40, stands, left at 0, front at 0, from 0 to 500
part rail
  wood cherry, flat sawn
  20 thick, 60 wide, runs across, face side front, from 40 to 440, bottom at 200, front at 10
  chamfer 3 on long edges
join rail to post with mortise and tenon, 20 long
)");
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(20 * 60 * 400 + 6.0 * 48 * 20 - 4 * 4.5 * 400).epsilon(1e-6));
}

TEST_CASE("a shaped rail keeps its tenons") {
    // Arched below: the outline's straight ends are drawn out with the tenons.
    const auto built = build_case(R"(part post
  wood cherry, flat sawn
  size 40 x 40, stands, left at 0, front at 0, from 0 to 500
part rail
  wood cherry, flat sawn
  size 20 x 60 x 400, runs across, face side front, left at 40, bottom at 200, front at 10
  outline
    start 0, 0
    line to 100, 0
    line to 200, 20
    line to 300, 0
    line to 400, 0
    line to 400, 60
    line to 0, 60
    close
join rail to post with mortise and tenon, 20 long
)");
    INFO(built->said());
    REQUIRE(built->sound());
    CHECK(built->volume("rail") == Approx(20 * (60 * 400 - 200 * 20 / 2) + 6.0 * 48 * 20).epsilon(1e-6));
    CHECK(built->clashes() == 0);
}
