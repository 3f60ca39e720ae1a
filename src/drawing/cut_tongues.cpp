// What stands at the sides of a part: tenons, haunches, tongues, tails; told by its own size instead of by
// the waste round it.
//
// All waste that reaches one side and was cut to leave something standing there is looked at together. Its
// borders divide the section of that side into cells. In each cell the wood stands to the blank's side, or to
// where waste begins, or only to the deepest shoulder; equal cells put together are what stands. So two
// tenons at one end with a haunch between them become three features, and a shoulder that is set back on one
// face becomes a step. Slanting shoulders are cut as prisms, all of one joint along one plane, each beside
// the tongue; they become one feature: the plane, and the tongue that they leave.

#include <algorithm>
#include <cmath>
#include <map>

#include "drawing/cut_atoms.hpp"
#include "drawing/part_borders.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::Point;
using measure::Vector;

constexpr double same_level = 1e-4; // mm

/// `tenon cheek`, `tenon shoulder` → `tenon`; `tongue shoulder` → `tongue`.
std::string standing_word(std::string word) {
    for (const char* end : {" cheek", " shoulder"})
        if (const auto at = word.rfind(end);
            at != std::string::npos && at + std::string(end).size() == word.size())
            word.resize(at);
    return word == "end trim" ? "end" : word;
}

std::vector<double> levels(std::vector<double> all, double low, double high) {
    all.insert(all.end(), {low, high});
    std::sort(all.begin(), all.end());
    std::vector<double> kept;
    for (const double level : all)
        if (level > low - same_level && level < high + same_level &&
            (kept.empty() || level > kept.back() + same_level))
            kept.push_back(level);
    return kept;
}

struct Waste {
    Box box;
    int joint = -1;
    std::string word;
};

/// What stands across `axis` at one of its sides.
void tell_side(const Telling& telling, int axis, bool far, const std::vector<Waste>& waste,
               std::vector<Atom>& atoms) {
    const double end = far ? telling.gauge.size(axis) : 0;
    const auto depth_of = [&](const Box& box) { return far ? end - box.low[axis] : box.high[axis]; };
    double deepest = 0;
    std::vector<double> us, vs;
    const int u = (axis + 1) % 3, v = (axis + 2) % 3;
    for (const Waste& w : waste) {
        deepest = std::max(deepest, depth_of(w.box));
        us.insert(us.end(), {w.box.low[u], w.box.high[u]});
        vs.insert(vs.end(), {w.box.low[v], w.box.high[v]});
    }
    us = levels(us, 0, telling.gauge.size(u));
    vs = levels(vs, 0, telling.gauge.size(v));
    const std::size_t nu = us.size() - 1, nv = vs.size() - 1;
    std::vector<double> cell(nu * nv, 0); // depth of the waste; 0: it stands to the side
    std::vector<int> joint(nu * nv, -1);
    for (std::size_t j = 0; j < nv; ++j)
        for (std::size_t i = 0; i < nu; ++i)
            for (const Waste& w : waste) {
                const double cu = (us[i] + us[i + 1]) / 2, cv = (vs[j] + vs[j + 1]) / 2;
                if (cu < w.box.low[u] || cu > w.box.high[u] || cv < w.box.low[v] || cv > w.box.high[v])
                    continue;
                cell[j * nu + i] = std::max(cell[j * nu + i], depth_of(w.box));
            }
    std::vector<bool> done(nu * nv, false);
    const std::string word = standing_word(waste.front().word);
    for (std::size_t j = 0; j < nv; ++j)
        for (std::size_t i = 0; i < nu; ++i) {
            const double depth = cell[j * nu + i];
            if (done[j * nu + i] || depth > deepest - same_level) continue;
            const auto like = [&](std::size_t c) {
                return !done[c] && std::abs(cell[c] - depth) < same_level;
            };
            std::size_t i_end = i + 1, j_end = j + 1;
            while (i_end < nu && like(j * nu + i_end)) ++i_end;
            const auto row_is_like = [&](std::size_t row) {
                for (std::size_t c = i; c < i_end; ++c)
                    if (!like(row * nu + c)) return false;
                return true;
            };
            while (j_end < nv && row_is_like(j_end)) ++j_end;
            for (std::size_t r = j; r < j_end; ++r)
                for (std::size_t c = i; c < i_end; ++c) done[r * nu + c] = true;
            Box box;
            box.low[axis] = far ? end - deepest : depth;
            box.high[axis] = far ? end - depth : deepest;
            box.low[u] = us[i], box.high[u] = us[i_end];
            box.low[v] = vs[j], box.high[v] = vs[j_end];
            Atom atom;
            Feature& feature = atom.feature;
            feature.record.form = CutForm::tongue;
            feature.record.axis = axis;
            feature.record.word = depth < same_level ? word : word == "tenon" ? "haunch" : word + ", short";
            atom.at = box.low;
            atom.box = box;
            for (std::size_t k = 0; k < 3; ++k) {
                const int a = static_cast<int>(k);
                const double size = box.high[a] - box.low[a];
                telling.add(feature, size_names[k], size);
                atom.placed[k] = size < telling.gauge.size(a) - same_level;
            }
            for (const Waste& w : waste)
                if (w.joint >= 0) feature.joints.insert(w.joint);
            // Of several joints at one side each tongue belongs to the one whose waste lies round it.
            if (feature.joints.size() > 1) {
                std::map<int, double> near;
                for (const Waste& w : waste) {
                    double apart = 0;
                    for (const int a : {u, v})
                        apart += std::max({0.0, w.box.low[a] - box.high[a], box.low[a] - w.box.high[a]});
                    const auto [at, fresh] = near.emplace(w.joint, apart);
                    if (!fresh) at->second = std::min(at->second, apart);
                }
                std::set<int> touching;
                for (const auto& [j_index, apart] : near)
                    if (apart < same_level) touching.insert(j_index);
                if (!touching.empty()) feature.joints = touching;
            }
            feature.seen_from = piece::LocalSide{axis, axis == 0   ? far
                                                       : axis == 1 ? far != telling.gauge.face_edge_high
                                                                   : !far};
            atoms.push_back(std::move(atom));
        }
}

} // namespace

