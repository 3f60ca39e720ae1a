// Working out expressions: numbers with units, values, lines, faces and sizes of parts.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using Kind = Expression::Kind;

Quantity of_kind(Quantity::Kind kind, Rational amount) {
    Quantity out;
    out.kind = kind;
    out.amount = amount;
    return out;
}

Quantity number(Elaboration& e, const Expression& x) {
    switch (x.unit) {
    case syntax::NumberUnit::bare:
        return Quantity::number(x.amount, e.unit_of(x.span), true);
    case syntax::NumberUnit::mm:
        return Quantity::length(length_in(x.amount, measure::Unit::mm));
    case syntax::NumberUnit::cm:
        return Quantity::length(length_in(x.amount, measure::Unit::cm));
    case syntax::NumberUnit::m:
        return Quantity::length(length_in(x.amount, measure::Unit::m));
    case syntax::NumberUnit::in:
        return Quantity::length(length_in(x.amount, measure::Unit::in));
    case syntax::NumberUnit::ft:
        return Quantity::length(length_in(x.amount, measure::Unit::ft));
    case syntax::NumberUnit::degrees:
        return of_kind(Quantity::Kind::angle, x.amount);
    case syntax::NumberUnit::percent:
        return of_kind(Quantity::Kind::percent, x.amount);
    }
    return {};
}

std::optional<Side> side_word(const std::string& word) {
    for (const Side side : {Side::left, Side::right, Side::front, Side::back, Side::top, Side::bottom})
        if (word == text(side)) return side;
    return std::nullopt;
}

Quantity line_quantity(Elaboration& e, LineEntry& line) {
    const std::optional<Length> at = line_at(e, line);
    return at ? Quantity::length(*at) : Quantity{};
}

/// A side alone is the outermost line of that side.
Quantity outermost(Elaboration& e, Side side, Span span, const Context& c) {
    const Direction direction = *direction_of(side);
    if (c.scope->rods[static_cast<std::size_t>(index_of(direction))].empty()) {
        if (!e.lines_may_be_lost)
            e.error("unknown-name", span,
                    "`" + text(side) + "` has no line: there is no rod " + text(direction))
                .mend = "lay out a rod, as in `rod " + text(direction) + " " +
                        text(side_of(direction, false)) + " 0, " + text(side_of(direction, true)) +
                        " 400`, or name the part: `" + text(side) + " of ...`";
        return {};
    }
    const std::optional<Interval> reach = reach_of(e, *c.scope, direction);
    if (!reach) return {};
    return Quantity::length(is_high(side) ? reach->high : reach->low);
}

Quantity name(Elaboration& e, const Expression& x, const Context& c) {
    if (ValueEntry* value = find_value(*c.scope, x.word)) return value_of(e, *value);
    if (LineEntry* line = find_line(*c.scope, x.word)) return line_quantity(e, *line);
    if (const auto side = side_word(x.word)) return outermost(e, *side, x.span, c);
    if (wood::find(x.word, e.own_woods)) return Quantity::of_text(x.word);
    unknown_name(e, *c.scope, x.word, x.span);
    return {};
}

/// `30 from left`: in shaping from the part's own side, elsewhere from the rod's outermost line; always
/// inwards.
Quantity from_side(Elaboration& e, const Expression& x, const Context& c) {
    if (x.operands.empty()) return {};
    const std::optional<Length> inwards = length_of(e, x.operands.front(), c);
    std::optional<Direction> direction = direction_of(x.side);
    if (!direction) direction = c.along;
    if (!direction) {
        e.error("which-side", x.span,
                "it is not clear along which direction `" + text(x.side) + "` lies here")
            .mend = "write left, right, front, back, top or bottom";
        return {};
    }
    bool high = is_high(x.side);
    if (!direction_of(x.side)) {
        if (!c.self) return {};
        const auto looks = faces_high(e, PartRef{c.self, {}, {}, c.self->part->name, c.self->part->name, ""},
                                      x.side, *direction, *c.scope, x.span);
        if (!looks) return {};
        high = *looks;
    }
    Length from;
    if (c.shaping && c.self) {
        const Spot& spot = spot_of(e, *c.self, *direction);
        if (!spot.known) return {};
        from = high ? spot.high : spot.low;
    } else {
        const Quantity outer = outermost(e, side_of(*direction, high), x.span, c);
        if (!outer.known()) return {};
        from = Length::mm(outer.amount);
    }
    if (!inwards) return {};
    try {
        return Quantity::length(high ? from - *inwards : from + *inwards);
    } catch (const measure::TooLarge&) {
        e.error("too-large", x.span, "this number is too large or too finely divided to be kept exact");
        return {};
    }
}

Quantity told(Elaboration& e, const Expression& x, const Worked& worked) {
    if (!worked.fault.empty()) {
        const bool large = worked.fault.find("too large") != std::string::npos;
        e.error(large ? "too-large" : "arithmetic", x.span, worked.fault).mend = worked.mend;
    }
    return worked.result;
}

