#pragma once
// What a part's drawing says of each cut, beside the strings of dimensions: one record for each row of its
// table.
//
// Written for the audit and for the completeness test, which rebuilds every part from the records of its cell
// alone. All places are measured as at the bench, from the marked surfaces of the squared blank: x from the
// near end along the length, y from the face edge, z from the face side; so the blank fills 0 … L, 0 … W, 0 …
// T, and every figure of a record is one that a gauge or a rule can be set to. A record holds the exact
// number beside the printed one. What each form holds stands with its name below; `points` carry outlines and
// turned profiles, which are drawn to scale and told by their figures as far as a word or a number tells
// them.

#include <string>
#include <vector>

namespace rayfleck::drawing {

/// One figure of a row.
struct CutFigure {
    std::string what;       ///< `from near end`, `along`, `diameter`, `miter` ...
    double value = 0;       ///< mm, or degrees
    std::string shown;      ///< as printed, with its parentheses
    bool auxiliary = false; ///< in parentheses: the strings in the views tell it already
    /// Places in a row: the first at `value`, so many in all, so far apart.
    int times = 1;
    double pitch = 0;
};

/// A corner of an outline or a station of a turned profile, in mm.
struct CutPoint {
    double x = 0, y = 0; ///< along the two axes across the outline's own; of a profile: from near end, radius
    bool arc = false;    ///< reached by an arc from the point before
    double centre_x = 0, centre_y = 0;
    bool anticlockwise = true;
    int smooth = 0; ///< number of the smooth run to which the stretch up to here belongs; 0 for none
};

/// How the figures of a record make a solid.
enum class CutForm {
    blank,    ///< along, across, through; `points` for a blank sawn to an outline on the face
    turned,   ///< `points`: turned about the middle; `whole` when nothing square is left
    hollow,   ///< along × across × through at its places: mortise, groove, rabbet, notch, lap
    bore,     ///< diameter; deep or through; from `side`; leaning when it has two angles
    tongue,   ///< what stands at the sides across `axis`, all else there being waste down to the deepest
              ///< shoulder
    saw,      ///< all beyond a plane across the end: long point, miter, bevel
    rip,      ///< all beyond a plane along the part: two places on its trace, tilt
    shoulder, ///< the same as saw, save a tongue that stands to the end
    edge,     ///< a moulding along arrises: profile, on the first side, on the second
    prism,    ///< `points` across `axis`, over a range along it
    leaning,  ///< a hollow of rectangular section along a direction that leans two ways
};

/// One row of a table of cuts.
struct CutRecord {
    std::string part;   ///< name of the row of the cut list
    std::string letter; ///< beside the feature in the views; empty for the blank
    int count = 1;
    std::string word; ///< mortise, groove, taper ...
    CutForm form = CutForm::hollow;
    int axis = 0;     ///< see CutForm
    bool far = false; ///< of saw, rip and shoulder: the waste lies on the side of high coordinates
    std::string side; ///< of a bore: the side from which it is bored
    std::vector<std::string> arrises; ///< of a moulding: `face side, near end`
    bool through = false;             ///< of a bore
    bool whole = false;               ///< of a turned record
    std::vector<CutFigure> figures;
    std::vector<CutPoint> points;
};

} // namespace rayfleck::drawing
