// What a part's block demands of its place, direction by direction.
//
// Each phrase becomes demands on the low end, the high end, the middle or the size in one direction. Lines
// and sides tell the direction. Phrases that leave it open wait until all others have spoken: `between legs`
// then lies along the length if nothing else fixes that, `set back 4 from outside of leg` and the like take
// the only direction that is still open, `centred on leg` every open one. Values are worked out later, when
// somebody asks for the place.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Phrase;

struct Reader {
    Elaboration& e;
    Instance& self;
    std::vector<const Phrase*> waiting;

    Scope& scope() const { return *self.part->scope; }
    Context context(Direction d) const {
        Context c;
        c.scope = self.part->scope;
        c.self = &self;
        c.along = d;
        return c;
    }
    std::optional<Direction> direction(const Expression& x) const {
        return direction_of(e, x, scope(), self.each);
    }

    std::vector<Demand>& on(Direction d) { return self.demands[static_cast<std::size_t>(index_of(d))]; }
    bool is_open(Direction d) { return on(d).empty(); }

    void demand(Direction d, Demand::Kind kind, Span span, std::function<std::optional<Length>()> value) {
        on(d).push_back({kind, span, std::move(value)});
    }
    void demand_end(Direction d, bool high, Span span, std::function<std::optional<Length>()> value) {
        demand(d, high ? Demand::Kind::high : Demand::Kind::low, span, std::move(value));
    }
    std::function<std::optional<Length>()> position(Direction d, const Expression& x) {
        return [this_e = &e, c = context(d), x = &x] { return length_of(*this_e, *x, c); };
    }

    void spanned_by(Direction d, Span span, std::function<std::optional<Interval>()> gap) {
        demand(d, Demand::Kind::low, span, [gap]() -> std::optional<Length> {
            const auto found = gap();
            return found ? std::optional(found->low) : std::nullopt;
        });
        demand(d, Demand::Kind::high, span, [gap]() -> std::optional<Length> {
            const auto found = gap();
            return found ? std::optional(found->high) : std::nullopt;
        });
        self.spanned[static_cast<std::size_t>(index_of(d))] = true;
    }

    void from_to(Direction d, Span span, const syntax::FromTo& says) {
        const auto from = position(d, says.from), to = position(d, says.to);
        spanned_by(d, span, [from, to]() -> std::optional<Interval> {
            const auto a = from(), b = to();
            if (!a || !b) return std::nullopt;
            return Interval{std::min(*a, *b), std::max(*a, *b)};
        });
    }

    void between(Direction d, Span span, const syntax::Between& says) {
        self.between[static_cast<std::size_t>(index_of(d))] = &says;
        self.between_span[static_cast<std::size_t>(index_of(d))] = span;
        spanned_by(d, span, [this_e = &e, instance = &self, d] { return gap_of(*this_e, *instance, d); });
    }

    /// Which of the part's own ends along d is meant by inside or outside, given where it is to stand.
    bool end_is_high(Side side, Direction d, const std::optional<Length>& at) {
        if (direction_of(side)) return is_high(side);
        // The first of a pair stands on the low side; else the place itself tells.
        bool low_half = true;
        bool paired = false;
        for (const syntax::Copies& copies : self.part->says->copies) {
            using Kind = syntax::Copies::Kind;
            paired = paired || (copies.kind == Kind::each_corner && d != Direction::up) ||
                     (copies.kind == Kind::left_right && d == Direction::across) ||
                     (copies.kind == Kind::front_back && d == Direction::deep) ||
                     (copies.kind == Kind::top_bottom && d == Direction::up);
        }
        if (!paired && at)
            if (const auto middle = middle_of(e, scope(), d)) low_half = *at <= *middle;
        return (side == Side::outside) != low_half;
    }

    void side_at(Direction d, Span span, const syntax::SideAt& says) {
        const auto at = position(d, says.position);
        if (!direction_of(says.side.side)) {
            const bool high = end_is_high(says.side.side, d, at());
            demand_end(d, high, span, at);
            return;
        }
        demand_end(d, is_high(says.side.side), span, at);
    }

