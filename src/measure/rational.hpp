#pragma once
// Exact fractions, the numbers under every length of the language.
//
// A third of 3/4in must be exactly 1/4in, in a file that mixes inches and millimetres, so lengths and the
// numbers of arithmetic are fractions of two 64-bit integers until geometry begins. Every operation is
// carried out in 128 bits and reduced; what does not fit then throws TooLarge, which the elaborator turns
// into a finding at the place of the expression. Nothing wraps round silently.

#include <compare>
#include <cstdint>
#include <stdexcept>
#include <string>

namespace rayfleck::measure {

/// Thrown by an exact operation whose result needs more than 64 bits above or below the fraction bar.
struct TooLarge : std::overflow_error {
    TooLarge() : std::overflow_error("number too large or too finely divided") {}
};

/// A reduced fraction; the denominator is always positive.
class Rational {
  public:
    constexpr Rational() = default;
    constexpr Rational(std::int64_t whole) : top_(whole) {}
    /// fails  throws std::domain_error when bottom is 0, TooLarge when the reduced fraction does not fit
    Rational(std::int64_t top, std::int64_t bottom);

    /// Nearest fraction with the given denominator; used where geometry hands a number back to the trade.
    /// fails  throws TooLarge when the value is not finite or does not fit
    static Rational nearest(double value, std::int64_t bottom);

    constexpr std::int64_t top() const { return top_; }
    constexpr std::int64_t bottom() const { return bottom_; }
    double value() const { return static_cast<double>(top_) / static_cast<double>(bottom_); }
    bool is_whole() const { return bottom_ == 1; }

    Rational operator-() const;
    friend Rational operator+(Rational a, Rational b);
    friend Rational operator-(Rational a, Rational b);
    friend Rational operator*(Rational a, Rational b);
    /// fails  throws std::domain_error when b is 0
    friend Rational operator/(Rational a, Rational b);
    Rational& operator+=(Rational b) { return *this = *this + b; }
    Rational& operator-=(Rational b) { return *this = *this - b; }

    friend constexpr bool operator==(Rational a, Rational b) = default;
    friend std::strong_ordering operator<=>(Rational a, Rational b);

  private:
    std::int64_t top_ = 0;
    std::int64_t bottom_ = 1;
};

Rational abs(Rational a);
/// Largest whole number not above a.
std::int64_t floor(Rational a);

/// Decimal text with at most `places` digits after the point, rounded half away from zero, no trailing zeros.
std::string decimal(Rational a, int places);

} // namespace rayfleck::measure
