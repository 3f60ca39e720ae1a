#pragma once
// Solids: a blank minus cuts, evaluated plane by plane.
//
// Shapes go in as closed polyhedra (Shape), made from boxes, prisms over an outline, and turned profiles. A
// part is one blank Shape with tools taken away; carve() gives its boundary. Input is in millimetres; inside,
// all coordinates are whole numbers on a grid of 1/160000 mm.

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "measure/space.hpp"

namespace rayfleck::solid {

using measure::Box;
using measure::Frame;
using measure::Plane;
using measure::Point;
using measure::Vector;

struct Point2 {
    double x = 0, y = 0;
};

/// A piece of an outline, from the end of the one before it.
struct Edge2 {
    Point2 to;
    /// Arc: centre, and the side it turns to. Start and `to` must be equally far from the centre (1e-6 mm).
    /// An arc that ends where it starts is a full circle.
    std::optional<Point2> centre;
    bool anticlockwise = true;
};

/// A closed outline of lines and arcs in a plane; smooth curves arrive here as many short lines of one smooth
/// run. Where an arc joins its neighbour without a corner (within half a degree), both count as one curve.
struct Outline {
    Point2 start;
    std::vector<Edge2> edges; ///< the last one ends at start
    /// Consecutive edges of one smooth curve share a number > 0 and are drawn without lines between them.
    std::vector<int> smooth; ///< empty, or one per edge; 0 = sharp
};

/// nothing, or what is wrong with the outline: crosses itself, not closed, too few edges, arc off its centre.
std::optional<std::string> fault_of(const Outline& outline);
/// Area in mm², arcs exact; positive when anticlockwise.
double area(const Outline& outline);

/// A closed polyhedron with planar faces. Opaque: make it with the functions below.
class Shape;

// All of these throw std::invalid_argument for a shape without extent, and for points that are no numbers or
// over 10 km away. An outline must be free of faults (fault_of); a faulty one gives nonsense.

/// An axis-aligned box in `frame`.
Shape box(const Frame& frame, Point low, Point high);
/// The outline in frame's x-y plane, drawn out along frame's z from `from` to `to` (from < to).
Shape prism(const Frame& frame, const Outline& outline, double from, double to);
/// A prism whose end faces lie in arbitrary planes is not needed: cut it with half_space tools.
/// A big block on the far side (where dot(normal, p) > offset) of a plane, large enough to cut anything in
/// `around`.
Shape half_space(const Plane& plane, const Box& around);
/// A round bar on frame's z axis from `from` to `to`.
Shape cylinder(const Frame& frame, double radius, double from, double to);
/// A place on a turned profile; straight to the next one unless `smooth`. In mm.
struct Station {
    double x = 0, radius = 0;
    /// The stretch up to the next station is part of a smooth curve. The curve ends by itself where the
    /// profile bends by 30 degrees or more.
    bool smooth = false;
};
/// A turned solid about frame's x axis. Two stations at one x make a square shoulder; radius 0 makes a point.
/// Throws std::invalid_argument for fewer than two stations, a radius < 0, x not ascending, or no length.
Shape turned(const Frame& frame, const std::vector<Station>& profile);
/// The ring between a profile and a cylinder of at least outer_radius round it: what a lathe takes off. A
/// tool for turned stretches of a blank that is not turned as a whole. Throws std::invalid_argument as turned
/// does, and for a radius of 0.
Shape turned_waste(const Frame& frame, const std::vector<Station>& profile, double outer_radius);

/// A flat face of a finished solid: one connected patch. The first loop is its rim, anticlockwise seen from
/// outside; the others are holes in it, clockwise. Flush surfaces of blank and tools are one face.
struct Face {
    Plane plane;
    std::vector<std::vector<Point>> loops;
    /// Which tool made it: -1 the blank, else index into the tools given to carve. Of several, the one with
    /// most of it.
    int made_by = -1;
    double area = 0;
    /// Everything that has a share in it, ascending: -1 the blank, else index into the tools.
    std::vector<int> makers;
    Box box;
};

/// An edge of a finished solid.
struct Edge {
    Point a, b;
    int face_left = -1, face_right = -1;
    bool smooth = false; ///< between two facets of one curve: drawn only as a silhouette
};

/// The finished boundary of a part, in the frame in which blank and tools were given (the part's own).
struct Solid {
    std::vector<Face> faces;
    std::vector<Edge> edges;
    double volume = 0;  ///< mm³
    double surface = 0; ///< mm²
    Point centroid;
    Box box;
    /// Number of edges that do not close. 0 for every sound solid; anything else is a defect of the program
    /// or of a tool touching at a knife edge, and callers must report it with the part's name.
    int open_edges = 0;
    bool watertight() const { return open_edges == 0; }
    /// How many separate bodies the cuts left; 0 when nothing is left.
    int bodies = 0;
};

/// Blank minus tools.
Solid carve(const Shape& blank, const std::vector<Shape>& tools);

/// A carved part standing in the piece. blank and tools are kept for sections and clashes.
struct Placed {
    const Solid* solid = nullptr;
    const Shape* blank = nullptr;
    const std::vector<Shape>* tools = nullptr;
    Frame frame; ///< part → piece
};

// ---- views -------------------------------------------------------------------------------------

/// A direction of sight. The picture plane has `right` and `up`; `towards` points from the piece to the eye
/// and is right × up. Parallel projection.
struct View {
    Vector right{1, 0, 0}, up{0, 0, 1}, towards{0, -1, 0};
};
View front_view();  ///< x right, z up, seen from -y
View top_view();    ///< x right, y up, seen from +z
View right_view();  ///< seen from +x: y right, z up
View left_view();   ///< seen from -x: -y right, z up
View back_view();   ///< seen from +y: -x right, z up
View bottom_view(); ///< seen from -z
/// Isometric from the front, the right-hand side and above.
View isometric_view();

struct Segment2 {
    Point2 a, b;
};

/// A stretch of one projected line, after lines that coincide have been merged (visible first).
struct Line2 {
    Segment2 at;
    /// Index into the parts given; where several parts share the line, the lowest.
    int part = 0;
    bool visible = true;
};

/// Every sharp edge and silhouette of the parts, split into visible and hidden stretches, in the picture
/// plane. Order is deterministic: by part, then position.
std::vector<Line2> hidden_lines(const std::vector<Placed>& parts, const View& view);
/// The visible ones alone, in half the time: what looks away from the eye is never looked at.
std::vector<Line2> visible_lines(const std::vector<Placed>& parts, const View& view);
/// How a part shows in a view when nothing stands before it.
struct Alone {
    Point2 low, high;  ///< round all of it
    double length = 0; ///< of its edges that do not look away from the eye
};
Alone seen_alone(const Placed& part, const View& view);

// ---- sections and clashes ----------------------------------------------------------------------

/// The cut area of one part in a section plane: rings in the plane's (right, up) of the view, even-odd.
struct CutArea {
    int part = 0;
    std::vector<std::vector<Point2>> rings;
    double area = 0;
};

/// What a saw through the piece would show: dot(view.towards, p) == offset. A plane lying exactly in a face
/// shows that face if the part lies behind it, as seen by the eye.
std::vector<CutArea> section(const std::vector<Placed>& parts, const View& view, double offset);

/// Two parts that take up the same space.
struct Clash {
    int a = 0, b = 0;
    double volume = 0; ///< mm³
    /// 2 V / S. Clashes thinner than 0.02 mm are facets of curves and are not reported.
    double mean_thickness = 0;
    Box box; ///< in the piece's frame
};
std::vector<Clash> clashes(const std::vector<Placed>& parts);

// ---- asking a finished solid -------------------------------------------------------------------

/// Stretches of the line p + t·direction (|direction| = 1) inside the solid, as (enter, leave) pairs of t,
/// ascending. A line lying exactly in a face (within 1 µm) counts as on its inner side.
std::vector<std::pair<double, double>> inside_along(const Solid& solid, Point p, Vector direction);

/// Area in which face sets of two parts lie against each other: coplanar (within `gap` mm), normals opposite.
struct Touch {
    int face_a = 0, face_b = 0;
    Plane plane;                           ///< in the piece's frame, normal out of a
    std::vector<std::vector<Point>> loops; ///< in the piece's frame
    double area = 0;
};
std::vector<Touch> touching(const Placed& a, const Placed& b, double gap = 0.01);

} // namespace rayfleck::solid

#include "solid/shape.hpp"
