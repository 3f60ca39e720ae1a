// See part_notes.hpp.

#include "drawing/part_notes.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include <fmt/format.h>

#include "drawing/part_borders.hpp"

namespace rayfleck::drawing {
namespace {

using piece::LocalSide;

/// A side in the words of the drawing.
std::string words_for(LocalSide side, const piece::Part& part) {
    if (side.axis == 0) return side.high ? "far end" : "near end";
    if (side.axis == 2) return side.high ? "face side" : "back of the face";
    return side.high == part.face_edge_high ? "face edge" : "back edge";
}

std::string angle_words(const piece::PlaneCut& cut) {
    std::string words;
    if (cut.miter && std::abs(cut.miter->in_degrees()) > 0.005)
        words += fmt::format("miter {:.1f}°", std::abs(cut.miter->in_degrees()));
    if (cut.bevel && std::abs(cut.bevel->in_degrees()) > 0.005)
        words += fmt::format("{}bevel {:.1f}°", words.empty() ? "" : ", ", std::abs(cut.bevel->in_degrees()));
    return words;
}

/// How far something lies from the side from which it is gauged: from the face edge or from the face side.
/// axis       1 across the width, 2 through the thickness
/// low, high  its borders on that axis
std::string place_words(const Job& job, int axis, double low, double high, const joinery::Made& made) {
    const double from_low = low - made.blank.low[axis], from_high = made.blank.high[axis] - high;
    if (from_low < 0.01 && from_high < 0.01) return "";
    if (std::abs(from_low - from_high) < 0.01)
        return axis == 1 ? ", in the middle of the width" : ", in the middle of the thickness";
    const double away = axis == 2 || made.part->face_edge_high ? from_high : from_low;
    const std::string side = axis == 2 ? "face side" : "face edge";
    return away < 0.01 ? ", at the " + side : ", " + job.figure(away) + " from the " + side;
}

std::string box_words(const Job& job, const measure::Box& cut, const joinery::Made& made) {
    // The depth is how far it reaches in from the side that it opens on; the rest is told long × wide.
    std::vector<double> sizes;
    double depth = -1;
    for (const int axis : {2, 1, 0}) {
        const double low = std::max(cut.low[axis], made.blank.low[axis]),
                     high = std::min(cut.high[axis], made.blank.high[axis]);
        const bool at_low = cut.low[axis] <= made.blank.low[axis] + 0.01,
                   at_high = cut.high[axis] >= made.blank.high[axis] - 0.01;
        if (depth < 0 && at_low != at_high && axis != 0)
            depth = high - low;
        else
            sizes.push_back(high - low);
    }
    if (depth < 0 && sizes.size() == 3) {
        depth = sizes.back();
        sizes.pop_back();
    }
    std::sort(sizes.rbegin(), sizes.rend());
    std::string words = job.figure(sizes[0]) + " × " + job.figure(sizes[1]);
    words += ", " + job.figure(depth) + " deep";
    // What shows at an end is dimensioned there.
    const auto mouth = mouth_of(cut, made.blank);
    const bool at_end = cut.low.x <= made.blank.low.x + 0.01 || cut.high.x >= made.blank.high.x - 0.01;
    if (mouth && !at_end) {
        const int across = 3 - mouth->axis;
        words += place_words(job, across, cut.low[across], cut.high[across], made);
    }
    return words;
}

/// Range of a part's own width or length over which an outline runs, and its arcs.
std::string arc_words(const Job& job, const solid::Outline& outline) {
    std::set<std::string> radii;
    solid::Point2 at = outline.start;
    for (const solid::Edge2& edge : outline.edges) {
        if (edge.centre)
            radii.insert("R" + job.figure(std::hypot(at.x - edge.centre->x, at.y - edge.centre->y)));
        at = edge.to;
    }
    return fmt::format("{}", fmt::join(radii, ", "));
}

/// A mortise that stands askew has no sizes along the part's own axes: what goes into it, and how far it
/// leans away from square. Nothing when its joint states no tenon.
std::string leaning_mortise_words(const Job& job, const piece::Cut& cut, const joinery::Made& made) {
    if (cut.joint < 0) return "";
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(cut.joint)];
    const auto size = [&](const std::string& what) -> std::string {
        for (const joinery::Size& s : joint.sizes)
            if (s.what == what && s.unit == "mm") return job.figure(s.value);
        return "";
    };
    const std::string width = size("tenon width"), thickness = size("tenon thickness");
    if (width.empty() || thickness.empty()) return "";
    std::string words = " for a tenon " + width + " × " + thickness;
    if (joint.kind.find("through") != std::string::npos)
        words += ", through";
    else if (const std::string length = size("tenon length"); !length.empty())
        words += ", " + length + " long";
    const measure::Vector way = made.part->frame.turn_in(joint.assembly);
    const double squarest = std::max({std::abs(way.x), std::abs(way.y), std::abs(way.z)});
    if (squarest > 0.5) {
        const double lean = std::acos(std::min(1.0, squarest)) * 180 / std::numbers::pi;
        if (lean > 0.05) words += fmt::format(", leaning {:.1f}°", lean);
    }
    return words;
}

std::string words_of(const Job& job, const piece::Cut& cut, const joinery::Made& made) {
    std::string words = cut.word;
    if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape))
        words += " " + box_words(job, box->box, made);
    if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape)) {
        words += " Ø" + job.figure(bore->diameter);
        words += bore->deep ? ", " + job.figure(*bore->deep) + " deep" : ", through";
        words += " in the " + words_for(bore->face, *made.part);
        if (bore->face.axis != 0) {
            const int across = 3 - bore->face.axis;
            words += place_words(job, across, bore->centre[across], bore->centre[across], made);
        }
        if (bore->direction) {
            const double lean = std::acos(std::min(1.0, std::abs((*bore->direction)[bore->face.axis]))) *
                                180 / std::numbers::pi;
            words += fmt::format(", leaning {:.1f}°", lean);
        }
    }
    if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape)) {
        if (std::abs(plane->plane.normal.x) < 0.5) {
            // A cut along the length: what counts is how far it leaves it, and how far the blade is tilted.
            const double lean =
                std::asin(std::min(1.0, std::abs(plane->plane.normal.x))) * 180 / std::numbers::pi;
            if (lean > 0.05) words += fmt::format(", {:.1f}° off the length", lean);
            if (plane->bevel && std::abs(plane->bevel->in_degrees()) > 0.05)
                words += fmt::format(", bevel {:.1f}°", std::abs(plane->bevel->in_degrees()));
        } else if (const std::string angles = angle_words(*plane); !angles.empty()) {
            words += ": set the saw to " + angles;
        }
    }
    if (const auto* prism = std::get_if<piece::PrismCut>(&cut.shape)) {
        if (const std::string arcs = arc_words(job, prism->outline); !arcs.empty()) words += " " + arcs;
        if (cut.word == "mortise") words += leaning_mortise_words(job, cut, made);
    }
    if (const auto* turned = std::get_if<piece::TurnedCut>(&cut.shape)) {
        // Of a smooth curve only its ends and its thickest and thinnest places are told.
        std::vector<std::string> stations;
        const std::vector<solid::Station>& all = turned->profile;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const bool within = i > 0 && i + 1 < all.size() && all[i - 1].smooth && all[i].smooth;
            const bool turns =
                within && (all[i].radius - all[i - 1].radius) * (all[i + 1].radius - all[i].radius) <= 0;
            if (!within || turns)
                stations.push_back("Ø" + job.figure(2 * all[i].radius) + " at " + job.figure(all[i].x));
        }
        words += fmt::format(" {}", fmt::join(stations, ", "));
    }
    if (!cut.remark.empty()) words += " (" + cut.remark + ")";
    return words;
}

