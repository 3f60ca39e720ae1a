// The order of work within one problem. See search.hpp.

#include "cutting/search.hpp"

#include <algorithm>
#include <limits>

#include "cutting/greedy.hpp"

namespace rayfleck::cutting {
namespace {

/// Cost of the material in the parts, each sheet's area priced at its cost, cheapest first.
Cost material_bound(const Model& model) {
    Wide area = 0;
    for (const Type& type : model.types) area += Wide(type.area) * type.demand;
    std::vector<std::size_t> sheets;
    for (std::size_t s = 0; s < model.sheets.size(); ++s) sheets.push_back(s);
    const auto area_of = [&](std::size_t s) { return Wide(model.sheets[s].u) * model.sheets[s].v; };
    std::sort(sheets.begin(), sheets.end(), [&](std::size_t a, std::size_t b) {
        const Wide of_a = model.sheets[a].cost * area_of(b), of_b = model.sheets[b].cost * area_of(a);
        return of_a != of_b ? of_a < of_b : a < b;
    });
    Cost cost = 0;
    for (const std::size_t s : sheets) {
        const Wide times = std::min<Wide>(area / area_of(s), model.sheets[s].available);
        cost += static_cast<Cost>(times) * model.sheets[s].cost;
        area -= times * area_of(s);
        if (area <= 0) break;
        if (times < model.sheets[s].available) {
            cost += static_cast<Cost>((model.sheets[s].cost * area + area_of(s) - 1) / area_of(s));
            break;
        }
    }
    return cost;
}

} // namespace

bool fits_alone(const Model& model, const Type& type, std::size_t sheet) {
    std::vector<std::int64_t> residual(model.types.size());
    residual[static_cast<std::size_t>(type.lies.front().type)] = 1;
    return !fill_in_order(model, static_cast<int>(sheet), type.lies, residual).counts.empty();
}

Answer solve(const Model& model, std::int64_t) {
    Answer answer;
    std::vector<std::int64_t> demand, available;
    for (const Type& type : model.types) demand.push_back(type.demand);
    for (const Sheet& sheet : model.sheets) available.push_back(sheet.available);
    std::int64_t steps = 0;
    answer.solution = greedy(model, demand, available, steps);
    if (answer.solution.complete) answer.bound = material_bound(model);
    answer.work = steps / 1000000;
    return answer;
}

} // namespace rayfleck::cutting
