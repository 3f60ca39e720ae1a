// End grain relied on as a glue surface.
//
// Glue holds long grain on long grain as well as the wood itself holds; the open pores of end grain drink it
// up. For every two parts that only glue holds together (butted, in a plain mitre, or in a rabbet) each glued
// contact is asked how steeply the fibres of either side meet it. When next to none of the glued area is long
// grain on long grain, the joint stands on end grain. Joints that interlock, dados among them, and parts that
// screws or hardware hold as well are left alone.

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

/// Fibres that meet the surface at less than 20 degrees count as long grain: sin 20. Our own choice; the
/// handbook's scarfs, which hold like long grain, are far flatter.
constexpr double end_grain_above = 0.342;
/// Share of the end-grain area that long grain must have for the joint to stand on it. Our own choice.
constexpr double enough_long_grain = 0.25;

struct Glued {
    double long_grain = 0, end_grain = 0;
    measure::Point at;
    double largest = 0;
    const joinery::Joint* joint = nullptr;
};

bool only_glue_holds(const std::string& kind) {
    return kind == "glue" || kind.starts_with("rabbet") ||
           (kind.starts_with("miter") && kind.find("spline") == std::string::npos &&
            kind.find("key") == std::string::npos);
}

std::pair<int, int> pair_of(int a, int b) { return {std::min(a, b), std::max(a, b)}; }

/// Pairs that something besides glue holds: an interlocking joint, screws, or hardware that names both.
std::set<std::pair<int, int>> held_otherwise(const joinery::Model& model) {
    std::set<std::pair<int, int>> held;
    for (const joinery::Joint& joint : model.joints)
        if (!only_glue_holds(joint.kind)) held.insert(pair_of(joint.a, joint.b));
    for (const piece::Hardware& item : model.piece->hardware)
        for (const int on : item.on)
            for (const int to : item.to) held.insert(pair_of(on, to));
    return held;
}

double steepness(const joinery::Made& made, measure::Vector normal) {
    if (made.part->species->is_sheet()) return 0;
    return std::abs(dot(made.part->frame.turn_out(fibre_direction(*made.part)), normal));
}

void report(const joinery::Model& model, const std::pair<int, int>& parts, const Glued& glued,
            findings::Findings& found) {
    const joinery::Joint& joint = *glued.joint;
    const std::string &one = name_of(model, joint.a), &other = name_of(model, joint.b);
    findings::Finding finding;
    finding.name = "end-grain-glue";
    finding.severity = joint.kind == "glue" ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    finding.message =
        fmt::format("{} and {} are held by glue on end grain alone: {:.0f} cm² of it, and {:.0f} "
                    "cm² of long grain on long grain",
                    one, other, glued.end_grain / 100, glued.long_grain / 100);
    finding.limit = fmt::format("end grain holds {} of the wood's strength at best, {}",
                                percent_text(wood::rules::end_grain_glue_at_best.exact().value()),
                                wood::rules::end_grain_glue_at_best.source);
    finding.mend =
        joint.kind.starts_with("miter")
            ? "write `miter, spline` or `miter, keys`, whose fibres cross the joint"
            : "use a joint with long grain in it, such as a mortise and tenon, a dovetail, dowels or a "
              "half lap, or screw it as well";
    finding.parts = {model.made[static_cast<std::size_t>(parts.first)].part->name,
                     model.made[static_cast<std::size_t>(parts.second)].part->name};
    finding.at = glued.at;
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    const std::set<std::pair<int, int>> held = held_otherwise(model);
    std::map<std::pair<int, int>, Glued> pairs;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.hold != joinery::Hold::glued || contact.joint < 0) continue;
        const auto parts = pair_of(contact.a, contact.b);
        if (held.contains(parts)) continue;
        Glued& glued = pairs[parts];
        const double steep =
            std::max(steepness(model.made[static_cast<std::size_t>(contact.a)], contact.plane.normal),
                     steepness(model.made[static_cast<std::size_t>(contact.b)], contact.plane.normal));
        (steep > end_grain_above ? glued.end_grain : glued.long_grain) += contact.area;
        if (contact.area <= glued.largest) continue;
        glued.largest = contact.area;
        glued.joint = &model.joints[static_cast<std::size_t>(contact.joint)];
        measure::Point sum;
        for (const measure::Point& p : contact.loops.front()) sum = sum + p;
        glued.at = sum * (1.0 / static_cast<double>(contact.loops.front().size()));
    }
    for (const auto& [parts, glued] : pairs)
        if (glued.end_grain > 0 && glued.long_grain < enough_long_grain * glued.end_grain)
            report(model, parts, glued, found);
}

constexpr SourcedFigure figures[] = {
    {"strength of a glued butt of end grain", "25 percent of the wood's tension strength, at best",
     "Wood Handbook 2010, ch. 10 (read)"},
    {"end grain begins", "fibres at 20° to the surface", "our own choice"},
    {"long grain needed", "a quarter of the end-grain area", "our own choice"},
};

} // namespace

const Check end_grain_glue{
    .name = "end-grain-glue",
    .title = "End grain relied on as a glue surface",
    .what =
        "Two parts that only glue holds, butted, mitred or in a rabbet: how much of the glued area is long "
        "grain on long grain. Joints that interlock, and parts that are screwed or bolted too, are left "
        "alone.",
    .why = "At the bench the joint feels firm, for end grain soaks up the glue and sets hard. After five "
           "winters "
           "it has been knocked apart: the pores drank the glue and left too little of it between the parts.",
    .severity =
        "fault for a butt, which will come off in use; caution for a plain mitre or a rabbet, which gets "
        "by in a box or a light frame",
    .mend =
        "Give the glue long grain: tenon, dovetail, half lap, dowels; splines or keys in a mitre; or screws "
        "besides.",
    .wrong = "a rail butted and glued to a leg",
    .right = "the rail tenoned into the leg",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
