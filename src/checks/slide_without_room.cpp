// Slide without room: slots, buttons and breadboard tenons that let a part move, but not far enough.
//
// For every joint that lets its parts slide within a stated room (slotted screws, buttons, breadboard ends),
// and for every place at which it holds them: the movement of the two parts against each other from the place
// that stays put to that place, from the day it was made to the driest and to the dampest season, against the
// room either way. What stays put is the glued stretch of the joint; else the middle screw, where slots run
// along their row; else the middle of the part that moves more. Panels in grooves have captured-panel.

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/season_table.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// What a slot lacks is taken up by play and give up to here, mm. Our own choice.
constexpr double give = 0.1;
/// Lacking more than this the screw bends or the wood splits, mm. Our own choice.
constexpr double fault_beyond = 1.0;

bool has_slots(const std::string& kind) {
    return kind.starts_with("slotted screws") || kind.starts_with("buttons") ||
           kind.starts_with("breadboard end");
}

struct Sliding {
    std::vector<measure::Vector> ways;
    double room = 0;
    std::vector<measure::Point> held_at;
    std::vector<measure::Point> glued; ///< corners of the glued stretch
};

double middle_along(const std::vector<measure::Point>& points, measure::Vector way) {
    double low = 1e300, high = -1e300;
    for (const measure::Point& p : points) {
        low = std::min(low, dot(p, way));
        high = std::max(high, dot(p, way));
    }
    return (low + high) / 2;
}

struct Worst {
    double movement = 0, distance = 0;
    bool damp = false;
    measure::Point at;
    int mover = -1;
    measure::Vector way; ///< away from the place that stays put, of length 1
    Mismatch moves;
    /// Room to give it, on a half millimetre.
    double leave() const { return std::ceil(2 * (movement + 0.5)) / 2; }
};

double reach_along(const joinery::Made& made, measure::Vector way) {
    const measure::Vector own = made.part->frame.turn_in(way);
    const measure::Box& box = made.solid.box;
    return std::abs(own.x) * (box.high.x - box.low.x) + std::abs(own.y) * (box.high.y - box.low.y) +
           std::abs(own.z) * (box.high.z - box.low.z);
}

/// What keeps the places of the holder at their distance: of the holder and the parts joined to it, the one
/// that reaches over the distance and moves least; nothing that moves, where none reaches so far.
Seasons frame_moves(const joinery::Model& model, int mover, int holder, measure::Vector way,
                    double distance) {
    Seasons least;
    double least_range = -1;
    const auto consider = [&](int part) {
        const joinery::Made& made = model.made[static_cast<std::size_t>(part)];
        if (part == mover || reach_along(made, way) < 0.6 * distance) return;
        const Seasons seasons = seasons_of(made, *model.piece);
        const double range = std::abs((seasons.damp - seasons.dry).along(way).in_ratio());
        if (least_range >= 0 && range >= least_range) return;
        least_range = range;
        least = seasons;
    };
    consider(holder);
    for (const joinery::Joint& joint : model.joints) {
        if (joint.a == holder) consider(joint.b);
        if (joint.b == holder) consider(joint.a);
    }
    return least;
}

/// The farthest travel of any held place along a way.
Worst travel(const joinery::Model& model, const joinery::Joint& joint, const Sliding& sliding,
             measure::Vector way, double fixed, bool first_moves) {
    const int mover = first_moves ? joint.a : joint.b, holder = first_moves ? joint.b : joint.a;
    const Seasons own = seasons_of(model.made[static_cast<std::size_t>(mover)], *model.piece);
    Worst worst;
    for (const measure::Point& p : sliding.held_at) {
        const double distance = std::abs(dot(p, way) - fixed);
        const Mismatch differ =
            mismatch(own, frame_moves(model, mover, holder, way, distance), way, distance);
        const bool damp = std::abs(differ.damp) > std::abs(differ.dry);
        const double movement = damp ? std::abs(differ.damp) : std::abs(differ.dry);
        if (movement > worst.movement)
            worst = {movement, distance, damp, p, mover, dot(p, way) < fixed ? -way : way, differ};
    }
    return worst;
}

