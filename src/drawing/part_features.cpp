// Atoms are collected sort by sort, in the order in which they are made at the bench: shaping, shoulders and
// tenons, then the hollows of the joints, mouldings last. Equal atoms become one feature when their places
// fill a grid: all that share the places on two axes first, then those rows that differ on one axis only.

#include "drawing/part_features.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/cut_atoms.hpp"
#include "drawing/part_borders.hpp"

namespace rayfleck::drawing {

using measure::Box;
using measure::Point;

const std::array<const char*, 3> size_names{"along", "across", "through"};
const std::array<const char*, 3> place_names{"from near end", "from face edge", "from face side"};

namespace {

constexpr double same_place = 1e-3; // mm

Box upright(Point a, Point b) {
    Box box;
    for (int k = 0; k < 3; ++k) box.low[k] = std::min(a[k], b[k]), box.high[k] = std::max(a[k], b[k]);
    return box;
}

/// What two cuts must share to be told as one.
std::string key_of(const Atom& atom) {
    const CutRecord& r = atom.feature.record;
    std::string key =
        fmt::format("{}|{}|{}|{}|{}|{}|{}", r.word, static_cast<int>(r.form), r.axis,
                    r.form == CutForm::tongue ? false : r.far, r.side, r.through, atom.feature.words);
    for (const std::string& a : r.arrises) key += "|" + a;
    const auto number = [&](double v) { key += fmt::format(",{}", std::llround(v * 1000)); };
    for (const CutFigure& f : r.figures) number(f.value);
    for (const CutPoint& p : r.points) {
        number(p.x), number(p.y);
        if (p.arc) number(p.centre_x), number(p.centre_y);
    }
    for (std::size_t k = 0; k < 3; ++k) {
        key += atom.placed[k] ? "p" : "-";
    }
    if (atom.feature.seen_from && r.form != CutForm::tongue)
        key += fmt::format("{}{}", atom.feature.seen_from->axis, atom.feature.seen_from->high);
    return key;
}

struct Grid {
    std::array<std::vector<double>, 3> at;
    std::vector<std::size_t> atoms;
    std::vector<std::size_t> twins; ///< cuts at the place of one of them
};

bool same_list(const std::vector<double>& a, const std::vector<double>& b) {
    return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](double x, double y) {
               return std::abs(x - y) < same_place;
           });
}

std::vector<Grid> grids_of(const std::vector<Atom>& atoms, const std::vector<std::size_t>& equal) {
    std::vector<Grid> grids;
    for (const std::size_t i : equal) {
        // The same cut asked for twice (a rabbet shaped and then joined) is one.
        const auto twin = std::find_if(grids.begin(), grids.end(), [&](const Grid& other) {
            return measure::norm(atoms[other.atoms.front()].at - atoms[i].at) < same_place;
        });
        if (twin != grids.end()) {
            twin->twins.push_back(i);
            continue;
        }
        Grid grid;
        for (std::size_t k = 0; k < 3; ++k)
            if (atoms[i].placed[k]) grid.at[k] = {atoms[i].at[static_cast<int>(k)]};
        grid.atoms = {i};
        grids.push_back(std::move(grid));
    }
    for (std::size_t axis = 0; axis < 3; ++axis) {
        std::vector<Grid> merged;
        for (Grid& grid : grids) {
            const auto into = std::find_if(merged.begin(), merged.end(), [&](const Grid& other) {
                for (std::size_t k = 0; k < 3; ++k)
                    if (k != axis && !same_list(grid.at[k], other.at[k])) return false;
                return true;
            });
            if (into == merged.end()) {
                merged.push_back(std::move(grid));
                continue;
            }
            for (const double at : grid.at[axis])
                if (std::none_of(into->at[axis].begin(), into->at[axis].end(),
                                 [&](double t) { return std::abs(t - at) < same_place; }))
                    into->at[axis].push_back(at);
            into->atoms.insert(into->atoms.end(), grid.atoms.begin(), grid.atoms.end());
            into->twins.insert(into->twins.end(), grid.twins.begin(), grid.twins.end());
        }
        for (Grid& grid : merged) std::sort(grid.at[axis].begin(), grid.at[axis].end());
        grids = std::move(merged);
    }
    return grids;
}

