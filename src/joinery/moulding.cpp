// Mouldings round an outline: the cutter follows the edge of a shaped part, round corners and along curves.
//
// The profile's waste is swept along the sides of the outline that are moulded, mitred at every corner. Each
// point of the profile, p in from the edge, runs on the outline moved in by p; where two sides meet it lies
// on their bisector, at p / cos(half the turn). Sides of a run thus stay parallel, and every facet stays
// flat. Runs that go all round are closed; others run on straight at their ends. Left out: a profile wider
// than a hollow of the outline is round; that is refused.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "joinery/edges.hpp"
#include "solid/outline.hpp"

namespace rayfleck::joinery {
namespace {

using solid::Point2;

struct Station {
    Point2 at;      ///< on the outline
    Point2 inwards; ///< how a point 1 mm in from both sides moves
};

double dot2(Point2 a, Point2 b) { return a.x * b.x + a.y * b.y; }

struct Run {
    std::vector<Station> stations;
    std::vector<int> side; ///< of the outline, one per stretch between stations
    bool closed = false;
};

/// Unit normal into the wood of a side of an anticlockwise outline.
Point2 into_wood(Point2 from, Point2 to) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    return {-(to.y - from.y) / length, (to.x - from.x) / length};
}

bool looks_to(Point2 into, LocalSide side) {
    const double along = side.axis == 0 ? -into.x : -into.y, across = side.axis == 0 ? into.y : into.x;
    return (side.high ? along : -along) > std::abs(across) - 1e-9;
}

std::vector<Run> runs_of(const solid::FlatOutline& flat, const std::vector<LocalSide>& sides) {
    const std::size_t n = flat.points.size();
    std::vector<Point2> into(n);
    std::vector<bool> moulded(n);
    for (std::size_t i = 0; i < n; ++i) {
        into[i] = into_wood(flat.points[i], flat.points[(i + 1) % n]);
        for (const LocalSide& side : sides) moulded[i] = moulded[i] || looks_to(into[i], side);
    }
    const auto corner = [&](std::size_t i) {
        const Point2 a = into[(i + n - 1) % n], b = into[i];
        const double scale = 1 / (1 + dot2(a, b));
        return Station{flat.points[i], {(a.x + b.x) * scale, (a.y + b.y) * scale}};
    };
    std::vector<Run> runs;
    if (std::find(moulded.begin(), moulded.end(), false) == moulded.end()) {
        Run run;
        run.closed = true;
        for (std::size_t i = 0; i < n; ++i) {
            run.stations.push_back(corner(i));
            run.side.push_back(static_cast<int>(i));
        }
        return {run};
    }
    constexpr double run_out = 1000; // mm, past any part's end
    for (std::size_t i = 0; i < n; ++i) {
        if (!moulded[i] || moulded[(i + n - 1) % n]) continue;
        Run run;
        std::size_t at = i;
        // At a corner that goes round the end, the cutter runs out straight; in a hollow it stops.
        const auto end = [&](std::size_t point, Point2 normal, double way, Point2 other) {
            const Point2 along{normal.y * way, -normal.x * way};
            const bool convex = dot2(along, other) < -1e-9;
            const double by = convex ? run_out : 0;
            return Station{{flat.points[point].x + along.x * by, flat.points[point].y + along.y * by},
                           normal};
        };
        run.stations.push_back(end(i, into[i], -1, into[(i + n - 1) % n]));
        for (; moulded[at]; at = (at + 1) % n) {
            run.side.push_back(static_cast<int>(at));
            const std::size_t next = (at + 1) % n;
            run.stations.push_back(moulded[next] ? corner(next) : end(next, into[at], 1, into[next]));
        }
        runs.push_back(std::move(run));
    }
    return runs;
}

solid::Shape swept(const Run& run, const solid::FlatOutline& flat, const solid::FlatOutline& profile,
                   double face, bool face_high) {
    const int n = static_cast<int>(run.stations.size()), m = static_cast<int>(profile.points.size());
    std::vector<solid::Shape::Corner> corners;
    for (const Station& station : run.stations)
        for (const Point2 p : profile.points)
            corners.push_back({solid::to_grid({station.at.x + station.inwards.x * p.x,
                                               station.at.y + station.inwards.y * p.x,
                                               face_high ? face - p.y : face + p.y}),
                               4u});
    const int stretches = run.closed ? n : n - 1;
    double widest = 0;
    for (const Point2 p : profile.points) widest = std::max(widest, p.x);
    for (int i = 0; i < stretches; ++i) {
        const Station &a = run.stations[static_cast<std::size_t>(i)],
                      &b = run.stations[static_cast<std::size_t>((i + 1) % n)];
        const Point2 outside{b.at.x - a.at.x, b.at.y - a.at.y};
        const Point2 inside{outside.x + (b.inwards.x - a.inwards.x) * widest,
                            outside.y + (b.inwards.y - a.inwards.y) * widest};
        if (!(dot2(outside, inside) > 0))
            throw std::invalid_argument("the moulding is wider than a hollow of the outline is round");
    }
    std::vector<std::vector<int>> rings;
    std::vector<int> curves;
    for (int i = 0; i < stretches; ++i)
        for (int j = 0; j < m; ++j) {
            const int a = i * m, b = (i + 1) % n * m, next = (j + 1) % m;
            // Anticlockwise seen from outside the waste; on the face side the profile's y runs down, so it is
            // mirrored.
            if (face_high)
                rings.push_back({a + j, b + j, b + next, a + next});
            else
                rings.push_back({a + j, a + next, b + next, b + j});
            const int of_outline =
                flat.curve[static_cast<std::size_t>(run.side[static_cast<std::size_t>(i)])];
            const int of_profile = profile.curve[static_cast<std::size_t>(j)];
            const int along = of_outline != 0 ? of_outline : 1000 + run.side[static_cast<std::size_t>(i)];
            const int around = of_profile != 0 ? of_profile : 1000 + j;
            curves.push_back(of_outline != 0 || of_profile != 0 ? along * 100000 + around : 0);
        }
    if (!run.closed)
        for (const bool last : {false, true}) {
            std::vector<int> cap;
            for (int j = 0; j < m; ++j)
                cap.push_back((last ? (n - 1) * m : 0) + (last == face_high ? m - 1 - j : j));
            rings.push_back(cap);
            curves.push_back(0);
        }
    return solid::Shape::from_facets(std::move(corners), rings, curves);
}

} // namespace

