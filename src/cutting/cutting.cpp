// The order taken in, each independent problem solved, the boards put together. See cutting.hpp.

#include "cutting/cutting.hpp"

#include "cutting/boards.hpp"
#include "cutting/greedy.hpp"
#include "cutting/model.hpp"
#include "cutting/search.hpp"

namespace rayfleck::cutting {
namespace {

/// Takes the types out that fit no sheet. Gives, by part of the order, whether it was among them.
std::vector<bool> leave_out_what_fits_nowhere(Model& model, const Order& order) {
    std::vector<bool> left_out(order.parts.size());
    for (Type& type : model.types) {
        bool fits = false;
        for (std::size_t s = 0; s < model.sheets.size() && !fits; ++s) fits = fits_alone(model, type, s);
        if (fits) continue;
        type.allowed.assign(model.sheets.size(), 0);
        for (const Source& source : type.sources) {
            if (!source.sequence)
                left_out[source.index] = true;
            else
                for (const std::size_t part : order.sequences[source.index].parts) left_out[part] = true;
        }
    }
    return left_out;
}

} // namespace

Plan cut(const Order& order, Effort effort) {
    Plan plan;
    plan.refusal = refusal_of(order);
    if (!plan.refusal.empty()) return plan;
    Model model = model_of(order);
    const std::vector<bool> fits_nowhere = leave_out_what_fits_nowhere(model, order);
    Boards boards(order);
    boards.placed.resize(order.parts.size());
    bool proven = true;
    for (const Model& problem : independent_problems(model)) {
        const Answer answer = solve(problem, effort.work);
        boards.add(problem, answer.solution);
        plan.cost += answer.solution.cost;
        plan.bound += answer.bound;
        plan.work += answer.work;
        proven = proven && answer.solution.complete && answer.bound == answer.solution.cost;
    }
    plan.boards = std::move(boards.boards);
    for (std::size_t i = 0; i < order.parts.size(); ++i)
        if (const std::int64_t rest = order.parts[i].count - boards.placed[i]; rest > 0)
            plan.missing.push_back(
                {i, rest, fits_nowhere[i] ? Missing::Why::fits_nowhere : Missing::Why::stock_is_out});
    for (const Missing& missing : plan.missing)
        if (missing.why == Missing::Why::stock_is_out) plan.bound = 0, proven = false;
    plan.proven_optimal = proven;
    return plan;
}

} // namespace rayfleck::cutting
