// Dovetail slope: tails whose sides leave the grain too steeply, or hardly at all.
//
// The corner of a tail is a wedge of wood whose outer fibres are no longer than the slope lets them be: at a
// slope of 1 in n a fibre of the corner runs out after n times its distance from the side. Slopes are those
// that the joint was laid out with. Published slopes run from 1 in 4 (a school text) to 1 in 8 (today's
// custom in hardwood). Left out: tails whose board has its grain the wrong way, see joint-across-grain.

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"
#include "wood/strength.hpp"

namespace rayfleck::checks {
namespace {

namespace rules = wood::rules;

/// Flatter than this a tail holds hardly better than a straight finger. Our own choice: somewhat beyond the
/// flattest custom of 1 in 8.
constexpr double flattest = 10;

std::string one_in(double n) { return fmt::format("1 in {:.3g}", n); }

void look_at(const joinery::Model& model, const joinery::Joint& joint, findings::Findings& found) {
    const joinery::Size* slope = size_named(joint, "slope: 1 in");
    if (slope == nullptr) return;
    const joinery::Made& made = model.made[static_cast<std::size_t>(joint.a)];
    const double n = slope->value;
    const wood::Figure& steepest = rules::dovetail_slope_steepest;
    const wood::Figure& usual_steepest = rules::dovetail_slope_manual_steepest;
    const wood::Figure& custom = rules::dovetail_slope(*made.part->species);
    findings::Finding finding;
    finding.name = "dovetail-slope";
    finding.span = joint.span;
    if (n < usual_steepest.value - 1e-6) {
        finding.severity =
            n < steepest.value - 1e-6 ? findings::Severity::fault : findings::Severity::caution;
        finding.message =
            fmt::format("the tails of {} slope {}: their corners are short grain with {} of the strength of "
                        "straight grain",
                        made.part->name, one_in(n),
                        percent_text(wood::share_of_strength(wood::Load::bending, wood::slope_angle(n))));
        finding.limit =
            fmt::format("{}, {}; no textbook teaches steeper than {} ({})", one_in(usual_steepest.value),
                        usual_steepest.source, one_in(steepest.value), steepest.source);
    } else if (n > flattest + 1e-6) {
        finding.severity = findings::Severity::caution;
        finding.message = fmt::format("the tails of {} slope only {}: they hold hardly better than straight "
                                      "fingers, by their glue alone",
                                      made.part->name, one_in(n));
        finding.limit = fmt::format("{}, our own choice, no published source", one_in(flattest));
    } else {
        return;
    }
    finding.mend = fmt::format("write `slope 1:{:.0f}`, the custom for {}", custom.value,
                               made.part->species->is_softwood() ? "softwood" : "hardwood");
    finding.parts = {made.part->name, name_of(model, joint.b)};
    finding.at = joint.at;
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Joint& joint : model.joints) look_at(model, joint, found);
}

constexpr SourcedFigure figures[] = {
    {"steepest slope of a textbook", "1 in 4", "G. A. Ross, Elementary Course in Woodwork (read)"},
    {"steepest slope of a maker's manual", "1 in 5",
     "E. Joyce, The Technique of Furniture Making (read in part)"},
    {"today's custom", "1 in 6 softwood, 1 in 8 hardwood",
     "common practice, no source of authority; older textbooks give hard wood the steeper slope"},
    {"flattest", "1 in 10", "our own choice, no published source"},
    {"strength by slope of grain", "by slope", "Wood Handbook, Table 5-12 (from memory)"},
};

} // namespace

const Check dovetail_slope{
    .name = "dovetail-slope",
    .title = "Dovetails too steep or too flat",
    .what = "The slope of tails at corners and of sliding dovetails, as the joint was laid out.",
    .why =
        "At the bench: the corners of a steep tail crumble when the joint is tapped together, because their "
        "fibres run out at once. After five winters: a tail that is too flat has let go as soon as its glue "
        "has, since nothing else holds it.",
    .severity =
        "fault steeper than 1 in 4, for the corners will not survive fitting; caution steeper than 1 in "
        "5 or flatter than 1 in 10",
    .mend = "Use 1 in 8 in hardwood, 1 in 6 in softwood.",
    .wrong = "`slope 1:3` in a cherry box",
    .right = "`slope 1:8`, or no slope told",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
