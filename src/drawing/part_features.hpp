#pragma once
// What a part's drawing must say: every cut as a feature with its sizes and its place, before anything is
// laid out.
//
// The cuts of a part come in its own frame and in the pieces in which the solid takes them. Here they are
// turned into what a maker sets out: all in the gauge's frame (see cut_record.hpp), waste round a tenon told
// as the tenon that stands, waste beyond a slanting plane as a saw setting, equal cuts put together as one
// feature with many places. Nothing is drawn here. Cuts that leave no trace of their own (a trim that a
// shoulder has made already) give no feature.

#include <array>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "drawing/cut_record.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

/// The frame of all figures of a part: x from the near end, y from the face edge, z from the face side of the
/// blank. It turns the part's own frame round or mirrors it.
struct GaugeFrame {
    measure::Box blank;
    bool face_edge_high = true;

    explicit GaugeFrame(const joinery::Made& made)
        : blank(made.blank), face_edge_high(made.part->face_edge_high) {}
    measure::Point in(measure::Point p) const {
        return {p.x - blank.low.x, face_edge_high ? blank.high.y - p.y : p.y - blank.low.y,
                blank.high.z - p.z};
    }
    measure::Vector turn(measure::Vector v) const { return {v.x, face_edge_high ? -v.y : v.y, -v.z}; }
    measure::Point out(measure::Point p) const {
        return {blank.low.x + p.x, face_edge_high ? blank.high.y - p.y : blank.low.y + p.y,
                blank.high.z - p.z};
    }
    measure::Box in(const measure::Box& box) const;
    measure::Box out(const measure::Box& box) const;
    double size(int axis) const { return blank.high[axis] - blank.low[axis]; }
    /// In this frame the side of high coordinates is the far end, the back edge, the back.
    bool is_far(piece::LocalSide side) const {
        return side.axis == 0 ? side.high : side.axis == 1 ? side.high != face_edge_high : !side.high;
    }
};

/// `near end`, `far end`, `face edge`, `back edge`, `face side`, `back`.
std::string side_name(int axis, bool far);
std::string side_name(const GaugeFrame& gauge, piece::LocalSide side);

/// Names of the figures that stand in columns: sizes and places by axis.
extern const std::array<const char*, 3> size_names;  ///< along, across, through
extern const std::array<const char*, 3> place_names; ///< from near end, from face edge, from face side

/// One row of the table of cuts, and where it shows.
struct Feature {
    CutRecord record;
    std::string words;                ///< after the cut's name: `Ø8, 38 deep in the face edge`
    std::string below;                ///< a line of its own: corners, ordinates, stations
    std::vector<measure::Box> places; ///< round every copy, in the gauge's frame
    /// The side from which it is seen; nothing for what shows from several (saw cuts, mouldings).
    std::optional<piece::LocalSide> seen_from;
    std::set<int> joints;
    /// Its borders belong to the strings along the length, across the width, through the thickness.
    bool told_by_strings = true;
    /// Its places are marks on the wood (the middle of a slanting hollow, where a side of it meets the marked
    /// edge), not the corner of the box round it.
    bool placed_by_mark = false;
};

/// Features in the order of the text, the blank first. Letters are given here: a, b, c …; aa after z.
/// part  index into the model
std::vector<Feature> features_of(const Job& job, int part);

/// Figures of that name; none when the feature lacks it.
std::vector<const CutFigure*> figures_of(const CutRecord& record, const std::string& what);
/// All places that the figures of one name tell.
std::vector<double> values_of(const CutRecord& record, const std::string& what);

} // namespace rayfleck::drawing
