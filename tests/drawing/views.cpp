// Lines of views on their way to the paper: joined, thinned, broken.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "drawing/scale.hpp"
#include "drawing/view.hpp"
#include "pieces.hpp"

using namespace rayfleck;
using namespace rayfleck::drawing;

namespace {

double total(const std::vector<Segment2>& segments) {
    double sum = 0;
    for (const Segment2& s : segments) sum += std::hypot(s.b.x - s.a.x, s.b.y - s.a.y);
    return sum;
}

} // namespace

TEST_CASE("lines that overlap or touch end to end become one") {
    const auto lines = united({{{0, 0}, {10, 0}}, {{25, 0}, {8, 0}}, {{25, 0}, {30, 0}}, {{0, 5}, {10, 5}}});
    REQUIRE(lines.size() == 2);
    CHECK(total(lines) == Approx(40));
}

TEST_CASE("a hidden line gives way where a visible one lies on it") {
    const auto lines = without({{{0, 0}, {10, 10}}}, {{{2, 2}, {4, 4}}, {{8, 8}, {20, 20}}});
    REQUIRE(lines.size() == 2);
    CHECK(total(lines) == Approx(6 * std::sqrt(2)));
}

TEST_CASE("of lines too close to print the longer stays") {
    const auto lines = thinned({{{0, 0}, {100, 0}}, {{10, 0.5}, {90, 0.5}}, {{0, 2}, {100, 2}}}, 0.7);
    REQUIRE(lines.size() == 2);
    CHECK(total(lines) == Approx(200));
    // What runs past the longer one is kept.
    CHECK(total(thinned({{{0, 0}, {100, 0}}, {{90, 0.5}, {120, 0.5}}}, 0.7)) == Approx(120));
}

TEST_CASE("the sides of a rectangle become one closed line") {
    const auto lines = chained({{{0, 0}, {10, 0}}, {{10, 5}, {10, 0}}, {{10, 5}, {0, 5}}, {{0, 0}, {0, 5}}});
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].size() == 5);
    CHECK(lines[0].front().x == lines[0].back().x);
}

TEST_CASE("a long part is shortened only where nothing happens") {
    const std::vector<double> nodes{200, 260, 1100, 1160};
    const LengthMap map = LengthMap::broken(0, 2400, 0.2, nodes, 120);
    CHECK(map.is_broken());
    CHECK(map.length_on_paper() <= 120.01);
    // What is short stays true to scale.
    CHECK(map.on_paper(260) - map.on_paper(200) == Approx(60 * 0.2));
    CHECK(map.on_paper(1160) - map.on_paper(1100) == Approx(60 * 0.2));
    double before = -1;
    for (const double node : nodes) {
        CHECK(map.on_paper(node) > before);
        before = map.on_paper(node);
    }
    CHECK_FALSE(LengthMap::broken(0, 500, 0.2, nodes, 120).is_broken());
}

TEST_CASE("scales are those of the lists and nothing between") {
    // ISO 5455: 1, 2 and 5 with powers of ten.
    for (const Scale& scale : scales(measure::Unit::mm)) {
        const double n = scale.factor > 1 ? scale.factor : 1 / scale.factor;
        const double mantissa = n / std::pow(10, std::floor(std::log10(n) + 1e-9));
        CHECK((std::abs(mantissa - 1) < 1e-9 || std::abs(mantissa - 2) < 1e-9 ||
               std::abs(mantissa - 5) < 1e-9));
    }
    // 3/4 in to the foot is 1:16.
    bool found = false;
    for (const Scale& scale : scales(measure::Unit::in))
        found = found || (scale.words == "3/4\" = 1'-0\" (1:16)" && scale.factor == 1.0 / 16);
    CHECK(found);
}

TEST_CASE("wood on the assembly sheet is as long as its scale says") {
    // The hand-built table's top is 540 long; on A3 its views are drawn 1:5, so 108 mm.
    const testing::BuiltPiece table = testing::side_table();
    const Set set = draw({table.model, table.findings, table.cut_list}, {});
    bool one_to_five = false;
    double longest = 0;
    for (const Item& item : set.sheets.front().items) {
        if (const auto* text = std::get_if<Text>(&item)) one_to_five = one_to_five || text->words == "1:5";
        const auto* stroke = std::get_if<Stroke>(&item);
        if (!stroke || stroke->role != Role::edge) continue;
        for (std::size_t i = 1; i < stroke->points.size(); ++i)
            if (stroke->points[i].y == stroke->points[i - 1].y)
                longest = std::max(longest, std::abs(stroke->points[i].x - stroke->points[i - 1].x));
    }
    CHECK(one_to_five);
    CHECK(longest == Approx(108).margin(0.002));
}

TEST_CASE("the plan stands below the front in first angle and above it in third") {
    // In the plan of the wall shelf the back is the upper border: only there run lines as long as the whole
    // piece is wide at two heights 7-1/4 in apart.
    for (const bool first_angle : {true, false}) {
        testing::BuiltPiece shelf = testing::wall_shelf("A2");
        shelf.piece->shop.first_angle = first_angle;
        const Set set = draw({shelf.model, shelf.findings, shelf.cut_list}, {});
        double lowest_edge = 1e9, highest_edge = -1e9, x_dimension = 0;
        const auto with_views = std::find_if(set.sheets.begin(), set.sheets.end(),
                                             [](const Sheet& sheet) { return !sheet.views.empty(); });
        REQUIRE(with_views != set.sheets.end());
        for (const Item& item : with_views->items) {
            const auto* stroke = std::get_if<Stroke>(&item);
            if (!stroke) continue;
            for (const Point2& p : stroke->points) {
                if (stroke->role == Role::edge)
                    lowest_edge = std::min(lowest_edge, p.y), highest_edge = std::max(highest_edge, p.y);
            }
            if (stroke->role == Role::dimension && stroke->points[0].y == stroke->points[1].y &&
                x_dimension == 0)
                x_dimension = stroke->points[0].y;
        }
        // The lengths stand below the front view: in first angle the plan lies below them, in third nothing
        // does.
        CHECK((lowest_edge < x_dimension) == first_angle);
        CHECK(highest_edge > x_dimension);
    }
}

TEST_CASE("a small hidden circle is drawn in two halves, so that it does not look like a letter c") {
    rayfleck::drawing::Seen seen;
    seen.box = {-1, -1, 1, 1};
    constexpr int sides = 24;
    const auto corner = [](int i) {
        const double a = 2 * std::acos(-1.0) * i / sides;
        return rayfleck::drawing::Point2{0.8 * std::cos(a), 0.8 * std::sin(a)};
    };
    for (int i = 0; i < sides; ++i) seen.hidden.push_back({corner(i), corner(i + 1)});
    rayfleck::drawing::Block block;
    rayfleck::drawing::draw_seen(block, seen, 1, {0, 0}, rayfleck::drawing::Role::edge);
    int strokes = 0;
    for (const auto& item : block.items())
        if (const auto* stroke = std::get_if<rayfleck::drawing::Stroke>(&item)) {
            ++strokes;
            CHECK(stroke->points.size() == sides / 2 + 1);
        }
    CHECK(strokes == 2);
}
