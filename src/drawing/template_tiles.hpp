#pragma once
// A full-size outline cut into tiles, each of which goes on an upright A4 or Letter sheet.
//
// The page is a window on a net of cells, 150 by 178 mm. A window reaches 5 mm beyond its cell on every side,
// so neighbours overlap by 10 mm, more than most printers leave blank. Registration crosses stand at the
// corners of the cells, so that those of two neighbours fall on each other. The window is as large as both
// papers allow between the frame, the title block and the two pairs of calibration bars.

#include <string>
#include <vector>

#include "drawing/template_shape.hpp"

namespace rayfleck::drawing {

constexpr double cell_width = 150, cell_height = 178, half_overlap = 5;

/// A field laid on the net of cells. Net coordinates: mm, (0, 0) at the lower left corner of the lowest left
/// cell.
struct TileNet {
    const Shaped* shaped = nullptr;
    const TemplateField* field = nullptr;
    bool upright = false; ///< the part's length runs up the page
    int rows = 1, columns = 1;
    Point2 shift; ///< of the turned picture into the net

    int tiles() const { return rows * columns; }
    Point2 on_net(Point2 p) const {
        return upright ? Point2{-p.y + shift.x, p.x + shift.y} : Point2{p.x + shift.x, p.y + shift.y};
    }
    Rect on_net(const Rect& r) const;
    /// row counts from the top, as pages are read; both from 1.
    Rect window(int row, int column) const;
};

/// The way round that takes fewer tiles; of equal ones the length across the page.
TileNet net_of(const Shaped& shaped, const TemplateField& field);

/// What is drawn of the field, on the net: outline and cut features, centre lines, break lines, crosses and
/// matching letters. Strokes run over all tiles; page_of cuts them.
Block whole_template(const TileNet& net, const joinery::Made& made);

/// The part of a drawn template that shows in a window; texts only when they lie inside whole.
Block cut_to_window(const Block& whole, const Rect& window);

} // namespace rayfleck::drawing
