// Widths come from the fonts compiled into the program, in whole thousandths of the type size, as a PDF
// states them.
//
// Built fractions: figures 0.62 of the full height above and below a bar at half the cap height. The
// proportions are a house rule, chosen by looking at prints; no published source.

#include "drawing/text_metrics.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

#include "drawing/fonts/builtin_fonts.hpp"
#include "drawing/fonts/characters.hpp"

namespace rayfleck::drawing {
namespace {

// Shares of the cap height.
constexpr double small_figure = 0.62;
constexpr double bar_thickness = 0.07;
constexpr double figure_to_bar = 0.12;    ///< from the bar's middle
constexpr double bar_overhang = 0.05;     ///< past the wider figure
constexpr double room_at_fraction = 0.10; ///< on either side

constexpr char32_t empty_box = 0x25A1;

/// The characters to set: what has no shape of its own becomes a space or goes.
std::u32string characters_to_set(const std::string& words) {
    std::u32string out;
    for (const char32_t c : characters_of(words)) {
        const bool invisible =
            (c >= 0x7F && c < 0xA0) || c == 0xAD || (c >= 0x200B && c <= 0x200F) || c == 0xFEFF;
        if (!invisible) out += c < 0x20 ? U' ' : c;
    }
    return out;
}

bool has_all(Typeface face, const std::u32string& text) {
    const TrueType& type = font(face);
    return std::all_of(text.begin(), text.end(), [&](char32_t c) { return type.has(c); });
}

bool is_figure(char32_t c) { return c >= U'0' && c <= U'9'; }

/// A fraction found in a text: [at, end) of it.
struct Fraction {
    std::size_t end = 0;
    std::u32string whole, top, bottom;
};

std::optional<Fraction> fraction_at(const std::u32string& text, std::size_t at) {
    const auto before_stops_it = [](char32_t c) {
        return is_figure(c) || c == U'/' || c == U'.' || c == U',';
    };
    if (at > 0 && before_stops_it(text[at - 1])) return std::nullopt;
    const auto figures = [&](std::size_t from) {
        std::size_t to = from;
        while (to < text.size() && is_figure(text[to])) ++to;
        return text.substr(from, to - from);
    };
    Fraction found;
    found.top = figures(at);
    std::size_t here = at + found.top.size();
    if (!found.top.empty() && here < text.size() && text[here] == U'-') {
        found.whole = found.top;
        found.top = figures(++here);
        here += found.top.size();
    }
    if (found.top.empty() || here >= text.size() || text[here] != U'/') return std::nullopt;
    found.bottom = figures(++here);
    found.end = here + found.bottom.size();
    if (found.bottom.empty() || found.bottom.size() > 3 || found.top.size() > 3) return std::nullopt;
    if (found.end < text.size() && (text[found.end] == U'/' || text[found.end] == U'.')) {
        // A full stop that ends a sentence is no part of the number.
        const bool number_goes_on = found.end + 1 < text.size() && is_figure(text[found.end + 1]);
        if (text[found.end] == U'/' || number_goes_on) return std::nullopt;
    }
    const auto value = [](const std::u32string& s) {
        unsigned v = 0;
        for (const char32_t c : s) v = v * 10 + static_cast<unsigned>(c - U'0');
        return v;
    };
    const unsigned top = value(found.top), bottom = value(found.bottom);
    const bool of_an_inch_rule = bottom >= 2 && bottom <= 128 && (bottom & (bottom - 1)) == 0;
    if (!of_an_inch_rule || top == 0 || top >= bottom) return std::nullopt;
    return found;
}

/// All fractions of a word, by where they begin.
std::map<std::size_t, Fraction> fractions_in(const std::u32string& word) {
    std::map<std::size_t, Fraction> found;
    for (std::size_t at = 0; at < word.size();) {
        const auto fraction = fraction_at(word, at);
        if (fraction) found.emplace(at, *fraction);
        at = fraction ? fraction->end : at + 1;
    }
    return found;
}

/// Sets stretches one after the other and keeps track of the room taken.
class Setter {
  public:
    Setter(Typeface face, double cap_height) : type_(font(face)), cap_height_(cap_height) {
        out_.face = face;
        out_.highest = cap_height;
    }

    /// A stretch without fractions.
    void plain(const std::u32string& text) {
        if (text.empty()) return;
        TextPiece piece;
        const std::u32string shown = with_glyphs(text);
        letters(piece, shown);
        if (shown != text) piece.says = utf8_of(text);
        out_.pieces.push_back(std::move(piece));
    }

    /// A word with its fractions, where each of them begins. Programs that search the text take its place
    /// from the first and the last run, so a word that begins or ends with a fraction gets a blank on the
    /// base line there.
    void built(const std::u32string& word, const std::map<std::size_t, Fraction>& fractions) {
        TextPiece piece;
        piece.says = utf8_of(word);
        const double left = out_.width;
        std::size_t at = 0;
        for (const auto& [place, fraction] : fractions) {
            const std::u32string before = with_glyphs(word.substr(at, place - at)) + fraction.whole;
            if (before.empty() && at == 0) piece.runs.push_back(run(U" ", left, 0, cap_height_));
            letters(piece, before);
            stack(piece, fraction, !before.empty());
            at = fraction.end;
        }
        if (at < word.size())
            letters(piece, with_glyphs(word.substr(at)));
        else
            piece.runs.push_back(run(U" ", out_.width - width_of(U" ", cap_height_), 0, cap_height_));
        out_.pieces.push_back(std::move(piece));
    }

    MeasuredText done() { return std::move(out_); }

