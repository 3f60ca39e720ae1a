// Screws: from outside through one part into the other; in slots where the parts must be able to move.
//
//   join batten to door with slotted screws, every 120
//
// A is held to B. The screw goes through the part that is thinner along the screw, into the other. Its length
// is three times the thickness of the held part, but it stops 5 mm short of the far face; its gauge follows
// from that length. The clearance bore is the shank, the lead hole a share of the root (Wood Handbook 2021,
// ch. 8). Slots run the way in which the parts move more against each other, as far as they do in the piece's
// climate and 1 mm, either way.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "joinery/fastening.hpp"
#include "joinery/kinds.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

constexpr double short_of_far_face = 5; // mm, no published source
constexpr double usual_distance = 200;  // mm between screws, no published source

/// Shank diameters, mm: Wood Handbook, ch. 8 (read, secondary); root about two thirds of it (from memory).
struct Gauge {
    int number;
    double shank;
    double up_to_length; ///< customary for screws up to this length, mm: common practice, no published source
};
constexpr std::array<Gauge, 5> gauges{
    {{4, 2.84, 20}, {6, 3.51, 32}, {8, 4.17, 50}, {10, 4.83, 80}, {12, 5.49, 1000}}};

const Gauge& gauge_for(double length) {
    for (const Gauge& gauge : gauges)
        if (length <= gauge.up_to_length) return gauge;
    return gauges.back();
}

struct Way {
    int held = 0, into = 0; ///< part ids
    Vector direction;       ///< of the screw, piece's frame
    double through = 0;     ///< thickness of the held part along the screw
    double deep = 0;        ///< of the other
};

/// Through the part that is thinner along the screw.
Way way_of(const Bench& bench, const Pair& pair, const Meeting& meeting) {
    const piece::Part& a = bench.part(pair.a);
    const double of_a = size_of(a, meeting.axis()), of_b = meeting.deep;
    if (of_a <= of_b) return {pair.a, pair.b, meeting.into, of_a, of_b};
    return {pair.b, pair.a, -meeting.into, of_b, of_a};
}

/// Which way slots run, and how far the screw must be able to travel in them.
struct Freedom {
    Vector direction;
    double room = 0;              ///< mm, either way
    bool middle_is_fixed = false; ///< the middle screw of the row holds the parts to each other
};

/// Slots run the way in which the two parts move more against each other: along the row, from its middle
/// screw if it has one; or across it.
Freedom freedom_of(const Bench& bench, const Pair& pair, const Row& row, bool has_middle) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const Vector across = row.aside;
    const auto apart_along = [&](Vector direction, double distance) {
        return std::abs(bench.movement(pair.a, direction, distance) -
                        bench.movement(pair.b, direction, distance));
    };
    const double along_row = apart_along(row.line, has_middle ? row.length() / 2 : row.length());
    // A batten under a wide panel: each part moves across the row over half of its own width.
    const double across_row =
        std::max(bench.movement(pair.a, across, size_of(a, side_towards(a, across).axis) / 2),
                 bench.movement(pair.b, across, size_of(b, side_towards(b, across).axis) / 2));
    if (along_row >= across_row) return {row.line, std::ceil(along_row + 1 - 1e-9), has_middle};
    return {across, std::ceil(across_row + 1 - 1e-9), false};
}

void cut_slot(Bench& bench, const Way& way, int joint, Point at, const Freedom& freedom, double shank) {
    const piece::Part& held = bench.part(way.held);
    const Vector side = cross(way.direction, freedom.direction);
    const Frame frame{held.frame.in(at - way.direction * way.through), held.frame.turn_in(freedom.direction),
                      held.frame.turn_in(side), held.frame.turn_in(way.direction)};
    const double r = shank / 2, room = freedom.room;
    solid::Outline slot;
    slot.start = {-room, -r};
    slot.edges = {{{room, -r}, {}, true},
                  {{room, r}, solid::Point2{room, 0}, true},
                  {{-room, r}, {}, true},
                  {{-room, -r}, solid::Point2{-room, 0}, true}};
    bench.cut(way.held, joint, "screw slot", piece::PrismCut{frame, slot, 0, way.through});
}

