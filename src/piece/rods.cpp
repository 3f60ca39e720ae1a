// Rods and their lines: where each line stands, and on which rod an expression is read.
//
// Lines may be written in any order and may hang on one another; `2 lines shelf between floor and top` leaves
// even gaps. A line's name tells its direction, so no two lines of any rod share a name.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using Kind = Expression::Kind;

void add_line(Elaboration& e, Scope& scope, LineEntry entry) {
    auto& rod = scope.rods[static_cast<std::size_t>(index_of(entry.direction))];
    if (static_cast<int>(rod.size()) >= limits.lines) {
        e.error("too-many", entry.span,
                "the rod " + text(entry.direction) + " has more than " + std::to_string(limits.lines) +
                    " lines");
        return;
    }
    const auto found = scope.line_names.find(entry.name);
    if (found != scope.line_names.end()) {
        findings::Finding& f = e.error("name-twice", entry.span, "there are two lines `" + entry.name + "`");
        f.mend = "a line's name tells its rod, so every line needs a name of its own";
        f.labels.push_back({found->second->span, "the first, on the rod " + text(found->second->direction)});
        return;
    }
    if (const auto value = scope.values.find(entry.name); value != scope.values.end()) {
        e.error("name-twice", entry.span, "`" + entry.name + "` is a line and a value")
            .labels.push_back({value->second->span, "the value"});
        return;
    }
    rod.push_back(std::make_unique<LineEntry>(std::move(entry)));
    scope.line_names[rod.back()->name] = rod.back().get();
}

struct Found {
    std::optional<Direction> direction;
    bool clash = false;
};

Found merge(Elaboration& e, Found a, Found b, Span span) {
    if (a.clash || b.clash) return {std::nullopt, true};
    if (!a.direction) return b;
    if (!b.direction || *a.direction == *b.direction) return a;
    e.error("two-rods", span, "this mixes the rods " + text(*a.direction) + " and " + text(*b.direction))
        .mend = "a position lies on one rod";
    return {std::nullopt, true};
}

Found search(Elaboration& e, const Expression& x, Scope& scope, const LineEntry* each);

Found search_value(Elaboration& e, ValueEntry& value) {
    if (value.direction_progress == Progress::done) return {value.direction, false};
    // A circle of values is reported when they are worked out.
    if (value.direction_progress == Progress::busy || !value.expression || e.depth > Deeper::deepest)
        return {};
    value.direction_progress = Progress::busy;
    const Deeper deeper(e);
    value.direction = search(e, *value.expression, *value.scope, nullptr).direction;
    value.direction_progress = Progress::done;
    return {value.direction, false};
}

Found search(Elaboration& e, const Expression& x, Scope& scope, const LineEntry* each) {
    switch (x.kind) {
    case Kind::name:
        if (ValueEntry* value = find_value(scope, x.word)) return search_value(e, *value);
        if (const LineEntry* line = find_line(scope, x.word)) return {line->direction, false};
        for (const Direction d : directions)
            for (const bool high : {false, true})
                if (x.word == text(side_of(d, high))) return {d, false};
        return {};
    case Kind::each:
        return each ? Found{each->direction, false} : Found{};
    case Kind::side_of:
        return {direction_of(x.side), false};
    case Kind::from_side:
        return {direction_of(x.side), false};
    case Kind::middle:
    case Kind::larger:
    case Kind::smaller:
    case Kind::negate:
    case Kind::add:
    case Kind::subtract:
    case Kind::multiply:
    case Kind::divide: {
        if (e.depth > Deeper::deepest) return {};
        const Deeper deeper(e);
        Found found;
        for (const Expression& operand : x.operands)
            found = merge(e, found, search(e, operand, scope, each), x.span);
        // The difference of two lines is a distance; it lies on no rod.
        if (x.kind == Kind::subtract && x.operands.size() == 2 && found.direction &&
            search(e, x.operands[1], scope, each).direction)
            return {};
        if (x.kind == Kind::divide && x.operands.size() == 2 &&
            search(e, x.operands[1], scope, each).direction)
            return {};
        return found;
    }
    default:
        return {};
    }
}

} // namespace

std::optional<Direction> direction_of(Elaboration& e, const Expression& x, Scope& scope,
                                      const LineEntry* each) {
    return search(e, x, scope, each).direction;
}

void read_rod(Elaboration& e, Scope& scope, const syntax::RodIs& rod, Span) {
    for (const syntax::RodLine& line : rod.lines) {
        if (line.name.text.empty()) {
            e.lines_may_be_lost = true;
            continue;
        }
        // Several lines at once are made when all values are known: see spread_lines.
        if (line.count) continue;
        LineEntry entry;
        entry.name = line.name.text;
        entry.span = line.name.span;
        entry.direction = rod.direction;
        entry.line = &line;
        entry.scope = &scope;
        add_line(e, scope, std::move(entry));
    }
}

void spread_lines(Elaboration& e, Scope& scope) {
    for (const syntax::RodIs* rod : scope.counted) {
        for (const syntax::RodLine& line : rod->lines) {
            if (!line.count || line.name.text.empty()) continue;
            Context c;
            c.scope = &scope;
            const std::optional<int> count = count_of(e, *line.count, c, "the number of lines", limits.lines);
            if (!count) e.lines_may_be_lost = true;
            for (int i = 1; count && i <= *count; ++i) {
                LineEntry entry;
                entry.name = line.name.text + "-" + std::to_string(i);
                entry.span = line.name.span;
                entry.direction = rod->direction;
                entry.line = &line;
                entry.number = i;
                entry.count = *count;
                entry.scope = &scope;
                add_line(e, scope, std::move(entry));
            }
        }
    }
}

std::optional<Length> line_at(Elaboration& e, LineEntry& line) {
    if (line.progress == Progress::done) return line.at;
    const Working working(e, line.progress, "line " + line.name, line.span);
    if (!working.begun()) return line.at;
    Context c;
    c.scope = line.scope;
    c.along = line.direction;
    const std::optional<Length> first = length_of(e, line.line->at, c);
    if (line.count == 0) return line.at = first;
    const std::optional<Length> last = line.line->other ? length_of(e, *line.line->other, c) : std::nullopt;
    if (!first || !last) return line.at;
    try {
        line.at = *first + (*last - *first) * Rational(line.number, line.count + 1);
    } catch (const measure::TooLarge&) {
        e.error("too-large", line.span, "these lines are too finely divided to be kept exact");
    }
    return line.at;
}

std::optional<Interval> reach_of(Elaboration& e, Scope& scope, Direction direction) {
    std::optional<Interval> reach;
    for (const auto& line : scope.rods[static_cast<std::size_t>(index_of(direction))]) {
        const std::optional<Length> at = line_at(e, *line);
        if (!at) return std::nullopt;
        if (!reach) reach = Interval{*at, *at};
        if (*at < reach->low) reach->low = *at;
        if (*at > reach->high) reach->high = *at;
    }
    return reach;
}

std::optional<Length> middle_of(Elaboration& e, Scope& scope, Direction direction) {
    const std::optional<Interval> reach = reach_of(e, scope, direction);
    if (!reach) return std::nullopt;
    return (reach->low + reach->high) / Rational(2);
}

} // namespace rayfleck::piece
