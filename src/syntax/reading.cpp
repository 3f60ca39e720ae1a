// Numbers, arithmetic and names out of matched pieces.
//
// A number is read exactly: 2-1/2 is five halves. Sums and products are folded from the left. What the
// grammar cannot say is checked here: digits of a number, fractions over nothing, a minus without a blank
// before it, comparisons outside of conditions.

#include "syntax/reading.hpp"

#include <array>
#include <cctype>
#include <stdexcept>
#include <utility>

#include "syntax/parse.hpp"

namespace rayfleck::syntax {
namespace {

using measure::Rational;

struct Vulgar {
    std::string_view sign;
    int top, bottom;
};
constexpr std::array vulgars{
    Vulgar{"¼", 1, 4}, Vulgar{"½", 1, 2}, Vulgar{"¾", 3, 4}, Vulgar{"⅓", 1, 3}, Vulgar{"⅔", 2, 3},
    Vulgar{"⅕", 1, 5}, Vulgar{"⅖", 2, 5}, Vulgar{"⅗", 3, 5}, Vulgar{"⅘", 4, 5}, Vulgar{"⅙", 1, 6},
    Vulgar{"⅚", 5, 6}, Vulgar{"⅛", 1, 8}, Vulgar{"⅜", 3, 8}, Vulgar{"⅝", 5, 8}, Vulgar{"⅞", 7, 8},
};

/// Digits from `i` on as a whole number; at most limits.digits of them, which the caller has counted.
std::int64_t whole(std::string_view text, std::size_t& i) {
    std::int64_t value = 0;
    while (i < text.size() && text[i] >= '0' && text[i] <= '9') value = value * 10 + (text[i++] - '0');
    return value;
}

/// `12`, `6.5`, `1/3`, `17-5/8`, `¾`, `2½`.
Rational amount(std::string_view text) {
    std::size_t i = 0;
    Rational value = whole(text, i);
    if (i < text.size() && text[i] == '.') {
        const std::size_t begin = ++i;
        const std::int64_t digits = whole(text, i);
        std::int64_t bottom = 1;
        for (std::size_t k = begin; k < i; ++k) bottom *= 10;
        return value + Rational(digits, bottom);
    }
    if (i < text.size() && text[i] == '/') {
        ++i;
        return value / Rational(whole(text, i));
    }
    if (i < text.size() && text[i] == '-') ++i;
    if (i >= text.size()) return value;
    for (const Vulgar& vulgar : vulgars)
        if (text.substr(i) == vulgar.sign) return value + Rational(vulgar.top, vulgar.bottom);
    const Rational top = whole(text, i);
    if (i < text.size() && text[i] == '/') ++i;
    return value + top / Rational(whole(text, i));
}

NumberUnit unit_named(std::string_view word) {
    if (word == "mm") return NumberUnit::mm;
    if (word == "cm") return NumberUnit::cm;
    if (word == "m") return NumberUnit::m;
    if (word == "in" || word == "\"") return NumberUnit::in;
    if (word == "ft") return NumberUnit::ft;
    if (word == "%") return NumberUnit::percent;
    return NumberUnit::degrees;
}

Expression::Kind operation(std::string_view sign) {
    if (sign == "+") return Expression::Kind::add;
    if (sign == "-") return Expression::Kind::subtract;
    if (sign == "*") return Expression::Kind::multiply;
    if (sign == "/") return Expression::Kind::divide;
    if (sign == "<") return Expression::Kind::less;
    if (sign == "<=") return Expression::Kind::at_most;
    if (sign == ">") return Expression::Kind::more;
    if (sign == ">=") return Expression::Kind::at_least;
    return Expression::Kind::equal;
}

} // namespace

std::optional<Side> side_named(std::string_view word) {
    if (word == "left") return Side::left;
    if (word == "right") return Side::right;
    if (word == "front") return Side::front;
    if (word == "back") return Side::back;
    if (word == "top" || word == "up") return Side::top;
    if (word == "bottom" || word == "down") return Side::bottom;
    if (word == "inside") return Side::inside;
    if (word == "outside") return Side::outside;
    return std::nullopt;
}

std::string_view word_of(Side side) {
    constexpr std::array<std::string_view, 8> words{"left", "right",  "front",  "back",
                                                    "top",  "bottom", "inside", "outside"};
    return words[static_cast<std::size_t>(side)];
}

std::string_view word_of(Direction direction) {
    constexpr std::array<std::string_view, 3> words{"across", "deep", "up"};
    return words[static_cast<std::size_t>(direction)];
}

Expression Reading::number(const Piece& piece) const {
    Expression out;
    out.kind = Expression::Kind::number;
    out.span = span(piece);
    std::size_t digits = 0;
    for (const char c : words(piece)) digits += c >= '0' && c <= '9';
    if (digits > static_cast<std::size_t>(limits.digits)) {
        report.error("number-too-long", piece.begin, piece.end,
                     "a number of " + std::to_string(digits) + " digits, more than " +
                         std::to_string(limits.digits),
                     "write it with fewer digits");
        out.kind = Expression::Kind::broken;
        return out;
    }
    try {
        if (const Piece* feet = piece.find(Form::feet)) {
            out.amount = amount(words(*feet)) * Rational(12);
            out.unit = NumberUnit::in;
        }
        if (const Piece* part = piece.find(Form::amount)) out.amount += amount(words(*part));
        if (const Piece* unit = piece.find(Form::unit)) out.unit = unit_named(words(*unit));
    } catch (const std::domain_error&) {
        report.error("fraction-over-nothing", piece.begin, piece.end, "a fraction over 0",
                     "write another number below the bar");
        out.kind = Expression::Kind::broken;
    } catch (const measure::TooLarge&) {
        report.error("number-too-long", piece.begin, piece.end,
                     "this number is too large or too finely divided", "write it with fewer digits");
        out.kind = Expression::Kind::broken;
    }
    return out;
}

Expression Reading::chain(const Piece& piece, bool conditions) const {
    Expression left = raw(piece.parts.front(), conditions);
    for (std::size_t i = 1; i + 1 < piece.parts.size(); i += 2) {
        const Piece& sign = piece.parts[i];
        if (words(sign) == "-" && sign.begin > 0 && text[sign.begin - 1] != ' ' &&
            text[sign.begin - 1] != '\t' && text[sign.begin - 1] != '\n' && text[sign.begin - 1] != '\r')
            report.error("cannot-read", sign.begin, sign.end, "expected a blank on both sides of the minus",
                         "set a blank on both sides of the minus");
        Expression both;
        both.kind = operation(words(sign));
        both.span = span(piece.parts.front().begin, piece.parts[i + 1].end);
        both.operands.reserve(2);
        both.operands.push_back(std::move(left));
        both.operands.push_back(raw(piece.parts[i + 1], conditions));
        left = std::move(both);
    }
    return left;
}

Expression Reading::expression(const Piece& piece, bool conditions) const { return raw(piece, conditions); }

Expression Reading::raw(const Piece& piece, bool conditions) const {
    Expression out;
    out.span = span(piece);
    const auto with_operands = [&](Expression::Kind kind) {
        out.kind = kind;
        for (const Piece& part : piece.parts) out.operands.push_back(raw(part, conditions));
        return std::move(out);
    };
    switch (piece.form) {
    case Form::number:
        return number(piece);
    case Form::sum:
    case Form::product:
        return chain(piece, conditions);
    case Form::negated:
        return with_operands(Expression::Kind::negate);
    case Form::larger:
        return with_operands(Expression::Kind::larger);
    case Form::smaller:
        return with_operands(Expression::Kind::smaller);
    case Form::middle:
        return with_operands(Expression::Kind::middle);
    case Form::each:
        out.kind = Expression::Kind::each;
        return out;
    case Form::value_name:
        out.kind = Expression::Kind::name;
        out.word = std::string(words(piece));
        return out;
    case Form::quoted:
        out.kind = Expression::Kind::quoted;
        out.word = quoted(piece).text;
        return out;
    case Form::size_of:
        out.kind = Expression::Kind::size_of;
        if (const Piece* which = piece.find(Form::which)) out.word = std::string(words(*which));
        if (const Piece* part = piece.find(Form::part_name)) out.part = part_name(*part);
        return out;
    case Form::side_of:
        out.kind = Expression::Kind::side_of;
        if (const Piece* which = piece.find(Form::side)) out.side = side(*which).side;
        if (const Piece* part = piece.find(Form::part_name)) out.part = part_name(*part);
        return out;
    case Form::position: {
        if (piece.parts.size() == 1) return raw(piece.parts.front(), conditions);
        out.kind = Expression::Kind::from_side;
        out.operands.push_back(raw(piece.parts.front(), conditions));
        if (const Piece* from = piece.find(Form::from_side))
            if (const Piece* which = from->find(Form::side)) out.side = side(*which).side;
        return out;
    }
    case Form::comparison:
        if (piece.parts.size() >= 3 && !conditions)
            report.error("comparison-out-of-place", piece.parts[1].begin, piece.parts[1].end,
                         "a comparison stands only in 'require'", "write a size here");
        return chain(piece, conditions);
    case Form::both:
    case Form::either: {
        if (piece.parts.size() == 1) return raw(piece.parts.front(), conditions);
        if (!conditions)
            report.error("comparison-out-of-place", piece.begin, piece.end,
                         "a condition stands only in 'require'", "write a size here");
        const auto kind = piece.form == Form::both ? Expression::Kind::both : Expression::Kind::either;
        Expression left = raw(piece.parts.front(), conditions);
        for (std::size_t i = 1; i < piece.parts.size(); ++i) {
            Expression pair;
            pair.kind = kind;
            pair.span = span(piece.parts.front().begin, piece.parts[i].end);
            pair.operands.reserve(2);
            pair.operands.push_back(std::move(left));
            pair.operands.push_back(raw(piece.parts[i], conditions));
            left = std::move(pair);
        }
        return left;
    }
    default:
        return out;
    }
}

std::vector<Expression> Reading::sizes(const Piece& piece) const {
    std::vector<Expression> out;
    for (const Piece* part : piece.all(Form::sum)) out.push_back(expression(*part));
    return out;
}

std::vector<Expression> Reading::positions(const Piece& piece) const {
    std::vector<Expression> out;
    for (const Piece* part : piece.all(Form::position)) out.push_back(expression(*part));
    return out;
}

Name Reading::name(const Piece& piece) const {
    if (piece.form == Form::quoted) return {quoted(piece).text, span(piece)};
    Name out{{}, span(piece)};
    bool blank = false;
    for (const char c : words(piece)) {
        if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            blank = true;
            continue;
        }
        if (blank) out.text += ' ';
        blank = false;
        out.text += c;
    }
    return out;
}