    /// Own side `distance` inwards from the same side of a part or of the piece.
    void set_back(Direction d, Span span, const syntax::SetBack& says) {
        const auto distance = position(d, says.distance);
        if (!says.of) {
            const bool high = end_is_high(says.from.side, d, std::nullopt);
            demand_end(d, high, span,
                       [this_e = &e, where = &scope(), d, high, distance]() -> std::optional<Length> {
                           const auto reach = reach_of(*this_e, *where, d);
                           const auto by = distance();
                           if (!reach || !by) return std::nullopt;
                           return high ? reach->high - *by : reach->low + *by;
                       });
            return;
        }
        beside(d, span, says.from.side, *says.of, [distance](bool high) -> std::optional<Length> {
            const auto by = distance();
            if (!by) return std::nullopt;
            return high ? -*by : *by;
        });
    }

    /// Own side level with the same side of another part, moved by a signed distance.
    void beside(Direction d, Span span, Side side, const syntax::PartName& of,
                std::function<std::optional<Length>(bool high)> moved) {
        const auto looks = [this_e = &e, instance = &self, side, d, name = &of,
                            span]() -> std::optional<bool> {
            const auto ref = part_named(*this_e, *instance->part->scope, *name, instance);
            if (!ref) return std::nullopt;
            return faces_high(*this_e, *ref, side, d, *instance->part->scope, span);
        };
        // The end is known at once for a plain side; for inside and outside it hangs on where the other part
        // stands.
        bool high = false;
        if (direction_of(side)) {
            high = is_high(side);
        } else {
            const auto found = looks();
            if (!found) {
                self.quiet = true;
                return;
            }
            high = *found;
        }
        demand_end(d, high, span,
                   [this_e = &e, c = context(d), d, name = &of, high, moved]() -> std::optional<Length> {
                       const auto ref = part_named(*this_e, *c.scope, *name, c.self);
                       if (!ref) return std::nullopt;
                       const auto face = face_at(*this_e, *ref, d, high, c);
                       const auto by = moved(high);
                       if (!face || !by) return std::nullopt;
                       return *face + *by;
                   });
    }

    /// Own end beyond the outermost end of all copies of a part.
    void overhanging(Direction d, bool high, Span span, const syntax::Overhanging& says) {
        demand_end(d, high, span,
                   [this_e = &e, c = context(d), d, high, s = &says]() -> std::optional<Length> {
                       const auto by = length_of(*this_e, s->by, c);
                       std::optional<Length> outer;
                       for (const PartRef& ref : parts_named(*this_e, *c.scope, s->part)) {
                           if (ref.instance == c.self) continue;
                           const auto face = face_at(*this_e, ref, d, high, c);
                           if (!face) return std::nullopt;
                           if (!outer || (high ? *face > *outer : *face < *outer)) outer = face;
                       }
                       if (!outer || !by) return std::nullopt;
                       return high ? *outer + *by : *outer - *by;
                   });
    }

    void over_under(Span span, const syntax::OverUnder& says) {
        const bool over = says.over;
        demand_end(
            Direction::up, !over, span,
            [this_e = &e, c = context(Direction::up), over, name = &says.part]() -> std::optional<Length> {
                std::optional<Length> outer;
                for (const PartRef& ref : parts_named(*this_e, *c.scope, *name)) {
                    if (ref.instance == c.self) continue;
                    const auto face = face_at(*this_e, ref, Direction::up, over, c);
                    if (!face) return std::nullopt;
                    if (!outer || (over ? *face > *outer : *face < *outer)) outer = face;
                }
                return outer;
            });
    }

    /// `centred on seam`: one word may be a part or a line. A part of that name comes first.
    bool means_part(const syntax::CentredOn& says) const {
        if (!says.part) return false;
        const std::string& name = says.part->name.text;
        if (says.between.empty() || scope().part_names.contains(name)) return true;
        const bool side = name == "left" || name == "right" || name == "front" || name == "back" ||
                          name == "top" || name == "bottom";
        return !side && find_line(scope(), name) == nullptr && find_value(scope(), name) == nullptr;
    }

