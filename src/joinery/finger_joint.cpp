// Finger joint: square fingers of both boards, in turn, all through the corner.
//
// A has the first and the last finger. As many as make fingers about as wide as A is thick, an odd number
// (common practice, no published source), unless their width or number is stated.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/corner.hpp"
#include "joinery/kinds.hpp"

namespace rayfleck::joinery {
namespace {

void lay_out(Bench& bench, const Pair& pair) {
    const auto corner = corner_of(bench, pair);
    if (!corner) return;
    const piece::Part& a = bench.part(pair.a);
    const Options options(*pair.wanted);
    const double width = corner->high - corner->low, thick = size_of(a, corner->t);
    const double wide = options.length("wide").value_or(Length::from_geometry(thick)).value();
    int count = std::max(3, 2 * static_cast<int>(std::lround((width / wide - 1) / 2)) + 1);
    // `fingers` counts those of both boards together.
    if (const auto stated = options.number("fingers")) count = static_cast<int>(*stated);
    count = std::clamp(count, 2, 400);
    const double each = width / count;
    const Vector towards_b = a.frame.turn_out(outward({corner->t, !corner->b_end_high}));
    Point middle;
    middle.x = coordinate(a, corner->end, (corner->near + corner->far) / 2);
    middle[corner->w] = (corner->low + corner->high) / 2;
    middle[corner->t] = thick / 2;
    // Goes together either way, so no single direction is told.
    const int joint = bench.start(pair, "finger joint", {}, a.frame.out(middle));
    bench.note_size(joint, "fingers", count, "",
                    options.has("fingers") ? "stated"
                                           : from_custom("as wide as the board is thick, an odd number"));
    bench.note_size(joint, "finger width", each, "mm",
                    options.has("wide") ? "stated, evened out over the corner" : "the corner divided evenly");
    fill_corner(bench, pair, *corner, joint, Length::from_geometry(corner->thickness_of_b()), "end trim");
    const double base = coordinate(a, corner->end, corner->near),
                 tip = coordinate(a, corner->end, corner->far);
    for (int i = 0; i < count; ++i) {
        Box box;
        box.low.x = std::min(base, tip);
        box.high.x = std::max(base, tip);
        box.low[corner->w] = corner->low + i * each;
        box.high[corner->w] = i + 1 == count ? corner->high : corner->low + (i + 1) * each;
        box.low[corner->t] = 0;
        box.high[corner->t] = thick;
        bench.cut_box(i % 2 == 0 ? pair.b : pair.a, joint, "finger socket", pair.a, box);
    }
    HoldRule rule;
    rule.joint = joint;
    if (options.has("dry")) {
        rule.hold = Hold::free;
        rule.may_slide = {towards_b, a.frame.turn_out(outward({0, true}))};
    }
    if (options.has("pegged")) {
        const Length d =
            bench.size(joint, "peg diameter", options.length("pegged"),
                       bench.either(Length::mm(6), Length::in({1, 4})), from_custom("6 mm or 1/4 in"));
        const Vector along = a.frame.turn_out(outward({corner->w, false}));
        for (const int id : {pair.a, pair.b})
            bench.bore(id, joint, "peg hole", a.frame.out(middle), along, d.value(), std::nullopt);
        bench.hardware(
            pair, fmt::format("peg {} x {}", hardware_size(bench, d.value()), hardware_size(bench, width)),
            1);
        if (options.has("dry")) rule.hold = Hold::fastened;
        rule.held_at = {a.frame.out(middle)};
    }
    bench.hold(std::move(rule));
}

} // namespace

void finger_joints(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