Quoted Reading::quoted(const Piece& piece) const {
    return {std::string(text.substr(piece.begin + 1, piece.end - piece.begin - 2)), span(piece)};
}

Name Reading::name_in(const Piece& piece) const {
    for (const Piece& part : piece.parts)
        if (part.form == Form::name || part.form == Form::words || part.form == Form::quoted)
            return name(part);
    return {};
}

Quoted Reading::quoted_in(const Piece& piece) const {
    if (const Piece* part = piece.find(Form::quoted)) return quoted(*part);
    return {};
}

PartName Reading::part_name(const Piece& piece) const {
    PartName out;
    out.name = name_in(piece);
    if (const Piece* copy = piece.find(Form::copy)) out.copy = name(*copy);
    out.span = span(piece);
    return out;
}

SideName Reading::side(const Piece& piece) const {
    return {side_named(words(piece)).value_or(Side::left), span(piece)};
}

std::vector<SideName> Reading::sides(const Piece& piece) const {
    std::vector<SideName> out;
    for (const Piece* part : piece.all(Form::side)) out.push_back(side(*part));
    return out;
}

Direction Reading::direction(const Piece& piece) const {
    const std::string_view word = words(piece);
    return word == "across" ? Direction::across : word == "deep" ? Direction::deep : Direction::up;
}

std::optional<Direction> Reading::direction_in(const Piece& piece) const {
    if (const Piece* part = piece.find(Form::direction)) return direction(*part);
    return std::nullopt;
}

FromTo Reading::from_to(const Piece& piece) const {
    std::vector<Expression> ends = positions(piece);
    ends.resize(2);
    return {std::move(ends[0]), std::move(ends[1])};
}

} // namespace rayfleck::syntax
