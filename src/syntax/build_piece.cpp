// Statements about the piece and its parts, out of their lines.

#include <utility>

#include "syntax/build_statement.hpp"
#include "syntax/phrases.hpp"
#include "syntax/statements.hpp"

namespace rayfleck::syntax {
namespace {

Expression first_size(const Reading& reading, const Piece& piece) {
    if (const Piece* sum = piece.find(Form::sum)) return reading.expression(*sum);
    return {};
}

Told broken(const Header& header) { return BrokenStatement{std::string(header.word)}; }

/// The stretches of the line behind the first.
std::vector<Stretch> further(const Header& header) {
    const std::vector<Stretch>& all = header.line.stretches;
    return all.empty() ? std::vector<Stretch>{} : std::vector<Stretch>(all.begin() + 1, all.end());
}

/// Deeper lines below lines that take none.
void report_depth(const Reading& reading, const Line& line) {
    if (line.block.empty()) return;
    const std::size_t begin = line.block.front().begin;
    reading.report.error("indentation", begin, begin + 1, "this line stands deeper than the line above it",
                         "set it back to the lines above");
}

Expression plus_or_minus(Expression::Kind kind, const Reading& reading, const Piece& line, Expression by) {
    Expression name;
    name.kind = Expression::Kind::name;
    const Name other = reading.name_in(line);
    name.word = other.text;
    name.span = other.span;
    Expression out;
    out.kind = kind;
    out.span = source::join(by.span, name.span);
    out.operands.push_back(std::move(name));
    out.operands.push_back(std::move(by));
    return out;
}

void read_rod_line(const Reading& reading, Stretch stretch, std::vector<RodLine>& out) {
    Matched found = match(Entry::rod_line, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (found.missed) {
        reading.report.missed(
            *found.missed, stretch.end,
            "NAME SIZE, or NAME SIZE after|before NAME, or COUNT lines NAME between SIZE and SIZE");
        return;
    }
    RodLine line;
    line.span = reading.span(stretch.begin, stretch.end);
    if (const Piece* even = found.whole.find(Form::even_lines)) {
        std::vector<Expression> sizes = reading.sizes(*even);
        line.name = reading.name_in(*even);
        if (sizes.size() == 3) {
            line.count = std::move(sizes[0]);
            line.at = std::move(sizes[1]);
            line.other = std::move(sizes[2]);
        }
    } else if (const Piece* named = found.whole.find(Form::named_line)) {
        line.name = reading.name_in(*named);
        line.at = first_size(reading, *named);
        if (const Piece* after = named->find(Form::after))
            line.at = plus_or_minus(Expression::Kind::add, reading, *after, std::move(line.at));
        if (const Piece* before = named->find(Form::before))
            line.at = plus_or_minus(Expression::Kind::subtract, reading, *before, std::move(line.at));
    }
    out.push_back(std::move(line));
}

std::optional<ValueIs> read_value(const Reading& reading, Stretch stretch, Entry entry, const char* form) {
    Matched found = match(entry, reading.text, stretch.begin, stretch.end, stretch.begin);
    if (found.missed) {
        reading.report.missed(*found.missed, stretch.end, form);
        return std::nullopt;
    }
    return ValueIs{reading.name_in(found.whole), first_size(reading, found.whole)};
}

/// `left at seam` under `make`.
bool begins_placing(const Reading& reading, Stretch stretch) {
    const std::string_view word = token_at(reading.text, stretch.begin, stretch.end);
    std::size_t next = stretch.begin + word.size();
    while (next < stretch.end && (reading.text[next] == ' ' || reading.text[next] == '\t')) ++next;
    return side_named(word) && token_at(reading.text, next, stretch.end) == "at";
}

void read_given(const Reading& reading, Stretch stretch, MakeIs& make) {
    if (begins_placing(reading, stretch)) {
        std::vector<Phrase> phrases;
        read_phrases(reading, stretch, nullptr, phrases);
        for (Phrase& phrase : phrases)
            if (auto* at = std::get_if<SideAt>(&phrase.says)) make.placed.push_back(std::move(*at));
        return;
    }
    if (auto value = read_value(reading, stretch, Entry::given, "NAME SIZE, or SIDE at POSITION"))
        make.given.push_back(std::move(*value));
}

} // namespace

Told build_piece(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::piece, header.whole);
    return pieces ? Told(PieceIs{reading.quoted_in(*pieces)}) : broken(header);
}

Told build_units(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::units, header.whole);
    if (!pieces) return broken(header);
    UnitsAre out;
    if (const Piece* unit = pieces->find(Form::which)) {
        const std::string_view word = reading.words(*unit);
        out.unit = word == "mm"   ? measure::Unit::mm
                   : word == "cm" ? measure::Unit::cm
                   : word == "m"  ? measure::Unit::m
                   : word == "in" ? measure::Unit::in
                                  : measure::Unit::ft;
    }
    if (const Piece* step = pieces->find(Form::step)) out.to = first_size(reading, *step);
    return out;
}