/// Equal steps from the first place to the last.
bool in_steps(const std::vector<double>& at) {
    for (std::size_t i = 2; i < at.size(); ++i)
        if (std::abs((at[i] - at[i - 1]) - (at[1] - at[0])) > 0.01) return false;
    return at.size() > 2;
}

/// The places on one axis as figures: equal steps as one, also where pairs or threes repeat.
void add_places(const Telling& telling, CutRecord& record, const char* what, const std::vector<double>& at) {
    const auto add = [&](double first, std::size_t times, double last) {
        CutFigure figure;
        figure.what = what;
        figure.value = first;
        figure.shown = telling.figure(first);
        figure.times = static_cast<int>(times);
        if (times > 1) figure.pitch = (last - first) / static_cast<double>(times - 1);
        record.figures.push_back(figure);
    };
    for (std::size_t stride = 1; stride <= 3; ++stride) {
        if (at.size() % stride != 0) continue;
        std::vector<std::vector<double>> runs(stride);
        for (std::size_t i = 0; i < at.size(); ++i) runs[i % stride].push_back(at[i]);
        if (!std::all_of(runs.begin(), runs.end(), in_steps)) continue;
        for (const std::vector<double>& run : runs) add(run.front(), run.size(), run.back());
        return;
    }
    for (std::size_t i = 0; i < at.size();) {
        std::size_t j = i + 1;
        while (j + 1 < at.size() && std::abs((at[j + 1] - at[j]) - (at[j] - at[j - 1])) < 0.01) ++j;
        const bool run = j < at.size() && j - i >= 2;
        add(at[i], run ? j - i + 1 : 1, run ? at[j] : at[i]);
        i = run ? j + 1 : i + 1;
    }
}

Feature feature_of(const Telling& telling, const std::vector<Atom>& atoms, const Grid& grid) {
    Feature feature = atoms[grid.atoms.front()].feature;
    CutRecord& record = feature.record;
    if (record.form != CutForm::edge) record.count = static_cast<int>(grid.atoms.size());
    feature.joints.clear();
    for (const std::size_t i : grid.atoms) {
        feature.places.push_back(atoms[i].box);
        feature.joints.insert(atoms[i].feature.joints.begin(), atoms[i].feature.joints.end());
    }
    for (const std::size_t i : grid.twins)
        feature.joints.insert(atoms[i].feature.joints.begin(), atoms[i].feature.joints.end());
    for (std::size_t k = 0; k < 3; ++k) add_places(telling, record, place_names[k], grid.at[k]);
    return feature;
}

std::vector<Atom> atoms_of(const Telling& telling) {
    const joinery::Made& made = telling.made;
    std::vector<int> tools(made.cuts.size(), 0);
    for (const int cut : made.tool_cut) ++tools[static_cast<std::size_t>(cut)];
    std::vector<bool> taken(made.cuts.size(), false);
    const std::vector<Atom> shoulders = shoulder_atoms(telling, taken);
    // Of a joint whose shoulder slants the rest of the waste is not round a tongue any more.
    std::set<int> slanting;
    for (const Atom& atom : shoulders)
        slanting.insert(atom.feature.joints.begin(), atom.feature.joints.end());
    std::vector<bool> left = taken;
    for (std::size_t c = 0; c < made.cuts.size(); ++c)
        if (slanting.contains(made.cuts[c].joint)) left[c] = true;
    const std::vector<bool> before = left;
    const std::vector<Atom> tongues = tongue_atoms(telling, left);
    for (std::size_t c = 0; c < left.size(); ++c)
        if (left[c] && !before[c]) taken[c] = true;

    std::vector<Atom> atoms;
    const auto take = [&](std::size_t c) {
        const piece::Cut& cut = made.cuts[c];
        if (taken[c]) return;
        std::optional<Atom> atom;
        if (const auto* turned = std::get_if<piece::TurnedCut>(&cut.shape)) {
            if (turned->profile.size() > 1) atom = turned_atom(telling, cut, *turned);
        } else if (tools[c] > 0) {
            if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape))
                atom = hollow_atom(telling, cut, box->box);
            if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape))
                atom = bore_atom(telling, cut, *bore);
            if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape))
                atom = plane_atom(telling, cut, plane->plane);
            if (const auto* prism = std::get_if<piece::PrismCut>(&cut.shape))
                atom = prism_atom(telling, cut, *prism);
        }
        if (!atom) return;
        if (cut.joint >= 0) atom->feature.joints.insert(cut.joint);
        atoms.push_back(std::move(*atom));
    };
    for (std::size_t c = 0; c < made.cuts.size(); ++c)
        if (made.cuts[c].joint < 0) take(c);
    atoms.insert(atoms.end(), shoulders.begin(), shoulders.end());
    atoms.insert(atoms.end(), tongues.begin(), tongues.end());
    for (std::size_t c = 0; c < made.cuts.size(); ++c)
        if (made.cuts[c].joint >= 0) take(c);
    const std::vector<Atom> mouldings = moulding_atoms(telling);
    atoms.insert(atoms.end(), mouldings.begin(), mouldings.end());
    return atoms;
}

