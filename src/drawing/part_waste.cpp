// Each sort of cut gives its waste as an area in the plane of the length and one direction across; a blank
// sawn to an outline gives its whole face less the outline. The area is filled by lines at 45° (even-odd over
// its rings), each left out where it would touch a text.

#include "drawing/part_waste.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace rayfleck::drawing {
namespace {

constexpr double spacing = 3.5;     ///< mm between hatch lines
constexpr double least_waste = 3.0; ///< mm on paper, either way; less is left white
constexpr double on_border = 0.01;  ///< mm of wood

/// An area in the gauge's frame: x along the length, y along `axis`.
struct Area {
    int axis = 1;
    std::vector<std::vector<Point2>> rings;
};

double one(const CutRecord& record, const std::string& what, double otherwise = 0) {
    const auto values = values_of(record, what);
    return values.empty() ? otherwise : values.front();
}

std::vector<Point2> flattened_ring(const std::vector<CutPoint>& points, Point2 by) {
    std::vector<Point2> ring;
    Point2 before{points.back().x, points.back().y};
    for (const CutPoint& p : points) {
        if (p.arc) {
            const double r = std::hypot(p.x - p.centre_x, p.y - p.centre_y);
            const double from = std::atan2(before.y - p.centre_y, before.x - p.centre_x);
            double turn = std::atan2(p.y - p.centre_y, p.x - p.centre_x) - from;
            if (p.anticlockwise && turn <= 1e-9) turn += 2 * std::numbers::pi;
            if (!p.anticlockwise && turn >= -1e-9) turn -= 2 * std::numbers::pi;
            constexpr int steps = 24;
            for (int i = 1; i < steps; ++i)
                ring.push_back({p.centre_x + r * std::cos(from + turn * i / steps) + by.x,
                                p.centre_y + r * std::sin(from + turn * i / steps) + by.y});
        }
        ring.push_back({p.x + by.x, p.y + by.y});
        before = {p.x, p.y};
    }
    return ring;
}

std::vector<Area> areas_of(const Feature& feature, const GaugeFrame& gauge) {
    const CutRecord& record = feature.record;
    const double length = gauge.size(0);
    switch (record.form) {
    case CutForm::rip: {
        const double border = record.far ? gauge.size(record.axis) : 0, first = one(record, "first");
        const double x1 = one(record, "first x"), x2 = one(record, "second x", length);
        const double second = one(record, "second", first);
        return {{record.axis, {{{x1, first}, {x2, second}, {x2, border}, {x1, border}}}}};
    }
    case CutForm::saw: {
        std::vector<Area> areas;
        const double end = record.far ? length : 0, x = one(record, place_names[0]);
        const double miter = one(record, "miter") * std::numbers::pi / 180,
                     bevel = one(record, "bevel") * std::numbers::pi / 180;
        for (const auto& [axis, slope] :
             {std::pair{1, std::tan(miter)}, {2, std::tan(bevel) / std::cos(miter)}}) {
            if (std::abs(slope) < 1e-6) continue;
            const double size = gauge.size(axis);
            const bool from_far = record.arrises[static_cast<std::size_t>(axis - 1)] == side_name(axis, true);
            const double reference = from_far ? size : 0, other = from_far ? 0 : size;
            areas.push_back({axis,
                             {{{x, reference},
                               {x - (other - reference) * slope, other},
                               {end, other},
                               {end, reference}}}});
        }
        return areas;
    }
    case CutForm::prism:
        if (record.axis != 2 || record.word != "curve" || feature.places.empty()) return {};
        return {
            {1, {flattened_ring(record.points, {one(record, place_names[0]), one(record, place_names[1])})}}};
    case CutForm::hollow:
        if (record.word != "notch") return {};
        {
            std::vector<Area> areas;
            for (const measure::Box& box : feature.places)
                areas.push_back({1,
                                 {{{box.low.x, box.low.y},
                                   {box.high.x, box.low.y},
                                   {box.high.x, box.high.y},
                                   {box.low.x, box.high.y}}}});
            return areas;
        }
    case CutForm::blank:
        if (record.points.empty()) return {};
        return {{1,
                 {flattened_ring(record.points, {}),
                  {{0, 0}, {length, 0}, {length, gauge.size(1)}, {0, gauge.size(1)}}}}};
    default:
        return {};
    }
}

/// Hatch lines at 45° over the rings, even-odd.
void hatch(Block& block, const std::vector<std::vector<Point2>>& rings) {
    const double half = std::sqrt(0.5);
    double low = 1e9, high = -1e9;
    const auto level = [&](Point2 p) { return (p.y - p.x) * half; };
    for (const auto& ring : rings)
        for (const Point2 p : ring) low = std::min(low, level(p)), high = std::max(high, level(p));
    for (double at = std::ceil(low / spacing) * spacing + spacing / 2; at < high; at += spacing) {
        std::vector<Point2> crossings;
        for (const auto& ring : rings)
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
                const double ha = level(a) - at, hb = level(b) - at;
                if ((ha < 0) == (hb < 0)) continue;
                const double t = ha / (ha - hb);
                crossings.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
            }
        std::sort(crossings.begin(), crossings.end(), [](Point2 a, Point2 b) { return a.x < b.x; });
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
            // Clear of the outlines, which it would thicken.
            const double inset = 0.4;
            const Point2 a{crossings[i].x + inset, crossings[i].y + inset},
                b{crossings[i + 1].x - inset, crossings[i + 1].y - inset};
            if (b.x - a.x > 0.5 && block.occupied().free_for_line(a, b, 0.5))
                block.line(a, b, Pen::thin, Role::hatch);
        }
    }
}

