#pragma once
// How big a piece has to be sawn before it is jointed, planed and cut to its finished size, and what it
// weighs.
//
// Rough size = finished blank + the shop's allowances. Stock bought as quarters (`8/4`) is as thick as it is
// called; dressed lumber is used at its dressed thickness and width; a sheet is cut to size by the saw that
// leaves its finished edge, so it has no allowance. A glued-up part needs the allowance of its width once for
// every stave, a laminated one that of its thickness once for every layer. Left out: the trim at the ends of
// a board, which belongs to the board and not to the part, and kerfs, which belong to the lumber plan.

#include <optional>
#include <string>

#include "joinery/model.hpp"

namespace rayfleck::cutlist {

struct RoughSize {
    measure::Length thickness, width, length;
};

RoughSize rough_size(const joinery::Made& made, const piece::Shop& shop);

/// Staves or layers of a glued-up part, at least 1.
int pieces_glued(const joinery::Made& made);

/// Thickness that rough stock is sold by: `8/4` gives 2 in; nothing for any other stock.
std::optional<measure::Length> quarters(const std::string& stock);

/// T × W × L / 144 with all three in inches, not rounded as a yard would.
double board_feet(const RoughSize& size);

/// Mass of a cubic metre in kg, wood and water, at a moisture content.
///
/// gives   nothing where no specific gravity is known
/// source  density = 1000 × specific gravity × (1 + MC/100), Wood Handbook 2010, ch. 4, from memory. The
/// gravity at
///         12 % is carried to `at` by volumetric shrinkage (Eq 4-9 in the wood room): oven-dry mass stays,
///         volume moves.
std::optional<double> density(const wood::Species& species, measure::Moisture at);

} // namespace rayfleck::cutlist