std::vector<Atom> tongue_atoms(const Telling& telling, std::vector<bool>& taken) {
    std::vector<Atom> atoms;
    const std::vector<piece::Cut>& cuts = telling.made.cuts;
    for (int axis = 0; axis < 3; ++axis)
        for (const bool far : {false, true}) {
            if (!telling.grown(axis, far)) continue;
            std::vector<Waste> waste;
            std::vector<std::size_t> of_side;
            for (std::size_t c = 0; c < cuts.size(); ++c) {
                const auto* cut = std::get_if<piece::BoxCut>(&cuts[c].shape);
                if (!cut || taken[c] || cuts[c].joint < 0 || !is_waste_round_a_tongue(cuts[c].word) ||
                    cuts[c].word == "lap")
                    continue;
                const Box box = telling.gauge.in(cut->box);
                const double end = far ? telling.gauge.size(axis) : 0;
                const bool reaches = far ? box.high[axis] > end - same_level : box.low[axis] < same_level;
                const double deep = box.high[axis] - box.low[axis];
                if (!reaches || deep > telling.gauge.size(axis) - same_level) continue;
                // A corner that two sides share belongs to the one from which it is cut less deep.
                bool other = false;
                for (int k = 0; k < 3; ++k)
                    for (const bool far_k : {false, true}) {
                        if (k == axis || !telling.grown(k, far_k)) continue;
                        const double end_k = far_k ? telling.gauge.size(k) : 0,
                                     deep_k = box.high[k] - box.low[k];
                        const bool reaches_k =
                            far_k ? box.high[k] > end_k - same_level : box.low[k] < same_level;
                        other = other || (reaches_k && deep_k < deep - same_level);
                    }
                if (other) continue;
                of_side.push_back(c);
                waste.push_back({box, cuts[c].joint, cuts[c].word});
            }
            const std::size_t before = atoms.size();
            if (!waste.empty()) tell_side(telling, axis, far, waste, atoms);
            // Where nothing is left standing the waste is told as what it is.
            if (atoms.size() > before)
                for (const std::size_t c : of_side) taken[c] = true;
        }
    return atoms;
}

