// Miter: both ends are cut at the plane that runs from the inner to the outer corner.
//
// The two parts' outer sides meet in a line, their inner sides in another; the plane through both is the
// miter, for equal and unequal widths, for right and other angles, flat and canted (then it is a compound
// miter). Bodies may stop at each other's faces or run to the outer corner. A spline is let into both across
// the miter, keys are let into the outer corner after gluing. Sizes: spline a third of the thickness, twice
// the thickness wide (US Navy NAVEDTRA 14119, ch. 3). Keys as thick as a saw kerf, two thirds of the way to
// the inner corner (common practice, no published source).

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "joinery/kinds.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

struct Ending {
    LocalSide end;
    Vector out;            ///< piece's frame
    LocalSide outer;       ///< side of the corner's outside
    Plane outside, inside; ///< piece's frame, both with the normal of the outside
};

Ending ending_of(const piece::Part& part, LocalSide end, Vector other_out) {
    Ending ending;
    ending.end = end;
    ending.out = part.frame.turn_out(outward(end));
    const Vector own = part.frame.turn_in(other_out);
    const int axis = std::abs(own.y) > std::abs(own.z) + 1e-9 ? 1 : 2;
    ending.outer = {axis, own[axis] > 0};
    const LocalSide inner{axis, !ending.outer.high};
    ending.outside = carried_out(part, {outward(ending.outer), ending.outer.high ? size_of(part, axis) : 0});
    const Plane in = carried_out(part, {outward(inner), inner.high ? size_of(part, axis) : 0});
    ending.inside = {-in.normal, -in.offset};
    return ending;
}

Point end_middle(const piece::Part& part, LocalSide end) {
    Point p{coordinate(part, end, 0), size_of(part, 1) / 2, size_of(part, 2) / 2};
    return part.frame.out(p);
}

/// Where three planes meet.
Point meet(const Plane& p, const Plane& q, const Plane& r) {
    const double volume = dot(p.normal, cross(q.normal, r.normal));
    return (cross(q.normal, r.normal) * p.offset + cross(r.normal, p.normal) * q.offset +
            cross(p.normal, q.normal) * r.offset) *
           (1 / volume);
}

struct Corner {
    Ending a, b;
    Vector line;              ///< along the corner
    Point outer, inner;       ///< at the middle of the corner's reach
    Plane plane;              ///< keeps A below
    double low = 0, high = 0; ///< reach along `line` that both parts share
};

std::optional<Corner> corner_of(const piece::Part& a, const piece::Part& b) {
    LocalSide end_a, end_b;
    double nearest = std::numeric_limits<double>::infinity();
    for (const bool ha : {false, true})
        for (const bool hb : {false, true}) {
            const double distance = norm(end_middle(a, {0, ha}) - end_middle(b, {0, hb}));
            if (distance >= nearest - 1e-9) continue;
            nearest = distance;
            end_a = {0, ha};
            end_b = {0, hb};
        }
    const Vector out_a = a.frame.turn_out(outward(end_a)), out_b = b.frame.turn_out(outward(end_b));
    if (norm(cross(out_a, out_b)) < 0.05) return std::nullopt;
    Corner corner;
    corner.a = ending_of(a, end_a, out_b);
    corner.b = ending_of(b, end_b, out_a);
    const Vector line = cross(corner.a.outside.normal, corner.b.outside.normal);
    if (norm(line) < 0.05) return std::nullopt;
    corner.line = unit(line);
    corner.low = -std::numeric_limits<double>::infinity();
    corner.high = std::numeric_limits<double>::infinity();
    for (const piece::Part* part : {&a, &b}) {
        const LocalSide end = part == &a ? end_a : end_b;
        double low = std::numeric_limits<double>::infinity(), high = -low;
        for (int c = 0; c < 4; ++c) {
            const Point p = part->frame.out(
                {coordinate(*part, end, 0), c & 1 ? size_of(*part, 1) : 0, c & 2 ? size_of(*part, 2) : 0});
            low = std::min(low, dot(p, corner.line));
            high = std::max(high, dot(p, corner.line));
        }
        corner.low = std::max(corner.low, low);
        corner.high = std::min(corner.high, high);
    }
    const Plane across{corner.line, (corner.low + corner.high) / 2};
    corner.outer = meet(corner.a.outside, corner.b.outside, across);
    corner.inner = meet(corner.a.inside, corner.b.inside, across);
    Vector normal = unit(cross(corner.line, corner.outer - corner.inner));
    if (dot(normal, corner.a.out) < 0) normal = -normal;
    corner.plane = {normal, dot(normal, corner.outer)};
    return corner;
}

