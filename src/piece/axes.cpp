// Which way a part lies: length, width and thickness along across, deep and up.
//
// The length runs where `runs` or `stands` says. The thickness lies where the face side looks. Untold, the
// text of the place tells: of the two directions left, the one that is spanned by lines or other parts is the
// width, since boards are sized by thickness; where both are spanned, the shorter is the thickness. Where
// nothing tells, a guess: uprights and rails look to the front, boards that lie over or under something look
// up. A guess is marked, so that a contradiction can say how to settle it.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

constexpr std::array size_kinds{syntax::SizeOf::long_, syntax::SizeOf::wide, syntax::SizeOf::thick};

const Expression* told_size(const Instance& instance, int axis, Span* span) {
    for (const syntax::Phrase* phrase : instance.part->phrases)
        if (const auto* size = std::get_if<syntax::SizeIs>(&phrase->says))
            for (const auto& [which, x] : size->sizes)
                if (which == size_kinds[static_cast<std::size_t>(axis)]) {
                    if (span) *span = phrase->span;
                    return &x;
                }
    return nullptr;
}

const syntax::Phrase* stock_phrase(const Instance& instance) {
    for (const syntax::Phrase* phrase : instance.part->phrases)
        if (std::holds_alternative<syntax::StockIs>(phrase->says)) return phrase;
    return nullptr;
}

std::optional<Length> stock_size(const Instance& instance, int axis) {
    const syntax::Phrase* phrase = stock_phrase(instance);
    if (!phrase) return std::nullopt;
    const auto lumber = wood::lumber_named(std::get<syntax::StockIs>(phrase->says).stock.text);
    if (!lumber) return std::nullopt;
    if (axis == 2) return lumber->dressed_thickness;
    if (axis == 1) return lumber->dressed_width;
    return std::nullopt;
}

bool is_spanned(const Instance& instance, Direction d) {
    return instance.spanned[static_cast<std::size_t>(index_of(d))];
}

/// How far apart the ends are that lines and other parts tell.
std::optional<Length> span_by_lines(const Instance& instance, Direction d) {
    std::optional<Length> low, high;
    for (const Demand& demand : instance.demands[static_cast<std::size_t>(index_of(d))]) {
        if (demand.kind == Demand::Kind::low && !low) low = demand.value();
        if (demand.kind == Demand::Kind::high && !high) high = demand.value();
    }
    if (!low || !high) return std::nullopt;
    return *high - *low;
}

/// Over, under, or a told bottom: the part lies on or hangs under something.
bool lies_flat(const Instance& instance) {
    return std::any_of(instance.part->phrases.begin(), instance.part->phrases.end(),
                       [](const syntax::Phrase* phrase) {
                           if (std::holds_alternative<syntax::OverUnder>(phrase->says)) return true;
                           const auto* at = std::get_if<syntax::SideAt>(&phrase->says);
                           return at && at->side.side == Side::bottom;
                       });
}

/// Inside and outside of one of a pair look along the direction in which the two stand apart.
std::optional<Direction> apart(const Instance& instance) {
    using Kind = syntax::Copies::Kind;
    for (const syntax::Copies& copies : instance.part->says->copies) {
        if (copies.kind == Kind::left_right) return Direction::across;
        if (copies.kind == Kind::front_back) return Direction::deep;
        if (copies.kind == Kind::top_bottom) return Direction::up;
    }
    return std::nullopt;
}

struct Looks {
    std::optional<Direction> face, edge;
    Span face_span, edge_span;
};

Looks looks_of(const Instance& instance, Direction length) {
    Looks out;
    for (const syntax::Phrase* phrase : instance.part->phrases)
        if (const auto* looks = std::get_if<syntax::FaceLooks>(&phrase->says)) {
            std::optional<Direction> d = direction_of(looks->towards.side);
            if (!d && apart(instance) != length) d = apart(instance);
            (looks->edge ? out.edge : out.face) = d;
            (looks->edge ? out.edge_span : out.face_span) = phrase->span;
        }
    return out;
}