    void centred(Direction d, Span span, const syntax::CentredOn& says) {
        const Context c = context(d);
        if (means_part(says)) {
            demand(d, Demand::Kind::centre, span,
                   [this_e = &e, c, d, name = &*says.part]() -> std::optional<Length> {
                       const auto ref = part_named(*this_e, *c.scope, *name, c.self);
                       return ref ? middle_at(*this_e, *ref, d, c) : std::nullopt;
                   });
        } else if (says.between.empty()) {
            demand(d, Demand::Kind::centre, span, [this_e = &e, c, d, span]() -> std::optional<Length> {
                const auto middle = middle_of(*this_e, *c.scope, d);
                if (!middle && c.scope->rods[static_cast<std::size_t>(index_of(d))].empty() &&
                    !this_e->lines_may_be_lost)
                    this_e->error("no-rod", span, "there is no rod " + text(d) + " to be centred on").mend =
                        "lay out a rod " + text(d) + ", or write `centred between ... and ...`";
                return middle;
            });
        } else {
            std::vector<std::function<std::optional<Length>()>> ends;
            for (const Expression& x : says.between) ends.push_back(position(d, x));
            demand(d, Demand::Kind::centre, span, [ends]() -> std::optional<Length> {
                const auto a = ends.front()(), b = ends.back()();
                if (!a || !b) return std::nullopt;
                return (*a + *b) / Rational(2);
            });
        }
    }

    /// The place of the first in a row that is spread evenly: a gap before it as wide as those between.
    void rows() {
        for (const Instance::Row& row : self.rows) {
            if (!row.clause->reach) continue;
            const Direction d = row.clause->direction;
            demand(d, Demand::Kind::low, row.clause->span,
                   [this_e = &e, instance = &self, d, row, c = context(d)]() -> std::optional<Length> {
                       const auto reach_low = length_of(*this_e, row.clause->reach->from, c);
                       const auto reach_high = length_of(*this_e, row.clause->reach->to, c);
                       const Axes& axes = axes_of(*this_e, *instance);
                       if (!axes.known) return std::nullopt;
                       const auto size = stated_size(*this_e, *instance, axis_along(axes, d));
                       if (!reach_low || !reach_high || !size) {
                           if (reach_low && reach_high && !size_is_told(*instance, axis_along(axes, d)))
                               this_e
                                   ->error("open-size", row.clause->span,
                                           "the row of `" + instance->part->name +
                                               "` needs to know how big each is " + text(d))
                                   .mend = "give its size, as in `size 20 thick`";
                           return std::nullopt;
                       }
                       const Length low = std::min(*reach_low, *reach_high),
                                    high = std::max(*reach_low, *reach_high);
                       const Length gap = (high - low - *size * Rational(row.of)) / Rational(row.of + 1);
                       if (gap < Length()) {
                           this_e->error("row-too-long", row.clause->span,
                                         std::to_string(row.of) + " of `" + instance->part->name +
                                             "`, each " + this_e->shown(*size) + ", do not fit into " +
                                             this_e->shown(high - low));
                           return std::nullopt;
                       }
                       return low + gap + (gap + *size) * Rational(row.place);
                   });
        }
    }

