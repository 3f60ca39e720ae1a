#pragma once
// Shelves and rails as beams: how far they sag, and how hard they are stressed.
//
// Deflection by bending and by shear for a straight beam of rectangular section (Wood Handbook 2010, Eq 9-2
// and Table 9-1), with the shear stiffness taken as a sixteenth of the stiffness along the grain where none
// is published. Wood goes on sagging for years: the long-term factor is that of the timber design standard.
// This is shop guidance, not an engineer's approval. Left out: tapers, notches, beams over more than two
// supports.

#include "wood/figure.hpp"

namespace rayfleck::wood {

/// How a beam is loaded and held.
enum class Bearing {
    even_simple,     ///< load spread evenly, both ends lie free
    even_clamped,    ///< load spread evenly, both ends held from turning
    middle_simple,   ///< load at the middle, both ends lie free
    middle_clamped,  ///< load at the middle, both ends held from turning
    quarters_simple, ///< half the load at each outer quarter, both ends lie free
    even_cantilever, ///< load spread evenly, one end held, the other free
    end_cantilever,  ///< load at the free end
};

/// A beam of rectangular section; depth is the side in the direction of the load.
struct Beam {
    double span = 0;      ///< mm, > 0
    double width = 0;     ///< mm, > 0
    double depth = 0;     ///< mm, > 0
    double stiffness = 0; ///< modulus of elasticity, MPa, > 0
};

/// Sag in mm at once, in its two parts.
struct Sag {
    double bending = 0;
    double shear = 0;
    double total() const { return bending + shear; }
};

/// load  whole load, N
Sag sag(const Beam& beam, double load, Bearing bearing);

/// Greatest bending moment, N mm: of the whole load over the span.
double greatest_moment(double load, double span, Bearing bearing);
/// Greatest bending stress, MPa: moment by b h^2 / 6 (Wood Handbook 2010, Eq 9-13).
double bending_stress(const Beam& beam, double load, Bearing bearing);

/// Shear stiffness against stiffness along the grain, where no measured one is known.
inline constexpr Proportion shear_stiffness{1, 16, "modulus of elasticity", "Wood Handbook 2021, ch. 9",
                                            Confirmation::read_secondary};
/// Sag after years under a steady load against sag at once: wood that was dry, and wood that was not.
inline constexpr Figure creep_factor_dry{1.5, "", "NDS 3.5.2", Confirmation::read_secondary};
inline constexpr Figure creep_factor_green{2.0, "", "NDS 3.5.2", Confirmation::read_secondary};
/// First sag of a shelf that the eye does not see, and keeps not seeing when creep adds a half.
inline constexpr Figure shelf_sag_unseen{0.02, "in per ft of span", "woodworking magazine, 2007",
                                         Confirmation::read};
/// A running foot of average books.
inline constexpr Figure book_load{20, "lb per ft", "woodworking magazine archive", Confirmation::read};

} // namespace rayfleck::wood
