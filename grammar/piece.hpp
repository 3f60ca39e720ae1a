#pragma once
// Statements about the whole piece: title, units, climate, other files, values, sizes, conditions, recipes.

#include "grammar/arithmetic.hpp"
#include "grammar/join.hpp"
#include "grammar/part.hpp"
#include "grammar/rod.hpp"

namespace rayfleck::grammar {

// piece TEXT
//     piece "Side table"
struct piece : must<quoted> {};

// units UNIT[, to SIZE]
//     units mm     units in, to 1/32
struct length_unit
    : sor<keyword<TAO_PEGTL_STRING("mm")>, keyword<TAO_PEGTL_STRING("cm")>, keyword<TAO_PEGTL_STRING("m")>,
          keyword<TAO_PEGTL_STRING("in")>, keyword<TAO_PEGTL_STRING("ft")>> {};
struct step : if_must<word::to, size> {};
struct step_after_comma : if_must<comma, step> {};
struct units : seq<must<length_unit>, opt<sor<step_after_comma, step>>> {};

// climate SIZE to SIZE humidity [at NUMBER C|F]; climate SIZE to SIZE moisture; climate REGION
//     climate 35% to 60% humidity at 20 C     climate 6% to 10% moisture     climate "heated house"
struct degrees_amount : seq<opt<one<'-'>>, decimal> {};
struct scale_letter : one<'C', 'F'> {};
struct scale : seq<scale_letter, not_at<word_goes_on>, gap> {};
struct degree_sign : seq<TAO_PEGTL_STRING("\xC2\xB0"), gap> {};
struct temperature : seq<must<degrees_amount>, gap, opt<degree_sign>, must<scale>> {};
struct at_temperature : seq<word::at, temperature> {};
struct by_humidity : seq<word::humidity, opt<at_temperature>> {};
struct by_moisture : word::moisture {};
struct humidity_or_moisture : sor<by_humidity, by_moisture> {};
struct climate_range : if_must<at<sor<digit, one<'('>>>, size, word::to, size, humidity_or_moisture> {};
struct region : name {};
struct climate_kinds : sor<climate_range, region> {};
struct climate : must<climate_kinds> {};

// made at SIZE moisture
//     made at 8% moisture
struct made : must<word::at, size, word::moisture> {};

// shop TEXT; shop file TEXT
//     shop "shop.fleck"     shop file "Hollow Lane Workshop"
struct shop_file : if_must<word::file, quoted> {};
struct shop_in : seq<quoted> {};
struct shop_kinds : sor<shop_file, shop_in> {};
struct shop : must<shop_kinds> {};

// bring in TEXT
//     bring in "doors.fleck"
struct bring : must<word::in, quoted> {};

// value NAME = SIZE
//     value leg-size = 38     value timber = "cherry"
struct value_new : one_word_name {};
struct value_given : seq<size> {};
struct value : must<value_new, equals, value_given> {};

// sizes, with a block: a line of headings, then a line for each size
//     name width depth
//     small 400 (360 + 20)
struct heading : one_word_name {};
struct headings_some : plus<heading> {};
struct headings : must<headings_some> {};
struct signed_number : seq<opt<one<'-'>>, number> {};
struct cell_number : seq<signed_number> {};
struct cell_name : one_word_name {};
struct cell : sor<parenthesised, cell_number, quoted, cell_name> {};
struct row_name : sor<quoted, one_word_name> {};
struct row_cells : star<cell> {};
struct size_row : seq<must<row_name>, row_cells> {};

// require CONDITION TEXT
//     require width >= 2 * leg-size "the aprons would not fit"
struct required : seq<condition> {};
struct require : must<required, quoted> {};

// recipe NAME, with a block of statements
//     recipe frame-and-panel door
struct recipe : must<new_name> {};

// takes NAME [= SIZE]
//     takes width, height, thickness = 20, timber = "cherry"
struct default_value : if_must<equals, value_given> {};
struct takes : seq<must<value_new>, opt<default_value>> {};

// make NAME from RECIPE
//     make upper door from frame-and-panel door
struct recipe_name : name {};
struct make : must<new_name, word::from, recipe_name> {};

// NAME [=] SIZE, a value given to the recipe
//     width 400     timber = "oak"
struct given : seq<must<value_new>, opt<equals>, must<value_given>> {};

} // namespace rayfleck::grammar
