#pragma once
// Which forms of the language some texts use, each told as the language writes it: `rip`, `row of ... up`,
// `turned: smooth`.
//
// The syntax tree is walked; the compiler sees to it that no phrase and no statement is left out of the walk.
// What two texts write differently but the tree keeps alike (`size 20 x 60` and `20 thick, 60 wide`) is one
// form.

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "syntax/tree.hpp"

namespace rayfleck::checks_tests {

struct FormsUsed {
    std::set<std::string> forms;
    /// Kind of joint and option, as written.
    std::set<std::string> joints;
    std::set<std::pair<std::string, std::string>> options;
};

/// Adds what these statements use, those of recipes too.
void take(const std::vector<syntax::Statement>& statements, FormsUsed& used);

/// The forms that are kinds of one thing: phrases, statements, arithmetic, units, sides, copies, steps.
const std::vector<std::string>& forms_of_tables();

} // namespace rayfleck::checks_tests
