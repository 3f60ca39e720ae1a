// Shaping phrases, in the order of the text.

#include "piece/shaping.hpp"

namespace rayfleck::piece {

Context Shaper::context(std::optional<Direction> along) const {
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    c.along = along;
    c.shaping = true;
    return c;
}

std::optional<Length> Shaper::length(const Expression& x) const { return length_of(e, x, context()); }

std::optional<double> Shaper::positive(const Expression& x, const std::string& what) const {
    const auto value = length(x);
    if (!value) return std::nullopt;
    if (*value <= Length()) {
        e.error("no-size", x.span, what + " is " + e.shown(*value) + ", and must be more than nought");
        return std::nullopt;
    }
    return value->value();
}

std::optional<double> Shaper::along(const Expression& x, int axis) const {
    const Direction d = pose.readings[static_cast<std::size_t>(axis)].direction;
    const auto told = direction_of(e, x, *instance.part->scope, instance.each);
    if (told && *told != d) {
        e.error("two-rods", x.span,
                "this position is on the rod " + text(*told) + ", where one " + text(d) + " is wanted");
        return std::nullopt;
    }
    const auto at = length_of(e, x, context(d));
    if (!at) return std::nullopt;
    return own_coordinate(pose, axis, *at);
}

namespace {

/// Phrases that shape nothing are passed over.
struct ShapeBy {
    Shaper& s;
    Span span;
    void operator()(const syntax::Taper& says) { shape_taper(s, says, span); }
    void operator()(const syntax::EdgeShape& says) { shape_edges(s, says, span); }
    void operator()(const syntax::Rabbet& says) { shape_rabbet(s, says, span); }
    void operator()(const syntax::Miter& says) { shape_miter(s, says, span); }
    void operator()(const syntax::TrimTo& says) { shape_trim(s, says, span); }
    void operator()(const syntax::Bore& says) { shape_bore(s, says, span); }
    void operator()(const syntax::Groove& says) { shape_groove(s, says, span); }
    void operator()(const syntax::Notch& says) { shape_notch(s, says, span); }
    void operator()(const syntax::CurveEdge& says) { shape_curve(s, says, span); }
    void operator()(const syntax::OutlineIs& says) { shape_outline(s, says, span); }
    void operator()(const syntax::TurnedIs& says) { shape_turned(s, says, span); }
    template <class Other> void operator()(const Other&) {}
};

} // namespace

void shape(Elaboration& e, Instance& instance, Part& part) {
    const Pose& pose = pose_of(e, instance);
    if (!pose.known) return;
    Shaper s{e, instance, pose, part};
    for (const syntax::Phrase* phrase : instance.part->phrases) {
        try {
            std::visit(ShapeBy{s, phrase->span}, phrase->says);
        } catch (const measure::TooLarge&) {
            e.error("too-large", phrase->span,
                    "a size of this phrase is too large or too finely divided to be kept exact");
        }
    }
}

} // namespace rayfleck::piece