    /// First round: everything whose direction the text tells.
    void read(const Phrase& phrase) {
        const Span span = phrase.span;
        if (std::holds_alternative<syntax::Broken>(phrase.says)) {
            self.quiet = true;
        } else if (const auto* f = std::get_if<syntax::FromTo>(&phrase.says)) {
            const auto a = direction(f->from), b = direction(f->to);
            if (a && b && *a != *b) {
                e.error("two-rods", span,
                        "`from` is on the rod " + text(*a) + " and `to` on the rod " + text(*b));
                self.quiet = true;
            } else if (a || b) {
                from_to(a ? *a : *b, span, *f);
            } else {
                waiting.push_back(&phrase);
            }
        } else if (const auto* b = std::get_if<syntax::Between>(&phrase.says)) {
            if (b->direction)
                between(*b->direction, span, *b);
            else
                waiting.push_back(&phrase);
        } else if (const auto* s = std::get_if<syntax::SideAt>(&phrase.says)) {
            std::optional<Direction> d = direction_of(s->side.side);
            const auto on_rod = direction(s->position);
            if (d && on_rod && *d != *on_rod) {
                e.error("two-rods", span,
                        "its " + text(s->side.side) + " lies on the rod " + text(*d) +
                            ", and the position on the rod " + text(*on_rod));
                self.quiet = true;
                return;
            }
            if (!d) d = on_rod;
            if (d)
                side_at(*d, span, *s);
            else
                waiting.push_back(&phrase);
        } else if (const auto* c = std::get_if<syntax::CentredOn>(&phrase.says)) {
            std::optional<Direction> d = c->direction;
            for (const Expression& x : c->between)
                if (!d && !means_part(*c)) d = direction(x);
            if (d)
                centred(*d, span, *c);
            else
                waiting.push_back(&phrase);
        } else if (const auto* back = std::get_if<syntax::SetBack>(&phrase.says)) {
            if (const auto d = direction_of(back->from.side))
                set_back(*d, span, *back);
            else
                waiting.push_back(&phrase);
        } else if (const auto* flush = std::get_if<syntax::FlushWith>(&phrase.says)) {
            if (const auto d = direction_of(flush->side.side))
                beside(*d, span, flush->side.side, flush->part, level());
            else
                waiting.push_back(&phrase);
        } else if (const auto* over = std::get_if<syntax::OverUnder>(&phrase.says)) {
            over_under(span, *over);
        } else if (const auto* hang = std::get_if<syntax::Overhanging>(&phrase.says)) {
            read_overhang(span, *hang);
        }
    }

    void read_overhang(Span span, const syntax::Overhanging& hang) {
        std::array<std::array<bool, 2>, 3> told{};
        if (hang.all_round) told[0] = told[1] = {true, true};
        for (const syntax::SideName& side : hang.at) {
            const auto d = direction_of(side.side);
            if (!d) {
                e.error("which-side", side.span,
                        "it is not clear which side `" + text(side.side) + "` is here")
                    .mend = "write front, back, left or right";
                self.quiet = true;
                continue;
            }
            told[static_cast<std::size_t>(index_of(*d))][is_high(side.side) ? 1 : 0] = true;
        }
        for (const Direction d : directions) {
            const auto& ends = told[static_cast<std::size_t>(index_of(d))];
            if (ends[0]) overhanging(d, false, span, hang);
            if (ends[1]) overhanging(d, true, span, hang);
            if (ends[0] && ends[1]) self.spanned[static_cast<std::size_t>(index_of(d))] = true;
        }
    }

    static std::function<std::optional<Length>(bool)> level() {
        return [](bool) { return std::optional(Length()); };
    }

    /// The directions nothing has been demanded in, without one of them.
    std::vector<Direction> open_without(std::optional<Direction> one) {
        std::vector<Direction> out;
        for (const Direction d : directions)
            if (is_open(d) && d != one) out.push_back(d);
        return out;
    }

    std::optional<Direction> only_open(std::optional<Direction> without, Span span, const std::string& what,
                                       const std::string& remedy) {
        const std::vector<Direction> open = open_without(without);
        if (open.size() == 1) return open.front();
        self.quiet = true;
        e.error("which-direction", span, "it is not clear whether " + what + " is meant across, deep or up")
            .mend = remedy;
        return std::nullopt;
    }

    /// Directions in which the copies of the named part stand apart.
    std::vector<Direction> apart(const syntax::Between& says) {
        std::vector<Direction> out;
        if (says.b) return out;
        for (const Direction d : directions) {
            bool flipped = false, straight = false, rowed = false;
            for (const PartRef& ref : parts_named(e, scope(), says.a)) {
                (turned_about(ref, d) ? flipped : straight) = true;
                for (const Instance::Row& row : ref.instance->rows)
                    rowed = rowed || row.clause->direction == d;
                rowed = rowed || (ref.instance->each && ref.instance->each->direction == d);
            }
            if ((flipped && straight) || rowed) out.push_back(d);
        }
        return out;
    }

