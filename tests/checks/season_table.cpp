// See: the table of the seasons tells what hand computation tells, of sound pieces too.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/season_table.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

const checks::MovingPart* row_of(const checks::SeasonTable& table, const joinery::Model& model,
                                 const std::string& name) {
    for (const checks::MovingPart& row : table.parts)
        for (const int part : row.parts)
            if (model.made[static_cast<std::size_t>(part)].part->name == name) return &row;
    return nullptr;
}

} // namespace

// Black cherry, Wood Handbook 2010, Table 13-5 (read): 0.00126 radial, 0.00248 tangential per 1 %.
TEST_CASE("a flat-sawn board, a rift square and a board near the pith move as computed by hand") {
    const auto made =
        study("t.fleck",
              "piece \"t\"\nunits mm\nclimate 6% to 12% moisture\nmade at 8% moisture\n"
              "rod across left 0, right 900\nrod deep front 0, back 400\nrod up floor 0, top 600\n"
              "part top\n  wood cherry, flat sawn, loose\n  20 thick, runs across\n"
              "  from left to right, from front to back, bottom at 600\n"
              "part leg, at each corner\n  wood cherry, rings at 45 degrees, loose\n  size 60 x 60, "
              "stands\n  left at left, front at front, from floor to top\n"
              "part shelf\n  wood cherry, pith 40 beyond bottom, loose\n  size 20 x 200, runs across\n"
              "  from left to right, front at 100, bottom at 300\n",
              std::nullopt);
    REQUIRE(made->sizes.size() == 1);
    const joinery::Model& model = made->sizes.front()->model;
    const checks::SeasonTable table = checks::season_table(model);
    const checks::MovingPart* top = row_of(table, model, "top");
    REQUIRE(top != nullptr);
    CHECK(top == &table.parts.front());
    CHECK(top->width == Approx(400));
    CHECK(top->dry == Approx(-400 * 0.00248 * 2));
    CHECK(top->damp == Approx(400 * 0.00248 * 4));
    const checks::MovingPart* leg = row_of(table, model, "leg at front-left");
    REQUIRE(leg != nullptr);
    CHECK(leg->parts.size() == 4);
    CHECK(leg->range() == Approx(60 * (0.00248 + 0.00126) / 2 * 6));
    // |gamma| = (sT - sR) sin 2 theta, greatest on the diagonal, over 60 mm and 4 %.
    CHECK(leg->out_of_square == Approx(60 * (0.00248 - 0.00126) * 4));
    const checks::MovingPart* shelf = row_of(table, model, "shelf");
    REQUIRE(shelf != nullptr);
    // (sT - sR) w^2 / (4 a), a the 40 mm from the pith to the face.
    CHECK(shelf->hollow == Approx((0.00248 - 0.00126) * 4 * 200 * 200 / (4 * 40)));
}

TEST_CASE("a sound piece tells the room that its panel and its top have") {
    for (const std::string sample : {"side-table", "wall-cabinet"}) {
        const auto made =
            study(sample + ".fleck", bytes_of(std::string(RAYFLECK_ROOT) + "/samples/" + sample + ".fleck"),
                  std::string(RAYFLECK_ROOT) + "/samples");
        const joinery::Model& model = made->sizes.front()->model;
        const checks::SeasonTable table = checks::season_table(model);
        const checks::MovingPart* row = row_of(table, model, sample == "side-table" ? "top" : "door panel");
        INFO(sample);
        REQUIRE(row != nullptr);
        REQUIRE(row->room);
        REQUIRE(row->needs);
        CHECK(*row->needs > 0);
        CHECK(*row->room > *row->needs);
        CHECK(*row->leave >= *row->needs / 2);
        CHECK(std::is_sorted(table.parts.begin(), table.parts.end(), [](const auto& a, const auto& b) {
            return std::abs(a.range()) > std::abs(b.range()) + 0.01;
        }));
    }
}