void lay_out(Bench& bench, const Pair& pair, bool slotted) {
    const piece::Part& a = bench.part(pair.a);
    const auto row = row_of(bench, pair, Prefer::any_side);
    if (!row) return;
    const Options options(*pair.wanted);
    const Meeting& meeting = row->meeting;
    const Way way = way_of(bench, pair, meeting);
    const std::string kind = slotted ? "slotted screws" : "screws";
    const int joint =
        bench.start(pair, kind, meeting.into, row->at(a, (row->low + row->high) / 2, row->middle));
    const double longest = way.through + way.deep - short_of_far_face;
    const double usual = std::min(3 * way.through, longest);
    const Length length = bench.size(joint, "screw length", options.length("long"),
                                     Length::mm(measure::Rational::nearest(std::floor(usual / 5) * 5, 1)),
                                     from_rule(rules::screw_length) + ", 5 mm short of the far face");
    if (!(length.value() > way.through)) {
        bench.refuse(
            pair, "screw-too-short",
            fmt::format("a screw of {} does not reach through {}, {} thick there",
                        measure::text_with_unit(length, bench.piece().manner), bench.part(way.held).name,
                        measure::text_with_unit(Length::from_geometry(way.through), bench.piece().manner)),
            "state a longer screw, or choose another joint");
        return;
    }
    const Gauge& gauge = gauge_for(length.value());
    const Length shank = bench.size(
        joint, "screw shank", options.length("diameter"), Length::from_geometry(gauge.shank),
        fmt::format("No. {} for this length; Wood Handbook 2021, ch. 8 (shank), common practice (gauge)",
                    gauge.number));
    const piece::Part& holder = bench.part(way.into);
    const bool soft = holder.species != nullptr && holder.species->is_softwood();
    const auto& lead_rule = soft ? rules::lead_hole_softwood : rules::lead_hole_hardwood;
    const double lead = shank.value() * 2 / 3 * lead_rule.exact().value();
    bench.note_size(joint, "lead hole", lead, "mm",
                    from_rule(lead_rule) + "; root two thirds of the shank, from memory");

    std::optional<int> count;
    if (const auto n = options.number("screws")) count = static_cast<int>(*n);
    const double every = options.length("every").value_or(Length::from_geometry(usual_distance)).value();
    const double across = row->set_across(bench, pair);
    const std::vector<double> at =
        places(*row, count, every, std::min(std::max(25.0, 5 * shank.value()), row->length() / 4));
    bench.note_size(joint, "number of screws", static_cast<double>(at.size()), "",
                    count                  ? "stated"
                    : options.has("every") ? "as many as the stated distance needs"
                                           : from_custom("evenly spaced, 200 mm at most"));

    HoldRule rule;
    rule.joint = joint;
    rule.hold = Hold::fastened;
    Freedom freedom;
    if (slotted) {
        freedom = freedom_of(bench, pair, *row, at.size() % 2 == 1);
        if (const auto gap = options.length("gap")) freedom.room = gap->value();
        bench.note_size(joint, "slot longer than the shank", 2 * freedom.room, "mm",
                        options.has("gap")
                            ? "stated, either way"
                            : "movement of the parts against each other over the year, and 1 mm, either way");
        rule.may_slide = {freedom.direction};
        rule.room = freedom.room;
    }
    const double middle = (row->low + row->high) / 2;
    for (const double place : at) {
        const Point p = row->at(a, place, across);
        bench.bore(way.into, joint, "lead hole", p, way.direction, lead, length.value() - way.through);
        rule.held_at.push_back(p);
        if (slotted && !(freedom.middle_is_fixed && std::abs(place - middle) < 1e-6))
            cut_slot(bench, way, joint, p, freedom, shank.value());
        else
            bench.bore(way.held, joint, "clearance bore", p - way.direction * way.through, way.direction,
                       shank.value(), std::nullopt);
    }
    const std::string name = options.quoted().value_or(
        fmt::format("No. {} x {}", gauge.number, hardware_size(bench, length.value())));
    butt(bench, pair, joint, meeting);
    bench.hardware(pair, fmt::format("{} {}", slotted ? "round-head screw with washer" : "screw", name),
                   static_cast<int>(at.size()));
    bench.hold(std::move(rule));
}

} // namespace

void screws(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair, false);
}

void slotted_screws(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair, true);
}

} // namespace rayfleck::joinery
