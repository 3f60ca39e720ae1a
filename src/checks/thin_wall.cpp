// Thin wall: a mortise, groove, dado, lap or notch that leaves too little wood beside or below it.
//
// The wood beyond every closed side of a hollow is measured on the finished solid. Beside a groove or a dado
// stands a lip as high as the hollow is deep: it breaks off along its root when it is much higher than thick.
// Beside a mortise stand cheeks, held at both ends, which the tenon wedges apart. Below a dado or a lap the
// board carries on with what is left of its thickness. Two hollows may leave a thin wall between them. What
// lies towards the end of the board is the business of short-grain-land.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/core.h>

#include "checks/cavities.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::checks {
namespace {

/// No wall of wood thinner than this survives the making. mm; common practice, no published source.
constexpr double least_of_all = 3;
/// Between two mortises, whose tenons close both. mm; common practice, no published source.
constexpr double least_between_mortises = 2;
/// A lip may be this many times as high as it is thick. Common practice, no published source.
constexpr double highest_lip = 3;
/// A cheek may be this share of the tenon's thickness: less than half of what a tenon of one third leaves.
constexpr double least_cheek = 0.4;
/// What must be left of the thickness below a trench. A dado of up to a half and a rabbet of up to two thirds
/// are usual: common practice, no published source.
constexpr double least_below = 0.25;
constexpr double fault_share = 0.5;

enum class Sort { mortise, trench };

std::optional<Sort> sort_of(const std::string& word) {
    if (word.find("mortise") != std::string::npos || word.find("button slot") != std::string::npos)
        return Sort::mortise;
    constexpr std::array<std::string_view, 5> trenches{"groove", "dado", "rabbet", "lap", "notch"};
    for (const std::string_view trench : trenches)
        if (word.find(trench) != std::string::npos) return Sort::trench;
    return std::nullopt;
}

struct Needed {
    double thickness = 0;
    std::string_view why;
};

Needed needed(const Hollow& hollow, const Wall& wall, Sort sort, const joinery::Made& made) {
    const int into = hollow.mouth.axis;
    if (wall.to_hollow)
        return {sort == Sort::mortise ? least_between_mortises : least_of_all,
                "between two cuts: common practice, no published source"};
    if (wall.side.axis == into) {
        const double size = made.solid.box.high[into] - made.solid.box.low[into];
        if (sort == Sort::mortise)
            return {std::min(least_of_all, size * (1 - wood::rules::stub_mortise_depth.exact().value())),
                    wood::rules::stub_mortise_depth.source};
        return {std::max(least_of_all, least_below * size),
                "a quarter of the thickness: common practice, no published source"};
    }
    if (sort == Sort::mortise) {
        const double thinner = std::min(hollow.size((into + 1) % 3), hollow.size((into + 2) % 3));
        return {std::max(least_of_all, least_cheek * thinner),
                "two fifths of the mortise's width, where a tenon of a third leaves as much as its width: "
                "Practical "
                "Building Construction, ch. XVI"};
    }
    return {std::max(least_of_all, hollow.depth / highest_lip),
            "a third of the depth: common practice, no published source"};
}

std::string_view place_word(const Hollow& hollow, const Wall& wall) {
    return wall.side.axis == hollow.mouth.axis ? "below" : "beside";
}

void look_at(const joinery::Model& model, const joinery::Made& made, const piece::Cut& cut,
             findings::Findings& found) {
    const std::optional<Sort> sort = sort_of(cut.word);
    if (!sort) return;
    const std::optional<Hollow> hollow = hollow_of(cut, made);
    if (!hollow) return;
    std::optional<findings::Finding> worst;
    double worst_share = 1;
    for (const Wall& wall : walls_of(*hollow, made)) {
        // Towards the end of the board only a wall between two hollows is meant here.
        if (wall.side.axis == 0 && !wall.to_hollow) continue;
        const Needed need = needed(*hollow, wall, *sort, made);
        const double share = wall.thickness / need.thickness;
        if (wall.thickness > need.thickness - 0.02 || share >= worst_share) continue;
        worst_share = share;
        findings::Finding finding;
        finding.name = "thin-wall";
        finding.severity = share < fault_share ? findings::Severity::fault : findings::Severity::caution;
        finding.span = cut.span;
        finding.message =
            fmt::format("only {} of wood is left {} the {} in {}{}", size_text(wall.thickness, model),
                        place_word(*hollow, wall), cut.word, made.part->name,
                        wall.to_hollow ? ", before the next hollow begins" : "");
        finding.limit = limit_text(size_text(need.thickness, model), need.why);
        const double lacks = need.thickness - wall.thickness;
        finding.mend = wall.side.axis == hollow->mouth.axis
                           ? fmt::format("make the {} {} shallower, or {} thicker", cut.word,
                                         size_text(lacks, model), made.part->name)
                           : fmt::format("move the {} {} away from there, or make it {} narrower", cut.word,
                                         size_text(lacks, model), size_text(lacks, model));
        finding.parts = {made.part->name};
        finding.at = place_of(made, wall.at);
        worst = std::move(finding);
    }
    if (worst) found.add(std::move(*worst));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made)
        for (const piece::Cut& cut : made.cuts) look_at(model, made, cut, found);
}

constexpr SourcedFigure figures[] = {
    {"thinnest wall of all", "3 mm", "common practice, no published source"},
    {"lip beside a groove or dado", "a third as thick as it is high", "common practice, no published source"},
    {"between two mortises", "2 mm", "common practice, no published source"},
    {"cheek beside a mortise", "two fifths of the mortise's width",
     "our own choice; a tenon of one third leaves as much as its width, Practical Building Construction, ch. "
     "XVI "
     "(read)"},
    {"wood under a mortise", "an eighth of the part, at most 3 mm", "W. Fairham, Woodwork Joints (read)"},
    {"wood below a groove, dado, rabbet or lap", "a quarter of the thickness",
     "common practice, no published source"},
};

} // namespace

const Check thin_wall{
    .name = "thin-wall",
    .title = "Too little wood beside or below a cut",
    .what =
        "Mortises, grooves, dados, rabbets, laps, notches and button slots: the wood left beyond their sides "
        "and below them, on the finished solid, also between two of them. Round holes and wood towards the "
        "end of the board have checks of their own.",
    .why = "At the bench a thin cheek bursts when the tenon goes home and a thin lip breaks off under the "
           "clamp. "
           "After five winters a board that a trench has all but cut through has bent or cracked there.",
    .severity = "caution below the limit, fault below half of it",
    .mend = "Move the cut, make it shallower or narrower, or the part thicker.",
    .wrong = "a groove 8 deep and 2 mm from the edge of a drawer side",
    .right = "the same groove 8 from the edge",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
