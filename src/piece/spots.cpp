// A part's place in one direction, from what its block demands.
//
// Low end, high end, middle and size: any two fix the place, every further one must agree exactly. A
// contradiction names the two phrases and their figures; too few say what is open. Faces and middles of other
// parts are asked for here; a part that leans is met at the asker's own height.

#include "piece/elaboration.hpp"

#include <algorithm>

namespace rayfleck::piece {
namespace {

struct Known {
    Demand::Kind kind;
    Length value;
    Span span;
};

std::string words(Direction d, int axis, Demand::Kind kind) {
    constexpr std::array sizes{"length", "width", "thickness"};
    switch (kind) {
    case Demand::Kind::low:
        return "its " + text(side_of(d, false)) + " at ";
    case Demand::Kind::high:
        return "its " + text(side_of(d, true)) + " at ";
    case Demand::Kind::centre:
        return "its middle at ";
    case Demand::Kind::size:
        return "its " + std::string(sizes[static_cast<std::size_t>(axis)]) + " ";
    }
    return {};
}

struct Solver {
    Elaboration& e;
    Instance& self;
    Direction d;
    int axis = 0;
    bool guessed = false;
    std::vector<Known> known;
    bool faulty = false;

    const std::string& name() const { return self.part->name; }

    std::string says(const Known& k) const { return words(d, axis, k.kind) + e.shown(k.value); }

    /// Drops what is told twice alike; what is told twice differently is a contradiction.
    void add(Known more) {
        for (const Known& k : known)
            if (k.kind == more.kind) {
                if (k.value != more.value) contradiction({k, more});
                return;
            }
        known.push_back(more);
    }

    void contradiction(const std::vector<Known>& told) {
        faulty = true;
        std::string list;
        for (std::size_t i = 0; i < told.size(); ++i)
            list += (i == 0 ? "" : i + 1 == told.size() ? " and " : ", ") + says(told[i]);
        findings::Finding& f = e.error("contradiction", told.back().span,
                                       "`" + name() + "` cannot have " + list + " (" + text(d) + ")");
        for (std::size_t i = 0; i + 1 < told.size(); ++i)
            if (!(told[i].span == told.back().span)) f.labels.push_back({told[i].span, says(told[i])});
        f.mend = guessed
                     ? "leave one of them out, or say which way the face side looks, as in `face side top`"
                     : "leave one of them out, or change it to agree";
    }

    const Known* find(Demand::Kind kind) const {
        for (const Known& k : known)
            if (k.kind == kind) return &k;
        return nullptr;
    }

    void open() {
        if (self.quiet || faulty) return;
        if (axis != 0 && find(Demand::Kind::size) == nullptr && stock_is_unknown(self)) return;
        const bool placed = find(Demand::Kind::low) || find(Demand::Kind::high) || find(Demand::Kind::centre);
        constexpr std::array sizes{"length", "width", "thickness"};
        constexpr std::array examples{"20 x 60 x 400", "60 wide", "20 thick"};
        const std::string size = sizes[static_cast<std::size_t>(axis)];
        findings::Finding* f = nullptr;
        if (placed || find(Demand::Kind::size) == nullptr) {
            f = &e.error("open-size", self.part->header,
                         "nothing tells how far `" + name() + "` reaches " + text(d) + " (its " + size + ")");
            f->mend = "give its " + size + ", as in `size " + examples[static_cast<std::size_t>(axis)] +
                      "`, or the lines it lies between, as in `from ... to ...`";
        } else {
            f = &e.error("open-place", self.part->header,
                         "nothing tells where `" + name() + "` stands " + text(d));
            f->mend = "write `" + text(side_of(d, false)) + " at ...`, `" + text(side_of(d, true)) +
                      " at ...`, `centred " + text(d) + "`, or `from ... to ...`";
        }
        for (const Known& k : known) f->labels.push_back({k.span, "tells " + says(k)});
        if (guessed) f->mend += "; or say which way the face side looks";
    }

