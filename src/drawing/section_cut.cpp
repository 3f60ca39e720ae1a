// A face is clipped by one plane after the other (Sutherland and Hodgman's way with polygons, from memory).
// Cut areas that are clipped by a second plane take part as faces too.

#include "drawing/section_cut.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Plane;
using measure::Point;
using measure::Vector;

constexpr double on_plane = 1e-4; // mm

std::vector<Point> clipped_ring(const std::vector<Point>& ring, const Plane& plane) {
    std::vector<Point> kept;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point p = ring[i], q = ring[(i + 1) % ring.size()];
        const double sp = dot(plane.normal, p) - plane.offset, sq = dot(plane.normal, q) - plane.offset;
        if (sp <= on_plane) kept.push_back(p);
        if ((sp < -on_plane && sq > on_plane) || (sp > on_plane && sq < -on_plane))
            kept.push_back(p + (q - p) * (sp / (sp - sq)));
    }
    if (kept.size() < 3) kept.clear();
    return kept;
}

/// -1 wholly kept, +1 wholly beyond, 0 crossed.
int side_of(const measure::Box& box, const Plane& plane) {
    const Point middle = (box.low + box.high) * 0.5, half = (box.high - box.low) * 0.5;
    const double reach = std::abs(plane.normal.x) * half.x + std::abs(plane.normal.y) * half.y +
                         std::abs(plane.normal.z) * half.z;
    const double at = dot(plane.normal, middle) - plane.offset;
    return at + reach <= on_plane ? -1 : at - reach >= -on_plane ? 1 : 0;
}

/// Two directions that make a view of a plane from outside.
solid::View view_along(Vector normal) {
    solid::View view;
    view.towards = normal;
    const Vector other = std::abs(normal.z) < 0.9 ? Vector{0, 0, 1} : Vector{0, 1, 0};
    view.right = measure::unit(cross(other, normal));
    view.up = cross(normal, view.right);
    return view;
}

/// The cut area as faces of the part, in its own frame: one for each connected stretch.
std::vector<solid::Face> cap_of(const solid::Placed& part, const Plane& plane) {
    const solid::View view = view_along(plane.normal);
    std::vector<solid::Face> caps;
    const Vector normal = part.frame.turn_in(plane.normal);
    for (const solid::CutArea& area : solid::section({part}, view, plane.offset))
        for (const Rings& rings : connected(area.rings)) {
            solid::Face& face = caps.emplace_back();
            face.plane = {normal, plane.offset - dot(plane.normal, part.frame.origin)};
            for (const auto& ring : rings) {
                auto& loop = face.loops.emplace_back();
                for (const Point2 p : ring)
                    loop.push_back(
                        part.frame.in(view.right * p.x + view.up * p.y + view.towards * plane.offset));
            }
        }
    return caps;
}

void clip(solid::Solid& solid, const Plane& plane) {
    std::vector<int> place(solid.faces.size(), -1);
    std::vector<solid::Face> faces;
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        solid::Face& face = solid.faces[f];
        std::vector<std::vector<Point>> loops;
        for (const auto& loop : face.loops)
            if (auto kept = clipped_ring(loop, plane); !kept.empty()) loops.push_back(std::move(kept));
        if (loops.empty()) continue;
        place[f] = static_cast<int>(faces.size());
        face.loops = std::move(loops);
        faces.push_back(std::move(face));
    }
    solid.faces = std::move(faces);
    std::vector<solid::Edge> edges;
    for (solid::Edge edge : solid.edges) {
        const double a = dot(plane.normal, edge.a) - plane.offset,
                     b = dot(plane.normal, edge.b) - plane.offset;
        if (std::max(a, b) > on_plane && std::min(a, b) >= -on_plane) continue;
        // Edges in the plane itself are rims of the cut, which are drawn by themselves.
        if (std::abs(a) <= on_plane && std::abs(b) <= on_plane) continue;
        if (a > on_plane) edge.a = edge.a + (edge.b - edge.a) * (a / (a - b));
        if (b > on_plane) edge.b = edge.b + (edge.a - edge.b) * (b / (b - a));
        int left = place[static_cast<std::size_t>(edge.face_left)],
            right = place[static_cast<std::size_t>(edge.face_right)];
        if (left < 0) left = right;
        if (right < 0) right = left;
        if (left < 0) continue;
        edge.face_left = left;
        edge.face_right = right;
        edges.push_back(edge);
    }
    solid.edges = std::move(edges);
}

/// Borders of the caps as edges, each with the face that it shares with its cap.
void add_rims(solid::Solid& solid, std::size_t first_cap) {
    constexpr double in_face = 1e-3;
    for (std::size_t c = first_cap; c < solid.faces.size(); ++c)
        for (const auto& loop : solid.faces[c].loops)
            for (std::size_t k = 0; k < loop.size(); ++k) {
                const Point a = loop[k], b = loop[(k + 1) % loop.size()], middle = (a + b) * 0.5;
                std::size_t beside = c;
                for (std::size_t f = 0; f < solid.faces.size() && beside == c; ++f) {
                    if (f == c) continue;
                    const solid::Face& face = solid.faces[f];
                    if (std::abs(dot(face.plane.normal, a) - face.plane.offset) > in_face ||
                        std::abs(dot(face.plane.normal, b) - face.plane.offset) > in_face)
                        continue;
                    if (f < first_cap) {
                        bool round_it = true;
                        for (int axis = 0; axis < 3; ++axis)
                            round_it = round_it && middle[axis] > face.box.low[axis] - 0.01 &&
                                       middle[axis] < face.box.high[axis] + 0.01;
                        if (!round_it) continue;
                    }
                    beside = f;
                }
                solid.edges.push_back({a, b, static_cast<int>(c), static_cast<int>(beside), false});
            }
}

} // namespace

