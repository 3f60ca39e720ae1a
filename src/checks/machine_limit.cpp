// Machine limit: a part that does not go through a machine of the shop.
//
// The shop file says how wide, thick or long a machine takes. Every solid part is held against it with what
// is left on for jointing, planing and trimming; a glued panel goes through stave by stave. The thickness of
// a planer is the least it goes down to; a lathe is for turned parts alone. Parts of sheet goods are not
// planed. Left out: the order of work, and what a sled or a hand plane can do.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

bool turned(const joinery::Made& made) {
    return std::any_of(made.cuts.begin(), made.cuts.end(), [](const piece::Cut& cut) {
        return cut.joint < 0 && std::holds_alternative<piece::TurnedCut>(cut.shape);
    });
}

struct Rough {
    double size = 0;
    bool stave = false;
};

std::optional<Rough> rough_size(const joinery::Model& model, const joinery::Made& made,
                                std::string_view what) {
    const piece::Shop& shop = model.piece->shop;
    const piece::Part& part = *made.part;
    if (what == "width") {
        double wide = made.width.value();
        // Wider than boards are sold: stock-too-small says so.
        if (!part.glue_up && wide > 304.8) return std::nullopt;
        bool stave = false;
        if (part.glue_up && !part.glue_up->laminated) {
            stave = true;
            if (part.glue_up->count && *part.glue_up->count > 0)
                wide /= *part.glue_up->count;
            else if (part.glue_up->at_most_wide)
                wide = std::min(wide, part.glue_up->at_most_wide->value());
            else
                return std::nullopt; // of staves as wide as the shop likes
        }
        return Rough{wide + shop.allow_width.value(), stave};
    }
    if (what == "thickness" || what == "height")
        return Rough{made.thickness.value() + shop.allow_thickness.value(), false};
    if (what == "length") return Rough{made.length.value() + shop.allow_length.value(), false};
    return std::nullopt;
}

bool is_width(const std::string& what) { return what == "width"; }

/// Another machine of the shop that takes this size in the same measure; empty when there is none.
std::string other_machine(const joinery::Model& model, const piece::Shop::Limit& limit, double size) {
    for (const piece::Shop::Limit& other : model.piece->shop.limits)
        if (other.machine != limit.machine && is_width(limit.what) && is_width(other.what) &&
            other.amount.value() >= size)
            return other.machine;
    return "";
}

findings::Finding start(const joinery::Made& made) {
    findings::Finding finding;
    finding.name = "machine-limit";
    finding.span = made.part->span;
    finding.parts = {made.part->name};
    finding.at = place_of(made, made.solid.centroid);
    return finding;
}

/// A planer does not go down to nothing.
void look_at_least(const joinery::Model& model, const joinery::Made& made, const piece::Shop::Limit& limit,
                   findings::Findings& found) {
    if (made.thickness >= limit.amount) return;
    findings::Finding finding = start(made);
    finding.severity = findings::Severity::caution;
    finding.message =
        fmt::format("{} is {} thick, and the planer goes down to {}", made.part->name,
                    size_text(made.thickness.value(), model), size_text(limit.amount.value(), model));
    finding.limit = fmt::format("{}, the shop file", size_text(limit.amount.value(), model));
    finding.mend = "plane it on a board of even thickness, or by hand, and accept this";
    found.add(std::move(finding));
}

void look_at(const joinery::Model& model, const joinery::Made& made, const piece::Shop::Limit& limit,
             findings::Findings& found) {
    if (limit.machine == "lathe" && !turned(made)) return;
    if (limit.machine == "planer" && limit.what == "thickness") {
        look_at_least(model, made, limit, found);
        return;
    }
    const std::optional<Rough> rough = rough_size(model, made, limit.what);
    if (!rough || rough->size <= limit.amount.value() + 0.01) return;
    const std::string other = other_machine(model, limit, rough->size);
    findings::Finding finding = start(made);
    finding.severity = other.empty() ? findings::Severity::caution : findings::Severity::note;
    finding.message = fmt::format("{} measures {} rough, and the {} takes a {} of {}",
                                  rough->stave ? "a stave of " + made.part->name : made.part->name,
                                  size_text(rough->size, model), limit.machine, limit.what,
                                  size_text(limit.amount.value(), model));
    finding.limit = fmt::format("{}, the shop file", size_text(limit.amount.value(), model));
    if (!other.empty())
        finding.mend = fmt::format("the {} takes it, one face flattened by hand or on a sled", other);
    else if (is_width(limit.what))
        finding.mend = fmt::format(
            "glue it up of staves at most {} wide, planed before they are glued",
            size_text(std::floor(limit.amount.value() - model.piece->shop.allow_width.value()), model));
    else
        finding.mend = fmt::format("make it {} or less with what is left on, or work it another way and "
                                   "accept this",
                                   size_text(limit.amount.value(), model));
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const piece::Shop::Limit& limit : model.piece->shop.limits)
        for (const joinery::Made& made : model.made)
            if (!made.part->species->is_sheet()) look_at(model, made, limit, found);
}

constexpr SourcedFigure figures[] = {
    {"what the machine takes", "as the shop file says", "the maker's own shop file"},
    {"left on for planing, jointing and trimming", "as the shop file says; 3, 5 and 25 mm where it is silent",
     "our own choice where the file is silent"},
};

} // namespace

const Check machine_limit{
    .name = "machine-limit",
    .title = "A part that does not go through the machine",
    .what =
        "Every solid part, rough, against the limits of the shop file. A glued panel counts by its staves.",
    .why = "At the bench the board is bought, and then it does not go through the planer. What is done then, "
           "a narrower machine or a hand plane for a day, is better decided before the board is bought. "
           "Nothing of it is seen in later years.",
    .severity = "caution, for the work stops there; note when another machine of the shop takes it",
    .mend = "Narrower staves, or another way of working, accepted with the reason.",
    .wrong = "a board 420 wide in one piece and `limit planer width 400`",
    .right = "the same board glued up of staves at most 120 wide",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
