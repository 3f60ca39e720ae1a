#pragma once
// Blanks, words, names and quoted texts.
//
// Every token takes the blanks behind it, so that the rules above need not speak of them. A word ends where no letter,
// digit, hyphen or apostrophe that belongs to it follows: `top` is not the start of `topmost`. Letters of every
// alphabet count; the ranges beyond ASCII are whole blocks of the Unicode Standard (from memory), less its signs.

#include <tao/pegtl.hpp>

namespace rayfleck::grammar {

namespace pegtl = tao::pegtl;
using pegtl::at;
using pegtl::digit;
using pegtl::if_must;
using pegtl::must;
using pegtl::not_at;
using pegtl::one;
using pegtl::opt;
using pegtl::plus;
using pegtl::seq;
using pegtl::sor;
using pegtl::star;

/// Blanks; in a line that goes on after a comma also the line end and a comment before it.
struct comment : seq<one<'#'>, star<pegtl::not_one<'\n', '\r'>>> {};
struct gap : star<sor<one<' ', '\t', '\r', '\n'>, comment>> {};

/// The end of the stretch that is read: a phrase, a header, a row.
struct line_end : pegtl::eof {};

struct letter
    : sor<pegtl::alpha, pegtl::utf8::ranges<0xC0, 0xD6, 0xD8, 0xF6, 0xF8, 0x1FFF>,
          pegtl::utf8::one<0xAA, 0xB5, 0xBA>,
          pegtl::utf8::ranges<0x2C00, 0x2DFF, 0x3040, 0xD7FF, 0xF900, 0xFDCF, 0xFE20, 0xFE2F, 0x10000, 0x1EFFF, 0x20000,
                              0x3FFFF>> {};
struct letter_or_digit : sor<letter, digit> {};
struct inner_mark : seq<one<'-', '\''>, at<letter_or_digit>> {};
/// What would make a word longer.
struct word_goes_on : sor<letter_or_digit, inner_mark> {};

// A word as written: a letter, then letters, digits, and `-` or `'` between them.
//     leg-size   maker's   Zarge   B1
struct plain_word : seq<letter, star<word_goes_on>> {};
struct any_word : seq<plain_word, gap> {};

/// A word of the language.
template <typename Text> struct keyword : seq<Text, not_at<word_goes_on>, gap> {
    using text = Text;
};

namespace word {
// clang-format off
struct across : keyword<TAO_PEGTL_STRING("across")> {};
struct after : keyword<TAO_PEGTL_STRING("after")> {};
struct all : keyword<TAO_PEGTL_STRING("all")> {};
struct allowed : keyword<TAO_PEGTL_STRING("allowed")> {};
struct alternating : keyword<TAO_PEGTL_STRING("alternating")> {};
struct and_ : keyword<TAO_PEGTL_STRING("and")> {};
struct angle : keyword<TAO_PEGTL_STRING("angle")> {};
struct arc : keyword<TAO_PEGTL_STRING("arc")> {};
struct at : keyword<TAO_PEGTL_STRING("at")> {};
struct back : keyword<TAO_PEGTL_STRING("back")> {};
struct bark : keyword<TAO_PEGTL_STRING("bark")> {};
struct because : keyword<TAO_PEGTL_STRING("because")> {};
struct before : keyword<TAO_PEGTL_STRING("before")> {};
struct between : keyword<TAO_PEGTL_STRING("between")> {};
struct beyond : keyword<TAO_PEGTL_STRING("beyond")> {};
struct books : keyword<TAO_PEGTL_STRING("books")> {};
struct board : keyword<TAO_PEGTL_STRING("board")> {};
struct book_matched : keyword<TAO_PEGTL_STRING("book-matched")> {};
struct both : keyword<TAO_PEGTL_STRING("both")> {};
struct bottom : keyword<TAO_PEGTL_STRING("bottom")> {};
struct bulging : keyword<TAO_PEGTL_STRING("bulging")> {};
struct by : keyword<TAO_PEGTL_STRING("by")> {};
struct checks : keyword<TAO_PEGTL_STRING("checks")> {};
struct close : keyword<TAO_PEGTL_STRING("close")> {};
struct corner : keyword<TAO_PEGTL_STRING("corner")> {};
struct curve : keyword<TAO_PEGTL_STRING("curve")> {};
struct deep : keyword<TAO_PEGTL_STRING("deep")> {};
struct defect : keyword<TAO_PEGTL_STRING("defect")> {};
struct diameter : keyword<TAO_PEGTL_STRING("diameter")> {};
struct down : keyword<TAO_PEGTL_STRING("down")> {};
struct each : keyword<TAO_PEGTL_STRING("each")> {};
struct edge : keyword<TAO_PEGTL_STRING("edge")> {};
struct edges : keyword<TAO_PEGTL_STRING("edges")> {};
struct end : keyword<TAO_PEGTL_STRING("end")> {};
struct every : keyword<TAO_PEGTL_STRING("every")> {};
struct face : keyword<TAO_PEGTL_STRING("face")> {};
struct faces : keyword<TAO_PEGTL_STRING("faces")> {};
struct file : keyword<TAO_PEGTL_STRING("file")> {};
struct first : keyword<TAO_PEGTL_STRING("first")> {};
struct flat : keyword<TAO_PEGTL_STRING("flat")> {};
struct for_ : keyword<TAO_PEGTL_STRING("for")> {};
struct from : keyword<TAO_PEGTL_STRING("from")> {};
struct front : keyword<TAO_PEGTL_STRING("front")> {};
struct heart : keyword<TAO_PEGTL_STRING("heart")> {};
struct humidity : keyword<TAO_PEGTL_STRING("humidity")> {};
struct in : keyword<TAO_PEGTL_STRING("in")> {};
struct inside : keyword<TAO_PEGTL_STRING("inside")> {};
struct knot : keyword<TAO_PEGTL_STRING("knot")> {};
struct larger : keyword<TAO_PEGTL_STRING("larger")> {};
struct left : keyword<TAO_PEGTL_STRING("left")> {};
struct length : keyword<TAO_PEGTL_STRING("length")> {};
struct lengths : keyword<TAO_PEGTL_STRING("lengths")> {};
struct like : keyword<TAO_PEGTL_STRING("like")> {};
struct line : keyword<TAO_PEGTL_STRING("line")> {};
struct lines : keyword<TAO_PEGTL_STRING("lines")> {};
struct long_ : keyword<TAO_PEGTL_STRING("long")> {};
struct middle : keyword<TAO_PEGTL_STRING("middle")> {};
struct miter : keyword<TAO_PEGTL_STRING("miter")> {};
struct moisture : keyword<TAO_PEGTL_STRING("moisture")> {};
struct most : keyword<TAO_PEGTL_STRING("most")> {};
struct of : keyword<TAO_PEGTL_STRING("of")> {};
struct off : keyword<TAO_PEGTL_STRING("off")> {};
struct offcuts : keyword<TAO_PEGTL_STRING("offcuts")> {};
struct on : keyword<TAO_PEGTL_STRING("on")> {};
struct one_word : keyword<TAO_PEGTL_STRING("one")> {};
struct or_ : keyword<TAO_PEGTL_STRING("or")> {};
struct outside : keyword<TAO_PEGTL_STRING("outside")> {};
struct over : keyword<TAO_PEGTL_STRING("over")> {};
struct per : keyword<TAO_PEGTL_STRING("per")> {};
struct point : keyword<TAO_PEGTL_STRING("point")> {};
struct quarter : keyword<TAO_PEGTL_STRING("quarter")> {};
struct radius : keyword<TAO_PEGTL_STRING("radius")> {};
struct rift : keyword<TAO_PEGTL_STRING("rift")> {};
struct right : keyword<TAO_PEGTL_STRING("right")> {};
struct rings : keyword<TAO_PEGTL_STRING("rings")> {};
struct round : keyword<TAO_PEGTL_STRING("round")> {};
struct row : keyword<TAO_PEGTL_STRING("row")> {};
struct sapwood : keyword<TAO_PEGTL_STRING("sapwood")> {};
struct sawn : keyword<TAO_PEGTL_STRING("sawn")> {};
struct sequence : keyword<TAO_PEGTL_STRING("sequence")> {};
struct shake : keyword<TAO_PEGTL_STRING("shake")> {};
struct sheets : keyword<TAO_PEGTL_STRING("sheets")> {};
struct smaller : keyword<TAO_PEGTL_STRING("smaller")> {};
struct smooth : keyword<TAO_PEGTL_STRING("smooth")> {};
struct spaced : keyword<TAO_PEGTL_STRING("spaced")> {};
struct split : keyword<TAO_PEGTL_STRING("split")> {};
struct square : keyword<TAO_PEGTL_STRING("square")> {};
struct start : keyword<TAO_PEGTL_STRING("start")> {};
struct staves : keyword<TAO_PEGTL_STRING("staves")> {};
struct stopped : keyword<TAO_PEGTL_STRING("stopped")> {};
struct the : keyword<TAO_PEGTL_STRING("the")> {};
struct thick : keyword<TAO_PEGTL_STRING("thick")> {};
struct thickness : keyword<TAO_PEGTL_STRING("thickness")> {};
struct third : keyword<TAO_PEGTL_STRING("third")> {};
struct through : keyword<TAO_PEGTL_STRING("through")> {};
struct to : keyword<TAO_PEGTL_STRING("to")> {};
struct together : keyword<TAO_PEGTL_STRING("together")> {};
struct top : keyword<TAO_PEGTL_STRING("top")> {};
struct towards : keyword<TAO_PEGTL_STRING("towards")> {};
struct up : keyword<TAO_PEGTL_STRING("up")> {};
struct wane : keyword<TAO_PEGTL_STRING("wane")> {};
struct wide : keyword<TAO_PEGTL_STRING("wide")> {};
struct width : keyword<TAO_PEGTL_STRING("width")> {};
struct widths : keyword<TAO_PEGTL_STRING("widths")> {};
struct with : keyword<TAO_PEGTL_STRING("with")> {};
// clang-format on

/// Between two sizes: `20 x 60`, also `20 × 60`.
struct x : sor<keyword<TAO_PEGTL_STRING("x")>, seq<TAO_PEGTL_STRING("\xC3\x97"), gap>> {};
} // namespace word

/// Words that no name may hold: each could follow a name without punctuation.
struct reserved
    : sor<word::across, word::after, word::all, word::and_, word::at, word::because, word::before, word::between,
          word::by, word::each, word::every, word::from, word::in, word::like, word::of, word::on, word::or_, word::to,
          word::up, word::with, keyword<TAO_PEGTL_STRING("x")>> {};
/// Words that say which size a size is, or which way: `leg-size wide`, `between leg deep`.
struct measure_word : sor<word::deep, word::long_, word::thick, word::wide> {};
/// Words that end a name of one word, or of a copy.
struct ends_name : sor<reserved, measure_word> {};

// One word that names a value, a line of a rod, a column.
//     leg-size
struct name_word : seq<not_at<ends_name>, plain_word> {};
struct one_word_name : seq<name_word, gap> {};

// Text in double quotes, on one line.
//     "Side table"
struct quoted_text : star<pegtl::not_one<'"', '\n', '\r'>> {};
struct quote_end : one<'"'> {};
struct quoted_inside : seq<one<'"'>, quoted_text, must<quote_end>> {};
struct quoted : seq<quoted_inside, gap> {};

// The name of a part, a recipe or a wood: one word or several, or anything in quotes. A measure word may stand in
// it, but not last: what follows shows that it belongs to the name.
//     leg        long apron        top long rail        "rail no. 2"
struct measure_goes_on : at<plus<measure_word>, not_at<reserved>, plain_word> {};
struct further_word : seq<gap, not_at<reserved>, sor<not_at<measure_word>, measure_goes_on>, plain_word> {};
struct name_words : seq<not_at<reserved>, plain_word, star<further_word>> {};
struct name : sor<quoted, seq<name_words, gap>> {};
// A name behind which a measure word and then another name may follow: it ends before the measure word.
//     groove thickness of panel wide groove-depth deep in ...
struct shorter_further_word : seq<gap, not_at<ends_name>, plain_word> {};
struct shorter_name_words : seq<not_at<reserved>, plain_word, star<shorter_further_word>> {};
struct shorter_name : sor<quoted, seq<shorter_name_words, gap>> {};

// Words in a row that are taken as they stand, up to a number, a comma or the end.
//     mortise and tenon
struct more_words : seq<gap, plain_word> {};
struct words_inside : seq<plain_word, star<more_words>> {};
struct words : seq<words_inside, gap> {};

} // namespace rayfleck::grammar
