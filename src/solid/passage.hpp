#pragma once
// Passage: whether one solid, moved along a straight line, would run into another that stands still.
//
// Along a line of the direction, a mover is stopped by what stands ahead of where the mover itself begins. So
// for each pair of a mover's face that looks back and a standing part's face that looks forward, the picture
// along the direction is asked: do the two faces overlap over more than a hair's breadth, with the standing
// one ahead? That is the whole swept volume, exactly, however far the move goes. Faces along the direction
// (the cheeks of a tenon in its mortise) never count. Overlaps narrower than `hair` on the mean, or
// shallower, are the play that any joint has, and what facets of round parts leave.

#include <vector>

#include "solid/solid.hpp"

namespace rayfleck::solid {

/// Some parts made ready for questions about one direction of movement.
class Passage {
  public:
    /// mm; our own choice: less than any maker would call an obstacle, more than rounding and facets leave.
    static constexpr double hair = 0.1;

    /// direction  unit
    Passage(const std::vector<Placed>& parts, Vector direction);

    /// The mover, moved along the direction from where it stands to any distance, runs into the other.
    bool runs_into(int mover, int standing) const { return room(mover, standing, true) < 1e300; }
    /// How far the mover can go along the direction before it runs into the other: 0 when it is stopped at
    /// once, infinity when never.
    double room(int mover, int standing) const { return room(mover, standing, false); }
    /// First and last place of a part along the direction, mm.
    double first(int part) const { return parts_[static_cast<std::size_t>(part)].low; }
    double last(int part) const { return parts_[static_cast<std::size_t>(part)].high; }
    /// Their pictures along the direction share more than a hair.
    bool in_line(int a, int b) const;

  private:
    /// A rectangle round something in the picture along the direction.
    struct Rectangle {
        double left = 1e300, right = -1e300, bottom = 1e300, top = -1e300;
    };
    /// A face turned along the direction or against it: place along it = at + by_x x + by_y y.
    struct Facing {
        Rectangle round;
        double at = 0, by_x = 0, by_y = 0;
        double low = 0, high = 0; ///< along the direction
        double area = 0;
        int first_loop = 0, past_loop = 0;
        bool square = false;    ///< to the direction
        bool convex = false;    ///< one loop without inward corners
        bool rectangle = false; ///< and it fills `round`
    };
    struct Part {
        Rectangle round;
        double low = 1e300, high = -1e300;
        int first_back = 0, past_back = 0;       ///< faces that look back: where the part begins
        int first_forward = 0, past_forward = 0; ///< faces that look forward: where it ends
    };

    double room(int mover, int standing, bool any_will_do) const;
    double ahead_of(const Facing& begins, const Facing& ends) const;
    void add(const Placed& part);
    std::vector<std::vector<Point2>> loops_of(const Facing& facing) const;

    Vector direction_, x_, y_;
    std::vector<Part> parts_;
    std::vector<Facing> facings_;
    std::vector<Point2> points_;
    std::vector<int> loops_; ///< start of each loop in points_, and one past the end
};

} // namespace rayfleck::solid
