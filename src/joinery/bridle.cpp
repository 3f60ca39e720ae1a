// Bridle: an open mortise and tenon, as wide as the parts are.
//
//   at a corner: A's end is a tongue, B's end a fork        along B: A's end is a fork astride B
//
// The tongue is a third of the thickness. Both are cut through; nothing of the length is lost to shoulders at
// the edges.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/kinds.hpp"
#include "joinery/tongue.hpp"
#include "joinery/waste.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

struct Bridle {
    Pair pair;
    Meeting meeting;
    int thickness_axis = 2, width_axis = 1;
    bool corner = true;
};

std::optional<Bridle> bridle_of(const Bench& bench, const Pair& pair) {
    for (const bool turned : {false, true}) {
        Pair way = pair;
        if (turned) std::swap(way.a, way.b);
        const piece::Part &a = bench.part(way.a), &b = bench.part(way.b);
        const auto meeting = meeting_of(a, b, Prefer::ends);
        if (!meeting || meeting->axis() != 0) continue;
        Bridle bridle{way, *meeting, 2, 1, true};
        const Vector normal = cross(a.frame.x, b.frame.x);
        if (norm(normal) > 1e-6) bridle.thickness_axis = side_towards(a, normal).axis == 1 ? 1 : 2;
        bridle.width_axis = 3 - bridle.thickness_axis;
        // B goes on past A on either side: then A is the fork.
        Point p = (meeting->window.low + meeting->window.high) * 0.5;
        p.x = coordinate(a, meeting->from, meeting->gap + meeting->deep / 2);
        const double reach_low = meeting->window.low[bridle.width_axis] - 1,
                     reach_high = meeting->window.high[bridle.width_axis] + 1;
        int past = 0;
        for (const double edge : {reach_low, reach_high}) {
            Point q = p;
            q[bridle.width_axis] = edge;
            const Point own = b.frame.in(a.frame.out(q));
            if (own.x > 0 && own.x < size_of(b, 0)) ++past;
        }
        bridle.corner = past < 2;
        return bridle;
    }
    return std::nullopt;
}

void lay_out(Bench& bench, const Pair& wanted) {
    const auto found = bridle_of(bench, wanted);
    if (!found) {
        bench.refuse(wanted, "bridle-needs-an-end",
                     "no end of " + bench.part(wanted.a).name + " or " + bench.part(wanted.b).name +
                         " meets the other part",
                     "use a half lap where parts cross");
        return;
    }
    const Bridle& bridle = *found;
    const Pair& pair = bridle.pair;
    const Meeting& meeting = bridle.meeting;
    const piece::Part& a = bench.part(pair.a);
    const Options options(*pair.wanted);
    const int t = bridle.thickness_axis;
    const int joint = bench.start(pair, bridle.corner ? "bridle" : "bridle, astride", meeting.into, {});
    const Length thick =
        bench.size(joint, "tongue thickness", options.length("thick"),
                   rules::tenon_thickness.share_of(exact_size_of(a, t)), from_rule(rules::tenon_thickness));
    Box middle = meeting.window;
    const double centre = (middle.low[t] + middle.high[t]) / 2;
    middle.low[t] = centre - thick.value() / 2;
    middle.high[t] = centre + thick.value() / 2;
    if (const piece::OptionGiven* set = options.find("set");
        set != nullptr && set->side && !set->lengths.empty()) {
        const double way = a.frame.turn_in(bench.towards(*set->side, pair.a))[t],
                     d = set->lengths.front().value();
        if (std::abs(way) > 0.7) {
            middle.low[t] = way > 0 ? size_of(a, t) - d - thick.value() : d;
            middle.high[t] = middle.low[t] + thick.value();
        }
    }
    bench.joint(joint).at = middle_of(bench, pair, meeting, meeting.window, meeting.deep);
    Fit fit;
    fit.through = true;
    if (bridle.corner) {
        fit.cheek = "bridle cheek";
        fit.socket = "bridle slot";
        const Length deep = options.length("deep").value_or(Length::from_geometry(meeting.deep));
        fit.through = !options.has("deep");
        bench.note_size(joint, "tongue length", deep.value(), "mm",
                        options.has("deep") ? "stated" : "through the other part");
        let_in(bench, pair, joint, meeting, {{middle, deep, ""}}, fit);
    } else {
        fit.cheek = "end trim";
        fit.cut_socket = false;
        bench.note_size(joint, "fork length", meeting.deep, "mm", "across the other part");
        let_in(bench, pair, joint, meeting, {{meeting.window, Length::from_geometry(meeting.deep), ""}}, fit);
        // The slot's bottom lies in B's near face, whatever way that leans.
        const Plane bottom{-meeting.face.normal, -meeting.face.offset};
        if (auto slot = beyond(bottom, t, middle.low[t], middle.high[t], blank_of(bench, pair.a)))
            bench.cut(pair.a, joint, "bridle slot", std::move(*slot));
        const auto near = meeting.reach_of(a, meeting.face, meeting.window),
                   far = meeting.reach_of(a, meeting.far, meeting.window);
        const double margin = meeting.square ? 0 : 1;
        for (const bool upper : {false, true}) {
            Box cheek = meeting.window;
            if (upper)
                cheek.low[t] = middle.high[t];
            else
                cheek.high[t] = middle.low[t];
            // Out to B's own faces, should B be the thicker one.
            bench.cut_box(pair.b, joint, "bridle cheek", pair.a,
                          meeting.box(a, cheek, near.first - margin, far.second + margin));
        }
    }
    HoldRule rule;
    rule.joint = joint;
    if (options.has("dry")) {
        rule.hold = Hold::free;
        rule.may_slide = {meeting.into};
    }
    if (options.has("pegged")) {
        const Length d =
            bench.size(joint, "peg diameter", options.length("pegged"),
                       bench.either(Length::mm(8), Length::in({5, 16})), from_custom("8 mm or 5/16 in"));
        const Point at = bench.joint(joint).at;
        const Vector through = a.frame.turn_out(outward({t, false}));
        for (const int id : {pair.a, pair.b})
            bench.bore(id, joint, "peg hole", at, through, d.value(), std::nullopt);
        bench.hardware(
            pair,
            fmt::format("peg {} x {}", hardware_size(bench, d.value()), hardware_size(bench, size_of(a, t))),
            1);
        rule.held_at = {at};
        if (options.has("dry")) rule.hold = Hold::fastened;
    }
    bench.hold(std::move(rule));
}

} // namespace

void bridles(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
