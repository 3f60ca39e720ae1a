#pragma once
// Patterns that can be cut as they are: no type more often than there are copies, no part over a defect.

#include <map>
#include <memory>
#include <vector>

#include "cutting/defects.hpp"
#include "cutting/pricer.hpp"

namespace rayfleck::cutting {

class Builder {
  public:
    explicit Builder(const Model& model) : model_(model), pricer_(model, Pricer::Rounding::up) {}

    /// A pattern of high value for the prices; empty when nothing of price fits.
    Pattern build(int sheet, const Prices& prices, std::int64_t& work);

    /// The pricer it works with. What it holds is of the last run(), and gone after build().
    Pricer& pricer() { return pricer_; }

  private:
    Pattern around_defects(int sheet, const Prices& prices, std::int64_t& work);
    Pattern repaired(Pattern pattern, const Prices& prices, std::int64_t& work);
    std::vector<Strip> section(int sheet, Measure length, Prices& prices, std::int64_t& work);

    const Model& model_;
    Pricer pricer_;
    std::map<int, std::unique_ptr<AroundDefects>> with_defects_;
};

/// The sum of its parts' prices.
std::int64_t value_of(const Pattern& pattern, const Prices& prices);

/// Whether no type is in it more often than allowed.
bool is_proper(const Pattern& pattern, const std::vector<std::int64_t>& most);

} // namespace rayfleck::cutting
