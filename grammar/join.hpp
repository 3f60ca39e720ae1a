#pragma once
// Joints and their options, hardware, accepted findings, parts that match.

#include "grammar/arithmetic.hpp"
#include "grammar/place_phrases.hpp"

namespace rayfleck::grammar {

// join PART to PART with JOINT
//     join long apron to leg with mortise and tenon
struct joint_kind : words {};
struct receiving_part : seq<part_name> {};
struct join : must<part_name, word::to, receiving_part, word::with, joint_kind> {};

// An option of a joint: words, sizes, a side, a text, in any order
//     haunched 25     6 thick     set 4 from top     slope 1:8     glued in the middle     "8 x 40"
struct ratio_more : if_must<one<':'>, size> {};
struct option_value : seq<at<sor<digit, vulgar, one<'('>>>, size, opt<ratio_more>> {};
struct option_word : seq<plain_word> {};
struct option_item : sor<quoted, option_value, side, seq<option_word, gap>> {};
struct option_items : plus<option_item> {};
struct joint_option : must<option_items> {};

// hardware TEXT[, COUNT off][, on PART [to PART]]
//     hardware "Brass butt hinge 50", 2 off, on door to side
struct comma : seq<one<','>, gap> {};
struct how_many_off : seq<count, must<word::off>> {};
struct on_this : if_must<word::on, part_name> {};
struct to_that : if_must<word::to, part_name> {};
struct hardware_item : sor<on_this, to_that, how_many_off> {};
struct hardware_after_comma : if_must<comma, hardware_item> {};
struct hardware_items : star<sor<hardware_after_comma, hardware_item>> {};
struct hardware : seq<must<quoted>, hardware_items> {};

// accept CHECK [on PART] because TEXT
//     accept short-grain on ear because "it is a plaque and carries nothing"
struct check_name : one_word_name {};
struct accept : seq<must<check_name>, opt<on_this>, must<word::because, quoted>> {};

// match PART [and PART...], in sequence|book-matched|from one board
//     match drawer front, in sequence     match left panel and right panel, book-matched
struct matched_part : seq<part_name> {};
struct matched_more : if_must<word::and_, matched_part> {};
struct matching : seq<must<matched_part>, star<matched_more>> {};
struct in_sequence : if_must<word::in, word::sequence> {};
struct from_one_board : if_must<word::from, word::one_word, word::board> {};
struct how_matched : sor<in_sequence, word::book_matched, from_one_board> {};
struct match_how : must<how_matched> {};

} // namespace rayfleck::grammar
