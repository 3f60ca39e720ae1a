#pragma once
// Numbers, sizes, positions and conditions.
//
// A size is arithmetic. A position is a size after which `from SIDE` may stand: `30 from left`. The two are kept
// apart because many phrases go on with `from` after a size: `curve bottom edge by 30 from left to right`.
// A mixed number has no blanks (2-1/2), a subtraction has a blank on both sides (5 - 3); `5-3` is an error.

#include "grammar/words.hpp"

namespace rayfleck::grammar {

// ---- numbers

/// ¼ ½ ¾ and the thirds, fifths, sixths and eighths of Unicode's number forms.
struct vulgar : sor<pegtl::utf8::range<0xBC, 0xBE>, pegtl::utf8::range<0x2153, 0x215E>> {};
struct digits : plus<digit> {};
struct point_digits : seq<one<'.'>, digits> {};
struct decimal : seq<digits, opt<point_digits>> {};
struct fraction : seq<digits, one<'/'>, digits, not_at<point_digits>> {};
struct mixed : seq<digits, sor<seq<one<'-'>, sor<fraction, vulgar>>, vulgar>> {};
// An amount without unit.
//     12   6.5   1/3   17-5/8   ¾   2½
struct amount : sor<mixed, fraction, vulgar, decimal> {};

struct inch_mark : one<'"'> {};
struct feet : digits {};
struct feet_inches : seq<opt<one<'-'>>, amount, must<inch_mark>> {};
// Feet, with inches or without.
//     3'   3'6"   3'-6-1/2"
struct feet_number : seq<feet, one<'\''>, opt<feet_inches>> {};

struct side_ahead
    : seq<plus<one<' ', '\t'>>, sor<word::left, word::right, word::front, word::back, word::top, word::bottom,
                                    word::inside, word::outside, word::the>> {};
template <typename Text> struct unit_word : seq<Text, not_at<word_goes_on>> {};
struct unit_name
    : sor<unit_word<TAO_PEGTL_STRING("mm")>, unit_word<TAO_PEGTL_STRING("cm")>, unit_word<TAO_PEGTL_STRING("m")>,
          unit_word<TAO_PEGTL_STRING("in")>, unit_word<TAO_PEGTL_STRING("ft")>,
          unit_word<TAO_PEGTL_STRING("degrees")>, unit_word<TAO_PEGTL_STRING("degree")>,
          unit_word<TAO_PEGTL_STRING("deg")>, TAO_PEGTL_STRING("\xC2\xB0"), one<'%'>> {};
/// After a blank `in` may also be a word of the phrase: `bore 8 in front face`.
struct word_in : seq<unit_word<TAO_PEGTL_STRING("in")>, side_ahead> {};
struct unit : sor<inch_mark, unit_name> {};
struct spaced_unit : seq<plus<one<' ', '\t'>>, not_at<word_in>, unit_name> {};
struct attached_unit : seq<unit> {};

/// A number ends here: what follows would be read as part of it.
struct number_end : not_at<sor<letter_or_digit, vulgar, one<'-', '\'', '.'>>> {};
// A number with its unit, or without.
//     19mm   3/4in   2-1/2"   3'-6-1/2"   8 ft   35%   8°   12
struct number_inside : seq<sor<feet_number, seq<amount, opt<sor<attached_unit, spaced_unit>>>>, must<number_end>> {};
struct number : seq<number_inside, gap> {};

// ---- names of parts, sides and directions

// A side of a part or of the piece.
struct side_word
    : sor<word::left, word::right, word::front, word::back, word::top, word::bottom, word::inside, word::outside> {};
struct side : side_word {};
/// Where a face looks; up and down are said too.
struct towards : sor<side, word::up, word::down> {};
struct direction : sor<word::across, word::deep, word::up> {};

// A part, or one copy of it.
//     leg     long apron     leg at front-left     slat at left 2
struct copy_word : sor<seq<plus<digit>, not_at<word_goes_on>>, seq<not_at<ends_name>, plain_word>> {};
struct second_copy_word : seq<gap, copy_word> {};
struct copy_name : seq<copy_word, opt<second_copy_word>> {};
struct copy_clause : seq<word::at, copy_name, gap> {};
struct part_name : seq<name, opt<copy_clause>> {};

// ---- arithmetic

struct sum;
struct condition;
struct position;
struct operand;

struct open_parenthesis : seq<one<'('>, gap> {};
struct close_parenthesis : seq<one<')'>, gap> {};
struct between_parentheses : seq<condition> {};
struct parenthesised : if_must<open_parenthesis, between_parentheses, close_parenthesis> {};
struct negated_operand : seq<operand> {};
struct negated : if_must<one<'-'>, negated_operand> {};

struct first_of_two : seq<sum> {};
struct second_of_two : seq<sum> {};
// The larger or the smaller of two sizes.
//     larger of leg-size and 30
struct larger : if_must<seq<word::larger, word::of>, first_of_two, word::and_, second_of_two> {};
struct smaller : if_must<seq<word::smaller, word::of>, first_of_two, word::and_, second_of_two> {};
// Half way between two positions.
//     middle between left and right
struct middle : if_must<seq<word::middle, word::between>, first_of_two, word::and_, second_of_two> {};

struct size_word : sor<word::thickness, word::width, word::length> {};
/// A part whose size is meant; `thick`, `wide`, `deep` may follow, and then another size.
struct measured_part : seq<shorter_name, opt<copy_clause>> {};
// A size of a part.
//     thickness of leg     thickness of "top long rail"
struct size_of : if_must<seq<size_word, word::of>, measured_part> {};
// A face of a part as a position.
//     right of leg      inside of long apron
struct side_of : if_must<seq<side, word::of>, part_name> {};
/// The line for which this copy was made.
struct each : word::each {};
struct value_name : one_word_name {};

struct operand
    : sor<parenthesised, negated, number, quoted, larger, smaller, middle, size_of, side_of, each, value_name> {};

struct times : seq<one<'*', '/'>> {};
struct times_sign : seq<times, gap> {};
struct factor : seq<operand> {};
struct product_more : seq<times_sign, must<factor>> {};
struct product : seq<operand, star<product_more>> {};
struct plus_sign : one<'+'> {};
struct blank_after_minus : at<one<' ', '\t', '\n', '\r'>> {};
struct minus_sign : seq<one<'-'>, must<blank_after_minus>> {};
struct plus_or_minus : seq<sor<plus_sign, minus_sign>> {};
struct sum_sign : seq<plus_or_minus, gap> {};
struct term : seq<product> {};
struct sum_more : seq<sum_sign, must<term>> {};
struct sum : seq<product, star<sum_more>> {};

// A size.
//     20     leg-size - 2 * 4     larger of 3/4in and leg-size / 2
struct size : seq<sum> {};
struct angle : seq<sum> {};
struct count : seq<sum> {};

// A position: a line, a face, arithmetic with them, or a distance from a side of the part itself.
//     apron-top     front + 4     right of leg     30 from left
struct from_side : seq<word::from, opt<word::the>, side, not_at<word::of>> {};
struct position : seq<sum, opt<from_side>> {};

// A condition, in `require`.
//     width >= 2 * leg-size and height < 900
struct compare_sign
    : sor<TAO_PEGTL_STRING("<="), TAO_PEGTL_STRING(">="), TAO_PEGTL_STRING("<"), TAO_PEGTL_STRING(">"),
          TAO_PEGTL_STRING("=")> {};
struct compared : seq<sum> {};
struct comparison_more : seq<compare_sign, gap, must<compared>> {};
struct compared_first : seq<sum, opt<from_side>> {};
struct comparison : seq<compared_first, opt<comparison_more>> {};
struct both_condition : seq<comparison> {};
struct both_more : seq<word::and_, must<both_condition>> {};
struct both : seq<comparison, star<both_more>> {};
struct either_condition : seq<both> {};
struct either_more : seq<word::or_, must<either_condition>> {};
struct condition : seq<both, star<either_more>> {};

// ---- stretches, edges

struct from_position : seq<position> {};
struct to_position : seq<position> {};
// A stretch between two positions.
//     from apron-low to floor
struct from_to : if_must<word::from, from_position, word::to, to_position> {};

// Edges of a part: all of them, the long ones, those at the ends, all round a face, or where two faces meet.
//     all edges     long edges     top edges     front top edge     front top edge and back top edge
struct edge_word : sor<word::edges, word::edge> {};
struct edge_group : sor<word::all, word::long_, word::end> {};
struct edge : sor<if_must<edge_group, edge_word>, seq<side, opt<side>, must<edge_word>>> {};
struct next_edge : seq<edge> {};
struct edge_more : if_must<word::and_, next_edge> {};
struct edges : seq<edge, star<edge_more>> {};

} // namespace rayfleck::grammar
