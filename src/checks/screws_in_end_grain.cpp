// Screws in end grain: threads that run along the fibres and pull out.
//
// A lead hole that lies along the fibres of the part that holds the thread puts the screw into end grain. It
// holds about three quarters of what side grain does, when nothing splits, so it needs a third more thread
// for the same hold: the seven shank diameters that side grain needs for a full sideways load become nine and
// a third. Holding is that of the handbook's tests to failure. Left out: screws at a slant, and sheet goods.

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"
#include "wood/screws.hpp"

namespace rayfleck::checks {
namespace {

namespace rules = wood::rules;

/// Fibres within 30 degrees of the screw: cos 30. Our own choice.
constexpr double along_the_screw = 0.866;
constexpr double fault_share = 0.5;

struct Thread {
    const joinery::Joint* joint = nullptr;
    int holder = -1;
    double length = 0, shank = 0;
    measure::Point at; ///< in the piece
};

void report(const joinery::Model& model, const Thread& thread, findings::Findings& found) {
    const double share = rules::screw_in_end_grain.exact().value();
    const double needed = rules::screw_penetration.value * thread.shank / share;
    if (thread.length >= needed - 0.05) return;
    const joinery::Made& holder = model.made[static_cast<std::size_t>(thread.holder)];
    const wood::Species& species = *holder.part->species;
    findings::Finding finding;
    finding.name = "screws-in-end-grain";
    finding.severity =
        thread.length < fault_share * needed ? findings::Severity::fault : findings::Severity::caution;
    finding.span = thread.joint->span;
    finding.message = fmt::format("the screws into the end grain of {} have only {} of thread there",
                                  holder.part->name, size_text(thread.length, model));
    const std::optional<wood::Figure>& gravity =
        species.gravity_12 ? species.gravity_12 : species.gravity_green;
    if (gravity)
        finding.message +=
            fmt::format(": each pulls out at {:.0f} N at best",
                        share * wood::screw_withdrawal(gravity->value, thread.shank, thread.length));
    finding.limit =
        fmt::format("{}: {:.0f} shank diameters in side grain ({}), and a third more in end grain ({}, from "
                    "memory)",
                    size_text(std::ceil(needed), model), rules::screw_penetration.value,
                    rules::screw_penetration.source, rules::screw_in_end_grain.source);
    finding.mend =
        fmt::format("take screws {} longer, or put a dowel across the end for the thread to bite on, "
                    "or use a tenon or dowels",
                    size_text(std::ceil(needed - thread.length), model));
    finding.parts = {holder.part->name,
                     name_of(model, thread.joint->a == thread.holder ? thread.joint->b : thread.joint->a)};
    finding.at = thread.at;
    finding.labels.push_back({holder.part->grain_span, "grain of " + holder.part->name + " is set here"});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        const joinery::Made& made = model.made[static_cast<std::size_t>(i)];
        if (made.part->species->is_sheet()) continue;
        const measure::Vector fibre = fibre_direction(*made.part);
        std::set<int> told; // one cause, one finding: the screws of one joint are alike
        for (const piece::Cut& cut : made.cuts) {
            const auto* bore = std::get_if<piece::BoreCut>(&cut.shape);
            if (bore == nullptr || cut.joint < 0 || cut.word != "lead hole" || told.contains(cut.joint))
                continue;
            measure::Vector way;
            way[bore->face.axis] = bore->face.high ? -1 : 1;
            if (bore->direction) way = *bore->direction;
            if (std::abs(dot(way, fibre)) < along_the_screw) continue;
            told.insert(cut.joint);
            const joinery::Joint& joint = model.joints[static_cast<std::size_t>(cut.joint)];
            const joinery::Size* shank = size_named(joint, "screw shank");
            if (shank == nullptr || !bore->deep) continue;
            report(model, {&joint, i, *bore->deep, shank->value, place_of(made, bore->centre)}, found);
        }
    }
}

constexpr SourcedFigure figures[] = {
    {"thread for a full sideways load", "7 shank diameters", "Wood Handbook 2021, ch. 8 (read, secondary)"},
    {"holding in end grain", "three quarters of side grain, erratic", "Wood Handbook, ch. 8 (from memory)"},
    {"pull that draws a screw", "108.25 G² D L newtons, side grain",
     "Wood Handbook 2021, Eq 8-10 (read, secondary); tests to failure"},
};

} // namespace

const Check screws_in_end_grain{
    .name = "screws-in-end-grain",
    .title = "Screws whose thread bites in end grain",
    .what =
        "Lead holes along the fibres of the part that holds the thread: the length of thread against what "
        "end grain needs. Slanting screws and sheet goods are not seen.",
    .why =
        "At the bench such a screw turns in easily, because it cuts between the fibres instead of lifting "
        "them. After five winters it has worked loose: each load bends the fibres aside, and nothing closes "
        "the hole again.",
    .severity = "caution below nine and a third shank diameters of thread, fault below half of that",
    .mend = "Longer screws, a dowel across the end for the thread, or a tenon.",
    .wrong = "a shelf 18 thick held at its ends by screws 30 long through sides of 18",
    .right = "the same shelf in dados, or held by screws 60 long",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
