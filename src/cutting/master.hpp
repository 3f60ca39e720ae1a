#pragma once
// The linear program over patterns: every part at least as often as it is wanted, no sheet more often than it
// is there, least cost. Fractions of patterns are allowed, so its value leads the search and its duals price
// the parts. Solved by Clp, from where the last solve ended.

#include <memory>
#include <vector>

#include "cutting/pattern.hpp"

namespace rayfleck::cutting {

class Master {
  public:
    explicit Master(const Model& model);
    ~Master();

    /// A new column; false when one with the same sheet and counts is there already.
    bool add(const Pattern& pattern);

    std::size_t columns() const { return patterns_.size(); }
    const Pattern& pattern(std::size_t column) const { return patterns_[column]; }

    /// What is still wanted and there. Columns that hold more of a type than wanted are barred when `proper`.
    void want(const std::vector<std::int64_t>& demand, const std::vector<std::int64_t>& available,
              bool proper);

    /// Solves. Counts its steps in `work`.
    void solve(std::int64_t& work);

    double value() const;  ///< cost, with a very high one for what is missing
    bool complete() const; ///< nothing is missing
    double use(std::size_t column) const;
    double extra(std::size_t column) const; ///< what one use of it would add to the value
    bool barred(std::size_t column) const;
    std::vector<double> part_duals() const;  ///< >= 0, by type
    std::vector<double> sheet_duals() const; ///< >= 0, by sheet: what one more would save

  private:
    struct Program;
    const Model& model_;
    std::unique_ptr<Program> program_;
    std::vector<Pattern> patterns_;
    std::vector<std::pair<std::uint64_t, std::size_t>> known_; ///< sorted
    std::vector<std::size_t> fresh_;                           ///< not yet in the program
    std::vector<int> row_of_sheet_;                            ///< -1: not limited
    std::vector<std::int64_t> demand_, available_;
    bool proper_ = false;
};

} // namespace rayfleck::cutting
