// Tight opening: a door, a drawer, a lid or a tray that jams in its opening in the damp season.
//
// What moves is a group of parts that is loose or hangs on hardware alone. Lines are laid through it across
// its way out, from wood to wood: they tell the gap on either side as drawn, which parts of the group lie on
// the line and how long, and how wide the opening is. The group grows by the strain of each of its parts
// along the line; the opening keeps the distance that the stiffest part of the rest spanning it keeps. Gap
// less growth is what is left to run in. Left out: warp, paint, the slack of hinges, and sizes of an opening
// that a part of another group sets.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/core.h>

#include "checks/groups.hpp"
#include "checks/list.hpp"
#include "checks/season_table.hpp"
#include "checks/seasons.hpp"
#include "checks/wording.hpp"

namespace rayfleck::checks {
namespace {

/// Room to run in that a door or drawer wants at its tightest, both sides together, mm. Common practice, no
/// published source.
constexpr double room_to_run = 0.5;
/// Wood farther off than this is no side of the opening, mm.
constexpr double farthest_side = 15;

struct Fit {
    bool bounded = false;
    double gap = 0;           ///< both sides together, as drawn
    double dry = 0, damp = 0; ///< growth of the group against the opening
    double size = 0;          ///< of the group along the line
    int grows_most = -1;      ///< part of the group
    measure::Point at;        ///< in the tighter gap
    double left() const { return gap - damp; }
};

struct Stretch {
    double from = 0, to = 0;
    int part = 0;
    bool own = false;
};

std::vector<Stretch> stretches_on(const joinery::Model& model, const std::vector<measure::Box>& boxes,
                                  const Movable& group, measure::Point p, int axis) {
    std::vector<Stretch> found;
    measure::Vector way;
    way[axis] = 1;
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        const measure::Box& box = boxes[static_cast<std::size_t>(i)];
        bool beside = false;
        for (int k = 0; k < 3; ++k)
            beside = beside || (k != axis && (p[k] < box.low[k] || p[k] > box.high[k]));
        if (beside) continue;
        const joinery::Made& made = model.made[static_cast<std::size_t>(i)];
        const bool own = std::binary_search(group.parts.begin(), group.parts.end(), i);
        for (const auto& [enter, leave] :
             solid::inside_along(made.solid, made.part->frame.in(p), made.part->frame.turn_in(way)))
            found.push_back({p[axis] + enter, p[axis] + leave, i, own});
    }
    return found;
}

/// Strain of the opening: that of the part of the rest which spans it and moves least.
Mismatch opening_moves(const joinery::Model& model, const std::vector<measure::Box>& boxes,
                       const std::vector<Seasons>& seasons, const Movable& group, double from, double to,
                       int axis) {
    measure::Vector way;
    way[axis] = 1;
    Mismatch least;
    bool any = false;
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        const measure::Box& box = boxes[static_cast<std::size_t>(i)];
        if (std::binary_search(group.parts.begin(), group.parts.end(), i)) continue;
        if (box.low[axis] > from + 0.2 * (to - from) || box.high[axis] < to - 0.2 * (to - from)) continue;
        const Seasons& own = seasons[static_cast<std::size_t>(i)];
        const Mismatch moves{own.dry.along(way).in_ratio() * (to - from),
                             own.damp.along(way).in_ratio() * (to - from)};
        if (any && moves.range() >= least.range()) continue;
        any = true;
        least = moves;
    }
    return least;
}