/// Thickness direction of the two that the length leaves.
std::optional<Direction> thickness_direction(Elaboration& e, Instance& instance, Direction length,
                                             bool& guessed) {
    std::array<Direction, 2> left{};
    std::copy_if(directions.begin(), directions.end(), left.begin(),
                 [&](Direction d) { return d != length; });
    const Looks looks = looks_of(instance, length);
    const auto other = [&](Direction d) { return d == left[0] ? left[1] : left[0]; };
    for (const auto& [told, span, what] : {std::tuple(looks.face, looks.face_span, "face side"),
                                           std::tuple(looks.edge, looks.edge_span, "face edge")})
        if (told && *told == length) {
            e.error("looks-along-grain", span,
                    "the " + std::string(what) + " of `" + instance.part->name +
                        "` cannot look along its length, which runs " + text(length))
                .mend = "let it look " + text(side_of(left[0], false)) + ", " + text(side_of(left[0], true)) +
                        ", " + text(side_of(left[1], false)) + " or " + text(side_of(left[1], true));
            return std::nullopt;
        }
    if (looks.face && looks.edge && *looks.face == *looks.edge) {
        findings::Finding& f =
            e.error("face-against-edge", looks.edge_span,
                    "face side and face edge of `" + instance.part->name + "` look along the same direction");
        f.labels.push_back({looks.face_span, "the face side"});
        return std::nullopt;
    }
    if (looks.face) return looks.face;
    if (looks.edge) return other(*looks.edge);

    const bool first = is_spanned(instance, left[0]), second = is_spanned(instance, left[1]);
    const bool thick = size_is_told(instance, 2), wide = size_is_told(instance, 1);
    if (first != second) {
        const Direction spanned = first ? left[0] : left[1];
        if (wide && !thick) return spanned;
        // A span as long as the part is thick is its thickness.
        if (thick) {
            const auto reach = span_by_lines(instance, spanned), told = stated_size(e, instance, 2);
            if (reach && told && *reach == *told && (!wide || stated_size(e, instance, 1) != told))
                return spanned;
        }
        return other(spanned);
    }
    if (first && second) {
        const auto a = span_by_lines(instance, left[0]), b = span_by_lines(instance, left[1]);
        if (!a || !b) return std::nullopt;
        if (*a != *b) return *a < *b ? left[0] : left[1];
    }
    guessed = true;
    const auto deep_or = [&](Direction d) { return length == Direction::deep ? d : Direction::deep; };
    if (length == Direction::up) return Direction::deep;
    return lies_flat(instance) ? Direction::up : deep_or(Direction::across);
}

} // namespace

bool size_is_told(const Instance& instance, int axis) {
    return told_size(instance, axis, nullptr) != nullptr || stock_size(instance, axis).has_value();
}

bool size_is_of_stock(const Instance& instance, int axis) {
    return told_size(instance, axis, nullptr) == nullptr && stock_size(instance, axis).has_value();
}

bool stock_is_unknown(const Instance& instance) {
    const syntax::Phrase* phrase = stock_phrase(instance);
    return phrase && !wood::lumber_named(std::get<syntax::StockIs>(phrase->says).stock.text);
}

std::optional<Length> stated_size(Elaboration& e, Instance& instance, int axis) {
    phrases_of(e, *instance.part);
    Instance::Stated& stated = instance.stated[static_cast<std::size_t>(axis)];
    if (stated.progress == Progress::done) return stated.value;
    constexpr std::array words{"length", "width", "thickness"};
    const std::string word = words[static_cast<std::size_t>(axis)];
    Span span = instance.part->header;
    const Expression* told = told_size(instance, axis, &span);
    stated.span = span;
    const Working working(e, stated.progress, "the " + word + " of " + instance.part->name, span);
    if (!working.begun()) return stated.value;
    if (!told) {
        stated.value = stock_size(instance, axis);
        if (stated.value) stated.span = stock_phrase(instance)->span;
        return stated.value;
    }
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    const std::optional<Length> value = length_of(e, *told, c);
    if (value && *value <= Length()) {
        e.error("no-size", told->span,
                "the " + word + " of `" + instance.part->name + "` is " + e.shown(*value));
        return stated.value;
    }
    return stated.value = value;
}

std::optional<Direction> length_direction(Elaboration& e, Instance& instance) {
    for (const syntax::Phrase* phrase : phrases_of(e, *instance.part))
        if (const auto* runs = std::get_if<syntax::RunsAlong>(&phrase->says)) return runs->direction;
    // One reading only: thickness and width are told, and one direction is spanned.
    std::vector<Direction> spanned;
    for (const Direction d : directions)
        if (is_spanned(instance, d)) spanned.push_back(d);
    if (spanned.size() == 1 && size_is_told(instance, 1) && size_is_told(instance, 2)) return spanned.front();
    if (!instance.quiet && !stock_is_unknown(instance)) {
        findings::Finding& f =
            e.error("no-direction", instance.part->header,
                    "it is not told which way the length of `" + instance.part->name + "` runs");
        f.mend = "the length goes with the grain: write `runs across`, `runs deep` or `stands`";
    }
    return std::nullopt;
}

int axis_along(const Axes& axes, Direction direction) {
    for (int k = 0; k < 3; ++k)
        if (axes.along[static_cast<std::size_t>(k)] == direction) return k;
    return 0;
}

const Axes& axes_of(Elaboration& e, Instance& instance) {
    Axes& axes = instance.axes;
    if (axes.progress == Progress::done) return axes;
    const Working working(e, axes.progress, "the way " + instance.part->name + " lies",
                          instance.part->header);
    if (!working.begun()) return axes;
    read_demands(e, instance);
    const std::optional<Direction> length = length_direction(e, instance);
    if (!length) return axes;
    const std::optional<Direction> thickness = thickness_direction(e, instance, *length, axes.guessed);
    if (!thickness) return axes;
    axes.along[0] = *length;
    axes.along[2] = *thickness;
    for (const Direction d : directions)
        if (d != *length && d != *thickness) axes.along[1] = d;
    axes.known = true;
    return axes;
}

} // namespace rayfleck::piece
