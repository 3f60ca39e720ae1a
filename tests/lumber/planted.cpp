// Faults planted in sound plans: the checker must find every one of them, so that its silence means
// something.

#include <algorithm>

#include <catch2/catch.hpp>

#include "checker.hpp"
#include "studied.hpp"

namespace rayfleck::lumber_tests {
namespace {

using lumber::Plan;
using measure::Length;

const Length one = Length::mm(1);

/// Changes a plan. gives  false where the plan has nothing to change in that way
struct Planted {
    const char* name;
    bool (*plant)(Plan&);
};

bool any_board(Plan& plan, bool (*change)(lumber::Board&)) {
    return std::any_of(plan.boards.begin(), plan.boards.end(), change);
}

const Planted planted[] = {
    {"a blank is dropped",
     [](Plan& p) {
         p.boards[0].placements.pop_back();
         return true;
     }},
    {"a board is dropped with all that is in it",
     [](Plan& p) {
         if (p.boards.size() < 2) return false;
         p.boards.pop_back();
         std::erase_if(p.steps, [](const auto& step) { return step.on.empty(); });
         for (auto& step : p.steps)
             std::erase_if(step.on, [&](const auto& on) { return on.board >= p.boards.size(); });
         return true;
     }},
    {"a blank lies there twice",
     [](Plan& p) {
         p.boards[0].placements.push_back(p.boards[0].placements[0]);
         return true;
     }},
    {"a blank is moved along",
     [](Plan& p) {
         p.boards[0].placements[0].x += one;
         return true;
     }},
    {"a blank is moved across",
     [](Plan& p) {
         p.boards[0].placements[0].y += one;
         return true;
     }},
    {"a blank is shorter",
     [](Plan& p) {
         p.boards[0].placements[0].along -= one;
         return true;
     }},
    {"a blank is narrower",
     [](Plan& p) {
         p.boards[0].placements[0].across -= one;
         return true;
     }},
    {"a blank lies over the end trim",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.sheet) return false;
             board.placements[0].x = Length();
             return true;
         });
     }},
    {"the grain is turned",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.wood == "MDF" || board.wood == "particleboard" || board.wood == "hardboard")
                 return false;
             board.placements[0].turned = true;
             std::swap(board.placements[0].along, board.placements[0].across);
             return true;
         });
     }},
    {"two boards change their places",
     [](Plan& p) {
         if (p.boards.size() < 2) return false;
         for (std::size_t b = 1; b < p.boards.size(); ++b)
             if (p.boards[b].wood != p.boards[0].wood || p.boards[b].thickness != p.boards[0].thickness) {
                 std::swap(p.boards[b].placements, p.boards[0].placements);
                 return true;
             }
         return false;
     }},
    {"a board is of another wood",
     [](Plan& p) {
         p.boards[0].wood = "balsa";
         return true;
     }},
    {"a board is thinner than its blanks",
     [](Plan& p) {
         p.boards[0].thickness = Length::mm(5);
         return true;
     }},
    {"a board on hand that is not there",
     [](Plan& p) {
         p.boards[0].on_hand = true;
         p.boards[0].mark = "none such";
         return true;
     }},
    {"a kerf is changed",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.cuts.empty()) return false;
             board.cuts.back().kerf += one;
             return true;
         });
     }},
    {"all kerfs are forgotten",
     [](Plan& p) {
         for (lumber::Board& board : p.boards)
             for (lumber::Cut& cut : board.cuts) cut.kerf = Length();
         return true;
     }},
    {"a cut is left out",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.cuts.size() < 3) return false;
             board.cuts.erase(board.cuts.begin() + 2);
             return true;
         });
     }},
    {"two cuts change their places",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.cuts.size() < 4) return false;
             std::swap(board.cuts[1], board.cuts.back());
             return true;
         });
     }},
    {"a fence is wrong",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.cuts.empty()) return false;
             board.cuts.back().fence += one;
             return true;
         });
     }},
    {"a line is beside its fence",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.cuts.empty()) return false;
             board.cuts.back().at += one;
             return true;
         });
     }},
    {"a step is at another setting",
     [](Plan& p) {
         for (lumber::Step& step : p.steps)
             if (step.setting && !step.on.front().cuts.empty()) {
                 *step.setting += one;
                 return true;
             }
         return false;
     }},
    {"a step is left out",
     [](Plan& p) {
         p.steps.erase(p.steps.begin());
         return true;
     }},
    {"two steps change their places",
     [](Plan& p) {
         if (p.steps.size() < 3) return false;
         std::swap(p.steps[0], p.steps[2]);
         return true;
     }},
    {"an offcut is larger than what is left",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.offcuts.empty()) return false;
             board.offcuts[0].length += one;
             return true;
         });
     }},
    {"an offcut is not told",
     [](Plan& p) {
         return any_board(p, [](lumber::Board& board) {
             if (board.offcuts.empty()) return false;
             board.offcuts.pop_back();
             return true;
         });
     }},
    {"a blank becomes another part",
     [](Plan& p) {
         lumber::Leaf* first = nullptr;
         for (lumber::Board& board : p.boards)
             for (lumber::Placement& at : board.placements) {
                 if (first && first->name != at.leaves[0].name) {
                     at.leaves[0] = *first;
                     at.row = first->row;
                     return true;
                 }
                 first = &at.leaves[0];
             }
         return false;
     }},
    {"a leaf is too thick to be resawn",
     [](Plan& p) {
         for (lumber::Board& board : p.boards)
             for (lumber::Placement& at : board.placements)
                 if (at.leaves.size() > 1) {
                     at.leaves[0].thickness += Length::mm(3);
                     return true;
                 }
         return false;
     }},
};

} // namespace

