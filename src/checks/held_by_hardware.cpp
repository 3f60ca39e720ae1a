// Held by hardware: a part that hangs on a single fitting, or on one that cannot hold.
//
// Hardware that the text names on one part and to another counts as a tie (see unconnected-part). Where it is
// the only tie of a group of parts, it is looked at: one hinge or one bolt lets the group turn, and a knob or
// a catch carries nothing. What a fitting is, only its name tells. Left out: how strong it is.

#include <algorithm>
#include <array>
#include <map>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Words for fittings that hold nothing up.
constexpr std::array<std::string_view, 12> carries_nothing{"knob",       "pull",   "handle", "catch",
                                                           "magnet",     "buffer", "stay",   "cord",
                                                           "escutcheon", "foot",   "castor", "glide"};

bool carries(const piece::Hardware& item) {
    std::string name = item.name;
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c); });
    return std::none_of(carries_nothing.begin(), carries_nothing.end(),
                        [&](std::string_view word) { return name.find(word) != std::string::npos; });
}

struct Hanging {
    int pieces = 0; ///< of hardware that can carry
    const piece::Hardware* item = nullptr;
};

void search(const joinery::Model& model, findings::Findings& found) {
    Groups groups = rigid_groups(model);
    for (const Movable& movable : movables_of(model)) {
        if (movable.loose) continue;
        Hanging hanging;
        for (const piece::Hardware& item : model.piece->hardware) {
            const auto in_group = [&](int part) {
                return std::binary_search(movable.parts.begin(), movable.parts.end(), part);
            };
            const auto touches = [&](const std::vector<int>& some, bool own) {
                return std::any_of(some.begin(), some.end(), [&](int part) { return in_group(part) == own; });
            };
            if (!(touches(item.on, true) && touches(item.to, false)) &&
                !(touches(item.to, true) && touches(item.on, false)))
                continue;
            if (hanging.item == nullptr) hanging.item = &item;
            if (carries(item)) hanging.pieces += item.count;
        }
        if (hanging.item == nullptr || hanging.pieces >= 2) continue;
        const joinery::Made& made = model.made[static_cast<std::size_t>(movable.parts.front())];
        findings::Finding finding;
        finding.name = "held-by-hardware";
        finding.severity = hanging.pieces == 0 ? findings::Severity::fault : findings::Severity::caution;
        finding.span = hanging.item->span;
        const std::string subject =
            movable.parts.size() == 1
                ? made.part->name + " hangs"
                : fmt::format("{} and {} more joined to it hang", made.part->name, movable.parts.size() - 1);
        finding.message =
            hanging.pieces == 0
                ? fmt::format("{} on nothing but the {}, which carries nothing", subject, hanging.item->name)
                : fmt::format("{} on a single {}, and can turn about it", subject, hanging.item->name);
        finding.limit = "two fittings, common practice, no published source";
        finding.mend = "write `2 off`, name the hinges or bolts that carry it, or join it";
        finding.parts = {made.part->name};
        finding.at = place_of(made, made.solid.centroid);
        found.add(std::move(finding));
    }
}

constexpr SourcedFigure figures[] = {
    {"fittings that hold a part", "two", "common practice, no published source"},
};

} // namespace

const Check held_by_hardware{
    .name = "held-by-hardware",
    .title = "A part that hangs on one fitting, or on a knob",
    .what =
        "Groups of parts that only hardware ties to the piece: how many fittings carry them. What a fitting "
        "is, its name tells: knobs, pulls, catches, stays and the like carry nothing.",
    .why = "At the bench the list looks complete. When the piece is hung, the door has one hinge and swings "
           "round "
           "it, or only its knob was ever bought.",
    .severity = "fault when no fitting carries it, caution when a single one does",
    .mend = "Name at least two hinges, bolts or brackets.",
    .wrong = "`hardware \"Butt hinge\", 1 off, on door to side`",
    .right = "`hardware \"Butt hinge\", 2 off, on door to side`",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
