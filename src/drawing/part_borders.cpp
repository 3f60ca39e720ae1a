// See part_borders.hpp.

#include "drawing/part_borders.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::Point;
using measure::Vector;

constexpr double same_place = 0.02; // mm

/// Cuts that notes tell better than a chain of figures.
bool told_by_notes(const std::string& word) {
    for (const char* part : {"tail", "pin", "finger", "key", "spline", "thread"})
        if (word.find(part) != std::string::npos) return true;
    return false;
}

struct Collected {
    std::vector<double> on_face, on_edge, width, thickness;
};

/// What opens on the ends of the part is told in all directions; what opens on a face by its place along and
/// across that face, what opens on an edge by its place along and across the edge. How deep it goes stands in
/// the notes.
void take_box(const Box& cut, const Box& blank, Collected& all) {
    const auto opens = [&](int axis) {
        return cut.low[axis] <= blank.low[axis] + same_place ||
               cut.high[axis] >= blank.high[axis] - same_place;
    };
    const bool on_end = opens(0), on_face = opens(2), on_edge = opens(1);
    const auto take = [](std::vector<double>& places, double low, double high) {
        places.insert(places.end(), {low, high});
    };
    take(on_end || on_face || !on_edge ? all.on_face : all.on_edge, cut.low.x, cut.high.x);
    if (on_end || on_face || !on_edge) take(all.width, cut.low.y, cut.high.y);
    if (on_end || !on_face) take(all.thickness, cut.low.z, cut.high.z);
}

/// Where a plane crosses the twelve edges of the blank.
void take_plane(const solid::Plane& plane, const Box& blank, Collected& all) {
    const Vector n = plane.normal;
    // An end cut at an angle is told by its saw setting.
    if (std::abs(n.x) > 0.9 && std::abs(n.x) < 1 - 1e-9) return;
    const bool square = std::max({std::abs(n.x), std::abs(n.y), std::abs(n.z)}) > 1 - 1e-9;
    for (int axis = 0; axis < 3; ++axis) {
        if (std::abs(n[axis]) < 1e-9) continue;
        const int u = (axis + 1) % 3, v = (axis + 2) % 3;
        for (const bool hu : {false, true})
            for (const bool hv : {false, true}) {
                Point p;
                p[u] = hu ? blank.high[u] : blank.low[u];
                p[v] = hv ? blank.high[v] : blank.low[v];
                p[axis] = 0;
                const double at = (plane.offset - dot(n, p)) / n[axis];
                if (at < blank.low[axis] + same_place || at > blank.high[axis] - same_place) continue;
                if (axis == 0)
                    (std::abs(n.y) >= std::abs(n.z) || square ? all.on_face : all.on_edge).push_back(at);
                if (axis == 1) all.width.push_back(at);
                if (axis == 2) all.thickness.push_back(at);
            }
    }
}

void take_outline(const solid::Outline& outline, const solid::Frame& frame, double from, double to,
                  const Box& blank, Collected& all) {
    // Few corners are worth a figure each; of a curve only its outermost places are.
    std::vector<Point> corners;
    const bool curved = outline.edges.size() > 8 || !outline.smooth.empty();
    solid::Point2 at = outline.start;
    for (const solid::Edge2& edge : outline.edges) {
        for (const double z : {from, to}) corners.push_back(frame.out({at.x, at.y, z}));
        at = edge.to;
    }
    Box box{corners.front(), corners.front()};
    for (const Point& p : corners)
        for (int axis = 0; axis < 3; ++axis) {
            box.low[axis] = std::min(box.low[axis], p[axis]);
            box.high[axis] = std::max(box.high[axis], p[axis]);
        }
    if (curved) {
        take_box(box, blank, all);
        return;
    }
    const bool on_face = box.low.z <= blank.low.z + same_place || box.high.z >= blank.high.z - same_place;
    for (const Point& p : corners) {
        (on_face ? all.on_face : all.on_edge).push_back(p.x);
        all.width.push_back(p.y);
        all.thickness.push_back(p.z);
    }
}

std::vector<double> tidy(std::vector<double> places, double low, double high, double step) {
    std::sort(places.begin(), places.end());
    std::vector<double> kept;
    for (const double p : places)
        if (p > low + step && p < high - step && (kept.empty() || p > kept.back() + step)) kept.push_back(p);
    return kept;
}

bool is_square(const solid::Frame& frame) {
    for (const Vector axis : {frame.x, frame.y, frame.z})
        if (std::max({std::abs(axis.x), std::abs(axis.y), std::abs(axis.z)}) < 1 - 1e-6) return false;
    return true;
}

/// Where the middle of a joint that leans lies on the part's surface: on a face or on an edge, whichever is
/// nearer.
void take_middle(const Point& at, const Box& blank, Collected& all) {
    const double to_face = std::min(std::abs(at.z - blank.low.z), std::abs(blank.high.z - at.z));
    const double to_edge = std::min(std::abs(at.y - blank.low.y), std::abs(blank.high.y - at.y));
    if (to_face <= to_edge) {
        all.on_face.push_back(at.x);
        all.width.push_back(at.y);
    } else {
        all.on_edge.push_back(at.x);
        all.thickness.push_back(at.z);
    }
}

} // namespace

Borders borders_of(const joinery::Model& model, int part, double step) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(part)];
    Collected all;
    std::vector<int> leaning; // joints whose middle has been taken
    for (const piece::Cut& cut : made.cuts) {
        if (told_by_notes(cut.word)) continue;
        if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape)) take_box(box->box, made.blank, all);
        if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape))
            take_plane(plane->plane, made.blank, all);
        if (const auto* prism = std::get_if<piece::PrismCut>(&cut.shape)) {
            if (cut.joint < 0 || is_square(prism->frame)) {
                take_outline(prism->outline, prism->frame, prism->from, prism->to, made.blank, all);
            } else if (model.joints[static_cast<std::size_t>(cut.joint)].b == part &&
                       std::find(leaning.begin(), leaning.end(), cut.joint) == leaning.end()) {
                leaning.push_back(cut.joint);
                take_middle(made.part->frame.in(model.joints[static_cast<std::size_t>(cut.joint)].at),
                            made.blank, all);
            }
        }
        if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape)) {
            if (bore->face.axis != 0)
                (bore->face.axis == 2 ? all.on_face : all.on_edge).push_back(bore->centre.x);
            if (bore->face.axis != 1) all.width.push_back(bore->centre.y);
            if (bore->face.axis != 2) all.thickness.push_back(bore->centre.z);
        }
    }
    if (made.part->outline)
        take_outline(*made.part->outline, {}, made.blank.low.z, made.blank.high.z, made.blank, all);
    const Box& box = made.solid.box;
    Borders borders;
    borders.length_on_face = tidy(all.on_face, box.low.x, box.high.x, step);
    borders.length_on_edge = tidy(all.on_edge, box.low.x, box.high.x, step);
    // What the face view tells of the length, the edge view need not tell again.
    std::erase_if(borders.length_on_edge, [&](double x) {
        return std::any_of(borders.length_on_face.begin(), borders.length_on_face.end(),
                           [&](double f) { return std::abs(f - x) < step; });
    });
    borders.width = tidy(all.width, box.low.y, box.high.y, step);
    borders.thickness = tidy(all.thickness, box.low.z, box.high.z, step);
    return borders;
}

} // namespace rayfleck::drawing
