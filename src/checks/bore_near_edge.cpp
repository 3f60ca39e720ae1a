// Bores too near an edge: the wood beside the hole splits along its fibres.
//
// From the wall of every bore, at three depths, the wood is measured on the finished solid outwards across
// the fibres: beside a bore in a face towards both edges, beside a bore in an edge towards both faces, beside
// a bore in an end all round. A screw counts with its shank, because it wedges its lead hole open. Wood
// towards the end of the board is the business of short-grain-land. Left out: slanting bores, bores that cut
// an edge open on purpose.

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/where_joined.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

/// A screw wedges the wood apart. The handbook's edge distance is to the middle of the bolt: this much is
/// beyond the wall.
constexpr double least_of_screw = wood::rules::edge_distance.value - 0.5;
/// A dowel or any other hole: one of half the stock leaves this much. Common practice, no published source.
constexpr double least_of_hole = 0.5;
constexpr double fault_share = 0.5;

struct Beside {
    double wood = 0, needed = 0, diameter = 0;
    bool screw = false;
    const piece::Cut* cut = nullptr;
    measure::Point at; ///< own frame
    measure::Vector way;
};

bool taken_by_a_joint(const joinery::Made& made, measure::Point p) {
    return std::any_of(made.cuts.begin(), made.cuts.end(), [&](const piece::Cut& cut) {
        const auto* box = std::get_if<piece::BoxCut>(&cut.shape);
        if (box == nullptr || cut.joint < 0) return false;
        for (int axis = 0; axis < 3; ++axis)
            if (p[axis] < box->box.low[axis] || p[axis] > box->box.high[axis]) return false;
        return true;
    });
}

/// Wood from the wall of a void of this radius outwards; nothing where the void goes on. Wood that another
/// joint has taken beyond it is filled by that joint's other part: no edge.
std::optional<double> wall(const joinery::Made& made, measure::Point middle, measure::Vector way,
                           double radius) {
    for (const auto& [enter, leave] : solid::inside_along(made.solid, middle, way)) {
        if (leave < radius - 0.05) continue;
        // Facets of a round bore lie a little outside or inside its circle.
        if (std::abs(enter - radius) > 0.05 * radius + 0.1) return std::nullopt;
        return leave - enter;
    }
    return std::nullopt;
}

std::optional<Beside> narrowest(const joinery::Model& model, const joinery::Made& made, const piece::Cut& cut,
                                const piece::BoreCut& bore) {
    if (bore.direction) return std::nullopt;
    Beside found;
    found.cut = &cut;
    found.diameter = bore.diameter;
    if (cut.joint >= 0 && (cut.word == "lead hole" || cut.word == "clearance bore"))
        if (const joinery::Size* shank =
                size_named(model.joints[static_cast<std::size_t>(cut.joint)], "screw shank")) {
            found.diameter = shank->value;
            found.screw = true;
        }
    found.needed = (found.screw ? least_of_screw : least_of_hole) * found.diameter;
    const double size[3] = {made.part->length.value(), made.part->width.value(),
                            made.part->thickness.value()};
    const double through = bore.face.axis == 0 ? made.blank.high.x - made.blank.low.x : size[bore.face.axis];
    const double deep = std::min(bore.deep.value_or(through), through);
    bool any = false;
    for (int axis : {1, 2}) {
        if (axis == bore.face.axis) continue;
        for (double sign : {-1.0, 1.0})
            for (double share : {0.3, 0.5, 0.85}) {
                measure::Point middle = bore.centre;
                middle[bore.face.axis] += (bore.face.high ? -1 : 1) * share * deep;
                middle.x += 0.0037; // off the corner of a facet
                measure::Vector way;
                way[axis] = sign;
                const double radius = bore.diameter / 2;
                const std::optional<double> wood = wall(made, middle, way, radius);
                // Near a slanting end or an open edge there is no bore, only its waste.
                if (!wood || !wall(made, middle, -way, radius)) continue;
                if (taken_by_a_joint(made, middle + way * (radius + *wood + 0.05))) continue;
                // What the screw's shank takes beyond its lead hole is wood that is wedged aside.

                const double left = *wood - (found.diameter - bore.diameter) / 2;
                if (any && left >= found.wood) continue;
                any = true;
                found.wood = left;
                found.at = middle + way * (bore.diameter / 2 + *wood / 2);
                found.way = way;
            }
    }
    return any ? std::optional(found) : std::nullopt;
}

void report(const joinery::Model& model, const joinery::Made& made, const Beside& beside,
            findings::Findings& found) {
    findings::Finding finding;
    finding.name = "bore-near-edge";
    finding.severity =
        beside.wood < fault_share * beside.needed ? findings::Severity::fault : findings::Severity::caution;
    finding.span = beside.cut->span;
    finding.message =
        fmt::format("only {} of wood is left beside the {} in {}",
                    size_text(std::max(beside.wood, 0.0), model), beside.cut->word, made.part->name);
    finding.limit =
        beside.screw
            ? fmt::format(
                  "{}, one diameter beside the screw, as {:.1f} diameters to its middle: {}, from memory",
                  size_text(beside.needed, model), wood::rules::edge_distance.value,
                  wood::rules::edge_distance.source)
            : limit_text(size_text(beside.needed, model) + ", half the diameter",
                         "common practice, no published source");
    finding.mend = fmt::format(
        "move it {} away from there, or make it {} or less", size_text(beside.needed - beside.wood, model),
        size_text((2 * beside.wood + beside.diameter) / (beside.screw ? 3 : 2), model));
    finding.parts = {made.part->name};
    finding.at = place_of(made, beside.at);
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made) {
        if (made.part->species->is_sheet()) continue;
        // The bores of one statement or joint are alike: the worst of them is told.
        std::map<std::tuple<int, int, int, std::string>, Beside> worst;
        for (const piece::Cut& cut : made.cuts) {
            const auto* bore = std::get_if<piece::BoreCut>(&cut.shape);
            if (bore == nullptr) continue;
            const std::optional<Beside> beside = narrowest(model, made, cut, *bore);
            if (!beside || beside->wood >= beside->needed - 0.02) continue;
            const auto [at, fresh] = worst.try_emplace(
                {cut.span.file, static_cast<int>(cut.span.begin), cut.joint, cut.word}, *beside);
            if (!fresh && beside->wood < at->second.wood) at->second = *beside;
        }
        for (const auto& [where, beside] : worst) report(model, made, beside, found);
    }
}

constexpr SourcedFigure figures[] = {
    {"distance of a screw's middle from an edge", "1.5 diameters",
     "Wood Handbook, ch. 8, bolts (from memory); used for screws as well"},
    {"wood beside a dowel or another hole", "half its diameter, as a dowel of half the stock leaves",
     "common practice, no published source"},
};

} // namespace

const Check bore_near_edge{
    .name = "bore-near-edge",
    .title = "A bore too near an edge",
    .what =
        "Round holes of every sort, of joints and of the text: the wood left beside them, across the fibres, "
        "on the finished solid. A screw counts with its shank. Slanting bores are not seen.",
    .why = "At the bench the edge bulges or splits when the screw is driven or the dowel goes home, because "
           "glue "
           "and thread push the fibres apart. After five winters a hair crack runs from hole to hole.",
    .severity = "caution below one diameter of wood beside a screw and half a diameter beside another hole, "
                "fault below half of that",
    .mend = "Move the hole in, or make it smaller.",
    .wrong = "a dowel of 10 in the edge of a board 16 thick",
    .right = "a dowel of 5 there, a third of the stock",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
