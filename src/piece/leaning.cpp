// Parts that lean: splayed, raked, canted, turned; and what stands beside them.
//
// The angles are those seen from the front and from the side, so two of them add as tangents: up = (tan a,
// tan b, 1). The part is turned by the shortest rotation that takes the upright there, so that it is not
// twisted about its own axis. A splayed part turns about the middle of its top, a raked or canted one about
// the middle of its foot. When both its levels come from lines, it reaches from level to level: its axis is
// longer by the slope.
//
// A neighbour between leaning parts ends where its own centre line meets their faces; what asks for a face or
// the middle of a leaning part gets it at its own height. Tapers of the leaning part are not looked at.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

constexpr double radians(double degrees) { return degrees * std::numbers::pi / 180.0; }

PartRef itself(Instance& instance) {
    return {&instance, {}, {}, instance.part->name, instance.part->name, ""};
}

/// Adds one angle towards one side to the way the upright points.
bool lean_towards(Elaboration& e, Instance& instance, const syntax::Tilt& tilt, const Expression& angle,
                  const syntax::SideName& side, Lean& lean) {
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    const std::optional<double> degrees = degrees_of(e, angle, c);
    if (!degrees) return false;
    constexpr double most = 80;
    if (std::abs(*degrees) > most) {
        e.error("too-steep", angle.span, "a part cannot lean by more than 80 degrees from upright").mend =
            "let it run across or deep instead";
        return false;
    }
    const double slope = std::tan(radians(*degrees)) * (tilt.word == "splayed" ? -1 : 1);
    if (const auto d = direction_of(side.side)) {
        if (*d == Direction::up) {
            e.error("which-side", side.span, "a part leans to the left, right, front or back");
            return false;
        }
        lean.up = lean.up + unit_vector(*d, is_high(side.side)) * slope;
        return true;
    }
    bool any = false;
    const std::optional<Direction> length = length_direction(e, instance);
    for (const Direction d : {Direction::across, Direction::deep}) {
        // A board leans across its length; where its ends lie may hang on how it leans.
        if (d == length) continue;
        const auto at = interval_of(e, itself(instance), d);
        const auto middle = middle_of(e, *instance.part->scope, d);
        if (!at) return false;
        if (!middle || (at->low < *middle && at->high > *middle)) continue;
        const bool high = (side.side == Side::outside) == (at->low >= *middle);
        lean.up = lean.up + unit_vector(d, high) * slope;
        any = true;
    }
    if (!any)
        e.error("no-inside", side.span,
                "`" + instance.part->name + "` stands in the middle of the piece, so it has no " +
                    text(side.side))
            .mend = "write left, right, front or back";
    return any;
}

/// Where the axis of a leaning part passes at a height, and its direction.
struct AxisLine {
    Point at;
    Vector along;
};

std::optional<AxisLine> axis_of(Elaboration& e, const PartRef& ref) {
    const std::optional<Pose> pose = pose_of(e, ref);
    if (!pose) return std::nullopt;
    int k = 0;
    for (int i = 0; i < 3; ++i)
        if (pose->readings[static_cast<std::size_t>(i)].direction == Direction::up) k = i;
    const std::array axes{pose->frame.x, pose->frame.y, pose->frame.z};
    Point centre = pose->frame.origin;
    for (std::size_t i = 0; i < 3; ++i) centre = centre + axes[i] * (pose->size[i].value() / 2);
    return AxisLine{centre, axes[static_cast<std::size_t>(k)]};
}

/// The height at which the asker meets the part: its own middle, kept within the part. Nothing: use the part
/// as it stands at the end about which it leans.
std::optional<double> meeting_height(Elaboration& e, const PartRef& ref, const Context& c) {
    if (!c.self || c.self == ref.instance || c.along == Direction::up) return std::nullopt;
    const auto lean = lean_of(e, *ref.instance);
    const auto reach = interval_of(e, ref, Direction::up);
    if (!lean || !reach) return std::nullopt;
    const Spot& own = spot_of(e, *c.self, Direction::up);
    if (!own.known) return std::nullopt;
    const double z =
        std::clamp(((own.low + own.high) / Rational(2)).value(), reach->low.value(), reach->high.value());
    const double pivot = lean->about_top ? reach->high.value() : reach->low.value();
    if (lean->leans && std::abs(z - pivot) < 1e-9) return std::nullopt;
    return z;
}

} // namespace

