// First angle puts the plan below the front and the view from the left at its right; third angle puts the
// plan above and the view from the right at its right.
//
// Dimensions: the overall size outermost, once for each direction (across below the front, deep below the
// side view, up at the left of the front); inside it the rod, from line to line as far as parts reach the
// lines; inside that what is still needed to place every part (piece_places.hpp). The latter stand at the
// view that shows both ends best, on the side to which their extension lines are shortest, short ones inside
// longer ones. A chain whose rounded links do not add up to its rounded whole has the link with the greatest
// rounding in parentheses.

#include "drawing/principal_views.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include <fmt/format.h>

#include "drawing/centre_lines.hpp"
#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/piece_places.hpp"
#include "drawing/view_angles.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Length;

/// A view on its way to the sheet: its wood's lower left corner lies at 0, 0 of its block.
struct Standing {
    const PieceView* view = nullptr;
    Block block;
    double width = 0, height = 0; ///< of its wood on paper
    std::map<ViewSide, std::vector<PlaceLink>> links;
    std::vector<Segment2> centres; ///< in the picture
};

bool is_level(ViewSide side) { return side == ViewSide::below || side == ViewSide::above; }

/// Where the wood ends under a place of a string: the outermost end of a line there, be it an edge or a
/// centre line, else the outline.
double wood_at(const Standing& s, double at, bool level, bool low_side) {
    const Seen& seen = s.view->seen;
    const double outline =
        level ? (low_side ? seen.box.bottom : seen.box.top) : (low_side ? seen.box.left : seen.box.right);
    double found = outline;
    bool any = false;
    for (const auto* lines : {&seen.visible, &seen.hidden, &s.centres})
        for (const Segment2& line : *lines)
            for (const Point2 p : {line.a, line.b}) {
                if (std::abs((level ? p.x : p.y) - at) > 0.05) continue;
                const double across = level ? p.y : p.x;
                found = !any ? across : low_side ? std::min(found, across) : std::max(found, across);
                any = true;
            }
    return found;
}

/// A link as it stands at one side of a view.
Measure measure_of(const Standing& s, ViewSide side, char axis, const PlaceLink& link,
                   const std::string& figure, double scale) {
    const PieceView& v = *s.view;
    const bool level = is_level(side), low_side = side == ViewSide::below || side == ViewSide::left;
    const double sign = level ? v.right_sign : v.up_sign;
    double from = sign * link.from, to = sign * link.to;
    if (from > to) std::swap(from, to);
    const Rect& box = v.seen.box;
    const double low = level ? box.left : box.bottom, low_across = level ? box.bottom : box.left;
    Measure m;
    m.from = scale * (from - low);
    m.to = scale * (to - low);
    m.start_from = scale * (wood_at(s, from, level, low_side) - low_across);
    m.start_to = scale * (wood_at(s, to, level, low_side) - low_across);
    m.figure = figure;
    m.record = {"", axis, link.from, link.to, figure, false};
    return m;
}

std::string figure_of(const Job& job, const PlaceLink& link) {
    if (link.times == 1) return job.figure(link.length);
    const Length pitch = link.length / measure::Rational(link.times);
    const bool adds_up = measure::rounded(pitch, job.manner) * measure::Rational(link.times) ==
                         measure::rounded(link.length, job.manner);
    return fmt::format("{}× {} = {}", link.times, adds_up ? job.figure(pitch) : "(" + job.figure(pitch) + ")",
                       job.figure(link.length));
}

/// Which links of a chain stand in parentheses so that the others add up.
std::vector<bool> derived_links(const Job& job, const std::vector<PlaceLink>& chain) {
    std::vector<bool> derived(chain.size(), false);
    Length sum, rounded_sum;
    std::size_t worst = 0;
    Length most;
    for (std::size_t i = 0; i < chain.size(); ++i) {
        const Length rounded = measure::rounded(chain[i].length, job.manner);
        sum += chain[i].length, rounded_sum += rounded;
        if (measure::abs(rounded - chain[i].length) > most)
            most = measure::abs(rounded - chain[i].length), worst = i;
    }
    if (!chain.empty() && rounded_sum != measure::rounded(sum, job.manner)) derived[worst] = true;
    return derived;
}

