#pragma once
// `rayfleck lumber`: the lumber plan of one or several pieces together, as text for the yard and the saw.

#include <optional>
#include <string>
#include <vector>

#include "commands/status.hpp"
#include "commands/terminal.hpp"

namespace rayfleck::commands {

/// More than anyone waits for.
constexpr int most_effort = 1'000'000;

struct LumberWish {
    std::vector<std::string> files;  ///< `-` is standard input
    std::optional<std::string> size; ///< nothing: the first of each table
    std::string folder;              ///< for sheets, lists and pictures; empty: the terminal alone
    int effort = 20;                 ///< see lumber::usual_effort
    bool inventory = false;          ///< only the boards that are left, as statements of a shop file
};

/// A piece that does not compile is told and nothing is planned, since a lot of boards for some of the pieces
/// would be the wrong lot.
Status lumber_plan(const LumberWish& wish, Terminal& terminal);

} // namespace rayfleck::commands
