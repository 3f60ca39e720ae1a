// Racking drawer: a drawer so much wider than deep that it jams when it is pulled at one side.
//
// Pulled off its middle, a drawer turns in its opening until one corner in front and the other behind touch,
// and their friction holds it. With the pull at the distance e from the middle, sides of length L and a
// friction of f, the corners press with N = P e / L each and hold with 2 f N; they hold for ever when
// 2 f e > L. Pulled at its end, e is half the width W: it jams when W > L / f (statics, derived for this
// program). With the least friction of dry wood on wood,
// f = 0.3, that is 3.3 times the length. Left out: guides in the middle, rollers
// and metal slides, which the text does not tell; say so in accepting it.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Smooth dry wood on wood: the least of the handbook's range of 0.3 to 0.5, for what jams then jams waxed
/// too.
constexpr wood::Figure friction{0.3, "", "Wood Handbook 2010, ch. 5, coefficients of friction",
                                wood::Confirmation::from_memory};
/// What is loose, of so many parts, so deep and so near to the front is a drawer. Our own choice.
constexpr int parts_of_a_drawer = 4;
constexpr double least_depth = 100, near_the_front = 60;

void look_at(const joinery::Model& model, const Movable& drawer, double front, findings::Findings& found) {
    const double wide = drawer.box.high.x - drawer.box.low.x, deep = drawer.box.high.y - drawer.box.low.y;
    if (!drawer.loose || static_cast<int>(drawer.parts.size()) < parts_of_a_drawer || deep < least_depth ||
        drawer.box.low.y > front + near_the_front)
        return;
    if (wide <= deep / friction.value + 0.05) return;
    // The part that the maker called loose stands for the drawer: its front.
    const auto loose = std::find_if(drawer.parts.begin(), drawer.parts.end(), [&](int part) {
        return model.made[static_cast<std::size_t>(part)].part->loose;
    });
    const joinery::Made& made =
        model.made[static_cast<std::size_t>(loose != drawer.parts.end() ? *loose : drawer.parts.front())];
    findings::Finding finding;
    finding.name = "racking-drawer";
    finding.severity = findings::Severity::caution;
    finding.span = made.part->span;
    finding.message =
        fmt::format("the drawer with {} is {} wide and {} deep: pulled at one side it turns and jams",
                    made.part->name, size_text(wide, model), size_text(deep, model));
    finding.limit =
        fmt::format("as wide as {:.1f} times its depth, for a friction of {:.1f}: {}, from memory",
                    1 / friction.value, friction.value, friction.source);
    finding.mend =
        fmt::format("make it {} deep or more, or two drawers of it; or run it on a guide in its middle, "
                    "and accept this",
                    size_text(std::ceil(wide * friction.value), model));
    for (const int part : drawer.parts)
        finding.parts.push_back(model.made[static_cast<std::size_t>(part)].part->name);
    finding.at =
        measure::Point{drawer.box.low.x, drawer.box.low.y, (drawer.box.low.z + drawer.box.high.z) / 2};
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    const std::vector<Movable> movables = movables_of(model);
    if (movables.empty()) return;
    double front = 1e300;
    for (const joinery::Made& made : model.made) front = std::min(front, box_in_piece(made).low.y);
    for (const Movable& movable : movables) look_at(model, movable, front, found);
}

constexpr SourcedFigure figures[] = {
    {"jams when", "width > depth / friction", "statics, derived for this program"},
    {"friction of dry wood on wood", "0.3, the least of 0.3 to 0.5",
     "Wood Handbook 2010, ch. 5 (from memory)"},
};

} // namespace

const Check racking_drawer{
    .name = "racking-drawer",
    .title = "A drawer so wide for its depth that it jams",
    .what =
        "Drawers: loose groups of four parts or more at the front of the piece, their width against their "
        "depth. Guides in the middle, rollers and metal slides are not seen.",
    .why =
        "At the bench it is pushed with both hands in the middle and runs well. In use it is pulled by one "
        "knob: it turns in its opening, bites with two corners and stops. Jerked free for five winters, it "
        "has worn its runners hollow and its front is loose.",
    .severity =
        "caution: wax, a close fit and two hands get by for years; wider than friction allows, it jams "
        "for whoever pulls it at one side",
    .mend = "A deeper drawer, two drawers side by side, or a guide under its middle.",
    .wrong = "a drawer 700 wide and 180 deep",
    .right = "the same drawer 350 deep",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
