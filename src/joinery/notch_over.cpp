// Notch over: A sits astride B and loses all that both share; B stays whole.
//
//   join bearer to ledger with notch over
//
//      |B|                 |B|
//   ---|B|---    ->     ---|B|---    the notch takes B's shape, at whatever angle it crosses
//    A |B|               A |_|
//   ------------        ------------
//
// As deep as the two overlap as placed; `deep` makes it deeper, `gap` wider on both sides.

#include <algorithm>
#include <cmath>

#include "joinery/kinds.hpp"
#include "joinery/waste.hpp"

namespace rayfleck::joinery {
namespace {

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const Options options(*pair.wanted);
    const auto meeting = meeting_for(bench, pair, Prefer::any_side);
    if (!meeting) return;
    if (meeting->gap > -touching_within && !options.has("deep")) {
        bench.refuse(pair, "notch-has-no-wood",
                     a.name + " does not run into " + b.name + ", so there is nothing to notch",
                     "place them so that they overlap by the depth of the notch, or say how deep it is");
        return;
    }
    const double reached = std::max(0.0, -meeting->gap);
    const Box seat = meeting->box(a, meeting->window, meeting->gap, meeting->gap + std::max(reached, 1e-9));
    const int joint =
        bench.start(pair, "notch over", meeting->into, a.frame.out((seat.low + seat.high) * 0.5));
    const Length deep =
        bench.size(joint, "notch depth", options.length("deep"), Length::from_geometry(reached),
                   "as far as the part runs into the other as placed");
    const Length gap =
        bench.size(joint, "play at the sides", options.length("gap"), Length(), "none unless stated");
    Box body = blank_of(bench, pair.b);
    for (int i = 0; i < 3; ++i) {
        if (i == meeting->onto.axis) continue;
        body.low[i] -= gap.value();
        body.high[i] += gap.value();
    }
    const double more = std::max(0.0, deep.value() - reached);
    (meeting->onto.high ? body.high : body.low)[meeting->onto.axis] += meeting->onto.high ? more : -more;
    bench.cut_box(pair.a, joint, "notch", pair.b, body, "over " + b.name);
    HoldRule hold;
    hold.joint = joint;
    hold.room = gap.value();
    hold.may_slide = {meeting->into};
    // A loose notch only bears; one that fits is glued unless it is to stay dry.
    if (options.has("dry") || (gap.value() > 0 && !options.has("glued"))) hold.hold = Hold::free;
    bench.hold(std::move(hold));
}

} // namespace

void notches_over(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
