// A line is met with every side of every ring, even-odd for each part.

#include "drawing/section_lines.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::drawing {
namespace {

constexpr std::size_t lines_tried = 60;

} // namespace

std::vector<std::pair<Crossing, Crossing>> wood_along(const std::vector<solid::CutArea>& areas, bool level,
                                                      double place) {
    std::vector<std::pair<Crossing, Crossing>> wood;
    for (const solid::CutArea& area : areas) {
        std::vector<Crossing> crossings;
        for (const auto& ring : area.rings)
            for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
                const double a = level ? ring[j].y : ring[j].x, b = level ? ring[i].y : ring[i].x;
                if ((a > place) == (b > place)) continue;
                const double p = level ? ring[j].x : ring[j].y, q = level ? ring[i].x : ring[i].y;
                crossings.push_back({p + (q - p) * (place - a) / (b - a), std::abs(q - p) < 0.01, area.part});
            }
        std::sort(crossings.begin(), crossings.end(),
                  [](const Crossing& a, const Crossing& b) { return a.at < b.at; });
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
            wood.push_back({crossings[i], crossings[i + 1]});
    }
    std::sort(wood.begin(), wood.end(), [](const auto& a, const auto& b) { return a.first.at < b.first.at; });
    return wood;
}

std::vector<Opening> openings_along(const std::vector<solid::CutArea>& areas, bool level, double place,
                                    double least) {
    std::vector<Opening> openings;
    const auto wood = wood_along(areas, level, place);
    if (wood.empty()) return openings;
    Crossing end = wood.front().second;
    for (std::size_t i = 1; i < wood.size(); ++i) {
        const auto& [enter, leave] = wood[i];
        if (enter.at - end.at > least && enter.square && end.square)
            openings.push_back({end.at, enter.at, end.part == enter.part});
        if (leave.at > end.at) end = leave;
    }
    return openings;
}

std::vector<double> places_for_lines(const std::vector<solid::CutArea>& areas, bool level) {
    std::vector<double> corners;
    for (const solid::CutArea& area : areas)
        for (const auto& ring : area.rings)
            for (const Point2 p : ring) corners.push_back(level ? p.y : p.x);
    std::sort(corners.begin(), corners.end());
    std::vector<double> middles;
    for (std::size_t i = 0; i + 1 < corners.size(); ++i)
        if (corners[i + 1] - corners[i] > 1) middles.push_back((corners[i] + corners[i + 1]) / 2);
    const std::size_t step = middles.size() / lines_tried + 1;
    std::vector<double> out;
    for (std::size_t i = 0; i < middles.size(); i += step) out.push_back(middles[i]);
    return out;
}

std::vector<Point2> places_within(const Rings& rings) {
    std::vector<Point2> places;
    for (const Rings& stretch : connected(rings)) {
        const Rect box = around(stretch.front());
        const std::vector<solid::CutArea> alone{{0, stretch, 0}};
        Point2 best;
        double widest = 0;
        for (const double t : {0.5, 0.25, 0.75, 0.4, 0.6}) {
            const double y = box.bottom + t * box.height();
            for (const auto& [enter, leave] : wood_along(alone, true, y))
                if (leave.at - enter.at > 1.2 * widest) {
                    widest = leave.at - enter.at;
                    best = {(enter.at + leave.at) / 2, y};
                }
        }
        if (widest <= 0) continue;
        places.push_back(best);
        // A long area is met nearer to its ends as well.
        for (const bool level : {true, false})
            for (const auto& [enter, leave] : wood_along(alone, level, level ? best.y : best.x))
                if (leave.at - enter.at > 2 * std::min(box.width(), box.height()))
                    for (const double t : {0.12, 0.3, 0.7, 0.88}) {
                        const double at = enter.at + t * (leave.at - enter.at);
                        places.push_back(level ? Point2{at, best.y} : Point2{best.x, at});
                    }
    }
    return places;
}

} // namespace rayfleck::drawing
