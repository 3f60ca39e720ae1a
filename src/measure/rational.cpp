#include "measure/rational.hpp"

#include <cmath>
#include <limits>

namespace rayfleck::measure {
namespace {

__extension__ using Wide = __int128;

Wide gcd(Wide a, Wide b) {
    if (a < 0) a = -a;
    while (b != 0) {
        Wide rest = a % b;
        a = b;
        b = rest < 0 ? -rest : rest;
    }
    return a;
}

Rational narrow(Wide top, Wide bottom) {
    if (bottom == 0) throw std::domain_error("division by zero");
    if (bottom < 0) {
        top = -top;
        bottom = -bottom;
    }
    if (const Wide common = gcd(top, bottom); common > 1) {
        top /= common;
        bottom /= common;
    }
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    if (top > most || top < -most || bottom > most) throw TooLarge();
    // The fraction is reduced, so the public constructor would only repeat the work; it is reached with
    // gcd 1.
    return Rational(static_cast<std::int64_t>(top), static_cast<std::int64_t>(bottom));
}

} // namespace

Rational::Rational(std::int64_t top, std::int64_t bottom) {
    if (bottom == 0) throw std::domain_error("division by zero");
    Wide t = top;
    Wide b = bottom;
    if (b < 0) {
        t = -t;
        b = -b;
    }
    if (const Wide common = gcd(t, b); common > 1) {
        t /= common;
        b /= common;
    }
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    if (t > most || t < -most || b > most) throw TooLarge();
    top_ = static_cast<std::int64_t>(t);
    bottom_ = static_cast<std::int64_t>(b);
}

Rational Rational::nearest(double value, std::int64_t bottom) {
    const double scaled = value * static_cast<double>(bottom);
    if (!std::isfinite(scaled) || std::abs(scaled) > 9.0e18) throw TooLarge();
    return Rational(static_cast<std::int64_t>(std::llround(scaled)), bottom);
}

Rational Rational::operator-() const { return narrow(-Wide(top_), bottom_); }
Rational operator+(Rational a, Rational b) {
    return narrow(Wide(a.top_) * b.bottom_ + Wide(b.top_) * a.bottom_, Wide(a.bottom_) * b.bottom_);
}
Rational operator-(Rational a, Rational b) {
    return narrow(Wide(a.top_) * b.bottom_ - Wide(b.top_) * a.bottom_, Wide(a.bottom_) * b.bottom_);
}
Rational operator*(Rational a, Rational b) {
    return narrow(Wide(a.top_) * b.top_, Wide(a.bottom_) * b.bottom_);
}
Rational operator/(Rational a, Rational b) {
    return narrow(Wide(a.top_) * b.bottom_, Wide(a.bottom_) * b.top_);
}
std::strong_ordering operator<=>(Rational a, Rational b) {
    const Wide left = Wide(a.top_) * b.bottom_;
    const Wide right = Wide(b.top_) * a.bottom_;
    return left < right   ? std::strong_ordering::less
           : left > right ? std::strong_ordering::greater
                          : std::strong_ordering::equal;
}

Rational abs(Rational a) { return a.top() < 0 ? -a : a; }

std::int64_t floor(Rational a) {
    std::int64_t whole = a.top() / a.bottom();
    if (a.top() % a.bottom() < 0) --whole;
    return whole;
}

std::string decimal(Rational a, int places) {
    Wide scale = 1;
    for (int i = 0; i < places; ++i) scale *= 10;
    const bool negative = a.top() < 0;
    const Wide top = negative ? -Wide(a.top()) : Wide(a.top());
    const Wide scaled = (top * scale * 2 + a.bottom()) / (Wide(a.bottom()) * 2);
    std::string digits;
    for (Wide rest = scaled; rest > 0; rest /= 10)
        digits.insert(digits.begin(), static_cast<char>('0' + static_cast<int>(rest % 10)));
    while (static_cast<int>(digits.size()) <= places) digits.insert(digits.begin(), '0');
    std::string text = digits.substr(0, digits.size() - static_cast<std::size_t>(places));
    std::string part = digits.substr(digits.size() - static_cast<std::size_t>(places));
    while (!part.empty() && part.back() == '0') part.pop_back();
    if (!part.empty()) text += "." + part;
    return negative && scaled != 0 ? "-" + text : text;
}

} // namespace rayfleck::measure