Fit fit_on(const joinery::Model& model, const std::vector<measure::Box>& boxes,
           const std::vector<Seasons>& seasons, const Movable& group, measure::Point p, int axis) {
    const std::vector<Stretch> all = stretches_on(model, boxes, group, p, axis);
    double low = 1e300, high = -1e300;
    for (const Stretch& s : all)
        if (s.own) {
            low = std::min(low, s.from);
            high = std::max(high, s.to);
        }
    if (low > high) return {};
    double below = -1e300, above = 1e300;
    for (const Stretch& s : all) {
        if (s.own) continue;
        if (s.to <= low + 0.01) below = std::max(below, s.to);
        if (s.from >= high - 0.01) above = std::min(above, s.from);
        if (s.from < high - 0.01 && s.to > low + 0.01) return {}; // another part within it
    }
    Fit fit;
    if (low - below > farthest_side || above - high > farthest_side) return fit;
    fit.bounded = true;
    fit.gap = (low - below) + (above - high);
    fit.size = high - low;
    measure::Vector way;
    way[axis] = 1;
    double most = 0;
    for (const Stretch& s : all) {
        if (!s.own) continue;
        const Seasons& own = seasons[static_cast<std::size_t>(s.part)];
        const double damp = own.damp.along(way).in_ratio() * (s.to - s.from);
        fit.damp += damp;
        fit.dry += own.dry.along(way).in_ratio() * (s.to - s.from);
        if (std::abs(damp) <= most && fit.grows_most >= 0) continue;
        most = std::abs(damp);
        fit.grows_most = s.part;
    }
    const Mismatch opening = opening_moves(model, boxes, seasons, group, below, above, axis);
    fit.damp -= opening.damp;
    fit.dry -= opening.dry;
    fit.at = p;
    fit.at[axis] = above - high < low - below ? high : low;
    return fit;
}

/// The axis along which the group leaves its opening: that in which it is thin, else from the back to the
/// front.
int way_out(const measure::Box& box) {
    int thin = 0;
    for (int axis : {1, 2})
        if (box.high[axis] - box.low[axis] < box.high[thin] - box.low[thin]) thin = axis;
    const int one = (thin + 1) % 3, other = (thin + 2) % 3;
    const double least = std::min(box.high[one] - box.low[one], box.high[other] - box.low[other]);
    return box.high[thin] - box.low[thin] < least / 4 ? thin : 1;
}

/// The tightest fit of a group along every axis but its way out; unbounded where it has no opening.
std::array<Fit, 3> fits_of(const joinery::Model& model, const std::vector<measure::Box>& boxes,
                           const std::vector<Seasons>& seasons, const Movable& group) {
    const int out = way_out(group.box);
    std::array<Fit, 3> fits;
    for (int axis = 0; axis < 3; ++axis) {
        if (axis == out) continue;
        const int other = 3 - out - axis;
        Fit tightest;
        for (double side : {0.02, 0.5, 0.98})
            for (double depth : {0.07, 0.5}) {
                measure::Point p;
                p[other] = group.box.low[other] + side * (group.box.high[other] - group.box.low[other]);
                p[out] = group.box.low[out] + depth * (group.box.high[out] - group.box.low[out]);
                p[axis] = group.box.low[axis];
                const Fit fit = fit_on(model, boxes, seasons, group, p, axis);
                if (fit.bounded && (!tightest.bounded || fit.left() < tightest.left())) tightest = fit;
            }
        fits[static_cast<std::size_t>(axis)] = tightest;
    }
    return fits;
}

/// Gap to leave at making, both sides together, on a half millimetre.
double gap_for(const Fit& fit) { return std::ceil(2 * (fit.damp + room_to_run)) / 2; }

void look_at(const joinery::Model& model, const std::vector<measure::Box>& boxes,
             const std::vector<Seasons>& seasons, const Movable& group, findings::Findings& found) {
    const std::array<Fit, 3> fits = fits_of(model, boxes, seasons, group);
    for (int axis = 0; axis < 3; ++axis) {
        const Fit& tightest = fits[static_cast<std::size_t>(axis)];
        if (!tightest.bounded || tightest.damp <= 0.05 || tightest.left() >= room_to_run - 0.005) continue;
        const joinery::Made& made = model.made[static_cast<std::size_t>(tightest.grows_most)];
        constexpr std::array<std::string_view, 3> ways{"in width", "in depth", "in height"};
        findings::Finding finding;
        finding.name = "tight-opening";
        finding.severity = tightest.left() < 0 ? findings::Severity::fault : findings::Severity::caution;
        finding.span = made.part->span;
        finding.message = fmt::format(
            "{} grows {} {} by the dampest season and has {} of gap in its opening: {}", made.part->name,
            movement_text(tightest.damp, model), ways[static_cast<std::size_t>(axis)],
            movement_text(tightest.gap, model),
            tightest.left() < 0 ? "it jams" : movement_text(tightest.left(), model) + " is left to run in");
        finding.limit =
            fmt::format("{} to run in, common practice, no published source; movement by {}",
                        movement_text(room_to_run, model), wood::movement_source(*made.part->species));
        const double gap = gap_for(tightest);
        finding.mend =
            fmt::format("leave {} of gap in all, both sides together; by the driest season it is then "
                        "{}",
                        size_text(gap, model), movement_text(gap - tightest.dry, model));
        finding.parts = {made.part->name};
        finding.at = tightest.at;
        measure::Vector outwards;
        outwards[axis] = tightest.at[axis] > (group.box.low[axis] + group.box.high[axis]) / 2 ? 1 : -1;
        finding.movements.push_back(
            season_movement(tightest.at, outwards, tightest.dry, tightest.damp, model));
        finding.labels.push_back({made.part->grain_span, "grain of " + made.part->name + " is set here"});
        found.add(std::move(finding));
    }
}

