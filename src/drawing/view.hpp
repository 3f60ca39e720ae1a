#pragma once
// Views of the model as strokes: projected edges joined into long lines, visible ones wide, hidden ones
// dashed.
//
// Which hidden edges are drawn: in the principal views of the piece only those of whole parts, as if no joint
// were cut, so that a mortise inside a leg does not clutter the elevation (assembly_sheet.cpp says of which
// parts); in part drawings all of them; in pictures none, but for parts that would not be seen at all. Lines
// nearer to each other than 0.7 mm on paper run together in print (ISO 128 asks for that much, from memory),
// so of such a pair the shorter is left out. Left out: centre lines of round parts, hatching.

#include <vector>

#include "drawing/block.hpp"
#include "solid/solid.hpp"

namespace rayfleck::drawing {

using solid::Segment2;

/// What is seen of some parts in one direction, in mm of wood in the picture plane.
struct Seen {
    std::vector<Segment2> visible, hidden;
    Rect box;
};

/// with_hidden  hidden edges too
Seen look_at(const std::vector<solid::Placed>& parts, const solid::View& view, bool with_hidden);

/// Lines that lie on one another or touch end to end in one direction become one.
std::vector<Segment2> united(const std::vector<Segment2>& segments);
/// Of lines closer side by side than `gap` the longer ones; of the others what runs beyond.
/// also  lines that stay in any case
std::vector<Segment2> thinned(const std::vector<Segment2>& segments, double gap,
                              const std::vector<Segment2>& also = {});
/// The lines without the stretches on which one of `others` lies.
std::vector<Segment2> without(const std::vector<Segment2>& segments, const std::vector<Segment2>& others);
/// Segments that meet two by two become polylines; closed ones repeat their first point.
std::vector<std::vector<Point2>> chained(const std::vector<Segment2>& segments);

/// Where wood lies on paper along the horizontal of a view, when stretches of a long part are left out.
class LengthMap {
  public:
    /// All of [from, to] at that scale; `from` comes to lie at 0.
    LengthMap(double from, double to, double scale);
    /// The same without the middles of the stretches in which nothing happens, so that the whole is no longer
    /// than `paper` mm if that can be had. `nodes` are places that must be shown, ascending.
    static LengthMap broken(double from, double to, double scale, const std::vector<double>& nodes,
                            double paper);

    struct Kept {
        double from = 0, to = 0; ///< mm of wood
        double at = 0;           ///< paper, of `from`
    };
    const std::vector<Kept>& kept() const { return kept_; }
    bool is_broken() const { return kept_.size() > 1; }
    double scale() const { return scale_; }
    double on_paper(double x) const;
    double length_on_paper() const { return on_paper(kept_.back().to); }

  private:
    double scale_ = 1;
    std::vector<Kept> kept_;
};

/// Draws what is seen with its own (from, box.bottom) at `origin`; breaks are marked with zig-zag lines.
void draw_seen(Block& block, const Seen& seen, const LengthMap& map, Point2 origin, Role role = Role::edge);
/// The same without breaks, the lower left corner of its box at `origin`.
void draw_seen(Block& block, const Seen& seen, double scale, Point2 origin, Role role = Role::edge);

} // namespace rayfleck::drawing
