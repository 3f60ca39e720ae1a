#pragma once
// What has to be measured on the whole piece so that every part of it can be placed.
//
// Along each of the three directions every part has a low and a high face. Their places are unknowns; a
// drawing ties them together: parts that lie in one plane share a place; a part's own size (told in its own
// drawing) ties its two faces; a centre line ties what lies left of it to what lies right of it; a dimension
// ties the two places between which it stands. A part is placed along a direction when its faces are tied to
// the piece's overall size. The dimensions are chosen in this order: the overall size; the maker's own lines
// that parts really reach or are centred on; a row of equal parts at equal spacing as one n ×; then, shortest
// first, what is still missing (a set-back, an overhang, a clear height), as in a minimum spanning tree, so
// that none follows from the others. A distance between neighbours counts for less than one between parts far
// from each other, and one whose two ends can both be seen in a view for much less than any other.
//
// A face that no view shows and that a joint holds (a panel's edge in its groove) is not measured here: the
// drawings of the two parts tell it, and the sheet says so. Left out: parts that stand askew are placed by
// their box; their angles are view_angles.hpp's.

#include <vector>

#include "drawing/seen_piece.hpp"

namespace rayfleck::drawing {

struct PlaceLink {
    enum class Kind { overall, rod, row, place };
    Kind kind = Kind::place;
    double from = 0, to = 0;          ///< mm in the piece, from < to
    measure::Length length;           ///< exact where the maker's lines tell it
    int times = 1;                    ///< equal spaces in a row
    int from_part = -1, to_part = -1; ///< whose faces they are; -1: of the whole piece
};

struct AxisPlaces {
    std::vector<PlaceLink> links;
    double low = 0, high = 0; ///< of the whole piece
    bool symmetric = false;   ///< about the middle, save for parts that have no partner
    /// Lines of the maker's on which parts are centred, no face lying there: a centre line shows them.
    std::vector<double> middles;
    /// Rows of the cut list, ascending, of which a part is placed by its joints alone.
    std::vector<int> by_joints;
};

/// Along x, y and z of the piece.
/// scale  mm of paper per mm of wood: a dimension that would be too short to draw is not chosen
std::vector<AxisPlaces> places_to_measure(const Job& job, const Principal& seen, double scale);

} // namespace rayfleck::drawing
