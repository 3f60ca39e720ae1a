// Carving a part by its shaping, and sawing it across at the levels of a meeting.
//
// The saw goes through a hair inside of each level, so that a curve that ends exactly at the part's end is
// met where it ends. Where nothing but planes and mouldings shapes the part, there is nothing to look for:
// the meeting has taken planes into account, and mouldings keep the bounds of a section.

#include "joinery/end_section.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "joinery/shaping.hpp"

namespace rayfleck::joinery {
namespace {

constexpr double hair = 1e-3;        // mm
constexpr double counts_from = 0.05; // mm
constexpr double least_area = 1e-6;  // mm²

bool is_sawn_to_shape(const piece::Part& part) {
    return part.outline || std::any_of(part.shaping.begin(), part.shaping.end(), [](const piece::Cut& cut) {
               return std::holds_alternative<piece::PrismCut>(cut.shape) ||
                      std::holds_alternative<piece::BoxCut>(cut.shape);
           });
}

double area_of(const std::vector<solid::Point2>& ring) {
    double twice = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const solid::Point2 p = ring[i], q = ring[(i + 1) % ring.size()];
        twice += p.x * q.y - p.y * q.x;
    }
    return std::abs(twice) / 2;
}

} // namespace

Box wood_in_window(const Bench& bench, int part_id, const Meeting& meeting) {
    const piece::Part& part = bench.part(part_id);
    Box window = meeting.window;
    if (!is_sawn_to_shape(part)) return window;
    solid::Solid carved;
    solid::Shape blank;
    std::vector<solid::Shape> tools;
    try {
        blank = blank_shape(bench, part_id);
        for (const piece::Cut& cut : part.shaping)
            for (solid::Shape& tool : tools_of(bench, part_id, cut)) tools.push_back(std::move(tool));
        carved = solid::carve(blank, tools);
    } catch (const std::invalid_argument&) {
        return window; // reported when the part itself is carved
    }
    const int k = meeting.axis(), u = (k + 1) % 3, v = (k + 2) % 3;
    solid::View view;
    view.right = outward({u, true});
    view.up = outward({v, true});
    view.towards = outward({k, true});
    const Box body{{}, {size_of(part, 0), size_of(part, 1), size_of(part, 2)}};
    std::vector<double> levels{0, meeting.gap};
    if (!meeting.square) {
        const auto [near, far] = meeting.reach_of(part, meeting.face, body);
        levels.insert(levels.end(), {near, far});
    }
    for (const double level : levels) {
        const double inside = std::max(std::min(level, 0.0) - hair, hair - size_of(part, k));
        const auto areas =
            solid::section({{&carved, &blank, &tools, {}}}, view, coordinate(part, meeting.from, inside));
        if (areas.empty()) continue;
        const std::vector<solid::Point2>* greatest = nullptr;
        for (const auto& ring : areas.front().rings)
            if (area_of(ring) > (greatest ? area_of(*greatest) : least_area)) greatest = &ring;
        if (!greatest) continue;
        const auto narrow = [&](int axis, double solid::Point2::*which) {
            const auto [low, high] =
                std::minmax_element(greatest->begin(), greatest->end(),
                                    [&](const auto& p, const auto& q) { return p.*which < q.*which; });
            if ((*low).*which > window.low[axis] + counts_from) window.low[axis] = (*low).*which;
            if ((*high).*which < window.high[axis] - counts_from) window.high[axis] = (*high).*which;
        };
        narrow(u, &solid::Point2::x);
        narrow(v, &solid::Point2::y);
    }
    return window;
}

} // namespace rayfleck::joinery
