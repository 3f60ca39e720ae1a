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
    std::array<std::vector<double>, part_sides> along;
    std::array<bool, part_sides> has{};
    std::vector<double> width, thickness;

    void on(PartSide side, std::initializer_list<double> places) {
        auto& list = along[static_cast<std::size_t>(side)];
        list.insert(list.end(), places);
        has[static_cast<std::size_t>(side)] = true;
    }
};

/// On which ends of an axis a box of waste comes out of the blank.
struct Out {
    bool low = false, high = false;
    int count() const { return int(low) + int(high); }
};
Out out_of(const Box& cut, const Box& blank, int axis) {
    return {cut.low[axis] <= blank.low[axis] + same_place, cut.high[axis] >= blank.high[axis] - same_place};
}

void take(std::vector<double>& places, double low, double high) { places.insert(places.end(), {low, high}); }

/// The side that shows a cut best: the face before an edge, an edge before the back.
/// favoured  the edge taken where both show it
PartSide side_of(const Out& width, const Out& thickness, PartSide favoured) {
    if (thickness.high) return PartSide::face;
    if (width.low && width.high) return favoured;
    if (width.high) return PartSide::high_edge;
    if (width.low) return PartSide::low_edge;
    return thickness.low ? PartSide::back : PartSide::face;
}

/// round_a_tongue  waste that leaves a tenon standing, of which only all boxes together tell the shape
void take_box(const Box& cut, const Box& blank, PartSide favoured, bool round_a_tongue, Collected& all) {
    const Out length = out_of(cut, blank, 0), width = out_of(cut, blank, 1),
              thickness = out_of(cut, blank, 2);
    const int mouths = width.count() + thickness.count();
    if (length.count() < 2 && mouths > 0)
        all.on(side_of(width, thickness, favoured), {cut.low.x, cut.high.x});
    if (length.count() == 0) {
        // A notch through the thickness shows its depth on the face.
        if (thickness.count() == 2 && width.count() < 2) take(all.width, cut.low.y, cut.high.y);
        return;
    }
    // At an end a hollow with one mouth is told by its place along that mouth; its depth stands in its note.
    const bool hollow = mouths == 1 && length.count() == 1 && !round_a_tongue;
    if (!hollow || width.count() == 0) take(all.width, cut.low.y, cut.high.y);
    if (!hollow || thickness.count() == 0) take(all.thickness, cut.low.z, cut.high.z);
}

/// Where a plane crosses the twelve edges of the blank.
void take_plane(const solid::Plane& plane, const Box& blank, PartSide favoured, Collected& all) {
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
                    all.on(std::abs(n.y) >= std::abs(n.z) || square ? PartSide::face : favoured, {at});
                if (axis == 1) all.width.push_back(at);
                if (axis == 2) all.thickness.push_back(at);
            }
    }
}

void take_outline(const solid::Outline& outline, const solid::Frame& frame, double from, double to,
                  const Box& blank, PartSide favoured, Collected& all) {
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
        take_box(box, blank, favoured, false, all);
        return;
    }
    const PartSide side = side_of(out_of(box, blank, 1), out_of(box, blank, 2), favoured);
    for (const Point& p : corners) {
        all.on(side, {p.x});
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

/// Where the middle of a joint that leans lies on the part's surface: on the face or edge that is nearest.
void take_middle(const Point& at, const Box& blank, Collected& all) {
    const double away[] = {blank.high.z - at.z, at.z - blank.low.z, blank.high.y - at.y, at.y - blank.low.y};
    const auto nearest = std::min_element(std::begin(away), std::end(away), [](double a, double b) {
        return std::abs(a) < std::abs(b) - 1e-6;
    });
    const auto side = static_cast<PartSide>(nearest - std::begin(away));
    all.on(side, {at.x});
    if (side == PartSide::face || side == PartSide::back)
        all.width.push_back(at.y);
    else
        all.thickness.push_back(at.z);
}

void take_bore(const piece::BoreCut& bore, Collected& all) {
    if (bore.face.axis == 0) {
        all.width.push_back(bore.centre.y);
        all.thickness.push_back(bore.centre.z);
        return;
    }
    // A bore right through shows on the face side too.
    const PartSide side = bore.face.axis == 2
                              ? (bore.face.high || !bore.deep ? PartSide::face : PartSide::back)
                              : (bore.face.high ? PartSide::high_edge : PartSide::low_edge);
    all.on(side, {bore.centre.x});
}

} // namespace

