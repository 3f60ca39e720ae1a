#pragma once
// Phrases of a part that say what its board is: wood, how it was sawn, stock, size, glue-up.
//
// Each rule stands for what follows the first word of its phrase; the first word chooses the rule.

#include "grammar/arithmetic.hpp"

namespace rayfleck::grammar {

// wood NAME
//     wood cherry     wood "white oak"     wood timber
struct wood_name : name {};
struct wood : must<wood_name> {};

// flat|rift|quarter sawn
//     quarter sawn
struct sawn : must<word::sawn> {};

// rings at ANGLE
//     rings at 30 degrees
struct rings : must<word::at, angle> {};

// pith SIZE beyond|from SIDE [and SIZE beyond|from SIDE]
//     pith 30 beyond bottom     pith 30 beyond bottom and 40 from left
struct beyond_or_from : sor<word::beyond, word::from> {};
struct pith_place : must<size, beyond_or_from, side> {};
struct second_pith_place : seq<word::and_, pith_place> {};
struct pith : seq<pith_place, opt<second_pith_place>> {};

// bark|heart face|edge SIDE
//     bark face up     heart edge left
struct face_or_edge : sor<word::face, word::edge> {};
struct bark : must<face_or_edge, towards> {};

// stock NAME
//     stock 8/4     stock 2x4     stock "18 mm ply"
struct stock_letters : plus<sor<letter_or_digit, one<'/', '-', '.'>>> {};
struct more_stock : seq<gap, stock_letters> {};
struct stock_words : seq<stock_letters, star<more_stock>> {};
struct stock_name : sor<quoted, seq<stock_words, gap>> {};
struct stock : must<stock_name> {};

// size THICK x WIDE x LONG, or one size and which it is
//     size 20 x 60 x 400     size 38 x 38     size 20 thick
struct which_size : sor<word::thick, word::wide, word::long_> {};
struct more_size : if_must<word::x, size> {};
struct size_series : seq<more_size, opt<more_size>> {};
struct size_labelled : seq<which_size> {};
struct sizes_or_label : sor<size_series, size_labelled> {};
struct sizes_phrase : must<size, sizes_or_label> {};

// SIZE thick|wide|long
//     20 thick     leg-size wide
struct labelled_size : must<size, which_size> {};

// grain at ANGLE
//     grain at 15 degrees
struct grain : must<word::at, angle> {};

// glued up [of staves [at most SIZE wide] | of COUNT staves] [bark faces alternating|together]
//     glued up of staves at most 110 wide bark faces alternating     glued up of 5 staves
struct at_most : if_must<word::at, word::most, size, word::wide> {};
struct any_staves : seq<word::staves, opt<at_most>> {};
struct counted_staves : seq<count, word::staves> {};
struct staves : sor<any_staves, counted_staves> {};
struct alternating_or_together : sor<word::alternating, word::together> {};
struct bark_faces : if_must<word::bark, word::faces, alternating_or_together> {};
struct of_staves : if_must<word::of, staves> {};
struct glued_up : seq<must<word::up>, opt<of_staves>, opt<bark_faces>> {};

// laminated of COUNT
//     laminated of 3
struct laminated : must<word::of, count> {};

// carries NUMBER kg|lb [per m|per ft | in the middle], or books
//     carries 25 kg     carries 20 lb per ft     carries 80 kg in the middle     carries books
struct load_amount : decimal {};
struct kg_or_lb : sor<keyword<TAO_PEGTL_STRING("kg")>, keyword<TAO_PEGTL_STRING("lb")>> {};
struct m_or_ft : sor<keyword<TAO_PEGTL_STRING("m")>, keyword<TAO_PEGTL_STRING("ft")>> {};
struct per_length : if_must<word::per, m_or_ft> {};
struct load_in_the_middle : if_must<word::in, word::the, word::middle> {};
struct load : seq<load_amount, gap, must<kg_or_lb>, opt<sor<per_length, load_in_the_middle>>> {};
struct books : word::books {};
struct load_or_books : sor<load, books> {};
struct carries : must<load_or_books> {};
// sapwood allowed
//     sapwood allowed
struct sapwood : must<word::allowed> {};

// note TEXT
//     note "plane after glue-up"
struct note : must<quoted> {};

/// A phrase of one word: `stands`, `loose`.
struct nothing_more : pegtl::success {};

} // namespace rayfleck::grammar
