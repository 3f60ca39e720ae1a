// See rough.hpp for the rules and what is left out.

#include "cutlist/rough.hpp"

#include <algorithm>

#include "wood/lumber.hpp"

namespace rayfleck::cutlist {

using measure::Length;
using measure::Rational;

int pieces_glued(const joinery::Made& made) {
    const auto& glue_up = made.part->glue_up;
    if (!glue_up) return 1;
    if (glue_up->count) return std::max(1, *glue_up->count);
    if (!glue_up->at_most_wide || *glue_up->at_most_wide <= Length()) return 1;
    const Rational staves = made.width / *glue_up->at_most_wide;
    const std::int64_t whole = measure::floor(staves);
    return static_cast<int>(
        std::clamp<std::int64_t>(Rational(whole) == staves ? whole : whole + 1, 1, 10000));
}

RoughSize rough_size(const joinery::Made& made, const piece::Shop& shop) {
    const piece::Part& part = *made.part;
    RoughSize rough{made.thickness, made.width, made.length};
    if (part.species != nullptr && part.species->is_sheet()) return rough;
    rough.length += shop.allow_length;
    if (part.size_from_stock) return rough;

    const bool laminated = part.glue_up && part.glue_up->laminated;
    const Rational glued = pieces_glued(made);
    const auto bought = part.stock.empty() ? std::nullopt : wood::lumber_named(part.stock);
    if (bought && bought->kind == wood::LumberKind::hardwood && bought->rough_thickness >= made.thickness &&
        !laminated)
        rough.thickness = bought->rough_thickness;
    else
        rough.thickness += shop.allow_thickness * (laminated ? glued : Rational(1));
    rough.width += shop.allow_width * (laminated ? Rational(1) : glued);
    return rough;
}

double board_feet(const RoughSize& size) {
    try {
        return wood::board_feet(size.thickness, size.width, size.length).value();
    } catch (const measure::TooLarge&) {
        // Sizes handed back by geometry have long fractions; their product may not fit, and needs no
        // exactness.
        return size.thickness.value() * size.width.value() * size.length.value() / (144 * 25.4 * 25.4 * 25.4);
    }
}

} // namespace rayfleck::cutlist
