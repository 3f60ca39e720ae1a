// See forms_used.hpp.

#include "forms_used.hpp"

#include <array>
#include <variant>

namespace rayfleck::checks_tests {
namespace {

using namespace syntax;
using Forms = std::set<std::string>;
template <std::size_t N> using Names = std::array<const char*, N>;

template <std::size_t N, typename E> std::string at(const Names<N>& names, E which) {
    return names.at(static_cast<std::size_t>(which));
}

constexpr Names<3> directions{"across", "deep", "up"};
constexpr Names<8> sides{"left", "right", "front", "back", "top", "bottom", "inside", "outside"};
constexpr Names<8> units{"no unit", "mm", "cm", "m", "in", "ft", "degrees", "percent"};
constexpr Names<5> file_units{"mm", "cm", "m", "in", "ft"};
constexpr Names<3> size_words{"thick", "wide", "long"};
constexpr Names<6> copy_kinds{"at each corner", "left and right", "front and back",
                              "top and bottom", "row of",         "at each of"};
constexpr Names<24> arithmetic{"",
                               "a number",
                               "a name",
                               "a text",
                               "each",
                               "SIDE of PART",
                               "size of PART",
                               "SIZE from SIDE",
                               "middle",
                               "larger",
                               "smaller",
                               "minus",
                               "+",
                               "-",
                               "*",
                               "/",
                               "<",
                               "<=",
                               ">",
                               ">=",
                               "=",
                               "and",
                               "or",
                               nullptr};
constexpr std::size_t arithmetic_kinds = static_cast<std::size_t>(Expression::Kind::either) + 1;
static_assert(arithmetic_kinds == 23);
constexpr Names<7> steps{"",         "start", "line to", "arc to ... through", "arc to ... radius",
                         "curve to", "close"};
static_assert(static_cast<std::size_t>(OutlineStep::Kind::close) + 1 == std::tuple_size_v<decltype(steps)>);

/// In the order of Phrase::says; its first stands for what cannot be read.
constexpr Names<37> phrases{"",
                            "wood",
                            "sawn, rings",
                            "pith",
                            "bark, heart",
                            "stock",
                            "size",
                            "runs",
                            "face looks",
                            "from ... to",
                            "between",
                            "SIDE at",
                            "centred",
                            "set back",
                            "overhanging",
                            "over, under",
                            "flush with",
                            "leaning",
                            "turned ANGLE",
                            "from point",
                            "grain at",
                            "glued up",
                            "carries",
                            "sapwood allowed",
                            "loose",
                            "note",
                            "taper",
                            "shaped edge",
                            "miter",
                            "saw cut",
                            "bore",
                            "groove",
                            "rabbet",
                            "notch",
                            "curve",
                            "outline",
                            "turned profile"};
static_assert(std::variant_size_v<decltype(Phrase::says)> == phrases.size());

/// In the order of Statement::says.
constexpr Names<32> statement_words{
    "",      "piece",      "units", "climate",   "made at",  "shop \"FILE\"", "bring in", "value",
    "sizes", "require",    "rod",   "part",      "join",     "hardware",      "note",     "accept",
    "takes", "recipe",     "make",  "shop file", "kerf",     "allow",         "limit",    "title",
    "sheet", "projection", "board", "price",     "currency", "keep",          "match",    "wood"};
static_assert(std::variant_size_v<decltype(Statement::says)> == statement_words.size());

struct Walk {
    FormsUsed& used;

    void add(const std::string& form) { used.forms.insert(form); }

    // ---- arithmetic, names
    void operator()(const Expression& x) {
        if (x.kind == Expression::Kind::broken) return;
        add("arithmetic: " + at(arithmetic, x.kind));
        if (x.kind == Expression::Kind::number) add("number: " + at(units, x.unit));
        if (x.kind == Expression::Kind::size_of) add("size of PART: " + x.word);
        if (x.kind == Expression::Kind::side_of) add("side: " + at(sides, x.side));
        if (x.part) (*this)(*x.part);
        for (const Expression& operand : x.operands) (*this)(operand);
    }
    void operator()(const std::vector<Expression>& all) {
        for (const Expression& x : all) (*this)(x);
    }
    void operator()(const std::optional<Expression>& x) {
        if (x) (*this)(*x);
    }
    void operator()(const PartName& part) {
        if (part.copy) add("PART at COPY");
    }
    void operator()(const SideName& side) { add("side: " + at(sides, side.side)); }
    void operator()(const std::vector<std::pair<Expression, Expression>>& points) {
        for (const auto& [along, across] : points) {
            (*this)(along);
            (*this)(across);
        }
    }
    void operator()(const EdgeName& edge) {
        if (!edge.which.empty())
            add("edges: " + edge.which + " edges");
        else
            add(edge.sides.size() == 1 ? "edges: SIDE edges" : "edges: SIDE SIDE edge");
        for (const SideName& side : edge.sides) (*this)(side);
    }
    void stops(const std::string& what,
               const std::vector<std::pair<Expression, std::optional<SideName>>>& stopped) {
        if (!stopped.empty()) add(what + ": stopped");
        for (const auto& [by, side] : stopped) (*this)(by);
    }

