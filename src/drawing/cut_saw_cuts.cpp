// Saw cuts: everything beyond a plane, told as a saw is set.
//
// Across an end: where its long point lies, from the near end; the miter, by which the cut is turned across
// the face; the bevel, by which the blade is tilted. Along the part: two places of its line on the face (or,
// where it takes the face, on the edge), and the tilt. The angles are those of the plane itself, so that
// miter, bevel and one place make it again exactly. A shaping cut stops where joints have left something
// standing beyond the body.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "drawing/cut_atoms.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Point;
using measure::Vector;

constexpr double to_degrees = 180 / std::numbers::pi;
constexpr double square_within = 1e-7; // degrees; less cannot be set and is an error of rounding
constexpr double same_place = 1e-4;    // mm

Feature saw_feature(const Telling& telling, const piece::Cut& cut, const Vector& n, double offset,
                    Atom& atom) {
    Feature feature;
    CutRecord& record = feature.record;
    record.form = CutForm::saw;
    record.word = cut.word;
    record.axis = 0;
    record.far = n.x > 0;
    const double sign = record.far ? 1 : -1;
    double miter = std::atan(n.y / n.x) * to_degrees;
    double bevel = std::asin(std::clamp(n.z * sign, -1.0, 1.0)) * to_degrees;
    if (std::abs(miter) < square_within) miter = 0;
    if (std::abs(bevel) < square_within) bevel = 0;
    const bool long_at_face_edge = sign * miter >= 0, long_at_face_side = sign * bevel >= 0;
    Point at;
    at.y = long_at_face_edge ? 0 : telling.gauge.size(1);
    at.z = long_at_face_side ? 0 : telling.gauge.size(2);
    at.x = (offset - n.y * at.y - n.z * at.z) / n.x;
    atom.at = at;
    atom.placed = {true, false, false};
    record.arrises = {side_name(1, !long_at_face_edge), side_name(2, !long_at_face_side)};
    std::string words;
    if (miter != 0) {
        const std::string shown = telling.degrees(std::abs(miter));
        telling.add(feature, "miter", miter, shown);
        words = "miter " + shown + ", longer at the " + record.arrises[0];
    }
    if (bevel != 0) {
        const std::string shown = telling.degrees(std::abs(bevel));
        telling.add(feature, "bevel", bevel, shown);
        words += (words.empty() ? "" : "; ") + ("bevel " + shown) + ", longer at the " +
                 (record.arrises[1] == "back" ? "back" : "face side");
    }
    if (words.empty())
        words = "square";
    else
        words += "; long point " + std::string(record.far ? "at the far end" : "at the near end");
    feature.words = words;
    const double end = record.far ? telling.gauge.size(0) : 0;
    atom.box = {{std::min(at.x, end), 0, 0},
                {std::max(at.x, end), telling.gauge.size(1), telling.gauge.size(2)}};
    return feature;
}

/// `the near end`, `120 from the near end`.
std::string along_words(const Telling& telling, Feature& feature, const std::string& what, double x) {
    if (x < same_place) return "the near end";
    if (x > telling.gauge.size(0) - same_place) return "the far end";
    const std::string shown = telling.figure(x);
    telling.add(feature, what, x, shown);
    return shown + " from the near end";
}

