// See seasons.hpp.

#include "checks/seasons.hpp"

#include "checks/wording.hpp"

namespace rayfleck::checks {

Seasons seasons_of(const joinery::Made& made, const piece::Piece& piece) {
    const wood::GrainInPart grain{made.part->rings, made.part->grain};
    const auto to = [&](measure::Moisture season) {
        return wood::strain(piece.made_at, season, grain, *made.part->species).turned(made.part->frame);
    };
    return {to(piece.climate.driest), to(piece.climate.dampest)};
}

Mismatch mismatch(const Seasons& a, const Seasons& b, measure::Vector direction, double length) {
    const auto differ = [&](const wood::StrainTensor& one, const wood::StrainTensor& other) {
        return (one - other).along(direction).in_ratio() * length;
    };
    return {differ(a.dry, b.dry), differ(a.damp, b.damp)};
}

std::string season_words(const piece::Piece& piece) {
    return "between " + moisture_text(piece.climate.driest) + " and " + moisture_text(piece.climate.dampest) +
           " moisture";
}

} // namespace rayfleck::checks
