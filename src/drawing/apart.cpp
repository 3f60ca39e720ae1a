// Distances are found between the parts' boxes, seen along the move: only what lies in a mover's line holds
// it off. A loose part (a drawer, a lid) is also moved out from between what stands close beside it.
//
// Traces are drawn as edges of solids without faces, so that the parts hide them like any line.

#include "drawing/apart.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::drawing {
namespace {

using measure::cross;
using measure::dot;
using measure::Point;
using measure::Vector;

/// Beside a loose part this near, mm: the walls of its opening.
constexpr double beside = 15;
constexpr double in_line = 0.5; // mm

/// A part's own box as seen along a direction.
struct Reach {
    double low[3], high[3]; ///< across, across, along
};

Reach reach_of(const solid::Placed& placed, Vector by, const Vector (&axes)[3]) {
    const measure::Box& own = placed.solid->box;
    const Vector half = (own.high - own.low) * 0.5;
    const Point middle = placed.frame.out((own.low + own.high) * 0.5) + by;
    Reach reach{};
    for (int k = 0; k < 3; ++k) {
        const Vector along = placed.frame.turn_in(axes[k]);
        const double r = std::abs(along.x) * half.x + std::abs(along.y) * half.y + std::abs(along.z) * half.z;
        const double m = dot(axes[k], middle);
        reach.low[k] = m - r;
        reach.high[k] = m + r;
    }
    return reach;
}

double overlap(const Reach& a, const Reach& b, int k) {
    return std::min(a.high[k], b.high[k]) - std::max(a.low[k], b.low[k]);
}

class Taking {
  public:
    Taking(const Job& job, const ApartBy& by) : job_(job), by_(by) { apart_.by.resize(job.placed.size()); }

    Apart all(const std::vector<int>& moves) {
        for (std::size_t i = 0; i < moves.size();) {
            const int group = move(moves[i]).at_once;
            std::size_t past = i + 1;
            while (group >= 0 && past < moves.size() && move(moves[past]).at_once == group) ++past;
            if (group < 0) {
                take_back(moves[i], distance_of(moves[i]));
            } else {
                // All at once: as long as the slowest pair needs, and so much longer that the fastest has a
                // gap.
                double most = 0;
                for (std::size_t k = i; k < past; ++k) most = std::max(most, move(moves[k]).distance);
                const double times = most > 0 ? 1 + by_.gap / most : 1;
                for (std::size_t k = i; k < past; ++k)
                    take_back(moves[k], std::min(move(moves[k]).distance * times, by_.most + by_.gap));
            }
            i = past;
        }
        trace(moves);
        return std::move(apart_);
    }

  private:
    const assembly::Move& move(int index) const { return job_.order.moves[static_cast<std::size_t>(index)]; }
    const solid::Placed& placed(int part) const { return job_.placed[static_cast<std::size_t>(part)]; }
    Vector& by(int part) { return apart_.by[static_cast<std::size_t>(part)]; }

    void take_back(int index, double distance) {
        const Vector off = move(index).direction * -distance;
        for (const int p : move(index).parts) by(p) = by(p) + off;
        steps_.push_back({index, off});
    }

    double distance_of(int index) {
        const assembly::Move& m = move(index);
        const Vector off = -m.direction;
        Vector across{1, 0, 0};
        if (std::abs(off.x) > 0.7) across = {0, 1, 0};
        const Vector u = unit(cross(off, across));
        const Vector axes[3] = {u, cross(off, u), off};
        std::vector<Reach> movers, standing;
        for (const int p : m.parts) movers.push_back(reach_of(placed(p), by(p), axes));
        for (const int p : m.onto) standing.push_back(reach_of(placed(p), by(p), axes));
        const bool loose = m.joints.empty();
        const bool clear =
            static_cast<std::size_t>(index) < by_.clear.size() && by_.clear[static_cast<std::size_t>(index)];
        double least = 0;
        for (const Reach& a : movers)
            for (std::size_t i = 0; i < standing.size(); ++i) {
                const Reach& b = standing[i];
                const double side = std::min(overlap(a, b, 0), overlap(a, b, 1));
                bool counts = side > in_line || clear;
                if (!counts && loose && side > -beside)
                    // Not what has itself been moved that way: neighbours in a row go side by side.
                    counts = std::abs(dot(by(m.onto[i]), off)) < 1e-6 && overlap(a, b, 2) > 0;
                if (counts) least = std::max(least, b.high[2] - a.low[2]);
            }
        // What is glued stays in the order of the moves; a long board that is slid in needs no such room.
        if (m.hold != assembly::Hold::glued) least = std::min(least, by_.most);
        const auto i = static_cast<std::size_t>(index);
        return least + by_.gap * (i < by_.times.size() ? by_.times[i] : 1.0);
    }

