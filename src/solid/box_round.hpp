#pragma once
// A box round a box that stands in another frame.

#include <cmath>

#include "measure/space.hpp"

namespace rayfleck::solid {

/// The smallest box, along the axes of the frame around `frame`, that holds a box given in `frame`.
inline measure::Box box_round(const measure::Box& box, const measure::Frame& frame) {
    const measure::Point middle = frame.out((box.low + box.high) * 0.5);
    const measure::Vector half = (box.high - box.low) * 0.5;
    measure::Vector reach;
    for (int axis = 0; axis < 3; ++axis)
        reach[axis] = std::abs(frame.x[axis]) * half.x + std::abs(frame.y[axis]) * half.y +
                      std::abs(frame.z[axis]) * half.z;
    return {middle - reach, middle + reach};
}

} // namespace rayfleck::solid
