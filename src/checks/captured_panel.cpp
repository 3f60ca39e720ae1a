// Captured panel: a panel in grooves that has no room to swell in the damp season, or leaves its groove in
// the dry one.
//
// For every part that floats in grooves, along its width and along its length: the room between its two edges
// and the bottoms of the grooves is measured on the finished solids, and so is how far each edge stands in
// its groove. The panel's movement less that of the frame part lying along the same direction must fit. The
// dry case takes the panel as pushed against one groove. Left out: panels in grooves that are not along the
// piece's axes.

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/season_table.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// One edge of a panel and the groove it stands in.
struct Edge {
    int holder = -1; ///< the part with the groove
    int joint = -1;
    double room = 0;    ///< from the edge to the bottom of the groove
    double engaged = 0; ///< how far the edge stands in the groove
};

double extent(const measure::Box& box, measure::Vector direction, bool high) {
    double found = 0;
    bool first = true;
    for (int i = 0; i < 8; ++i) {
        const measure::Point corner{i & 1 ? box.high.x : box.low.x, i & 2 ? box.high.y : box.low.y,
                                    i & 4 ? box.high.z : box.low.z};
        const double at = dot(corner, direction);
        found = first ? at : high ? std::max(found, at) : std::min(found, at);
        first = false;
    }
    return found;
}

/// Distance from a point to the first wood of `made` along a direction; nothing within `reach` gives nothing.
std::optional<double> first_wood(const joinery::Made& made, measure::Point from, measure::Vector direction,
                                 double reach) {
    const measure::Frame& frame = made.part->frame;
    for (const auto& [enter, leave] :
         solid::inside_along(made.solid, frame.in(from), frame.turn_in(direction)))
        if (leave > 0 && enter < reach) return std::max(enter, 0.0);
    return std::nullopt;
}

/// The end of the panel (own axis 0 or 1, low or high) in a groove of one of its holders.
std::optional<Edge> edge_of(const joinery::Model& model, int panel, int axis, bool high) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(panel)];
    const measure::Box& own = made.solid.box;
    const measure::Vector outwards_own =
        axis == 0 ? measure::Vector{high ? 1.0 : -1.0, 0, 0} : measure::Vector{0, high ? 1.0 : -1.0, 0};
    measure::Point edge_own{(own.low.x + own.high.x) / 2, (own.low.y + own.high.y) / 2,
                            (own.low.z + own.high.z) / 2};
    // A fielded panel is thin at its edge: take the height at which there is wood there.
    edge_own[axis] = high ? own.high[axis] - 0.05 : own.low[axis] + 0.05;
    measure::Point below = edge_own;
    below.z = 0;
    const auto through = solid::inside_along(made.solid, below, {0, 0, 1});
    if (through.empty()) return std::nullopt;
    edge_own.z = (through.front().first + through.front().second) / 2;
    edge_own[axis] = high ? own.high[axis] : own.low[axis];
    const measure::Vector outwards = made.part->frame.turn_out(outwards_own);
    const measure::Point edge = made.part->frame.out(edge_own);
    for (int j = 0; j < static_cast<int>(model.joints.size()); ++j) {
        const joinery::Joint& joint = model.joints[static_cast<std::size_t>(j)];
        if (joint.a != panel || !joint.kind.starts_with("groove")) continue;
        const joinery::Made& holder = model.made[static_cast<std::size_t>(joint.b)];
        const measure::Frame& frame = holder.part->frame;
        // Does this holder lie beyond this edge?
        const double reach = extent(holder.solid.box, frame.turn_in(outwards), true) -
                             dot(frame.in(edge), frame.turn_in(outwards));
        if (reach < 0.01) continue;
        const std::optional<double> room = first_wood(holder, edge + outwards * 0.001, outwards, reach);
        if (!room) continue;
        const double inner = extent(holder.solid.box, frame.turn_in(outwards), false);
        const double engaged = dot(frame.in(edge), frame.turn_in(outwards)) - inner;
        if (engaged < 0.01) continue;
        return Edge{joint.b, j, *room, engaged};
    }
    return std::nullopt;
}

