#pragma once
// The syntax tree: what a text says, statement by statement, with the place of everything.
//
// One struct per statement or phrase of the language; names are still names, arithmetic is still arithmetic,
// and nothing has been looked up. A line that cannot be read is a Broken node: the rest of its file is read
// all the same, and later rooms stay quiet about whatever a Broken node may have meant.

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "measure/length.hpp"
#include "source/text.hpp"

namespace rayfleck::syntax {

using source::Span;

/// A name or word as written, single spaces between its words.
struct Name {
    std::string text;
    Span span;
    friend bool operator==(const Name& a, const Name& b) { return a.text == b.text; }
};

/// A part or several: `leg`, or one copy of it: `leg at front-left`.
struct PartName {
    Name name;
    std::optional<Name> copy;
    Span span;
};

/// Text in double quotes, without them.
struct Quoted {
    std::string text;
    Span span;
};

enum class Direction { across, deep, up };

/// A side of a part or of the piece. inside and outside are resolved by where the part stands in the piece.
enum class Side { left, right, front, back, top, bottom, inside, outside };

struct SideName {
    Side side = Side::left;
    Span span;
};

// ---- arithmetic
// --------------------------------------------------------------------------------------------------

/// Units as written. `bare` takes the unit of the file in which the number stands.
enum class NumberUnit { bare, mm, cm, m, in, ft, degrees, percent };

/// Arithmetic, positions and conditions. A position is arithmetic in which lines and faces may stand.
struct Expression {
    enum class Kind {
        broken,    ///< could not be read
        number,    ///< amount, unit
        name,      ///< a value, a line of a rod, or a column of the table of sizes
        quoted,    ///< text, for values that name a wood or a stock
        each,      ///< `each`: the line that this copy was made for
        side_of,   ///< `left of leg`, `inside of leg`: side, part. The side alone (`left`) is a name
        size_of,   ///< `thickness|width|length of leg`: word, part
        from_side, ///< `30 from left`: operands[0], side; this part's own side, measured inwards
        middle,    ///< `middle between a and b`
        larger,    ///< `larger of a and b`
        smaller,   ///< `smaller of a and b`
        negate,
        add,
        subtract,
        multiply,
        divide,
        less,
        at_most,
        more,
        at_least,
        equal,
        both,
        either,
    };
    Kind kind = Kind::broken;
    Span span;
    measure::Rational amount;
    NumberUnit unit = NumberUnit::bare;
    std::string word; ///< name, quoted text, or which size
    Side side = Side::left;
    std::optional<PartName> part;
    std::vector<Expression> operands;
};

// ---- phrases of a part
// -------------------------------------------------------------------------------------------

struct Broken {}; // a phrase that could not be read
struct WoodIs {
    Expression wood;
}; // wood cherry: name or quoted
struct SawnIs {
    std::string word;
    std::optional<Expression> rings;
}; // flat|rift|quarter sawn, rings at 30 degrees
/// How far the pith lies from a side of the board's end: outside it, or inwards of it.
struct PithPlace {
    Expression distance;
    bool beyond = true;
    SideName side;
};
struct PithAt {
    std::vector<PithPlace> places; ///< one or two
};                                 // pith 30 beyond bottom and 40 from left
struct BarkIs {
    bool heart = false;
    bool edge = false;
    SideName towards;
}; // bark face up, heart edge left
struct StockIs {
    Name stock;
}; // stock 8/4, stock 2x4
enum class SizeOf { thick, wide, long_ };
struct SizeIs {
    std::vector<std::pair<SizeOf, Expression>> sizes;
}; // size 20 x 60 x 400, 20 thick
struct RunsAlong {
    Direction direction = Direction::across;
}; // runs across, stands (= up)
struct FaceLooks {
    bool edge = false;
    SideName towards;
}; // face side front, face edge up
struct FromTo {
    Expression from, to;
}; // from apron-low to apron-top
struct Between {
    PartName a;
    std::optional<PartName> b;
    std::optional<Direction> direction;
};
struct SideAt {
    SideName side;
    Expression position;
}; // top at apron-top
struct CentredOn {
    std::optional<Direction> direction;
    std::vector<Expression> between; // 0: the piece; 1: on; 2: between
    std::optional<PartName> part;
}; // centred on leg
struct SetBack {
    Expression distance;
    SideName from;
    std::optional<PartName> of;
};
struct Overhanging {
    PartName part;
    Expression by;
    bool all_round = false;
    std::vector<SideName> at;
};
struct OverUnder {
    bool over = true;
    PartName part;
}; // over apron, under top
struct FlushWith {
    SideName side;
    PartName part;
};                                                   // flush with front of leg
struct Tilt {                                        // splayed 8 degrees left and 6 degrees front
    std::string word;                                // splayed (foot goes out, top stays), raked
    std::vector<std::pair<Expression, SideName>> by; // (top goes, foot stays), canted (as raked)
};
struct TurnedOnPlan {
    Expression angle;
}; // turned 45 degrees (about the upright)
struct PointToPoint {
    std::vector<Expression> from, to;
}; // from point (a, b, c) to point (d, e, f)
struct GrainAt {
    Expression angle;
}; // grain at 15 degrees (to the length, on the face)
struct GluedUp {
    std::optional<Expression> at_most_wide, count;
    std::string faces;
    bool thick = false;
};
// glued up of staves at most 110 wide
// [bark faces alternating|together]; laminated of 3
struct CarriesIs {
    Expression amount; // broken: books
    bool books = false, pounds = false, per_metre = false, per_foot = false, in_the_middle = false;
};                        // carries 25 kg, carries 20 lb per ft, carries books
struct SapwoodAllowed {}; // sapwood allowed
struct Loose {};          // stands or moves free: no joint expected
struct NoteIs {
    Quoted text;
};

struct EdgeName {                // all edges, long edges, top edges, top front edge
    std::string which;           // all, long, end, or empty
    std::vector<SideName> sides; // one: all edges round that face; two: that edge
    Span span;
};
struct Taper {
    std::vector<SideName> faces;
    Expression to;
    Expression from_position, to_position;
};
struct EdgeShape {                 // chamfer 3, bevel 15 degrees, round over 5,
    std::string word;              // chamfer, bevel, round-over, ovolo, ogee, cove, bead
    std::vector<Expression> sizes; // mould ogee 12 x 8
    std::vector<EdgeName> edges;
};
struct Miter {
    std::vector<Expression> angles;
    SideName end;
    std::optional<SideName> towards;
};
// miter 45 degrees at left end [long to front]
// compound miter 31.6 and 26.1 degrees at left end
struct TrimTo {
    std::string word;
    SideName side;
    std::optional<Expression> angle;
    std::optional<SideName> towards;
    Expression position;
};
// crosscut left end [at 10 degrees towards top] to P
// rip front edge ..., resaw bottom face ...
struct Bore {
    Expression diameter;
    std::optional<Expression> deep; // nothing: through
    SideName face;
    std::vector<Expression> at; // two positions
    std::optional<Expression> row_count, row_step;
    std::optional<Direction> row_direction;
};
struct Groove {
    Expression wide, deep;
    SideName face;
    Expression from_side;
    SideName side; // 10 from bottom
    std::vector<std::pair<Expression, std::optional<SideName>>> stopped;
}; // stopped 30 [from left]
struct Rabbet {
    Expression wide, deep;
    EdgeName edge;
    std::vector<std::pair<Expression, std::optional<SideName>>> stopped;
};
struct Notch {
    std::vector<FromTo> spans;
}; // notch from a to b and from c to d
struct CurveEdge {
    SideName edge;
    std::optional<Expression> rise; // curve bottom edge by 30 [from a to b]
    std::optional<FromTo> reach;
    std::vector<std::pair<Expression, Expression>> through;
};

/// One line of an outline. Coordinates: along the length, across the width, from the low corner of the blank.
struct OutlineStep {
    enum class Kind { broken, start, line, arc_through, arc_radius, curve, close } kind = Kind::broken;
    Span span;
    std::vector<std::pair<Expression, Expression>> points; ///< the end last; before it what it passes through
    std::optional<Expression> radius;
    std::string bulge; ///< left or right of the way it goes; for arc_radius
};
struct OutlineIs {
    std::vector<OutlineStep> steps;
};
/// One line of a turned profile: a diameter at a distance from the low end of the length.
struct TurnedStation {
    Span span;
    bool broken = false;
    bool square = false;
    bool smooth = false;
    Expression diameter, at;
};
struct TurnedIs {
    std::vector<TurnedStation> stations;
};

struct Phrase {
    Span span;
    std::variant<Broken, WoodIs, SawnIs, PithAt, BarkIs, StockIs, SizeIs, RunsAlong, FaceLooks, FromTo,
                 Between, SideAt, CentredOn, SetBack, Overhanging, OverUnder, FlushWith, Tilt, TurnedOnPlan,
                 PointToPoint, GrainAt, GluedUp, CarriesIs, SapwoodAllowed, Loose, NoteIs, Taper, EdgeShape,
                 Miter, TrimTo, Bore, Groove, Rabbet, Notch, CurveEdge, OutlineIs, TurnedIs>
        says;
};

// ---- statements
// --------------------------------------------------------------------------------------------------

/// How often a part or a made recipe stands in the piece.
struct Copies {
    enum class Kind {
        each_corner,
        left_right,
        front_back,
        top_bottom,
        row,
        each_of
    } kind = Kind::each_corner;
    Span span;
    std::optional<Expression> count;  ///< row of N
    std::optional<Expression> spaced; ///< row: centre to centre
    std::optional<FromTo> reach;      ///< row: even gaps between these
    Direction direction = Direction::across;
    std::vector<Name> lines; ///< each_of
};

struct Statement;

struct PieceIs {
    Quoted title;
};
struct UnitsAre {
    measure::Unit unit = measure::Unit::mm;
    std::optional<Expression> to;
};                                       // units in, to 1/32
struct ClimateIs {                       // climate 35% to 60% humidity at 20 C
    std::optional<Expression> low, high; // 6% to 10% moisture; or a named region
    bool humidity = true;
    std::optional<Expression> temperature;
    bool fahrenheit = false;
    std::optional<Name> region;
};
struct MadeAt {
    Expression moisture;
}; // made at 8% moisture
struct ShopIn {
    Quoted path;
}; // shop "shop.fleck"
struct BringIn {
    Quoted path;
}; // bring in "door.fleck"
struct ValueIs {
    Name name;
    Expression value;
}; // value leg-size = 38
struct SizesAre {
    std::vector<Name> columns;
    struct Row {
        Name name;
        std::vector<Expression> values;
        Span span;
    };
    std::vector<Row> rows;
};
struct Require {
    Expression condition;
    Quoted message;
};
struct RodLine {
    Name name;
    Expression at;
    std::optional<Expression> count; // `2 lines shelf between floor and top`
    std::optional<Expression> other;
    Span span;
}; // count: lines between `at` and `other`
struct RodIs {
    Direction direction = Direction::across;
    std::vector<RodLine> lines;
};
struct PartIs {
    Name name;
    std::optional<PartName> like;
    std::vector<Copies> copies;
    std::vector<Phrase> phrases;
};
/// An option of a joint: words and numbers in the order written, `haunched`, `6 thick`, `every 150`, `slope
/// 1:8`.
struct JointOption {
    std::string words;
    std::vector<Expression> values;
    std::optional<SideName> side; // `glued at front`
    std::optional<Quoted> quoted;
    Span span;
};
struct JoinIs {
    PartName a, b;
    Name kind;
    std::vector<JointOption> options;
    std::vector<NoteIs> notes;
};
struct HardwareIs {
    Quoted name;
    std::optional<Expression> count;
    std::optional<PartName> on, to;
};
struct PieceNote {
    Quoted text;
};
struct Accept {
    Name check;
    std::optional<PartName> part;
    Quoted reason;
};
/// Parts that are cut so that their grain belongs together.
enum class Matching { in_sequence, book_matched, one_board };
struct MatchIs {
    std::vector<PartName> parts;
    Matching how = Matching::in_sequence;
}; // match drawer front, in sequence
struct Takes {
    std::vector<ValueIs> values;
}; // in a recipe: value.kind broken = must be given
struct RecipeIs {
    Name name;
    std::vector<Statement> body;
};
struct MakeIs {
    Name name, recipe;
    std::vector<Copies> copies;
    std::vector<ValueIs> given;
    std::vector<SideAt> placed;
};

// The shop file: `shop file "Name"` first, then these.
struct ShopFile {
    Quoted name;
};
struct KerfIs {
    Name saw;
    Expression width;
}; // kerf table saw 3
struct AllowIs {
    Expression amount;
    Name what;
}; // allow 3 for planing
struct LimitIs {
    Name machine;
    Name what;
    Expression amount;
}; // limit planer width 300
struct TitleField {
    Name field;
    Quoted text;
}; // title owner "Lindgren & Daughter"
struct SheetIs {
    Name size;
}; // sheet A3
struct ProjectionIs {
    bool first_angle = true;
}; // projection first angle
/// On a board that lies with its length from left to right, its better face up; along from the left end,
/// across from the front edge.
struct FlawIs {
    Name kind;                     // knot, split, shake, wane, defect
    std::vector<Expression> sizes; // 3: diameter, along, across; 4: from, to along and from, to across
};
struct BoardIs {
    Name id;
    std::optional<Name> wood, stock, sawn;
    std::vector<Expression> size;
    std::optional<Expression> count, rings;
    std::optional<BarkIs> bark;
    std::vector<std::pair<Expression, SideName>> sapwood, checks;
    std::vector<FlawIs> flaws;
};
/// One figure of a wood: `radial shrinkage 6.8 %`; `hardwood` has a name alone.
struct WoodFigure {
    Name name;
    std::string amount; ///< digits as written; empty when none is told
    std::string unit;   ///< as written: `%`, `kg/m3`, `MPa`; may be empty
    Span span;
};
struct OwnWood {
    Name name;
    std::vector<WoodFigure> figures;
}; // wood hornbeam, hardwood, density 750 kg/m3, ...
struct PriceIs {
    Name wood;
    std::optional<Name> stock, sawn;
    Expression amount;
    std::string per;
    std::vector<Expression> lengths, widths, sheets;
};
struct CurrencyIs {
    Quoted text;
}; // currency "EUR"
struct KeepOffcuts {
    std::vector<Expression> size;
}; // keep offcuts 60 x 400

struct BrokenStatement {
    std::string word;
}; // the word it began with

struct Statement {
    Span span;   ///< the whole statement with its block
    Span header; ///< its first line
    std::variant<BrokenStatement, PieceIs, UnitsAre, ClimateIs, MadeAt, ShopIn, BringIn, ValueIs, SizesAre,
                 Require, RodIs, PartIs, JoinIs, HardwareIs, PieceNote, Accept, Takes, RecipeIs, MakeIs,
                 ShopFile, KerfIs, AllowIs, LimitIs, TitleField, SheetIs, ProjectionIs, BoardIs, PriceIs,
                 CurrencyIs, KeepOffcuts, MatchIs, OwnWood>
        says;
};

/// One file.
struct Tree {
    int file = 0;
    std::vector<Statement> statements;
    /// Something of the file could not be read: later rooms must not complain of what may be missing.
    bool broken = false;
};

} // namespace rayfleck::syntax
