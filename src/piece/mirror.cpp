// Mirror images, and the way out of a made thing.
//
// A reflection across the middle of a rod keeps a part's length and thickness axes as they are reflected and
// turns its width axis about, so that its own frame stays right-handed: (x, y, z) on the part is (x, width -
// y, z) on its image. Everything that is said in the part's own frame follows: cuts, outline, bark edge, face
// edge, grain angle.
//
//      left leg        rod's middle        right leg
//   y ^   x up              |              ^ x up, y away from the middle on both
//     +---> z               |          z <-+
//
// A made thing is shifted to where it is placed, or mirrored like a part.

#include "piece/elaboration.hpp"

#include <algorithm>

namespace rayfleck::piece {
namespace {

using solid::Outline;
using solid::Point2;

Vector reflect(Vector v, Direction d) {
    v[index_of(d)] = -v[index_of(d)];
    return v;
}

/// y becomes width - y; walked the other way round, so that it stays anticlockwise.
Outline mirrored(const Outline& outline, double width) {
    const auto turn = [&](Point2 p) { return Point2{p.x, width - p.y}; };
    Outline out;
    out.start = turn(outline.start);
    const std::size_t n = outline.edges.size();
    for (std::size_t i = n; i-- > 0;) {
        solid::Edge2 edge;
        edge.to = turn(i == 0 ? outline.start : outline.edges[i - 1].to);
        if (outline.edges[i].centre) edge.centre = turn(*outline.edges[i].centre);
        // Reflected and walked backwards, an arc turns the way it did.
        edge.anticlockwise = outline.edges[i].anticlockwise;
        out.edges.push_back(edge);
        if (!outline.smooth.empty()) out.smooth.push_back(outline.smooth[i]);
    }
    return out;
}

LocalSide mirrored(LocalSide side) {
    if (side.axis == 1) side.high = !side.high;
    return side;
}

struct MirrorShape {
    double width;
    Point turn(Point p) const { return {p.x, width - p.y, p.z}; }
    static Vector turn_direction(Vector v) { return {v.x, -v.y, v.z}; }

    PlaneCut operator()(PlaneCut c) const {
        // n·(x, w - y, z) = n'·p + ny·w
        c.plane.offset -= c.plane.normal.y * width;
        c.plane.normal = turn_direction(c.plane.normal);
        return c;
    }
    EdgeCut operator()(EdgeCut c) const {
        c.first = mirrored(c.first);
        c.second = mirrored(c.second);
        return c;
    }
    BoreCut operator()(BoreCut c) const {
        c.face = mirrored(c.face);
        c.centre = turn(c.centre);
        if (c.direction) c.direction = turn_direction(*c.direction);
        return c;
    }
    BoxCut operator()(BoxCut c) const {
        const double low = width - c.box.high.y, high = width - c.box.low.y;
        c.box.low.y = low;
        c.box.high.y = high;
        return c;
    }
    PrismCut operator()(PrismCut c) const {
        // The prism's own frame is reflected like a part's: its x and z as reflected, its y turned about.
        const Frame f = c.frame;
        c.frame.origin = turn(f.origin);
        c.frame.x = turn_direction(f.x);
        c.frame.z = turn_direction(f.z);
        c.frame.y = -turn_direction(f.y);
        c.outline = mirrored(c.outline, 0);
        return c;
    }
    TurnedCut operator()(TurnedCut c) const { return c; }
};

} // namespace

Cut mirrored(const Cut& cut, double width) {
    Cut out = cut;
    out.shape = std::visit(
        [&](const auto& shape) -> decltype(out.shape) { return MirrorShape{width}(shape); }, cut.shape);
    return out;
}

Part reflected(const Part& part, Direction direction, double middle) {
    const double width = part.width.value();
    Part out = part;
    Point origin = part.frame.origin + part.frame.y * width;
    origin[index_of(direction)] = 2 * middle - origin[index_of(direction)];
    out.frame.origin = origin;
    out.frame.x = reflect(part.frame.x, direction);
    out.frame.z = reflect(part.frame.z, direction);
    out.frame.y = -reflect(part.frame.y, direction);
    out.mirrored = !part.mirrored;
    out.face_edge_high = !part.face_edge_high;
    if (part.bark) out.bark = mirrored(*part.bark);
    out.grain = -part.grain;
    if (part.rings_stated) out.rings = -part.rings;
    if (part.pith) out.pith->y = -part.pith->y;
    if (part.outline) out.outline = mirrored(*part.outline, width);
    for (Cut& cut : out.shaping) cut = mirrored(cut, width);
    return out;
}

namespace {

/// How one step outwards carries a coordinate: x becomes sign * x + add, in the scope outside.
struct Carry {
    bool flipped = false;
    Length add;
};

std::optional<Carry> carry_of(Elaboration& e, MadeCopy& copy, Direction d) {
    const std::optional<Length> offset = offset_of(e, copy, d);
    if (!offset) return std::nullopt;
    Context c;
    c.scope = copy.made->scope;
    Length add = *offset;
    const bool flipped = copy.flipped[static_cast<std::size_t>(index_of(d))];
    if (flipped) {
        const std::optional<Length> middle = middle_of(e, *copy.made->scope, d);
        if (!middle) return std::nullopt;
        add = *middle * Rational(2) - add;
    }
    return Carry{flipped, add};
}

} // namespace

bool turned_about(const PartRef& ref, Direction direction) {
    bool flipped = ref.flipped[static_cast<std::size_t>(index_of(direction))];
    for (const MadeCopy* copy : ref.path)
        flipped = flipped != copy->flipped[static_cast<std::size_t>(index_of(direction))];
    return flipped;
}

std::optional<Interval> carried(Elaboration& e, const PartRef& ref, Direction direction, Interval interval) {
    const auto flip_about = [&](Length twice_middle) {
        interval = {twice_middle - interval.high, twice_middle - interval.low};
    };
    if (ref.flipped[static_cast<std::size_t>(index_of(direction))]) {
        const std::optional<Length> middle = middle_of(e, *ref.instance->part->scope, direction);
        if (!middle) return std::nullopt;
        flip_about(*middle * Rational(2));
    }
    for (std::size_t i = ref.path.size(); i-- > 0;) {
        const std::optional<Carry> carry = carry_of(e, *ref.path[i], direction);
        if (!carry) return std::nullopt;
        if (carry->flipped)
            flip_about(carry->add);
        else
            interval = {interval.low + carry->add, interval.high + carry->add};
    }
    return interval;
}

std::optional<Part> carried(Elaboration& e, const PartRef& ref, Part part) {
    for (const Direction d : directions) {
        if (!ref.flipped[static_cast<std::size_t>(index_of(d))]) continue;
        const std::optional<Length> middle = middle_of(e, *ref.instance->part->scope, d);
        if (!middle) return std::nullopt;
        part = reflected(part, d, middle->value());
    }
    for (std::size_t i = ref.path.size(); i-- > 0;)
        for (const Direction d : directions) {
            const std::optional<Carry> carry = carry_of(e, *ref.path[i], d);
            if (!carry) return std::nullopt;
            if (carry->flipped)
                part = reflected(part, d, carry->add.value() / 2);
            else
                part.frame.origin[index_of(d)] += carry->add.value();
        }
    return part;
}

} // namespace rayfleck::piece