    // ---- phrases of a part
    void operator()(const Broken&) {}
    void operator()(const WoodIs& x) { (*this)(x.wood); }
    void operator()(const SawnIs& x) {
        add(x.rings ? "rings at ANGLE" : x.word + " sawn");
        (*this)(x.rings);
    }
    void operator()(const PithAt& x) {
        for (const PithPlace& place : x.places) {
            (*this)(place.distance);
            (*this)(place.side);
        }
    }
    void operator()(const BarkIs& x) {
        add(std::string(x.heart ? "heart" : "bark") + (x.edge ? " edge" : " face"));
        (*this)(x.towards);
    }
    void operator()(const StockIs&) {}
    void operator()(const SizeIs& x) {
        for (const auto& [which, size] : x.sizes) {
            add("size: " + at(size_words, which));
            (*this)(size);
        }
    }
    void operator()(const RunsAlong& x) { add("runs " + at(directions, x.direction)); }
    void operator()(const FaceLooks& x) {
        add(x.edge ? "face edge" : "face side");
        (*this)(x.towards);
    }
    void operator()(const FromTo& x) {
        (*this)(x.from);
        (*this)(x.to);
    }
    void operator()(const Between& x) {
        add(x.b ? "between PART and PART" : "between PART");
        if (x.direction) add("between ... DIRECTION");
        (*this)(x.a);
        if (x.b) (*this)(*x.b);
    }
    void operator()(const SideAt& x) {
        (*this)(x.side);
        (*this)(x.position);
    }
    void operator()(const CentredOn& x) {
        if (x.between.size() == 2)
            add("centred between");
        else if (x.part)
            add("centred on");
        else if (x.between.empty())
            add("centred DIRECTION");
        else
            add("centred on");
        if (x.direction && (x.part || !x.between.empty())) add("centred on ... DIRECTION");
        (*this)(x.between);
    }
    void operator()(const SetBack& x) {
        add(x.of ? "set back ... of PART" : "set back ... from SIDE");
        (*this)(x.distance);
        (*this)(x.from);
    }
    void operator()(const Overhanging& x) {
        add(x.all_round ? "overhanging ... all round" : "overhanging ... at SIDE");
        (*this)(x.by);
    }
    void operator()(const OverUnder& x) { add(x.over ? "over PART" : "under PART"); }
    void operator()(const FlushWith& x) { (*this)(x.side); }
    void operator()(const Tilt& x) {
        add(x.word);
        if (x.by.size() == 2) add("leaning two ways");
        for (const auto& [angle, side] : x.by) (*this)(angle);
    }
    void operator()(const TurnedOnPlan& x) { (*this)(x.angle); }
    void operator()(const PointToPoint& x) {
        (*this)(x.from);
        (*this)(x.to);
    }
    void operator()(const GrainAt& x) { (*this)(x.angle); }
    void operator()(const GluedUp& x) {
        if (x.thick)
            add("laminated of");
        else if (x.count)
            add("glued up of COUNT staves");
        else
            add(x.at_most_wide ? "glued up of staves at most" : "glued up of staves");
        if (!x.faces.empty()) add("bark faces " + x.faces);
        (*this)(x.at_most_wide);
        (*this)(x.count);
    }
    void operator()(const CarriesIs& x) {
        add(x.books           ? "carries books"
            : x.in_the_middle ? "carries ... in the middle"
            : x.per_metre     ? "carries ... per m"
            : x.per_foot      ? "carries ... per ft"
                              : "carries kg");
    }
    void operator()(const SapwoodAllowed&) {}
    void operator()(const Loose&) {}
    void operator()(const NoteIs&) {}
    void operator()(const Taper& x) {
        if (x.faces.size() == 2) add("taper two faces");
        for (const SideName& side : x.faces) (*this)(side);
        (*this)(x.to);
        (*this)(x.from_position);
        (*this)(x.to_position);
    }
    void operator()(const EdgeShape& x) {
        add(x.word);
        if (x.sizes.size() == 2) add("shaped edge: two sizes");
        (*this)(x.sizes);
        for (const EdgeName& edge : x.edges) (*this)(edge);
    }
    void operator()(const Miter& x) {
        add(x.angles.size() == 2 ? "compound miter" : "miter ANGLE");
        if (x.towards) add("miter: long to SIDE");
        (*this)(x.angles);
    }
    void operator()(const TrimTo& x) {
        add(x.word);
        if (x.angle) add("saw cut at ANGLE towards SIDE");
        (*this)(x.angle);
        (*this)(x.position);
    }
    void operator()(const Bore& x) {
        add(x.deep ? "bore: SIZE deep" : "bore: through");
        if (x.row_count) add("bore: row of");
        (*this)(x.diameter);
        (*this)(x.deep);
        (*this)(x.at);
        (*this)(x.row_count);
        (*this)(x.row_step);
    }
    void operator()(const Groove& x) {
        stops("groove", x.stopped);
        (*this)(x.wide);
        (*this)(x.deep);
        (*this)(x.from_side);
    }
    void operator()(const Rabbet& x) {
        stops("rabbet", x.stopped);
        (*this)(x.wide);
        (*this)(x.deep);
        (*this)(x.edge);
    }
    void operator()(const Notch& x) {
        for (const FromTo& span : x.spans) (*this)(span);
    }
    void operator()(const CurveEdge& x) {
        add(x.rise ? "curve ... by" : "curve ... through");
        if (x.reach) add("curve ... from ... to");
        (*this)(x.edge);
        (*this)(x.rise);
        if (x.reach) (*this)(*x.reach);
        (*this)(x.through);
    }
    void operator()(const OutlineIs& x) {
        for (const OutlineStep& step : x.steps) {
            if (step.kind == OutlineStep::Kind::broken) continue;
            add("outline: " + at(steps, step.kind));
            if (!step.bulge.empty()) add("outline: bulging " + step.bulge);
            if (step.kind == OutlineStep::Kind::curve && step.points.size() > 2)
                add("outline: curve through several points");
            (*this)(step.points);
            (*this)(step.radius);
        }
    }
    void operator()(const TurnedIs& x) {
        for (const TurnedStation& station : x.stations) {
            add(station.square   ? "turned: square to"
                : station.smooth ? "turned: smooth"
                                 : "turned: diameter");
            (*this)(station.diameter);
            (*this)(station.at);
        }
    }

