// Finding the square corner of two boards, and making both blanks reach it. See corner.hpp for the picture.
//
// B is turned into A's frame, where with agreeing axes it is a box; which end of A, which end of B and how
// far either falls short are then differences of levels. Boards that lean against each other are refused.

#include "joinery/corner.hpp"

#include <algorithm>
#include <cmath>

#include "joinery/tongue.hpp"

namespace rayfleck::joinery {
namespace {

Box body_seen_from(const piece::Part& a, const piece::Part& b) {
    const Point p = a.frame.in(b.frame.out({})),
                q = a.frame.in(b.frame.out({size_of(b, 0), size_of(b, 1), size_of(b, 2)}));
    Box box;
    for (int i = 0; i < 3; ++i) {
        box.low[i] = std::min(p[i], q[i]);
        box.high[i] = std::max(p[i], q[i]);
    }
    return box;
}

} // namespace

std::optional<Corner> corner_of(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto refuse = [&](const std::string& why) {
        bench.refuse(pair, "corner-not-square",
                     a.name + " and " + b.name + " make no square corner for this joint: " + why,
                     "let the end of one board meet the end of the other at a right angle");
        return std::nullopt;
    };
    if (!axes_agree(a, b)) return refuse("they lean against each other");
    const Vector along_b = a.frame.turn_in(b.frame.x);
    Corner corner;
    corner.t = std::abs(along_b.x) > 0.5 ? 0 : std::abs(along_b.y) > 0.5 ? 1 : 2;
    if (corner.t == 0) return refuse("their lengths run the same way");
    corner.w = 3 - corner.t;
    const Box of_b = body_seen_from(a, b);
    corner.end = {0, (of_b.low.x + of_b.high.x) / 2 > size_of(a, 0) / 2};
    const double near_x = corner.end.high ? of_b.low.x - size_of(a, 0) : -of_b.high.x;
    const double far_x = corner.end.high ? of_b.high.x - size_of(a, 0) : -of_b.low.x;
    corner.near = std::abs(near_x) < touching_within ? 0 : near_x;
    corner.far = std::abs(far_x) < touching_within ? 0 : far_x;
    if (corner.near > touching_within || corner.far < -touching_within)
        return refuse("the end of " + a.name + " does not reach " + b.name);
    corner.low = std::max(0.0, of_b.low[corner.w]);
    corner.high = std::min(size_of(a, corner.w), of_b.high[corner.w]);
    if (!(corner.high - corner.low > 1)) return refuse("they share no width");
    const double middle = (of_b.low[corner.t] + of_b.high[corner.t]) / 2;
    corner.b_end_high = middle < size_of(a, corner.t) / 2;
    corner.b_short = corner.b_end_high ? size_of(a, corner.t) - of_b.high[corner.t] : of_b.low[corner.t];
    if (corner.b_short > size_of(a, corner.t) + touching_within)
        return refuse("the end of " + b.name + " does not reach " + a.name);
    corner.b_end = side_towards(b, a.frame.turn_out(outward({corner.t, corner.b_end_high})));
    return corner;
}

void fill_corner(Bench& bench, const Pair& pair, const Corner& corner, int joint, Length deep,
                 const std::string& word) {
    const piece::Part& a = bench.part(pair.a);
    const Length to = Length::from_geometry(corner.near) + deep;
    bench.grow(pair.a, corner.end, to);
    Standing standing;
    standing.side = corner.end;
    standing.joint = joint;
    standing.word = word;
    standing.shoulder = corner.near;
    standing.window.low[corner.w] = corner.low;
    standing.window.high[corner.w] = corner.high;
    standing.window.low[corner.t] = 0;
    standing.window.high[corner.t] = size_of(a, corner.t);
    standing.tongues.push_back({standing.window, to.value()});
    bench.stand(pair.a, std::move(standing));
    if (corner.b_short > touching_within)
        bench.grow(pair.b, corner.b_end, Length::from_geometry(corner.b_short));
}

Frame drawing_frame(const Corner& corner) {
    Frame frame;
    frame.x = outward({0, true});
    frame.y = outward({corner.w, true});
    frame.z = cross(frame.x, frame.y);
    return frame;
}

std::pair<double, double> drawn_through(const piece::Part& a, const Corner& corner) {
    const double thick = size_of(a, corner.t);
    return drawing_frame(corner).z[corner.t] > 0 ? std::pair{0.0, thick} : std::pair{-thick, 0.0};
}

} // namespace rayfleck::joinery
