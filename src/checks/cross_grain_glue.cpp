// Cross-grain glue: two parts glued over a contact in which they swell and shrink differently.
//
// For every glued contact the strains of both parts between the driest and the dampest season are compared in
// the plane of the contact, in the two directions in which they differ most and least, over the length of the
// contact in that direction. The worse one gives the movement that the glue line must suffer each year. The
// limit is the trade's: so much movement as a cross joint of 100 mm (4 in) in the same wood, flat sawn, has.
// Left out: how glues differ in creep, and contacts held in their middle only, which joinery does not call
// glued.

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"
#include "wood/elastic.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

/// Movement that no glue line minds, mm. Our own choice, no published source.
constexpr double harmless_movement = 0.5;
constexpr double fault_times = 2;
/// A rail of 4 in is still harmless.
constexpr const wood::Figure& harmless_width = wood::rules::cross_grain_width_harmless;

/// A facing no thicker follows the panel under it; what it does to the panel, unbalanced-face tells. mm;
/// common practice, no published source.
constexpr double facing = 3;

bool is_facing(const joinery::Made& made, const joinery::Contact& contact) {
    return made.part->thickness.value() <= facing + 1e-6 &&
           std::abs(dot(made.part->frame.z, contact.plane.normal)) > 0.98;
}

struct Worst {
    double movement = 0, length = 0;
    double dry = 0, damp = 0; ///< of one part against the other, mm
    double low = 0, high = 0; ///< of the contact along the direction
    measure::Vector direction;
    const joinery::Contact* contact = nullptr;
};

void consider(const joinery::Contact& contact, const Seasons& a, const Seasons& b, Worst& worst) {
    const wood::StrainsInPlane differ =
        wood::strains_in_plane((a.damp - a.dry) - (b.damp - b.dry), contact.plane.normal);
    for (const measure::Vector d : {differ.towards_greatest, differ.towards_least}) {
        double low = 0, high = 0;
        bool first = true;
        for (const auto& loop : contact.loops)
            for (const measure::Point& p : loop) {
                const double at = dot(p, d);
                low = first ? at : std::min(low, at);
                high = first ? at : std::max(high, at);
                first = false;
            }
        const Mismatch moves = mismatch(a, b, d, high - low);
        if (moves.range() > worst.movement)
            worst = {moves.range(), high - low, moves.dry, moves.damp, low, high, d, &contact};
    }
}

/// Yearly movement of so much flat-sawn wood of this species across its grain, mm.
double flat_sawn_movement(const wood::Species& species, const piece::Piece& piece, double width) {
    return std::abs(wood::movement(measure::Length::from_geometry(width), piece.climate.driest,
                                   piece.climate.dampest, wood::Sawn::flat, species)
                        .value());
}

/// `: held fast, board would be pulled across its grain with about 9 MPa, and bears 3.9 MPa`, of the part
/// that moves more; empty where its stiffness or its strength across the grain is not known.
std::string stress_words(const joinery::Model& model, const joinery::Made& one, const joinery::Made& other,
                         const Worst& worst) {
    const auto range = [&](const joinery::Made& made) {
        const Seasons seasons = seasons_of(made, *model.piece);
        return std::abs((seasons.damp - seasons.dry).along(worst.direction).in_ratio());
    };
    const joinery::Made& mover = range(one) >= range(other) ? one : other;
    const wood::Species& species = *mover.part->species;
    const auto across = wood::across_stiffness(species);
    if (!across || !species.modulus_of_elasticity || !species.tension_across || !(worst.length > 0))
        return "";
    const double c = std::cos(mover.part->rings.in_radians());
    const double ratio = across->tangential.value * c * c + across->radial.value * (1 - c * c);
    const double stress = wood::axial_over_bending.value * species.modulus_of_elasticity->value * ratio *
                          worst.movement / worst.length;
    return fmt::format(
        ": held fast, {} would be pulled across its grain with about {:.0f} MPa, and bears {:.1f} MPa",
        mover.part->name, stress, species.tension_across->value / 1000);
}

/// `; quarter-sawn: 3.1 mm instead of 6.2 mm`, when sawing both so would help by a tenth or more.
std::string quarter_sawn_words(const joinery::Model& model, const joinery::Made& one,
                               const joinery::Made& other, const Worst& worst) {
    const auto seasons = [&](const joinery::Made& made) {
        piece::Part part = *made.part;
        if (!part.species->is_sheet()) part.rings = measure::Angle::degrees(90);
        joinery::Made sawn;
        sawn.part = &part;
        return seasons_of(sawn, *model.piece);
    };
    const double quarter = mismatch(seasons(one), seasons(other), worst.direction, worst.length).range();
    if (quarter > 0.9 * worst.movement) return "";
    return fmt::format("; quarter-sawn wood moves {} there instead of {}", movement_text(quarter, model),
                       movement_text(worst.movement, model));
}

