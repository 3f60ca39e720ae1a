#pragma once
// `rayfleck compile`: the paper for the bench. One PDF per piece and size, its cut list as CSV, everything as
// JSON.

#include <optional>
#include <string>
#include <vector>

#include "commands/status.hpp"
#include "commands/terminal.hpp"
#include "drawing/draw.hpp"
#include "findings/finding.hpp"

namespace rayfleck::commands {

struct CompileWish {
    std::vector<std::string> files;  ///< `-` is standard input
    std::string folder = ".";        ///< made when missing
    std::optional<std::string> size; ///< nothing: every size of the table
    drawing::Wishes drawing;
    bool pictures = false; ///< every sheet as SVG too
    bool lists = false;    ///< hardware, blanks, purchases and steps as CSV too
    bool brief = false;
    bool quiet = false; ///< do not name the files written
    std::optional<findings::Severity> fail_on = findings::Severity::fault;
};

/// A piece with errors writes nothing and keeps the others from nothing; its older files stay as they are.
Status compile(const CompileWish& wish, Terminal& terminal);

} // namespace rayfleck::commands
