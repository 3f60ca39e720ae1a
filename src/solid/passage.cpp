// Convex faces, nearly all of them, are clipped by their sides; where both are hollow or have holes, the
// polygon library does it. Depth is linear over a face, so the place where one lies ahead of the other ends
// at a straight line, along which the overlap is cut once more.

#include "solid/passage.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "solid/boundary.hpp"

namespace rayfleck::solid {
namespace {

constexpr double along_within = 1e-3; // least component of a normal that counts: 0.06 degrees

using Ring = std::vector<Point2>;

double twice_area(const Ring& ring) {
    double sum = 0;
    for (std::size_t i = 1; i + 1 < ring.size(); ++i)
        sum += (ring[i].x - ring[0].x) * (ring[i + 1].y - ring[0].y) -
               (ring[i].y - ring[0].y) * (ring[i + 1].x - ring[0].x);
    return sum;
}

/// What of the ring lies where x·p.x + y·p.y <= limit.
void clip(Ring& ring, double x, double y, double limit) {
    Ring kept;
    kept.reserve(ring.size() + 2);
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point2 p = ring[i], q = ring[(i + 1) % ring.size()];
        const double sp = x * p.x + y * p.y - limit, sq = x * q.x + y * q.y - limit;
        if (sp <= 0) kept.push_back(p);
        if ((sp < 0 && sq > 0) || (sp > 0 && sq < 0)) {
            const double t = sp / (sp - sq);
            kept.push_back({p.x + (q.x - p.x) * t, p.y + (q.y - p.y) * t});
        }
    }
    ring = std::move(kept);
}

ClipperLib::Paths on_grid(const std::vector<Ring>& rings) {
    ClipperLib::Paths paths;
    for (const Ring& ring : rings) {
        ClipperLib::Path path;
        for (const Point2 p : ring)
            path.emplace_back(std::llround(p.x * grid_steps_per_mm), std::llround(p.y * grid_steps_per_mm));
        paths.push_back(std::move(path));
    }
    return paths;
}

/// Rings of both together, anticlockwise round what they share.
std::vector<Ring> common(const std::vector<Ring>& a, const std::vector<Ring>& b) {
    std::vector<Ring> rings;
    for (const ClipperLib::Path& path : clipped(ClipperLib::ctIntersection, on_grid(a), on_grid(b))) {
        Ring& ring = rings.emplace_back();
        for (const auto& q : path)
            ring.push_back(
                {static_cast<double>(q.X) / grid_steps_per_mm, static_cast<double>(q.Y) / grid_steps_per_mm});
    }
    return rings;
}

/// Mean width of an area: twice itself by its border.
double mean_width(const std::vector<Ring>& rings) {
    double twice = 0, border = 0;
    for (const Ring& ring : rings) {
        if (ring.size() < 3) continue;
        twice += twice_area(ring);
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point2 p = ring[i], q = ring[(i + 1) % ring.size()];
            border += std::hypot(q.x - p.x, q.y - p.y);
        }
    }
    return border > 0 ? std::abs(twice) / border : 0;
}

} // namespace

Passage::Passage(const std::vector<Placed>& parts, Vector direction) : direction_(direction) {
    int least = 0;
    for (int axis = 1; axis < 3; ++axis)
        if (std::abs(direction[axis]) < std::abs(direction[least])) least = axis;
    Vector across;
    across[least] = 1;
    y_ = unit(cross(direction, across));
    x_ = cross(y_, direction);
    for (const Placed& part : parts) add(part);
    loops_.push_back(static_cast<int>(points_.size()));
}

void Passage::add(const Placed& placed) {
    const Frame& frame = placed.frame;
    const Vector ahead = frame.turn_in(direction_), x = frame.turn_in(x_), y = frame.turn_in(y_);
    const Vector origin{dot(x_, frame.origin), dot(y_, frame.origin), dot(direction_, frame.origin)};
    Part part;
    for (const bool forward : {false, true}) {
        const std::size_t begin = facings_.size();
        for (const Face& face : placed.solid->faces) {
            const double turned = dot(face.plane.normal, ahead);
            if (forward ? turned <= along_within : turned >= -along_within) continue;
            Facing facing;
            facing.low = 1e300, facing.high = -1e300;
            facing.by_x = -dot(face.plane.normal, x) / turned;
            facing.by_y = -dot(face.plane.normal, y) / turned;
            facing.at =
                face.plane.offset / turned + origin.z - facing.by_x * origin.x - facing.by_y * origin.y;
            facing.square = std::abs(std::abs(turned) - 1) < 1e-9;
            facing.area = face.area * std::abs(turned);
            facing.first_loop = static_cast<int>(loops_.size());
            for (const auto& loop : face.loops) {
                loops_.push_back(static_cast<int>(points_.size()));
                for (const Point& p : loop) {
                    const Point2 at{dot(x, p) + origin.x, dot(y, p) + origin.y};
                    const double depth = dot(ahead, p) + origin.z;
                    points_.push_back(at);
                    facing.round.left = std::min(facing.round.left, at.x);
                    facing.round.right = std::max(facing.round.right, at.x);
                    facing.round.bottom = std::min(facing.round.bottom, at.y);
                    facing.round.top = std::max(facing.round.top, at.y);
                    facing.low = std::min(facing.low, depth);
                    facing.high = std::max(facing.high, depth);
                }
                // Seen from behind, a rim runs clockwise.
                if (!forward) std::reverse(points_.begin() + loops_.back(), points_.end());
            }
            facing.past_loop = static_cast<int>(loops_.size());
            if (facing.past_loop == facing.first_loop + 1) {
                const Point2* p = points_.data() + loops_.back();
                const std::size_t n = points_.size() - static_cast<std::size_t>(loops_.back());
                facing.convex = true;
                for (std::size_t i = 0; i < n && facing.convex; ++i) {
                    const Point2 a = p[i], b = p[(i + 1) % n], c = p[(i + 2) % n];
                    facing.convex = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= -1e-6;
                }
                const double filled =
                    (facing.round.right - facing.round.left) * (facing.round.top - facing.round.bottom);
                facing.rectangle =
                    facing.convex && n == 4 && std::abs(filled - facing.area) < 1e-4 * (filled + 1);
            }
            part.round.left = std::min(part.round.left, facing.round.left);
            part.round.right = std::max(part.round.right, facing.round.right);
            part.round.bottom = std::min(part.round.bottom, facing.round.bottom);
            part.round.top = std::max(part.round.top, facing.round.top);
            part.low = std::min(part.low, facing.low);
            part.high = std::max(part.high, facing.high);
            facings_.push_back(facing);
        }
        std::stable_sort(facings_.begin() + static_cast<std::ptrdiff_t>(begin), facings_.end(),
                         [](const Facing& a, const Facing& b) { return a.area > b.area; });
        (forward ? part.first_forward : part.first_back) = static_cast<int>(begin);
        (forward ? part.past_forward : part.past_back) = static_cast<int>(facings_.size());
    }
    parts_.push_back(part);
}

