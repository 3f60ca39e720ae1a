#pragma once
// Drawing nearly equal coordinates together, so that faces meant to be flush are flush.

#include <deque>
#include <vector>

#include "solid/boundary.hpp"

namespace rayfleck::solid {

/// A blank and its tools on common coordinates: values of one axis closer than 10 µm become one, the blank's
/// if it has one there. Refers to the shapes given, which must outlive it; only those that move are copied.
class Snapped {
  public:
    Snapped(const Shape& blank, const std::vector<Shape>& tools);
    Snapped(const Snapped&) = delete;
    Snapped& operator=(const Snapped&) = delete;
    const Cut& cut() const { return cut_; }

  private:
    std::deque<Shape> moved_;
    Cut cut_;
};

} // namespace rayfleck::solid
