#pragma once
// Phrases of a part that say where it stands: which way it runs, between what, from where to where, at what angle.
//
// Each rule stands for what follows the first word of its phrase; the first word chooses the rule.

#include "grammar/arithmetic.hpp"

namespace rayfleck::grammar {

// runs across|deep|up
//     runs across
struct runs : must<direction> {};

// face side|edge SIDE
//     face side front     face edge up
struct side_or_edge : sor<keyword<TAO_PEGTL_STRING("side")>, word::edge> {};
struct face : must<side_or_edge, towards> {};

// from POSITION to POSITION; or from point (P, P, P) to point (P, P, P): across, deep, up
//     from apron-low to apron-top     from point (0, 0, 0) to point (300, 0, 400)
struct point_comma : seq<one<','>, gap> {};
struct point_start : seq<one<'('>, gap> {};
struct point_end : seq<one<')'>, gap> {};
struct point : must<point_start, position, point_comma, position, point_comma, position, point_end> {};
struct point_from : seq<point> {};
struct point_to : seq<point> {};
struct point_word : seq<word::point, at<one<'('>>> {};
struct point_to_point : seq<point_word, point_from, must<word::to, word::point>, point_to> {};
struct stretch : must<from_position, word::to, to_position> {};
struct from : sor<point_to_point, stretch> {};

// between PART [and PART] [across|deep|up]; one name: between its copies
//     between leg     between side at left and divider     between leg across
struct second_part : seq<part_name> {};
struct and_part : if_must<word::and_, second_part> {};
struct between : seq<must<part_name>, opt<and_part>, opt<direction>> {};

// SIDE at POSITION
//     top at apron-top     left at right of leg     front at front + 4
struct side_at : must<word::at, position> {};

// centred [across|deep|up] [on POSITION | on PART [across|deep|up] | between POSITION and POSITION]
//     centred on seam     centred between left and seam     centred across     centred on leg deep
struct centred_end : sor<pegtl::eof, direction> {};
struct centred_part : seq<part_name, opt<direction>> {};
struct on_part : seq<at<part_name, centred_end>, centred_part> {};
struct on_something : sor<on_part, position> {};
struct centred_on : if_must<word::on, on_something> {};
struct centred_between : if_must<word::between, from_position, word::and_, to_position> {};
struct centred_how : sor<centred_on, centred_between> {};
struct centred_direction : seq<direction, opt<centred_how>> {};
struct centred_any : sor<centred_direction, centred_how> {};
struct centred : must<centred_any> {};

// set back SIZE from SIDE [of PART]
//     set back 4 from outside of leg
struct of_part : if_must<word::of, part_name> {};
struct set_back : seq<must<word::back, size, word::from>, opt<word::the>, must<side>, opt<of_part>> {};

// overhanging PART by SIZE all round | at SIDE [and SIDE...]
//     overhanging leg by 30 all round     overhanging case by 10 at front and left and right
struct side_more : if_must<word::and_, side> {};
struct sides : seq<side, star<side_more>> {};
struct all_round : if_must<word::all, word::round> {};
struct at_sides : if_must<word::at, sides> {};
struct overhang_where : sor<all_round, at_sides> {};
struct overhanging : must<part_name, word::by, size, overhang_where> {};

// over PART, under PART
//     over apron     under top
struct over : must<part_name> {};

// flush with SIDE of PART
//     flush with front of leg
struct flush : seq<must<word::with>, opt<word::the>, must<side, word::of, part_name>> {};

// splayed|raked|canted ANGLE SIDE [and ANGLE SIDE]
//     splayed 8 degrees left and 6 degrees front     canted 15 degrees outside
struct tilt_by : must<angle, side> {};
struct tilt_more : seq<word::and_, tilt_by> {};
struct tilt : seq<tilt_by, star<tilt_more>> {};

// turned ANGLE: about the upright
//     turned 45 degrees
struct turned_on_plan : must<angle> {};

} // namespace rayfleck::grammar
