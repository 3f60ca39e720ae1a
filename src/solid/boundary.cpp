// Boundary by planes.
//
// The boundary can only lie where facets of the shapes lie. For each plane that holds facets, C is what they
// cover. Take the solid's section in C once just under the plane and once just over it: S = C and blank, less
// the tools. Where there is material under but none over, the solid has a face that looks up; the other way
// round, down. Since sections are one-sided, flush and shared faces need no special case.
//
// Most planes need little clipping: a blank that is a box holding C changes nothing, a tool that is a box
// holding C leaves nothing, and a face that cannot look down is not asked for.

#include "solid/boundary.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::solid {

using ClipperLib::Path;
using ClipperLib::Paths;
using measure::Vector;

namespace {

constexpr double thinnest_ring = 16.0; // grid steps: 0.1 µm

struct SourceFacet {
    Source source;
    const Shape* shape = nullptr;
    double area = 0;
    const Shape::Facet& facet() const { return shape->facets()[source.facet]; }
};

/// All facets in one plane.
struct PlaneGroup {
    GridPlane plane;
    std::vector<SourceFacet> facets;
    GridPoint low, high;
};

bool lies_in(const SourceFacet& entry, const GridPlane& plane) {
    for (const int side : entry.shape->sides(entry.facet()))
        if (std::abs(plane.height(entry.shape->start_of(side))) > on_plane_within) return false;
    return true;
}

/// Finds the plane among those already there in which a facet lies, without asking all of them.
///
/// A field of bores has thousands of planes, but their normals keep to a few directions. So planes are kept
/// by direction, and in each by offset: only those that pass close by the facet's first corner are asked.
class PlaneIndex {
  public:
    void add(int number, const GridPlane& plane) {
        Course* course = nullptr;
        for (Course& c : courses_)
            if (std::abs(plane.normal.x - c.normal.x) <= same_direction &&
                norm(plane.normal - c.normal) <= same_direction) {
                course = &c;
                break;
            }
        if (!course) course = &courses_.emplace_back(Course{plane.normal, 0, plane.offset, plane.offset, {}});
        course->spread = std::max(course->spread, norm(plane.normal - course->normal));
        course->low = std::min(course->low, plane.offset);
        course->high = std::max(course->high, plane.offset);
        const std::pair<double, int> entry{plane.offset, number};
        course->planes.insert(std::lower_bound(course->planes.begin(), course->planes.end(), entry), entry);
    }

    /// The first of the planes that were added in which it lies; -1 for none.
    int find(const SourceFacet& entry, const std::vector<PlaneGroup>& groups) const {
        const GridPoint p = entry.shape->start_of(entry.shape->sides(entry.facet()).front());
        const Vector at{static_cast<double>(p.x), static_cast<double>(p.y), static_cast<double>(p.z)};
        const double far = norm(at);
        int first = -1;
        for (const Course& course : courses_) {
            const double offset = dot(course.normal, at);
            const double reach = on_plane_within + 1 + course.spread * far;
            if (offset + reach < course.low || offset - reach > course.high) continue;
            auto plane = std::lower_bound(course.planes.begin(), course.planes.end(),
                                          std::pair<double, int>{offset - reach, -1});
            for (; plane != course.planes.end() && plane->first <= offset + reach; ++plane)
                if ((first < 0 || plane->second < first) &&
                    lies_in(entry, groups[static_cast<std::size_t>(plane->second)].plane))
                    first = plane->second;
        }
        return first;
    }

