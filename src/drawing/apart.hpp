#pragma once
// Parts moved apart along the ways in which they go together, and what is seen of them then.
//
// Every move of the order is taken back: what it brought stands off by as much as clears it of what it
// enters, and a gap. What was moved before goes along, so a drawer stands before its case and its parts stand
// apart in front of it. A trace joins each mating point with its counterpart; where both have been moved by
// moves of their own, it turns a corner.

#include "drawing/sheets.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// The way of a mating point of a mover from where it belongs, in the piece's frame.
struct Trace {
    int move = 0; ///< index into Order::moves
    std::vector<measure::Point> points;
};

struct Apart {
    std::vector<measure::Vector> by; ///< of each part of the model
    std::vector<Trace> traces;
};

/// How far apart: mm of wood.
struct ApartBy {
    double gap = 0;          ///< between a mover and what it goes to
    double most = 0;         ///< nothing but a glued part is taken farther than that, and a gap
    std::vector<bool> clear; ///< of each move of the order: stands off until it is clear of all; empty: none
    std::vector<double> times; ///< of each move: so many gaps; empty: one
};

/// moves  which moves are taken back, in the order of the order
Apart taken_apart(const Job& job, const std::vector<int>& moves, const ApartBy& by);

/// Visible lines of some parts that stand apart, in mm of wood in the picture plane.
struct SeenApart {
    std::vector<std::vector<Segment2>> of_part;  ///< of each of the parts looked at
    std::vector<std::vector<Segment2>> of_trace; ///< of each trace
    std::vector<double> share;                   ///< seen of each part, of what is seen of it alone: 0 to 1
};

/// Parts where they stand apart.
std::vector<solid::Placed> placed_apart(const Job& job, const std::vector<int>& parts, const Apart& apart);
SeenApart look_apart(const std::vector<solid::Placed>& parts, const std::vector<Trace>& traces,
                     const solid::View& view);

/// Of the box round some parts, at least one, mm.
double diagonal(const std::vector<solid::Placed>& parts);

/// The scale at which a picture that came out too large will fit: what stands round it (balloons, words)
/// keeps its size on paper, so only the picture shrinks. At least 2 % smaller than before, at most to a half.
///
/// picture  what is drawn, mm of wood; drawn: the whole block at `factor`; width, height: the room, mm
double smaller_factor(double factor, const Rect& picture, const Rect& drawn, double width, double height);

} // namespace rayfleck::drawing
