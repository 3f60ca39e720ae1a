// Hands the wish of the command line to the command. An answer that could not be given on standard output is
// a failure, whatever else went well.

#include "commands/run.hpp"

#include <exception>

#include "commands/arguments.hpp"
#include "commands/explain.hpp"
#include "commands/start.hpp"

namespace rayfleck::commands {
namespace {

struct Command {
    Terminal& terminal;
    Status operator()(const Misused& wish) {
        terminal.say(wish.text);
        return Status::failure;
    }
    Status operator()(const Answer& wish) {
        terminal.print(wish.text);
        return Status::sound;
    }
    Status operator()(const CompileWish& wish) { return compile(wish, terminal); }
    Status operator()(const CheckWish& wish) { return check(wish, terminal); }
    Status operator()(const LumberWish& wish) { return lumber_plan(wish, terminal); }
    Status operator()(const ExplainWish& wish) { return explain(wish.name, terminal); }
    Status operator()(const StartWish& wish) { return start(wish.name, terminal); }
    Status operator()(const WoodWish& wish) { return wood(wish, terminal); }
};

} // namespace

Status run(const std::vector<std::string>& words) {
    guard_standard_streams();
    try {
        const Arguments arguments = read_arguments(words);
        Terminal terminal(arguments.colour);
        const Status status = std::visit(Command{terminal}, arguments.wish);
        if (terminal.trouble().empty()) return status;
        terminal.say("rayfleck: cannot write standard output: " + terminal.trouble() + "\n");
    } catch (const std::exception& defect) {
        Terminal(Colour::never)
            .say(std::string("rayfleck: a defect of this program: ") + defect.what() + "\n");
    }
    return Status::failure;
}

} // namespace rayfleck::commands
