#pragma once
// The sheet itself: its size, frame and title block.
//
// A4 and Letter stand upright, A3, A2 and Tabloid lie. The frame leaves 20 mm at the left for filing and 10
// mm on the other sides (ISO 5457). The title block sits in the bottom right corner, 180 mm wide, which is
// the whole width of an A4 sheet between its margins, and holds the fields that ISO 7200 requires with those
// a wood shop needs.

#include <string>

#include "drawing/block.hpp"

namespace rayfleck::drawing {

struct Paper {
    std::string name; ///< A4, A3, A2, Letter, Tabloid
    double width = 420, height = 297;
    double figure =
        3.5; ///< height of dimension figures: 3.5 where the sheet may be printed one size smaller, else 2.5
    /// Inside of the frame line.
    Rect frame() const { return {20, 10, width - 10, height - 10}; }
    Rect title_block() const;
    /// What is left of the frame above the title block, or to the left of it, is found by FreeSpace. This is
    /// the frame with a little air.
    Rect usable() const { return grown(frame(), -4); }
    bool upright() const { return height > width; }
};

/// The paper of that name, in any case of letters; nothing known by it gives A3.
Paper paper(const std::string& name);

/// What stands in a title block, all of it as printed. An empty field prints a dash.
struct TitleFields {
    std::string owner, identification, date, title, approved_by, creator, document_type, revision;
    std::string scale, units, material, moisture;
    bool first_angle = true;
    int sheet = 1, sheets = 1;
};

/// Frame line, centring marks and title block.
Block sheet_frame(const Paper& paper, const TitleFields& fields);

} // namespace rayfleck::drawing
