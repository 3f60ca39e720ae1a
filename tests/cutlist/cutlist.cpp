// The cut list of parts built by hand, so that only this room and carving are under test. Sizes are hand
// calculations; a board foot is 144 cubic inches (NHLA rules, common knowledge of the trade).

#include <catch2/catch.hpp>

#include <deque>

#include "cutlist/cutlist.hpp"
#include "wood/density.hpp"

using namespace rayfleck;
using measure::Box;
using measure::Length;
using measure::Point;
using measure::Rational;

namespace {

/// A piece put together part by part: a body, what stands beyond it at both ends of its length, boxes cut
/// away.
class Bench {
  public:
    Bench() { model.piece = &piece; }

    piece::Part& add(const std::string& base, const std::string& copy, Length thickness, Length width,
                     Length length, const std::vector<Box>& waste, double beyond = 0) {
        piece::Part& part = parts.emplace_back();
        part.id = static_cast<int>(parts.size()) - 1;
        part.base = base;
        part.copy = copy;
        part.name = copy.empty() ? base : base + " at " + copy;
        part.species = wood::find("black cherry");
        part.thickness = thickness;
        part.width = width;
        part.length = length;

        joinery::Made made;
        made.part = &part;
        made.blank = {{-beyond, 0, 0}, {length.value() + beyond, width.value(), thickness.value()}};
        made.thickness = thickness;
        made.width = width;
        made.length = length + Length::from_geometry(2 * beyond);
        made.blank_shape = solid::box({}, made.blank.low, made.blank.high);
        for (const Box& box : waste) made.tools.push_back(solid::box({}, box.low, box.high));
        made.solid = solid::carve(made.blank_shape, made.tools);
        model.made.push_back(std::move(made));
        return part;
    }
    cutlist::CutList list() const { return cutlist::list(model); }

    piece::Piece piece;
    std::deque<piece::Part> parts; // stays put while parts are added
    joinery::Model model;
};

Length mm(int value) { return Length::mm(value); }

Box turned_about_length(Box box, double width, double thickness) {
    return {{box.low.x, width - box.high.y, thickness - box.high.z},
            {box.high.x, width - box.low.y, thickness - box.low.z}};
}
Box mirrored(Box box, double width) {
    return {{box.low.x, width - box.high.y, box.low.z}, {box.high.x, width - box.low.y, box.high.z}};
}

} // namespace

TEST_CASE("four legs with unlike mortises are one row of two hands") {
    // Mortises of two heights in two neighbouring faces: a leg and its neighbour are a pair, diagonal ones
    // the same.
    const Box wide{{480, 0, 12}, {590, 25, 20}}, deep{{500, 14, 0}, {580, 22, 25}};
    Bench bench;
    bench.add("leg", "front-left", mm(38), mm(40), mm(600), {wide, deep});
    bench.add("leg", "front-right", mm(38), mm(40), mm(600), {mirrored(wide, 40), mirrored(deep, 40)});
    bench.add("leg", "back-right", mm(38), mm(40), mm(600),
              {turned_about_length(wide, 40, 38), turned_about_length(deep, 40, 38)});
    bench.add(
        "leg", "back-left", mm(38), mm(40), mm(600),
        {mirrored(turned_about_length(wide, 40, 38), 40), mirrored(turned_about_length(deep, 40, 38), 40)});
    const cutlist::CutList list = bench.list();
    REQUIRE(list.rows.size() == 1);
    CHECK(list.rows[0].name == "leg");
    CHECK(list.rows[0].count == 4);
    CHECK(list.rows[0].mirrored == std::vector<int>{1, 3});
    CHECK(list.rows[0].remark == "2 as drawn, 2 mirrored");
}

TEST_CASE("a square leg with the same mortise in both inside faces is its own mirror image") {
    const Box one{{480, 0, 12}, {590, 25, 20}}, other{{480, 12, 0}, {590, 20, 25}};
    Bench bench;
    bench.add("leg", "left", mm(38), mm(38), mm(600), {one, other});
    bench.add("leg", "right", mm(38), mm(38), mm(600), {mirrored(one, 38), mirrored(other, 38)});
    CHECK(bench.list().rows.at(0).mirrored.empty());

    SECTION("unless its rings are said to lie flat, which a quarter turn would stand up") {
        for (piece::Part& part : bench.parts) part.sawn_stated = true;
        CHECK(bench.list().rows.at(0).mirrored.size() == 1);
    }
}

