#pragma once
// Compiles a text of the manual in memory, through every room from the parser to the checks.

#include <map>
#include <string>

#include "findings/finding.hpp"
#include "source/text.hpp"

namespace rayfleck::docs {

struct Compiled {
    source::Texts texts;
    findings::Findings findings;
    bool compiles = false;
    std::string shown; ///< as the terminal shows it, without colour
};

/// others  texts that the main one may bring in, by name
Compiled compile(const std::string& name, const std::string& text,
                 const std::map<std::string, std::string>& others);

/// The example with what it lacks: each statement of the skeleton that the example, or a statement taken
/// already, speaks of and does not make itself.
std::string in_skeleton(const std::string& example, const std::string& skeleton);

} // namespace rayfleck::docs
