#pragma once
// Made-up pieces of any size, as texts, so that growth can be measured on the same kind of work.

#include <string>

namespace rayfleck::commands {

/// A bank of drawers with that many parts, or a few less where no bank comes out exact.
/// parts  40 to 400
std::string bank_of_drawers(int parts);

} // namespace rayfleck::commands
