#pragma once
// Guillotine cutting: parts from stock at least cost, with a proof of how far the plan can be from the best.
//
// The room knows integers and rectangles, no wood. A board is a rectangle: x runs along its length, y across
// its width, origin in a lower corner. Every cut goes through the whole piece that lies on the saw; a
// crosscut runs across the length at one x, a rip runs along the length at one y. A cut takes a strip as wide
// as the kerf of its direction; where less than the kerf is left, the saw eats what is left. The unit is the
// caller's (a tenth of a millimetre, a 64th of an inch); all sizes are whole numbers of it. A coarse unit is
// quicker, since positions on the board are counted one by one.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace rayfleck::cutting {

using Measure = std::int64_t; ///< a size or position in the caller's unit
using Cost = std::int64_t;    ///< in the caller's smallest coin

/// Largest size and largest cost that are taken; larger ones are refused in Plan::refusal.
constexpr Measure largest_measure = 10'000'000;
constexpr Cost largest_cost = 1'000'000'000;
constexpr std::int64_t largest_count = 100'000; ///< of all parts together

/// What may not be in a part unless the part puts up with it: a knot, a check, sapwood.
struct Defect {
    Measure x = 0, y = 0, length = 0, width = 0; ///< may reach over the board's edge; empty ones are ignored
    std::uint32_t kinds = 1; ///< bits, named by the caller; a part bears it when it tolerates all of them
};

/// A part type: `count` rectangles that are alike.
struct Part {
    Measure length = 0, width = 0;   ///< along and across the board, > 0
    std::int64_t count = 1;          ///< all that are needed, those in sequences included
    bool may_turn = false;           ///< may lie across the board (no grain)
    std::uint32_t tolerates = 0;     ///< kinds of defect that may be in it
    std::vector<std::size_t> stocks; ///< the stock types it may come from; none named: any
};

/// Boards or sheets that are alike. End trims are already taken off.
struct Stock {
    Measure length = 0, width = 0;
    Cost cost = 0;                         ///< of one, >= 0
    std::optional<std::int64_t> available; ///< none: as many as are wanted
    std::vector<Defect> defects;           ///< on every board of this type
};

/// Parts that come from one board as neighbours, in this order: drawer fronts in a row, a book-matched pair.
/// They are cut out as one block, and the block is then taken apart by cuts of one more stage.
struct Sequence {
    enum class Towards { along, across };
    std::vector<std::size_t> parts;   ///< indices into Order::parts, at least one, repeats allowed
    Towards towards = Towards::along; ///< along: end to end; across: side by side
    std::int64_t count = 1;           ///< so many blocks; they use up count × parts of the parts' counts
};

/// In which order the saws come.
/// one stage:    the first cuts alone;  two: the first, then the other direction;  three: the first again.
/// A part smaller than what the last stage leaves is trimmed by one more cut.
/// `crosscut` and three is the usual way with boards: crosscut to sections, rip, crosscut.
struct Stages {
    enum class First { crosscut, rip };
    int count = 3; ///< 1, 2 or 3
    First first = First::crosscut;
};

struct Order {
    std::vector<Part> parts;
    std::vector<Stock> stocks;
    std::vector<Sequence> sequences;
    Measure kerf_rip = 0, kerf_crosscut = 0;
    Stages stages;
};

/// How long to look for something better, in units of work and not of time, so that the same order gives the
/// same plan on every machine. A unit is about a million steps of the innermost loops: on a machine of
/// 2020 about a thousandth of a second.
struct Effort {
    std::int64_t work = 1000;
};
constexpr Effort first_plan{0};   ///< the first plan alone: some milliseconds
constexpr Effort usual{1000};     ///< about a second
constexpr Effort thorough{10000}; ///< about ten

struct Rectangle {
    Measure x = 0, y = 0, length = 0, width = 0;
    friend bool operator==(const Rectangle&, const Rectangle&) = default;
};

struct Placement {
    std::size_t part = 0;                ///< index into Order::parts
    Rectangle place;                     ///< on the board, as it lies
    bool turned = false;                 ///< the part's length runs across the board
    std::optional<std::size_t> sequence; ///< index into Order::sequences
    std::size_t block = 0, member = 0;   ///< in a sequence: which of its blocks, which place in the row
};

/// One cut through one piece. The blade takes [at, at + kerf) of x (crosscut) or y (rip); at either end of
/// the piece that may reach over its edge.
struct Cut {
    enum class Direction { crosscut, rip };
    Direction direction = Direction::crosscut;
    Rectangle piece; ///< what lies on the saw
    Measure at = 0;
    int stage = 1; ///< 1, 2, 3; then trimming cuts and cuts within a sequence's block count on
};

/// A board in use.
struct Board {
    std::size_t stock = 0;
    std::vector<Placement> placements;
    std::vector<Cut> cuts; ///< in the order in which they can be made
    std::vector<Rectangle> leftovers;
};

/// Parts that are in no board, and why.
struct Missing {
    std::size_t part = 0;
    std::int64_t count = 0;
    enum class Why {
        fits_nowhere, ///< no stock named for it is large enough, or free enough of defects
        stock_is_out, ///< there is not enough stock
    } why = Why::fits_nowhere;
};

struct Plan {
    std::string refusal; ///< not empty: the order makes no sense, and there is no plan
    std::vector<Board> boards;
    std::vector<Missing> missing; ///< by part; empty when every part has its place
    Cost cost = 0;
    /// No plan under the same stages and with the same blocks costs less; proved in whole numbers. Of what
    /// can be cut at all: parts that fit nowhere do not count; 0 when stock is out.
    Cost bound = 0;
    bool proven_optimal = false; ///< every part that fits has its place, and cost = bound
    std::int64_t work = 0;       ///< units used, at most a little above the effort
};

/// Plans the order. Never fails: see Plan::refusal and Plan::missing. The same order and effort give the same
/// plan.
Plan cut(const Order& order, Effort effort = usual);

} // namespace rayfleck::cutting