  private:
    std::u32string with_glyphs(std::u32string text) const {
        for (char32_t& c : text)
            if (!type_.has(c)) c = type_.has(empty_box) ? empty_box : U'?';
        return text;
    }

    void letters(TextPiece& piece, const std::u32string& text) {
        if (text.empty()) return;
        piece.runs.push_back(run(text, out_.width, 0, cap_height_));
        out_.width += piece.runs.back().width;
    }

    void stack(TextPiece& piece, const Fraction& fraction, bool follows_letters) {
        const double figure = small_figure * cap_height_;
        const double middle = cap_height_ / 2, gap = figure_to_bar * cap_height_;
        const double top_width = width_of(fraction.top, figure),
                     bottom_width = width_of(fraction.bottom, figure);
        const double wide = std::max(top_width, bottom_width) + 2 * bar_overhang * cap_height_;
        const double left = out_.width + (follows_letters ? room_at_fraction * cap_height_ : 0);
        piece.runs.push_back(run(fraction.top, left + (wide - top_width) / 2, middle + gap, figure));
        piece.bars.push_back({left, left + wide, middle, bar_thickness * cap_height_});
        piece.runs.push_back(
            run(fraction.bottom, left + (wide - bottom_width) / 2, middle - gap - figure, figure));
        out_.width = left + wide + room_at_fraction * cap_height_;
    }

    double width_of(const std::u32string& text, double cap_height) const {
        int thousandths = 0;
        for (const char32_t c : text) thousandths += type_.advance(c);
        return thousandths / 1000.0 * cap_height / type_.cap_height();
    }

    TypeRun run(const std::u32string& text, double x, double y, double cap_height) {
        const double size = cap_height / type_.cap_height();
        for (const char32_t c : text) {
            const TrueType::Extent ink = type_.extent(c);
            out_.lowest = std::min(out_.lowest, y + ink.lowest * size);
            out_.highest = std::max(out_.highest, y + ink.highest * size);
        }
        return {x, y, cap_height, width_of(text, cap_height), utf8_of(text)};
    }

    const TrueType& type_;
    double cap_height_;
    MeasuredText out_;
};

/// The room that a text takes.
struct Room {
    double width = 0, lowest = 0, highest = 0;
};

/// The lettering's figure 1 is a bare stroke that can be read as a line; strings with figures are set in the
/// sans face, whose 1 has a flag and a foot (decided by looking at prints).
template <typename String> Typeface face_for(const String& words, Typeface face) {
    const bool figures = std::any_of(words.begin(), words.end(), [](auto c) { return c >= '0' && c <= '9'; });
    return face == Typeface::lettering && figures ? Typeface::sans : face;
}

/// Most texts are of plain letters that their face has, without a fraction: one run. Nothing for others.
std::optional<Room> room_of_plain(const std::string& words, double cap_height, Typeface wanted) {
    const Typeface face = face_for(words, wanted);
    const TrueType& type = font(face);
    const double size = cap_height / type.cap_height();
    Room room{0, 0, cap_height};
    int thousandths = 0;
    for (const char c : words) {
        if (c < 0x20 || c > 0x7E || c == '/') return std::nullopt;
        const auto character = static_cast<char32_t>(c);
        if (!type.has(character)) return std::nullopt;
        thousandths += type.advance(character);
        const TrueType::Extent ink = type.extent(character);
        room.lowest = std::min(room.lowest, ink.lowest * size);
        room.highest = std::max(room.highest, ink.highest * size);
    }
    room.width = thousandths / 1000.0 * cap_height / type.cap_height();
    return room;
}

Room room_of(const std::string& words, double cap_height, Typeface face) {
    if (const auto room = room_of_plain(words, cap_height, face)) return *room;
    const MeasuredText set = measure_text(words, cap_height, face);
    return {set.width, set.lowest, set.highest};
}

} // namespace

MeasuredText measure_text(const std::string& words, double cap_height, Typeface face) {
    const std::u32string text = characters_to_set(words);
    const Typeface legible = face_for(text, face);
    Setter setter(has_all(legible, text)                                         ? legible
                  : has_all(Typeface::sans, text) || face == Typeface::lettering ? Typeface::sans
                                                                                 : face,
                  cap_height);
    std::u32string plain;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t space = std::min(text.find(U' ', at), text.size());
        const std::u32string word = text.substr(at, space - at);
        const auto fractions =
            face == Typeface::lettering ? fractions_in(word) : std::map<std::size_t, Fraction>{};
        if (fractions.empty()) {
            plain += word;
        } else {
            setter.plain(plain);
            plain.clear();
            setter.built(word, fractions);
        }
        at = space;
        while (at < text.size() && text[at] == U' ') plain += text[at++];
    }
    setter.plain(plain);
    return setter.done();
}

double type_size(double cap_height, Typeface face) { return cap_height / font(face).cap_height(); }

double text_width(const std::string& words, double cap_height, Typeface face) {
    return room_of(words, cap_height, face).width;
}

std::vector<Point2> text_box(const Text& text) {
    const Room set = room_of(text.words, text.height, text.face);
    const double turn = text.turn * std::numbers::pi / 180, c = std::cos(turn), s = std::sin(turn);
    std::vector<Point2> box;
    for (const Point2 p : {Point2{0, set.lowest}, Point2{set.width, set.lowest},
                           Point2{set.width, set.highest}, Point2{0, set.highest}})
        box.push_back({text.at.x + c * p.x - s * p.y, text.at.y + s * p.x + c * p.y});
    return box;
}

} // namespace rayfleck::drawing
