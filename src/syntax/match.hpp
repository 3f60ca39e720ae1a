#pragma once
// One stretch of text held against one rule of the grammar: what matched, as a tree of named pieces, or where
// it went wrong and what was expected there.
//
// This is the only door to the parsing library; what goes in and out is plain. Offsets are bytes of the whole
// text.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rayfleck::syntax {

/// The rules that a stretch may be held against; each covers the whole stretch after its first word.
enum class Entry {
    // phrases
    wood,
    sawn,
    rings,
    pith,
    bark,
    stock,
    sizes,
    labelled_size,
    grain,
    glued_up,
    carries,
    laminated,
    sapwood,
    note,
    nothing_more,
    runs,
    face,
    from,
    between,
    side_at,
    centred,
    set_back,
    overhanging,
    over,
    flush,
    tilt,
    turned_on_plan,
    taper,
    chamfer,
    round_over,
    mould,
    miter,
    compound,
    crosscut,
    rip,
    resaw,
    bore,
    groove,
    rabbet,
    notch,
    curve,
    outline_step,
    turned_station,
    // statements and their rows
    piece,
    units,
    climate,
    made,
    shop,
    bring,
    value,
    headings,
    size_row,
    require,
    rod,
    rod_line,
    part,
    copies,
    join,
    joint_option,
    hardware,
    accept,
    recipe,
    takes,
    make,
    given,
    kerf,
    allow,
    limit,
    title,
    sheet,
    projection,
    board,
    board_item,
    price,
    price_item,
    currency,
    keep,
    match,
    match_how,
    own_wood,
    wood_figure,
};

/// What a matched piece is. Rules of no interest to the tree leave no piece.
enum class Form {
    none,
    // arithmetic
    sum,
    product,
    sign,
    negated,
    number,
    feet,
    amount,
    unit,
    quoted,
    larger,
    smaller,
    middle,
    size_of,
    side_of,
    each,
    value_name,
    position,
    from_side,
    comparison,
    both,
    either,
    // names and words
    name,
    copy,
    part_name,
    words,
    word,
    which,
    side,
    direction,
    // pieces of phrases
    from_to,
    pair,
    point,
    second_part,
    size_labelled,
    at_most,
    counted,
    bark_faces,
    pith_place,
    load_unit,
    load_length,
    load_middle,
    on,
    between,
    of_part,
    all_round,
    tilt,
    edge,
    stop,
    deep_by,
    row,
    long_to,
    at_angle,
    rise,
    through_pairs,
    step_start,
    step_line,
    step_arc,
    step_curve,
    step_close,
    arc_through,
    arc_radius,
    smooth,
    turned_diameter,
    turned_square,
    // pieces of statements
    like_part,
    each_corner,
    each_of,
    left_and_right,
    front_and_back,
    top_and_bottom,
    row_of,
    spaced,
    named_line,
    even_lines,
    after,
    before,
    option_value,
    option_word,
    how_many,
    on_this,
    to_that,
    step,
    climate_range,
    temperature,
    moisture,
    shop_file,
    cell,
    board_stock,
    board_count,
    board_size,
    board_sawn,
    board_wood,
    board_rings,
    board_bark,
    board_sapwood,
    board_checks,
    board_flaw,
    flaw_box,
    price_stock,
    price_amount,
    price_lengths,
    price_widths,
    price_sheets,
    in_sequence,
    from_one_board,
    figure_unit,
};

/// A matched piece without the blanks behind it.
struct Piece {
    Form form = Form::none;
    std::size_t begin = 0;
    std::size_t end = 0;
    std::vector<Piece> parts;

    /// The first direct part of that form, or nullptr.
    const Piece* find(Form wanted) const;
    /// All direct parts of that form, in order.
    std::vector<const Piece*> all(Form wanted) const;
};

/// Where a stretch went wrong.
struct Missed {
    std::size_t at = 0;        ///< begin of what stands there, or the end of the stretch
    std::size_t token_end = 0; ///< end of the last token that was right
    std::string what;          ///< what was expected: `a size`
    std::string words;         ///< words that could have stood there, separated by blanks
    bool too_deep = false; ///< nothing was expected: more parentheses stood within each other than are read
};

struct Matched {
    Piece whole; ///< form none; its parts are the pieces
    std::optional<Missed> missed;
};

/// Holds bytes [begin, end) of the text against a rule.
/// `token_end`: end of the token before `begin`, for messages.
Matched match(Entry entry, std::string_view text, std::size_t begin, std::size_t end, std::size_t token_end);

} // namespace rayfleck::syntax
