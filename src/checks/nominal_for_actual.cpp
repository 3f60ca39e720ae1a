// Nominal for actual: a part drawn at the name of its lumber instead of the size that the lumber has.
//
// A two-by-four measures 1-1/2 × 3-1/2 in when dry and dressed, an 8/4 board 1-3/4 in when surfaced. Sees a
// stated stock that is thinner or narrower than the part, and softwood parts of 2 × 4, 2 × 6 in and so on
// that name no stock.

#include <array>
#include <cmath>
#include <optional>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/lumber.hpp"

namespace rayfleck::checks {
namespace {

/// A part that must be wider or thicker than what its stock gives when dressed.
void look_at_stock(const joinery::Model& model, const joinery::Made& made, findings::Findings& found) {
    const piece::Part& part = *made.part;
    const auto stock = wood::lumber_named(part.stock);
    if (!stock) return; // elaboration has said so
    const bool too_thick =
        made.thickness > stock->dressed_thickness && !(part.glue_up && part.glue_up->laminated);
    const bool too_wide = stock->dressed_width && made.width > *stock->dressed_width && !part.glue_up;
    if (!too_thick && !too_wide) return;
    findings::Finding finding;
    finding.name = "nominal-for-actual";
    finding.severity = findings::Severity::fault;
    finding.span = part.span;
    const measure::Manner& manner = model.piece->manner;
    const measure::Length wanted = too_thick ? made.thickness : made.width;
    const measure::Length given = too_thick ? stock->dressed_thickness : *stock->dressed_width;
    const std::string what = too_thick ? "thick" : "wide";
    finding.message =
        fmt::format("{} is {} {}, but {} dresses to {}", part.name, measure::text_with_unit(wanted, manner),
                    what, part.stock, measure::text_with_unit(given, manner));
    finding.limit = limit_text(measure::text_with_unit(given, manner), stock->source);
    finding.mend = fmt::format("draw it {} {}, take thicker stock, or glue it up",
                               measure::text_with_unit(given, manner), what);
    finding.parts = {part.name};
    finding.at = place_of(made, made.solid.centroid);
    found.add(std::move(finding));
}

/// Softwood drawn at 2 × 4 in and the like: nobody sells that dressed.
void look_at_size(const joinery::Model& model, const joinery::Made& made, findings::Findings& found) {
    const piece::Part& part = *made.part;
    if (!part.species->is_softwood()) return;
    const measure::Rational thick = part.thickness.in_inches(), wide = part.width.in_inches();
    if (!thick.is_whole() || !wide.is_whole() || thick.top() > 4 || wide.top() < 2) return;
    const std::string nominal = fmt::format("{}x{}", thick.top(), wide.top());
    const auto stock = wood::lumber_named(nominal);
    if (!stock || !stock->dressed_width) return;
    const measure::Manner& manner = model.piece->manner;
    findings::Finding finding;
    finding.name = "nominal-for-actual";
    finding.severity = findings::Severity::caution;
    finding.span = part.span;
    finding.message = fmt::format("{} is drawn {} × {}, the name of a {}, not its size", part.name,
                                  measure::text_with_unit(part.thickness, manner),
                                  measure::text_with_unit(part.width, manner), nominal);
    finding.limit = fmt::format("a dry {} measures {} × {}, {}", nominal,
                                measure::text_with_unit(stock->dressed_thickness, manner),
                                measure::text_with_unit(*stock->dressed_width, manner), stock->source);
    finding.mend = fmt::format(
        "write `stock {}` and leave the size out, or accept this if it is sawn to size from thicker stock",
        nominal);
    finding.parts = {part.name};
    finding.at = place_of(made, made.solid.centroid);
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made) {
        if (made.part->species->is_sheet()) continue;
        if (made.part->stock.empty())
            look_at_size(model, made, found);
        else
            look_at_stock(model, made, found);
    }
}

constexpr SourcedFigure figures[] = {
    {"softwood sizes", "2x4 dressed dry is 1-1/2 × 3-1/2 in",
     "DOC PS 20 American Softwood Lumber Standard (read, secondary)"},
    {"hardwood thickness", "8/4 surfaced is 1-3/4 in", "NHLA thicknesses (read, secondary)"},
};

} // namespace

const Check nominal_for_actual{
    .name = "nominal-for-actual",
    .title = "Lumber drawn at its name instead of its size",
    .what = "Parts thicker or wider than their stated stock gives when dressed, and softwood parts drawn at "
            "whole inches that are the name of a stock.",
    .why = "The board that arrives is up to 3/4 in smaller than its name. At the bench every shoulder and "
           "tenon that was measured from the drawing is then wrong by that much, and the piece is cut again "
           "or grows gaps. A rail drawn at its name and made at its size has, for all its winters, half the "
           "stiffness that was reckoned with.",
    .severity = "fault when the stated stock cannot give the part; caution when only the size looks like a "
                "name, since boards can be sawn to whole inches too",
    .mend = "Name the stock and leave the size out, or draw the dressed size.",
    .wrong = "a part of 2in x 4in with stock 2x4",
    .right = "the same part with stock 2x4 and no size",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
