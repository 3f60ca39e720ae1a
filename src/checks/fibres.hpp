#pragma once
// Where fibres run out: limbs that hang on the rest of a part by few and short fibres.
//
// Wood splits along its fibres. A limb (an ear, a horn, the curved end of a leg) can break off along a line
// of fibres when that line is short: the whole load on the limb's tip must then be carried by tension across
// the grain. So every part is looked at in the plane of its face at half its thickness: lines along the
// fibre, closely spaced, give the stretches in which a fibre runs unbroken; neighbouring stretches that
// overlap hang together. A stretch whose removal leaves a piece hanging on nothing else is a place where the
// part can split, and the piece split off is the limb. The same must hold at a fifth and at four fifths of
// the thickness: the wood between two mortises is no limb, because their cheeks hold it. Left out: planes
// through the thickness (see short_grain_land), knots and shakes.

#include <optional>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::checks {

/// A limb at its weakest line of fibres. All in mm, in the part's own frame.
struct Limb {
    double run = 0;          ///< length of the fibres that hold it
    double lever = 0;        ///< from the middle of that line to the limb's farthest point
    double reach = 0;        ///< how far the limb stands out across the fibres
    double area = 0;         ///< of the limb, on the face
    double thickness = 0;    ///< of the wood at that line
    measure::Point from, to; ///< the line of fibres
    measure::Point tip;
};

/// Unit vector along the fibres, in the part's own frame.
measure::Vector fibre_direction(const piece::Part& part);

/// Bending strength along over across, and exponent: Wood Handbook 2010, ch. 5 (read).
inline constexpr double across_to_along = 0.1;
inline constexpr double exponent = 1.5;
/// Grain steeper than 1 in 8 leaves about two thirds. Our own choice.
inline constexpr double sound_share = 0.70;

/// Share of the straight-grained bending strength with the fibre at an angle to the length (Hankinson).
double strength_left(measure::Angle grain);
/// A plain board whose fibres leave its length too steeply: the business of length-across-grain alone.
bool runs_across_its_grain(const piece::Part& part);

/// Longest unbroken fibre at half thickness.
double longest_run(const joinery::Made& made);

/// Limbs that hang on a line shorter than nine tenths of the part's longest fibre, one per limb at its
/// weakest line, weakest (lever for its run) first.
std::vector<Limb> limbs_of(const joinery::Made& made);

/// Whether short-grain has something to say of this part; a check of the same cause then stays quiet.
bool holds_a_weak_limb(const joinery::Made& made);

} // namespace rayfleck::checks