/// What the names of a group's parts have in common: `door` of `door stile` and `door panel`; else the name
/// of the part that grows most.
std::string name_of(const joinery::Model& model, const Movable& group, int grows_most) {
    const auto base = [&](int part) -> const std::string& {
        return model.made[static_cast<std::size_t>(part)].part->base;
    };
    std::string common = base(group.parts.front());
    for (const int part : group.parts)
        while (!common.empty() && base(part) != common && !base(part).starts_with(common + " ")) {
            const std::size_t blank = common.rfind(' ');
            common.erase(blank == std::string::npos ? 0 : blank);
        }
    return common.empty() ? base(grows_most) : common;
}

/// Boxes and seasons of all parts, worked out once for all groups.
struct AllParts {
    explicit AllParts(const joinery::Model& model) {
        for (const joinery::Made& made : model.made) {
            boxes.push_back(box_in_piece(made));
            seasons.push_back(seasons_of(made, *model.piece));
        }
    }
    std::vector<measure::Box> boxes;
    std::vector<Seasons> seasons;
};

void search(const joinery::Model& model, findings::Findings& found) {
    const std::vector<Movable> movables = movables_of(model);
    if (movables.empty()) return;
    const AllParts all(model);
    for (const Movable& group : movables) look_at(model, all.boxes, all.seasons, group, found);
}

constexpr SourcedFigure figures[] = {
    {"movement of wood", "by wood and ring angle",
     "Wood Handbook 2010, Eq 13-2 and Table 13-5; Eq 13-3 where the table has none"},
    {"room to run in, both sides together", "0.5 mm", "common practice, no published source"},
};

} // namespace

std::vector<OpeningRoom> opening_rooms(const joinery::Model& model) {
    std::vector<OpeningRoom> rooms;
    const std::vector<Movable> movables = movables_of(model);
    if (movables.empty()) return rooms;
    const AllParts all(model);
    for (const Movable& group : movables) {
        const std::array<Fit, 3> fits = fits_of(model, all.boxes, all.seasons, group);
        for (int axis = 0; axis < 3; ++axis) {
            const Fit& fit = fits[static_cast<std::size_t>(axis)];
            if (fit.bounded && fit.grows_most >= 0 && fit.damp > 0.05)
                rooms.push_back({fit.grows_most, name_of(model, group, fit.grows_most), axis, fit.gap,
                                 fit.dry, fit.damp, gap_for(fit)});
        }
    }
    return rooms;
}

const Check tight_opening{
    .name = "tight-opening",
    .title = "A door, drawer or lid that jams in the damp season",
    .what =
        "Groups of parts that are loose or hang on hardware: their growth by the dampest season along lines "
        "across their way out, against the gap on both sides and the movement of the opening itself. Warp, "
        "paint and the slack of hinges are not seen.",
    .why = "At the bench in a dry winter the drawer runs like silk. In the first damp August it has to be "
           "pulled with a foot against the case. Whoever then planes it makes a gap for the winter after, "
           "and in five years it has been planed three times and fits in no season.",
    .severity = "fault when it jams, for then it is forced and something breaks; caution when less than 0.5 "
                "mm is left to run in, which a coat of paint or a little warp takes up",
    .mend =
        "Leave the gap that the message works out, for the moisture at which it is made; use quarter-sawn "
        "wood, or frame and panel.",
    .wrong = "a flat-sawn drawer front 250 high with 1 mm of gap",
    .right = "the same front quarter sawn, with the gap told",
    .figures = figures,
    .look = search,
};

} // namespace rayfleck::checks
