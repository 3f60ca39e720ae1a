#pragma once
// Sequential value correction: boards filled one by one for the most value; parts that ended in wasteful
// boards are worth more the next time round.

#include <vector>

#include "cutting/builder.hpp"
#include "cutting/lot.hpp"

namespace rayfleck::cutting {

class ValueCorrection {
  public:
    ValueCorrection(const Model& model, Builder& builder);

    /// One pass over what is wanted. Values are corrected on the way for the next pass.
    Solution pass(const std::vector<std::int64_t>& demand, const std::vector<std::int64_t>& available,
                  std::int64_t& work);

    /// Moves every value up or down by lot.
    void shake(Lot& lot);

  private:
    int choose(const Scaled& scaled, const std::vector<std::int64_t>& residual,
               const std::vector<std::int64_t>& available, Pattern& ready, std::int64_t& work);

    const Model& model_;
    Builder& builder_;
    std::vector<double> values_;
};

} // namespace rayfleck::cutting
