#pragma once
// What no plan can cost less than, proved in whole numbers.

#include <cstdint>
#include <vector>

#include "cutting/pricer.hpp"

namespace rayfleck::cutting {

/// Cost of the material in the parts, each sheet's area priced at its cost, cheapest first.
Cost material_bound(const Model& model, const std::vector<std::int64_t>& demand,
                    const std::vector<std::int64_t>& available);

/// Lagrange's bound for any prices: the parts' prices, less what the best patterns of the limited sheets are
/// worth above their cost. The prices are scaled down together where that makes it larger. `pricer` must have
/// been run with these prices, all sections, rounding down or exact.
Cost price_bound(const Model& model, const std::vector<std::int64_t>& demand,
                 const std::vector<std::int64_t>& available, const Scaled& scaled, const Pricer& pricer);

/// Costs that sheets can add up to.
class Attainable {
  public:
    explicit Attainable(const Model& model, Cost most);
    Cost at_least(Cost cost) const; ///< the least attainable one not below
    Cost below(Cost cost) const;    ///< the greatest one below; -1: none

  private:
    std::vector<char> reached_; ///< empty: only the common divisor is known
    Cost divisor_ = 1;
};

} // namespace rayfleck::cutting
