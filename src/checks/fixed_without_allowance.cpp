// Fixed without allowance: a wide part held at places that do not move with it.
//
// A solid top screwed or glued to rails all round is held at places which the frame keeps at their distance,
// while the top wants to grow and shrink between them. For every part held by two or more others: along its
// width, the distance between the farthest places at which it is held without being able to slide. What lies
// between them and carries on from one to the other (a rail along that direction, the side of a carcase)
// tells how far those places move apart; the part's own movement over that distance is compared. A glued
// holder counts with the middle of its contact, because what happens within one contact is the business of
// cross-grain-glue; screws count each. Buttons, slots and dry grooves
// slide, and count only against their own play.

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include <fmt/core.h>

#include "checks/list.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Play of screws in their holes and give of a long frame, mm. Our own choice, no published source.
constexpr double play = 1.0;
constexpr double fault_times = 2;

struct Holding {
    double low = std::numeric_limits<double>::infinity(), high = -std::numeric_limits<double>::infinity();
    std::set<int> holders;
    int joint = -1;
    measure::Point at_low, at_high;
    bool screwed = false;
};

bool slides_along(const joinery::Contact& contact, measure::Vector direction) {
    return std::any_of(contact.may_slide.begin(), contact.may_slide.end(),
                       [&](measure::Vector way) { return std::abs(dot(way, direction)) > 0.9; });
}

void take(Holding& holding, measure::Point point, measure::Vector direction) {
    const double at = dot(point, direction);
    if (at < holding.low) {
        holding.low = at;
        holding.at_low = point;
    }
    if (at > holding.high) {
        holding.high = at;
        holding.at_high = point;
    }
}

Holding holding_of(const joinery::Model& model, int part, measure::Vector direction) {
    Holding holding;
    std::map<int, Holding> glued; // by holder
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.a != part && contact.b != part) continue;
        if (contact.hold == joinery::Hold::free || contact.joint < 0 || slides_along(contact, direction))
            continue;
        holding.holders.insert(contact.a == part ? contact.b : contact.a);
        holding.joint = contact.joint;
        const bool screwed = contact.hold == joinery::Hold::fastened;
        holding.screwed = holding.screwed || screwed;
        for (const measure::Point& p : contact.held_at) take(holding, p, direction);
        if (!contact.held_at.empty()) continue;
        Holding& places = screwed ? holding : glued[contact.a == part ? contact.b : contact.a];
        for (const auto& loop : contact.loops)
            for (const measure::Point& p : loop) take(places, p, direction);
    }
    for (const auto& [holder, places] : glued)
        take(holding, (places.at_low + places.at_high) * 0.5, direction);
    return holding;
}

double span_along(const joinery::Made& made, measure::Vector direction) {
    const measure::Box& box = made.solid.box;
    const measure::Vector own = made.part->frame.turn_in(direction);
    return std::abs(own.x) * (box.high.x - box.low.x) + std::abs(own.y) * (box.high.y - box.low.y) +
           std::abs(own.z) * (box.high.z - box.low.z);
}

/// Of the parts joined to the holders or holders themselves, the one that spans the held distance and moves
/// most like the part; nothing when none spans it.
std::optional<double> strain_of_frame(const joinery::Model& model, int part, const Holding& holding,
                                      measure::Vector direction, const Seasons& own) {
    // What is itself free to slide along the direction keeps nothing at its distance.
    std::set<int> frame = holding.holders;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.hold == joinery::Hold::free || contact.joint < 0 || slides_along(contact, direction))
            continue;
        if (holding.holders.contains(contact.a) && contact.b != part) frame.insert(contact.b);
        if (holding.holders.contains(contact.b) && contact.a != part) frame.insert(contact.a);
    }
    std::optional<double> nearest;
    for (int i : frame) {
        const joinery::Made& made = model.made[static_cast<std::size_t>(i)];
        if (span_along(made, direction) < 0.6 * (holding.high - holding.low)) continue;
        const Seasons seasons = seasons_of(made, *model.piece);
        const double differs =
            ((own.damp - own.dry) - (seasons.damp - seasons.dry)).along(direction).in_ratio();
        // A stiff part along its grain rules the distance; of parts that move, the one that moves least like
        // this part does.
        if (!nearest || std::abs(differs) > std::abs(*nearest)) nearest = differs;
    }
    return nearest;
}

