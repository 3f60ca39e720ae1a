// Short grain: a limb held by so few and short fibres that it splits off under a load that long grain would
// carry.
//
// Sees what outlines, tapers, notches and bores leave of the face of a part. A limb of reach h and lever l on
// a line of fibres of length r, in wood t thick, is taken as a cantilever that bends the line of fibres open:
// the stress across the grain at its end is 6 F l / (t r²) for a force F on the tip. Does not see knots,
// shakes, or limbs that stand out through the thickness.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// A knock at the bench, a hand that leans on it. N. Our own choice, no published source.
constexpr double tip_load = 400;
/// A limb must carry the load with half the strength of the wood. Our own choice, no published source.
constexpr double safety = 2;
/// Tension across the grain where no table gives it, as a share of the modulus of rupture: the low end of the
/// ratios for bending in the Wood Handbook, ch. 5 (from memory).
constexpr double across_to_rupture = 0.04;
/// Tips that stand out less than this are corners, not limbs. mm; our own choice.
constexpr double least_reach = 6;

/// MPa.
double tension_across(const wood::Species& species) {
    if (species.tension_across) return species.tension_across->value / 1000;
    if (species.modulus_of_rupture) return species.modulus_of_rupture->value / 1000 * across_to_rupture;
    return 2.0; // the weakest wood of the table with a figure is near this (eastern white pine 2.1 MPa)
}

/// Shortest run of fibres that carries the load on this limb at `share` of the wood's strength, mm.
double least_run(const Limb& limb, const wood::Species& species, double share) {
    return std::sqrt(6 * tip_load * limb.lever / (limb.thickness * tension_across(species) * share));
}

/// Only what turns a part's contour against its fibres can leave a limb: an outline, grain at an angle, a
/// slanting or curved cut of the text, a turned profile, notches through the thickness. Other square cuts
/// leave wood along the fibres or a land (short-grain-land), so most parts need no closer look.
bool may_have_limbs(const joinery::Made& made) {
    if (made.part->outline || made.part->grain != measure::Angle()) return true;
    return std::any_of(made.cuts.begin(), made.cuts.end(), [&](const piece::Cut& cut) {
        if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape)) {
            const double along = std::abs(plane->plane.normal.x);
            return along > 0.02 && along < 0.98 && std::abs(plane->plane.normal.z) < 0.7;
        }
        if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape))
            return box->box.low.z <= made.blank.low.z + 0.01 && box->box.high.z >= made.blank.high.z - 0.01 &&
                   box->box.low.x > made.blank.low.x + 0.01 && box->box.high.x < made.blank.high.x - 0.01;
        if (std::holds_alternative<piece::PrismCut>(cut.shape)) return cut.joint < 0;
        return std::holds_alternative<piece::TurnedCut>(cut.shape);
    });
}

/// The limbs of a part that would not carry the load with the margin.
std::vector<Limb> weak_limbs(const joinery::Made& made) {
    const wood::Species& species = *made.part->species;
    if (species.is_sheet() || runs_across_its_grain(*made.part) || !may_have_limbs(made)) return {};
    std::vector<Limb> limbs = limbs_of(made);
    std::erase_if(limbs, [&](const Limb& limb) {
        return limb.reach < least_reach || limb.thickness <= 0 ||
               limb.run >= least_run(limb, species, 1 / safety);
    });
    return limbs;
}

/// Copies of a part with nothing to tell of the first have nothing to tell of the others: same wood, same
/// blank, same solid but for a mirror.
bool alike(const joinery::Made& a, const joinery::Made& b) {
    return a.part->base == b.part->base && a.part->species == b.part->species &&
           a.part->grain == b.part->grain && a.solid.faces.size() == b.solid.faces.size() &&
           std::abs(a.solid.volume - b.solid.volume) < 1e-3 &&
           std::abs(a.solid.surface - b.solid.surface) < 1e-3 &&
           norm(a.solid.box.low - b.solid.box.low) < 1e-3 && norm(a.solid.box.high - b.solid.box.high) < 1e-3;
}

