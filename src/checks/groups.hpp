#pragma once
// Parts that move as one: what joints tie together, and what only hardware ties to the rest.
//
// Joints make rigid groups: a door, a drawer, the case. Hardware that the text names on one part and to
// another lets such groups move against each other. The largest group is the piece itself.

#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::checks {

/// Groups of parts as the lowest member's index.
class Groups {
  public:
    explicit Groups(std::size_t count);
    int of(int part);
    void tie(int a, int b);

  private:
    std::vector<int> leader_;
};

/// What the joints of the text tie together.
Groups rigid_groups(const joinery::Model& model);

/// A rigid group that moves against the rest: told to be loose, or tied by hardware alone.
struct Movable {
    std::vector<int> parts; ///< ascending
    bool loose = false;
    measure::Box box; ///< round its finished parts, piece's frame
};
/// All of them, by their first part. Groups that nothing holds at all are none (unconnected-part).
std::vector<Movable> movables_of(const joinery::Model& model);

/// Box round a finished part in the piece's frame.
measure::Box box_in_piece(const joinery::Made& made);

} // namespace rayfleck::checks