std::vector<solid::Shape> moulded_outline(const piece::Part& part, const piece::EdgeCut& cut) {
    const bool face_first = cut.first.axis == 2;
    const LocalSide face = face_first ? cut.first : cut.second;
    // All edges of this face with the same profile are one run of the cutter; the first of them makes it.
    std::vector<LocalSide> sides;
    for (const piece::Cut& other : part.shaping) {
        const auto* edge = std::get_if<piece::EdgeCut>(&other.shape);
        if (edge == nullptr || edge->profile != cut.profile || edge->on_first != cut.on_first ||
            edge->on_second != cut.on_second)
            continue;
        if (!((edge->first.axis == 2) == face_first && (face_first ? edge->first : edge->second) == face))
            continue;
        if (sides.empty() && edge != &cut) return {};
        sides.push_back(face_first ? edge->second : edge->first);
    }
    piece::EdgeCut on_face = cut;
    if (!face_first) {
        std::swap(on_face.first, on_face.second);
        std::swap(on_face.on_first, on_face.on_second);
    }
    const solid::FlatOutline flat = solid::flattened(*part.outline),
                             profile = solid::flattened(edge_profile(on_face));
    std::vector<solid::Shape> tools;
    for (const Run& run : runs_of(flat, sides))
        tools.push_back(swept(run, flat, profile, face.high ? size_of(part, 2) : 0, face.high));
    return tools;
}

} // namespace rayfleck::joinery
