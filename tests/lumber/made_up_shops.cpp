// Shops and pieces made up by a fixed row of numbers: whatever boards lie there, with whatever flaws, kerfs
// and allowances, the checker finds nothing wrong, and every blank is in a board or told to be missing.

#include <catch2/catch.hpp>

#include <cstdint>

#include <fmt/format.h>

#include "checker.hpp"
#include "studied.hpp"

namespace rayfleck::lumber_tests {
namespace {

/// The minimal standard generator of Park and Miller, CACM 31 (1988), p. 1195.
class Numbers {
  public:
    explicit Numbers(std::int64_t seed) : state_(seed) {}
    /// From least to most, both may come.
    std::int64_t operator()(std::int64_t least, std::int64_t most) {
        state_ = state_ * 16807 % 2147483647;
        return least + state_ % (most - least + 1);
    }
    template <std::size_t N> const char* of(const char* const (&words)[N]) {
        return words[static_cast<std::size_t>((*this)(0, static_cast<std::int64_t>(N) - 1))];
    }

  private:
    std::int64_t state_;
};

std::string a_shop(Numbers& any) {
    std::string out = fmt::format("shop file \"Shop\"\nunits mm\nkerf table saw {}\n", any(0, 5));
    if (any(0, 1)) out += fmt::format("kerf miter saw {}\n", any(0, 4));
    if (any(0, 1)) out += fmt::format("kerf band saw {}\n", any(1, 3));
    out +=
        fmt::format("allow {} for planing\nallow {} for width\nallow {} for length\nallow {} for end trim\n",
                    any(0, 4), any(0, 8), any(0, 30), any(0, 3) * 10);
    out += fmt::format("allow {} for straightening\nlimit miter saw width {}\nlimit planer width 300\n",
                       any(0, 6), any(100, 300));
    const std::int64_t boards = any(0, 5);
    for (std::int64_t b = 0; b < boards; ++b) {
        const std::int64_t wide = any(40, 260), length = any(300, 3000);
        out += fmt::format("board C{}, cherry, {}, {} x {}", b, any.of({"4/4", "5/4", "8/4"}), wide, length);
        if (any(0, 2)) out += fmt::format(", {} sawn", any.of({"flat", "rift", "quarter"}));
        if (any(0, 2) == 0) out += fmt::format(", {} off", any(2, 4));
        if (any(0, 2) == 0)
            out += fmt::format(", sapwood {} on {} edge", any(5, 30), any.of({"front", "back"}));
        if (any(0, 2) == 0)
            out += fmt::format(", checks {} at {} end", any(10, 200), any.of({"left", "right"}));
        for (std::int64_t k = any(0, 2); k > 0; --k)
            out += fmt::format(", knot {} at {} and {}", any(5, 60), any(1, length), any(1, wide));
        out += "\n";
    }
    if (any(0, 3))
        out += fmt::format("price cherry 4/4, 10 per board foot, {}lengths 4ft and 8ft\n",
                           any(0, 1) ? "widths 100 to 260, " : "");
    return out;
}

std::string a_piece(Numbers& any) {
    std::string out =
        "piece \"Parts\"\nunits mm\nclimate 35% to 60% humidity at 20 C\nshop \"shop.fleck\"\n"
        "rod across left 0, right 9000\nrod deep front 0, back 9000\nrod up floor 0, top 9000\n";
    const std::int64_t kinds = any(2, 6);
    std::int64_t at = 0;
    for (std::int64_t k = 0; k < kinds; ++k) {
        const std::int64_t count = any(1, 4);
        out += fmt::format("part kind{}, row of {} deep spaced 700\n  wood cherry, {} sawn\n", k, count,
                           any.of({"flat", "rift", "quarter"}));
        const bool panel = any(0, 4) == 0, layered = !panel && any(0, 5) == 0;
        out += fmt::format(
            "  size {} x {} x {}, runs across, face side up\n  left at left, bottom at {}, front at 0\n",
            layered ? any(40, 120) : any(4, 30), panel ? any(150, 600) : any(20, 200), any(60, 1500), at);
        at += 200;
        if (panel)
            out += any(0, 1) ? "  glued up of staves\n"
                             : fmt::format("  glued up of {} staves bark faces alternating\n", any(2, 5));
        if (layered) out += fmt::format("  laminated of {}\n", any(2, 4));
        if (any(0, 3) == 0) out += "  sapwood allowed\n";
        switch (any(0, 5)) {
        case 0:
            out += fmt::format("match kind{}, in sequence\n", k);
            break;
        case 1:
            out += fmt::format("match kind{}, from one board\n", k);
            break;
        case 2:
            if (count % 2 == 0) out += fmt::format("match kind{}, book-matched\n", k);
            break;
        default:
            break;
        }
    }
    return out;
}

} // namespace

TEST_CASE("made-up shops and pieces are planned without a fault") {
    int boards = 0, missing = 0, resawn = 0, matched = 0, flawed = 0;
    for (std::int64_t seed = 1; seed <= 400; ++seed) {
        Numbers any(seed * 7919);
        for (int warm = 0; warm < 5; ++warm) any(0, 1);
        const std::string shop = a_shop(any), piece = a_piece(any);
        INFO(seed << "\n" << shop << "\n" << piece);
        const auto studied = studied_text(piece, shop);
        const std::vector<lumber::Source> sources{{&studied->model, &studied->cut_list}};
        const lumber::Plan plan = lumber::plan(sources, cutting::Effort{2});
        for (const std::string& fault : faults_of(plan, sources, studied->piece.shop)) FAIL_CHECK(fault);
        CHECK(plan.bound <= plan.cost + 1e-9);
        for (const lumber::Missing& gone : plan.missing) {
            CHECK_FALSE(gone.reason.empty());
            CHECK_FALSE(gone.remedy.empty());
        }
        boards += static_cast<int>(plan.boards.size());
        missing += static_cast<int>(plan.missing.size());
        matched += static_cast<int>(studied->piece.matches.size());
        for (const lumber::Board& board : plan.boards) {
            flawed += board.flaws.empty() ? 0 : 1;
            for (const lumber::Placement& p : board.placements) resawn += p.leaves.size() > 1 ? 1 : 0;
        }
    }
    // Of each there was enough to look at.
    CHECK(boards > 300);
    CHECK(missing > 0);
    CHECK(resawn > 20);
    CHECK(matched > 100);
    CHECK(flawed > 20);
}

} // namespace rayfleck::lumber_tests
