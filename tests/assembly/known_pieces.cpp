// Pieces of which every maker knows how they go together: the order must say what the bench says.

#include <algorithm>

#include <catch2/catch.hpp>

#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::assembly_tests;

namespace {

const std::string head = "piece \"Trial\"\nunits mm\nclimate 6% to 10% moisture\n";

using Names = std::vector<std::string>;

/// The first move comes before the second; both are there.
void comes_before(const Studied& s, const Names& first, const Names& second) {
    INFO(s.printed());
    const int a = s.move_that_brings(first), b = s.move_that_brings(second);
    REQUIRE(a >= 0);
    REQUIRE(b >= 0);
    CHECK(a < b);
}

const assembly::Move& move_of(const Studied& s, const Names& parts) {
    INFO(s.printed());
    const int m = s.move_that_brings(parts);
    REQUIRE(m >= 0);
    return s.order.moves[static_cast<std::size_t>(m)];
}

void check_along(measure::Vector direction, double x, double y, double z) {
    CHECK(direction.x == Approx(x).margin(1e-9));
    CHECK(direction.y == Approx(y).margin(1e-9));
    CHECK(direction.z == Approx(z).margin(1e-9));
}

const std::string table = head + R"(
rod across left 0, right 480
rod deep front 0, back 360
rod up floor 0, apron-low 500, apron-top 600
part leg, at each corner
  wood cherry, rift sawn
  size 38 x 38, stands
  left at left, front at front, from floor to apron-top
part long apron, front and back
  wood cherry, quarter sawn
  20 thick, runs across, between leg, from apron-low to apron-top, set back 4 from outside of leg
part short apron like long apron, left and right
  runs deep
part top
  wood cherry, flat sawn
  20 thick, runs across, over long apron, overhanging leg by 30 all round
join long apron to leg with mortise and tenon, 20 long
join short apron to leg with mortise and tenon, 20 long
join top to long apron with buttons, every 150
)";

} // namespace

TEST_CASE("a table: two end frames are glued first, then the long aprons, the top comes last") {
    const auto s = studied(table);
    INFO(s->printed());
    REQUIRE(s->order.locks.empty());
    REQUIRE(s->order.sub_assemblies.size() == 1);
    // Each end frame: two legs and the short apron between them.
    REQUIRE(s->order.sub_assemblies[0].copies.size() == 2);
    for (const auto& copy : s->order.sub_assemblies[0].copies) {
        CHECK(copy.size() == 3);
        int legs = 0, short_aprons = 0;
        for (const int p : copy) {
            legs += s->model.made[static_cast<std::size_t>(p)].part->base == "leg";
            short_aprons += s->model.made[static_cast<std::size_t>(p)].part->base == "short apron";
        }
        CHECK(legs == 2);
        CHECK(short_aprons == 1);
    }
    CHECK(s->order.steps.front().copies == 2);
    const assembly::Move& last = s->order.moves.back();
    CHECK(last.parts == std::vector<int>{s->part("top")});
    CHECK(last.hold == assembly::Hold::fastened);
    check_along(last.direction, 0, 0, -1);
    // An end frame goes on along the aprons, as far as the tenons are long.
    for (const assembly::Move& move : s->order.moves)
        if (move.parts.size() == 3) {
            CHECK(std::abs(move.direction.x) == Approx(1));
            CHECK(move.distance == Approx(20));
            CHECK(move.hold == assembly::Hold::glued);
        }
}

TEST_CASE("a frame with a panel: the panel goes in dry before the last stile closes it in") {
    const auto s = studied(head + R"(
rod across left 0, right 300
rod deep front 0, back 20
rod up low 0, high 500
part stile, left and right
  wood cherry, quarter sawn
  size 20 x 50, stands, face side front
  left at left, from low to high, front at front
part low rail
  wood cherry, quarter sawn
  size 20 x 50, runs across, face side front
  between stile, bottom at low, front at front
part high rail like low rail
  top at high
part panel
  wood cherry, quarter sawn
  size 8 thick, stands, face side front
  between stile, between low rail and high rail, centred on front + 10
join low rail to stile with mortise and tenon, 30 long
join high rail to stile with mortise and tenon, 30 long
join panel to stile with groove, 8 deep
join panel to low rail with groove, 8 deep
join panel to high rail with groove, 8 deep
)");
    comes_before(*s, {"panel"}, {"stile at right"});
    CHECK(s->order.locks.empty());
    CHECK(move_of(*s, {"panel"}).hold == assembly::Hold::dry);
    const assembly::Move& last = s->order.moves.back();
    CHECK(last.parts == std::vector<int>{s->part("stile at right")});
    check_along(last.direction, -1, 0, 0);
    bool dry = false, diagonals = false;
    for (const assembly::Step& step : s->order.steps)
        for (const std::string& words : step.words) {
            dry = dry || words.find("No glue in the grooves of panel") != std::string::npos;
            diagonals = diagonals || words.find("diagonals") != std::string::npos;
        }
    CHECK(dry);
    CHECK(diagonals);
}

