// Held at one end: a runner, rail or shelf that stands free at its other end.
//
// For every long part that lies more or less level: where along its length joints hold it, and whether
// anything at all touches it towards the other end. Left out: pegs and other stout short parts, uprights,
// parts that are loose or that hardware holds as well.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Shorter parts are brackets and pegs. mm; our own choice.
constexpr double least_length = 200;
/// A part stands free safely up to so many times its height. Our own choice, no published source.
constexpr double stoutest = 8;
/// Holding that reaches no farther than this share of the length holds one end only. Our own choice.
constexpr double one_end = 0.4;
constexpr double fault_times = 2;

struct Reach {
    double low = 1e300, high = -1e300;
    bool any() const { return low <= high; }
};

void take(Reach& reach, const joinery::Made& made, measure::Point p) {
    const double x = made.part->frame.in(p).x;
    reach.low = std::min(reach.low, x);
    reach.high = std::max(reach.high, x);
}

bool hardware_names(const joinery::Model& model, int part) {
    return std::any_of(
        model.piece->hardware.begin(), model.piece->hardware.end(), [&](const piece::Hardware& item) {
            return !item.to.empty() && (std::find(item.on.begin(), item.on.end(), part) != item.on.end() ||
                                        std::find(item.to.begin(), item.to.end(), part) != item.to.end());
        });
}

void look_at(const joinery::Model& model, int index, Groups& groups, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    const double length = part.length.value();
    if (std::abs(part.frame.x.z) > 0.5 || length < least_length || hardware_names(model, index)) return;
    Reach held, touched;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.a != index && contact.b != index) continue;
        const bool joined = contact.joint >= 0;
        // A neighbour of the same assembly on which it lies carries it too.
        const int other = contact.a == index ? contact.b : contact.a;
        if (groups.of(other) != groups.of(index)) continue;
        for (const auto& loop : contact.loops)
            for (const measure::Point& p : loop) {
                take(touched, made, p);
                if (joined) take(held, made, p);
            }
    }
    if (!held.any()) return;
    const bool at_low = touched.high<one_end * length, at_high = touched.low>(1 - one_end) * length;
    if (!at_low && !at_high) return;
    const double free = at_low ? length - touched.high : touched.low;
    const double tall =
        std::abs(part.frame.y.z) > std::abs(part.frame.z.z) ? part.width.value() : part.thickness.value();
    const double limit = std::max(stoutest * tall, least_length);
    if (free <= limit + 0.5) return;
    findings::Finding finding;
    finding.name = "held-at-one-end";
    finding.severity = free > fault_times * limit ? findings::Severity::fault : findings::Severity::caution;
    finding.span = part.span;
    finding.message = fmt::format("{} is held at one end only, and {} of it stand free", part.name,
                                  size_text(std::round(free), model));
    finding.limit = fmt::format("{}, {:.0f} times its height: our own choice, no published source",
                                size_text(limit, model), stoutest);
    finding.mend = "join its other end too, or let it rest on something there";
    finding.parts = {part.name};
    finding.at = place_of(made, {at_low ? length : 0, part.width.value() / 2, part.thickness.value() / 2});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    Groups groups = rigid_groups(model);
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) look_at(model, i, groups, found);
}

constexpr SourcedFigure figures[] = {
    {"free length", "8 times the part's height, at least 200 mm", "our own choice, no published source"},
};

} // namespace

const Check held_at_one_end{
    .name = "held-at-one-end",
    .title = "A long part that only one end holds",
    .what =
        "Level parts 200 mm long or more: where along their length joints hold them, and whether anything "
        "carries them farther on. Uprights, pegs, loose parts and parts that hardware ties are left alone.",
    .why = "At the bench the forgotten joint is not missed, for the part stays where it is. In use it droops "
           "and "
           "works its one joint loose; a drawer runner lets its drawer fall.",
    .severity =
        "caution when it stands free by more than eight times its height, fault by more than sixteen times",
    .mend = "Join the other end.",
    .wrong = "a drawer runner tenoned into the front rail, with no joint at the back",
    .right = "the same runner joined to the back rail too",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
