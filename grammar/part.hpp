#pragma once
// The header of a part, and copies.

#include "grammar/arithmetic.hpp"

namespace rayfleck::grammar {

// part NAME [like PART]
//     part long apron     part short apron like long apron
struct new_name : name {};
struct like_part : if_must<word::like, part_name> {};
struct part : seq<must<new_name>, opt<like_part>> {};

// at each corner
struct each_corner : word::corner {};
// at each of LINE and LINE
//     at each of shelf-1 and shelf-2
struct line_name : one_word_name {};
struct line_more : if_must<word::and_, line_name> {};
struct each_of : seq<if_must<word::of, line_name>, star<line_more>> {};
struct corner_or_lines : sor<each_corner, each_of> {};
struct at_each : if_must<word::at, word::each, corner_or_lines> {};
// left and right, front and back, top and bottom
struct left_and_right : if_must<word::left, word::and_, word::right> {};
struct front_and_back : if_must<word::front, word::and_, word::back> {};
struct top_and_bottom : if_must<word::top, word::and_, word::bottom> {};
// row of COUNT across|deep|up [from POSITION to POSITION | spaced SIZE]
//     row of 5 across from left to right
struct row_spaced : if_must<word::spaced, size> {};
struct row_reach : sor<row_spaced, from_to> {};
struct row : seq<if_must<word::row, word::of, count, direction>, opt<row_reach>> {};

struct copies_kinds : sor<at_each, left_and_right, front_and_back, top_and_bottom, row> {};
struct copies : must<copies_kinds> {};

} // namespace rayfleck::grammar