void look_at(const joinery::Model& model, int index, findings::Findings& found) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
    if (made.part->species->is_sheet()) return;
    const measure::Vector direction = made.part->frame.y;
    const Holding holding = holding_of(model, index, direction);
    if (holding.holders.empty() || (holding.holders.size() == 1 && !holding.screwed)) return;
    const double distance = holding.high - holding.low;
    if (distance < 50) return;
    const Seasons own = seasons_of(made, *model.piece);
    const std::optional<double> differs = strain_of_frame(model, index, holding, direction, own);
    if (!differs) return;
    const double movement = std::abs(*differs) * distance;
    if (movement <= play) return;
    const joinery::Joint& joint = model.joints[static_cast<std::size_t>(holding.joint)];
    findings::Finding finding;
    finding.name = "fixed-without-allowance";
    finding.severity =
        movement > fault_times * play ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    finding.message =
        fmt::format("{} is held at places {} apart across its grain, where it moves {} {}", made.part->name,
                    size_text(distance, model), movement_text(movement, model), season_words(*model.piece));
    finding.limit = limit_text(movement_text(play, model) + " of play",
                               "our own choice, no published source; movement by " +
                                   std::string(wood::movement_source(*made.part->species)));
    finding.mend = fmt::format("hold it fast along one line only and let it slide elsewhere: buttons, or "
                               "slots {} longer than the screw is thick",
                               movement_text(movement, model));
    if (std::abs(made.part->rings.in_degrees()) < 80) {
        piece::Part quarter = *made.part;
        quarter.rings = measure::Angle::degrees(90);
        joinery::Made sawn;
        sawn.part = &quarter;
        const Seasons then = seasons_of(sawn, *model.piece);
        const double range = std::abs((own.damp - own.dry).along(direction).in_ratio());
        const double less = std::abs((then.damp - then.dry).along(direction).in_ratio());
        if (range > 0 && less < 0.9 * range)
            finding.mend +=
                fmt::format("; quarter-sawn it moves {} instead of {}",
                            movement_text(movement * less / range, model), movement_text(movement, model));
    }
    finding.parts = {made.part->name};
    for (int holder : holding.holders) finding.parts.push_back(name_of(model, holder));
    finding.at = (holding.at_low + holding.at_high) * 0.5;
    // The range shared between the seasons as the part's own movement is.
    const double dry = own.dry.along(direction).in_ratio(), damp = own.damp.along(direction).in_ratio();
    if (std::abs(damp - dry) > 1e-12)
        for (const bool far : {false, true})
            finding.movements.push_back(
                season_movement(far ? holding.at_high : holding.at_low, far ? direction : -direction,
                                movement / 2 * dry / std::abs(damp - dry),
                                movement / 2 * damp / std::abs(damp - dry), model, " at each side"));
    finding.labels.push_back({made.part->grain_span, "grain of " + made.part->name + " is set here"});
    found.add(std::move(finding));
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) look_at(model, i, found);
}

constexpr SourcedFigure figures[] = {
    {"movement of wood", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"play of screws and frame", "1 mm", "our own choice, no published source"},
};

} // namespace

const Check fixed_without_allowance{
    .name = "fixed-without-allowance",
    .title = "A wide part held fast at places that do not move with it",
    .what = "Parts held by several others, or by screws: the movement across their grain between the "
            "farthest places at which they cannot slide, "
            "against what carries on between those places. Buttons, slotted screws and dry grooves count as "
            "sliding.",
    .why =
        "At the bench the top lies tight on its frame. In its first dry winter it wants to be narrower than "
        "the places that hold it: screws bend and tear their holes, the frame is pulled out of square, or "
        "the top splits from its end. After five winters the split has run in as far as the farthest screw.",
    .severity = "caution above 1 mm of movement a year, about the play of screws in their holes; fault above "
                "2 mm, which splits wood or tears screws out",
    .mend = "Hold it along one line, its middle or its front, and let it slide everywhere else.",
    .wrong = "a solid top glued to the aprons all round",
    .right = "the same top held with buttons",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