Quantity evaluate_inner(Elaboration& e, const Expression& x, const Context& c) {
    const auto operand = [&](std::size_t i) {
        return i < x.operands.size() ? evaluate(e, x.operands[i], c) : Quantity{};
    };
    switch (x.kind) {
    case Kind::broken:
        return {};
    case Kind::number:
        return number(e, x);
    case Kind::name:
        return name(e, x, c);
    case Kind::quoted:
        return Quantity::of_text(x.word);
    case Kind::each: {
        const LineEntry* each = c.each ? c.each : c.self ? c.self->each : nullptr;
        if (!each) {
            e.error("each-of-nothing", x.span, "`each` has no line here").mend =
                "it stands for the line of a copy: `part shelf, at each of shelf-1 and shelf-2`";
            return {};
        }
        return line_quantity(e, *const_cast<LineEntry*>(each));
    }
    case Kind::side_of:
        return face_position(e, x, c);
    case Kind::size_of:
        return size_of_part(e, x, c);
    case Kind::from_side:
        return from_side(e, x, c);
    case Kind::middle:
        return told(e, x, halfway(operand(0), operand(1)));
    case Kind::larger:
    case Kind::smaller: {
        const Quantity a = operand(0), b = operand(1);
        if (!a.known() || !b.known()) return {};
        return told(e, x, choose(x.kind == Kind::larger, a, b));
    }
    case Kind::negate: {
        Quantity a = operand(0);
        if (a.kind == Quantity::Kind::text || a.kind == Quantity::Kind::truth) {
            e.error("arithmetic", x.span, what_it_is(a) + " cannot be negative");
            return {};
        }
        if (a.known()) {
            try {
                a.amount = -a.amount;
            } catch (const measure::TooLarge&) {
                e.error("too-large", x.span,
                        "this number is too large or too finely divided to be kept exact");
                return {};
            }
        }
        return a;
    }
    default: {
        const Quantity a = operand(0), b = operand(1);
        return told(e, x, combine(x.kind, a, b));
    }
    }
}

std::string name_of(const Expression& x) { return x.kind == Kind::name ? "`" + x.word + "`" : "this"; }

} // namespace

Quantity evaluate(Elaboration& e, const Expression& x, const Context& c) {
    if (e.depth > Deeper::deepest) {
        e.error("too-deep", x.span, "this hangs on too long a chain of other things");
        return {};
    }
    const Deeper deeper(e);
    return evaluate_inner(e, x, c);
}

Quantity value_of(Elaboration& e, ValueEntry& value) {
    if (value.progress == Progress::done) return value.result;
    int values = 0;
    for (const Work& work : e.works) values += work.name.front() == '`' ? 1 : 0;
    if (values > limits.value_depth) {
        e.error("too-deep", value.span,
                "`" + value.name + "` hangs on more than " + std::to_string(limits.value_depth) +
                    " other values in a row");
        value.progress = Progress::done;
        return {};
    }
    const Working working(e, value.progress, "`" + value.name + "`", value.span);
    if (!working.begun() || !value.expression) return value.result;
    Context c;
    c.scope = value.scope;
    value.result = evaluate(e, *value.expression, c);
    // A figure behind a name is no longer a figure in the text: see quantity.cpp.
    value.result.written = false;
    return value.result;
}

std::optional<Length> length_of(Elaboration& e, const Expression& x, const Context& c) {
    const Quantity q = evaluate(e, x, c);
    if (!q.known()) return std::nullopt;
    try {
        if (const auto length = as_length(q)) {
            // Beyond a kilometre something was mistyped, and geometry would lose its precision.
            if (abs(*length) > Length::mm(Rational(1000000))) {
                e.error("too-large", x.span, "a length of " + e.shown(*length) + " is more than a kilometre");
                return std::nullopt;
            }
            return length;
        }
    } catch (const measure::TooLarge&) {
        e.error("too-large", x.span, "this number is too large or too finely divided to be kept exact");
        return std::nullopt;
    }
    e.error("not-a-length", x.span, name_of(x) + " is " + what_it_is(q) + ", where a length is wanted");
    return std::nullopt;
}

std::optional<double> degrees_of(Elaboration& e, const Expression& x, const Context& c) {
    const Quantity q = evaluate(e, x, c);
    if (!q.known()) return std::nullopt;
    if (q.kind == Quantity::Kind::angle || q.kind == Quantity::Kind::number) return q.amount.value();
    e.error("not-an-angle", x.span, name_of(x) + " is " + what_it_is(q) + ", where an angle is wanted").mend =
        "write it in degrees, as in `15 degrees`";
    return std::nullopt;
}

std::optional<Rational> number_of(Elaboration& e, const Expression& x, const Context& c,
                                  const std::string& what) {
    const Quantity q = evaluate(e, x, c);
    if (!q.known()) return std::nullopt;
    if (q.kind == Quantity::Kind::number || q.kind == Quantity::Kind::percent ||
        q.kind == Quantity::Kind::angle)
        return q.amount;
    e.error("not-a-number", x.span, name_of(x) + " is " + what_it_is(q) + ", where " + what + " is wanted");
    return std::nullopt;
}

std::optional<int> count_of(Elaboration& e, const Expression& x, const Context& c, const std::string& what,
                            int most) {
    const std::optional<Rational> n = number_of(e, x, c, what);
    if (!n) return std::nullopt;
    if (!n->is_whole() || *n < Rational(1)) {
        e.error("not-a-count", x.span,
                what + " must be a whole number from 1 up, and is " + measure::decimal(*n, 4));
        return std::nullopt;
    }
    if (*n > Rational(most)) {
        e.error("too-many", x.span,
                what + " is " + measure::decimal(*n, 0) + ", more than " + std::to_string(most));
        return std::nullopt;
    }
    return static_cast<int>(n->top());
}

std::optional<std::string> text_of(Elaboration& e, const Expression& x, const Context& c) {
    const Quantity q = evaluate(e, x, c);
    if (!q.known()) return std::nullopt;
    if (q.kind == Quantity::Kind::text) return q.text;
    e.error("not-a-text", x.span, name_of(x) + " is " + what_it_is(q) + ", where a name is wanted");
    return std::nullopt;
}

} // namespace rayfleck::piece
