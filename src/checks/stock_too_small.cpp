// Stock too small: parts wider, thicker or longer in one piece than boards are sold.
//
// The blank of every solid part, with its joints, against what a yard has: a stave of a glued panel counts by
// its width, a laminated part by its layers. Widths beyond a foot are seldom had and seldom flat; lengths are
// those of the hardwood rules, or of the shop's own price list for that wood; the thickest board is the
// thickest of the hardwood names. Left out: boards on hand, which the lumber plan looks through.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Widest board to count on, mm: 12 in. Common practice, no published source.
constexpr double widest_board = 304.8;
/// Longest standard length, mm: 16 ft. NHLA standard lengths (read, secondary).
constexpr double longest_board = 4876.8;
/// 16/4 surfaced on two sides, mm: 3-3/4 in. NHLA thicknesses (read, secondary).
constexpr double thickest_board = 95.25;

struct Asked {
    std::string_view what, adjective;
    double size = 0, limit = 0;
    std::string source, mend;
};

void report(const joinery::Model& model, const joinery::Made& made, const Asked& asked,
            findings::Findings& found) {
    if (asked.size <= asked.limit + 0.05) return;
    findings::Finding finding;
    finding.name = "stock-too-small";
    finding.severity = findings::Severity::caution;
    finding.span = made.part->span;
    finding.message = fmt::format("{} needs a board {} {} in one piece", made.part->name,
                                  size_text(asked.size, model), asked.adjective);
    finding.limit = limit_text(size_text(asked.limit, model), asked.source);
    finding.mend = asked.mend;
    finding.parts = {made.part->name};
    finding.at = place_of(made, made.solid.centroid);
    found.add(std::move(finding));
}

/// Longest length that the shop's prices name for this wood; nothing where they name none.
std::optional<double> longest_priced(const joinery::Model& model, const piece::Part& part) {
    std::optional<double> longest;
    for (const piece::Shop::Price& price : model.piece->shop.prices) {
        if (model.piece->shop.find_wood(price.wood) != part.species) continue;
        for (const measure::Length& length : price.lengths)
            longest = std::max(longest.value_or(0), length.value());
    }
    return longest;
}

void look_at(const joinery::Model& model, const joinery::Made& made, findings::Findings& found) {
    const piece::Part& part = *made.part;
    if (part.species->is_sheet()) return;
    const bool staves = part.glue_up && !part.glue_up->laminated,
               layers = part.glue_up && part.glue_up->laminated;
    const double wide = made.width.value(), thick = made.thickness.value(), length = made.length.value();
    double stave = wide;
    if (staves && part.glue_up->at_most_wide) stave = std::min(wide, part.glue_up->at_most_wide->value());
    if (staves && part.glue_up->count && *part.glue_up->count > 0) stave = wide / *part.glue_up->count;
    if (staves && !part.glue_up->at_most_wide && !part.glue_up->count) stave = 0;
    const double layer =
        layers && part.glue_up->count && *part.glue_up->count > 0 ? thick / *part.glue_up->count : thick;
    const int needed = static_cast<int>(std::ceil(wide / 120));
    report(model, made,
           {"width", "wide", stave, widest_board, "common practice, no published source",
            fmt::format("write `glued up of {} staves`", needed)},
           found);
    report(model, made,
           {"thickness", "thick", layer, thickest_board, "16/4 surfaced, NHLA",
            fmt::format("write `laminated of {}`", static_cast<int>(std::ceil(thick / 45)))},
           found);
    const std::optional<double> priced = longest_priced(model, part);
    report(model, made,
           {"length", "long", length, priced.value_or(longest_board),
            priced ? "the longest that the shop's price list names for it" : "16 ft, NHLA standard lengths",
            "join it of two with a scarf 12 times as long as it is thick, or ask the yard"},
           found);
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made) look_at(model, made, found);
}

constexpr SourcedFigure figures[] = {
    {"widest board to count on", "12 in (305 mm)", "common practice, no published source"},
    {"longest board", "16 ft (4877 mm), or the longest of the shop's price list",
     "NHLA standard lengths (read, secondary)"},
    {"thickest board", "3-3/4 in (95 mm), 16/4 surfaced", "NHLA thicknesses (read, secondary)"},
};

} // namespace

const Check stock_too_small{
    .name = "stock-too-small",
    .title = "A part larger than boards are sold",
    .what =
        "The blank of every solid part against the widest, longest and thickest board to count on. Staves "
        "and layers count singly. Sheet goods and boards on hand are not looked at.",
    .why = "The yard has no such board. Had it one, it would hold the heart of the tree or lie next to it: "
           "at the bench it cups as soon as it is planed, and within five winters it has split from its end.",
    .severity = "caution: now and then there is such a board, or a good reason to make it of several",
    .mend = "Glue it up of staves or layers, or scarf it.",
    .wrong = "a table top 700 wide with no word of staves",
    .right = "the same top `glued up of staves at most 110 wide`",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
