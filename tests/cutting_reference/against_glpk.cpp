// Plans and bounds against GLPK, a general-purpose linear and integer programming library, on small problems.
//
// All patterns of a small problem of rods are written down one by one, by a recursion that has nothing of the
// room's knapsacks; the integer program over them has the least cost for its optimum, and the linear one, for
// one stock length of cost 1 rounded up, the bound.

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

#include <glpk.h>

#include "cutting/cutting.hpp"

namespace rayfleck::cutting {
namespace {

/// The multiplier and addend of Knuth's MMIX generator, from memory.
class Lot {
  public:
    explicit Lot(unsigned number) : state_(number * 2654435761ULL + 99) { between(0, 1); }
    Measure between(Measure least, Measure most) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return least + static_cast<Measure>((state_ >> 33) % static_cast<std::uint64_t>(most - least + 1));
    }

  private:
    std::uint64_t state_;
};

Order rods(unsigned number, bool one_stock) {
    Lot lot(number);
    Order order;
    order.stages.count = 1;
    order.kerf_crosscut = lot.between(0, 4);
    for (Measure i = one_stock ? 1 : lot.between(2, 3); i > 0; --i) {
        const Measure length = lot.between(80, 160);
        order.stocks.push_back({length, 1, one_stock ? 1 : length + lot.between(-20, 20), std::nullopt, {}});
        if (!one_stock && i > 1) order.stocks.back().available = lot.between(1, 3);
    }
    for (Measure i = lot.between(2, one_stock ? 7 : 5); i > 0; --i)
        order.parts.push_back({lot.between(20, 75), 1, lot.between(1, one_stock ? 5 : 3), false, 0, {}});
    return order;
}

struct Column {
    std::size_t stock;
    std::vector<int> times;
};

void patterns_from(const Order& order, std::size_t stock, std::size_t part, Measure room,
                   std::vector<int>& times, std::vector<Column>& columns) {
    if (part == order.parts.size()) {
        columns.push_back({stock, times});
        return;
    }
    const Measure each = order.parts[part].length + order.kerf_crosscut;
    for (int n = 0; n <= order.parts[part].count && n * each <= room; ++n) {
        times[part] = n;
        patterns_from(order, stock, part + 1, room - n * each, times, columns);
    }
    times[part] = 0;
}

struct Optimum {
    double linear = 0, integer = 0;
};

Optimum optimum_of(const Order& order) {
    std::vector<Column> columns;
    std::vector<int> times(order.parts.size());
    for (std::size_t s = 0; s < order.stocks.size(); ++s)
        patterns_from(order, s, 0, order.stocks[s].length + order.kerf_crosscut, times, columns);
    glp_term_out(GLP_OFF);
    glp_prob* problem = glp_create_prob();
    const int parts = static_cast<int>(order.parts.size()), stocks = static_cast<int>(order.stocks.size());
    glp_add_rows(problem, parts + stocks);
    for (int t = 0; t < parts; ++t)
        glp_set_row_bnds(problem, t + 1, GLP_LO, static_cast<double>(order.parts[t].count), 0);
    for (int s = 0; s < stocks; ++s)
        glp_set_row_bnds(problem, parts + s + 1, order.stocks[s].available ? GLP_UP : GLP_FR, 0,
                         static_cast<double>(order.stocks[s].available.value_or(0)));
    glp_add_cols(problem, static_cast<int>(columns.size()));
    for (std::size_t c = 0; c < columns.size(); ++c) {
        const int column = static_cast<int>(c) + 1;
        glp_set_obj_coef(problem, column, static_cast<double>(order.stocks[columns[c].stock].cost));
        glp_set_col_bnds(problem, column, GLP_LO, 0, 0);
        glp_set_col_kind(problem, column, GLP_IV);
        std::vector<int> rows{0};
        std::vector<double> elements{0};
        for (int t = 0; t < parts; ++t)
            if (columns[c].times[t] > 0) rows.push_back(t + 1), elements.push_back(columns[c].times[t]);
        rows.push_back(parts + static_cast<int>(columns[c].stock) + 1), elements.push_back(1);
        glp_set_mat_col(problem, column, static_cast<int>(rows.size()) - 1, rows.data(), elements.data());
    }
    Optimum optimum;
    REQUIRE(glp_simplex(problem, nullptr) == 0);
    REQUIRE(glp_get_status(problem) == GLP_OPT);
    optimum.linear = glp_get_obj_val(problem);
    REQUIRE(glp_intopt(problem, nullptr) == 0);
    REQUIRE(glp_mip_status(problem) == GLP_OPT);
    optimum.integer = glp_mip_obj_val(problem);
    glp_delete_prob(problem);
    return optimum;
}

TEST_CASE(
    "rods from one stock length: the plan is the integer optimum, the bound the linear one rounded up") {
    for (unsigned number = 0; number < 60; ++number) {
        const Order order = rods(number, true);
        const Optimum optimum = optimum_of(order);
        const Plan plan = cut(order, Effort{50});
        INFO("order " << number);
        CHECK(plan.cost == std::lround(optimum.integer));
        CHECK(plan.bound >= static_cast<Cost>(std::ceil(optimum.linear - 1e-6)));
        CHECK(plan.bound <= std::lround(optimum.integer));
    }
}

TEST_CASE("rods from several stock lengths, some of them few: the plan is the integer optimum") {
    int compared = 0;
    for (unsigned number = 0; number < 60; ++number) {
        const Order order = rods(number, false);
        const Plan plan = cut(order, Effort{100});
        if (!plan.missing.empty()) continue;
        ++compared;
        const Optimum optimum = optimum_of(order);
        INFO("order " << number);
        CHECK(plan.cost == std::lround(optimum.integer));
        CHECK(plan.bound <= std::lround(optimum.integer));
        CHECK(static_cast<double>(plan.bound) >= optimum.linear - 1e-3);
    }
    CHECK(compared > 30);
}

} // namespace
} // namespace rayfleck::cutting
