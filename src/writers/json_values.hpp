#pragma once
// Numbers, lengths and sizes as values of JSON. Seen by the JSON writers alone, which are the only files that
// know the JSON library.

#include <cmath>
#include <string>

#include <nlohmann/json.hpp>

#include "lumber/lumber.hpp"
#include "measure/length.hpp"

namespace rayfleck::writers {

using Json = nlohmann::ordered_json;
using measure::Length;

/// Rounded to so many per unit (10000: four decimals); adding zero turns -0 into 0. What is endless becomes
/// null.
inline Json number(double value, double per_unit) {
    if (!std::isfinite(value)) return nullptr;
    return std::round(value * per_unit) / per_unit + 0.0;
}
inline Json mm(double value) { return number(value, 1e4); }
inline Json mm(Length length) { return mm(length.value()); }
inline Json plain(double value) { return number(value, 1e6); }

inline Json size(Length thickness, Length width, Length length) {
    return {{"thickness_mm", mm(thickness)}, {"width_mm", mm(width)}, {"length_mm", mm(length)}};
}

/// Indented by two. Bytes that are not UTF-8 become the replacement character.
inline std::string text_of(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// A cut list of parts of this model, as docs/json.md describes it.
Json cut_list_value(const joinery::Model& model, const cutlist::CutList& list);

/// The lumber plan of these pieces, as docs/json.md describes it.
Json lumber_value(const lumber::Plan& plan, const std::vector<lumber::Source>& sources);

} // namespace rayfleck::writers