    void second_round(std::optional<Direction> length) {
        const auto each = [&](auto&& act) {
            for (const Phrase* phrase : waiting) act(*phrase);
        };
        each([&](const Phrase& phrase) {
            const auto* f = std::get_if<syntax::FromTo>(&phrase.says);
            if (!f) return;
            if (length && is_open(*length)) return from_to(*length, phrase.span, *f);
            if (const auto d =
                    only_open({}, phrase.span, "`from ... to`", "use the names of lines, which tell it"))
                from_to(*d, phrase.span, *f);
        });
        each([&](const Phrase& phrase) {
            const auto* b = std::get_if<syntax::Between>(&phrase.says);
            if (!b) return;
            const std::vector<Direction> ways = apart(*b);
            const auto may = [&](Direction d) {
                return is_open(d) && (ways.empty() || std::find(ways.begin(), ways.end(), d) != ways.end());
            };
            if (length && may(*length)) return between(*length, phrase.span, *b);
            std::vector<Direction> left;
            for (const Direction d : directions)
                if (may(d)) left.push_back(d);
            if (left.size() == 1) return between(left.front(), phrase.span, *b);
            self.quiet = true;
            e.error("which-direction", phrase.span,
                    "it is not clear in which direction `" + self.part->name + "` lies between them")
                .mend = "add across, deep or up, as in `between " + b->a.name.text + " across`";
        });
        each([&](const Phrase& phrase) {
            const auto* back = std::get_if<syntax::SetBack>(&phrase.says);
            const auto* flush = std::get_if<syntax::FlushWith>(&phrase.says);
            const auto* at = std::get_if<syntax::SideAt>(&phrase.says);
            if (!back && !flush && !at) return;
            const Side side = back ? back->from.side : flush ? flush->side.side : at->side.side;
            const auto d =
                only_open(length, phrase.span, "`" + text(side) + "`",
                          "write front, back, left, right, top or bottom instead of " + text(side));
            if (!d) return;
            if (back)
                set_back(*d, phrase.span, *back);
            else if (flush)
                beside(*d, phrase.span, side, flush->part, level());
            else
                side_at(*d, phrase.span, *at);
        });
        each([&](const Phrase& phrase) {
            const auto* c = std::get_if<syntax::CentredOn>(&phrase.says);
            if (!c) return;
            const std::vector<Direction> open = open_without({});
            for (const Direction d : open) centred(d, phrase.span, *c);
            if (open.empty())
                e.error("which-direction", phrase.span, "every direction is fixed without `centred`");
        });
    }
};

} // namespace

void read_demands(Elaboration& e, Instance& instance) {
    if (instance.demands_read) return;
    instance.demands_read = true;
    // A copies clause or a phrase that could not be read may have told what seems missing.
    const Span whole = instance.part->span;
    for (const Span& error : e.text_errors)
        if (error.file == whole.file && error.begin >= whole.begin && error.begin <= whole.end)
            instance.quiet = true;
    instance.quiet = instance.quiet || instance.part->said_twice;
    Reader reader{e, instance, {}};
    for (const Phrase* phrase : phrases_of(e, *instance.part)) reader.read(*phrase);
    reader.rows();
    for (const Direction d : directions) {
        // Two sides told one by one span as well as `from ... to`.
        const auto& list = reader.on(d);
        const auto has = [&](Demand::Kind kind) {
            return std::any_of(list.begin(), list.end(), [&](const Demand& x) { return x.kind == kind; });
        };
        if (has(Demand::Kind::low) && has(Demand::Kind::high))
            instance.spanned[static_cast<std::size_t>(index_of(d))] = true;
    }
    if (!reader.waiting.empty()) reader.second_round(length_direction(e, instance));
}

} // namespace rayfleck::piece
