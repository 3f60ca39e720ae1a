// Outlines: area with exact arcs, and every fault that makes an outline no outline.

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "solid/solid.hpp"

using namespace rayfleck::solid;

namespace {

constexpr double pi = std::numbers::pi;

Outline polygon(std::vector<Point2> points) {
    Outline outline;
    outline.start = points[0];
    for (std::size_t i = 1; i < points.size(); ++i) outline.edges.push_back({points[i], std::nullopt, true});
    outline.edges.push_back({points[0], std::nullopt, true});
    return outline;
}

/// A table top with its corners rounded, anticlockwise.
Outline rounded(double length, double width, double radius) {
    Outline o;
    o.start = {radius, 0};
    o.edges = {{{length - radius, 0}, std::nullopt, true},
               {{length, radius}, Point2{length - radius, radius}, true},
               {{length, width - radius}, std::nullopt, true},
               {{length - radius, width}, Point2{length - radius, width - radius}, true},
               {{radius, width}, std::nullopt, true},
               {{0, width - radius}, Point2{radius, width - radius}, true},
               {{0, radius}, std::nullopt, true},
               {{radius, 0}, Point2{radius, radius}, true}};
    return o;
}

int sharp_edges(const Solid& solid) {
    int n = 0;
    for (const Edge& edge : solid.edges) n += !edge.smooth;
    return n;
}

} // namespace

TEST_CASE("sound outlines have no fault") {
    CHECK_FALSE(fault_of(polygon({{0, 0}, {10, 0}, {0, 10}})));
    CHECK_FALSE(fault_of(polygon({{0, 0}, {0, 10}, {10, 0}})));
    CHECK_FALSE(fault_of(polygon({{0, 0}, {5, 0}, {10, 0}, {10, 10}}))); // a point within a straight side
    CHECK_FALSE(fault_of(rounded(900, 500, 60)));
    Outline disc;
    disc.start = {10, 0};
    disc.edges = {{{-10, 0}, Point2{0, 0}, true}, {{10, 0}, Point2{0, 0}, true}};
    CHECK_FALSE(fault_of(disc));
    disc.edges = {{{10, 0}, Point2{0, 0}, false}};
    CHECK_FALSE(fault_of(disc));
}

TEST_CASE("faulty outlines are told what is wrong with them") {
    const auto fault = [](const Outline& outline) { return fault_of(outline).value_or("none"); };
    CHECK(fault({}) == "the outline has no sides");
    CHECK(fault(polygon({{0, 0}, {10, 10}, {10, 0}, {0, 10}})) == "the outline crosses or touches itself");
    CHECK(fault(polygon({{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}})) ==
          "the outline crosses or touches itself");
    CHECK(fault(polygon({{0, 0}, {10, 0}, {4, 0}, {4, 8}})) == "the outline crosses or touches itself");
    CHECK(fault(polygon({{0, 0}, {10, 0}})) == "the outline has fewer than three sides");
    CHECK(fault(polygon({{0, 0}, {10, 0}, {10, 0}, {0, 10}})) == "a side of the outline has no length");
    CHECK(fault(polygon({{0, 0}, {NAN, 0}, {0, 10}})) == "the outline has a point that is not a number");
    Outline open = polygon({{0, 0}, {10, 0}, {0, 10}});
    open.edges.pop_back();
    CHECK(fault(open) == "the outline is not closed");
    Outline off = rounded(900, 500, 60);
    off.edges[1].centre->x += 0.001;
    CHECK(fault(off) == "the ends of an arc are not equally far from its centre");
    Outline smooth = polygon({{0, 0}, {10, 0}, {0, 10}});
    smooth.smooth = {1, 1};
    CHECK(fault(smooth) == "the outline's smooth runs do not match its sides");
    // An arc that bulges through the opposite side.
    Outline bulging;
    bulging.start = {0, 0};
    bulging.edges = {{{10, 0}, std::nullopt, true},
                     {{10, 5}, std::nullopt, true},
                     {{0, 5}, Point2{5, 5}, true},
                     {{0, 0}, std::nullopt, true}};
    CHECK(fault(bulging) == "none");
    bulging.edges[2].anticlockwise = false;
    CHECK(fault(bulging) == "the outline crosses or touches itself");
}

TEST_CASE("the area of an outline counts arcs exactly and is signed") {
    CHECK(area(rounded(900, 500, 60)) == Approx(900.0 * 500 - (4 - pi) * 60 * 60).epsilon(1e-12));
    Outline disc;
    disc.start = {1010, 5};
    disc.edges = {{{1010, 5}, Point2{1000, 5}, true}};
    CHECK(area(disc) == Approx(pi * 100).epsilon(1e-12));
    disc.edges[0].anticlockwise = false;
    CHECK(area(disc) == Approx(-pi * 100).epsilon(1e-12));
    CHECK(area(polygon({{0, 0}, {0, 10}, {10, 0}})) == Approx(-50));
}

TEST_CASE("a prism over arcs has their exact area times its height") {
    for (const double radius : {3.0, 60.0, 240.0}) {
        const Solid top = carve(prism({}, rounded(900, 500, radius), 0, 20), {});
        CHECK(top.open_edges == 0);
        CHECK(top.volume == Approx((900.0 * 500 - (4 - pi) * radius * radius) * 20).epsilon(1e-6));
    }
    Outline disc;
    disc.start = {10, 0};
    disc.edges = {{{-10, 0}, Point2{0, 0}, false}, {{10, 0}, Point2{0, 0}, false}};
    CHECK(carve(prism({}, disc, 0, 5), {}).volume == Approx(pi * 100 * 5).epsilon(1e-6));
}

TEST_CASE("there is no line where a straight side runs into an arc without a corner") {
    const Solid top = carve(prism({}, rounded(900, 500, 60), 0, 20), {});
    int upright = 0;
    for (const Edge& edge : top.edges)
        if (edge.a.z != edge.b.z) {
            ++upright;
            CHECK(edge.smooth);
        }
    CHECK(upright > 8);
}

TEST_CASE("a smooth run of short sides is one curve, and ends in lines") {
    // A bowed edge: five short sides marked as one curve.
    Outline bowed = polygon({{0, 0}, {100, 0}, {100, 50}, {80, 58}, {60, 62}, {40, 62}, {20, 58}, {0, 50}});
    bowed.smooth = {0, 0, 1, 1, 1, 1, 1, 0};
    const Solid solid = carve(prism({}, bowed, 0, 20), {});
    // Eight sides above, eight below, and of the eight upright edges the four within the curve are smooth.
    CHECK(sharp_edges(solid) == 8 + 8 + 4);
    CHECK(solid.edges.size() == 24);
}
