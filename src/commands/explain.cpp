// See explain.hpp. What is printed is the text of the check itself; only its lines are laid out here.

#include "commands/explain.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/checks.hpp"
#include "source/text.hpp"

namespace rayfleck::commands {
namespace {

constexpr int line_width = 80;

/// Words set in lines of at most line_width columns.
std::string filled(std::string_view words, int indent) {
    const std::string margin(static_cast<std::size_t>(indent), ' ');
    std::string out, line;
    const auto end_line = [&] {
        if (!line.empty()) out += margin + line + "\n";
        line.clear();
    };
    std::size_t at = 0;
    while (at < words.size()) {
        const std::size_t end = std::min(words.find_first_of(" \n", at), words.size());
        const std::string_view word = words.substr(at, end - at);
        if (!word.empty() && !line.empty() &&
            indent + source::display_width(line) + 1 + source::display_width(word) > line_width)
            end_line();
        if (!word.empty()) line += (line.empty() ? "" : " ") + std::string(word);
        if (end < words.size() && words[end] == '\n' && end + 1 < words.size() && words[end + 1] == '\n') {
            end_line();
            out += "\n";
        }
        at = end + 1;
    }
    end_line();
    return out;
}

/// An example of text, kept line for line.
std::string example(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        if (end > 0) out += "    " + std::string(text.substr(0, end));
        out += "\n";
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return out;
}

std::string section(std::string_view head, std::string_view words) {
    return words.empty() ? "" : fmt::format("\n{}\n{}", head, filled(words, 2));
}

std::string lesson(const checks::Check& check) {
    std::string out = fmt::format("{}\n{}", check.name, filled(check.title, 0));
    out += section("What it sees", check.what);
    out += section("Why it matters", check.why);
    out += section("How bad it is", check.severity);
    out += section("How to mend it", check.mend);
    if (!check.wrong.empty()) out += "\nGives the finding\n" + example(check.wrong);
    if (!check.right.empty()) out += "\nMended\n" + example(check.right);
    if (!check.figures.empty()) {
        out += "\nFigures\n";
        for (const checks::SourcedFigure& figure : check.figures)
            out += filled(fmt::format("{}: {} ({})", figure.what, figure.value, figure.source), 2);
    }
    out += fmt::format("\nTo accept it\n    accept {} because \"...\"\n", check.name);
    return out;
}

std::string list_of_all() {
    std::size_t longest = 0;
    for (const checks::Check& check : checks::all()) longest = std::max(longest, check.name.size());
    std::string out;
    for (const checks::Check& check : checks::all())
        out += fmt::format("{:<{}}  {}\n", check.name, longest, check.title);
    return out + "\n`rayfleck explain NAME` tells more of one.\n";
}

} // namespace

Status explain(const std::string& name, Terminal& terminal) {
    if (name.empty()) {
        terminal.print(list_of_all());
        return Status::sound;
    }
    std::vector<std::string> names;
    for (const checks::Check& check : checks::all()) {
        if (check.name == name) {
            terminal.print(lesson(check));
            return Status::sound;
        }
        names.emplace_back(check.name);
    }
    const auto near = findings::near_word(name, names);
    terminal.say(fmt::format("rayfleck: there is no check named {}{}\n", name,
                             near ? fmt::format("; the nearest is {}", *near)
                                  : "; `rayfleck explain` lists them all"));
    return Status::failure;
}

} // namespace rayfleck::commands
