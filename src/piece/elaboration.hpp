#pragma once
// What is known while a piece is being elaborated; seen inside this room only.
//
// A Scope holds names: the main file with all it brings in is one, every `make` of a recipe is another inside
// it, with its own rods and its own coordinates. Nothing is worked out before it is asked for: a value, a
// line, a part's place in one direction, a part's pose each carry a Progress. Whoever asks for something that
// is being worked out already has found a circle, and the stack of works names the whole of it.
//
// One part statement may stand for several Instances, each placed for itself (the slats of a row); mirror
// images of an instance are Standings of it. A PartRef is one standing as seen from some scope, through the
// made things between.

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "findings/finding.hpp"
#include "piece/elaborate.hpp"
#include "piece/quantity.hpp"
#include "wood/lumber.hpp"

namespace rayfleck::piece {

using measure::Frame;
using measure::Plane;
using measure::Point;
using measure::Vector;
using syntax::Direction;
using syntax::Expression;
using syntax::Side;

enum class Progress { untouched, busy, done };

constexpr int index_of(Direction d) { return static_cast<int>(d); }
constexpr std::array<Direction, 3> directions{Direction::across, Direction::deep, Direction::up};
std::string text(Direction direction);
std::string text(Side side);
/// left, front and bottom are the low sides. Not for inside and outside.
bool is_high(Side side);
/// The direction a side faces along; nothing for inside and outside.
std::optional<Direction> direction_of(Side side);
/// The side that faces low or high along a direction.
Side side_of(Direction direction, bool high);
Vector unit_vector(Direction direction, bool high = true);

struct Scope;
struct Instance;
struct PartEntry;
struct MadeEntry;

struct MadeCopy;

/// One standing of a part, as seen from the scope that asks.
struct PartRef {
    Instance* instance = nullptr;
    std::array<bool, 3> flipped{};
    std::vector<MadeCopy*> path; ///< outermost first
    std::string name;            ///< as seen from the scope that asked
    std::string base, copy;
};

struct ValueEntry {
    std::string name;
    Span span;
    const Expression* expression = nullptr; ///< null: declared, but broken or not given
    Scope* scope = nullptr;                 ///< in which the expression is read
    Progress progress = Progress::untouched;
    Quantity result;
    Progress direction_progress = Progress::untouched;
    std::optional<Direction> direction;
};

struct LineEntry {
    std::string name;
    Span span;
    Direction direction = Direction::across;
    const syntax::RodLine* line = nullptr;
    int number = 0, count = 0; ///< of `N lines`: which of how many
    Scope* scope = nullptr;
    Progress progress = Progress::untouched;
    std::optional<Length> at;
};

/// What a part's block demands of its place in one direction.
struct Demand {
    enum class Kind { low, high, centre, size } kind = Kind::low;
    Span span;
    std::function<std::optional<Length>()> value; ///< nothing: the fault has been reported
};

/// A part's place in one direction, before any tilting.
struct Spot {
    Progress progress = Progress::untouched;
    bool known = false;
    Length low, high;
};

struct Interval {
    Length low, high;
};

/// Which direction each own axis lies in: 0 length, 1 width, 2 thickness; and whether it points the high way.
struct Axes {
    Progress progress = Progress::untouched;
    bool known = false;
    bool guessed = false; ///< nothing in the text told thickness from width
    std::array<Direction, 3> along{Direction::across, Direction::up, Direction::deep};
};

/// Where the body stands in its scope, tilted and trimmed.
struct Pose {
    Progress progress = Progress::untouched;
    bool known = false;
    Frame frame;
    std::array<Length, 3> size; ///< length, width, thickness
    bool upright = true;
    std::vector<Cut> trims;
    /// Own axis k: the direction it lay in before tilting, and how a position on that rod becomes an own
    /// coordinate: own = start + sign * scale * (position - origin).
    struct Reading {
        Direction direction = Direction::across;
        double start = 0, scale = 1, origin = 0;
        bool high = true;
    };
    std::array<Reading, 3> readings;
};

/// One copy of a part that is placed for itself.
struct Instance {
    PartEntry* part = nullptr;
    int number = 0;   ///< among the part's instances
    std::string copy; ///< its share of the copy's name
    const LineEntry* each = nullptr;
    struct Row {
        const syntax::Copies* clause = nullptr;
        int place = 0, of = 1;
    };
    std::vector<Row> rows;
    bool demands_read = false;
    bool quiet = false; ///< a phrase is broken: what seems missing may be what it said
    std::array<std::vector<Demand>, 3> demands;
    std::array<bool, 3> spanned{}; ///< low and high are both told by lines or other parts
    /// Between which parts it lies, by direction; at most one phrase each.
    std::array<const syntax::Between*, 3> between{};
    std::array<Span, 3> between_span{};
    /// The two it lies between, low one first, once that is worked out; else empty.
    std::array<std::vector<PartRef>, 3> neighbours;
    struct Stated {
        Progress progress = Progress::untouched;
        std::optional<Length> value;
        Span span;
    };
    std::array<Stated, 3> stated; ///< sizes told: length, width, thickness
    Axes axes;
    std::array<Spot, 3> spots;
    Pose pose;
};

/// A copy as a mirror image of an instance.
struct Standing {
    Instance* instance = nullptr;
    std::array<bool, 3> flipped{};
    std::string copy;
};

struct PartEntry {
    std::string name;
    Span header, span;
    const syntax::PartIs* says = nullptr;
    Scope* scope = nullptr;
    bool said_twice = false; ///< and reported: what seems missing may be what was passed over
    Progress phrases_progress = Progress::untouched;
    std::vector<const syntax::Phrase*> phrases; ///< with those taken over by `like`
    const std::vector<syntax::Copies>* copies = nullptr;
    Progress expansion = Progress::untouched;
    std::vector<std::unique_ptr<Instance>> instances;
    std::vector<Standing> standings;
};

struct MadeCopy {
    MadeEntry* made = nullptr;
    std::array<bool, 3> flipped{};
    std::vector<Instance::Row> rows;
    const LineEntry* each = nullptr;
    std::string copy;
    std::array<Progress, 3> offset_progress{};
    std::array<std::optional<Length>, 3> offsets;
};

struct MadeEntry {
    std::string name;
    Span header, span;
    const syntax::MakeIs* says = nullptr;
    Scope* scope = nullptr; ///< the one it stands in
    Scope* inside = nullptr;
    Progress expansion = Progress::untouched;
    std::vector<std::unique_ptr<MadeCopy>> copies;
};

struct Item {
    PartEntry* part = nullptr;
    MadeEntry* made = nullptr;
};

struct Scope {
    Scope* parent = nullptr; ///< in which it is made; null for the piece itself
    MadeEntry* made = nullptr;
    int depth = 0;
    std::map<std::string, std::unique_ptr<ValueEntry>> values;
    std::map<std::string, LineEntry*> line_names;
    std::array<std::vector<std::unique_ptr<LineEntry>>, 3> rods;
    std::vector<std::unique_ptr<PartEntry>> parts;
    std::vector<std::unique_ptr<MadeEntry>> mades;
    std::vector<Item> items; ///< in the order of the text
    std::map<std::string, Span> part_names;
    std::vector<const syntax::RodIs*> counted;  ///< rods that may hold `N lines`
    std::vector<const syntax::Statement*> rest; ///< require, join, hardware, notes, acceptances
};

/// For whom an expression is worked out.
struct Context {
    Scope* scope = nullptr;
    Instance* self = nullptr;
    const LineEntry* each = nullptr;
    std::optional<Direction> along; ///< tells which way inside and outside lie
    bool shaping = false;           ///< `30 from left` is measured from the part's own side
};

struct Work {
    const void* what;
    std::string name;
    Span span;
};

struct Elaboration {
    Elaboration(const Project& texts, findings::Findings& found) : project(texts), findings(found) {}

