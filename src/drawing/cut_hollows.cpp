// Boxes and round holes: mortises, grooves, rabbets, laps, notches, bores.
//
// A box is told by its three sizes and the place of its low corner; what spans the whole blank needs no
// place. A bore is told by its diameter, its depth and its centre on the side from which it is bored. One
// that leans is told by two angles: how far it leaves square along each direction of that side.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/cut_atoms.hpp"
#include "drawing/part_borders.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::Point;
using measure::Vector;

constexpr double same_place = 1e-3; // mm
constexpr double square_within = 1e-9;

} // namespace

std::optional<Atom> hollow_atom(const Telling& telling, const piece::Cut& cut, const Box& own) {
    Box box = telling.gauge.in(own);
    for (int axis = 0; axis < 3; ++axis) {
        box.low[axis] = std::max(box.low[axis], 0.0);
        box.high[axis] = std::min(box.high[axis], telling.gauge.size(axis));
        if (box.high[axis] - box.low[axis] < same_place) return std::nullopt;
    }
    Atom atom;
    atom.feature.record.word = cut.word;
    atom.feature.record.form = CutForm::hollow;
    atom.at = box.low;
    atom.box = box;
    std::array<bool, 3> whole{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const int k = static_cast<int>(axis);
        telling.add(atom.feature, size_names[axis], box.high[k] - box.low[k]);
        whole[axis] = box.high[k] - box.low[k] > telling.gauge.size(k) - same_place;
        atom.placed[axis] = !whole[axis];
    }
    if (cut.remark == "haunch")
        atom.feature.words = "haunch";
    else if (!cut.remark.empty())
        atom.feature.words = "(" + cut.remark + ")";
    atom.feature.seen_from = side_seen(own, telling.made.blank, telling.made.part->face_edge_high);
    return atom;
}

std::string leaning_words(const Telling& telling, Feature& feature, Vector direction, int axis) {
    std::string words;
    for (int other = 0; other < 3; ++other) {
        if (other == axis) continue;
        const double lean = std::atan2(direction[other], std::abs(direction[axis])) * 180 / std::numbers::pi;
        if (std::abs(lean) < square_within) continue;
        const std::string shown = telling.degrees(std::abs(lean));
        words += (words.empty() ? "leaning " : ", ") + shown + " to the " + side_name(other, lean > 0);
        telling.add(feature, std::string("lean ") + size_names[static_cast<std::size_t>(other)], lean, shown);
    }
    return words;
}

Atom bore_atom(const Telling& telling, const piece::Cut& cut, const piece::BoreCut& bore) {
    Atom atom;
    Feature& feature = atom.feature;
    CutRecord& record = feature.record;
    record.word = cut.word;
    record.form = CutForm::bore;
    record.side = side_name(telling.gauge, bore.face);
    record.axis = bore.face.axis;
    record.far = telling.gauge.is_far(bore.face);
    record.through = !bore.deep;
    const Point centre = telling.gauge.in(bore.centre);
    atom.at = centre;
    for (int axis = 0; axis < 3; ++axis) atom.placed[static_cast<std::size_t>(axis)] = axis != bore.face.axis;
    const std::string diameter = telling.figure(bore.diameter);
    feature.words = "Ø" + diameter;
    telling.add(feature, "diameter", bore.diameter, diameter);
    if (bore.deep) {
        const std::string deep = telling.figure(*bore.deep);
        feature.words += ", " + deep + " deep";
        telling.add(feature, "deep", *bore.deep, deep);
    } else {
        feature.words += ", through";
    }
    feature.words += ", in the " + record.side;
    if (bore.direction) {
        const std::string lean =
            leaning_words(telling, feature, telling.gauge.turn(*bore.direction), bore.face.axis);
        if (!lean.empty()) feature.words += ", " + lean;
    }
    if (!cut.remark.empty()) feature.words += " (" + cut.remark + ")";
    const double r = bore.diameter / 2, size = telling.gauge.size(bore.face.axis);
    for (int axis = 0; axis < 3; ++axis) {
        atom.box.low[axis] = centre[axis] - r;
        atom.box.high[axis] = centre[axis] + r;
        if (axis != bore.face.axis) continue;
        const double deep = std::min(bore.deep.value_or(size), size);
        atom.box.low[axis] = std::max(0.0, record.far ? centre[axis] - deep : centre[axis]);
        atom.box.high[axis] = std::min(size, record.far ? centre[axis] : centre[axis] + deep);
    }
    // A bore right through shows on the face side too.
    feature.seen_from = bore.face.axis == 2 && !bore.deep ? piece::LocalSide{2, true} : bore.face;
    return atom;
}

} // namespace rayfleck::drawing
