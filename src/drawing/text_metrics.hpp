#pragma once
// How a line of text is set: in which face, where each stretch of it stands, how much room it takes. The
// layout asks for widths and boxes (see sheet.hpp), the writers draw exactly the runs listed here, so both
// agree.
//
// Text in the lettering face has its inch fractions built: `17-5/8` becomes 17, a small 5, a bar, a small 8,
// the way dimension figures are lettered by hand; other faces keep it as typed. Built is what looks like a
// fraction of an inch rule: less than one, bottom a power of two up to 128, alone or after a whole number and
// a hyphen. So `8/4` stock and sheet `1/3` stay on one line. Left out: kerning, ligatures, right-to-left
// scripts, placing of loose accents.

#include <string>
#include <vector>

#include "drawing/sheet.hpp"

namespace rayfleck::drawing {

/// A stretch of characters of one size. Places in mm from the text's anchor, before the text is turned.
struct TypeRun {
    double x = 0, y = 0;   ///< left end of its base line
    double cap_height = 0; ///< mm
    double width = 0;      ///< mm
    std::string words;     ///< UTF-8; only characters the face has
};

/// The bar of a built fraction: a level line centred on y.
struct FractionBar {
    double from = 0, to = 0, y = 0, thickness = 0;
};

/// Runs that are read as one: a plain stretch, or a word with built fractions.
struct TextPiece {
    std::vector<TypeRun> runs;
    std::vector<FractionBar> bars;
    /// What the piece says when that is not what its runs spell: `17-5/8"`, or characters that no built-in
    /// font has.
    std::string says;
};

struct MeasuredText {
    Typeface face = Typeface::sans; ///< the face it is set in, after falling back
    std::vector<TextPiece> pieces;
    double width = 0;
    /// Reach below and above the base line: the ink, at least from the base line to the cap height.
    double lowest = 0, highest = 0;
};

/// words       UTF-8, one line; control characters count as spaces, broken bytes as U+FFFD, characters that
/// no
///             built-in font has are set as an empty box
/// cap_height  mm
MeasuredText measure_text(const std::string& words, double cap_height, Typeface face);

/// Type size in mm that gives letters of this cap height.
double type_size(double cap_height, Typeface face);

} // namespace rayfleck::drawing
