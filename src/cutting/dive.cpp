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
/// Patterns that share no part, priced one after the other from one set of duals; with sections, which are
/// dear to price, one.
constexpr int sweeps_of_strips = 3;

/// Rounds of pricing in a node that is within the target already: a better program leads to better choices.
constexpr int extra_rounds = 2;
/// How far the lot may move a pattern's fraction in the choice of the next to fix.
constexpr double widest_spread = 1.0;

constexpr double hopeless = 1e300;
constexpr Cost no_target = largest_cost * largest_count;
/// Of the boards of the best dive so far, the share that is taken back; and after how many dives in vain the
/// next begins at the whole again.
constexpr double least_share = 0.2, most_share = 0.7;
constexpr int patience = 25;
constexpr std::int64_t steps_between = 20'000;
/// After so many dives, a pass of value correction from values drawn by lot.
constexpr int turns_to_shake = 5;

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

Cost Dive::target() const { return best_.complete ? attainable_.below(best_.cost) : no_target; }

void Dive::offer(const Solution& solution) {
    if (!better(solution, best_)) return;
    best_ = solution;
    for (const Use& use : best_.uses) master_.add(use.pattern);
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
    const int sweeps = model_.sections ? 1 : sweeps_of_strips;
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
    bool all = !model_.sections, bounded = false;
    const std::int64_t begin = work_;
    for (int round = 0;; ++round) {
        master_.solve(work_);
        const double value = static_cast<double>(state.cost) + master_.value();
        const bool within = value <= static_cast<double>(target()) + close;
        if (!root && within && round >= extra_rounds) return Priced::within_target;
        if (out_of_work()) return Priced::out_of_work;
        if (root && all && model_.sections && bounded && work_ > begin + limit_ / 8)
            return Priced::out_of_work;
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
            bounded = true;
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
        return within && !root ? Priced::within_target : Priced::above_target;
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

/// Goes down from the state; gives the program's value where it ends, and leaves the state as it is there.
double Dive::dive(State& state) {
    for (;;) {
        if (state.empty()) {
            complete(state, {});
            return static_cast<double>(state.cost);
        }
        if (out_of_work() || proven()) return hopeless;
        complete(state, greedy(model_, state.demand, state.available, work_));
        if (proven() || state.cost > target()) return hopeless;
        master_.want(state.demand, state.available, true);
        if (price(state, false) != Priced::within_target) {
            if (out_of_work()) return hopeless;
            const double value = static_cast<double>(state.cost) + master_.value();
            complete(state, correction_.pass(state.demand, state.available, work_));
            return value;
        }
        std::vector<std::pair<double, std::size_t>> candidates;
        bool fixed = false;
        // A column out of use may be drawn too where the target has room for it.
        const double room = static_cast<double>(target() - state.cost) - master_.value() + close;
        for (std::size_t column = 0; column < master_.columns(); ++column) {
            const double use = master_.use(column);
            if (use < close) {
                if (spread_ > 0 && !master_.barred(column) && master_.extra(column) <= room)
                    candidates.emplace_back(-std::round(spread_ * lot_.draw() / close), column);
                continue;
            }
            const double whole = std::floor(use + close);
            if (whole >= 1)
                fixed = fix(state, column, static_cast<std::int64_t>(whole)) || fixed;
            else
                candidates.emplace_back(-std::round((use + spread_ * lot_.draw()) / close), column);
        }
        if (fixed) continue;
        const auto largest = std::min_element(candidates.begin(), candidates.end());
        if (largest == candidates.end() || !fix(state, largest->second, 1)) return hopeless;
    }
}

/// Takes a share of the fixed boards back, drawn by lot.
void Dive::loosen(State& state, double share) {
    std::vector<Use> kept;
    for (Use& use : state.fixed) {
        std::int64_t back = 0;
        for (std::int64_t i = 0; i < use.times; ++i) back += lot_.draw() < share ? 1 : 0;
        for (const auto& [type, many] : use.pattern.counts) state.demand[type] += back * many;
        state.available[use.pattern.sheet] += back;
        state.cost -= back * model_.sheets[use.pattern.sheet].cost;
        use.times -= back;
        if (use.times > 0) kept.push_back(std::move(use));
    }
    state.fixed = std::move(kept);
}

void Dive::price_whole() {
    for (const Type& type : model_.types) whole_.demand.push_back(type.demand);
    for (const Sheet& sheet : model_.sheets) whole_.available.push_back(sheet.available);
    master_.want(whole_.demand, whole_.available, false);
    price(whole_, true);
    base_ = whole_;
    reached_ = hopeless;
}

void Dive::run(int dives, std::int64_t until) {
    for (int turn = 0; turn < dives && work_ < until && !out_of_work() && !proven(); ++turn) {
        work_ += steps_between;
        if (++turns_ % turns_to_shake == 0) {
            // Patterns that no duals ask for.
            correction_.shake(lot_);
            const Solution shaken = correction_.pass(whole_.demand, whole_.available, work_);
            for (const Use& use : shaken.uses) master_.add(use.pattern);
            if (better(shaken, best_)) best_ = shaken;
            if (proven()) return;
        }
        State state = base_;
        spread_ = first_ ? 0 : widest_spread * lot_.draw();
        first_ = false;
        if (goal_ != target()) goal_ = target(), reached_ = hopeless;
        loosen(state, least_share + (most_share - least_share) * lot_.draw());
        const double value = dive(state);
        if (value <= reached_ + close) {
            if (value < reached_ - close) in_vain_ = 0;
            base_ = std::move(state);
            reached_ = value;
        } else if (++in_vain_ >= patience) {
            base_ = whole_;
            reached_ = hopeless;
            in_vain_ = 0;
        }
    }
}

} // namespace rayfleck::cutting
