// The list of all checks, and the run over them with the acceptances of the text applied.

#include "checks/list.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <vector>

#include <fmt/core.h>

namespace rayfleck::checks {
namespace {

const std::array<Check, 32>& list() {
    // Short grain first, then what the seasons do, then whether it can be made and holds together, then loads.
    static const std::array<Check, 32> every = {
        short_grain,        slope_of_grain,          length_across_grain, short_grain_land,
        joint_across_grain, dovetail_slope,          fine_pins,           slight_tenon,
        thin_wall,          bore_near_edge,          screws_in_end_grain, end_grain_glue,
        cross_grain_glue,   opening_miter,           unbalanced_face,     captured_panel,
        slide_without_room, fixed_without_allowance, tight_opening,       racking_drawer, cupping,
        perishable_wood, nominal_for_actual, stock_too_small,         machine_limit,       overlapping_parts,
        unconnected_part,   held_at_one_end,         held_by_hardware,    locked_assembly,
        sagging,            tipping,
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

/// The finding's words with every copy's name replaced by its part's: alike for the twins of one part.
std::string said_of_any_copy(const findings::Finding& finding,
                             const std::map<std::string, std::string>& bases) {
    std::string said = finding.message;
    for (const std::string& name : finding.parts) {
        const auto base = bases.find(name);
        if (base == bases.end()) continue;
        for (std::size_t at = said.find(name); at != std::string::npos;
             at = said.find(name, at + base->second.size()))
            said.replace(at, name.size(), base->second);
    }
    return said;
}

/// One cause, one finding: what one line of the text does to a part and to its mirror images is told once.
void tell_twins_once(const piece::Piece& piece, findings::Findings& found) {
    std::map<std::string, std::string> bases;
    for (const piece::Part& part : piece.parts) bases[part.name] = part.base;
    struct Told {
        findings::Finding finding;
        std::string said;
        int more = 0;
    };
    std::vector<Told> told;
    for (const findings::Finding& finding : found) {
        const std::string said = said_of_any_copy(finding, bases);
        const auto twin = std::find_if(told.begin(), told.end(), [&](const Told& t) {
            return t.said == said && t.finding.name == finding.name &&
                   t.finding.severity == finding.severity && t.finding.span == finding.span &&
                   t.finding.accepted_because == finding.accepted_because;
        });
        if (twin == told.end()) {
            told.push_back({finding, said});
            continue;
        }
        ++twin->more;
        for (const std::string& part : finding.parts)
            if (std::find(twin->finding.parts.begin(), twin->finding.parts.end(), part) ==
                twin->finding.parts.end())
                twin->finding.parts.push_back(part);
    }
    findings::Findings once;
    for (Told& t : told) {
        if (t.more > 0) t.finding.message += fmt::format(", and the same at {} more", t.more);
        once.add(std::move(t.finding));
    }
    found = std::move(once);
}

/// What lies in the text of a shipped recipe the maker cannot mend there: the finding points to the statement
/// `make` that called for it, and the place within the recipe becomes its second place.
void point_to_what_was_made(const piece::Piece& piece, findings::Findings& found) {
    for (findings::Finding& finding : found)
        for (const std::string& name : finding.parts) {
            const auto part = std::find_if(piece.parts.begin(), piece.parts.end(),
                                           [&](const piece::Part& p) { return p.name == name; });
            if (part == piece.parts.end() || !part->made_by || finding.span.file != part->span.file) continue;
            finding.labels.insert(finding.labels.begin(), {finding.span, "here in the shipped recipe"});
            finding.span = *part->made_by;
            break;
        }
}

} // namespace

std::span<const Check> all() { return list(); }

void look(const joinery::Model& model, findings::Findings& found) {
    look(model, assembly::order(model), found);
}

void look(const joinery::Model& model, const assembly::Order& order, findings::Findings& found) {
    findings::Findings own;
    for (const Check& check : all())
        if (check.look_at_order != nullptr)
            check.look_at_order(order, model, own);
        else
            check.look(model, own);
    point_to_what_was_made(*model.piece, own);
    accept(*model.piece, own);
    tell_twins_once(*model.piece, own);
    found.append(std::move(own));
    found.sort();
}

} // namespace rayfleck::checks
