#pragma once
// What curves, outlines and notches leave of a part's section near an end or an edge.
//
// A meeting knows a part as a body between planes. A crest rail whose top edge is curved down, or a part sawn
// to an outline, has less wood at its shoulder than that, and a tenon must lie in what there is. So the part
// is carved by its shaping alone and sawn across, at the shoulder and at the end of the body; what counts is
// the bounds of the greatest piece of each section. Left out: hollows within those bounds, and joints that
// were cut before.

#include "joinery/bench.hpp"

namespace rayfleck::joinery {

/// The meeting's window, narrowed to the wood that shaping leaves between the shoulder and the part's end;
/// the window itself where shaping takes less than 0.05 mm of it.
Box wood_in_window(const Bench& bench, int part_id, const Meeting& meeting);

} // namespace rayfleck::joinery
