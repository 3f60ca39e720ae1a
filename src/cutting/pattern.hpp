#pragma once
// A pattern: how one sheet is cut. Sections along u, strips across v in each, items along u in each strip.
// Sizes with kerf, positions as on the board; gaps are waste.

#include <utility>
#include <vector>

#include "cutting/model.hpp"

namespace rayfleck::cutting {

struct Item {
    Lie lie;
    Measure u = 0;
};

struct Strip {
    Measure v = 0, width = 0;
    std::vector<Item> items;
};

struct Section {
    Measure u = 0, length = 0;
    std::vector<Strip> strips;
};

struct Pattern {
    int sheet = 0;
    std::vector<Section> sections;
    std::vector<std::pair<int, int>> counts; ///< type, how often; by type
};

/// Fills in the counts.
void count(Pattern& pattern);

/// A pattern and how many sheets are cut by it. What a pattern yields above the demand is waste.
struct Use {
    Pattern pattern;
    std::int64_t times = 0;
};

struct Solution {
    std::vector<Use> uses;
    Cost cost = 0;
    std::vector<std::int64_t> missing; ///< by type
    bool complete = false;
};

/// Cost and what is missing, from the uses.
void weigh(const Model& model, Solution& solution);

/// Fewer missing parts first, then cost.
bool better(const Solution& a, const Solution& b);

} // namespace rayfleck::cutting
