// Dimension lines by themselves: tiers, arrows, figures that find no room.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "drawing/dimension.hpp"

using namespace rayfleck::drawing;

namespace {

Measure between(double from, double to, const std::string& figure) {
    return {from, to, 0, 0, figure, {"part", 'L', from, to, figure, false}};
}

std::vector<Stroke> strokes(const Block& block, Role role) {
    std::vector<Stroke> found;
    for (const Item& item : block.items())
        if (const auto* stroke = std::get_if<Stroke>(&item); stroke && stroke->role == role)
            found.push_back(*stroke);
    return found;
}

Text text_of(const Block& block, const std::string& words) {
    for (const Item& item : block.items())
        if (const auto* text = std::get_if<Text>(&item); text && text->words == words) return *text;
    FAIL("no text " << words);
    return {};
}

} // namespace

TEST_CASE("the first tier lies 10 mm off the wood and the next 8 mm further out") {
    Block block;
    const double reach =
        draw_dimensions(block, ViewSide::below, 0,
                        {{between(0, 40, "40"), between(40, 100, "60")}, {between(0, 100, "100")}}, 2.5);
    CHECK(reach == Approx(18));
    std::vector<double> heights;
    for (const Stroke& s : strokes(block, Role::dimension)) heights.push_back(s.points.front().y);
    std::sort(heights.begin(), heights.end());
    REQUIRE(heights.size() == 2); // the two links of the string are one line
    CHECK(heights[0] == Approx(-18));
    CHECK(heights[1] == Approx(-10));
}

TEST_CASE("figures stand above their line and read from the bottom or the right") {
    Block below, left;
    draw_dimensions(below, ViewSide::below, 0, {{between(0, 100, "100")}}, 2.5);
    const Text level = text_of(below, "100");
    CHECK(level.turn == 0);
    CHECK(level.at.y > -10);
    CHECK(level.at.y < -8);
    draw_dimensions(left, ViewSide::left, 0, {{between(0, 100, "100")}}, 2.5);
    const Text upright = text_of(left, "100");
    CHECK(upright.turn == 90);
    CHECK(upright.at.x < -10);
    CHECK(upright.at.x > -12);
}

TEST_CASE("a figure wider than its measure stands beside it and touches nothing") {
    Block block;
    draw_dimensions(block, ViewSide::above, 0, {{between(0, 3, "1234.5")}, {between(0, 60, "60")}}, 3.5);
    const Rect box = around(text_box(text_of(block, "1234.5")));
    CHECK((box.left > 3 || box.right < 0));
    for (const Stroke& s : strokes(block, Role::extension)) CHECK_FALSE(meet(corners(box), Quad(s.points)));
}

TEST_CASE("extension lines start 1 mm off the wood and end 2 mm past the line") {
    Block block;
    draw_dimensions(block, ViewSide::below, 0, {{between(0, 100, "100")}}, 2.5);
    const auto lines = strokes(block, Role::extension);
    REQUIRE(lines.size() == 2);
    for (const Stroke& s : lines) {
        CHECK(s.points.front().y == Approx(-1));
        CHECK(s.points.back().y == Approx(-12));
    }
}

TEST_CASE("between two short links a dot stands for the arrows") {
    Block block;
    draw_dimensions(block, ViewSide::below, 0,
                    {{between(0, 8, "8"), between(8, 16, "8"), between(16, 100, "84")}}, 2.5);
    int arrows = 0, dots = 0;
    for (const Item& item : block.items())
        if (const auto* fill = std::get_if<Fill>(&item)) ++(fill->rings.front().size() == 3 ? arrows : dots);
    CHECK(dots == 1);
    CHECK(arrows == 3); // outside at 0, inside at 16 (which the short link shares) and at 100
}

TEST_CASE("no figure of a crowded side touches another figure or a line") {
    // Twelve random-looking links between 2 and 14 mm, with overlapping second and third strings.
    const double places[] = {0, 4, 6.5, 14, 17, 31, 33, 35, 37, 50, 52.5, 60, 63};
    MeasureString first, second;
    for (int i = 0; i + 1 < 13; ++i)
        first.push_back(between(places[i], places[i + 1], std::to_string(10 * (i + 3)) + ".5"));
    for (int i = 0; i + 4 < 13; i += 4) second.push_back(between(places[i], places[i + 4], "217.25"));
    for (const ViewSide side : {ViewSide::below, ViewSide::above, ViewSide::left, ViewSide::right}) {
        Block block;
        draw_dimensions(block, side, 0, {first, second, {between(0, 63, "63")}}, 3.5);
        std::vector<Quad> texts;
        for (const Item& item : block.items())
            if (const auto* text = std::get_if<Text>(&item)) texts.push_back(text_box(*text));
        CHECK(texts.size() == first.size() + second.size() + 1);
        for (std::size_t i = 0; i < texts.size(); ++i)
            for (std::size_t j = i + 1; j < texts.size(); ++j) CHECK_FALSE(meet(texts[i], texts[j]));
        for (const Role role : {Role::dimension, Role::extension})
            for (const Stroke& s : strokes(block, role))
                for (const Quad& text : texts) CHECK_FALSE(meet(text, Quad(s.points)));
    }
}