  private:
    /// Facets of like curves differ in direction by what the grid rounds off.
    static constexpr double same_direction = 3e-5;
    struct Course {
        Vector normal;
        double spread = 0;                          ///< greatest difference of a plane's normal from it
        double low = 0, high = 0;                   ///< least and greatest offset
        std::vector<std::pair<double, int>> planes; ///< offset and number, in this order
    };
    std::vector<Course> courses_;
};

bool apart(GridPoint low, GridPoint high, GridPoint other_low, GridPoint other_high) {
    constexpr std::int64_t slack = 32;
    for (int axis = 0; axis < 3; ++axis)
        if (low[axis] > other_high[axis] + slack || other_low[axis] > high[axis] + slack) return true;
    return false;
}

std::vector<PlaneGroup> planes_of(const std::vector<Cut>& cuts, const GridBox* limit) {
    std::vector<SourceFacet> entries;
    const auto collect = [&](int cut, int number, const Shape& shape) {
        for (std::size_t f = 0; f < shape.facets().size(); ++f) {
            const Shape::Facet& facet = shape.facets()[f];
            if (facet.area == 0) continue;
            if (limit && apart(facet.low, facet.high, limit->low, limit->high)) continue;
            entries.push_back({{cut, number, static_cast<int>(f)}, &shape, facet.area});
        }
    };
    for (std::size_t c = 0; c < cuts.size(); ++c) {
        const Cut& cut = cuts[c];
        collect(static_cast<int>(c), -1, *cut.blank);
        for (std::size_t t = 0; t < cut.tools.size(); ++t)
            if (!apart(cut.tools[t]->low(), cut.tools[t]->high(), cut.blank->low(), cut.blank->high()))
                collect(static_cast<int>(c), static_cast<int>(t), *cut.tools[t]);
    }
    // The largest facet fixes a plane best.
    std::stable_sort(entries.begin(), entries.end(),
                     [](const SourceFacet& a, const SourceFacet& b) { return a.area > b.area; });
    std::vector<PlaneGroup> groups;
    PlaneIndex index;
    for (const SourceFacet& entry : entries) {
        const int found = index.find(entry, groups);
        PlaneGroup* home = found < 0 ? nullptr : &groups[static_cast<std::size_t>(found)];
        const Shape::Facet& facet = entry.facet();
        if (!home) {
            groups.push_back({GridPlane::through(facet.normal, facet.offset), {}, facet.low, facet.high});
            home = &groups.back();
            index.add(static_cast<int>(groups.size()) - 1, home->plane);
        } else if (std::abs(dot(facet.normal, home->plane.normal)) < 0.5) {
            continue; // thinner than the tolerance, and across the plane: no face can come of it
        }
        home->facets.push_back(entry);
        for (int axis = 0; axis < 3; ++axis) {
            home->low[axis] = std::min(home->low[axis], facet.low[axis]);
            home->high[axis] = std::max(home->high[axis], facet.high[axis]);
        }
    }
    return groups;
}

/// One rectangle's worth of bounds on the plane.
struct Bounds {
    ClipperLib::cInt left, right, bottom, top;
};

Bounds bounds_of(const Path& path) {
    Bounds b{path[0].X, path[0].X, path[0].Y, path[0].Y};
    for (const auto& p : path) {
        b.left = std::min(b.left, p.X);
        b.right = std::max(b.right, p.X);
        b.bottom = std::min(b.bottom, p.Y);
        b.top = std::max(b.top, p.Y);
    }
    return b;
}

/// What a plane's facets cover, as non-overlapping rings.
Paths cover_of(const PlaneGroup& group) {
    Paths paths;
    for (const SourceFacet& entry : group.facets) {
        Path path = facet_on(*entry.shape, entry.source.facet, group.plane);
        if (std::find(paths.begin(), paths.end(), path) == paths.end()) paths.push_back(std::move(path));
    }
    if (paths.size() < 2) return paths;
    std::vector<Bounds> bounds;
    for (const Path& path : paths) bounds.push_back(bounds_of(path));
    for (std::size_t i = 0; i < paths.size(); ++i)
        for (std::size_t j = i + 1; j < paths.size(); ++j) {
            const Bounds &a = bounds[i], &b = bounds[j];
            if (a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top)
                return clipped(ClipperLib::ctUnion, paths, {});
        }
    return paths;
}

enum class Holds { all, none, some };

/// How a shape stands to a region of a plane, looked at from one side, as far as its box can tell.
Holds by_box(const Shape& shape, const GridPlane& plane, Side side, GridPoint low, GridPoint high) {
    if (plane.is_axis_plane()) {
        const double over = static_cast<double>(shape.high()[plane.dropped]) - plane.offset;
        const double under = static_cast<double>(shape.low()[plane.dropped]) - plane.offset;
        const double sink = side == Side::below ? -1 : 1;
        const auto outside = [&](double to_face, double outwards) {
            return std::abs(to_face) <= on_plane_within ? sink == outwards : to_face * outwards < 0;
        };
        if (outside(over, 1) || outside(under, -1)) return Holds::none;
    }
    if (!shape.is_axis_box()) return Holds::some;
    for (int axis = 0; axis < 3; ++axis) {
        if (plane.is_axis_plane() && axis == plane.dropped) continue;
        if (low[axis] < shape.low()[axis] || high[axis] > shape.high()[axis]) return Holds::some;
    }
    return Holds::all;
}

/// The cuts' common section on one side of a plane, within `cover`. `only`, if given, is the one shape whose
/// facets make up the cover, and the side is that on which it leaves material.
Paths section_on(const std::vector<Cut>& cuts, const GridPlane& plane, Side side, const Paths& cover,
                 GridPoint low, GridPoint high, const Shape* only, Slicer& slicer) {
    for (const Cut& cut : cuts) {
        if (by_box(*cut.blank, plane, side, low, high) == Holds::none) return {};
        for (const Shape* tool : cut.tools)
            if (by_box(*tool, plane, side, low, high) == Holds::all) return {};
    }
    Paths material = cover, rings;
    for (const Cut& cut : cuts) {
        if (cut.blank == only || by_box(*cut.blank, plane, side, low, high) == Holds::all) continue;
        rings.clear();
        if (!slicer.slice(*cut.blank, plane, side, rings)) return {};
        material = clipped(ClipperLib::ctIntersection, material, rings);
        if (material.empty()) return {};
    }
    rings.clear();
    // Facets of many like cuts may lie far apart in one plane (a field of bores): only tools at one of them
    // matter.
    std::vector<Bounds> at;
    for (const Path& path : material) at.push_back(bounds_of(path));
    const auto touches_cover = [&](const Shape& tool) {
        constexpr ClipperLib::cInt slack = 32;
        const GridPoint tool_low = tool.low(), tool_high = tool.high();
        return std::any_of(at.begin(), at.end(), [&](const Bounds& b) {
            return b.left <= tool_high[plane.across] + slack && tool_low[plane.across] <= b.right + slack &&
                   b.bottom <= tool_high[plane.up] + slack && tool_low[plane.up] <= b.top + slack;
        });
    };
    for (const Cut& cut : cuts)
        for (const Shape* tool : cut.tools) {
            if (tool == only || apart(low, high, tool->low(), tool->high()) || !touches_cover(*tool))
                continue;
            if (by_box(*tool, plane, side, low, high) == Holds::none) continue;
            slicer.slice(*tool, plane, side, rings);
        }
    if (rings.empty()) return material;
    return clipped(ClipperLib::ctDifference, material, rings);
}

} // namespace

