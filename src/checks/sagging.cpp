// Sagging: shelves and rails under a load, at once and after years.
//
// The load is what the text says the part carries; a board whose name says shelf carries books where the text
// is silent. Where the part is supported is read from its contacts along its length: the longest stretch
// between two of them is the span, what stands out beyond the last one hangs free. The section is taken on
// the finished solid in the middle of the span. Sag by the beam formula of the wood room, times 1.5 for years
// under the load; stress in bending against the wood's strength. Ends count as lying free. Left out: boards
// on three supports that carry on over them, point loads off the middle, and everything that only an engineer
// may judge.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/beam.hpp"

namespace rayfleck::checks {
namespace {

constexpr double newtons_per_lb = 4.4482216;
constexpr double mm_per_ft = 304.8;
/// First sag that goes unseen, as a share of the span: 0.02 in on a foot.
constexpr double unseen = wood::shelf_sag_unseen.value / 12;
/// A sag so many times as deep is no longer a matter of looks: books slide, doors bind. Our own choice.
constexpr double fault_times = 4;
/// Share of the modulus of rupture that a steady load may take: 60 percent for ten years (Wood Handbook, ch.
/// 5), and half of that for knots and slips. Our own choice.
constexpr double steady_share = 0.3;
/// Shorter spans need no look, mm.
constexpr double least_span = 150;

struct Carried {
    double newtons = 0; ///< in all, or for each mm
    bool per_mm = false, in_the_middle = false;
    std::string words;
    source::Span span;
};

std::optional<Carried> carried_by(const piece::Part& part) {
    if (part.carries) {
        const piece::Carries& says = *part.carries;
        return Carried{says.newtons, says.per_mm, says.in_the_middle, says.words, says.span};
    }
    if (part.base.find("shelf") == std::string::npos) return std::nullopt;
    return Carried{wood::book_load.value * newtons_per_lb / mm_per_ft, true, false, "books", part.span};
}

struct Support {
    double from = 0, to = 0; ///< along the length
};

/// Where along its length anything lies against the part, joined stretches merged.
std::vector<Support> supports_of(const joinery::Model& model, int index) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    std::vector<Support> all;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.a != index && contact.b != index) continue;
        // What lies on top of it is carried, and carries nothing.
        const double up = contact.plane.normal.z * (contact.a == index ? 1 : -1);
        if (contact.joint < 0 && up > -0.5) continue;
        Support support{1e300, -1e300};
        for (const auto& loop : contact.loops)
            for (const measure::Point& p : loop) {
                const double x = made.part->frame.in(p).x;
                support.from = std::min(support.from, x);
                support.to = std::max(support.to, x);
            }
        if (support.from <= support.to) all.push_back(support);
    }
    std::sort(all.begin(), all.end(), [](const Support& a, const Support& b) { return a.from < b.from; });
    std::vector<Support> merged;
    for (const Support& s : all)
        if (!merged.empty() && s.from <= merged.back().to + 1)
            merged.back().to = std::max(merged.back().to, s.to);
        else
            merged.push_back(s);
    return merged;
}

struct Span {
    double from = 0, length = 0;
    bool free_end = false;
};

Span longest_span(const joinery::Made& made, const std::vector<Support>& supports) {
    Span span;
    for (std::size_t i = 0; i + 1 < supports.size(); ++i) {
        const double gap = supports[i + 1].from - supports[i].to;
        if (gap > span.length) span = {supports[i].to, gap, false};
    }
    // An end that stands out bends as much as a span of about two and a half times its length; it is looked
    // at when only one place holds the part.
    if (supports.size() == 1) {
        const double low = supports.front().from - made.solid.box.low.x,
                     high = made.solid.box.high.x - supports.front().to;
        span = low > high ? Span{made.solid.box.low.x, low, true} : Span{supports.front().to, high, true};
    }
    return span;
}

/// Section in the middle of the span, in the direction of the load.
std::optional<wood::Beam> beam_of(const joinery::Made& made, const Span& span) {
    const piece::Part& part = *made.part;
    if (!part.species->modulus_of_elasticity) return std::nullopt;
    const int depth = std::abs(part.frame.z.z) > std::abs(part.frame.y.z) ? 2 : 1, width = 3 - depth;
    measure::Point at = (made.solid.box.low + made.solid.box.high) * 0.5;
    at.x = span.free_end ? span.from + (span.from > at.x ? 1 : span.length - 1) : span.from + span.length / 2;
    at.x += 0.0071;
    at[width] += 0.0053;
    const auto total = [&](int axis) {
        measure::Vector way;
        way[axis] = 1;
        measure::Point from = at;
        from[axis] = 0;
        double sum = 0;
        for (const auto& [enter, leave] : solid::inside_along(made.solid, from, way)) sum += leave - enter;
        return sum;
    };
    wood::Beam beam;
    beam.span = span.length;
    beam.depth = total(depth);
    beam.width = total(width);
    beam.stiffness = part.species->modulus_of_elasticity->value;
    if (!(beam.depth > 0.5 && beam.width > 0.5)) return std::nullopt;
    return beam;
}

