// Joining faces into a closed surface.
//
// Loops of neighbouring faces are computed apart, so a shared corner may differ by a grid step. Corners
// closer than the weld distance become one. Then every side of a loop must be met by a side of another loop
// that runs the other way. Where one face has a corner in the middle of its neighbour's side, that side is
// first split there. Sides that stay without partner mean that the surface does not close.
//
// At an edge that four faces share (material touching along a line), faces pair up through the material, so
// that each body keeps its own surface.

#include "solid/edges.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace rayfleck::solid {
namespace {

/// Corners by place: an open hash over cells much larger than the weld distance.
class Corners {
  public:
    explicit Corners(double weld, std::size_t expected) : weld_(weld) {
        std::size_t size = 64;
        while (size < 3 * expected) size *= 2;
        heads_.assign(size, -1);
    }

    int at(Point p) {
        std::array<std::int64_t, 3> cell{};
        std::array<int, 3> step{};
        for (int axis = 0; axis < 3; ++axis) {
            const double scaled = p[axis] / cell_size;
            const double floor = std::floor(scaled);
            cell[axis] = static_cast<std::int64_t>(floor);
            const double within = (scaled - floor) * cell_size;
            step[axis] = within < weld_ ? -1 : within > cell_size - weld_ ? 1 : 0;
        }
        for (int mask = 0; mask < 8; ++mask) {
            std::array<std::int64_t, 3> other = cell;
            bool wanted = true;
            for (int axis = 0; axis < 3; ++axis)
                if (mask & 1 << axis) {
                    wanted = wanted && step[axis] != 0;
                    other[axis] += step[axis];
                }
            if (!wanted) continue;
            for (int i = heads_[slot(other)]; i >= 0; i = next_[i])
                if (measure::norm(places_[i] - p) <= weld_) return i;
        }
        const int index = static_cast<int>(places_.size());
        places_.push_back(p);
        const std::size_t home = slot(cell);
        next_.push_back(heads_[home]);
        heads_[home] = index;
        return index;
    }
    const std::vector<Point>& places() const { return places_; }

  private:
    static constexpr double cell_size = 0.064; // mm
    std::size_t slot(const std::array<std::int64_t, 3>& cell) const {
        const std::uint64_t mixed = static_cast<std::uint64_t>(cell[0]) * 0x9E3779B97F4A7C15u ^
                                    static_cast<std::uint64_t>(cell[1]) * 0xC2B2AE3D27D4EB4Fu ^
                                    static_cast<std::uint64_t>(cell[2]) * 0x165667B19E3779F9u;
        return static_cast<std::size_t>(mixed >> 20 ^ mixed) & (heads_.size() - 1);
    }
    double weld_;
    std::vector<int> heads_, next_;
    std::vector<Point> places_;
};

/// A side of a loop: from corner `low` to `high`, or back.
struct LoopSide {
    int low, high;
    bool forward;
    int face;
};

LoopSide side_between(int from, int to, int face) {
    return from < to ? LoopSide{from, to, true, face} : LoopSide{to, from, false, face};
}

bool same_ends(const LoopSide& a, const LoopSide& b) { return a.low == b.low && a.high == b.high; }

void sort_by_ends(std::vector<LoopSide>& sides) {
    std::sort(sides.begin(), sides.end(), [](const LoopSide& a, const LoopSide& b) {
        if (a.low != b.low) return a.low < b.low;
        if (a.high != b.high) return a.high < b.high;
        if (a.forward != b.forward) return a.forward;
        return a.face < b.face;
    });
}

/// Calls back for every run of sides with the same ends: (first, past the forward ones, end).
template <class Callback> void each_run(const std::vector<LoopSide>& sides, Callback callback) {
    for (std::size_t i = 0; i < sides.size();) {
        std::size_t end = i, back = i;
        while (end < sides.size() && same_ends(sides[i], sides[end])) {
            if (sides[end].forward) back = end + 1;
            ++end;
        }
        callback(i, back, end);
        i = end;
    }
}

/// Splits a side at the corners that lie on it, and adds the pieces.
void split(const LoopSide& side, const std::vector<Point>& places, double weld,
           std::vector<LoopSide>& pieces) {
    const Point a = places[side.low], b = places[side.high];
    const Vector along = b - a;
    const double length = measure::norm(along);
    std::vector<std::pair<double, int>> stops;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const Vector to = places[i] - a;
        const double t = measure::dot(to, along) / length;
        if (t <= 0 || t >= length) continue;
        if (measure::norm(to - along * (t / length)) > weld) continue;
        if (static_cast<int>(i) == side.low || static_cast<int>(i) == side.high) continue;
        stops.push_back({t, static_cast<int>(i)});
    }
    std::sort(stops.begin(), stops.end());
    stops.push_back({length, side.high});
    int from = side.low;
    for (const auto& [t, corner] : stops) {
        pieces.push_back(side.forward ? side_between(from, corner, side.face)
                                      : side_between(corner, from, side.face));
        from = corner;
    }
}

