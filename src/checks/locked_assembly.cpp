// Locked assembly: parts that cannot be brought together, one after the other or all at once.
//
// The assembly room takes the finished solids apart by straight moves and tells what is left: a smallest set
// of parts of which none can be moved off the others. Dowels, loose tenons and splines count although they
// are no parts. Parts that take up the same space are told by overlapping-parts and do not count here.
//
// Not seen: moves that turn a part, wood that is sprung over a lip, a move round a corner in two legs, a
// joint that is only sawn through in place.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// `from the left and right`: the ways along which a joint comes together, in the maker's words.
std::string way_of(const joinery::Joint& joint) {
    constexpr const char* words[3] = {"across", "deep", "up and down"};
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(joint.assembly[axis]) > 0.999) return words[axis];
    return measure::norm(joint.assembly) > 0.5 ? "at a slant" : "";
}

std::string told(const std::vector<std::string>& words) {
    std::string all;
    for (std::size_t i = 0; i < words.size(); ++i)
        all += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    return all;
}

void search(const assembly::Order& order, const joinery::Model& model, findings::Findings& found) {
    for (const assembly::Lock& lock : order.locks) {
        findings::Finding finding;
        finding.name = "locked-assembly";
        finding.severity = findings::Severity::fault;
        std::vector<std::string> names, joints;
        for (const int part : lock.parts) names.push_back(name_of(model, part));
        for (const int j : lock.joints) {
            const joinery::Joint& joint = model.joints[static_cast<std::size_t>(j)];
            const std::string way = way_of(joint);
            joints.push_back(fmt::format("{} into {} by {}{}", name_of(model, joint.a),
                                         name_of(model, joint.b), joint.kind,
                                         way.empty() ? "" : ", which goes together " + way));
        }
        constexpr std::size_t most_told = 6;
        const std::size_t more = joints.size() > most_told ? joints.size() - most_told : 0;
        joints.resize(joints.size() - more);
        std::string between = fmt::format("{}", fmt::join(joints, "; "));
        if (more > 0) between += fmt::format("; and {} more", more);
        finding.message = fmt::format("{} cannot be brought together in any order{}{}", told(names),
                                      between.empty() ? "" : ": ", between);
        finding.limit =
            "of any parts that stand together some can be moved off the others in a straight line";
        finding.mend =
            lock.joints.empty()
                ? "one of them is held in on all sides: part what surrounds it, or let one side come off"
                : "let one of these joints go together the same way as its neighbour: open a stopped end, "
                  "use screws in its place, or make one part in two";
        for (const int j : lock.joints) {
            const source::Span& span = model.joints[static_cast<std::size_t>(j)].span;
            if (finding.parts.empty()) {
                finding.span = span;
                finding.at = model.joints[static_cast<std::size_t>(j)].at;
                finding.parts = names;
            } else if (span != finding.span &&
                       std::none_of(finding.labels.begin(), finding.labels.end(),
                                    [&](const auto& label) { return label.span == span; })) {
                finding.labels.push_back({span, "this joint bars it too"});
            }
        }
        if (finding.parts.empty()) {
            const joinery::Made& first = model.made[static_cast<std::size_t>(lock.parts.front())];
            finding.span = first.part->span;
            finding.at = place_of(first, first.solid.centroid);
            finding.parts = names;
        }
        found.add(std::move(finding));
    }
}

constexpr SourcedFigure figures[] = {
    {"least overlap that bars a move", "0.1 mm wide",
     "play of any joint, common practice, no published source"},
};

} // namespace

const Check locked_assembly{
    .name = "locked-assembly",
    .title = "Parts that go together in no order",
    .what =
        "Parts of which none can be moved off the others in a straight line, neither alone nor with some of "
        "them nor all at once: a smallest such set, with the joints between them. It does not see parts that "
        "are "
        "turned or sprung into place.",
    .why =
        "It is found out at the glue-up, with the glue running: the last part does not go in. What was made "
        "by then is sawn apart again, and a joint that was forced shows its cracks within five winters.",
    .severity = "always a fault: no order of assembly avoids it",
    .mend = "Let one of the joints go together the same way as its neighbours: run a stopped groove out to "
            "one end, "
            "use screws in its place, or make one of the parts in two.",
    .wrong = "three rails, each tenoned into the next along another direction",
    .right = "the same rails with one of the three joints screwed",
    .figures = figures,
    .look_at_order = search,
};

} // namespace rayfleck::checks
