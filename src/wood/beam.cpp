// Table 9-1 of the handbook and the formulas around it.
//
// The table's line of 1/96 for loads at the quarter points is the sag under a load of the simple beam
// (statics gives the same), and is left out: 11/768 at midspan is greater. Moments are those of statics for
// the same seven cases. For clamped ends the greatest moment is at the support, except for a load in the
// middle, where support and middle are equal.

#include "wood/beam.hpp"

namespace rayfleck::wood {
namespace {

struct Case {
    double bending, shear, moment;
};

Case case_of(Bearing bearing) {
    switch (bearing) {
    case Bearing::even_simple:
        return {5.0 / 384, 1.0 / 8, 1.0 / 8};
    case Bearing::even_clamped:
        return {1.0 / 384, 1.0 / 8, 1.0 / 12};
    case Bearing::middle_simple:
        return {1.0 / 48, 1.0 / 4, 1.0 / 4};
    case Bearing::middle_clamped:
        return {1.0 / 192, 1.0 / 4, 1.0 / 8};
    case Bearing::quarters_simple:
        return {11.0 / 768, 1.0 / 8, 1.0 / 8};
    case Bearing::even_cantilever:
        return {1.0 / 8, 1.0 / 2, 1.0 / 2};
    case Bearing::end_cantilever:
        break;
    }
    return {1.0 / 3, 1, 1};
}

} // namespace

Sag sag(const Beam& beam, double load, Bearing bearing) {
    const Case factor = case_of(bearing);
    const double inertia = beam.width * beam.depth * beam.depth * beam.depth / 12;
    const double shear_area = 5 * beam.width * beam.depth / 6;
    const double shear_modulus = beam.stiffness * shear_stiffness.exact().value();
    return {factor.bending * load * beam.span * beam.span * beam.span / (beam.stiffness * inertia),
            factor.shear * load * beam.span / (shear_modulus * shear_area)};
}

double greatest_moment(double load, double span, Bearing bearing) {
    return case_of(bearing).moment * load * span;
}

double bending_stress(const Beam& beam, double load, Bearing bearing) {
    return greatest_moment(load, beam.span, bearing) / (beam.width * beam.depth * beam.depth / 6);
}

} // namespace rayfleck::wood
