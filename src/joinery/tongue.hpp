#pragma once
// A tongue and its socket: what mortise and tenon, dado, groove, tongue and breadboard end have in common.
//
// before                          after
//     A          |  B                 A        |##|  B
//   -------------+                  -----------+  |
//                |                             |--+      A's blank reaches into B, shoulders are cut round
//                the
//   -------------+                  -----------+--+      tongue, B loses the same box
//                |                             |  |
// Where A's body as placed already reaches into B, the blank is only lengthened by what is missing, and the
// shoulder is cut back to B's surface.

#include <string>
#include <vector>

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

struct Tongue {
    Box section;     ///< A's frame, axes other than the meeting's
    Length projects; ///< beyond B's surface, into B
    std::string remark;
};

struct Fit {
    std::string cheek = "tenon cheek";
    std::string socket = "mortise";
    double play = 0;      ///< mm by which the socket is deeper than the tongue is long
    double side_play = 0; ///< mm by which the socket is wider along `side_play_axis`, on either side
    int side_play_axis = 1;
    bool through = false; ///< sockets come out on the far side; tongues end flush there
    bool cut_socket = true;
};

/// Lets A stand in B with these tongues, all in one go.
void let_in(Bench& bench, const Pair& pair, int joint, const Meeting& meeting,
            const std::vector<Tongue>& tongues, const Fit& fit);

/// Middle of what is let in, in the piece's frame.
Point middle_of(const Bench& bench, const Pair& pair, const Meeting& meeting, const Box& section,
                double projects);

} // namespace rayfleck::joinery