    void solve(Spot& spot) {
        using Kind = Demand::Kind;
        const Known *low = find(Kind::low), *high = find(Kind::high), *centre = find(Kind::centre),
                    *size = find(Kind::size);
        if (known.size() < 2) return open();
        if (low && high) {
            spot.low = low->value;
            spot.high = high->value;
        } else if (size && low) {
            spot.low = low->value;
            spot.high = low->value + size->value;
        } else if (size && high) {
            spot.high = high->value;
            spot.low = high->value - size->value;
        } else if (size) {
            spot.low = centre->value - size->value / Rational(2);
            spot.high = centre->value + size->value / Rational(2);
        } else if (low) {
            spot.low = low->value;
            spot.high = centre->value * Rational(2) - low->value;
        } else {
            spot.high = high->value;
            spot.low = centre->value * Rational(2) - high->value;
        }
        if (size && spot.high - spot.low != size->value) return contradiction({*low, *high, *size});
        if (centre && spot.low + spot.high != centre->value * Rational(2)) {
            std::vector<Known> told;
            for (const Known* k : {low, high, size, centre})
                if (k && told.size() < 3) told.push_back(*k);
            return contradiction(told);
        }
        if (spot.high <= spot.low) {
            findings::Finding& f =
                e.error("no-size", low ? low->span : known.front().span,
                        "`" + name() + "` would end before it begins " + text(d) + ": its " +
                            text(side_of(d, false)) + " is at " + e.shown(spot.low) + ", its " +
                            text(side_of(d, true)) + " at " + e.shown(spot.high));
            if (high && low && !(high->span == low->span)) f.labels.push_back({high->span, says(*high)});
            return;
        }
        spot.known = !faulty;
    }
};

/// How far a row's clause moves this copy on from the first.
std::optional<Length> shift_of(Elaboration& e, Instance& instance, Direction d) {
    Length shift;
    Context c;
    c.scope = instance.part->scope;
    // The step may hang on the part's own size: on that of the first, which no row moves.
    c.self = instance.part->instances.front().get();
    for (const Instance::Row& row : instance.rows) {
        if (row.clause->direction != d || row.clause->reach || row.of < 2) continue;
        if (!row.clause->spaced) {
            e.error("open-row", row.clause->span,
                    "nothing tells how far apart the row of `" + instance.part->name + "` stands")
                .mend = "add `spaced 60` (from one to the next), or `from ... to ...` for even gaps";
            return std::nullopt;
        }
        if (row.place == 0) continue;
        const auto step = length_of(e, *row.clause->spaced, c);
        if (!step) return std::nullopt;
        shift += *step * Rational(row.place);
    }
    return shift;
}

void point_to_point(Elaboration& e, Instance& instance, const syntax::PointToPoint& says, Direction d,
                    Spot& spot) {
    const auto i = static_cast<std::size_t>(index_of(d));
    if (says.from.size() != 3 || says.to.size() != 3) return;
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    c.along = d;
    const auto from = length_of(e, says.from[i], c), to = length_of(e, says.to[i], c);
    if (!from || !to) return;
    spot.low = std::min(*from, *to);
    spot.high = std::max(*from, *to);
    spot.known = true;
}

const syntax::PointToPoint* points_of(Elaboration& e, Instance& instance) {
    for (const syntax::Phrase* phrase : phrases_of(e, *instance.part))
        if (const auto* points = std::get_if<syntax::PointToPoint>(&phrase->says)) return points;
    return nullptr;
}

void place(Elaboration& e, Instance& instance, Direction d, Spot& spot) {
    if (const syntax::PointToPoint* points = points_of(e, instance))
        return point_to_point(e, instance, *points, d, spot);
    read_demands(e, instance);
    const Axes& axes = axes_of(e, instance);
    if (!axes.known) return;
    Solver solver{e, instance, d, axis_along(axes, d), axes.guessed, {}, false};
    for (const Demand& demand : instance.demands[static_cast<std::size_t>(index_of(d))]) {
        const std::optional<Length> value = demand.value();
        if (value)
            solver.add({demand.kind, *value, demand.span});
        else
            solver.faulty = true;
    }
    const bool spare_stock = size_is_of_stock(instance, solver.axis) && solver.known.size() >= 2;
    if (size_is_told(instance, solver.axis) && !spare_stock) {
        const std::optional<Length> size = stated_size(e, instance, solver.axis);
        if (size)
            solver.add(
                {Demand::Kind::size, *size, instance.stated[static_cast<std::size_t>(solver.axis)].span});
        else
            solver.faulty = true;
    }
    if (solver.faulty) return;
    solver.solve(spot);
    if (!spot.known) return;
    const std::optional<Length> shift = shift_of(e, instance, d);
    if (!shift) {
        spot.known = false;
        return;
    }
    spot.low += *shift;
    spot.high += *shift;
}

} // namespace

const Spot& spot_of(Elaboration& e, Instance& instance, Direction direction) {
    Spot& spot = instance.spots[static_cast<std::size_t>(index_of(direction))];
    if (spot.progress == Progress::done) return spot;
    const Working working(e, spot.progress, instance.part->name + " " + text(direction),
                          instance.part->header);
    if (!working.begun()) return spot;
    try {
        place(e, instance, direction, spot);
    } catch (const measure::TooLarge&) {
        e.error("too-large", instance.part->header,
                "the place of `" + instance.part->name + "` " + text(direction) +
                    " is too finely divided to be kept exact");
        spot.known = false;
    }
    return spot;
}

std::optional<Interval> interval_of(Elaboration& e, const PartRef& ref, Direction direction) {
    const Spot& spot = spot_of(e, *ref.instance, direction);
    if (!spot.known) return std::nullopt;
    return carried(e, ref, direction, {spot.low, spot.high});
}

std::optional<bool> faces_high(Elaboration& e, const PartRef& ref, Side side, Direction direction,
                               Scope& scope, Span span) {
    if (const auto plain = direction_of(side)) return is_high(side);
    const std::optional<Interval> at = interval_of(e, ref, direction);
    const std::optional<Length> middle = middle_of(e, scope, direction);
    if (!at) return std::nullopt;
    if (!middle) {
        if (!e.lines_may_be_lost && scope.rods[static_cast<std::size_t>(index_of(direction))].empty())
            e.error("no-rod", span,
                    "without a rod " + text(direction) + " there is no " + text(side) + " " +
                        text(direction));
        return std::nullopt;
    }
    if (at->low < *middle && at->high > *middle) {
        e.error("no-inside", span,
                "`" + ref.name + "` stands across the middle of the piece, so it has no " + text(side) + " " +
                    text(direction))
            .mend =
            "name the side: " + text(side_of(direction, false)) + " or " + text(side_of(direction, true));
        return std::nullopt;
    }
    const bool low_half = at->high <= *middle;
    return (side == Side::outside) != low_half;
}

std::optional<Interval> gap_of(Elaboration& e, Instance& instance, Direction direction) {
    const syntax::Between& says = *instance.between[static_cast<std::size_t>(index_of(direction))];
    const Span span = instance.between_span[static_cast<std::size_t>(index_of(direction))];
    Scope& scope = *instance.part->scope;
    std::vector<PartRef> refs;
    std::vector<Interval> at;
    const auto take = [&](const PartRef& ref) {
        const auto interval = interval_of(e, ref, direction);
        if (!interval) return false;
        const bool again = std::any_of(at.begin(), at.end(), [&](const Interval& other) {
            return other.low == interval->low && other.high == interval->high;
        });
        if (again && !says.b) return true;
        refs.push_back(ref);
        at.push_back(*interval);
        return true;
    };
    if (says.b) {
        const auto a = part_named(e, scope, says.a, &instance), b = part_named(e, scope, *says.b, &instance);
        if (!a || !b || !take(*a) || !take(*b)) return std::nullopt;
    } else {
        const std::vector<PartRef> all = parts_named(e, scope, says.a);
        if (all.empty()) return std::nullopt;
        for (const PartRef& ref : all)
            if (ref.instance == &instance || !take(ref)) return std::nullopt;
        if (refs.size() != 2) {
            const std::string& name = says.a.name.text;
            findings::Finding& f =
                e.error("between-what", span,
                        refs.size() < 2 ? "`" + name + "` stands in one place only " + text(direction) +
                                              ", so nothing lies between"
                                        : "`" + name + "` stands in " + std::to_string(refs.size()) +
                                              " places " + text(direction));
            f.mend = "name both, as in `between " + all.front().name + " and ...`";
            return std::nullopt;
        }
    }
    if (at[1].high <= at[0].low) {
        std::swap(at[0], at[1]);
        std::swap(refs[0], refs[1]);
    }
    if (at[0].high > at[1].low) {
        e.error("no-gap", span,
                "there is no gap " + text(direction) + " between `" + refs[0].name + "` (" +
                    e.shown(at[0].low) + " to " + e.shown(at[0].high) + ") and `" + refs[1].name + "` (" +
                    e.shown(at[1].low) + " to " + e.shown(at[1].high) + ")");
        return std::nullopt;
    }
    instance.neighbours[static_cast<std::size_t>(index_of(direction))] = refs;
    return between_leaning(e, instance, direction, refs[0], refs[1], {at[0].high, at[1].low});
}

Quantity face_position(Elaboration& e, const Expression& x, const Context& c) {
    if (!x.part) return {};
    const std::optional<PartRef> ref = part_named(e, *c.scope, *x.part, c.self);
    if (!ref) return {};
    std::optional<Direction> d = direction_of(x.side);
    if (!d) d = c.along;
    if (!d) {
        e.error("which-side", x.span,
                "it is not clear along which direction the " + text(x.side) + " of `" + x.part->name.text +
                    "` lies here")
            .mend = "write left, right, front, back, top or bottom";
        return {};
    }
    const auto high = faces_high(e, *ref, x.side, *d, *c.scope, x.span);
    if (!high) return {};
    const auto at = face_at(e, *ref, *d, *high, c);
    return at ? Quantity::length(*at) : Quantity{};
}

Quantity size_of_part(Elaboration& e, const Expression& x, const Context& c) {
    if (!x.part) return {};
    const std::optional<PartRef> ref = part_named(e, *c.scope, *x.part, c.self);
    if (!ref) return {};
    const int axis = x.word == "length" ? 0 : x.word == "width" ? 1 : 2;
    if (const auto told = stated_size(e, *ref->instance, axis)) return Quantity::length(*told);
    if (is_tilted(e, *ref->instance)) {
        const Pose& pose = pose_of(e, *ref->instance);
        return pose.known ? Quantity::length(pose.size[static_cast<std::size_t>(axis)]) : Quantity{};
    }
    const Axes& axes = axes_of(e, *ref->instance);
    if (!axes.known) return {};
    const Spot& spot = spot_of(e, *ref->instance, axes.along[static_cast<std::size_t>(axis)]);
    return spot.known ? Quantity::length(spot.high - spot.low) : Quantity{};
}

} // namespace rayfleck::piece