int root_of(std::vector<int>& parent, int i) {
    while (parent[i] != i) i = parent[i] = parent[parent[i]];
    return i;
}

} // namespace

JoinedEdges join(const std::vector<Face>& faces, double weld) {
    std::size_t total = 0;
    for (const Face& face : faces)
        for (const auto& loop : face.loops) total += loop.size();
    Corners corners(weld, total);
    std::vector<LoopSide> sides;
    sides.reserve(total);
    std::vector<int> ring;
    for (std::size_t f = 0; f < faces.size(); ++f)
        for (const auto& loop : faces[f].loops) {
            ring.clear();
            for (const Point& p : loop) ring.push_back(corners.at(p));
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const int from = ring[i], to = ring[(i + 1) % ring.size()];
                if (from != to) sides.push_back(side_between(from, to, static_cast<int>(f)));
            }
        }
    sort_by_ends(sides);

    const std::vector<Point>& places = corners.places();
    std::vector<LoopSide> whole, lonely;
    each_run(sides, [&](std::size_t i, std::size_t back, std::size_t end) {
        auto& home = back - i == end - back ? whole : lonely;
        home.insert(home.end(), sides.begin() + static_cast<std::ptrdiff_t>(i),
                    sides.begin() + static_cast<std::ptrdiff_t>(end));
    });
    if (!lonely.empty()) {
        for (const LoopSide& side : lonely) split(side, places, weld, whole);
        sides = std::move(whole);
        sort_by_ends(sides);
    }

    JoinedEdges result;
    std::vector<int> parent(faces.size());
    std::iota(parent.begin(), parent.end(), 0);
    const auto add = [&](const LoopSide& forward, const LoopSide& backward) {
        parent[root_of(parent, forward.face)] = root_of(parent, backward.face);
        if (forward.face == backward.face) return; // a seam within one face is no edge
        Edge edge;
        edge.a = places[forward.low];
        edge.b = places[forward.high];
        edge.face_left = forward.face;
        edge.face_right = backward.face;
        result.edges.push_back(edge);
    };
    each_run(sides, [&](std::size_t i, std::size_t back, std::size_t end) {
        const std::size_t forward = back - i, backward = end - back;
        result.open += static_cast<int>(forward > backward ? forward - backward : backward - forward);
        if (forward != backward) return;
        if (forward == 1) return add(sides[i], sides[back]);
        // Turn about the edge: material lies on the falling side of a forward face, up to the next backward
        // one.
        const Vector along = measure::unit(places[sides[i].high] - places[sides[i].low]);
        const Vector normal = faces[sides[i].face].plane.normal;
        const Vector zero = measure::cross(normal, along);
        const auto angle = [&](const LoopSide& side) {
            const Vector n = faces[side.face].plane.normal;
            const Vector inwards = side.forward ? measure::cross(n, along) : measure::cross(along, n);
            return std::atan2(measure::dot(inwards, measure::cross(along, zero)),
                              measure::dot(inwards, zero));
        };
        std::vector<bool> taken(backward, false);
        for (std::size_t f = i; f < back; ++f) {
            const double start = angle(sides[f]);
            std::size_t best = end;
            double least = 0;
            for (std::size_t b = back; b < end; ++b) {
                if (taken[b - back]) continue;
                double fall = start - angle(sides[b]);
                while (fall <= 1e-9) fall += 6.283185307179586;
                if (best == end || fall < least) {
                    best = b;
                    least = fall;
                }
            }
            taken[best - back] = true;
            add(sides[f], sides[best]);
        }
    });

    result.shell.assign(faces.size(), -1);
    std::vector<int> number(faces.size(), -1);
    int shells = 0;
    for (std::size_t f = 0; f < faces.size(); ++f) {
        int& n = number[root_of(parent, static_cast<int>(f))];
        if (n < 0) n = shells++;
        result.shell[f] = n;
    }
    return result;
}

} // namespace rayfleck::solid
