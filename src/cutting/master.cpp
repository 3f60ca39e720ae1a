// The linear program, by Clp. See master.hpp.

#include "cutting/master.hpp"

#include <algorithm>

#include <ClpSimplex.hpp>

namespace rayfleck::cutting {
namespace {

constexpr std::int64_t steps_of_call = 40'000;

std::uint64_t mark_of(const Pattern& pattern) {
    std::uint64_t mark = static_cast<std::uint64_t>(pattern.sheet) + 1469598103934665603ULL;
    for (const auto& [type, times] : pattern.counts)
        for (const int number : {type, times})
            mark = (mark ^ static_cast<std::uint64_t>(number)) * 1099511628211ULL;
    return mark;
}

} // namespace

struct Master::Program {
    ClpSimplex simplex;
    int missing_columns = 0; ///< at the front, one per type
    bool grown = false, changed = true;
};

Master::Master(const Model& model) : model_(model), program_(std::make_unique<Program>()) {
    ClpSimplex& simplex = program_->simplex;
    simplex.setLogLevel(0);
    simplex.scaling(0);
    simplex.setPerturbation(100);
    const int types = static_cast<int>(model.types.size());
    int rows = types;
    for (const Sheet& sheet : model.sheets) row_of_sheet_.push_back(sheet.limited ? rows++ : -1);
    simplex.resize(rows, 0);
    double dearest = 1;
    for (const Sheet& sheet : model.sheets) dearest = std::max(dearest, static_cast<double>(sheet.cost));
    for (int t = 0; t < types; ++t) {
        const double one = 1;
        simplex.addColumn(1, &t, &one, 0, COIN_DBL_MAX, 10 * dearest);
        simplex.setRowUpper(t, COIN_DBL_MAX);
    }
    for (const int row : row_of_sheet_)
        if (row >= 0) simplex.setRowLower(row, -COIN_DBL_MAX);
    program_->missing_columns = types;
}

Master::~Master() = default;

bool Master::add(const Pattern& pattern) {
    const std::uint64_t mark = mark_of(pattern);
    auto place =
        std::lower_bound(known_.begin(), known_.end(), std::pair<std::uint64_t, std::size_t>{mark, 0});
    for (auto at = place; at != known_.end() && at->first == mark; ++at)
        if (patterns_[at->second].sheet == pattern.sheet && patterns_[at->second].counts == pattern.counts)
            return false;
    known_.insert(place, {mark, patterns_.size()});
    fresh_.push_back(patterns_.size());
    patterns_.push_back(pattern);
    return true;
}

void Master::want(const std::vector<std::int64_t>& demand, const std::vector<std::int64_t>& available,
                  bool proper) {
    demand_ = demand;
    available_ = available;
    proper_ = proper;
    program_->changed = true;
    ClpSimplex& simplex = program_->simplex;
    for (std::size_t t = 0; t < demand.size(); ++t)
        simplex.setRowLower(static_cast<int>(t), static_cast<double>(demand[t]));
    for (std::size_t s = 0; s < available.size(); ++s)
        if (row_of_sheet_[s] >= 0) simplex.setRowUpper(row_of_sheet_[s], static_cast<double>(available[s]));
}

void Master::solve(std::int64_t& work) {
    ClpSimplex& simplex = program_->simplex;
    const auto upper = [&](std::size_t column) {
        const Pattern& pattern = patterns_[column];
        if (available_[pattern.sheet] == 0) return 0.0;
        if (proper_)
            for (const auto& [type, times] : pattern.counts)
                if (times > demand_[type]) return 0.0;
        return COIN_DBL_MAX;
    };
    const bool grown = !fresh_.empty();
    for (const std::size_t column : fresh_) {
        const Pattern& pattern = patterns_[column];
        std::vector<int> rows;
        std::vector<double> elements;
        for (const auto& [type, times] : pattern.counts) rows.push_back(type), elements.push_back(times);
        if (row_of_sheet_[pattern.sheet] >= 0)
            rows.push_back(row_of_sheet_[pattern.sheet]), elements.push_back(1);
        simplex.addColumn(static_cast<int>(rows.size()), rows.data(), elements.data(), 0, upper(column),
                          static_cast<double>(model_.sheets[pattern.sheet].cost));
    }
    fresh_.clear();
    if (program_->changed) {
        for (std::size_t column = 0; column < patterns_.size(); ++column)
            simplex.setColumnUpper(program_->missing_columns + static_cast<int>(column), upper(column));
        if (grown)
            simplex.primal(0);
        else
            simplex.dual(0);
    } else {
        simplex.primal(0);
    }
    program_->changed = false;
    const std::int64_t rows = simplex.numberRows();
    // Measured: a call has a price of its own, beside what grows with rows, columns and pivots.
    work += steps_of_call + (simplex.numberIterations() + 1) * rows * 40 +
            (rows + static_cast<std::int64_t>(patterns_.size())) * 60;
}

double Master::value() const { return program_->simplex.objectiveValue(); }

bool Master::complete() const {
    const double* x = program_->simplex.primalColumnSolution();
    return std::all_of(x, x + program_->missing_columns, [](double missing) { return missing < 1e-6; });
}

double Master::use(std::size_t column) const {
    const std::size_t at = static_cast<std::size_t>(program_->missing_columns) + column;
    return at < static_cast<std::size_t>(program_->simplex.numberColumns())
               ? program_->simplex.primalColumnSolution()[at]
               : 0;
}

double Master::extra(std::size_t column) const {
    return program_->simplex
        .dualColumnSolution()[static_cast<std::size_t>(program_->missing_columns) + column];
}

bool Master::barred(std::size_t column) const {
    return program_->simplex.columnUpper()[static_cast<std::size_t>(program_->missing_columns) + column] == 0;
}

std::vector<double> Master::part_duals() const {
    const double* duals = program_->simplex.dualRowSolution();
    std::vector<double> prices;
    for (std::size_t t = 0; t < model_.types.size(); ++t) prices.push_back(std::max(duals[t], 0.0));
    return prices;
}

std::vector<double> Master::sheet_duals() const {
    const double* duals = program_->simplex.dualRowSolution();
    std::vector<double> prices;
    for (const int row : row_of_sheet_) prices.push_back(row < 0 ? 0 : std::max(-duals[row], 0.0));
    return prices;
}

} // namespace rayfleck::cutting
