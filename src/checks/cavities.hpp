#pragma once
// Hollows that lie in a part: mortises, grooves, dados, rabbets, laps, notches, and the wood beside and below
// them.
//
// A box of waste is clipped to the blank; the side at which it is open to the outside tells its depth. Walls
// are then measured on the finished solid: from a grid of points on each closed side, outwards to where the
// wood ends. What lies there may be the air, or another hollow.

#include <optional>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::checks {

/// A hollow with faces along its part's own axes. All in mm, in the part's own frame.
struct Hollow {
    const piece::Cut* cut = nullptr;
    measure::Box box;       ///< within the blank
    piece::LocalSide mouth; ///< the side at which it is open; of several the one that makes it least deep
    double depth = 0;       ///< from the mouth
    int open_sides = 0;     ///< of its six
    double size(int axis) const { return box.high[axis] - box.low[axis]; }
};

/// nothing for cuts of other shapes, and for boxes that take a whole side away or touch no wood
std::optional<Hollow> hollow_of(const piece::Cut& cut, const joinery::Made& made);

/// The wood beyond one closed side of a hollow.
struct Wall {
    piece::LocalSide side;
    double thickness = 0;   ///< least found
    bool to_hollow = false; ///< another hollow lies beyond, not the outside of the part
    measure::Point at;      ///< in the middle of the wall, where it is thinnest
};

/// The walls of a hollow; a side that is open, or behind which another hollow begins at once, has none.
std::vector<Wall> walls_of(const Hollow& hollow, const joinery::Made& made);

} // namespace rayfleck::checks