    void trace(const std::vector<int>& moves) {
        for (const int index : moves) {
            const assembly::Move& m = move(index);
            Vector off;
            for (const auto& [of, vector] : steps_)
                if (of == index) off = vector;
            if (norm(off) < 1e-6) continue;
            const auto add = [&](Point at, int mover, int base) {
                const Point from = at + by(base), to = at + by(mover);
                Trace one{index, {from}};
                // Straight out of the base as far as the mover stands off, then to where its own moves took
                // it. What moved all at once went straight.
                const Vector out = unit(off), whole = to - from, rest = whole - out * dot(whole, out);
                if (m.at_once < 0 && norm(rest) > 0.5) one.points.push_back(to - rest);
                one.points.push_back(to);
                apart_.traces.push_back(std::move(one));
            };
            for (const int j : m.joints) {
                const joinery::Joint& joint = job_.model.joints[static_cast<std::size_t>(j)];
                const bool a_moves = std::binary_search(m.parts.begin(), m.parts.end(), joint.a);
                add(joint.at, a_moves ? joint.a : joint.b, a_moves ? joint.b : joint.a);
            }
            if (m.joints.empty() && !m.onto.empty()) {
                const solid::Placed& first = placed(m.parts.front());
                add(first.frame.out(first.solid->centroid), m.parts.front(), m.onto.front());
            }
        }
    }

    const Job& job_;
    const ApartBy& by_;
    Apart apart_;
    std::vector<std::pair<int, Vector>> steps_;
};

/// A solid of edges alone.
solid::Solid wire(const std::vector<Point>& points, const solid::View& view) {
    solid::Solid solid;
    solid::Face edge_on;
    // Neither turned to the eye nor away from it, so it hides nothing and its edges may be seen.
    edge_on.plane.normal = view.right;
    solid.faces.push_back(edge_on);
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        solid.edges.push_back({points[i], points[i + 1], 0, 0, false});
    return solid;
}

} // namespace

Apart taken_apart(const Job& job, const std::vector<int>& moves, const ApartBy& by) {
    return Taking(job, by).all(moves);
}

std::vector<solid::Placed> placed_apart(const Job& job, const std::vector<int>& parts, const Apart& apart) {
    std::vector<solid::Placed> placed;
    for (const int p : parts) {
        placed.push_back(job.placed[static_cast<std::size_t>(p)]);
        placed.back().frame.origin = placed.back().frame.origin + apart.by[static_cast<std::size_t>(p)];
    }
    return placed;
}

SeenApart look_apart(const std::vector<solid::Placed>& parts, const std::vector<Trace>& traces,
                     const solid::View& view) {
    std::vector<solid::Solid> wires;
    wires.reserve(traces.size());
    std::vector<solid::Placed> all = parts;
    for (const Trace& trace : traces) {
        wires.push_back(wire(trace.points, view));
        all.push_back({&wires.back(), nullptr, nullptr, {}});
    }
    SeenApart seen;
    seen.of_part.resize(parts.size());
    seen.of_trace.resize(traces.size());
    std::vector<double> visible(parts.size(), 0);
    for (const solid::Line2& line : solid::visible_lines(all, view)) {
        const auto index = static_cast<std::size_t>(line.part);
        if (index >= parts.size()) {
            seen.of_trace[index - parts.size()].push_back(line.at);
            continue;
        }
        visible[index] += std::hypot(line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y);
        seen.of_part[index].push_back(line.at);
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const double alone = solid::seen_alone(parts[i], view).length;
        seen.share.push_back(alone > 0 ? visible[i] / alone : 0);
    }
    return seen;
}

double diagonal(const std::vector<solid::Placed>& parts) {
    measure::Point low = parts.front().frame.origin, high = low;
    for (const solid::Placed& placed : parts)
        for (int c = 0; c < 8; ++c) {
            const measure::Box& own = placed.solid->box;
            const measure::Point p =
                placed.frame.out({c & 1 ? own.high.x : own.low.x, c & 2 ? own.high.y : own.low.y,
                                  c & 4 ? own.high.z : own.low.z});
            for (int axis = 0; axis < 3; ++axis) {
                low[axis] = std::min(low[axis], p[axis]);
                high[axis] = std::max(high[axis], p[axis]);
            }
        }
    return norm(high - low);
}

double smaller_factor(double factor, const Rect& picture, const Rect& drawn, double width, double height) {
    const double over = std::max((drawn.width() - width) / std::max(picture.width(), 1.0),
                                 (drawn.height() - height) / std::max(picture.height(), 1.0));
    return std::clamp(factor - over, factor * 0.5, factor * 0.98);
}

} // namespace rayfleck::drawing
