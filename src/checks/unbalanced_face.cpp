// Unbalanced face: a thin layer glued on one face of a panel and none on the other.
//
// A veneer or facing that moves otherwise than the panel under it bends the panel like a strip of two metals.
// For two parts glued face to face, of which one is thin and covers most of the other, the curvature by
// Timoshenko's formula for two layers (1925) is taken in the direction in which they differ most:
// k = 6 d (1 + m)² / (h (3 (1 + m)² + (1 + m n) (m² + 1 / (m n)))), d the difference of strain, m the ratio
// of thicknesses, n of stiffnesses, h both together. A like layer on the other face balances it. Left out:
// creep, which relieves about half in years, and more than two layers.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// A facing: at most this share of the panel's thickness. Our own choice.
constexpr double thin_share = 0.5;
constexpr double covers = 0.5;
/// Bow that a panel may show, mm. Our own choice, no published source.
constexpr double harmless = 1.0;
constexpr double fault_times = 4;

/// Faces lie on each other.
bool face_to_face(const joinery::Made& made, const joinery::Contact& contact) {
    return std::abs(dot(made.part->frame.z, contact.plane.normal)) > 0.98;
}

double face_area(const joinery::Made& made) { return made.part->length.value() * made.part->width.value(); }

struct Layers {
    int facing = -1, panel = -1;
    double area = 0;
    int side = 0; ///< of the panel: +1 its face side
    const joinery::Contact* contact = nullptr;
};

std::optional<Layers> layers_of(const joinery::Model& model, const joinery::Contact& contact) {
    if (contact.hold != joinery::Hold::glued || contact.joint < 0) return std::nullopt;
    const joinery::Made &a = model.made[static_cast<std::size_t>(contact.a)],
                        &b = model.made[static_cast<std::size_t>(contact.b)];
    if (!face_to_face(a, contact) || !face_to_face(b, contact)) return std::nullopt;
    const bool a_is_thin = a.part->thickness < b.part->thickness;
    Layers layers;
    layers.facing = a_is_thin ? contact.a : contact.b;
    layers.panel = a_is_thin ? contact.b : contact.a;
    layers.area = contact.area;
    layers.contact = &contact;
    const joinery::Made &facing = model.made[static_cast<std::size_t>(layers.facing)],
                        &panel = model.made[static_cast<std::size_t>(layers.panel)];
    if (facing.part->thickness.value() > thin_share * panel.part->thickness.value()) return std::nullopt;
    if (contact.area < covers * face_area(panel)) return std::nullopt;
    const measure::Point middle = contact.loops.front().front();
    layers.side = panel.part->frame.in(middle).z > panel.part->thickness.value() / 2 ? 1 : -1;
    return layers;
}

/// Bow of a panel over `span`, mm.
double bow(double difference, double thin, double thick, double span) {
    const double m = thin / thick, n = 1, h = thin + thick;
    const double curvature = 6 * difference * (1 + m) * (1 + m) /
                             (h * (3 * (1 + m) * (1 + m) + (1 + m * n) * (m * m + 1 / (m * n))));
    return std::abs(curvature) * span * span / 8;
}

void report(const joinery::Model& model, const Layers& layers, findings::Findings& found) {
    const joinery::Made &facing = model.made[static_cast<std::size_t>(layers.facing)],
                        &panel = model.made[static_cast<std::size_t>(layers.panel)];
    const Seasons a = seasons_of(facing, *model.piece), b = seasons_of(panel, *model.piece);
    double worst = 0;
    for (const bool damp : {false, true}) {
        const wood::StrainTensor differ = damp ? a.damp - b.damp : a.dry - b.dry;
        for (const measure::Vector& way : {panel.part->frame.x, panel.part->frame.y}) {
            const double span =
                way == panel.part->frame.x ? panel.part->length.value() : panel.part->width.value();
            worst = std::max(worst, bow(differ.along(way).in_ratio(), facing.part->thickness.value(),
                                        panel.part->thickness.value(), span));
        }
    }
    if (worst <= harmless) return;
    findings::Finding finding;
    finding.name = "unbalanced-face";
    finding.severity =
        worst > fault_times * harmless ? findings::Severity::fault : findings::Severity::caution;
    finding.span = model.joints[static_cast<std::size_t>(layers.contact->joint)].span;
    finding.message = fmt::format("{} on one face of {} alone bends it by about {} {}", facing.part->name,
                                  panel.part->name, movement_text(worst, model), season_words(*model.piece));
    finding.limit =
        fmt::format("{}, our own choice; two layers by Timoshenko's formula, both taken equally stiff",
                    movement_text(harmless, model));
    finding.mend = fmt::format("glue a like layer of {} on the other face, its grain the same way",
                               size_text(facing.part->thickness.value(), model));
    finding.parts = {panel.part->name, facing.part->name};
    finding.at = place_of(panel, panel.solid.centroid);
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    std::vector<Layers> all;
    for (const joinery::Contact& contact : model.contacts)
        if (auto layers = layers_of(model, contact)) all.push_back(*layers);
    for (const Layers& layers : all) {
        const bool balanced = std::any_of(all.begin(), all.end(), [&](const Layers& other) {
            return other.panel == layers.panel && other.side != layers.side;
        });
        if (!balanced) report(model, layers, found);
    }
}

constexpr SourcedFigure figures[] = {
    {"bow of two layers", "6 d (1+m)² / (h (3 (1+m)² + (1+m n)(m² + 1/(m n))))",
     "S. Timoshenko, Analysis of bi-metal thermostats, 1925 (from memory)"},
    {"harmless bow", "1 mm", "our own choice, no published source"},
    {"a facing", "at most half as thick as the panel, over half of it", "our own choice"},
};

} // namespace

const Check unbalanced_face{
    .name = "unbalanced-face",
    .title = "A facing on one side only",
    .what =
        "A thin part glued over most of the face of a panel, solid or of sheet goods, with none on its other "
        "face: how far the two bend each other through the year.",
    .why = "At the bench the press holds it flat. Out of the press the facing and the panel take up and give "
           "off water differently, and the panel goes hollow; after five winters of it a door touches at two "
           "corners and its edge stands off its frame.",
    .severity =
        "caution above 1 mm, which a catch still pulls shut; fault above four times that, which nothing does",
    .mend = "The same layer on the other face, whatever wood it is, its grain the same way.",
    .wrong = "a facing of walnut 3 thick on one face of plywood 9 thick",
    .right = "the same facing on both faces",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
