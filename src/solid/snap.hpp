#pragma once
// Drawing nearly equal coordinates together, so that faces meant to be flush are flush.

#include <vector>

#include "solid/shape.hpp"

namespace rayfleck::solid {

/// A blank and its tools on common coordinates: values of one axis closer than 10 µm become one, the blank's
/// if it has one there.
struct Snapped {
    Shape blank;
    std::vector<Shape> tools;
};
Snapped snapped(const Shape& blank, const std::vector<Shape>& tools);

} // namespace rayfleck::solid
