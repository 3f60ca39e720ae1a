// Every sample goes together: the order has no locks, every part arrives once, nothing moves before what it
// stands on, and every joint is closed exactly once.

#include <cstdlib>
#include <iostream>

#include <catch2/catch.hpp>

#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::assembly_tests;

TEST_CASE("every sample goes together, every part and every joint once") {
    for (const std::string& file : testing::sample_files()) DYNAMIC_SECTION(file) {
            for (const auto& sample : studied_sample(file)) {
                INFO(sample->printed());
                if (std::getenv("RAYFLECK_PRINT")) std::cout << file << "\n" << sample->printed() << "\n";
                CHECK(sample->order.locks.empty());
                std::vector<int> closed(sample->model.joints.size(), 0);
                for (const assembly::Move& move : sample->order.moves) {
                    for (const int j : move.joints) ++closed[static_cast<std::size_t>(j)];
                    CHECK_FALSE(move.onto.empty());
                    for (const int p : move.parts)
                        CHECK_FALSE(std::binary_search(move.onto.begin(), move.onto.end(), p));
                    CHECK(measure::norm(move.direction) == Approx(1));
                }
                for (std::size_t j = 0; j < closed.size(); ++j) {
                    INFO("joint " << j << ", " << sample->model.joints[j].kind);
                    CHECK(closed[j] == 1);
                }
                // As many moves as it takes to bring that many parts together, one body at a time.
                CHECK(sample->order.moves.size() + 1 == sample->model.made.size());
                // Steps tell every move of the first copies.
                std::size_t told = 0;
                for (const assembly::Step& step : sample->order.steps) {
                    CHECK_FALSE(step.words.empty());
                    CHECK_FALSE(step.standing.empty());
                    told += step.moves.size() * static_cast<std::size_t>(step.copies);
                }
                CHECK(told == sample->order.moves.size());
            }
        }
}
