// Glue: the two parts only lie against each other.
//
// Nothing is cut, unless A's end must be fitted to a leaning surface. The whole patch holds, or a stretch of
// it when the text says where (see holding.cpp).

#include <algorithm>

#include "joinery/kinds.hpp"

namespace rayfleck::joinery {

void glue(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) {
        const piece::Part& a = bench.part(pair.a);
        const auto meeting = meeting_for(bench, pair, Prefer::any_side);
        if (!meeting) continue;
        const Options options(*pair.wanted);
        Box patch = meeting->box(a, meeting->window, meeting->gap, meeting->gap + 1e-9);
        const int joint =
            bench.start(pair, "glue", meeting->into, a.frame.out((patch.low + patch.high) * 0.5));
        butt(bench, pair, joint, *meeting);
        HoldRule rule;
        rule.joint = joint;
        // Stretches run along the longer way of the patch.
        const int k = meeting->axis(), u = (k + 1) % 3, v = (k + 2) % 3;
        const int along = patch.high[u] - patch.low[u] >= patch.high[v] - patch.low[v] ? u : v;
        const Vector line = a.frame.turn_out(outward({along, true}));
        const double l = dot(a.frame.out(patch.low), line), h = dot(a.frame.out(patch.high), line);
        if (options.has("glued")) rule.may_slide = {line};
        read_glue(bench, options, rule, line, std::min(l, h), std::max(l, h));
        bench.hold(std::move(rule));
    }
}

} // namespace rayfleck::joinery
