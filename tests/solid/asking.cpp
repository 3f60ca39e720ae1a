// Sections, clashes, contact and lines through finished solids, against hand calculation.

#include <catch2/catch.hpp>
#include <cmath>
#include <deque>
#include <numbers>

#include "solid/solid.hpp"

using namespace rayfleck::solid;
using rayfleck::measure::unit;

namespace {

constexpr double pi = std::numbers::pi;
const Frame at_origin{};

struct Scene {
    struct Part {
        Shape blank;
        std::vector<Shape> tools;
        Solid solid;
    };
    std::deque<Part> kept;
    std::vector<Placed> parts;
    void add(const Shape& blank, const std::vector<Shape>& tools = {}, const Frame& frame = {}) {
        kept.push_back({blank, tools, carve(blank, tools)});
        parts.push_back({&kept.back().solid, &kept.back().blank, &kept.back().tools, frame});
    }
};

/// A leg with a mortise (25 deep, 20 wide, 80 high) and a rail with its tenon, 0.5 short of the mortise's
/// bottom.
Scene leg_and_rail() {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {40, 40, 200}), {box(at_origin, {15, 10, 60}, {40, 30, 140})});
    scene.add(box(at_origin, {15.5, 0, 50}, {200, 40, 150}),
              {box(at_origin, {15.5, 0, 50}, {40, 10, 150}), box(at_origin, {15.5, 30, 50}, {40, 40, 150}),
               box(at_origin, {15.5, 0, 50}, {40, 40, 60}), box(at_origin, {15.5, 0, 140}, {40, 40, 150})});
    return scene;
}

double shoelace(const std::vector<Point2>& ring) {
    double twice = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return twice / 2;
}

} // namespace

TEST_CASE("a section through a joint shows both parts' cut areas") {
    const Scene scene = leg_and_rail();
    // The saw goes through the middle of the mortise, y = 20, seen from the front.
    const auto cut = section(scene.parts, front_view(), -20);
    REQUIRE(cut.size() == 2);
    CHECK(cut[0].part == 0);
    CHECK(cut[0].area == Approx(40.0 * 200 - 25 * 80).epsilon(1e-9));
    CHECK(cut[1].area == Approx(160.0 * 100 + 24.5 * 80).epsilon(1e-9));
    for (const CutArea& part : cut) {
        double sum = 0;
        for (const auto& ring : part.rings) sum += shoelace(ring);
        CHECK(sum == Approx(part.area).epsilon(1e-9));
    }
}

TEST_CASE("a section has holes where bores are, and nothing beyond the parts") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 80, 20}),
              {cylinder({{50, 40, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 10, -1, 21)});
    for (const View& view : {top_view(), bottom_view()}) {
        const auto cut = section(scene.parts, view, view.towards.z * 7);
        REQUIRE(cut.size() == 1);
        CHECK(cut[0].area == Approx(8000 - pi * 100).epsilon(1e-6));
        CHECK(cut[0].rings.size() == 2);
        double sum = 0;
        for (const auto& ring : cut[0].rings) sum += shoelace(ring);
        CHECK(sum == Approx(cut[0].area).epsilon(1e-9));
    }
    CHECK(section(scene.parts, top_view(), 30).empty());
    // In the face itself: what stays behind the saw is shown, what is taken away is not.
    CHECK(section(scene.parts, top_view(), 20).size() == 1);
    CHECK(section(scene.parts, top_view(), 0).empty());
}

TEST_CASE("a slanting section of a part that stands askew has the area of its plane") {
    const Frame askew{{30, 40, 50}, unit({1, 1, 0}), unit({-1, 1, 0}), {0, 0, 1}};
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 40, 20}), {}, askew);
    // Level plane: the whole 100 x 40. Front plane through the middle of the plan: 40 / sin 45 wide, 20 high.
    CHECK(section(scene.parts, top_view(), 60)[0].area == Approx(4000).epsilon(1e-6));
    const Point middle = askew.out({50, 20, 10});
    CHECK(section(scene.parts, front_view(), -middle.y)[0].area ==
          Approx(40 * std::sqrt(2.0) * 20).epsilon(1e-6));
}

TEST_CASE("a joint that fits has no clash") { CHECK(clashes(leg_and_rail().parts).empty()); }

TEST_CASE("a tenon too long runs into the bottom of its mortise") {
    Scene scene = leg_and_rail();
    scene.parts[1].frame.origin = {-2, 0, 0}; // the rail is pushed 2 mm in: tenon 1.5 too deep, shoulders 2
    const auto found = clashes(scene.parts);
    REQUIRE(found.size() == 1);
    CHECK(found[0].a == 0);
    CHECK(found[0].b == 1);
    const double bottom = 1.5 * 20 * 80, shoulders = 2.0 * (40 * 100 - 20 * 80);
    CHECK(found[0].volume == Approx(bottom + shoulders).epsilon(1e-9));
    CHECK(found[0].box.low.x == Approx(13.5));
    CHECK(found[0].box.high.x == Approx(40));
}

TEST_CASE("two boxes turned against each other share the volume of their overlap") {
    Scene scene;
    scene.add(box(at_origin, {-50, -10, 0}, {50, 10, 20}));
    // Crossing at 45 degrees in plan: the common area is a rhombus, 20 · 20 / sin 45; heights share 5.
    scene.add(box(at_origin, {-50, -10, 0}, {50, 10, 20}), {},
              {{0, 0, 15}, unit({1, 1, 0}), unit({-1, 1, 0}), {0, 0, 1}});
    const auto found = clashes(scene.parts);
    REQUIRE(found.size() == 1);
    CHECK(found[0].volume == Approx(400 * std::sqrt(2.0) * 5).epsilon(1e-6));
    CHECK(found[0].box.low.z == Approx(15));
    CHECK(found[0].box.high.z == Approx(20));
}

