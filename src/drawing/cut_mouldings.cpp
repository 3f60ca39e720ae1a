// Mouldings along arrises, turned profiles, and what joints leave standing beyond an outline.
//
// A moulding is told once for all arrises that it runs along. Profile names stand for their shapes; the
// proportions of those that have fillets and quirks are told once in the set, with the marks. A turned part
// is told by its stations; of a smooth curve only by its ends and its thickest and thinnest places, the rest
// being drawn to scale.

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include "drawing/cut_atoms.hpp"
#include "solid/shape.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Point;
using piece::LocalSide;

constexpr double same_place = 1e-3; // mm

/// `all round the face side, face edge to near end`.
std::string arrises_words(const GaugeFrame& gauge,
                          const std::vector<std::pair<LocalSide, LocalSide>>& edges) {
    if (edges.size() == 12) return "on all arrises";
    std::vector<std::string> places;
    std::set<std::size_t> told;
    std::vector<std::size_t> lengthwise;
    for (std::size_t i = 0; i < edges.size(); ++i)
        if (edges[i].first.axis != 0 && edges[i].second.axis != 0) lengthwise.push_back(i);
    if (lengthwise.size() == 4) {
        told.insert(lengthwise.begin(), lengthwise.end());
        places.push_back("on the four long arrises");
    }
    // All four arrises of one side are told by the side.
    for (int axis = 2; axis >= 0; --axis)
        for (const bool high : {true, false}) {
            const LocalSide side{axis, high};
            std::vector<std::size_t> of_side;
            for (std::size_t i = 0; i < edges.size(); ++i)
                if (!told.contains(i) && (edges[i].first == side || edges[i].second == side))
                    of_side.push_back(i);
            if (of_side.size() != 4) continue;
            told.insert(of_side.begin(), of_side.end());
            places.push_back("all round the " + side_name(gauge, side));
        }
    for (std::size_t i = 0; i < edges.size(); ++i)
        if (!told.contains(i))
            places.push_back("where " + side_name(gauge, edges[i].first) + " and " +
                             side_name(gauge, edges[i].second) + " meet");
    return fmt::format("{}", fmt::join(places, ", "));
}

} // namespace

std::vector<Atom> moulding_atoms(const Telling& telling) {
    struct Run {
        const piece::Cut* cut;
        const piece::EdgeCut* edge;
        std::vector<std::pair<LocalSide, LocalSide>> arrises;
    };
    std::vector<Run> runs;
    for (const piece::Cut& cut : telling.made.cuts) {
        const auto* edge = std::get_if<piece::EdgeCut>(&cut.shape);
        if (!edge || !(edge->on_first > 0)) continue;
        const auto same = std::find_if(runs.begin(), runs.end(), [&](const Run& run) {
            // Unequal sizes belong to their faces, so each arris is told by itself.
            return run.cut->word == cut.word && run.edge->profile == edge->profile &&
                   run.edge->on_first == edge->on_first && run.edge->on_second == edge->on_second &&
                   edge->on_first == edge->on_second;
        });
        if (same == runs.end())
            runs.push_back({&cut, edge, {{edge->first, edge->second}}});
        else
            same->arrises.push_back({edge->first, edge->second});
    }
    std::vector<Atom> atoms;
    const measure::Box body = telling.body();
    for (const Run& run : runs) {
        Atom atom;
        Feature& feature = atom.feature;
        CutRecord& record = feature.record;
        record.form = CutForm::edge;
        record.word = run.cut->word;
        record.side = run.edge->profile;
        record.count = static_cast<int>(run.arrises.size());
        const double second_size = run.edge->on_second > 0 ? run.edge->on_second : run.edge->on_first;
        const std::string first = telling.figure(run.edge->on_first), second = telling.figure(second_size);
        telling.add(feature, "on first", run.edge->on_first, first);
        if (run.edge->on_first == second_size) {
            feature.words = first + " ";
        } else {
            telling.add(feature, "on second", second_size, second);
            feature.words = first + " on the " + side_name(telling.gauge, run.edge->first) + ", " + second +
                            " on the " + side_name(telling.gauge, run.edge->second) + ", ";
        }
        feature.words += arrises_words(telling.gauge, run.arrises);
        for (const auto& [a, b] : run.arrises)
            record.arrises.push_back(side_name(telling.gauge, a) + ", " + side_name(telling.gauge, b));
        std::string limits;
        for (int k = 0; k < 3; ++k) {
            if (!telling.grown(k, false) && !telling.grown(k, true)) continue;
            const std::string size = size_names[static_cast<std::size_t>(k)];
            const std::string low = telling.figure(body.low[k]), high = telling.figure(body.high[k]);
            telling.add(feature, "limit low " + size, body.low[k], low);
            telling.add(feature, "limit high " + size, body.high[k], high);
            limits += "; from " + low + " to " + high + " from the " + side_name(k, false);
        }
        feature.words += limits;
        const auto& [a, b] = run.arrises.front();
        atom.box = body;
        for (const LocalSide side : {a, b})
            (telling.gauge.is_far(side) ? atom.box.low : atom.box.high)[side.axis] =
                telling.gauge.is_far(side)
                    ? body.high[side.axis] - (side == a ? second_size : run.edge->on_first)
                    : body.low[side.axis] + (side == a ? second_size : run.edge->on_first);
        atoms.push_back(std::move(atom));
    }
    return atoms;
}

