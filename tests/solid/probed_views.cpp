// Hidden lines against an independent probe.
//
// The probe knows no edges: it shoots a ray from the eye through a point of the picture and names the nearest
// face. A visible line must have different faces to its two sides. And wherever the nearest face changes
// along a line drawn across the picture, there must be a visible line. Scenes are parts on a coarse grid,
// flush and in contact on purpose, and parts standing at any angle, apart from each other.

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <deque>

#include "solid/solid.hpp"

using namespace rayfleck::solid;
using rayfleck::measure::norm;
using rayfleck::measure::unit;

namespace {

class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    int below(int n) { return static_cast<int>(next() % static_cast<std::uint64_t>(n)); }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(next()) / 2147483648.0;
    }

  private:
    std::uint64_t next() {
        state_ = state_ * 6364136223846793005u + 1442695040888963407u;
        return state_ >> 33;
    }
    std::uint64_t state_;
};

struct Scene {
    std::deque<Solid> solids;
    std::vector<Placed> parts;
    void add(const Shape& blank, const std::vector<Shape>& tools, const Frame& frame) {
        solids.push_back(carve(blank, tools));
        parts.push_back({&solids.back(), nullptr, nullptr, frame});
    }
};

/// Part and face that the eye sees at a point of the picture; {-1, -1} for none.
std::array<int, 2> seen_at(const Scene& scene, const View& view, Point2 at) {
    std::array<int, 2> seen{-1, -1};
    double nearest = -1e300;
    for (std::size_t p = 0; p < scene.parts.size(); ++p) {
        const Frame& frame = scene.parts[p].frame;
        const Vector eye = frame.turn_in(view.towards);
        const Point from = frame.in(view.right * at.x + view.up * at.y);
        for (std::size_t f = 0; f < scene.parts[p].solid->faces.size(); ++f) {
            const Face& face = scene.parts[p].solid->faces[f];
            const double turned = dot(face.plane.normal, eye);
            if (turned < 1e-6) continue;
            const double depth = (face.plane.offset - dot(face.plane.normal, from)) / turned;
            if (depth <= nearest) continue;
            const Point hit = from + eye * depth;
            // Angles under which the loops' sides are seen from the hit add up to full turns inside.
            double angle = 0;
            for (const auto& loop : face.loops)
                for (std::size_t i = 0; i < loop.size(); ++i) {
                    const Vector a = loop[i] - hit, b = loop[(i + 1) % loop.size()] - hit;
                    angle += std::atan2(dot(face.plane.normal, cross(a, b)), dot(a, b));
                }
            if (angle < 3) continue;
            nearest = depth;
            seen = {static_cast<int>(p), static_cast<int>(f)};
        }
    }
    return seen;
}

