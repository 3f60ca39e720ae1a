// Planes of one axis are tried at the middles of joints and of the places where they touch, a hundredth of
// the piece apart at least. Each is scored against all joints, so that the work grows with joints times
// planes, of which there are at most a few dozen an axis.

#include "drawing/section_planes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include <fmt/format.h>

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::Point;

constexpr std::size_t planes_tried = 40; ///< per axis
constexpr double seen_again = 0.35, face_in_plane = 0.5;
/// A kind of part cut through its thickness for the first time, cut so in another direction, split along its
/// face.
constexpr double cut_through_first = 0.3, cut_through_again = 0.1, split = -0.1;

double worth(const std::string& kind) {
    if (kind == "glue") return 0.05;
    if (kind.find("screws") != std::string::npos) return 0.2;
    return 1;
}

Box box_of_part(const solid::Placed& part) {
    const Box& own = part.solid->box;
    Box box;
    for (int i = 0; i < 8; ++i) {
        const Point p = part.frame.out(
            {i & 1 ? own.high.x : own.low.x, i & 2 ? own.high.y : own.low.y, i & 4 ? own.high.z : own.low.z});
        for (int k = 0; k < 3; ++k) {
            box.low[k] = i == 0 ? p[k] : std::min(box.low[k], p[k]);
            box.high[k] = i == 0 ? p[k] : std::max(box.high[k], p[k]);
        }
    }
    return box;
}

/// What the choice needs to know of the piece, each joint and part as numbers.
struct Scene {
    std::vector<Box> joints, parts;
    std::vector<int> group; ///< of each joint
    std::vector<double> group_worth;
    std::vector<std::string> group_kind;
};

Scene scene_of(const Job& job) {
    Scene scene;
    const joinery::Model& model = job.model;
    scene.joints = boxes_of_joints(model);
    for (const solid::Placed& part : job.placed) scene.parts.push_back(box_of_part(part));
    std::map<std::string, int> known;
    for (const joinery::Joint& joint : model.joints) {
        std::string key =
            fmt::format("{}|{}|{}", joint.kind, job.row_of_part[static_cast<std::size_t>(joint.a)],
                        job.row_of_part[static_cast<std::size_t>(joint.b)]);
        const auto [at, fresh] = known.emplace(std::move(key), static_cast<int>(scene.group_kind.size()));
        if (fresh) {
            scene.group_kind.push_back(joint.kind);
            scene.group_worth.push_back(worth(joint.kind));
        }
        scene.group.push_back(at->second);
    }
    return scene;
}

bool lays_open(const joinery::Joint& joint, const Box& box, int axis, double at) {
    constexpr double well_inside = 0.3;
    return at > box.low[axis] + well_inside && at < box.high[axis] - well_inside &&
           std::abs(joint.assembly[axis]) < 0.5;
}

/// A plane square to that axis runs along the broad faces of a board.
bool splits(const solid::Placed& part, int axis) {
    const Box& box = part.solid->box;
    int thin = 0;
    for (int k = 1; k < 3; ++k)
        if (box.high[k] - box.low[k] < box.high[thin] - box.low[thin]) thin = k;
    double second = 1e300;
    for (int k = 0; k < 3; ++k)
        if (k != thin) second = std::min(second, box.high[k] - box.low[k]);
    const measure::Vector through = thin == 0 ? part.frame.x : thin == 1 ? part.frame.y : part.frame.z;
    constexpr double board = 2.5; // times as wide as thick
    return second > board * (box.high[thin] - box.low[thin]) && std::abs(through[axis]) > 0.7;
}

std::vector<double> offsets(const Job& job, const Scene& scene, int axis) {
    double low = 1e300, high = -1e300;
    for (const Box& part : scene.parts)
        low = std::min(low, part.low[axis]), high = std::max(high, part.high[axis]);
    std::map<long, std::pair<double, int>> found;
    const double step = std::max((high - low) / 100, 1.0);
    const auto offer = [&](double at) {
        auto& [offset, times] = found.emplace(std::lround(at / step), std::pair{at, 0}).first->second;
        ++times;
    };
    for (std::size_t j = 0; j < scene.joints.size(); ++j) {
        if (std::abs(job.model.joints[j].assembly[axis]) > 0.5) continue;
        offer(job.model.joints[j].at[axis]);
        offer((scene.joints[j].low[axis] + scene.joints[j].high[axis]) / 2);
    }
    std::vector<std::pair<double, int>> all;
    for (const auto& [place, offered] : found) all.push_back(offered);
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    if (all.size() > planes_tried) all.resize(planes_tried);
    std::vector<double> out;
    for (const auto& [at, times] : all) out.push_back(at);
    return out;
}

} // namespace

solid::View section_view_along(const Job& job, int axis) {
    if (axis == 0) return job.first_angle ? solid::left_view() : solid::right_view();
    return axis == 1 ? solid::front_view() : solid::top_view();
}

