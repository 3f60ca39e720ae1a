#pragma once
// The search that patterns' fractions lead: columns priced in, the largest fixed, the rest priced anew.

#include <vector>

#include "cutting/bound.hpp"
#include "cutting/builder.hpp"
#include "cutting/master.hpp"
#include "cutting/value_correction.hpp"

namespace rayfleck::cutting {

class Dive {
  public:
    /// `best`: what there is so far; `limit`: steps at which to stop.
    Dive(const Model& model, Solution best, Cost bound, std::int64_t limit);

    /// All of it: columns for the whole problem, the bound, dives with more and more second choices.
    void run();

    /// Passes of value correction, at most so many, and only while they cost less than `share` of the limit.
    void correct_values(int passes, double share);

    const Solution& best() const { return best_; }
    Cost bound() const { return bound_; }
    std::int64_t work() const { return work_; }
    bool proven() const { return best_.complete && bound_ >= best_.cost; }

  private:
    struct State {
        std::vector<std::int64_t> demand, available;
        std::vector<Use> fixed;
        Cost cost = 0;
        bool empty() const;
    };
    enum class Priced { within_target, above_target, out_of_work };

    Priced price(const State& state, bool root);
    int add_columns(const State& state, const Scaled& scaled, const std::vector<double>& sheet_duals);
    void dive(State state, int second_choices, int depth);
    bool fix(State& state, std::size_t column, std::int64_t times) const;
    void complete(const State& state, const Solution& rest);
    bool out_of_work() const { return work_ >= limit_; }
    Cost target() const;

    const Model& model_;
    Builder builder_;
    Pricer down_; ///< for the bound, where the builder's grid is not exact
    Master master_;
    ValueCorrection correction_;
    Attainable attainable_;
    Solution best_;
    Cost bound_ = 0;
    std::int64_t work_ = 0, limit_ = 0;
};

} // namespace rayfleck::cutting
