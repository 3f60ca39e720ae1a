#pragma once
// Lengths, exact, and how the trade writes them.
//
// A Length is an exact number of millimetres; 1 in is 25.4 mm exactly (international inch, 1959). Units exist
// only where text is read and where it is written: inside the program there is one Length.

#include <compare>
#include <string>

#include "measure/rational.hpp"

namespace rayfleck::measure {

/// An exact distance. Signed: offsets along a rod may point either way.
class Length {
  public:
    constexpr Length() = default;
    static constexpr Length mm(Rational millimetres) { return Length(millimetres); }
    static Length in(Rational inches) { return Length(inches * Rational(127, 5)); }
    /// Nearest length on the 1/160000 mm grid on which solids are cut; where geometry hands a size back.
    static Length from_geometry(double millimetres) { return Length(Rational::nearest(millimetres, 160000)); }

    constexpr Rational in_mm() const { return mm_; }
    Rational in_inches() const { return mm_ * Rational(5, 127); }
    /// Millimetres as a floating number, for geometry only.
    double value() const { return mm_.value(); }

    Length operator-() const { return Length(-mm_); }
    friend Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
    friend Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
    friend Length operator*(Length a, Rational b) { return Length(a.mm_ * b); }
    friend Length operator*(Rational a, Length b) { return Length(a * b.mm_); }
    friend Length operator/(Length a, Rational b) { return Length(a.mm_ / b); }
    friend Rational operator/(Length a, Length b) { return a.mm_ / b.mm_; }
    Length& operator+=(Length b) { return *this = *this + b; }
    Length& operator-=(Length b) { return *this = *this - b; }
    friend constexpr bool operator==(Length a, Length b) = default;
    friend std::strong_ordering operator<=>(Length a, Length b) { return a.mm_ <=> b.mm_; }

  private:
    explicit constexpr Length(Rational millimetres) : mm_(millimetres) {}
    Rational mm_;
};

inline Length abs(Length a) { return Length::mm(abs(a.in_mm())); }

enum class Unit { mm, cm, m, in, ft };

/// How a maker wants lengths printed: his unit and the finest step he reads off his rule.
struct Manner {
    Unit unit = Unit::mm;
    /// mm, cm, m: decimal places of the unit. in, ft: finest fraction, a power of two (16 prints sixteenths).
    int decimals = 1;
    int finest = 32;
};

/// A length without its unit, as it stands on a drawing: `448.5`, `17-5/8`, `3'-6-1/2`.
/// Rounded to the manner's finest step, half away from zero; fractions in lowest terms.
std::string text(Length length, const Manner& manner);
/// The same with its unit, as it stands in a message: `448.5 mm`, `17-5/8"`.
std::string text_with_unit(Length length, const Manner& manner);
/// The length that `text` prints: rounded to the manner's finest step.
Length rounded(Length length, const Manner& manner);
/// The unit's abbreviation: mm, cm, m, in, ft.
std::string name(Unit unit);

} // namespace rayfleck::measure