/// Movement of the frame along a direction: that of the panel's holder that runs along it, if there is one.
wood::StrainTensor frame_strain(const joinery::Model& model, int panel, measure::Vector direction,
                                bool damp) {
    for (const joinery::Joint& joint : model.joints) {
        if (joint.a != panel || !joint.kind.starts_with("groove")) continue;
        const joinery::Made& holder = model.made[static_cast<std::size_t>(joint.b)];
        if (std::abs(dot(holder.part->frame.x, direction)) < 0.9) continue;
        const Seasons seasons = seasons_of(holder, *model.piece);
        return damp ? seasons.damp : seasons.dry;
    }
    return {};
}

/// Both edges of a panel along one of its axes, and how it moves between them.
struct Floating {
    Edge low, high;
    double swells = 0, shrinks = 0; ///< mm, against the frame
    double room() const { return low.room + high.room; }
    /// Pushed against the bottom of one groove, the panel stands least far in the other.
    double left() const { return std::min(low.engaged - high.room, high.engaged - low.room) - shrinks; }
    /// Gap on each side, on a half millimetre.
    double gap() const { return std::ceil(2 * (std::max(0.0, swells) / 2 + 0.25)) / 2; }
};

std::optional<Floating> floating(const joinery::Model& model, int panel, int axis) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(panel)];
    const std::optional<Edge> low = edge_of(model, panel, axis, false),
                              high = edge_of(model, panel, axis, true);
    if (!low || !high) return std::nullopt;
    const measure::Vector direction = axis == 0 ? made.part->frame.x : made.part->frame.y;
    const double size = axis == 0 ? made.solid.box.high.x - made.solid.box.low.x
                                  : made.solid.box.high.y - made.solid.box.low.y;
    const Seasons own = seasons_of(made, *model.piece);
    return Floating{
        *low, *high,
        (own.damp - frame_strain(model, panel, direction, true)).along(direction).in_ratio() * size,
        -(own.dry - frame_strain(model, panel, direction, false)).along(direction).in_ratio() * size};
}

/// `; or quarter-saw it: 3.1 mm instead of 6.2 mm`, for what moves across its grain.
std::string quarter_sawn_words(const joinery::Model& model, const joinery::Made& made, int axis,
                               double swells) {
    if (axis != 1 || made.part->species->is_sheet() || std::abs(made.part->rings.in_degrees()) > 80)
        return "";
    const double flat =
        std::abs(wood::movement(made.part->width, model.piece->made_at, model.piece->climate.dampest,
                                made.part->rings, *made.part->species)
                     .value());
    const double quarter =
        std::abs(wood::movement(made.part->width, model.piece->made_at, model.piece->climate.dampest,
                                wood::Sawn::quarter, *made.part->species)
                     .value());
    if (!(flat > 0)) return "";
    return fmt::format("; or quarter-saw it: it then swells {} instead of {}",
                       movement_text(swells * quarter / flat, model), movement_text(swells, model));
}

