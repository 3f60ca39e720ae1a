// See: names of lumber give the sizes of the standards, and feet are counted as the yard counts.

#include <catch2/catch.hpp>

#include "wood/lumber.hpp"

using namespace rayfleck::wood;

namespace {

Length in(std::int64_t top, std::int64_t bottom = 1) { return Length::in(Rational(top, bottom)); }

} // namespace

// DOC PS 20, size table, read in a public copy.
TEST_CASE("softwood names give dressed sizes, dry and green") {
    const auto board = lumber_named("1x6");
    REQUIRE(board);
    CHECK(board->kind == LumberKind::board);
    CHECK(board->rough_thickness == in(1));
    CHECK(board->dressed_thickness == in(3, 4));
    CHECK(*board->nominal_width == in(6));
    CHECK(*board->dressed_width == in(11, 2));
    const auto green_board = lumber_named("1x6", Seasoning::green);
    CHECK(green_board->dressed_thickness == in(25, 32));
    CHECK(*green_board->dressed_width == in(45, 8));

    const auto joist = lumber_named("2 x 10");
    REQUIRE(joist);
    CHECK(joist->name == "2x10");
    CHECK(joist->kind == LumberKind::dimension);
    CHECK(joist->dressed_thickness == in(3, 2));
    CHECK(*joist->dressed_width == in(37, 4));
    CHECK(lumber_named("2x10", Seasoning::green)->dressed_thickness == in(25, 16));
    CHECK(*lumber_named("2x10", Seasoning::green)->dressed_width == in(19, 2));

    CHECK(lumber_named("2x4")->dressed_thickness == in(3, 2));
    CHECK(*lumber_named("2x4")->dressed_width == in(7, 2));
    CHECK(*lumber_named("1x12")->dressed_width == in(45, 4));
}

TEST_CASE("timbers are dressed alike dry and green up to six inches") {
    for (const Seasoning seasoning : {Seasoning::dry, Seasoning::green}) {
        const auto post = lumber_named("6x6", seasoning);
        REQUIRE(post);
        CHECK(post->kind == LumberKind::timber);
        CHECK(post->dressed_thickness == in(11, 2));
        CHECK(*post->dressed_width == in(11, 2));
    }
    CHECK(lumber_named("8x8")->dressed_thickness == in(29, 4));
    CHECK(lumber_named("8x8", Seasoning::green)->dressed_thickness == in(15, 2));
    CHECK(lumber_named("16x16")->dressed_thickness == in(15));
}

TEST_CASE("a softwood thickness may be given in quarters or as a mixed number") {
    for (const char* name : {"5/4x6", "1 1/4 x 6", "1-1/4x6", "5/4 X 6", "1 1/4\u00d76"}) {
        CAPTURE(name);
        const auto decking = lumber_named(name);
        REQUIRE(decking);
        CHECK(decking->name == "1 1/4x6");
        CHECK(decking->dressed_thickness == in(1));
        CHECK(*decking->dressed_width == in(11, 2));
    }
}

// NHLA thicknesses, read on dealers' pages; 10/4 from memory.
TEST_CASE("quarters name rough hardwood of any width") {
    const auto five = lumber_named("5/4");
    REQUIRE(five);
    CHECK(five->kind == LumberKind::hardwood);
    CHECK(five->rough_thickness == in(5, 4));
    CHECK(five->dressed_thickness == in(17, 16));
    CHECK_FALSE(five->dressed_width.has_value());
    CHECK(lumber_named("8/4")->rough_thickness == in(2));
    CHECK(lumber_named("8/4")->dressed_thickness == in(7, 4));
    CHECK(lumber_named("4/4")->dressed_thickness == in(13, 16));
    CHECK(lumber_named("10/4")->confirmation == Confirmation::from_memory);
}

