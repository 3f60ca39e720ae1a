// Centripetal Catmull-Rom curves, cut into chords.
//
// Each stretch is a cubic between two of the points; its tangents come from the points beside them, with
// parameters that grow as the square root of the distance, which keeps the curve free of loops and cusps
// (Yuksel, Schaefer and Keyser, 2011; from memory). A stretch is halved until its control points lie within
// the chord error of its chord; the curve lies nearer still.

#include "piece/smooth.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::piece {
namespace {

using solid::Point2;

Point2 operator+(Point2 a, Point2 b) { return {a.x + b.x, a.y + b.y}; }
Point2 operator-(Point2 a, Point2 b) { return {a.x - b.x, a.y - b.y}; }
Point2 operator*(Point2 a, double s) { return {a.x * s, a.y * s}; }
double length(Point2 a) { return std::sqrt(a.x * a.x + a.y * a.y); }
Point2 half(Point2 a, Point2 b) { return (a + b) * 0.5; }

double from_chord(Point2 p, Point2 a, Point2 b) {
    const Point2 d = b - a;
    const double l = length(d);
    if (l < 1e-12) return length(p - a);
    const double t = std::clamp(((p.x - a.x) * d.x + (p.y - a.y) * d.y) / (l * l), 0.0, 1.0);
    return length(p - (a + d * t));
}

void flatten(Point2 a, Point2 b, Point2 c, Point2 d, int depth, std::vector<Point2>& out) {
    // A cubic lies within three quarters of its control points' distance from the chord.
    if (depth == 0 || 0.75 * std::max(from_chord(b, a, d), from_chord(c, a, d)) <= chord_error) {
        out.push_back(d);
        return;
    }
    const Point2 ab = half(a, b), bc = half(b, c), cd = half(c, d), abc = half(ab, bc), bcd = half(bc, cd),
                 m = half(abc, bcd);
    flatten(a, ab, abc, m, depth - 1, out);
    flatten(m, bcd, cd, d, depth - 1, out);
}

/// Tangent at the middle of three points that stand at parameters 0, s, s + t.
Point2 tangent(Point2 a, Point2 b, Point2 c, double s, double t) {
    return (b - a) * (t / (s * (s + t))) + (c - b) * (s / (t * (s + t)));
}

} // namespace

std::vector<Point2> smooth_through(const std::vector<Point2>& points) {
    std::vector<Point2> p;
    for (const Point2& one : points)
        if (p.empty() || length(one - p.back()) > 1e-9) p.push_back(one);
    if (p.size() < 3) return p.empty() ? p : std::vector<Point2>(p.begin() + 1, p.end());
    const std::size_t n = p.size();
    std::vector<double> step(n - 1);
    for (std::size_t i = 0; i + 1 < n; ++i) step[i] = std::sqrt(length(p[i + 1] - p[i]));
    std::vector<Point2> slope(n);
    for (std::size_t i = 1; i + 1 < n; ++i)
        slope[i] = tangent(p[i - 1], p[i], p[i + 1], step[i - 1], step[i]);
    slope[0] = (p[1] - p[0]) * (2 / step[0]) - slope[1];
    slope[n - 1] = (p[n - 1] - p[n - 2]) * (2 / step[n - 2]) - slope[n - 2];
    std::vector<Point2> out;
    for (std::size_t i = 0; i + 1 < n; ++i)
        flatten(p[i], p[i] + slope[i] * (step[i] / 3), p[i + 1] - slope[i + 1] * (step[i] / 3), p[i + 1], 12,
                out);
    return out;
}

solid::Outline reversed(const solid::Outline& outline) {
    solid::Outline out;
    out.start = outline.start;
    for (std::size_t i = outline.edges.size(); i-- > 0;) {
        solid::Edge2 edge = outline.edges[i];
        edge.to = i == 0 ? outline.start : outline.edges[i - 1].to;
        edge.anticlockwise = !edge.anticlockwise;
        out.edges.push_back(edge);
        if (!outline.smooth.empty()) out.smooth.push_back(outline.smooth[i]);
    }
    return out;
}

} // namespace rayfleck::piece
