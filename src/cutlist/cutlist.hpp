#pragma once
// The cut list: what has to be sawn, how many, how big when finished and how big when rough.

#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::cutlist {

using measure::Length;

/// Parts that are made alike: same wood, same sizes, same cuts. A left and its right are one row with two
/// hands.
struct Row {
    int reference = 0; ///< 1, 2, 3 ...: the number in the balloons, in the order of the text
    std::string name;  ///< `leg`, `long apron`
    int count = 0;
    std::vector<int> parts;                            ///< indices into Model::made
    std::vector<int> mirrored;                         ///< those of them that are mirror images of the first
    std::string wood, sawn, stock;                     ///< as printed: `black cherry`, `quarter sawn`, `8/4`
    Length thickness, width, length;                   ///< finished part over all, joints included
    Length rough_thickness, rough_width, rough_length; ///< with the shop's allowances
    double volume_m3 = 0;                              ///< of all rough blanks of the row
    double board_feet = 0; ///< the same in board feet, exact (T × W × L(in) / 144); 0 for sheet goods
    double area_m2 = 0;    ///< width × length of all rough blanks of the row: how sheet goods are bought
    double weight_kg =
        0; ///< of the row's finished parts at the made-at moisture; 0 where no density is known
    double finish_area_m2 = 0; ///< surface of the row's finished parts
    std::string joinery;       ///< what the joints add to the body: `2 tenons of 25 in the length`
    std::string remark;        ///< glued up of 4 staves, bark face up, grain at 15° ...
};

struct CutList {
    std::vector<Row> rows;
    struct Total {
        std::string wood;
        double volume_m3 = 0;  ///< of rough blanks
        double board_feet = 0; ///< of rough blanks; 0 for sheet goods
        double area_m2 = 0;    ///< of rough blanks
        double weight_kg = 0;  ///< of finished parts at the made-at moisture; 0 where no density is known
    };
    std::vector<Total> totals; ///< by wood, in order of first use
    std::vector<joinery::HardwareItem> hardware;
    double finish_area_m2 = 0; ///< surface of all finished parts
};

/// Parts of one name that are made alike share a row; parts of different names never do, since a row is named
/// on the drawings by its number and its name.
CutList list(const joinery::Model& model);

/// What several pieces add up to: totals, hardware and surface; no rows, since their numbers are each piece's
/// own.
CutList together(const std::vector<const CutList*>& lists);

} // namespace rayfleck::cutlist