void look_along(const joinery::Model& model, int panel, int axis, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(panel)];
    const std::optional<Floating> floats = floating(model, panel, axis);
    if (!floats) return;
    const Edge *low = &floats->low, *high = &floats->high;
    const double swells = floats->swells, shrinks = floats->shrinks, room = floats->room();
    const std::string across = axis == 1 ? "across its grain" : "along its grain";

    findings::Finding finding;
    finding.name = "captured-panel";
    finding.span = model.joints[static_cast<std::size_t>(high->joint)].span;
    finding.parts = {made.part->name, name_of(model, low->holder), name_of(model, high->holder)};
    finding.labels.push_back({made.part->grain_span, "grain of " + made.part->name + " is set here"});
    measure::Point at{(made.solid.box.low.x + made.solid.box.high.x) / 2,
                      (made.solid.box.low.y + made.solid.box.high.y) / 2, made.part->thickness.value() / 2};
    at[axis] = made.solid.box.high[axis];
    finding.at = place_of(made, at);
    for (const bool far : {false, true}) {
        measure::Point edge = at;
        edge[axis] = far ? made.solid.box.high[axis] : made.solid.box.low[axis];
        const measure::Vector way = axis == 0 ? made.part->frame.x : made.part->frame.y;
        finding.movements.push_back(season_movement(place_of(made, edge), far ? way : -way, -shrinks / 2,
                                                    swells / 2, model, " at each edge"));
    }
    if (swells > room + 0.05) {
        finding.severity = findings::Severity::fault;
        finding.message =
            fmt::format("{} swells {} {} by the dampest season and has {} of room in its grooves",
                        made.part->name, movement_text(swells, model), across, movement_text(room, model));
        finding.limit = limit_text("room for its swelling", wood::movement_source(*made.part->species));
        finding.mend =
            fmt::format("leave {} on each side, that is `gap {}`{}", movement_text(swells / 2 + 0.25, model),
                        size_text(floats->gap(), model), quarter_sawn_words(model, made, axis, swells));
        found.add(finding);
    }
    const double left = floats->left();
    if (shrinks > 0 && left <= 0) {
        finding.severity = std::min(low->engaged, high->engaged) - shrinks / 2 <= 0
                               ? findings::Severity::fault
                               : findings::Severity::caution;
        finding.message = fmt::format("{} shrinks {} {} by the driest season and then leaves a groove when "
                                      "it is pushed to the other side",
                                      made.part->name, movement_text(shrinks, model), across);
        finding.limit =
            limit_text("it must still stand in both grooves", wood::movement_source(*made.part->species));
        finding.mend = fmt::format("make the grooves {} deeper, or pin the panel in the middle of its ends",
                                   movement_text(1 - left, model));
        found.add(finding);
    }
}

bool in_groove(const joinery::Model& model, int part) {
    return std::any_of(model.joints.begin(), model.joints.end(), [&](const joinery::Joint& joint) {
        return joint.a == part && joint.kind.starts_with("groove");
    });
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        if (!in_groove(model, i) || !model.made[static_cast<std::size_t>(i)].part->upright) continue;
        look_along(model, i, 1, found);
        look_along(model, i, 0, found);
    }
}

constexpr SourcedFigure figures[] = {
    {"movement of the panel", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"a panel is never glued into its frame", "", "W. Noyes, Handwork in Wood, 1910, ch. VII (read)"},
};

} // namespace

std::optional<GrooveRoom> groove_room(const joinery::Model& model, int part, int axis) {
    if (!in_groove(model, part) || !model.made[static_cast<std::size_t>(part)].part->upright)
        return std::nullopt;
    const std::optional<Floating> floats = floating(model, part, axis);
    if (!floats) return std::nullopt;
    return GrooveRoom{floats->room(), floats->swells, floats->shrinks,
                      floats->gap(),  floats->left(), {floats->low.holder, floats->high.holder}};
}

const Check captured_panel{
    .name = "captured-panel",
    .title = "A panel without room, or one that leaves its groove",
    .what = "Parts that float in grooves: their swelling against the room at both edges, and their shrinking "
            "against how far the edges stand in "
            "the grooves, measured on the finished solids.",
    .why = "At the bench, in dry winter air, everything fits. In the first damp summer a panel without room "
           "swells with more force than any corner joint bears: it pushes the frame apart or buckles. A "
           "panel that shrinks too far shows daylight beside its groove in a heated room, and by the fifth "
           "winter it rattles and falls out on one side.",
    .severity = "fault when it cannot swell, or leaves both grooves even when centred, for that happens in "
                "the first year; caution when it can slip out of one groove if it is pushed aside",
    .mend = "Leave the room that the message states, cut the grooves deeper, use quarter-sawn wood, or pin "
            "the panel in its middle.",
    .wrong = "a 400 mm flat-sawn panel fitted tight into its grooves in a dry winter",
    .right = "the same panel with the gap that the message works out",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
