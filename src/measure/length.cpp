#include "measure/length.hpp"

namespace rayfleck::measure {
namespace {

Rational millimetres_per(Unit unit) {
    switch (unit) {
    case Unit::mm:
        return 1;
    case Unit::cm:
        return 10;
    case Unit::m:
        return 1000;
    case Unit::in:
        return Rational(127, 5);
    case Unit::ft:
        return Rational(1524, 5);
    }
    return 1;
}

bool is_metric(Unit unit) { return unit == Unit::mm || unit == Unit::cm || unit == Unit::m; }

Rational step(const Manner& manner) {
    if (!is_metric(manner.unit)) return Rational(127, 5) * Rational(1, manner.finest);
    Rational bottom = 1;
    for (int i = 0; i < manner.decimals; ++i) bottom = bottom * Rational(10);
    return millimetres_per(manner.unit) / bottom;
}

std::string inches_text(Rational inches) {
    const std::int64_t whole = floor(inches);
    const Rational rest = inches - Rational(whole);
    std::string out;
    if (whole != 0 || rest == Rational(0)) out = std::to_string(whole);
    if (rest != Rational(0)) {
        if (!out.empty()) out += "-";
        out += std::to_string(rest.top()) + "/" + std::to_string(rest.bottom());
    }
    return out;
}

} // namespace

Length rounded(Length length, const Manner& manner) {
    const Rational unit = step(manner);
    const Rational steps = abs(length.in_mm()) / unit;
    const Rational whole = floor(steps + Rational(1, 2));
    return Length::mm((length < Length() ? -whole : whole) * unit);
}

std::string text(Length length, const Manner& manner) {
    const Length shown = rounded(length, manner);
    if (is_metric(manner.unit)) return decimal(shown.in_mm() / millimetres_per(manner.unit), manner.decimals);
    const bool negative = shown < Length();
    Rational inches = abs(shown).in_inches();
    std::string out;
    if (manner.unit == Unit::ft && inches >= Rational(12)) {
        const std::int64_t feet = floor(inches / Rational(12));
        inches -= Rational(feet * 12);
        out = std::to_string(feet) + "'-";
    }
    out += inches_text(inches);
    return negative ? "-" + out : out;
}

std::string text_with_unit(Length length, const Manner& manner) {
    return is_metric(manner.unit) ? text(length, manner) + " " + name(manner.unit)
                                  : text(length, manner) + "\"";
}

std::string name(Unit unit) {
    switch (unit) {
    case Unit::mm:
        return "mm";
    case Unit::cm:
        return "cm";
    case Unit::m:
        return "m";
    case Unit::in:
        return "in";
    case Unit::ft:
        return "ft";
    }
    return "";
}

} // namespace rayfleck::measure
