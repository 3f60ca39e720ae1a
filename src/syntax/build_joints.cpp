// Joints with their options, hardware, notes, accepted findings; and the statements of the shop file.

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

/// `sheet A3`: the statement's one name.
std::optional<Name> one_name(const Reading& reading, const Header& header, Entry entry) {
    const auto pieces = matched(reading, header, entry, header.whole);
    if (!pieces) return std::nullopt;
    return reading.name_in(*pieces);
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

// ---- the shop file
// --------------------------------------------------------------------------------------------------

Told build_kerf(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::kerf, header.whole);
    return pieces ? Told(KerfIs{reading.name_in(*pieces), first_size(reading, *pieces)}) : broken(header);
}

Told build_allow(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::allow, header.whole);
    return pieces ? Told(AllowIs{first_size(reading, *pieces), reading.name_in(*pieces)}) : broken(header);
}

Told build_limit(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::limit, header.whole);
    if (!pieces) return broken(header);
    // The last word is what is limited, the words before it name the machine.
    const Name both = reading.name_in(*pieces);
    const std::size_t blank = both.text.rfind(' ');
    if (blank == std::string::npos) {
        reading.report.error("cannot-read", both.span.begin, both.span.end,
                             "expected a machine and what of it is limited, not '" + both.text + "' alone",
                             "write: " + std::string(form_of_statement("limit")) +
                                 ", as in limit planer width 300");
        return broken(header);
    }
    LimitIs out;
    out.machine = {both.text.substr(0, blank), both.span};
    out.what = {both.text.substr(blank + 1), both.span};
    out.what.span.begin = both.span.end - out.what.text.size();
    out.machine.span.end = std::max(both.span.begin, out.what.span.begin - 1);
    out.amount = first_size(reading, *pieces);
    return out;
}

Told build_title(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::title, header.whole);
    return pieces ? Told(TitleField{reading.name_in(*pieces), reading.quoted_in(*pieces)}) : broken(header);
}

Told build_sheet(const Reading& reading, const Header& header) {
    const auto name = one_name(reading, header, Entry::sheet);
    return name ? Told(SheetIs{*name}) : broken(header);
}

Told build_projection(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::projection, header.whole);
    if (!pieces) return broken(header);
    const Piece* which = pieces->find(Form::which);
    return ProjectionIs{!which || reading.words(*which) == "first"};
}

Told build_board(const Reading& reading, const Header& header) {
    BoardIs out;
    const auto pieces = matched(reading, header, Entry::board, header.first);
    if (!pieces) return broken(header);
    out.id = reading.name_in(*pieces);
    for (std::size_t i = 1; i < header.line.stretches.size(); ++i) {
        const auto item = matched(reading, header, Entry::board_item, header.line.stretches[i]);
        if (!item) continue;
        for (const Piece& piece : item->parts) {
            switch (piece.form) {
            case Form::board_stock:
                out.stock = reading.name(piece);
                break;
            case Form::board_count:
                out.count = first_size(reading, piece);
                break;
            case Form::board_size:
                out.size = reading.sizes(piece);
                break;
            case Form::board_sawn:
                if (const Piece* which = piece.find(Form::which)) out.sawn = reading.name(*which);
                break;
            case Form::board_wood:
                // A second name is the stock: sheet goods have names of their own.
                (out.wood ? out.stock : out.wood) = reading.name_in(piece);
                break;
            default:
                break;
            }
        }
    }
    return out;
}

Told build_price(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::price, header.whole);
    if (!pieces) return broken(header);
    PriceIs out;
    out.wood = reading.name_in(*pieces);
    if (const Piece* stock = pieces->find(Form::price_stock)) out.stock = reading.name_in(*stock);
    out.amount = first_size(reading, *pieces);
    if (const Piece* per = pieces->find(Form::words)) out.per = reading.name(*per).text;
    if (const Piece* lengths = pieces->find(Form::price_lengths)) out.lengths = reading.sizes(*lengths);
    return out;
}

} // namespace rayfleck::syntax