bool is_waste_round_a_tongue(const std::string& word) {
    for (const char* known : {"cheek", "tongue", "lap", "end trim", "waste", "shoulder"})
        if (word.find(known) != std::string::npos) return true;
    return false;
}

piece::LocalSide side_seen(const Box& cut, const Box& blank, bool face_edge_high) {
    const Out length = out_of(cut, blank, 0), width = out_of(cut, blank, 1), thickness = out_of(cut, blank, 2);
    if (width.count() + thickness.count() == 0 && length.count() > 0) return {0, length.high};
    switch (side_of(width, thickness, face_edge_high ? PartSide::high_edge : PartSide::low_edge)) {
    case PartSide::high_edge:
        return {1, true};
    case PartSide::low_edge:
        return {1, false};
    case PartSide::back:
        return {2, false};
    case PartSide::face:
        break;
    }
    return {2, true};
}

std::optional<piece::LocalSide> mouth_of(const Box& cut, const Box& blank) {
    const Out width = out_of(cut, blank, 1), thickness = out_of(cut, blank, 2);
    if (width.count() + thickness.count() != 1 || out_of(cut, blank, 0).count() == 2) return std::nullopt;
    if (width.count() == 1) return piece::LocalSide{1, width.high};
    return piece::LocalSide{2, thickness.high};
}

Borders borders_of(const joinery::Model& model, int part, double step) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(part)];
    const PartSide favoured = made.part->face_edge_high ? PartSide::high_edge : PartSide::low_edge;
    Collected all;
    std::vector<int> leaning; // joints whose middle has been taken
    for (const piece::Cut& cut : made.cuts) {
        if (told_by_notes(cut.word)) continue;
        if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape))
            take_box(box->box, made.blank, favoured, is_waste_round_a_tongue(cut.word), all);
        if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape))
            take_plane(plane->plane, made.blank, favoured, all);
        if (const auto* prism = std::get_if<piece::PrismCut>(&cut.shape)) {
            if (cut.joint < 0 || is_square(prism->frame)) {
                take_outline(prism->outline, prism->frame, prism->from, prism->to, made.blank, favoured, all);
            } else if (model.joints[static_cast<std::size_t>(cut.joint)].b == part &&
                       std::find(leaning.begin(), leaning.end(), cut.joint) == leaning.end()) {
                leaning.push_back(cut.joint);
                take_middle(made.part->frame.in(model.joints[static_cast<std::size_t>(cut.joint)].at),
                            made.blank, all);
            }
        }
        if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape)) take_bore(*bore, all);
    }
    if (made.part->outline)
        take_outline(*made.part->outline, {}, made.blank.low.z, made.blank.high.z, made.blank, favoured, all);
    const Box& box = made.solid.box;
    Borders borders;
    borders.has = all.has;
    std::vector<double> told;
    for (std::size_t side :
         {std::size_t(PartSide::face), std::size_t(favoured), std::size_t(PartSide::high_edge),
          std::size_t(PartSide::low_edge), std::size_t(PartSide::back)}) {
        if (!borders.along[side].empty()) continue; // the favoured edge comes twice
        std::vector<double> places = tidy(all.along[side], box.low.x, box.high.x, step);
        std::erase_if(places, [&](double x) {
            return std::any_of(told.begin(), told.end(), [&](double t) { return std::abs(t - x) < step; });
        });
        told.insert(told.end(), places.begin(), places.end());
        borders.along[side] = std::move(places);
    }
    borders.width = tidy(all.width, box.low.y, box.high.y, step);
    borders.thickness = tidy(all.thickness, box.low.z, box.high.z, step);
    return borders;
}

} // namespace rayfleck::drawing