/// Strings in which no link lies over another, shorter ones in earlier strings.
std::vector<std::vector<PlaceLink>> stacked(std::vector<PlaceLink> links) {
    std::stable_sort(links.begin(), links.end(), [](const PlaceLink& a, const PlaceLink& b) {
        return std::pair(a.length, a.from) < std::pair(b.length, b.from);
    });
    std::vector<std::vector<PlaceLink>> strings;
    for (const PlaceLink& link : links) {
        std::size_t level = 0;
        for (std::size_t s = 0; s < strings.size(); ++s)
            for (const PlaceLink& other : strings[s])
                if (other.from < link.to - 0.01 && other.to > link.from + 0.01) level = s + 1;
        if (level == strings.size()) strings.emplace_back();
        strings[level].push_back(link);
    }
    return strings;
}

struct Option {
    std::size_t view;
    ViewSide side;
};

/// Sides at which lengths along an axis may stand; the first takes rod and overall size.
std::vector<Option> options_for(int axis, bool first_angle, bool tight) {
    if (axis == 0 && tight) return {{0, ViewSide::below}};
    if (axis == 0) {
        if (first_angle) return {{0, ViewSide::below}, {1, ViewSide::below}, {0, ViewSide::above}};
        return {{0, ViewSide::below}, {1, ViewSide::above}};
    }
    if (axis == 1) return {{2, ViewSide::below}, {1, ViewSide::right}, {1, ViewSide::left}};
    return {{0, ViewSide::left}, {2, ViewSide::right}};
}

/// How well a side shows a link. The less the better.
double unfitness(const Principal& seen, const std::vector<Standing>& views, const Option& option, int axis,
                 const PlaceLink& link, double scale) {
    const Standing& s = views[option.view];
    const bool level = is_level(option.side),
               low_side = option.side == ViewSide::below || option.side == ViewSide::left;
    const double sign = level ? s.view->right_sign : s.view->up_sign;
    double sum = 0;
    for (const auto& [at, part] : {std::pair{link.from, link.from_part}, {link.to, link.to_part}}) {
        const int shown =
            part < 0 ? 2 : s.view->edge_at(axis, at, seen.whole.boxes[static_cast<std::size_t>(part)]);
        sum += shown == 2 ? 0 : shown == 1 ? 10 : 40;
        const Rect& box = s.view->seen.box;
        const double outline = level ? (low_side ? box.bottom : box.top) : (low_side ? box.left : box.right);
        sum += 0.1 * scale * std::abs(wood_at(s, sign * at, level, low_side) - outline);
    }
    // Another link in the same stretch pushes outwards.
    if (const auto found = s.links.find(option.side); found != s.links.end())
        for (const PlaceLink& other : found->second)
            if (other.kind == PlaceLink::Kind::place && other.from < link.to - 0.01 &&
                other.to > link.from + 0.01)
                sum += 4;
    return sum;
}

void draw_side(Standing& s, const Job& job, ViewSide side, const std::vector<PlaceLink>& links, int axis,
               double scale) {
    std::vector<PlaceLink> inner, rod, outer, overall;
    for (const PlaceLink& link : links)
        if (link.kind == PlaceLink::Kind::overall)
            overall.push_back(link);
        else if (link.kind == PlaceLink::Kind::rod)
            rod.push_back(link);
    for (const PlaceLink& link : links) {
        if (link.kind == PlaceLink::Kind::overall || link.kind == PlaceLink::Kind::rod) continue;
        // What reaches over a whole link of the rod stands outside it.
        const bool over = std::any_of(rod.begin(), rod.end(), [&](const PlaceLink& r) {
            return r.from > link.from - 0.01 && r.to < link.to + 0.01;
        });
        (over ? outer : inner).push_back(link);
    }
    const char name = "XYZ"[axis];
    std::vector<MeasureString> strings;
    const auto add_stacked = [&](const std::vector<PlaceLink>& some) {
        for (const auto& string : stacked(some)) {
            strings.emplace_back();
            for (const PlaceLink& link : string)
                strings.back().push_back(measure_of(s, side, name, link, figure_of(job, link), scale));
        }
    };
    add_stacked(inner);
    const std::vector<bool> derived = derived_links(job, rod);
    strings.emplace_back();
    for (std::size_t i = 0; i < rod.size(); ++i) {
        const std::string figure = figure_of(job, rod[i]);
        strings.back().push_back(
            measure_of(s, side, name, rod[i], derived[i] ? "(" + figure + ")" : figure, scale));
        strings.back().back().record.auxiliary = derived[i];
    }
    add_stacked(outer);
    strings.emplace_back();
    for (const PlaceLink& link : overall)
        strings.back().push_back(measure_of(s, side, name, link, figure_of(job, link), scale));
    const double outline = side == ViewSide::above ? s.height : side == ViewSide::right ? s.width : 0;
    draw_dimensions(s.block, side, outline, strings, job.figure_height());
}

