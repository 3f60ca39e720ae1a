// See: wood moves as the handbook's tables say, in every direction of a part.

#include <cmath>

#include <catch2/catch.hpp>

#include "wood/movement.hpp"

using namespace rayfleck::wood;
using rayfleck::measure::cross;
using rayfleck::measure::dot;
using rayfleck::measure::Rational;

namespace {

constexpr Moisture at(double percent) { return Moisture::percent(percent); }
double inches(Length length) { return length.value() / 25.4; }

} // namespace

// National Wood Flooring Association, example for mesquite on a flooring page: 5 in wide, 6 to 9 %, 0.019 in.
// A woodworking magazine of September 2021: red alder, 8 in flat sawn, 0.0026, 6 %: 0.1248 in.
TEST_CASE("published examples of Eq 13-2 come out") {
    Species mesquite;
    mesquite.coefficient_radial = Figure{0.00129, "per 1 % MC", "example", Confirmation::read};
    mesquite.coefficient_tangential = mesquite.coefficient_radial;
    CHECK(inches(movement(Length::in(5), at(6), at(9), Sawn::flat, mesquite)) ==
          Approx(0.019).margin(0.0005));
    Species alder = mesquite;
    alder.coefficient_tangential = Figure{0.0026, "per 1 % MC", "example", Confirmation::read};
    CHECK(inches(movement(Length::in(8), at(6), at(12), Sawn::flat, alder)) == Approx(0.1248).margin(0.0001));
}

// University course page, problem 4.34: joist of 13.25 in, 0.2 % per 1 % MC, 19 to 10 %: 0.2385 in lost.
TEST_CASE("a joist loses a quarter inch between yard and house") {
    Species joist;
    joist.coefficient_radial = joist.coefficient_tangential =
        Figure{0.002, "per 1 % MC", "example", Confirmation::read};
    CHECK(inches(movement(Length::in(Rational(53, 4)), at(19), at(10), Sawn::flat, joist)) ==
          Approx(-0.2385).margin(0.0001));
}

// Magnitudes by hand from Wood Handbook Table 13-5: 12 in of hard maple from 6 to 10 %.
TEST_CASE("a hard maple top of 12 in grows a sixth of an inch flat sawn, half of that quarter sawn") {
    const Species& maple = *find("hard maple");
    const Length width = Length::in(12);
    CHECK(inches(movement(width, at(6), at(10), Sawn::flat, maple)) == Approx(0.169).margin(0.0005));
    CHECK(inches(movement(width, at(6), at(10), Sawn::quarter, maple)) == Approx(0.079).margin(0.0005));
    CHECK(inches(movement_in_length(width, at(6), at(10), maple)) == Approx(0.003).margin(0.0005));
    CHECK(inches(movement_in_thickness(width, at(6), at(10), ring_angle(Sawn::flat), maple)) ==
          Approx(0.079).margin(0.0005));
    // Drying is the same with the sign turned, since Eq 13-2 is linear.
    CHECK(movement(width, at(10), at(6), Sawn::flat, maple) ==
          -movement(width, at(6), at(10), Sawn::flat, maple));
}

// Wood Handbook 2010: sugar maple S_T 9.9 % (Table 4-3) and black cherry 3.7, 7.1 % (Tables 4-3 and 13-5,
// read).
TEST_CASE("Eq 13-3 at 10 percent gives the coefficients of Table 13-5") {
    CHECK(9.9 / (3000 - 20 * 9.9) == Approx(0.00353).margin(0.00001));
    Species bare = *find("cherry");
    bare.coefficient_radial.reset();
    bare.coefficient_tangential.reset();
    CHECK(radial_coefficient(bare)->value == Approx(0.00126).margin(0.00001));
    CHECK(tangential_coefficient(bare)->value == Approx(0.00248).margin(0.00001));
    // One per cent of moisture, started at 10 %, is that coefficient.
    CHECK(strain_from_shrinkage(7.1, at(10), at(11)).in_ratio() == Approx(0.00248).margin(0.00001));
}

