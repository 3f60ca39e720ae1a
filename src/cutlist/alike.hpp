#pragma once
// Which parts are made alike: the same finished solid, whichever end or face of it is called the first.
//
// Two solids are held against each other by their planes. For every plane that carries some of the surface we
// keep its normal, its distance from the middle of the blank, and the area, first and second moments of all
// that lies in it. These do not change when a face happens to be divided differently, so the same part carved
// in another order of cuts still compares equal. The other part is turned into the four positions in which a
// box fits its own place, and their mirror images; a square blank, whose rings allow it, also by quarter
// turns about its length.
//
// Left out: two different solids that agree in every plane, area and moment to a hundredth of a millimetre
// would be taken for alike; no cut of the language makes such a pair.

#include <array>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::cutlist {

enum class Likeness {
    different,
    alike,    ///< one is the other, turned
    mirrored, ///< one is the other in a mirror, and no turn makes them the same
};

/// The finished surface of a part as sums over its planes, about the middle of its blank; millimetres.
struct Form {
    struct InPlane {
        measure::Vector normal;
        double offset = 0;
        double area = 0;
        measure::Vector first;          ///< integral of position over the area
        std::array<double, 6> second{}; ///< integrals of xx, yy, zz, xy, yz, xz
    };
    std::vector<InPlane> planes; ///< ascending offset
    double volume = 0;
    double reach = 0;           ///< farthest extent from the middle, for tolerances
    measure::Vector size;       ///< of the blank
    measure::Vector fibre;      ///< direction of the grain in the part's frame
    bool quarter_turns = false; ///< width and thickness are the same, and so are their rings
};

Form form_of(const joinery::Made& made);

/// How `other` compares with `first` in shape and grain. Wood, sawing and stock are not looked at.
Likeness compare(const Form& first, const Form& other);

} // namespace rayfleck::cutlist