/// Chamfers, round-overs and mouldings: one line for each profile, with the arrises that it runs along.
std::vector<std::string> edge_notes(const Job& job, const joinery::Made& made) {
    std::vector<std::string> order;
    std::map<std::string, std::vector<std::pair<LocalSide, LocalSide>>> along;
    for (const piece::Cut& cut : made.cuts) {
        const auto* edge = std::get_if<piece::EdgeCut>(&cut.shape);
        if (!edge) continue;
        const std::string size = edge->on_first == edge->on_second
                                     ? job.figure(edge->on_first)
                                     : job.figure(edge->on_first) + " × " + job.figure(edge->on_second);
        const std::string words = cut.word + " " + size;
        if (!along.contains(words)) order.push_back(words);
        along[words].push_back({edge->first, edge->second});
    }
    std::vector<std::string> notes;
    for (const std::string& words : order) {
        const auto& edges = along[words];
        if (edges.size() == 12) {
            notes.push_back(words + " on all edges");
            continue;
        }
        // All four arrises of one side are told by the side.
        std::vector<std::string> places;
        std::set<std::size_t> told;
        // So are the four that run along the length.
        std::vector<std::size_t> lengthwise;
        for (std::size_t i = 0; i < edges.size(); ++i)
            if (edges[i].first.axis != 0 && edges[i].second.axis != 0) lengthwise.push_back(i);
        if (lengthwise.size() == 4) {
            told.insert(lengthwise.begin(), lengthwise.end());
            places.push_back("on the four long arrises");
        }
        for (int axis = 2; axis >= 0; --axis)
            for (const bool high : {true, false}) {
                const LocalSide side{axis, high};
                std::vector<std::size_t> of_side;
                for (std::size_t i = 0; i < edges.size(); ++i)
                    if (!told.contains(i) && (edges[i].first == side || edges[i].second == side))
                        of_side.push_back(i);
                if (of_side.size() != 4) continue;
                told.insert(of_side.begin(), of_side.end());
                places.push_back("all round the " + words_for(side, *made.part));
            }
        for (std::size_t i = 0; i < edges.size(); ++i)
            if (!told.contains(i))
                places.push_back(words_for(edges[i].first, *made.part) + " to " +
                                 words_for(edges[i].second, *made.part));
        notes.push_back(fmt::format("{} {}", words, fmt::join(places, ", ")));
    }
    return notes;
}

} // namespace

