// Placing: a leader ends on a seen point of the part, as near as possible to one side of the picture. Each
// column is sorted by height and pushed apart; two leaders of a column that would cross are exchanged, which
// always shortens them. (Boundary labelling with straight leaders; see the survey by Bekos, Niedermann and
// Nöllenburg, 2019, known here from its abstract.) A dot ends each leader, since it ends within an area.
//
// Seen points: middles of faces and points between the middle and the corners, tried by looking from them
// towards the eye through every part whose picture covers the point.

#include "drawing/balloons.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Point;
using measure::Vector;

/// Round a part's box as it shows in the view.
Rect shadow(const solid::Placed& part, const solid::View& view) {
    const measure::Box& box = part.solid->box;
    std::vector<Point2> points;
    for (int i = 0; i < 8; ++i) {
        const Point corner = part.frame.out(
            {i & 1 ? box.high.x : box.low.x, i & 2 ? box.high.y : box.low.y, i & 4 ? box.high.z : box.low.z});
        points.push_back({dot(corner, view.right), dot(corner, view.up)});
    }
    return around(points);
}

bool blocked(const std::vector<solid::Placed>& parts, const std::vector<Rect>& shadows, Point p,
             const solid::View& view) {
    const Point2 at{dot(p, view.right), dot(p, view.up)};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Rect& s = shadows[i];
        if (at.x < s.left || at.x > s.right || at.y < s.bottom || at.y > s.top) continue;
        const auto stretches =
            solid::inside_along(*parts[i].solid, parts[i].frame.in(p), parts[i].frame.turn_in(view.towards));
        for (const auto& [enter, leave] : stretches)
            if (leave > 0.05 && leave - std::max(enter, 0.0) > 0.02) return true;
    }
    return false;
}

bool inside_face(const solid::Face& face, Point p) {
    // Even-odd in the plane of the two axes that the normal leans on least.
    const Vector n = face.plane.normal;
    const int drop = std::abs(n.x) > std::abs(n.y) ? (std::abs(n.x) > std::abs(n.z) ? 0 : 2)
                                                   : (std::abs(n.y) > std::abs(n.z) ? 1 : 2);
    const int u = (drop + 1) % 3, v = (drop + 2) % 3;
    bool inside = false;
    for (const auto& loop : face.loops)
        for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++)
            if ((loop[i][v] > p[v]) != (loop[j][v] > p[v]) &&
                p[u] <
                    (loop[j][u] - loop[i][u]) * (p[v] - loop[i][v]) / (loop[j][v] - loop[i][v]) + loop[i][u])
                inside = !inside;
    return inside;
}

struct Standing {
    const BalloonWanted* wanted = nullptr;
    Point2 anchor, at;
};

