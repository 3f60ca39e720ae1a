#pragma once
// Boards on hand and prices of the yard, out of the shop file; seen inside this room only.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {

void read_board(Elaboration& e, const Context& c, const syntax::BoardIs& says, Span span, Shop& shop);
void read_price(Elaboration& e, const Context& c, const syntax::PriceIs& says, Span span, Shop& shop);

} // namespace rayfleck::piece
