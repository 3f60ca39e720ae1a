// Bonds, lines, and the matrix of what is in whose way.

#include "assembly/ways.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "solid/box_round.hpp"
#include "solid/passage.hpp"

namespace rayfleck::assembly {
namespace {

using measure::dot;
using measure::norm;

/// More lines than this are not asked: parts that lean each in its own way come apart along those of their
/// neighbours too, and every line costs a question for each pair.
constexpr std::size_t most_lines = 30;
constexpr double same_line = 1e-3;

bool starts(const std::string& kind, std::string_view with) {
    return kind.compare(0, with.size(), with) == 0;
}

bool says(const joinery::Model& model, const joinery::Joint& joint, std::string_view word) {
    // A model made by hand may have joints that no text asked for.
    if (joint.wanted < 0 || joint.wanted >= static_cast<int>(model.piece->joints.size())) return false;
    const auto& wanted = model.piece->joints[static_cast<std::size_t>(joint.wanted)];
    return std::any_of(wanted.options.begin(), wanted.options.end(),
                       [&](const piece::OptionGiven& option) { return option.words == word; });
}

Hold hold_of(const joinery::Model& model, std::size_t index, const std::vector<int>& strongest) {
    const joinery::Joint& joint = model.joints[index];
    for (const std::string_view kind : {"screws", "slotted screws", "buttons"})
        if (joint.kind == kind) return Hold::fastened;
    // Round tenons in round mortises leave no flat contact, so the words decide where nothing was found.
    if (strongest[index] < 0) {
        if (says(model, joint, "dry")) return Hold::dry;
        for (const std::string_view kind : {"groove", "tongue and groove", "rabbet", "breadboard end"})
            if (starts(joint.kind, kind)) return says(model, joint, "glued") ? Hold::glued : Hold::dry;
        return Hold::glued;
    }
    return static_cast<Hold>(strongest[index]);
}

} // namespace

Class class_of(const Bond& bond) {
    if (bond.hold != Hold::glued) return Class::released;
    return bond.laid_on ? Class::laid_on : Class::let_in;
}

Ways::Ways(const joinery::Model& model) : model_(&model), placed_(model.placed()) {
    for (const solid::Placed& placed : placed_)
        boxes_.push_back(solid::box_round(placed.solid->box, placed.frame));
    find_bonds();
    find_lines();
    ask_solids();
}

void Ways::find_bonds() {
    std::vector<int> strongest(model_->joints.size(), -1);
    for (const joinery::Contact& contact : model_->contacts) {
        if (contact.joint < 0) continue;
        const Hold hold = contact.hold == joinery::Hold::glued      ? Hold::glued
                          : contact.hold == joinery::Hold::fastened ? Hold::fastened
                                                                    : Hold::dry;
        int& known = strongest[static_cast<std::size_t>(contact.joint)];
        known = std::max(known, static_cast<int>(hold));
    }
    for (std::size_t j = 0; j < model_->joints.size(); ++j) {
        const joinery::Joint& joint = model_->joints[j];
        Bond bond;
        bond.a = joint.a;
        bond.b = joint.b;
        bond.hold = hold_of(*model_, j, strongest);
        bond.laid_on = joint.kind == "glue";
        bond.direction = joint.assembly;
        bond.guided =
            norm(joint.assembly) > 0.5 && (starts(joint.kind, "mortise and") || starts(joint.kind, "dowels"));
        bonds_.push_back(bond);
        if (starts(joint.kind, "dowels") || starts(joint.kind, "mortise and loose tenon") ||
            joint.kind.find(", spline") != std::string::npos)
            unseen_.push_back(j);
    }
    for (int k = 0; k < classes; ++k) bonded_[k].assign(parts(), PartSet(parts()));
    for (const Bond& bond : bonds_)
        for (int k = 0; k <= static_cast<int>(class_of(bond)); ++k) {
            bonded_[k][static_cast<std::size_t>(bond.a)].add(bond.b);
            bonded_[k][static_cast<std::size_t>(bond.b)].add(bond.a);
        }
}

void Ways::find_lines() {
    struct Line {
        Vector along;
        int times;
    };
    std::vector<Line> more;
    lines_ = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    const auto same = [](Vector a, Vector b) {
        return std::abs(std::abs(dot(a, b)) - 1) < same_line * same_line;
    };
    const auto take = [&](Vector v) {
        if (norm(v) < 0.5) return;
        if (std::any_of(lines_.begin(), lines_.end(), [&](Vector line) { return same(line, v); })) return;
        for (Line& line : more)
            if (same(line.along, v)) {
                ++line.times;
                return;
            }
        more.push_back({unit(v), 1});
    };
    for (const joinery::Joint& joint : model_->joints) {
        take(joint.assembly);
        for (const int part : {joint.a, joint.b}) {
            const measure::Frame& frame = placed_[static_cast<std::size_t>(part)].frame;
            if (norm(joint.assembly) > 0.5 && model_->made[static_cast<std::size_t>(part)].part->upright)
                continue;
            take(frame.x), take(frame.y), take(frame.z);
        }
    }
    std::stable_sort(more.begin(), more.end(),
                     [](const Line& a, const Line& b) { return a.times > b.times; });
    for (const Line& line : more)
        if (lines_.size() < most_lines) lines_.push_back(line.along);
}

bool Ways::held_apart_from(int mover, int other, Vector direction) const {
    for (const std::size_t j : unseen_) {
        const Bond& bond = bonds_[j];
        const bool first = bond.a == mover && bond.b == other, second = bond.b == mover && bond.a == other;
        if (!first && !second) continue;
        const std::string& kind = model_->joints[j].kind;
        if (!starts(kind, "miter")) {
            const Vector away = first ? -bond.direction : bond.direction;
            if (norm(bond.direction) > 0.5 && dot(away, direction) < 1 - same_line) return true;
        }
        if (starts(kind, "miter")) {
            const Vector plane = cross(placed_[static_cast<std::size_t>(bond.a)].frame.x,
                                       placed_[static_cast<std::size_t>(bond.b)].frame.x);
            if (norm(plane) > 0.1 && std::abs(dot(unit(plane), direction)) > 0.02) return true;
        }
    }
    return false;
}

void Ways::ask_solids() {
    const int n = static_cast<int>(parts());
    for (const Vector line : lines_) {
        std::vector<PartSet> ahead(parts(), PartSet(parts())), behind = ahead;
        const solid::Passage passage(placed_, line);
        for (int a = 0; a < n; ++a)
            for (int b = a + 1; b < n; ++b) {
                if (!passage.in_line(a, b)) continue;
                // a moved forwards runs into b exactly when b moved backwards runs into a.
                if (passage.runs_into(a, b))
                    ahead[static_cast<std::size_t>(a)].add(b), behind[static_cast<std::size_t>(b)].add(a);
                if (passage.runs_into(b, a))
                    ahead[static_cast<std::size_t>(b)].add(a), behind[static_cast<std::size_t>(a)].add(b);
            }
        for (const std::size_t j : unseen_)
            for (const auto& [mover, other] :
                 {std::pair{bonds_[j].a, bonds_[j].b}, {bonds_[j].b, bonds_[j].a}}) {
                if (held_apart_from(mover, other, line)) ahead[static_cast<std::size_t>(mover)].add(other);
                if (held_apart_from(mover, other, -line)) behind[static_cast<std::size_t>(mover)].add(other);
            }
        before_.push_back(std::move(ahead));
        before_.push_back(std::move(behind));
    }
}

measure::Box Ways::box_of(const PartSet& set) const {
    measure::Box all;
    bool first = true;
    for (int p = set.first(); p >= 0; p = set.next(p + 1)) {
        for (int axis = 0; axis < 3; ++axis) {
            all.low[axis] = first ? box(p).low[axis] : std::min(all.low[axis], box(p).low[axis]);
            all.high[axis] = first ? box(p).high[axis] : std::max(all.high[axis], box(p).high[axis]);
        }
        first = false;
    }
    return all;
}

std::pair<double, double> Ways::reach(const PartSet& set, Vector direction) const {
    double low = HUGE_VAL, high = -HUGE_VAL;
    for (int p = set.first(); p >= 0; p = set.next(p + 1)) {
        const solid::Placed& placed = placed_[static_cast<std::size_t>(p)];
        const measure::Box& own = placed.solid->box;
        const Vector along = placed.frame.turn_in(direction);
        const double middle = dot(along, (own.low + own.high) * 0.5) + dot(direction, placed.frame.origin);
        const Vector half = (own.high - own.low) * 0.5;
        const double by =
            std::abs(along.x) * half.x + std::abs(along.y) * half.y + std::abs(along.z) * half.z;
        low = std::min(low, middle - by);
        high = std::max(high, middle + by);
    }
    return {low, high};
}

bool Ways::forgive_overlaps(const PartSet& among) {
    const std::vector<int> members = among.members();
    std::vector<solid::Placed> some;
    for (const int p : members) some.push_back(placed_[static_cast<std::size_t>(p)]);
    bool any = false;
    for (const solid::Clash& clash : solid::clashes(some)) {
        const int a = members[static_cast<std::size_t>(clash.a)],
                  b = members[static_cast<std::size_t>(clash.b)];
        for (auto& way : before_)
            for (const auto& [mover, other] : {std::pair{a, b}, {b, a}}) {
                PartSet& before = way[static_cast<std::size_t>(mover)];
                any = any || before.has(other);
                before.drop(other);
            }
    }
    return any;
}

void Ways::tie(const PartSet& block) {
    for (auto& way : before_)
        for (int p = block.first(); p >= 0; p = block.next(p + 1)) {
            way[static_cast<std::size_t>(p)] |= block;
            way[static_cast<std::size_t>(p)].drop(p);
        }
}

} // namespace rayfleck::assembly
