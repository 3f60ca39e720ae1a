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

namespace {

/// The plane along which the end is sawn, in the gauge's frame, when there is one and it leaves the whole
/// end.
std::optional<solid::Plane> sawn_end(const Telling& telling, bool far) {
    std::optional<solid::Plane> found;
    for (const piece::Cut& cut : telling.made.cuts) {
        const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape);
        if (!plane || cut.joint >= 0) continue;
        const Vector n = telling.gauge.turn(plane->plane.normal);
        if (std::abs(n.x) < std::max(std::abs(n.y), std::abs(n.z)) || (n.x > 0) != far) continue;
        if (found || telling.grown(0, far)) return std::nullopt;
        found = solid::Plane{n, dot(n, telling.gauge.in(plane->plane.normal * plane->plane.offset))};
    }
    return found;
}

/// A bore square to an end that is sawn at an angle is told as it is bored: after the saw, its depth below
/// the sawn surface, its place along that surface from the arrises of the face edge and the face side. On the
/// squared blank it would begin in wood that is gone.
/// Returns false, having changed nothing, when the bore is none of these.
bool tell_on_sawn_end(const Telling& telling, const piece::BoreCut& bore, Atom& atom) {
    if (bore.face.axis != 0 || !bore.deep || !bore.direction) return false;
    CutRecord& record = atom.feature.record;
    const auto plane = sawn_end(telling, record.far);
    const Vector into = measure::unit(telling.gauge.turn(*bore.direction));
    if (!plane || dot(into, plane->normal) > -1 + 1e-9) return false;
    const double gone = dot(plane->normal, atom.at) - plane->offset;
    if (gone < same_place || *bore.deep - gone < same_place) return false;
    atom.at = atom.at + into * gone;
    atom.placed = {false, false, false};
    std::array<std::string, 3> shown;
    for (const int axis : {1, 2}) {
        const auto k = static_cast<std::size_t>(axis);
        const double along = atom.at[axis] / std::sqrt(1 - plane->normal[axis] * plane->normal[axis]);
        shown[k] = telling.figure(along);
        telling.add(atom.feature, std::string("on the sawn end ") + size_names[k], along, shown[k]);
    }
    const std::string deep = telling.figure(*bore.deep - gone);
    telling.add(atom.feature, "deep", *bore.deep - gone, deep);
    atom.feature.words += ", " + deep + " deep, square to the sawn " + record.side + "; on that end " +
                          shown[1] + " from the face edge, " + shown[2] + " from the face side";
    atom.feature.told_by_strings = false;
    return true;
}

} // namespace

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
    const bool on_sawn_end = tell_on_sawn_end(telling, bore, atom);
    if (on_sawn_end) {
        // All has been said.
    } else if (bore.deep) {
        const std::string deep = telling.figure(*bore.deep);
        feature.words += ", " + deep + " deep";
        telling.add(feature, "deep", *bore.deep, deep);
    } else {
        feature.words += ", through";
    }
    if (!on_sawn_end) feature.words += ", in the " + record.side;
    if (bore.direction && !on_sawn_end) {
        const std::string lean =
            leaning_words(telling, feature, telling.gauge.turn(*bore.direction), bore.face.axis);
        if (!lean.empty()) feature.words += ", " + lean;
    }
    if (!cut.remark.empty()) feature.words += " (" + cut.remark + ")";
    const double r = bore.diameter / 2, size = telling.gauge.size(bore.face.axis);
    for (int axis = 0; axis < 3; ++axis) {
        atom.box.low[axis] = atom.at[axis] - r;
        atom.box.high[axis] = atom.at[axis] + r;
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
