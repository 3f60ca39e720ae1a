#pragma once
// What a wood screw or a nail holds when pulled straight out of side grain.
//
// Wood Handbook 2021, ch. 8, Eq 8-1 and 8-10: tests to the maximum, not allowable loads. In end grain a screw
// holds about three quarters of that at best and erratically (joinery_rules.hpp). Left out: sideways loads,
// lag screws.

#include "wood/figure.hpp"

namespace rayfleck::wood {

/// Greatest withdrawal load of a wood screw from side grain, N.
/// gravity   specific gravity at 12 % MC
/// shank     diameter of the shank, mm
/// thread    length of thread in the holding piece, mm
/// source    Wood Handbook 2021, Eq 8-10; read (secondary)
double screw_withdrawal(double gravity, double shank, double thread);
/// The same of a smooth nail: its diameter and the length in the holding piece.
/// source    Wood Handbook 2021, Eq 8-1; read (secondary)
double nail_withdrawal(double gravity, double diameter, double depth);

/// Shank diameter of a wood screw by its number, mm; 0 for a number that the handbook does not list (4 to 12,
/// even). source    Wood Handbook 2021, ch. 8; read (secondary)
double screw_shank(int number);

} // namespace rayfleck::wood