TEST_CASE(
    "a drawer with a half-blind front: the sides close on the front from either hand, the bottom slides in") {
    const auto s = studied(head + R"(
rod across left 0, right 300
rod deep front 0, back 250
rod up low 0, high 90
part front
  wood cherry, quarter sawn
  size 18 thick, runs across, face side front
  from left to right, from low to high, front at front
part side, left and right
  wood hard maple, quarter sawn
  size 10 thick, runs deep, face side outside
  left at left, from low to high, from back of front to back
part rear
  wood hard maple, quarter sawn
  size 10 thick, runs across, face side back
  from left to right, back at back, from low + 14 to high
part bottom
  wood birch plywood
  size 6 thick, runs across
  between side, from back of front to back of rear, bottom at low + 8
join side to front with half-blind dovetail, 3 tails
join side to rear with dovetail, 2 tails
join bottom to side with groove
join bottom to front with groove
join bottom to rear with screws, 2 screws
)");
    INFO(s->printed());
    CHECK(s->order.locks.empty());
    check_along(move_of(*s, {"side at right"}).direction, -1, 0, 0);
    // Under the back, into the grooves: the box stands by then.
    comes_before(*s, {"side at right"}, {"bottom"});
    check_along(move_of(*s, {"bottom"}).direction, 0, -1, 0);
}

TEST_CASE("a dovetailed box with a floor in grooves all round: the floor before the last side") {
    for (const std::string corner : {"dovetail, 3 tails", "finger joint"}) {
        const auto s = studied(head + R"(
rod across left 0, right 320
rod deep front 0, back 210
rod up bottom 0, rim 110
part long side, front and back
  wood cherry, quarter sawn
  size 12 thick, runs across, face side outside
  front at front, from left to right, from bottom to rim
part short side, left and right
  wood cherry, quarter sawn
  size 12 thick, runs deep, face side outside
  left at left, from front to back, from bottom to rim
part floor
  wood birch plywood
  size 6 thick, runs across
  between short side, between long side, bottom at bottom + 12
join floor to short side with groove, 5 deep
join floor to long side with groove, 5 deep
join long side to short side with )" +
                               corner + "\n");
        INFO(corner << "\n" << s->printed());
        CHECK(s->order.locks.empty());
        CHECK(s->move_that_brings({"floor"}) >= 0);
        CHECK(s->move_that_brings({"floor"}) < static_cast<int>(s->order.moves.size()) - 1);
        CHECK(s->order.moves.back().parts.size() == 1);
    }
}

TEST_CASE("a shelf in housings closed at both ends goes in before the second side") {
    const auto s = studied(head + R"(
rod across left 0, right 400
rod deep front 0, back 200
rod up bottom 0, shelf 150, top 300
part side, left and right
  wood cherry, quarter sawn
  size 18 thick, stands, face side outside
  left at left, from front to back, from bottom to top
part cover
  wood cherry, quarter sawn
  size 18 thick, runs across
  from left to right, from front to back, over side
part shelf
  wood cherry, quarter sawn
  size 18 thick, runs across
  between side, from front + 20 to back - 20, bottom at shelf
join shelf to side with dado, 6 deep
join side to cover with dowels
)");
    INFO(s->printed());
    CHECK(s->order.locks.empty());
    // Whichever of the three is laid down first, the housings only close across.
    const int shelf = s->part("shelf");
    for (const assembly::Move& move : s->order.moves) {
        const bool closes_housing = std::any_of(move.joints.begin(), move.joints.end(), [&](int j) {
            return s->model.joints[static_cast<std::size_t>(j)].a == shelf;
        });
        if (closes_housing) CHECK(std::abs(move.direction.x) == Approx(1));
    }
    CHECK(s->order.moves.back().parts == std::vector<int>{s->part("cover")});
    check_along(move_of(*s, {"cover"}).direction, 0, 0, -1);
}