/// The held place that travels farthest, over all ways.
Worst worst_of(const joinery::Model& model, int index, const Sliding& sliding) {
    const joinery::Joint& joint = model.joints[static_cast<std::size_t>(index)];
    const joinery::Made &one = model.made[static_cast<std::size_t>(joint.a)],
                        &other = model.made[static_cast<std::size_t>(joint.b)];
    const Seasons a = seasons_of(one, *model.piece), b = seasons_of(other, *model.piece);
    Worst worst;
    for (const measure::Vector& way : sliding.ways) {
        const bool first_moves = std::abs((a.damp - a.dry).along(way).in_ratio()) >=
                                     std::abs((b.damp - b.dry).along(way).in_ratio()) ||
                                 reach_along(one, way) > 2 * reach_along(other, way);
        const double along_row = sliding.held_at.size() < 2
                                     ? 0
                                     : std::abs(dot(sliding.held_at.back() - sliding.held_at.front(), way));
        double fixed = 0;
        if (!sliding.glued.empty()) {
            fixed = middle_along(sliding.glued, way);
        } else if (along_row > 1 && joint.kind.starts_with("slotted")) {
            fixed = middle_along(sliding.held_at, way);
        } else {
            // The part that moves more floats about its middle.
            const joinery::Made& moves = first_moves ? one : other;
            fixed = dot(place_of(moves, (moves.solid.box.low + moves.solid.box.high) * 0.5), way);
        }
        const Worst here = travel(model, joint, sliding, way, fixed, first_moves);
        if (here.movement > worst.movement) worst = here;
    }
    return worst;
}

void look_at(const joinery::Model& model, int index, const Sliding& sliding, findings::Findings& found) {
    const joinery::Joint& joint = model.joints[static_cast<std::size_t>(index)];
    const joinery::Made &one = model.made[static_cast<std::size_t>(joint.a)],
                        &other = model.made[static_cast<std::size_t>(joint.b)];
    const Worst worst = worst_of(model, index, sliding);
    const double lacks = worst.movement - sliding.room;
    if (lacks <= give) return;
    findings::Finding finding;
    finding.name = "slide-without-room";
    finding.severity = lacks > fault_beyond ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    finding.message =
        fmt::format("{} moves {} on {} by the {} season, {} from the place that stays put, and has room for "
                    "{} either way",
                    one.part->name, movement_text(worst.movement, model), other.part->name,
                    worst.damp ? "dampest" : "driest", size_text(std::round(worst.distance), model),
                    movement_text(sliding.room, model));
    finding.limit = limit_text("room for its movement", wood::movement_source(*one.part->species));
    finding.mend = fmt::format("write `gap {}`", size_text(worst.leave(), model));
    finding.parts = {one.part->name, other.part->name};
    finding.at = worst.at;
    finding.movements.push_back(
        season_movement(worst.at, worst.way, worst.moves.dry, worst.moves.damp, model));
    finding.labels.push_back({one.part->grain_span, "grain of " + one.part->name + " is set here"});
    found.add(std::move(finding));
}

std::map<int, Sliding> slidings_of(const joinery::Model& model) {
    std::map<int, Sliding> joints;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.joint < 0 || !has_slots(model.joints[static_cast<std::size_t>(contact.joint)].kind))
            continue;
        Sliding& sliding = joints[contact.joint];
        if (contact.hold == joinery::Hold::glued)
            for (const auto& loop : contact.loops)
                sliding.glued.insert(sliding.glued.end(), loop.begin(), loop.end());
        if (contact.may_slide.empty() || !(contact.room > 0) || !std::isfinite(contact.room)) continue;
        sliding.ways = contact.may_slide;
        sliding.room = contact.room;
        if (!contact.held_at.empty())
            sliding.held_at = contact.held_at;
        else
            for (const auto& loop : contact.loops)
                sliding.held_at.insert(sliding.held_at.end(), loop.begin(), loop.end());
    }
    return joints;
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const auto& [index, sliding] : slidings_of(model))
        if (!sliding.held_at.empty() && !sliding.ways.empty()) look_at(model, index, sliding, found);
}

constexpr SourcedFigure figures[] = {
    {"movement of wood", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"give of screws and wood", "0.1 mm", "our own choice"},
    {"lack for a fault", "1 mm", "our own choice"},
};

} // namespace

std::vector<SlideRoom> slide_rooms(const joinery::Model& model) {
    std::vector<SlideRoom> rooms;
    for (const auto& [index, sliding] : slidings_of(model)) {
        if (sliding.held_at.empty() || sliding.ways.empty()) continue;
        const Worst worst = worst_of(model, index, sliding);
        if (worst.mover >= 0)
            rooms.push_back({index, worst.mover, worst.movement, sliding.room, worst.leave()});
    }
    return rooms;
}

const Check slide_without_room{
    .name = "slide-without-room",
    .title = "Slots, buttons or breadboard tenons with too little room",
    .what =
        "Joints that let a part move within a stated room: the movement at the place farthest from the one "
        "that stays put, towards either season, against that room.",
    .why = "At the bench everything slides. In the first winter or two the screw reaches the end of its "
           "slot, and from there on it is as if it had none: the screw bends, the top splits, or the tenon "
           "shears its peg. By the fifth the crack is there to be seen.",
    .severity = "caution when the room is too small by more than 0.1 mm, which bends a screw; fault by more "
                "than 1 mm, which splits the wood",
    .mend =
        "Make the slot as long as the message says, hold the part nearer to its middle, or use quarter-sawn "
        "wood.",
    .wrong = "a flat-sawn top 900 wide on buttons with `gap 1`",
    .right = "the same top without a stated gap",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
