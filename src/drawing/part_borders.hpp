#pragma once
// Where along a part's three directions something begins or ends: the places that its dimensions must reach.
//
// Each cut gives its borders in the part's own frame: the sides of a box, the centre of a bore, the places at
// which a slanting plane crosses the edges of the blank; of a joint that does not lie square to the part, its
// middle. A border belongs to the face view (what opens on a face, or goes through) or to the edge view (what
// opens on an edge only). Cuts told by their count and slope instead (dovetails, fingers, keys) give none;
// they stand in the notes.

#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::drawing {

struct Borders {
    /// Along the length, as seen on the face and on the edge; ascending, without near repeats, ends of the
    /// blank left out.
    std::vector<double> length_on_face, length_on_edge;
    std::vector<double> width, thickness;
};

/// part  index into the model
/// step  places nearer to one another than this are one: the finest that the drawing's figures tell, mm
Borders borders_of(const joinery::Model& model, int part, double step);

} // namespace rayfleck::drawing