bool add_clipped(Clipped& to, const solid::Placed& part, const std::vector<Plane>& planes, bool with_rims) {
    if (part.solid->faces.empty()) return false;
    std::vector<Plane> crossing;
    for (const Plane& plane : planes) {
        const Plane own{part.frame.turn_in(plane.normal),
                        plane.offset - dot(plane.normal, part.frame.origin)};
        const int side = side_of(part.solid->box, own);
        if (side > 0) return false;
        if (side == 0) crossing.push_back(plane);
    }
    if (crossing.empty()) {
        to.placed.push_back(part);
        to.rims.emplace_back();
        return true;
    }
    solid::Solid solid = *part.solid;
    std::vector<std::vector<solid::Face>> caps;
    for (const Plane& plane : crossing) caps.push_back(cap_of(part, plane));
    std::vector<std::pair<Point, Point>> rims;
    for (std::size_t i = 0; i < crossing.size(); ++i) {
        const auto own = [&](const Plane& plane) {
            return Plane{part.frame.turn_in(plane.normal),
                         plane.offset - dot(plane.normal, part.frame.origin)};
        };
        clip(solid, own(crossing[i]));
        for (solid::Face& cap : caps[i]) {
            for (std::size_t j = 0; j < crossing.size(); ++j) {
                if (j == i) continue;
                std::vector<std::vector<Point>> loops;
                for (const auto& loop : cap.loops)
                    if (auto kept = clipped_ring(loop, own(crossing[j])); !kept.empty())
                        loops.push_back(std::move(kept));
                cap.loops = std::move(loops);
            }
            for (const auto& loop : cap.loops)
                for (std::size_t k = 0; k < loop.size(); ++k)
                    rims.push_back({part.frame.out(loop[k]), part.frame.out(loop[(k + 1) % loop.size()])});
        }
    }
    const std::size_t without_caps = solid.faces.size();
    for (auto& of_plane : caps)
        for (solid::Face& cap : of_plane)
            if (!cap.loops.empty()) solid.faces.push_back(std::move(cap));
    if (with_rims) add_rims(solid, without_caps);
    if (solid.faces.empty()) return false;
    to.solids.push_back(std::move(solid));
    to.placed.push_back(part);
    to.placed.back().solid = &to.solids.back();
    to.rims.push_back(std::move(rims));
    return true;
}

CutThrough cut_through(const std::vector<solid::Placed>& parts, const solid::View& view, double offset,
                       double depth) {
    CutThrough cut;
    cut.areas = solid::section(parts, view, offset);
    Clipped behind;
    const std::vector<Plane> planes{{view.towards, offset}, {-view.towards, depth - offset}};
    for (const solid::Placed& part : parts) add_clipped(behind, part, planes, false);
    std::vector<Point2> points;
    for (const solid::Line2& line : solid::hidden_lines(behind.placed, view))
        if (line.visible) {
            cut.beyond.push_back(line.at);
            points.push_back(line.at.a), points.push_back(line.at.b);
        }
    for (const solid::CutArea& area : cut.areas)
        for (const auto& ring : area.rings) points.insert(points.end(), ring.begin(), ring.end());
    cut.beyond = united(cut.beyond);
    if (!points.empty()) cut.box = around(points);
    return cut;
}

std::vector<Segment2> sides_of(const Rings& rings) {
    std::vector<Segment2> sides;
    for (const auto& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
            sides.push_back({ring[j], ring[i]});
    return sides;
}

std::vector<Segment2> draw_cut_areas(Block& block, const Job& job, const Hatching& hatching,
                                     const std::vector<solid::CutArea>& areas, const std::vector<int>& parts,
                                     const solid::View& view, double scale, Point2 origin,
                                     const std::string& section) {
    const auto on_paper = [&](Point2 p) { return Point2{origin.x + p.x * scale, origin.y + p.y * scale}; };
    std::vector<Segment2> outlines;
    std::vector<Rings> filled;
    for (const solid::CutArea& area : areas) {
        const int part = parts[static_cast<std::size_t>(area.part)];
        Rings rings = area.rings;
        for (auto& ring : rings)
            for (Point2& p : ring) p = on_paper(p);
        const piece::Part& body = *job.made(part).part;
        const Point middle =
            body.frame.out({body.length.value() / 2, body.width.value() / 2, body.thickness.value() / 2});
        const Hatch hatch =
            hatching.of(part, view, scale, on_paper({dot(middle, view.right), dot(middle, view.up)}), rings);
        for (Rings& stretch : connected(rings)) {
            const std::vector<Segment2> sides = sides_of(stretch);
            SectionRecord record{body.name, section, {}, hatch.grain, hatch.turn, hatch.pitch, false};
            record.filled = strip_thickness(stretch) < filled_below;
            if (record.filled) {
                block.fill(stretch, Ink::black);
                filled.push_back(stretch);
            } else {
                draw_hatch(block, stretch, hatch, block.occupied().texts());
                outlines.insert(outlines.end(), sides.begin(), sides.end());
            }
            record.rings = std::move(stretch);
            block.record_section(std::move(record));
        }
    }
    // Two filled areas side by side keep a light gap.
    for (std::size_t i = 0; i < filled.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (meet(grown(around(filled[i].front()), 0.1), grown(around(filled[j].front()), 0.1))) {
                std::vector<Point2> ring = filled[i].front();
                ring.push_back(ring.front());
                block.stroke(std::move(ring), Pen::thin, Role::mark, Ink::white);
                break;
            }
    return outlines;
}

} // namespace rayfleck::drawing
