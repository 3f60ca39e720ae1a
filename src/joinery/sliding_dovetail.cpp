// Sliding dovetail: A's end is one long tail that slides into a trench of B, narrower at the surface.
//
//   join shelf to side with sliding dovetail, stopped 20 from front
//
//        | |  A                  the tail is as thick as A at its end, thinner at its root
//     ___| |___
//        /   ) B
//       /_____)
//
// Depth a third of B, as a dado. The trench is open at B's nearer edge, through when asked; a stopped one is
// open at the other edge and A is cut back in front of it. Glued all along unless said otherwise.

#include <algorithm>
#include <cmath>

#include "joinery/dovetail_slope.hpp"
#include "joinery/kinds.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto meeting = meeting_for(bench, pair, Prefer::ends);
    if (!meeting) return;
    if (!meeting->square) {
        bench.refuse(pair, "corner-not-square",
                     a.name + " does not stand square on " + b.name + ", so no tail slides in",
                     "use a mortise and tenon");
        return;
    }
    const Options options(*pair.wanted);
    const int k = meeting->axis(), t = k == 2 ? 1 : 2, along = 3 - k - t;
    const int joint =
        bench.start(pair, options.has("stopped") ? "sliding dovetail, stopped" : "sliding dovetail", {}, {});
    const bool reaches = meeting->gap < -touching_within;
    const Length deep =
        bench.size(joint, "tail length", options.length("deep"),
                   reaches ? Length::from_geometry(-meeting->gap)
                           : rules::dado_depth.share_of(Length::from_geometry(meeting->deep)),
                   reaches ? "as far as the part reaches in as placed" : from_rule(rules::dado_depth));
    const double rise = deep.value() * dovetail_slope(bench, joint, pair, options);
    Box section = meeting->window;
    auto thick = options.length("thick");
    if (!thick) thick = options.length("wide");
    double shoulder = thick ? (section.high[t] - section.low[t] - thick->value()) / 2 : 0;
    if (const auto stated = options.length("shoulder")) shoulder = stated->value();
    const double tip_low = section.low[t] + shoulder, tip_high = section.high[t] - shoulder;
    bench.note_size(joint, "tail at its end", tip_high - tip_low, "mm",
                    thick || options.has("shoulder") ? "stated" : "as thick as the part");
    bench.note_size(joint, "tail at its root", tip_high - tip_low - 2 * rise, "mm", "what the slope leaves");
    if (!(tip_high - tip_low - 2 * rise > 0.5)) {
        bench.refuse(pair, "dovetails-have-no-room", "no wood is left at the root of the tail of " + a.name,
                     "make it less deep or flatter");
        return;
    }
    // B's edges along the trench.
    std::vector<Plane> of_b;
    for (const Plane& plane : body_planes(b)) of_b.push_back(seen_from(a, carried_out(b, plane)));
    Point p = (section.low + section.high) * 0.5;
    p[k] = coordinate(a, meeting->from, meeting->gap + std::min(0.5, meeting->deep / 2));
    p[along] = 0;
    const auto body = inside_convex(of_b, p, outward({along, true}));
    double trench_low = section.low[along], trench_high = section.high[along];
    bool open_high = true;
    if (body) {
        const double below = section.low[along] - body->first, above = body->second - section.high[along];
        open_high = above <= below;
        if (const piece::OptionGiven* stopped = options.find("stopped");
            stopped != nullptr && !stopped->lengths.empty()) {
            const double d = stopped->lengths.front().value();
            double which =
                a.frame.turn_in(bench.towards(stopped->side.value_or(syntax::Side::front), pair.a))[along];
            if (std::abs(which) < 0.5) which = -1;
            open_high = which < 0;
            if (which < 0)
                section.low[along] = std::max(section.low[along], body->first + d);
            else
                section.high[along] = std::min(section.high[along], body->second - d);
            trench_low = section.low[along];
            trench_high = section.high[along];
        }
        // A bevelled edge reaches farther at the bottom of the trench than at its mouth, or the other way
        // round.
        double first = body->first, second = body->second;
        p[k] = coordinate(a, meeting->from, meeting->gap + deep.value());
        if (const auto at_bottom = inside_convex(of_b, p, outward({along, true}))) {
            first = std::min(first, at_bottom->first);
            second = std::max(second, at_bottom->second);
        }
        if (open_high || options.has("through")) trench_high = std::max(trench_high, second);
        if (!open_high || options.has("through")) trench_low = std::min(trench_low, first);
    }
    if (!(section.high[along] - section.low[along] > 1)) {
        bench.refuse(pair, "dovetails-have-no-room",
                     "nothing is left of the tail of " + a.name + " in " + b.name,
                     "stop it nearer to the edge");
        return;
    }
    bench.joint(joint).assembly = a.frame.turn_out(outward({along, !open_high}));
    bench.joint(joint).at =
        a.frame.out((meeting->box(a, section, meeting->gap, meeting->gap + deep.value()).low +
                     meeting->box(a, section, meeting->gap, meeting->gap + deep.value()).high) *
                    0.5);

    const Length to = (meeting->gap == 0 ? Length() : Length::from_geometry(meeting->gap)) + deep;
    Standing standing;
    standing.side = meeting->from;
    standing.joint = joint;
    standing.word = "tail shoulder";
    standing.window = meeting->window;
    standing.shoulder = meeting->gap;
    Box tongue = section;
    tongue.low[t] = tip_low;
    tongue.high[t] = tip_high;
    standing.tongues.push_back({tongue, to.value()});
    bench.grow(pair.a, meeting->from, to);
    bench.stand(pair.a, std::move(standing));

    Frame frame;
    frame.x = outward({k, true});
    frame.y = outward({t, true});
    frame.z = cross(frame.x, frame.y);
    const bool forward = frame.z[along] > 0;
    const auto through = [&](double low, double high) {
        return forward ? std::pair{low, high} : std::pair{-high, -low};
    };
    const double base = coordinate(a, meeting->from, meeting->gap),
                 tip = coordinate(a, meeting->from, meeting->gap + deep.value());
    const auto [a_low, a_high] = through(section.low[along], section.high[along]);
    bench.cut_prism(pair.a, joint, "tail cheek", pair.a, frame,
                    polygon({{base, tip_low}, {tip, tip_low}, {base, tip_low + rise}}), a_low, a_high);
    bench.cut_prism(pair.a, joint, "tail cheek", pair.a, frame,
                    polygon({{base, tip_high}, {tip, tip_high}, {base, tip_high - rise}}), a_low, a_high);
    const auto [b_low, b_high] = through(trench_low, trench_high);
    bench.cut_prism(
        pair.b, joint, "dovetail trench", pair.a, frame,
        polygon({{base, tip_low + rise}, {tip, tip_low}, {tip, tip_high}, {base, tip_high - rise}}), b_low,
        b_high);

    HoldRule rule;
    rule.joint = joint;
    const Vector line = a.frame.turn_out(outward({along, true}));
    rule.may_slide = {line};
    const double l = dot(a.frame.out(section.low), line), h = dot(a.frame.out(section.high), line);
    read_glue(bench, options, rule, line, std::min(l, h), std::max(l, h));
    bench.hold(std::move(rule));
}

} // namespace

double dovetail_slope(const Bench& bench, int joint, const Pair& pair, const Options& options) {
    const piece::OptionGiven* stated = options.find("slope");
    if (stated != nullptr && stated->values.size() >= 2 && stated->values[0] > 0 && stated->values[1] > 0) {
        bench.note_size(joint, "slope: 1 in", stated->values[1] / stated->values[0], "", "stated");
        return stated->values[0] / stated->values[1];
    }
    const piece::Part& a = bench.part(pair.a);
    const wood::Figure& rule =
        a.species != nullptr ? rules::dovetail_slope(*a.species) : rules::dovetail_slope_hardwood;
    bench.note_size(joint, "slope: 1 in", rule.value, "", std::string(rule.source));
    return 1 / rule.value;
}

void sliding_dovetails(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