TEST_CASE("four members, each tenoned into the next, go together as two halves") {
    // Seen from above like the vanes of a mill: whichever is moved alone, a tenon square to it stops it. But
    // two neighbours move as one along the tenons that they share with the other two.
    const auto s = studied(head + R"(
rod across left 0, right 300
rod deep front 0, back 300
rod up low 0, high 30
part front rail
  wood cherry, quarter sawn
  size 30 thick, runs across
  from left to right - 40, from front to front + 40, from low to high
part right rail
  wood cherry, quarter sawn
  size 30 thick, runs deep
  from right - 40 to right, from front to back - 40, from low to high
part back rail
  wood cherry, quarter sawn
  size 30 thick, runs across
  from left + 40 to right, from back - 40 to back, from low to high
part left rail
  wood cherry, quarter sawn
  size 30 thick, runs deep
  from left to left + 40, from front + 40 to back, from low to high
join front rail to right rail with mortise and tenon, 20 long
join right rail to back rail with mortise and tenon, 20 long
join back rail to left rail with mortise and tenon, 20 long
join left rail to front rail with mortise and tenon, 20 long
)");
    INFO(s->printed());
    CHECK(s->order.locks.empty());
    REQUIRE(s->order.moves.size() == 3);
    REQUIRE(s->order.sub_assemblies.size() == 1);
    CHECK(s->order.sub_assemblies[0].copies.size() == 2);
    CHECK(s->order.moves.back().parts.size() == 2);
    CHECK(s->order.moves.back().distance == Approx(20));
}

TEST_CASE("three members, each tenoned into the next along another axis, lock each other") {
    // The ways sum to nothing only when none of them moves: a x + b y + c z = 0 has no other solution.
    const auto s = studied(head + R"(
rod across left 0, right 140
rod deep front 0, back 300
rod up low 0, high 340
part level rail
  wood cherry, quarter sawn
  size 40 thick, runs across, face side top
  from left to left + 100, from front + 40 to front + 120, top at high
part cross rail
  wood cherry, quarter sawn
  40 thick, runs deep, face side left
  from left + 100 to right, from front + 80 to back, from low + 200 to high
part upright
  wood cherry, quarter sawn
  80 thick, stands, face side back
  from left + 60 to right, from front to front + 80, from low to high - 40
part cover
  wood cherry, quarter sawn
  size 10 thick, runs deep, face side top
  from left + 100 to right, from front + 140 to back, over cross rail
join level rail to cross rail with mortise and tenon, 15 long
join cross rail to upright with mortise and tenon, 20 long
join upright to level rail with mortise and tenon, 15 long
join cover to cross rail with screws
)");
    INFO(s->printed());
    REQUIRE(s->order.locks.size() == 1);
    CHECK(s->order.locks[0].parts ==
          std::vector<int>{s->part("level rail"), s->part("cross rail"), s->part("upright")});
    CHECK(s->order.locks[0].joints == std::vector<int>{0, 1, 2});
    // The rest has its order all the same.
    REQUIRE(s->order.moves.size() == 1);
    CHECK(s->order.moves[0].parts == std::vector<int>{s->part("cover")});
}

TEST_CASE("legs that splay both ways are driven into their seat with the stretchers between them") {
    const auto sizes = studied_sample("milking-stool.fleck");
    const auto& s = sizes.front();
    INFO(s->printed());
    CHECK(s->order.locks.empty());
    CHECK(std::all_of(s->order.moves.begin(), s->order.moves.end(),
                      [](const assembly::Move& move) { return move.at_once == 0; }));
}

TEST_CASE("a sliding dovetail runs out through a bevelled edge, so that its arm goes in") {
    const auto s = studied(head + R"(
rod across left 0, right 400
rod deep front 0, back 300
rod up low 0, high 60
part arm
  wood white oak, quarter sawn
  size 40 thick, runs deep, face side left
  centred on 200, from front + 40 to back - 40, from low to high
part top
  wood white oak, quarter sawn
  size 26 thick, runs across
  from left to right, from front to back, over arm
  bevel 30 degrees on bottom edges
join arm to top with sliding dovetail, dry
)");
    INFO(s->printed());
    CHECK(s->order.locks.empty());
    CHECK(std::abs(s->order.moves.front().direction.y) == Approx(1));
}

TEST_CASE("the same piece gives the same order") {
    const auto a = studied(table), b = studied(table);
    CHECK(a->printed() == b->printed());
}
