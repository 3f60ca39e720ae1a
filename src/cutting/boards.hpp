#pragma once
// Patterns turned into boards: which part lies where, which cuts in which order, what is left.

#include <vector>

#include "cutting/pattern.hpp"

namespace rayfleck::cutting {

/// Hands out the order's boards and parts to patterns, one pattern after the other. What a pattern yields
/// above the demand stays a leftover.
class Boards {
  public:
    explicit Boards(const Order& order) : order_(order) {}

    /// The solution of one problem, added to what there is.
    void add(const Model& model, const Solution& solution);

    std::vector<Board> boards;
    std::vector<std::int64_t> placed; ///< by part of the order

  private:
    const Order& order_;
    std::vector<std::size_t> blocks_; ///< by sequence: how many were placed
};

} // namespace rayfleck::cutting
