#pragma once
// What has to be sawn: the rows of the cut list taken apart into staves and layers, one blank for each.

#include <string>
#include <vector>

#include "lumber/lumber.hpp"

namespace rayfleck::lumber {

/// Blanks that are alike and come from one row.
struct BlankType {
    std::size_t source = 0, row = 0;
    const wood::Species* species = nullptr;
    bool sheet = false, may_turn = false;
    bool sapwood = false;            ///< may hold sapwood
    bool as_bought = false;          ///< keeps the thickness of dressed lumber
    std::string sawn;                ///< flat, rift, quarter; empty: any
    std::string stock;               ///< stated: `8/4`, `2x4`; empty: any
    Length thickness, width, length; ///< rough, of one blank
    int per_part = 1;                ///< staves or layers of a part
    bool layers = false;
    std::vector<int> parts; ///< Model::made of each part; blanks = parts × per_part
    int count() const { return per_part * static_cast<int>(parts.size()); }
};

/// A stave of a panel whose maker left its staves open is at least so wide when finished. Our own choice.
inline constexpr int narrowest_stave_mm = 60;

/// Staves whose number the text leaves open are chosen to come from boards of the usual width; a part wider
/// than any board becomes staves too, and the remarks tell it.
std::vector<BlankType> blanks_of(const std::vector<Source>& sources, const piece::Shop& shop,
                                 std::vector<std::string>& remarks);

/// A, B ... Z, AA, AB ...
std::string letters(std::size_t index);

} // namespace rayfleck::lumber
