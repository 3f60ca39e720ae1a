#pragma once
// One strip filled for the most value: a knapsack along u, solved for every length and every strip width at
// once.

#include <cstdint>
#include <vector>

#include "cutting/model.hpp"

namespace rayfleck::cutting {

/// What parts are worth in the whole numbers of a search, and how many may be taken.
struct Prices {
    std::vector<std::int32_t> of_type;
    std::vector<std::int64_t> most; ///< copies, by type
};

/// Lies in order of their v; the fill of level k may use those of the k + 1 least widths.
/// A type that may lie both ways is limited in each of them alone, so that both together may be too many.
class StripFill {
  public:
    /// `lies` in any order; `longest`: the greatest length asked for.
    StripFill(std::vector<Lie> lies, Measure longest);

    /// Solves anew. Sums of prices must stay below 2^30. Adds its steps to `work`.
    void run(const Prices& prices, Measure longest, std::int64_t& work);

    std::size_t levels() const { return widths_.size(); }
    Measure width(std::size_t level) const { return widths_[level]; }
    /// The last level not wider than v; -1: none.
    int level_of(Measure v) const;
    /// Value by length, from 0 to the longest; never falls.
    const std::int32_t* values(std::size_t level) const { return row(row_of_level_[level]); }
    /// The lies that make the value, shortest widths last.
    std::vector<Lie> items(std::size_t level, Measure length) const;

  private:
    const std::int32_t* row(std::size_t index) const { return table_.data() + index * stride_; }
    std::int32_t* row(std::size_t index) { return table_.data() + index * stride_; }
    void step(const std::int32_t* from, std::int32_t* to, Measure length, std::int32_t price);

    std::vector<Lie> lies_;
    std::vector<Measure> widths_;
    std::vector<std::size_t> last_lie_; ///< by level
    std::vector<std::size_t> row_of_level_;
    struct Taken {
        std::size_t lie, row, before; ///< rows after and before this lie came in
        std::int64_t most;
        std::int32_t price;
    };
    std::vector<Taken> taken_;
    std::vector<std::size_t> taken_of_level_; ///< how many of taken_ count for the level
    std::size_t stride_ = 0;
    Measure longest_ = 0;
    std::vector<std::int32_t> table_, spare_[2];
};

} // namespace rayfleck::cutting
