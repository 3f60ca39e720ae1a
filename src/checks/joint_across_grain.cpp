// Joint across the grain: a tenon, a tail, a pin or a finger whose fibres do not run out of the part with it.
//
// What stands beyond a shoulder is held by its fibres alone. When they run across it, it is short grain as
// long as the tenon is thick, and snaps off. The angle between the fibres and the way in which the joint
// stands out is compared by the published shares for slope of grain. A dovetail or finger corner asks it of
// both boards. Tongues and sliding tails along an edge are left alone: they are held over all their length.
// Sheet goods, loose tenons and dowels bring their own fibres.

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"
#include "wood/strength.hpp"

namespace rayfleck::checks {
namespace {

/// Share of the strength at a slope of 1 in 5, the steepest of the published table.
constexpr double caution_below = 0.55;
/// About 1 in 3.
constexpr double fault_below = 0.35;

struct Standing {
    std::string_view kind; ///< how the joint's kind begins
    std::string_view what;
    bool both; ///< the second part stands out too
    std::string_view of_second;
};
constexpr std::array<Standing, 5> standing{{
    {"mortise and tenon", "tenon", false, ""},
    {"bridle", "tongue", false, ""},
    {"dovetail", "tails", true, "pins"},
    {"half-blind dovetail", "tails", true, "pins"},
    {"finger joint", "fingers", true, "fingers"},
}};

void look_at(const joinery::Model& model, const joinery::Joint& joint, int index, std::string_view what,
             bool twice, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    if (part.species->is_sheet()) return;
    if (runs_across_its_grain(part)) return; // one cause, one finding: length-across-grain tells it
    const measure::Angle angle = fibre_against(part, side_of_joint(made, joint));
    const double left = wood::share_of_strength(wood::Load::bending, angle);
    if (left >= caution_below - 0.005) return;
    findings::Finding finding;
    finding.name = "joint-across-grain";
    finding.severity = left < fault_below ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    finding.message =
        fmt::format("the fibres of {} run at {:.0f}° to its {}{}: {} of the strength is left", part.name,
                    angle.in_degrees(), what, twice ? " at this corner" : "", percent_text(left));
    finding.limit = fmt::format("{}, a slope of 1 in 5: {}, from memory", percent_text(caution_below),
                                wood::slope_of_grain_source);
    finding.mend =
        fmt::format("turn the grain of {} by {:.0f} degrees, so that it runs into the joint, or use a loose "
                    "tenon or dowels, whose fibres cross the joint",
                    part.name, angle.in_degrees());
    finding.parts = {part.name, name_of(model, joint.a == index ? joint.b : joint.a)};
    finding.at = joint.at;
    // It breaks along the fibres at its root, over its own width or so.
    const measure::Vector root =
        part.frame.turn_out(fibre_direction(part)) * (std::min(part.width.value(), part.length.value()) / 6);
    finding.weak_lines.emplace_back(joint.at - root, joint.at + root);
    finding.labels.push_back({part.grain_span, "grain of " + part.name + " is set here"});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Joint& joint : model.joints)
        for (const Standing& kind : standing) {
            if (!joint.kind.starts_with(kind.kind)) continue;
            look_at(model, joint, joint.a, kind.what, kind.both, found);
            if (kind.both) look_at(model, joint, joint.b, kind.of_second, true, found);
            break;
        }
}

constexpr SourcedFigure figures[] = {
    {"strength left by slope of grain", "by angle",
     "Wood Handbook, Table 5-12 (from memory); beyond 1 in 5 carried on by Hankinson's formula"},
    {"share for a caution", "55 percent, a slope of 1 in 5", "the table's steepest line; our own choice"},
    {"share for a fault", "35 percent, about 1 in 3", "our own choice"},
};

} // namespace

const Check joint_across_grain{
    .name = "joint-across-grain",
    .title = "A tenon, tail or finger across its grain",
    .what =
        "Tenons, bridle tongues, dovetails and fingers: the angle between the part's fibres and the way in "
        "which the joint stands out. Tongues, sliding tails, loose tenons, dowels and sheet goods are left "
        "alone.",
    .why = "At the bench: a tenon of short grain breaks off while its shoulder is sawn or when it is driven "
           "home. After five winters: it has broken inside the mortise, where nobody sees it until the rail "
           "comes away.",
    .severity = "caution below 55 percent of straight-grained strength, fault below 35 percent",
    .mend = "Let the part's length run into the joint, or join it by loose tenons or dowels.",
    .wrong = "a box whose sides stand with their grain up, dovetailed at the corners",
    .right = "the same box with the grain of all sides level",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
