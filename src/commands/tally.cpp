// See tally.hpp. An accepted finding stays listed and counts as accepted only.

#include "commands/tally.hpp"

#include <vector>

#include <fmt/format.h>

namespace rayfleck::commands {

void Tally::add(const findings::Findings& findings) {
    for (const findings::Finding& finding : findings) {
        int& count = finding.accepted_because                          ? accepted
                     : finding.severity == findings::Severity::error   ? errors
                     : finding.severity == findings::Severity::fault   ? faults
                     : finding.severity == findings::Severity::caution ? cautions
                                                                       : notes;
        ++count;
    }
}

std::string Tally::words() const {
    std::vector<std::string> counts;
    const auto count = [&](int number, const char* one, const char* several) {
        if (number > 0) counts.push_back(fmt::format("{} {}", number, number == 1 ? one : several));
    };
    count(unreadable, "unreadable", "unreadable");
    count(errors, "error", "errors");
    count(faults, "fault", "faults");
    count(cautions, "caution", "cautions");
    count(notes, "note", "notes");
    count(accepted, "accepted", "accepted");
    if (counts.empty()) counts.emplace_back("nothing found");
    return fmt::format("{} {}: {}", texts, texts == 1 ? "text" : "texts", fmt::join(counts, ", "));
}

Status status_of(const findings::Findings& findings, std::optional<findings::Severity> fail_on) {
    Status status = Status::sound;
    for (const findings::Finding& finding : findings) {
        if (finding.severity == findings::Severity::error) return Status::does_not_compile;
        if (!finding.accepted_because && fail_on && finding.severity >= *fail_on) status = Status::findings;
    }
    return status;
}

} // namespace rayfleck::commands
