// The parsing library's side of the syntax: runs a rule over a stretch and keeps the pieces that the tree
// needs.
//
// Pieces are kept on a stack, in the order of the text. A rule that leaves a piece remembers where it began;
// when it matches, the pieces that begin behind that place become its parts. An alternative that was tried
// and given up needs no care of its own: the text is then read again from an earlier place, and whatever lies
// on the stack from that place on is stale and dropped. A rule that must match and does not throws Missed
// with a byte offset: lines and columns are nobody's business before a message is shown.
//
// Gaps are kept in the same way, so that a message can point right behind the last token, and a piece ends
// with its last token and not with the blanks behind it.

#include "syntax/match.hpp"

#include <algorithm>
#include <iterator>
#include <type_traits>
#include <utility>

#include "syntax/entries.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::syntax {

const Piece* Piece::find(Form wanted) const {
    for (const Piece& part : parts)
        if (part.form == wanted) return &part;
    return nullptr;
}

std::vector<const Piece*> Piece::all(Form wanted) const {
    std::vector<const Piece*> out;
    for (const Piece& part : parts)
        if (part.form == wanted) out.push_back(&part);
    return out;
}

namespace {

namespace pegtl = tao::pegtl;

// ---- which rules leave a piece
// ------------------------------------------------------------------------------------

template <typename Rule> constexpr Form form_of = Form::none;
// clang-format off
template <> constexpr Form form_of<grammar::sum> = Form::sum;
template <> constexpr Form form_of<grammar::product> = Form::product;
template <> constexpr Form form_of<grammar::plus_or_minus> = Form::sign;
template <> constexpr Form form_of<grammar::times> = Form::sign;
template <> constexpr Form form_of<grammar::compare_sign> = Form::sign;
template <> constexpr Form form_of<grammar::negated> = Form::negated;
template <> constexpr Form form_of<grammar::number_inside> = Form::number;
template <> constexpr Form form_of<grammar::signed_number> = Form::cell;
template <> constexpr Form form_of<grammar::feet> = Form::feet;
template <> constexpr Form form_of<grammar::amount> = Form::amount;
template <> constexpr Form form_of<grammar::degrees_amount> = Form::amount;
template <> constexpr Form form_of<grammar::load_amount> = Form::amount;
template <> constexpr Form form_of<grammar::kg_or_lb> = Form::load_unit;
template <> constexpr Form form_of<grammar::m_or_ft> = Form::load_length;
template <> constexpr Form form_of<grammar::load_in_the_middle> = Form::load_middle;
template <> constexpr Form form_of<grammar::unit> = Form::unit;
template <> constexpr Form form_of<grammar::unit_name> = Form::unit;
template <> constexpr Form form_of<grammar::quoted_inside> = Form::quoted;
template <> constexpr Form form_of<grammar::larger> = Form::larger;
template <> constexpr Form form_of<grammar::smaller> = Form::smaller;
template <> constexpr Form form_of<grammar::middle> = Form::middle;
template <> constexpr Form form_of<grammar::size_of> = Form::size_of;
template <> constexpr Form form_of<grammar::side_of> = Form::side_of;
template <> constexpr Form form_of<grammar::each> = Form::each;
template <> constexpr Form form_of<grammar::value_name> = Form::value_name;
template <> constexpr Form form_of<grammar::cell_name> = Form::value_name;
template <> constexpr Form form_of<grammar::position> = Form::position;
template <> constexpr Form form_of<grammar::from_position> = Form::position;
template <> constexpr Form form_of<grammar::to_position> = Form::position;
template <> constexpr Form form_of<grammar::compared_first> = Form::position;
template <> constexpr Form form_of<grammar::from_side> = Form::from_side;
template <> constexpr Form form_of<grammar::comparison> = Form::comparison;
template <> constexpr Form form_of<grammar::both> = Form::both;
template <> constexpr Form form_of<grammar::condition> = Form::either;
template <> constexpr Form form_of<grammar::required> = Form::either;

template <> constexpr Form form_of<grammar::name_words> = Form::name;
template <> constexpr Form form_of<grammar::shorter_name_words> = Form::name;
template <> constexpr Form form_of<grammar::name_word> = Form::name;
template <> constexpr Form form_of<grammar::copy_name> = Form::copy;
template <> constexpr Form form_of<grammar::part_name> = Form::part_name;
template <> constexpr Form form_of<grammar::measured_part> = Form::part_name;
template <> constexpr Form form_of<grammar::words_inside> = Form::words;
template <> constexpr Form form_of<grammar::stock_words> = Form::words;
template <> constexpr Form form_of<grammar::price_stock_word> = Form::words;
template <> constexpr Form form_of<grammar::side> = Form::side;
template <> constexpr Form form_of<grammar::towards> = Form::side;
template <> constexpr Form form_of<grammar::direction> = Form::direction;
template <> constexpr Form form_of<grammar::pith_place> = Form::pith_place;
template <> constexpr Form form_of<grammar::beyond_or_from> = Form::which;
template <> constexpr Form form_of<grammar::face_or_edge> = Form::which;
template <> constexpr Form form_of<grammar::side_or_edge> = Form::which;
template <> constexpr Form form_of<grammar::which_size> = Form::which;
template <> constexpr Form form_of<grammar::size_word> = Form::which;
template <> constexpr Form form_of<grammar::alternating_or_together> = Form::which;
template <> constexpr Form form_of<grammar::sawn_kind> = Form::which;
template <> constexpr Form form_of<grammar::first_or_third> = Form::which;
template <> constexpr Form form_of<grammar::left_or_right> = Form::which;
template <> constexpr Form form_of<grammar::edge_group> = Form::which;
template <> constexpr Form form_of<grammar::length_unit> = Form::which;
template <> constexpr Form form_of<grammar::scale_letter> = Form::which;

template <> constexpr Form form_of<grammar::from_to> = Form::from_to;
template <> constexpr Form form_of<grammar::stretch> = Form::from_to;
template <> constexpr Form form_of<grammar::pair> = Form::pair;
template <> constexpr Form form_of<grammar::along_across> = Form::pair;
template <> constexpr Form form_of<grammar::point> = Form::point;
template <> constexpr Form form_of<grammar::second_part> = Form::second_part;
template <> constexpr Form form_of<grammar::size_labelled> = Form::size_labelled;
template <> constexpr Form form_of<grammar::at_most> = Form::at_most;
template <> constexpr Form form_of<grammar::counted_staves> = Form::counted;
template <> constexpr Form form_of<grammar::bark_faces> = Form::bark_faces;
template <> constexpr Form form_of<grammar::centred_on> = Form::on;
template <> constexpr Form form_of<grammar::centred_between> = Form::between;
template <> constexpr Form form_of<grammar::of_part> = Form::of_part;
template <> constexpr Form form_of<grammar::all_round> = Form::all_round;
template <> constexpr Form form_of<grammar::tilt_by> = Form::tilt;
template <> constexpr Form form_of<grammar::edge> = Form::edge;
template <> constexpr Form form_of<grammar::next_edge> = Form::none;
template <> constexpr Form form_of<grammar::stop> = Form::stop;
template <> constexpr Form form_of<grammar::deep_by> = Form::deep_by;
template <> constexpr Form form_of<grammar::bore_row> = Form::row;
template <> constexpr Form form_of<grammar::long_to> = Form::long_to;
template <> constexpr Form form_of<grammar::at_angle> = Form::at_angle;
template <> constexpr Form form_of<grammar::rise> = Form::rise;
template <> constexpr Form form_of<grammar::through_pairs> = Form::through_pairs;
template <> constexpr Form form_of<grammar::step_start> = Form::step_start;
template <> constexpr Form form_of<grammar::step_line> = Form::step_line;
template <> constexpr Form form_of<grammar::step_arc> = Form::step_arc;
template <> constexpr Form form_of<grammar::step_curve> = Form::step_curve;
template <> constexpr Form form_of<grammar::step_close> = Form::step_close;
template <> constexpr Form form_of<grammar::arc_through> = Form::arc_through;
template <> constexpr Form form_of<grammar::arc_radius> = Form::arc_radius;
template <> constexpr Form form_of<grammar::turned_smooth> = Form::smooth;
template <> constexpr Form form_of<grammar::turned_diameter> = Form::turned_diameter;
template <> constexpr Form form_of<grammar::turned_square> = Form::turned_square;

template <> constexpr Form form_of<grammar::like_part> = Form::like_part;
template <> constexpr Form form_of<grammar::each_corner> = Form::each_corner;
template <> constexpr Form form_of<grammar::each_of> = Form::each_of;
template <> constexpr Form form_of<grammar::left_and_right> = Form::left_and_right;
template <> constexpr Form form_of<grammar::front_and_back> = Form::front_and_back;
template <> constexpr Form form_of<grammar::top_and_bottom> = Form::top_and_bottom;
template <> constexpr Form form_of<grammar::row> = Form::row_of;
template <> constexpr Form form_of<grammar::row_spaced> = Form::spaced;
template <> constexpr Form form_of<grammar::named_line> = Form::named_line;
template <> constexpr Form form_of<grammar::even_lines> = Form::even_lines;
template <> constexpr Form form_of<grammar::line_after> = Form::after;
template <> constexpr Form form_of<grammar::line_before> = Form::before;
template <> constexpr Form form_of<grammar::option_value> = Form::option_value;
template <> constexpr Form form_of<grammar::option_word> = Form::option_word;
template <> constexpr Form form_of<grammar::how_many_off> = Form::how_many;
template <> constexpr Form form_of<grammar::on_this> = Form::on_this;
template <> constexpr Form form_of<grammar::to_that> = Form::to_that;
template <> constexpr Form form_of<grammar::step> = Form::step;
template <> constexpr Form form_of<grammar::climate_range> = Form::climate_range;
template <> constexpr Form form_of<grammar::temperature> = Form::temperature;
template <> constexpr Form form_of<grammar::by_moisture> = Form::moisture;
template <> constexpr Form form_of<grammar::shop_file> = Form::shop_file;
template <> constexpr Form form_of<grammar::board_stock_letters> = Form::board_stock;
template <> constexpr Form form_of<grammar::board_count> = Form::board_count;
template <> constexpr Form form_of<grammar::board_size> = Form::board_size;
template <> constexpr Form form_of<grammar::board_sawn> = Form::board_sawn;
template <> constexpr Form form_of<grammar::board_wood> = Form::board_wood;
template <> constexpr Form form_of<grammar::board_rings> = Form::board_rings;
template <> constexpr Form form_of<grammar::board_bark> = Form::board_bark;
template <> constexpr Form form_of<grammar::board_sapwood> = Form::board_sapwood;
template <> constexpr Form form_of<grammar::board_checks> = Form::board_checks;
template <> constexpr Form form_of<grammar::board_flaw> = Form::board_flaw;
template <> constexpr Form form_of<grammar::flaw_box> = Form::flaw_box;
template <> constexpr Form form_of<grammar::bark_or_heart> = Form::word;
template <> constexpr Form form_of<grammar::flaw_kind> = Form::word;
template <> constexpr Form form_of<grammar::in_sequence> = Form::in_sequence;
template <> constexpr Form form_of<grammar::from_one_board> = Form::from_one_board;
template <> constexpr Form form_of<grammar::price_stock> = Form::price_stock;
template <> constexpr Form form_of<grammar::price_amount> = Form::price_amount;
template <> constexpr Form form_of<grammar::price_widths> = Form::price_widths;
template <> constexpr Form form_of<grammar::price_sheets> = Form::price_sheets;
template <> constexpr Form form_of<grammar::figure_amount> = Form::amount;
template <> constexpr Form form_of<grammar::figure_unit> = Form::figure_unit;
template <> constexpr Form form_of<grammar::price_lengths> = Form::price_lengths;
// clang-format on

// ---- the run
// --------------------------------------------------------------------------------------------------------

/// A stretch of blanks and comments.
struct Gap {
    std::size_t begin, end;
};

/// What is known while a rule runs.
struct Run {
    const char* text;
    std::size_t begin;     ///< of the stretch that is read
    std::size_t token_end; ///< end of the token before `begin`
    int depth = 0;
    std::vector<Piece> pieces = {};
    /// Where the rules began that are running now and leave a piece.
    std::vector<std::size_t> begun = {};
    std::vector<Gap> gaps = {};