std::vector<Box> boxes_of_joints(const joinery::Model& model) {
    std::vector<Box> boxes(model.joints.size());
    std::vector<bool> any(model.joints.size(), false);
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.joint < 0) continue;
        const auto j = static_cast<std::size_t>(contact.joint);
        for (const auto& loop : contact.loops)
            for (const Point& p : loop) {
                for (int k = 0; k < 3; ++k) {
                    boxes[j].low[k] = any[j] ? std::min(boxes[j].low[k], p[k]) : p[k];
                    boxes[j].high[k] = any[j] ? std::max(boxes[j].high[k], p[k]) : p[k];
                }
                any[j] = true;
            }
    }
    for (std::size_t j = 0; j < boxes.size(); ++j)
        if (!any[j]) {
            const measure::Vector half{5, 5, 5};
            boxes[j] = {model.joints[j].at - half, model.joints[j].at + half};
        }
    return boxes;
}

std::vector<SectionPlane> choose_section_planes(const Job& job) {
    const Scene scene = scene_of(job);
    const std::size_t groups = scene.group_kind.size();
    std::vector<unsigned> shown(groups, 0);                     ///< a bit for each axis
    std::vector<unsigned> row_cut(job.cut_list.rows.size(), 0); ///< a bit for each axis
    std::array<std::vector<double>, 3> tried;
    for (int axis = 0; axis < 3; ++axis) tried[static_cast<std::size_t>(axis)] = offsets(job, scene, axis);

    // Planes that lie close by one another show much the same.
    std::array<double, 3> least_apart{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        double low = 1e300, high = -1e300;
        for (const Box& part : scene.parts)
            low = std::min(low, part.low[static_cast<int>(axis)]),
            high = std::max(high, part.high[static_cast<int>(axis)]);
        least_apart[axis] = 0.12 * (high - low);
    }

    struct Gain {
        double joints = 0, all = 0;
        std::set<int> groups, rows;
    };
    const auto gain_of = [&](int axis, double at) {
        Gain gain;
        for (std::size_t j = 0; j < scene.joints.size(); ++j)
            if (lays_open(job.model.joints[j], scene.joints[j], axis, at)) gain.groups.insert(scene.group[j]);
        for (const int g : gain.groups) {
            const unsigned before = shown[static_cast<std::size_t>(g)];
            const double w = scene.group_worth[static_cast<std::size_t>(g)];
            if (before == 0)
                gain.joints += w;
            else if (!(before & (1u << axis)))
                gain.joints += seen_again * w;
        }
        gain.all = gain.joints;
        for (std::size_t p = 0; p < scene.parts.size(); ++p) {
            const Box& box = scene.parts[p];
            if (std::min(std::abs(box.low[axis] - at), std::abs(box.high[axis] - at)) < 0.1)
                gain.all -= face_in_plane;
            if (at <= box.low[axis] || at >= box.high[axis]) continue;
            const int row = job.row_of_part[p];
            if (row < 0) continue;
            if (splits(job.placed[p], axis)) {
                gain.all += split;
                continue;
            }
            const unsigned before = row_cut[static_cast<std::size_t>(row)];
            if ((before & (1u << axis)) || !gain.rows.insert(row).second) continue;
            gain.all += before == 0 ? cut_through_first : cut_through_again;
        }
        return gain;
    };

    const std::size_t most = std::clamp<std::size_t>(1 + scene.parts.size() / 6, 1, 4);
    std::vector<SectionPlane> chosen;
    double first_gain = 0;
    while (chosen.size() < most) {
        SectionPlane best;
        Gain best_gain;
        for (int axis = 0; axis < 3; ++axis)
            for (const double at : tried[static_cast<std::size_t>(axis)]) {
                const bool near = std::any_of(chosen.begin(), chosen.end(), [&](const SectionPlane& c) {
                    return c.axis == axis &&
                           std::abs(c.at - at) < least_apart[static_cast<std::size_t>(axis)];
                });
                if (near) continue;
                Gain gain = gain_of(axis, at);
                if (gain.joints > 0.3 && gain.all > best_gain.all + 1e-9)
                    best = {axis, at, {}}, best_gain = std::move(gain);
            }
        // Room on a sheet is worth one joint not seen yet, or a quarter of what the first plane showed.
        if (best_gain.all < (chosen.empty() ? 0.5 : std::max(1.0, first_gain / 4))) break;
        if (chosen.empty()) first_gain = best_gain.all;
        for (const int g : best_gain.groups) {
            shown[static_cast<std::size_t>(g)] |= 1u << best.axis;
            const std::string& kind = scene.group_kind[static_cast<std::size_t>(g)];
            if (std::find(best.shows.begin(), best.shows.end(), kind) == best.shows.end())
                best.shows.push_back(kind);
        }
        for (const int row : best_gain.rows) row_cut[static_cast<std::size_t>(row)] |= 1u << best.axis;
        chosen.push_back(std::move(best));
    }
    return chosen;
}

} // namespace rayfleck::drawing
