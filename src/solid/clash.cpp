// Clashes: space that two parts both take up.
//
// Pairs come from a sweep over the parts' boxes. The second part's shapes are carried into the first one's
// frame, and the boundary of what both have in common is found plane by plane as in carving, only near the
// overlap of the two boxes. Volume and surface come from that boundary; a clash whose mean thickness 2 V / S
// is under 0.02 mm is what facets of round parts in round holes leave, and is not reported.
//
// Left out: no coaxial cylinders by formula; facets out of phase stay far under that thickness.

#include <algorithm>
#include <cmath>
#include <memory>

#include "solid/boundary.hpp"
#include "solid/box_round.hpp"
#include "solid/snap.hpp"
#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

constexpr double thinnest_clash = 0.02; // mm, mean thickness

Frame from_b_to_a(const Frame& a, const Frame& b) {
    return {a.in(b.origin), a.turn_in(b.x), a.turn_in(b.y), a.turn_in(b.z)};
}

/// The common box, or nothing when the boxes share less than a skin.
std::optional<Box> shared(const Box& a, const Box& b) {
    Box box;
    for (int axis = 0; axis < 3; ++axis) {
        box.low[axis] = std::max(a.low[axis], b.low[axis]);
        box.high[axis] = std::min(a.high[axis], b.high[axis]);
        if (box.high[axis] - box.low[axis] < thinnest_clash / 2) return std::nullopt;
    }
    return box;
}

bool holds(const Shape& tool, const GridBox& box) {
    if (!tool.is_axis_box()) return false;
    for (int axis = 0; axis < 3; ++axis)
        if (box.low[axis] < tool.low()[axis] || box.high[axis] > tool.high()[axis]) return false;
    return true;
}

bool meets(const GridBox& a, const GridBox& b) {
    for (int axis = 0; axis < 3; ++axis)
        if (b.low[axis] > a.high[axis] || b.high[axis] < a.low[axis]) return false;
    return true;
}

/// A part on common coordinates, made when the first pair asks for it.
class Prepared {
  public:
    explicit Prepared(const std::vector<Placed>& parts) : parts_(parts), ready_(parts.size()) {}
    const Cut& of(std::size_t i) {
        if (!ready_[i]) ready_[i] = std::make_unique<Snapped>(*parts_[i].blank, *parts_[i].tools);
        return ready_[i]->cut();
    }

  private:
    const std::vector<Placed>& parts_;
    std::vector<std::unique_ptr<Snapped>> ready_;
};

std::optional<Clash> clash_of(const std::vector<Placed>& parts, std::size_t a, std::size_t b,
                              Prepared& prepared) {
    const Placed &first = parts[a], &second = parts[b];
    const Frame b_to_a = from_b_to_a(first.frame, second.frame);
    const Frame a_to_b = from_b_to_a(second.frame, first.frame);
    // Two boxes may be apart along the axes of either part.
    const std::optional<Box> overlap = shared(first.solid->box, box_round(second.solid->box, b_to_a));
    if (!overlap || !shared(second.solid->box, box_round(first.solid->box, a_to_b))) return std::nullopt;
    const GridBox limit{to_grid(overlap->low), to_grid(overlap->high)};

    Cut cut_a{prepared.of(a).blank, {}};
    for (const Shape* tool : prepared.of(a).tools) {
        if (holds(*tool, limit)) return std::nullopt;
        if (meets({tool->low(), tool->high()}, limit)) cut_a.tools.push_back(tool);
    }
    const Cut& other = prepared.of(b);
    const Shape blank_b = other.blank->carried_out(b_to_a);
    std::vector<Shape> tools_b;
    for (const Shape* tool : other.tools) {
        // Its box, carried, says whether the shape need be.
        const Box box = box_round(tool->bounds(), b_to_a);
        if (!meets({to_grid(box.low), to_grid(box.high)}, limit)) continue;
        Shape moved = tool->carried_out(b_to_a);
        if (holds(moved, limit)) return std::nullopt;
        if (meets({moved.low(), moved.high()}, limit)) tools_b.push_back(std::move(moved));
    }
    Cut cut_b{&blank_b, {}};
    for (const Shape& tool : tools_b) cut_b.tools.push_back(&tool);

    Clash clash;
    clash.a = static_cast<int>(a);
    clash.b = static_cast<int>(b);
    const Point middle = (overlap->low + overlap->high) * 0.5;
    double surface = 0;
    bool any = false;
    for (const Facing& facing : boundary_of({cut_a, cut_b}, &limit)) {
        double area = 0;
        for (const ClipperLib::Path& ring : facing.rings) {
            area += ring_area(ring);
            for (const auto& q : ring) {
                const Point in_a = facing.plane.lifted(static_cast<double>(q.X), static_cast<double>(q.Y)) *
                                   (1 / grid_steps_per_mm);
                const Point p = first.frame.out(in_a);
                if (!any) clash.box = {p, p};
                any = true;
                for (int axis = 0; axis < 3; ++axis) {
                    clash.box.low[axis] = std::min(clash.box.low[axis], p[axis]);
                    clash.box.high[axis] = std::max(clash.box.high[axis], p[axis]);
                }
            }
        }
        area /= facing.plane.normal[facing.plane.dropped] * grid_steps_per_mm * grid_steps_per_mm;
        const double distance = facing.plane.offset / grid_steps_per_mm - dot(facing.plane.normal, middle);
        clash.volume += (facing.looks_up ? distance : -distance) * area / 3;
        surface += area;
    }
    if (!(surface > 0)) return std::nullopt;
    clash.mean_thickness = 2 * clash.volume / surface;
    if (!(clash.mean_thickness > thinnest_clash)) return std::nullopt;
    return clash;
}

} // namespace

std::vector<Clash> clashes(const std::vector<Placed>& parts) {
    struct Extent {
        Box box;
        std::size_t part;
    };
    std::vector<Extent> extents;
    for (std::size_t p = 0; p < parts.size(); ++p)
        if (!parts[p].solid->faces.empty())
            extents.push_back({box_round(parts[p].solid->box, parts[p].frame), p});
    std::sort(extents.begin(), extents.end(), [](const Extent& a, const Extent& b) {
        return a.box.low.x != b.box.low.x ? a.box.low.x < b.box.low.x : a.part < b.part;
    });
    Prepared prepared(parts);
    std::vector<Clash> found;
    for (std::size_t i = 0; i < extents.size(); ++i)
        for (std::size_t j = i + 1; j < extents.size() && extents[j].box.low.x < extents[i].box.high.x; ++j) {
            if (!shared(extents[i].box, extents[j].box)) continue;
            const std::size_t a = std::min(extents[i].part, extents[j].part);
            const std::size_t b = std::max(extents[i].part, extents[j].part);
            if (const std::optional<Clash> clash = clash_of(parts, a, b, prepared)) found.push_back(*clash);
        }
    std::sort(found.begin(), found.end(),
              [](const Clash& x, const Clash& y) { return x.a != y.a ? x.a < y.a : x.b < y.b; });
    return found;
}

} // namespace rayfleck::solid