Atom turned_atom(const Telling& telling, const piece::Cut& cut, const piece::TurnedCut& turned) {
    Atom atom;
    Feature& feature = atom.feature;
    CutRecord& record = feature.record;
    record.form = CutForm::turned;
    record.word = cut.word;
    const double near = -telling.made.blank.low.x;
    std::vector<solid::Station> all = turned.profile;
    for (solid::Station& station : all) station.x += near;
    record.whole = all.front().x - near <= same_place &&
                   all.back().x >= near + telling.made.part->length.value() - same_place;
    if (record.whole) all = stations_with_what_stands(telling, std::move(all));
    std::vector<std::string> words;
    for (std::size_t i = 0; i < all.size(); ++i) {
        CutPoint point;
        point.x = all[i].x, point.y = all[i].radius, point.smooth = all[i].smooth ? 1 : 0;
        record.points.push_back(point);
        const bool within = i > 0 && i + 1 < all.size() && all[i - 1].smooth && all[i].smooth;
        const bool turns =
            within && (all[i].radius - all[i - 1].radius) * (all[i + 1].radius - all[i].radius) <= 0;
        // A smooth run is told often enough to bend a template by it.
        if (!within || turns || i % 3 == 0)
            words.push_back("Ø" + telling.figure(2 * all[i].radius) + " at " + telling.figure(all[i].x));
    }
    feature.words = "about the middle, from the near end";
    feature.below = fmt::format("{}", fmt::join(words, ", "));
    atom.box = {{all.front().x, 0, 0}, {all.back().x, telling.gauge.size(1), telling.gauge.size(2)}};
    atom.at = atom.box.low;
    return atom;
}

