// A few public instances with known optimum, where the folder of instances is at hand: named by the
// environment variable RAYFLECK_CUTTING_INSTANCES, or beside the project. The optima are those of the sets'
// publications (Falkenauer 1996; Scholl, Klein, Jürgens 1997; Schwerin, Wäscher 1997), as the folder's
// best_known.csv lists them. The whole selection is run by rayfleck_cutting_benchmark.

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "checker.hpp"

namespace rayfleck::cutting {
namespace {

std::filesystem::path folder_of_instances() {
    if (const char* named = std::getenv("RAYFLECK_CUTTING_INSTANCES")) return named;
    return std::filesystem::path(RAYFLECK_ROOT) / ".." / "shared" / "data" / "cutting";
}

TEST_CASE("public instances of rods: the optimum, and no bound above it") {
    struct {
        const char* file;
        Cost optimum;
    } const known[] = {
        {"1d/falkenauer_u/Falkenauer_u250_00.csp", 99},
        {"1d/falkenauer_t/Falkenauer_t60_00.csp", 20},
        {"1d/scholl1/N1C1W1_A.csp", 25},
        {"1d/scholl2/N1W1B1R0.csp", 18},
        {"1d/schwerin/Schwerin1_BPP1.csp", 18},
    };
    const std::filesystem::path folder = folder_of_instances();
    if (!std::filesystem::exists(folder)) {
        WARN("SKIP: no folder of instances; RAYFLECK_CUTTING_INSTANCES may name one");
        return;
    }
    for (const auto& [file, optimum] : known) {
        INFO(file);
        std::ifstream in(folder / file);
        REQUIRE(in);
        Order order;
        order.stages.count = 1;
        std::int64_t types = 0;
        Stock stock{0, 1, 1, std::nullopt, {}};
        in >> types >> stock.length;
        order.stocks.push_back(stock);
        for (Part part; in >> part.length >> part.count;) {
            part.width = 1;
            order.parts.push_back(part);
        }
        const Plan plan = cut(order, Effort{200});
        CHECK(faults_in_words(order, plan) == "");
        CHECK(plan.cost == optimum);
        CHECK(plan.bound <= optimum);
    }
}

} // namespace
} // namespace rayfleck::cutting