bool Passage::in_line(int a, int b) const {
    const Rectangle &p = parts_[static_cast<std::size_t>(a)].round,
                    &q = parts_[static_cast<std::size_t>(b)].round;
    return std::min(p.right, q.right) - std::max(p.left, q.left) > hair &&
           std::min(p.top, q.top) - std::max(p.bottom, q.bottom) > hair;
}

std::vector<Ring> Passage::loops_of(const Facing& facing) const {
    std::vector<Ring> rings;
    for (int loop = facing.first_loop; loop < facing.past_loop; ++loop) {
        // A face's loops lie one after the other, so the next one's start is this one's end.
        const auto begin = points_.begin() + loops_[static_cast<std::size_t>(loop)];
        rings.emplace_back(begin, points_.begin() + loops_[static_cast<std::size_t>(loop) + 1]);
    }
    return rings;
}

/// How far ahead of `begins` the face `ends` lies, at its least, where the two overlap; below `hair` counts
/// as not ahead, which is told as -1.
double Passage::ahead_of(const Facing& begins, const Facing& ends) const {
    const double width =
        std::min(begins.round.right, ends.round.right) - std::max(begins.round.left, ends.round.left);
    const double height =
        std::min(begins.round.top, ends.round.top) - std::max(begins.round.bottom, ends.round.bottom);
    if (width <= hair || height <= hair || ends.high - begins.low <= hair) return -1;
    if (begins.rectangle && ends.rectangle && begins.square && ends.square) return ends.at - begins.at;

    std::vector<Ring> rings;
    const auto clip_by = [&](const Facing& by, const Facing& subject) {
        rings = loops_of(subject);
        const Ring sides = loops_of(by).front();
        for (std::size_t i = 0; i < sides.size(); ++i) {
            const Point2 p = sides[i], q = sides[(i + 1) % sides.size()];
            // The inside lies to the left.
            const double x = q.y - p.y, y = p.x - q.x;
            for (Ring& ring : rings) clip(ring, x, y, x * p.x + y * p.y);
        }
    };
    if (begins.convex)
        clip_by(begins, ends);
    else if (ends.convex)
        clip_by(ends, begins);
    else
        rings = common(loops_of(begins), loops_of(ends));
    // ahead(p) = at + by_x p.x + by_y p.y > hair
    const double at = ends.at - begins.at, by_x = ends.by_x - begins.by_x, by_y = ends.by_y - begins.by_y;
    if (std::abs(by_x) > 1e-9 || std::abs(by_y) > 1e-9) {
        for (Ring& ring : rings) clip(ring, -by_x, -by_y, at - hair);
    } else if (at <= hair) {
        return -1;
    }
    if (mean_width(rings) <= hair) return -1;
    double least = 1e300;
    for (const Ring& ring : rings)
        for (const Point2 p : ring) least = std::min(least, at + by_x * p.x + by_y * p.y);
    return std::max(least, 0.0);
}

double Passage::room(int mover, int standing, bool any_will_do) const {
    constexpr double never = HUGE_VAL;
    const Part &a = parts_[static_cast<std::size_t>(mover)], &b = parts_[static_cast<std::size_t>(standing)];
    if (b.high - a.low <= hair || !in_line(mover, standing)) return never;
    if (any_will_do) {
        for (int f = a.first_back; f < a.past_back; ++f)
            for (int g = b.first_forward; g < b.past_forward; ++g)
                if (ahead_of(facings_[static_cast<std::size_t>(f)], facings_[static_cast<std::size_t>(g)]) >=
                    0)
                    return 0;
        return never;
    }
    if (!runs_into(mover, standing)) return never;
    // The mover's front comes to the other's back.
    double least = never;
    for (int f = a.first_forward; f < a.past_forward; ++f)
        for (int g = b.first_back; g < b.past_back; ++g) {
            const Facing &front = facings_[static_cast<std::size_t>(f)],
                         &back = facings_[static_cast<std::size_t>(g)];
            if (back.high < front.low - hair) continue;
            Facing drawn_back = front;
            // Flush faces are `hair` apart in this question, so that they are found.
            drawn_back.at -= 2 * hair;
            drawn_back.low -= 2 * hair;
            const double ahead = ahead_of(drawn_back, back);
            if (ahead >= 0) least = std::min(least, std::max(0.0, ahead - 2 * hair));
        }
    return least < never ? least : 0;
}

} // namespace rayfleck::solid