const ViewOnPaper* view_across(const std::vector<ViewOnPaper>& views, int axis) {
    // The face shows length and width; an edge shows length and thickness.
    for (const ViewOnPaper& view : views)
        if (axis == 1 ? view.side == piece::LocalSide{2, true} : view.side.axis == 1) return &view;
    return nullptr;
}

} // namespace

void hatch_waste(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features) {
    for (const Feature& feature : features)
        for (const Area& area : areas_of(feature, gauge)) {
            const ViewOnPaper* view = view_across(views, area.axis);
            if (!view) continue;
            const Rect seen = grown(view->place, 0.2);
            std::vector<std::vector<Point2>> rings;
            Rect round{1e9, 1e9, -1e9, -1e9};
            double from = 1e9, to = -1e9;
            for (const auto& ring : area.rings) {
                rings.emplace_back();
                for (const Point2 p : ring) {
                    from = std::min(from, p.x), to = std::max(to, p.x);
                    measure::Point own;
                    own.x = p.x;
                    own[area.axis] = p.y;
                    const Point2 at = view->on_paper(gauge.out(own));
                    rings.back().push_back(at);
                    round = {std::min(round.left, at.x), std::min(round.bottom, at.y),
                             std::max(round.right, at.x), std::max(round.top, at.y)};
                }
            }
            if (round.width() < least_waste || round.height() < least_waste ||
                view->is_broken_within(from, to, gauge))
                continue;
            // Where the finished part is smaller than its blank the waste lies outside of the view.
            if (round.left < seen.left || round.right > seen.right || round.bottom < seen.bottom ||
                round.top > seen.top)
                continue;
            hatch(block, rings);
            // The blank's border, as it was before.
            for (std::size_t r = 0; r < area.rings.size(); ++r) {
                // Of an outline only what it leaves of the blank's own rectangle: drawn by the hatching
                // alone.
                if (area.rings.size() > 1) break;
                const auto& ring = area.rings[r];
                for (std::size_t i = 0; i < ring.size(); ++i) {
                    const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
                    const auto both = [&](double p, double q, double at) {
                        return std::abs(p - at) < on_border && std::abs(q - at) < on_border;
                    };
                    if (!both(a.x, b.x, 0) && !both(a.x, b.x, gauge.size(0)) && !both(a.y, b.y, 0) &&
                        !both(a.y, b.y, gauge.size(area.axis)))
                        continue;
                    const Point2 p = rings[r][i], q = rings[r][(i + 1) % ring.size()];
                    if (std::hypot(q.x - p.x, q.y - p.y) > 1 && block.occupied().free_for_line(p, q, 0.3))
                        block.line(p, q, Pen::phantom, Role::mark);
                }
            }
        }
}

} // namespace rayfleck::drawing
