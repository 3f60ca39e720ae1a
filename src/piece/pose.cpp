// The body as it stands: its own frame, its sizes, and the cuts that trim its ends to levels and neighbours.
//
// An upright body is the box of its three places, exact. A leaning one is its stance; where its ends are cut
// level, or to the leaning faces of its neighbours, the body is drawn out until the slanting plane is covered
// on all corners:
//
//        level ________              n the plane's normal, a the axis trimmed, b and c the others:
//          \   \  .|  added          added = (|n·b| size_b/2 + |n·c| size_c/2) / |n·a|
//           \   \ .|
//
// Saw settings of such a cut, board lying on its face: the miter is the turn of the cut across the face,
// tan = n_y / n_x; the bevel is the tilt of the blade, sin = n_z. For four canted sides this gives the known
// compound angles, tan miter = sin cant and sin bevel = cos cant · sin 45 (geometry; derived, not looked up).

#include <algorithm>
#include <cmath>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

struct Builder {
    Elaboration& e;
    Instance& self;
    Pose& pose;
    std::array<Vector, 3> axes;
    std::array<double, 3> low{}, high{}; ///< of the body, from the nominal low corner
    std::array<bool, 3> changed{};
    Point corner; ///< nominal low corner
    struct Wanted {
        Plane plane; ///< removes beyond
        int axis;
        Span span;
        std::string remark;
    };
    std::vector<Wanted> wanted;

    /// Draws the body out at one end of an axis until it covers a plane that crosses the centre line there.
    void trim(Plane plane, int axis, bool high_end, Span span, std::string remark) {
        const auto k = static_cast<std::size_t>(axis);
        const double straight = std::abs(dot(plane.normal, axes[k]));
        if (straight > 1 - 1e-12) return;
        double added = 0;
        for (std::size_t j = 0; j < 3; ++j)
            if (j != k) added += std::abs(dot(plane.normal, axes[j])) * (high[j] - low[j]) / 2;
        added /= straight;
        (high_end ? high[k] : low[k]) += high_end ? added : -added;
        changed[k] = true;
        wanted.push_back({plane, axis, span, std::move(remark)});
    }

    void finish() {
        pose.frame.origin = corner;
        for (std::size_t k = 0; k < 3; ++k) pose.frame.origin = pose.frame.origin + axes[k] * low[k];
        pose.frame.x = axes[0];
        pose.frame.y = axes[1];
        pose.frame.z = axes[2];
        for (std::size_t k = 0; k < 3; ++k) {
            if (changed[k]) pose.size[k] = Length::from_geometry(high[k] - low[k]);
            pose.readings[k].start = -low[k];
        }
        for (const Wanted& w : wanted) {
            PlaneCut cut;
            cut.plane.normal = pose.frame.turn_in(w.plane.normal);
            cut.plane.offset = w.plane.offset - dot(w.plane.normal, pose.frame.origin);
            set_saw(cut, w.axis);
            constexpr std::array words{"crosscut", "rip", "resaw"};
            pose.trims.push_back({words[static_cast<std::size_t>(w.axis)], cut, w.span, -1, w.remark});
        }
        pose.known = true;
    }
};

