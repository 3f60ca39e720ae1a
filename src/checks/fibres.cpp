// See fibres.hpp. The stretches form a graph (rows one line-spacing apart, edges where stretches of
// neighbouring rows overlap). Cutting a stretch out and walking the graph from either side of it tells what
// hangs on it alone.

#include "checks/fibres.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rayfleck::checks {
namespace {

using measure::Point;
using measure::Vector;

constexpr int rows = 97; // odd, so that a line of symmetry is one of them

struct Stretch {
    int row = 0;
    double from = 0, to = 0; // along the fibre
    std::vector<int> above, below;
};

/// The fibres of one part at one level of its thickness, in coordinates u along and v across the fibre.
struct Fibres {
    Vector along, across;
    double z = 0, v_low = 0, spacing = 0;
    std::vector<Stretch> stretches;

    double v(int row) const { return v_low + (row + 0.5) * spacing; }
    Point at(double u, double v_) const {
        Point p = along * u + across * v_;
        p.z = z;
        return p;
    }
};

/// The borders of what a level plane cuts out of a solid, as segments in it. Faces are cut one by one: where
/// their loops cross the plane, the crossings along the face pair up. Cut once, it answers for all lines of
/// that level.
struct Border {
    double u1 = 0, v1 = 0, u2 = 0, v2 = 0;
};

std::vector<Border> level_cut(const solid::Solid& solid, const Fibres& fibres) {
    std::vector<Border> borders;
    std::vector<std::pair<double, Point>> crossings; // along the face
    for (const solid::Face& face : solid.faces) {
        if (face.box.low.z > fibres.z || face.box.high.z < fibres.z) continue;
        const Vector along_face = cross(face.plane.normal, {0, 0, 1});
        crossings.clear();
        for (const auto& loop : face.loops) {
            const Point* before = &loop.back();
            for (const Point& here : loop) {
                const double h1 = before->z - fibres.z, h2 = here.z - fibres.z;
                if ((h1 > 0) != (h2 > 0)) {
                    const Point p = *before + (here - *before) * (h1 / (h1 - h2));
                    crossings.emplace_back(dot(p, along_face), p);
                }
                before = &here;
            }
        }
        std::sort(crossings.begin(), crossings.end(),
                  [](const auto& a, const auto& b) { return a.first < b.first; });
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
            const Point &p = crossings[i].second, &q = crossings[i + 1].second;
            borders.push_back(
                {dot(p, fibres.along), dot(p, fibres.across), dot(q, fibres.along), dot(q, fibres.across)});
        }
    }
    return borders;
}

/// Stretches inside the borders on the line of fibres at v, ascending.
std::vector<std::pair<double, double>> inside_at(const std::vector<Border>& borders, double v) {
    std::vector<double> crossings;
    for (const Border& b : borders)
        if ((b.v1 > v) != (b.v2 > v))
            crossings.push_back(b.u1 + (b.u2 - b.u1) * ((v - b.v1) / (b.v2 - b.v1)));
    std::sort(crossings.begin(), crossings.end());
    std::vector<std::pair<double, double>> inside;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
        if (crossings[i + 1] - crossings[i] > 1e-4) inside.emplace_back(crossings[i], crossings[i + 1]);
    return inside;
}

/// share  of the thickness, from the low face
Fibres lay(const joinery::Made& made, double share) {
    Fibres fibres;
    fibres.along = fibre_direction(*made.part);
    fibres.across = {-fibres.along.y, fibres.along.x, 0};
    // A hair off, so that no line lies in the face of a cut made to half the thickness.
    fibres.z = made.solid.box.low.z + share * (made.solid.box.high.z - made.solid.box.low.z) + 0.0137;
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const solid::Edge& edge : made.solid.edges)
        for (const Point& p : {edge.a, edge.b}) {
            low = std::min(low, dot(p, fibres.across));
            high = std::max(high, dot(p, fibres.across));
        }
    if (!(high > low)) return fibres;
    fibres.v_low = low;
    fibres.spacing = (high - low) / rows;
    const std::vector<Border> borders = level_cut(made.solid, fibres);
    int previous = 0, current = 0;
    for (int row = 0; row < rows; ++row) {
        previous = current;
        current = static_cast<int>(fibres.stretches.size());
        for (const auto& [enter, leave] : inside_at(borders, fibres.v(row)))
            fibres.stretches.push_back({row, enter, leave, {}, {}});
        for (int i = current; i < static_cast<int>(fibres.stretches.size()); ++i)
            for (int j = previous; j < current; ++j) {
                Stretch& upper = fibres.stretches[static_cast<std::size_t>(i)];
                Stretch& lower = fibres.stretches[static_cast<std::size_t>(j)];
                if (std::min(upper.to, lower.to) > std::max(upper.from, lower.from)) {
                    upper.below.push_back(j);
                    lower.above.push_back(i);
                }
            }
    }
    return fibres;
}

/// What can be reached from `starts` without passing `cut`.
std::vector<char> reachable(const std::vector<Stretch>& all, const std::vector<int>& starts, int cut) {
    std::vector<char> seen(all.size(), 0);
    std::vector<int> open;
    const auto visit = [&](int i) {
        if (i != cut && !seen[static_cast<std::size_t>(i)]) {
            seen[static_cast<std::size_t>(i)] = 1;
            open.push_back(i);
        }
    };
    for (int i : starts) visit(i);
    while (!open.empty()) {
        const Stretch& s = all[static_cast<std::size_t>(open.back())];
        open.pop_back();
        for (int i : s.above) visit(i);
        for (int i : s.below) visit(i);
    }
    return seen;
}