bool cross(Point2 a, Point2 b, Point2 c, Point2 d) {
    const auto side = [](Point2 p, Point2 q, Point2 r) {
        return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/// Spreads balloons along y, keeping their order, at least `pitch` apart, near the heights they want and
/// within [low, high].
void spread(std::vector<Standing>& column, double pitch, double low, double high) {
    std::stable_sort(column.begin(), column.end(),
                     [](const Standing& a, const Standing& b) { return a.at.y < b.at.y; });
    const std::size_t n = column.size();
    // Groups that touch are centred on the mean of what their members want.
    struct Group {
        double sum = 0;
        std::size_t count = 0;
        double first(double p) const {
            return sum / static_cast<double>(count) - p * static_cast<double>(count - 1) / 2;
        }
    };
    std::vector<Group> groups;
    for (std::size_t i = 0; i < n; ++i) {
        groups.push_back({std::clamp(column[i].at.y, low, std::max(low, high)), 1});
        while (groups.size() > 1) {
            Group &a = groups[groups.size() - 2], &b = groups.back();
            if (a.first(pitch) + pitch * static_cast<double>(a.count) <= b.first(pitch)) break;
            a.sum += b.sum;
            a.count += b.count;
            groups.pop_back();
        }
    }
    std::size_t i = 0;
    double least = low;
    for (const Group& g : groups) {
        const double room_above =
            high - pitch * static_cast<double>(n - i - 1) + pitch * static_cast<double>(g.count - 1);
        double first =
            std::max(least, std::min(g.first(pitch), room_above - pitch * static_cast<double>(g.count - 1)));
        for (std::size_t k = 0; k < g.count; ++k, ++i)
            column[i].at.y = first + pitch * static_cast<double>(k);
        least = column[i - 1].at.y + pitch;
    }
}

void uncross(std::vector<Standing>& column) {
    bool changed = true;
    for (int round = 0; changed && round < 40; ++round) {
        changed = false;
        for (std::size_t i = 0; i < column.size(); ++i)
            for (std::size_t j = i + 1; j < column.size(); ++j)
                if (cross(column[i].at, column[i].anchor, column[j].at, column[j].anchor)) {
                    std::swap(column[i].at, column[j].at);
                    changed = true;
                }
    }
}

} // namespace

std::vector<Point2> seen_points(const std::vector<solid::Placed>& parts, int part, const solid::View& view) {
    std::vector<Rect> shadows;
    for (const solid::Placed& p : parts) shadows.push_back(shadow(p, view));
    const solid::Placed& own = parts[static_cast<std::size_t>(part)];
    struct Candidate {
        Point2 at;
        double weight;
    };
    std::vector<Candidate> found;
    // The broadest faces first; a dozen places to choose from are enough.
    struct Facing {
        const solid::Face* face;
        double facing;
    };
    std::vector<Facing> faces;
    for (const solid::Face& face : own.solid->faces) {
        const double facing = dot(own.frame.turn_out(face.plane.normal), view.towards);
        if (facing >= 0.15 && !face.loops.empty() && face.area >= 25) faces.push_back({&face, facing});
    }
    std::stable_sort(faces.begin(), faces.end(), [](const Facing& a, const Facing& b) {
        return a.face->area * a.facing > b.face->area * b.facing;
    });
    constexpr std::size_t enough = 12, faces_tried = 8;
    if (faces.size() > faces_tried) faces.resize(faces_tried);
    for (const auto& [seen_face, facing] : faces) {
        if (found.size() >= enough) break;
        const solid::Face& face = *seen_face;
        const auto& loop = face.loops.front();
        Point middle;
        for (const Point& p : loop) middle = middle + p * (1.0 / static_cast<double>(loop.size()));
        std::vector<std::pair<Point, double>> tries{{middle, 1.0}};
        for (const double t : {0.35, 0.7})
            for (std::size_t i = 0; i < loop.size(); i += std::max<std::size_t>(1, loop.size() / 8)) {
                const Point between = (loop[i] + loop[(i + 1) % loop.size()]) * 0.5;
                tries.push_back({middle + (loop[i] - middle) * t, 1 - t});
                tries.push_back({middle + (between - middle) * t, 1 - t});
            }
        for (const auto& [p, weight] : tries) {
            if (!inside_face(face, p)) continue;
            const Point out = own.frame.out(p + face.plane.normal * 0.02);
            if (blocked(parts, shadows, out, view)) continue;
            found.push_back(
                {{dot(out, view.right), dot(out, view.up)}, weight * std::sqrt(face.area * facing)});
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Candidate& a, const Candidate& b) { return a.weight > b.weight; });
    std::vector<Point2> points;
    for (const Candidate& c : found) points.push_back(c.at);
    return points;
}

void draw_balloons(Block& block, const Rect& picture, const std::vector<BalloonWanted>& wanted,
                   double diameter) {
    const double pitch = diameter + 2, away = diameter / 2 + 7;
    const Rect round = grown(picture, away);
    std::vector<Standing> columns[2];
    std::vector<Standing> all;
    for (const BalloonWanted& w : wanted) {
        // The anchor nearest to a side, but not so close to a line that its dot would touch it if another is
        // clear.
        Standing best;
        double best_score = std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < w.anchors.size(); ++i) {
            const Point2 p = w.anchors[i];
            const double to_side = std::min(p.x - picture.left, picture.right - p.x);
            const Quad near = corners(grown({p.x, p.y, p.x, p.y}, 1.4));
            const double score =
                to_side + (block.occupied().free_for_text(near, 0) ? 0 : 25) + 0.4 * static_cast<double>(i);
            if (score < best_score) best_score = score, best = {&w, p, {}};
        }
        if (best.wanted) all.push_back(best);
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Standing& a, const Standing& b) { return a.anchor.x < b.anchor.x; });
    // Half to each side, as near as each column's length allows.
    const double room = round.height();
    const auto capacity = std::max<std::size_t>((all.size() + 1) / 2, static_cast<std::size_t>(room / pitch));
    std::size_t to_left = 0;
    while (to_left < all.size() && all[to_left].anchor.x < picture.middle().x) ++to_left;
    to_left = std::clamp(to_left, all.size() > capacity ? all.size() - capacity : 0,
                         std::min(all.size(), capacity));
    for (std::size_t i = 0; i < all.size(); ++i) columns[i < to_left ? 0 : 1].push_back(all[i]);
    for (int side = 0; side < 2; ++side) {
        std::vector<Standing>& column = columns[side];
        const double x = side == 0 ? round.left : round.right;
        double low = picture.bottom, high = picture.top;
        const double need = pitch * static_cast<double>(column.empty() ? 0 : column.size() - 1);
        if (need > high - low) {
            const double middle = (low + high) / 2;
            low = middle - need / 2, high = middle + need / 2;
        }
        for (Standing& s : column) {
            // Leaders rise or fall away from the middle of the picture: a level one would look like an edge.
            const double away_from_middle = s.anchor.y >= picture.middle().y ? 1 : -1;
            s.at = {x, s.anchor.y + away_from_middle * 0.3 * std::min(std::abs(s.anchor.x - x), 40.0)};
        }
        spread(column, pitch, low, high);
        uncross(column);
        for (const Standing& s : column) {
            const double length = std::hypot(s.anchor.x - s.at.x, s.anchor.y - s.at.y);
            const Point2 start{s.at.x + (s.anchor.x - s.at.x) * diameter / 2 / length,
                               s.at.y + (s.anchor.y - s.at.y) * diameter / 2 / length};
            block.line(start, s.anchor, Pen::thin, Role::leader);
            block.dot(s.anchor, 1.2);
            balloon(block, s.at, diameter, s.wanted->reference);
            if (s.wanted->to_sheet >= 0)
                block.link(grown({s.at.x, s.at.y, s.at.x, s.at.y}, diameter / 2), s.wanted->to_sheet);
        }
    }
}

} // namespace rayfleck::drawing
