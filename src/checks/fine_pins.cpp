// Fine pins: dovetail pins so thin that they split off, in the middle of the corner or at its edges.
//
// A pin is thinnest at its tip, on the outside of the tails; a half pin at the edge of the corner has one
// slanting side only. Both are read from the joint's own sizes. Left out: tails that are too narrow, which
// shows in pins that are too wide and looks odd but holds.

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// A saw kerf and a little: finer pins are for show. mm; common practice, no published source.
constexpr double least_pin = 3;
/// The half pin at the edge takes every knock. mm; common practice, no published source.
constexpr double least_half_pin = 3;
constexpr double fault_share = 0.5;

void look_at(const joinery::Model& model, const joinery::Joint& joint, std::string_view size_name,
             std::string_view called, double least, findings::Findings& found) {
    const joinery::Size* pin = size_named(joint, size_name);
    if (pin == nullptr || pin->value > least - 0.005) return;
    const joinery::Made& made = model.made[static_cast<std::size_t>(joint.b)];
    findings::Finding finding;
    finding.name = "fine-pins";
    finding.severity =
        pin->value < fault_share * least ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    finding.message = fmt::format("the {} of {} are only {} thick at their tips", called, made.part->name,
                                  size_text(pin->value, model));
    finding.limit = limit_text(size_text(least, model), "common practice, no published source");
    finding.mend =
        called == "pins"
            ? fmt::format("write `pins {}`, or ask for fewer tails", size_text(2 * least, model))
            : fmt::format("write `shoulder {}`, or ask for fewer tails", size_text(2 * least, model));
    finding.parts = {made.part->name, name_of(model, joint.a)};
    finding.at = joint.at;
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Joint& joint : model.joints) {
        look_at(model, joint, "pin at its tip", "pins", least_pin, found);
        look_at(model, joint, "half pin at its tip", "half pins", least_half_pin, found);
    }
}

constexpr SourcedFigure figures[] = {
    {"pin at its tip", "3 mm", "common practice, no published source"},
    {"half pin at the edge, at its tip", "3 mm", "common practice, no published source"},
};

} // namespace

const Check fine_pins{
    .name = "fine-pins",
    .title = "Dovetail pins too fine to last",
    .what = "The thickness of pins at their tips, and of the half pins at both edges of the corner.",
    .why =
        "At the bench: a chisel is wider than such a pin, and a half pin splits off while the sockets are "
        "pared. After five winters: the sides have moved against each other, and the thinnest pins are the "
        "first to shear.",
    .severity = "caution below 3 mm, fault below half of that",
    .mend = "Fewer tails, wider pins, or a broader half pin at the edge.",
    .wrong = "a box 60 high with 8 tails",
    .right = "the same box with 3 tails",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
