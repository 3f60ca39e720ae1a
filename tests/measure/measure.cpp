// Exact fractions and how lengths are written, as tables of pairs worked out by hand.

#include <catch2/catch.hpp>

#include <cstdint>
#include <limits>

#include "measure/length.hpp"
#include "measure/quantity.hpp"
#include "measure/rational.hpp"
#include "measure/space.hpp"

using namespace rayfleck::measure;

namespace {

constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();

struct Shown {
    Length length;
    const char* text;
};

} // namespace

TEST_CASE("fractions are reduced, the bar's sign stands above") {
    CHECK(Rational(6, 8) == Rational(3, 4));
    CHECK(Rational(3, -4).top() == -3);
    CHECK(Rational(3, -4).bottom() == 4);
    CHECK(Rational(-6, -8) == Rational(3, 4));
    CHECK(Rational(0, -7) == Rational(0));
    CHECK(Rational(8, 4).is_whole());
}

TEST_CASE("arithmetic with fractions is exact") {
    CHECK(Rational(1, 3) * Rational(3, 4) == Rational(1, 4));
    CHECK(Rational(1, 3) + Rational(1, 6) == Rational(1, 2));
    CHECK(Rational(1, 2) - Rational(2, 3) == Rational(-1, 6));
    CHECK(Rational(3, 4) / Rational(-3, 8) == Rational(-2));
    // Ten tenths are one, as they are not in binary fractions.
    Rational sum;
    for (int i = 0; i < 10; ++i) sum += Rational(1, 10);
    CHECK(sum == Rational(1));
}

TEST_CASE("fractions compare exactly, however close") {
    CHECK(Rational(1, 3) < Rational(1, 2));
    CHECK(Rational(-1, 2) < Rational(-1, 3));
    CHECK(Rational(most - 1, most) < Rational(1));
    CHECK(Rational(1000000000, 999999999) < Rational(999999999, 999999998));
    CHECK(abs(Rational(-5, 7)) == Rational(5, 7));
}

TEST_CASE("the whole number below a fraction") {
    CHECK(floor(Rational(7, 2)) == 3);
    CHECK(floor(Rational(-7, 2)) == -4);
    CHECK(floor(Rational(-4)) == -4);
    CHECK(floor(Rational(0)) == 0);
}

TEST_CASE("what does not fit is refused, never wrapped round") {
    CHECK_THROWS_AS(Rational(most) + Rational(1), TooLarge);
    CHECK_THROWS_AS(Rational(-most) - Rational(1), TooLarge);
    CHECK_THROWS_AS(Rational(most) * Rational(2), TooLarge);
    CHECK_THROWS_AS(Rational(1, most) * Rational(1, 2), TooLarge);
    CHECK_THROWS_AS(Rational(1, most) + Rational(1, most - 1), TooLarge);
    CHECK_THROWS_AS(Rational(1, std::numeric_limits<std::int64_t>::min()), TooLarge);
    CHECK(Rational(most) * Rational(1, most) == Rational(1));
    CHECK(Rational(most) - Rational(most) == Rational(0));
    CHECK_THROWS_AS(Rational(1, 0), std::domain_error);
    CHECK_THROWS_AS(Rational(1) / Rational(0), std::domain_error);
    CHECK_THROWS_AS(Rational::nearest(std::numeric_limits<double>::quiet_NaN(), 10), TooLarge);
    CHECK_THROWS_AS(Rational::nearest(1e300, 10), TooLarge);
}

TEST_CASE("decimal text rounds half away from zero and drops zeros") {
    const std::pair<Rational, std::string> places2[] = {
        {Rational(1, 3), "0.33"},         {Rational(2, 3), "0.67"},   {Rational(1, 8), "0.13"},
        {Rational(-1, 8), "-0.13"},       {Rational(1, 200), "0.01"}, {Rational(1, 201), "0"},
        {Rational(-1, 201), "0"},         {Rational(5, 2), "2.5"},    {Rational(1000), "1000"},
        {Rational(999999, 1000), "1000"}, {Rational(-7), "-7"},       {Rational(0), "0"},
    };
    for (const auto& [value, text] : places2) CHECK(decimal(value, 2) == text);
    CHECK(decimal(Rational(5, 2), 0) == "3");
    CHECK(decimal(Rational(-5, 2), 0) == "-3");
}

