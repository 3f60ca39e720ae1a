// Dowels: round pins across the joint, half in either part.
//
//   join apron to leg with dowels, 2 dowels, 8 diameter
//
// Diameter a third of the thinner stock unless stated, taken down to the next half millimetre or sixteenth of
// an inch. Depth in either part one and a half times the thickness of the stock at an end, at most what the
// part is thick less a wall of a third (common practice, no published source). Two dowels at least, so that
// the part cannot turn. Bores are 2 mm deeper than the dowel for the glue (common practice, no published
// source).

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/fastening.hpp"
#include "joinery/kinds.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

constexpr double glue_room = 2;        // mm at the bottom of a bore, no published source
constexpr double usual_distance = 150; // mm between dowels of an edge joint, no published source

/// Taken down to a size that dowels are sold in.
Length sold_size(const Bench& bench, Length wanted) {
    const measure::Rational step =
        bench.in_inches() ? measure::Rational(127, 80) : measure::Rational(1); // 1/16 in, 1 mm
    const std::int64_t steps =
        std::max<std::int64_t>(bench.in_inches() ? 2 : 4, measure::floor(wanted.in_mm() / step));
    return Length::mm(step * measure::Rational(steps));
}

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto row = row_of(bench, pair, Prefer::ends);
    if (!row) return;
    const Options options(*pair.wanted);
    const Meeting& meeting = row->meeting;
    const int joint =
        bench.start(pair, "dowels", meeting.into, row->at(a, (row->low + row->high) / 2, row->middle));
    const double thinner =
        std::min({row->width, a.thickness.value(), a.width.value(), b.thickness.value(), b.width.value()});
    const Length diameter =
        bench.size(joint, "dowel diameter", options.length("diameter"),
                   sold_size(bench, rules::dowel_diameter.share_of(Length::from_geometry(thinner))),
                   from_rule(rules::dowel_diameter));
    const double d = diameter.value();
    // No deeper than leaves a third of either part standing.
    const double of_a = size_of(a, meeting.axis());
    const double most =
        (meeting.axis() == 0 ? meeting.deep : std::min(meeting.deep, of_a)) * 2 / 3 - glue_room;
    auto stated = options.length("deep");
    if (!stated) stated = options.length("long");
    const double usual = std::min(1.5 * thinner, most);
    if (!stated && usual < d) {
        bench.refuse(pair, "dowels-have-no-room",
                     fmt::format("{} is too thin for dowels of {} in its face", b.name,
                                 measure::text_with_unit(diameter, bench.piece().manner)),
                     "state a smaller diameter, or choose another joint");
        return;
    }
    const Length deep = bench.size(joint, "dowel depth in each part", stated,
                                   Length::mm(measure::Rational::nearest(usual, 1)),
                                   from_custom("1-1/2 times the stock, leaving a third of the other part"));
    std::optional<int> count;
    if (const auto n = options.number("dowels")) count = static_cast<int>(*n);
    const double every = options.length("every").value_or(Length::from_geometry(usual_distance)).value();
    const bool in_end = meeting.axis() == 0;
    const double distance = in_end ? std::min(every, std::max(3 * d, row->length() - 3 * d)) : every;
    const double across = row->set_across(bench, pair);
    const std::vector<double> at =
        places(*row, count, distance, in_end ? 1.5 * d : std::min(50.0, row->length() / 4));
    bench.note_size(joint, "number of dowels", static_cast<double>(at.size()), "",
                    count ? "stated" : from_custom("two at least, evenly spaced"));
    for (const double place : at) {
        const Point p = row->at(a, place, across);
        bench.bore(pair.a, joint, "dowel bore", p, -meeting.into, d, deep.value() + glue_room);
        bench.bore(pair.b, joint, "dowel bore", p, meeting.into, d, deep.value() + glue_room);
    }
    bench.hardware(
        pair, fmt::format("dowel {} x {}", hardware_size(bench, d), hardware_size(bench, 2 * deep.value())),
        static_cast<int>(at.size()));
    butt(bench, pair, joint, meeting);
    HoldRule rule;
    rule.joint = joint;
    const double low = dot(row->at(a, row->low, across), row->line),
                 high = dot(row->at(a, row->high, across), row->line);
    if (options.has("glued")) rule.may_slide = {row->line};
    read_glue(bench, options, rule, row->line, std::min(low, high), std::max(low, high));
    bench.hold(std::move(rule));
}

} // namespace

void dowels(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
