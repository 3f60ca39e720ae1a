// See: joint sizes that are left out follow the trade's rules, exactly.

#include <catch2/catch.hpp>

#include "wood/joinery_rules.hpp"

using namespace rayfleck::wood;
using rayfleck::measure::Length;
using rayfleck::measure::Rational;

// US Navy NAVEDTRA 14119, ch. 3: stock of 3/4 in takes a dowel of 1/4 in; a spline is a third thick and twice
// t wide.
TEST_CASE("edge joints in stock of three quarters of an inch") {
    const Length stock = Length::in(Rational(3, 4));
    CHECK(rules::dowel_diameter.share_of(stock) == Length::in(Rational(1, 4)));
    CHECK(rules::spline_thickness.share_of(stock) == Length::in(Rational(1, 4)));
    CHECK(rules::spline_width.share_of(stock) == Length::in(Rational(3, 2)));
}

TEST_CASE("a tenon and its two cheeks make up the stock") {
    const Length stock = Length::mm(20);
    CHECK(rules::tenon_thickness.share_of(stock) + rules::mortise_wall.share_of(stock) +
              rules::mortise_wall.share_of(stock) ==
          stock);
}

TEST_CASE("dovetails are flatter in hard wood than in soft") {
    CHECK(rules::dovetail_slope(*find("cherry")).value == 8);
    CHECK(rules::dovetail_slope(*find("mahogany")).value == 8);
    CHECK(rules::dovetail_slope(*find("pine")).value == 6);
}

TEST_CASE("a rule without a publication says so") {
    CHECK(rules::dado_depth.confirmation == Confirmation::none);
    CHECK(text_with_source(rules::dado_depth.figure()) == "0.333333 (common practice, no published source)");
    CHECK(text_with_source(rules::haunch_length) ==
          "12 mm (Building Construction 3-1 (textbook, date not seen); read)");
    CHECK(length(rules::haunch_length) == Length::mm(12));
    CHECK(length(rules::table_rail_haunch_least) == Length::in(Rational(3, 4)));
}
