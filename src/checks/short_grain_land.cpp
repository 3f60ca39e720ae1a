// Short-grain land: the wood between a mortise, dado, groove, notch or bore and the end of the board.
//
// The fibres of that land are as long as the land, so it shears out towards the end when the joint is loaded,
// wedged or knocked apart. Measured on the finished solid, along the fibre from the end of the cut to the end
// of the wood. Cuts that are open to the end (bridle, haunch, dovetail socket) have no land and are not
// meant. Left out: grooves along the grain, and parts whose grain is set at more than 30° to the length.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

/// Land beside a mortise: the least haunch that the old textbooks leave at the end of a leg or stile.
constexpr const wood::Figure& least_beside_mortise = wood::rules::haunch_length;
/// A land may be as short as the cut is deep before it counts as weak; up to this. mm.
constexpr double cap_other = 12;
/// Below this share of the limit the land will not survive the making.
constexpr double fault_share = 0.5;

constexpr std::string_view custom_for_cuts =
    "as much as the cut is deep, up to 12 mm: common practice, no published source";
constexpr std::string_view custom_for_bores =
    "as much as the bore is wide, up to 12 mm: common practice, no published source";

struct Cavity {
    measure::Point middle;    ///< inside the cut, half way down its depth
    double low = 0, high = 0; ///< its ends along the length
    double depth = 0;
    double width = 0; ///< along the length
    bool mortise = false;
};

bool begins_with_any(const std::string& word, std::initializer_list<std::string_view> starts) {
    return std::any_of(starts.begin(), starts.end(), [&](std::string_view s) { return word.starts_with(s); });
}

std::optional<Cavity> cavity_of(const piece::Cut& cut, const joinery::Made& made) {
    Cavity cavity;
    cavity.mortise = begins_with_any(cut.word, {"mortise"});
    if (!cavity.mortise && !begins_with_any(cut.word, {"dado", "groove", "notch", "bore", "dowel",
                                                       "clearance bore", "lead hole", "peg"}))
        return std::nullopt;
    if (const auto* bore = std::get_if<piece::BoreCut>(&cut.shape)) {
        if (bore->face.axis == 0) return std::nullopt; // bored into the end: no land
        cavity.low = bore->centre.x - bore->diameter / 2;
        cavity.high = bore->centre.x + bore->diameter / 2;
        cavity.depth = bore->diameter;
        cavity.middle = bore->centre;
        const double size = bore->face.axis == 1 ? made.part->width.value() : made.part->thickness.value();
        const double deep = std::min(bore->deep.value_or(size), size);
        cavity.middle[bore->face.axis] += (bore->face.high ? -0.5 : 0.5) * deep;
    } else if (const auto* box = std::get_if<piece::BoxCut>(&cut.shape)) {
        measure::Point low = box->box.low, high = box->box.high;
        for (int axis = 0; axis < 3; ++axis) {
            low[axis] = std::max(low[axis], made.blank.low[axis]);
            high[axis] = std::min(high[axis], made.blank.high[axis]);
            if (!(high[axis] > low[axis])) return std::nullopt;
        }
        cavity.low = low.x;
        cavity.high = high.x;
        cavity.middle = (low + high) * 0.5;
        // Its depth is how far it reaches in from the face that it is open to; open to two faces, the lesser
        // counts.
        cavity.depth = std::min(high.y - low.y, high.z - low.z);
        // A groove that runs with the grain has nothing that pushes at its end.
        if (!cavity.mortise && high.x - low.x > std::max(high.y - low.y, high.z - low.z)) return std::nullopt;
        for (int axis : {1, 2}) {
            const bool open_low = low[axis] <= made.blank.low[axis] + 0.01,
                       open_high = high[axis] >= made.blank.high[axis] - 0.01;
            if (open_low != open_high) cavity.depth = high[axis] - low[axis];
        }
    } else {
        return std::nullopt;
    }
    cavity.width = cavity.high - cavity.low;
    return cavity;
}

