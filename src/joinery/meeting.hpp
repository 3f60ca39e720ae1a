#pragma once
// How two parts come together: which side of one meets which side of the other, how far it still has to go or
// already reaches in, and over which part of its section.
//
// Parts are taken as their oriented boxes, less what tapers and trims plane away (both are convex, so a line
// enters and leaves once). Whether two boxes meet is decided by separating axes; the side of A that meets B
// is the one with the least overlap, ends first where the joint wants an end. Everything is then told in A's
// own frame, because a tenon is exact there whatever way B leans. Outlines and turned profiles count as their
// boxes.

#include <optional>
#include <vector>

#include "piece/piece.hpp"

namespace rayfleck::joinery {

using measure::Box;
using measure::Frame;
using measure::Plane;
using measure::Point;
using measure::Vector;
using piece::LocalSide;

/// Two parts closer than this are meant to touch, mm.
inline constexpr double touching_within = 0.05;

/// Size of a part's body along its own axis 0, 1, 2, mm.
double size_of(const piece::Part& part, int axis);
measure::Length exact_size_of(const piece::Part& part, int axis);
/// Direction out of a side, in the part's own frame.
Vector outward(LocalSide side);
/// Coordinate along the side's axis of a point `beyond` mm outside the body's side (negative: inside).
double coordinate(const piece::Part& part, LocalSide side, double beyond);
/// The side of a part that looks most in a direction of the piece.
LocalSide side_towards(const piece::Part& part, Vector direction);
/// Planes that bound a part's body, in its own frame, normals outwards: its box, then plane cuts.
std::vector<Plane> body_planes(const piece::Part& part);
/// Where a line is inside a convex body: (enter, leave) in units of `direction`.
std::optional<std::pair<double, double>> inside_convex(const std::vector<Plane>& planes, Point p,
                                                       Vector direction);
/// A frame of the piece as seen from a part.
Frame seen_from(const piece::Part& part, const Frame& frame);
Plane seen_from(const piece::Part& part, const Plane& plane);
Plane carried_out(const piece::Part& part, const Plane& plane);
/// Both parts' axes run along each other's.
bool axes_agree(const piece::Part& a, const piece::Part& b);

/// How far apart two bodies are: the gap along the axis that separates them most; negative when they overlap.
struct Apart {
    double gap = 0;
    Vector direction; ///< unit, piece's frame, from a to b
};
Apart apart(const piece::Part& a, const piece::Part& b);
/// They touch over an area or overlap. Bodies that only touch along a line do not, unless `corners_count`.
bool do_meet(const piece::Part& a, const piece::Part& b, bool corners_count = false);

enum class Prefer { any_side, ends };

struct Meeting {
    LocalSide from; ///< side of A that goes to B
    LocalSide onto; ///< side of B that it meets
    Vector into;    ///< piece's frame, unit: out of A's side, into B
    /// B's surface, in A's frame, normal out of B. On a tapered leg this is the taper.
    Plane face;
    Plane far;       ///< where B ends along `into`, A's frame, normal out of B
    double gap = 0;  ///< along `into`, from A's side to the surface, mid-section; < 0: A already reaches in
    double deep = 0; ///< how far B goes on from there along `into`
    Box window;      ///< A's frame: the part of A's section that lies over B (axis of `from`: 0 to 0)
    bool square = true;  ///< B's surface is square to A's direction
    bool aligned = true; ///< axes of both run along each other's

    int axis() const { return from.axis; }
    bool over_whole_section(const piece::Part& a) const;
    /// Least and greatest distance beyond A's side at which a rectangle of A's section meets a plane.
    std::pair<double, double> reach_of(const piece::Part& a, const Plane& plane, const Box& section) const;
    /// Where a socket of this section has to begin, beyond A's side: at the surface, or clear of a leaning
    /// one.
    double mouth(const piece::Part& a, const Box& section) const {
        return square ? gap : reach_of(a, face, section).first - 1.0;
    }
    /// A box of A's frame: the section, from `near` to `beyond` mm outside A's side.
    Box box(const piece::Part& a, const Box& section, double near, double beyond) const;
};

/// gives  nothing when A's section misses B altogether
std::optional<Meeting> meeting_of(const piece::Part& a, const piece::Part& b, Prefer prefer);

/// Where both lie over each other just inside B's surface: a convex polygon of A's section, x along the axis
/// after the meeting's, y along the one after that; empty when nothing is left.
std::vector<solid::Point2> overlap_of(const piece::Part& a, const piece::Part& b, const Meeting& meeting);

} // namespace rayfleck::joinery
