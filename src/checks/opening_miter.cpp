// Opening miter: a frame so wide that its miters gape in one season.
//
// Wood shrinks in width and hardly in length, so the angle of a miter cut on it changes while the corner of
// the frame stays square. For lines u and v of a part at an angle f, the strain e changes the angle by
// ((e_uu + e_vv) cos f - 2 e_uv) / sin f. Taken on both parts between their fibres and the miter, the two
// changes together, times the length of the miter, are the gap that one end of it wants to open. Glue,
// splines and keys hold it shut as long as the wood gives. Exact for small strains; a case corner mitred
// through its thickness moves so little that it stays silent.

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/core.h>

#include "checks/fibres.hpp"
#include "checks/list.hpp"
#include "checks/season_table.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// A gap that the wood beside it takes up, mm. Our own choice, no published source.
constexpr double harmless = 0.75;
constexpr double fault_times = 2;

/// Change of the angle between two lines of a strained part, radians. Both of length 1.
double change_of_angle(const wood::StrainTensor& strain, measure::Vector u, measure::Vector v) {
    const double c = dot(u, v), s = std::sqrt(std::max(1e-9, 1 - c * c));
    return ((strain.along(u).in_ratio() + strain.along(v).in_ratio()) * c -
            2 * strain.shear(u, v).in_ratio()) /
           s;
}

/// The part's fibres, away from the corner.
measure::Vector away(const joinery::Made& made, measure::Point corner) {
    const measure::Vector fibre = made.part->frame.turn_out(fibre_direction(*made.part));
    const measure::Point middle = place_of(made, (made.solid.box.low + made.solid.box.high) * 0.5);
    return dot(middle - corner, fibre) < 0 ? -fibre : fibre;
}

struct Opening {
    double dry = 0, damp = 0, length = 0;
    measure::Point outer, inner; ///< ends of the miter, in the middle of the wood's thickness
    double worst() const { return std::max(std::abs(dry), std::abs(damp)); }
};

Opening opening_of(const joinery::Model& model, const joinery::Contact& contact,
                   const joinery::Joint& joint) {
    const joinery::Made &one = model.made[static_cast<std::size_t>(contact.a)],
                        &other = model.made[static_cast<std::size_t>(contact.b)];
    const measure::Vector u = away(one, joint.at), v = away(other, joint.at);
    const measure::Vector turn = cross(u, v);
    if (norm(turn) < 0.05) return {};
    // Along the miter, from the outer corner to the inner one.
    measure::Vector along = cross(contact.plane.normal, measure::unit(turn));
    if (norm(along) < 0.05) return {};
    along = measure::unit(along);
    if (dot(along, u + v) < 0) along = -along;
    double low = 1e300, high = -1e300;
    for (const auto& loop : contact.loops)
        for (const measure::Point& p : loop) {
            low = std::min(low, dot(p, along));
            high = std::max(high, dot(p, along));
        }
    const Seasons a = seasons_of(one, *model.piece), b = seasons_of(other, *model.piece);
    const auto gap = [&](const wood::StrainTensor& of_a, const wood::StrainTensor& of_b) {
        return (change_of_angle(of_a, u, along) + change_of_angle(of_b, v, along)) * (high - low);
    };
    // The ends, on the line through the middle of the contact.
    measure::Point middle{};
    double count = 0;
    for (const auto& loop : contact.loops)
        for (const measure::Point& p : loop) {
            middle = middle + p;
            count += 1;
        }
    middle = middle * (1 / std::max(1.0, count));
    const auto end = [&](double at) { return middle + along * (at - dot(middle, along)); };
    return {gap(a.dry, b.dry), gap(a.damp, b.damp), high - low, end(low), end(high)};
}

/// The same with both parts quarter sawn.
double when_quarter_sawn(const joinery::Model& model, const joinery::Contact& contact,
                         const joinery::Joint& joint) {
    piece::Part one = *model.made[static_cast<std::size_t>(contact.a)].part,
                other = *model.made[static_cast<std::size_t>(contact.b)].part;
    one.rings = other.rings = measure::Angle::degrees(90);
    joinery::Model changed;
    changed.piece = model.piece;
    changed.made.resize(2);
    for (int i : {0, 1}) {
        joinery::Made& made = changed.made[static_cast<std::size_t>(i)];
        made.part = i == 0 ? &one : &other;
        made.solid.box = model.made[static_cast<std::size_t>(i == 0 ? contact.a : contact.b)].solid.box;
    }
    joinery::Contact same = contact;
    same.a = 0;
    same.b = 1;
    return opening_of(changed, same, joint).worst();
}