// Oak and hickory rows are groups, redcedar and redwood rest on older tests, imported woods on other samples.
TEST_CASE("most coefficients of Table 13-5 follow from Table 4-3 by Eq 13-3") {
    int compared = 0, agreeing = 0;
    for (const Species& wood : all()) {
        for (const auto& [tabulated, shrinkage] :
             {std::pair{wood.coefficient_radial, wood.shrinkage_radial},
              std::pair{wood.coefficient_tangential, wood.shrinkage_tangential}}) {
            if (!tabulated || wood.kind == Kind::imported) continue;
            ++compared;
            const double computed = shrinkage->value / (3000 - 20 * shrinkage->value);
            // Half a unit of the fifth decimal from rounding, one more from the table.
            if (std::abs(tabulated->value - computed) < 1.5e-5) ++agreeing;
        }
    }
    CHECK(compared == 76);
    CHECK(agreeing >= 64);
}

// The Eq 13-3 form with moisture 30 and 0 must give back the total shrinkage itself: 3000/S - 30 + 30 =
// 3000/S.
TEST_CASE("Eq 13-3 from saturation to dry is the total shrinkage") {
    CHECK(strain_from_shrinkage(7.4, at(30), at(0)).in_ratio() == Approx(-0.074));
    CHECK(strain_from_shrinkage(7.4, at(80), at(-3)).in_ratio() == Approx(-0.074));
    CHECK(strain_from_shrinkage(7.4, at(40), at(35)).in_ratio() == 0);
}

TEST_CASE("a wood without a row in Table 13-5 moves by Eq 13-3") {
    const Species& sapele = *find("sapele");
    // 4 / (3000/7.4 - 30 + 6), by hand: 4 / 381.4054
    CHECK(natural_strains(at(6), at(10), sapele).tangential.in_ratio() == Approx(0.0104875).epsilon(1e-4));
    CHECK(movement_source(sapele) == "Wood Handbook 2010, Eq 13-3, from total shrinkage");
    CHECK(movement_source(*find("cherry")) == "Wood Handbook 2010, Eq 13-2 and Table 13-5");
}

// Wood Handbook Eq 4-9: sugar maple green to 6 %, 9.9 (1 - 6/30).
TEST_CASE("shrinkage part of the way to dry") {
    CHECK(shrinkage_at(9.9, at(6)) == Approx(7.92).margin(0.001));
    CHECK(shrinkage_at(9.9, at(30)) == 0);
    CHECK(shrinkage_at(9.9, at(60)) == 0);
    CHECK(shrinkage_at(9.9, at(0)) == 9.9);
}

TEST_CASE("nothing moves above fibre saturation") {
    CHECK(movement(Length::mm(100), at(40), at(60), Sawn::flat, *find("oak, white")) == Length());
    CHECK(movement(Length::mm(100), at(18), at(25), Sawn::flat, *find("western redcedar")) == Length());
    CHECK(movement(Length::mm(100), at(18), at(25), Sawn::flat, *find("cherry")) > Length());
}

// Plane transformation of strain by hand: at 45 degrees width and thickness both take the mean, the shear
// half of T - R.
TEST_CASE("rift sawn wood moves by the mean and turns its square section into a diamond") {
    const Species& maple = *find("hard maple");
    const StrainTensor t = strain(at(6), at(10), {ring_angle(Sawn::rift), Angle()}, maple);
    const double tangential = 0.00353 * 4, radial = 0.00165 * 4;
    CHECK(t.yy == Approx((tangential + radial) / 2));
    CHECK(t.zz == Approx((tangential + radial) / 2));
    CHECK(t.yz == Approx((tangential - radial) / 2));
    // The angle between the sides changes by twice the tensor shear: (T - R) sin 2 theta.
    CHECK(2 * t.shear({0, 1, 0}, {0, 0, 1}).in_ratio() == Approx(tangential - radial));
    // Leaning the other way, the diamond leans the other way and the sizes are the same.
    const StrainTensor other = strain(at(6), at(10), {Angle::degrees(-45), Angle()}, maple);
    CHECK(other.yy == Approx(t.yy));
    CHECK(other.yz == Approx(-t.yz));
}

