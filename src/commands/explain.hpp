#pragma once
// `rayfleck explain`: one check as a lesson, or the list of them all.

#include <string>

#include "commands/status.hpp"
#include "commands/terminal.hpp"

namespace rayfleck::commands {

/// name  of a check; empty lists all with a line each
Status explain(const std::string& name, Terminal& terminal);

} // namespace rayfleck::commands