void report(const joinery::Model& model, const joinery::Contact& contact, const Opening& opening,
            findings::Findings& found) {
    const joinery::Joint& joint = model.joints[static_cast<std::size_t>(contact.joint)];
    const double gap = opening.worst();
    if (gap <= harmless) return;
    const std::string &one = name_of(model, joint.a), &other = name_of(model, joint.b);
    findings::Finding finding;
    finding.name = "opening-miter";
    finding.severity = gap > fault_times * harmless ? findings::Severity::fault : findings::Severity::caution;
    finding.span = joint.span;
    const bool dry = std::abs(opening.dry) >= std::abs(opening.damp);
    finding.message =
        fmt::format("the miter of {} and {}, {} long, wants to open {} at its {} corner by the {} "
                    "season",
                    one, other, size_text(std::round(opening.length), model), movement_text(gap, model),
                    (dry ? opening.dry : opening.damp) > 0 ? "outer" : "inner", dry ? "driest" : "dampest");
    finding.limit = limit_text(movement_text(harmless, model), "our own choice, no published source");
    const double quarter = when_quarter_sawn(model, contact, joint);
    finding.mend = quarter < 0.9 * gap ? fmt::format("quarter-saw it: {} instead of {}; or ",
                                                     movement_text(quarter, model), movement_text(gap, model))
                                       : "";
    finding.mend += fmt::format("make it {:.0f} percent as wide, or use a mortise and tenon instead",
                                std::floor(100 * harmless / gap));
    finding.parts = {one, other};
    finding.at = joint.at;
    // The two halves part square to the miter, where it opens: at its inner corner the figures change sides.
    const bool outer = (dry ? opening.dry : opening.damp) > 0;
    const double sign = outer ? 0.5 : -0.5;
    for (const measure::Vector way : {contact.plane.normal, -contact.plane.normal})
        finding.movements.push_back(season_movement(outer ? opening.outer : opening.inner, way,
                                                    sign * opening.dry, sign * opening.damp, model,
                                                    " on each half"));
    found.add(std::move(finding));
}

/// The largest glued contact of every miter.
std::map<int, const joinery::Contact*> miters_of(const joinery::Model& model) {
    std::map<int, const joinery::Contact*> largest;
    for (const joinery::Contact& contact : model.contacts) {
        if (contact.joint < 0 || contact.hold != joinery::Hold::glued) continue;
        if (!model.joints[static_cast<std::size_t>(contact.joint)].kind.starts_with("miter")) continue;
        const joinery::Contact*& at = largest[contact.joint];
        if (at == nullptr || contact.area > at->area) at = &contact;
    }
    return largest;
}

void search(const joinery::Model& model, findings::Findings& found) {
    for (const auto& [joint, contact] : miters_of(model))
        report(model, *contact, opening_of(model, *contact, model.joints[static_cast<std::size_t>(joint)]),
               found);
}

constexpr SourcedFigure figures[] = {
    {"movement of wood", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"harmless gap", "0.75 mm", "our own choice, no published source"},
};

} // namespace

std::vector<MiterOpening> miter_openings(const joinery::Model& model) {
    std::vector<MiterOpening> openings;
    for (const auto& [joint, contact] : miters_of(model)) {
        const Opening opening = opening_of(model, *contact, model.joints[static_cast<std::size_t>(joint)]);
        openings.push_back({joint, opening.dry, opening.damp});
    }
    return openings;
}

const Check opening_miter{
    .name = "opening-miter",
    .title = "A frame too wide for its miters",
    .what =
        "Glued miters: how far the change of angle of both parts would open them by the driest and by the "
        "dampest season, if nothing held them.",
    .why = "At the bench the miter is tight. In the first heated winter the wide parts have shrunk across "
           "and not along: the miter gapes at its inner corner and breaks its glue. After five winters the "
           "spline alone holds the frame, and the gap collects dust even in summer.",
    .severity = "caution above 0.75 mm, which the wood beside the glue can just give; fault above twice "
                "that, for no glue holds it shut",
    .mend = "Quarter-sawn wood, narrower parts, or a square joint instead of the miter.",
    .wrong = "a mirror frame of flat-sawn oak 120 wide, mitred",
    .right = "the same frame with its rails tenoned into the stiles",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