TEST_CASE("an inch is 25.4 mm exactly") {
    CHECK(Length::in(1).in_mm() == Rational(254, 10));
    CHECK(Length::in(Rational(3, 4)) * Rational(1, 3) == Length::in(Rational(1, 4)));
    CHECK(Length::mm(254).in_inches() == Rational(10));
    CHECK(Length::in(12) / Length::mm(Rational(127, 5)) == Rational(12));
}

TEST_CASE("lengths in millimetres, centimetres and metres") {
    const Shown mm[] = {{Length::mm(Rational(4485, 10)), "448.5"},
                        {Length::mm(20), "20"},
                        {Length::in(1), "25.4"},
                        {Length::mm(Rational(1, 20)), "0.1"},
                        {Length::mm(Rational(1, 21)), "0"},
                        {Length::mm(Rational(-1, 20)), "-0.1"},
                        {Length::mm(Rational(1999, 100)), "20"}};
    for (const Shown& one : mm) CHECK(text(one.length, {Unit::mm, 1, 32}) == one.text);
    CHECK(text(Length::mm(1234), {Unit::cm, 1, 32}) == "123.4");
    CHECK(text(Length::mm(1234), {Unit::m, 2, 32}) == "1.23");
    CHECK(text_with_unit(Length::mm(Rational(4485, 10)), {Unit::mm, 1, 32}) == "448.5 mm");
    CHECK(text_with_unit(Length::mm(15), {Unit::cm, 1, 32}) == "1.5 cm");
}

TEST_CASE("lengths in inches and feet, fractions in lowest terms") {
    const Shown inches[] = {{Length::in(Rational(141, 8)), "17-5/8"},
                            {Length::in(Rational(1, 2)), "1/2"},
                            {Length::in(12), "12"},
                            {Length(), "0"},
                            {Length::in(Rational(-5, 2)), "-2-1/2"},
                            {Length::mm(20), "25/32"},
                            {Length::in(Rational(63, 64)), "1"},
                            {Length::in(Rational(1, 64)), "1/32"},
                            {Length::in(Rational(1, 65)), "0"},
                            {Length::in(Rational(-1, 65)), "0"}};
    for (const Shown& one : inches) CHECK(text(one.length, {Unit::in, 1, 32}) == one.text);
    // 20 mm is 0.7874 in; the nearest sixteenth is 13/16.
    CHECK(text(Length::mm(20), {Unit::in, 1, 16}) == "13/16");
    const Shown feet[] = {{Length::in(Rational(85, 2)), "3'-6-1/2"},
                          {Length::in(36), "3'-0"},
                          {Length::in(11), "11"},
                          {Length::in(Rational(-85, 2)), "-3'-6-1/2"},
                          {Length::in(Rational(767, 64)), "1'-0"}};
    for (const Shown& one : feet) CHECK(text(one.length, {Unit::ft, 1, 32}) == one.text);
    CHECK(text_with_unit(Length::in(Rational(141, 8)), {Unit::in, 1, 32}) == "17-5/8\"");
    CHECK(text_with_unit(Length::in(Rational(85, 2)), {Unit::ft, 1, 32}) == "3'-6-1/2\"");
}

TEST_CASE("the rounded length is the one that is printed, and rounding it again changes nothing") {
    for (int unit = 0; unit < 5; ++unit) {
        const Manner manner{static_cast<Unit>(unit), 1, 16};
        for (int k = -40; k <= 40; ++k) {
            const Length length = Length::mm(Rational(k * 37, 13));
            const Length once = rounded(length, manner);
            CHECK(rounded(once, manner) == once);
            CHECK(text(once, manner) == text(length, manner));
        }
    }
}

TEST_CASE("a length that geometry hands back comes to the grid") {
    CHECK(Length::from_geometry(20.0) == Length::mm(20));
    CHECK(Length::from_geometry(0.1 + 0.2) == Length::mm(Rational(3, 10)));
    CHECK_THROWS_AS(Length::from_geometry(std::numeric_limits<double>::infinity()), TooLarge);
}

TEST_CASE("a frame carries points out and back") {
    const Frame frame{{10, 20, 30}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}};
    CHECK(frame.out({1, 2, 3}) == Point{8, 21, 33});
    CHECK(frame.in({8, 21, 33}) == Point{1, 2, 3});
    CHECK(cross({1, 0, 0}, {0, 1, 0}) == Vector{0, 0, 1});
    CHECK(norm({3, 4, 12}) == Approx(13));
    CHECK(Angle::degrees(180).in_radians() == Approx(3.14159265358979));
    CHECK(Angle::radians(Angle::degrees(45).in_radians()).in_degrees() == Approx(45));
}