TEST_CASE("a shelf notched at the other end is the same shelf turned") {
    const Box notch{{0, 0, 0}, {30, 20, 18}}, other{{770, 0, 0}, {800, 20, 18}};
    Bench bench;
    bench.add("shelf", "1", mm(18), mm(200), mm(800), {notch});
    bench.add("shelf", "2", mm(18), mm(200), mm(800), {other});
    const cutlist::CutList list = bench.list();
    REQUIRE(list.rows.size() == 1);
    CHECK(list.rows[0].mirrored.empty());
}

TEST_CASE("cuts in another order and in pieces make the same part") {
    const Box whole{{100, 0, 8}, {300, 10, 20}};
    const Box left{{100, 0, 8}, {180, 10, 20}}, right{{180, 0, 8}, {300, 10, 20}};
    Bench bench;
    bench.add("rail", "1", mm(20), mm(60), mm(400), {whole});
    bench.add("rail", "2", mm(20), mm(60), mm(400), {right, left});
    CHECK(bench.list().rows.size() == 1);
}

TEST_CASE("a tenth of a millimetre in the depth of a mortise makes another row") {
    Bench bench;
    bench.add("stile", "left", mm(20), mm(60), mm(400), {{{100, 0, 7}, {150, 30, 13}}});
    bench.add("stile", "right", mm(20), mm(60), mm(400), {{{100, 0, 7}, {150, 30.1, 13}}});
    const cutlist::CutList list = bench.list();
    REQUIRE(list.rows.size() == 2);
    CHECK(list.rows[0].name == "stile at left");
    CHECK(list.rows[1].name == "stile at right");
    CHECK(list.rows[1].reference == 2);
}

TEST_CASE("parts of another wood, name or grain do not share a row") {
    Bench bench;
    bench.add("slat", "1", mm(10), mm(40), mm(400), {});
    bench.add("slat", "2", mm(10), mm(40), mm(400), {}).species = wood::find("white oak");
    bench.add("batten", "", mm(10), mm(40), mm(400), {});
    bench.add("slat", "3", mm(10), mm(40), mm(400), {}).grain = measure::Angle::degrees(12);
    const cutlist::CutList list = bench.list();
    CHECK(list.rows.size() == 4);
    CHECK(list.rows[3].remark == "grain at 12° to the length");
    REQUIRE(list.totals.size() == 2);
    CHECK(list.totals[1].wood == "white oak");
}

TEST_CASE("rough sizes take the allowances of the shop") {
    Bench bench;
    bench.piece.shop.allow_thickness = mm(4);
    bench.piece.shop.allow_width = mm(6);
    bench.piece.shop.allow_length = mm(20);
    piece::Part& part = bench.add("top", "", mm(20), mm(420), mm(540), {});
    SECTION("of a single board") {
        const cutlist::Row row = bench.list().rows.at(0);
        CHECK(row.rough_thickness == mm(24));
        CHECK(row.rough_width == mm(426));
        CHECK(row.rough_length == mm(560));
        CHECK(row.volume_m3 == Approx(0.024 * 0.426 * 0.560));
        CHECK(row.area_m2 == Approx(0.426 * 0.560));
    }
    SECTION("once for every stave: 420 in staves of at most 110 are four") {
        part.glue_up = piece::GlueUp{mm(110), std::nullopt, true, false};
        const cutlist::Row row = bench.list().rows.at(0);
        CHECK(row.rough_width == mm(420 + 4 * 6));
        CHECK(row.remark == "glued up of 4 staves, bark faces alternating");
    }
    SECTION("420 in staves of exactly 105 are four, not five") {
        part.glue_up = piece::GlueUp{mm(105), std::nullopt, false, false};
        CHECK(bench.list().rows.at(0).remark == "glued up of 4 staves");
    }
    SECTION("hardwood by the quarter is as thick as it is called") {
        part.stock = "4/4";
        CHECK(bench.list().rows.at(0).rough_thickness == Length::in(1));
    }
    SECTION("but not when that is thinner than the part") {
        part.stock = "3/4";
        CHECK(bench.list().rows.at(0).rough_thickness == mm(24));
    }
    SECTION("a sheet is used as it is, and has no board feet") {
        part.species = wood::find("birch plywood");
        REQUIRE(part.species != nullptr);
        const cutlist::CutList list = bench.list();
        CHECK(list.rows.at(0).rough_width == mm(420));
        CHECK(list.rows.at(0).board_feet == 0);
        CHECK(list.rows.at(0).sawn.empty());
        CHECK(list.totals.at(0).area_m2 == Approx(0.420 * 0.540));
    }
}

