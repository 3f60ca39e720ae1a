#pragma once
// Boards that could be cut: those on hand, those the yard has prices for, and standard sizes where it names
// none.

#include <optional>
#include <string>
#include <vector>

#include "lumber/blanks.hpp"

namespace rayfleck::lumber {

/// Boards that are alike.
struct StockType {
    const wood::Species* species = nullptr;
    bool sheet = false;
    std::string sawn, stock;
    Length thickness, width, length;
    bool dressed = false; ///< lumber of a nominal width, planed
    bool random_width = false;
    int on_hand = 0;                           ///< so many; 0: bought, as many as are wanted
    std::string mark;                          ///< of the shop file
    const piece::Shop::Board* board = nullptr; ///< on hand: with its flaws; else null
    const piece::Shop::Price* price = nullptr; ///< null: on hand, or without a price
};

/// Widths at which random-width hardwood is planned: a usual board, and wider ones for wide blanks only. Our
/// own choice, about what yards have (common practice, no published source).
inline constexpr int usual_width_in = 6;
inline constexpr int wide_widths_in[] = {8, 10, 12};
/// Lengths where the price names none: our own choice.
inline constexpr int usual_lengths_ft[] = {8, 10};
/// Standard sheet, 4 by 8 ft: common practice, no published source.
inline constexpr int sheet_width_in = 48, sheet_length_in = 96;

/// Everything that could be used for these blanks, on hand first.
std::vector<StockType> stock_for(const std::vector<BlankType>& blanks, const piece::Shop& shop);

/// The widest board of the wood that is thick enough, on hand or at the yard.
Length widest_for(const wood::Species& species, Length thickness, const piece::Shop& shop);

/// What is left of a board's width when one edge is straight. straight: it was bought so
Length clear_width(Length width, bool straight, const piece::Shop& shop);
/// What the straightening takes; dressed lumber and sheets have straight edges.
Length straightened_off(const StockType& stock, const piece::Shop& shop);

/// Whether a board of the type may be used for the blank, size along and across left aside.
bool suits(const StockType& stock, const BlankType& blank);

/// Of one board, by the way the yard counts.
double board_feet_of(const StockType& stock);
double price_of(const StockType& stock);
/// Whether the price is per a unit that we can count by: board foot, m3, m2, piece.
bool known_unit(const piece::Shop::Price& price);

} // namespace rayfleck::lumber
