#pragma once
// Blanks and stock as orders for the room `cutting`: one for each set of boards that hang together.
//
// What is made least: the money of what is bought, and far below it the area of boards on hand, so that those
// are used first and small ones before large ones. Stock without a price counts by its area too, but as much
// as money would, so that little of it is used. Sizes are tenths of a millimetre; money is thousandths of a
// hundredth.

#include <string>
#include <vector>

#include "lumber/stock.hpp"

namespace rayfleck::lumber {

/// Blanks that the order holds together in a row.
struct Row {
    std::size_t source = 0, match = 0;                        ///< into the pieces, into their Piece::matches
    std::vector<std::pair<std::size_t, std::size_t>> members; ///< blank type, and which of its blanks
};

/// An order and what its indices mean.
struct Problem {
    cutting::Order order;
    std::vector<std::size_t> blanks, stocks; ///< of Order::parts and Order::stocks
    std::vector<Row> rows;                   ///< of Order::sequences
    bool all_priced = true;                  ///< no stock in it has to be bought without a price
    cutting::Cost on_hand_at_most = 0;       ///< what all boards on hand in it count together
};

/// A blank that no board suits is in no problem.
std::vector<Problem> problems_of(const std::vector<BlankType>& blanks, const std::vector<StockType>& stocks,
                                 const piece::Shop& shop);

/// Asks the problems for the matches of the pieces: parts in sequence end to end out of one board, parts from
/// one board end to end or, where no board is as long, side by side; of glued-up parts their staves. What
/// cannot be asked for is told in the remarks: parts of different stock, and rows that no board holds.
void ask_for_matches(std::vector<Problem>& problems, const std::vector<BlankType>& blanks,
                     const std::vector<Source>& sources, std::vector<std::string>& remarks);

/// Which stock a blank may come from: boards that suit it, none much thicker than the thinnest that does.
std::vector<std::size_t> stocks_of(const BlankType& blank, const std::vector<StockType>& stocks,
                                   const piece::Shop& shop);

/// A board is too thick for a blank beyond this ratio, unless nothing thinner suits. Our own choice.
inline constexpr int thick_over_rough_top = 3, thick_over_rough_bottom = 2;

/// Thousandths of a hundredth of the shop's money.
inline constexpr cutting::Cost money_unit = 100'000;

cutting::Measure tenths(Length length);
Length from_tenths(cutting::Measure measure);

/// What the shop's saws take: the table saw for rips; for crosscuts a saw made for them, else the same.
Length kerf_of_rip(const piece::Shop& shop);
Length kerf_of_crosscut(const piece::Shop& shop);
/// The band saw's; where none is named, 2 mm: common practice, no published source.
Length kerf_of_resaw(const piece::Shop& shop);
bool has_band_saw(const piece::Shop& shop);
/// How wide a board the band saw resaws: its height in the shop file, else 150 mm, our own choice.
Length resaw_height(const piece::Shop& shop);
/// What crosscuts; `table saw` where the shop names no saw for that.
std::string crosscut_saw(const piece::Shop& shop);

} // namespace rayfleck::lumber
