// The order of work within one problem. See search.hpp.

#include "cutting/search.hpp"

#include "cutting/dive.hpp"
#include "cutting/greedy.hpp"
#include "cutting/replan.hpp"

namespace rayfleck::cutting {
namespace {

constexpr std::int64_t steps_of_unit = 1'000'000;
/// Passes of value correction at the begin, and the share of the work that they may take.
constexpr int passes = 12;
constexpr double share_of_passes = 0.1;
/// Dives and replanning take turns so many times.
constexpr int turns = 5;
/// Of a turn, what replanning gets: at first, and after it has found something or nothing.
constexpr double share_at_first = 0.25, share_after_success = 0.7, share_after_none = 0.05;

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
        const std::int64_t limit = work * steps_of_unit;
        Dive dive(model, answer.solution, answer.bound, limit);
        dive.correct_values(passes, share_of_passes);
        dive.price_whole();
        std::int64_t replanning = 0;
        Lot lot;
        double replan_share = share_at_first;
        for (int turn = 0; turn < turns && !dive.proven(); ++turn) {
            // All work, less what replanning used, is the dives' to count.
            const std::int64_t share = (limit - dive.work() - replanning) / (turns - turn);
            const bool dives_alone = dive.one_step_from_proof() || !dive.best().complete;
            const auto its =
                static_cast<std::int64_t>(dives_alone ? 0 : replan_share * static_cast<double>(share));
            dive.run(largest_count, dive.work() + share - its);
            if (dive.proven() || dives_alone) continue;
            Solution solution = dive.best();
            const Cost before = solution.cost;
            const std::int64_t end = replanning + its;
            replan(model, solution, dive.bound(), lot, replanning, end);
            dive.offer(solution);
            replan_share = solution.cost < before ? share_after_success : share_after_none;
            dive.stop_at(limit - replanning);
        }
        answer.solution = dive.best();
        answer.bound = dive.bound();
        steps += dive.work() + replanning;
    }
    if (!answer.solution.complete) answer.bound = 0;
    answer.work = steps / steps_of_unit;
    return answer;
}

} // namespace rayfleck::cutting