/// Whole multiples of a right angle and the like come out a hair off; a saw is set to tenths at best.
double tidy(double degrees) { return std::round(degrees * 1e9) / 1e9; }

void cut_end(Bench& bench, int id, int joint, const Ending& ending, const Plane& plane) {
    const piece::Part& part = bench.part(id);
    const Plane own = seen_from(part, plane);
    const Vector out = outward(ending.end);
    const double slope = dot(own.normal, out);
    double reach = -std::numeric_limits<double>::infinity();
    for (int c = 0; c < 4; ++c) {
        const Point p{coordinate(part, ending.end, 0), c & 1 ? size_of(part, 1) : 0,
                      c & 2 ? size_of(part, 2) : 0};
        reach = std::max(reach, (own.offset - dot(own.normal, p)) / slope);
    }
    if (reach > touching_within) bench.grow(id, ending.end, Length::from_geometry(reach));
    piece::PlaneCut cut;
    cut.plane = own;
    constexpr double in_degrees = 180 / 3.14159265358979323846;
    cut.miter = measure::Angle::degrees(
        tidy(std::atan2(std::abs(own.normal.y), std::abs(own.normal.x)) * in_degrees));
    cut.bevel = measure::Angle::degrees(tidy(std::asin(std::min(1.0, std::abs(own.normal.z))) * in_degrees));
    bench.cut(id, joint, "miter", cut);
}

/// Frame on the miter: x square to it, y from the inner to the outer corner, z along the corner's line.
Frame on_miter(const Corner& corner) {
    Frame frame;
    frame.origin = (corner.outer + corner.inner) * 0.5;
    frame.y = unit(corner.outer - corner.inner);
    frame.x = corner.plane.normal;
    frame.z = cross(frame.x, frame.y);
    return frame;
}

void let_in_spline(Bench& bench, const Pair& pair, const Corner& corner, int joint, const Options& options) {
    const piece::Part& a = bench.part(pair.a);
    // On a flat frame the spline lies in the frame's plane; at a case corner it runs along the corner.
    const bool flat = corner.a.outer.axis == 1;
    const Length stock = flat ? a.thickness : exact_size_of(a, corner.a.outer.axis);
    auto stated = options.length("spline");
    if (!stated) stated = options.length("thick");
    const Length thick =
        bench.size(joint, "spline thickness", stated, rules::spline_thickness.share_of(stock),
                   from_rule(rules::spline_thickness));
    auto stated_wide = options.length("wide");
    if (!stated_wide && options.length("deep")) stated_wide = *options.length("deep") * measure::Rational(2);
    const double across = norm(corner.outer - corner.inner);
    // A case's spline must stay within the wood: the inner third of the miter leaves about that much on
    // either side.
    const Length rule =
        flat ? rules::spline_width.share_of(stock)
             : std::min(rules::spline_width.share_of(stock), Length::from_geometry(across / 2));
    const Length wide =
        bench.size(joint, "spline width", stated_wide, rule,
                   flat ? from_rule(rules::spline_width) : from_custom("half the width of the miter"));
    Frame frame = on_miter(corner);
    const double half = thick.value() / 2, deep = wide.value() / 2, reach = (corner.high - corner.low) / 2;
    double length = 0;
    for (const int id : {pair.a, pair.b}) {
        const Frame seen = seen_from(bench.part(id), frame);
        if (flat) {
            length = across;
            bench.cut(
                id, joint, "spline slot",
                piece::PrismCut{seen, rectangle(-deep, -across / 2 - 2, deep, across / 2 + 2), -half, half});
        } else {
            length = 2 * reach;
            const double at = -across / 6;
            bench.cut(
                id, joint, "spline slot",
                piece::PrismCut{seen, rectangle(-deep, at - half, deep, at + half), -reach - 2, reach + 2});
        }
    }
    bench.hardware(pair,
                   fmt::format("spline {} x {} x {}, grain across the miter",
                               hardware_size(bench, thick.value()), hardware_size(bench, wide.value()),
                               hardware_size(bench, length)),
                   1);
}

