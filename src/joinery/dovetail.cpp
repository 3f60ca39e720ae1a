// Dovetails: A's end is cut into tails, B's end into the pins between them. Through, or half-blind.
//
//    A, seen on its face        tails are widest at the end; half pins at both edges
//   ---------+----+
//            |\   |
//            | )  |  half pin
//            |/___|
//            |    |  tail
//            |\___|
//
// Through tails go all through B; half-blind ones leave a third of B standing before them. Slope 1 in 8
// (softwood 1 in 6) unless stated. So many tails that one tail and one pin take about three thicknesses of A;
// half way up, a tail is twice as wide as a pin (both common practice, no published source).

#include <algorithm>
#include <cmath>

#include "joinery/corner.hpp"
#include "joinery/dovetail_slope.hpp"
#include "joinery/kinds.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

constexpr double pitch_in_thicknesses = 3; // no published source
constexpr double narrowest_pin = 3;        // mm at its tip, unless stated; no published source

struct Tails {
    double first = 0; ///< lower border of the first tail at its wide end
    double pitch = 0, wide = 0, rise = 0;
    int count = 1;
};

std::optional<Tails> plan_tails(Bench& bench, const Pair& pair, const Corner& corner, int joint, double deep,
                                const Options& options) {
    const piece::Part& a = bench.part(pair.a);
    const double width = corner.high - corner.low, thick = size_of(a, corner.t);
    Tails tails;
    tails.rise = deep * dovetail_slope(bench, joint, pair, options);
    const auto stated = options.number("tails");
    tails.count = stated ? std::clamp(static_cast<int>(*stated), 1, 200)
                         : std::max(1, static_cast<int>(std::lround(width / (pitch_in_thicknesses * thick))));
    bench.note_size(joint, "tails", tails.count, "",
                    stated ? "stated" : from_custom("a tail and a pin take three thicknesses"));
    const double pitch = width / tails.count;
    double pin = std::max(pitch / 3 - tails.rise, narrowest_pin);
    std::string pin_from = from_custom("half way up a tail is twice as wide as a pin");
    if (const auto pins = options.length("pins")) {
        pin = pins->value();
        pin_from = "stated";
    } else if (const auto wide = options.length("wide")) {
        pin = pitch - wide->value();
        pin_from = "what the stated tails leave";
    }
    double edge = pin / 2;
    if (const auto shoulder = options.length("shoulder")) edge = shoulder->value();
    tails.first = corner.low + edge;
    tails.pitch = (width - 2 * edge + pin) / tails.count;
    tails.wide = tails.pitch - pin;
    bench.note_size(joint, "pin at its tip", pin, "mm", pin_from);
    bench.note_size(joint, "half pin at its tip", edge, "mm",
                    options.has("shoulder") ? "stated" : from_custom("half a pin"));
    bench.note_size(joint, "tail at its end", tails.wide, "mm", "what the pins leave");
    if (!(pin > 0.5) || !(tails.wide - 2 * tails.rise > 0.5)) {
        bench.refuse(pair, "dovetails-have-no-room",
                     "no wood is left of the " + std::string(pin > 0.5 ? "tails" : "pins") + " of " + a.name +
                         " in " + bench.part(pair.b).name,
                     "ask for fewer tails or a flatter slope");
        return std::nullopt;
    }
    return tails;
}

void lay_out(Bench& bench, const Pair& pair) {
    const auto corner = corner_of(bench, pair);
    if (!corner) return;
    const piece::Part& a = bench.part(pair.a);
    const Options options(*pair.wanted);
    const bool half_blind = pair.wanted->kind == "half-blind dovetail";
    const Vector towards_b = a.frame.turn_out(outward({corner->t, !corner->b_end_high}));
    const int joint = bench.start(pair, pair.wanted->kind, towards_b, {});
    const Length of_b = Length::from_geometry(corner->thickness_of_b());
    Length deep = of_b;
    if (half_blind)
        deep = bench.size(joint, "tail length", options.length("deep"), of_b * measure::Rational(2, 3),
                          from_custom("two thirds of the piece that laps them"));
    else
        bench.note_size(joint, "tail length", deep.value(), "mm", "through the other part");
    const auto tails = plan_tails(bench, pair, *corner, joint, deep.value(), options);
    if (!tails) return;
    Point middle;
    middle.x = coordinate(a, corner->end, corner->near + deep.value() / 2);
    middle[corner->w] = (corner->low + corner->high) / 2;
    middle[corner->t] = size_of(a, corner->t) / 2;
    bench.joint(joint).at = a.frame.out(middle);
    fill_corner(bench, pair, *corner, joint, deep, "end trim");

    const Frame frame = drawing_frame(*corner);
    const auto [low, high] = drawn_through(a, *corner);
    const double base = coordinate(a, corner->end, corner->near),
                 tip = coordinate(a, corner->end, corner->near + deep.value());
    double left_tip = corner->low, left_base = corner->low; // lower border of the next pin
    for (int i = 0; i <= tails->count; ++i) {
        const double start = tails->first + i * tails->pitch, end = start + tails->wide;
        const bool last = i == tails->count;
        const double pin_tip = last ? corner->high : start,
                     pin_base = last ? corner->high : start + tails->rise;
        bench.cut_prism(pair.a, joint, "pin socket", pair.a, frame,
                        polygon({{base, left_base}, {tip, left_tip}, {tip, pin_tip}, {base, pin_base}}), low,
                        high);
        if (last) break;
        bench.cut_prism(
            pair.b, joint, "dovetail socket", pair.a, frame,
            polygon({{base, start + tails->rise}, {tip, start}, {tip, end}, {base, end - tails->rise}}), low,
            high);
        left_tip = end;
        left_base = end - tails->rise;
    }
    HoldRule rule;
    rule.joint = joint;
    if (options.has("dry")) {
        rule.hold = Hold::free;
        rule.may_slide = {towards_b};
    }
    bench.hold(std::move(rule));
}

} // namespace

void dovetails(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