Vector leaned(Vector v, Vector up) {
    // Rodrigues' rotation about z × up by the angle between them.
    const Vector axis = cross(Vector{0, 0, 1}, up);
    const double s = norm(axis), c = up.z;
    if (s < 1e-15) return v;
    const Vector k = axis * (1 / s);
    return v * c + cross(k, v) * s + k * (dot(k, v) * (1 - c));
}

bool is_tilted(Elaboration& e, Instance& instance) {
    const auto& phrases = phrases_of(e, *instance.part);
    return std::any_of(phrases.begin(), phrases.end(), [](const syntax::Phrase* phrase) {
        return std::holds_alternative<syntax::Tilt>(phrase->says) ||
               std::holds_alternative<syntax::TurnedOnPlan>(phrase->says) ||
               std::holds_alternative<syntax::PointToPoint>(phrase->says);
    });
}

std::optional<Lean> lean_of(Elaboration& e, Instance& instance) {
    Lean lean;
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    for (const syntax::Phrase* phrase : phrases_of(e, *instance.part)) {
        if (const auto* turned = std::get_if<syntax::TurnedOnPlan>(&phrase->says)) {
            const auto degrees = degrees_of(e, turned->angle, c);
            if (!degrees) return std::nullopt;
            lean.turned_degrees += *degrees;
        }
        if (const auto* tilt = std::get_if<syntax::Tilt>(&phrase->says)) {
            lean.leans = true;
            lean.about_top = tilt->word == "splayed";
            for (const auto& [angle, side] : tilt->by)
                if (!lean_towards(e, instance, *tilt, angle, side, lean)) return std::nullopt;
        }
    }
    lean.up = unit(lean.up);
    return lean;
}

std::optional<Stance> stance_of(Elaboration& e, Instance& instance, std::optional<Direction> without) {
    const Axes& axes = axes_of(e, instance);
    const auto lean = lean_of(e, instance);
    if (!axes.known || !lean) return std::nullopt;
    Point middle;
    Stance out;
    std::array<double, 3> size{};
    for (const Direction d : directions) {
        const auto i = static_cast<std::size_t>(index_of(d));
        if (d == without) continue;
        const Spot& spot = spot_of(e, instance, d);
        if (!spot.known) return std::nullopt;
        middle[index_of(d)] = ((spot.low + spot.high) / Rational(2)).value();
        size[i] = (spot.high - spot.low).value();
    }
    const double turn = radians(lean->turned_degrees);
    for (std::size_t k = 0; k < 3; ++k) {
        Vector a = unit_vector(axes.along[k]);
        a = {a.x * std::cos(turn) - a.y * std::sin(turn), a.x * std::sin(turn) + a.y * std::cos(turn), a.z};
        out.axes[k] = leaned(a, lean->up);
        out.nominal[k] = size[static_cast<std::size_t>(index_of(axes.along[k]))];
    }
    out.centre = middle;
    if (!lean->leans) return out;
    out.upright = axis_along(axes, Direction::up);
    out.rise = lean->up.z;
    out.trimmed_level = instance.spanned[2] && out.upright != 2;
    const auto k = static_cast<std::size_t>(out.upright);
    const double height = out.nominal[k];
    if (out.trimmed_level) out.nominal[k] = height / out.rise;
    const double half = out.nominal[k] / 2;
    const Point pivot = middle + Vector{0, 0, lean->about_top ? height / 2 : -height / 2};
    out.centre = pivot + lean->up * (lean->about_top ? -half : half);
    return out;
}

