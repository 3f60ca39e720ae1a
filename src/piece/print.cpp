// The piece as text, one thing a line: what the tests of this room compare.

#include <fmt/format.h>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

/// Exact where it is short, else to four places; no -0.
std::string number(double value) {
    std::string out = fmt::format("{:.4f}", value);
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
    return out == "-0" ? "0" : out;
}

std::string number(Length length) {
    const Rational mm = length.in_mm();
    if (mm.is_whole()) return std::to_string(mm.top());
    const std::string short_text = measure::decimal(mm, 4);
    // Thirds and the like stay fractions, so that exactness shows.
    Rational scaled = mm * Rational(10000);
    if (scaled.is_whole() || mm.bottom() > 100000) return short_text;
    return fmt::format("{}/{}", mm.top(), mm.bottom());
}

std::string vector(Vector v) { return fmt::format("({} {} {})", number(v.x), number(v.y), number(v.z)); }

/// `across`, `-deep` for axes along the piece's, else the components.
std::string axis(Vector v) {
    for (const Direction d : directions)
        for (const bool high : {true, false})
            if (norm(v - unit_vector(d, high)) < 1e-12) return (high ? "" : "-") + text(d);
    return vector(v);
}

std::string side(LocalSide s) {
    constexpr std::array axes{"x", "y", "z"};
    return (s.high ? "+" : "-") + std::string(axes[static_cast<std::size_t>(s.axis)]);
}

std::string outline(const solid::Outline& o) {
    std::string out = fmt::format("{},{}", number(o.start.x), number(o.start.y));
    for (std::size_t i = 0; i < o.edges.size(); ++i) {
        const solid::Edge2& edge = o.edges[i];
        out += edge.centre ? fmt::format(" arc {} about {},{} to ", edge.anticlockwise ? "left" : "right",
                                         number(edge.centre->x), number(edge.centre->y))
                           : std::string(" ");
        out += fmt::format("{},{}", number(edge.to.x), number(edge.to.y));
        if (!o.smooth.empty() && o.smooth[i] > 0) out += fmt::format("~{}", o.smooth[i]);
    }
    return out;
}

struct ShapeText {
    std::string operator()(const PlaneCut& c) const {
        std::string out = fmt::format("beyond {} . p = {}", vector(c.plane.normal), number(c.plane.offset));
        if (c.miter) out += fmt::format(", miter {}", number(c.miter->in_degrees()));
        if (c.bevel) out += fmt::format(", bevel {}", number(c.bevel->in_degrees()));
        return out;
    }
    std::string operator()(const EdgeCut& c) const {
        return fmt::format("{} at {} {}, {} x {}", c.profile, side(c.first), side(c.second),
                           number(c.on_first), number(c.on_second));
    }
    std::string operator()(const BoreCut& c) const {
        std::string out =
            fmt::format("{} in {} at {}, {}", number(c.diameter), side(c.face), vector(c.centre),
                        c.deep ? number(*c.deep) + " deep" : std::string("through"));
        if (c.direction) out += " along " + vector(*c.direction);
        return out;
    }
    std::string operator()(const BoxCut& c) const { return vector(c.box.low) + " to " + vector(c.box.high); }
    std::string operator()(const PrismCut& c) const {
        return fmt::format("prism {} z {} from {} to {}: {}", vector(c.frame.origin), axis(c.frame.z),
                           number(c.from), number(c.to), outline(c.outline));
    }
    std::string operator()(const TurnedCut& c) const {
        std::string out;
        for (const solid::Station& s : c.profile)
            out += fmt::format("{}{}:{}{}", out.empty() ? "" : " ", number(s.x), number(s.radius),
                               s.smooth ? "~" : "");
        return out;
    }
};

void print_part(const Part& part, std::string& out) {
    out += fmt::format("part {}: {} x {} x {}", part.name, number(part.thickness), number(part.width),
                       number(part.length));
    if (part.species) out += fmt::format(", {}", part.species->trade_name);
    out += fmt::format(", {}{}", wood::text(part.sawn), part.sawn_stated ? "" : " (not told)");
    if (!part.stock.empty()) out += ", stock " + part.stock;
    if (part.mirrored) out += ", mirrored";
    if (part.sapwood_allowed) out += ", sapwood allowed";
    if (part.loose) out += ", loose";
    if (part.carries) out += ", carries " + part.carries->words;
    out += "\n";
    out += fmt::format("  at {}, x {}, y {}, z {}, face edge {}\n", vector(part.frame.origin),
                       axis(part.frame.x), axis(part.frame.y), axis(part.frame.z),
                       part.face_edge_high ? "+y" : "-y");
    if (part.rings.in_degrees() != wood::ring_angle(part.sawn).in_degrees())
        out += fmt::format("  rings {}\n", number(part.rings.in_degrees()));
    if (part.pith)
        out += fmt::format("  pith {} across, {} through\n", number(part.pith->y), number(part.pith->z));
    if (part.bark) out += fmt::format("  bark {}\n", side(*part.bark));
    if (part.grain.in_degrees() != 0) out += fmt::format("  grain {}\n", number(part.grain.in_degrees()));
    if (part.glue_up) {
        out += part.glue_up->laminated ? "  layers" : "  staves";
        if (part.glue_up->count) out += fmt::format(" {}", *part.glue_up->count);
        if (part.glue_up->at_most_wide)
            out += fmt::format(" at most {}", number(*part.glue_up->at_most_wide));
        out += part.glue_up->alternating ? " alternating\n" : "\n";
    }
    if (part.outline) out += fmt::format("  outline {}\n", outline(*part.outline));
    for (const Cut& cut : part.shaping)
        out += fmt::format("  {} {}{}{}\n", cut.word, std::visit(ShapeText{}, cut.shape),
                           cut.remark.empty() ? "" : ", ", cut.remark);
    for (const Note& note : part.notes) out += fmt::format("  note \"{}\"\n", note.text);
}