    template <typename Input> std::size_t offset(const Input& in) const {
        return static_cast<std::size_t>(in.current() - text);
    }
    /// Reading stands at `at`; what was kept from there on was given up or looked ahead.
    void drop_from(std::size_t at) {
        while (!pieces.empty() && pieces.back().begin >= at) pieces.pop_back();
    }
    /// End of the last token before `at`.
    std::size_t token_end_at(std::size_t at) {
        while (!gaps.empty() && gaps.back().end > at) gaps.pop_back();
        const std::size_t end = !gaps.empty() && gaps.back().end == at ? gaps.back().begin : at;
        return end == begin ? token_end : end;
    }
    /// `passes_on`: with one part only, the part stands for the whole.
    void keep(Form form, bool passes_on, std::size_t at) {
        const std::size_t from = begun.back();
        begun.pop_back();
        drop_from(at);
        if (at == from) return; // nothing was read
        auto first = pieces.end();
        while (first != pieces.begin() && std::prev(first)->begin >= from) --first;
        if (passes_on && pieces.end() - first == 1) return;
        Piece piece;
        piece.form = form;
        piece.begin = from;
        piece.end = std::max(from, token_end_at(at));
        piece.parts.assign(std::make_move_iterator(first), std::make_move_iterator(pieces.end()));
        pieces.erase(first, pieces.end());
        pieces.push_back(std::move(piece));
    }
};

/// Rules whose piece, when it has one part only, says no more than the part does: most products and
/// conditions.
template <typename Rule> constexpr bool passes_on = false;
template <> constexpr bool passes_on<grammar::product> = true;
template <> constexpr bool passes_on<grammar::compared_first> = true;
template <> constexpr bool passes_on<grammar::comparison> = true;
template <> constexpr bool passes_on<grammar::both> = true;
template <> constexpr bool passes_on<grammar::condition> = true;

/// Rules below the level of words, which leave no pieces: nothing needs to be noted of them.
template <typename Rule> constexpr bool is_lexical = false;
template <> constexpr bool is_lexical<grammar::letter> = true;
template <> constexpr bool is_lexical<grammar::letter_or_digit> = true;
template <> constexpr bool is_lexical<grammar::inner_mark> = true;
template <> constexpr bool is_lexical<grammar::word_goes_on> = true;
template <> constexpr bool is_lexical<grammar::plain_word> = true;
template <> constexpr bool is_lexical<grammar::vulgar> = true;
template <> constexpr bool is_lexical<grammar::digits> = true;
template <> constexpr bool is_lexical<grammar::decimal> = true;
template <> constexpr bool is_lexical<grammar::fraction> = true;
template <> constexpr bool is_lexical<grammar::mixed> = true;
template <> constexpr bool is_lexical<grammar::reserved> = true;
template <> constexpr bool is_lexical<grammar::measure_word> = true;
template <> constexpr bool is_lexical<grammar::ends_name> = true;

template <char... letters> std::string quoted_word(pegtl::string<letters...>) {
    return std::string("'") + std::string({letters...}) + "'";
}
template <char... letters> std::string bare_word(pegtl::string<letters...>) {
    return std::string({letters...});
}

template <typename Rule> struct Control : pegtl::normal<Rule> {
    static constexpr Form form = form_of<Rule>;
    static constexpr bool is_gap = std::is_same_v<Rule, grammar::gap>;
    static constexpr bool is_operand = std::is_same_v<Rule, grammar::operand>;
    static constexpr bool is_keyword = requires { typename Rule::text; };
    static constexpr bool keeps_nothing =
        form == Form::none &&
        (is_lexical<Rule> || is_keyword || std::is_same_v<typename Rule::subs_t, pegtl::empty_list>);
    static constexpr bool enable = pegtl::normal<Rule>::enable && !keeps_nothing;

    template <typename Input> static void start(const Input& in, Run& run) {
        if constexpr (is_gap || form != Form::none) run.begun.push_back(run.offset(in));
        if constexpr (is_operand) {
            if (++run.depth > limits.parentheses + 1) {
                Missed missed;
                missed.at = run.offset(in);
                missed.token_end = run.token_end_at(missed.at);
                missed.too_deep = true;
                throw missed;
            }
        }
    }
    template <typename Input> static void success(const Input& in, Run& run) {
        if constexpr (is_gap) {
            const Gap gap{run.begun.back(), run.offset(in)};
            run.begun.pop_back();
            if (gap.begin == gap.end) return;
            while (!run.gaps.empty() && run.gaps.back().begin >= gap.begin) run.gaps.pop_back();
            run.gaps.push_back(gap);
        } else if constexpr (form != Form::none) {
            run.keep(form, passes_on<Rule>, run.offset(in));
        } else {
            run.drop_from(run.offset(in));
        }
        if constexpr (is_operand) --run.depth;
    }
    template <typename Input> static void failure(const Input& in, Run& run) {
        if constexpr (is_gap || form != Form::none) run.begun.pop_back();
        if constexpr (!is_gap) run.drop_from(run.offset(in));
        if constexpr (is_operand) --run.depth;
    }
    template <typename Input> [[noreturn]] static void raise(const Input& in, Run& run) {
        Missed missed;
        missed.at = run.offset(in);
        missed.token_end = run.token_end_at(missed.at);
        if constexpr (requires { typename Rule::text; }) {
            missed.what = quoted_word(typename Rule::text{});
            missed.words = bare_word(typename Rule::text{});
        } else {
            static_assert(!grammar::expected<Rule>.what.empty(),
                          "a rule that must match needs its words in expected.hpp");
            missed.what = grammar::expected<Rule>.what;
            missed.words = grammar::expected<Rule>.words;
        }
        throw missed;
    }
};

template <typename Rule>
Matched run_rule(std::string_view text, std::size_t begin, std::size_t end, std::size_t token_end) {
    pegtl::memory_input<pegtl::tracking_mode::lazy, pegtl::eol::lf_crlf, const char*> in(
        text.data() + begin, text.data() + end, "");
    Run run{text.data(), begin, token_end};
    run.begun.reserve(64);
    run.gaps.reserve(16);
    run.pieces.reserve(16);
    Matched out;
    try {
        if (pegtl::parse<Rule, pegtl::nothing, Control>(in, run)) {
            out.whole.begin = begin;
            out.whole.end = end;
            out.whole.parts = std::move(run.pieces);
        } else {
            out.missed.emplace();
            out.missed->at = begin;
            out.missed->token_end = token_end;
            out.missed->what = "something else";
        }
    } catch (Missed& missed) {
        out.missed = std::move(missed);
    }
    return out;
}

using Runner = Matched (*)(std::string_view, std::size_t, std::size_t, std::size_t);

template <typename... Rules> Runner runner_of(Entry entry, EntryList<Rules...>) {
    Runner found = nullptr;
    ((entry == Rules::key ? void(found = &run_rule<typename Rules::rule>) : void()), ...);
    return found;
}

} // namespace

Matched match(Entry entry, std::string_view text, std::size_t begin, std::size_t end, std::size_t token_end) {
    return runner_of(entry, Entries{})(text, begin, end, token_end);
}

} // namespace rayfleck::syntax