std::optional<Plane> face_plane(Elaboration& e, const PartRef& ref, Direction direction, bool high) {
    const std::optional<Pose> pose = pose_of(e, ref);
    if (!pose) return std::nullopt;
    const std::array axes{pose->frame.x, pose->frame.y, pose->frame.z};
    const Vector towards = unit_vector(direction, high);
    std::size_t k = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(dot(axes[i], towards)) > std::abs(dot(axes[k], towards)) + 1e-12) k = i;
    const bool far = dot(axes[k], towards) > 0;
    const Point on = pose->frame.origin + axes[k] * (far ? pose->size[k].value() : 0.0);
    const Vector normal = far ? axes[k] : -axes[k];
    return Plane{normal, dot(normal, on)};
}

std::optional<Interval> between_leaning(Elaboration& e, Instance& instance, Direction direction,
                                        const PartRef& low, const PartRef& high, Interval upright) {
    const bool low_leans = is_tilted(e, *low.instance), high_leans = is_tilted(e, *high.instance);
    if (!low_leans && !high_leans) return upright;
    const std::optional<Stance> stance = stance_of(e, instance, direction);
    if (!stance) return std::nullopt;
    const Axes& axes = axes_of(e, instance);
    const Vector along = stance->axes[static_cast<std::size_t>(axis_along(axes, direction))];
    const auto meet = [&](const PartRef& ref, bool face_high) -> std::optional<Length> {
        const auto plane = face_plane(e, ref, direction, face_high);
        if (!plane) return std::nullopt;
        const double slope = dot(plane->normal, along);
        if (std::abs(slope) < 0.05) {
            e.error("alongside", instance.between_span[static_cast<std::size_t>(index_of(direction))],
                    "`" + instance.part->name + "` runs alongside `" + ref.name + "` and does not meet it");
            return std::nullopt;
        }
        const double t = (plane->offset - dot(plane->normal, stance->centre)) / slope;
        return Length::from_geometry((stance->centre + along * t)[index_of(direction)]);
    };
    if (low_leans) {
        const auto at = meet(low, true);
        if (!at) return std::nullopt;
        upright.low = *at;
    }
    if (high_leans) {
        const auto at = meet(high, false);
        if (!at) return std::nullopt;
        upright.high = *at;
    }
    return upright;
}

std::optional<Length> face_at(Elaboration& e, const PartRef& ref, Direction direction, bool high,
                              const Context& c) {
    const auto as_it_stands = [&]() -> std::optional<Length> {
        const auto at = interval_of(e, ref, direction);
        if (!at) return std::nullopt;
        return high ? at->high : at->low;
    };
    if (direction == Direction::up || !is_tilted(e, *ref.instance)) return as_it_stands();
    Context asked = c;
    asked.along = direction;
    const auto z = meeting_height(e, ref, asked);
    if (!z) return as_it_stands();
    const auto plane = face_plane(e, ref, direction, high);
    const auto axis = axis_of(e, ref);
    if (!plane || !axis) return std::nullopt;
    const Direction other = direction == Direction::across ? Direction::deep : Direction::across;
    if (std::abs(axis->along.z) < 1e-9 || std::abs(plane->normal[index_of(direction)]) < 1e-9)
        return as_it_stands();
    Point p = axis->at + axis->along * ((*z - axis->at.z) / axis->along.z);
    const int d = index_of(direction), o = index_of(other);
    p[d] = (plane->offset - plane->normal[o] * p[o] - plane->normal.z * *z) / plane->normal[d];
    return Length::from_geometry(p[d]);
}

std::optional<Length> middle_at(Elaboration& e, const PartRef& ref, Direction direction, const Context& c) {
    const auto at = interval_of(e, ref, direction);
    if (!at) return std::nullopt;
    const Length as_it_stands = (at->low + at->high) / Rational(2);
    if (direction == Direction::up || !is_tilted(e, *ref.instance)) return as_it_stands;
    Context asked = c;
    asked.along = direction;
    const auto z = meeting_height(e, ref, asked);
    if (!z) return as_it_stands;
    const auto axis = axis_of(e, ref);
    if (!axis) return std::nullopt;
    if (std::abs(axis->along.z) < 1e-9) return as_it_stands;
    const Point p = axis->at + axis->along * ((*z - axis->at.z) / axis->along.z);
    return Length::from_geometry(p[index_of(direction)]);
}

} // namespace rayfleck::piece
