// The verb of the room, and the order as text.

#include "assembly/assembly.hpp"

#include <cmath>
#include <sstream>

#include "assembly/steps.hpp"
#include "assembly/wording.hpp"

namespace rayfleck::assembly {

Order order(const joinery::Model& model) {
    Order order;
    if (model.made.empty()) return order;
    const Ways ways(model);
    const auto tree = take_apart(ways, order.locks);
    write_steps(*tree, ways, order);
    return order;
}

std::string print(const Order& order, const joinery::Model& model) {
    static constexpr const char* holds[] = {"loose", "dry", "fastened", "glued"};
    const auto names = [&](const std::vector<int>& parts) {
        std::string all;
        for (const int p : parts)
            all += (all.empty() ? "" : ", ") + model.made[static_cast<std::size_t>(p)].part->name;
        return all;
    };
    std::ostringstream out;
    for (const Step& step : order.steps) {
        out << "step " << step.number << ": " << step.title << "\n  on " << names(step.standing) << "\n";
        for (const int m : step.moves) {
            const Move& move = order.moves[static_cast<std::size_t>(m)];
            out << "  " << (move.at_once >= 0 ? "at once " : "") << "[" << names(move.parts) << "] along "
                << std::lround(move.direction.x * 100) / 100.0 << ' '
                << std::lround(move.direction.y * 100) / 100.0 << ' '
                << std::lround(move.direction.z * 100) / 100.0 << ", " << std::lround(move.distance)
                << " mm, " << holds[static_cast<std::size_t>(move.hold)] << ", " << move.joints.size()
                << " joints\n";
        }
        for (const Fitting& fitting : step.hardware)
            out << "  hardware: " << fitting.count << " " << fitting.name << "\n";
        for (const std::string& words : step.words) out << "  - " << words << "\n";
    }
    for (const Lock& lock : order.locks) out << "lock: " << names(lock.parts) << "\n";
    return out.str();
}

} // namespace rayfleck::assembly
