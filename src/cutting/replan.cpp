// Replanning. See replan.hpp.
//
// A handful of boards is drawn, wasteful ones sooner than full ones. Their parts, with the boards that are
// free then, are a small problem that columns and dives solve well; what costs less, or as much with other
// patterns, takes their place. The number of boards drawn goes up and down.

#include "cutting/replan.hpp"

#include <algorithm>

#include "cutting/dive.hpp"
#include "cutting/lot.hpp"

namespace rayfleck::cutting {
namespace {

/// Steps for one handful.
constexpr std::int64_t steps_of_handful = 12'000'000;
constexpr int dives_of_handful = 3;
constexpr int least_boards = 2, most_boards = 12;
/// Setting a handful up, about.
constexpr std::int64_t steps_to_begin = 200'000;

/// A problem of fewer types, and the names of its types in the larger one.
struct Part_problem {
    Model model;
    std::vector<int> names;
};

Part_problem part_problem(const Model& model, const std::vector<std::int64_t>& demand,
                          const std::vector<std::int64_t>& available) {
    Part_problem part;
    part.model = model;
    part.model.types.clear();
    std::int64_t parts = 0;
    for (std::size_t t = 0; t < demand.size(); ++t) {
        if (demand[t] == 0) continue;
        Type type = model.types[t];
        for (Lie& lie : type.lies) lie.type = static_cast<int>(part.names.size());
        type.demand = demand[t];
        parts += demand[t];
        part.names.push_back(static_cast<int>(t));
        part.model.types.push_back(std::move(type));
    }
    for (std::size_t s = 0; s < available.size(); ++s) {
        part.model.sheets[s].limited = available[s] < parts;
        part.model.sheets[s].available = std::min(available[s], parts);
    }
    return part;
}

template <class Name> void rename(Pattern& pattern, Name name) {
    for (Section& section : pattern.sections)
        for (Strip& strip : section.strips)
            for (Item& item : strip.items) item.lie.type = name(item.lie.type);
    count(pattern);
}

/// Takes out of the patterns what they yield above the demand, and splits all uses into single boards.
std::vector<Pattern> single_boards(const Model& model, const Solution& solution) {
    std::vector<std::int64_t> left;
    for (const Type& type : model.types) left.push_back(type.demand);
    std::vector<Pattern> boards;
    for (const Use& use : solution.uses)
        for (std::int64_t i = 0; i < use.times; ++i) {
            Pattern pattern = use.pattern;
            for (Section& section : pattern.sections)
                for (Strip& strip : section.strips)
                    std::erase_if(strip.items, [&](const Item& item) { return --left[item.lie.type] < 0; });
            count(pattern);
            if (!pattern.counts.empty()) boards.push_back(std::move(pattern));
        }
    return boards;
}

double fullness(const Model& model, const Pattern& pattern) {
    double used = 0;
    for (const auto& [type, times] : pattern.counts)
        used += static_cast<double>(model.types[type].area) * times;
    const Sheet& sheet = model.sheets[pattern.sheet];
    return used / (static_cast<double>(sheet.u) * static_cast<double>(sheet.v));
}

} // namespace

void replan(const Model& model, Solution& solution, Cost bound, Lot& lot, std::int64_t& work,
            std::int64_t limit) {
    std::vector<Pattern> boards = single_boards(model, solution);
    int size = least_boards;
    while (work < limit && solution.cost > bound && boards.size() > 1) {
        work += steps_to_begin;
        const std::size_t many = std::min<std::size_t>(static_cast<std::size_t>(size), boards.size());
        size = size == most_boards ? least_boards : size + 1;
        // The handful at the end of the row: the fuller a board, the less likely.
        std::vector<std::pair<double, std::size_t>> drawn;
        for (std::size_t b = 0; b < boards.size(); ++b)
            drawn.emplace_back(fullness(model, boards[b]) + lot.draw(), b);
        std::sort(drawn.begin(), drawn.end());
        std::vector<char> chosen(boards.size());
        for (std::size_t i = 0; i < many; ++i) chosen[drawn[i].second] = 1;

        std::vector<std::int64_t> demand(model.types.size()), available;
        for (const Sheet& sheet : model.sheets) available.push_back(sheet.available);
        Solution old;
        for (std::size_t b = 0; b < boards.size(); ++b) {
            if (!chosen[b]) {
                --available[boards[b].sheet];
                continue;
            }
            for (const auto& [type, times] : boards[b].counts) demand[type] += times;
            old.uses.push_back({boards[b], 1});
        }
        Part_problem part = part_problem(model, demand, available);
        std::vector<int> back(model.types.size());
        for (std::size_t t = 0; t < part.names.size(); ++t) back[part.names[t]] = static_cast<int>(t);
        for (Use& use : old.uses) rename(use.pattern, [&](int type) { return back[type]; });
        weigh(part.model, old);
        const Cost before = old.cost;
        std::vector<std::int64_t> rest;
        for (const Sheet& sheet : part.model.sheets) rest.push_back(sheet.available);
        std::vector<std::int64_t> wanted;
        for (const Type& type : part.model.types) wanted.push_back(type.demand);
        Dive dive(part.model, old, material_bound(part.model, wanted, rest),
                  std::min(steps_of_handful, limit - work));
        if (!dive.proven()) {
            dive.correct_values(2, 0.3);
            dive.price_whole();
            dive.run(dives_of_handful, steps_of_handful);
        }
        work += dive.work();
        if (!dive.best().complete || dive.best().cost >= before) continue;
        std::vector<Pattern> next;
        for (std::size_t b = 0; b < boards.size(); ++b)
            if (!chosen[b]) next.push_back(std::move(boards[b]));
        for (Pattern& pattern : single_boards(part.model, dive.best())) {
            rename(pattern, [&](int type) { return part.names[type]; });
            next.push_back(std::move(pattern));
        }
        boards = std::move(next);
        solution.uses.clear();
        for (const Pattern& pattern : boards) solution.uses.push_back({pattern, 1});
        weigh(model, solution);
    }
}

} // namespace rayfleck::cutting
