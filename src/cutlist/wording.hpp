#pragma once
// The two columns of words: what joints add to the body of a part, and what else the bench must know of a
// row.

#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::cutlist {

/// `2 tenons of 25 in the length`; empty where the blank is the body.
/// part  index into Model::made
std::string joinery_words(const joinery::Model& model, int part);

/// `glued up of 4 staves, bark on the face side, 2 as drawn and 2 mirrored`; empty when there is nothing to
/// say. parts  of one row, the drawn one first
std::string remark_words(const joinery::Model& model, const std::vector<int>& parts, std::size_t mirrored);

} // namespace rayfleck::cutlist
