#pragma once
// Statements of the shop file: saws, allowances, machines, title block, sheet, boards in hand, prices of the yard.

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

// board NAME, then in any order: WOOD, STOCK, SIZE x SIZE, flat|rift|quarter sawn, COUNT off
//     board B1, cherry, 4/4, 190 x 2400, flat sawn, 3 off
struct board_id : sor<quoted, words> {};
struct board : must<board_id> {};
struct board_stock_letters : seq<digit, plus<sor<digit, one<'/', 'x'>>>, not_at<word_goes_on>> {};
struct board_stock : seq<board_stock_letters, gap, at<pegtl::eof>> {};
struct sawn_kind : sor<word::flat, word::rift, word::quarter> {};
struct board_sawn : seq<sawn_kind, word::sawn> {};
struct board_by : if_must<word::x, size> {};
struct board_size : seq<size, plus<board_by>> {};
struct board_count : seq<count, word::off> {};
struct board_wood : name {};
struct board_item_kinds : sor<board_stock, board_count, board_size, board_sawn, board_wood> {};
struct board_item : must<board_item_kinds> {};

// price WOOD [STOCK], SIZE per UNIT[, lengths SIZE and SIZE...]
//     price cherry 4/4, 12.50 per board foot, lengths 8ft and 10ft
struct stock_ahead : at<digit> {};
struct price_stock_word : seq<stock_letters> {};
struct price_stock : seq<stock_ahead, price_stock_word, gap> {};
struct price_unit : words {};
struct length_more : if_must<word::and_, size> {};
struct price_lengths : seq<if_must<comma, word::lengths, size>, star<length_more>> {};
struct price : seq<must<wood_name>, opt<price_stock>, must<comma, size, word::per, price_unit>,
                   opt<price_lengths>> {};

} // namespace rayfleck::grammar