/// Wood from the end of a cut to the end of the board, along the length; nothing where the cut is open or
/// wood goes on.
std::optional<double> land(const joinery::Made& made, const Cavity& cavity, bool at_high) {
    measure::Point start = cavity.middle;
    start.x = at_high ? cavity.high : cavity.low;
    start.y += 0.0071; // off any plane of symmetry that another cut may lie in
    start.z += 0.0053;
    const auto inside = solid::inside_along(made.solid, start, {at_high ? 1.0 : -1.0, 0, 0});
    for (const auto& [enter, leave] : inside) {
        if (leave < 0.01) continue;
        if (enter > 0.05) return std::nullopt; // open here, or another cut begins
        const double end = at_high ? made.solid.box.high.x : -made.solid.box.low.x;
        const double reached = at_high ? start.x + leave : -start.x + leave;
        // Only the last wood before the end is a land; wood up to another cut has its own check.
        return reached > end - 0.5 * cavity.depth - 1 ? std::optional<double>(leave) : std::nullopt;
    }
    return std::nullopt;
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made) {
        if (made.part->species->is_sheet() || std::abs(made.part->grain.in_degrees()) > 30) continue;
        for (const piece::Cut& cut : made.cuts) {
            const std::optional<Cavity> cavity = cavity_of(cut, made);
            if (!cavity) continue;
            const double limit = cavity->mortise ? std::min(wood::length(least_beside_mortise).value(),
                                                            std::max(cavity->depth, 6.0))
                                                 : std::min(cavity->depth, cap_other);
            for (bool at_high : {false, true}) {
                const std::optional<double> length = land(made, *cavity, at_high);
                if (!length || *length >= limit - 0.01) continue;
                findings::Finding finding;
                finding.name = "short-grain-land";
                finding.severity =
                    *length < fault_share * limit ? findings::Severity::fault : findings::Severity::caution;
                finding.span = cut.span;
                finding.message =
                    fmt::format("only {} of wood is left between the {} in {} and the end of the board",
                                size_text(*length, model), cut.word, made.part->name);
                finding.limit =
                    cavity->mortise
                        ? limit_text(size_text(limit, model), least_beside_mortise.source)
                        : limit_text(size_text(limit, model),
                                     std::holds_alternative<piece::BoreCut>(cut.shape) ? custom_for_bores
                                                                                       : custom_for_cuts);
                finding.mend = fmt::format("move the {} {} further in, or let the board run {} past it and "
                                           "cut that off after gluing",
                                           cut.word, size_text(limit - *length, model),
                                           size_text(limit - *length, model));
                finding.parts = {made.part->name};
                measure::Point at = cavity->middle;
                at.x = at_high ? cavity->high + *length / 2 : cavity->low - *length / 2;
                finding.at = place_of(made, at);
                // It shears out along the fibres of the land.
                measure::Point inner = at, outer = at;
                inner.x = at_high ? cavity->high : cavity->low;
                outer.x = at_high ? cavity->high + *length : cavity->low - *length;
                finding.weak_lines.emplace_back(place_of(made, inner), place_of(made, outer));
                found.add(std::move(finding));
            }
        }
    }
}

constexpr SourcedFigure figures[] = {
    {"land beside a mortise", "12 mm (1/2 in)",
     "least haunch in an old textbook, Building Construction 3-1 (read; date not seen)"},
    {"land beside a dado, groove or notch", "as much as the cut is deep, up to 12 mm",
     "common practice, no published source"},
    {"land beside a bore", "as much as the bore is wide, up to 12 mm",
     "common practice, no published source"},
};

} // namespace

const Check short_grain_land{
    .name = "short-grain-land",
    .title = "Short grain between a cut and the end of the board",
    .what = "Mortises, dados, grooves, notches and bores near the end of a part, measured on the finished "
            "solid. Cuts that are open to the end "
            "are left alone.",
    .why = "The fibres between the cut and the end of the board are no longer than the land itself. At the "
           "bench they shear out while the mortise is chopped or the joint is driven home. What survives "
           "that gives way within five winters, the first time the piece is lifted or pushed by its rail.",
    .severity = "fault below half the limit, where it breaks at the bench; caution below the limit, where it "
                "may hold until it is knocked",
    .mend = "Move the cut in, add a haunch, or leave a horn on the board until the joint is glued.",
    .wrong = "a mortise that starts 4 mm from the top of a leg",
    .right = "the same mortise 12 mm or more down, with a haunch above the tenon",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
