// Closures are followed breadth first over whole words of bits; equal ones are weighed once.

#include "assembly/split.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <tuple>

namespace rayfleck::assembly {
namespace {

using measure::dot;
using measure::norm;

/// All that moves along when `part` is moved that way and bonds of `kept` or stronger hold.
PartSet moved_with(const Ways& ways, const PartSet& together, int part, int way, const Class* kept) {
    PartSet all(ways.parts()), fresh(ways.parts());
    fresh.add(part);
    while (!fresh.empty()) {
        all |= fresh;
        PartSet next(ways.parts());
        for (int p = fresh.first(); p >= 0; p = fresh.next(p + 1)) {
            next |= ways.before(way, p);
            if (kept) next |= ways.bonded(*kept, p);
        }
        next &= together;
        fresh = next - all;
    }
    return all;
}

double volume(const measure::Box& box) {
    const Vector size = box.high - box.low;
    return size.x * size.y * size.z;
}

/// Which of two halves stays where it is: the first one?
bool first_stays(const Ways& ways, const PartSet& first, const PartSet& second, Class breaks) {
    const auto joined = [&](const PartSet& set) {
        std::size_t n = 0;
        for (int p = set.first(); p >= 0; p = set.next(p + 1)) n += ways.bonded(Class::nothing, p).size();
        return n;
    };
    const double a = volume(ways.box_of(first)), b = volume(ways.box_of(second));
    if (breaks >= Class::laid_on) {
        if (first.size() != second.size()) return first.size() > second.size();
        const std::size_t p = joined(first), q = joined(second);
        if (p != q) return p > q;
    }
    if (std::abs(a - b) > 1e-6 * (a + b)) return a > b;
    return first.first() < second.first();
}

/// Up, front, back, left, right, down; anything else after those.
int rank_of(Vector off) {
    static const std::array<Vector, 6> order{
        {{0, 0, 1}, {0, -1, 0}, {0, 1, 0}, {-1, 0, 0}, {1, 0, 0}, {0, 0, -1}}};
    for (std::size_t i = 0; i < order.size(); ++i)
        if (dot(order[i], off) > 1 - 1e-9) return static_cast<int>(i);
    return static_cast<int>(order.size());
}

/// Share of the contact between the halves that opens squarely.
double opening(const Ways& ways, const Split& split) {
    double all = 0, opens = 0;
    for (const joinery::Contact& contact : ways.model().contacts) {
        const bool forth = split.mover.has(contact.a) && split.base.has(contact.b);
        const bool back = split.mover.has(contact.b) && split.base.has(contact.a);
        if (!forth && !back) continue;
        all += contact.area;
        const double against = -dot(contact.plane.normal, split.off) * (forth ? 1 : -1);
        if (against > 0.5) opens += contact.area * against;
    }
    return all > 0 ? opens / all : 0;
}

/// One part, dry in its grooves but for one glued edge: a drawer's bottom, which goes in when the box stands.
bool is_slid_in(const Ways& ways, const Split& split) {
    if (split.mover.size() != 1) return false;
    const auto glued = std::count_if(split.joints.begin(), split.joints.end(), [&](int j) {
        return class_of(ways.bonds()[static_cast<std::size_t>(j)]) == Class::let_in;
    });
    return glued == 1 && split.joints.size() >= 3;
}

/// Lower is better.
using Score = std::tuple<int, int, int, int, long, int, int, int, int, int>;

Score score_of(const Ways& ways, const PartSet& together, std::size_t bodies_before, const Split& split) {
    const bool joined = !split.joints.empty();
    // Each half should be one body; what was loose before may stay so.
    const int loosened = static_cast<int>(bodies(ways, split.mover) + bodies(ways, split.base)) -
                         static_cast<int>(bodies_before) - (joined ? 1 : 0);
    int askew = 0;
    for (const int j : split.joints) {
        const Bond& bond = ways.bonds()[static_cast<std::size_t>(j)];
        if (class_of(bond) != Class::let_in || norm(bond.direction) < 0.5) continue;
        const Vector away = split.mover.has(bond.a) ? -bond.direction : bond.direction;
        if (dot(away, split.off) < 0.99) ++askew;
    }
    long extent = 0;
    if (split.breaks >= Class::laid_on) {
        const auto [low, high] = ways.reach(together, split.off);
        extent = -std::lround(high - low);
    }
    const int opens = opening(ways, split) > 0.3 ? 0 : 1;
    // Of frames that close alike the one with less in it: panels stay where they are held on three sides.
    const int size = split.breaks >= Class::laid_on ? static_cast<int>(split.mover.size()) : 0;
    return {loosened > 0 ? loosened : 0,
            static_cast<int>(split.breaks),
            askew,
            is_slid_in(ways, split) ? 0 : 1,
            extent,
            size,
            -split.mover.first(),
            static_cast<int>(split.joints.size()),
            opens,
            rank_of(split.off)};
}

} // namespace

std::vector<int> joints_between(const Ways& ways, const PartSet& a, const PartSet& b) {
    std::vector<int> joints;
    for (std::size_t j = 0; j < ways.bonds().size(); ++j) {
        const Bond& bond = ways.bonds()[j];
        if ((a.has(bond.a) && b.has(bond.b)) || (a.has(bond.b) && b.has(bond.a)))
            joints.push_back(static_cast<int>(j));
    }
    return joints;
}

std::size_t bodies(const Ways& ways, const PartSet& set) {
    PartSet rest = set;
    std::size_t count = 0;
    while (!rest.empty()) {
        ++count;
        PartSet fresh(ways.parts());
        fresh.add(rest.first());
        while (!fresh.empty()) {
            rest -= fresh;
            PartSet next(ways.parts());
            for (int p = fresh.first(); p >= 0; p = fresh.next(p + 1)) next |= ways.bonded(Class::nothing, p);
            next &= rest;
            fresh = std::move(next);
        }
    }
    return count;
}

std::optional<PartSet> some_that_come_off(const Ways& ways, const PartSet& together) {
    for (int way = 0; way < ways.count(); ++way)
        for (int p = together.first(); p >= 0; p = together.next(p + 1)) {
            PartSet moving = moved_with(ways, together, p, way, nullptr);
            if (moving != together) return moving;
        }
    return std::nullopt;
}

std::optional<Split> best_split(const Ways& ways, const PartSet& together) {
    std::optional<Split> best;
    Score best_score;
    const std::size_t bodies_before = bodies(ways, together);
    for (const Class kept : {Class::nothing, Class::released, Class::laid_on, Class::let_in}) {
        // Bonds of the next class up and stronger stay whole in this round.
        std::set<std::pair<int, PartSet>> weighed;
        for (int way = 0; way < ways.count(); ++way)
            for (int p = together.first(); p >= 0; p = together.next(p + 1)) {
                const Class stronger = static_cast<Class>(static_cast<int>(kept) + 1);
                PartSet moving =
                    moved_with(ways, together, p, way, kept == Class::let_in ? nullptr : &stronger);
                if (moving == together || !weighed.insert({way, moving}).second) continue;
                Split split;
                split.base = together - moving;
                split.mover = std::move(moving);
                split.off = ways.direction(way);
                split.joints = joints_between(ways, split.mover, split.base);
                for (const int j : split.joints)
                    split.breaks =
                        std::max(split.breaks, class_of(ways.bonds()[static_cast<std::size_t>(j)]));
                if (!first_stays(ways, split.base, split.mover, split.breaks)) {
                    std::swap(split.base, split.mover);
                    split.off = -split.off;
                }
                const Score score = score_of(ways, together, bodies_before, split);
                if (best && score >= best_score) continue;
                best = std::move(split);
                best_score = score;
            }
        if (best && std::get<0>(best_score) == 0 && std::get<1>(best_score) <= static_cast<int>(kept)) break;
    }
    return best;
}

} // namespace rayfleck::assembly