std::vector<Atom> shoulder_atoms(const Telling& telling, std::vector<bool>& taken) {
    struct Slanting {
        std::size_t cut;
        solid::Plane plane;
        int axis; ///< the range along it is what is taken
        double low, high;
    };
    std::map<int, std::vector<Slanting>> by_joint;
    const std::vector<piece::Cut>& cuts = telling.made.cuts;
    for (std::size_t c = 0; c < cuts.size(); ++c) {
        const auto* prism = std::get_if<piece::PrismCut>(&cuts[c].shape);
        if (!prism || taken[c] || cuts[c].joint < 0 || !is_waste_round_a_tongue(cuts[c].word) ||
            prism->outline.edges.size() < 3 || prism->outline.edges.size() > 4)
            continue;
        int axis = -1;
        for (int k = 0; k < 3; ++k)
            if (std::abs(prism->frame.x[k]) > 1 - 1e-9) axis = k;
        // The waste's first side lies in the plane (see joinery).
        const solid::Point2 a = prism->outline.start, b = prism->outline.edges.front().to;
        if (axis < 0 || std::abs(prism->frame.z[0]) > 1 - 1e-9 || std::hypot(b.x - a.x, b.y - a.y) < 1e-6)
            continue;
        const Point pa = prism->frame.out({a.x, a.y, 0}), pb = prism->frame.out({b.x, b.y, 0});
        solid::Plane plane;
        plane.normal = measure::unit(cross(pb - pa, prism->frame.z));
        double middle = 0;
        for (const solid::Edge2& edge : prism->outline.edges)
            middle += dot(plane.normal, prism->frame.out({edge.to.x, edge.to.y, 0}) - pa);
        if (middle < 0) plane.normal = -plane.normal;
        plane.offset = dot(plane.normal, pa);
        if (std::abs(plane.normal.x) < 0.5 || axis == 0) continue;
        double low = a.x, high = a.x;
        for (const solid::Edge2& edge : prism->outline.edges)
            low = std::min(low, edge.to.x), high = std::max(high, edge.to.x);
        const double sign = prism->frame.x[axis];
        Point p, q;
        p[axis] = sign * low;
        q[axis] = sign * high;
        p = telling.gauge.in(p), q = telling.gauge.in(q);
        by_joint[cuts[c].joint].push_back(
            {c, plane, axis, std::min(p[axis], q[axis]), std::max(p[axis], q[axis])});
    }
    std::vector<Atom> atoms;
    for (const auto& [joint, all] : by_joint) {
        Box tongue{{}, {0, telling.gauge.size(1), telling.gauge.size(2)}};
        bool whole = false;
        for (const Slanting& s : all) {
            const bool from_low = s.low <= same_level,
                       to_high = s.high >= telling.gauge.size(s.axis) - same_level;
            whole = whole || (from_low && to_high);
            if (from_low) tongue.low[s.axis] = std::max(tongue.low[s.axis], s.high);
            if (to_high) tongue.high[s.axis] = std::min(tongue.high[s.axis], s.low);
        }
        auto atom = plane_atom(telling, cuts[all.front().cut], all.front().plane, true);
        if (!atom) continue;
        for (const Slanting& s : all) taken[s.cut] = true;
        Feature& feature = atom->feature;
        feature.record.word = standing_word(cuts[all.front().cut].word);
        feature.joints = {joint};
        if (!whole) {
            feature.record.form = CutForm::shoulder;
            for (std::size_t k = 1; k < 3; ++k) {
                const int a = static_cast<int>(k);
                telling.add(feature, size_names[k], tongue.high[a] - tongue.low[a]);
                atom->placed[k] = tongue.high[a] - tongue.low[a] < telling.gauge.size(a) - same_level;
                atom->at[a] = tongue.low[a];
                atom->box.low[a] = tongue.low[a];
                atom->box.high[a] = tongue.high[a];
            }
            const double end = feature.record.far ? telling.gauge.size(0) : 0;
            atom->box.low.x = std::min(atom->at.x, end);
            atom->box.high.x = std::max(atom->at.x, end);
            feature.words = "to the end; shoulder: " + feature.words;
        } else {
            feature.record.word = "crosscut";
        }
        atoms.push_back(std::move(*atom));
    }
    return atoms;
}

} // namespace rayfleck::drawing
