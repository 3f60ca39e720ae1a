// Reading the phrases of a part, one by one: what cannot be read is reported and left, the next is read all
// the same.
//
// The first word chooses the rule. A phrase without such a word is a size and which it is: `leg-size wide`.
// After `runs across` and `stands` the next phrase may follow without a comma, as it is said: `stands from
// floor to seat`.

#include "syntax/phrases.hpp"

#include <array>
#include <utility>

#include "grammar/forms.hpp"
#include "syntax/build_phrase.hpp"
#include "syntax/statements.hpp"

namespace rayfleck::syntax {
namespace {

struct PhraseWord {
    std::string_view word;
    Entry entry;
    BuildPhrase build;
};

constexpr PhraseWord phrase_words[] = {
    {"wood", Entry::wood, build_wood},
    {"flat", Entry::sawn, build_sawn},
    {"rift", Entry::sawn, build_sawn},
    {"quarter", Entry::sawn, build_sawn},
    {"rings", Entry::rings, build_rings},
    {"pith", Entry::pith, build_pith},
    {"bark", Entry::bark, build_bark},
    {"heart", Entry::bark, build_bark},
    {"stock", Entry::stock, build_stock},
    {"size", Entry::sizes, build_sizes},
    {"runs", Entry::runs, build_runs},
    {"stands", Entry::nothing_more, build_runs},
    {"face", Entry::face, build_face},
    {"from", Entry::from, build_from},
    {"between", Entry::between, build_between},
    {"left", Entry::side_at, build_side_at},
    {"right", Entry::side_at, build_side_at},
    {"front", Entry::side_at, build_side_at},
    {"back", Entry::side_at, build_side_at},
    {"top", Entry::side_at, build_side_at},
    {"bottom", Entry::side_at, build_side_at},
    {"inside", Entry::side_at, build_side_at},
    {"outside", Entry::side_at, build_side_at},
    {"centred", Entry::centred, build_centred},
    {"set", Entry::set_back, build_set_back},
    {"overhanging", Entry::overhanging, build_overhanging},
    {"over", Entry::over, build_over},
    {"under", Entry::over, build_over},
    {"flush", Entry::flush, build_flush},
    {"splayed", Entry::tilt, build_tilt},
    {"raked", Entry::tilt, build_tilt},
    {"canted", Entry::tilt, build_tilt},
    {"turned", Entry::turned_on_plan, build_turned_on_plan},
    {"grain", Entry::grain, build_grain},
    {"glued", Entry::glued_up, build_glued_up},
    {"laminated", Entry::laminated, build_laminated},
    {"carries", Entry::carries, build_carries},
    {"sapwood", Entry::sapwood, build_sapwood},
    {"loose", Entry::nothing_more, build_loose},
    {"note", Entry::note, build_note},
    {"taper", Entry::taper, build_taper},
    {"chamfer", Entry::chamfer, build_edge_shape},
    {"bevel", Entry::chamfer, build_edge_shape},
    {"round", Entry::round_over, build_edge_shape},
    {"mould", Entry::mould, build_edge_shape},
    {"miter", Entry::miter, build_miter},
    {"compound", Entry::compound, build_miter},
    {"crosscut", Entry::crosscut, build_trim},
    {"rip", Entry::rip, build_trim},
    {"resaw", Entry::resaw, build_trim},
    {"bore", Entry::bore, build_bore},
    {"groove", Entry::groove, build_groove},
    {"rabbet", Entry::rabbet, build_rabbet},
    {"notch", Entry::notch, build_notch},
    {"curve", Entry::curve, build_curve},
};

const PhraseWord* phrase_word(std::string_view word) {
    for (const PhraseWord& one : phrase_words)
        if (one.word == word) return &one;
    return nullptr;
}

const std::vector<std::string>& all_words() {
    static const std::vector<std::string> words = [] {
        std::vector<std::string> out;
        for (const PhraseWord& one : phrase_words) out.emplace_back(one.word);
        out.emplace_back("outline");
        return out;
    }();
    return words;
}

/// `quartersawn`, `quarter-sawn`, `plainsawn`: which sawing is meant; empty for other words. `plain sawn` in
/// two words too: its first word stands for it.
std::string_view sawing_in_one_word(std::string_view word) {
    for (const std::string_view sawn : {"flat", "rift", "quarter"})
        if (word.starts_with(sawn) &&
            (word.substr(sawn.size()) == "sawn" || word.substr(sawn.size()) == "-sawn"))
            return sawn;
    if (word == "plainsawn" || word == "plain-sawn" || word == "plain") return "flat";
    if (word == "slabsawn" || word == "slab-sawn") return "flat";
    return {};
}

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

/// The word at the start of a stretch, and where the next one begins.
std::string_view first_word(const Reading& reading, Stretch stretch, std::size_t& next) {
    const std::string_view word = token_at(reading.text, stretch.begin, stretch.end);
    next = stretch.begin + word.size();
    while (next < stretch.end && is_blank(reading.text[next])) ++next;
    return word;
}

bool begins_with_number(const Reading& reading, Stretch stretch) {
    const char first = reading.text[stretch.begin];
    return (first >= '0' && first <= '9') || first == '(';
}

/// Its last word says which size it is: `leg-size wide`.
bool says_which_size(const Reading& reading, Stretch stretch) {
    const std::string_view last = token_before(reading.text, stretch.end);
    return last == "thick" || last == "wide" || last == "long";
}

std::vector<OutlineStep> outline_steps(const Reading& reading, const std::vector<Line>& lines) {
    std::vector<OutlineStep> out;
    for (const Line& line : lines) {
        OutlineStep step;
        if (line.readable) {
            Matched matched = match(Entry::outline_step, reading.text, line.begin, line.end, line.begin);
            if (matched.missed) {
                reading.report.missed(*matched.missed, line.end, "");
            } else {
                step = build_outline_step(reading, matched.whole);
            }
        }
        step.span = reading.span(line.begin, line.end);
        out.push_back(std::move(step));
        if (!line.block.empty())
            reading.report.error("indentation", line.block.front().begin, line.block.front().begin + 1,
                                 "this line stands deeper than the step above",
                                 "set it back to the steps above");
    }
    return out;
}

std::vector<TurnedStation> turned_stations(const Reading& reading, const std::vector<Line>& lines) {
    std::vector<TurnedStation> out;
    for (const Line& line : lines) {
        for (const Stretch& stretch : line.stretches) {
            TurnedStation station;
            station.broken = true;
            Matched matched =
                match(Entry::turned_station, reading.text, stretch.begin, stretch.end, stretch.begin);
            if (matched.missed) {
                reading.report.missed(*matched.missed, stretch.end, "");
            } else {
                station = build_turned_station(reading, matched.whole);
            }
            station.span = reading.span(stretch.begin, stretch.end);
            out.push_back(std::move(station));
        }
        if (!line.block.empty())
            reading.report.error("indentation", line.block.front().begin, line.block.front().begin + 1,
                                 "this line stands deeper than the diameter above",
                                 "set it back to the lines above");
    }
    return out;
}

/// Matches the rest of a phrase after its first word and builds it; Broken when that fails.
Says matched_phrase(const Reading& reading, const PhraseWord& rule, std::string_view word,
                    std::size_t word_end, std::size_t end) {
    Matched matched = match(rule.entry, reading.text, word_end, end, word_end);
    if (matched.missed) {
        reading.report.missed(*matched.missed, end, form_of_phrase(word));
        return Broken{};
    }
    return rule.build(reading, matched.whole, word);
}

Says labelled_size(const Reading& reading, Stretch stretch) {
    Matched matched = match(Entry::labelled_size, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (matched.missed) {
        reading.report.missed(*matched.missed, stretch.end, "SIZE thick|wide|long");
        return Broken{};
    }
    return build_sizes(reading, matched.whole, "");
}

void report_statement(const Reading& reading, std::size_t begin, std::string_view word) {
    reading.report.error("out-of-place", begin, begin + word.size(),
                         "'" + std::string(word) + "' begins a statement and stands below a part",
                         "set it back to the margin, or in line with the part");
}

/// After a broken phrase a number behind the comma is most likely the rest of it: `to point 3, 4`.
bool goes_on_broken(const Reading& reading, Stretch stretch, const std::vector<Phrase>& before) {
    if (before.empty() || !std::holds_alternative<Broken>(before.back().says)) return false;
    return begins_with_number(reading, stretch) && !says_which_size(reading, stretch);
}

} // namespace

bool begins_phrase(std::string_view word) { return word == "outline" || phrase_word(word) != nullptr; }

bool looks_like_phrase(const Reading& reading, Stretch stretch) {
    const std::string word(token_at(reading.text, stretch.begin, stretch.end));
    if (begins_phrase(word) || begins_with_number(reading, stretch) || says_which_size(reading, stretch))
        return true;
    if (findings::near_word(word, {"at", "left", "front", "top", "row"})) return false;
    return findings::near_word(word, all_words()).has_value();
}

std::string_view form_of_phrase(std::string_view word) {
    for (const grammar::WrittenForm& form : grammar::phrase_forms)
        if (form.word == word) return form.form;
    return {};
}

void read_phrases(const Reading& reading, Stretch stretch, const std::vector<Line>* block,
                  std::vector<Phrase>& out) {
    std::size_t next = 0;
    const std::string_view word = first_word(reading, stretch, next);
    const auto add = [&](std::size_t begin, std::size_t end, Says says) {
        out.push_back({reading.span(begin, end), std::move(says)});
    };
    const bool has_block = block && !block->empty();
    const std::size_t block_end = has_block ? block->back().end : stretch.end;

    if (word == "outline" || (word == "turned" && (next == stretch.end || has_block))) {
        if (next != stretch.end) {
            const std::string_view found = token_at(reading.text, next, stretch.end);
            reading.report.error("cannot-read", next, next + found.size(),
                                 "expected nothing more on the line after '" + std::string(word) + "'",
                                 "write its steps on the lines below, set deeper");
            return add(stretch.begin, stretch.end, Broken{});
        }
        if (!has_block) {
            reading.report.error("block-missing", stretch.begin, stretch.begin + word.size(),
                                 "'" + std::string(word) + "' has no lines below it",
                                 word == "outline"
                                     ? "write its steps below, set deeper: start 0, 0"
                                     : "write an angle, or diameters below, set deeper: diameter 40 at 0");
            return add(stretch.begin, stretch.end, Broken{});
        }
        if (word == "outline")
            return add(stretch.begin, block_end, OutlineIs{outline_steps(reading, *block)});
        return add(stretch.begin, block_end, TurnedIs{turned_stations(reading, *block)});
    }

    if (word == "stands" || word == "runs") {
        // `runs across between leg`: a second phrase without a comma.
        std::size_t split = next;
        if (word == "runs") {
            std::size_t after = 0;
            const std::string_view direction = first_word(reading, {next, stretch.end}, after);
            split = direction == "across" || direction == "deep" || direction == "up" ? after : stretch.end;
        }
        const std::string_view second = token_at(reading.text, split, stretch.end);
        if (begins_phrase(second) || findings::near_word(std::string(second), all_words())) {
            std::size_t end = split;
            while (end > stretch.begin && is_blank(reading.text[end - 1])) --end;
            read_phrases(reading, {stretch.begin, end}, nullptr, out);
            return read_phrases(reading, {split, stretch.end}, block, out);
        }
    }

    if (const std::string_view sawn = sawing_in_one_word(word); !sawn.empty()) {
        const std::string written = std::string(sawn) + " sawn";
        reading.report.error("near-word", stretch.begin, stretch.begin + word.size(),
                             "'" + std::string(word) + "' is written '" + written + "'",
                             sawn == "flat" && !word.starts_with("flat")
                                 ? "plain sawn and flat sawn are the same; write 'flat sawn'"
                                 : "write '" + written + "', in two words");
        return add(stretch.begin, stretch.end, SawnIs{std::string(sawn), std::nullopt});
    }

    const std::size_t word_end = stretch.begin + word.size();
    if (const PhraseWord* rule = phrase_word(word))
        return add(stretch.begin, stretch.end, matched_phrase(reading, *rule, word, word_end, stretch.end));

    if (begins_with_number(reading, stretch) || says_which_size(reading, stretch))
        return add(stretch.begin, stretch.end, labelled_size(reading, stretch));

    if (begins_statement(word)) {
        report_statement(reading, stretch.begin, word);
        return add(stretch.begin, stretch.end, Broken{});
    }
    reading.report.unknown_word(
        stretch.begin, stretch.end, all_words(), "begins no phrase of a part",
        "a phrase begins with a word such as wood, size, runs, from, between, taper; a name "
        "stands behind 'part'");
    add(stretch.begin, stretch.end, Broken{});
}

void read_phrase_lines(const Reading& reading, const std::vector<Line>& lines, std::vector<Phrase>& out,
                       Strays& strays) {
    for (const Line& line : lines) {
        if (reading.report.full()) return;
        if (!line.readable) {
            out.push_back({reading.span(line.begin, line.end), Broken{}});
            continue;
        }
        const std::string_view head = token_at(reading.text, line.begin, line.end);
        if (begins_statement(head) && !begins_phrase(head)) {
            report_statement(reading, line.begin, head);
            read_statements(reading, {line}, strays.in_recipe, strays.statements);
            continue;
        }
        bool block_taken = line.block.empty();
        for (std::size_t i = 0; i < line.stretches.size(); ++i) {
            if (i > 0 && goes_on_broken(reading, line.stretches[i], out)) continue;
            const bool last = i + 1 == line.stretches.size();
            const std::string_view word =
                token_at(reading.text, line.stretches[i].begin, line.stretches[i].end);
            const bool takes = last && (word == "outline" || word == "turned");
            read_phrases(reading, line.stretches[i], takes ? &line.block : nullptr, out);
            block_taken = block_taken || takes;
        }
        if (!block_taken) {
            reading.report.error("indentation", line.block.front().begin, line.block.front().begin + 1,
                                 "this line stands deeper than the phrase above, which takes no block",
                                 "set it back to the phrases above");
            read_phrase_lines(reading, line.block, out, strays);
        }
    }
}

bool begins_copies(const Reading& reading, Stretch stretch) {
    std::size_t next = 0;
    const std::string_view word = first_word(reading, stretch, next);
    const std::string_view second = token_at(reading.text, next, stretch.end);
    if (word == "at" || word == "row") return true;
    return (word == "left" || word == "front" || word == "top") && second != "at";
}

std::optional<Copies> read_copies(const Reading& reading, Stretch stretch) {
    Matched matched = match(Entry::copies, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (matched.missed) {
        reading.report.missed(
            *matched.missed, stretch.end,
            "at each corner, left and right, front and back, top and bottom, row of COUNT DIRECTION, "
            "or at each of LINE and LINE");
        return std::nullopt;
    }
    Copies out;
    out.span = reading.span(stretch.begin, stretch.end);
    for (const Piece& piece : matched.whole.parts) {
        switch (piece.form) {
        case Form::each_corner:
            out.kind = Copies::Kind::each_corner;
            break;
        case Form::left_and_right:
            out.kind = Copies::Kind::left_right;
            break;
        case Form::front_and_back:
            out.kind = Copies::Kind::front_back;
            break;
        case Form::top_and_bottom:
            out.kind = Copies::Kind::top_bottom;
            break;
        case Form::each_of:
            out.kind = Copies::Kind::each_of;
            for (const Piece* line : piece.all(Form::name)) out.lines.push_back(reading.name(*line));
            break;
        case Form::row_of:
            out.kind = Copies::Kind::row;
            if (const Piece* count = piece.find(Form::sum)) out.count = reading.expression(*count);
            out.direction = reading.direction_in(piece).value_or(Direction::across);
            if (const Piece* spaced = piece.find(Form::spaced))
                if (const Piece* by = spaced->find(Form::sum)) out.spaced = reading.expression(*by);
            if (const Piece* reach = piece.find(Form::from_to)) out.reach = reading.from_to(*reach);
            break;
        default:
            break;
        }
    }
    return out;
}

} // namespace rayfleck::syntax
