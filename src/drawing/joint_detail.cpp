// The place where two parts meet is known from their contacts; of fastenings it is the hole nearest to the
// middle of the joint, with what lies in line with it in the other part.

#include "drawing/joint_detail.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include <fmt/format.h>

#include "drawing/section_letters.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::dot;
using measure::Frame;
using measure::Point;
using measure::Vector;

/// Holds at single spots: one of them tells of all.
bool is_fastening(const std::string& kind) {
    return kind.find("screws") != std::string::npos || kind.starts_with("dowels") ||
           kind.starts_with("buttons");
}

bool wants_detail(const std::string& kind) { return kind != "glue"; }

std::string size_words(const Job& job, const joinery::Size& size) {
    std::string figure =
        size.unit == "mm" ? job.figure(size.value) : fmt::format("{:g}", std::round(size.value * 100) / 100);
    if (size.unit == "degrees") figure += "°";
    return size.what + " " + figure;
}

class Bounds {
  public:
    void take(Point p) {
        for (int k = 0; k < 3; ++k) {
            box.low[k] = any ? std::min(box.low[k], p[k]) : p[k];
            box.high[k] = any ? std::max(box.high[k], p[k]) : p[k];
        }
        any = true;
    }
    /// A box of `from` as seen in `to`; both are frames of the piece.
    void take(const Box& other, const Frame& from, const Frame& to) {
        for (int i = 0; i < 8; ++i)
            take(to.in(from.out({i & 1 ? other.high.x : other.low.x, i & 2 ? other.high.y : other.low.y,
                                 i & 4 ? other.high.z : other.low.z})));
    }
    Box box;
    bool any = false;
};

bool near(const Box& a, const Box& b, double by) {
    for (int k = 0; k < 3; ++k)
        if (a.low[k] > b.high[k] + by || b.low[k] > a.high[k] + by) return false;
    return true;
}

/// Part of a tool that lies within the blank, own frame.
Box within(const Box& tool, const Box& blank) {
    Box box = tool;
    for (int k = 0; k < 3; ++k) {
        box.low[k] = std::clamp(box.low[k], blank.low[k], blank.high[k]);
        box.high[k] = std::clamp(box.high[k], blank.low[k], blank.high[k]);
    }
    return box;
}

/// Waste of a joint in both of its parts, in `frame`.
std::vector<Box> waste_of(const Job& job, int joint, const Frame& frame) {
    std::vector<Box> boxes;
    const joinery::Joint& j = job.model.joints[static_cast<std::size_t>(joint)];
    for (const int part : {j.a, j.b}) {
        const joinery::Made& made = job.made(part);
        for (std::size_t t = 0; t < made.tools.size(); ++t) {
            const int cut = made.tool_cut[t];
            if (cut < 0 || made.cuts[static_cast<std::size_t>(cut)].joint != joint) continue;
            Bounds bounds;
            bounds.take(within(made.tools[t].bounds(), made.blank), made.part->frame, frame);
            boxes.push_back(bounds.box);
        }
    }
    return boxes;
}

/// Where the parts of a joint meet; of fastenings one spot.
Box focus_of(const Job& job, int joint, const Frame& frame,
             const std::vector<const joinery::Contact*>& contacts) {
    const joinery::Joint& j = job.model.joints[static_cast<std::size_t>(joint)];
    const Point at = frame.in(j.at);
    const std::vector<Box> waste = waste_of(job, joint, frame);
    Bounds bounds;
    if (is_fastening(j.kind) && !waste.empty()) {
        const Box* nearest = nullptr;
        double least = std::numeric_limits<double>::infinity();
        for (const Box& box : waste)
            if (const double away = measure::norm((box.low + box.high) * 0.5 - at); away < least - 1e-6)
                least = away, nearest = &box;
        bounds.box = *nearest;
        bounds.any = true;
        for (const Box& box : waste)
            if (near(box, *nearest, 0.5)) bounds.take(box.low), bounds.take(box.high);
        return bounds.box;
    }
    for (const joinery::Contact* contact : contacts)
        for (const auto& loop : contact->loops)
            for (const Point& p : loop) bounds.take(frame.in(p));
    if (!bounds.any)
        for (const Box& box : waste) bounds.take(box.low), bounds.take(box.high);
    if (!bounds.any) bounds.take(at);
    return bounds.box;
}

constexpr double least_margin = 8, most_margin = 26, far_side_within = 26, shortest_stretch = 60;

