// Boards on hand after the cutting, as the shop file says them.

#include <fmt/format.h>

#include "lumber/lumber.hpp"

namespace rayfleck::lumber {
namespace {

std::string millimetres(Length length) { return measure::decimal(length.in_mm(), 1) + "mm"; }

std::string statement(const std::string& mark, const std::string& wood, Length thickness, Length width,
                      Length length, const std::string& sawn, int count) {
    std::string out = fmt::format("board {}, {}, {} x {} x {}", mark, wood, millimetres(thickness),
                                  millimetres(width), millimetres(length));
    if (!sawn.empty()) out += fmt::format(", {} sawn", sawn);
    if (count > 1) out += fmt::format(", {} off", count);
    return out + "\n";
}

/// A mark that no board bears yet: the board's own with a number, `C1-2`.
std::string fresh_mark(const std::string& base, std::vector<std::string>& taken) {
    for (int n = 1;; ++n) {
        std::string mark = fmt::format("{}-{}", base, n);
        bool free = true;
        for (const std::string& other : taken) free = free && other != mark;
        if (!free) continue;
        taken.push_back(mark);
        return mark;
    }
}

} // namespace

std::string inventory_after(const Plan& plan, const piece::Shop& shop) {
    std::string out;
    std::vector<std::string> taken;
    for (const piece::Shop::Board& board : shop.boards) taken.push_back(board.id);
    for (const piece::Shop::Board& board : shop.boards) {
        int left = board.count;
        for (const Board& used : plan.boards)
            if (used.on_hand && used.mark == board.id) --left;
        if (left > 0)
            out +=
                statement(board.id, board.wood, board.thickness, board.width, board.length, board.sawn, left);
    }
    int bought = 0;
    for (const Board& board : plan.boards) {
        if (!board.on_hand) ++bought;
        const std::string base = board.on_hand ? board.mark : fmt::format("B{}", bought);
        for (const Offcut& offcut : board.offcuts)
            if (offcut.worth_keeping)
                out += statement(fresh_mark(base, taken), board.wood, board.thickness, offcut.width,
                                 offcut.length, board.sawn, 1);
    }
    return out;
}

} // namespace rayfleck::lumber