double distance_to(const Line2& line, Point2 p) {
    const double dx = line.at.b.x - line.at.a.x, dy = line.at.b.y - line.at.a.y;
    const double t =
        std::clamp(((p.x - line.at.a.x) * dx + (p.y - line.at.a.y) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
    return std::hypot(line.at.a.x + t * dx - p.x, line.at.a.y + t * dy - p.y);
}

void probe(const Scene& scene, const View& view, Dice& dice) {
    const auto lines = hidden_lines(scene.parts, view);
    Point2 low{1e9, 1e9}, high{-1e9, -1e9};
    for (const Line2& line : lines) {
        for (const Point2 p : {line.at.a, line.at.b}) {
            low = {std::min(low.x, p.x), std::min(low.y, p.y)};
            high = {std::max(high.x, p.x), std::max(high.y, p.y)};
        }
        if (!line.visible) continue;
        const double dx = line.at.b.x - line.at.a.x, dy = line.at.b.y - line.at.a.y;
        const double length = std::hypot(dx, dy);
        if (length < 0.5) continue;
        const double t = dice.between(0.2, 0.8);
        const Point2 on{line.at.a.x + dx * t, line.at.a.y + dy * t};
        // Once as near as lines are merged (0.01 mm), once nearer, to tell slivers of faces seen almost
        // end-on.
        bool differs = false;
        for (const double aside : {0.01, 0.003}) {
            const double x = -dy / length * aside, y = dx / length * aside;
            differs = differs || seen_at(scene, view, {on.x + x, on.y + y}) !=
                                     seen_at(scene, view, {on.x - x, on.y - y});
        }
        CAPTURE(on.x, on.y, line.part);
        CHECK(differs);
    }
    for (int n = 0; n < 12; ++n) {
        const Point2 from{dice.between(low.x, high.x), dice.between(low.y, high.y)};
        const double angle = dice.between(0, 3.14);
        const Point2 along{std::cos(angle), std::sin(angle)};
        const auto at = [&](double t) { return Point2{from.x + along.x * t, from.y + along.y * t}; };
        for (double t = -30; t < 30; t += 0.5) {
            double here = t, there = t + 0.5;
            const auto first = seen_at(scene, view, at(here));
            if (first == seen_at(scene, view, at(there))) continue;
            while (there - here > 1e-4) {
                const double middle = (here + there) / 2;
                (seen_at(scene, view, at(middle)) == first ? here : there) = middle;
            }
            double nearest = 1e300;
            for (const Line2& line : lines)
                if (line.visible) nearest = std::min(nearest, distance_to(line, at(here)));
            CAPTURE(at(here).x, at(here).y);
            CHECK(nearest < 0.01);
        }
    }
}

Frame any_frame(Dice& dice, Point origin) {
    Frame frame;
    frame.origin = origin;
    frame.x = unit({dice.between(-1, 1), dice.between(-1, 1), dice.between(0.1, 1)});
    frame.y = unit(cross(frame.x, unit({dice.between(0.1, 1), dice.between(-1, 1), 0})));
    frame.z = cross(frame.x, frame.y);
    return frame;
}

View any_view(Dice& dice) {
    const Frame frame = any_frame(dice, {});
    return {frame.x, frame.y, frame.z};
}

} // namespace

TEST_CASE("views of flush and touching parts agree with a probe") {
    Dice dice(3);
    for (int trial = 0; trial < 25; ++trial) {
        // A block of 6 x 6 x 6 cells cut into boxes that fill it without overlapping, some left out, some
        // notched.
        Scene scene;
        const int cut_x = 1 + dice.below(5), cut_y = 1 + dice.below(5), cut_z = 1 + dice.below(5);
        for (int part = 0; part < 8; ++part) {
            if (dice.below(4) == 0) continue;
            const Point low{part & 1 ? cut_x * 5.0 : 0.0, part & 2 ? cut_y * 5.0 : 0.0,
                            part & 4 ? cut_z * 5.0 : 0.0};
            const Point high{part & 1 ? 30.0 : cut_x * 5.0, part & 2 ? 30.0 : cut_y * 5.0,
                             part & 4 ? 30.0 : cut_z * 5.0};
            std::vector<Shape> tools;
            for (int t = dice.below(3); t > 0; --t) {
                const Point corner{5.0 * dice.below(6), 5.0 * dice.below(6), 5.0 * dice.below(6)};
                tools.push_back(box({}, corner, corner + Vector{10, 5, 10}));
            }
            scene.add(box({}, low, high), tools, {});
        }
        CAPTURE(trial);
        probe(scene, front_view(), dice);
        probe(scene, isometric_view(), dice);
        probe(scene, any_view(dice), dice);
    }
}

TEST_CASE("views of parts at any angle agree with a probe") {
    Dice dice(5);
    for (int trial = 0; trial < 25; ++trial) {
        Scene scene;
        for (int part = 0; part < 6; ++part) {
            // Each within 17.4 of its centre, centres 36 apart: they cannot meet.
            const Frame frame = any_frame(dice, {36.0 * (part % 2), 36.0 * (part / 2), 36.0 * dice.below(2)});
            std::vector<Shape> tools{box(any_frame(dice, {5, 5, 5}), {-4, -4, -20}, {4, 4, 20}),
                                     half_space({unit({dice.between(-1, 1), dice.between(-1, 1), 1}), 5},
                                                {{-10, -10, -10}, {10, 10, 10}})};
            scene.add(box({}, {-10, -10, -10}, {10, 10, 10}), tools, frame);
        }
        CAPTURE(trial);
        probe(scene, right_view(), dice);
        probe(scene, isometric_view(), dice);
        probe(scene, any_view(dice), dice);
    }
}
