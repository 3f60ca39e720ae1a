#pragma once
// The most valuable pattern of every sheet, for given prices of the parts: strips filled by knapsack, stacked
// by a knapsack across v, sections of all lengths set in a row by a third.
//
// Everything is in whole numbers, so that the values are exact. Two things are left out, and so the values
// are never too low: a type may be taken more often than there are copies, once per strip as often as
// allowed, and defects are not seen. On long sheets the knapsacks run on a grid coarser than the caller's
// unit. Sizes rounded up give patterns that can be cut; sizes rounded down give values that no pattern
// exceeds, for the bound.

#include <cstdint>
#include <memory>
#include <vector>

#include "cutting/pattern.hpp"
#include "cutting/strip_fill.hpp"

namespace rayfleck::cutting {

/// Prices in money made into whole numbers: of_type[t] = floor(money[t] × scale).
struct Scaled {
    Prices prices;
    std::int64_t scale = 1;
};
Scaled scaled(const Model& model, const std::vector<double>& money, const std::vector<std::int64_t>& most);

class Pricer {
  public:
    enum class Rounding { up, down };
    enum class Sections {
        all, ///< every length that parts in a row can have: exact
        few, ///< those of one type, and of pairs
    };

    Pricer(const Model& model, Rounding rounding);
    ~Pricer();
    Pricer(Pricer&&) noexcept;

    /// Solves for all sheets that are wanted (by sheet, not 0).
    void run(const Prices& prices, const std::vector<std::int64_t>& wanted, Sections sections,
             std::int64_t& work);

    /// The value of a sheet's best pattern after run().
    std::int64_t value(int sheet) const;
    /// That pattern, laid out; or the best one that leaves all beyond `length` free. On sheets with defects
    /// it may lie over them.
    Pattern pattern(int sheet) const;
    Pattern pattern(int sheet, Measure length) const;

    /// For one sheet: the best stack of strips in a section of this length and v, by its own small solve.
    std::vector<Strip> stack(int sheet, Measure length, Measure v, const Prices& prices, std::int64_t& work);

    bool exact() const;     ///< the grid is the caller's unit
    bool may_bound() const; ///< no part is so small that rounding down leaves nothing of it

  private:
    struct Kind;
    const Model& model_;
    std::vector<std::unique_ptr<Kind>> kinds_; ///< sheets that the same types may come from
    std::vector<std::size_t> kind_of_sheet_;
    Measure grid_u_ = 1, grid_v_ = 1;
    bool may_bound_ = true;
};

/// Strips and sections set one after the other without gaps, sizes from their items; empty ones taken out.
void settle(const Model& model, Pattern& pattern);

} // namespace rayfleck::cutting
