// Mouldings round an outline: the cutter follows the edge of a shaped part, round corners and along curves.
//
// The profile's waste is swept along the sides of the outline that are moulded, mitred at every corner. Each
// point of the profile, p in from the edge, runs on the outline moved in by p; where two sides meet it lies
// on their bisector, at p / cos(half the turn). Sides of a run thus stay parallel, and every facet stays
// flat. Runs that go all round are closed; others run on straight at their ends. Left out: a profile wider
// than a hollow of the outline is round; that is refused.

#include <algorithm>
#include <cmath>
#include <optional>
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

/// Facets of one curve of the outline and one of the profile are one curve; two straight ones none.
int curve_number(int of_outline, int side, int of_profile, int stretch) {
    if (of_outline == 0 && of_profile == 0) return 0;
    const int along = of_outline != 0 ? of_outline : 1000 + side;
    const int around = of_profile != 0 ? of_profile : 1000 + stretch;
    return along * 100000 + around;
}

/// fails  std::invalid_argument when a profile reaching `widest` in would turn a stretch of the outline back
void check_hollows(const Run& run, double widest) {
    const std::size_t n = run.stations.size();
    for (std::size_t i = 0; i + (run.closed ? 0 : 1) < n; ++i) {
        const Station &a = run.stations[i], &b = run.stations[(i + 1) % n];
        const Point2 outside{b.at.x - a.at.x, b.at.y - a.at.y};
        const Point2 inside{outside.x + (b.inwards.x - a.inwards.x) * widest,
                            outside.y + (b.inwards.y - a.inwards.y) * widest};
        if (!(dot2(outside, inside) > 0))
            throw std::invalid_argument("the moulding is wider than a hollow of the outline is round");
    }
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
    check_hollows(run, widest);
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
            const int side = run.side[static_cast<std::size_t>(i)];
            curves.push_back(curve_number(flat.curve[static_cast<std::size_t>(side)], side,
                                          profile.curve[static_cast<std::size_t>(j)], j));
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

/// The edges of one face that one cutter makes in one go.
struct FaceMoulding {
    LocalSide face;
    piece::EdgeCut on_face; ///< first is the face
    std::vector<LocalSide> sides;
    std::vector<const piece::EdgeCut*> cuts;
};

FaceMoulding moulding_with(const piece::Part& part, const piece::EdgeCut& cut) {
    const bool face_first = cut.first.axis == 2;
    FaceMoulding moulding{face_first ? cut.first : cut.second, cut, {}, {}};
    for (const piece::Cut& other : part.shaping) {
        const auto* edge = std::get_if<piece::EdgeCut>(&other.shape);
        if (edge == nullptr || edge->profile != cut.profile || edge->on_first != cut.on_first ||
            edge->on_second != cut.on_second)
            continue;
        if ((edge->first.axis == 2) != face_first ||
            !((face_first ? edge->first : edge->second) == moulding.face))
            continue;
        moulding.sides.push_back(face_first ? edge->second : edge->first);
        moulding.cuts.push_back(edge);
    }
    if (!face_first) {
        std::swap(moulding.on_face.first, moulding.on_face.second);
        std::swap(moulding.on_face.on_first, moulding.on_face.on_second);
    }
    return moulding;
}

/// The moulding that goes all round a face, if there is one.
std::optional<FaceMoulding> all_round(const piece::Part& part, bool face_high) {
    for (const piece::Cut& cut : part.shaping) {
        const auto* edge = std::get_if<piece::EdgeCut>(&cut.shape);
        if (edge == nullptr || !(edge->on_first > 0)) continue;
        const LocalSide face{2, face_high};
        if (!(edge->first == face) && !(edge->second == face)) continue;
        FaceMoulding moulding = moulding_with(part, *edge);
        bool whole = true;
        for (const LocalSide side : {LocalSide{0, false}, {0, true}, {1, false}, {1, true}})
            whole = whole &&
                    std::find(moulding.sides.begin(), moulding.sides.end(), side) != moulding.sides.end();
        if (whole) return moulding;
    }
    return std::nullopt;
}

} // namespace

