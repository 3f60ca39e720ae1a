// The sizes of a tenon: stated ones first, the rest from the trade's rules, each with where it comes from.
//
// The tenon's thickness is measured across B's grain where that can be told, so that its cheeks are long
// grain against long grain: a rail on edge divides its thickness, a rail laid flat its width. The haunch lies
// on the edge nearer to B's end; where B has a panel groove it fills it, else it is the haunch of a table
// rail.

#include "joinery/tenon.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joinery/end_section.hpp"
#include "wood/joinery_rules.hpp"

namespace rayfleck::joinery {
namespace {

namespace rules = wood::rules;

/// Longest stub tenon that anyone would cut without being asked.
const Length longest_stub = Length::mm(75);
/// A tenon on the flat is turned on edge only while the rail is no wider than this many times its thickness.
constexpr double flat_rail_at_most = 3.0;

constexpr const char* nearest_chisel = ", to the nearest chisel";

/// The width of chisel nearest to a share of the stock, the narrower of two as near; the share itself where
/// no chisel between `least` and half of the stock comes near it.
Length by_chisel(const Bench& bench, Length stock, const wood::Proportion& share, Length least) {
    const Length wanted = share.share_of(stock), most = rules::tenon_thickness_greatest.share_of(stock);
    std::vector<Length> chisels;
    if (bench.in_inches())
        for (const int n : rules::chisels_in_32nds) chisels.push_back(Length::in({n, 32}));
    else
        for (const int mm : rules::chisels_mm) chisels.push_back(Length::mm(mm));
    if (wanted > chisels.back()) return wanted;
    std::optional<Length> best;
    for (const Length chisel : chisels)
        if (chisel >= least && chisel <= most &&
            (!best || measure::abs(chisel - wanted) < measure::abs(*best - wanted)))
            best = chisel;
    return best.value_or(wanted);
}

struct Planner {
    Bench& bench;
    TenonPlan& plan;
    Options options;
    const piece::Part& a;
    const piece::Part& b;
    Box wood; ///< the meeting's window, less what A's curves and outline have taken of it

    int k() const { return plan.meeting.axis(); }
    double low(int axis) const { return wood.low[axis]; }
    double high(int axis) const { return wood.high[axis]; }
    /// Extent of the wood in the window, exact where it is the part's own size.
    Length extent(int axis) const {
        const double e = high(axis) - low(axis);
        return std::abs(e - size_of(a, axis)) < 1e-6 ? exact_size_of(a, axis) : Length::from_geometry(e);
    }
    /// Component of a direction of A along B's length.
    double along_b(int axis) const { return b.frame.turn_in(a.frame.turn_out(outward({axis, true}))).x; }
    /// From an edge of the window to B's end beyond it.
    double to_end_of_b(bool edge_high) const {
        const int w = plan.width_axis;
        Point p = (wood.low + wood.high) * 0.5;
        p[w] = edge_high ? high(w) : low(w);
        p[k()] = coordinate(a, plan.meeting.from, plan.meeting.gap);
        const double x = b.frame.in(a.frame.out(p)).x;
        const bool towards_high = (along_b(w) > 0) == edge_high;
        return towards_high ? size_of(b, 0) - x : x;
    }
    bool edges_lie_along_b() const { return std::abs(along_b(plan.width_axis)) > 0.9; }

    void choose_axes() {
        plan.thickness_axis = k() == 2 ? 1 : 2;
        plan.width_axis = 3 - k() - plan.thickness_axis;
        const double wide = size_of(a, plan.width_axis), thick = size_of(a, plan.thickness_axis);
        if (std::abs(along_b(plan.thickness_axis)) > 0.9 && wide <= flat_rail_at_most * thick)
            std::swap(plan.thickness_axis, plan.width_axis);
    }

