#pragma once
// The program as a function: words of the command line in, exit status out.

#include <string>
#include <vector>

#include "commands/status.hpp"

namespace rayfleck::commands {

/// words  without the program's own name
Status run(const std::vector<std::string>& words);

} // namespace rayfleck::commands
