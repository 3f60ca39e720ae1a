// See part_borders.hpp.

#include "drawing/part_borders.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/part_features.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;

constexpr double same_place = 0.02; // mm

/// On which ends of an axis a box of waste comes out of the blank.
struct Out {
    bool low = false, high = false;
    int count() const { return int(low) + int(high); }
};
Out out_of(const Box& cut, const Box& blank, int axis) {
    return {cut.low[axis] <= blank.low[axis] + same_place, cut.high[axis] >= blank.high[axis] - same_place};
}

struct Collected {
    std::array<std::vector<double>, part_sides> along;
    std::vector<double> width, thickness;

    void on(PartSide side, std::initializer_list<double> places) {
        auto& list = along[static_cast<std::size_t>(side)];
        list.insert(list.end(), places);
    }
    void across(int axis, const Box& box) {
        auto& list = axis == 1 ? width : thickness;
        list.insert(list.end(), {box.low[axis], box.high[axis]});
    }
};

void take_hollow(const Box& cut, const Box& blank, PartSide side, bool in_steps, Collected& all) {
    const Out length = out_of(cut, blank, 0), width = out_of(cut, blank, 1),
              thickness = out_of(cut, blank, 2);
    const int mouths = width.count() + thickness.count();
    if (length.count() < 2 && mouths > 0) {
        all.on(side, {cut.low.x});
        if (!in_steps) all.on(side, {cut.high.x});
    }
    if (length.count() == 0) {
        // A notch through the thickness shows its depth on the face.
        if (thickness.count() == 2 && width.count() < 2) all.across(1, cut);
        return;
    }
    // At an end a hollow with one mouth is told by its place along that mouth; its depth stands in the table.
    const bool hollow = mouths == 1 && length.count() == 1;
    if (!hollow || width.count() == 0) all.across(1, cut);
    if (!hollow || thickness.count() == 0) all.across(2, cut);
}

void take(const Feature& feature, const GaugeFrame& gauge, Collected& all) {
    const CutRecord& record = feature.record;
    bool in_steps = false;
    for (const CutFigure* figure : figures_of(record, place_names[0]))
        in_steps = in_steps || figure->times > 2;
    const PartSide side =
        feature.seen_from && feature.seen_from->axis != 0 ? part_side(*feature.seen_from) : PartSide::face;
    for (const Box& place : feature.places) {
        const Box own = gauge.out(place);
        switch (record.form) {
        case CutForm::hollow:
        case CutForm::prism:
            if (feature.placed_by_mark) {
                for (const double at : values_of(record, place_names[0]))
                    all.on(side, {gauge.out(measure::Point{at, 0, 0}).x});
                break;
            }
            take_hollow(own, gauge.blank, side, in_steps, all);
            break;
        case CutForm::bore: {
            const measure::Point centre = (own.low + own.high) * 0.5;
            if (record.axis != 0) {
                all.on(side, {centre.x});
            } else {
                all.width.push_back(centre.y);
                all.thickness.push_back(centre.z);
            }
            break;
        }
        case CutForm::tongue:
            if (record.axis == 0) all.on(PartSide::face, {own.low.x, own.high.x});
            if (record.axis <= 1) all.across(1, own);
            all.across(2, own);
            break;
        case CutForm::shoulder:
            all.across(1, own);
            all.across(2, own);
            break;
        case CutForm::saw:
            all.on(PartSide::face, {record.far ? own.low.x : own.high.x});
            break;
        default:
            break;
        }
    }
}

std::vector<double> tidy(std::vector<double> places, double low, double high, double step) {
    std::sort(places.begin(), places.end());
    std::vector<double> kept;
    for (const double p : places)
        if (p > low + step && p < high - step && (kept.empty() || p > kept.back() + step)) kept.push_back(p);
    return kept;
}

} // namespace

PartSide part_side(piece::LocalSide side) {
    if (side.axis == 1) return side.high ? PartSide::high_edge : PartSide::low_edge;
    return side.axis == 2 && !side.high ? PartSide::back : PartSide::face;
}

piece::LocalSide local_side(PartSide side) {
    switch (side) {
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

bool is_waste_round_a_tongue(const std::string& word) {
    for (const char* known : {"cheek", "tongue", "lap", "end trim", "waste", "shoulder"})
        if (word.find(known) != std::string::npos) return true;
    return false;
}

piece::LocalSide side_seen(const Box& cut, const Box& blank, bool face_edge_high) {
    const Out length = out_of(cut, blank, 0), width = out_of(cut, blank, 1),
              thickness = out_of(cut, blank, 2);
    if (width.count() + thickness.count() == 0 && length.count() > 0) return {0, length.high};
    if (thickness.high) return {2, true};
    if (width.low && width.high) return {1, face_edge_high};
    if (width.high) return {1, true};
    if (width.low) return {1, false};
    return {2, !thickness.low};
}

Borders borders_of(const joinery::Made& made, const std::vector<Feature>& features, double step) {
    const GaugeFrame gauge(made);
    const PartSide favoured = part_side({1, made.part->face_edge_high});
    Collected all;
    Borders borders;
    const Box& box = made.solid.box;
    for (const Feature& feature : features) {
        if (feature.told_by_strings) take(feature, gauge, all);
        if (feature.seen_from && feature.seen_from->axis != 0)
            borders.has[static_cast<std::size_t>(part_side(*feature.seen_from))] = true;
        for (const Box& place : feature.places)
            if (feature.record.form != CutForm::edge) {
                const Box own = gauge.out(place);
                borders.busy.insert(borders.busy.end(), {own.low.x, own.high.x});
            }
    }
    borders.busy = tidy(std::move(borders.busy), box.low.x, box.high.x, step);
    std::vector<double> told;
    for (const PartSide side :
         {PartSide::face, favoured, PartSide::high_edge, PartSide::low_edge, PartSide::back}) {
        auto& along = borders.along[static_cast<std::size_t>(side)];
        if (!along.empty()) continue; // the favoured edge comes twice
        std::vector<double> places =
            tidy(all.along[static_cast<std::size_t>(side)], box.low.x, box.high.x, step);
        std::erase_if(places, [&](double x) {
            return std::any_of(told.begin(), told.end(), [&](double t) { return std::abs(t - x) < step; });
        });
        told.insert(told.end(), places.begin(), places.end());
        along = std::move(places);
    }
    borders.width = tidy(all.width, box.low.y, box.high.y, step);
    borders.thickness = tidy(all.thickness, box.low.z, box.high.z, step);
    return borders;
}

} // namespace rayfleck::drawing