Told build_climate(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::climate, header.whole);
    if (!pieces) return broken(header);
    ClimateIs out;
    const Piece* range = pieces->find(Form::climate_range);
    if (!range) {
        out.region = reading.name_in(*pieces);
        return out;
    }
    std::vector<Expression> sizes = reading.sizes(*range);
    if (sizes.size() == 2) {
        out.low = std::move(sizes[0]);
        out.high = std::move(sizes[1]);
    }
    out.humidity = range->find(Form::moisture) == nullptr;
    if (const Piece* temperature = range->find(Form::temperature)) {
        Expression degrees;
        degrees.span = reading.span(*temperature);
        if (const Piece* amount = temperature->find(Form::amount)) {
            std::string_view words = reading.words(*amount);
            const bool below = words.starts_with("-");
            Piece number = *amount;
            number.form = Form::number;
            if (below) ++number.begin;
            Piece inner = number;
            inner.form = Form::amount;
            inner.parts.clear();
            number.parts = {inner};
            degrees = reading.expression(number);
            if (below) degrees.amount = -degrees.amount;
        }
        out.temperature = std::move(degrees);
        if (const Piece* scale = temperature->find(Form::which))
            out.fahrenheit = reading.words(*scale) == "F";
    }
    return out;
}

Told build_made(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::made, header.whole);
    return pieces ? Told(MadeAt{first_size(reading, *pieces)}) : broken(header);
}

Told build_shop(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::shop, header.whole);
    if (!pieces) return broken(header);
    if (const Piece* file = pieces->find(Form::shop_file)) return ShopFile{reading.quoted_in(*file)};
    return ShopIn{reading.quoted_in(*pieces)};
}

Told build_bring(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::bring, header.whole);
    return pieces ? Told(BringIn{reading.quoted_in(*pieces)}) : broken(header);
}

Told build_value(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::value, header.whole);
    return pieces ? Told(ValueIs{reading.name_in(*pieces), first_size(reading, *pieces)}) : broken(header);
}

Told build_sizes_table(const Reading& reading, const Header& header) {
    SizesAre out;
    const std::vector<Line>& lines = header.line.block;
    if (header.line.readable && header.line.end != header.word_end) {
        std::size_t begin = header.word_end;
        while (begin < header.line.end && (reading.text[begin] == ' ' || reading.text[begin] == '\t'))
            ++begin;
        reading.report.error("cannot-read", begin, header.line.end,
                             "expected nothing more on the line after 'sizes'",
                             "write the headings on the next line, set deeper");
    }
    if (lines.empty()) {
        reading.report.error("block-missing", header.line.begin, header.word_end,
                             "'sizes' has no lines below it",
                             "write a line of headings, then a line for each size, set deeper");
        return broken(header);
    }
    bool heading_read = false;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Line& line = lines[i];
        report_depth(reading, line);
        if (!line.readable) continue;
        Matched found =
            match(i == 0 ? Entry::headings : Entry::size_row, reading.text, line.begin, line.end, line.begin);
        if (found.missed) {
            reading.report.missed(*found.missed, line.end,
                                  i == 0 ? "name WORD WORD..."
                                         : "NAME SIZE SIZE..., arithmetic with blanks in parentheses");
            continue;
        }
        if (i == 0) {
            const std::vector<const Piece*> words = found.whole.all(Form::name);
            for (std::size_t k = 1; k < words.size(); ++k) out.columns.push_back(reading.name(*words[k]));
            heading_read = true;
            continue;
        }
        SizesAre::Row row;
        row.span = reading.span(line.begin, line.end);
        row.name = reading.name(found.whole.parts.front());
        for (std::size_t k = 1; k < found.whole.parts.size(); ++k) {
            const Piece& cell = found.whole.parts[k];
            if (cell.form != Form::cell) {
                row.values.push_back(reading.expression(cell));
                continue;
            }
            Expression value = reading.expression(cell.parts.front());
            if (reading.words(cell).starts_with("-")) value.amount = -value.amount;
            value.span = reading.span(cell);
            row.values.push_back(std::move(value));
        }
        if (heading_read && row.values.size() != out.columns.size()) {
            reading.report.error(
                "cells-do-not-fit", line.begin, line.end,
                "'" + row.name.text + "' gives " + std::to_string(row.values.size()) + " of " +
                    std::to_string(out.columns.size()) + " sizes",
                "give one size under each heading; put arithmetic with blanks in parentheses");
            continue;
        }
        out.rows.push_back(std::move(row));
    }
    return out;
}