/// a, b, c … z, aa, ab …; l and o are left out, which read as figures.
std::string letter_of(std::size_t index) {
    static const std::string letters = "abcdefghijkmnpqrstuvwxyz";
    std::string letter(1, letters[index % letters.size()]);
    for (index /= letters.size(); index > 0; index /= letters.size())
        letter.insert(letter.begin(), letters[(index - 1) % letters.size()]);
    return letter;
}

bool told_without_strings(const std::string& word) {
    for (const char* part : {"tail", "pin", "finger", "key", "spline", "thread"})
        if (word.find(part) != std::string::npos) return true;
    return false;
}

} // namespace

Box GaugeFrame::in(const Box& box) const { return upright(in(box.low), in(box.high)); }
Box GaugeFrame::out(const Box& box) const { return upright(out(box.low), out(box.high)); }

std::string side_name(int axis, bool far) {
    static constexpr const char* names[3][2] = {
        {"near end", "far end"}, {"face edge", "back edge"}, {"face side", "back"}};
    return names[axis][far ? 1 : 0];
}
std::string side_name(const GaugeFrame& gauge, piece::LocalSide side) {
    return side_name(side.axis, gauge.is_far(side));
}

std::string Telling::degrees(double angle) const { return fmt::format("{:.1f}°", angle); }

Box Telling::body() const {
    const piece::Part& whole = *made.part;
    return gauge.in(Box{{0, 0, 0}, {whole.length.value(), whole.width.value(), whole.thickness.value()}});
}

bool Telling::grown(int axis, bool far) const {
    const Box box = body();
    return far ? box.high[axis] < gauge.size(axis) - same_place : box.low[axis] > same_place;
}

std::vector<Feature> features_of(const Job& job, int part) {
    const joinery::Made& made = job.made(part);
    const Telling telling{job, made, part, GaugeFrame(made)};
    std::vector<Feature> features{blank_feature(telling)};
    const std::vector<Atom> atoms = atoms_of(telling);
    std::vector<std::string> order;
    std::vector<std::vector<std::size_t>> equal;
    for (std::size_t i = 0; i < atoms.size(); ++i) {
        const std::string key = key_of(atoms[i]);
        const auto at = std::find(order.begin(), order.end(), key);
        if (at == order.end()) {
            order.push_back(key);
            equal.push_back({i});
        } else {
            equal[static_cast<std::size_t>(at - order.begin())].push_back(i);
        }
    }
    for (const std::vector<std::size_t>& group : equal)
        for (const Grid& grid : grids_of(atoms, group)) features.push_back(feature_of(telling, atoms, grid));
    for (std::size_t i = 0; i < features.size(); ++i) {
        if (i > 0) features[i].record.letter = letter_of(i - 1);
        features[i].record.part = made.part->name;
        if (told_without_strings(features[i].record.word)) features[i].told_by_strings = false;
    }
    return features;
}

std::vector<const CutFigure*> figures_of(const CutRecord& record, const std::string& what) {
    std::vector<const CutFigure*> found;
    for (const CutFigure& figure : record.figures)
        if (figure.what == what) found.push_back(&figure);
    return found;
}

std::vector<double> values_of(const CutRecord& record, const std::string& what) {
    std::vector<double> values;
    for (const CutFigure& figure : record.figures)
        if (figure.what == what)
            for (int i = 0; i < figure.times; ++i) values.push_back(figure.value + i * figure.pitch);
    return values;
}

} // namespace rayfleck::drawing
