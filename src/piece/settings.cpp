// What holds for the whole piece: title, units, climate, moisture when made.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

/// Climate where the text names none: heated rooms of a temperate country.
/// source  common practice, no published source
constexpr double usual_low_humidity = 0.30, usual_high_humidity = 0.65, usual_celsius = 20;

std::optional<double> percent_of(Elaboration& e, const Expression& x, const Context& c,
                                 const std::string& what, double most) {
    const auto n = number_of(e, x, c, what);
    if (!n) return std::nullopt;
    if (*n < Rational(0) || n->value() > most) {
        e.error("out-of-range", x.span,
                what + " lies between 0% and " + measure::decimal(Rational::nearest(most, 1), 0) +
                    "%, and is " + measure::decimal(*n, 3) + "%");
        return std::nullopt;
    }
    return n->value();
}

/// `units in, to 1/32` and `units mm to 0.5`: the finest step printed.
void read_step(Elaboration& e, const Expression& x, measure::Manner& manner) {
    const auto wrong = [&](const std::string& remedy) {
        e.error("out-of-range", x.span, "lengths cannot be printed to this step").mend = remedy;
    };
    Context c;
    // A step is a plain figure or a length in the unit itself; no names.
    if (x.kind != Expression::Kind::number && x.kind != Expression::Kind::divide)
        return wrong("write a figure, as in `to 0.5` or `to 1/32`");
    Scope nowhere;
    c.scope = &nowhere;
    const auto q = length_of(e, x, c);
    if (!q) return;
    const Length one = length_in(Rational(1), manner.unit);
    if (*q <= Length() || *q > one) return wrong("the step lies between nought and 1 of the unit");
    const Rational step = *q / one;
    if (manner.unit == measure::Unit::in || manner.unit == measure::Unit::ft) {
        const Rational inches = q->in_inches();
        for (int finest = 1; finest <= 256; finest *= 2)
            if (inches == Rational(1, finest)) {
                manner.finest = finest;
                return;
            }
        return wrong("write a half, quarter, eighth ... down to 1/256");
    }
    int decimals = 0;
    Rational size = 1;
    while (decimals < 6 && !(step * size).is_whole()) {
        size = size * Rational(10);
        ++decimals;
    }
    if (!(step * size).is_whole()) return wrong("write a decimal, as in `to 0.5`");
    manner.decimals = decimals;
}

} // namespace

std::optional<wood::Climate> climate_of(Elaboration& e, const syntax::ClimateIs& says, Span span,
                                        const Context& c) {
    if (says.region) {
        if (const wood::Region* region = wood::find_region(says.region->text)) return region->climate();
        std::vector<std::string> known;
        for (const wood::Region& region : wood::regions()) {
            known.emplace_back(region.name);
            for (const std::string_view other : region.also) known.emplace_back(other);
        }
        e.error("unknown-region", says.region->span,
                "there is no climate `" + says.region->text + "` in the tables")
            .mend = did_you_mean(says.region->text, known) +
                    "; or state it, as in `climate 35% to 60% humidity at 20 C`";
        return std::nullopt;
    }
    if (!says.low || !says.high) return std::nullopt;
    if (says.humidity) {
        const auto low = percent_of(e, *says.low, c, "humidity", 100),
                   high = percent_of(e, *says.high, c, "humidity", 100);
        double celsius = usual_celsius;
        if (says.temperature) {
            const auto t = number_of(e, *says.temperature, c, "a temperature");
            if (!t) return std::nullopt;
            celsius = says.fahrenheit ? (t->value() - 32) * 5 / 9 : t->value();
            if (celsius < -30 || celsius > 60) {
                e.error("out-of-range", says.temperature->span, "furniture lives between -30 and 60 C");
                return std::nullopt;
            }
        }
        if (!low || !high) return std::nullopt;
        return wood::climate_from_humidity(*low / 100, *high / 100, celsius);
    }
    const auto low = percent_of(e, *says.low, c, "moisture", 30),
               high = percent_of(e, *says.high, c, "moisture", 30);
    if (!low || !high) return std::nullopt;
    (void)span;
    return wood::climate_from_moisture(measure::Moisture::percent(*low), measure::Moisture::percent(*high));
}

void read_units(Elaboration& e) {
    e.units.assign(std::max<std::size_t>(e.project.trees.size(), 1), measure::Unit::mm);
    for (std::size_t file = 0; file < e.project.trees.size(); ++file) {
        const syntax::UnitsAre* told = nullptr;
        Span first;
        for (const syntax::Statement& statement : e.project.trees[file].statements) {
            const auto* units = std::get_if<syntax::UnitsAre>(&statement.says);
            if (!units) continue;
            if (told) {
                e.error("said-twice", statement.header, "the units are told twice")
                    .labels.push_back({first, "the first time"});
                continue;
            }
            told = units;
            first = statement.header;
            e.units[file] = units->unit;
        }
        if (static_cast<int>(file) != e.project.main) continue;
        e.manner.unit = e.units[file];
        if (told && told->to) read_step(e, *told->to, e.manner);
    }
}