Feature rip_feature(const Telling& telling, const piece::Cut& cut, const Vector& n, double offset, int axis,
                    Atom& atom) {
    Feature feature;
    CutRecord& record = feature.record;
    const int other = 3 - axis;
    record.form = CutForm::rip;
    record.word = cut.word;
    record.axis = axis;
    record.far = n[axis] > 0;
    const double sign = record.far ? 1 : -1, size = telling.gauge.size(axis), length = telling.gauge.size(0);
    // On the face side (or face edge) when the line shows there, else on the other.
    const auto at = [&](double x, double o) { return (offset - n.x * x - n[other] * o) / n[axis]; };
    double reference = 0;
    const auto shows = [&](double o) {
        const double a = at(0, o), b = at(length, o);
        return std::max(a, b) > -same_place && std::min(a, b) < size + same_place;
    };
    if (!shows(0) && shows(telling.gauge.size(other))) reference = telling.gauge.size(other);
    record.arrises = {side_name(other, reference > 0)};
    double tilt = std::asin(std::clamp(n[other] * sign, -1.0, 1.0)) * to_degrees;
    if (std::abs(tilt) < square_within) tilt = 0;
    const std::string from = " from the " + side_name(axis, false);
    double first_x = 0, second_x = length, first = at(0, reference), second = at(length, reference);
    std::string words;
    if (std::abs(first - second) < same_place) {
        const std::string shown = telling.figure(first);
        telling.add(feature, "first", first, shown);
        words = shown + from;
    } else {
        // Where the line leaves the blank on its way to an end it is told at that border.
        const auto crossing = [&](double level) {
            return (offset - n[axis] * level - n[other] * reference) / n.x;
        };
        const auto limit = [&](double& x, double& v) {
            if (v < -same_place) v = 0, x = crossing(0);
            if (v > size + same_place) v = size, x = crossing(size);
        };
        limit(first_x, first), limit(second_x, second);
        const std::string shown_first = telling.figure(first), shown_second = telling.figure(second);
        telling.add(feature, "first", first, shown_first);
        words = shown_first + from + " at " + along_words(telling, feature, "first x", first_x);
        telling.add(feature, "second", second, shown_second);
        words += ", " + shown_second + " at " + along_words(telling, feature, "second x", second_x);
        const double angle = std::atan(std::abs(n.x / n[axis])) * to_degrees;
        const std::string shown = "(" + telling.degrees(angle) + ")";
        feature.record.figures.push_back({"angle to the length", angle, shown, true});
        words += " " + shown;
    }
    if (tilt != 0) {
        const std::string shown = telling.degrees(std::abs(tilt));
        telling.add(feature, "tilt", tilt, shown);
        words += ", measured on the " + record.arrises[0] + "; bevel " + shown + ", wider at the " +
                 side_name(other, tilt < 0);
    }
    words += "; waste towards the " + side_name(axis, record.far);
    feature.words = words;
    atom.placed = {false, false, false};
    atom.box = {{0, 0, 0}, {length, telling.gauge.size(1), telling.gauge.size(2)}};
    const double low = std::clamp(std::min(first, second), 0.0, size),
                 high = std::clamp(std::max(first, second), 0.0, size);
    (record.far ? atom.box.low : atom.box.high)[axis] = record.far ? low : high;
    const double from_x = std::min(first_x, second_x), to_x = std::max(first_x, second_x);
    atom.box.low.x = std::clamp(from_x, 0.0, length);
    atom.box.high.x = std::clamp(to_x, 0.0, length);
    return feature;
}

} // namespace

std::optional<Atom> plane_atom(const Telling& telling, const piece::Cut& cut, const solid::Plane& own,
                               bool across_the_end) {
    const Vector n = telling.gauge.turn(own.normal);
    // A point of the plane carried over gives its offset.
    const double offset = dot(n, telling.gauge.in(own.normal * own.offset));
    Atom atom;
    int axis = 0;
    for (int k = 1; k < 3; ++k)
        if (!across_the_end && std::abs(n[k]) > std::abs(n[axis]) + 1e-6) axis = k;
    atom.feature = axis == 0 ? saw_feature(telling, cut, n, offset, atom)
                             : rip_feature(telling, cut, n, offset, axis, atom);
    if (cut.joint < 0) {
        const measure::Box body = telling.body();
        for (int k = 0; k < 3; ++k) {
            if (!telling.grown(k, false) && !telling.grown(k, true)) continue;
            const std::string size = size_names[static_cast<std::size_t>(k)];
            std::string words;
            if (telling.grown(k, false)) {
                words = telling.figure(body.low[k]);
                telling.add(atom.feature, "limit low " + size, body.low[k], words);
            }
            if (telling.grown(k, true)) {
                const std::string high = telling.figure(body.high[k]);
                words = (words.empty() ? "up to " : "from " + words + " to ") + high;
                telling.add(atom.feature, "limit high " + size, body.high[k], high);
            } else {
                words = "beyond " + words;
            }
            atom.feature.words += "; only " + words + " from the " + side_name(k, false);
            break;
        }
    }
    if (!cut.remark.empty()) atom.feature.words += " (" + cut.remark + ")";
    return atom;
}

} // namespace rayfleck::drawing