std::vector<std::string> cut_notes(const Job& job, const cutlist::Row& row) {
    const joinery::Made& made = job.made(row.parts.front());
    std::vector<std::string> order;
    std::map<std::string, int> count;
    for (const piece::Cut& cut : made.cuts) {
        if (is_waste_round_a_tongue(cut.word) && !std::holds_alternative<piece::PlaneCut>(cut.shape))
            continue;
        if (std::holds_alternative<piece::EdgeCut>(cut.shape)) continue;
        // Trimmed flush once it is driven home: nothing to set out beforehand.
        if (cut.word == "tenon end") continue;
        const std::string words = words_of(job, cut, made);
        if (count[words]++ == 0) order.push_back(words);
    }
    std::vector<std::string> notes;
    for (const std::string& words : order)
        notes.push_back(count[words] > 1 ? fmt::format("{}× {}", count[words], words) : words);
    const std::vector<std::string> edges = edge_notes(job, made);
    notes.insert(notes.end(), edges.begin(), edges.end());
    if (made.part->outline)
        if (const std::string arcs = arc_words(job, *made.part->outline); !arcs.empty())
            notes.push_back("outline with arcs " + arcs);
    return notes;
}

std::vector<std::string> joint_notes(const Job& job, const cutlist::Row& row) {
    const int part = row.parts.front();
    std::vector<std::string> order, without_sizes;
    std::map<std::string, int> count;
    for (const joinery::Joint& joint : job.model.joints) {
        if (joint.a != part && joint.b != part) continue;
        const int other = joint.a == part ? joint.b : joint.a;
        std::vector<std::string> sizes;
        // The part that goes in carries the sizes; the other shows them as cuts.
        for (const joinery::Size& size : joint.a == part ? joint.sizes : std::vector<joinery::Size>{}) {
            // Where it comes from stands once in the set, under the rules of sizes left out.
            std::string figure = size.unit == "mm" ? job.figure(size.value)
                                                   : fmt::format("{:g}", std::round(size.value * 100) / 100);
            if (size.unit == "degrees") figure += "°";
            sizes.push_back(size.what + " " + figure);
        }
        std::string words = joint.kind + " with " + job.made(other).part->base;
        const bool told = !sizes.empty();
        if (told) words += fmt::format(": {}", fmt::join(sizes, "; "));
        if (count[words]++ == 0) (told ? order : without_sizes).push_back(words);
    }
    const auto counted = [&](const std::string& words) {
        return count[words] > 1 ? fmt::format("{}× {}", count[words], words) : words;
    };
    std::vector<std::string> notes;
    for (const std::string& words : order) notes.push_back(counted(words));
    // Joints of which this part only holds the hole are named in one line.
    std::string line;
    for (const std::string& words : without_sizes) line += (line.empty() ? "" : "; ") + counted(words);
    if (!line.empty()) notes.push_back(line);
    return notes;
}

std::vector<std::string> rules_of_sizes(const Job& job) {
    std::vector<std::string> rules;
    for (const joinery::Joint& joint : job.model.joints)
        for (const joinery::Size& size : joint.sizes) {
            if (size.from.empty() || size.from == "stated") continue;
            const std::string rule = size.what + ": " + size.from;
            if (std::find(rules.begin(), rules.end(), rule) == rules.end()) rules.push_back(rule);
        }
    return rules;
}

std::vector<std::string> bench_notes(const Job& job, const cutlist::Row& row) {
    const joinery::Made& made = job.made(row.parts.front());
    std::vector<std::string> notes;
    if (!row.mirrored.empty()) {
        std::vector<std::string> as_drawn, mirrored;
        for (const int p : row.parts)
            (std::find(row.mirrored.begin(), row.mirrored.end(), p) != row.mirrored.end() ? mirrored
                                                                                          : as_drawn)
                .push_back(job.made(p).part->name);
        notes.push_back(fmt::format("as drawn: {}; mirror image: {}", fmt::join(as_drawn, ", "),
                                    fmt::join(mirrored, ", ")));
    }
    std::string remark = row.remark;
    // How many are mirrored has been said above, with their names.
    if (const auto at = remark.rfind(" as drawn, "); at != std::string::npos && !row.mirrored.empty()) {
        const auto comma = remark.rfind(", ", at - 1);
        remark.resize(comma == std::string::npos ? 0 : comma);
    }
    if (!remark.empty()) notes.push_back(remark);
    for (const piece::Note& note : made.part->notes) notes.push_back(note.text);
    return notes;
}

} // namespace rayfleck::drawing
