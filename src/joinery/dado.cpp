// Dado: A's end stands in a trench across B. Through, or stopped short of an edge.
//
//   join shelf to side with dado, stopped 20 from front
//
// Depth a third of B unless stated; as wide as A is thick, or thinner with shoulders when a thickness is
// stated. Where A is narrower than B the dado is only as long as A is wide, unless it is asked to go through.
// A stopped dado leaves a notch at A's corner: what would stand there is cut away.

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
    const auto meeting = meeting_for(bench, pair, Prefer::ends);
    if (!meeting) return;
    const Options options(*pair.wanted);
    const int k = meeting->axis(), t = k == 2 ? 1 : 2, along = 3 - k - t;

    Length rule = rules::dado_depth.share_of(Length::from_geometry(meeting->deep));
    std::string from = from_rule(rules::dado_depth);
    if (meeting->gap < -touching_within) {
        rule = Length::from_geometry(-meeting->gap);
        from = "as far as the part reaches in as placed";
    }
    auto stated_thick = options.length("thick");
    if (!stated_thick) stated_thick = options.length("wide");
    const Length thick = stated_thick.value_or(exact_size_of(a, t));

    Box section = meeting->window;
    if (stated_thick) {
        const double spare = section.high[t] - section.low[t] - thick.value();
        bool low_side = false;
        if (const piece::OptionGiven* bare = options.find("bare-faced")) {
            if (bare->side)
                low_side = a.frame.turn_in(bench.towards(*bare->side, pair.a))[t] < 0;
            else
                low_side = true;
            if (low_side)
                section.high[t] -= spare;
            else
                section.low[t] += spare;
        } else {
            section.low[t] += spare / 2;
            section.high[t] -= spare / 2;
        }
    }
    // B's edges along the dado, in A's frame.
    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    Point p = (meeting->window.low + meeting->window.high) * 0.5;
    p[k] = coordinate(a, meeting->from, meeting->gap + std::min(0.5, meeting->deep / 2));
    p[along] = 0;
    const auto body = inside_convex(of_b, p, outward({along, true}));
    if (const piece::OptionGiven* stopped = options.find("stopped"); stopped != nullptr && body) {
        const double d = stopped->lengths.empty() ? bench.either(Length::mm(20), Length::in({3, 4})).value()
                                                  : stopped->lengths.front().value();
        const syntax::Side side = stopped->side.value_or(syntax::Side::front);
        double which = a.frame.turn_in(bench.towards(side, pair.a))[along];
        if (std::abs(which) < 0.5) which = -1;
        if (which < 0)
            section.low[along] = std::max(section.low[along], body->first + d);
        else
            section.high[along] = std::min(section.high[along], body->second - d);
    }
    if (!(section.high[along] - section.low[along] > 1) || !(section.high[t] - section.low[t] > 0.5)) {
        bench.refuse(pair, "dado-has-no-room", "nothing is left of the dado of " + a.name + " in " + b.name,
                     "stop it nearer to the edge, or make it wider");
        return;
    }
    std::string kind = options.has("stopped")   ? "dado, stopped"
                       : options.has("through") ? "dado, through"
                                                : "dado";
    const int joint = bench.start(pair, kind, meeting->into, {});
    const Length deep = bench.size(joint, "dado depth", options.length("deep"), rule, from);
    bench.note_size(joint, "dado width", section.high[t] - section.low[t], "mm",
                    stated_thick ? "stated" : "as thick as the part that stands in it");
    bench.joint(joint).at = middle_of(bench, pair, *meeting, section, deep.value());

    Fit fit;
    fit.cheek = stated_thick || options.has("stopped") ? "tongue shoulder" : "end trim";
    fit.socket = "dado";
    fit.cut_socket = !options.has("through") || !body;
    let_in(bench, pair, joint, *meeting, {{section, deep, ""}}, fit);
    if (!fit.cut_socket) {
        Box trench = section;
        trench.low[along] = std::min(trench.low[along], body->first);
        trench.high[along] = std::max(trench.high[along], body->second);
        bench.cut_box(pair.b, joint, fit.socket, pair.a,
                      meeting->box(a, trench, meeting->mouth(a, trench), meeting->gap + deep.value()));
    }
    HoldRule hold;
    hold.joint = joint;
    hold.hold = Hold::glued;
    const Vector line = a.frame.turn_out(outward({along, true}));
    hold.may_slide = {line};
    const double l = dot(a.frame.out(section.low), line), h = dot(a.frame.out(section.high), line);
    read_glue(bench, options, hold, line, std::min(l, h), std::max(l, h));
    bench.hold(std::move(hold));
}

} // namespace

void dados(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
