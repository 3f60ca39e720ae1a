// See groups.hpp.

#include "checks/groups.hpp"

#include <algorithm>
#include <map>
#include <numeric>

namespace rayfleck::checks {

Groups::Groups(std::size_t count) : leader_(count) { std::iota(leader_.begin(), leader_.end(), 0); }

int Groups::of(int part) {
    while (leader_[static_cast<std::size_t>(part)] != part) part = leader_[static_cast<std::size_t>(part)];
    return part;
}

void Groups::tie(int a, int b) {
    const int one = of(a), other = of(b);
    leader_[static_cast<std::size_t>(std::max(one, other))] = std::min(one, other);
}

Groups rigid_groups(const joinery::Model& model) {
    Groups groups(model.made.size());
    for (const joinery::Joint& joint : model.joints) groups.tie(joint.a, joint.b);
    return groups;
}

measure::Box box_in_piece(const joinery::Made& made) {
    measure::Box box;
    const measure::Box& own = made.solid.box;
    for (int c = 0; c < 8; ++c) {
        const measure::Point p = made.part->frame.out(
            {c & 1 ? own.high.x : own.low.x, c & 2 ? own.high.y : own.low.y, c & 4 ? own.high.z : own.low.z});
        for (int i = 0; i < 3; ++i) {
            box.low[i] = c == 0 ? p[i] : std::min(box.low[i], p[i]);
            box.high[i] = c == 0 ? p[i] : std::max(box.high[i], p[i]);
        }
    }
    return box;
}

std::vector<Movable> movables_of(const joinery::Model& model) {
    Groups groups = rigid_groups(model);
    std::map<int, Movable> all;
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        Movable& group = all[groups.of(i)];
        const joinery::Made& made = model.made[static_cast<std::size_t>(i)];
        const measure::Box box = box_in_piece(made);
        if (group.parts.empty()) group.box = box;
        for (int axis = 0; axis < 3; ++axis) {
            group.box.low[axis] = std::min(group.box.low[axis], box.low[axis]);
            group.box.high[axis] = std::max(group.box.high[axis], box.high[axis]);
        }
        group.parts.push_back(i);
        group.loose = group.loose || made.part->loose;
    }
    if (all.empty()) return {};
    const int largest = std::max_element(all.begin(), all.end(), [](const auto& a, const auto& b) {
                            return a.second.parts.size() < b.second.parts.size();
                        })->first;
    std::map<int, bool> hung;
    for (const piece::Hardware& item : model.piece->hardware)
        for (const int on : item.on)
            for (const int to : item.to)
                if (groups.of(on) != groups.of(to)) hung[groups.of(on)] = hung[groups.of(to)] = true;
    std::vector<Movable> movables;
    for (auto& [leader, group] : all)
        if (leader != largest && (group.loose || hung[leader])) movables.push_back(std::move(group));
    return movables;
}

} // namespace rayfleck::checks