// C_T cos^2 + C_R sin^2 with 30 degrees: 3/4 and 1/4.
TEST_CASE("between flat and rift the coefficient goes with the square of the cosine") {
    const Species& cherry = *find("cherry");
    const double expected = 100 * 4 * (0.75 * 0.00248 + 0.25 * 0.00126);
    CHECK(movement(Length::mm(100), at(6), at(10), Angle::degrees(30), cherry).value() ==
          Approx(expected).margin(1e-5));
}

TEST_CASE("grain turned on the face swaps length and width at a right angle, and mixes them between") {
    const Species& oak = *find("white oak");
    const double l = 0.002 / 30 * 6, w = 0.00365 * 6, h = 0.00180 * 6;
    const StrainTensor crossed = strain(at(6), at(12), {Angle(), Angle::degrees(90)}, oak);
    CHECK(crossed.xx == Approx(w));
    CHECK(crossed.yy == Approx(l));
    CHECK(crossed.zz == Approx(h));
    CHECK(crossed.xy == Approx(0).margin(1e-12));
    // 30 degrees by hand: cos^2 = 3/4, sin^2 = 1/4, sin cos = sqrt(3)/4; the fibre moves least, so xy is
    // negative.
    const StrainTensor turned = strain(at(6), at(12), {Angle(), Angle::degrees(30)}, oak);
    CHECK(turned.xx == Approx(0.75 * l + 0.25 * w));
    CHECK(turned.yy == Approx(0.25 * l + 0.75 * w));
    CHECK(turned.xy == Approx((l - w) * std::sqrt(3.0) / 4));
    // Along the fibre itself the strain is that along the grain.
    CHECK(turned.along({std::sqrt(3.0) / 2, 0.5, 0}).in_ratio() == Approx(l));
}

TEST_CASE("a part's frame carries its strain into the piece") {
    const Species& cherry = *find("cherry");
    const StrainTensor own = strain(at(6), at(10), {Angle(), Angle()}, cherry);
    // A leg: length up, width across, thickness deep.
    const Frame leg{{10, 20, 30}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}};
    const StrainTensor in_piece = own.turned(leg);
    CHECK(in_piece.zz == Approx(own.xx));
    CHECK(in_piece.xx == Approx(own.yy));
    CHECK(in_piece.yy == Approx(own.zz));
    // A frame askew: what the tensor says along a direction must not depend on the frame it is said in.
    const Vector x = unit(Vector{1, 2, 2}), y = unit(cross(Vector{0, 0, 1}, x)), z = cross(x, y);
    const Frame askew{{}, x, y, z};
    const StrainTensor rift = strain(at(6), at(10), {Angle::degrees(50), Angle::degrees(20)}, cherry);
    const Vector asked = unit(Vector{3, -1, 2});
    CHECK(rift.turned(askew).along(askew.turn_out(asked)).in_ratio() == Approx(rift.along(asked).in_ratio()));
    // The trace is the change of volume, in every frame.
    const StrainTensor there = rift.turned(askew);
    CHECK(there.xx + there.yy + there.zz == Approx(rift.xx + rift.yy + rift.zz));
}

TEST_CASE("the mismatch of a cross-grain contact is the difference of two tensors in its plane") {
    const Species& oak = *find("white oak");
    // A batten glued across a top: both faces horizontal, grain at right angles.
    const StrainTensor top = strain(at(6), at(10), {Angle(), Angle()}, oak);
    const StrainTensor batten = top.turned(Frame{{}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}});
    const StrainsInPlane mismatch = strains_in_plane(top - batten, {0, 0, 1});
    const double expected = 4 * (0.00365 - 0.002 / 30);
    CHECK(mismatch.greatest.in_ratio() == Approx(expected));
    CHECK(mismatch.least.in_ratio() == Approx(-expected));
    CHECK(std::abs(mismatch.towards_greatest.y) == Approx(1));
    CHECK(std::abs(mismatch.towards_least.x) == Approx(1));
    // The same grain: nothing to fear.
    CHECK(strains_in_plane(top - top, {0, 0, 1}).greatest.in_ratio() == 0);
}

