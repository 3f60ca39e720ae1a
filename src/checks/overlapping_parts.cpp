// Overlapping parts: two parts that take up the same space after all joints have been cut.
//
// Clashes of the finished solids, pair by pair. Overlaps thinner than 0.02 mm on the mean are facets of
// curves and are not reported by the solid room.

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

void search(const joinery::Model& model, findings::Findings& found) {
    for (const solid::Clash& clash : solid::clashes(model.placed())) {
        const piece::Part& a = *model.made[static_cast<std::size_t>(clash.a)].part;
        const piece::Part& b = *model.made[static_cast<std::size_t>(clash.b)].part;
        const measure::Vector size = clash.box.high - clash.box.low;
        bool joined = false;
        for (const joinery::Joint& joint : model.joints)
            joined = joined || (joint.a == clash.a && joint.b == clash.b) ||
                     (joint.a == clash.b && joint.b == clash.a);
        findings::Finding finding;
        finding.name = "overlapping-parts";
        finding.severity = findings::Severity::fault;
        finding.span = b.span;
        finding.message =
            fmt::format("{} and {} take up the same space: {} across, {} deep, {} up", a.name, b.name,
                        size_text(size.x, model), size_text(size.y, model), size_text(size.z, model));
        finding.limit = "two parts cannot stand in one place";
        finding.mend = joined ? "their joint does not take all of this away: move one of them, or give the "
                                "joint the size it needs"
                              : "move one of them, or say how they are joined";
        finding.labels.push_back({a.span, a.name + " is placed here"});
        finding.parts = {a.name, b.name};
        finding.at = (clash.box.low + clash.box.high) * 0.5;
        found.add(std::move(finding));
    }
}

constexpr SourcedFigure figures[] = {
    {"least overlap reported", "0.02 mm mean thickness", "accuracy of the curves' facets, our own choice"},
};

} // namespace

const Check overlapping_parts{
    .name = "overlapping-parts",
    .title = "Two parts in one place",
    .what = "Finished parts that share space once every joint has been cut.",
    .why = "It cannot be put together. Usually a size is wrong, or a joint has been forgotten.",
    .severity = "always a fault",
    .mend = "Move or shorten one of the two, or join them with a joint that takes the wood away.",
    .wrong = "a shelf that reaches 6 mm into the side of its case without a dado",
    .right = "the same shelf with `join shelf to side with dado`",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