void caption(Standing& s) {
    const std::string words =
        s.view->name == "front" || s.view->name == "plan" ? s.view->name : "view " + s.view->name;
    // Just above the wood, or above what stands there.
    Text text{{0, s.height + 2.5}, words, note_height, Typeface::lettering, Ink::black, 0};
    constexpr double clear = 1;
    if (!s.block.occupied().free_for_text(text_box(text), clear)) text.at.y = s.block.box().top + 2;
    s.block.text(text);
}

std::string references(const Job& job, const std::vector<int>& rows) {
    std::string list;
    for (std::size_t i = 0; i < rows.size(); ++i)
        list += (i == 0                 ? ""
                 : i + 1 == rows.size() ? " and "
                                        : ", ") +
                std::to_string(job.cut_list.rows[static_cast<std::size_t>(rows[i])].reference);
    return list;
}

Rect moved(const Rect& r, Point2 by) {
    return {r.left + by.x, r.bottom + by.y, r.right + by.x, r.top + by.y};
}

} // namespace

PrincipalViews principal_views(const Job& job, const Principal& seen, double scale, bool tight) {
    std::vector<Standing> views;
    for (const PieceView* v : seen.views()) {
        views.push_back({v, {}, v->seen.box.width() * scale, v->seen.box.height() * scale, {}, {}});
        Standing& s = views.back();
        draw_seen(s.block, v->seen, scale, {0, 0});
        s.block.record(ViewRecord{v->name,
                                  v->right,
                                  v->up,
                                  v->right_sign,
                                  v->up_sign,
                                  {-scale * v->seen.box.left, -scale * v->seen.box.bottom},
                                  scale,
                                  {0, 0},
                                  {s.width, s.height}});
    }

    PrincipalViews out;
    std::vector<int> by_joints;
    const std::vector<AxisPlaces> axes = places_to_measure(job, seen, scale);
    for (Standing& s : views) {
        s.centres = centre_lines(job, seen, *s.view, axes, scale);
        draw_centre_lines(s.block, *s.view, s.centres, scale);
    }
    for (int axis = 0; axis < 3; ++axis) {
        const AxisPlaces& places = axes[static_cast<std::size_t>(axis)];
        const std::vector<Option> options = options_for(axis, job.first_angle, tight);
        for (const PlaceLink& link : places.links) {
            const Option* best = &options.front();
            if (link.kind == PlaceLink::Kind::place || link.kind == PlaceLink::Kind::row) {
                double least = std::numeric_limits<double>::infinity();
                for (const Option& option : options) {
                    const double sum = unfitness(seen, views, option, axis, link, scale);
                    if (sum < least - 1e-9) least = sum, best = &option;
                }
            }
            views[best->view].links[best->side].push_back(link);
        }
        by_joints.insert(by_joints.end(), places.by_joints.begin(), places.by_joints.end());
    }
    for (Standing& s : views) {
        for (const auto& [side, links] : s.links)
            draw_side(s, job, side, links, is_level(side) ? s.view->right : s.view->up, scale);
        draw_angles(s.block, job, *s.view, scale);
        caption(s);
    }

    // Between the wood of two views, and between what stands round them.
    const double between = tight ? 10 : 12, apart = tight ? 3 : 5;
    const Standing &front = views[0], &plan = views[1], &side = views[2];
    const Point2 side_at{
        std::max(front.width + between, front.block.box().right + apart - side.block.box().left), 0};
    const double plan_at =
        job.first_angle
            ? std::min(-between, front.block.box().bottom - apart - plan.block.box().top + plan.height) -
                  plan.height
            : std::max(front.height + between, front.block.box().top + apart - plan.block.box().bottom);
    const std::pair<const Standing*, Point2> standing[] = {
        {&front, {0, 0}}, {&side, side_at}, {&plan, {0, plan_at}}};
    for (const auto& [s, at] : standing) {
        out.block.add(s->block, at);
        out.areas.push_back(moved(s->block.box(), at));
    }

    std::sort(by_joints.begin(), by_joints.end());
    by_joints.erase(std::unique(by_joints.begin(), by_joints.end()), by_joints.end());
    if (!by_joints.empty())
        out.notes.push_back(fmt::format("Parts {} end out of sight in joints: their places are told in the "
                                        "part drawings.",
                                        references(job, by_joints)));
    return out;
}

} // namespace rayfleck::drawing
