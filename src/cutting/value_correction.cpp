// Values corrected pass by pass. See value_correction.hpp.
//
// A part's value begins a little above proportional to its area, so that large parts go first (the exponent
// after G. Belov, G. Scheithauer, "Setup and open-stacks minimization ...", from memory). After each board
// the value of each part in it moves towards area × board / used area.

#include "cutting/value_correction.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::cutting {
namespace {

constexpr double exponent = 1.03;
constexpr double least_shake = 0.6, most_shake = 1.5;

double size_of(const Type& type) { return std::pow(static_cast<double>(type.area), exponent); }

} // namespace

ValueCorrection::ValueCorrection(const Model& model, Builder& builder) : model_(model), builder_(builder) {
    for (const Type& type : model.types) values_.push_back(size_of(type));
}

void ValueCorrection::shake(Lot& lot) {
    for (std::size_t t = 0; t < values_.size(); ++t)
        values_[t] = size_of(model_.types[t]) * (least_shake + (most_shake - least_shake) * lot.draw());
}

/// The sheet that costs least for its value. Where all that is left goes on one sheet, the cheapest such.
int ValueCorrection::choose(const Scaled& scaled, const std::vector<std::int64_t>& residual,
                            const std::vector<std::int64_t>& available, Pattern& ready, std::int64_t& work) {
    builder_.pricer().run(scaled.prices, available, Pricer::Sections::few, work);
    std::int64_t all = 0;
    for (std::size_t t = 0; t < residual.size(); ++t) all += scaled.prices.of_type[t] * residual[t];
    int best = -1;
    bool takes_all = false;
    double least = 0;
    std::vector<std::int64_t> values(model_.sheets.size());
    for (std::size_t s = 0; s < values.size(); ++s)
        if (available[s] > 0 && model_.sheets[s].holes.empty())
            values[s] = builder_.pricer().value(static_cast<int>(s));
    Pattern pattern;
    for (std::size_t s = 0; s < values.size(); ++s) {
        if (available[s] == 0) continue;
        if (!model_.sheets[s].holes.empty()) {
            pattern = builder_.build(static_cast<int>(s), scaled.prices, work);
            values[s] = value_of(pattern, scaled.prices);
        }
        if (values[s] <= 0) continue;
        const double cost = static_cast<double>(model_.sheets[s].cost);
        const bool whole = values[s] >= all;
        const double price = whole ? cost : cost / static_cast<double>(values[s]);
        if (best >= 0 && (takes_all != whole ? takes_all : least <= price)) continue;
        best = static_cast<int>(s), takes_all = whole, least = price;
        ready = model_.sheets[s].holes.empty() ? Pattern{} : pattern;
    }
    return best;
}

Solution ValueCorrection::pass(const std::vector<std::int64_t>& demand,
                               const std::vector<std::int64_t>& available, std::int64_t& work) {
    Solution solution;
    std::vector<std::int64_t> residual = demand, rest = available;
    for (;;) {
        const Scaled prices = scaled(model_, values_, residual);
        Pattern pattern;
        const int sheet = choose(prices, residual, rest, pattern, work);
        if (sheet < 0) break;
        if (pattern.counts.empty()) pattern = builder_.build(sheet, prices.prices, work);
        if (pattern.counts.empty()) break;
        std::int64_t times = rest[sheet];
        double used = 0;
        for (const auto& [type, many] : pattern.counts) {
            times = std::min(times, residual[type] / many);
            used += static_cast<double>(model_.types[type].area) * many;
        }
        if (times <= 0) break;
        const double board =
            static_cast<double>(model_.sheets[sheet].u) * static_cast<double>(model_.sheets[sheet].v);
        for (const auto& [type, many] : pattern.counts) {
            const double share =
                static_cast<double>(times * many) / static_cast<double>(residual[type] + demand[type]);
            values_[type] = (1 - share) * values_[type] + share * size_of(model_.types[type]) * board / used;
            residual[type] -= times * many;
        }
        rest[sheet] -= times;
        solution.uses.push_back({std::move(pattern), times});
    }
    weigh(model_, solution);
    for (std::size_t t = 0; t < demand.size(); ++t) solution.missing[t] = residual[t];
    solution.complete = std::all_of(residual.begin(), residual.end(), [](std::int64_t n) { return n == 0; });
    return solution;
}

} // namespace rayfleck::cutting
