// Mortise and tenon: A's end becomes a tenon, B gets the hole that it fills.
//
//   join rail to stile with mortise and tenon, haunched
//
// Sizes, when left out: thickness a third of the rail; length 7/8 of the piece it enters (all through, when
// through or wedged); shoulders at the edges, the full haunch where the rail lies at B's end, clear of any
// panel groove. Tenons of two rails that would run into each other in one leg are shortened, as long as the
// maker has not said how long. All tenons of a piece are planned together for that reason. A tenon on a
// turned end, or one with a diameter, is round. A loose tenon is a slip of its own in two mortises. Tenons of
// stated length that meet in a leg are mitred. Left out: tusk tenons. The saw kerfs for wedges are not cut
// out of the solid.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/kinds.hpp"
#include "joinery/tenon.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

/// Air between the end of one mortise and the side of another in the same leg.
const Length clear_between_mortises = Length::mm(3);

Box mortise_in_b(const Bench& bench, const TenonPlan& plan, Length projects) {
    const piece::Part& a = bench.part(plan.pair.a);
    Box all{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    for (const Box& section : plan.sections) {
        const Box own = plan.meeting.box(a, section, plan.meeting.gap, plan.meeting.gap + projects.value());
        for (int c = 0; c < 8; ++c) {
            const Point p =
                bench.part(plan.pair.b)
                    .frame.in(a.frame.out({c & 1 ? own.high.x : own.low.x, c & 2 ? own.high.y : own.low.y,
                                           c & 4 ? own.high.z : own.low.z}));
            for (int i = 0; i < 3; ++i) {
                all.low[i] = std::min(all.low[i], p[i]);
                all.high[i] = std::max(all.high[i], p[i]);
            }
        }
    }
    return all;
}

bool overlap(const Box& a, const Box& b) {
    for (int i = 0; i < 3; ++i)
        if (std::min(a.high[i], b.high[i]) - std::max(a.low[i], b.low[i]) < 1e-6) return false;
    return true;
}

/// How far plan's tenon may go before it reaches the other's mortise.
Length clear_length(const Bench& bench, const TenonPlan& plan, const Box& other) {
    const piece::Part& b = bench.part(plan.pair.b);
    const Vector into = b.frame.turn_in(plan.meeting.into);
    const LocalSide towards = side_towards(b, plan.meeting.into);
    const Box own = mortise_in_b(bench, plan, plan.projects);
    const int k = towards.axis;
    const double start = into[k] > 0 ? own.low[k] : own.high[k];
    const double stop = into[k] > 0 ? other.low[k] : other.high[k];
    return Length::from_geometry(std::abs(stop - start)) - clear_between_mortises;
}

/// Shortens tenons of unstated length that would meet in one leg.
void keep_mortises_apart(const Bench& bench, std::vector<TenonPlan>& plans) {
    std::vector<Length> lengths;
    for (const TenonPlan& plan : plans) lengths.push_back(plan.projects);
    for (std::size_t i = 0; i < plans.size(); ++i) {
        if (plans[i].length_stated || plans[i].through || plans[i].loose) continue;
        for (std::size_t j = 0; j < plans.size(); ++j) {
            if (i == j || plans[i].pair.b != plans[j].pair.b) continue;
            if (std::abs(dot(plans[i].meeting.into, plans[j].meeting.into)) > 0.9) continue;
            const Box other = mortise_in_b(bench, plans[j], plans[j].projects);
            if (!overlap(mortise_in_b(bench, plans[i], plans[i].projects), other)) continue;
            const Length clear = clear_length(bench, plans[i], other);
            if (clear < lengths[i] && clear.value() > 3.0) {
                lengths[i] = clear;
                plans[i].length_from = from_custom(fmt::format("kept {} mm clear of the mortise for {}",
                                                               clear_between_mortises.value(),
                                                               bench.part(plans[j].pair.a).name));
            }
        }
    }
    for (std::size_t i = 0; i < plans.size(); ++i) plans[i].projects = lengths[i];
}

/// Tenons that meet in one leg all the same, because the maker stated their lengths: each gives up a
/// triangle, so that their ends form a mitre.
///
///      from the side         B      |   |
///   seen along the leg:   ----------+   |     i comes from the left, j from below;
///                         i        /    |     the mitre runs from the corner of their near
///                         --------/  j  |     cheeks to the corner of their ends
void mitre_ends(const Bench& bench, std::vector<TenonPlan>& plans) {
    const auto can = [](const TenonPlan& plan) {
        return !plan.through && !plan.loose && !plan.diameter && plan.meeting.aligned;
    };
    for (std::size_t i = 0; i < plans.size(); ++i)
        for (std::size_t j = 0; j < plans.size(); ++j) {
            if (i == j || plans[i].pair.b != plans[j].pair.b || !can(plans[i]) || !can(plans[j])) continue;
            const piece::Part& b = bench.part(plans[i].pair.b);
            const LocalSide to_i = side_towards(b, plans[i].meeting.into),
                            to_j = side_towards(b, plans[j].meeting.into);
            if (to_i.axis == to_j.axis) continue;
            const Box one = mortise_in_b(bench, plans[i], plans[i].projects),
                      other = mortise_in_b(bench, plans[j], plans[j].projects);
            if (!overlap(one, other)) continue;
            const int u = to_i.axis, v = to_j.axis, w = 3 - u - v;
            const double tip_u = to_i.high ? one.high[u] : one.low[u],
                         near_u = to_i.high ? std::max(one.low[u], other.low[u])
                                            : std::min(one.high[u], other.high[u]);
            const double tip_v = to_j.high ? other.high[v] : other.low[v],
                         near_v = to_j.high ? std::max(one.low[v], other.low[v])
                                            : std::min(one.high[v], other.high[v]);
            TenonPlan::MitredEnd end;
            end.frame.x = outward({u, true});
            end.frame.y = outward({v, true});
            end.frame.z = cross(end.frame.x, end.frame.y);
            end.waste = polygon({{near_u, near_v}, {tip_u, near_v}, {tip_u, tip_v}});
            const double low = std::max(one.low[w], other.low[w]),
                         high = std::min(one.high[w], other.high[w]);
            end.low = end.frame.z[w] > 0 ? low : -high;
            end.high = end.frame.z[w] > 0 ? high : -low;
            end.meets = bench.part(plans[j].pair.a).name;
            plans[i].mitred_ends.push_back(std::move(end));
        }
}

std::string kind_of(const TenonPlan& plan) {
    std::string kind = plan.loose ? "mortise and loose tenon" : "mortise and tenon";
    const Options options(*plan.pair.wanted);
    for (const std::string_view word :
         {"haunched", "through", "stub", "wedged", "twin", "bare-faced", "pegged", "dry"})
        if (options.has(word)) kind += fmt::format(", {}", word);
    return kind;
}

void note_sizes(const Bench& bench, const TenonPlan& plan, int joint) {
    if (plan.diameter) {
        bench.note_size(joint, "tenon diameter", plan.diameter->value(), "mm", plan.thickness_from);
    } else {
        bench.note_size(joint, "tenon thickness", plan.thickness.value(), "mm", plan.thickness_from);
        bench.note_size(joint, "tenon width", plan.width.value(), "mm", plan.width_from);
    }
    bench.note_size(joint, "tenon length", plan.projects.value(), "mm", plan.length_from);
    if (plan.haunch) {
        bench.note_size(joint, "haunch width", plan.haunch->width.value(), "mm", plan.haunch->width_from);
        bench.note_size(joint, "haunch length", plan.haunch->length.value(), "mm", plan.haunch->length_from);
    }
}

void lay_out_loose(Bench& bench, const TenonPlan& plan, int joint) {
    const piece::Part& a = bench.part(plan.pair.a);
    const Meeting& meeting = plan.meeting;
    for (const Box& section : plan.sections) {
        const double in = plan.projects.value(), gap = meeting.gap;
        const double out = meeting.square ? gap : meeting.reach_of(a, meeting.face, section).second + 1.0;
        bench.cut_box(plan.pair.a, joint, "mortise", plan.pair.a, meeting.box(a, section, gap - in, out),
                      "for a loose tenon");
        bench.cut_box(plan.pair.b, joint, "mortise", plan.pair.a,
                      meeting.box(a, section, meeting.mouth(a, section), gap + in), "for a loose tenon");
    }
    if (meeting.gap < -touching_within) {
        // A body placed into B ends at B's surface: it has no tenon of its own.
        Fit fit;
        fit.cheek = "end trim";
        let_in(bench, plan.pair, joint, meeting, {}, fit);
    } else {
        butt(bench, plan.pair, joint, meeting);
    }
    bench.hardware(plan.pair,
                   fmt::format("loose tenon {} x {} x {}", hardware_size(bench, plan.thickness.value()),
                               hardware_size(bench, plan.width.value()),
                               hardware_size(bench, 2 * plan.projects.value())),
                   static_cast<int>(plan.sections.size()));
}

void lay_out_round(Bench& bench, const TenonPlan& plan, int joint) {
    const piece::Part& a = bench.part(plan.pair.a);
    const Meeting& meeting = plan.meeting;
    const double radius = plan.diameter->value() / 2, projects = plan.projects.value();
    Point axis{0, size_of(a, 1) / 2, size_of(a, 2) / 2};
    axis.x = coordinate(a, meeting.from, meeting.gap);
    // The shoulder is square, so on a leaning leg it stops where its rim first touches.
    const double outer = plan.end_radius;
    Box rim{{0, axis.y - outer, axis.z - outer}, {0, axis.y + outer, axis.z + outer}};
    const double shoulder =
        meeting.square ? meeting.gap : std::min(meeting.gap, meeting.reach_of(a, meeting.face, rim).first);
    const double to = meeting.gap + projects;
    bench.grow(plan.pair.a, meeting.from, Length::from_geometry(to));
    if (plan.turned_blank) {
        bench.round_end(plan.pair.a, {meeting.from, radius, shoulder, to});
    } else {
        const double p = coordinate(a, meeting.from, shoulder), q = coordinate(a, meeting.from, to);
        bench.cut(plan.pair.a, joint, "round tenon",
                  piece::TurnedCut{{{std::min(p, q), radius, false}, {std::max(p, q), radius, false}}});
    }
    std::optional<double> deep;
    if (!plan.through) deep = projects;
    bench.bore(plan.pair.b, joint, "round mortise", a.frame.out(axis), meeting.into, plan.diameter->value(),
               deep);
    if (plan.through && !meeting.square)
        bench.cut(plan.pair.a, joint, "tenon end", piece::PlaneCut{meeting.far, {}, {}});
}

/// Widens the outer end of a through mortise along B's grain, so that wedges can spread the tenon.
void flare_for_wedges(Bench& bench, const TenonPlan& plan, int joint) {
    constexpr double slope = 1.0 / 8.0; // common practice, no published source
    const piece::Part& a = bench.part(plan.pair.a);
    const Meeting& meeting = plan.meeting;
    const int k = meeting.axis(), w = plan.width_axis, t = plan.thickness_axis;
    if (!meeting.square) return;
    for (const Box& section : plan.sections) {
        const double near = coordinate(a, meeting.from, meeting.gap),
                     far = coordinate(a, meeting.from, meeting.gap + meeting.deep);
        const double rise = std::abs(far - near) * slope;
        Frame frame;
        frame.x = outward({k, true});
        frame.y = outward({w, true});
        frame.z = cross(frame.x, frame.y);
        const bool forward = frame.z[t] > 0;
        const double low = forward ? section.low[t] : -section.high[t],
                     high = forward ? section.high[t] : -section.low[t];
        for (const bool up : {false, true}) {
            const double edge = up ? section.high[w] : section.low[w], out = up ? edge + rise : edge - rise;
            bench.cut_prism(plan.pair.b, joint, "mortise flare", plan.pair.a, frame,
                            polygon({{near, edge}, {far, edge}, {far, out}}), low, high, "for wedges");
        }
    }
    bench.note_size(joint, "flare for wedges", std::atan(slope) * 180 / 3.14159265358979323846, "degrees",
                    from_custom("1 in 8"));
    bench.hardware(plan.pair, "wedge", 2 * static_cast<int>(plan.sections.size()));
}

std::vector<Point> drive_pegs(Bench& bench, const TenonPlan& plan, int joint) {
    const Options options(*plan.pair.wanted);
    const Length diameter =
        bench.size(joint, "peg diameter", options.length("pegged"),
                   bench.either(Length::mm(8), Length::in({5, 16})), from_custom("8 mm or 5/16 in"));
    const piece::Part& a = bench.part(plan.pair.a);
    const double d = diameter.value();
    // Nearer the shoulder than the tip, so that the wood beyond the peg does not shear out of the tenon.
    const double along = std::min(1.5 * d, plan.projects.value() / 2);
    std::vector<Point> places;
    const Vector through = a.frame.turn_out(outward({plan.thickness_axis, false}));
    for (const Box& section : plan.sections) {
        const double wide = section.high[plan.width_axis] - section.low[plan.width_axis];
        const int count = wide > 8 * d ? 2 : 1;
        for (int i = 0; i < count; ++i) {
            Point p = (section.low + section.high) * 0.5;
            p[plan.width_axis] = section.low[plan.width_axis] + wide * (count == 1 ? 0.5
                                                                        : i == 0   ? 0.25
                                                                                   : 0.75);
            p[plan.meeting.axis()] = coordinate(a, plan.meeting.from, plan.meeting.gap + along);
            const Point at = a.frame.out(p);
            places.push_back(at);
            for (const int id : {plan.pair.a, plan.pair.b})
                bench.bore(id, joint, "peg hole", at, through, d, std::nullopt);
        }
    }
    const double thick =
        size_of(bench.part(plan.pair.b), side_towards(bench.part(plan.pair.b), through).axis);
    bench.hardware(plan.pair,
                   fmt::format("peg {} x {}", hardware_size(bench, d), hardware_size(bench, thick)),
                   static_cast<int>(places.size()));
    return places;
}

void lay_out_tenon(Bench& bench, const TenonPlan& plan) {
    const Options options(*plan.pair.wanted);
    const int joint =
        bench.start(plan.pair, kind_of(plan), plan.meeting.into,
                    middle_of(bench, plan.pair, plan.meeting, plan.sections.front(), plan.projects.value()));
    note_sizes(bench, plan, joint);
    if (plan.loose) {
        lay_out_loose(bench, plan, joint);
    } else if (plan.diameter) {
        lay_out_round(bench, plan, joint);
    } else {
        std::vector<Tongue> tongues;
        for (const Box& section : plan.sections) tongues.push_back({section, plan.projects, ""});
        if (plan.haunch) tongues.push_back({plan.haunch->section, plan.haunch->length, "haunch"});
        Fit fit;
        fit.through = plan.through;
        let_in(bench, plan.pair, joint, plan.meeting, tongues, fit);
        for (const TenonPlan::MitredEnd& end : plan.mitred_ends) {
            bench.cut_prism(plan.pair.a, joint, "mitred tenon end", plan.pair.b, end.frame, end.waste,
                            end.low, end.high, "against the tenon of " + end.meets);
            bench.joint(joint).kind += ", mitred end";
        }
        if (options.has("wedged")) flare_for_wedges(bench, plan, joint);
    }
    HoldRule rule;
    rule.joint = joint;
    rule.hold = options.has("dry") ? Hold::free : Hold::glued;
    if (options.has("dry")) rule.may_slide = {plan.meeting.into};
    if (options.has("pegged") && !plan.loose && !plan.diameter) {
        rule.held_at = drive_pegs(bench, plan, joint);
        if (options.has("dry")) {
            rule.hold = Hold::fastened;
            rule.may_slide.clear();
        }
    }
    bench.hold(std::move(rule));
}

} // namespace

void mortises_and_tenons(Bench& bench, const std::vector<Pair>& pairs) {
    std::vector<TenonPlan> plans;
    for (const Pair& pair : pairs)
        if (auto plan = plan_tenon(bench, pair)) plans.push_back(std::move(*plan));
    keep_mortises_apart(bench, plans);
    mitre_ends(bench, plans);
    for (const TenonPlan& plan : plans) lay_out_tenon(bench, plan);
}

} // namespace rayfleck::joinery
