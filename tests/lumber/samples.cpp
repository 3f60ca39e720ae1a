// Every sample has a plan: each blank of each row in exactly one place, or reported as missing with a remedy.

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "studied.hpp"

namespace rayfleck::lumber_tests {

TEST_CASE("every part of every sample is cut from some board") {
    for (const std::string& file : sample_files()) {
        INFO(file);
        const auto studied = studied_sample(file);
        REQUIRE(studied);
        const lumber::Plan plan = lumber::plan(studied->model, studied->cut_list);
        for (const lumber::Missing& missing : plan.missing)
            UNSCOPED_INFO(missing.name << ": " << missing.reason << "; " << missing.remedy);
        CHECK(plan.missing.empty());
        std::map<int, int> blanks_of_part;
        for (const lumber::Board& board : plan.boards)
            for (const lumber::Placement& placement : board.placements) ++blanks_of_part[placement.part];
        CHECK(blanks_of_part.size() == studied->model.made.size());
        CHECK(plan.bound <= plan.cost);
    }
}

} // namespace rayfleck::lumber_tests
