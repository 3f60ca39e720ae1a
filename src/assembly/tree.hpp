#pragma once
// The tree of splits: what stands together was made of a base and of what came to it.

#include <memory>
#include <vector>

#include "assembly/split.hpp"
#include "assembly/ways.hpp"

namespace rayfleck::assembly {

struct Node;

/// Something that comes to a base: how, and what it is made of itself.
struct Coming {
    std::unique_ptr<Node> node;
    Move move;
};

/// Parts that stand together. A single part, or a block that does not come apart, has no base.
struct Node {
    std::vector<int> parts;
    std::unique_ptr<Node> base;
    std::vector<Coming> comings; ///< one; or several that come at once
    Class breaks = Class::nothing;
};

/// Takes the whole piece apart, down to its parts. Locks are written down, and each counts as
/// one block from then on.
std::unique_ptr<Node> take_apart(const Ways& ways, std::vector<Lock>& locks);

} // namespace rayfleck::assembly
