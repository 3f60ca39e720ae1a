#include "piece/recipes.hpp"
namespace rayfleck::piece {
std::vector<std::pair<std::string, std::string>> shipped_recipes() { return {}; }
} // namespace rayfleck::piece
