#pragma once
// A joint pulled apart, in isometric with true lengths along the axes, broken off near the joint.

#include "drawing/joint_detail.hpp"

namespace rayfleck::drawing {

/// most  the picture is at most this wide and high, mm of paper, where a scale of the list allows it
Block joint_pictorial(const Job& job, const JointDetail& detail, double most);

/// A break line from a to b, as by a free hand.
std::vector<Point2> drawn_by_hand(Point2 a, Point2 b);

} // namespace rayfleck::drawing
