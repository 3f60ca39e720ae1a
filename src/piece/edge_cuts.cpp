// Cuts along edges: chamfers, round-overs, mouldings, bevels, rabbets; and which edges a text means.
//
// `top edges` are the four round the top face, `front top edge` the one where the two meet, `long edges` the
// four along the grain, `end edges` the eight round the ends, `all edges` the twelve. Of two sizes the first
// lies on the wider face, or on the face that gives the edges their name. A bevel planes the narrower face:
// on the named face it goes back by the tangent of its angle, and it ends on the far arris.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "piece/shaping.hpp"

namespace rayfleck::piece {
namespace {

constexpr std::array profiles{"chamfer", "round-over", "ovolo", "ogee", "cove", "bead"};

struct Arris {
    LocalSide first, second;
};

bool same(const Arris& a, const Arris& b) {
    return (a.first == b.first && a.second == b.second) || (a.first == b.second && a.second == b.first);
}

void add_once(std::vector<Arris>& out, Arris one) {
    if (one.first.axis == one.second.axis) return;
    if (std::none_of(out.begin(), out.end(), [&](const Arris& other) { return same(one, other); }))
        out.push_back(one);
}

/// The wide face first, then the edge, then the end.
Arris ordered(LocalSide a, LocalSide b) { return a.axis >= b.axis ? Arris{a, b} : Arris{b, a}; }

std::vector<Arris> named(Shaper& s, const syntax::EdgeName& name) {
    std::vector<Arris> out;
    const auto around = [&](int axis, int other) {
        for (const bool a : {false, true})
            for (const bool b : {false, true}) add_once(out, ordered({axis, a}, {other, b}));
    };
    if (name.which == "all" || name.which == "long") around(2, 1);
    if (name.which == "all" || name.which == "end") {
        around(2, 0);
        around(1, 0);
    }
    if (!name.which.empty()) return out;
    if (name.sides.size() == 1) {
        for (const LocalSide& face : own_sides(s.e, s.instance, name.sides.front()))
            for (int axis = 2; axis >= 0; --axis)
                for (const bool high : {false, true})
                    if (axis != face.axis) add_once(out, {face, {axis, high}});
        return out;
    }
    if (name.sides.size() != 2) return out;
    const std::vector<LocalSide> a = own_sides(s.e, s.instance, name.sides[0]),
                                 b = own_sides(s.e, s.instance, name.sides[1]);
    if (a.empty() || b.empty()) return out;
    for (const LocalSide& one : a)
        for (const LocalSide& other : b) add_once(out, {one, other});
    if (out.empty())
        s.e.error("no-edge", name.span,
                  "the " + text(name.sides[0].side) + " and the " + text(name.sides[1].side) + " of `" +
                      s.name() + "` do not meet in an edge")
            .mend = "name two faces that meet";
    return out;
}

void bevel(Shaper& s, const syntax::EdgeShape& says, const Arris& arris, Span span) {
    const auto degrees = degrees_of(s.e, says.sizes.front(), s.context());
    if (!degrees) return;
    if (*degrees <= 0 || *degrees >= 90) {
        s.e.error("out-of-range", says.sizes.front().span,
                  "a bevel lies between 0 and 90 degrees from square");
        return;
    }
    const double a = *degrees * std::numbers::pi / 180;
    const auto [face, edge] = arris;
    if (std::tan(a) * s.size(face.axis) > s.size(edge.axis)) {
        s.e.error("no-room", says.sizes.front().span,
                  "a bevel of this angle would go back further than `" + s.name() + "` reaches");
        return;
    }
    PlaneCut cut;
    Vector n;
    n[edge.axis] = std::cos(a) * (edge.high ? 1 : -1);
    n[face.axis] = std::sin(a) * (face.high ? 1 : -1);
    // Through the far arris: the edge's face where it meets the face opposite.
    Point p;
    p[edge.axis] = edge.high ? s.size(edge.axis) : 0;
    p[face.axis] = face.high ? 0 : s.size(face.axis);
    cut.plane = {n, dot(n, p)};
    set_saw(cut, edge.axis);
    s.add("bevel", cut, span);
}

} // namespace

void shape_edges(Shaper& s, const syntax::EdgeShape& says, Span span) {
    if (says.sizes.empty()) return;
    std::vector<Arris> arrises;
    for (const syntax::EdgeName& name : says.edges)
        for (const Arris& arris : named(s, name)) add_once(arrises, arris);
    if (says.word == "bevel") {
        // The narrower of the two faces is the one that is planed.
        for (const Arris& arris : arrises) bevel(s, says, ordered(arris.first, arris.second), span);
        return;
    }
    if (std::find(profiles.begin(), profiles.end(), says.word) == profiles.end()) {
        const std::vector<std::string> known(profiles.begin(), profiles.end());
        s.e.error("unknown-profile", span, "there is no moulding `" + says.word + "`").mend =
            did_you_mean(says.word, known);
        return;
    }
    const auto first = s.positive(says.sizes.front(), "the " + says.word);
    const auto second = says.sizes.size() > 1 ? s.positive(says.sizes[1], "the " + says.word) : first;
    if (!first || !second) return;
    for (const Arris& arris : arrises) {
        const double room_first = s.size(arris.second.axis), room_second = s.size(arris.first.axis);
        if (*first > room_first || *second > room_second) {
            s.e.error("no-room", span,
                      "a " + says.word + " of " +
                          s.e.shown(Length::from_geometry(std::max(*first, *second))) + " has no room on `" +
                          s.name() + "`, " + s.e.shown(s.pose.size[2]) + " thick and " +
                          s.e.shown(s.pose.size[1]) + " wide");
            return;
        }
        s.add(says.word, EdgeCut{arris.first, arris.second, says.word, *first, *second}, span);
    }
}

std::optional<std::pair<double, double>>
stopped_reach(Shaper& s, int axis,
              const std::vector<std::pair<Expression, std::optional<syntax::SideName>>>& stops) {
    double low = 0, high = s.size(axis);
    for (const auto& [distance, side] : stops) {
        const auto by = s.length(distance);
        if (!by) return std::nullopt;
        if (*by < Length()) {
            s.e.error("no-size", distance.span,
                      "a stop lies within the part, not " + s.e.shown(*by) + " from its end");
            return std::nullopt;
        }
        bool at_low = true, at_high = true;
        if (side) {
            const auto end = own_side(s.e, s.instance, *side);
            if (!end) return std::nullopt;
            if (end->axis != axis) {
                s.e.error("stopped-aside", side->span,
                          "it does not run to the " + text(side->side) + " of `" + s.name() + "`")
                    .mend = "name an end that it runs to";
                return std::nullopt;
            }
            at_low = !end->high;
            at_high = end->high;
        }
        if (at_low) low = by->value();
        if (at_high) high = s.size(axis) - by->value();
    }
    if (low >= high) {
        s.e.error("no-size", stops.front().first.span,
                  "the stops leave nothing between them on `" + s.name() + "`");
        return std::nullopt;
    }
    return std::pair(low, high);
}

void shape_rabbet(Shaper& s, const syntax::Rabbet& says, Span span) {
    const auto wide = s.positive(says.wide, "the width of the rabbet"),
               deep = s.positive(says.deep, "the depth of the rabbet");
    if (!wide || !deep) return;
    for (const Arris& arris : named(s, says.edge)) {
        const LocalSide face = arris.first, edge = arris.second;
        if (*wide >= s.size(edge.axis) || *deep >= s.size(face.axis)) {
            s.e.error("no-room", span,
                      "a rabbet " + s.e.shown(Length::from_geometry(*wide)) + " wide and " +
                          s.e.shown(Length::from_geometry(*deep)) + " deep leaves nothing of `" + s.name() +
                          "` there");
            return;
        }
        const int along = 3 - face.axis - edge.axis;
        const auto reach = stopped_reach(s, along, says.stopped);
        if (!reach) return;
        BoxCut cut;
        const auto set = [&](LocalSide side, double depth) {
            cut.box.low[side.axis] = side.high ? s.size(side.axis) - depth : 0;
            cut.box.high[side.axis] = side.high ? s.size(side.axis) : depth;
        };
        set(face, *deep);
        set(edge, *wide);
        cut.box.low[along] = reach->first;
        cut.box.high[along] = reach->second;
        s.add("rabbet", cut, span);
    }
}

} // namespace rayfleck::piece
