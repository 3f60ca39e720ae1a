// Cupping: a wide flat-sawn board or panel that nothing holds flat.
//
// A flat-sawn board goes hollow on its bark side when it dries and on its heart side when it gets damp,
// because the rings straighten. The hollow of one board is (s_T - s_R) w² / (4 a) with a its distance from
// the pith (see the wood room); a is not known, and taken as the width of the board, for a board nearer to
// the pith than that holds its juvenile wood. Staves with all bark faces one way add up to one curve over the
// whole panel; alternating ones leave a ripple of single staves. Between flat and quarter the effect falls
// with the square of the cosine of the ring angle (our own estimate). Held flat counts a part that joints
// touch over half its width. Left out: sheet goods, frames, the weight of the piece, finish on one side only.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/season_table.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Hollow that a free lid or door may show, mm. Our own choice, no published source.
constexpr double harmless = 1.5;
constexpr double fault_times = 3;
/// Holding across this share of the width keeps a board flat. Our own choice.
constexpr double held_flat = 0.5;

/// Share of the width over which joints touch or hold the part.
double share_held(const joinery::Model& model, int index) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    double low = 1e300, high = -1e300;
    for (const joinery::Contact& contact : model.contacts) {
        if ((contact.a != index && contact.b != index) || contact.joint < 0) continue;
        for (const auto& loop : contact.loops)
            for (const measure::Point& p : loop) {
                const double y = made.part->frame.in(p).y;
                low = std::min(low, y);
                high = std::max(high, y);
            }
    }
    return low > high ? 0 : (high - low) / made.part->width.value();
}

/// Hollow over `whole` of boards that lay so far from the pith and whose curves add up, mm.
double hollow(const joinery::Model& model, const piece::Part& part, double from_pith, double whole,
              double rings) {
    const auto depth = [&](measure::Moisture season) {
        return std::abs(wood::cup_depth(measure::Length::from_geometry(whole),
                                        measure::Length::from_geometry(from_pith), model.piece->made_at,
                                        season, *part.species)
                            .value());
    };
    const double c = std::cos(rings);
    return std::max(depth(model.piece->climate.driest), depth(model.piece->climate.dampest)) * c * c;
}

/// Which way it goes: a board dries hollow on its bark side and swells hollow on its heart side.
std::string way_of(const piece::Piece& piece, bool alternating) {
    const bool dries = piece.made_at.in_percent() - piece.climate.driest.in_percent() >=
                       piece.climate.dampest.in_percent() - piece.made_at.in_percent();
    if (alternating) return "from stave to stave the other way";
    return dries ? "the bark side hollow in the driest season"
                 : "the heart side hollow in the dampest season";
}

void look_at(const joinery::Model& model, int index, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    if (part.species->is_sheet() || (part.glue_up && part.glue_up->laminated)) return;
    if (part.width < part.thickness * measure::Rational(4)) return;
    const double wide = part.width.value(), stave = stave_width(part), rings = part.rings.in_radians();
    const bool alternating = part.glue_up && part.glue_up->alternating;
    const double from_pith = pith_to_face(part, stave);
    const double deep = hollow(model, part, from_pith, alternating ? stave : wide, rings);
    if (deep <= harmless || share_held(model, index) >= held_flat) return;
    findings::Finding finding;
    finding.name = "cupping";
    finding.severity =
        deep > fault_times * harmless ? findings::Severity::fault : findings::Severity::caution;
    finding.span = part.span;
    finding.message = fmt::format("nothing holds {} flat, and it goes hollow by about {} {}: {}", part.name,
                                  movement_text(deep, model), season_words(*model.piece),
                                  way_of(*model.piece, alternating));
    finding.limit =
        fmt::format("{}, our own choice; shrinkage by {}; {}", movement_text(harmless, model),
                    wood::movement_source(*part.species),
                    part.pith ? fmt::format("the pith is {} from its face", size_text(from_pith, model))
                              : "distance from the pith taken as the width of a board");
    const double quarter = hollow(model, part, from_pith, alternating ? stave : wide, std::acos(-1.0) / 2);
    const double turned = hollow(model, part, from_pith, stave, rings);
    finding.mend = "join a batten across it with slotted screws, or give it breadboard ends";
    if (!alternating && stave < wide - 1)
        finding.mend += fmt::format("; or write `bark faces alternating`: {} instead of {}",
                                    movement_text(turned, model), movement_text(deep, model));
    finding.mend += fmt::format("; or quarter-saw it: {}", movement_text(quarter, model));
    finding.parts = {part.name};
    finding.at = place_of(made, {part.length.value() / 2, wide / 2, part.thickness.value()});
    // Seen from the bark side, where it is known, the edges rise as it dries and fall as it swells.
    const double up = part.bark && part.bark->axis == 2 && !part.bark->high ? -1 : 1;
    const double shrinks = model.piece->made_at.in_percent() - model.piece->climate.driest.in_percent(),
                 swells = model.piece->climate.dampest.in_percent() - model.piece->made_at.in_percent();
    const double most = std::max({shrinks, swells, 1e-9});
    for (const double y : {0.0, wide})
        finding.movements.push_back(
            season_movement(place_of(made, {part.length.value() / 2, y, part.thickness.value() / 2}),
                            part.frame.z * up, deep * shrinks / most, -deep * swells / most, model));
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) look_at(model, i, found);
}

constexpr SourcedFigure figures[] = {
    {"depth of the hollow", "(s_T - s_R) w² / (4 a)", "small-angle geometry, derived for this program"},
    {"the bark side goes hollow on drying", "", "Wood Handbook, ch. 13 (from memory)"},
    {"distance from the pith", "the width of a board or stave", "our own choice"},
    {"harmless hollow", "1.5 mm", "our own choice, no published source"},
};

} // namespace

const Check cupping{
    .name = "cupping",
    .title = "A wide board that nothing holds flat",
    .what =
        "Solid boards and panels of which joints hold less than half the width: how hollow they go towards "
        "either season, by how they are sawn and how their staves lie.",
    .why = "At the bench the lid lies flat. In its first winter, dried by a heated room, it stands on two "
           "edges and rocks; a plank door no longer meets its stop. In summer some of it comes back, and "
           "after five winters what has set stays for good.",
    .severity = "caution above 1.5 mm, which the eye sees and a weight presses flat; fault above three times "
                "that, where a door does not close and a lid does not lie",
    .mend =
        "Battens with slotted screws, breadboard ends, quarter-sawn wood, or staves with their bark faces "
        "turned about.",
    .wrong = "a loose lid 500 wide of flat-sawn staves, bark faces together",
    .right = "the same lid with two battens on slotted screws",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
