#pragma once
// Where along a part's three directions something begins or ends: the places that the strings of dimensions
// in its views reach.
//
// Lengthwise a border belongs to the side from which its cut is seen; of cuts in equal steps only the first
// border of each counts, so that the string says n×. Across, what stands at the ends and what is cut there or
// along the whole length shows in the end view and is dimensioned there; all else is told by the table of
// cuts, as are saw settings, outlines, and cuts told by their count and slope (dovetails, fingers, keys).

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "joinery/model.hpp"

namespace rayfleck::drawing {

struct Feature;
struct GaugeFrame;

/// The four long sides of a part, each with its view.
enum class PartSide { face, back, high_edge, low_edge };
constexpr std::size_t part_sides = 4;
PartSide part_side(piece::LocalSide side);
piece::LocalSide local_side(PartSide side);

struct Borders {
    /// Along the length, by the side that shows them; ascending, without near repeats, without what another
    /// side tells already, ends of the blank left out.
    std::array<std::vector<double>, part_sides> along;
    /// Something opens on this side that no other view shows as well.
    std::array<bool, part_sides> has{};
    std::vector<double> width, thickness;
    /// Where anything begins or ends along the length: no break may hide it. Ascending.
    std::vector<double> busy;

    const std::vector<double>& on(PartSide side) const { return along[static_cast<std::size_t>(side)]; }
    bool shows(PartSide side) const { return has[static_cast<std::size_t>(side)]; }
};

/// All in the part's own frame.
/// step  places nearer to one another than this are one: the finest that the drawing's figures tell, mm
Borders borders_of(const joinery::Made& made, const std::vector<Feature>& features, double step);

/// The side from which a box of waste is seen best: that on which it opens, the face before an edge, an edge
/// before the back; an end only when it opens on nothing else.
piece::LocalSide side_seen(const measure::Box& cut, const measure::Box& blank, bool face_edge_high);

/// Cuts round a tenon, tongue or lap: told by the size of what stands, not box by box.
bool is_waste_round_a_tongue(const std::string& word);

} // namespace rayfleck::drawing
