#pragma once
// The search that patterns' fractions lead: columns priced in, the largest fixed, the rest priced anew.

#include <vector>

#include "cutting/bound.hpp"
#include "cutting/builder.hpp"
#include "cutting/lot.hpp"
#include "cutting/master.hpp"
#include "cutting/value_correction.hpp"

namespace rayfleck::cutting {

class Dive {
  public:
    /// `best`: what there is so far; `limit`: steps at which to stop.
    Dive(const Model& model, Solution best, Cost bound, std::int64_t limit);

    /// Columns for the whole problem, and the bound. Once, before run().
    void price_whole();

    /// At most so many dives, begun before `until` steps in all.
    void run(int dives, std::int64_t until);

    void stop_at(std::int64_t limit) { limit_ = limit; }

    /// A plan found elsewhere.
    void offer(const Solution& solution);

    /// No cost lies between the bound and the best plan's.
    bool one_step_from_proof() const { return best_.complete && target() <= bound_; }

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
    double dive(State& state);
    void loosen(State& state, double share);
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
    State whole_, base_; ///< base: where the best dive since the last fresh begin ended
    double reached_ = 0; ///< the program's value there
    Cost goal_ = -1;     ///< the target then
    int in_vain_ = 0;    ///< dives that did not lower it
    bool first_ = true;
    int turns_ = 0;
    double spread_ = 0; ///< of the lot in this dive
    Lot lot_;
};

} // namespace rayfleck::cutting