Told build_require(const Reading& reading, const Header& header) {
    const auto pieces = matched(reading, header, Entry::require, header.whole);
    if (!pieces) return broken(header);
    Require out;
    if (const Piece* condition = pieces->find(Form::either))
        out.condition = reading.expression(*condition, true);
    out.message = reading.quoted_in(*pieces);
    return out;
}

Told build_rod(const Reading& reading, const Header& header) {
    RodIs out;
    std::optional<Piece> pieces;
    // The first line may follow the direction without a comma.
    std::size_t direction_end = header.first.begin;
    while (direction_end < header.first.end && reading.text[direction_end] == ' ') ++direction_end;
    direction_end += token_at(reading.text, direction_end, header.first.end).size();
    if (header.line.readable)
        pieces = matched(reading, header, Entry::rod, {header.first.begin, direction_end});
    if (pieces) {
        out.direction = reading.direction_in(*pieces).value_or(Direction::across);
        std::size_t begin = direction_end;
        while (begin < header.first.end && (reading.text[begin] == ' ' || reading.text[begin] == '\t'))
            ++begin;
        if (begin < header.first.end) read_rod_line(reading, {begin, header.first.end}, out.lines);
        for (const Stretch& stretch : further(header)) read_rod_line(reading, stretch, out.lines);
    }
    for (const Line& line : header.line.block) {
        report_depth(reading, line);
        for (const Stretch& stretch : line.stretches) read_rod_line(reading, stretch, out.lines);
    }
    return pieces ? Told(std::move(out)) : broken(header);
}

Told build_part(const Reading& reading, const Header& header) {
    PartIs out;
    const auto pieces = matched(reading, header, Entry::part, header.first);
    if (pieces) {
        out.name = reading.name_in(*pieces);
        if (const Piece* like = pieces->find(Form::like_part))
            if (const Piece* other = like->find(Form::part_name)) out.like = reading.part_name(*other);
    }
    for (const Stretch& stretch : further(header)) {
        if (looks_like_phrase(reading, stretch) && !begins_copies(reading, stretch)) {
            read_phrases(reading, stretch, nullptr, out.phrases);
        } else if (auto copies = read_copies(reading, stretch)) {
            out.copies.push_back(std::move(*copies));
        }
    }
    read_phrase_lines(reading, header.line.block, out.phrases, header.strays);
    return pieces ? Told(std::move(out)) : broken(header);
}

Told build_recipe(const Reading& reading, const Header& header) {
    RecipeIs out;
    const auto pieces = matched(reading, header, Entry::recipe, header.whole);
    if (pieces) out.name = reading.name_in(*pieces);
    if (header.line.block.empty())
        reading.report.error("block-missing", header.line.begin, header.word_end,
                             "the recipe has no statements below it",
                             "write its statements on the lines below, set deeper");
    read_statements(reading, header.line.block, true, out.body);
    return pieces ? Told(std::move(out)) : broken(header);
}

Told build_takes(const Reading& reading, const Header& header) {
    Takes out;
    std::vector<Stretch> stretches = further(header);
    stretches.insert(stretches.begin(), header.first);
    for (const Stretch& stretch : stretches)
        if (auto value = read_value(reading, stretch, Entry::takes, "takes NAME, NAME = SIZE"))
            out.values.push_back(std::move(*value));
    return out;
}

Told build_make(const Reading& reading, const Header& header) {
    MakeIs out;
    const auto pieces = matched(reading, header, Entry::make, header.first);
    if (pieces) {
        std::vector<Name> names;
        for (const Piece& piece : pieces->parts)
            if (piece.form == Form::name || piece.form == Form::quoted) names.push_back(reading.name(piece));
        if (names.size() == 2) {
            out.name = std::move(names[0]);
            out.recipe = std::move(names[1]);
        }
    }
    for (const Stretch& stretch : further(header)) {
        if (begins_copies(reading, stretch)) {
            if (auto copies = read_copies(reading, stretch)) out.copies.push_back(std::move(*copies));
        } else {
            read_given(reading, stretch, out);
        }
    }
    for (const Line& line : header.line.block) {
        report_depth(reading, line);
        for (const Stretch& stretch : line.stretches) read_given(reading, stretch, out);
    }
    return pieces ? Told(std::move(out)) : broken(header);
}

} // namespace rayfleck::syntax
