#pragma once
// The words of a step: what goes where, by which joint, glued or dry, and what to look at.

#include <string>
#include <vector>

#include "assembly/assembly.hpp"
#include "assembly/ways.hpp"

namespace rayfleck::assembly {

/// `leg at front-left`; `leg (4 off)` for several of one name; `leg and apron` for different ones.
std::string named(const joinery::Model& model, const std::vector<int>& parts);

/// What several parts are called that are made together: the words with which all their names begin (`door`
/// of door stile, door rail), if those make a name; empty otherwise.
std::string shared_name(const joinery::Model& model, const std::vector<int>& parts);

/// Fills title and words of a step whose moves are all there.
/// warned  panels of which it has been said that they stay dry; those of this step are added
void put_into_words(Step& step, const Order& order, const Ways& ways, std::vector<int>& warned);

} // namespace rayfleck::assembly
