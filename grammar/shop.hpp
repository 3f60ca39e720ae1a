#pragma once
// Statements of the shop file: saws, allowances, machines, title block, sheet, woods of its own, boards in hand, prices of
// the yard.

#include "grammar/arithmetic.hpp"
#include "grammar/board_phrases.hpp"
#include "grammar/piece.hpp"

namespace rayfleck::grammar {

// kerf SAW SIZE
//     kerf table saw 3
struct saw_name : words {};
struct kerf : must<saw_name, size> {};

// allow SIZE for WHAT
//     allow 3 for planing
struct purpose : words {};
struct allow : must<size, word::for_, purpose> {};

// limit MACHINE WHAT SIZE
//     limit planer width 300
struct machine_and_measure : words {};
struct limit : must<machine_and_measure, size> {};

// title FIELD TEXT
//     title owner "Lindgren & Daughter"
struct title_field : words {};
struct title : must<title_field, quoted> {};

// sheet SIZE
//     sheet A3
struct sheet_name : words {};
struct sheet : must<sheet_name> {};

// projection first|third angle
//     projection first angle
struct first_or_third : sor<word::first, word::third> {};
struct projection : must<first_or_third, word::angle> {};

// currency TEXT
//     currency "EUR"
struct currency : must<quoted> {};

// keep offcuts SIZE x SIZE
//     keep offcuts 60 x 400
struct keep : must<word::offcuts, size, word::x, size> {};

// board NAME, then in any order: WOOD, STOCK, SIZE x SIZE, flat|rift|quarter sawn, COUNT off, and what the eye sees
// on it: rings, bark, sapwood, checks at its ends, flaws
//     board B1, cherry, 4/4, 190 x 2400, flat sawn, 3 off
//     board B2, cherry, 4/4, 190 x 2400, bark face up, sapwood 25 on back edge, checks 80 at left end, knot 30 at
//       900 and 60, split from 2250 to 2400 and from 90 to 100
struct board_id : sor<quoted, words> {};
struct board : must<board_id> {};
struct board_stock_letters : seq<digit, plus<sor<digit, one<'/', 'x'>>>, not_at<word_goes_on>> {};
struct board_stock : seq<board_stock_letters, gap, at<pegtl::eof>> {};
struct sawn_kind : sor<word::flat, word::rift, word::quarter> {};
struct board_sawn : seq<sawn_kind, word::sawn> {};
struct board_by : if_must<word::x, size> {};
struct board_size : seq<size, plus<board_by>> {};
struct board_count : seq<count, word::off> {};
struct board_rings : if_must<word::rings, word::at, angle> {};
struct bark_or_heart : sor<word::bark, word::heart> {};
struct board_bark : if_must<bark_or_heart, face_or_edge, towards> {};
struct board_sapwood : if_must<word::sapwood, size, word::on, side, word::edge> {};
struct board_checks : if_must<word::checks, size, word::at, side, word::end> {};
struct flaw_kind : sor<word::knot, word::split, word::shake, word::wane, word::defect> {};
struct flaw_box : if_must<word::from, size, word::to, size, word::and_, word::from, size, word::to, size> {};
struct flaw_round : seq<size, must<word::at, size, word::and_, size>> {};
struct flaw_where : sor<flaw_box, flaw_round> {};
struct board_flaw : if_must<flaw_kind, flaw_where> {};
struct board_wood : name {};
struct board_item_kinds : sor<board_stock, board_count, board_size, board_sawn, board_rings, board_bark, board_sapwood,
                              board_checks, board_flaw, board_wood> {};
struct board_item : must<board_item_kinds> {};

// wood NAME, then in any order: hardwood|softwood, and its figures, each by its name, its number and its unit
//     wood hornbeam, hardwood, density 750 kg/m3, radial shrinkage 6.8 %, tangential shrinkage 11.5 %
struct own_wood_name : name {};
struct own_wood : must<own_wood_name> {};
struct figure_words : words {};
struct figure_amount : decimal {};
struct figure_unit : sor<one<'%'>, seq<letter, star<sor<letter_or_digit, one<'/'>>>>> {};
struct figure_value : seq<figure_amount, gap, opt<figure_unit, gap>> {};
struct wood_figure : seq<must<figure_words>, opt<figure_value>> {};

// price WOOD [STOCK], then in any order: SIZE per UNIT, flat|rift|quarter sawn, widths SIZE to SIZE, lengths SIZE and
// SIZE, sheets SIZE x SIZE
//     price cherry 4/4, 12.50 per board foot, widths 5in to 9in, lengths 8ft and 10ft
//     price birch plywood 6mm, 38 per piece, sheets 1220 x 2440
struct stock_ahead : at<digit> {};
struct price_stock_word : seq<stock_letters> {};
struct price_stock : seq<stock_ahead, price_stock_word, gap> {};
struct price : seq<must<wood_name>, opt<price_stock>> {};
struct price_unit : words {};
/// A number, so that a misspelt word is not taken for the name of a value.
struct amount_ahead : at<sor<digit, one<'('>>> {};
struct price_amount : seq<amount_ahead, size, must<word::per, price_unit>> {};
struct length_more : if_must<word::and_, size> {};
struct price_lengths : seq<if_must<word::lengths, size>, star<length_more>> {};
struct price_widths : if_must<word::widths, size, word::to, size> {};
struct price_sheets : if_must<word::sheets, size, word::x, size> {};
struct price_item_kinds : sor<price_lengths, price_widths, price_sheets, board_sawn, price_amount> {};
struct price_item : must<price_item_kinds> {};

} // namespace rayfleck::grammar
