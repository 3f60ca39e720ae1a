// Unconnected parts: nothing holds them.
//
// Parts are joined into groups by the joints of the text. A part outside the largest group is told apart by
// whether it touches anything. Parts said to be `loose` are meant to be so, and so is all that is joined to
// them.

#include <algorithm>
#include <map>
#include <vector>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

void search(const joinery::Model& model, findings::Findings& found) {
    const int count = static_cast<int>(model.made.size());
    if (count < 2) return;
    Groups groups = rigid_groups(model);
    // Hardware that the text names on one part and to another holds them together: hinges, bolts. A joint's
    // own pegs and screws say nothing more than the joint, and one entry of them may serve several pairs.
    if (model.piece)
        for (const piece::Hardware& item : model.piece->hardware)
            for (const int on : item.on)
                for (const int to : item.to) groups.tie(on, to);
    std::map<int, int> sizes;
    std::map<int, bool> loose;
    for (int i = 0; i < count; ++i) {
        ++sizes[groups.of(i)];
        loose[groups.of(i)] = loose[groups.of(i)] || model.made[static_cast<std::size_t>(i)].part->loose;
    }
    const int largest = std::max_element(sizes.begin(), sizes.end(), [](const auto& a, const auto& b) {
                            return a.second < b.second;
                        })->first;
    for (const auto& [group, size] : sizes) {
        if (group == largest || loose[group]) continue;
        // One finding for the group, at its first part.
        const piece::Part& part = *model.made[static_cast<std::size_t>(group)].part;
        const auto touch =
            std::find_if(model.contacts.begin(), model.contacts.end(), [&](const joinery::Contact& contact) {
                const int a = groups.of(contact.a), b = groups.of(contact.b);
                return a != b && (a == group || b == group);
            });
        findings::Finding finding;
        finding.name = "unconnected-part";
        finding.span = part.span;
        finding.parts = {part.name};
        finding.at = place_of(model.made[static_cast<std::size_t>(group)],
                              model.made[static_cast<std::size_t>(group)].solid.centroid);
        const std::string subject =
            size == 1 ? part.name : fmt::format("{} and {} more joined to it", part.name, size - 1);
        const std::string verb = size == 1 ? "touches" : "touch";
        if (touch == model.contacts.end()) {
            finding.severity = findings::Severity::fault;
            finding.message = fmt::format("{} {} nothing", subject, verb);
            finding.mend = "check where it is placed";
        } else {
            const int other = groups.of(touch->a) == group ? touch->b : touch->a;
            finding.severity = findings::Severity::caution;
            finding.message = fmt::format("{} {} {} but no joint holds {}", subject, verb,
                                          name_of(model, other), size == 1 ? "it" : "them");
            finding.mend =
                fmt::format("write `join {} to {} with ...`, or `loose` if it is meant to lift out",
                            part.base, model.made[static_cast<std::size_t>(other)].part->base);
            finding.labels.push_back({model.made[static_cast<std::size_t>(other)].part->span,
                                      name_of(model, other) + " is placed here"});
        }
        finding.limit = "every part is held, or said to be loose";
        found.add(std::move(finding));
    }
}

} // namespace

const Check unconnected_part{
    .name = "unconnected-part",
    .title = "A part that nothing holds",
    .what = "Parts that no joint ties to the rest of the piece, and parts that touch nothing at all. Parts "
            "said to be `loose` are left alone; hardware "
            "named on two parts counts as a tie.",
    .why = "At the bench it is found out when the last joint is glued and one part is left over. Or it is "
           "set in its place and stays there by chance, until somebody moves the piece: after five winters "
           "it lies on the floor. Often it was only placed wrongly.",
    .severity = "fault when it touches nothing, for then something is missing; caution when it touches "
                "without a joint, since a part may be meant to lie loose",
    .mend = "Place it against its neighbour and join it, or say `loose`.",
    .wrong = "a drawer runner with no joint to the case",
    .right = "the same runner screwed to the case",
    .figures = {},
    .look = search,
};

} // namespace rayfleck::checks
