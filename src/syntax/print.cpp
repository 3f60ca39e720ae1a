// The tree as text: one node on a line, parts of a node set deeper, arithmetic as it was grouped.
//
// Meant for tests and for a look inside; no spans, so that an expected print stays true when a comment is
// added above. Numbers are printed as exact fractions with the unit they were written in.

#include <string>
#include <string_view>

#include "syntax/parse.hpp"
#include "syntax/reading.hpp"

namespace rayfleck::syntax {
namespace {

std::string number(const measure::Rational& value) {
    std::string out = std::to_string(value.top());
    if (!value.is_whole()) out += "/" + std::to_string(value.bottom());
    return out;
}

std::string_view unit(NumberUnit unit) {
    switch (unit) {
    case NumberUnit::bare:
        return "";
    case NumberUnit::mm:
        return "mm";
    case NumberUnit::cm:
        return "cm";
    case NumberUnit::m:
        return "m";
    case NumberUnit::in:
        return "in";
    case NumberUnit::ft:
        return "ft";
    case NumberUnit::degrees:
        return "deg";
    case NumberUnit::percent:
        return "%";
    }
    return "";
}

std::string text(const Name& name) { return "[" + name.text + "]"; }
std::string text(const Quoted& quoted) { return "\"" + quoted.text + "\""; }
std::string text(const PartName& part) {
    return "[" + part.name.text + (part.copy ? " at " + part.copy->text : std::string()) + "]";
}
std::string text(const SideName& side) { return std::string(word_of(side.side)); }
std::string text(Direction direction) { return std::string(word_of(direction)); }

std::string text(const Expression& e) {
    using Kind = Expression::Kind;
    const auto call = [&](const char* name) {
        std::string out = std::string("(") + name;
        for (const Expression& operand : e.operands) out += " " + text(operand);
        return out + ")";
    };
    switch (e.kind) {
    case Kind::broken:
        return "(broken)";
    case Kind::number:
        return number(e.amount) + std::string(unit(e.unit));
    case Kind::name:
        return e.word;
    case Kind::quoted:
        return "\"" + e.word + "\"";
    case Kind::each:
        return "(each)";
    case Kind::side_of:
        return "(" + std::string(word_of(e.side)) + " of " + (e.part ? text(*e.part) : std::string()) + ")";
    case Kind::size_of:
        return "(" + e.word + " of " + (e.part ? text(*e.part) : std::string()) + ")";
    case Kind::from_side:
        return "(" + text(e.operands.front()) + " from " + std::string(word_of(e.side)) + ")";
    case Kind::middle:
        return call("middle");
    case Kind::larger:
        return call("larger");
    case Kind::smaller:
        return call("smaller");
    case Kind::negate:
        return call("-");
    case Kind::add:
        return call("+");
    case Kind::subtract:
        return call("-");
    case Kind::multiply:
        return call("*");
    case Kind::divide:
        return call("/");
    case Kind::less:
        return call("<");
    case Kind::at_most:
        return call("<=");
    case Kind::more:
        return call(">");
    case Kind::at_least:
        return call(">=");
    case Kind::equal:
        return call("=");
    case Kind::both:
        return call("and");
    case Kind::either:
        return call("or");
    }
    return "";
}

std::string text(const FromTo& stretch) { return "from " + text(stretch.from) + " to " + text(stretch.to); }
std::string text(const std::pair<Expression, Expression>& pair) {
    return "(" + text(pair.first) + ", " + text(pair.second) + ")";
}
std::string text(const EdgeName& edge) {
    std::string out = edge.which;
    for (const SideName& side : edge.sides) out += (out.empty() ? "" : "-") + text(side);
    return "<" + out + ">";
}

template <typename Thing> std::string spaced(const std::vector<Thing>& things) {
    std::string out;
    for (const Thing& thing : things) out += " " + text(thing);
    return out;
}
template <typename Thing> std::string maybe(const char* before, const std::optional<Thing>& thing) {
    return thing ? std::string(" ") + before + (*before ? " " : "") + text(*thing) : std::string();
}

using Stops = std::vector<std::pair<Expression, std::optional<SideName>>>;

std::string stops(const Stops& stops) {
    std::string out;
    for (const auto& [by, side] : stops) out += " stopped " + text(by) + maybe("from", side);
    return out;
}

/// One line for every sort of phrase; outlines and turned profiles add their lines below.
struct PhraseText {
    std::string margin;

