// Phrases that say what a part's board is and where the part stands, out of their pieces.

#include <utility>

#include "syntax/build_phrase.hpp"

namespace rayfleck::syntax {
namespace {

Expression name_or_text(const Reading& reading, const Piece& piece) {
    Expression out;
    out.kind = piece.find(Form::quoted) ? Expression::Kind::quoted : Expression::Kind::name;
    const Name name = reading.name_in(piece);
    out.word = name.text;
    out.span = name.span;
    return out;
}

Expression first_size(const Reading& reading, const Piece& piece) {
    if (const Piece* sum = piece.find(Form::sum)) return reading.expression(*sum);
    return {};
}

SizeOf size_named(std::string_view word) {
    return word == "thick" ? SizeOf::thick : word == "wide" ? SizeOf::wide : SizeOf::long_;
}

SideName first_side(const Reading& reading, const Piece& piece) {
    if (const Piece* side = piece.find(Form::side)) return reading.side(*side);
    return {};
}

PartName first_part(const Reading& reading, const Piece& piece) {
    if (const Piece* part = piece.find(Form::part_name)) return reading.part_name(*part);
    return {};
}

} // namespace

Says build_wood(const Reading& reading, const Piece& pieces, std::string_view) {
    return WoodIs{name_or_text(reading, pieces)};
}

Says build_sawn(const Reading&, const Piece&, std::string_view word) {
    return SawnIs{std::string(word), std::nullopt};
}

Says build_rings(const Reading& reading, const Piece& pieces, std::string_view) {
    return SawnIs{"", first_size(reading, pieces)};
}

Says build_pith(const Reading& reading, const Piece& pieces, std::string_view) {
    PithAt out;
    for (const Piece* place : pieces.all(Form::pith_place)) {
        const Piece* which = place->find(Form::which);
        out.places.push_back({first_size(reading, *place), which && reading.words(*which) == "beyond",
                              first_side(reading, *place)});
    }
    return out;
}

Says build_bark(const Reading& reading, const Piece& pieces, std::string_view word) {
    const Piece* which = pieces.find(Form::which);
    return BarkIs{word == "heart", which && reading.words(*which) == "edge", first_side(reading, pieces)};
}

Says build_stock(const Reading& reading, const Piece& pieces, std::string_view) {
    return StockIs{reading.name_in(pieces)};
}

Says build_sizes(const Reading& reading, const Piece& pieces, std::string_view) {
    SizeIs out;
    std::vector<Expression> sizes = reading.sizes(pieces);
    const Piece* label = pieces.find(Form::which);
    if (const Piece* labelled = pieces.find(Form::size_labelled)) label = labelled->find(Form::which);
    if (label) {
        out.sizes.emplace_back(size_named(reading.words(*label)), std::move(sizes.front()));
        return out;
    }
    constexpr SizeOf order[] = {SizeOf::thick, SizeOf::wide, SizeOf::long_};
    for (std::size_t i = 0; i < sizes.size() && i < 3; ++i)
        out.sizes.emplace_back(order[i], std::move(sizes[i]));
    return out;
}

Says build_grain(const Reading& reading, const Piece& pieces, std::string_view) {
    return GrainAt{first_size(reading, pieces)};
}

Says build_glued_up(const Reading& reading, const Piece& pieces, std::string_view) {
    GluedUp out;
    if (const Piece* most = pieces.find(Form::at_most)) out.at_most_wide = first_size(reading, *most);
    if (const Piece* counted = pieces.find(Form::counted)) out.count = first_size(reading, *counted);
    if (const Piece* faces = pieces.find(Form::bark_faces))
        if (const Piece* which = faces->find(Form::which)) out.faces = std::string(reading.words(*which));
    return out;
}

Says build_laminated(const Reading& reading, const Piece& pieces, std::string_view) {
    GluedUp out;
    out.count = first_size(reading, pieces);
    out.thick = true;
    return out;
}

Says build_carries(const Reading& reading, const Piece& pieces, std::string_view) {
    CarriesIs out;
    const Piece* amount = pieces.find(Form::amount);
    if (!amount) {
        out.books = true;
        return out;
    }
    // A bare number without unit, so that it is read as any other.
    Piece number = *amount, inner = *amount;
    inner.parts.clear();
    number.form = Form::number;
    number.parts = {inner};
    out.amount = reading.expression(number);
    const auto begins = [&](Form form, char letter) {
        const Piece* word = pieces.find(form);
        return word != nullptr && reading.words(*word).front() == letter;
    };
    out.pounds = begins(Form::load_unit, 'l');
    out.per_metre = begins(Form::load_length, 'm');
    out.per_foot = begins(Form::load_length, 'f');
    out.in_the_middle = pieces.find(Form::load_middle) != nullptr;
    return out;
}

Says build_sapwood(const Reading&, const Piece&, std::string_view) { return SapwoodAllowed{}; }

Says build_loose(const Reading&, const Piece&, std::string_view) { return Loose{}; }

Says build_note(const Reading& reading, const Piece& pieces, std::string_view) {
    return NoteIs{reading.quoted_in(pieces)};
}

Says build_runs(const Reading& reading, const Piece& pieces, std::string_view) {
    return RunsAlong{reading.direction_in(pieces).value_or(Direction::up)};
}

Says build_face(const Reading& reading, const Piece& pieces, std::string_view) {
    const Piece* which = pieces.find(Form::which);
    return FaceLooks{which && reading.words(*which) == "edge", first_side(reading, pieces)};
}

Says build_from(const Reading& reading, const Piece& pieces, std::string_view) {
    const std::vector<const Piece*> points = pieces.all(Form::point);
    if (points.size() == 2) return PointToPoint{reading.positions(*points[0]), reading.positions(*points[1])};
    if (const Piece* stretch = pieces.find(Form::from_to)) return reading.from_to(*stretch);
    return Broken{};
}

Says build_between(const Reading& reading, const Piece& pieces, std::string_view) {
    Between out;
    out.a = first_part(reading, pieces);
    if (const Piece* second = pieces.find(Form::second_part)) out.b = first_part(reading, *second);
    out.direction = reading.direction_in(pieces);
    return out;
}

Says build_side_at(const Reading& reading, const Piece& pieces, std::string_view word) {
    SideAt out;
    out.side.side = side_named(word).value_or(Side::left);
    const auto begin = static_cast<std::size_t>(word.data() - reading.text.data());
    out.side.span = reading.span(begin, begin + word.size());
    std::vector<Expression> positions = reading.positions(pieces);
    if (!positions.empty()) out.position = std::move(positions.front());
    return out;
}

Says build_centred(const Reading& reading, const Piece& pieces, std::string_view) {
    CentredOn out;
    out.direction = reading.direction_in(pieces);
    if (const Piece* between = pieces.find(Form::between)) {
        out.between = reading.positions(*between);
    } else if (const Piece* on = pieces.find(Form::on)) {
        if (const auto direction = reading.direction_in(*on)) out.direction = direction;
        out.between = reading.positions(*on);
        if (const Piece* part = on->find(Form::part_name)) {
            out.part = reading.part_name(*part);
            // One word may be a line as well as a part; which, the elaborator knows.
            if (!out.part->copy && part->find(Form::name) &&
                out.part->name.text.find(' ') == std::string::npos) {
                Expression line;
                line.kind = Expression::Kind::name;
                line.word = out.part->name.text;
                line.span = out.part->name.span;
                out.between.push_back(std::move(line));
            }
        }
    }
    return out;
}

Says build_set_back(const Reading& reading, const Piece& pieces, std::string_view) {
    SetBack out;
    out.distance = first_size(reading, pieces);
    out.from = first_side(reading, pieces);
    if (const Piece* of = pieces.find(Form::of_part)) out.of = first_part(reading, *of);
    return out;
}

Says build_overhanging(const Reading& reading, const Piece& pieces, std::string_view) {
    Overhanging out;
    out.part = first_part(reading, pieces);
    out.by = first_size(reading, pieces);
    out.all_round = pieces.find(Form::all_round) != nullptr;
    out.at = reading.sides(pieces);
    return out;
}

Says build_over(const Reading& reading, const Piece& pieces, std::string_view word) {
    return OverUnder{word == "over", first_part(reading, pieces)};
}

Says build_flush(const Reading& reading, const Piece& pieces, std::string_view) {
    return FlushWith{first_side(reading, pieces), first_part(reading, pieces)};
}

Says build_tilt(const Reading& reading, const Piece& pieces, std::string_view word) {
    Tilt out;
    out.word = std::string(word);
    for (const Piece* by : pieces.all(Form::tilt))
        out.by.emplace_back(first_size(reading, *by), first_side(reading, *by));
    return out;
}

Says build_turned_on_plan(const Reading& reading, const Piece& pieces, std::string_view) {
    return TurnedOnPlan{first_size(reading, pieces)};
}

} // namespace rayfleck::syntax