Path facet_on(const Shape& shape, int facet, const GridPlane& plane) {
    const Shape::Facet& f = shape.facets()[facet];
    Path path;
    path.reserve(shape.sides(f).size());
    for (const int side : shape.sides(f)) {
        const GridPoint p = shape.start_of(side);
        const ClipperLib::IntPoint q(p[plane.across], p[plane.up]);
        if (path.empty() || path.back() != q) path.push_back(q);
    }
    if (dot(f.normal, plane.normal) < 0) std::reverse(path.begin(), path.end());
    // Always from the same corner, so that equal facets give equal paths.
    const auto first = std::min_element(path.begin(), path.end(), [](const auto& a, const auto& b) {
        return a.X != b.X ? a.X < b.X : a.Y < b.Y;
    });
    std::rotate(path.begin(), first, path.end());
    return path;
}

Paths clipped(ClipperLib::ClipType type, const Paths& subject, const Paths& clip) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(subject, ClipperLib::ptSubject, true);
    clipper.AddPaths(clip, ClipperLib::ptClip, true);
    Paths result;
    clipper.Execute(type, result, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    return result;
}

double ring_area(const Path& ring) {
    double twice = 0;
    for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
        const double ax = static_cast<double>(ring[i].X - ring[0].X),
                     ay = static_cast<double>(ring[i].Y - ring[0].Y);
        const double bx = static_cast<double>(ring[i + 1].X - ring[0].X);
        const double by = static_cast<double>(ring[i + 1].Y - ring[0].Y);
        twice += ax * by - ay * bx;
    }
    return twice / 2;
}

