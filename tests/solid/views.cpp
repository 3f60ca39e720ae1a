// Views with hidden lines removed, counted and measured by hand on simple scenes.

#include <catch2/catch.hpp>
#include <cmath>
#include <deque>
#include <numbers>

#include "solid/solid.hpp"

using namespace rayfleck::solid;

namespace {

const Frame at_origin{};

/// Parts that stay in place while views are made of them.
struct Scene {
    std::deque<Solid> solids;
    std::vector<Placed> parts;
    void add(const Shape& blank, const std::vector<Shape>& tools = {}, const Frame& frame = {}) {
        solids.push_back(carve(blank, tools));
        parts.push_back({&solids.back(), nullptr, nullptr, frame});
    }
};

double length(const std::vector<Line2>& lines, bool visible, int part = -1) {
    double sum = 0;
    for (const Line2& line : lines)
        if (line.visible == visible && (part < 0 || line.part == part))
            sum += std::hypot(line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y);
    return sum;
}

int count(const std::vector<Line2>& lines, bool visible) {
    int n = 0;
    for (const Line2& line : lines) n += line.visible == visible;
    return n;
}

} // namespace

TEST_CASE("every named view looks where it says, unmirrored") {
    for (const View& view : {front_view(), top_view(), right_view(), left_view(), back_view(), bottom_view(),
                             isometric_view()}) {
        const Vector across = cross(view.right, view.up);
        CHECK(across.x == Approx(view.towards.x).margin(1e-15));
        CHECK(across.y == Approx(view.towards.y).margin(1e-15));
        CHECK(across.z == Approx(view.towards.z).margin(1e-15));
    }
    CHECK(isometric_view().towards.z > 0);
    CHECK(isometric_view().towards.x > 0);
    CHECK(isometric_view().towards.y < 0);
}

TEST_CASE("a box seen square on is four lines, seen isometrically nine and three hidden") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 50, 20}));
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(count(front, true) == 4);
    CHECK(count(front, false) == 0);
    CHECK(length(front, true) == Approx(240));
    CHECK(length(hidden_lines(scene.parts, top_view()), true) == Approx(300));
    CHECK(length(hidden_lines(scene.parts, right_view()), true) == Approx(140));
    const auto iso = hidden_lines(scene.parts, isometric_view());
    CHECK(count(iso, true) == 9);
    CHECK(count(iso, false) == 3);
    // Isometric: every axis shortened by sqrt(2/3).
    CHECK(length(iso, true) == Approx(3 * 170 * std::sqrt(2.0 / 3)).epsilon(1e-6));
    CHECK(length(iso, false) == Approx(170 * std::sqrt(2.0 / 3)).epsilon(1e-6));
}

TEST_CASE("a small box behind a large one is all hidden, a large one behind is partly so") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 10, 100}));
    scene.add(box(at_origin, {20, 50, 20}, {60, 60, 60}));
    auto front = hidden_lines(scene.parts, front_view());
    CHECK(length(front, true) == Approx(400));
    CHECK(length(front, false) == Approx(160));
    CHECK(length(front, false, 1) == Approx(160));
    auto back = hidden_lines(scene.parts, back_view());
    CHECK(length(back, true) == Approx(560));
    CHECK(count(back, false) == 0);

    Scene crossing;
    crossing.add(box(at_origin, {0, 0, 40}, {100, 10, 60}));  // a rail in front
    crossing.add(box(at_origin, {40, 20, 0}, {60, 30, 100})); // a post behind it
    front = hidden_lines(crossing.parts, front_view());
    CHECK(length(front, true, 0) == Approx(240));
    CHECK(length(front, true, 1) == Approx(2 * 20 + 2 * 80));
    CHECK(length(front, false, 1) == Approx(2 * 20));
    CHECK(count(front, false) == 2);
}

TEST_CASE("the joint line between flush parts stays visible") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {50, 20, 100}));
    scene.add(box(at_origin, {50, 0, 0}, {120, 20, 100}));
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(count(front, false) == 0);
    CHECK(length(front, true) == Approx(3 * 100 + 2 * 120));
    const auto top = hidden_lines(scene.parts, top_view());
    CHECK(length(top, true) == Approx(3 * 20 + 2 * 120));
    // The shared line goes to the lower part.
    CHECK(length(front, true, 0) == Approx(300));
}

