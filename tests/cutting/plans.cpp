// Plans that can be checked by hand, and hundreds of made-up orders followed cut by cut.

#include <catch2/catch.hpp>

#include "checker.hpp"

namespace rayfleck::cutting {
namespace {

Order rods(Measure stock, std::vector<std::pair<Measure, std::int64_t>> parts, Measure kerf = 0) {
    Order order;
    order.stages.count = 1;
    order.kerf_crosscut = kerf;
    order.stocks.push_back({stock, 10, 1, std::nullopt, {}});
    for (const auto& [length, count] : parts) order.parts.push_back({length, 10, count, false, 0, {}});
    return order;
}

Plan checked(const Order& order, Effort effort = usual) {
    Plan plan = cut(order, effort);
    CHECK(faults_in_words(order, plan) == "");
    return plan;
}

TEST_CASE("every made-up order gets a plan that can be followed at the saw") {
    for (unsigned number = 0; number < 400; ++number) {
        const Order order = made_up_order(number);
        const Plan plan = cut(order, Effort{20});
        INFO("order " << number);
        REQUIRE(faults_in_words(order, plan) == "");
    }
}

TEST_CASE("a first plan of every made-up order can be followed too") {
    for (unsigned number = 400; number < 800; ++number) {
        const Order order = made_up_order(number);
        INFO("order " << number);
        REQUIRE(faults_in_words(order, cut(order, first_plan)) == "");
    }
}

TEST_CASE("kerf counts between parts and not after the last") {
    // 3 x 100 + 2 x 3 = 306 fills a board of 306 to the end, one of 305 takes two.
    CHECK(checked(rods(306, {{100, 3}}, 3)).boards.size() == 1);
    CHECK(checked(rods(305, {{100, 3}}, 3)).boards.size() == 2);
    // 1 left over after the second part: the saw eats it, and no third cut frees anything.
    const Plan eaten = checked(rods(204, {{100, 2}}, 3));
    REQUIRE(eaten.boards.size() == 1);
    CHECK(eaten.boards[0].cuts.size() == 2);
    CHECK(eaten.boards[0].leftovers.empty());
}

TEST_CASE("each direction has its own kerf") {
    // Two by two parts of 50 x 20: 103 long with a crosscut of 3, 41 wide with a rip of 1.
    Order order;
    order.kerf_crosscut = 3, order.kerf_rip = 1;
    order.parts.push_back({50, 20, 4, false, 0, {}});
    order.stocks.push_back({103, 41, 5, std::nullopt, {}});
    CHECK(checked(order).boards.size() == 1);
    order.stocks[0].width = 40;
    CHECK(checked(order).boards.size() == 2);
    order.stocks[0].width = 41, order.stocks[0].length = 102;
    CHECK(checked(order).boards.size() == 2);
}

TEST_CASE("grain is not turned, and a part without grain is") {
    Order order;
    order.parts.push_back({30, 80, 1, false, 0, {}});
    order.stocks.push_back({100, 50, 1, std::nullopt, {}});
    const Plan no = checked(order);
    REQUIRE(no.missing.size() == 1);
    CHECK(no.missing[0].why == Missing::Why::fits_nowhere);
    order.parts[0].may_turn = true;
    const Plan yes = checked(order);
    REQUIRE(yes.boards.size() == 1);
    CHECK(yes.boards[0].placements[0].turned);
}

TEST_CASE("a part steps over a defect, unless it tolerates its kind") {
    Order order;
    order.parts.push_back({40, 10, 2, false, 0, {}});
    order.stocks.push_back({100, 10, 1, std::nullopt, {{45, 3, 8, 2, 2}}});
    const Plan clear = checked(order);
    REQUIRE(clear.boards.size() == 1);
    CHECK(clear.boards[0].placements[1].place.x == 53);
    order.stocks[0].defects[0].x = 38;
    CHECK(checked(order).boards.size() == 2);
    order.parts[0].tolerates = 2;
    CHECK(checked(order).boards.size() == 1);
}

TEST_CASE("stock that runs out and parts that fit nowhere are told apart") {
    Order order = rods(100, {{60, 3}, {150, 2}});
    order.stocks[0].available = 2;
    const Plan plan = checked(order);
    REQUIRE(plan.missing.size() == 2);
    CHECK(plan.missing[0].part == 0);
    CHECK(plan.missing[0].count == 1);
    CHECK(plan.missing[0].why == Missing::Why::stock_is_out);
    CHECK(plan.missing[1].count == 2);
    CHECK(plan.missing[1].why == Missing::Why::fits_nowhere);
    CHECK_FALSE(plan.proven_optimal);
}

TEST_CASE("a part that fits nowhere does not hinder the proof of the rest") {
    const Plan plan = checked(rods(100, {{50, 4}, {150, 1}}));
    CHECK(plan.cost == 2);
    CHECK(plan.proven_optimal);
}

TEST_CASE("a sequence comes from one board, side by side and in order") {
    Order order;
    order.kerf_rip = 2, order.kerf_crosscut = 3;
    order.parts.push_back({60, 10, 4, false, 0, {}});
    order.stocks.push_back({70, 46, 9, std::nullopt, {}});
    order.stocks.push_back({70, 22, 1, std::nullopt, {}});
    // Four legs: 4 x 10 + 3 x 2 = 46 wide. Loose, two boards of 22 are the cheaper ones.
    CHECK(checked(order).cost == 2);
    order.sequences.push_back({{0, 0, 0, 0}, Sequence::Towards::across, 1});
    const Plan plan = checked(order);
    CHECK(plan.cost == 9);
    REQUIRE(plan.boards.size() == 1);
    for (const Placement& placement : plan.boards[0].placements) CHECK(placement.sequence.has_value());
}

TEST_CASE("drawer fronts of unequal width stay in a row") {
    Order order;
    order.kerf_rip = 2, order.kerf_crosscut = 3;
    order.parts.push_back({40, 10, 1, false, 0, {}});
    order.parts.push_back({30, 14, 1, false, 0, {}});
    order.sequences.push_back({{1, 0}, Sequence::Towards::along, 1});
    order.stocks.push_back({100, 20, 1, std::nullopt, {}});
    const Plan plan = checked(order);
    REQUIRE(plan.boards.size() == 1);
    REQUIRE(plan.boards[0].placements.size() == 2);
    CHECK(plan.boards[0].placements[0].part == 1);
    CHECK(plan.boards[0].placements[1].place.x == plan.boards[0].placements[0].place.x + 33);
}

TEST_CASE("parts of separate stocks are separate problems") {
    Order order = rods(100, {{50, 2}, {50, 2}});
    order.stocks.push_back(order.stocks[0]);
    order.parts[0].stocks = {0};
    order.parts[1].stocks = {1};
    const Plan plan = checked(order);
    CHECK(plan.boards.size() == 2);
    CHECK(plan.proven_optimal);
}

TEST_CASE("an order that makes no sense is refused in words") {
    Order order = rods(100, {{50, 2}});
    order.parts[0].length = 0;
    CHECK(cut(order).refusal == "part 1: length and width must be from 1 to 10000000");
    order = rods(100, {{50, 2}});
    order.stages.count = 4;
    CHECK(cut(order).refusal == "there are one, two or three stages");
    order = rods(100, {{50, 2}});
    order.sequences.push_back({{0, 0, 0}, Sequence::Towards::along, 1});
    CHECK(cut(order).refusal == "sequence 1: uses more of part 1 than its count");
    order.sequences[0].parts = {3};
    CHECK(cut(order).refusal == "sequence 1: names a part that is not there");
    order = rods(100, {{50, 2}});
    order.stocks[0].available = -1;
    CHECK(cut(order).refusal == "stock 1: fewer than none available");
}

TEST_CASE("the same order and effort give the same plan") {
    for (unsigned number = 0; number < 20; ++number) {
        const Order order = made_up_order(number);
        const Plan one = cut(order, Effort{20}), two = cut(order, Effort{20});
        INFO("order " << number);
        REQUIRE(one.boards.size() == two.boards.size());
        CHECK(one.cost == two.cost);
        CHECK(one.work == two.work);
        for (std::size_t b = 0; b < one.boards.size(); ++b) {
            CHECK(one.boards[b].stock == two.boards[b].stock);
            REQUIRE(one.boards[b].placements.size() == two.boards[b].placements.size());
            for (std::size_t i = 0; i < one.boards[b].placements.size(); ++i)
                CHECK(one.boards[b].placements[i].place == two.boards[b].placements[i].place);
        }
    }
}

TEST_CASE("a fine unit is planned on a coarser grid, and can be cut all the same") {
    // Sizes a thousand times as large are far beyond the cells of a knapsack.
    for (unsigned number = 0; number < 40; ++number) {
        Order order = made_up_order(number);
        const Cost coarse = cut(order, Effort{20}).cost;
        for (Part& part : order.parts) part.length *= 1000, part.width *= 1000;
        for (Stock& stock : order.stocks) {
            stock.length *= 1000, stock.width *= 1000;
            for (Defect& defect : stock.defects)
                defect.x *= 1000, defect.y *= 1000, defect.length *= 1000, defect.width *= 1000;
        }
        order.kerf_rip *= 1000, order.kerf_crosscut *= 1000;
        const Plan plan = cut(order, Effort{20});
        INFO("order " << number);
        REQUIRE(faults_in_words(order, plan) == "");
        if (plan.missing.empty()) CHECK(plan.bound <= coarse);
    }
}

TEST_CASE("an empty order is an empty plan") {
    const Plan plan = checked(Order{});
    CHECK(plan.boards.empty());
    CHECK(plan.proven_optimal);
}

} // namespace
} // namespace rayfleck::cutting