void drop_slivers(Paths& rings) {
    std::erase_if(rings, [](const Path& ring) {
        if (ring.size() < 3) return true;
        double round = 0;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const auto &a = ring[i], &b = ring[(i + 1) % ring.size()];
            round += std::hypot(static_cast<double>(b.X - a.X), static_cast<double>(b.Y - a.Y));
        }
        return 2 * std::abs(ring_area(ring)) < thinnest_ring * round;
    });
}

std::vector<Facing> boundary_of(const std::vector<Cut>& cuts, const GridBox* limit) {
    Slicer slicer;
    std::vector<Facing> facings;
    for (PlaneGroup& group : planes_of(cuts, limit)) {
        const GridPlane& plane = group.plane;
        // A blank's facet bounds material where it looks; a tool's facet the other way.
        Facing up{plane, true, {}, {}}, down{plane, false, {}, {}};
        for (const SourceFacet& entry : group.facets) {
            const bool facet_up = dot(entry.facet().normal, plane.normal) > 0;
            (facet_up == (entry.source.shape < 0) ? up : down).sources.push_back(entry.source);
        }
        Paths cover = cover_of(group);
        GridPoint low = group.low, high = group.high;
        if (limit) {
            bool inside = true;
            for (const int axis : {plane.across, plane.up}) {
                inside = inside && low[axis] >= limit->low[axis] && high[axis] <= limit->high[axis];
                low[axis] = std::max(low[axis], limit->low[axis]);
                high[axis] = std::min(high[axis], limit->high[axis]);
            }
            if (low[plane.across] >= high[plane.across] || low[plane.up] >= high[plane.up]) continue;
            if (!inside) {
                const Path frame{{low[plane.across], low[plane.up]},
                                 {high[plane.across], low[plane.up]},
                                 {high[plane.across], high[plane.up]},
                                 {low[plane.across], high[plane.up]}};
                cover = clipped(ClipperLib::ctIntersection, cover, {frame});
            }
        }
        if (cover.empty()) continue;
        // If all facets look one way, the side that they look to is empty. If all are one shape's, the other
        // side needs no section of that shape: just inside a blank's facet is blank, just outside a tool's is
        // no tool.
        Paths below, above;
        const bool both = !up.sources.empty() && !down.sources.empty();
        const Shape* only = both ? nullptr : group.facets[0].shape;
        for (const SourceFacet& entry : group.facets)
            if (entry.shape != only) only = nullptr;
        if (!up.sources.empty()) below = section_on(cuts, plane, Side::below, cover, low, high, only, slicer);
        if (!down.sources.empty())
            above = section_on(cuts, plane, Side::above, cover, low, high, only, slicer);
        const auto finish = [&](Facing& facing, const Paths& material, const Paths& other) {
            if (facing.sources.empty() || material.empty()) return;
            facing.rings = other.empty() ? material : clipped(ClipperLib::ctDifference, material, other);
            drop_slivers(facing.rings);
            if (!facing.rings.empty()) facings.push_back(std::move(facing));
        };
        finish(up, below, above);
        finish(down, above, below);
    }
    return facings;
}

} // namespace rayfleck::solid
