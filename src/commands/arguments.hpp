#pragma once
// The command line, read: which command, with what wishes, or what is wrong with it.

#include <string>
#include <variant>
#include <vector>

#include "commands/check.hpp"
#include "commands/compile.hpp"
#include "commands/lumber.hpp"
#include "commands/terminal.hpp"
#include "commands/wood.hpp"

namespace rayfleck::commands {

struct ExplainWish {
    std::string name;
};
struct StartWish {
    std::string name;
};
/// Help or the version: text that was asked for.
struct Answer {
    std::string text;
};
/// Wrong usage, with what would be right.
struct Misused {
    std::string text;
};

struct Arguments {
    std::variant<Misused, Answer, CompileWish, CheckWish, LumberWish, ExplainWish, StartWish, WoodWish> wish;
    Colour colour = Colour::automatic;
};

/// words  without the program's own name
Arguments read_arguments(const std::vector<std::string>& words);

} // namespace rayfleck::commands
