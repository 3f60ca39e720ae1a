// An outline wants a template when it is curved, turned, or drawn with more than four corners. Straight
// tapers and mitres are laid out quicker with a rule, from the part drawing. Joints are none of it: dovetails
// and mortises are marked from their own dimensions.
//
// Paper is spared in three ways. A turned part gives half its profile, above the centre line. An outline that
// is the same on both sides of its middle gives one half. Where nothing bends for a long way, the outline is
// broken, and only what is shaped is drawn, with a little of the straight beside it. All of these thresholds
// are our own choice.

#include "drawing/template_shape.hpp"

#include <algorithm>
#include <cmath>

#include "solid/silhouette.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;

/// A straight run longer than this is broken; this much of it stays beside the shaped part, mm.
constexpr double long_straight = 160, stays = 30;
/// Two halves that differ by less than this are the same, mm; a pencil line is wider.
constexpr double same_half = 0.05;
/// Of a turned part a joint may have nicked one side by this much; the profile is told by the other, mm.
constexpr double nicked = 1;
/// Halves are drawn of what is longer or wider than this, mm; smaller outlines fit a sheet whole.
constexpr double whole_length = 180, whole_width = 150;

solid::View view_of(Shaped::Seen seen) {
    switch (seen) {
    case Shaped::Seen::on_edge:
        return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
    case Shaped::Seen::on_end:
        return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    case Shaped::Seen::on_face:
        break;
    }
    return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
}

bool is_curved(const solid::Outline& outline) {
    return std::any_of(outline.edges.begin(), outline.edges.end(),
                       [](const solid::Edge2& e) { return e.centre.has_value(); }) ||
           std::any_of(outline.smooth.begin(), outline.smooth.end(), [](int run) { return run > 0; });
}

/// Corners at which the outline turns, and whether any side of it slants.
bool is_many_cornered(const solid::Outline& outline) {
    int corners = 0;
    bool slants = false;
    Point2 from = outline.start;
    std::optional<Point2> before;
    for (std::size_t i = 0; i <= outline.edges.size(); ++i) {
        const Point2 to = outline.edges[i % outline.edges.size()].to;
        const Point2 d{to.x - from.x, to.y - from.y};
        const double length = std::hypot(d.x, d.y);
        if (length < 1e-6) continue;
        const Point2 unit{d.x / length, d.y / length};
        if (before && std::abs(before->x * unit.y - before->y * unit.x) > 1e-4) ++corners;
        slants = slants || (std::abs(unit.x) > 1e-4 && std::abs(unit.y) > 1e-4);
        before = unit;
        from = to;
    }
    return corners > 4 && slants;
}

std::optional<Shaped::Seen> seen_along(solid::Vector axis) {
    if (std::abs(axis.z) > 0.999) return Shaped::Seen::on_face;
    if (std::abs(axis.y) > 0.999) return Shaped::Seen::on_edge;
    if (std::abs(axis.x) > 0.999) return Shaped::Seen::on_end;
    return std::nullopt;
}

double away_from(const std::vector<std::vector<Point2>>& rings, Point2 p) {
    double least = 1e9;
    for (const auto& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
            const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
            const double t =
                square < 1e-18 ? 0 : std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0);
            least = std::min(least, std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
        }
    return least;
}

/// Mirrored about the middle of its box it falls on itself.
bool is_same_mirrored(const Shaped& shaped, bool along, double within = same_half) {
    for (const auto& ring : shaped.rings)
        for (const Point2 p : ring) {
            const Point2 q = along ? Point2{shaped.box.left + shaped.box.right - p.x, p.y}
                                   : Point2{p.x, shaped.box.bottom + shaped.box.top - p.y};
            if (away_from(shaped.rings, q) > within) return false;
        }
    return true;
}

/// A stretch without corners may be left out. Of a turned part only what is level is: the sides of a slow
/// curve may be as long as that.
bool is_plain(const Shaped& shaped, double from, double to) {
    if (!shaped.turned) return true;
    const auto a = reach_at(shaped, from + 0.01), b = reach_at(shaped, to - 0.01);
    return a && b && std::abs(a->second - b->second) < 0.01;
}

