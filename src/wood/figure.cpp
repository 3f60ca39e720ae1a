// Figures in words, and figures that are lengths.
//
// Six significant digits print every figure of the tables as the tables print it and hide the noise of a
// computed one. A figure becomes a length through thousandths of its unit, which is finer than any figure of
// the trade.

#include "wood/figure.hpp"

#include <stdexcept>

#include <fmt/format.h>

namespace rayfleck::wood {

std::string_view text(Confirmation confirmation) {
    switch (confirmation) {
    case Confirmation::read:
        return "read";
    case Confirmation::read_secondary:
        return "read (secondary)";
    case Confirmation::from_memory:
        return "from memory";
    case Confirmation::stated:
        return "not verified";
    case Confirmation::none:
        break;
    }
    return "no published source";
}

std::string text(const Figure& figure) {
    std::string number = fmt::format("{:.6g}", figure.value);
    return figure.unit.empty() ? number : fmt::format("{} {}", number, figure.unit);
}

std::string text_with_source(const Figure& figure) {
    // "common practice, no published source (no published source)" would say it twice.
    if (figure.confirmation == Confirmation::none) return fmt::format("{} ({})", text(figure), figure.source);
    return fmt::format("{} ({}; {})", text(figure), figure.source, text(figure.confirmation));
}

measure::Length length(const Figure& figure) {
    const measure::Rational number = measure::Rational::nearest(figure.value, 1000);
    if (figure.unit == "mm") return measure::Length::mm(number);
    if (figure.unit == "in") return measure::Length::in(number);
    throw std::logic_error(fmt::format("a figure in '{}' is not a length", figure.unit));
}

} // namespace rayfleck::wood