    /// Depth of a groove that runs into A's end along one of its edges, 0 when there is none.
    double groove_on_edge(bool edge_high) const {
        const int w = plan.width_axis;
        const double level = edge_high ? size_of(a, w) : 0, near_end = coordinate(a, plan.meeting.from, -1);
        double deep = 0;
        const auto look = [&](const piece::Cut& cut) {
            const auto* box = std::get_if<piece::BoxCut>(&cut.shape);
            if (box == nullptr || cut.word.find("groove") == std::string::npos) return;
            const Box& g = box->box;
            if (g.low[k()] > near_end || g.high[k()] < near_end) return;
            if (g.low[w] > level + 1e-6 || g.high[w] < level - 1e-6) return;
            deep = std::max(deep, edge_high ? level - g.low[w] : g.high[w] - level);
        };
        for (const piece::Cut& cut : a.shaping) look(cut);
        for (const piece::Cut& cut : bench.cuts(plan.pair.a)) look(cut);
        return deep;
    }

    /// A groove of B in the face that A meets: its extent along A's thickness axis and its depth.
    struct GrooveOfB {
        double low, high, deep;
        double width() const { return high - low; }
    };
    std::optional<GrooveOfB> groove_of_b() const {
        if (!plan.meeting.aligned) return std::nullopt;
        const LocalSide onto = plan.meeting.onto;
        const double level = coordinate(b, onto, 0);
        const auto look = [&](const piece::Cut& cut) -> std::optional<GrooveOfB> {
            const auto* box = std::get_if<piece::BoxCut>(&cut.shape);
            if (box == nullptr || cut.word.find("groove") == std::string::npos) return std::nullopt;
            const Box& g = box->box;
            if (g.low[onto.axis] > level + 1e-6 || g.high[onto.axis] < level - 1e-6) return std::nullopt;
            const Point p = a.frame.in(b.frame.out(g.low)), q = a.frame.in(b.frame.out(g.high));
            const int t = plan.thickness_axis;
            const GrooveOfB found{std::min(p[t], q[t]), std::max(p[t], q[t]),
                                  onto.high ? level - g.low[onto.axis] : g.high[onto.axis] - level};
            if (found.high < low(t) || found.low > high(t)) return std::nullopt;
            return found;
        };
        for (const piece::Cut& cut : b.shaping)
            if (auto found = look(cut)) return found;
        for (const piece::Cut& cut : bench.cuts(plan.pair.b))
            if (auto found = look(cut)) return found;
        return std::nullopt;
    }

    bool plan_round() {
        plan.turned_blank = false;
        bool turned_here = false;
        for (const piece::Cut& cut : a.shaping)
            if (const auto* turned = std::get_if<piece::TurnedCut>(&cut.shape)) {
                if (turned->profile.size() < 2) continue;
                const bool from_low = turned->profile.front().x <= touching_within,
                           to_high = turned->profile.back().x >= size_of(a, 0) - touching_within;
                plan.turned_blank = from_low && to_high;
                turned_here = plan.meeting.from.high ? to_high : from_low;
            }
        const bool wanted = options.length("diameter").has_value();
        if (k() != 0 || (!turned_here && !wanted)) return false;
        Length of_end = std::min(exact_size_of(a, 1), exact_size_of(a, 2));
        if (turned_here)
            for (const piece::Cut& cut : a.shaping)
                if (const auto* turned = std::get_if<piece::TurnedCut>(&cut.shape))
                    of_end = Length::from_geometry(
                        2 *
                        (plan.meeting.from.high ? turned->profile.back() : turned->profile.front()).radius);
        plan.diameter = options.length("diameter").value_or(of_end * measure::Rational(2, 3));
        plan.thickness_from = wanted ? "stated" : from_custom("2/3 of the diameter of the end");
        plan.end_radius = turned_here ? of_end.value() / 2 : std::max(size_of(a, 1), size_of(a, 2)) / 2;
        const double r = plan.diameter->value() / 2;
        Box section;
        section.low = {0, size_of(a, 1) / 2 - r, size_of(a, 2) / 2 - r};
        section.high = {0, size_of(a, 1) / 2 + r, size_of(a, 2) / 2 + r};
        plan.sections = {section};
        plan.thickness = plan.width = *plan.diameter;
        return true;
    }