std::string names(const Piece& piece, const std::vector<int>& ids) {
    std::string out;
    for (const int id : ids)
        out += (out.empty() ? "" : ", ") + piece.parts[static_cast<std::size_t>(id)].name;
    return out;
}

void print_joint(const Piece& piece, const JointWanted& joint, std::string& out) {
    out += fmt::format("join {} to {} with {}\n", names(piece, joint.a), names(piece, joint.b), joint.kind);
    for (const OptionGiven& option : joint.options) {
        out += "  " + option.words;
        for (const double value : option.values) out += " " + number(value);
        if (option.side) out += " " + text(*option.side);
        if (!option.quoted.empty()) out += " \"" + option.quoted + "\"";
        out += "\n";
    }
    for (const Note& note : joint.notes) out += fmt::format("  note \"{}\"\n", note.text);
}

void print_shop(const Shop& shop, std::string& out) {
    for (const auto& [saw, width] : shop.kerfs) out += fmt::format("kerf {} {}\n", saw, number(width));
    for (const Shop::Limit& limit : shop.limits)
        out += fmt::format("limit {} {} {}\n", limit.machine, limit.what, number(limit.amount));
    for (const Shop::Board& board : shop.boards) {
        out += fmt::format("board {}: {} x {} x {}, {}, {}, {}, {} off\n", board.id, number(board.thickness),
                           number(board.width), number(board.length), board.wood, board.stock, board.sawn,
                           board.count);
        if (board.rings) out += fmt::format("  rings {}\n", number(*board.rings));
        if (board.bark) out += "  bark " + text(*board.bark) + "\n";
        if (board.sapwood_front > Length() || board.sapwood_back > Length())
            out += fmt::format("  sapwood {} front, {} back\n", number(board.sapwood_front),
                               number(board.sapwood_back));
        if (board.checks_left > Length() || board.checks_right > Length())
            out += fmt::format("  checks {} left, {} right\n", number(board.checks_left),
                               number(board.checks_right));
        for (const Shop::Board::Flaw& flaw : board.flaws)
            out +=
                fmt::format("  {}{} along {}, across {}: {} x {}\n", flaw.round ? "round " : "", flaw.kind,
                            number(flaw.along), number(flaw.across), number(flaw.length), number(flaw.width));
    }
    for (const Shop::Price& price : shop.prices) {
        out += fmt::format("price {} {} {} per {}", price.wood, price.stock, number(price.amount), price.per);
        if (!price.sawn.empty()) out += ", " + price.sawn;
        if (price.widths)
            out += fmt::format(", {} to {} wide", number(price.widths->first), number(price.widths->second));
        if (price.sheet)
            out += fmt::format(", sheets {} x {}", number(price.sheet->first), number(price.sheet->second));
        for (const Length length : price.lengths) out += " " + number(length);
        out += "\n";
    }
}

} // namespace

std::string print(const Piece& piece) {
    std::string out = fmt::format("piece \"{}\"\n", piece.title);
    if (!piece.size_name.empty()) out += fmt::format("size {}\n", piece.size_name);
    if (piece.climate_stated)
        out += fmt::format("climate {} to {} %, {}\n", number(piece.climate.driest.in_percent()),
                           number(piece.climate.dampest.in_percent()), piece.climate.basis);
    for (const Rod& rod : piece.rods) {
        if (rod.lines.empty()) continue;
        out += "rod " + text(rod.direction);
        for (const Line& line : rod.lines) out += fmt::format(" {} {}", line.name, number(line.at));
        out += "\n";
    }
    for (const Part& part : piece.parts) print_part(part, out);
    for (const JointWanted& joint : piece.joints) print_joint(piece, joint, out);
    for (const Hardware& hardware : piece.hardware)
        out += fmt::format("hardware \"{}\" {} off, on {} to {}\n", hardware.name, hardware.count,
                           names(piece, hardware.on), names(piece, hardware.to));
    for (const Note& note : piece.notes) out += fmt::format("note \"{}\"\n", note.text);
    for (const Acceptance& accepted : piece.acceptances)
        out += fmt::format("accept {} on {} because \"{}\"\n", accepted.check, names(piece, accepted.parts),
                           accepted.reason);
    for (const Match& match : piece.matches) {
        static constexpr const char* how[] = {"in sequence", "book-matched", "from one board"};
        out += fmt::format("match {}, {}\n", names(piece, match.parts), how[static_cast<int>(match.how)]);
    }
    print_shop(piece.shop, out);
    return out;
}

} // namespace rayfleck::piece
