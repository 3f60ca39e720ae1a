#pragma once
// Counting findings, and what the count means for the exit status.

#include <optional>
#include <string>

#include "commands/status.hpp"
#include "findings/finding.hpp"

namespace rayfleck::commands {

struct Tally {
    int texts = 0, unreadable = 0;
    int errors = 0, faults = 0, cautions = 0, notes = 0, accepted = 0;

    void add(const findings::Findings& findings);
    /// `2 texts: 1 fault, 3 cautions, 1 accepted`; `2 texts: nothing found`.
    std::string words() const;
};

/// Status of the findings of one text.
/// fail_on  the least severity that fails; nothing: findings never do. Errors of the text always do
Status status_of(const findings::Findings& findings, std::optional<findings::Severity> fail_on);

} // namespace rayfleck::commands
