#pragma once
// Parts that only move all at once, each along its own way.
//
// Four splayed legs with stretchers between them are driven into their seat together; a frame whose members
// are each tenoned into the next opens only if all four move. Speeds of all parts are sought such that no
// contact presses and no guided joint (tenon, dowels) is bent: linear inequalities, so the parts open exactly
// if a linear program has a solution other than rest. What it finds for the first instant is then asked of
// the solids for each pair over the whole way, along the line of their movement against each other.

#include <optional>

#include "assembly/ways.hpp"

namespace rayfleck::assembly {

/// Some parts and the speed at which they move off, all in one measure; parts of one speed stay together.
struct Parting {
    PartSet parts;
    Vector speed;
};

/// How parts that stand together come apart all at once; the first of them rests. Nothing when they do not.
/// It costs with the third power of their number: for some dozens.
std::optional<std::vector<Parting>> parts_at_once(const Ways& ways, const PartSet& together);

/// The same when only the parts of `core` bar one another: all others go along with one of those, as far as
/// nothing is in their way then.
std::optional<std::vector<Parting>> parts_at_once(const Ways& ways, const PartSet& together,
                                                  const PartSet& core);

} // namespace rayfleck::assembly
