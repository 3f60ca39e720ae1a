#pragma once
// How checks print lengths, movements and limits: in the maker's own units, with the source beside the limit.

#include <string>

#include "joinery/model.hpp"
#include "wood/figure.hpp"

namespace rayfleck::checks {

/// A size of the piece: `38 mm`, `1-1/2"`.
std::string size_text(double millimetres, const joinery::Model& model);
/// A movement: finer than a size, `2.3 mm`, `3/64"`; anything below a sixty-fourth prints as `under 1/64"`.
std::string movement_text(double millimetres, const joinery::Model& model);
/// `45 percent`, without decimals.
std::string percent_text(double ratio);
/// Moisture of a season: `6.2 %`.
std::string moisture_text(measure::Moisture moisture);
/// `30 mm, common practice, no published source`.
std::string limit_text(const std::string& value, std::string_view source);

/// An edge that moves to the driest and to the dampest season, for a finding's picture.
/// way  of length 1, the way in which dry and damp count, mm
/// where  said behind the figures: ` at each end`; may be empty
findings::Movement season_movement(measure::Point at, measure::Vector way, double dry, double damp,
                                   const joinery::Model& model, const std::string& where = "");

/// Name of a part as made.
const std::string& name_of(const joinery::Model& model, int part);
/// The piece's frame coordinates of a point in a part's own frame.
measure::Point place_of(const joinery::Made& made, measure::Point own);

} // namespace rayfleck::checks