double thickness_at(const joinery::Made& made, Point p) {
    double thick = 0;
    p.z = 0;
    for (const auto& [enter, leave] : solid::inside_along(made.solid, p, {0, 0, 1})) thick += leave - enter;
    return thick;
}

/// measured  with the thickness of the wood at its line
std::optional<Limb> limb_on(const joinery::Made& made, const Fibres& fibres, int cut, bool upper,
                            bool measured) {
    const Stretch& line = fibres.stretches[static_cast<std::size_t>(cut)];
    const std::vector<int>& starts = upper ? line.above : line.below;
    const std::vector<int>& others = upper ? line.below : line.above;
    if (starts.empty() || others.empty()) return std::nullopt;
    const std::vector<char> limb = reachable(fibres.stretches, starts, cut);
    for (int i : others)
        if (limb[static_cast<std::size_t>(i)]) return std::nullopt; // holds elsewhere too
    Limb found;
    found.run = line.to - line.from;
    const double v = fibres.v(line.row);
    const Point middle = fibres.at((line.from + line.to) / 2, v);
    found.from = fibres.at(line.from, v);
    found.to = fibres.at(line.to, v);
    double rest = 0;
    for (std::size_t i = 0; i < fibres.stretches.size(); ++i) {
        const Stretch& s = fibres.stretches[i];
        const double area = (s.to - s.from) * fibres.spacing;
        if (!limb[i]) {
            rest += area;
            continue;
        }
        found.area += area;
        found.reach = std::max(found.reach, std::abs(fibres.v(s.row) - v) + fibres.spacing / 2);
        for (double u : {s.from, s.to}) {
            const Point p = fibres.at(u, fibres.v(s.row));
            if (const double lever = norm(p - middle); lever > found.lever) {
                found.lever = lever;
                found.tip = p;
            }
        }
    }
    if (found.area > rest) return std::nullopt; // the other side is the limb
    if (measured) found.thickness = thickness_at(made, middle);
    return found;
}

double severity(const Limb& limb) {
    return limb.lever / (limb.run * limb.run * std::max(limb.thickness, 0.1));
}

/// Every line at this level that holds a limb.
std::vector<Limb> lines_that_hold(const joinery::Made& made, const Fibres& fibres, bool measured) {
    double longest = 0;
    for (const Stretch& s : fibres.stretches) longest = std::max(longest, s.to - s.from);
    std::vector<Limb> found;
    for (int i = 0; i < static_cast<int>(fibres.stretches.size()); ++i) {
        const Stretch& s = fibres.stretches[static_cast<std::size_t>(i)];
        if (s.to - s.from > 0.9 * longest) continue;
        for (bool upper : {false, true})
            if (auto limb = limb_on(made, fibres, i, upper, measured)) found.push_back(*limb);
    }
    return found;
}

bool same_tip(const Limb& a, const Limb& b, double spacing) {
    const Vector apart{a.tip.x - b.tip.x, a.tip.y - b.tip.y, 0};
    return norm(apart) < std::max(a.reach, b.reach) + 2 * spacing;
}

/// Whether the wood at another level holds what is a limb at half thickness: it goes on there, and is no
/// limb.
bool held_at(const joinery::Made& made, const Limb& limb, double share) {
    const Fibres fibres = lay(made, share);
    Point middle = (limb.from + limb.to) * 0.5;
    const double u = dot(middle, fibres.along), v = dot(middle, fibres.across);
    const bool wood = std::any_of(fibres.stretches.begin(), fibres.stretches.end(), [&](const Stretch& s) {
        return std::abs(fibres.v(s.row) - v) <= fibres.spacing && s.from < u && u < s.to;
    });
    if (!wood) return false;
    const std::vector<Limb> here = lines_that_hold(made, fibres, false);
    return std::none_of(here.begin(), here.end(), [&](const Limb& other) {
        return other.run < 1.5 * limb.run && other.area > limb.area / 2 &&
               std::abs(dot(other.from, fibres.across) - v) < 3 * fibres.spacing &&
               dot(other.from, fibres.along) < u && u < dot(other.to, fibres.along);
    });
}

} // namespace

Vector fibre_direction(const piece::Part& part) {
    const double angle = part.grain.in_radians();
    return {std::cos(angle), std::sin(angle), 0};
}

double strength_left(measure::Angle grain) {
    const double s = std::abs(std::sin(grain.in_radians())), c = std::abs(std::cos(grain.in_radians()));
    return across_to_along / (std::pow(s, exponent) + across_to_along * std::pow(c, exponent));
}

bool runs_across_its_grain(const piece::Part& part) {
    return strength_left(part.grain) < sound_share && !part.outline && part.length > part.width;
}

double longest_run(const joinery::Made& made) {
    double longest = 0;
    for (const Stretch& s : lay(made, 0.5).stretches) longest = std::max(longest, s.to - s.from);
    return longest;
}

std::vector<Limb> limbs_of(const joinery::Made& made) {
    const Fibres fibres = lay(made, 0.5);
    std::vector<Limb> found = lines_that_hold(made, fibres, true);
    std::stable_sort(found.begin(), found.end(),
                     [](const Limb& a, const Limb& b) { return severity(a) > severity(b); });
    // Lines through one limb name it again and again: keep its weakest line only. Two lines are of one limb
    // when their tips are close.
    std::vector<Limb> distinct;
    for (const Limb& limb : found)
        if (std::none_of(distinct.begin(), distinct.end(),
                         [&](const Limb& other) { return same_tip(limb, other, fibres.spacing); }))
            distinct.push_back(limb);
    // The land between two mortises is no limb: the cheeks on either side hold it.
    std::erase_if(distinct,
                  [&](const Limb& limb) { return held_at(made, limb, 0.2) || held_at(made, limb, 0.8); });
    return distinct;
}

} // namespace rayfleck::checks
