// Groove: a panel or a bottom stands free in a groove of B.
//
//   join panel to stile with groove
//
// A's body as placed stops at the frame; its tongue grows into the groove, less the play that it needs to
// swell. The tongues of neighbouring sides grow together at the corners. A panel thicker than the groove gets
// shoulders, set back by the play so that the field cannot press on the frame. The groove runs along the
// panel and, where the panel is grooved round the corner too, far enough beyond for its corner.

#include <algorithm>
#include <cmath>

#include "joinery/kinds.hpp"
#include "joinery/tongue.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

struct GroovePlan {
    Pair pair;
    Meeting meeting;
    int thickness_axis = 2, along_axis = 1;
    Length wide, deep, play, projects;
    std::string wide_from, deep_from, play_from;
    double low = 0; ///< lower border of the groove across A's thickness, A's frame
};

/// B's extent along a direction of the piece.
double extent_along(const piece::Part& part, Vector direction) {
    const Vector own = part.frame.turn_in(direction);
    return std::abs(own.x) * size_of(part, 0) + std::abs(own.y) * size_of(part, 1) +
           std::abs(own.z) * size_of(part, 2);
}

std::optional<GroovePlan> plan_groove(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto meeting = meeting_for(bench, pair, Prefer::any_side);
    if (!meeting) return std::nullopt;
    const Options options(*pair.wanted);
    GroovePlan plan;
    plan.pair = pair;
    plan.meeting = *meeting;
    const int k = meeting->axis();
    plan.thickness_axis = k == 2 ? 1 : 2;
    plan.along_axis = 3 - k - plan.thickness_axis;
    const Length thick = exact_size_of(a, plan.thickness_axis);
    const Length of_b =
        Length::from_geometry(extent_along(b, a.frame.turn_out(outward({plan.thickness_axis, true}))));

    auto stated = options.length("wide");
    if (!stated) stated = options.length("thick");
    if (stated) {
        plan.wide = *stated;
        plan.wide_from = "stated";
    } else if (thick * 2 <= of_b) {
        plan.wide = thick;
        plan.wide_from = from_custom("as wide as the panel is thick");
    } else {
        plan.wide = std::min(thick, rules::groove_width.share_of(of_b));
        plan.wide_from = from_rule(rules::groove_width);
    }
    const Length reached = Length::from_geometry(std::max(0.0, -meeting->gap));
    plan.play = options.length("gap").value_or(bench.either(Length::mm(2), Length::in({1, 16})));
    plan.play_from = options.has("gap") ? "stated" : from_custom("2 mm or 1/16 in");
    if (const auto deep = options.length("deep")) {
        plan.deep = *deep;
        plan.deep_from = "stated";
    } else if (reached.value() > 0) {
        plan.deep = reached + plan.play;
        plan.deep_from = "as far as the part reaches in as placed, and the play";
    } else {
        const Length stock = std::min(b.thickness, Length::from_geometry(meeting->deep));
        plan.deep = std::clamp(rules::groove_depth.share_of(stock), wood::length(rules::groove_depth_least),
                               wood::length(rules::groove_depth_greatest));
        plan.deep_from = from_rule(rules::groove_depth) + ", 6 to 12 mm";
    }
    plan.projects = reached.value() > 0 ? std::min(reached, plan.deep) : plan.deep - plan.play;
    if (!(plan.projects.value() > 0)) {
        bench.refuse(pair, "groove-too-shallow",
                     "the play of " + measure::text_with_unit(plan.play, bench.piece().manner) +
                         " is all of the groove, " +
                         measure::text_with_unit(plan.deep, bench.piece().manner) + " deep",
                     "make the groove deeper or the gap smaller");
        return std::nullopt;
    }
    plan.low = (size_of(a, plan.thickness_axis) - plan.wide.value()) / 2;
    if (const piece::OptionGiven* set = options.find("set");
        set != nullptr && set->side && !set->lengths.empty()) {
        const Vector own = a.frame.turn_in(bench.towards(*set->side, pair.a));
        const double d = set->lengths.front().value();
        if (std::abs(own[plan.thickness_axis]) > 0.7)
            plan.low =
                own[plan.thickness_axis] > 0 ? size_of(a, plan.thickness_axis) - d - plan.wide.value() : d;
    }
    return plan;
}

/// A's reach along the groove, with what is grown round the corners.
struct Reach {
    double low = 0, high = 0;
};

double corner_depth(const std::vector<GroovePlan>& plans, int a, LocalSide side) {
    double deep = 0;
    for (const GroovePlan& plan : plans)
        if (plan.pair.a == a && plan.meeting.from == side) deep = std::max(deep, plan.deep.value());
    return deep;
}

