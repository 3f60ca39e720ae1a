// The order of work within one problem. See search.hpp.

#include "cutting/search.hpp"

#include "cutting/dive.hpp"
#include "cutting/greedy.hpp"

namespace rayfleck::cutting {
namespace {

constexpr std::int64_t steps_of_unit = 1'000'000;

} // namespace

bool fits_alone(const Model& model, const Type& type, std::size_t sheet) {
    std::vector<std::int64_t> residual(model.types.size());
    residual[static_cast<std::size_t>(type.lies.front().type)] = 1;
    return !fill_in_order(model, static_cast<int>(sheet), type.lies, residual).counts.empty();
}

Answer solve(const Model& model, std::int64_t work) {
    Answer answer;
    std::vector<std::int64_t> demand, available;
    for (const Type& type : model.types) demand.push_back(type.demand);
    for (const Sheet& sheet : model.sheets) available.push_back(sheet.available);
    std::int64_t steps = 0;
    answer.solution = greedy(model, demand, available, steps);
    if (answer.solution.complete) answer.bound = material_bound(model, demand, available);
    if (work > 0 && !(answer.solution.complete && answer.bound == answer.solution.cost)) {
        Dive dive(model, answer.solution, answer.bound, work * steps_of_unit);
        dive.correct_values(12, 0.2);
        dive.run();
        answer.solution = dive.best();
        answer.bound = dive.bound();
        steps += dive.work();
    }
    if (!answer.solution.complete) answer.bound = 0;
    answer.work = steps / steps_of_unit;
    return answer;
}

} // namespace rayfleck::cutting
