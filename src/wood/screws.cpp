// Two withdrawal formulas and the screw numbers they are used with.
//
// Metric form: newtons from millimetres and the specific gravity at 12 % moisture, as the handbook prints
// them.

#include "wood/screws.hpp"

#include <cmath>

namespace rayfleck::wood {

double screw_withdrawal(double gravity, double shank, double thread) {
    return 108.25 * gravity * gravity * shank * thread;
}

double nail_withdrawal(double gravity, double diameter, double depth) {
    return 54.12 * std::pow(gravity, 2.5) * diameter * depth;
}

double screw_shank(int number) {
    switch (number) {
    case 4:
        return 2.84;
    case 6:
        return 3.51;
    case 8:
        return 4.17;
    case 10:
        return 4.83;
    case 12:
        return 5.49;
    default:
        return 0;
    }
}

} // namespace rayfleck::wood