void look_at(const joinery::Model& model, int index, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    const piece::Part& part = *made.part;
    if (std::abs(part.frame.x.z) > 0.5) return;
    const std::optional<Carried> carried = carried_by(part);
    if (!carried) return;
    const Span span = longest_span(made, supports_of(model, index));
    if (span.length < least_span) return;
    const std::optional<wood::Beam> beam = beam_of(made, span);
    if (!beam) return;
    const double load = carried->per_mm ? carried->newtons * span.length : carried->newtons;
    const wood::Bearing bearing = span.free_end ? (carried->in_the_middle ? wood::Bearing::end_cantilever
                                                                          : wood::Bearing::even_cantilever)
                                  : carried->in_the_middle ? wood::Bearing::middle_simple
                                                           : wood::Bearing::even_simple;
    const double first = wood::sag(*beam, load, bearing).total(), limit = unseen * span.length;
    const double stress = wood::bending_stress(*beam, load, bearing);
    const double strength =
        part.species->modulus_of_rupture ? part.species->modulus_of_rupture->value / 1000 : 1e300;
    const bool breaks = stress > steady_share * strength;
    if (first <= limit * 1.001 && !breaks) return;
    findings::Finding finding;
    finding.name = "sagging";
    finding.severity =
        breaks || first > fault_times * limit ? findings::Severity::fault : findings::Severity::caution;
    finding.span = carried->span;
    finding.message =
        fmt::format("{} under {} ({:.0f} kg on {}) sags {} at once and {} in years", part.name,
                    carried->words, load / 9.80665, size_text(std::round(span.length), model),
                    movement_text(first, model), movement_text(first * wood::creep_factor_dry.value, model));
    if (breaks)
        finding.message +=
            fmt::format(", and is stressed to {} of its bending strength", percent_text(stress / strength));
    finding.limit =
        fmt::format("{} at once, {:.2g} in a foot of span, unseen even with years: {}; years by {}",
                    movement_text(limit, model), wood::shelf_sag_unseen.value, wood::shelf_sag_unseen.source,
                    wood::creep_factor_dry.source);
    const double stouter =
        std::max(std::cbrt(first / limit), breaks ? std::sqrt(stress / (steady_share * strength)) : 1.0);
    finding.mend =
        fmt::format("make it {} instead of {} in the direction of the load, hold it every {}, or let a "
                    "batten stiffen its front; this is shop guidance, not an engineer's approval",
                    size_text(std::ceil(beam->depth * stouter), model),
                    size_text(std::round(beam->depth * 10) / 10, model),
                    size_text(std::floor(span.length / std::cbrt(first / limit) / 10) * 10, model));
    finding.parts = {part.name};
    finding.at =
        place_of(made, {span.from + span.length / 2, part.width.value() / 2, part.thickness.value() / 2});
    const double years = first * wood::creep_factor_dry.value;
    finding.movements.push_back({*finding.at,
                                 {0, 0, -1},
                                 first,
                                 years,
                                 "at once: " + movement_text(first, model),
                                 "after years: " + movement_text(years, model)});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) look_at(model, i, found);
}

constexpr SourcedFigure figures[] = {
    {"sag", "kb P L³ / (E I) + ks P L / (G A')",
     "Wood Handbook 2010, Eq 9-2 and Table 9-1 (read, secondary)"},
    {"sag that goes unseen", "0.02 in in a foot of span", "woodworking magazine, 2007 (read)"},
    {"years under the load", "1.5 times the first sag", "NDS 3.5.2 (read, secondary)"},
    {"a shelf where the text is silent", "books, 20 lb on a foot (292 N/m)",
     "woodworking magazine archive (read)"},
    {"steady bending stress", "30 percent of the modulus of rupture",
     "half of what clear wood carries for ten years, Wood Handbook, ch. 5 (read, secondary); the half is our "
     "own "
     "choice"},
};

} // namespace

const Check sagging{
    .name = "sagging",
    .title = "A shelf or rail that sags under its load",
    .what =
        "Level parts that the text says carry something, and boards whose name says shelf: their sag between "
        "supports, and their stress. Ends count as lying free; boards that carry on over three supports are "
        "taken span by span.",
    .why = "At the bench the shelf is straight. Loaded, it bends at once, and half as much again in the "
           "years after, for wood under a steady load never comes to rest: after five winters of books it "
           "hangs as it will stay.",
    .severity =
        "caution above 0.02 in in a foot of span, fault above four times that or when the load takes more "
        "than 30 percent of the bending strength. Shop guidance, not an engineer's approval: where people "
        "could be hurt, local codes and licensed practice decide",
    .mend = "A thicker board, a shorter span, or a batten along the front edge.",
    .wrong = "a shelf of cherry 15 thick over a span of 900",
    .right = "the same shelf 22 thick, or held in its middle too",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
