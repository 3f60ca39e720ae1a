// Breadboard end: the panel's end has a tongue all along and a few tenons; the cross piece has a groove and
// mortises.
//
//   join top to breadboard with breadboard end, pegged
//
//   panel        |‾|___        the middle tenon fits and is glued, the outer ones have play along
//   ------+      | |###|       the cross piece, so that the panel can widen and narrow
//   tongue|======|_|###|
//   ------+      | |###|
//
// Tongue a third of the panel thick; groove half as deep as the panel is thick, 6 to 12 mm; tenons two thirds
// of the cross piece's width; one, three or five of them. The play is the movement of half the panel over the
// year, and 1 mm.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/kinds.hpp"
#include "joinery/tongue.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

constexpr double usual_distance = 250; // mm from tenon to tenon, no published source
constexpr double widest_tenon = 60;    // mm, unless stated; no published source

struct Board {
    Pair pair;
    Meeting meeting;
};

/// The panel is the one that comes with its end, whichever the text names first.
std::optional<Board> board_of(const Bench& bench, const Pair& pair) {
    for (const bool turned : {false, true}) {
        Pair way = pair;
        if (turned) std::swap(way.a, way.b);
        const auto meeting = meeting_of(bench.part(way.a), bench.part(way.b), Prefer::any_side);
        if (meeting && meeting->axis() == 0 && meeting->square) return Board{way, *meeting};
    }
    return std::nullopt;
}

void bore_for_peg(Bench& bench, const Board& board, int joint, int t, int w, double at_w, double into,
                  double diameter, double room) {
    const piece::Part& a = bench.part(board.pair.a);
    Point own;
    own.x = coordinate(a, board.meeting.from, board.meeting.gap + into);
    own[w] = at_w;
    own[t] = size_of(a, t) / 2;
    const Point at = a.frame.out(own);
    const Vector through = a.frame.turn_out(outward({t, false}));
    bench.bore(board.pair.b, joint, "peg hole", at, through, diameter, std::nullopt);
    if (room <= 0) {
        bench.bore(board.pair.a, joint, "peg hole", at, through, diameter, std::nullopt);
        return;
    }
    Frame frame;
    frame.origin = own;
    frame.x = outward({w, true});
    frame.z = outward({t, true});
    frame.y = cross(frame.z, frame.x);
    const double r = diameter / 2, half = size_of(a, t) / 2;
    solid::Outline slot;
    slot.start = {-room, -r};
    slot.edges = {{{room, -r}, {}, true},
                  {{room, r}, solid::Point2{room, 0}, true},
                  {{-room, r}, {}, true},
                  {{-room, -r}, solid::Point2{-room, 0}, true}};
    bench.cut(board.pair.a, joint, "peg slot", piece::PrismCut{frame, slot, -half, half});
}

