#pragma once
// `rayfleck wood`: the table of woods, the figures of one with their sources, and how far a board of it
// moves.

#include <optional>
#include <string>

#include "commands/status.hpp"
#include "commands/terminal.hpp"

namespace rayfleck::commands {

struct WoodWish {
    std::string name;               ///< empty lists all woods; a question in words is answered
    std::string width = "100mm";    ///< of the board: a number with mm, cm, in or "; a bare number is mm
    std::string shop;               ///< a shop file whose own woods are known as well; empty for none
    std::optional<double> from, to; ///< moisture, percent; left out: wood in 35 % and 60 % humidity at 20 C
};

Status wood(const WoodWish& wish, Terminal& terminal);

} // namespace rayfleck::commands
