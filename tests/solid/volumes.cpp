// Volumes, surfaces and bodies of carved parts against hand calculation (box, prism, cylinder and cone
// formulas).
//
// Parts are given as a joiner would: a blank, then shoulders, mortises, tapers and bores taken away.

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "solid/solid.hpp"

using namespace rayfleck::solid;

namespace {

constexpr double pi = std::numbers::pi;
const Frame at_origin{};

void sound(const Solid& solid) {
    CHECK(solid.open_edges == 0);
    CHECK(solid.watertight());
}

Outline polygon(std::vector<Point2> points) {
    Outline outline;
    outline.start = points[0];
    for (std::size_t i = 1; i < points.size(); ++i) outline.edges.push_back({points[i], std::nullopt, true});
    outline.edges.push_back({points[0], std::nullopt, true});
    return outline;
}

} // namespace

TEST_CASE("a plain board has its volume, surface, centre and twelve edges") {
    const Solid board = carve(box(at_origin, {0, 0, 0}, {800, 120, 20}), {});
    sound(board);
    CHECK(board.volume == Approx(800.0 * 120 * 20).epsilon(1e-12));
    CHECK(board.surface == Approx(2 * (800.0 * 120 + 800 * 20 + 120 * 20)).epsilon(1e-12));
    CHECK(board.centroid.x == Approx(400));
    CHECK(board.centroid.y == Approx(60));
    CHECK(board.centroid.z == Approx(10));
    CHECK(board.faces.size() == 6);
    CHECK(board.edges.size() == 12);
    CHECK(board.bodies == 1);
    for (const Face& face : board.faces) CHECK(face.made_by == -1);
}

TEST_CASE("shoulders cut round the end of a rail leave the tenon") {
    // 460 x 80 x 20 rail, tenons 30 long, 60 wide, 8 thick at one end: four shoulder cuts overlapping at the
    // corners.
    const std::vector<Shape> cuts{
        box(at_origin, {430, -1, -1}, {461, 81, 6}),  // under the tenon
        box(at_origin, {430, -1, 14}, {461, 81, 21}), // over it
        box(at_origin, {430, -1, -1}, {461, 10, 21}), // and both edges
        box(at_origin, {430, 70, -1}, {461, 81, 21}),
    };
    const Solid rail = carve(box(at_origin, {0, 0, 0}, {460, 80, 20}), cuts);
    sound(rail);
    CHECK(rail.volume == Approx(430.0 * 80 * 20 + 30.0 * 60 * 8).epsilon(1e-9));
    CHECK(rail.bodies == 1);
    // The shoulder lies in one plane and is one ring-shaped face with a hole where the tenon stands.
    int shoulders = 0;
    for (const Face& face : rail.faces)
        if (face.plane.normal.x == 1 && face.plane.offset == Approx(430)) {
            ++shoulders;
            CHECK(face.area == Approx(80.0 * 20 - 60 * 8).epsilon(1e-9));
            CHECK(face.loops.size() == 2);
            CHECK(face.makers == std::vector<int>{0, 1, 2, 3});
        }
    CHECK(shoulders == 1);
}

TEST_CASE("a leg with two mortises that meet loses their common corner once") {
    const std::vector<Shape> cuts{
        box(at_origin, {600, 15, 8}, {660, 40, 32}), // from one face, 25 deep
        box(at_origin, {600, 8, 15}, {660, 32, 40}), // from the next face
    };
    const Solid leg = carve(box(at_origin, {0, 0, 0}, {700, 40, 40}), cuts);
    sound(leg);
    const double first = 60.0 * 25 * 24, second = 60.0 * 24 * 25, both = 60.0 * 17 * 17;
    CHECK(leg.volume == Approx(700.0 * 40 * 40 - first - second + both).epsilon(1e-9));
}

