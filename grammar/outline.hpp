#pragma once
// The lines under `outline` and under `turned`.
//
// An outline is drawn on the face of the blank: along the length, across the width, from the low corner. A turned
// profile is diameters at distances from the low end of the length. One step stands on each line.

#include "grammar/arithmetic.hpp"
#include "grammar/place_phrases.hpp"

namespace rayfleck::grammar {

struct along_across : must<size, point_comma, size> {};

// start X, Y
//     start 0, 0
struct step_start : seq<word::start, along_across> {};
// line to X, Y
//     line to 400, 0
struct step_line : seq<word::line, must<word::to>, along_across> {};
// arc to X, Y through X, Y; arc to X, Y radius SIZE bulging left|right
//     arc to 400, 60 through 420, 30     arc to 400, 60 radius 40 bulging left
struct arc_through : seq<word::through, along_across> {};
struct left_or_right : sor<word::left, word::right> {};
struct arc_radius : if_must<word::radius, size, word::bulging, left_or_right> {};
struct arc_how : sor<arc_through, arc_radius> {};
struct step_arc : seq<word::arc, must<word::to>, along_across, must<arc_how>> {};
// curve to X, Y through X, Y; X, Y
//     curve to 0, 60 through 300, 80; 100, 40
struct semicolon : seq<one<';'>, gap> {};
struct curve_more : seq<semicolon, along_across> {};
struct step_curve
    : seq<word::curve, must<word::to>, along_across, must<word::through>, along_across, star<curve_more>> {};
// close
struct step_close : word::close {};
struct outline_step_kinds : sor<step_start, step_line, step_arc, step_curve, step_close> {};
struct outline_step : must<outline_step_kinds> {};

// diameter SIZE at SIZE [smooth]
//     diameter 40 at 0 smooth
struct turned_smooth : word::smooth {};
struct turned_diameter : seq<if_must<word::diameter, size, word::at, size>, opt<turned_smooth>> {};
// square to SIZE
//     square to 60
struct turned_square : if_must<word::square, word::to, size> {};
struct turned_station_kinds : sor<turned_diameter, turned_square> {};
struct turned_station : must<turned_station_kinds> {};

} // namespace rayfleck::grammar
