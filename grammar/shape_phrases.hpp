#pragma once
// Phrases of a part that cut its blank: tapers, edges, mitres, saw cuts, bores, grooves, rabbets, notches, curves.
//
// Each rule stands for what follows the first word of its phrase; the first word chooses the rule.

#include "grammar/arithmetic.hpp"
#include "grammar/place_phrases.hpp"

namespace rayfleck::grammar {

// taper SIDE [and SIDE...] face|faces to SIZE from POSITION to POSITION
//     taper inside faces to 22 from apron-low to floor
struct face_word : sor<word::faces, word::face> {};
struct taper : seq<opt<word::both>, must<sides, face_word, word::to, size, from_to>> {};

// chamfer SIZE on EDGES, bevel ANGLE on EDGES, round over SIZE on EDGES
//     chamfer 3 on all edges     bevel 15 degrees on top edges     round over 5 on front top edge
struct by_size : if_must<word::x, size> {};
struct profile_sizes : seq<size, star<by_size>> {};
struct chamfer : must<profile_sizes, word::on, edges> {};
struct round_over : must<word::over, profile_sizes, word::on, edges> {};

// mould PROFILE SIZE [x SIZE] on EDGES
//     mould ogee 12 x 8 on front top edge
struct profile : one_word_name {};
struct mould : must<profile, profile_sizes, word::on, edges> {};

// miter ANGLE at SIDE end [long to SIDE]
//     miter 45 degrees at left end long to front
struct long_to : if_must<word::long_, word::to, towards> {};
struct miter : seq<must<angle, word::at, side, word::end>, opt<long_to>> {};

// compound miter ANGLE and ANGLE at SIDE end [long to SIDE]
//     compound miter 31.6 and 26.1 degrees at left end
struct compound : seq<must<word::miter, angle, word::and_, angle, word::at, side, word::end>, opt<long_to>> {};

// crosscut SIDE end [at ANGLE towards SIDE] to POSITION; rip SIDE edge; resaw SIDE face
//     crosscut right end at 10 degrees towards top to 30 from right     resaw bottom face to 12 from top
struct at_angle : if_must<word::at, angle, word::towards, towards> {};
struct crosscut : seq<must<side, word::end>, opt<at_angle>, must<word::to, position>> {};
struct rip : seq<must<side, word::edge>, opt<at_angle>, must<word::to, position>> {};
struct resaw : seq<must<side, word::face>, opt<at_angle>, must<word::to, position>> {};

// bore SIZE [through | SIZE deep] in SIDE face at POSITION and POSITION [row of COUNT every SIZE across|deep|up]
//     bore 8 30 deep in front face at 37 from left and seam row of 5 every 32 up
struct deep_by : seq<size, word::deep> {};
struct bore_depth : sor<word::through, deep_by> {};
struct bore_row : if_must<word::row, word::of, count, word::every, size, direction> {};
struct bore : seq<must<size>, opt<bore_depth>,
                  must<word::in, side, word::face, word::at, position, word::and_, position>, opt<bore_row>> {};

// stopped SIZE [from SIDE] [and SIZE from SIDE]
//     stopped 30 from left and 20 from right
struct stop_side : if_must<word::from, side> {};
struct stop : seq<must<size>, opt<stop_side>> {};
struct stop_more : seq<word::and_, stop> {};
struct stops : seq<word::stopped, stop, opt<stop_more>> {};

// groove SIZE wide SIZE deep in SIDE face SIZE from SIDE [stopped ...]
//     groove 6 wide 8 deep in inside face 10 from bottom stopped 30
struct groove : seq<must<size, word::wide, size, word::deep, word::in, side, word::face, size, word::from, side>,
                    opt<stops>> {};

// rabbet SIZE wide SIZE deep on SIDE SIDE edge [stopped ...]
//     rabbet 10 wide 6 deep on back inside edge
struct rabbet : seq<must<size, word::wide, size, word::deep, word::on, edge>, opt<stops>> {};

// notch from POSITION to POSITION [and from POSITION to POSITION]
//     notch from left to 30 from left and from top to 20 from top
struct notch_more : if_must<word::and_, from_to> {};
struct notch : seq<must<from_to>, star<notch_more>> {};

// curve SIDE edge by SIZE [from POSITION to POSITION], or through points: along, waste depth
//     curve bottom edge by 30     curve top edge through (0, 0) (120, 30) (240, 0)
struct rise : if_must<word::by, size> {};
struct rise_and_reach : seq<rise, opt<from_to>> {};
struct pair_start : seq<one<'('>, gap> {};
struct pair : if_must<pair_start, size, point_comma, size, point_end> {};
struct pairs : seq<pair, star<pair>> {};
struct through_pairs : if_must<word::through, pairs> {};
struct curve_how : sor<rise_and_reach, through_pairs> {};
struct curve : must<side, word::edge, curve_how> {};

} // namespace rayfleck::grammar
