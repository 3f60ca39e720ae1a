#pragma once
// From the matched pieces of one phrase to what it says. One function for each sort of phrase; they are given
// only pieces that their rule of the grammar matched, so that what the rule demands is there.

#include "syntax/reading.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

using Says = decltype(Phrase::says);

/// `word` is the word the phrase began with.
using BuildPhrase = Says (*)(const Reading& reading, const Piece& pieces, std::string_view word);

// What the board is.
Says build_wood(const Reading&, const Piece&, std::string_view);
Says build_sawn(const Reading&, const Piece&, std::string_view);
Says build_rings(const Reading&, const Piece&, std::string_view);
Says build_pith(const Reading&, const Piece&, std::string_view);
Says build_bark(const Reading&, const Piece&, std::string_view);
Says build_stock(const Reading&, const Piece&, std::string_view);
Says build_sizes(const Reading&, const Piece&, std::string_view);
Says build_grain(const Reading&, const Piece&, std::string_view);
Says build_glued_up(const Reading&, const Piece&, std::string_view);
Says build_laminated(const Reading&, const Piece&, std::string_view);
Says build_carries(const Reading&, const Piece&, std::string_view);
Says build_sapwood(const Reading&, const Piece&, std::string_view);
Says build_loose(const Reading&, const Piece&, std::string_view);
Says build_note(const Reading&, const Piece&, std::string_view);

// Where it stands.
Says build_runs(const Reading&, const Piece&, std::string_view);
Says build_face(const Reading&, const Piece&, std::string_view);
Says build_from(const Reading&, const Piece&, std::string_view);
Says build_between(const Reading&, const Piece&, std::string_view);
Says build_side_at(const Reading&, const Piece&, std::string_view);
Says build_centred(const Reading&, const Piece&, std::string_view);
Says build_set_back(const Reading&, const Piece&, std::string_view);
Says build_overhanging(const Reading&, const Piece&, std::string_view);
Says build_over(const Reading&, const Piece&, std::string_view);
Says build_flush(const Reading&, const Piece&, std::string_view);
Says build_tilt(const Reading&, const Piece&, std::string_view);
Says build_turned_on_plan(const Reading&, const Piece&, std::string_view);

// How it is cut.
Says build_taper(const Reading&, const Piece&, std::string_view);
Says build_edge_shape(const Reading&, const Piece&, std::string_view);
Says build_miter(const Reading&, const Piece&, std::string_view);
Says build_trim(const Reading&, const Piece&, std::string_view);
Says build_bore(const Reading&, const Piece&, std::string_view);
Says build_groove(const Reading&, const Piece&, std::string_view);
Says build_rabbet(const Reading&, const Piece&, std::string_view);
Says build_notch(const Reading&, const Piece&, std::string_view);
Says build_curve(const Reading&, const Piece&, std::string_view);

OutlineStep build_outline_step(const Reading&, const Piece&);
TurnedStation build_turned_station(const Reading&, const Piece&);

} // namespace rayfleck::syntax