    void plan_thickness() {
        const Length stock = extent(plan.thickness_axis);
        if (const auto stated = options.length("thick")) {
            plan.thickness = *stated;
            plan.thickness_from = "stated";
        } else if (const auto groove = groove_of_b(); groove && suits(groove->width(), stock)) {
            plan.thickness = Length::from_geometry(groove->width());
            plan.thickness_from = "as wide as the groove; W. Noyes, Handwork in Wood, 1910, ch. VII";
        } else if (is_flat_twin()) {
            plan.thickness = by_chisel(bench, stock, rules::flat_twin_tenon, Length());
            plan.thickness_from = from_rule(rules::flat_twin_tenon) + nearest_chisel;
        } else {
            plan.thickness =
                by_chisel(bench, stock, rules::tenon_thickness, rules::tenon_thickness_least.share_of(stock));
            plan.thickness_from = from_rule(rules::tenon_thickness) + nearest_chisel;
        }
    }

    static bool suits(double thick, Length stock) {
        return thick >= rules::tenon_thickness_least.share_of(stock).value() - 1e-6 &&
               thick <= rules::tenon_thickness_greatest.share_of(stock).value() + 1e-6;
    }

    /// Twin tenons of a rail that lies flat stand side by side across its width, not one above the other.
    bool is_flat_twin() const { return options.has("twin") && plan.thickness_axis == 1; }

    /// Lower border of the tenon across its thickness.
    double thickness_from() const {
        const int t = plan.thickness_axis;
        const double thick = plan.thickness.value();
        if (const piece::OptionGiven* set = options.find("set");
            set != nullptr && set->side && !set->lengths.empty()) {
            const Vector own = a.frame.turn_in(bench.towards(*set->side, plan.pair.a));
            if (std::abs(own[t]) > 0.7) {
                const double d = set->lengths.front().value();
                return own[t] > 0 ? size_of(a, t) - d - thick : d;
            }
        }
        if (const piece::OptionGiven* bare = options.find("bare-faced")) {
            bool on_high = false;
            if (bare->side) on_high = a.frame.turn_in(bench.towards(*bare->side, plan.pair.a))[t] > 0;
            return on_high ? high(t) - thick : low(t);
        }
        if (const auto groove = groove_of_b(); groove && !options.has("thick"))
            if (std::abs((groove->high - groove->low) - thick) < 1.0)
                return (groove->low + groove->high - thick) / 2;
        return (low(t) + high(t) - thick) / 2;
    }

    struct Edges {
        Length at_low, at_high;
        std::string from;
    };

    /// What the shoulders take at both edges, before any haunch.
    Edges shoulders() const {
        const int w = plan.width_axis;
        Edges edges;
        const Length across = extent(w);
        if (const auto stated = options.length("shoulder")) return {*stated, *stated, "stated"};
        const Length usual = std::min(bench.either(Length::mm(6), Length::in({1, 4})), across / 6);
        const Length at_end = std::min(wood::length(rules::table_rail_haunch_least), across / 3);
        edges.at_low = edges.at_high = usual;
        edges.from = from_custom("shoulders of 6 mm or 1/4 in, at most 1/6 of the width");
        if (edges_lie_along_b())
            for (const bool up : {false, true})
                if (to_end_of_b(up) < at_end.value()) {
                    (up ? edges.at_high : edges.at_low) = at_end;
                    edges.from = from_rule(rules::table_rail_haunch_least) +
                                 " kept from the end of the mortised piece";
                }
        for (const bool up : {false, true}) {
            const Length groove = Length::from_geometry(groove_on_edge(up));
            Length& edge = up ? edges.at_high : edges.at_low;
            if (groove.value() > 0) edge = edge == usual ? groove : std::max(groove, edge);
        }
        return edges;
    }

