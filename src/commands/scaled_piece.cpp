// A bank of drawers: a case with uprights, front and rear rails tenoned between them, a dovetailed drawer in
// every opening, graduated by row, and a slatted frame at the back whose slats fill up the number of parts.
//
// Every part of it is joined: dados, mortises and tenons, half-blind and through dovetails, grooves, screws.
// Sizes are invented. Columns of drawers are alike, rows are not, so the number of different parts grows more
// slowly than the number of parts, as it does in real pieces.

#include "commands/scaled_piece.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

namespace rayfleck::commands {
namespace {

constexpr int stuff = 18, bay = 360, deep = 450, rail = 20, play = 4;
constexpr int parts_of_case = 6;    // two sides, top, bottom, two back rails
constexpr int parts_in_opening = 7; // a drawer of five, two rails

struct Bank {
    int columns = 1, rows = 1, slats = 1;
};

Bank bank_for(int parts) {
    // About twice as many rows as columns, and slats for a tenth of the parts.
    Bank bank;
    const int openings = std::max(1, (parts * 9 / 10 - parts_of_case) / parts_in_opening);
    for (int columns = 1; 2 * columns * columns <= openings; ++columns) bank.columns = columns;
    bank.rows = openings / bank.columns;
    bank.slats = parts - parts_of_case - (bank.columns - 1) - bank.columns * bank.rows * parts_in_opening;
    return bank;
}

std::string joined(const std::string& name, int count, const std::string& between) {
    std::string all;
    for (int i = 1; i <= count; ++i) all += (i == 1 ? "" : between) + fmt::format("{}-{}", name, i);
    return all;
}

} // namespace

std::string bank_of_drawers(int parts) {
    const Bank bank = bank_for(parts);
    std::vector<int> heights, at;
    int up = 60;
    for (int row = 0; row < bank.rows; ++row) {
        heights.push_back(142 - 18 * (row % 5) + 3 * row);
        at.push_back(up + rail);
        up += rail + heights.back() + play;
    }
    std::string text;
    const auto say = [&]<typename... Args>(fmt::format_string<Args...> words, Args&&... args) {
        text += fmt::format(words, std::forward<Args>(args)...) + "\n";
    };
    say("piece \"Bank of {} drawers\"\nunits mm\n", bank.columns * bank.rows);
    say("rod across left 0, right {}", bank.columns * (bay + stuff) + stuff);
    for (int c = 0; c < bank.columns; ++c) say("rod across bay-{} {}", c + 1, stuff + c * (bay + stuff));
    for (int c = 1; c < bank.columns; ++c) say("rod across upright-{} {}", c, c * (bay + stuff));
    say("rod deep front 0, back {}", deep);
    say("rod up floor 0, low 42, case-low 60, case-high {}, top {}", up, up + stuff);
    for (int row = 0; row < bank.rows; ++row)
        say("rod up row-{} {}", row + 1, at[static_cast<std::size_t>(row)]);
    say("\npart side, left and right\n  wood cherry, quarter sawn\n  {} thick, stands, face side outside\n"
        "  left at left, from floor to case-high, from front to back\n  glued up of staves at most 120 wide",
        stuff);
    say("part case top\n  wood cherry, quarter sawn\n  runs across, from left to right\n"
        "  from case-high to top, from front to back\n  glued up of staves at most 120 wide");
    say("part case bottom\n  wood cherry, quarter sawn\n  runs across, between side\n"
        "  from low to case-low, from front to back\n  glued up of staves at most 120 wide");
    say("join side to case top with dado, 6 deep\njoin case bottom to side with dado, 6 deep");
    if (bank.columns > 1)
        say("part upright, at each of {}\n  wood cherry, quarter sawn\n"
            "  {} thick, stands, face side right\n  left at each, from case-low to case-high\n"
            "  from front to back, glued up of staves at most 120 wide\n"
            "join upright to case bottom with dado, 5 deep\njoin upright to case top with dado, 5 deep",
            joined("upright", bank.columns - 1, " and "), stuff);
    const std::string each = joined("bay", bank.columns, " and ");
    for (int row = 1; row <= bank.rows; ++row) {
        for (const char* end : {"front", "back"}) {
            say("part {0}-rail-{1}, at each of {2}\n  wood hard maple, quarter sawn\n"
                "  {3} thick, 60 wide, {4} long, runs across, face side top\n"
                "  left at each, top at row-{1}, {0} at {0}",
                end, row, each, rail, bay);
            for (const char* to : {"side", "upright"})
                if (bank.columns > 1 || to[0] == 's')
                    say("join {}-rail-{} to {} with mortise and tenon, 8 thick, 8 long", end, row, to);
        }
        say("make drawer-{0} from drawer, at each of {1}\n  width {2}\n  height {3}\n  depth {4}\n"
            "  left at each + 1\n  front at front\n  bottom at row-{0}",
            row, each, bay - 2, heights[static_cast<std::size_t>(row - 1)], deep - 12);
    }
    for (const char* where : {"bottom at low", "top at case-high"}) {
        const std::string name = where[0] == 'b' ? "low back rail" : "high back rail";
        say("part {0}\n  wood cherry, quarter sawn\n  22 thick, 50 wide, runs across, face side back\n"
            "  from left to right, front at back, {1}\njoin {0} to side with screws, 2 screws\n"
            "join back slat to {0} with mortise and tenon, 8 thick, 20 long",
            name, where);
    }
    say("part back slat, row of {} across from left to right\n  wood yellow-poplar, quarter sawn\n"
        "  14 thick, 30 wide, stands, face side back\n"
        "  from top of low back rail to bottom of high back rail, centred deep on low back rail",
        bank.slats);
    return text;
}

} // namespace rayfleck::commands
