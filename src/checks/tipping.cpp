// Tipping: a tall piece that falls over when its drawers are pulled out and a child hangs on them.
//
// For a piece that stands on a floor (a rod has a line of that name) and is tall: its weight and the middle
// of it from the solids and the densities of the wood room; every drawer pulled out by two thirds of its
// depth, every hung door swung out to the front. About the foremost points on the floor, the weight that may
// hang on the front edge of the foremost drawer or door before the piece tips is worked out. Furniture that
// the text fastens to a wall is left alone. Left out: what lies in the drawers, carpets, and everything that
// a test laboratory does.

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/wording.hpp"
#include "wood/density.hpp"

namespace rayfleck::checks {
namespace {

/// Height from which clothing storage is tested, mm: 27 in. ASTM F2057, from memory.
constexpr double tall = 685.8;
/// Weight that such a test hangs on, kg: 60 lb. ASTM F2057, from memory.
constexpr double test_weight = 27.2;
/// How far a drawer is pulled out. ASTM F2057, from memory.
constexpr double pulled_out = 2.0 / 3;
/// Where the wood room has no gravity of a wood, kg/m3.
constexpr double usual_density = 600;

double mass_of(const joinery::Made& made, const piece::Piece& piece) {
    const double density = wood::density(*made.part->species, piece.made_at).value_or(usual_density);
    return made.solid.volume * 1e-9 * density;
}

bool stands_on_a_floor(const piece::Piece& piece) {
    for (const piece::Rod& rod : piece.rods)
        for (const piece::Line& line : rod.lines)
            if (line.name == "floor") return true;
    return false;
}

bool fastened_to_a_wall(const piece::Piece& piece) {
    return std::any_of(piece.hardware.begin(), piece.hardware.end(), [](const piece::Hardware& item) {
        std::string name = item.name;
        std::transform(name.begin(), name.end(), name.begin(),
                       [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c); });
        return name.find("wall") != std::string::npos || name.find("tip") != std::string::npos;
    });
}

/// How far the middle of a movable's mass comes forward when it is opened, and where its front edge then is.
struct Opened {
    bool opens = false;
    double forward = 0, front_edge = 0;
};

Opened opened(const Movable& movable, double front) {
    const double wide = movable.box.high.x - movable.box.low.x, deep = movable.box.high.y - movable.box.low.y;
    Opened open;
    // A drawer: deep, and at the front. A door: thin, upright, at the front, hung on hardware.
    if (movable.box.low.y > front + 60) return open;
    if (movable.loose && movable.parts.size() >= 4 && deep > 100) {
        open = {true, pulled_out * deep, movable.box.low.y - pulled_out * deep};
    } else if (!movable.loose && deep < 60 && movable.box.high.z - movable.box.low.z > 100) {
        open = {true, wide / 2, movable.box.low.y - wide};
    }
    return open;
}

void search(const joinery::Model& model, findings::Findings& found) {
    const piece::Piece& piece = *model.piece;
    if (model.made.empty() || !stands_on_a_floor(piece) || fastened_to_a_wall(piece)) return;
    const std::vector<Movable> movables = movables_of(model);
    if (movables.empty()) return;
    measure::Box all = box_in_piece(model.made.front());
    std::vector<measure::Box> boxes;
    for (const joinery::Made& made : model.made) {
        boxes.push_back(box_in_piece(made));
        for (int axis = 0; axis < 3; ++axis) {
            all.low[axis] = std::min(all.low[axis], boxes.back().low[axis]);
            all.high[axis] = std::max(all.high[axis], boxes.back().high[axis]);
        }
    }
    if (all.high.z - all.low.z < tall) return;
    double foot = 1e300; // the foremost point on the floor
    for (const joinery::Made& made : model.made)
        for (const solid::Edge& edge : made.solid.edges)
            for (const measure::Point& p : {place_of(made, edge.a), place_of(made, edge.b)})
                if (p.z < all.low.z + 2) foot = std::min(foot, p.y);
    double mass = 0, moment = 0; // kg, kg mm about the foot; positive holds it
    for (const joinery::Made& made : model.made) {
        const double m = mass_of(made, piece);
        mass += m;
        moment += m * (place_of(made, made.solid.centroid).y - foot);
    }
    double farthest = foot;
    int opens = 0;
    std::string first;
    source::Span span = piece.span;
    for (const Movable& movable : movables) {
        const Opened open = opened(movable, all.low.y);
        if (!open.opens) continue;
        ++opens;
        for (const int part : movable.parts)
            moment -= mass_of(model.made[static_cast<std::size_t>(part)], piece) * open.forward;
        farthest = std::min(farthest, open.front_edge);
        if (first.empty()) {
            first = model.made[static_cast<std::size_t>(movable.parts.front())].part->name;
            span = piece.span;
        }
    }
    if (opens == 0 || farthest >= foot - 1) return;
    const double hangs = moment / (foot - farthest);
    if (hangs >= test_weight) return;
    findings::Finding finding;
    finding.name = "tipping";
    finding.severity = hangs < 0 ? findings::Severity::fault : findings::Severity::caution;
    finding.span = span;
    finding.message =
        hangs < 0
            ? fmt::format(
                  "with its drawers and doors open it tips by itself: it weighs {:.0f} kg and is {} tall",
                  mass, size_text(std::round(all.high.z - all.low.z), model))
            : fmt::format("with its drawers and doors open it tips when {:.0f} kg hang on its front edge: it "
                          "weighs {:.0f} kg and is {} tall",
                          std::floor(hangs), mass, size_text(std::round(all.high.z - all.low.z), model));
    finding.limit =
        fmt::format("{:.0f} kg from {} of height, after ASTM F2057, from memory: look it up there, and in "
                    "the law of the place",
                    test_weight, size_text(tall, model));
    // Feet moved forward by d: moment + mass d against the test weight on a lever shorter by d.
    const double forward = (test_weight * (foot - farthest) - moment) / (mass + test_weight);
    finding.mend = fmt::format("fasten it to the wall and name that in the hardware list (`hardware \"Wall "
                               "strap\", 2 off, on PART`), or set its feet {} farther forward; this is shop "
                               "guidance, not an engineer's approval",
                               size_text(10 * std::ceil(forward / 10), model));
    finding.parts = {first};
    finding.at = measure::Point{(all.low.x + all.high.x) / 2, foot, all.low.z};
    found.add(std::move(finding));
}

constexpr SourcedFigure figures[] = {
    {"height from which it matters", "27 in (686 mm)", "ASTM F2057, clothing storage units (from memory)"},
    {"weight on the open front", "60 lb (27.2 kg)", "ASTM F2057 (from memory)"},
    {"drawers are pulled out", "two thirds of their depth", "ASTM F2057 (from memory)"},
    {"weight of wood", "1000 G (1 + M/100) kg/m³", "Wood Handbook, Eq 4-14 (read, secondary)"},
};

} // namespace

const Check tipping{
    .name = "tipping",
    .title = "A tall piece that tips with its drawers and doors open",
    .what = "Pieces that stand on a floor and are 27 in tall or more, with drawers or hung doors at their "
            "front: how "
            "much may hang on the open front before the piece falls forward. What lies in the drawers is not "
            "known "
            "and not counted.",
    .why = "At the bench it stands firm, empty and with its drawers shut. In a child's room, loaded, its "
           "drawers are pulled out for a ladder one day in its many winters, and it comes down with all that "
           "is in it.",
    .severity =
        "caution when less than 60 lb (27 kg) may hang on it, fault when it tips by itself. The figures are "
        "from memory, and a calculation is no test: where children live, look up ASTM F2057 and the law of "
        "the place, and fasten the piece to the wall",
    .mend = "Fasten it to the wall, let one drawer open at a time, or set its feet farther forward.",
    .wrong = "a chest of drawers 900 tall and 300 deep that stands free",
    .right = "the same chest with `hardware \"Wall strap\"`",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
