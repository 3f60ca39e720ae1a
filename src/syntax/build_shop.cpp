// The statements of the shop file.
//
// Boards and prices are a name and then phrases in any order, each between commas; a phrase that cannot be
// read is left out and the rest is read all the same.

#include <utility>

#include "syntax/build_statement.hpp"

namespace rayfleck::syntax {
namespace {

Expression first_size(const Reading& reading, const Piece& piece) {
    if (const Piece* sum = piece.find(Form::sum)) return reading.expression(*sum);
    return {};
}

SideName first_side(const Reading& reading, const Piece& piece) {
    if (const Piece* side = piece.find(Form::side)) return reading.side(*side);
    return {};
}

Told broken(const Header& header) { return BrokenStatement{std::string(header.word)}; }

/// `sheet A3`: the statement's one name.
std::optional<Name> one_name(const Reading& reading, const Header& header, Entry entry) {
    const auto pieces = matched(reading, header, entry, header.whole);
    if (!pieces) return std::nullopt;
    return reading.name_in(*pieces);
}

FlawIs flaw_of(const Reading& reading, const Piece& piece) {
    FlawIs out;
    if (const Piece* kind = piece.find(Form::word)) out.kind = reading.name(*kind);
    const Piece* box = piece.find(Form::flaw_box);
    out.sizes = reading.sizes(box ? *box : piece);
    return out;
}

} // namespace

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
            case Form::board_rings:
                out.rings = first_size(reading, piece);
                break;
            case Form::board_bark: {
                const Piece* word = piece.find(Form::word);
                const Piece* which = piece.find(Form::which);
                out.bark = BarkIs{word && reading.words(*word) == "heart",
                                  which && reading.words(*which) == "edge", first_side(reading, piece)};
                break;
            }
            case Form::board_sapwood:
                out.sapwood.emplace_back(first_size(reading, piece), first_side(reading, piece));
                break;
            case Form::board_checks:
                out.checks.emplace_back(first_size(reading, piece), first_side(reading, piece));
                break;
            case Form::board_flaw:
                out.flaws.push_back(flaw_of(reading, piece));
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

Told build_own_wood(const Reading& reading, const Header& header) {
    OwnWood out;
    const auto pieces = matched(reading, header, Entry::own_wood, header.first);
    if (!pieces) return broken(header);
    out.name = reading.name_in(*pieces);
    for (std::size_t i = 1; i < header.line.stretches.size(); ++i) {
        const Stretch& stretch = header.line.stretches[i];
        const auto item = matched(reading, header, Entry::wood_figure, stretch);
        if (!item) continue;
        WoodFigure figure;
        figure.name = reading.name_in(*item);
        figure.span = reading.span(stretch.begin, stretch.end);
        if (const Piece* amount = item->find(Form::amount))
            figure.amount = std::string(reading.words(*amount));
        if (const Piece* unit = item->find(Form::figure_unit))
            figure.unit = std::string(reading.words(*unit));
        out.figures.push_back(std::move(figure));
    }
    return out;
}

Told build_price(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::price, header.first);
    if (!pieces) return broken(header);
    PriceIs out;
    out.wood = reading.name_in(*pieces);
    if (const Piece* stock = pieces->find(Form::price_stock)) out.stock = reading.name_in(*stock);
    bool told = false;
    for (std::size_t i = 1; i < header.line.stretches.size(); ++i) {
        const auto item = matched(reading, header, Entry::price_item, header.line.stretches[i]);
        // What it may have told is unknown: nothing is said to be missing.
        if (!item) return broken(header);
        for (const Piece& piece : item->parts) {
            switch (piece.form) {
            case Form::price_amount:
                told = true;
                out.amount = first_size(reading, piece);
                if (const Piece* per = piece.find(Form::words)) out.per = reading.name(*per).text;
                break;
            case Form::board_sawn:
                if (const Piece* which = piece.find(Form::which)) out.sawn = reading.name(*which);
                break;
            case Form::price_lengths:
                out.lengths = reading.sizes(piece);
                break;
            case Form::price_widths:
                out.widths = reading.sizes(piece);
                break;
            case Form::price_sheets:
                out.sheets = reading.sizes(piece);
                break;
            default:
                break;
            }
        }
    }
    if (told) return out;
    reading.report.error("cannot-read", header.line.begin, header.line.end,
                         "it is not told what '" + out.wood.text + "' costs",
                         "write: " + std::string(form_of_statement("price")));
    return broken(header);
}

Told build_currency(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::currency, header.whole);
    return pieces ? Told(CurrencyIs{reading.quoted_in(*pieces)}) : broken(header);
}

Told build_keep(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::keep, header.whole);
    return pieces ? Told(KeepOffcuts{reading.sizes(*pieces)}) : broken(header);
}

} // namespace rayfleck::syntax
