#pragma once
// The recipes that are shipped with the program, as texts of the language.

#include <string>
#include <utility>
#include <vector>

namespace rayfleck::piece {

/// File name and text of each, by name: `carcase.fleck`, `drawer.fleck` ... They lie in src/piece/recipes and
/// are compiled in.
std::vector<std::pair<std::string, std::string>> shipped_recipes();

} // namespace rayfleck::piece