void lay_out(Bench& bench, const Pair& wanted) {
    const auto board = board_of(bench, wanted);
    if (!board) {
        bench.refuse(wanted, "breadboard-needs-an-end",
                     "no end of " + bench.part(wanted.a).name + " lies along " + bench.part(wanted.b).name,
                     "set the cross piece against the end of the panel");
        return;
    }
    const Pair& pair = board->pair;
    const Meeting& meeting = board->meeting;
    const piece::Part& a = bench.part(pair.a);
    const Options options(*pair.wanted);
    const int t = 2, w = 1;
    const Vector line = a.frame.turn_out(outward({w, true}));
    const int joint = bench.start(pair, options.has("pegged") ? "breadboard end, pegged" : "breadboard end",
                                  meeting.into, {});

    const Length stock = exact_size_of(a, t);
    const Length thick =
        bench.size(joint, "tongue thickness", options.length("thick"),
                   rules::tongue_thickness.share_of(stock), from_rule(rules::tongue_thickness));
    const Length deep =
        bench.size(joint, "tongue length", options.length("deep"),
                   std::clamp(rules::groove_depth.share_of(stock), wood::length(rules::groove_depth_least),
                              wood::length(rules::groove_depth_greatest)),
                   from_rule(rules::groove_depth) + ", 6 to 12 mm");
    const Length tenon =
        std::max(deep, bench.size(joint, "tenon length", options.length("long"),
                                  Length::from_geometry(meeting.deep) * measure::Rational(2, 3),
                                  from_custom("two thirds of the cross piece")));
    const double low = meeting.window.low[w], high = meeting.window.high[w], width = high - low;
    const double every = options.length("every").value_or(Length::from_geometry(usual_distance)).value();
    int count =
        2 * static_cast<int>(std::floor(width / every / 2 + 0.5)) + 1; // odd: one stands in the middle
    count = std::clamp(count, 1, 51);
    const double pitch = width / count;
    const Length wide = bench.size(joint, "tenon width", options.length("wide"),
                                   Length::from_geometry(std::min(pitch / 2, widest_tenon)),
                                   from_custom("half the distance, at most 60 mm"));
    bench.note_size(joint, "tenons", count, "", from_custom("an odd number, 250 mm apart at most"));
    const double moves = bench.movement(pair.a, line, width / 2);
    const Length gap =
        bench.size(joint, "play of the outer tenons", options.length("gap"),
                   Length::mm(measure::Rational(static_cast<std::int64_t>(std::ceil(moves + 1 - 1e-9)))),
                   "movement of half the panel over the year, and 1 mm, either way");

    Box tongue = meeting.window;
    tongue.low[t] = (size_of(a, t) - thick.value()) / 2;
    tongue.high[t] = (size_of(a, t) + thick.value()) / 2;
    bench.joint(joint).at = middle_of(bench, pair, meeting, tongue, tenon.value());
    std::vector<Tongue> tongues{{tongue, deep, ""}};
    bench.cut_box(pair.b, joint, "groove", pair.a,
                  meeting.box(a, tongue, meeting.gap, meeting.gap + deep.value()));
    const Length peg = options.length("pegged").value_or(bench.either(Length::mm(8), Length::in({5, 16})));
    HoldRule rule;
    rule.joint = joint;
    const double middle = (low + high) / 2;
    for (int i = 0; i < count; ++i) {
        const double at = low + (i + 0.5) * pitch;
        const bool centre = 2 * i + 1 == count;
        Box section = tongue;
        section.low[w] = at - wide.value() / 2;
        section.high[w] = at + wide.value() / 2;
        tongues.push_back({section, tenon, ""});
        Box mortise = section;
        if (!centre) {
            mortise.low[w] = std::max(low, mortise.low[w] - gap.value());
            mortise.high[w] = std::min(high, mortise.high[w] + gap.value());
        }
        bench.cut_box(pair.b, joint, "mortise", pair.a,
                      meeting.box(a, mortise, meeting.gap, meeting.gap + tenon.value()),
                      centre ? "" : "longer than its tenon");
        if (options.has("pegged")) {
            const double into = deep.value() + (tenon.value() - deep.value()) / 2;
            bore_for_peg(bench, *board, joint, t, w, at, into, peg.value(), centre ? 0 : gap.value());
            Point p;
            p.x = coordinate(a, meeting.from, meeting.gap + into);
            p[w] = at;
            p[t] = size_of(a, t) / 2;
            rule.held_at.push_back(a.frame.out(p));
        }
    }
    Fit fit;
    fit.cheek = "tongue";
    fit.cut_socket = false;
    let_in(bench, pair, joint, meeting, tongues, fit);
    if (options.has("pegged")) {
        bench.note_size(joint, "peg diameter", peg.value(), "mm",
                        options.length("pegged") ? "stated" : from_custom("8 mm or 5/16 in"));
        bench.hardware(pair,
                       fmt::format("peg {} x {}", hardware_size(bench, peg.value()),
                                   hardware_size(bench, size_of(a, t))),
                       count);
    }
    // Held in the middle only, unless the text wants glue all along.
    rule.hold = options.has("pegged") ? Hold::fastened : Hold::free;
    rule.may_slide = {line};
    rule.room = gap.value();
    const piece::OptionGiven* glued = options.find("glued");
    if (glued != nullptr && (glued->side || glued->words.find("middle") == std::string::npos)) {
        const double l = dot(a.frame.out(meeting.window.low), line),
                     h = dot(a.frame.out(meeting.window.high), line);
        read_glue(bench, options, rule, line, std::min(l, h), std::max(l, h));
    } else if (!options.has("dry")) {
        Point p;
        p[w] = middle;
        const double at = dot(a.frame.out(p), line);
        rule.stretches.push_back({line, at - wide.value() / 2, at + wide.value() / 2, Hold::glued});
    }
    bench.hold(std::move(rule));
}

} // namespace

void breadboard_ends(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
