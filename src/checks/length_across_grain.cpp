// Length across the grain: a part that has to carry over its long way while its fibres run the short way.
//
// Sees grain set at an angle, and parts much wider than long. Strength at an angle comes from Hankinson's
// formula with the exponent and ratio that the Wood Handbook gives for bending. Parts that float in grooves
// are left alone: a drawer bottom rightly has its grain from side to side even where it is deeper than wide.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Grain steeper than 1 in 3 leaves about a third.
constexpr double fault_below = 0.35;
/// How much wider than long a held part may be. Our own choice, no published source.
constexpr double widest_for_length = 2;

bool floats(const joinery::Model& model, int part) {
    return std::any_of(model.joints.begin(), model.joints.end(), [&](const joinery::Joint& joint) {
        return joint.a == part && (joint.kind.starts_with("groove") || joint.kind.starts_with("breadboard"));
    });
}

void look_at(const joinery::Model& model, int index, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    if (part.species->is_sheet()) return;
    findings::Finding finding;
    finding.name = "length-across-grain";
    finding.span = part.grain_span;
    finding.parts = {part.name};
    finding.at =
        place_of(made, {part.length.value() / 2, part.width.value() / 2, part.thickness.value() / 2});
    // An outline follows its grain where short-grain looks at it; here only plain boards are judged by angle.
    if (runs_across_its_grain(part)) {
        const double left = strength_left(part.grain);
        // It splits along the fibres through its middle, from edge to edge.
        const double slope = std::max(0.15, std::abs(std::sin(part.grain.in_radians())));
        const measure::Vector half =
            part.frame.turn_out(fibre_direction(part)) * (part.width.value() / 2 / slope);
        const measure::Vector up = part.frame.z * (part.thickness.value() / 2);
        finding.weak_lines.emplace_back(*finding.at + up - half, *finding.at + up + half);
        finding.severity = left < fault_below ? findings::Severity::fault : findings::Severity::caution;
        finding.message =
            fmt::format("the grain of {} runs at {:.0f}° to its length: {} of its bending strength is left",
                        part.name, std::abs(part.grain.in_degrees()), percent_text(left));
        finding.limit = fmt::format("{} of straight grain, our own choice; Hankinson's formula with the Wood "
                                    "Handbook's figures for bending",
                                    percent_text(sound_share));
        finding.mend = fmt::format("turn its grain by {:.0f} degrees, so that the length runs with it",
                                   std::abs(part.grain.in_degrees()));
        found.add(std::move(finding));
        return;
    }
    const double times = (part.width / part.length).value();
    if (times > widest_for_length && !part.loose && !floats(model, index) && !part.glue_up) {
        finding.severity = findings::Severity::caution;
        finding.message = fmt::format(
            "{} is {} wide but only {} long with the grain: it will bend and split along its short fibres",
            part.name, size_text(part.width.value(), model), size_text(part.length.value(), model));
        finding.limit = fmt::format(
            "width up to {:.0f} times the length, our own choice, no published source", widest_for_length);
        finding.mend = "let its length run the long way, or say `glued up of staves` if it is meant so";
        found.add(std::move(finding));
    }
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) look_at(model, i, found);
}

constexpr SourcedFigure figures[] = {
    {"bending strength across over along", "0.1, exponent 1.5", "Wood Handbook 2010, ch. 5 (read)"},
    {"share of strength for a caution", "70 percent", "our own choice; about a slope of 1 in 8"},
    {"share of strength for a fault", "35 percent", "our own choice; about a slope of 1 in 3"},
    {"width over length", "2", "our own choice, no published source"},
};

} // namespace

const Check length_across_grain{
    .name = "length-across-grain",
    .title = "A part whose length runs across its grain",
    .what = "Grain set at an angle to the length, and held parts much wider than they are long. Panels and "
            "bottoms that float in grooves are left "
            "alone, and so are sheet goods.",
    .why = "At the bench such a part already bends in the hand. A rail with its grain across it breaks like "
           "a biscuit the first time it is leaned on; a wide short board shrinks in the direction in which "
           "it should hold its neighbours apart, and by the fifth winter it has cupped and split along the "
           "few fibres that hold it together.",
    .severity = "fault below 35 percent of straight-grained strength, where it breaks under what such parts "
                "carry; caution below 70 percent or when more than twice as wide as long, where it may serve "
                "if little is asked of it",
    .mend = "Let the length run with the grain. For curved parts set the grain so that it follows the "
            "longest limb.",
    .wrong = "a rail of 60 x 400 with `grain at 90 degrees`",
    .right = "the same rail without that phrase",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
