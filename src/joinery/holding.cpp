// What the words about glue mean, and ends that only lie against a surface.
//
// Glued in the middle: a tenth of the reach to either side of its middle, at most 40 mm. Glued at a side: a
// fifth of the reach from that side. Both are ours: common practice, no published source.

#include <algorithm>
#include <cmath>

#include "joinery/tongue.hpp"

namespace rayfleck::joinery {

std::optional<Meeting> meeting_for(Bench& bench, const Pair& pair, Prefer prefer) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    auto meeting = meeting_of(a, b, prefer);
    if (!meeting)
        bench.refuse(pair, "joint-has-no-place",
                     "no side of " + a.name + " goes squarely enough into " + b.name + " for " +
                         pair.wanted->kind,
                     "place " + a.name + " so that an end or an edge of it comes to " + b.name +
                         ", or choose another joint");
    return meeting;
}

void read_glue(const Bench& bench, const Options& options, HoldRule& rule, Vector along, double low,
               double high) {
    if (options.has("dry")) rule.hold = Hold::free;
    const piece::OptionGiven* glued = options.find("glued");
    if (glued == nullptr) return;
    const double reach = high - low;
    if (glued->words.find("middle") != std::string::npos) {
        const double half = std::min(reach / 10, 40.0), middle = (low + high) / 2;
        rule.stretches.push_back({along, middle - half, middle + half, Hold::glued});
    } else if (glued->side) {
        const double which = dot(bench.towards(*glued->side, bench.joint(rule.joint).a), along);
        if (std::abs(which) < 0.5) {
            rule.hold = Hold::glued;
            return;
        }
        if (which > 0)
            rule.stretches.push_back({along, high - reach / 5, high + 1, Hold::glued});
        else
            rule.stretches.push_back({along, low - 1, low + reach / 5, Hold::glued});
    } else {
        rule.hold = Hold::glued;
        return;
    }
    // Elsewhere the joint lets go.
    if (rule.hold == Hold::glued) rule.hold = Hold::free;
}

void butt(Bench& bench, const Pair& pair, int joint, const Meeting& meeting) {
    if (meeting.axis() != 0 || (meeting.square && meeting.gap < touching_within)) return;
    Fit fit;
    fit.cheek = "end trim";
    let_in(bench, pair, joint, meeting, {}, fit);
}

} // namespace rayfleck::joinery
