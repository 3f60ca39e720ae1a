#pragma once
// `rayfleck check`: findings only, for the terminal and for CI. Nothing is drawn.

#include <optional>
#include <string>
#include <vector>

#include "commands/status.hpp"
#include "commands/terminal.hpp"
#include "findings/finding.hpp"

namespace rayfleck::commands {

enum class Format { text, json };

struct CheckWish {
    std::vector<std::string> paths; ///< files, folders, `-`
    Format format = Format::text;   ///< text on standard error, JSON on standard output
    bool brief = false;
    std::optional<findings::Severity> fail_on = findings::Severity::fault;
};

/// Folders are walked for `*.fleck`, in the order of their names; hidden folders and links are left out, and
/// texts without a piece (recipes, shop files) are read for errors only. One broken text never stops the
/// others.
Status check(const CheckWish& wish, Terminal& terminal);

} // namespace rayfleck::commands
