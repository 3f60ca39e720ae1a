// The lumber plan on paper: every board and every blank of the plan stands there once, saw lines at their
// places.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "audit.hpp"
#include "drawing/draw.hpp"
#include "drawing/lot.hpp"
#include "drawing/lumber_board.hpp"
#include "studied.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;

namespace {

std::vector<std::string> words_on(const drawing::Sheet& sheet) {
    std::vector<std::string> words;
    for (const drawing::Item& item : sheet.items)
        if (const auto* text = std::get_if<drawing::Text>(&item)) words.push_back(text->words);
    return words;
}

std::vector<std::string> words_of(const drawing::Set& set, const std::string& title) {
    std::vector<std::string> all;
    for (const drawing::Sheet& sheet : set.sheets)
        if (sheet.title.starts_with(title)) {
            const auto words = words_on(sheet);
            all.insert(all.end(), words.begin(), words.end());
        }
    return all;
}

long standing(const std::vector<std::string>& words, const std::string& beginning) {
    return std::count_if(words.begin(), words.end(),
                         [&](const std::string& w) { return w.starts_with(beginning); });
}

} // namespace

TEST_CASE("every board of a lumber plan is drawn and every blank has its label") {
    for (const std::string file : {"side-table.fleck", "blanket-chest.fleck"}) DYNAMIC_SECTION(file) {
            const auto sample = studied_sample(file);
            REQUIRE(sample);
            const drawing::Set set = drawing::draw(
                {sample->model, sample->findings, sample->cut_list, nullptr, &sample->lumber}, {});
            const auto plan = words_of(set, "Lumber plan"), labels = words_of(set, "Label");
            REQUIRE_FALSE(sample->lumber.boards.empty());
            for (const lumber::Board& board : sample->lumber.boards) {
                INFO(board.name);
                CHECK(standing(plan, board.name + "  ") == 1);
                for (const lumber::Placement& p : board.placements) {
                    INFO(lumber::mark_of(p, false));
                    for (const lumber::Leaf& leaf : p.leaves)
                        CHECK(standing(labels, std::to_string(leaf.reference) + " " + leaf.instance + "  ") >=
                              1);
                    CHECK(standing(plan, lumber::mark_of(p, false)) >= 1);
                }
            }
        }
}

TEST_CASE("pieces planned together have a set of their own, and each board a picture") {
    const auto table = studied_sample("side-table.fleck"), cabinet = studied_sample("wall-cabinet.fleck");
    REQUIRE(table);
    REQUIRE(cabinet);
    const std::vector<lumber::Source> both{{&table->model, &table->cut_list},
                                           {&cabinet->model, &cabinet->cut_list}};
    const lumber::Plan plan = lumber::plan(both);
    const drawing::Set set = drawing::draw_lot(both, plan, {});
    CHECK(standing(words_of(set, "Cut list, P1"), "Cut list, P1 Side table") == 1);
    CHECK(standing(words_of(set, "Cut list, P2"), "Cut list, P2 ") == 1);
    CHECK(standing(words_of(set, "Cut list, all together"), "surface to finish") == 1);
    const auto work = words_of(set, "Work at the machines");
    for (const lumber::Step& step : plan.steps) {
        INFO(step.what);
        CHECK(standing(work, step.what) >= 1);
    }
    for (const std::string& fault : audit(set, table->piece.manner))
        // The views of each piece, with its overall sizes, are in its own set.
        if (!fault.starts_with("the overall size")) FAIL_CHECK(fault);
    const std::vector<drawing::Sheet> boards = drawing::board_pictures(both, plan, {});
    REQUIRE(boards.size() == plan.boards.size());
    for (std::size_t b = 0; b < boards.size(); ++b) {
        const auto words = words_on(boards[b]);
        CHECK(standing(words, plan.boards[b].name + "  ") == 1);
        for (const lumber::Placement& p : plan.boards[b].placements)
            CHECK(standing(words, lumber::mark_of(p, true)) >= 1);
    }
}

TEST_CASE("without a lumber plan there is no sheet of it") {
    const auto sample = studied_sample("side-table.fleck");
    REQUIRE(sample);
    const drawing::Set set = drawing::draw({sample->model, sample->findings, sample->cut_list}, {});
    CHECK(words_of(set, "Lumber plan").empty());
    CHECK(words_of(set, "Label").empty());
}
