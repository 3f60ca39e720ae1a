// Every sort of cut as one or a few closed shapes.
//
// Box and prism are what they say. A plane cut is the block beyond it. A bore is a round bar. Edges are
// prisms (see edges.cpp). A turned profile that runs the whole length is the blank itself; one that leaves
// square stretches is a ring of waste.

#include "joinery/shaping.hpp"

#include <algorithm>
#include <cmath>

#include "joinery/edges.hpp"
#include "joinery/waste.hpp"

namespace rayfleck::joinery {
namespace {

constexpr double covers_within = touching_within;

template <class... Kinds> struct Cases : Kinds... { using Kinds::operator()...; };

solid::Shape shape_of(const CutShape& shape) {
    if (const auto* box = std::get_if<piece::BoxCut>(&shape))
        return solid::box({}, box->box.low, box->box.high);
    const auto& prism = std::get<piece::PrismCut>(shape);
    return solid::prism(prism.frame, prism.outline, prism.from, prism.to);
}

const piece::TurnedCut* turned_all_over(const piece::Part& part, const piece::Cut& cut) {
    const auto* turned = std::get_if<piece::TurnedCut>(&cut.shape);
    if (turned == nullptr || turned->profile.size() < 2) return nullptr;
    const bool covers = turned->profile.front().x <= covers_within &&
                        turned->profile.back().x >= size_of(part, 0) - covers_within;
    return covers ? turned : nullptr;
}

Frame turning_axis(const piece::Part& part) {
    Frame frame;
    frame.origin = {0, size_of(part, 1) / 2, size_of(part, 2) / 2};
    return frame;
}

double radius_at(const std::vector<solid::Station>& profile, double x) {
    for (std::size_t i = 0; i + 1 < profile.size(); ++i)
        if (x >= profile[i].x && x <= profile[i + 1].x && profile[i + 1].x > profile[i].x) {
            const double t = (x - profile[i].x) / (profile[i + 1].x - profile[i].x);
            return profile[i].radius + t * (profile[i + 1].radius - profile[i].radius);
        }
    return x < profile.front().x ? profile.front().radius : profile.back().radius;
}

/// The profile with its ends drawn out: to round tenons, or straight on where a square tenon will be cut.
std::vector<solid::Station> drawn_out_profile(const Bench& bench, int part_id,
                                              std::vector<solid::Station> profile) {
    const piece::Part& part = bench.part(part_id);
    for (const bool high : {true, false}) {
        const Bench::RoundEnd* round = nullptr;
        for (const Bench::RoundEnd& end : bench.round_ends(part_id))
            if (end.side == LocalSide{0, high}) round = &end;
        const double grown = bench.grown(part_id, {0, high}).value();
        const double from = round != nullptr ? round->from : 0, to = round != nullptr ? round->to : grown;
        if (to <= from) continue;
        const double shoulder = coordinate(part, {0, high}, from), tip = coordinate(part, {0, high}, to);
        const double end_radius = radius_at(profile, shoulder),
                     radius = round != nullptr ? round->radius : end_radius;
        std::erase_if(profile,
                      [&](const solid::Station& s) { return high ? s.x >= shoulder : s.x <= shoulder; });
        const std::vector<solid::Station> near{{shoulder, end_radius, false}, {shoulder, radius, false}};
        if (high) {
            profile.insert(profile.end(), near.begin(), near.end());
            profile.push_back({tip, radius, false});
        } else {
            profile.insert(profile.begin(), near.rbegin(), near.rend());
            profile.insert(profile.begin(), {tip, radius, false});
        }
    }
    return profile;
}

/// The outline with every side that lies on a grown border moved out with it.
solid::Outline drawn_out_outline(const piece::Part& part, const Box& blank) {
    solid::Outline outline;
    const solid::Outline& body = *part.outline;
    const auto number = [&](std::size_t i) { return i < body.smooth.size() ? body.smooth[i] : 0; };
    outline.start = body.start;
    solid::Point2 from = body.start;
    const auto add = [&](solid::Edge2 edge, int smooth) {
        outline.edges.push_back(edge);
        outline.smooth.push_back(smooth);
    };
    for (std::size_t i = 0; i < body.edges.size(); ++i) {
        const solid::Edge2& edge = body.edges[i];
        solid::Point2 step{0, 0};
        if (!edge.centre) {
            const double length = size_of(part, 0), width = size_of(part, 1);
            const auto on = [](double a, double b, double level) {
                return std::abs(a - level) < covers_within && std::abs(b - level) < covers_within;
            };
            if (on(from.x, edge.to.x, 0))
                step.x = blank.low.x;
            else if (on(from.x, edge.to.x, length))
                step.x = blank.high.x - length;
            else if (on(from.y, edge.to.y, 0))
                step.y = blank.low.y;
            else if (on(from.y, edge.to.y, width))
                step.y = blank.high.y - width;
        }
        if (step.x != 0 || step.y != 0) {
            add({{from.x + step.x, from.y + step.y}, {}, true}, 0);
            add({{edge.to.x + step.x, edge.to.y + step.y}, {}, true}, 0);
            add({edge.to, {}, true}, 0);
        } else {
            add(edge, number(i));
        }
        from = edge.to;
    }
    return outline;
}

std::vector<solid::Shape> all_beyond(const solid::Plane& plane, const Box& blank) {
    double reach = 0;
    for (int i = 0; i < 3; ++i)
        reach += std::max(plane.normal[i] * blank.low[i], plane.normal[i] * blank.high[i]);
    if (reach <= plane.offset) return {};
    return {solid::half_space(plane, blank)};
}

std::vector<solid::Shape> plane_tools(const Bench& bench, int part_id, const piece::PlaneCut& cut) {
    const piece::Part& part = bench.part(part_id);
    const Box blank = blank_of(bench, part_id);
    const Vector n = cut.plane.normal;
    std::vector<solid::Shape> tools;
    for (int k = 0; k < 3; ++k) {
        const LocalSide side{k, n[k] > 0};
        if (std::abs(n[k]) < 0.5) continue;
        // A trim of an end on which something stands: it is the shoulder, or it goes round what stands.
        std::vector<Box> tongues;
        for (const Standing& standing : bench.standing(part_id)) {
            if (!(standing.side == side)) continue;
            const Plane shoulder =
                standing.slanting
                    ? *standing.slanting
                    : Plane{outward(side), (side.high ? 1 : -1) * coordinate(part, side, standing.shoulder)};
            if (norm(shoulder.normal - n) < 1e-4 &&
                std::abs(shoulder.offset - cut.plane.offset) < touching_within)
                return {};
            for (const Standing::Tongue& tongue : standing.tongues) tongues.push_back(tongue.section);
        }
        if (tongues.empty()) continue;
        for (const CutShape& waste : beyond_except(cut.plane, k, tongues, blank))
            tools.push_back(shape_of(waste));
        return tools;
    }
    for (int k = 0; k < 3; ++k) {
        const bool low = blank.low[k]<0, high = blank.high[k]> size_of(part, k);
        if (!low && !high) continue;
        if (const auto waste =
                beyond(cut.plane, k, low ? 0 : -unlimited, high ? size_of(part, k) : unlimited, blank))
            tools.push_back(shape_of(*waste));
        return tools;
    }
    return all_beyond(cut.plane, blank);
}

/// A shaped part that no joint has made longer may be built with its mouldings.
bool may_be_moulded(const Bench& bench, int part_id) {
    const piece::Part& part = bench.part(part_id);
    const Box blank = blank_of(bench, part_id);
    return part.outline && blank.low == Point{} && blank.high.x == size_of(part, 0) &&
           blank.high.y == size_of(part, 1) && blank.high.z == size_of(part, 2);
}

solid::Shape bore_tool(const Bench& bench, int part_id, const piece::BoreCut& cut) {
    const Box blank = blank_of(bench, part_id);
    const Vector along = cut.direction ? unit(*cut.direction) : -outward(cut.face);
    Frame frame;
    frame.origin = cut.centre;
    frame.z = along;
    int flattest = 0;
    for (int i = 1; i < 3; ++i)
        if (std::abs(along[i]) < std::abs(along[flattest])) flattest = i;
    Vector helper;
    helper[flattest] = 1;
    frame.x = unit(cross(helper, along));
    frame.y = cross(along, frame.x);
    const double radius = cut.diameter / 2;
    // A bit that enters at a slant must clear the whole mouth of the hole.
    const double slope = std::abs(along[cut.face.axis]);
    const double slant = radius * std::sqrt(std::max(0.0, 1 - slope * slope)) / std::max(slope, 0.1);
    const double start = slope > 1 - 1e-9 ? 0.0 : -slant - 1.0;
    double to = cut.deep.value_or(0);
    if (!cut.deep) {
        const double across = slope > 1 - 1e-9 ? 0.0 : slant + 1.0;
        to = (blank.high[cut.face.axis] - blank.low[cut.face.axis]) / std::max(slope, 0.1) + across;
    }
    return solid::cylinder(frame, radius, start, std::max(to, start + 0.01));
}

} // namespace

solid::Shape blank_shape(const Bench& bench, int part_id) {
    const piece::Part& part = bench.part(part_id);
    const Box blank = blank_of(bench, part_id);
    for (const piece::Cut& cut : part.shaping)
        if (const piece::TurnedCut* turned = turned_all_over(part, cut))
            return solid::turned(turning_axis(part), drawn_out_profile(bench, part_id, turned->profile));
    if (may_be_moulded(bench, part_id))
        if (auto moulded = moulded_blank(part)) return *moulded;
    if (part.outline) return solid::prism({}, drawn_out_outline(part, blank), blank.low.z, blank.high.z);
    return solid::box({}, blank.low, blank.high);
}

std::vector<solid::Shape> tools_of(const Bench& bench, int part_id, const piece::Cut& cut) {
    const piece::Part& part = bench.part(part_id);
    return std::visit(
        Cases{
            [&](const piece::PlaneCut& plane) {
                // A joint's own plane is meant to cut what stands: the end of a through tenon, a mitre.
                return cut.joint >= 0 ? all_beyond(plane.plane, blank_of(bench, part_id))
                                      : plane_tools(bench, part_id, plane);
            },
            [&](const piece::EdgeCut& edge) {
                if (may_be_moulded(bench, part_id) && is_in_moulded_blank(part, edge))
                    return std::vector<solid::Shape>{};
                return edge_tools(bench, part_id, edge);
            },
            [&](const piece::BoreCut& bore) { return std::vector{bore_tool(bench, part_id, bore)}; },
            [&](const piece::BoxCut& box) { return std::vector{shape_of(box)}; },
            [&](const piece::PrismCut& prism) { return std::vector{shape_of(prism)}; },
            [&](const piece::TurnedCut& turned) {
                if (turned_all_over(part, cut) != nullptr || turned.profile.size() < 2)
                    return std::vector<solid::Shape>{};
                const double corner = std::hypot(size_of(part, 1), size_of(part, 2)) / 2;
                return std::vector{solid::turned_waste(turning_axis(part), turned.profile, corner + 5)};
            },
        },
        cut.shape);
}

} // namespace rayfleck::joinery