    // ---- statements
    void operator()(const Copies& x) {
        add("copies: " + at(copy_kinds, x.kind));
        if (x.kind == Copies::Kind::row) {
            add("copies: row of ... " + at(directions, x.direction));
            if (x.spaced) add("copies: row spaced");
            if (x.reach) add("copies: row from ... to");
        }
        (*this)(x.count);
        (*this)(x.spaced);
        if (x.reach) (*this)(*x.reach);
    }
    void operator()(const std::vector<Copies>& all) {
        if (all.size() > 1) add("copies: two clauses");
        for (const Copies& copies : all) (*this)(copies);
    }
    void operator()(const BrokenStatement&) {}
    void operator()(const PieceIs&) {}
    void operator()(const UnitsAre& x) {
        add("units " + at(file_units, x.unit));
        if (x.to) add("units ... to");
        (*this)(x.to);
    }
    void operator()(const ClimateIs& x) {
        if (x.region) return add("climate REGION");
        add(x.humidity ? "climate ... humidity" : "climate ... moisture");
        if (x.temperature) add(x.fahrenheit ? "climate ... at ... F" : "climate ... at ... C");
        (*this)(x.low);
        (*this)(x.high);
    }
    void operator()(const MadeAt& x) { (*this)(x.moisture); }
    void operator()(const ShopIn&) {}
    void operator()(const BringIn&) {}
    void operator()(const ValueIs& x) { (*this)(x.value); }
    void operator()(const SizesAre& x) {
        for (const SizesAre::Row& row : x.rows) (*this)(row.values);
    }
    void operator()(const Require& x) { (*this)(x.condition); }
    void operator()(const RodIs& x) {
        add("rod " + at(directions, x.direction));
        for (const RodLine& line : x.lines) {
            if (line.count) add("rod: COUNT lines NAME between");
            (*this)(line.at);
            (*this)(line.count);
            (*this)(line.other);
        }
    }
    void operator()(const PartIs& x) {
        if (x.like) add("part like");
        (*this)(x.copies);
        for (const Phrase& phrase : x.phrases) {
            if (!std::holds_alternative<Broken>(phrase.says))
                add("phrase: " + at(phrases, phrase.says.index()));
            std::visit(*this, phrase.says);
        }
    }
    void operator()(const JoinIs& x) {
        used.joints.insert(x.kind.text);
        if (!x.notes.empty()) add("join: note");
        (*this)(x.a);
        (*this)(x.b);
        for (const JointOption& option : x.options) {
            used.options.emplace(x.kind.text, option.words);
            if (option.side) add("join: option with SIDE");
            if (option.quoted) add("join: name of a fitting");
            (*this)(option.values);
        }
    }
    void operator()(const HardwareIs& x) {
        if (x.count) add("hardware: off");
        if (x.on) add("hardware: on");
        if (x.to) add("hardware: to");
        (*this)(x.count);
    }
    void operator()(const PieceNote&) {}
    void operator()(const Accept& x) { add(x.part ? "accept ... on PART" : "accept everywhere"); }
    void operator()(const Takes& x) {
        for (const ValueIs& value : x.values) {
            add(value.value.kind == Expression::Kind::broken ? "takes: must be given"
                                                             : "takes: may be given");
            (*this)(value.value);
        }
    }
    void operator()(const RecipeIs& x) { take(x.body, used); }
    void operator()(const MakeIs& x) {
        if (!x.copies.empty()) add("make: copies");
        (*this)(x.copies);
        for (const ValueIs& value : x.given) (*this)(value.value);
        for (const SideAt& side : x.placed) (*this)(side);
    }
    void operator()(const ShopFile&) {}
    void operator()(const KerfIs& x) { (*this)(x.width); }
    void operator()(const AllowIs& x) { (*this)(x.amount); }
    void operator()(const LimitIs& x) { (*this)(x.amount); }
    void operator()(const TitleField&) {}
    void operator()(const SheetIs&) {}
    void operator()(const ProjectionIs&) {}
    void operator()(const BoardIs& x) {
        add(x.stock ? "board: by its stock" : "board: by its sizes");
        (*this)(x.size);
        (*this)(x.count);
        (*this)(x.rings);
        for (const auto& [wide, edge] : x.sapwood) (*this)(wide);
        for (const auto& [deep, end] : x.checks) (*this)(deep);
        for (const FlawIs& flaw : x.flaws) (*this)(flaw.sizes);
    }
    void operator()(const PriceIs& x) {
        add("price per " + x.per);
        (*this)(x.amount);
        (*this)(x.lengths);
        (*this)(x.widths);
        (*this)(x.sheets);
    }
    void operator()(const CurrencyIs&) {}
    void operator()(const OwnWood&) {}
    void operator()(const KeepOffcuts& x) { (*this)(x.size); }
    void operator()(const MatchIs& x) {
        for (const PartName& part : x.parts) (*this)(part);
    }
};

} // namespace

void take(const std::vector<Statement>& statements, FormsUsed& used) {
    Walk walk{used};
    for (const Statement& statement : statements) {
        if (!std::holds_alternative<BrokenStatement>(statement.says))
            used.forms.insert("statement: " + at(statement_words, statement.says.index()));
        std::visit(walk, statement.says);
    }
}

const std::vector<std::string>& forms_of_tables() {
    static const std::vector<std::string> all = [] {
        std::vector<std::string> out;
        const auto each = [&](const std::string& before, const auto& names, std::size_t first) {
            for (std::size_t i = first; i < names.size(); ++i)
                if (names[i]) out.push_back(before + names[i]);
        };
        each("phrase: ", phrases, 1);
        each("statement: ", statement_words, 1);
        each("arithmetic: ", arithmetic, 1);
        each("number: ", units, 0);
        each("side: ", sides, 0);
        each("size: ", size_words, 0);
        each("runs ", directions, 0);
        each("rod ", directions, 0);
        each("copies: ", copy_kinds, 0);
        each("copies: row of ... ", directions, 0);
        each("outline: ", steps, 1);
        return out;
    }();
    return all;
}

} // namespace rayfleck::checks_tests
