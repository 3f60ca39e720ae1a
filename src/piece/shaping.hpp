#pragma once
// What the shaping phrases share: the part that is being cut, and positions in its own frame; inside this
// room only.
//
// Positions on rods are read on the part's own axes as it stood before leaning: a height on a leaning leg is
// the place where the leg's axis passes that height.

#include "piece/elaboration.hpp"

namespace rayfleck::piece {

struct Shaper {
    Elaboration& e;
    Instance& instance;
    const Pose& pose;
    Part& part;

    Context context(std::optional<Direction> along = std::nullopt) const;
    std::optional<Length> length(const Expression& x) const;
    /// A length that must be more than nought.
    std::optional<double> positive(const Expression& x, const std::string& what) const;
    /// A position as a coordinate on own axis k.
    std::optional<double> along(const Expression& x, int axis) const;
    double size(int axis) const { return pose.size[static_cast<std::size_t>(axis)].value(); }
    const std::string& name() const { return instance.part->name; }
    template <class Shape> void add(std::string word, Shape shape, Span span, std::string remark = {}) const {
        part.shaping.push_back({std::move(word), std::move(shape), span, -1, std::move(remark)});
    }
};

/// The stretch of an own axis that a groove or rabbet runs over, between its stops.
std::optional<std::pair<double, double>>
stopped_reach(Shaper& s, int axis,
              const std::vector<std::pair<Expression, std::optional<syntax::SideName>>>& stops);

void shape_taper(Shaper& s, const syntax::Taper& says, Span span);
void shape_edges(Shaper& s, const syntax::EdgeShape& says, Span span);
void shape_rabbet(Shaper& s, const syntax::Rabbet& says, Span span);
void shape_miter(Shaper& s, const syntax::Miter& says, Span span);
void shape_trim(Shaper& s, const syntax::TrimTo& says, Span span);
void shape_bore(Shaper& s, const syntax::Bore& says, Span span);
void shape_groove(Shaper& s, const syntax::Groove& says, Span span);
void shape_notch(Shaper& s, const syntax::Notch& says, Span span);
void shape_curve(Shaper& s, const syntax::CurveEdge& says, Span span);
void shape_outline(Shaper& s, const syntax::OutlineIs& says, Span span);
void shape_turned(Shaper& s, const syntax::TurnedIs& says, Span span);

} // namespace rayfleck::piece