/// Long stretches keep one end: the front, the left or the upper one.
Box shortened(Box box, const Frame& frame) {
    double extent[3], middle[3];
    for (int k = 0; k < 3; ++k) middle[k] = extent[k] = box.high[k] - box.low[k];
    std::sort(middle, middle + 3);
    const double most = std::max(shortest_stretch, 2.2 * middle[1]);
    const Vector axes[] = {frame.x, frame.y, frame.z};
    for (int k = 0; k < 3; ++k) {
        if (extent[k] <= most) continue;
        const bool keeps_high = axes[k].x + axes[k].y - axes[k].z < 0;
        if (keeps_high)
            box.low[k] = box.high[k] - most;
        else
            box.high[k] = box.low[k] + most;
    }
    return box;
}

} // namespace

std::vector<Box> boxes_of_parts(const std::vector<solid::Placed>& parts) {
    std::vector<Box> boxes;
    for (const solid::Placed& part : parts) {
        Bounds bounds;
        bounds.take(part.solid->box, part.frame, Frame{});
        boxes.push_back(bounds.box);
    }
    return boxes;
}

std::vector<JointDetail> joint_details(const Job& job, int& letters_used) {
    const std::vector<joinery::Joint>& joints = job.model.joints;
    std::vector<std::vector<const joinery::Contact*>> contacts(joints.size());
    for (const joinery::Contact& contact : job.model.contacts)
        if (contact.joint >= 0) contacts[static_cast<std::size_t>(contact.joint)].push_back(&contact);
    struct Group {
        int first = 0;
        std::vector<std::pair<std::string, int>> places;
    };
    std::vector<Group> groups;
    std::map<std::string, std::size_t> known;
    for (std::size_t j = 0; j < joints.size(); ++j) {
        const joinery::Joint& joint = joints[j];
        if (!wants_detail(joint.kind)) continue;
        std::string key = joint.kind;
        for (const joinery::Size& size : joint.sizes)
            if (!size.unit.empty() || !is_fastening(joint.kind)) key += "|" + size_words(job, size);
        const auto [at, fresh] = known.emplace(std::move(key), groups.size());
        if (fresh) groups.push_back({static_cast<int>(j), {}});
        auto& places = groups[at->second].places;
        const std::string words = job.made(joint.a).part->base + " to " + job.made(joint.b).part->base;
        const auto place =
            std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.first == words; });
        if (place == places.end())
            places.push_back({words, 1});
        else
            ++place->second;
    }
    std::vector<JointDetail> details;
    for (const Group& group : groups) {
        const joinery::Joint& joint = joints[static_cast<std::size_t>(group.first)];
        JointDetail detail;
        detail.joint = group.first;
        detail.letter = letter_of(letters_used++);
        for (const joinery::Size& size : joint.sizes)
            if (!size.unit.empty() || !is_fastening(joint.kind))
                detail.sizes.push_back(size_words(job, size));
        for (const auto& [words, count] : group.places)
            detail.places.push_back(fmt::format("{}× {}", count, words));
        detail.frame = job.made(joint.a).part->frame;
        detail.frame.origin = {};
        detail.focus = shortened(
            focus_of(job, group.first, detail.frame, contacts[static_cast<std::size_t>(group.first)]),
            detail.frame);
        double widest = 0;
        for (int k = 0; k < 3; ++k) widest = std::max(widest, detail.focus.high[k] - detail.focus.low[k]);
        const double margin = std::clamp(0.35 * widest, least_margin, most_margin);
        detail.region = detail.focus;
        for (int k = 0; k < 3; ++k) detail.region.low[k] -= margin, detail.region.high[k] += margin;
        // A side that lies near is shown rather than broken off short of it.
        for (const int part : {joint.a, joint.b}) {
            Bounds bounds;
            bounds.take(job.made(part).solid.box, job.made(part).part->frame, detail.frame);
            for (int k = 0; k < 3; ++k) {
                double &low = detail.region.low[k], &high = detail.region.high[k];
                constexpr double beyond = 3;
                if (bounds.box.low[k] < low + beyond &&
                    bounds.box.low[k] > detail.focus.low[k] - margin - far_side_within)
                    low = bounds.box.low[k] - beyond;
                if (bounds.box.high[k] > high - beyond &&
                    bounds.box.high[k] < detail.focus.high[k] + margin + far_side_within)
                    high = bounds.box.high[k] + beyond;
            }
        }
        if (measure::norm(joint.assembly) > 0.5) {
            detail.into = measure::unit(joint.assembly);
        } else {
            // Several ways: along the part that goes in, towards the joint.
            const piece::Part& a = *job.made(joint.a).part;
            const Point middle =
                a.frame.out({a.length.value() / 2, a.width.value() / 2, a.thickness.value() / 2});
            detail.into = dot(a.frame.x, joint.at - middle) >= 0 ? a.frame.x : -a.frame.x;
        }
        details.push_back(std::move(detail));
    }
    return details;
}

} // namespace rayfleck::drawing
