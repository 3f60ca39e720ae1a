#pragma once
// The lumber plan of one piece or of several together, as JSON; see docs/json.md.

#include <string>
#include <vector>

#include "writers/json.hpp"

namespace rayfleck::writers {

/// Titles of the pieces, and their plan; ends with a line end.
std::string write_lumber_json(const lumber::Plan& plan, const std::vector<lumber::Source>& sources);

} // namespace rayfleck::writers
