#pragma once
// Findings as a person reads them in a terminal: `file:line:col: severity: message [name]`, the source line,
// a marker under the span, then second places, limit and remedy.

#include <string>

#include "findings/finding.hpp"
#include "source/text.hpp"

namespace rayfleck::findings {

struct Look {
    bool colour = false;
    /// Only the first line of each.
    bool brief = false;
};

std::string show(const Finding& finding, const source::Texts& texts, const Look& look);
/// All of them, in their order, each followed by an empty line unless brief.
std::string show(const Findings& findings, const source::Texts& texts, const Look& look);

} // namespace rayfleck::findings
