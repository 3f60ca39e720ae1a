// Perishable wood: furniture for outdoors made of a wood that rots there.
//
// Fungi eat wood that stays damp, and some woods feed them while others poison them. A climate in which wood
// reaches the moisture of outdoor work makes the difference matter: what lasts decades indoors is soft in a
// few years there, first where water stands, at feet and in open joints. Heartwood alone is meant: sapwood of
// every species rots. Left out: preservatives, paint, roofs, woods of the shop's own (nothing is known of
// them), sheet goods (their glue decides).

#include <algorithm>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Wood in outdoor work reaches this, % MC: upper end of the handbook's range for exterior woodwork.
constexpr wood::Figure outdoors{14, "%", "Wood Handbook 2010, ch. 13, exterior woodwork",
                                wood::Confirmation::from_memory};

constexpr std::string_view decay_source =
    "Wood Handbook 2010, ch. 14, heartwood grouped by its resistance to decay; from memory";

/// Heartwood of slight or no resistance in the handbook's grouping, from memory.
constexpr std::string_view perishable[] = {
    "alder_red",        "ash_white",         "aspen_quaking", "basswood_american", "beech_american",
    "beech_european",   "birch_yellow",      "butternut",     "elm_american",      "hickory_pecan",
    "hickory_shagbark", "maple_red",         "maple_silver",  "maple_sugar",       "oak_northern_red",
    "sweetgum",         "sycamore_american", "yellow_poplar", "hemlock_western",   "pine_ponderosa",
    "pine_sugar",       "spruce_engelmann",  "spruce_sitka",
};

bool rots(const wood::Species& species) {
    return std::find(std::begin(perishable), std::end(perishable), species.id) != std::end(perishable);
}

void search(const joinery::Model& model, findings::Findings& found) {
    if (model.piece->climate.dampest.in_percent() < outdoors.value - 0.005) return;
    std::vector<const wood::Species*> told;
    for (const joinery::Made& made : model.made) {
        const wood::Species& species = *made.part->species;
        if (!rots(species) || std::find(told.begin(), told.end(), &species) != told.end()) continue;
        told.push_back(&species);
        findings::Finding finding;
        finding.name = "perishable-wood";
        finding.severity = findings::Severity::caution;
        finding.span = made.part->span;
        finding.message =
            fmt::format("{} is of {}, which rots outdoors, and the wood gets to {} moisture there",
                        made.part->name, species.trade_name, moisture_text(model.piece->climate.dampest));
        finding.limit =
            fmt::format("below {:.0f} %, or a wood that resists decay: {}", outdoors.value, decay_source);
        finding.mend =
            species.is_softwood()
                ? "make it of western redcedar, Alaska cedar or baldcypress, heartwood only"
                : "make it of white oak, teak, iroko or black locust, heartwood only; or accept this "
                  "with what protects it";
        for (const joinery::Made& other : model.made)
            if (other.part->species == &species) finding.parts.push_back(other.part->name);
        finding.at = place_of(made, made.solid.centroid);
        found.add(std::move(finding));
    }
}

constexpr SourcedFigure figures[] = {
    {"moisture of outdoor work", "14 %, upper end of its range",
     "Wood Handbook 2010, ch. 13, exterior woodwork (from memory)"},
    {"woods that rot", "ash, beech, birch, maple, red oak, poplar, spruce and others",
     "Wood Handbook 2010, ch. 14, resistance of heartwood to decay (from memory)"},
};

} // namespace

const Check perishable_wood{
    .name = "perishable-wood",
    .title = "A wood that rots, used outdoors",
    .what =
        "The heartwood of every solid part, where the stated climate reaches the moisture of outdoor work. "
        "One finding for each wood. Sapwood, preservatives, paint and a roof above the piece are not seen, "
        "nor are sheet goods and woods of the shop file.",
    .why =
        "At the bench ash and beech work better than cedar, and nothing warns you. Outdoors rain stands in "
        "the mortises and wicks up the feet. Within five winters a finger goes into the wood there, and the "
        "bench breaks under someone.",
    .severity =
        "caution: it lasts some years, and a roof or a finish that is kept up can make it last longer",
    .mend =
        "Use a wood whose heart resists decay, keep feet off the ground and let water run off every joint.",
    .wrong = "a garden bench of red oak, with `climate 9% to 14% moisture`",
    .right = "the same bench of white oak",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
