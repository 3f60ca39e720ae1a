// Straight moves first, then all at once, then the lock that stops both.

#include "assembly/tree.hpp"

#include <algorithm>
#include <cmath>

#include "assembly/locks.hpp"
#include "assembly/together.hpp"

namespace rayfleck::assembly {
namespace {

using measure::norm;

/// So many parts at most are asked whether they part all at once, without looking for a knot first.
constexpr std::size_t few = 24;

class Taking {
  public:
    Taking(const Ways& ways, std::vector<Lock>& locks)
        : ways_(ways), untied_(ways), locks_(locks), tied_(ways.parts()) {}

    std::unique_ptr<Node> node(const PartSet& together) {
        auto node = std::make_unique<Node>();
        node->parts = together.members();
        if (node->parts.size() < 2 || is_block(together)) return node;
        while (true) {
            if (auto split = best_split(ways_, together)) {
                fill(*node, *split);
                return node;
            }
            if (auto partings = at_once(together)) {
                fill(*node, *partings);
                return node;
            }
            if (!settle(together)) return node;
        }
    }

  private:
    bool is_block(const PartSet& set) const {
        return std::find(blocks_.begin(), blocks_.end(), set) != blocks_.end();
    }

    std::optional<std::vector<Parting>> at_once(const PartSet& together) {
        if (together.size() <= few)
            if (auto partings = parts_at_once(ways_, together)) return partings;
        const PartSet knot = knot_in(ways_, together, blocks_, PartSet(ways_.parts()));
        return knot.size() <= few && knot.size() < together.size() ? parts_at_once(ways_, together, knot)
                                                                   : std::nullopt;
    }

    /// Nothing moves: forgives what overlaps as drawn, which is a fault of its own, or ties the knot into a
    /// block. Gives false when all of it is that block.
    bool settle(const PartSet& together) {
        PartSet knot = knot_in(ways_, together, blocks_, PartSet(ways_.parts()));
        if (ways_.forgive_overlaps(knot)) {
            untied_.forgive_overlaps(knot);
            return true;
        }
        // A knot that would open by itself is held by what stands round it.
        if (knot.size() < together.size() && knot.size() <= few && parts_at_once(ways_, knot))
            knot = together;
        Lock lock;
        const PartSet least = knot_in(untied_, knot, {}, tied_);
        lock.parts = least.members();
        lock.joints = joints_within(least);
        // What is stuck because of a block is no new lock, unless some of it would be without the block.
        if (lock.parts.size() >= 2 && !is_known(lock)) locks_.push_back(std::move(lock));
        ways_.tie(knot);
        blocks_.push_back(knot);
        tied_ |= knot;
        return knot != together;
    }

    /// An earlier block holds all of the lock.
    bool is_known(const Lock& lock) const {
        const PartSet parts = PartSet::of(ways_.parts(), lock.parts);
        return std::any_of(blocks_.begin(), blocks_.end(),
                           [&](const PartSet& block) { return parts.within(block); });
    }

    std::vector<int> joints_within(const PartSet& set) const {
        std::vector<int> joints;
        for (std::size_t j = 0; j < ways_.bonds().size(); ++j)
            if (set.has(ways_.bonds()[j].a) && set.has(ways_.bonds()[j].b))
                joints.push_back(static_cast<int>(j));
        return joints;
    }

    Move move_of(const PartSet& mover, const PartSet& base, Vector off, std::vector<int> joints) const {
        Move move;
        move.parts = mover.members();
        move.onto = base.members();
        move.direction = -off;
        for (int axis = 0; axis < 3; ++axis)
            if (move.direction[axis] == 0) move.direction[axis] = 0; // no -0
        move.joints = std::move(joints);
        for (const int j : move.joints)
            move.hold = std::max(move.hold, ways_.bonds()[static_cast<std::size_t>(j)].hold);
        move.distance = engaged(mover, base, off);
        return move;
    }

    /// How far a mover must go to be clear of all that it touches.
    double engaged(const PartSet& mover, const PartSet& base, Vector off) const {
        double most = 0;
        const auto pair = [&](int a, int b) {
            PartSet one(ways_.parts()), other(ways_.parts());
            one.add(a), other.add(b);
            most = std::max(most, ways_.reach(other, off).second - ways_.reach(one, off).first);
        };
        for (const joinery::Contact& contact : ways_.model().contacts) {
            if (mover.has(contact.a) && base.has(contact.b)) pair(contact.a, contact.b);
            if (mover.has(contact.b) && base.has(contact.a)) pair(contact.b, contact.a);
        }
        for (const Bond& bond : ways_.bonds()) {
            if (mover.has(bond.a) && base.has(bond.b)) pair(bond.a, bond.b);
            if (mover.has(bond.b) && base.has(bond.a)) pair(bond.b, bond.a);
        }
        return most < 0.01 ? 0 : most;
    }

    void fill(Node& into, const Split& split) {
        into.breaks = split.breaks;
        into.base = node(split.base);
        Coming coming;
        coming.move = move_of(split.mover, split.base, split.off, split.joints);
        coming.node = node(split.mover);
        into.comings.push_back(std::move(coming));
    }

    void fill(Node& into, std::vector<Parting>& partings) {
        // The largest stays.
        std::stable_sort(partings.begin(), partings.end(), [&](const Parting& a, const Parting& b) {
            const Vector p = size(a.parts), q = size(b.parts);
            return p.x * p.y * p.z > q.x * q.y * q.z;
        });
        const Vector rest = partings.front().speed;
        PartSet standing = partings.front().parts;
        into.breaks = Class::let_in;
        into.base = node(partings.front().parts);
        const int group = groups_++;
        for (std::size_t i = 1; i < partings.size(); ++i) {
            const Vector speed = partings[i].speed - rest;
            Coming coming;
            coming.move = move_of(partings[i].parts, standing, unit(speed),
                                  joints_between(ways_, partings[i].parts, standing));
            coming.move.at_once = group;
            coming.node = node(partings[i].parts);
            standing |= partings[i].parts;
            into.comings.push_back(std::move(coming));
        }
        // One time for all: the longest that any pair needs.
        double time = 0;
        for (std::size_t i = 0; i < partings.size(); ++i)
            for (std::size_t k = i + 1; k < partings.size(); ++k) {
                const Vector against = partings[k].speed - partings[i].speed;
                time = std::max(time,
                                engaged(partings[k].parts, partings[i].parts, unit(against)) / norm(against));
            }
        for (std::size_t i = 1; i < partings.size(); ++i)
            into.comings[i - 1].move.distance = time * norm(partings[i].speed - rest);
    }

    Vector size(const PartSet& set) const {
        const measure::Box box = ways_.box_of(set);
        return box.high - box.low;
    }

    Ways ways_; ///< with what is known by now to be one block
    Ways untied_;
    std::vector<Lock>& locks_;
    std::vector<PartSet> blocks_;
    PartSet tied_; ///< all parts of blocks
    int groups_ = 0;
};

} // namespace

std::unique_ptr<Node> take_apart(const Ways& ways, std::vector<Lock>& locks) {
    PartSet all(ways.parts());
    for (int p = 0; p < static_cast<int>(ways.parts()); ++p) all.add(p);
    return Taking(ways, locks).node(all);
}

} // namespace rayfleck::assembly
