#pragma once
// A corner of two boards with square ends: A's end runs past or up to B, B's end past or up to A.
//
//        |      B's far face               in A's frame: x out of A's end, t across A's thickness
//   -----+--+   B's near face              (along B's length), w along the corner
//    A   |  |
//   -----+--+   either body may stop at the other's face or run to the outer corner
//        | B|
//
// Through dovetails, half-blind dovetails and finger joints are all laid out on it.

#include <optional>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

struct Corner {
    LocalSide end;            ///< of A
    int t = 2, w = 1;         ///< A's axes: through A along B's length, and along the corner
    double near = 0, far = 0; ///< B's faces, mm beyond A's side
    double low = 0, high = 0; ///< the part of w that both share, A's frame
    bool b_end_high = true;   ///< B ends at the high side of t
    double b_short = 0;       ///< what B lacks to reach A's outer face; <= 0: nothing
    LocalSide b_end;          ///< the same end, of B

    double thickness_of_b() const { return far - near; }
};

/// gives  nothing when the two do not make a square corner; the bench has been told why
std::optional<Corner> corner_of(Bench& bench, const Pair& pair);

/// Makes both blanks reach the outer corner: A by `deep` beyond B's near face, B to A's outer face.
void fill_corner(Bench& bench, const Pair& pair, const Corner& corner, int joint, Length deep,
                 const std::string& word);

/// The frame of A in which outlines of the corner are drawn: x out of A's low to high end, y along w.
Frame drawing_frame(const Corner& corner);
/// A's thickness as a reach along that frame's z.
std::pair<double, double> drawn_through(const piece::Part& a, const Corner& corner);

} // namespace rayfleck::joinery