Reach reach_of_groove(const Bench& bench, const std::vector<GroovePlan>& plans, const GroovePlan& plan) {
    const piece::Part &a = bench.part(plan.pair.a), &b = bench.part(plan.pair.b);
    const Options options(*plan.pair.wanted);
    const int along = plan.along_axis;
    Reach reach{plan.meeting.window.low[along], plan.meeting.window.high[along]};
    if (reach.low < touching_within) reach.low -= corner_depth(plans, plan.pair.a, {along, false});
    if (reach.high > size_of(a, along) - touching_within)
        reach.high += corner_depth(plans, plan.pair.a, {along, true});
    // B as seen along the groove.
    Point p = plan.meeting.window.low;
    p[plan.meeting.axis()] = coordinate(a, plan.meeting.from, plan.meeting.gap + 0.5);
    p[plan.thickness_axis] = plan.low + plan.wide.value() / 2;
    p[along] = 0;
    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    const auto body = inside_convex(of_b, p, outward({along, true}));
    if (!body) return reach;
    if (options.has("through")) reach = {body->first, body->second};
    // Past B's end there may still be wood of B that another joint leaves standing (a tail): the corner of
    // the panel needs its room there too. Where there is none, the cut ends with the blank.
    if (reach.low < body->first - corner_depth(plans, plan.pair.a, {along, false}) - touching_within)
        reach.low = body->first;
    if (reach.high > body->second + corner_depth(plans, plan.pair.a, {along, true}) + touching_within)
        reach.high = body->second;
    if (const piece::OptionGiven* stopped = options.find("stopped");
        stopped != nullptr && !stopped->lengths.empty()) {
        const double d = stopped->lengths.front().value();
        const double which =
            stopped->side ? a.frame.turn_in(bench.towards(*stopped->side, plan.pair.a))[along] : 0;
        if (which < 0.5) reach.low = std::max(reach.low, body->first + d);
        if (which > -0.5) reach.high = std::min(reach.high, body->second - d);
    }
    return reach;
}

void lay_out(Bench& bench, const std::vector<GroovePlan>& plans, const GroovePlan& plan) {
    const piece::Part& a = bench.part(plan.pair.a);
    const Options options(*plan.pair.wanted);
    const Meeting& meeting = plan.meeting;
    const int along = plan.along_axis, t = plan.thickness_axis;
    const Reach reach = reach_of_groove(bench, plans, plan);
    Box section = meeting.window;
    section.low[t] = plan.low;
    section.high[t] = plan.low + plan.wide.value();
    section.low[along] = reach.low;
    section.high[along] = reach.high;

    const int joint = bench.start(plan.pair, "groove", meeting.into,
                                  middle_of(bench, plan.pair, meeting, section, plan.projects.value()));
    bench.note_size(joint, "groove width", plan.wide.value(), "mm", plan.wide_from);
    bench.note_size(joint, "groove depth", plan.deep.value(), "mm", plan.deep_from);
    bench.note_size(joint, "play at the bottom", plan.play.value(), "mm", plan.play_from);
    bench.note_size(joint, "tongue length", plan.projects.value(), "mm", "groove depth less the play");

    bench.cut_box(plan.pair.b, joint, "groove", plan.pair.a,
                  meeting.box(a, section, meeting.mouth(a, section), meeting.gap + plan.deep.value()));

    const bool has_shoulders = plan.wide.value() < size_of(a, t) - touching_within;
    Fit fit;
    fit.cheek = "panel tongue";
    fit.cut_socket = false;
    // The tongue takes in the corner where A is grown on the next side as well: cells beyond its window stand
    // too.
    Box tongue = section;
    const double cleared = plan.play.value();
    if (options.has("stopped")) {
        if (reach.low > meeting.window.low[along]) tongue.low[along] += cleared;
        if (reach.high < meeting.window.high[along]) tongue.high[along] -= cleared;
    } else {
        constexpr double beyond_any_blank = 1e4; // mm
        if (corner_depth(plans, plan.pair.a, {along, false}) > 0 &&
            meeting.window.low[along] < touching_within)
            tongue.low[along] = -beyond_any_blank;
        if (corner_depth(plans, plan.pair.a, {along, true}) > 0 &&
            meeting.window.high[along] > size_of(a, along) - touching_within)
            tongue.high[along] = beyond_any_blank;
    }
    Standing standing;
    standing.side = meeting.from;
    standing.joint = joint;
    standing.word = fit.cheek;
    standing.window = meeting.window;
    standing.window.low[t] = 0;
    standing.window.high[t] = size_of(a, t);
    standing.window.low[along] = std::min(tongue.low[along], standing.window.low[along]);
    standing.window.high[along] = std::max(tongue.high[along], standing.window.high[along]);
    standing.shoulder = has_shoulders ? meeting.gap - cleared : meeting.gap;
    standing.tongues.push_back({tongue, meeting.gap + plan.projects.value()});
    if (!meeting.square) {
        let_in(bench, plan.pair, joint, meeting, {{tongue, plan.projects, ""}}, fit);
    } else {
        bench.grow(plan.pair.a, meeting.from,
                   (meeting.gap == 0 ? Length() : Length::from_geometry(meeting.gap)) + plan.projects);
        bench.stand(plan.pair.a, std::move(standing));
    }

    HoldRule rule;
    rule.joint = joint;
    rule.hold = Hold::free;
    const Vector line = a.frame.turn_out(outward({along, true}));
    rule.may_slide = {meeting.into, line};
    rule.room = plan.play.value();
    const Point p = a.frame.out(meeting.box(a, section, 0, 1).low),
                q = a.frame.out(meeting.box(a, section, 0, 1).high);
    read_glue(bench, options, rule, line, std::min(dot(p, line), dot(q, line)),
              std::max(dot(p, line), dot(q, line)));
    bench.hold(std::move(rule));
}

} // namespace

void grooves(Bench& bench, const std::vector<Pair>& pairs) {
    std::vector<GroovePlan> plans;
    for (const Pair& pair : pairs)
        if (auto plan = plan_groove(bench, pair)) plans.push_back(std::move(*plan));
    for (const GroovePlan& plan : plans) lay_out(bench, plans, plan);
}

} // namespace rayfleck::joinery