    std::string operator()(const Broken&) const { return "broken"; }
    std::string operator()(const WoodIs& p) const { return "wood " + text(p.wood); }
    std::string operator()(const SawnIs& p) const {
        return p.rings ? "rings " + text(*p.rings) : "sawn " + p.word;
    }
    std::string operator()(const PithAt& p) const {
        std::string out = "pith";
        for (const PithPlace& place : p.places)
            out += " " + text(place.distance) + (place.beyond ? " beyond " : " from ") + text(place.side);
        return out;
    }
    std::string operator()(const BarkIs& p) const {
        return std::string(p.heart ? "heart " : "bark ") + (p.edge ? "edge " : "face ") + text(p.towards);
    }
    std::string operator()(const StockIs& p) const { return "stock " + text(p.stock); }
    std::string operator()(const SizeIs& p) const {
        std::string out = "size";
        for (const auto& [of, size] : p.sizes)
            out += std::string(of == SizeOf::thick  ? " thick "
                               : of == SizeOf::wide ? " wide "
                                                    : " long ") +
                   text(size);
        return out;
    }
    std::string operator()(const RunsAlong& p) const { return "runs " + text(p.direction); }
    std::string operator()(const FaceLooks& p) const {
        return std::string(p.edge ? "face-edge " : "face-side ") + text(p.towards);
    }
    std::string operator()(const FromTo& p) const { return text(p); }
    std::string operator()(const Between& p) const {
        return "between " + text(p.a) + maybe("and", p.b) + maybe("", p.direction);
    }
    std::string operator()(const SideAt& p) const { return text(p.side) + " at " + text(p.position); }
    std::string operator()(const CentredOn& p) const {
        return "centred" + maybe("", p.direction) + (p.between.empty() ? "" : " positions") +
               spaced(p.between) + maybe("part", p.part);
    }
    std::string operator()(const SetBack& p) const {
        return "set-back " + text(p.distance) + " from " + text(p.from) + maybe("of", p.of);
    }
    std::string operator()(const Overhanging& p) const {
        return "overhanging " + text(p.part) + " by " + text(p.by) + (p.all_round ? " all-round" : " at") +
               spaced(p.at);
    }
    std::string operator()(const OverUnder& p) const { return (p.over ? "over " : "under ") + text(p.part); }
    std::string operator()(const FlushWith& p) const {
        return "flush " + text(p.side) + " of " + text(p.part);
    }
    std::string operator()(const Tilt& p) const {
        std::string out = p.word;
        for (const auto& [angle, side] : p.by) out += " " + text(angle) + " " + text(side);
        return out;
    }
    std::string operator()(const TurnedOnPlan& p) const { return "turned-on-plan " + text(p.angle); }
    std::string operator()(const PointToPoint& p) const {
        return "points from" + spaced(p.from) + " to" + spaced(p.to);
    }
    std::string operator()(const GrainAt& p) const { return "grain " + text(p.angle); }
    std::string operator()(const GluedUp& p) const {
        return std::string(p.thick ? "laminated" : "glued-up") + maybe("at-most", p.at_most_wide) +
               maybe("count", p.count) + (p.faces.empty() ? "" : " bark-faces " + p.faces);
    }
    std::string operator()(const CarriesIs& p) const {
        if (p.books) return "carries books";
        return "carries " + text(p.amount) + (p.pounds ? " lb" : " kg") + (p.per_metre ? " per-m" : "") +
               (p.per_foot ? " per-ft" : "") + (p.in_the_middle ? " in-the-middle" : "");
    }
    std::string operator()(const SapwoodAllowed&) const { return "sapwood-allowed"; }
    std::string operator()(const Loose&) const { return "loose"; }
    std::string operator()(const NoteIs& p) const { return "note " + text(p.text); }
    std::string operator()(const Taper& p) const {
        return "taper" + spaced(p.faces) + " to " + text(p.to) + " from " + text(p.from_position) + " to " +
               text(p.to_position);
    }
    std::string operator()(const EdgeShape& p) const {
        return "edge-shape " + p.word + spaced(p.sizes) + " on" + spaced(p.edges);
    }
    std::string operator()(const Miter& p) const {
        return "miter" + spaced(p.angles) + " at " + text(p.end) + maybe("long to", p.towards);
    }
    std::string operator()(const TrimTo& p) const {
        return p.word + " " + text(p.side) + maybe("at", p.angle) + maybe("towards", p.towards) + " to " +
               text(p.position);
    }
    std::string operator()(const Bore& p) const {
        return "bore " + text(p.diameter) + (p.deep ? maybe("deep", p.deep) : " through") + " in " +
               text(p.face) + " at" + spaced(p.at) + maybe("row", p.row_count) + maybe("every", p.row_step) +
               maybe("", p.row_direction);
    }
    std::string operator()(const Groove& p) const {
        return "groove wide " + text(p.wide) + " deep " + text(p.deep) + " in " + text(p.face) + " at " +
               text(p.from_side) + " from " + text(p.side) + stops(p.stopped);
    }
    std::string operator()(const Rabbet& p) const {
        return "rabbet wide " + text(p.wide) + " deep " + text(p.deep) + " on " + text(p.edge) +
               stops(p.stopped);
    }
    std::string operator()(const Notch& p) const { return "notch" + spaced(p.spans); }
    std::string operator()(const CurveEdge& p) const {
        return "curve " + text(p.edge) + maybe("by", p.rise) + maybe("", p.reach) +
               (p.through.empty() ? "" : " through") + spaced(p.through);
    }
    std::string operator()(const OutlineIs& p) const {
        std::string out = "outline";
        for (const OutlineStep& step : p.steps) {
            constexpr const char* kinds[] = {"broken",     "start", "line", "arc-through",
                                             "arc-radius", "curve", "close"};
            out += "\n" + margin + "  " + kinds[static_cast<std::size_t>(step.kind)] + spaced(step.points) +
                   maybe("radius", step.radius) + (step.bulge.empty() ? "" : " bulging " + step.bulge);
        }
        return out;
    }
    std::string operator()(const TurnedIs& p) const {
        std::string out = "turned";
        for (const TurnedStation& station : p.stations) {
            out += "\n" + margin + "  ";
            if (station.broken) {
                out += "broken";
            } else if (station.square) {
                out += "square to " + text(station.at);
            } else {
                out += "diameter " + text(station.diameter) + " at " + text(station.at) +
                       (station.smooth ? " smooth" : "");
            }
        }
        return out;
    }
};

std::string text(const Copies& c) {
    using Kind = Copies::Kind;
    switch (c.kind) {
    case Kind::each_corner:
        return "each-corner";
    case Kind::left_right:
        return "left-right";
    case Kind::front_back:
        return "front-back";
    case Kind::top_bottom:
        return "top-bottom";
    case Kind::row:
        return "row" + maybe("", c.count) + " " + text(c.direction) + maybe("spaced", c.spaced) +
               maybe("", c.reach);
    case Kind::each_of:
        return "each-of" + spaced(c.lines);
    }
    return "";
}

std::string phrase_lines(const std::vector<Phrase>& phrases, const std::string& margin) {
    std::string out;
    for (const Phrase& phrase : phrases) out += "\n" + margin + std::visit(PhraseText{margin}, phrase.says);
    return out;
}

std::string statement_lines(const std::vector<Statement>& statements, const std::string& margin);

/// The statement's line and what stands below it, without a line end.
struct StatementText {
    std::string margin;