    const Project& project;
    findings::Findings& findings;
    std::vector<measure::Unit> units; ///< by file
    measure::Manner manner;
    std::vector<std::unique_ptr<Scope>> scopes;
    std::map<std::string, const syntax::Statement*> recipes; ///< the piece's own and brought in
    std::map<std::string, const syntax::Statement*> shipped;
    std::vector<Work> works;
    int depth = 0; ///< of nested calls, so that no text exhausts the stack
    std::set<std::tuple<std::string, int, std::size_t, std::size_t>> reported;
    findings::Finding dropped; ///< what a repeated error is written into
    bool lines_may_be_lost = false, values_may_be_lost = false, parts_may_be_lost = false,
         recipes_may_be_lost = false;
    std::vector<Span> text_errors;   ///< what the text's reading has already complained of
    std::optional<std::string> size; ///< the row of the table of sizes that was asked for
    std::string size_name;           ///< the row taken
    std::vector<std::shared_ptr<const wood::OwnWood>> own_woods; ///< of the shop file
    std::set<int> gathered;                                      ///< files brought in already
    std::vector<const syntax::Statement*> settings;              ///< piece, units, climate, made at, shop

    /// Reports an error once per name and place.
    findings::Finding& error(const std::string& name, Span span, const std::string& message);
    std::string shown(Length length) const { return measure::text_with_unit(length, manner); }
    measure::Unit unit_of(Span span) const { return units[static_cast<std::size_t>(span.file)]; }
};

/// Takes a place on the stack of works for as long as it lives.
class Working {
  public:
    Working(Elaboration& e, Progress& progress, std::string name, Span span);
    ~Working();
    Working(const Working&) = delete;
    Working& operator=(const Working&) = delete;
    /// False when it is being worked out already (a circle, reported) or is done.
    bool begun() const { return begun_; }