void let_in_keys(Bench& bench, const Pair& pair, const Corner& corner, int joint, const Options& options) {
    const double reach = corner.high - corner.low, across = norm(corner.outer - corner.inner);
    const auto stated = options.number("keys");
    const int count = stated ? std::clamp(static_cast<int>(*stated), 1, 50)
                             : std::max(1, static_cast<int>(std::lround(reach / 75)));
    bench.note_size(joint, "keys", count, "", stated ? "stated" : from_custom("one for every 75 mm or 3 in"));
    const Length thick =
        bench.size(joint, "key thickness", options.length("thick"),
                   bench.either(Length::mm(3), Length::in({1, 8})), from_custom("a saw kerf"));
    const double deep = options.length("deep").value_or(Length::from_geometry(across * 2 / 3)).value();
    bench.note_size(joint, "key depth", deep, "mm",
                    options.has("deep") ? "stated"
                                        : from_custom("two thirds of the way to the inner corner"));
    const Frame frame = on_miter(corner);
    for (int i = 0; i < count; ++i) {
        const double at = (i + 0.5) / count * reach - reach / 2, half = thick.value() / 2;
        for (const int id : {pair.a, pair.b})
            bench.cut(id, joint, "key slot",
                      piece::PrismCut{
                          seen_from(bench.part(id), frame),
                          rectangle(-3 * across, across / 2 - deep, 3 * across, across / 2 + 2 * across),
                          at - half, at + half});
    }
    bench.hardware(pair, fmt::format("key {} thick", hardware_size(bench, thick.value())), count);
}

void lay_out(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto corner = corner_of(a, b);
    if (!corner) {
        bench.refuse(pair, "no-corner-to-miter",
                     a.name + " and " + b.name + " run the same way, so they make no corner to miter",
                     "a scarf or a butt joint joins ends in one line");
        return;
    }
    if (!(corner->high - corner->low > 1)) {
        bench.refuse(pair, "no-corner-to-miter",
                     a.name + " and " + b.name + " share no width at their corner",
                     "place both at one level");
        return;
    }
    const Options options(*pair.wanted);
    std::string kind = "miter";
    for (const std::string_view word : {"spline", "keys"})
        if (options.has(word)) kind += fmt::format(", {}", word);
    const int joint = bench.start(pair, kind, {}, (corner->outer + corner->inner) * 0.5);
    cut_end(bench, pair.a, joint, corner->a, corner->plane);
    cut_end(bench, pair.b, joint, corner->b, {-corner->plane.normal, -corner->plane.offset});
    bench.note_size(joint, "miter from the inner to the outer corner", norm(corner->outer - corner->inner),
                    "mm", "where the sides meet");
    if (options.has("spline")) let_in_spline(bench, pair, *corner, joint, options);
    if (options.has("keys")) let_in_keys(bench, pair, *corner, joint, options);
    HoldRule rule;
    rule.joint = joint;
    if (options.has("dry")) rule.hold = Hold::free;
    bench.hold(std::move(rule));
}

} // namespace

void miters(Bench& bench, const std::vector<Pair>& pairs) {
    for (const Pair& pair : pairs) lay_out(bench, pair);
}

} // namespace rayfleck::joinery
