// Tongue and groove: a tongue along A's edge, a groove along B's. Dry unless glue is asked for.

#include <algorithm>

#include "joinery/kinds.hpp"
#include "joinery/tongue.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part& a = bench.part(pair.a);
    const auto meeting = meeting_for(bench, pair, Prefer::any_side);
    if (!meeting) return;
    const Options options(*pair.wanted);
    const int k = meeting->axis(), t = k == 2 ? 1 : 2, along = 3 - k - t;
    const int joint = bench.start(pair, "tongue and groove", meeting->into, {});
    const Length stock = exact_size_of(a, t);
    const Length thick =
        bench.size(joint, "tongue thickness", options.length("thick"),
                   rules::tongue_thickness.share_of(stock), from_rule(rules::tongue_thickness));
    auto stated = options.length("long");
    if (!stated) stated = options.length("deep");
    const Length long_ = bench.size(joint, "tongue length", stated, rules::tongue_length.share_of(stock),
                                    from_rule(rules::tongue_length));
    const Length play =
        bench.size(joint, "play at the bottom", options.length("gap"), Length(), "none unless stated");
    Box section = meeting->window;
    const double middle = (section.low[t] + section.high[t]) / 2;
    section.low[t] = middle - thick.value() / 2;
    section.high[t] = middle + thick.value() / 2;
    bench.joint(joint).at = middle_of(bench, pair, *meeting, section, long_.value());
    Fit fit;
    fit.cheek = "tongue";
    fit.socket = "groove";
    fit.play = play.value();
    let_in(bench, pair, joint, *meeting, {{section, long_, ""}}, fit);

    HoldRule rule;
    rule.joint = joint;
    rule.hold = Hold::free;
    const Vector line = a.frame.turn_out(outward({along, true}));
    rule.may_slide = {meeting->into, line};
    rule.room = play.value();
    const double l = dot(a.frame.out(section.low), line), h = dot(a.frame.out(section.high), line);
    read_glue(bench, options, rule, line, std::min(l, h), std::max(l, h));
    bench.hold(std::move(rule));
}

} // namespace

void tongues_and_grooves(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