TEST_CASE("what the standards do not have is no lumber, whether or not it looks like it") {
    for (const char* name :
         {"2x7", "9/4", "40 x 40", "2x4x8", "4/0", "0x4", "2x", "x4", "", "8 /4", "two by four", "5x4",
          "99999999999999999999x4", "1/0x6", "2 3x4", "-2x4", "2\" x 4\""}) {
        CAPTURE(name);
        CHECK_FALSE(lumber_named(name).has_value());
    }
    CHECK(looks_like_lumber("2x7"));
    CHECK(looks_like_lumber("9/4"));
    CHECK(looks_like_lumber("2x4"));
    CHECK_FALSE(looks_like_lumber("cherry"));
    CHECK_FALSE(looks_like_lumber("20"));
    CHECK_FALSE(looks_like_lumber("4/0"));
    CHECK_FALSE(looks_like_lumber("box"));
}

TEST_CASE("the thinnest hardwood for a finished thickness") {
    CHECK(thinnest_hardwood_for(Length::mm(20))->name == "4/4");
    CHECK(thinnest_hardwood_for(in(13, 16))->name == "4/4");
    CHECK(thinnest_hardwood_for(Length::mm(21))->name == "5/4");
    CHECK(thinnest_hardwood_for(Length::mm(38))->name == "7/4");
    CHECK(thinnest_hardwood_for(in(15, 4))->name == "16/4");
    CHECK_FALSE(thinnest_hardwood_for(in(4)).has_value());
}

TEST_CASE("dressing takes wood away and thicker names are thicker") {
    Length before;
    for (const Lumber& row : hardwood_thicknesses()) {
        CAPTURE(row.name);
        CHECK(row.dressed_thickness < row.rough_thickness);
        CHECK(row.rough_thickness > before);
        before = row.rough_thickness;
    }
    CHECK(hardwood_thicknesses().size() == 13);
    for (int thick = 1; thick <= 16; ++thick)
        for (int wide = 2; wide <= 16; ++wide) {
            const std::string name = std::to_string(thick) + "x" + std::to_string(wide);
            const auto dry = lumber_named(name), green = lumber_named(name, Seasoning::green);
            REQUIRE(dry.has_value() == green.has_value());
            if (!dry) continue;
            CHECK(*dry->dressed_width <= *green->dressed_width);
            CHECK(*green->dressed_width < *dry->nominal_width);
            CHECK(dry->dressed_thickness <= green->dressed_thickness);
        }
}

// NHLA rule as a lumber firm's page works it: 6 1/2 in by 8 ft is 4 1/3, 10 in by 13 ft is 10 10/12.
TEST_CASE("surface measure is rounded to whole feet") {
    CHECK(surface_measure(in(13, 2), in(96)) == 4);
    CHECK(surface_measure(in(10), in(156)) == 11);
    // Length counts down: 8 ft 11 in is 8 ft.
    CHECK(surface_measure(in(6), in(107)) == 4);
    CHECK(board_feet_by_surface(4, in(2)) == Rational(8));
    CHECK(board_feet_by_surface(4, in(3, 4)) == Rational(4));
}

// American Hardwood Export Council, page on measurement: 5 1/4 in counts as 5.
TEST_CASE("an export tally rounds widths, halves alternately") {
    CHECK(tally_width(in(21, 4), false) == 5);
    CHECK(tally_width(in(21, 4), true) == 5);
    CHECK(tally_width(in(11, 2), true) == 6);
    CHECK(tally_width(in(11, 2), false) == 5);
}

TEST_CASE("board feet are exact") {
    // A board foot is 1 in by 12 in by 12 in.
    CHECK(board_feet(in(1), in(12), in(12)) == Rational(1));
    CHECK(board_feet(in(2), in(8), in(96)) == Rational(32, 3));
    CHECK(board_feet(in(3, 4), in(1, 3), in(12)) == Rational(1, 48));
}

TEST_CASE("standard lengths run from 4 to 16 ft") {
    const auto lengths = standard_lengths();
    CHECK(lengths.size() == 13);
    CHECK(lengths.front() == in(48));
    CHECK(lengths.back() == in(192));
}

// EN 1313-1, clause 5: 0.25 % per 1 % about 20 %; computed.
TEST_CASE("a European size dries by a quarter per cent for each per cent of moisture") {
    CHECK(european_size_at(Length::mm(100), 12).value() == Approx(98.0).margin(0.05));
    CHECK(european_size_at(Length::mm(100), 20) == Length::mm(100));
    CHECK(european_hardwood_thicknesses().front() == 20);
    CHECK(european_softwood_thicknesses().back() == 100);
}
