// Turned profiles: diameters at distances from the low end of the length, squares left between them.
//
// `square to 60` leaves the section as it is from the last station to there. Every stretch of diameters
// between squares is one cut. Smooth stretches are curves through their diameters, as short straight lines.

#include <algorithm>

#include "piece/shaping.hpp"
#include "piece/smooth.hpp"

namespace rayfleck::piece {
namespace {

/// Replaces each smooth stretch by the stations of a smooth curve.
std::vector<solid::Station> smoothed(const std::vector<solid::Station>& told) {
    std::vector<solid::Station> out;
    for (std::size_t i = 0; i < told.size();) {
        std::size_t last = i;
        while (last + 1 < told.size() && told[last].smooth) ++last;
        out.push_back(told[i]);
        if (last > i + 1) {
            std::vector<solid::Point2> points;
            for (std::size_t k = i; k <= last; ++k) points.push_back({told[k].x, told[k].radius});
            for (const solid::Point2& p : smooth_through(points))
                if (p.x > out.back().x) out.push_back({p.x, std::max(0.0, p.y), true});
            out.pop_back();
        }
        i = last > i ? last : i + 1;
    }
    return out;
}

} // namespace

void shape_turned(Shaper& s, const syntax::TurnedIs& says, Span span) {
    std::vector<std::vector<solid::Station>> runs(1);
    double reached = 0;
    const double largest = std::min(s.size(1), s.size(2));
    for (const syntax::TurnedStation& station : says.stations) {
        if (station.broken) return;
        const bool on_rod =
            direction_of(s.e, station.at, *s.instance.part->scope, s.instance.each).has_value();
        std::optional<double> at;
        if (on_rod)
            at = s.along(station.at, 0);
        else if (const auto distance = s.length(station.at))
            at = distance->value() + s.pose.readings[0].start;
        if (!at) return;
        if (*at < reached - 1e-9) {
            s.e.error("out-of-order", station.at.span,
                      "the stations of a turned part go along it, each further than the last");
            return;
        }
        if (*at > s.size(0) + 1e-9) {
            s.e.error("outside-part", station.at.span,
                      "this lies beyond the end of `" + s.name() + "`, which is " +
                          s.e.shown(s.pose.size[0]) + " long");
            return;
        }
        reached = *at;
        if (station.square) {
            runs.emplace_back();
            continue;
        }
        const auto diameter = s.positive(station.diameter, "the diameter");
        if (!diameter) return;
        if (*diameter > largest + 1e-9) {
            s.e.error("no-room", station.diameter.span,
                      "a diameter of " + s.e.shown(Length::from_geometry(*diameter)) + " is more than `" +
                          s.name() + "` has, " + s.e.shown(Length::from_geometry(largest)));
            return;
        }
        runs.back().push_back({*at, *diameter / 2, station.smooth});
    }
    bool any = false;
    for (const auto& run : runs) {
        if (run.empty()) continue;
        if (run.size() < 2 || run.back().x <= run.front().x) {
            s.e.error("too-few-points", span, "a turned stretch of `" + s.name() + "` has one diameter only")
                .mend = "give a diameter where it begins and one where it ends";
            return;
        }
        TurnedCut cut;
        cut.profile = smoothed(run);
        s.add("turned", cut, span);
        any = true;
    }
    if (!any)
        s.e.error("too-few-points", span, "nothing of `" + s.name() + "` is turned").mend =
            "give diameters, as in `diameter 30 at 0`";
}

} // namespace rayfleck::piece
