// Placing: a leader ends on a seen point of the part, as near as possible to one side of the picture. Each
// side is sorted and pushed apart; two leaders that would cross are exchanged, which always shortens them.
// (Boundary labelling with straight leaders; see the survey by Bekos, Niedermann and Nöllenburg, 2019, known
// here from its abstract.) A dot ends each leader, since it ends within an area.
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

/// What lies ahead of the point passes the box by, or ends where `blocked` begins to count.
bool misses_box(const measure::Box& box, Point from, Vector direction) {
    double enter = 0.04, leave = std::numeric_limits<double>::infinity();
    for (int axis = 0; axis < 3; ++axis) {
        const double low = box.low[axis] - 0.01 - from[axis], high = box.high[axis] + 0.01 - from[axis];
        const double step = direction[axis];
        if (std::abs(step) < 1e-9) {
            if (low > 0 || high < 0) return true;
            continue;
        }
        enter = std::max(enter, std::min(low / step, high / step));
        leave = std::min(leave, std::max(low / step, high / step));
    }
    return leave < enter;
}

bool blocked(const std::vector<solid::Placed>& parts, const std::vector<Rect>& shadows, Point p,
             const solid::View& view) {
    const Point2 at{dot(p, view.right), dot(p, view.up)};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Rect& s = shadows[i];
        if (at.x < s.left || at.x > s.right || at.y < s.bottom || at.y > s.top) continue;
        const Point from = parts[i].frame.in(p);
        const Vector eye = parts[i].frame.turn_in(view.towards);
        if (misses_box(parts[i].solid->box, from, eye)) continue;
        const auto stretches = solid::inside_along(*parts[i].solid, from, eye);
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

namespace {

/// Balloons along one side of the picture; `level` rows stand above or below it, columns beside it.
struct Row {
    bool level = false, high = false; ///< high: above or at the right
    std::size_t capacity = 0;
    std::vector<Standing> balloons;
};

/// The best anchor of each balloon: near a side, not on a line if another is clear, broad faces first.
std::vector<Standing> anchored(const Block& block, const Rect& picture,
                               const std::vector<BalloonWanted>& wanted) {
    std::vector<Standing> all;
    for (const BalloonWanted& w : wanted) {
        Standing best;
        double best_score = std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < w.anchors.size(); ++i) {
            const Point2 p = w.anchors[i];
            const double to_side = std::min(p.x - picture.left, picture.right - p.x);
            double score = to_side + 0.4 * static_cast<double>(i);
            if (score >= best_score) continue;
            const Quad near = corners(grown({p.x, p.y, p.x, p.y}, 1.4));
            if (!block.occupied().free_for_text(near, 0)) score += 25;
            if (score < best_score) best_score = score, best = {&w, p, {}};
        }
        if (best.wanted) all.push_back(best);
    }
    return all;
}

/// Gives every balloon a side: beside the picture before above and below it, the nearest first, as far as
/// each has room.
void assign(const std::vector<Standing>& all, const Rect& picture, std::vector<Row>& rows) {
    struct Choice {
        double cost;
        std::size_t balloon, row;
    };
    constexpr double rather_beside = 40;
    std::vector<Choice> choices;
    for (std::size_t b = 0; b < all.size(); ++b)
        for (std::size_t r = 0; r < rows.size(); ++r) {
            const Point2 p = all[b].anchor;
            const double away =
                rows[r].level ? (rows[r].high ? picture.top - p.y : p.y - picture.bottom) + rather_beside
                              : (rows[r].high ? picture.right - p.x : p.x - picture.left);
            choices.push_back({away, b, r});
        }
    std::stable_sort(choices.begin(), choices.end(),
                     [](const Choice& a, const Choice& b) { return a.cost < b.cost; });
    std::vector<bool> placed(all.size(), false);
    for (const bool beyond_capacity : {false, true})
        for (const Choice& c : choices) {
            if (placed[c.balloon] ||
                (!beyond_capacity && rows[c.row].balloons.size() >= rows[c.row].capacity))
                continue;
            rows[c.row].balloons.push_back(all[c.balloon]);
            placed[c.balloon] = true;
        }
}

double distance(Point2 p, Point2 a, Point2 b) {
    const double dx = b.x - a.x, dy = b.y - a.y, length = dx * dx + dy * dy;
    const double t = length > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0.0, 1.0) : 0;
    return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/// Leaders that run through another balloon or cross another leader.
int conflicts(const std::vector<Standing>& all, double diameter) {
    int count = 0;
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = 0; j < all.size(); ++j) {
            if (i == j) continue;
            if (distance(all[j].at, all[i].at, all[i].anchor) < diameter / 2 + 0.3) ++count;
            if (i < j && cross(all[i].at, all[i].anchor, all[j].at, all[j].anchor)) ++count;
        }
    return count;
}

/// All balloons on a ring that lies `away` from the picture.
std::vector<Standing> arranged(const std::vector<Standing>& all, const Rect& picture, double away,
                               double pitch) {
    const Rect ring = grown(picture, away);
    const auto room = [&](double length) { return static_cast<std::size_t>(length / pitch) + 1; };
    std::vector<Row> rows{{false, false, room(picture.height()), {}},
                          {false, true, room(picture.height()), {}},
                          {true, true, room(picture.width()), {}},
                          {true, false, room(picture.width()), {}}};
    assign(all, picture, rows);
    std::vector<Standing> out;
    for (Row& row : rows) {
        // Rows are laid out as columns with the two directions exchanged.
        const auto turned = [&](Point2 p) { return row.level ? Point2{p.y, p.x} : p; };
        const double middle = row.level ? picture.middle().x : picture.middle().y;
        double low = row.level ? picture.left : picture.bottom,
               high = row.level ? picture.right : picture.top;
        const double need = row.balloons.empty() ? 0 : pitch * static_cast<double>(row.balloons.size() - 1);
        if (need > high - low) low = middle - need / 2, high = middle + need / 2;
        const double across =
            row.level ? (row.high ? ring.top : ring.bottom) : (row.high ? ring.right : ring.left);
        for (Standing& s : row.balloons) {
            s.anchor = turned(s.anchor);
            // Leaders rise or fall away from the middle of the picture: a level one would look like an edge.
            const double outwards = s.anchor.y >= middle ? 1 : -1;
            s.at = {across, s.anchor.y + outwards * 0.3 * std::min(std::abs(s.anchor.x - across), 40.0)};
        }
        spread(row.balloons, pitch, low, high);
        for (Standing& s : row.balloons) {
            s.anchor = turned(s.anchor);
            s.at = turned(s.at);
            out.push_back(s);
        }
    }
    uncross(out);
    return out;
}

} // namespace

void draw_balloons(Block& block, const Rect& picture, const std::vector<BalloonWanted>& wanted,
                   double diameter) {
    const std::vector<Standing> all = anchored(block, picture, wanted);
    // Farther out the leaders are less steep; as near as they leave one another alone.
    std::vector<Standing> best;
    int least = -1;
    for (double away = diameter / 2 + 7; away < 60 && least != 0; away += 8) {
        std::vector<Standing> trial = arranged(all, picture, away, diameter + 2);
        const int count = conflicts(trial, diameter);
        if (least < 0 || count < least) best = std::move(trial), least = count;
    }
    for (const Standing& s : best) {
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

} // namespace rayfleck::drawing