    std::string below() const { return "\n" + margin + "  "; }
    std::string copies(const std::vector<Copies>& all) const {
        std::string out;
        for (const Copies& one : all) out += below() + "copies " + text(one);
        return out;
    }

    std::string operator()(const BrokenStatement& s) const { return "broken " + s.word; }
    std::string operator()(const PieceIs& s) const { return "piece " + text(s.title); }
    std::string operator()(const UnitsAre& s) const {
        return "units " + measure::name(s.unit) + maybe("to", s.to);
    }
    std::string operator()(const ClimateIs& s) const {
        if (s.region) return "climate " + text(*s.region);
        return "climate" + maybe("", s.low) + maybe("to", s.high) + (s.humidity ? " humidity" : " moisture") +
               maybe("at", s.temperature) + (s.temperature ? (s.fahrenheit ? " F" : " C") : "");
    }
    std::string operator()(const MadeAt& s) const { return "made-at " + text(s.moisture); }
    std::string operator()(const ShopIn& s) const { return "shop " + text(s.path); }
    std::string operator()(const BringIn& s) const { return "bring-in " + text(s.path); }
    std::string operator()(const ValueIs& s) const { return "value " + text(s.name) + " " + text(s.value); }
    std::string operator()(const SizesAre& s) const {
        std::string out = "sizes" + spaced(s.columns);
        for (const SizesAre::Row& row : s.rows) out += below() + text(row.name) + spaced(row.values);
        return out;
    }
    std::string operator()(const Require& s) const {
        return "require " + text(s.condition) + " " + text(s.message);
    }
    std::string operator()(const RodIs& s) const {
        std::string out = "rod " + text(s.direction);
        for (const RodLine& line : s.lines)
            out += below() + text(line.name) + maybe("lines", line.count) + " " + text(line.at) +
                   maybe("to", line.other);
        return out;
    }
    std::string operator()(const PartIs& s) const {
        return "part " + text(s.name) + maybe("like", s.like) + copies(s.copies) +
               phrase_lines(s.phrases, margin + "  ");
    }
    std::string operator()(const JoinIs& s) const {
        std::string out = "join " + text(s.a) + " to " + text(s.b) + " with " + text(s.kind);
        for (const JointOption& option : s.options)
            out += below() + "option [" + option.words + "]" + spaced(option.values) +
                   maybe("side", option.side) + maybe("", option.quoted);
        for (const NoteIs& note : s.notes) out += below() + "note " + text(note.text);
        return out;
    }
    std::string operator()(const HardwareIs& s) const {
        return "hardware " + text(s.name) + maybe("off", s.count) + maybe("on", s.on) + maybe("to", s.to);
    }
    std::string operator()(const PieceNote& s) const { return "note " + text(s.text); }
    std::string operator()(const Accept& s) const {
        return "accept " + text(s.check) + maybe("on", s.part) + " because " + text(s.reason);
    }
    std::string operator()(const Takes& s) const {
        std::string out = "takes";
        for (const ValueIs& value : s.values) out += below() + text(value.name) + " " + text(value.value);
        return out;
    }
    std::string operator()(const RecipeIs& s) const {
        return "recipe " + text(s.name) + statement_lines(s.body, margin + "  ");
    }
    std::string operator()(const MakeIs& s) const {
        std::string out = "make " + text(s.name) + " from " + text(s.recipe) + copies(s.copies);
        for (const ValueIs& value : s.given)
            out += below() + "given " + text(value.name) + " " + text(value.value);
        for (const SideAt& at : s.placed) out += below() + text(at.side) + " at " + text(at.position);
        return out;
    }
    std::string operator()(const ShopFile& s) const { return "shop-file " + text(s.name); }
    std::string operator()(const KerfIs& s) const { return "kerf " + text(s.saw) + " " + text(s.width); }
    std::string operator()(const AllowIs& s) const {
        return "allow " + text(s.amount) + " for " + text(s.what);
    }
    std::string operator()(const LimitIs& s) const {
        return "limit " + text(s.machine) + " " + text(s.what) + " " + text(s.amount);
    }
    std::string operator()(const TitleField& s) const {
        return "title " + text(s.field) + " " + text(s.text);
    }
    std::string operator()(const SheetIs& s) const { return "sheet " + text(s.size); }
    std::string operator()(const ProjectionIs& s) const {
        return std::string("projection ") + (s.first_angle ? "first" : "third");
    }
    std::string operator()(const BoardIs& s) const {
        std::string out = "board " + text(s.id) + maybe("wood", s.wood) + maybe("stock", s.stock) +
                          maybe("sawn", s.sawn) + (s.size.empty() ? "" : " size") + spaced(s.size) +
                          maybe("off", s.count) + maybe("rings", s.rings);
        if (s.bark)
            out += std::string(s.bark->heart ? " heart" : " bark") + (s.bark->edge ? "-edge " : "-face ") +
                   text(s.bark->towards);
        for (const auto& [wide, edge] : s.sapwood)
            out += below() + "sapwood " + text(wide) + " " + text(edge);
        for (const auto& [deep, end] : s.checks) out += below() + "checks " + text(deep) + " " + text(end);
        for (const FlawIs& flaw : s.flaws) out += below() + text(flaw.kind) + spaced(flaw.sizes);
        return out;
    }
    std::string operator()(const OwnWood& s) const {
        std::string out = "own-wood " + text(s.name);
        for (const WoodFigure& figure : s.figures)
            out += " [" + figure.name.text + (figure.amount.empty() ? "" : " " + figure.amount) +
                   (figure.unit.empty() ? "" : " " + figure.unit) + "]";
        return out;
    }
    std::string operator()(const PriceIs& s) const {
        return "price " + text(s.wood) + maybe("stock", s.stock) + " " + text(s.amount) + " per [" + s.per +
               "]" + maybe("sawn", s.sawn) + (s.widths.empty() ? "" : " widths") + spaced(s.widths) +
               (s.lengths.empty() ? "" : " lengths") + spaced(s.lengths) +
               (s.sheets.empty() ? "" : " sheets") + spaced(s.sheets);
    }
    std::string operator()(const CurrencyIs& s) const { return "currency " + text(s.text); }
    std::string operator()(const KeepOffcuts& s) const { return "keep-offcuts" + spaced(s.size); }
    std::string operator()(const MatchIs& s) const {
        static constexpr const char* how[] = {"in-sequence", "book-matched", "from-one-board"};
        std::string out = "match";
        for (const PartName& part : s.parts) out += " " + text(part);
        return out + " " + how[static_cast<std::size_t>(s.how)];
    }
};

std::string statement_lines(const std::vector<Statement>& statements, const std::string& margin) {
    std::string out;
    for (const Statement& statement : statements)
        out += "\n" + margin + std::visit(StatementText{margin}, statement.says);
    return out;
}

} // namespace

std::string print(const Tree& tree) {
    return (tree.broken ? "tree broken" : "tree") + statement_lines(tree.statements, "  ") + "\n";
}

} // namespace rayfleck::syntax