TEST_CASE("strains in a plane are the extremes over its directions") {
    const StrainTensor t{0.001, 0.004, -0.002, 0.0013, -0.0007, 0.0004};
    const Vector normal = unit(Vector{1, -2, 0.5});
    const StrainsInPlane found = strains_in_plane(t, normal);
    CHECK(dot(found.towards_greatest, normal) == Approx(0).margin(1e-12));
    CHECK(dot(found.towards_greatest, found.towards_least) == Approx(0).margin(1e-12));
    CHECK(t.along(found.towards_greatest).in_ratio() == Approx(found.greatest.in_ratio()));
    CHECK(t.along(found.towards_least).in_ratio() == Approx(found.least.in_ratio()));
    const Vector u = found.towards_greatest, v = found.towards_least;
    for (int degrees = 0; degrees < 180; degrees += 5) {
        const double a = degrees * std::acos(-1.0) / 180;
        const double here = t.along(u * std::cos(a) + v * std::sin(a)).in_ratio();
        CHECK(here <= found.greatest.in_ratio() + 1e-12);
        CHECK(here >= found.least.in_ratio() - 1e-12);
    }
}

TEST_CASE("plywood hardly moves in its plane, however its log was sawn") {
    const Species& ply = *find("birch plywood");
    const Length wide = Length::mm(600);
    CHECK(movement(wide, at(6), at(12), Sawn::flat, ply) ==
          movement(wide, at(6), at(12), Sawn::quarter, ply));
    CHECK(movement(wide, at(6), at(12), Sawn::flat, ply).value() == Approx(0.54));
    CHECK(movement(wide, at(6), at(12), Sawn::flat, ply) <
          movement(wide, at(6), at(12), Sawn::quarter, *find("mahogany")));
    CHECK(cup_depth(wide, Length::mm(60), at(12), at(6), ply) == Length());
}

// By hand: a face 200 wide and 400 from the pith, hard maple drying by 4 %. Every point keeps its ring and
// its share of the arc: one at angle t and radius r goes to radius r (1 - s_R), angle t (1 - s_T)/(1 - s_R).
// The depth is the difference of heights of edge and middle.
TEST_CASE("a drying flat-sawn board goes hollow on the bark side by the geometry of its rings") {
    const Species& maple = *find("hard maple");
    const double s_t = 0.00353 * 4, s_r = 0.00165 * 4, a = 400, half = 100;
    const double t = std::atan(half / a), radius = std::hypot(half, a) * (1 - s_r);
    const double exact = radius * std::cos(t * (1 - s_t) / (1 - s_r)) - a * (1 - s_r);
    const Length depth = cup_depth(Length::mm(200), Length::mm(400), at(10), at(6), maple);
    CHECK(depth.value() == Approx(exact).epsilon(0.05));
    CHECK(depth > Length());
    CHECK(cup_depth(Length::mm(200), Length::mm(400), at(6), at(10), maple) == -depth);
    // Twice the width, four times the cup.
    CHECK(cup_depth(Length::mm(400), Length::mm(400), at(10), at(6), maple).value() ==
          Approx(4 * depth.value()).epsilon(1e-4));
}

TEST_CASE("ring angles have names with boundaries at 30 and 60 degrees") {
    CHECK(sawn_at(Angle::degrees(0)) == Sawn::flat);
    CHECK(sawn_at(Angle::degrees(29.9)) == Sawn::flat);
    CHECK(sawn_at(Angle::degrees(-45)) == Sawn::rift);
    CHECK(sawn_at(Angle::degrees(60)) == Sawn::rift);
    CHECK(sawn_at(Angle::degrees(60.1)) == Sawn::quarter);
    for (const Sawn sawn : {Sawn::flat, Sawn::rift, Sawn::quarter}) CHECK(sawn_at(ring_angle(sawn)) == sawn);
}
