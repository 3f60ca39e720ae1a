// See wording.hpp.

#include "checks/wording.hpp"

#include <cmath>

#include <fmt/core.h>

namespace rayfleck::checks {

std::string size_text(double millimetres, const joinery::Model& model) {
    return measure::text_with_unit(measure::Length::from_geometry(millimetres), model.piece->manner);
}

std::string movement_text(double millimetres, const joinery::Model& model) {
    measure::Manner manner = model.piece->manner;
    const bool metric = manner.unit == measure::Unit::mm || manner.unit == measure::Unit::cm ||
                        manner.unit == measure::Unit::m;
    if (metric) return fmt::format("{:.1f} mm", millimetres);
    constexpr double sixty_fourth = 25.4 / 64;
    if (std::abs(millimetres) < sixty_fourth / 2) return "under 1/64\"";
    manner.unit = measure::Unit::in;
    manner.finest = 64;
    return measure::text_with_unit(measure::Length::from_geometry(millimetres), manner);
}

std::string percent_text(double ratio) { return fmt::format("{:.0f} percent", ratio * 100); }

std::string moisture_text(measure::Moisture moisture) {
    return fmt::format("{:.1f} %", moisture.in_percent());
}

std::string limit_text(const std::string& value, std::string_view source) {
    return fmt::format("{}, {}", value, source);
}

findings::Movement season_movement(measure::Point at, measure::Vector way, double dry, double damp,
                                   const joinery::Model& model, const std::string& where) {
    return {at,
            way,
            dry,
            damp,
            "driest: " + movement_text(std::abs(dry), model) + where,
            "dampest: " + movement_text(std::abs(damp), model) + where};
}

const std::string& name_of(const joinery::Model& model, int part) {
    return model.made[static_cast<std::size_t>(part)].part->name;
}

measure::Point place_of(const joinery::Made& made, measure::Point own) { return made.part->frame.out(own); }

} // namespace rayfleck::checks
