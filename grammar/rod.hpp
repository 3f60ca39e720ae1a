#pragma once
// Rods and their lines.

#include "grammar/arithmetic.hpp"
#include "grammar/part.hpp"

namespace rayfleck::grammar {

// rod across|deep|up
struct rod : must<direction> {};

// NAME POSITION, NAME = POSITION, NAME SIZE after|before NAME
//     left 0     seam = middle between left and right     rail 30 after left     stile 40 before right
struct equals : seq<one<'='>, gap> {};
struct line_after : if_must<word::after, line_name> {};
struct line_before : if_must<word::before, line_name> {};
struct named_line : seq<line_name, opt<equals>, must<size>, opt<sor<line_after, line_before>>> {};
// COUNT lines NAME between POSITION and POSITION
//     2 lines shelf between floor and top
struct lines_word : sor<word::lines, word::line> {};
struct counted_by_name : seq<one_word_name, lines_word> {};
struct counted_ahead : at<sor<digit, one<'('>, counted_by_name>> {};
struct even_lines : if_must<counted_ahead, count, lines_word, line_name, word::between, size, word::and_, size> {};
struct rod_line_kinds : sor<even_lines, named_line> {};
struct rod_line : must<rod_line_kinds> {};

} // namespace rayfleck::grammar