TEST_CASE("a dovetail socket is a trapezoid prism") {
    // Socket 12 deep, 20 wide at the face, 26 at the bottom, cut through the board's 90 mm width.
    const Outline trapezoid = polygon({{40, 20}, {60, 20}, {63, 8}, {37, 8}});
    const Frame across{{0, 0, 0}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
    const Solid board = carve(box(at_origin, {0, 0, 0}, {300, 90, 20}), {prism(across, trapezoid, -100, 10)});
    sound(board);
    CHECK(board.volume == Approx(300.0 * 90 * 20 - (20.0 + 26) / 2 * 12 * 90).epsilon(1e-6));
}

TEST_CASE("a leg tapered on two sides by half spaces has the prismoid's volume") {
    // 40 x 40 down to 22 x 22 over 500: both inside faces planed. Prismoid: (A1 + 4 Am + A2) L / 6.
    const Shape blank = box(at_origin, {0, 0, 0}, {700, 40, 40});
    const double length = 500, fall = 18, hypotenuse = std::hypot(length, fall);
    std::vector<Shape> cuts;
    for (const int side : {1, 2}) {
        Vector normal{-fall / hypotenuse, 0, 0};
        normal[side] = length / hypotenuse;
        Point on{500, 0, 0};
        on[side] = 40;
        cuts.push_back(half_space({normal, dot(normal, on)}, blank.bounds()));
    }
    // The plane leaves the blank beyond x = 500, so only the tapered length is cut.
    const Solid leg = carve(blank, cuts);
    sound(leg);
    const double foot = 22.0 * 22, middle = 31.0 * 31, top = 40.0 * 40;
    CHECK(leg.volume == Approx(200.0 * 40 * 40 + (foot + 4 * middle + top) * length / 6).epsilon(1e-6));
    CHECK(leg.faces.size() == 8);
}

TEST_CASE("a bore takes away pi r squared times its depth") {
    const Frame down{{50, 40, 20}, {1, 0, 0}, {0, -1, 0}, {0, 0, -1}};
    for (const double radius : {1.5, 4.0, 17.5}) {
        const Solid through =
            carve(box(at_origin, {0, 0, 0}, {100, 80, 20}), {cylinder(down, radius, -1, 21)});
        sound(through);
        CHECK(100.0 * 80 * 20 - through.volume == Approx(pi * radius * radius * 20).epsilon(1e-6));
        const Solid blind = carve(box(at_origin, {0, 0, 0}, {100, 80, 20}), {cylinder(down, radius, 0, 12)});
        sound(blind);
        CHECK(100.0 * 80 * 20 - blind.volume == Approx(pi * radius * radius * 12).epsilon(1e-6));
    }
}

TEST_CASE("a field of six hundred bores takes away six hundred cylinders") {
    std::vector<Shape> bits;
    for (int row = 0; row < 20; ++row)
        for (int column = 0; column < 30; ++column)
            bits.push_back(cylinder(
                {{20 + 32.1 * column, 15 + 19.3 * row, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 2.5, -1, 21));
    const Solid board = carve(box(at_origin, {0, 0, 0}, {1000, 400, 20}), bits);
    sound(board);
    CHECK(board.bodies == 1);
    CHECK(board.volume == Approx(1000.0 * 400 * 20 - 600 * pi * 2.5 * 2.5 * 20).epsilon(1e-6));
}

TEST_CASE("the walls of a bore meet in smooth edges, its rims in sharp ones") {
    const Frame down{{50, 40, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    const Solid board = carve(box(at_origin, {0, 0, 0}, {100, 80, 20}), {cylinder(down, 5, -1, 21)});
    int smooth = 0, sharp = 0;
    for (const Edge& edge : board.edges) ++(edge.smooth ? smooth : sharp);
    // The wall has as many smooth edges as facets; each rim as many sharp ones; twelve edges of the board.
    CHECK(sharp == 2 * smooth + 12);
    CHECK(smooth >= 24);
}

TEST_CASE("a turned cone frustum has the textbook volume") {
    const Frame skew{{10, 20, 30},
                     rayfleck::measure::unit({1, 2, 2}),
                     rayfleck::measure::unit({2, 1, -2}),
                     rayfleck::measure::unit({-2, 2, -1})};
    for (const Frame& frame : {at_origin, skew}) {
        const Solid leg = carve(turned(frame, {{0, 12}, {400, 20}}), {});
        sound(leg);
        CHECK(leg.volume == Approx(pi * 400 / 3 * (12.0 * 12 + 12 * 20 + 20 * 20)).epsilon(1e-6));
        CHECK(leg.bodies == 1);
    }
}

TEST_CASE("a turned profile may step and come to a point") {
    const Solid knob = carve(turned(at_origin, {{0, 8}, {30, 8}, {30, 20}, {50, 20}, {90, 0}}), {});
    sound(knob);
    CHECK(knob.volume == Approx(pi * 8 * 8 * 30 + pi * 20 * 20 * 20 + pi * 20 * 20 * 40 / 3).epsilon(1e-6));
}

TEST_CASE("shapes without extent or out of all measure are refused") {
    CHECK_THROWS_AS(box(at_origin, {0, 0, 0}, {10, 0, 10}), std::invalid_argument);
    CHECK_THROWS_AS(box(at_origin, {0, 0, 0}, {10, 10, 1e9}), std::invalid_argument);
    CHECK_THROWS_AS(box(at_origin, {0, 0, 0}, {10, 10, NAN}), std::invalid_argument);
    CHECK_THROWS_AS(cylinder(at_origin, 0, 0, 10), std::invalid_argument);
    CHECK_THROWS_AS(prism(at_origin, polygon({{0, 0}, {5, 0}, {0, 5}}), 3, 3), std::invalid_argument);
}

TEST_CASE("turned profiles that make no solid are refused") {
    CHECK_THROWS_AS(turned(at_origin, {{0, 8}}), std::invalid_argument);
    CHECK_THROWS_AS(turned(at_origin, {{0, 8}, {-1, 8}}), std::invalid_argument);
    CHECK_THROWS_AS(turned(at_origin, {{0, 8}, {10, -1}}), std::invalid_argument);
    CHECK_THROWS_AS(turned(at_origin, {{0, 8}, {0, 9}}), std::invalid_argument);
    CHECK_THROWS_AS(turned(at_origin, {{0, 0}, {5, 0}, {9, 4}}), std::invalid_argument);
}

TEST_CASE("turning a stretch of a square leg leaves the cylinder there") {
    // 50 x 50 x 400, turned to 15 radius with a square shoulder at either end, between 100 and 250.
    const Frame axis{{0, 25, 25}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    const double corner = std::hypot(50, 50) / 2;
    const Solid leg =
        carve(box(at_origin, {0, 0, 0}, {400, 50, 50}), {turned_waste(axis, {{100, 15}, {250, 15}}, corner)});
    sound(leg);
    CHECK(leg.volume == Approx(50.0 * 50 * 250 + pi * 15 * 15 * 150).epsilon(1e-6));
    CHECK(leg.bodies == 1);
    CHECK_THROWS_AS(turned_waste(axis, {{100, 15}, {250, 0}}, corner), std::invalid_argument);
}

TEST_CASE("an arched rail has the area of rectangle less circle segment") {
    // 400 long, 80 high, the lower edge arched by 40 in the middle: radius (200² + 40²) / 80 = 520.
    Outline rail;
    rail.start = {0, 0};
    rail.edges = {
        {{400, 0}, Point2{200, -480}, false}, {{400, 80}, {}, true}, {{0, 80}, {}, true}, {{0, 0}, {}, true}};
    const double half = std::asin(200.0 / 520), segment = 520.0 * 520 * (half - std::sin(2 * half) / 2);
    CHECK(area(rail) == Approx(400.0 * 80 - segment).epsilon(1e-12));
    const Solid solid = carve(prism(at_origin, rail, 0, 20), {});
    sound(solid);
    CHECK(solid.volume == Approx((400.0 * 80 - segment) * 20).epsilon(1e-6));
}

TEST_CASE("a clockwise outline makes the same prism") {
    const Outline forth = polygon({{0, 0}, {50, 0}, {50, 30}, {20, 40}});
    const Outline back = polygon({{20, 40}, {50, 30}, {50, 0}, {0, 0}});
    CHECK(area(back) == Approx(-area(forth)));
    CHECK(carve(prism(at_origin, back, 0, 10), {}).volume ==
          Approx(carve(prism(at_origin, forth, 0, 10), {}).volume).epsilon(1e-12));
}

TEST_CASE("tools flush with the blank, with each other, or only touching it leave no scrap") {
    const Shape blank = box(at_origin, {0, 0, 0}, {100, 50, 20});
    SECTION("a tool outside that shares a face takes nothing") {
        const Solid solid = carve(blank, {box(at_origin, {100, 0, 0}, {150, 50, 20})});
        sound(solid);
        CHECK(solid.volume == Approx(100.0 * 50 * 20).epsilon(1e-12));
        CHECK(solid.faces.size() == 6);
    }
    SECTION("two tools side by side act as one") {
        const Solid solid = carve(
            blank, {box(at_origin, {20, 0, 10}, {40, 50, 20}), box(at_origin, {40, 0, 10}, {60, 50, 20})});
        sound(solid);
        CHECK(solid.volume == Approx(100.0 * 50 * 20 - 40.0 * 50 * 10).epsilon(1e-12));
        CHECK(solid.faces.size() == 10);
    }
    SECTION("the same tool twice acts once") {
        const Shape notch = box(at_origin, {20, 0, 10}, {40, 50, 20});
        CHECK(carve(blank, {notch, notch}).volume == Approx(100.0 * 50 * 20 - 20.0 * 50 * 10));
    }
    SECTION("a tool as large as the blank leaves nothing") {
        const Solid solid = carve(blank, {blank});
        sound(solid);
        CHECK(solid.faces.empty());
        CHECK(solid.volume == 0);
        CHECK(solid.bodies == 0);
    }
    SECTION("a tool that is 4 µm short of the face still cuts through") {
        const Solid solid = carve(blank, {box(at_origin, {20, 0.004, 10}, {40, 49.996, 20})});
        sound(solid);
        CHECK(solid.volume == Approx(100.0 * 50 * 20 - 20.0 * 50 * 10).epsilon(1e-12));
        CHECK(solid.faces.size() == 10);
    }
}

TEST_CASE("a saw cut leaves two bodies, a hollow leaves one") {
    const Shape blank = box(at_origin, {0, 0, 0}, {100, 50, 20});
    const Solid halves = carve(blank, {box(at_origin, {49, -1, -1}, {52, 51, 21})});
    sound(halves);
    CHECK(halves.bodies == 2);
    const Solid hollow = carve(blank, {box(at_origin, {40, 10, 5}, {60, 40, 15})});
    sound(hollow);
    CHECK(hollow.bodies == 1);
    CHECK(hollow.volume == Approx(100.0 * 50 * 20 - 20.0 * 30 * 10));
    const Solid touching_along_a_line =
        carve(blank, {box(at_origin, {0, 0, 0}, {50, 50, 10}), box(at_origin, {50, 0, 10}, {100, 50, 20})});
    sound(touching_along_a_line);
    CHECK(touching_along_a_line.bodies == 2);
}

TEST_CASE("faces know the cut that made them") {
    const Solid board =
        carve(box(at_origin, {0, 0, 0}, {100, 50, 20}),
              {box(at_origin, {10, 10, 10}, {20, 40, 20}), box(at_origin, {30, 10, 10}, {40, 40, 20})});
    int floors = 0;
    for (const Face& face : board.faces)
        if (face.plane.normal.z == 1 && face.plane.offset == Approx(10)) {
            ++floors;
            CHECK(face.made_by == (face.box.low.x < 25 ? 0 : 1));
            CHECK(face.makers.size() == 1);
        }
    CHECK(floors == 2);
}