void read_settings(Elaboration& e, Scope& scope, Piece& piece) {
    std::map<std::size_t, Span> told;
    Context c;
    c.scope = &scope;
    const syntax::ShopIn* shop = nullptr;
    piece.climate = wood::climate_from_humidity(usual_low_humidity, usual_high_humidity, usual_celsius);
    for (const syntax::Statement* statement : e.settings) {
        const bool main =
            statement->header.file == e.project.trees[static_cast<std::size_t>(e.project.main)].file;
        if (std::holds_alternative<syntax::UnitsAre>(statement->says)) continue;
        if (!main) {
            e.error("out-of-place", statement->header,
                    "this belongs in the piece, not in a file that is brought in")
                .mend = "leave it out here";
            continue;
        }
        const auto [first, fresh] = told.emplace(statement->says.index(), statement->header);
        if (!fresh) {
            e.error("said-twice", statement->header, "this is said twice")
                .labels.push_back({first->second, "the first time"});
            continue;
        }
        if (const auto* title = std::get_if<syntax::PieceIs>(&statement->says)) {
            piece.title = title->title.text;
            piece.span = statement->header;
        } else if (const auto* climate = std::get_if<syntax::ClimateIs>(&statement->says)) {
            if (const auto found = climate_of(e, *climate, statement->header, c)) piece.climate = *found;
            piece.climate_stated = true;
        } else if (const auto* made = std::get_if<syntax::MadeAt>(&statement->says)) {
            if (const auto moisture = percent_of(e, made->moisture, c, "moisture", 30))
                piece.made_at = measure::Moisture::percent(*moisture);
        } else if (const auto* in = std::get_if<syntax::ShopIn>(&statement->says)) {
            shop = in;
        }
    }
    if (piece.title.empty() && !told.contains(syntax::Statement{{}, {}, syntax::PieceIs{}}.says.index())) {
        bool broken = e.project.trees[static_cast<std::size_t>(e.project.main)].broken;
        Span start;
        start.file = e.project.trees[static_cast<std::size_t>(e.project.main)].file;
        if (!broken)
            e.error("no-title", start, "the piece has no title").mend = "begin with `piece \"Side table\"`";
    }
    if (shop) read_shop(e, scope, *shop, piece);
}

namespace {

struct Failed {
    std::string figures;
};

std::string comparison(Expression::Kind kind) {
    switch (kind) {
    case Expression::Kind::less:
        return "less than";
    case Expression::Kind::at_most:
        return "at most";
    case Expression::Kind::more:
        return "more than";
    case Expression::Kind::at_least:
        return "at least";
    default:
        return "equal to";
    }
}

/// The first comparison that makes the condition fail, with both sides' figures.
void find_failure(Elaboration& e, const Expression& x, const Context& c, std::string& figures) {
    using Kind = Expression::Kind;
    if (x.kind == Kind::both || x.kind == Kind::either) {
        for (const Expression& operand : x.operands) {
            const Quantity q = evaluate(e, operand, c);
            if (q.kind == Quantity::Kind::truth && !q.truth) find_failure(e, operand, c, figures);
        }
        return;
    }
    if (x.operands.size() != 2) return;
    Quantity a = evaluate(e, x.operands[0], c), b = evaluate(e, x.operands[1], c);
    // A bare number beside a length is shown as the length it was read as.
    if (a.kind == Quantity::Kind::length && b.kind == Quantity::Kind::number)
        b = Quantity::length(*as_length(b));
    if (b.kind == Quantity::Kind::length && a.kind == Quantity::Kind::number)
        a = Quantity::length(*as_length(a));
    if (!figures.empty()) figures += "; ";
    figures += shown(a, e.manner) + " is not " + comparison(x.kind) + " " + shown(b, e.manner);
}

} // namespace

void read_requirements(Elaboration& e, Scope& scope) {
    Context c;
    c.scope = &scope;
    for (const syntax::Statement* statement : scope.rest) {
        const auto* require = std::get_if<syntax::Require>(&statement->says);
        if (!require) continue;
        const Quantity q = evaluate(e, require->condition, c);
        if (!q.known()) continue;
        if (q.kind != Quantity::Kind::truth) {
            e.error("not-a-comparison", require->condition.span,
                    "a requirement compares, and this is " + what_it_is(q))
                .mend = "write a comparison, as in `require width >= 300 \"...\"`";
            continue;
        }
        if (q.truth) continue;
        std::string figures;
        find_failure(e, require->condition, c, figures);
        findings::Finding& f = e.error("requirement", scope.made ? scope.made->header : statement->header,
                                       require->message.text);
        f.limit = figures;
        if (scope.made) f.labels.push_back({statement->header, "the recipe requires it here"});
    }
    for (const auto& made : scope.mades)
        if (made->inside) read_requirements(e, *made->inside);
}

} // namespace rayfleck::piece
