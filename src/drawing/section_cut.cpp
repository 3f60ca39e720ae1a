// A face is clipped by one plane after the other (Sutherland and Hodgman's way with polygons, from memory).
// Cut areas that are clipped by a second plane take part as faces too.

#include "drawing/section_cut.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

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

Plane seen_from(const solid::Placed& part, const Plane& plane) {
    return {part.frame.turn_in(plane.normal), plane.offset - dot(plane.normal, part.frame.origin)};
}

/// A cut area as faces of the part, in its own frame: one for each connected stretch.
std::vector<solid::Face> cap_of(const solid::Placed& part, const solid::CutArea& area,
                                const solid::View& view, double offset) {
    std::vector<solid::Face> caps;
    for (const Rings& rings : connected(area.rings)) {
        solid::Face& face = caps.emplace_back();
        face.plane = seen_from(part, {view.towards, offset});
        for (const auto& ring : rings) {
            auto& loop = face.loops.emplace_back();
            loop.reserve(ring.size());
            for (const Point2 p : ring)
                loop.push_back(part.frame.in(view.right * p.x + view.up * p.y + view.towards * offset));
        }
    }
    return caps;
}

/// What stays of a solid, without the faces that the plane lays open.
solid::Solid clipped(const solid::Solid& solid, const Plane& plane) {
    solid::Solid out;
    std::vector<int> place(solid.faces.size(), -1);
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        const solid::Face& face = solid.faces[f];
        const int side = side_of(face.box, plane);
        if (side > 0) continue;
        std::vector<std::vector<Point>> loops;
        if (side < 0)
            loops = face.loops;
        else
            for (const auto& loop : face.loops)
                if (auto kept = clipped_ring(loop, plane); !kept.empty()) loops.push_back(std::move(kept));
        if (loops.empty()) continue;
        place[f] = static_cast<int>(out.faces.size());
        solid::Face& kept = out.faces.emplace_back();
        kept.plane = face.plane;
        kept.box = face.box;
        kept.loops = std::move(loops);
    }
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
        out.edges.push_back(edge);
    }
    return out;
}

/// The planes that cross a part; nothing when it lies wholly beyond one.
std::optional<std::vector<std::size_t>> crossing(const solid::Placed& part,
                                                 const std::vector<Plane>& planes) {
    std::vector<std::size_t> found;
    if (part.solid->faces.empty()) return std::nullopt;
    for (std::size_t i = 0; i < planes.size(); ++i) {
        const int side = side_of(part.solid->box, seen_from(part, planes[i]));
        if (side > 0) return std::nullopt;
        if (side == 0) found.push_back(i);
    }
    return found;
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

void add_clipped(Clipped& to, const solid::Placed& part, const std::vector<Plane>& planes) {
    const auto crossed = crossing(part, planes);
    if (!crossed) return;
    if (crossed->empty()) {
        to.placed.push_back(part);
        to.rims.emplace_back();
        return;
    }
    std::vector<solid::Face> caps;
    std::vector<std::pair<Point, Point>> rims;
    const solid::Solid* left = part.solid;
    solid::Solid solid;
    for (const std::size_t i : *crossed) {
        solid = clipped(*left, seen_from(part, planes[i]));
        left = &solid;
        const solid::View view = view_along(planes[i].normal);
        for (const solid::CutArea& area : solid::section({part}, view, planes[i].offset))
            for (solid::Face& cap : cap_of(part, area, view, planes[i].offset)) {
                for (const std::size_t j : *crossed) {
                    if (j == i) continue;
                    std::vector<std::vector<Point>> loops;
                    for (const auto& loop : cap.loops)
                        if (auto kept = clipped_ring(loop, seen_from(part, planes[j])); !kept.empty())
                            loops.push_back(std::move(kept));
                    cap.loops = std::move(loops);
                }
                if (cap.loops.empty()) continue;
                for (const auto& loop : cap.loops)
                    for (std::size_t k = 0; k < loop.size(); ++k)
                        rims.push_back(
                            {part.frame.out(loop[k]), part.frame.out(loop[(k + 1) % loop.size()])});
                caps.push_back(std::move(cap));
            }
    }
    const std::size_t without_caps = solid.faces.size();
    std::move(caps.begin(), caps.end(), std::back_inserter(solid.faces));
    add_rims(solid, without_caps);
    if (solid.faces.empty()) return;
    to.solids.push_back(std::move(solid));
    to.placed.push_back(part);
    to.placed.back().solid = &to.solids.back();
    to.rims.push_back(std::move(rims));
}

CutThrough cut_through(const std::vector<solid::Placed>& parts, const solid::View& view, double offset,
                       const Beyond& beyond) {
    CutThrough cut;
    cut.areas = solid::section(parts, view, offset);
    std::vector<Plane> planes{{view.towards, offset}};
    if (beyond.deep) planes.push_back({-view.towards, *beyond.deep - offset});
    if (beyond.window) {
        const Rect& w = *beyond.window;
        planes.push_back({view.right, w.right});
        planes.push_back({-view.right, -w.left});
        planes.push_back({view.up, w.top});
        planes.push_back({-view.up, -w.bottom});
    }
    std::deque<solid::Solid> solids;
    std::vector<solid::Placed> behind;
    auto area = cut.areas.begin();
    for (std::size_t p = 0; p < parts.size(); ++p) {
        while (area != cut.areas.end() && area->part < static_cast<int>(p)) ++area;
        const auto crossed = crossing(parts[p], planes);
        if (!crossed) continue;
        behind.push_back(parts[p]);
        if (crossed->empty()) continue;
        const solid::Solid* left = parts[p].solid;
        solid::Solid solid;
        for (const std::size_t i : *crossed) {
            solid = clipped(*left, seen_from(parts[p], planes[i]));
            left = &solid;
        }
        // The sides of the window and what lies deeper are never looked at: only the cut itself is closed.
        if (area != cut.areas.end() && area->part == static_cast<int>(p))
            for (solid::Face& cap : cap_of(parts[p], *area, view, offset))
                solid.faces.push_back(std::move(cap));
        solids.push_back(std::move(solid));
        behind.back().solid = &solids.back();
    }
    std::vector<Point2> points;
    for (const solid::Line2& line : solid::visible_lines(behind, view)) {
        cut.beyond.push_back(line.at);
        points.push_back(line.at.a), points.push_back(line.at.b);
    }
    for (const solid::CutArea& cut_area : cut.areas)
        for (const auto& ring : cut_area.rings) points.insert(points.end(), ring.begin(), ring.end());
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
