// Joints with their options, hardware, notes, accepted findings, parts that match.

#include <utility>

#include "syntax/build_statement.hpp"
#include "syntax/phrases.hpp"

namespace rayfleck::syntax {
namespace {

Expression first_size(const Reading& reading, const Piece& piece) {
    if (const Piece* sum = piece.find(Form::sum)) return reading.expression(*sum);
    return {};
}

Told broken(const Header& header) { return BrokenStatement{std::string(header.word)}; }

void read_option(const Reading& reading, Stretch stretch, JoinIs& join) {
    if (token_at(reading.text, stretch.begin, stretch.end) == "note") {
        std::vector<Phrase> phrases;
        read_phrases(reading, stretch, nullptr, phrases);
        for (Phrase& phrase : phrases)
            if (auto* note = std::get_if<NoteIs>(&phrase.says)) join.notes.push_back(std::move(*note));
        return;
    }
    Matched found = match(Entry::joint_option, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (found.missed) {
        reading.report.missed(*found.missed, stretch.end, "");
        return;
    }
    JointOption option;
    option.span = reading.span(stretch.begin, stretch.end);
    const auto add_word = [&](std::string_view word) {
        if (!option.words.empty()) option.words += ' ';
        option.words += word;
    };
    for (const Piece& piece : found.whole.parts) {
        switch (piece.form) {
        case Form::option_word:
            add_word(reading.words(piece));
            break;
        case Form::option_value:
            for (Expression& value : reading.sizes(piece)) option.values.push_back(std::move(value));
            break;
        case Form::side:
            if (option.side) {
                add_word(reading.words(piece));
            } else {
                option.side = reading.side(piece);
            }
            break;
        case Form::quoted:
            option.quoted = reading.quoted(piece);
            break;
        default:
            break;
        }
    }
    join.options.push_back(std::move(option));
}

PartName part_in(const Reading& reading, const Piece* piece) {
    if (piece)
        if (const Piece* part = piece->find(Form::part_name)) return reading.part_name(*part);
    return {};
}

} // namespace

Told build_join(const Reading& reading, const Header& header) {
    JoinIs out;
    const auto pieces = matched(reading, header, Entry::join, header.first);
    if (pieces) {
        const std::vector<const Piece*> parts = pieces->all(Form::part_name);
        if (parts.size() == 2) {
            out.a = reading.part_name(*parts[0]);
            out.b = reading.part_name(*parts[1]);
        }
        if (const Piece* kind = pieces->find(Form::words)) out.kind = reading.name(*kind);
    }
    for (std::size_t i = 1; i < header.line.stretches.size(); ++i)
        read_option(reading, header.line.stretches[i], out);
    for (const Line& line : header.line.block) {
        for (const Stretch& stretch : line.stretches) read_option(reading, stretch, out);
        if (!line.block.empty())
            reading.report.error("indentation", line.block.front().begin, line.block.front().begin + 1,
                                 "this line stands deeper than the option above it",
                                 "set it back to the lines above");
    }
    return pieces ? Told(std::move(out)) : broken(header);
}

Told build_match(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::match, header.first);
    if (!pieces) return broken(header);
    MatchIs out;
    for (const Piece* part : pieces->all(Form::part_name)) out.parts.push_back(reading.part_name(*part));
    if (header.line.stretches.size() != 2) {
        const Stretch last = header.line.stretches.back();
        reading.report.error("cannot-read", last.begin, last.end,
                             header.line.stretches.size() < 2 ? "it is not told how they match"
                                                              : "they match in one way only",
                             "write: " + std::string(form_of_statement("match")));
        return broken(header);
    }
    const auto how = matched(reading, header, Entry::match_how, header.line.stretches[1]);
    if (!how) return broken(header);
    out.how = how->find(Form::in_sequence)      ? Matching::in_sequence
              : how->find(Form::from_one_board) ? Matching::one_board
                                                : Matching::book_matched;
    return out;
}

Told build_hardware(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::hardware, header.whole);
    if (!pieces) return broken(header);
    HardwareIs out;
    out.name = reading.quoted_in(*pieces);
    for (const Piece& piece : pieces->parts) {
        if (piece.form == Form::how_many) out.count = first_size(reading, piece);
        if (piece.form == Form::on_this) out.on = part_in(reading, &piece);
        if (piece.form == Form::to_that) out.to = part_in(reading, &piece);
    }
    return out;
}

Told build_piece_note(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::note, header.whole);
    return pieces ? Told(PieceNote{reading.quoted_in(*pieces)}) : broken(header);
}

Told build_accept(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::accept, header.whole);
    if (!pieces) return broken(header);
    Accept out;
    if (const Piece* check = pieces->find(Form::name)) out.check = reading.name(*check);
    if (const Piece* on = pieces->find(Form::on_this)) out.part = part_in(reading, on);
    out.reason = reading.quoted_in(*pieces);
    return out;
}

} // namespace rayfleck::syntax
