// Every sample has a plan that an independent checker finds sound, alone and all of them as one lot.

#include <catch2/catch.hpp>

#include "checker.hpp"
#include "studied.hpp"

namespace rayfleck::lumber_tests {
namespace {

void is_sound(const lumber::Plan& plan, const std::vector<lumber::Source>& sources) {
    for (const lumber::Missing& gone : plan.missing)
        UNSCOPED_INFO(gone.name << ": " << gone.reason << ", " << gone.remedy);
    CHECK(plan.missing.empty());
    for (const std::string& fault : faults_of(plan, sources, sources.front().model->piece->shop))
        FAIL_CHECK(fault);
    CHECK(plan.bound <= plan.cost);
    CHECK(plan.gap >= 0);
    CHECK(plan.finished_m3 < plan.rough_m3);
    CHECK(plan.rough_m3 + plan.kept_m3 < plan.used_m3);
}

} // namespace

TEST_CASE("every sample is planned whole, and a checker of its own finds nothing wrong") {
    for (const std::string& file : testing::sample_files()) {
        INFO(file);
        const auto studied = studied_sample(file);
        REQUIRE(studied);
        is_sound(lumber::plan(studied->model, studied->cut_list), {{&studied->model, &studied->cut_list}});
    }
}

TEST_CASE("several pieces are planned as one lot, and boards on hand are there once") {
    std::vector<std::unique_ptr<Studied>> pieces;
    std::vector<lumber::Source> sources;
    for (const char* file : {"side-table.fleck", "wall-cabinet.fleck", "tea-chest.fleck"}) {
        pieces.push_back(studied_sample(file));
        REQUIRE(pieces.back());
        sources.push_back({&pieces.back()->model, &pieces.back()->cut_list});
    }
    is_sound(lumber::plan(sources), sources);
}

TEST_CASE("the same piece and effort give the same plan") {
    const auto studied = studied_sample("seed-cabinet.fleck");
    REQUIRE(studied);
    const auto told = [&] {
        std::string words;
        for (const lumber::Board& board : lumber::plan(studied->model, studied->cut_list).boards)
            for (const lumber::Cut& cut : board.cuts) words += board.name + cut.words + "\n";
        return words;
    };
    const std::string once = told();
    CHECK(once.size() > 100);
    CHECK(told() == once);
}

} // namespace rayfleck::lumber_tests
