// Slope of grain: a long part whose fibres run out of it on its way, section by section.
//
// At stations along the part its section is taken on the finished solid. Where both edges of the wood leave
// the fibres the same way, fibres enter at one edge and run out at the other: the lesser slope of the two
// edges is the slope of grain there. (Where one edge follows the fibres, as under an arch, they run on
// through.) The section then keeps only a share of its strength (Wood Handbook, Table 5-12, carried on by
// Hankinson's formula). Share times section modulus is what the section carries; the least of all is the
// weakest section. It is held against the slenderest section of the same part with straight grain: a part
// that is broad where its fibres run out is sound. Left out: short stout parts and limbs on few fibres
// (short-grain), plain boards with their grain at an angle (length-across-grain), sections that holes or
// forks split.

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/strength.hpp"

namespace rayfleck::checks {
namespace {

constexpr int stations = 48;
constexpr double fault_share = 0.35;
/// Shorter parts for their width carry as brackets, not as beams. Our own choice.
constexpr double least_slenderness = 3;

struct Section {
    measure::Point middle; ///< own frame
    measure::Box edges;    ///< low and high edge across the width and through the thickness
    double wide() const { return edges.high.y - edges.low.y; }
    double thick() const { return edges.high.z - edges.low.z; }
};

/// Sections at even stations along the body; where it has no single stretch of wood the row is broken.
std::vector<std::vector<Section>> sections_of(const joinery::Made& made) {
    std::vector<std::vector<Section>> runs(1);
    const double length = made.part->length.value();
    const measure::Box& box = made.solid.box;
    const double from = std::max(box.low.x, 0.0), to = std::min(box.high.x, length);
    double z = (box.low.z + box.high.z) / 2 + 0.0137;
    for (int i = 0; i < stations; ++i) {
        const double x = from + (to - from) * (i + 0.5) / stations;
        const auto across = solid::inside_along(made.solid, {x, 0, z}, {0, 1, 0});
        if (across.size() == 1) {
            Section section;
            section.edges.low.y = across.front().first;
            section.edges.high.y = across.front().second;
            const double y = (across.front().first + across.front().second) / 2 + 0.0071;
            const auto through = solid::inside_along(made.solid, {x, y, 0}, {0, 0, 1});
            if (through.size() == 1) {
                section.edges.low.z = through.front().first;
                section.edges.high.z = through.front().second;
                section.middle = {x, y, (through.front().first + through.front().second) / 2};
                runs.back().push_back(section);
                z = section.middle.z + 0.0137;
                continue;
            }
        }
        if (!runs.back().empty()) runs.emplace_back();
    }
    return runs;
}

struct Weakest {
    double ratio = 1; ///< of what the slenderest section would carry with straight grain
    double share = 1; ///< of the strength, by the slope of grain
    measure::Angle angle;
    Section section;
};

/// Slope of the wood across the fibres where both edges run the same way; 0 where one of them follows the
/// fibres or the part widens to both sides, for then fibres run on through it.
double common_slope(double low, double high) {
    if (low * high <= 0) return 0;
    return std::copysign(std::min(std::abs(low), std::abs(high)), low);
}

/// Weakest section for fibres at this angle on the face; bending on the face and on the edge. Slopes are
/// taken over a stretch as long as the section is wide: run-out counts over the depth of a part, not at a
/// corner.
Weakest weakest_of(const std::vector<std::vector<Section>>& runs, measure::Angle grain) {
    const double fibre = std::tan(grain.in_radians());
    Weakest worst;
    double slenderest[2] = {1e300, 1e300}, weakest[2] = {1e300, 1e300};
    Weakest found[2];
    for (const std::vector<Section>& run : runs)
        for (std::size_t i = 0; i < run.size(); ++i) {
            const Section& s = run[i];
            std::size_t first = i, last = i;
            while (first > 0 && last + 1 < run.size() &&
                   run[last].middle.x - run[first].middle.x < s.wide()) {
                --first;
                ++last;
            }
            const double step = run[last].middle.x - run[first].middle.x;
            if (step < 1e-6) continue;
            const auto slope = [&](int axis, double of_fibre) {
                return common_slope(
                    (run[last].edges.low[axis] - run[first].edges.low[axis]) / step - of_fibre,
                    (run[last].edges.high[axis] - run[first].edges.high[axis]) / step - of_fibre);
            };
            const double on_face = slope(1, fibre), through = slope(2, 0);
            const measure::Angle angle = measure::Angle::radians(
                std::acos(std::cos(std::atan(on_face)) * std::cos(std::atan(through))));
            const double wide = s.wide() * std::cos(std::atan(on_face)),
                         thick = s.thick() * std::cos(std::atan(through));
            const double modulus[2] = {thick * wide * wide / 6, wide * thick * thick / 6};
            const double share = wood::share_of_strength(wood::Load::bending, angle);
            for (int k : {0, 1}) {
                slenderest[k] = std::min(slenderest[k], modulus[k]);
                if (share * modulus[k] >= weakest[k] * 0.999) continue; // the first of equal ones
                weakest[k] = share * modulus[k];
                found[k] = {1, share, angle, s};
            }
        }
    for (int k : {0, 1}) {
        if (weakest[k] >= 1e299) continue;
        found[k].ratio = weakest[k] / slenderest[k];
        if (found[k].ratio < worst.ratio) worst = found[k];
    }
    return worst;
}

/// Only an outline or a cut of the text can lead the wood away from its fibres.
bool may_run_out(const joinery::Made& made) {
    if (made.part->outline || made.part->grain != measure::Angle()) return true;
    return std::any_of(made.cuts.begin(), made.cuts.end(), [](const piece::Cut& cut) {
        if (cut.joint >= 0) return false;
        if (const auto* plane = std::get_if<piece::PlaneCut>(&cut.shape)) {
            const double along = std::abs(plane->plane.normal.x);
            return along > 0.02 && along < 0.7;
        }
        return std::holds_alternative<piece::PrismCut>(cut.shape);
    });
}

/// The angle of the grain, in steps of five degrees, at which the part is least weakened.
measure::Angle best_grain(const std::vector<std::vector<Section>>& runs) {
    measure::Angle best;
    double most = -1;
    for (int degrees = -60; degrees <= 60; degrees += 5) {
        const double ratio = weakest_of(runs, measure::Angle::degrees(degrees)).ratio;
        if (ratio <= most + 1e-9) continue;
        most = ratio;
        best = measure::Angle::degrees(degrees);
    }
    return best;
}

void look_at(const joinery::Model& model, const joinery::Made& made, findings::Findings& found) {
    const piece::Part& part = *made.part;
    if (part.species->is_sheet() || runs_across_its_grain(part) || !may_run_out(made)) return;
    if (part.length.value() < least_slenderness * part.width.value()) return;
    // Layers bent or sawn to the curve follow it; the program does not know their fibres.
    if (part.glue_up && part.glue_up->laminated) return;
    const auto runs = sections_of(made);
    const Weakest weakest = weakest_of(runs, part.grain);
    if (weakest.ratio >= sound_share) return;
    if (holds_a_weak_limb(made)) return; // one cause, one finding: short-grain has told it
    findings::Finding finding;
    finding.name = "slope-of-grain";
    finding.severity = weakest.ratio < fault_share ? findings::Severity::fault : findings::Severity::caution;
    finding.span = part.grain_span;
    finding.message = fmt::format(
        "the fibres of {} leave its line at {:.0f}° {} from its end, where it is {} wide and {} thick: {} of "
        "the "
        "strength is left there",
        part.name, weakest.angle.in_degrees(), size_text(std::round(weakest.section.middle.x), model),
        size_text(std::round(weakest.section.wide()), model),
        size_text(std::round(weakest.section.thick()), model), percent_text(weakest.share));
    finding.limit =
        fmt::format("{} of what its slenderest section carries with straight grain, our own choice; "
                    "it has {}; strength by {}, from memory",
                    percent_text(sound_share), percent_text(weakest.ratio), wood::slope_of_grain_source);
    const measure::Angle best = best_grain(runs);
    const double mended = weakest_of(runs, best).ratio;
    finding.mend =
        mended > weakest.ratio + 0.1
            ? fmt::format("`grain at {:.0f} degrees` leaves {}{}", best.in_degrees(), percent_text(mended),
                          mended < sound_share ? "; or write `laminated of 5`, or make it of two parts" : "")
            : "make it wider there, write `laminated of 5`, or make it of two parts with their grain along "
              "it";
    finding.parts = {part.name};
    finding.at = place_of(made, weakest.section.middle);
    // It splits along the fibres that run out there.
    const measure::Vector fibre = fibre_direction(part);
    const double half =
        weakest.section.wide() / 2 / std::max(0.15, std::abs(std::sin(weakest.angle.in_radians())));
    finding.weak_lines.emplace_back(place_of(made, weakest.section.middle - fibre * half),
                                    place_of(made, weakest.section.middle + fibre * half));
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const joinery::Made& made : model.made) look_at(model, made, found);
}

constexpr SourcedFigure figures[] = {
    {"strength left by slope of grain", "1 in 10: 81 percent; 1 in 5: 55 percent",
     "Wood Handbook, Table 5-12 (from memory); beyond it by Hankinson's formula"},
    {"share for a caution", "70 percent of the slenderest section", "our own choice"},
    {"share for a fault", "35 percent", "our own choice"},
};

} // namespace

const Check slope_of_grain{
    .name = "slope-of-grain",
    .title = "Fibres that run out of a curved or tapered part",
    .what =
        "Parts at least three times as long as wide, with an outline, curves, tapers or grain at an angle: "
        "at "
        "48 sections of the finished solid, the angle between the fibres and the line of the part, and what "
        "the section carries by it. Stout parts, holes and forks are not seen.",
    .why = "At the bench the part feels strong, for its section is whole. After five winters of being leaned "
           "on, "
           "it splits along a line of fibres from one edge to the other, at the place that is told.",
    .severity =
        "caution when the weakest section carries less than 70 percent of what the slenderest one would "
        "with straight grain, fault below 35 percent",
    .mend =
        "Set the grain along the part's middle, laminate it, make it wider where the fibres run out, or make "
        "it of two parts.",
    .wrong = "a rail 40 wide swept through a bow 120 high, grain along its chord",
    .right = "the same rail laminated, or cut from two pieces",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