TEST_CASE("parts in contact and pegs in holes of the same size do not clash") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {50, 50, 20}),
              {cylinder({{25, 25, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 4, -1, 21)});
    scene.add(box(at_origin, {50, 0, 0}, {90, 50, 20}));
    // The peg's facets are turned against those of the hole.
    scene.add(cylinder({{25, 25, 0}, unit({1, 0.1, 0}), unit({-0.1, 1, 0}), {0, 0, 1}}, 4, 0, 20));
    CHECK(clashes(scene.parts).empty());
    scene.add(cylinder({{25, 25, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 5, 0, 20), {},
              {{0, 0, 0.0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
    const auto found = clashes(scene.parts);
    REQUIRE(found.size() == 2); // with the board, and with the first peg
    CHECK(found[0].volume == Approx(pi * (25 - 16) * 20).epsilon(1e-3));
    CHECK(found[1].volume == Approx(pi * 16 * 20).epsilon(1e-3));
}

TEST_CASE("a tenon's cheeks, edges and shoulder touch the mortised leg") {
    const Scene scene = leg_and_rail();
    const auto touches = touching(scene.parts[0], scene.parts[1]);
    double cheeks = 0, edges = 0, shoulder = 0;
    for (const Touch& touch : touches) {
        const Vector n = touch.plane.normal;
        if (std::abs(n.y) == 1) cheeks += touch.area;
        if (std::abs(n.z) == 1) edges += touch.area;
        if (std::abs(n.x) == 1) shoulder += touch.area;
        CHECK_FALSE(touch.loops.empty());
    }
    CHECK(cheeks == Approx(2 * 24.5 * 80).epsilon(1e-9));
    CHECK(edges == Approx(2 * 24.5 * 20).epsilon(1e-9));
    CHECK(shoulder == Approx(40.0 * 100 - 20 * 80).epsilon(1e-9)); // and not the bottom, 0.5 away
}

TEST_CASE("boards further apart than the gap do not touch") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {50, 50, 20}));
    scene.add(box(at_origin, {0, 0, 0}, {50, 50, 20}), {},
              {{10, 0, 20.005}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
    REQUIRE(touching(scene.parts[0], scene.parts[1]).size() == 1);
    CHECK(touching(scene.parts[0], scene.parts[1])[0].area == Approx(2000).epsilon(1e-9));
    CHECK(touching(scene.parts[0], scene.parts[1])[0].plane.normal.z == 1);
    scene.parts[1].frame.origin.z = 20.02;
    CHECK(touching(scene.parts[0], scene.parts[1]).empty());
    CHECK(touching(scene.parts[0], scene.parts[1], 0.1).size() == 1);
}

TEST_CASE("a line along the grain is inside between the cuts") {
    const Solid rail =
        carve(box(at_origin, {0, 0, 0}, {300, 60, 20}),
              {box(at_origin, {100, -1, 10}, {140, 61, 21}), box(at_origin, {200, 20, -1}, {220, 40, 21})});
    const auto high = inside_along(rail, {-10, 30, 15}, {1, 0, 0});
    REQUIRE(high.size() == 3);
    CHECK(high[0].first == Approx(10));
    CHECK(high[0].second == Approx(110));
    CHECK(high[1].first == Approx(150));
    CHECK(high[1].second == Approx(210));
    CHECK(high[2].second == Approx(310));
    CHECK(inside_along(rail, {150, 30, 5}, {1, 0, 0}).size() == 2);
    CHECK(inside_along(rail, {150, 70, 5}, {1, 0, 0}).empty());

    SECTION("a line in the floor of the notch, in a face or along an edge counts as just inside") {
        CHECK(inside_along(rail, {0, 10, 10}, {1, 0, 0}).size() == 1);
        CHECK(inside_along(rail, {0, 0, 5}, {1, 0, 0}).size() == 1);
        CHECK(inside_along(rail, {0, 60, 0}, {1, 0, 0}).size() == 1);
        CHECK(inside_along(rail, {0, 0, 20}, {1, 0, 0}).size() == 2);
        CHECK(inside_along(rail, {0, 20, 5}, {1, 0, 0}).size() == 1);
    }
    SECTION("a slanting line through corners is measured") {
        const auto diagonal = inside_along(rail, {0, 0, 0}, unit({0, 60, 20}));
        CHECK(diagonal.size() <= 1);
        const auto through = inside_along(rail, {10, 0, 0}, unit({0, 60, 20}));
        REQUIRE(through.size() == 1);
        CHECK(through[0].second - through[0].first == Approx(std::hypot(60, 20)).epsilon(1e-5));
    }
}

TEST_CASE("a line through a round bar is inside for its chord") {
    const Solid bar = carve(cylinder(at_origin, 20, 0, 100), {});
    for (const double y : {0.0, 8.0, 16.0}) {
        const auto inside = inside_along(bar, {0, y, 50}, {1, 0, 0});
        REQUIRE(inside.size() == 1);
        CHECK(inside[0].second - inside[0].first == Approx(2 * std::sqrt(400 - y * y)).margin(0.05));
    }
}
