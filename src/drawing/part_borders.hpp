#pragma once
// Where along a part's three directions something begins or ends: the places that its dimensions must reach.
//
// Each cut gives its borders in the part's own frame: the sides of a box, the centre of a bore, the places at
// which a slanting plane crosses the edges of the blank; of a joint that does not lie square to the part, its
// middle. Lengthwise a border belongs to the side of the part from which the cut is seen. Across, what is cut
// at the ends or along the whole length shows in the end view and is dimensioned there; how far a mortise in
// the middle lies from the face side stands in its note. Cuts told by their count and slope (dovetails,
// fingers, keys) give no borders; they stand in the notes as well.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::drawing {

/// The four long sides of a part, each with its view.
enum class PartSide { face, back, high_edge, low_edge };
constexpr std::size_t part_sides = 4;

struct Borders {
    /// Along the length, by the side that shows them; ascending, without near repeats, without what another
    /// side tells already, ends of the blank left out.
    std::array<std::vector<double>, part_sides> along;
    /// Something opens on this side that no other view shows as well.
    std::array<bool, part_sides> has{};
    std::vector<double> width, thickness;

    const std::vector<double>& on(PartSide side) const { return along[static_cast<std::size_t>(side)]; }
    bool shows(PartSide side) const { return has[static_cast<std::size_t>(side)]; }
};

/// part  index into the model
/// step  places nearer to one another than this are one: the finest that the drawing's figures tell, mm
Borders borders_of(const joinery::Model& model, int part, double step);

/// The side from which a box of waste is seen best: that on which it opens, the face before an edge, an edge before
/// the back; an end only when it opens on nothing else.
piece::LocalSide side_seen(const measure::Box& cut, const measure::Box& blank, bool face_edge_high);

/// The long side on which a hollow opens that opens on one only: a mortise, a slot, a stopped groove. It may
/// run out at the ends. Nothing for waste that opens on several long sides or on none.
std::optional<piece::LocalSide> mouth_of(const measure::Box& cut, const measure::Box& blank);

/// Cuts round a tenon, tongue or lap: told by the size of what stands, not box by box.
bool is_waste_round_a_tongue(const std::string& word);

} // namespace rayfleck::drawing
