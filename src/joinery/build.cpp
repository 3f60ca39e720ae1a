// Lowering: pair the copies that meet, lay out their joints kind by kind, carve, and see where parts touch.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "joinery/contacts.hpp"
#include "joinery/kinds.hpp"
#include "joinery/shaping.hpp"
#include "joinery/waste.hpp"

namespace rayfleck::joinery {
namespace {

std::string direction_in_words(Vector d) {
    int axis = 0;
    for (int i = 1; i < 3; ++i)
        if (std::abs(d[i]) > std::abs(d[axis])) axis = i;
    constexpr const char* words[3][2] = {{"left", "right"}, {"front", "back"}, {"bottom", "top"}};
    return words[axis][d[axis] > 0];
}

/// All pairs of a statement that meet.
std::vector<Pair> pairs_of(const Bench& bench, const piece::JointWanted& wanted, int index,
                           const Kind& kind) {
    std::vector<Pair> pairs;
    for (const int a : wanted.a) {
        bool met = false;
        // Copies of one part joined among themselves (boards of a floor) meet twice, once from either side:
        // the first is the joint, or one edge would get both a tongue and a groove.
        const auto joined_already = [&](int b) {
            return std::any_of(pairs.begin(), pairs.end(),
                               [&](const Pair& p) { return p.a == b && p.b == a; });
        };
        const auto pair_with_all = [&](bool corners_count) {
            for (const int b : wanted.b) {
                if (a == b || !do_meet(bench.part(a), bench.part(b), corners_count)) continue;
                met = true;
                if (!joined_already(b)) pairs.push_back({a, b, &wanted, index});
            }
        };
        pair_with_all(false);
        // Bodies that both stop at the inner corner share a line only, which a miter or a dovetail makes
        // good.
        if (!met && kind.corners_count) pair_with_all(true);
    }
    return pairs;
}

/// Tells the maker how far off a copy of A is that meets no copy of B.
///
/// The middle copies of a row may be held by another joint than its ends. So a copy that some other joint
/// holds may miss, if another copy meets; unless it misses by less than its own least size: then it was meant
/// to meet, for between it and what it is joined to there is no room for another copy.
void report_misses(Bench& bench, const piece::JointWanted& wanted, int index, const std::vector<Pair>& pairs,
                   const std::vector<bool>& held) {
    for (const int a : wanted.a) {
        if (std::any_of(pairs.begin(), pairs.end(),
                        [&](const Pair& pair) { return pair.a == a || pair.b == a; }))
            continue;
        const piece::Part& part = bench.part(a);
        const piece::Part* nearest = nullptr;
        Apart least;
        for (const int b : wanted.b) {
            if (a == b) continue;
            const Apart here = apart(part, bench.part(b));
            if (nearest != nullptr && here.gap >= least.gap) continue;
            nearest = &bench.part(b);
            least = here;
        }
        if (nearest == nullptr) continue;
        const double gap = std::max(0.0, least.gap);
        const double own = std::min({size_of(part, 0), size_of(part, 1), size_of(part, 2)});
        if (!pairs.empty() && held[static_cast<std::size_t>(a)] && gap >= own - touching_within) continue;
        const std::string message =
            gap > touching_within
                ? fmt::format("{} does not reach {}: {} are missing towards the {}", part.name, nearest->name,
                              measure::text_with_unit(Length::from_geometry(gap), bench.piece().manner),
                              direction_in_words(least.direction))
                : fmt::format("{} touches {} along a line only, so there is nothing to joint", part.name,
                              nearest->name);
        findings::Finding& finding = bench.refuse(
            {a, nearest->id, &wanted, index}, "joint-does-not-meet", message,
            fmt::format("let {} run to {}, or take it out of this joint", part.name, nearest->name));
        finding.at = part.frame.out({size_of(part, 0) / 2, size_of(part, 1) / 2, size_of(part, 2) / 2});
    }
}

/// Sizes that leave the range of exact lengths (a part leaning almost along a face) end the joints of this
/// kind.
void lay_out_kind(Bench& bench, const Kind& kind, const std::vector<Pair>& pairs) {
    try {
        kind.lay_out(bench, pairs);
    } catch (const std::overflow_error& wrong) {
        bench.refuse(pairs.front(), "joint-out-of-measure",
                     fmt::format("the {} of {} and {} comes out of all measure: {}", kind.name,
                                 bench.part(pairs.front().a).name, bench.part(pairs.front().b).name,
                                 wrong.what()),
                     "look at how the two parts lie to each other");
    }
}

void lay_out_joints(Bench& bench, findings::Findings& findings) {
    const piece::Piece& piece = bench.piece();
    std::vector<std::vector<Pair>> by_kind(all_kinds().size()), by_joint(piece.joints.size());
    std::vector<bool> held(piece.parts.size());
    for (std::size_t w = 0; w < piece.joints.size(); ++w) {
        const piece::JointWanted& wanted = piece.joints[w];
        const Kind* kind = find_kind(wanted.kind);
        if (kind == nullptr) {
            std::vector<std::string> known;
            for (const Kind& k : all_kinds()) known.emplace_back(k.name);
            auto& finding = findings.error("joint-kind-unknown", wanted.span,
                                           fmt::format("there is no joint called {}", wanted.kind));
            if (const auto near = findings::near_word(wanted.kind, known))
                finding.mend = fmt::format("did you mean {}", *near);
            continue;
        }
        by_joint[w] = pairs_of(bench, wanted, static_cast<int>(w), *kind);
        auto& all = by_kind[static_cast<std::size_t>(kind - all_kinds().data())];
        all.insert(all.end(), by_joint[w].begin(), by_joint[w].end());
        for (const Pair& pair : by_joint[w])
            held[static_cast<std::size_t>(pair.a)] = held[static_cast<std::size_t>(pair.b)] = true;
    }
    for (std::size_t w = 0; w < piece.joints.size(); ++w)
        if (find_kind(piece.joints[w].kind) != nullptr)
            report_misses(bench, piece.joints[w], static_cast<int>(w), by_joint[w], held);
    for (std::size_t k = 0; k < by_kind.size(); ++k)
        if (!by_kind[k].empty()) lay_out_kind(bench, all_kinds()[k], by_kind[k]);
}

/// Joints in the order of the text, not of the kinds.
void order_joints(Bench& bench, Model& model, std::vector<HoldRule>& rules) {
    std::vector<int> order(model.joints.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
    std::stable_sort(order.begin(), order.end(), [&](int p, int q) {
        const Joint &a = model.joints[static_cast<std::size_t>(p)],
                    &b = model.joints[static_cast<std::size_t>(q)];
        return a.wanted < b.wanted;
    });
    std::vector<int> place(order.size());
    std::vector<Joint> sorted;
    for (std::size_t i = 0; i < order.size(); ++i) {
        place[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
        sorted.push_back(std::move(model.joints[static_cast<std::size_t>(order[i])]));
    }
    model.joints = std::move(sorted);
    for (HoldRule& rule : rules) rule.joint = place[static_cast<std::size_t>(rule.joint)];
    for (const piece::Part& part : bench.piece().parts) {
        for (piece::Cut& cut : bench.cuts(part.id))
            if (cut.joint >= 0) cut.joint = place[static_cast<std::size_t>(cut.joint)];
        std::stable_sort(bench.cuts(part.id).begin(), bench.cuts(part.id).end(),
                         [](const piece::Cut& p, const piece::Cut& q) { return p.joint < q.joint; });
    }
}

bool same_shape(const solid::Shape& a, const solid::Shape& b) {
    const auto same_corner = [](const solid::Shape::Corner& p, const solid::Shape::Corner& q) {
        return p.at == q.at && p.may_snap == q.may_snap;
    };
    if (a.facets().size() != b.facets().size() || a.edges() != b.edges()) return false;
    for (std::size_t f = 0; f < a.facets().size(); ++f) {
        const auto one = a.sides(a.facets()[f]), other = b.sides(b.facets()[f]);
        if (!std::equal(one.begin(), one.end(), other.begin(), other.end()) ||
            a.facets()[f].curve != b.facets()[f].curve)
            return false;
    }
    return std::equal(a.corners().begin(), a.corners().end(), b.corners().begin(), b.corners().end(),
                      same_corner);
}

/// A part made before from the same blank by the same cuts; its solid need not be carved again.
const Made* twin_of(const Made& made, const std::vector<Made>& before) {
    for (const Made& other : before)
        if (other.part->base == made.part->base && other.solid.bodies > 0 &&
            other.tools.size() == made.tools.size() && same_shape(other.blank_shape, made.blank_shape) &&
            std::equal(other.tools.begin(), other.tools.end(), made.tools.begin(), same_shape))
            return &other;
    return nullptr;
}

Made make(const Bench& bench, const piece::Part& part, const std::vector<Made>& before,
          findings::Findings& findings) {
    Made made;
    made.part = &part;
    made.blank = blank_of(bench, part.id);
    Length sizes[3];
    for (int axis = 0; axis < 3; ++axis)
        sizes[axis] = exact_size_of(part, axis) + bench.grown(part.id, {axis, false}) +
                      bench.grown(part.id, {axis, true});
    made.length = sizes[0];
    made.width = sizes[1];
    made.thickness = sizes[2];
    made.cuts = part.shaping;
    made.cuts.insert(made.cuts.end(), bench.cuts(part.id).begin(), bench.cuts(part.id).end());
    const auto report = [&](const std::string& name, const std::string& message, const std::string& mend) {
        findings::Finding& finding = findings.error(name, part.span, message);
        finding.mend = mend;
        finding.parts = {part.name};
    };
    try {
        made.blank_shape = blank_shape(bench, part.id);
        for (std::size_t c = 0; c < made.cuts.size(); ++c)
            for (solid::Shape& tool :
                 tools_of(bench, part.id, c < part.shaping.size() ? part.shaping[c] : made.cuts[c])) {
                made.tools.push_back(std::move(tool));
                made.tool_cut.push_back(static_cast<int>(c));
            }
        const Made* twin = twin_of(made, before);
        made.solid = twin != nullptr ? twin->solid : solid::carve(made.blank_shape, made.tools);
    } catch (const std::invalid_argument& wrong) {
        report("part-not-carved", fmt::format("{} cannot be cut as asked: {}", part.name, wrong.what()),
               "look at its outline, its profile and its sizes");
        made.tools.clear();
        made.tool_cut.clear();
        made.blank_shape = solid::box({}, made.blank.low, made.blank.high);
        made.solid = solid::carve(made.blank_shape, {});
        return made;
    }
    if (made.solid.bodies == 0)
        report("nothing-left", fmt::format("the cuts leave nothing of {}", part.name),
               "make the cuts smaller");
    else if (made.solid.bodies > 1)
        report("cut-in-two", fmt::format("the cuts part {} into {} pieces", part.name, made.solid.bodies),
               "make the cuts shallower, or make two parts of it");
    if (!made.solid.watertight())
        report("not-watertight",
               fmt::format("{} edges of {} do not close (a fault of the program)", made.solid.open_edges,
                           part.name),
               "move the cuts that touch along a line a little apart, and report it");
    return made;
}

} // namespace

std::vector<solid::Placed> Model::placed() const {
    std::vector<solid::Placed> all;
    for (const Made& m : made) all.push_back({&m.solid, &m.blank_shape, &m.tools, m.part->frame});
    return all;
}

Model build(const piece::Piece& piece, findings::Findings& findings) {
    Model model;
    model.piece = &piece;
    for (const piece::Hardware& item : piece.hardware) {
        std::vector<int> parts = item.on;
        parts.insert(parts.end(), item.to.begin(), item.to.end());
        model.hardware.push_back({item.name, item.count, parts, "stated"});
    }
    Bench bench(piece, model, findings);
    lay_out_joints(bench, findings);
    for (const piece::Part& part : piece.parts) {
        cut_shoulders(bench, part.id);
        end_cuts_with_blank(bench, part.id);
    }
    std::vector<HoldRule> rules = bench.rules();
    order_joints(bench, model, rules);
    for (const piece::Part& part : piece.parts) model.made.push_back(make(bench, part, model.made, findings));
    find_contacts(model, rules);
    return model;
}

} // namespace rayfleck::joinery
