#pragma once
// The letters of the cuts beside them in the views of a part.

#include "drawing/part_features.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {

/// One view of a part as it stands on the paper.
struct ViewOnPaper {
    solid::View view;
    piece::LocalSide side; ///< the side that looks to the eye
    Rect place;
    LengthMap map{0, 1, 1}; ///< along the length; the end view has none
    measure::Box box;       ///< of the solid, in the part's own frame
    double scale = 1;

    /// Round a box of the part's own frame on the paper, kept within the view.
    Rect on_paper(const measure::Box& own) const;
    /// A point of the part's own frame on the paper; of a long view.
    Point2 on_paper(measure::Point own) const;
    /// A break leaves out wood between the two places, given in the gauge's frame.
    bool is_broken_within(double from, double to, const GaugeFrame& gauge) const;
};

/// Centre lines of the bores in the views from which they are bored: at a small scale the only thing seen of
/// them.
void set_centres(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features);

/// Sets every letter where it touches no line and no text, inside its cut or beside it with a short leader;
/// up to four copies of a cut get theirs. room  nothing is set outside of it
void set_letters(Block& block, const std::vector<ViewOnPaper>& views, const GaugeFrame& gauge,
                 const std::vector<Feature>& features, const Rect& room);

} // namespace rayfleck::drawing