void from_point_to_point(Elaboration& e, Instance& instance, const syntax::PointToPoint& says, Span span,
                         Pose& pose) {
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    if (says.from.size() != 3 || says.to.size() != 3) return;
    Point from, to;
    for (const Direction d : directions) {
        c.along = d;
        const auto a = length_of(e, says.from[static_cast<std::size_t>(index_of(d))], c);
        const auto b = length_of(e, says.to[static_cast<std::size_t>(index_of(d))], c);
        if (!a || !b) return;
        from[index_of(d)] = a->value();
        to[index_of(d)] = b->value();
    }
    const double length = norm(to - from);
    if (length < 1e-6) {
        e.error("no-size", span, "`" + instance.part->name + "` begins and ends at the same point");
        return;
    }
    for (const int axis : {2, 1}) {
        const auto size = stated_size(e, instance, axis);
        if (!size && !size_is_told(instance, axis))
            e.error("open-size", instance.part->header,
                    "nothing tells the " + std::string(axis == 2 ? "thickness" : "width") + " of `" +
                        instance.part->name + "`")
                .mend = "a part from point to point needs thickness and width, as in `size 20 x 40`";
        if (!size) return;
        pose.size[static_cast<std::size_t>(axis)] = *size;
    }
    const Vector x = (to - from) * (1 / length);
    Vector face = std::abs(x.z) < 0.9 ? Vector{0, 0, 1} : Vector{0, -1, 0};
    for (const syntax::Phrase* phrase : instance.part->phrases)
        if (const auto* looks = std::get_if<syntax::FaceLooks>(&phrase->says); looks && !looks->edge)
            if (const auto d = direction_of(looks->towards.side))
                face = unit_vector(*d, is_high(looks->towards.side));
    Vector z = face - x * dot(face, x);
    if (norm(z) < 1e-6) {
        e.error("looks-along-grain", span,
                "the face side of `" + instance.part->name + "` cannot look along its length");
        return;
    }
    z = unit(z);
    pose.frame.x = x;
    pose.frame.z = z;
    pose.frame.y = cross(z, x);
    pose.frame.origin = from - pose.frame.y * (pose.size[1].value() / 2) - z * (pose.size[2].value() / 2);
    pose.size[0] = Length::from_geometry(length);
    pose.upright = false;
    // Positions on rods are read along the rod that the length follows most.
    for (std::size_t k = 0; k < 3; ++k) {
        const Vector a = k == 0 ? pose.frame.x : k == 1 ? pose.frame.y : z;
        int d = 0;
        for (int i = 1; i < 3; ++i)
            if (std::abs(a[i]) > std::abs(a[d]) + 1e-12) d = i;
        Pose::Reading& reading = pose.readings[k];
        reading.direction = directions[static_cast<std::size_t>(d)];
        reading.high = a[d] > 0;
        reading.scale = 1 / std::abs(a[d]);
        reading.origin = k == 0
                             ? from[d]
                             : (pose.frame.out({0, pose.size[1].value() / 2, pose.size[2].value() / 2}))[d] -
                                   a[d] * pose.size[k].value() / 2;
    }
    pose.known = true;
}

