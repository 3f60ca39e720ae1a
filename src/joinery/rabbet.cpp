// Rabbet: A lies in a step along B's edge.
//
//   join back to side with rabbet
//
// As deep as half of B unless stated, as wide as A is thick; open towards B's nearer edge. Where A's body as
// placed already stands in B, the step is cut to fit it.

#include <algorithm>
#include <cmath>

#include "joinery/kinds.hpp"
#include "joinery/tongue.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto meeting = meeting_for(bench, pair, Prefer::any_side);
    if (!meeting) return;
    const Options options(*pair.wanted);
    const int k = meeting->axis();
    // The step opens across A's thinner way.
    const int t = k == 2 ? 1 : 2, along = 3 - k - t;

    const int joint = bench.start(pair, "rabbet", meeting->into, {});
    const bool reaches = meeting->gap < -touching_within;
    const Length deep =
        bench.size(joint, "rabbet depth", options.length("deep"),
                   reaches ? Length::from_geometry(std::min(-meeting->gap, meeting->deep))
                           : rules::rabbet_depth.share_of(Length::from_geometry(meeting->deep)),
                   reaches ? "as far as the part reaches in as placed" : from_rule(rules::rabbet_depth));
    Box section = meeting->window;
    bench.joint(joint).at = middle_of(bench, pair, *meeting, section, deep.value());

    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    Point p = (section.low + section.high) * 0.5;
    p[k] = coordinate(a, meeting->from, meeting->gap + std::min(0.5, meeting->deep / 2));
    p[t] = 0;
    Box step = section;
    if (const auto body = inside_convex(of_b, p, outward({t, true}))) {
        const double below = section.low[t] - body->first, above = body->second - section.high[t];
        if (below < above)
            step.low[t] = std::min(step.low[t], body->first);
        else
            step.high[t] = std::max(step.high[t], body->second);
        if (const auto wide = options.length("wide")) {
            if (below < above)
                step.high[t] = body->first + wide->value();
            else
                step.low[t] = body->second - wide->value();
        }
    }
    bench.note_size(joint, "rabbet width", step.high[t] - step.low[t], "mm",
                    options.has("wide") ? "stated" : "as far as the part that lies in it");
    Fit fit;
    fit.cheek = "end trim";
    fit.cut_socket = false;
    let_in(bench, pair, joint, *meeting, {{section, deep, ""}}, fit);
    bench.cut_box(pair.b, joint, "rabbet", pair.a,
                  meeting->box(a, step, meeting->mouth(a, step), meeting->gap + deep.value()));

    HoldRule hold;
    hold.joint = joint;
    const Vector line = a.frame.turn_out(outward({along, true}));
    hold.may_slide = {meeting->into, line};
    const double l = dot(a.frame.out(section.low), line), h = dot(a.frame.out(section.high), line);
    read_glue(bench, options, hold, line, std::min(l, h), std::max(l, h));
    bench.hold(std::move(hold));
}

} // namespace

void rabbets(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