std::vector<solid::Station> stations_with_what_stands(const Telling& telling,
                                                      std::vector<solid::Station> profile) {
    // The blank's own corners tell: rings of corners about the axis, all as far out from their radius.
    const double near = -telling.made.blank.low.x;
    const double y = telling.made.part->width.value() / 2, z = telling.made.part->thickness.value() / 2;
    struct Ring {
        double x, out;
    };
    std::vector<Ring> rings;
    for (const solid::Shape::Corner& corner : telling.made.blank_shape.corners()) {
        const Point p = solid::to_mm(corner.at);
        const Ring ring{p.x + near, std::hypot(p.y - y, p.z - z)};
        if (std::none_of(rings.begin(), rings.end(), [&](const Ring& r) {
                return std::abs(r.x - ring.x) < same_place && std::abs(r.out - ring.out) < same_place;
            }))
            rings.push_back(ring);
    }
    std::sort(rings.begin(), rings.end(), [](const Ring& a, const Ring& b) { return a.x < b.x; });
    double largest = 0;
    for (const solid::Station& station : profile) largest = std::max(largest, station.radius);
    double outmost = 0;
    for (const Ring& ring : rings) outmost = std::max(outmost, ring.out);
    if (rings.empty() || !(largest > 0)) return profile;
    const double ratio = outmost / largest;
    const auto radius_at = [&](double x) {
        for (std::size_t i = 0; i + 1 < profile.size(); ++i)
            if (x >= profile[i].x && x <= profile[i + 1].x && profile[i + 1].x > profile[i].x)
                return profile[i].radius + (x - profile[i].x) / (profile[i + 1].x - profile[i].x) *
                                               (profile[i + 1].radius - profile[i].radius);
        return x < profile.front().x ? profile.front().radius : profile.back().radius;
    };
    for (const bool high : {false, true}) {
        const Ring tip = high ? rings.back() : rings.front();
        const double end = high ? profile.back().x : profile.front().x;
        if (std::abs(tip.x - end) < same_place && std::abs(tip.out / ratio - radius_at(end)) < same_place)
            continue;
        // The shoulder is where the tip's radius ends.
        double shoulder = tip.x;
        for (const Ring& ring : rings)
            if (std::abs(ring.out - tip.out) < same_place && std::abs(ring.x - tip.x) > same_place &&
                (shoulder == tip.x || std::abs(ring.x - tip.x) < std::abs(shoulder - tip.x)))
                shoulder = ring.x;
        if (shoulder == tip.x) continue;
        const double body = radius_at(shoulder), radius = tip.out / ratio;
        std::erase_if(profile, [&](const solid::Station& s) {
            return high ? s.x >= shoulder - same_place : s.x <= shoulder + same_place;
        });
        const std::vector<solid::Station> more{
            {shoulder, body, false}, {shoulder, radius, false}, {tip.x, radius, false}};
        if (high)
            profile.insert(profile.end(), more.begin(), more.end());
        else
            profile.insert(profile.begin(), more.rbegin(), more.rend());
    }
    return profile;
}

solid::Outline outline_with_what_stands(const Telling& telling) {
    const piece::Part& part = *telling.made.part;
    const measure::Box& blank = telling.made.blank;
    const solid::Outline& body = *part.outline;
    const double length = part.length.value(), width = part.width.value();
    solid::Outline outline;
    outline.start = body.start;
    solid::Point2 from = body.start;
    const auto add = [&](const solid::Edge2& edge, int smooth) {
        outline.edges.push_back(edge);
        outline.smooth.push_back(smooth);
    };
    const auto on = [](double a, double b, double level) {
        return std::abs(a - level) < same_place && std::abs(b - level) < same_place;
    };
    for (std::size_t i = 0; i < body.edges.size(); ++i) {
        const solid::Edge2& edge = body.edges[i];
        solid::Point2 step;
        if (!edge.centre) {
            if (on(from.x, edge.to.x, 0))
                step.x = blank.low.x;
            else if (on(from.x, edge.to.x, length))
                step.x = blank.high.x - length;
            else if (on(from.y, edge.to.y, 0))
                step.y = blank.low.y;
            else if (on(from.y, edge.to.y, width))
                step.y = blank.high.y - width;
        }
        if (std::hypot(step.x, step.y) > same_place) {
            add({{from.x + step.x, from.y + step.y}, {}, true}, 0);
            add({{edge.to.x + step.x, edge.to.y + step.y}, {}, true}, 0);
            add({edge.to, {}, true}, 0);
        } else {
            add(edge, i < body.smooth.size() ? body.smooth[i] : 0);
        }
        from = edge.to;
    }
    return outline;
}

} // namespace rayfleck::drawing
