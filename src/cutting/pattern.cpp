// Patterns counted, solutions weighed. See pattern.hpp.

#include "cutting/pattern.hpp"

#include <map>

namespace rayfleck::cutting {

void count(Pattern& pattern) {
    std::map<int, int> counts;
    for (const Section& section : pattern.sections)
        for (const Strip& strip : section.strips)
            for (const Item& item : strip.items) ++counts[item.lie.type];
    pattern.counts.assign(counts.begin(), counts.end());
}

void weigh(const Model& model, Solution& solution) {
    solution.cost = 0;
    solution.complete = true;
    solution.missing.clear();
    for (const Type& type : model.types) solution.missing.push_back(type.demand);
    for (const Use& use : solution.uses) {
        solution.cost += use.times * model.sheets[static_cast<std::size_t>(use.pattern.sheet)].cost;
        for (const auto& [type, times] : use.pattern.counts)
            solution.missing[static_cast<std::size_t>(type)] -= use.times * times;
    }
    for (std::int64_t& missing : solution.missing) {
        if (missing > 0) solution.complete = false;
        if (missing < 0) missing = 0;
    }
}

bool better(const Solution& a, const Solution& b) {
    const auto number = [](const Solution& solution) {
        std::int64_t sum = 0;
        for (const std::int64_t missing : solution.missing) sum += missing;
        return sum;
    };
    const std::int64_t of_a = number(a), of_b = number(b);
    return of_a != of_b ? of_a < of_b : a.cost < b.cost;
}

} // namespace rayfleck::cutting
