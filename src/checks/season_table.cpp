// See season_table.hpp. Alike are parts of one name whose widths and movements agree to a hundredth of a
// millimetre. What moves by less than a quarter of a millimetre a year is left out: no hand feels it, and no
// joint of the trade minds.

#include "checks/season_table.hpp"

#include <algorithm>
#include <cmath>

#include "checks/groups.hpp"
#include "checks/seasons.hpp"

namespace rayfleck::checks {
namespace {

/// Movement that no hand feels, mm. Our own choice, no published source.
constexpr double unfelt = 0.25;
constexpr double alike = 0.01;
/// From this slenderness a section is a board, below it a square. Our own choice.
constexpr double square_up_to = 1.6;
/// A board so many times wider than thick shows its hollow. Our own choice.
constexpr double board_from = 4;
/// Staves as shops make them, where the text tells none, mm. Common practice, no published source.
constexpr double usual_stave = 110;

void tell_shape(const piece::Part& part, const piece::Piece& piece, MovingPart& row) {
    if (part.species->is_sheet()) return;
    const double wide = part.width.value(), thick = part.thickness.value();
    if (std::max(wide, thick) <= square_up_to * std::min(wide, thick)) {
        const auto lean = [&](measure::Moisture season) {
            return wood::diamonding(piece.made_at, season, part.rings, *part.species);
        };
        row.out_of_square =
            std::max(lean(piece.climate.driest), lean(piece.climate.dampest)) * std::max(wide, thick);
    }
    if (wide < board_from * thick || (part.glue_up && part.glue_up->laminated)) return;
    const double stave = stave_width(part), from_pith = pith_to_face(part, stave);
    const auto depth = [&](measure::Moisture season) {
        return std::abs(wood::cup_depth(measure::Length::from_geometry(stave),
                                        measure::Length::from_geometry(from_pith), piece.made_at, season,
                                        *part.species)
                            .value());
    };
    const double c = std::cos(part.rings.in_radians());
    row.hollow = std::max(depth(piece.climate.driest), depth(piece.climate.dampest)) * c * c;
}

/// Where a part is free, as far as joints tell.
void tell_freedom(const joinery::Model& model, const std::vector<SlideRoom>& slides, int part,
                  MovingPart& row) {
    if (const auto groove = groove_room(model, part, 1)) {
        row.where = "in its grooves";
        row.room = groove->room;
        row.needs = std::max(0.0, groove->swells);
        row.leave = groove->leave;
        return;
    }
    const SlideRoom* worst = nullptr;
    for (const SlideRoom& slide : slides)
        if (slide.mover == part &&
            (worst == nullptr || slide.needs - slide.room > worst->needs - worst->room))
            worst = &slide;
    if (worst != nullptr) {
        const std::string& kind = model.joints[static_cast<std::size_t>(worst->joint)].kind;
        row.where = kind.starts_with("buttons")      ? "on its buttons"
                    : kind.starts_with("breadboard") ? "in its breadboard ends"
                                                     : "on slotted screws";
        row.room = worst->room;
        row.needs = worst->needs;
        row.leave = worst->leave;
        return;
    }
    const bool held =
        std::any_of(model.contacts.begin(), model.contacts.end(), [&](const joinery::Contact& c) {
            return (c.a == part || c.b == part) && c.joint >= 0 && c.hold != joinery::Hold::free;
        });
    row.where = held ? "held by its joints" : "free";
    if (held) return;
    // A joint that lets it slide along its width, like a sliding dovetail or a groove open at the other side.
    const measure::Vector across = model.made[static_cast<std::size_t>(part)].part->frame.y;
    for (const joinery::Contact& contact : model.contacts) {
        if ((contact.a != part && contact.b != part) || contact.joint < 0) continue;
        if (std::none_of(contact.may_slide.begin(), contact.may_slide.end(),
                         [&](measure::Vector way) { return std::abs(dot(way, across)) > 0.9; }))
            continue;
        const std::string& kind = model.joints[static_cast<std::size_t>(contact.joint)].kind;
        row.where = "along its " + kind.substr(0, kind.find(','));
        return;
    }
}

bool same(const MovingPart& a, const MovingPart& b) {
    const auto near = [](double x, double y) { return std::abs(x - y) < alike; };
    const auto close = [&](const std::optional<double>& x, const std::optional<double>& y) {
        return x.has_value() == y.has_value() && (!x || *x == *y || near(*x, *y));
    };
    return near(a.width, b.width) && near(a.dry, b.dry) && near(a.damp, b.damp) && a.where == b.where &&
           close(a.room, b.room) && close(a.needs, b.needs);
}

} // namespace

double stave_width(const piece::Part& part) {
    const double wide = part.width.value();
    if (!part.glue_up || part.glue_up->laminated) return wide;
    if (part.glue_up->count && *part.glue_up->count > 0) return wide / *part.glue_up->count;
    if (part.glue_up->at_most_wide) return std::min(wide, part.glue_up->at_most_wide->value());
    return std::min(wide, usual_stave);
}

double pith_to_face(const piece::Part& part, double usual) {
    if (!part.pith) return usual;
    // The nearer face, for there the rings bend most; never nearer than the heart's own wood, mm. Our own
    // choice.
    constexpr double heart = 10;
    return std::max(heart, std::abs(part.pith->z) - part.thickness.value() / 2);
}

SeasonTable season_table(const joinery::Model& model) {
    SeasonTable table;
    table.openings = opening_rooms(model);
    table.miters = miter_openings(model);
    const std::vector<SlideRoom> slides = slide_rooms(model);
    for (int i = 0; i < static_cast<int>(model.made.size()); ++i) {
        const joinery::Made& made = model.made[static_cast<std::size_t>(i)];
        const piece::Part& part = *made.part;
        const Seasons seasons = seasons_of(made, *model.piece);
        MovingPart row;
        row.parts = {i};
        row.width = made.solid.box.high.y - made.solid.box.low.y;
        row.dry = seasons.dry.along(part.frame.y).in_ratio() * row.width;
        row.damp = seasons.damp.along(part.frame.y).in_ratio() * row.width;
        if (std::abs(row.range()) < unfelt) continue;
        tell_shape(part, *model.piece, row);
        tell_freedom(model, slides, i, row);
        const auto twin = std::find_if(table.parts.begin(), table.parts.end(), [&](const MovingPart& other) {
            return model.made[static_cast<std::size_t>(other.parts.front())].part->base == part.base &&
                   same(other, row);
        });
        if (twin != table.parts.end())
            twin->parts.push_back(i);
        else
            table.parts.push_back(std::move(row));
    }
    std::stable_sort(table.parts.begin(), table.parts.end(), [](const MovingPart& a, const MovingPart& b) {
        return std::abs(a.range()) > std::abs(b.range()) + alike;
    });
    return table;
}

} // namespace rayfleck::checks
