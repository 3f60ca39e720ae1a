#pragma once
// `rayfleck start`: a small piece that compiles without a finding, to begin from.

#include <string>

#include "commands/status.hpp"
#include "commands/terminal.hpp"

namespace rayfleck::commands {

/// Writes NAME.fleck; a file that is there stays as it is.
/// name  with or without `.fleck`, a folder may stand before it
Status start(const std::string& name, Terminal& terminal);

} // namespace rayfleck::commands