void lay_fields(Shaped& shaped) {
    Rect all = shaped.box;
    if (shaped.half_length) all.right = all.middle().x;
    if (shaped.half_width) all.bottom = all.middle().y;
    // Nothing bends between two corners that follow one another along the length.
    std::vector<double> corners{all.left, all.right};
    for (const auto& ring : shaped.rings)
        for (const Point2 p : ring)
            if (p.x > all.left && p.x < all.right) corners.push_back(p.x);
    std::sort(corners.begin(), corners.end());
    TemplateField field{all, false, false};
    bool anything = false;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
        const double from = corners[i], to = corners[i + 1];
        if (to - from < long_straight || !is_plain(shaped, from, to)) {
            anything = anything || to - from > 1e-6;
            continue;
        }
        // Straight from the very end, or up to it: what stands before the break is the end itself.
        if (anything) {
            field.area.right = from + stays, field.broken_high = true;
            shaped.fields.push_back(field);
        }
        field = {all, true, false};
        field.area.left = to - stays;
        anything = false;
    }
    if (anything) shaped.fields.push_back(field);
    // Straight all along, as a plain octagon may be: whole.
    if (shaped.fields.empty()) shaped.fields.push_back({all, false, false});
}

void find_holes(Shaped& shaped, const Made& made) {
    const int axis = shaped.seen == Shaped::Seen::on_face ? 2 : shaped.seen == Shaped::Seen::on_edge ? 1 : 0;
    for (const piece::Cut& cut : made.cuts)
        if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape))
            if (bore->face.axis == axis && !bore->direction)
                shaped.holes.push_back(
                    {{dot(shaped.view.right, bore->centre), dot(shaped.view.up, bore->centre)},
                     bore->diameter});
}

} // namespace

std::vector<Shaped> shaped_outlines(const Made& made) {
    bool wanted[3] = {false, false, false}, turned = false;
    const auto want = [&](Shaped::Seen seen) { wanted[static_cast<int>(seen)] = true; };
    if (made.part->outline && (is_curved(*made.part->outline) || is_many_cornered(*made.part->outline)))
        want(Shaped::Seen::on_face);
    for (const piece::Cut& cut : made.cuts) {
        if (std::holds_alternative<piece::TurnedCut>(cut.shape)) turned = true;
        if (cut.joint >= 0) continue;
        if (const auto* prism = std::get_if<piece::PrismCut>(&cut.shape))
            if (const auto seen = seen_along(prism->frame.z); seen && is_curved(prism->outline)) want(*seen);
    }
    if (turned) want(Shaped::Seen::on_face);
    std::vector<Shaped> all;
    if (made.solid.faces.empty()) return all;
    for (const Shaped::Seen seen : {Shaped::Seen::on_face, Shaped::Seen::on_edge, Shaped::Seen::on_end}) {
        if (!wanted[static_cast<int>(seen)]) continue;
        Shaped shaped;
        shaped.seen = seen;
        shaped.view = view_of(seen);
        shaped.rings = solid::silhouette(made.solid, shaped.view);
        if (shaped.rings.empty()) continue;
        std::vector<Point2> points;
        for (const auto& ring : shaped.rings) points.insert(points.end(), ring.begin(), ring.end());
        shaped.box = around(points);
        shaped.turned = turned && seen == Shaped::Seen::on_face;
        shaped.half_length = shaped.box.width() > whole_length && is_same_mirrored(shaped, true);
        shaped.half_width = shaped.turned
                                ? is_same_mirrored(shaped, false, nicked)
                                : shaped.box.height() > whole_width && is_same_mirrored(shaped, false);
        find_holes(shaped, made);
        lay_fields(shaped);
        all.push_back(std::move(shaped));
    }
    return all;
}

bool in_wood(const Shaped& shaped, Point2 p) {
    bool inside = false;
    for (const auto& ring : shaped.rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
            if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
                inside = !inside;
        }
    return inside;
}

std::optional<std::pair<double, double>> reach_at(const Shaped& shaped, double x) {
    std::optional<std::pair<double, double>> reach;
    const auto meets = [&](double y) {
        if (!reach) reach = {y, y};
        reach->first = std::min(reach->first, y), reach->second = std::max(reach->second, y);
    };
    for (const auto& ring : shaped.rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
            if (std::min(a.x, b.x) > x + 1e-9 || std::max(a.x, b.x) < x - 1e-9) continue;
            if (std::abs(b.x - a.x) < 1e-9)
                meets(a.y), meets(b.y);
            else
                meets(a.y + std::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0) * (b.y - a.y));
        }
    return reach;
}

} // namespace rayfleck::drawing
