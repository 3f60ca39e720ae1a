#pragma once
// What has to be sawn: the rows of the cut list taken apart into staves and layers, one blank for each, and
// thin ones put together again into thicker blanks that are resawn.

#include <string>
#include <vector>

#include "lumber/lumber.hpp"

namespace rayfleck::lumber {

/// What a blank becomes: a part, or a stave or layer of it.
struct Becomes {
    std::size_t row = 0;   ///< into CutList::rows
    int part = 0;          ///< Model::made
    std::size_t which = 0; ///< place of the part in its row
    int glued = 0;         ///< 1, 2 ...: stave or layer; 0: the whole part
};

/// Blanks that are alike and come from one row, or from several where they are resawn together.
struct BlankType {
    std::size_t source = 0, row = 0;
    const wood::Species* species = nullptr;
    bool sheet = false, may_turn = false;
    bool sapwood = false;            ///< may hold sapwood
    bool as_bought = false;          ///< keeps the thickness of dressed lumber
    std::string sawn;                ///< flat, rift, quarter; empty: any
    std::string stock;               ///< stated: `8/4`, `2x4`; empty: any
    Length thickness, width, length; ///< rough, of one blank
    Length leaf;                     ///< thickness of one of those that it is resawn into; else as thickness
    bool layers = false;             ///< the blanks are layers of thicker parts
    bool told = true;                ///< staves and layers are as many as the text tells
    std::vector<std::vector<Becomes>> blanks; ///< each one's leaves, from the face side; usually one
    int count() const { return static_cast<int>(blanks.size()); }
};

/// A stave of a panel whose maker left its staves open is at least so wide when finished. Our own choice.
inline constexpr int narrowest_stave_mm = 60;

/// Staves whose number the text leaves open are chosen from the widths of the boards; a part wider than any
/// board becomes staves too, one thicker than any board layers, and the remarks tell it.
std::vector<BlankType> blanks_of(const std::vector<Source>& sources, const piece::Shop& shop,
                                 std::vector<std::string>& remarks);

/// Thin blanks of a type are put together, as many as the thinnest board that suits them yields when it is
/// resawn, where the shop has a band saw; book-matched ones in pairs in any case. The remarks tell it.
void put_together(std::vector<BlankType>& blanks, const std::vector<Source>& sources, const piece::Shop& shop,
                  std::vector<std::string>& remarks);

/// A, B ... Z, AA, AB ...
std::string letters(std::size_t index);

} // namespace rayfleck::lumber
