#pragma once
// Joints that each want a drawing of their own: one for every kind with its sizes.
//
// Joints of one kind and the same sizes are one detail, whatever parts they join; how many screws or dowels
// stand in a row makes no difference. A glued face needs none. The detail shows the first of them. What is
// drawn is a region round the place where its two parts meet, in directions of the part that goes in, grown
// to the far side of thin parts; of a long row (dovetails, a groove) one end; of screws, dowels and buttons
// one of them.

#include <optional>
#include <string>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

struct JointDetail {
    int joint = 0; ///< the one that is drawn
    std::string letter;
    std::vector<std::string> sizes;  ///< `tenon thickness 6.5`
    std::vector<std::string> places; ///< `4× long apron to leg`
    measure::Frame frame;            ///< directions of part a, origin of the piece
    measure::Box focus;              ///< where the parts meet, in that frame
    measure::Box region;             ///< what is drawn
    measure::Vector into;            ///< unit, piece's frame: the way in which a goes into b
};

/// In the order of the text, lettered on from `letters_used`.
std::vector<JointDetail> joint_details(const Job& job, int& letters_used);

/// Boxes round the parts, piece's frame.
std::vector<measure::Box> boxes_of_parts(const std::vector<solid::Placed>& parts);

} // namespace rayfleck::drawing
