// Phrases that cut a part's blank, out of their pieces; also the lines of outlines and turned profiles.

#include <algorithm>
#include <utility>

#include "syntax/build_phrase.hpp"

namespace rayfleck::syntax {
namespace {

using Stops = std::vector<std::pair<Expression, std::optional<SideName>>>;

SideName first_side(const Reading& reading, const Piece& piece) {
    if (const Piece* side = piece.find(Form::side)) return reading.side(*side);
    return {};
}

/// The size of that number among the direct sizes of a piece; broken when there are fewer.
Expression size_at(const Reading& reading, const Piece& piece, std::size_t number) {
    const std::vector<const Piece*> sums = piece.all(Form::sum);
    return number < sums.size() ? reading.expression(*sums[number]) : Expression{};
}

Stops stops(const Reading& reading, const Piece& pieces) {
    Stops out;
    for (const Piece* stop : pieces.all(Form::stop)) {
        std::optional<SideName> side;
        if (const Piece* from = stop->find(Form::side)) side = reading.side(*from);
        out.emplace_back(size_at(reading, *stop, 0), side);
    }
    return out;
}

EdgeName edge(const Reading& reading, const Piece& piece) {
    EdgeName out;
    if (const Piece* which = piece.find(Form::which)) out.which = std::string(reading.words(*which));
    out.sides = reading.sides(piece);
    out.span = reading.span(piece);
    return out;
}

std::pair<Expression, Expression> pair(const Reading& reading, const Piece& piece) {
    return {size_at(reading, piece, 0), size_at(reading, piece, 1)};
}

} // namespace

Says build_taper(const Reading& reading, const Piece& pieces, std::string_view) {
    Taper out;
    out.faces = reading.sides(pieces);
    out.to = size_at(reading, pieces, 0);
    if (const Piece* stretch = pieces.find(Form::from_to)) {
        FromTo reach = reading.from_to(*stretch);
        out.from_position = std::move(reach.from);
        out.to_position = std::move(reach.to);
    }
    return out;
}

Says build_edge_shape(const Reading& reading, const Piece& pieces, std::string_view word) {
    EdgeShape out;
    out.word = word == "round" ? "round-over" : std::string(word);
    if (word == "mould") out.word = reading.name_in(pieces).text;
    out.sizes = reading.sizes(pieces);
    for (const Piece* one : pieces.all(Form::edge)) out.edges.push_back(edge(reading, *one));
    return out;
}

Says build_miter(const Reading& reading, const Piece& pieces, std::string_view) {
    Miter out;
    out.angles = reading.sizes(pieces);
    out.end = first_side(reading, pieces);
    if (const Piece* towards = pieces.find(Form::long_to)) out.towards = first_side(reading, *towards);
    return out;
}

Says build_trim(const Reading& reading, const Piece& pieces, std::string_view word) {
    TrimTo out;
    out.word = std::string(word);
    out.side = first_side(reading, pieces);
    if (const Piece* at = pieces.find(Form::at_angle)) {
        out.angle = size_at(reading, *at, 0);
        out.towards = first_side(reading, *at);
    }
    std::vector<Expression> positions = reading.positions(pieces);
    if (!positions.empty()) out.position = std::move(positions.front());
    return out;
}

Says build_bore(const Reading& reading, const Piece& pieces, std::string_view) {
    Bore out;
    out.diameter = size_at(reading, pieces, 0);
    if (const Piece* deep = pieces.find(Form::deep_by)) out.deep = size_at(reading, *deep, 0);
    out.face = first_side(reading, pieces);
    out.at = reading.positions(pieces);
    if (const Piece* row = pieces.find(Form::row)) {
        out.row_count = size_at(reading, *row, 0);
        out.row_step = size_at(reading, *row, 1);
        out.row_direction = reading.direction_in(*row);
    }
    return out;
}

Says build_groove(const Reading& reading, const Piece& pieces, std::string_view) {
    Groove out;
    out.wide = size_at(reading, pieces, 0);
    out.deep = size_at(reading, pieces, 1);
    out.from_side = size_at(reading, pieces, 2);
    const std::vector<SideName> sides = reading.sides(pieces);
    if (sides.size() == 2) {
        out.face = sides[0];
        out.side = sides[1];
    }
    out.stopped = stops(reading, pieces);
    return out;
}

Says build_rabbet(const Reading& reading, const Piece& pieces, std::string_view) {
    Rabbet out;
    out.wide = size_at(reading, pieces, 0);
    out.deep = size_at(reading, pieces, 1);
    if (const Piece* one = pieces.find(Form::edge)) out.edge = edge(reading, *one);
    out.stopped = stops(reading, pieces);
    return out;
}

Says build_notch(const Reading& reading, const Piece& pieces, std::string_view) {
    Notch out;
    for (const Piece* stretch : pieces.all(Form::from_to)) out.spans.push_back(reading.from_to(*stretch));
    return out;
}

Says build_curve(const Reading& reading, const Piece& pieces, std::string_view) {
    CurveEdge out;
    out.edge = first_side(reading, pieces);
    if (const Piece* rise = pieces.find(Form::rise)) out.rise = size_at(reading, *rise, 0);
    if (const Piece* reach = pieces.find(Form::from_to)) out.reach = reading.from_to(*reach);
    if (const Piece* through = pieces.find(Form::through_pairs))
        for (const Piece* point : through->all(Form::pair)) out.through.push_back(pair(reading, *point));
    return out;
}

OutlineStep build_outline_step(const Reading& reading, const Piece& pieces) {
    OutlineStep out;
    if (pieces.parts.empty()) return out;
    const Piece& step = pieces.parts.front();
    std::vector<std::pair<Expression, Expression>> points;
    for (const Piece* point : step.all(Form::pair)) points.push_back(pair(reading, *point));
    // In the text the end stands first, then what the curve passes through; in the tree the end stands last.
    const auto end_last = [&] {
        if (points.size() > 1) std::rotate(points.begin(), points.begin() + 1, points.end());
    };
    switch (step.form) {
    case Form::step_start:
        out.kind = OutlineStep::Kind::start;
        break;
    case Form::step_line:
        out.kind = OutlineStep::Kind::line;
        break;
    case Form::step_curve:
        out.kind = OutlineStep::Kind::curve;
        end_last();
        break;
    case Form::step_arc:
        if (const Piece* through = step.find(Form::arc_through)) {
            out.kind = OutlineStep::Kind::arc_through;
            if (const Piece* point = through->find(Form::pair)) points.push_back(pair(reading, *point));
            end_last();
        } else if (const Piece* radius = step.find(Form::arc_radius)) {
            out.kind = OutlineStep::Kind::arc_radius;
            out.radius = size_at(reading, *radius, 0);
            if (const Piece* which = radius->find(Form::which))
                out.bulge = std::string(reading.words(*which));
        }
        break;
    case Form::step_close:
        out.kind = OutlineStep::Kind::close;
        break;
    default:
        break;
    }
    out.points = std::move(points);
    return out;
}

TurnedStation build_turned_station(const Reading& reading, const Piece& pieces) {
    TurnedStation out;
    if (const Piece* square = pieces.find(Form::turned_square)) {
        out.square = true;
        out.at = size_at(reading, *square, 0);
    } else if (const Piece* diameter = pieces.find(Form::turned_diameter)) {
        out.diameter = size_at(reading, *diameter, 0);
        out.at = size_at(reading, *diameter, 1);
        out.smooth = diameter->find(Form::smooth) != nullptr;
    } else {
        out.broken = true;
    }
    return out;
}

} // namespace rayfleck::syntax
