#pragma once
// One statement out of its header and its block. Every function is given a readable line whose first word has
// been recognised; it reports what is wrong and gives BrokenStatement when the header cannot be understood,
// after having read the block all the same.

#include <string_view>

#include "syntax/layout.hpp"
#include "syntax/phrases.hpp"
#include "syntax/reading.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

using Told = decltype(Statement::says);

struct Header {
    const Line& line;
    std::string_view word; ///< the statement's word, corrected when it was misspelt
    std::size_t word_end;  ///< where it ends in the text
    Stretch first;         ///< the rest of the first stretch
    Stretch whole;         ///< the rest of the line
    Strays& strays;        ///< statements that stand in the block and do not belong there
};

using BuildStatement = Told (*)(const Reading& reading, const Header& header);

// The piece.
Told build_piece(const Reading&, const Header&);
Told build_units(const Reading&, const Header&);
Told build_climate(const Reading&, const Header&);
Told build_made(const Reading&, const Header&);
Told build_shop(const Reading&, const Header&);
Told build_bring(const Reading&, const Header&);
Told build_value(const Reading&, const Header&);
Told build_sizes_table(const Reading&, const Header&);
Told build_require(const Reading&, const Header&);
Told build_rod(const Reading&, const Header&);
Told build_part(const Reading&, const Header&);
Told build_join(const Reading&, const Header&);
Told build_match(const Reading&, const Header&);
Told build_hardware(const Reading&, const Header&);
Told build_piece_note(const Reading&, const Header&);
Told build_accept(const Reading&, const Header&);
Told build_recipe(const Reading&, const Header&);
Told build_takes(const Reading&, const Header&);
Told build_make(const Reading&, const Header&);

// The shop file.
Told build_kerf(const Reading&, const Header&);
Told build_allow(const Reading&, const Header&);
Told build_limit(const Reading&, const Header&);
Told build_title(const Reading&, const Header&);
Told build_sheet(const Reading&, const Header&);
Told build_projection(const Reading&, const Header&);
Told build_board(const Reading&, const Header&);
Told build_price(const Reading&, const Header&);
Told build_own_wood(const Reading&, const Header&);
Told build_currency(const Reading&, const Header&);
Told build_keep(const Reading&, const Header&);

/// Matches a stretch that follows the statement's word; what is missed is reported with the statement's form.
std::optional<Piece> matched(const Reading& reading, const Header& header, Entry entry, Stretch stretch);
/// How the statement that begins with this word is written, for remedies.
std::string_view form_of_statement(std::string_view word);

} // namespace rayfleck::syntax