TEST_CASE("every fault planted in the plans of the samples is found") {
    std::vector<std::string> unplanted;
    for (const Planted& one_fault : planted) unplanted.push_back(one_fault.name);
    for (const std::string& file : testing::sample_files()) {
        const auto studied = studied_sample(file);
        REQUIRE(studied);
        const std::vector<lumber::Source> sources{{&studied->model, &studied->cut_list}};
        const Plan sound = lumber::plan(studied->model, studied->cut_list);
        REQUIRE(faults_of(sound, sources, studied->piece.shop).empty());
        for (const Planted& one_fault : planted) {
            Plan plan = sound;
            if (!one_fault.plant(plan)) continue;
            INFO(file << ": " << one_fault.name);
            CHECK_FALSE(faults_of(plan, sources, studied->piece.shop).empty());
            std::erase(unplanted, one_fault.name);
        }
    }
    for (const std::string& name : unplanted) FAIL_CHECK(name << ": no sample to plant it in");
}

namespace {

constexpr const char* flawed_shop =
    "shop file \"Shop\"\nunits mm\nkerf band saw 1.5\n"
    "board C1, cherry, 4/4, 190 x 2400, flat sawn, sapwood 20 on back edge, checks 80 at right end, "
    "knot 30 at 2000 and 60, split from 1100 to 1300 and from 90 to 100\n"
    "price cherry 4/4, 10 per board foot, lengths 8ft\n";

constexpr const char* matched_piece = R"(piece "Fronts"
units mm
climate 35% to 60% humidity at 20 C
shop "shop.fleck"
rod across left 0, right 400
rod deep front 0, back 400
rod up floor 0, top 400
part front, row of 3 up from floor to top
  wood cherry, flat sawn, 20 thick, 100 wide
  runs across, face side front, from left to right, front at front
part post, row of 2 across from left to right
  wood cherry, flat sawn, 20 thick, 60 wide
  stands, face side front, from floor to top, back at back
part leaf, row of 2 up from floor to top
  wood cherry, flat sawn, 8 thick, 90 wide
  runs across, face side front, from left to right, front at front + 100
match front, in sequence
match post, from one board
match leaf, book-matched
)";

lumber::Placement* named(Plan& plan, const std::string& name, const std::string& instance) {
    for (lumber::Board& board : plan.boards)
        for (lumber::Placement& p : board.placements)
            if (p.name == name && p.instance == instance) return &p;
    return nullptr;
}

} // namespace

TEST_CASE("faults planted in flaws and matches are found") {
    const auto studied = studied_text(matched_piece, flawed_shop);
    const std::vector<lumber::Source> sources{{&studied->model, &studied->cut_list}};
    const Plan sound = lumber::plan(studied->model, studied->cut_list);
    CHECK(sound.remarks.empty());
    const auto faults = [&](const Plan& plan) { return faults_of(plan, sources, studied->piece.shop); };
    for (const std::string& fault : faults(sound)) FAIL_CHECK(fault);
    const auto holds = [&](const Plan& plan, const std::string& words) {
        const auto found = faults(plan);
        return std::any_of(found.begin(), found.end(),
                           [&](const std::string& fault) { return fault.find(words) != std::string::npos; });
    };

    SECTION("a blank over each kind of flaw") {
        REQUIRE(sound.boards[0].on_hand);
        struct Place {
            const char* over;
            Length x, y;
        };
        for (const Place& place : {Place{"knot", Length::mm(1990), Length::mm(3)},
                                   Place{"split", Length::mm(1150), Length::mm(60)},
                                   Place{"checks", Length::mm(2000), Length::mm(80)},
                                   Place{"sapwood", Length::mm(1400), Length::mm(150)}}) {
            INFO(place.over);
            Plan plan = sound;
            plan.boards[0].placements[0].x = place.x;
            plan.boards[0].placements[0].y = place.y;
            CHECK(holds(plan, "lies over a flaw"));
        }
    }
    SECTION("a row in another order") {
        Plan plan = sound;
        lumber::Placement *a = named(plan, "front", "A"), *b = named(plan, "front", "B");
        REQUIRE(a);
        REQUIRE(b);
        std::swap(a->leaves, b->leaves);
        CHECK(holds(plan, "not in sequence"));
    }
    SECTION("a part of a match from another board") {
        Plan plan = sound;
        lumber::Board other = plan.boards[0];
        other.placements.clear();
        for (lumber::Board& board : plan.boards)
            for (std::size_t i = 0; i < board.placements.size(); ++i)
                if (board.placements[i].name == "post" && other.placements.empty()) {
                    other.placements.push_back(board.placements[i]);
                    board.placements.erase(board.placements.begin() + static_cast<std::ptrdiff_t>(i));
                }
        REQUIRE(other.placements.size() == 1);
        plan.boards.push_back(other);
        CHECK(holds(plan, "do not come from one board"));
    }
    SECTION("a book-matched pair taken apart") {
        Plan plan = sound;
        lumber::Placement* pair = named(plan, "leaf", "A+B");
        REQUIRE(pair);
        lumber::Placement half = *pair;
        half.leaves = {pair->leaves[1]};
        pair->leaves.pop_back();
        plan.boards[0].placements.push_back(half);
        CHECK(holds(plan, "no pair of leaves"));
    }
}

} // namespace rayfleck::lumber_tests
