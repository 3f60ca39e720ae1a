#pragma once
// Where to saw through the piece so that its joints come to light.
//
// Every joint offers planes square to the piece's axes through its middle. A plane lays a joint open when it
// passes through the place where its two parts meet and runs along the way in which they go together; joints
// of one kind and size between parts of one name count once. What a plane shows that no chosen plane has
// shown yet is its worth: a joint that hides (tenon, groove, dovetail) counts fully, a screw or a glued face
// little, a kind of part not cut through its thickness yet a third; a board split along its face takes a
// little away. A joint seen already counts for a third in a plane that stands square to the first. The best plane is chosen, then the next best, as long as it shows something worth a sheet.
// All weights are our own choice, by looking at prints. Left out: planes with steps, and planes askew.

#include <string>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

struct SectionPlane {
    int axis = 0;                   ///< of the piece: 0 across, 1 deep, 2 up; the plane stands square to it
    double at = 0;                  ///< mm, the piece's frame
    std::vector<std::string> shows; ///< kinds of joints, each once
};

/// The view of a section square to that axis: as the principal view that looks the same way.
solid::View section_view_along(const Job& job, int axis);

/// At most four, the most telling first.
std::vector<SectionPlane> choose_section_planes(const Job& job);

/// Box round the places where the two parts of each joint lie against each other, piece's frame; round its
/// middle when they do not.
std::vector<measure::Box> boxes_of_joints(const joinery::Model& model);

} // namespace rayfleck::drawing
