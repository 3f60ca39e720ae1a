// The list of all checks, and the run over them with the acceptances of the text applied.

#include "checks/list.hpp"

#include <algorithm>
#include <array>

#include <fmt/core.h>

namespace rayfleck::checks {
namespace {

const std::array<Check, 9>& list() {
    // Short grain first, then what the seasons do, then whether it can be made and holds together.
    static const std::array<Check, 9> every = {
        short_grain,        length_across_grain, short_grain_land,
        cross_grain_glue,   captured_panel,      fixed_without_allowance,
        nominal_for_actual, overlapping_parts,   unconnected_part,
    };
    return every;
}

bool concerns(const findings::Finding& finding, const piece::Acceptance& acceptance,
              const piece::Piece& piece) {
    if (finding.name != acceptance.check) return false;
    if (acceptance.parts.empty()) return true;
    return std::any_of(acceptance.parts.begin(), acceptance.parts.end(), [&](int part) {
        const std::string& name = piece.parts[static_cast<std::size_t>(part)].name;
        return std::find(finding.parts.begin(), finding.parts.end(), name) != finding.parts.end();
    });
}

void accept(const piece::Piece& piece, findings::Findings& found) {
    std::vector<findings::Finding> needless;
    for (const piece::Acceptance& acceptance : piece.acceptances) {
        bool used = false;
        for (findings::Finding& finding : found)
            if (concerns(finding, acceptance, piece)) {
                finding.accepted_because = acceptance.reason;
                used = true;
            }
        if (used) continue;
        findings::Finding finding;
        finding.name = "needless-acceptance";
        finding.severity = findings::Severity::note;
        finding.span = acceptance.span;
        const bool known = std::any_of(all().begin(), all().end(),
                                       [&](const Check& c) { return c.name == acceptance.check; });
        if (known) {
            finding.message =
                fmt::format("nothing to accept: {} finds nothing here any more", acceptance.check);
            finding.mend = "take this line out";
        } else {
            finding.message = fmt::format("there is no check named {}", acceptance.check);
            std::vector<std::string> names;
            for (const Check& check : all()) names.emplace_back(check.name);
            if (const auto near = findings::near_word(acceptance.check, names))
                finding.mend = "did you mean " + *near + "?";
        }
        needless.push_back(std::move(finding));
    }
    for (findings::Finding& finding : needless) found.add(std::move(finding));
}

} // namespace

std::span<const Check> all() { return list(); }

void look(const joinery::Model& model, findings::Findings& found) {
    findings::Findings own;
    for (const Check& check : all()) check.look(model, own);
    accept(*model.piece, own);
    found.append(std::move(own));
    found.sort();
}

} // namespace rayfleck::checks