    void plan_haunch(Edges& edges) {
        const int w = plan.width_axis, t = plan.thickness_axis;
        const piece::OptionGiven* wanted = options.find("haunched");
        bool up = to_end_of_b(true) <= to_end_of_b(false);
        if (wanted->side) up = a.frame.turn_in(bench.towards(*wanted->side, plan.pair.a))[w] > 0;
        TenonPlan::Haunch haunch;
        const Length across = extent(w), groove_here = Length::from_geometry(groove_on_edge(!up));
        const auto groove = groove_of_b();
        if (!wanted->lengths.empty()) {
            haunch.width = wanted->lengths.front();
            haunch.width_from = "stated";
        } else if (groove || groove_here.value() > 0) {
            haunch.width =
                across - groove_here - rules::tenon_width_beside_haunch.share_of(across - groove_here);
            haunch.width_from = from_rule(rules::tenon_width_beside_haunch);
        } else {
            haunch.width = std::min(wood::length(rules::table_rail_haunch_least), across / 3);
            haunch.width_from = from_rule(rules::table_rail_haunch_least);
        }
        haunch.length = groove ? Length::from_geometry(groove->deep)
                               : std::min(wood::length(rules::haunch_length), plan.projects / 2);
        haunch.length_from = groove ? "fills the groove; W. Noyes, Handwork in Wood, 1910, ch. VII"
                                    : from_rule(rules::haunch_length);
        (up ? edges.at_high : edges.at_low) = haunch.width;
        haunch.section = wood;
        haunch.section.low[t] = thickness_from();
        haunch.section.high[t] = haunch.section.low[t] + plan.thickness.value();
        if (up)
            haunch.section.low[w] = high(w) - haunch.width.value();
        else
            haunch.section.high[w] = low(w) + haunch.width.value();
        plan.haunch = haunch;
    }

    void plan_length() {
        const auto stated = options.length("long");
        const Length deep = Length::from_geometry(plan.meeting.deep);
        plan.through = options.has("through") || options.has("wedged");
        if (plan.through) {
            plan.projects = deep;
            plan.length_from = "through the mortised piece";
        } else if (stated) {
            plan.projects = *stated;
            plan.length_from = "stated";
            plan.length_stated = true;
        } else if (plan.meeting.gap < -touching_within) {
            plan.projects = Length::from_geometry(-plan.meeting.gap);
            plan.length_from = "as far as the part reaches in as placed";
            plan.length_stated = true;
        } else {
            plan.projects = std::min(rules::stub_mortise_depth.share_of(deep), longest_stub);
            plan.length_from = plan.projects == longest_stub ? from_custom("at most 75 mm")
                                                             : from_rule(rules::stub_mortise_depth);
        }
    }

    bool is_narrowed(int axis) const {
        return low(axis) > plan.meeting.window.low[axis] || high(axis) < plan.meeting.window.high[axis];
    }
    /// Within the body, and within what shaping has left of it.
    bool lies_in_wood(const Box& section, int axis) const {
        constexpr double slack = 1e-6;
        const double least = low(axis) > plan.meeting.window.low[axis] ? low(axis) : 0,
                     most = high(axis) < plan.meeting.window.high[axis] ? high(axis) : size_of(a, axis);
        return section.low[axis] >= least - slack && section.high[axis] <= most + slack;
    }

