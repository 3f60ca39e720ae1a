#pragma once
// Statements: which word begins which, what block each takes, and how lines become the tree.

#include <string_view>
#include <vector>

#include "syntax/layout.hpp"
#include "syntax/reading.hpp"
#include "syntax/tree.hpp"

namespace rayfleck::syntax {

/// Whether a statement begins with this word.
bool begins_statement(std::string_view word);

/// Reads lines as statements. `in_recipe`: they are the body of a recipe.
void read_statements(const Reading& reading, const std::vector<Line>& lines, bool in_recipe,
                     std::vector<Statement>& out);

} // namespace rayfleck::syntax
