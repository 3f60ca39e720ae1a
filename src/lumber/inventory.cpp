// Boards on hand after the cutting, as the shop file says them.

#include <algorithm>

#include <fmt/format.h>

#include "lumber/lumber.hpp"
#include "wood/lumber.hpp"

namespace rayfleck::lumber {
namespace {

std::string millimetres(Length length) { return measure::decimal(length.in_mm(), 1) + "mm"; }

/// A piece of a board: all of it, or an offcut; in the board's frame.
struct Piece {
    Length x, y, length, width;
};

/// What the eye sees on the piece, as phrases of its statement.
std::string seen(const piece::Shop::Board& board, const Piece& piece) {
    std::string out;
    if (board.rings) out += fmt::format(", rings at {:g} degrees", *board.rings);
    if (board.bark)
        out += *board.bark == syntax::Side::top      ? ", bark face up"
               : *board.bark == syntax::Side::bottom ? ", bark face down"
               : *board.bark == syntax::Side::front  ? ", bark edge front"
                                                     : ", bark edge back";
    const Length right = piece.x + piece.length, back = piece.y + piece.width;
    const auto overlap = [](Length low, Length high, Length from, Length to) {
        return std::min(high, to) - std::max(low, from);
    };
    const auto flaw = [&](const std::string& kind, Length x, Length y, Length length, Length width) {
        const Length from = std::max(x, piece.x), to = std::min(x + length, right);
        const Length low = std::max(y, piece.y), high = std::min(y + width, back);
        if (from >= to || low >= high) return;
        out +=
            fmt::format(", {} from {} to {} and from {} to {}", kind, millimetres(from - piece.x),
                        millimetres(to - piece.x), millimetres(low - piece.y), millimetres(high - piece.y));
    };
    // Sapwood that reaches the piece reaches it from that edge, checks from that end.
    const Length front_sap = overlap(Length(), board.sapwood_front, piece.y, back),
                 back_sap = overlap(board.width - board.sapwood_back, board.width, piece.y, back),
                 left = overlap(Length(), board.checks_left, piece.x, right),
                 end = overlap(board.length - board.checks_right, board.length, piece.x, right);
    if (front_sap > Length()) out += fmt::format(", sapwood {} on front edge", millimetres(front_sap));
    if (back_sap > Length()) out += fmt::format(", sapwood {} on back edge", millimetres(back_sap));
    if (left > Length() && left < piece.length)
        out += fmt::format(", checks {} at left end", millimetres(left));
    if (end > Length() && end < piece.length)
        out += fmt::format(", checks {} at right end", millimetres(end));
    for (const piece::Shop::Board::Flaw& one : board.flaws)
        flaw(one.kind, one.along, one.across, one.length, one.width);
    return out;
}

/// The stock by its name where that tells the thickness.
std::string statement(const std::string& mark, const std::string& wood, const std::string& stock,
                      Length thickness, Length width, Length length, const std::string& sawn, int count,
                      const std::string& what_is_seen) {
    const bool named = wood::lumber_named(stock).has_value();
    std::string out = fmt::format("board {}, {}, {}{} x {}", mark, wood,
                                  named ? stock + ", " : millimetres(thickness) + " x ", millimetres(width),
                                  millimetres(length));
    if (!sawn.empty()) out += fmt::format(", {} sawn", sawn);
    if (count > 1) out += fmt::format(", {} off", count);
    return out + what_is_seen + "\n";
}

std::string seen_on(const Board& board, const Offcut& offcut, const piece::Shop& shop) {
    for (const piece::Shop::Board& own : shop.boards)
        if (board.on_hand && own.id == board.mark)
            return seen(own, {offcut.x, offcut.y, offcut.length, offcut.width});
    return "";
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
    std::string out =
        "# Boards on hand when all is cut, and offcuts worth keeping.\nshop file \"Boards on hand\"\n"
        "units mm\n";
    std::vector<std::string> taken;
    for (const piece::Shop::Board& board : shop.boards) taken.push_back(board.id);
    for (const piece::Shop::Board& board : shop.boards) {
        int left = board.count;
        for (const Board& used : plan.boards)
            if (used.on_hand && used.mark == board.id) --left;
        if (left > 0)
            out += statement(board.id, board.wood, board.stock, board.thickness, board.width, board.length,
                             board.sawn, left, seen(board, {Length(), Length(), board.length, board.width}));
    }
    int bought = 0;
    for (const Board& board : plan.boards) {
        if (!board.on_hand) ++bought;
        const std::string base = board.on_hand ? board.mark : fmt::format("B{}", bought);
        for (const Offcut& offcut : board.offcuts)
            if (offcut.worth_keeping)
                out += statement(fresh_mark(base, taken), board.wood, board.stock, board.thickness,
                                 offcut.width, offcut.length, board.sawn, 1, seen_on(board, offcut, shop));
    }
    return out;
}

} // namespace rayfleck::lumber
