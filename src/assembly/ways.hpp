#pragma once
// The ways: for each straight line along which parts may come together, which part is in whose way.
//
// Lines: the piece's three, the directions of the joints, and the own axes of parts in joints that have
// several. Whether one part stands in another's way is asked of the solids. What the solids do not show is
// added: dowels and loose tenons are no parts of the model, so two parts so joined only come apart along
// them, and a spline keeps two mitered parts in one plane.

#include <vector>

#include "assembly/assembly.hpp"
#include "assembly/part_set.hpp"
#include "solid/solid.hpp"

namespace rayfleck::assembly {

/// What a joint asks of the order.
struct Bond {
    int a = 0, b = 0;
    Hold hold = Hold::loose;
    bool laid_on = false; ///< only glued face to face: goes on after what is let in
    bool guided = false;  ///< comes together along `direction` only (tenon, dowels)
    Vector direction;     ///< a's way to b; zero where there are several
};

/// Classes of bonds: a split of class k breaks bonds of class k and weaker ones only.
enum class Class { nothing = 0, released = 1, laid_on = 2, let_in = 3 };
constexpr int classes = 4;
Class class_of(const Bond& bond);

class Ways {
  public:
    explicit Ways(const joinery::Model& model);

    std::size_t parts() const { return model_->made.size(); }
    const joinery::Model& model() const { return *model_; }
    const std::vector<solid::Placed>& placed() const { return placed_; }
    const std::vector<Bond>& bonds() const { return bonds_; }
    const std::vector<Vector>& lines() const { return lines_; }
    /// Two ways along each line: 2 l forwards, 2 l + 1 backwards.
    int count() const { return static_cast<int>(2 * lines_.size()); }
    Vector direction(int way) const {
        const Vector line = lines_[static_cast<std::size_t>(way / 2)];
        return way % 2 == 0 ? line : -line;
    }
    /// Parts that the part runs into when it moves that way.
    const PartSet& before(int way, int part) const {
        return before_[static_cast<std::size_t>(way)][static_cast<std::size_t>(part)];
    }
    /// Parts bonded to the part by bonds of that class or stronger.
    const PartSet& bonded(Class least, int part) const {
        return bonded_[static_cast<std::size_t>(least)][static_cast<std::size_t>(part)];
    }
    /// Box of a part in the piece's frame.
    const measure::Box& box(int part) const { return boxes_[static_cast<std::size_t>(part)]; }
    measure::Box box_of(const PartSet& set) const;
    /// What lies along a line of the way of some parts: first and last place, mm.
    std::pair<double, double> reach(const PartSet& set, Vector direction) const;
    /// What the solids do not show keeps two parts from moving against each other in that direction.
    bool held_apart_from(int mover, int other, Vector direction) const;
    /// From now on two parts that overlap as drawn are not in each other's way: that is another fault. Gives
    /// false when none did that were in the way.
    bool forgive_overlaps(const PartSet& among);
    /// From now on these parts move as one.
    void tie(const PartSet& block);

  private:
    void find_bonds();
    void find_lines();
    void ask_solids();

    const joinery::Model* model_;
    std::vector<solid::Placed> placed_;
    std::vector<measure::Box> boxes_;
    std::vector<Bond> bonds_;
    std::vector<std::size_t> unseen_; ///< bonds that hold by something that is no part of the model
    std::vector<Vector> lines_;
    std::vector<std::vector<PartSet>> before_; ///< per way, per part
    std::vector<PartSet> bonded_[classes];
};

} // namespace rayfleck::assembly
