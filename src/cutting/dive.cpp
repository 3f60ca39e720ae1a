// Column generation and diving. See dive.hpp.
//
// A dive needs the linear program's exact value only while it decides whether the target, the next cost below
// the best plan's, can still be reached: as long as the program over the columns at hand is within the target
// no column is priced. Second choices in the manner of limited discrepancy search: a dive that takes the
// second best column once, then twice ...

#include "cutting/dive.hpp"

#include <algorithm>
#include <cmath>

#include "cutting/greedy.hpp"

namespace rayfleck::cutting {
namespace {

constexpr double close = 1e-6;
/// Rounds of pricing after which a dive gives a node up.
constexpr int rounds_of_node = 60;
/// Patterns that share no part, priced one after the other from one set of duals.
constexpr int sweeps = 6;
/// Second choices are made in the first nodes of a dive only.
constexpr int deepest_second_choice = 12;

} // namespace

bool Dive::State::empty() const {
    return std::all_of(demand.begin(), demand.end(), [](std::int64_t n) { return n == 0; });
}

Dive::Dive(const Model& model, Solution best, Cost bound, std::int64_t limit)
    : model_(model), builder_(model), down_(model, Pricer::Rounding::down), master_(model),
      correction_(model, builder_), attainable_(model, best.cost), best_(std::move(best)), limit_(limit) {
    bound_ = attainable_.at_least(bound);
    for (const Use& use : best_.uses) master_.add(use.pattern);
}

Cost Dive::target() const {
    return best_.complete ? attainable_.below(best_.cost) : largest_cost * largest_count;
}

void Dive::correct_values(int passes, double share) {
    const std::int64_t end = work_ + static_cast<std::int64_t>(share * static_cast<double>(limit_ - work_));
    std::vector<std::int64_t> demand, available;
    for (const Type& type : model_.types) demand.push_back(type.demand);
    for (const Sheet& sheet : model_.sheets) available.push_back(sheet.available);
    for (int i = 0; i < passes && work_ < end && !proven(); ++i) {
        Solution solution = correction_.pass(demand, available, work_);
        for (const Use& use : solution.uses) master_.add(use.pattern);
        if (better(solution, best_)) best_ = std::move(solution);
    }
}

/// Columns of negative reduced cost; how many.
int Dive::add_columns(const State& state, const Scaled& scaled, const std::vector<double>& sheet_duals) {
    Pricer& pricer = builder_.pricer();
    const double scale = static_cast<double>(scaled.scale);
    const auto gain = [&](int sheet, std::int64_t value) {
        return static_cast<double>(value) / scale - static_cast<double>(model_.sheets[sheet].cost) -
               sheet_duals[sheet];
    };
    int added = 0;
    Scaled left = scaled;
    for (int sweep = 0; sweep < sweeps; ++sweep) {
        std::vector<int> improper;
        Pattern best;
        double most = close;
        const auto consider = [&](Pattern&& pattern) {
            const double its = gain(pattern.sheet, value_of(pattern, left.prices));
            if (its <= close || pattern.counts.empty()) return;
            if (sweep == 0 && master_.add(pattern)) ++added;
            if (its > most) most = its, best = std::move(pattern);
        };
        for (std::size_t s = 0; s < model_.sheets.size(); ++s) {
            const int sheet = static_cast<int>(s);
            if (state.available[s] == 0 || gain(sheet, pricer.value(sheet)) <= close) continue;
            Pattern pattern = model_.sheets[s].holes.empty() ? pricer.pattern(sheet) : Pattern{};
            if (model_.sheets[s].holes.empty() && is_proper(pattern, left.prices.most))
                consider(std::move(pattern));
            else
                improper.push_back(sheet);
        }
        for (const int sheet : improper) consider(builder_.build(sheet, left.prices, work_));
        if (best.counts.empty()) break;
        if (sweep > 0 && master_.add(best)) ++added;
        for (const auto& [type, times] : best.counts) left.prices.most[type] -= times;
        if (sweep + 1 < sweeps) pricer.run(left.prices, state.available, Pricer::Sections::few, work_);
    }
    return added;
}

Dive::Priced Dive::price(const State& state, bool root) {
    bool all = !model_.sections;
    for (int round = 0;; ++round) {
        master_.solve(work_);
        const double value = static_cast<double>(state.cost) + master_.value();
        if (!root && value <= static_cast<double>(target()) + close) return Priced::within_target;
        if (out_of_work()) return Priced::out_of_work;
        if (!root && round >= rounds_of_node) return Priced::above_target;
        const std::vector<double> duals = master_.part_duals(), sheet_duals = master_.sheet_duals();
        const Scaled prices = scaled(model_, duals, state.demand);
        builder_.pricer().run(prices.prices, state.available,
                              all ? Pricer::Sections::all : Pricer::Sections::few, work_);
        if (all) {
            const Pricer* exact = &builder_.pricer();
            if (!exact->exact()) {
                exact = nullptr;
                if (down_.may_bound() && root) {
                    down_.run(prices.prices, state.available, Pricer::Sections::all, work_);
                    exact = &down_;
                }
            }
            if (exact != nullptr) {
                const Cost least = attainable_.at_least(
                    state.cost + price_bound(model_, state.demand, state.available, prices, *exact));
                if (root && best_.complete) bound_ = std::max(bound_, least);
                if (!root && least > target()) return Priced::above_target;
                if (root && (proven() || (master_.complete() && static_cast<double>(least) >= value - close)))
                    return Priced::within_target;
            }
        }
        if (add_columns(state, prices, sheet_duals) > 0) continue;
        if (!all && root) {
            all = true;
            continue;
        }
        return Priced::above_target;
    }
}

/// Fixes a column as often as it goes; false when not once.
bool Dive::fix(State& state, std::size_t column, std::int64_t times) const {
    const Pattern& pattern = master_.pattern(column);
    times = std::min(times, state.available[pattern.sheet]);
    for (const auto& [type, many] : pattern.counts) times = std::min(times, state.demand[type] / many);
    if (times <= 0) return false;
    for (const auto& [type, many] : pattern.counts) state.demand[type] -= times * many;
    state.available[pattern.sheet] -= times;
    state.cost += times * model_.sheets[pattern.sheet].cost;
    state.fixed.push_back({pattern, times});
    return true;
}

void Dive::complete(const State& state, const Solution& rest) {
    Solution whole;
    whole.uses = state.fixed;
    whole.uses.insert(whole.uses.end(), rest.uses.begin(), rest.uses.end());
    weigh(model_, whole);
    if (better(whole, best_)) best_ = std::move(whole);
}

void Dive::dive(State state, int second_choices, int depth) {
    for (;; ++depth) {
        if (state.empty()) return complete(state, {});
        if (out_of_work() || proven() || state.cost > target()) return;
        complete(state, greedy(model_, state.demand, state.available, work_));
        if (proven()) return;
        master_.want(state.demand, state.available, true);
        if (price(state, false) != Priced::within_target) {
            if (!out_of_work()) complete(state, correction_.pass(state.demand, state.available, work_));
            return;
        }
        std::vector<std::pair<double, std::size_t>> candidates;
        bool fixed = false;
        for (std::size_t column = 0; column < master_.columns(); ++column) {
            const double use = master_.use(column);
            if (use < close) continue;
            const double whole = std::floor(use + close);
            if (whole >= 1)
                fixed = fix(state, column, static_cast<std::int64_t>(whole)) || fixed;
            else
                candidates.emplace_back(-use, column);
        }
        if (fixed) continue;
        std::stable_sort(candidates.begin(), candidates.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first - close; });
        if (candidates.empty()) return;
        if (depth < deepest_second_choice)
            for (int i = 1; i <= second_choices && i < static_cast<int>(candidates.size()); ++i) {
                State other = state;
                if (fix(other, candidates[i].second, 1))
                    dive(std::move(other), second_choices - i, depth + 1);
                if (out_of_work() || proven()) return;
            }
        if (!fix(state, candidates[0].second, 1)) return;
    }
}

void Dive::run() {
    State whole;
    for (const Type& type : model_.types) whole.demand.push_back(type.demand);
    for (const Sheet& sheet : model_.sheets) whole.available.push_back(sheet.available);
    master_.want(whole.demand, whole.available, false);
    price(whole, true);
    for (int second_choices = 0; !out_of_work() && !proven() && second_choices < 8; ++second_choices)
        dive(whole, second_choices, 0);
}

} // namespace rayfleck::cutting