    bool plan_square() {
        const int w = plan.width_axis, t = plan.thickness_axis;
        plan_thickness();
        Edges edges = shoulders();
        plan.width_from = edges.from;
        if (options.has("haunched")) {
            plan_haunch(edges);
            plan.width_from = "what the haunch and the shoulder leave";
        }
        plan.width = extent(w) - edges.at_low - edges.at_high;
        double from = low(w) + edges.at_low.value();
        if (const auto stated = options.length("wide")) {
            // Stated width: keeps the haunch's side, else sits in the middle of what the shoulders leave.
            const double rest = plan.width.value() - stated->value();
            if (plan.haunch)
                from += plan.haunch->section.low[w] <= low(w) + 1e-9 ? 0 : rest;
            else
                from += rest / 2;
            plan.width = *stated;
            plan.width_from = "stated";
        }
        if (const piece::OptionGiven* set = options.find("set");
            set != nullptr && set->side && !set->lengths.empty()) {
            const Vector own = a.frame.turn_in(bench.towards(*set->side, plan.pair.a));
            const double d = set->lengths.front().value();
            if (std::abs(own[w]) > 0.7) from = own[w] > 0 ? size_of(a, w) - d - plan.width.value() : d;
        }
        if (!(plan.width.value() > 1.0) || !(plan.thickness.value() > 0.5)) {
            bench.refuse(plan.pair, "tenon-has-no-room",
                         fmt::format("no wood is left for a tenon between the shoulders: {} has {} there",
                                     a.name, measure::text_with_unit(extent(w), bench.piece().manner)),
                         "make the shoulders or the haunch smaller, or the rail wider");
            return false;
        }
        Box section = wood;
        section.low[w] = from;
        section.high[w] = from + plan.width.value();
        section.low[t] = thickness_from();
        section.high[t] = section.low[t] + plan.thickness.value();
        if (!lies_in_wood(section, t) || !lies_in_wood(section, w)) {
            const std::string left =
                is_narrowed(w) ? fmt::format(", of which {} are left at the shoulder",
                                             measure::text_with_unit(extent(w), bench.piece().manner))
                               : "";
            bench.refuse(plan.pair, "tenon-has-no-room",
                         fmt::format("the tenon, {} x {}, does not lie within {}{}",
                                     measure::text(plan.thickness, bench.piece().manner),
                                     measure::text_with_unit(plan.width, bench.piece().manner), a.name, left),
                         "make the tenon smaller or set it elsewhere");
            return false;
        }
        plan.sections = {section};
        if (options.has("twin")) {
            if (is_flat_twin()) return plan_flat_twins(section);
            // Two tenons with a gap of a third of the room between them.
            const double third = plan.width.value() / 3;
            Box first = section, second = section;
            first.high[w] = section.low[w] + third;
            second.low[w] = section.high[w] - third;
            plan.sections = {first, second};
            plan.width = plan.width / 3;
            plan.width_from = from_custom("twin tenons: a third each, a third between them");
        }
        return true;
    }

    /// Two tenons as far from each other as from the edges of the rail.
    bool plan_flat_twins(const Box& one) {
        const int t = plan.thickness_axis;
        const double thick = plan.thickness.value(), room = (high(t) - low(t) - 2 * thick) / 3;
        if (room < thick / 2) {
            bench.refuse(plan.pair, "tenon-has-no-room",
                         fmt::format("two tenons of {} do not find room side by side in {}",
                                     measure::text_with_unit(plan.thickness, bench.piece().manner), a.name),
                         "make the tenons thinner, or the rail wider, or leave out `twin`");
            return false;
        }
        Box first = one, second = one;
        first.low[t] = low(t) + room;
        first.high[t] = first.low[t] + thick;
        second.high[t] = high(t) - room;
        second.low[t] = second.high[t] - thick;
        plan.sections = {first, second};
        return true;
    }
};

} // namespace

std::optional<TenonPlan> plan_tenon(Bench& bench, const Pair& pair) {
    const piece::Part &a = bench.part(pair.a), &b = bench.part(pair.b);
    const auto meeting = meeting_for(bench, pair, Prefer::ends);
    if (!meeting) return std::nullopt;
    TenonPlan plan;
    plan.pair = pair;
    plan.meeting = *meeting;
    Planner planner{bench, plan, Options(*pair.wanted), a, b, wood_in_window(bench, pair.a, *meeting)};
    planner.choose_axes();
    planner.plan_length();
    plan.loose = planner.options.has("loose");
    if (!planner.plan_round() && !planner.plan_square()) return std::nullopt;
    if (!(plan.projects.value() > 0)) return std::nullopt;
    return plan;
}

} // namespace rayfleck::joinery
