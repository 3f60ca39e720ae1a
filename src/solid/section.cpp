// Sections: what a saw through the piece would show.
//
// The plane is carried into each part's frame and cuts blank and tools one-sidedly, on the side that stays
// when the eye's side is taken away; one polygon difference gives the cut area. So a plane lying exactly in a
// face shows that face if the part lies behind the plane, and nothing if it lies before it.

#include <cmath>

#include "solid/boundary.hpp"
#include "solid/snap.hpp"
#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

using ClipperLib::Paths;

bool plane_meets(const Box& box, Vector normal, double offset) {
    const Point middle = (box.low + box.high) * 0.5, half = (box.high - box.low) * 0.5;
    const double reach =
        std::abs(normal.x) * half.x + std::abs(normal.y) * half.y + std::abs(normal.z) * half.z;
    return std::abs(dot(normal, middle) - offset) <= reach + 0.001;
}

} // namespace

std::vector<CutArea> section(const std::vector<Placed>& parts, const View& view, double offset) {
    std::vector<CutArea> areas;
    Slicer slicer;
    for (std::size_t p = 0; p < parts.size(); ++p) {
        const Placed& part = parts[p];
        const Vector normal = part.frame.turn_in(view.towards);
        const double at = offset - dot(view.towards, part.frame.origin);
        if (part.solid->faces.empty() || !plane_meets(part.solid->box, normal, at)) continue;
        const GridPlane plane = GridPlane::through(normal, at * grid_steps_per_mm);
        const bool turned_over = dot(plane.normal, normal) < 0;
        const Side side = turned_over ? Side::above : Side::below;

        const Snapped common(*part.blank, *part.tools);
        Paths material, taken;
        if (!slicer.slice(*common.cut().blank, plane, side, material)) continue;
        for (const Shape* tool : common.cut().tools) slicer.slice(*tool, plane, side, taken);
        // Through the clipper in any case: it lets holes be told from rims.
        material = clipped(ClipperLib::ctDifference, material, taken);
        drop_slivers(material);
        if (material.empty()) continue;

        CutArea area;
        area.part = static_cast<int>(p);
        for (const ClipperLib::Path& path : material) {
            area.area += ring_area(path);
            std::vector<Point2> ring;
            for (const auto& q : path) {
                const Point in_part = plane.lifted(static_cast<double>(q.X), static_cast<double>(q.Y)) *
                                      (1 / grid_steps_per_mm);
                const Point in_piece = part.frame.out(in_part);
                ring.push_back({dot(view.right, in_piece), dot(view.up, in_piece)});
            }
            if (turned_over) ring = {ring.rbegin(), ring.rend()};
            area.rings.push_back(std::move(ring));
        }
        area.area /= plane.normal[plane.dropped] * grid_steps_per_mm * grid_steps_per_mm;
        areas.push_back(std::move(area));
    }
    return areas;
}

} // namespace rayfleck::solid
