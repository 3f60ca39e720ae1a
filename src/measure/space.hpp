#pragma once
// Points, directions and frames of reference, in millimetres.
//
// Two frames occur. The piece's: x across (left to right), y deep (front to back), z up; right-handed, seen
// by someone standing in front of the piece. A part's own: x along its length (with the grain), y across its
// width, z through its thickness, right-handed, origin in the low corner of the blank, the face side at the
// top of z. A Frame carries points of a part into the piece.

#include <array>
#include <cmath>

namespace rayfleck::measure {

struct Vector {
    double x = 0, y = 0, z = 0;
    friend constexpr Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend constexpr Vector operator-(Vector a, Vector b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend constexpr Vector operator*(Vector a, double s) { return {a.x * s, a.y * s, a.z * s}; }
    friend constexpr Vector operator*(double s, Vector a) { return a * s; }
    constexpr Vector operator-() const { return {-x, -y, -z}; }
    friend constexpr bool operator==(Vector, Vector) = default;
    constexpr double operator[](int axis) const { return axis == 0 ? x : axis == 1 ? y : z; }
    constexpr double& operator[](int axis) { return axis == 0 ? x : axis == 1 ? y : z; }
};

/// A place; same shape as a direction, kept apart by name only.
using Point = Vector;

constexpr double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vector cross(Vector a, Vector b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(Vector a) { return std::sqrt(dot(a, a)); }
/// a scaled to length 1; a must not be zero.
inline Vector unit(Vector a) { return a * (1.0 / norm(a)); }

/// A right-handed orthonormal frame: where its origin and its three axes lie in the frame around it.
struct Frame {
    Point origin;
    Vector x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};

    constexpr Point out(Point p) const { return origin + turn_out(p); }
    constexpr Vector turn_out(Vector v) const { return x * v.x + y * v.y + z * v.z; }
    constexpr Point in(Point p) const { return turn_in(p - origin); }
    constexpr Vector turn_in(Vector v) const { return {dot(v, x), dot(v, y), dot(v, z)}; }
};

/// A plane: points p with dot(normal, p) == offset; the normal is of length 1.
struct Plane {
    Vector normal{0, 0, 1};
    double offset = 0;
};

struct Box {
    Point low, high;
};

} // namespace rayfleck::measure