  private:
    Elaboration& e_;
    Progress& progress_;
    bool begun_ = false;
};

/// Counts nested calls.
class Deeper {
  public:
    explicit Deeper(Elaboration& e) : e_(e) { ++e_.depth; }
    ~Deeper() { --e_.depth; }
    Deeper(const Deeper&) = delete;
    Deeper& operator=(const Deeper&) = delete;
    static constexpr int deepest = 4000;

  private:
    Elaboration& e_;
};

// ---- names (names.cpp)
// -------------------------------------------------------------------------------------------

ValueEntry* find_value(const Scope& scope, const std::string& name);
LineEntry* find_line(const Scope& scope, const std::string& name);
void unknown_name(Elaboration& e, const Scope& scope, const std::string& word, Span span);
/// Every part the name means, seen from the scope, in the order of the text. Reports an unknown name or copy.
std::vector<PartRef> parts_named(Elaboration& e, Scope& scope, const syntax::PartName& name);
/// The one of them that a phrase of `self` means: the copy of the same name, else the first.
std::optional<PartRef> part_named(Elaboration& e, Scope& scope, const syntax::PartName& name,
                                  const Instance* self);
/// All standings of a scope and of what is made in it.
std::vector<PartRef> all_parts(Elaboration& e, Scope& scope);

// ---- values and rods (values.cpp, positions.cpp, rods.cpp)
// -----------------------------------------------------------

Quantity evaluate(Elaboration& e, const Expression& x, const Context& c);
Quantity value_of(Elaboration& e, ValueEntry& value);
std::optional<Length> length_of(Elaboration& e, const Expression& x, const Context& c);
std::optional<double> degrees_of(Elaboration& e, const Expression& x, const Context& c);
std::optional<Rational> number_of(Elaboration& e, const Expression& x, const Context& c,
                                  const std::string& what);
std::optional<int> count_of(Elaboration& e, const Expression& x, const Context& c, const std::string& what,
                            int most);
std::optional<std::string> text_of(Elaboration& e, const Expression& x, const Context& c);
/// `SIDE of PART`, `SIZE of PART`.
Quantity face_position(Elaboration& e, const Expression& x, const Context& c);
Quantity size_of_part(Elaboration& e, const Expression& x, const Context& c);

std::optional<Length> line_at(Elaboration& e, LineEntry& line);
/// Which rod an expression is read on, told by the lines and sides in it. Two at once are reported.
std::optional<Direction> direction_of(Elaboration& e, const Expression& x, Scope& scope,
                                      const LineEntry* each);
/// First and last line of a rod, worked out; nothing when it has none or one is unknown.
std::optional<Interval> reach_of(Elaboration& e, Scope& scope, Direction direction);
/// Middle of the rod, between its first and its last line.
std::optional<Length> middle_of(Elaboration& e, Scope& scope, Direction direction);
void read_rod(Elaboration& e, Scope& scope, const syntax::RodIs& rod, Span span);
/// `N lines`: makes the lines. After all names are gathered, since counts may hang on any value.
void spread_lines(Elaboration& e, Scope& scope);
/// A name for lines and parts of a table or a text to choose from, for near words.
std::string did_you_mean(const std::string& word, const std::vector<std::string>& known);

// ---- gathering (gather.cpp, recipes.cpp)
// -----------------------------------------------------------------------------

void gather(Elaboration& e, Scope& scope, const std::vector<syntax::Statement>& statements);
/// Notes which sorts of names the errors of the text may have taken away.
void note_losses(Elaboration& e);
void add_value(Elaboration& e, Scope& scope, const std::string& name, Span span, const Expression* x,
               Scope* read_in);
void open_recipe(Elaboration& e, MadeEntry& made);
/// Where a made thing's own rod begins on the rod of the scope it stands in.
std::optional<Length> offset_of(Elaboration& e, MadeCopy& copy, Direction direction);

// ---- copies (copies.cpp)
// ---------------------------------------------------------------------------------------------

const std::vector<const syntax::Phrase*>& phrases_of(Elaboration& e, PartEntry& part);
/// Reports what may be said once only and is said again; false when there is any.
bool says_once(Elaboration& e, const syntax::PartIs& says);
bool says_once(Elaboration& e, const std::vector<OptionGiven>& options, const std::string& kind);
void expand(Elaboration& e, PartEntry& part);
void expand(Elaboration& e, MadeEntry& made);
Part reflected(const Part& part, Direction direction, double middle);
/// Carries a part placed in its own scope out through flips and made things.
std::optional<Part> carried(Elaboration& e, const PartRef& ref, Part part);
std::optional<Interval> carried(Elaboration& e, const PartRef& ref, Direction direction, Interval interval);
/// Whether low became high on the way out.
bool turned_about(const PartRef& ref, Direction direction);

// ---- placement (demands.cpp, axes.cpp, spots.cpp, leaning.cpp, pose.cpp)
// ----------------------------------------------

void read_demands(Elaboration& e, Instance& instance);
/// The direction of the length, from `runs` or from the only reading there is.
std::optional<Direction> length_direction(Elaboration& e, Instance& instance);
const Axes& axes_of(Elaboration& e, Instance& instance);
int axis_along(const Axes& axes, Direction direction);
std::optional<Length> stated_size(Elaboration& e, Instance& instance, int axis);
bool size_is_told(const Instance& instance, int axis);
/// Told by the stock alone: it counts where nothing else tells, for stock may be cut down.
bool size_is_of_stock(const Instance& instance, int axis);
/// Its stock is unknown, which is reported: what thickness and width seem to miss only follows from that.
bool stock_is_unknown(const Instance& instance);
const Spot& spot_of(Elaboration& e, Instance& instance, Direction direction);
/// The same for any standing, in the coordinates of the scope that asked.
std::optional<Interval> interval_of(Elaboration& e, const PartRef& ref, Direction direction);
const Pose& pose_of(Elaboration& e, Instance& instance);
std::optional<Pose> pose_of(Elaboration& e, const PartRef& ref);
/// Leans, or is turned, or goes from point to point.
bool is_tilted(Elaboration& e, Instance& instance);

/// How a part leans: the way its upright axis points afterwards, and whether it turns about its foot or its
/// top.
struct Lean {
    bool leans = false;
    bool about_top = false;
    Vector up{0, 0, 1};
    double turned_degrees = 0;
};
std::optional<Lean> lean_of(Elaboration& e, Instance& instance);
/// Turns v as the shortest rotation turns the upright into `up`.
Vector leaned(Vector v, Vector up);

/// Position of a face of a part, at the asker's own height where the part leans.
std::optional<Length> face_at(Elaboration& e, const PartRef& ref, Direction direction, bool high,
                              const Context& c);
/// Middle of a part, at the asker's own height where it leans.
std::optional<Length> middle_at(Elaboration& e, const PartRef& ref, Direction direction, const Context& c);
/// Which way a side of a part faces along a direction; inside and outside look to and from the rod's middle.
std::optional<bool> faces_high(Elaboration& e, const PartRef& ref, Side side, Direction direction,
                               Scope& scope, Span span);
/// The gap in which a part lies by its phrase `between`.
std::optional<Interval> gap_of(Elaboration& e, Instance& instance, Direction direction);
/// The gap between two neighbours when one of them or the part leans: where the part's own centre line meets
/// their faces. Otherwise the gap as it is.
std::optional<Interval> between_leaning(Elaboration& e, Instance& instance, Direction direction,
                                        const PartRef& low, const PartRef& high, Interval upright);
/// A face of a standing part as a plane with the normal outwards; of a leaning part the face nearest that
/// way.
std::optional<Plane> face_plane(Elaboration& e, const PartRef& ref, Direction direction, bool high);
/// Middle of the body and its axes after leaning and turning, in the scope; before it is trimmed.
struct Stance {
    Point centre;
    std::array<Vector, 3> axes;    ///< own axes
    std::array<double, 3> nominal; ///< sizes between the ends that the place tells
    bool trimmed_level = false;    ///< both ends of the upright axis are cut level
    int upright = 0;               ///< the own axis that stood upright
    double rise = 1;               ///< how much of the upright axis goes up
};
std::optional<Stance> stance_of(Elaboration& e, Instance& instance, std::optional<Direction> without);
/// What a saw is set to for a plane cut at the ends of an own axis.
void set_saw(PlaneCut& cut, int axis);

// ---- woods of the shop file (own_woods.cpp)
// ---------------------------------------------------------------------------------------

/// Reads the woods that the piece's shop file tells, before any name of a wood is looked up.
void gather_own_woods(Elaboration& e);
/// The same for one file.
void read_own_woods(Elaboration& e, int file);
/// Names of all woods, those of the shop first, for near words.
std::vector<std::string> names_of_woods(const Elaboration& e);

// ---- the pith of a board (pith.cpp)
// ---------------------------------------------------------------------------------------

/// Where the pith lies, with the ring angle and the bark side that follow from it. The part's size and place
/// are known.
void read_pith(Elaboration& e, Instance& instance, const syntax::PithAt& says, Span span, const Context& c,
               Part& part);

// ---- sides of a part (sides.cpp)
// ---------------------------------------------------------------------------------------

/// The own side that a side of the piece means on a part as it stood before leaning.
std::optional<LocalSide> own_side(Elaboration& e, Instance& instance, const syntax::SideName& side);
/// The same where inside and outside may mean several: all faces along the grain that look that way.
std::vector<LocalSide> own_sides(Elaboration& e, Instance& instance, const syntax::SideName& side);
/// Whether the face side (or face edge) looks the high way along its direction; by the text or by custom.
std::optional<bool> looks_high(Elaboration& e, Instance& instance, Direction direction, bool edge);
/// A position on the rod that own axis k lay along, as an own coordinate.
double own_coordinate(const Pose& pose, int axis, Length position);

// ---- from here to the piece
// --------------------------------------------------------------------------------------

/// What the phrases say of the wood itself: species, sawing, bark, stock, glue-up, notes.
void describe_wood(Elaboration& e, Instance& instance, Part& part);
/// Shaping phrases to cuts, outline and turned profile.
void shape(Elaboration& e, Instance& instance, Part& part);
/// Joins, hardware, notes and acceptances of a scope and of all that is made in it.
/// ids  number of each part in the piece by its full name
void read_joins(Elaboration& e, Scope& scope, const std::map<std::string, int>& ids, Piece& piece);
void read_requirements(Elaboration& e, Scope& scope);
/// The unit of every file, from its `units`; mm where it has none. And how the main file wants lengths
/// printed.
void read_units(Elaboration& e);
/// Title, climate, moisture when made; the shop file after that.
void read_settings(Elaboration& e, Scope& scope, Piece& piece);
void read_shop(Elaboration& e, Scope& scope, const syntax::ShopIn& says, Piece& piece);
std::optional<wood::Climate> climate_of(Elaboration& e, const syntax::ClimateIs& says, Span span,
                                        const Context& c);

} // namespace rayfleck::piece
