#pragma once
// A cut: wood taken away from a part, in the part's own frame, under its trade name.
//
// Shaping phrases (taper, chamfer, groove ...) become cuts when the piece is elaborated; joints become cuts
// when they are lowered. Both are this one type, so solids, drawings, checks and lists need to know only it.
// Frame: x along the length, y across the width, z through the thickness, origin in the low corner of the
// part's body as placed (before joints make the blank longer: a tenon reaches into x < 0 or x > length).

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "measure/length.hpp"
#include "measure/quantity.hpp"
#include "solid/solid.hpp"
#include "source/text.hpp"

namespace rayfleck::piece {

/// One of the six sides of a part, in its own frame: axis 0 length, 1 width, 2 thickness; low or high end of
/// it.
struct LocalSide {
    int axis = 0;
    bool high = false;
    friend bool operator==(const LocalSide&, const LocalSide&) = default;
};

/// Everything beyond a plane is sawn or planed away: taper, crosscut, rip, resaw, bevel, miter, compound
/// miter.
struct PlaneCut {
    solid::Plane plane; ///< removes dot(normal, p) > offset
    /// What a saw is set to, where it is not square: miter (turn of the cut across the face) and bevel (tilt
    /// of the blade).
    std::optional<measure::Angle> miter, bevel;
};

/// A long cut along one edge with a constant profile: chamfer, round-over, ovolo, ogee, cove, bead, bevel.
struct EdgeCut {
    LocalSide first, second;            ///< the faces that meet at the edge
    std::string profile;                ///< chamfer, round-over, ovolo ...
    double on_first = 0, on_second = 0; ///< mm taken from each face, measured from the edge
};

/// A round hole.
struct BoreCut {
    LocalSide face;      ///< bored from here
    solid::Point centre; ///< on that face
    double diameter = 0;
    std::optional<double> deep; ///< nothing: through
    /// Direction of the bit when not square to the face; unit, pointing into the wood.
    std::optional<solid::Vector> direction;
};

/// A box of waste with faces along the part's own axes: groove, rabbet, dado, notch, mortise, tenon cheek,
/// lap.
struct BoxCut {
    solid::Box box;
};

/// A prism of waste in any position: dovetail sockets, angled mortises, curved edges, wedged mortises.
struct PrismCut {
    solid::Frame frame;
    solid::Outline outline;
    double from = 0, to = 0;
};

/// All outside a turned profile about the length's centre line, between its first and last station.
struct TurnedCut {
    std::vector<solid::Station> profile; ///< x along the length
};

struct Cut {
    std::string word; ///< mortise, tenon cheek, groove, taper, round-over ...
    std::variant<PlaneCut, EdgeCut, BoreCut, BoxCut, PrismCut, TurnedCut> shape;
    source::Span span;
    int joint = -1; ///< index into the model's joints; -1 for shaping
    /// What to print beside it on the part drawing when its sizes alone do not tell: `haunch`, `for apron`.
    std::string remark;
};

/// The same cut on a mirror image of the part: y becomes width - y.
Cut mirrored(const Cut& cut, double width);

} // namespace rayfleck::piece
