#pragma once
// A part made again from what its drawing says of it: the records of its table of cuts, nothing else.
//
// Knows neither the model nor how the drawing room came to its figures: it reads the records as a maker reads
// the table, sets out each cut from the near end, the face edge and the face side of the blank, and cuts it.
// Only the carving itself is the solid room's. Left out: mouldings on part of a curved outline.

#include <string>
#include <vector>

#include "drawing/cut_record.hpp"
#include "solid/solid.hpp"

namespace rayfleck::testing {

struct Rebuilt {
    double volume = 0; ///< mm³
    solid::Solid solid;
    int cuts = 0;                    ///< places at which something was cut
    std::vector<std::string> faults; ///< what a maker could not have made of the records
};

/// records  all of one part
Rebuilt rebuilt(const std::vector<drawing::CutRecord>& records);

} // namespace rayfleck::testing
