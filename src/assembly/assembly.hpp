#pragma once
// The order in which a piece goes together: steps for the bench, or which joints lock each other.
//
// Found backwards, as one takes a piece apart: again and again some of the parts that still stand together
// are moved off the others in a straight line, if nothing is in the way (solid/passage.hpp asks the real
// solids). What comes off last was joined first. See split.hpp for which of several ways is taken,
// together.hpp for parts that only move all at once along different ways (splayed legs with stretchers),
// locks.hpp for what does not come apart at all. Left out: moves that turn a part, wood that is sprung into
// place, and moves in two legs round a corner.

#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::assembly {

using measure::Vector;

/// How what a move brings together is held, the weakest first.
enum class Hold {
    loose,    ///< set in place; no joint
    dry,      ///< a joint without glue
    fastened, ///< screws, buttons, pegs
    glued,
};

/// Some parts move as one body to where they belong.
struct Move {
    std::vector<int> parts; ///< indices into Model::made, ascending
    std::vector<int>
        onto; ///< all that stands there already, ascending; empty for a block that does not come apart
    Vector direction; ///< unit, piece's frame: the way in
    /// How far it moves from where it is clear of what it enters, mm; 0 when it is only laid on.
    double distance = 0;
    std::vector<int> joints; ///< closed by it, indices into Model::joints, ascending
    Hold hold = Hold::loose;
    /// Number of the group of moves that are made at once; -1 for a move by itself.
    int at_once = -1;
};

/// Several parts that are put together by themselves before they go to the rest.
struct SubAssembly {
    std::string name; ///< `door`, `drawer`; or a capital letter where the text has no name for it
    std::vector<std::vector<int>> copies; ///< parts of each, ascending; all go together alike
};

struct Fitting {
    std::string name;
    int count = 0;
};

struct Step {
    int number = 0; ///< from 1
    /// The sub-assembly that is worked on, index into Order::sub_assemblies; -1: the piece itself.
    int sub_assembly = -1;
    int copies = 1;                 ///< as many times; parts and moves are those of the first
    std::vector<int> standing;      ///< parts that stand when the step begins; at least one
    std::vector<int> moves;         ///< indices into Order::moves, in order
    Hold hold = Hold::loose;        ///< the strongest of its moves
    std::vector<Fitting> hardware;  ///< for all copies
    std::string title;              ///< `Drawer, 3 times`
    std::vector<std::string> words; ///< sentences for the bench
};

/// Parts that cannot be brought together one after the other, nor all at once. A smallest such set: without
/// any one of them the others come apart.
struct Lock {
    std::vector<int> parts;  ///< ascending
    std::vector<int> joints; ///< between them, ascending
};

struct Order {
    std::vector<Move> moves; ///< all of them, those of every copy, the first to be made first
    std::vector<SubAssembly> sub_assemblies;
    std::vector<Step> steps;
    std::vector<Lock> locks; ///< empty for every piece that can be made
};

/// The order in which a model goes together. Where parts lock each other they count as one block for the
/// rest.
Order order(const joinery::Model& model);

/// Moves and steps, one a line, with names: for tests.
std::string print(const Order& order, const joinery::Model& model);

} // namespace rayfleck::assembly
