// The lumber plan on paper: every board and every blank of the plan stands there once, saw lines at their
// places.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "drawing/draw.hpp"
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
                    INFO(drawing::blank_mark(p));
                    CHECK(standing(labels, drawing::blank_mark(p) + "  ") >= 1);
                    CHECK(standing(plan, drawing::blank_mark(p)) >= 1);
                }
            }
        }
}

TEST_CASE("without a lumber plan there is no sheet of it") {
    const auto sample = studied_sample("side-table.fleck");
    REQUIRE(sample);
    const drawing::Set set = drawing::draw({sample->model, sample->findings, sample->cut_list}, {});
    CHECK(words_of(set, "Lumber plan").empty());
    CHECK(words_of(set, "Label").empty());
}
