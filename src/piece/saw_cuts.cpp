// Saw cuts told by angle and place: miter, compound miter, crosscut, rip, resaw.
//
// A miter goes through the end of the part on its long side and takes the other side back. A compound miter
// is turned across the face by its first angle, and the blade tilted by its second; the face side stays the
// longer. A crosscut, rip or resaw at an angle leans out towards the named side and reaches the told place
// there; the rest is shorter.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "piece/shaping.hpp"

namespace rayfleck::piece {
namespace {

double radians(double degrees) { return degrees * std::numbers::pi / 180; }

std::optional<double> angle_of(Shaper& s, const Expression& x) {
    const auto degrees = degrees_of(s.e, x, s.context());
    if (!degrees) return std::nullopt;
    if (*degrees <= 0 || *degrees >= 90) {
        s.e.error("out-of-range", x.span, "the angle of a saw cut lies between 0 (square) and 90 degrees");
        return std::nullopt;
    }
    return degrees;
}

/// The side that stays long; untold, the outside, if the part has one.
std::optional<LocalSide> long_side(Shaper& s, const syntax::Miter& says, Span span) {
    if (says.towards) {
        const auto side = own_side(s.e, s.instance, *says.towards);
        if (side && side->axis == 0) {
            s.e.error("which-side", says.towards->span,
                      "the " + text(says.towards->side) + " of `" + s.name() + "` is its end")
                .mend = "name a side along the grain";
            return std::nullopt;
        }
        return side;
    }
    const std::size_t before = s.e.findings.size();
    const syntax::SideName outside{Side::outside, span};
    const auto side = own_side(s.e, s.instance, outside);
    if (!side && s.e.findings.size() > before) {
        auto last = s.e.findings.end();
        --last;
        last->message = "it is not clear which side of `" + s.name() + "` stays long";
        last->mend = "add it, as in `miter 45 degrees at left end long to front`";
    }
    return side;
}

} // namespace

void shape_miter(Shaper& s, const syntax::Miter& says, Span span) {
    const auto end = own_side(s.e, s.instance, says.end);
    if (!end) return;
    if (end->axis != 0) {
        s.e.error("not-an-end", says.end.span,
                  "the " + text(says.end.side) + " of `" + s.name() + "` is no end; its length runs " +
                      text(s.pose.readings[0].direction))
            .mend = "a miter is cut at an end";
        return;
    }
    const auto far = long_side(s, says, span);
    if (!far || says.angles.empty()) return;
    const auto miter = angle_of(s, says.angles.front());
    if (!miter) return;
    const double away = far->high ? -1 : 1;
    Vector n;
    Point corner;
    corner.x = end->high ? s.size(0) : 0;
    corner[far->axis] = far->high ? s.size(far->axis) : 0;
    if (says.angles.size() == 1) {
        n.x = std::cos(radians(*miter));
        n[far->axis] = std::sin(radians(*miter)) * away;
    } else {
        const auto bevel = angle_of(s, says.angles[1]);
        if (!bevel) return;
        const int other = 3 - far->axis;
        n.x = std::cos(radians(*bevel)) * std::cos(radians(*miter));
        n[far->axis] = std::cos(radians(*bevel)) * std::sin(radians(*miter)) * away;
        n[other] = -std::sin(radians(*bevel));
        corner[other] = s.size(other);
    }
    if (!end->high) n.x = -n.x;
    PlaneCut cut;
    cut.plane = {n, dot(n, corner)};
    set_saw(cut, 0);
    s.add(says.angles.size() == 1 ? "miter" : "compound miter", cut, span);
}

void shape_trim(Shaper& s, const syntax::TrimTo& says, Span span) {
    const auto side = own_side(s.e, s.instance, says.side);
    if (!side) return;
    constexpr std::array words{"crosscut", "rip", "resaw"};
    constexpr std::array whats{"an end", "an edge", "a face"};
    const std::string fitting = words[static_cast<std::size_t>(side->axis)];
    if (says.word != fitting) {
        s.e.error("wrong-saw-cut", says.side.span,
                  "the " + text(says.side.side) + " of `" + s.name() + "` is " +
                      whats[static_cast<std::size_t>(side->axis)] + ", which is not cut by `" + says.word +
                      "`")
            .mend = "write `" + fitting + "`";
        return;
    }
    const auto at = s.along(says.position, side->axis);
    if (!at) return;
    if (*at <= 0 || *at >= s.size(side->axis)) {
        s.e.error("outside-part", says.position.span, "this place does not lie within `" + s.name() + "`");
        return;
    }
    Vector n;
    n[side->axis] = side->high ? 1 : -1;
    Point p;
    p[side->axis] = *at;
    if (says.angle) {
        const auto angle = angle_of(s, *says.angle);
        if (!angle || !says.towards) return;
        const auto towards = own_side(s.e, s.instance, *says.towards);
        if (!towards) return;
        if (towards->axis == side->axis) {
            s.e.error("which-side", says.towards->span,
                      "a cut across cannot lean towards the " + text(says.towards->side));
            return;
        }
        n[side->axis] *= std::cos(radians(*angle));
        n[towards->axis] = std::sin(radians(*angle)) * (towards->high ? -1 : 1);
        p[towards->axis] = towards->high ? s.size(towards->axis) : 0;
    }
    PlaneCut cut;
    cut.plane = {n, dot(n, p)};
    set_saw(cut, side->axis);
    s.add(says.word, cut, span);
}

} // namespace rayfleck::piece