TEST_CASE("board feet are 144 cubic inches of rough blank") {
    Bench bench;
    bench.piece.shop.allow_thickness = bench.piece.shop.allow_width = bench.piece.shop.allow_length =
        Length();
    bench.add("post", "1", Length::in(2), Length::in(6), Length::in(96), {}).stock = "8/4";
    bench.add("post", "2", Length::in(2), Length::in(6), Length::in(96), {}).stock = "8/4";
    const cutlist::CutList list = bench.list();
    // 2 × 6 in, 8 ft long: 8 board feet each.
    CHECK(list.rows.at(0).board_feet == 16.0);
    CHECK(list.totals.at(0).board_feet == 16.0);
}

TEST_CASE("weight is that of the finished parts at the moisture they are made at") {
    Bench bench;
    bench.piece.made_at = measure::Moisture::percent(12);
    // 0.1 m × 0.1 m × 0.1 m, half of it cut away.
    bench.add("block", "", mm(100), mm(100), mm(100), {{{0, 0, 50}, {100, 100, 100}}});
    const cutlist::CutList list = bench.list();
    // Black cherry: specific gravity 0.50 at 12 % (Wood Handbook 2010, Table 5-3): 560 kg in a cubic metre.
    CHECK(list.totals.at(0).weight_kg == Approx(0.28).epsilon(0.02));
    CHECK(list.finish_area_m2 == Approx(2 * 0.01 + 4 * 0.005));
}

TEST_CASE("the joinery column says what joints add to the body") {
    Bench bench;
    bench.add("leg", "", mm(38), mm(38), mm(600), {});
    bench.add("rail", "", mm(20), mm(60), mm(400), {}, 25);
    joinery::Joint joint;
    joint.a = 1;
    joint.b = 0;
    joint.kind = "mortise and tenon, haunched";
    bench.model.joints.push_back(joint);
    SECTION("in millimetres") {
        const cutlist::CutList list = bench.list();
        CHECK(list.rows.at(0).joinery.empty());
        CHECK(list.rows.at(1).joinery == "2 tenons of 25 in the length");
        CHECK(list.rows.at(1).length == mm(450));
    }
    SECTION("in the maker's inches") {
        bench.piece.manner = {measure::Unit::in, 1, 16};
        CHECK(bench.list().rows.at(1).joinery == "2 tenons of 1 in the length");
    }
    SECTION("of one end only") {
        bench.model.made[1].blank.low.x = 0;
        CHECK(bench.list().rows.at(1).joinery == "tenon of 25 in the length");
    }
}

TEST_CASE("hardware of one name is one line with its parts") {
    Bench bench;
    bench.add("side", "", mm(18), mm(200), mm(700), {});
    bench.add("door", "", mm(18), mm(400), mm(600), {});
    bench.model.hardware = {{"butt hinge 50", 1, {1, 0}, "stated"}, {"butt hinge 50", 1, {1}, "stated"}};
    const cutlist::CutList list = bench.list();
    REQUIRE(list.hardware.size() == 1);
    CHECK(list.hardware[0].count == 2);
    CHECK(list.hardware[0].parts == std::vector<int>{1, 0});
}
