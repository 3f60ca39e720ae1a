// Arithmetic on quantities.
//
// Two bare numbers of one file stay bare. Two bare numbers of files with different units are lengths as soon
// as they are added or compared; in a product the one that stands in the text as a figure counts as plain
// ("width / 2" in a recipe halves a width given in inches). A length divided by a length is a plain number;
// an area is refused, since nothing in the language takes one.

#include "piece/quantity.hpp"

#include <stdexcept>

namespace rayfleck::piece {
namespace {

using Kind = Quantity::Kind;
using Operation = syntax::Expression::Kind;

bool is_sum(Operation o) { return o == Operation::add || o == Operation::subtract; }

Quantity with(const Quantity& like, Rational amount) {
    Quantity out = like;
    out.amount = amount;
    return out;
}

Quantity truth(bool yes) {
    Quantity out;
    out.kind = Kind::truth;
    out.truth = yes;
    return out;
}

Worked fault(std::string message, std::string mend = {}) { return {{}, std::move(message), std::move(mend)}; }

/// Brings both to one kind, so that they can be added and compared.
bool level(Quantity& a, Quantity& b) {
    if (a.kind == Kind::number && b.kind == Kind::number) {
        if (a.unit == b.unit) return true;
        a = Quantity::length(length_in(a.amount, a.unit));
        b = Quantity::length(length_in(b.amount, b.unit));
        return true;
    }
    if (a.kind == b.kind) return true;
    Quantity& bare = a.kind == Kind::number ? a : b;
    const Quantity& other = a.kind == Kind::number ? b : a;
    if (bare.kind != Kind::number) return false;
    if (other.kind == Kind::length)
        bare = Quantity::length(length_in(bare.amount, bare.unit));
    else if (other.kind == Kind::angle || other.kind == Kind::percent)
        bare.kind = other.kind;
    else
        return false;
    return true;
}

Worked compare(Operation operation, Quantity a, Quantity b) {
    if (a.kind == Kind::text && b.kind == Kind::text) {
        if (operation == Operation::equal) return {truth(a.text == b.text), {}, {}};
        return fault("two texts can only be compared with =");
    }
    if (a.kind == Kind::truth || b.kind == Kind::truth || a.kind == Kind::text || b.kind == Kind::text ||
        !level(a, b))
        return fault(what_it_is(a) + " cannot be compared with " + what_it_is(b));
    const auto order = a.amount <=> b.amount;
    switch (operation) {
    case Operation::less:
        return {truth(order < 0), {}, {}};
    case Operation::at_most:
        return {truth(order <= 0), {}, {}};
    case Operation::more:
        return {truth(order > 0), {}, {}};
    case Operation::at_least:
        return {truth(order >= 0), {}, {}};
    default:
        return {truth(order == 0), {}, {}};
    }
}

Worked sum(Operation operation, Quantity a, Quantity b) {
    if (a.kind == Kind::text || b.kind == Kind::text || a.kind == Kind::truth || !level(a, b))
        return fault(what_it_is(a) + " and " + what_it_is(b) + " cannot be " +
                     (operation == Operation::add ? "added" : "subtracted"));
    Quantity out = with(a, operation == Operation::add ? a.amount + b.amount : a.amount - b.amount);
    out.written = a.written && b.written;
    return {out, {}, {}};
}

Worked product(const Quantity& a, const Quantity& b) {
    if (a.kind == Kind::number && b.kind == Kind::number) {
        Quantity out = with(a.written && !b.written ? b : a, a.amount * b.amount);
        out.written = a.written && b.written;
        return {out, {}, {}};
    }
    const Quantity& plain = a.kind == Kind::number ? a : b;
    const Quantity& other = a.kind == Kind::number ? b : a;
    if (plain.kind != Kind::number || other.kind == Kind::text || other.kind == Kind::truth) {
        if (a.kind == Kind::length && b.kind == Kind::length)
            return fault("a length times a length is an area", "multiply by a plain number");
        return fault(what_it_is(a) + " and " + what_it_is(b) + " cannot be multiplied");
    }
    return {with(other, a.amount * b.amount), {}, {}};
}

Worked quotient(Quantity a, Quantity b) {
    if (a.kind == Kind::text || b.kind == Kind::text || a.kind == Kind::truth || b.kind == Kind::truth)
        return fault(what_it_is(a) + " cannot be divided by " + what_it_is(b));
    if (b.amount == Rational(0)) return fault("division by nought");
    if (b.kind == Kind::number) {
        Quantity out = with(a, a.amount / b.amount);
        if (a.kind == Kind::number && a.written && !b.written) out.unit = b.unit;
        out.written = a.kind == Kind::number && a.written && b.written;
        return {out, {}, {}};
    }
    if (!level(a, b)) return fault(what_it_is(a) + " cannot be divided by " + what_it_is(b));
    return {Quantity::number(a.amount / b.amount, measure::Unit::mm, true), {}, {}};
}

Worked work(Operation operation, const Quantity& a, const Quantity& b) {
    if (!a.known() || !b.known()) return {};
    if (is_sum(operation)) return sum(operation, a, b);
    if (operation == Operation::multiply) return product(a, b);
    if (operation == Operation::divide) return quotient(a, b);
    if (operation == Operation::both || operation == Operation::either) {
        if (a.kind != Kind::truth || b.kind != Kind::truth)
            return fault("`and` and `or` stand between two comparisons");
        return {truth(operation == Operation::both ? a.truth && b.truth : a.truth || b.truth), {}, {}};
    }
    return compare(operation, a, b);
}

} // namespace

Quantity Quantity::number(Rational amount, measure::Unit unit, bool written) {
    Quantity out;
    out.kind = Kind::number;
    out.amount = amount;
    out.unit = unit;
    out.written = written;
    return out;
}

Quantity Quantity::length(Length length) {
    Quantity out;
    out.kind = Kind::length;
    out.amount = length.in_mm();
    return out;
}

Quantity Quantity::of_text(std::string text) {
    Quantity out;
    out.kind = Kind::text;
    out.text = std::move(text);
    return out;
}

Length length_in(Rational amount, measure::Unit unit) {
    switch (unit) {
    case measure::Unit::mm:
        return Length::mm(amount);
    case measure::Unit::cm:
        return Length::mm(amount * Rational(10));
    case measure::Unit::m:
        return Length::mm(amount * Rational(1000));
    case measure::Unit::in:
        return Length::in(amount);
    case measure::Unit::ft:
        return Length::in(amount * Rational(12));
    }
    return {};
}

std::optional<Length> as_length(const Quantity& quantity) {
    if (quantity.kind == Kind::length) return Length::mm(quantity.amount);
    if (quantity.kind == Kind::number) return length_in(quantity.amount, quantity.unit);
    return std::nullopt;
}

std::string what_it_is(const Quantity& quantity) {
    switch (quantity.kind) {
    case Kind::unknown:
        return "something unknown";
    case Kind::number:
        return "a number";
    case Kind::length:
        return "a length";
    case Kind::angle:
        return "an angle";
    case Kind::percent:
        return "a percentage";
    case Kind::text:
        return "a text";
    case Kind::truth:
        return "a comparison";
    }
    return {};
}

std::string shown(const Quantity& quantity, const measure::Manner& manner) {
    switch (quantity.kind) {
    case Kind::number:
        return measure::decimal(quantity.amount, 4);
    case Kind::length:
        return measure::text_with_unit(Length::mm(quantity.amount), manner);
    case Kind::angle:
        return measure::decimal(quantity.amount, 3) + " degrees";
    case Kind::percent:
        return measure::decimal(quantity.amount, 3) + "%";
    case Kind::text:
        return '"' + quantity.text + '"';
    case Kind::truth:
        return quantity.truth ? "yes" : "no";
    case Kind::unknown:
        break;
    }
    return "?";
}

Worked combine(Operation operation, const Quantity& a, const Quantity& b) {
    try {
        return work(operation, a, b);
    } catch (const measure::TooLarge&) {
        return fault("this number is too large or too finely divided to be kept exact");
    } catch (const std::domain_error&) {
        return fault("division by nought");
    }
}

Worked choose(bool larger, const Quantity& a, const Quantity& b) {
    const Worked less = combine(Operation::less, a, b);
    if (!less.result.known()) return less;
    Quantity x = a, y = b;
    level(x, y);
    return {less.result.truth == larger ? y : x, {}, {}};
}

Worked halfway(const Quantity& a, const Quantity& b) {
    const Worked both = combine(Operation::add, a, b);
    if (!both.result.known()) return both;
    return combine(Operation::divide, both.result, Quantity::number(Rational(2), measure::Unit::mm, true));
}

} // namespace rayfleck::piece
