#pragma once
// Which outlines of a part are drawn at full size, and how much of each.

#include <optional>
#include <vector>

#include "drawing/block.hpp"
#include "joinery/model.hpp"

namespace rayfleck::drawing {

/// A stretch of an outline that goes on paper as one.
struct TemplateField {
    Rect area; ///< of the picture plane, mm of wood
    /// The outline goes straight on beyond this end of the field.
    bool broken_low = false, broken_high = false;
};

/// An outline that cannot be laid out with rule and square alone, seen square to it.
struct Shaped {
    enum class Seen { on_face, on_edge, on_end };
    Seen seen = Seen::on_face;
    solid::View view; ///< in the part's own frame
    /// Its silhouette, mm of wood in the picture plane; what is seen through are rings of their own.
    std::vector<std::vector<Point2>> rings;
    Rect box; ///< round the rings
    /// Places of bores square to the picture plane, and their diameters.
    struct Hole {
        Point2 centre;
        double diameter = 0;
    };
    std::vector<Hole> holes;
    bool turned = false;
    /// The other half is the same, turned over about the middle: only the low half of the length, or the high
    /// half of the width, is drawn.
    bool half_length = false, half_width = false;
    std::vector<TemplateField> fields;
};

/// The outlines of a part that want a template; none for plain rectangles and straight tapers.
std::vector<Shaped> shaped_outlines(const joinery::Made& made);

/// The point lies in the wood of the silhouette.
bool in_wood(const Shaped& shaped, Point2 p);

/// Lowest and highest place of the silhouette at x; nothing beyond its ends.
std::optional<std::pair<double, double>> reach_at(const Shaped& shaped, double x);

} // namespace rayfleck::drawing