/// Two own axes may read the same rod when a part lies far askew; such a part's sides have no plain names.
void build(Elaboration& e, Instance& instance, Pose& pose) {
    for (const syntax::Phrase* phrase : phrases_of(e, *instance.part))
        if (const auto* points = std::get_if<syntax::PointToPoint>(&phrase->says))
            return from_point_to_point(e, instance, *points, phrase->span, pose);
    const Axes& axes = axes_of(e, instance);
    if (!axes.known) return;
    std::array<Spot, 3> at;
    bool all = true;
    for (const Direction d : directions) {
        at[static_cast<std::size_t>(index_of(d))] = spot_of(e, instance, d);
        all = all && at[static_cast<std::size_t>(index_of(d))].known;
    }
    if (!all) return;
    const auto z_high = looks_high(e, instance, axes.along[2], false);
    if (!z_high) return;
    const Vector x = unit_vector(axes.along[0]), z = unit_vector(axes.along[2], *z_high);
    const Vector y = cross(z, x);
    std::array<bool, 3> points_high{true, y[index_of(axes.along[1])] > 0, *z_high};
    for (std::size_t k = 0; k < 3; ++k) {
        const Spot& spot = at[static_cast<std::size_t>(index_of(axes.along[k]))];
        pose.size[k] = spot.high - spot.low;
        pose.readings[k] = {axes.along[k], 0, 1, points_high[k] ? spot.low.value() : spot.high.value(),
                            points_high[k]};
    }
    bool leaning_neighbours = false;
    for (const auto& neighbours : instance.neighbours)
        for (const PartRef& ref : neighbours)
            leaning_neighbours = leaning_neighbours || is_tilted(e, *ref.instance);
    const bool tilted = is_tilted(e, instance);
    if (!tilted && !leaning_neighbours) {
        pose.frame = {{}, x, y, z};
        for (const Pose::Reading& reading : pose.readings)
            pose.frame.origin[index_of(reading.direction)] = reading.origin;
        pose.known = true;
        return;
    }

    const auto stance = stance_of(e, instance, std::nullopt);
    if (!stance) return;
    Builder builder{e, instance, pose, {}, {}, {}, {}, stance->centre, {}};
    for (std::size_t k = 0; k < 3; ++k) {
        builder.axes[k] = points_high[k] ? stance->axes[k] : -stance->axes[k];
        builder.high[k] = stance->nominal[k];
        builder.corner = builder.corner - builder.axes[k] * (stance->nominal[k] / 2);
    }
    pose.upright = !tilted;
    if (stance->trimmed_level) {
        Span span = instance.part->header;
        for (const syntax::Phrase* phrase : instance.part->phrases)
            if (std::holds_alternative<syntax::Tilt>(phrase->says)) span = phrase->span;
        const Spot& up = at[2];
        const int k = stance->upright;
        const bool rises = points_high[static_cast<std::size_t>(k)];
        builder.changed[static_cast<std::size_t>(k)] = true;
        pose.readings[static_cast<std::size_t>(k)].scale = 1 / stance->rise;
        builder.trim({{0, 0, -1}, -up.low.value()}, k, !rises, span, "level");
        builder.trim({{0, 0, 1}, up.high.value()}, k, rises, span, "level");
    }
    for (const Direction d : directions) {
        const auto& neighbours = instance.neighbours[static_cast<std::size_t>(index_of(d))];
        if (neighbours.size() != 2) continue;
        const int k = axis_along(axes, d);
        const bool along = points_high[static_cast<std::size_t>(k)];
        for (const bool high : {false, true}) {
            const PartRef& ref = neighbours[high ? 1 : 0];
            if (!is_tilted(e, *ref.instance)) continue;
            const auto plane = face_plane(e, ref, d, !high);
            if (!plane) return;
            builder.trim({-plane->normal, -plane->offset}, k, high == along,
                         instance.between_span[static_cast<std::size_t>(index_of(d))], "to " + ref.name);
        }
    }
    builder.finish();
}

} // namespace

void set_saw(PlaneCut& cut, int axis) {
    const Vector n = cut.plane.normal;
    // Which own axis counts as across the face, and which tilts the blade.
    const int across = axis == 0 ? 1 : 0, tilt = axis == 2 ? 1 : 2;
    const double miter = std::atan2(std::abs(n[across]), std::abs(n[axis]));
    const double bevel = std::asin(std::clamp(std::abs(n[tilt]), 0.0, 1.0));
    constexpr double least = 1e-9;
    cut.miter.reset();
    cut.bevel.reset();
    if (miter > least) cut.miter = measure::Angle::radians(miter);
    if (bevel > least) cut.bevel = measure::Angle::radians(bevel);
}

const Pose& pose_of(Elaboration& e, Instance& instance) {
    Pose& pose = instance.pose;
    if (pose.progress == Progress::done) return pose;
    const Working working(e, pose.progress, "the stance of " + instance.part->name, instance.part->header);
    if (!working.begun()) return pose;
    try {
        build(e, instance, pose);
    } catch (const measure::TooLarge&) {
        e.error("too-large", instance.part->header,
                "the place of `" + instance.part->name +
                    "` is too large or too finely divided to be kept exact");
        pose.known = false;
    }
    return pose;
}

std::optional<Pose> pose_of(Elaboration& e, const PartRef& ref) {
    const Pose& own = pose_of(e, *ref.instance);
    if (!own.known) return std::nullopt;
    Part part;
    part.frame = own.frame;
    part.width = own.size[1];
    const auto out = carried(e, ref, std::move(part));
    if (!out) return std::nullopt;
    Pose pose = own;
    pose.frame = out->frame;
    return pose;
}

} // namespace rayfleck::piece
