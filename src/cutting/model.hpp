#pragma once
// The order as the search sees it: what is alike becomes one type, kerf goes into the sizes, and the axes are
// named by the order of the cuts instead of by the grain.
//
// Axes: the first of three stages cuts across u, the second across v, the third across u again. Two stages
// begin with the cuts across v (there are no sections), one stage has the cuts across u alone.
// Kerf: n pieces in a row need n - 1 cuts, so sum(l) + (n - 1) k <= L, which is sum(l + k) <= L + k. Every
// size here is larger by the kerf of its direction, boards included; positions are as on the board. Kinds of
// part or stock that nothing links are separate problems and are solved one by one.

#include <compare>
#include <string>
#include <vector>

#include "cutting/cutting.hpp"

namespace rayfleck::cutting {

/// For sums of products of sizes, costs and counts.
__extension__ typedef __int128 Wide;

/// One way a type may lie: sizes with kerf.
struct Lie {
    int type = 0;
    Measure u = 0, v = 0;
    bool turned = false;
};

/// Where copies of a type go in the order.
struct Source {
    bool sequence = false; ///< index is into Order::sequences, else Order::parts
    std::size_t index = 0;
    std::int64_t count = 0;
};

struct Type {
    std::vector<Lie> lies; ///< one, or two when it may turn and is not square
    std::int64_t demand = 0;
    std::uint32_t tolerates = 0;
    std::vector<char> allowed; ///< by sheet
    std::vector<Source> sources;
    std::int64_t area = 0; ///< u * v with kerf; of the smaller lie
};

/// A defect in u and v, bare of kerf.
struct Hole {
    Measure u = 0, v = 0, u_end = 0, v_end = 0;
    std::uint32_t kinds = 0;
};

struct Sheet {
    Measure u = 0, v = 0;
    Cost cost = 0;
    std::int64_t available = 0; ///< never more than there are parts
    bool limited = false;       ///< less than there are parts
    std::vector<Hole> holes;
    std::vector<Source> sources;
};

struct Model {
    bool sections = false;   ///< first cuts across u, before the strips
    bool strips = false;     ///< cuts across v; without them, one strip as wide as the sheet
    bool transposed = false; ///< u is the board's y
    Measure kerf_u = 0, kerf_v = 0;
    std::vector<Type> types;
    std::vector<Sheet> sheets;

    /// Whether a lie is within the sheet's edges and its type may come from it.
    bool fits(const Lie& lie, std::size_t sheet) const {
        return types[static_cast<std::size_t>(lie.type)].allowed[sheet] != 0 && lie.u <= sheets[sheet].u &&
               lie.v <= sheets[sheet].v;
    }
};

/// Why the order cannot be taken; empty when it can.
std::string refusal_of(const Order& order);

/// The whole order, not refused, as one problem; then its independent problems. Types and sheets that have
/// nothing to go with are left out of the latter.
Model model_of(const Order& order);
std::vector<Model> independent_problems(const Model& model);

/// A part or block as it lies on the board, bare of kerf.
struct Extent {
    Measure x = 0, y = 0;
    friend auto operator<=>(const Extent&, const Extent&) = default;
};

/// A sequence's block. Turned, its parts are severed by the other saw, so that its size may differ.
Extent block_of(const Order& order, const Sequence& sequence, bool turned);

} // namespace rayfleck::cutting
