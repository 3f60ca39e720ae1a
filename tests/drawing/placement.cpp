// What is taken on the paper and what is free.

#include <catch2/catch.hpp>

#include "drawing/placement.hpp"

using namespace rayfleck::drawing;

TEST_CASE("rectangles that share only a border do not meet") {
    CHECK_FALSE(meet(Rect{0, 0, 10, 10}, Rect{10, 0, 20, 10}));
    CHECK(meet(Rect{0, 0, 10, 10}, Rect{9.9, 0, 20, 10}));
}

TEST_CASE("a turned text is free where its upright box would not be") {
    Occupied taken;
    // A square stood on its corner about (0, 0), half diagonal 10.
    taken.add_text({{0, -10}, {10, 0}, {0, 10}, {-10, 0}});
    CHECK(taken.free_for_text(corners({7, 7, 9, 9}), 0));
    CHECK_FALSE(taken.free_for_text(corners({3, 3, 5, 5}), 0));
}

TEST_CASE("a figure keeps its clearance from lines") {
    Occupied taken;
    taken.add_line({0, 0}, {100, 0}, Role::edge);
    CHECK(taken.free_for_text(corners({10, 1, 20, 3}), 0.9));
    CHECK_FALSE(taken.free_for_text(corners({10, 1, 20, 3}), 1.1));
}

TEST_CASE("a line may pass beside a text but not through it") {
    Occupied taken;
    taken.add_text(corners({10, 10, 30, 13}));
    CHECK(taken.free_for_line({0, 0}, {40, 0}, 0.5));
    CHECK(taken.free_for_line({0, 9}, {40, 9}, 0.5));
    CHECK_FALSE(taken.free_for_line({0, 0}, {40, 22}, 0.5));
}

TEST_CASE("free space gives the highest place and of those the leftmost") {
    FreeSpace space({0, 0, 100, 100});
    space.take({0, 50, 60, 100});
    const auto small = space.find(30, 40);
    REQUIRE(small);
    CHECK(small->left == Approx(60));
    CHECK(small->top == Approx(100));
    const auto wide = space.find(90, 40);
    REQUIRE(wide);
    CHECK(wide->left == Approx(0));
    CHECK(wide->top == Approx(50));
    CHECK_FALSE(space.find(90, 60));
}

TEST_CASE("free space is what its takings leave") {
    FreeSpace space({0, 0, 100, 100});
    space.take({20, 20, 80, 80});
    space.take({0, 0, 100, 20});
    for (const Rect& r : space.rects()) {
        CHECK_FALSE(meet(r, Rect{20, 20, 80, 80}));
        CHECK_FALSE(meet(r, Rect{0, 0, 100, 20}));
    }
    CHECK(space.find(100, 20));
    CHECK(space.find(20, 80));
    CHECK_FALSE(space.find(21, 21));
}