std::vector<solid::Shape> moulded_outline(const piece::Part& part, const piece::EdgeCut& cut) {
    const FaceMoulding moulding = moulding_with(part, cut);
    if (moulding.cuts.front() != &cut) return {};
    const solid::FlatOutline flat = solid::flattened(*part.outline),
                             profile = solid::flattened(edge_profile(moulding.on_face));
    std::vector<solid::Shape> tools;
    for (const Run& run : runs_of(flat, moulding.sides))
        tools.push_back(
            swept(run, flat, profile, moulding.face.high ? size_of(part, 2) : 0, moulding.face.high));
    return tools;
}

bool is_in_moulded_blank(const piece::Part& part, const piece::EdgeCut& cut) {
    if (!part.outline) return false;
    for (const bool high : {false, true})
        if (const auto moulding = all_round(part, high))
            if (std::find(moulding->cuts.begin(), moulding->cuts.end(), &cut) != moulding->cuts.end())
                return true;
    return false;
}

std::optional<solid::Shape> moulded_blank(const piece::Part& part) {
    const auto above = all_round(part, true), below = all_round(part, false);
    if (!part.outline || (!above && !below)) return std::nullopt;
    const solid::FlatOutline flat = solid::flattened(*part.outline);
    const Run run = runs_of(flat, {{0, false}, {0, true}, {1, false}, {1, true}}).front();
    // The section through one edge, from the back face up to the face side; x inwards, y is the height.
    std::vector<Point2> chain;
    std::vector<int> curve; ///< of the stretch to the next point
    const double thick = size_of(part, 2);
    // A profile's waste begins at the edge; what it leaves is all of its border save the two lines to the
    // edge.
    if (below) {
        const solid::FlatOutline profile = solid::flattened(edge_profile(below->on_face));
        for (std::size_t j = 1; j < profile.points.size(); ++j) {
            chain.push_back(profile.points[j]);
            curve.push_back(j + 1 == profile.points.size() ? 0 : profile.curve[j]);
        }
    } else {
        chain.push_back({0, 0});
        curve.push_back(0);
    }
    if (above) {
        const solid::FlatOutline profile = solid::flattened(edge_profile(above->on_face));
        for (std::size_t j = profile.points.size() - 1; j > 0; --j) {
            chain.push_back({profile.points[j].x, thick - profile.points[j].y});
            curve.push_back(j == 1 || profile.curve[j - 1] == 0 ? 0 : 500 + profile.curve[j - 1]);
        }
    } else {
        chain.push_back({0, thick});
        curve.push_back(0);
    }
    double widest = 0;
    for (const Point2 p : chain) widest = std::max(widest, p.x);
    check_hollows(run, widest);

    const int n = static_cast<int>(run.stations.size()), m = static_cast<int>(chain.size());
    std::vector<solid::Shape::Corner> corners;
    for (const Station& station : run.stations)
        for (const Point2 p : chain)
            corners.push_back({solid::to_grid({station.at.x + station.inwards.x * p.x,
                                               station.at.y + station.inwards.y * p.x, p.y}),
                               4u});
    std::vector<std::vector<int>> rings(2);
    std::vector<int> curves(2, 0);
    for (int i = 0; i < n; ++i) {
        rings[0].push_back((n - 1 - i) * m);
        rings[1].push_back(i * m + m - 1);
        for (int j = 0; j + 1 < m; ++j) {
            const int here = i * m + j, there = (i + 1) % n * m + j;
            rings.push_back({here, there, there + 1, here + 1});
            const std::size_t s = static_cast<std::size_t>(i), p = static_cast<std::size_t>(j);
            curves.push_back(curve_number(flat.curve[s], i, curve[p], j));
        }
    }
    return solid::Shape::from_facets(std::move(corners), rings, curves);
}

} // namespace rayfleck::joinery
