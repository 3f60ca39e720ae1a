// Lower bounds. See bound.hpp.
//
// Why Lagrange's bound holds. Let p be prices of the parts, P(s) the value of the best pattern of sheet s,
// c(s) its cost, a(s) how many there are. A plan with x(s) sheets has parts worth sum d p <= sum x(s) P(s),
// so it costs sum x c >= sum d p - sum x (P - c) >= sum d p - sum a max(0, P - c). The same holds for p
// scaled by any f > 0, and as a function of f the right side has its greatest value where some f P(s) = c(s).

#include "cutting/bound.hpp"

#include <algorithm>
#include <numeric>

namespace rayfleck::cutting {
namespace {

/// Costs up to this are tabled.
constexpr Cost largest_table = 4'000'000;

Wide ceiling(Wide a, Wide b) { return a <= 0 ? 0 : (a + b - 1) / b; }

} // namespace

Cost material_bound(const Model& model, const std::vector<std::int64_t>& demand,
                    const std::vector<std::int64_t>& available) {
    Wide area = 0;
    for (std::size_t t = 0; t < demand.size(); ++t) area += Wide(model.types[t].area) * demand[t];
    std::vector<std::size_t> sheets(model.sheets.size());
    std::iota(sheets.begin(), sheets.end(), 0);
    const auto area_of = [&](std::size_t s) { return Wide(model.sheets[s].u) * model.sheets[s].v; };
    std::sort(sheets.begin(), sheets.end(), [&](std::size_t a, std::size_t b) {
        const Wide of_a = model.sheets[a].cost * area_of(b), of_b = model.sheets[b].cost * area_of(a);
        return of_a != of_b ? of_a < of_b : a < b;
    });
    Wide cost = 0;
    for (const std::size_t s : sheets) {
        if (area <= 0) break;
        const Wide times = std::min<Wide>(area / area_of(s), available[s]);
        cost += times * model.sheets[s].cost;
        area -= times * area_of(s);
        if (times < available[s]) {
            cost += ceiling(model.sheets[s].cost * area, area_of(s));
            break;
        }
    }
    return static_cast<Cost>(cost);
}

Cost price_bound(const Model& model, const std::vector<std::int64_t>& demand,
                 const std::vector<std::int64_t>& available, const Scaled& scaled, const Pricer& pricer) {
    Wide worth = 0;
    for (std::size_t t = 0; t < demand.size(); ++t) worth += Wide(scaled.prices.of_type[t]) * demand[t];
    struct One {
        Wide value, cost, available;
    };
    std::vector<One> sheets;
    for (std::size_t s = 0; s < model.sheets.size(); ++s)
        if (available[s] > 0)
            sheets.push_back(
                {pricer.value(static_cast<int>(s)), Wide(model.sheets[s].cost) * scaled.scale, available[s]});
    Wide best = 0;
    for (const One& one : sheets) {
        // The prices times cost / value of this sheet; all terms times its value.
        if (one.value <= 0 || one.cost <= 0) continue;
        Wide sum = worth * one.cost;
        for (const One& each : sheets)
            sum -= each.available * std::max<Wide>(0, one.cost * each.value - each.cost * one.value);
        best = std::max(best, ceiling(sum, one.value * scaled.scale));
    }
    return static_cast<Cost>(best);
}

Attainable::Attainable(const Model& model, Cost most) {
    divisor_ = 0;
    for (const Sheet& sheet : model.sheets)
        if (sheet.available > 0) divisor_ = std::gcd(divisor_, sheet.cost);
    divisor_ = std::max<Cost>(divisor_, 1);
    const Cost cells = most / divisor_ + 1;
    if (cells > largest_table) return;
    reached_.assign(static_cast<std::size_t>(cells + 1), 0);
    reached_[0] = 1;
    std::vector<std::int64_t> used(reached_.size());
    for (const Sheet& sheet : model.sheets) {
        const Cost step = sheet.cost / divisor_;
        if (step == 0) continue;
        std::fill(used.begin(), used.end(), 0);
        for (Cost at = step; at <= cells; ++at)
            if (!reached_[at] && reached_[at - step] && used[at - step] < sheet.available)
                reached_[at] = 1, used[at] = used[at - step] + 1;
    }
}

Cost Attainable::at_least(Cost cost) const {
    Cost at = (std::max<Cost>(cost, 0) + divisor_ - 1) / divisor_;
    while (at < static_cast<Cost>(reached_.size()) && !reached_[at]) ++at;
    return at * divisor_;
}

Cost Attainable::below(Cost cost) const {
    Cost at = (cost + divisor_ - 1) / divisor_ - 1;
    while (at >= 0 && at < static_cast<Cost>(reached_.size()) && !reached_[at]) --at;
    return at < 0 ? -1 : at * divisor_;
}

} // namespace rayfleck::cutting
