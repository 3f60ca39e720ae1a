// Slight tenon: a tenon too thin for its rail, or too short to be held.
//
// Thickness is held against the part that is cut: old textbooks give a quarter to a third of it. Length is
// held against the tenon's own thickness, below which glue and wood have nothing to hold. Sizes are those of
// the joint. Left out: tenons that are the whole thickness of their part, round tenons, the mortise's walls
// (thin-wall).

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

namespace rules = wood::rules;

/// A tenon at least three quarters as long as it is thick. Common practice, no published source.
constexpr double least_length_in_thicknesses = 0.75;
constexpr double fault_share = 0.5;

findings::Finding start(const joinery::Model& model, const joinery::Joint& joint) {
    findings::Finding finding;
    finding.name = "slight-tenon";
    finding.span = joint.span;
    finding.parts = {name_of(model, joint.a), name_of(model, joint.b)};
    finding.at = joint.at;
    return finding;
}

void look_at(const joinery::Model& model, const joinery::Joint& joint, findings::Findings& found) {
    const joinery::Size *thick = size_named(joint, "tenon thickness"),
                        *length = size_named(joint, "tenon length");
    if (thick == nullptr || length == nullptr || !joint.kind.starts_with("mortise")) return;
    const joinery::Made& made = model.made[static_cast<std::size_t>(joint.a)];
    const double stock = std::min(made.part->thickness.value(), made.part->width.value());
    const double least = rules::tenon_thickness_least.exact().value() * stock;
    if (thick->value < least - 0.02) {
        findings::Finding finding = start(model, joint);
        finding.severity =
            thick->value < fault_share * least ? findings::Severity::fault : findings::Severity::caution;
        finding.message = fmt::format("the tenon of {} is {} thick in stock of {}", made.part->name,
                                      size_text(thick->value, model), size_text(stock, model));
        finding.limit = limit_text(size_text(least, model) + ", a quarter of the stock",
                                   rules::tenon_thickness_least.source);
        finding.mend = fmt::format("write `{} thick`, a third of the stock, or leave it out",
                                   size_text(std::round(2 * stock / 3) / 2, model));
        found.add(std::move(finding));
    }
    const joinery::Size* width = size_named(joint, "tenon width");
    const double thinner = width == nullptr ? thick->value : std::min(thick->value, width->value);
    const double shortest = least_length_in_thicknesses * thinner;
    if (length->value < shortest - 0.02) {
        findings::Finding finding = start(model, joint);
        finding.severity =
            length->value < fault_share * shortest ? findings::Severity::fault : findings::Severity::caution;
        finding.message =
            fmt::format("the tenon of {} is only {} long", made.part->name, size_text(length->value, model));
        finding.limit = limit_text(size_text(shortest, model) + ", three quarters of its thickness",
                                   "common practice, no published source");
        finding.mend = fmt::format("write `{} long` or more", size_text(std::ceil(2 * shortest), model));
        found.add(std::move(finding));
    }
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Joint& joint : model.joints) look_at(model, joint, found);
}

constexpr SourcedFigure figures[] = {
    {"thickness of a tenon", "a quarter to a third of the stock",
     "Building Construction 3-1 (textbook, date not seen; read)"},
    {"length of a tenon", "at least three quarters of its thickness", "common practice, no published source"},
};

} // namespace

const Check slight_tenon{
    .name = "slight-tenon",
    .title = "A tenon too thin or too short",
    .what = "Tenons of mortise and tenon joints: thickness against the stock they are cut on, length against "
            "their thickness. Round tenons are not looked at.",
    .why =
        "At the bench a thin tenon snaps at the shoulder when the joint is knocked apart after its dry fit. "
        "After five winters a short one has drawn out of its mortise, for its glue has less to hold than the "
        "shoulders have to pry with.",
    .severity = "caution below the limit, fault below half of it",
    .mend = "A third of the stock thick, and as long as the other part allows.",
    .wrong = "a rail 20 thick with a tenon 3 thick",
    .right = "the same rail with its tenon left to the rule, a third of 20",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
