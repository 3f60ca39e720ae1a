// Half lap and cross lap: where two parts cross in one level, wood of each makes room for the other.
//
// before            after
//    |B|               |B|
//  --+-+--          --+---+--  each gives up its half
//  A |B| A           A|   |A
//  --+-+--          --+---+--
//
// What A loses is B's body below the plane of the lap, and the other way about, so crossings at any angle
// fit. At a corner or a T, where a body stops at the other's side, its end first grows across. A keeps its
// face side. Left out: laps of parts that lean out of each other's plane.

#include <algorithm>
#include <cmath>

#include "joinery/kinds.hpp"
#include "joinery/waste.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

std::pair<double, double> reach_along(const Bench& bench, int id, Vector direction) {
    const piece::Part& part = bench.part(id);
    const Box box = blank_of(bench, id);
    const Vector own = part.frame.turn_in(direction);
    double middle = dot(part.frame.origin, direction), half = 0;
    for (int i = 0; i < 3; ++i) {
        middle += own[i] * (box.low[i] + box.high[i]) / 2;
        half += std::abs(own[i]) * (box.high[i] - box.low[i]) / 2;
    }
    return {middle - half, middle + half};
}

/// Takes the body of `other`, between two levels of a direction that is one of its own axes, away from
/// `from`.
void cut_by_body(Bench& bench, int from, int other, int joint, const std::string& word, Vector direction,
                 double low, double high) {
    const piece::Part& part = bench.part(other);
    Box box = blank_of(bench, other);
    const LocalSide side = side_towards(part, direction);
    const double origin = dot(part.frame.origin, direction), sign = side.high ? 1 : -1;
    const double p = (low - origin) * sign, q = (high - origin) * sign;
    box.low[side.axis] = std::max(box.low[side.axis], std::min(p, q));
    box.high[side.axis] = std::min(box.high[side.axis], std::max(p, q));
    bench.cut_box(from, joint, word, other, box);
}

/// Grows A's end across B where it only touches it.
void grow_across(Bench& bench, int a, int b) {
    const auto meeting = meeting_of(bench.part(a), bench.part(b), Prefer::ends);
    if (!meeting || meeting->axis() != 0 || meeting->gap < -touching_within) return;
    if (meeting->square) {
        bench.grow(a, meeting->from, Length::from_geometry(meeting->gap + meeting->deep));
        return;
    }
    const Box whole{{}, {0, size_of(bench.part(a), 1), size_of(bench.part(a), 2)}};
    bench.grow(a, meeting->from,
               Length::from_geometry(meeting->reach_of(bench.part(a), meeting->far, whole).second));
    const int joint = static_cast<int>(bench.joint_count()) - 1;
    bench.cut(a, joint, "end trim", piece::PlaneCut{meeting->far, {}, {}});
}

/// Middle of what both share, in the piece's frame.
Point middle_between(const Bench& bench, const Pair& pair) {
    Point at;
    for (int i = 0; i < 3; ++i) {
        Vector axis;
        axis[i] = 1;
        const auto [al, ah] = reach_along(bench, pair.a, axis);
        const auto [bl, bh] = reach_along(bench, pair.b, axis);
        at[i] = (std::max(al, bl) + std::min(ah, bh)) / 2;
    }
    return at;
}

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const Options options(*pair.wanted);
    const Vector normal = cross(a.frame.x, b.frame.x);
    const bool in_line = norm(normal) < 1e-6;
    Vector across = in_line ? a.frame.z : unit(normal);
    const LocalSide side_a = side_towards(a, across), side_b = side_towards(b, across);
    const auto is_flat = [&](const piece::Part& part, LocalSide side) {
        return std::abs(std::abs(dot(part.frame.turn_out(outward(side)), across)) - 1) < 1e-6;
    };
    if (!is_flat(a, side_a) || !is_flat(b, side_b)) {
        bench.refuse(pair, "lap-out-of-plane",
                     a.name + " and " + b.name + " do not lie flat on each other, so no lap fits",
                     "lay them in one plane, or use notch over");
        return;
    }
    if (dot(across, a.frame.turn_out(outward({side_a.axis, true}))) < 0) across = -across;
    const auto [al, ah] = reach_along(bench, pair.a, across);
    const auto [bl, bh] = reach_along(bench, pair.b, across);
    const double low = std::max(al, bl), high = std::min(ah, bh);
    if (high - low < touching_within) {
        bench.refuse(pair, "lap-has-no-wood",
                     a.name + " and " + b.name + " share no thickness, so there is nothing to lap",
                     "place both in one level, or use glue or screws");
        return;
    }
    const int joint = bench.start(pair, pair.wanted->kind, -across, {});
    grow_across(bench, pair.a, pair.b);
    if (pair.wanted->kind == "half lap") grow_across(bench, pair.b, pair.a);
    bench.joint(joint).at = middle_between(bench, pair);
    Length rule = rules::half_lap_depth.share_of(exact_size_of(a, side_a.axis));
    std::string from = from_rule(rules::half_lap_depth);
    if (std::abs(ah - bh) > 1e-6 || std::abs(al - bl) > 1e-6) {
        rule = Length::from_geometry((low + high) / 2 - al);
        from += ", taken in the middle of what both share";
    }
    const Length deep = bench.size(joint, "lap depth", options.length("deep"), rule, from);
    const double level = al + deep.value();
    cut_by_body(bench, pair.a, pair.b, joint, "lap", across, bl, std::min(level, bh));
    cut_by_body(bench, pair.b, pair.a, joint, "lap", across, std::max(level, al), ah);
    bench.note_size(joint, "lap depth in " + b.base, bh - level, "mm", "what A keeps");
    HoldRule hold;
    hold.joint = joint;
    if (options.has("dry")) {
        hold.hold = Hold::free;
        hold.may_slide = {across};
    }
    if (options.has("pegged")) {
        const Length d =
            bench.size(joint, "peg diameter", options.length("pegged"),
                       bench.either(Length::mm(8), Length::in({5, 16})), from_custom("8 mm or 5/16 in"));
        const Point at = bench.joint(joint).at;
        for (const int id : {pair.a, pair.b})
            bench.bore(id, joint, "peg hole", at, -across, d.value(), std::nullopt);
        bench.hardware(pair,
                       "peg " + hardware_size(bench, d.value()) + " x " +
                           hardware_size(bench, std::max(ah, bh) - std::min(al, bl)),
                       1);
        hold.held_at = {at};
        if (options.has("dry")) {
            hold.hold = Hold::fastened;
            hold.may_slide.clear();
        }
    }
    bench.hold(std::move(hold));
}

} // namespace

void laps(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
