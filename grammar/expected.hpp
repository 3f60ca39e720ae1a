#pragma once
// What is expected where a text goes wrong: for every rule that must match, the words of the message.
//
// The message is put together as `expected WHAT after 'wide', not 'deep'`. Words given as second text are offered
// when the one that stands there is nearly one of them. A keyword that must match needs no entry: it is expected
// itself. A rule that must match and has no entry does not compile.

#include <string_view>

#include "grammar/board_phrases.hpp"
#include "grammar/join.hpp"
#include "grammar/outline.hpp"
#include "grammar/part.hpp"
#include "grammar/piece.hpp"
#include "grammar/place_phrases.hpp"
#include "grammar/rod.hpp"
#include "grammar/shape_phrases.hpp"
#include "grammar/shop.hpp"

namespace rayfleck::grammar {

struct Expected {
    std::string_view what;
    std::string_view words = {};
};

template <typename Rule> inline constexpr Expected expected{};

// clang-format off

// Words and numbers.
template <> inline constexpr Expected expected<line_end>{"a comma or the end of the line"};
template <> inline constexpr Expected expected<quote_end>{"a closing '\"' on the same line"};
template <> inline constexpr Expected expected<quoted>{"a text in double quotes"};
template <> inline constexpr Expected expected<inch_mark>{"the inch mark '\"' behind feet and inches"};
template <> inline constexpr Expected expected<number_end>{"a unit (mm, cm, m, in, ft, \", degrees, %) or a blank", "mm cm m in ft deg degrees"};
template <> inline constexpr Expected expected<blank_after_minus>{"a blank on both sides of the minus"};
template <> inline constexpr Expected expected<close_parenthesis>{"')'"};
template <> inline constexpr Expected expected<words>{"a name"};

// Arithmetic.
template <> inline constexpr Expected expected<size>{"a size"};
template <> inline constexpr Expected expected<angle>{"an angle"};
template <> inline constexpr Expected expected<count>{"a number"};
template <> inline constexpr Expected expected<term>{"a size"};
template <> inline constexpr Expected expected<factor>{"a number"};
template <> inline constexpr Expected expected<negated_operand>{"a number right behind the minus"};
template <> inline constexpr Expected expected<between_parentheses>{"a size"};
template <> inline constexpr Expected expected<first_of_two>{"a size"};
template <> inline constexpr Expected expected<second_of_two>{"a size"};
template <> inline constexpr Expected expected<compared>{"a size"};
template <> inline constexpr Expected expected<both_condition>{"a condition"};
template <> inline constexpr Expected expected<either_condition>{"a condition"};
template <> inline constexpr Expected expected<position>{"a position"};
template <> inline constexpr Expected expected<from_position>{"a position"};
template <> inline constexpr Expected expected<to_position>{"a position"};
template <> inline constexpr Expected expected<from_to>{"'from', a position, 'to' and a position", "from"};
template <> inline constexpr Expected expected<equals>{"'='"};

// Parts, sides, directions.
template <> inline constexpr Expected expected<part_name>{"the name of a part"};
template <> inline constexpr Expected expected<measured_part>{"the name of a part"};
template <> inline constexpr Expected expected<second_part>{"the name of a part"};
template <> inline constexpr Expected expected<receiving_part>{"the name of a part"};
template <> inline constexpr Expected expected<new_name>{"a name"};
template <> inline constexpr Expected expected<recipe_name>{"the name of a recipe"};
template <> inline constexpr Expected expected<side>{"a side: left, right, front, back, top, bottom, inside or outside", "left right front back top bottom inside outside"};
template <> inline constexpr Expected expected<towards>{"a side: left, right, front, back, up, down, inside or outside", "left right front back top bottom inside outside up down"};
template <> inline constexpr Expected expected<sides>{"a side: left, right, front, back, top, bottom, inside or outside", "left right front back top bottom inside outside"};
template <> inline constexpr Expected expected<direction>{"a direction: across, deep or up", "across deep up"};
template <> inline constexpr Expected expected<edges>{"edges: all edges, long edges, end edges, top edges or front top edge", "all long end left right front back top bottom inside outside"};
template <> inline constexpr Expected expected<edge>{"an edge: back inside edge", "left right front back top bottom inside outside"};
template <> inline constexpr Expected expected<next_edge>{"edges", "left right front back top bottom inside outside"};
template <> inline constexpr Expected expected<edge_word>{"'edge' or 'edges'", "edge edges"};

// What a board is.
template <> inline constexpr Expected expected<wood_name>{"the name of a wood"};
template <> inline constexpr Expected expected<beyond_or_from>{"'beyond' or 'from', and a side", "beyond from"};
template <> inline constexpr Expected expected<face_or_edge>{"'face' or 'edge'", "face edge"};
template <> inline constexpr Expected expected<stock_name>{"a stock such as 8/4 or 2x4"};
template <> inline constexpr Expected expected<sizes_or_label>{"'x' and the next size, or thick, wide or long", "thick wide long"};
template <> inline constexpr Expected expected<which_size>{"thick, wide or long", "thick wide long"};
template <> inline constexpr Expected expected<word::x>{"'x'"};
template <> inline constexpr Expected expected<staves>{"'staves' or how many", "staves"};
template <> inline constexpr Expected expected<alternating_or_together>{"'alternating' or 'together'", "alternating together"};

// Where it stands.
template <> inline constexpr Expected expected<side_or_edge>{"'side' or 'edge'", "side edge"};
template <> inline constexpr Expected expected<point_start>{"'(' and three positions: across, deep, up"};
template <> inline constexpr Expected expected<point_comma>{"','"};
template <> inline constexpr Expected expected<point_end>{"')'"};
template <> inline constexpr Expected expected<on_something>{"a position or the name of a part"};
template <> inline constexpr Expected expected<centred_any>{"'on', 'between' or a direction", "on between across deep up"};
template <> inline constexpr Expected expected<overhang_where>{"'all round', or 'at' and a side", "all at"};

// How it is cut.
template <> inline constexpr Expected expected<face_word>{"'faces' or 'face'", "face faces"};
template <> inline constexpr Expected expected<profile_sizes>{"a size"};
template <> inline constexpr Expected expected<profile>{"a profile: ovolo, ogee, cove, bead", "ovolo ogee cove bead"};
template <> inline constexpr Expected expected<curve_how>{"'by' and the rise, or 'through' and points", "by through"};
template <> inline constexpr Expected expected<pairs>{"points: (along, deep) (along, deep)"};
template <> inline constexpr Expected expected<outline_step_kinds>{"start, line to, arc to, curve to or close", "start line arc curve close"};
template <> inline constexpr Expected expected<arc_how>{"'through' and a point, or 'radius' and a size", "through radius"};
template <> inline constexpr Expected expected<left_or_right>{"'left' or 'right', seen along the way", "left right"};
template <> inline constexpr Expected expected<turned_station_kinds>{"'diameter' or 'square to'", "diameter square"};

// Statements.
template <> inline constexpr Expected expected<corner_or_lines>{"'corner', or 'of' and the names of lines", "corner of"};
template <> inline constexpr Expected expected<copies_kinds>{"copies (at each corner, left and right, front and back, top and bottom, row of)", "at left front top row"};
template <> inline constexpr Expected expected<line_name>{"the name of a line"};
template <> inline constexpr Expected expected<lines_word>{"'lines'", "lines"};
template <> inline constexpr Expected expected<rod_line_kinds>{"a line: its name and where it stands"};
template <> inline constexpr Expected expected<joint_kind>{"a joint such as mortise and tenon"};
template <> inline constexpr Expected expected<option_items>{"an option of the joint"};
template <> inline constexpr Expected expected<hardware_item>{"how many off, or 'on' and the part", "on to"};
template <> inline constexpr Expected expected<check_name>{"the name of a check"};
template <> inline constexpr Expected expected<length_unit>{"a unit: mm, cm, m, in or ft", "mm cm m in ft"};
template <> inline constexpr Expected expected<step>{"'to' and the finest size", "to"};
template <> inline constexpr Expected expected<climate_kinds>{"a range such as 35% to 60% humidity, or the name of a region"};
template <> inline constexpr Expected expected<humidity_or_moisture>{"'humidity' or 'moisture'", "humidity moisture"};
template <> inline constexpr Expected expected<load_or_books>{"a weight such as 25 kg, or books", "books"};
template <> inline constexpr Expected expected<kg_or_lb>{"kg or lb", "kg lb"};
template <> inline constexpr Expected expected<m_or_ft>{"m or ft", "m ft"};
template <> inline constexpr Expected expected<degrees_amount>{"a temperature such as 20 C"};
template <> inline constexpr Expected expected<scale>{"C or F"};
template <> inline constexpr Expected expected<shop_kinds>{"the shop's file in double quotes, or 'file' and the shop's name", "file"};
template <> inline constexpr Expected expected<value_new>{"a name of one word"};
template <> inline constexpr Expected expected<value_given>{"a size or a text in double quotes"};
template <> inline constexpr Expected expected<headings_some>{"the headings: name and one word for each column"};
template <> inline constexpr Expected expected<row_name>{"the name of this size"};
template <> inline constexpr Expected expected<matched_part>{"the name of a part"};
template <> inline constexpr Expected expected<how_matched>{"'in sequence', 'book-matched' or 'from one board'", "in book-matched from"};
template <> inline constexpr Expected expected<required>{"a condition"};

// The shop file.
template <> inline constexpr Expected expected<saw_name>{"the name of the saw"};
template <> inline constexpr Expected expected<purpose>{"what it is for: planing, jointing, end trim"};
template <> inline constexpr Expected expected<machine_and_measure>{"the machine and what of it: planer width"};
template <> inline constexpr Expected expected<title_field>{"the field of the title block"};
template <> inline constexpr Expected expected<sheet_name>{"a sheet size such as A3"};
template <> inline constexpr Expected expected<first_or_third>{"'first' or 'third'", "first third"};
template <> inline constexpr Expected expected<board_id>{"the mark on the board"};
template <> inline constexpr Expected expected<board_item_kinds>{"a wood, a stock, a size, how it was sawn, how many off, or what is seen on the board"};
template <> inline constexpr Expected expected<flaw_where>{"a size and where its middle is, or 'from' and 'to'", "from"};
template <> inline constexpr Expected expected<comma>{"','"};
template <> inline constexpr Expected expected<price_item_kinds>{"an amount, how it was sawn, widths, lengths or sheets", "widths lengths sheets flat rift quarter"};
template <> inline constexpr Expected expected<own_wood_name>{"the name of the wood"};
template <> inline constexpr Expected expected<figure_words>{"hardwood, softwood or a figure such as radial shrinkage 4.2 %"};
template <> inline constexpr Expected expected<price_unit>{"what the price is per: board foot, m3, piece"};

// clang-format on

} // namespace rayfleck::grammar