/// Angle between the fibres and the limb, root to tip, in degrees; on a five, as a protractor is set.
double turn_to_limb(const Limb& limb) {
    const measure::Vector fibre = limb.to - limb.from, out = limb.tip - (limb.from + limb.to) * 0.5;
    const double lengths = norm(fibre) * norm(out);
    if (!(lengths > 0)) return 90;
    const double degrees =
        std::acos(std::clamp(std::abs(dot(fibre, out)) / lengths, 0.0, 1.0)) * 180 / std::acos(-1.0);
    return 5 * std::round(degrees / 5);
}

void search(const joinery::Model& model, findings::Findings& found) {
    std::vector<const joinery::Made*> without;
    for (const joinery::Made& made : model.made) {
        if (std::any_of(without.begin(), without.end(),
                        [&](const joinery::Made* other) { return alike(*other, made); }))
            continue;
        const std::size_t before = found.size();
        const wood::Species& species = *made.part->species;
        for (const Limb& limb : weak_limbs(made)) {
            const double sound = least_run(limb, species, 1 / safety);
            findings::Finding finding;
            finding.name = "short-grain";
            finding.severity = limb.run < least_run(limb, species, 1) ? findings::Severity::fault
                                                                      : findings::Severity::caution;
            finding.span = made.part->grain_span;
            finding.message =
                fmt::format("short grain in {}: a limb that stands out {} hangs on fibres only {} long",
                            made.part->name, size_text(limb.reach, model), size_text(limb.run, model));
            finding.limit = fmt::format(
                "{} for a load of {:.0f} N on its tip at half the strength of {} across the grain; load and "
                "margin are our own choice, strength from {}",
                size_text(sound, model), tip_load, species.trade_name,
                species.tension_across ? species.tension_across->source
                : species.modulus_of_rupture
                    ? "the Wood Handbook's least ratio to bending strength, from memory"
                    : "the weakest wood of the tables, since none is told of this one");
            finding.mend = fmt::format("turn the outline or the grain by {:.0f} degrees, so that the fibres "
                                       "follow the limb, make the limb wider than {} where it joins, or glue "
                                       "it up of layers",
                                       turn_to_limb(limb), size_text(sound, model));
            finding.parts = {made.part->name};
            finding.at = place_of(made, (limb.from + limb.to) * 0.5);
            finding.weak_lines.emplace_back(place_of(made, limb.from), place_of(made, limb.to));
            found.add(std::move(finding));
        }
        if (found.size() == before) without.push_back(&made);
    }
}

constexpr SourcedFigure figures[] = {
    {"strength across the grain", "by wood, kPa", "Wood Handbook 2010, Table 5-3a; see `rayfleck wood`"},
    {"where the table has none", "4 % of the modulus of rupture", "Wood Handbook 2010, ch. 5, from memory"},
    {"load on the tip", "400 N", "our own choice: a person's grip; no published source"},
    {"margin", "2", "our own choice, no published source"},
};

} // namespace

bool holds_a_weak_limb(const joinery::Made& made) { return !weak_limbs(made).empty(); }

const Check short_grain{
    .name = "short-grain",
    .title = "A limb held by short fibres",
    .what = "Lines along the fibre through the finished part, at half its thickness. Where a limb hangs on "
            "the rest by one "
            "line of fibres, that line must be long enough for a load on the limb's tip. Knots, shakes and "
            "limbs that "
            "stand out through the thickness are not seen.",
    .why = "At the bench a limb of short grain may snap while its outline is still being sawn, or under the "
           "first clamp, for wood is some twenty times weaker across its fibres than along them. One that is "
           "lucky there breaks later: within five winters somebody lifts the piece by it, and a glued break "
           "opens again along the same fibres.",
    .severity = "fault when a hand's pull on its tip breaks it, for that will happen; caution when it has "
                "less than twice the strength needed, for boards of one wood differ by as much",
    .mend = "Turn the outline so that the grain follows the limb, set the grain at an angle, laminate it, or "
            "widen the limb.",
    .wrong = "a bracket sawn with its grain level and a long ear standing up from it",
    .right = "the same bracket with its grain along the ear, or the ear broad at its root",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