void report(const joinery::Model& model, int a, int b, const Worst& worst, findings::Findings& found) {
    const joinery::Made& one = model.made[static_cast<std::size_t>(a)];
    const joinery::Made& other = model.made[static_cast<std::size_t>(b)];
    const double limit = std::max(
        {harmless_movement, flat_sawn_movement(*one.part->species, *model.piece, harmless_width.value),
         flat_sawn_movement(*other.part->species, *model.piece, harmless_width.value)});
    if (worst.movement <= limit) return;
    const joinery::Joint* joint =
        worst.contact->joint >= 0 ? &model.joints[static_cast<std::size_t>(worst.contact->joint)] : nullptr;
    findings::Finding finding;
    finding.name = "cross-grain-glue";
    finding.severity =
        worst.movement > fault_times * limit ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint ? joint->span : one.part->span;
    finding.message =
        fmt::format("{} and {} are glued over {} in which they move {} apart {}{}", one.part->name,
                    other.part->name, size_text(worst.length, model), movement_text(worst.movement, model),
                    season_words(*model.piece), stress_words(model, one, other, worst));
    finding.limit = fmt::format(
        "{}, the movement of 100 mm (4 in) of flat-sawn wood: common practice, no published source",
        movement_text(limit, model));
    finding.mend = fmt::format("let one of them slide: glue it at one place only, over {} at most, and use "
                               "slots {} long, buttons, or a groove without glue for the rest; or turn its "
                               "grain to run with the other's{}",
                               size_text(std::floor(worst.length * limit / worst.movement), model),
                               size_text(std::ceil(worst.movement / 2 + 1), model),
                               quarter_sawn_words(model, one, other, worst));
    finding.parts = {one.part->name, other.part->name};
    measure::Point middle{};
    std::size_t count = 0;
    for (const auto& loop : worst.contact->loops)
        for (const measure::Point& p : loop) {
            middle = middle + p;
            ++count;
        }
    if (count > 0) finding.at = middle * (1.0 / static_cast<double>(count));
    // Held in its middle, each end of the contact moves half of it.
    if (finding.at)
        for (const bool far : {false, true}) {
            const measure::Vector way = far ? worst.direction : -worst.direction;
            const double off = (far ? worst.high : -worst.low) - dot(*finding.at, way);
            finding.movements.push_back(season_movement(*finding.at + way * off, way, worst.dry / 2,
                                                        worst.damp / 2, model, " at each end"));
        }
    finding.labels.push_back({one.part->grain_span, "grain of " + one.part->name + " is set here"});
    finding.labels.push_back({other.part->grain_span, "grain of " + other.part->name + " is set here"});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    std::vector<Seasons> seasons;
    seasons.reserve(model.made.size());
    for (const joinery::Made& made : model.made) seasons.push_back(seasons_of(made, *model.piece));
    // One cause, one finding: a joint's cheeks and shoulders are several contacts of the same two parts.
    std::map<std::pair<int, int>, Worst> worst;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.hold != joinery::Hold::glued ||
            is_facing(model.made[static_cast<std::size_t>(contact.a)], contact) ||
            is_facing(model.made[static_cast<std::size_t>(contact.b)], contact))
            continue;
        consider(contact, seasons[static_cast<std::size_t>(contact.a)],
                 seasons[static_cast<std::size_t>(contact.b)], worst[{contact.a, contact.b}]);
    }
    for (const auto& [pair, what] : worst)
        if (what.contact != nullptr) report(model, pair.first, pair.second, what, found);
}

constexpr SourcedFigure figures[] = {
    {"movement of wood", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"harmless width of cross-grain glue", "100 mm (4 in), flat sawn",
     "common practice (3 to 4 in), no published source"},
    {"stress if it were held fast", "stiffness across the grain × movement / length, without creep",
     "Wood Handbook, Tables 5-1 and 5-3; see `rayfleck wood`"},
    {"harmless movement", "0.5 mm", "our own choice, no published source"},
    {"a facing that follows its panel", "3 mm thick", "common practice, no published source"},
};

} // namespace

const Check cross_grain_glue{
    .name = "cross-grain-glue",
    .title = "Glued where the two sides move differently",
    .what = "Every glued contact between two parts: the difference of their movements over a year, in the "
            "worst direction of the contact. "
            "Contacts that may slide are left alone.",
    .why = "At the bench the joint looks like any other. Wood moves across its grain and hardly along it, so "
           "every winter one side shrinks and the other does not, and the glue line or the wood beside it is "
           "sheared. The first heated winter often cracks the wider part; by the fifth the crack runs "
           "through, or the glue has let go from the ends inwards.",
    .severity = "caution above the movement of 100 mm of flat-sawn wood, which the trade has found to hold "
                "for generations; fault above twice that, which wood and glue do not bear for long",
    .mend = "Glue at one place and let the rest slide, use a narrower joint or quarter-sawn wood, or turn "
            "the grain.",
    .wrong = "a batten glued across the full width of a solid door",
    .right = "the batten screwed in its middle, with slotted screws towards both ends",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