TEST_CASE("staves glued flush hide what lies behind them without a gap at the glue line") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {50, 20, 100}));
    scene.add(box(at_origin, {50, 0, 0}, {120, 20, 100}));
    scene.add(box(at_origin, {20, 30, 40}, {100, 40, 60}));
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(length(front, false, 2) == Approx(200));
    CHECK(length(front, true, 2) == 0);
    CHECK(count(front, false) == 4);
}

TEST_CASE("a round bar shows its ends and two silhouettes") {
    const double pi = std::numbers::pi;
    Scene scene;
    scene.add(cylinder({{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 20, 0, 200));
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(length(front, true) == Approx(2 * 200 + 2 * 40).epsilon(1e-3));
    CHECK(length(front, false) == Approx(0).margin(1e-9));
    const auto top = hidden_lines(scene.parts, top_view());
    CHECK(length(top, true) == Approx(2 * pi * 20).epsilon(2e-3));
    CHECK(length(top, false) == Approx(0).margin(1e-9));
}

TEST_CASE("a bore seen from the side is two dashed lines, and its rims fall on the board's own") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 80, 20}),
              {cylinder({{50, 40, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 5, -1, 21)});
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(count(front, false) == 2);
    CHECK(length(front, false) == Approx(40));
    CHECK(length(front, true) == Approx(240));
    // From above the hole is open: one circle, nothing hidden.
    const auto top = hidden_lines(scene.parts, top_view());
    CHECK(length(top, true) == Approx(360 + 2 * std::numbers::pi * 5).epsilon(1e-3));
    CHECK(count(top, false) == 0);
}

TEST_CASE("a turned leg has one outline and a line at each shoulder") {
    Scene scene;
    scene.add(turned(at_origin, {{0, 10}, {100, 10}, {100, 20}, {150, 20}}));
    const auto front = hidden_lines(scene.parts, front_view());
    // Two ends 20 and 40 wide, a shoulder 40 wide, sides 100 and 50 twice.
    CHECK(length(front, true) == Approx(20 + 40 + 40 + 2 * 100 + 2 * 50).epsilon(2e-3));
}

TEST_CASE("a tenon in its mortise is hidden, and parts in contact do not hide each other") {
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {40, 40, 200}), {box(at_origin, {15, 10, 60}, {40, 30, 140})});
    scene.add(box(at_origin, {15, 0, 50}, {200, 40, 150}),
              {box(at_origin, {15, 0, 50}, {40, 10, 150}), box(at_origin, {15, 30, 50}, {40, 40, 150}),
               box(at_origin, {15, 0, 50}, {40, 40, 60}), box(at_origin, {15, 0, 140}, {40, 40, 150})});
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(length(front, true) == Approx(2 * 240 + 2 * 160 + 100));
    // Dashed: the tenon's end and its two edges, each once though tenon and mortise both have them.
    CHECK(length(front, false) == Approx(80 + 2 * 25));
    CHECK(count(front, false) == 3);
}

TEST_CASE("views of turned and shifted parts are those of the moved solid") {
    const Frame frame{
        {300, -20, 70}, rayfleck::measure::unit({1, 1, 0}), rayfleck::measure::unit({-1, 1, 0}), {0, 0, 1}};
    Scene scene;
    scene.add(box(at_origin, {0, 0, 0}, {100, 40, 20}), {}, frame);
    const double diagonal = 140 / std::sqrt(2.0);
    const auto front = hidden_lines(scene.parts, front_view());
    CHECK(length(front, true) == Approx(2 * diagonal + 3 * 20).epsilon(1e-6));
    CHECK(length(front, false) == Approx(20).epsilon(1e-6));
    CHECK(length(hidden_lines(scene.parts, top_view()), true) == Approx(280).epsilon(1e-6));
}

TEST_CASE("the same scene gives the same lines in the same order") {
    Scene scene;
    for (int i = 0; i < 6; ++i)
        scene.add(box(at_origin, {10.0 * i, 5.0 * i, 0}, {10.0 * i + 30, 5.0 * i + 12, 40}));
    const auto once = hidden_lines(scene.parts, isometric_view());
    const auto again = hidden_lines(scene.parts, isometric_view());
    REQUIRE(once.size() == again.size());
    for (std::size_t i = 0; i < once.size(); ++i) {
        CHECK(once[i].at.a.x == again[i].at.a.x);
        CHECK(once[i].part == again[i].part);
        if (i > 0) CHECK(once[i - 1].part <= once[i].part);
    }
}
