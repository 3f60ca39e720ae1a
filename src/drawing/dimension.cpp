// A side is turned so that u runs along it and v away from the wood; tiers are at v = 10, 18, 26 ... Each
// measure tries its places in order of what they cost and takes the cheapest; costs are house rules, chosen
// by looking at prints.
//
// Sources of the spacings: gap and overrun of extension lines, tiers and arrow shape after ISO 129-1 as
// taught, with the house values 1 mm, 2 mm, 10 and 8 mm, and arrows three times as long as wide.

#include "drawing/dimension.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "drawing/marks.hpp"
#include "drawing/text_metrics.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double gap = 1.0, overrun = 2.0;
constexpr double over_the_line = 0.9;
constexpr double clear_of_text = 0.6;
/// Below this the arrows stand outside.
constexpr double least_for_arrows_inside = 10.0;

/// Turns between the side's own (u, v) and paper.
struct Turned {
    ViewSide side;
    double outline;
    Point2 paper(double u, double v) const {
        switch (side) {
        case ViewSide::below:
            return {u, outline - v};
        case ViewSide::above:
            return {u, outline + v};
        case ViewSide::left:
            return {outline - v, u};
        case ViewSide::right:
            break;
        }
        return {outline + v, u};
    }
    /// v of a paper coordinate across the side.
    double depth(double across) const {
        return side == ViewSide::below || side == ViewSide::left ? outline - across : across - outline;
    }
    bool level() const { return side == ViewSide::below || side == ViewSide::above; }
    Point2 along(double sign) const { return level() ? Point2{sign, 0} : Point2{0, sign}; }
    /// The figure of a line at v, its words running from u to u + width.
    Text figure(const std::string& words, double height, double u, double v) const {
        Text text{{}, words, height, Typeface::lettering, Ink::black, level() ? 0.0 : 90.0};
        text.at = paper(u, v);
        // A built fraction reaches below its base line.
        const double lift = over_the_line - measure_text(words, height, Typeface::lettering).lowest;
        if (level())
            text.at.y += lift;
        else
            text.at.x -= lift;
        return text;
    }
};

enum class FigurePlace { between, beyond_to, beyond_from };

struct Placed {
    const Measure* measure = nullptr;
    int tier = 0;
    FigurePlace place = FigurePlace::between;
    bool arrows_inside = true;
    double text_from = 0, text_to = 0; ///< u covered by the figure
    double line_from = 0, line_to = 0; ///< u covered by the dimension line
    Text text;
};

double v_of(int tier) { return first_tier + next_tier * tier; }

class Side {
  public:
    Side(Block& block, Turned turned, double height)
        : block_(block), turned_(turned), height_(height), arrow_(std::min(3.0, height)) {}

    double draw(const std::vector<MeasureString>& strings) {
        for (const MeasureString& string : strings)
            for (const Measure& m : string) waiting_.push_back(&m);
        int base = 0;
        for (const MeasureString& string : strings) {
            if (string.empty()) continue;
            std::vector<const Measure*> order;
            for (const Measure& m : string) order.push_back(&m);
            // Long links first: they fit between their own lines; the short ones then find what room there
            // is.
            std::stable_sort(order.begin(), order.end(), [&](const Measure* a, const Measure* b) {
                return fits_between(*a) > fits_between(*b);
            });
            int reached = base;
            while (!order.empty()) {
                // What touches a link that stands comes first, so that a chain closes without gaps.
                const auto touches = [&](const Measure* m) {
                    return std::any_of(placed_.begin(), placed_.end(), [&](const Placed& p) {
                        return std::abs(p.measure->from - m->to) < 1e-3 ||
                               std::abs(p.measure->to - m->from) < 1e-3;
                    });
                };
                auto next = std::find_if(order.begin(), order.end(), touches);
                if (next == order.end() || fits_between(*order.front())) next = order.begin();
                const Measure* m = *next;
                order.erase(next);
                waiting_.erase(std::find(waiting_.begin(), waiting_.end(), m));
                place(*m, base);
                reached = std::max(reached, placed_.back().tier);
            }
            base = reached + 1;
        }
        commit();
        return base > 0 ? v_of(base - 1) : 0;
    }

  private:
    double width_of_figure(const Measure& m) const {
        return text_width(m.figure, height_, Typeface::lettering);
    }
    int fits_between(const Measure& m) const {
        return m.to - m.from >= std::max(least_for_arrows_inside, width_of_figure(m) + 2 * arrow_ + 1) ? 1
                                                                                                       : 0;
    }

    Placed attempt(const Measure& m, int tier, FigurePlace where, bool inside) const {
        Placed p;
        p.measure = &m;
        p.tier = tier;
        p.place = where;
        p.arrows_inside = inside;
        const double width = width_of_figure(m), tail = arrow_ + 2.0;
        p.line_from = inside ? m.from : m.from - tail;
        p.line_to = inside ? m.to : m.to + tail;
        switch (where) {
        case FigurePlace::between:
            p.text_from = (m.from + m.to - width) / 2;
            break;
        case FigurePlace::beyond_to:
            p.text_from = m.to + (inside ? 1.2 : arrow_ + 0.8);
            p.line_to = p.text_from + width + 0.5;
            break;
        case FigurePlace::beyond_from:
            p.text_from = m.from - (inside ? 1.2 : arrow_ + 0.8) - width;
            p.line_from = p.text_from - 0.5;
            break;
        }
        p.text_to = p.text_from + width;
        p.text = turned_.figure(m.figure, height_, p.text_from, v_of(tier));
        return p;
    }

    /// The figure of `p` has gone outside and stands about halfway between its own link and a place u on
    /// which an arrow of the same tier ends: it would be read as the figure of the stretch between.
    static bool reads_as_open_stretch(const Placed& p, double u) {
        if (p.place == FigurePlace::between) return false;
        const double own = p.place == FigurePlace::beyond_to ? p.measure->to : p.measure->from;
        if (p.place == FigurePlace::beyond_to ? u < p.text_to : u > p.text_from) return false;
        const double off = std::abs((p.text_from + p.text_to) / 2 - (own + u) / 2);
        return off < 0.25 * std::abs(u - own);
    }

    /// Does a link of that tier reach from `low` to `high`?
    bool link_from(double low, double high, int tier) const {
        const auto is = [&](const Measure& m) {
            return std::abs(m.from - low) < 1e-3 && std::abs(m.to - high) < 1e-3;
        };
        return std::any_of(placed_.begin(), placed_.end(),
                           [&](const Placed& p) { return p.tier == tier && is(*p.measure); });
    }

    /// What a place costs; infinity when it cannot be taken.
    double cost(const Placed& p, int base) const {
        const double never = std::numeric_limits<double>::infinity();
        const double v = v_of(p.tier);
        if (!block_.occupied().free_for_text(text_box(p.text), clear_of_text)) return never;
        if (!block_.occupied().free_for_line(turned_.paper(p.line_from, v), turned_.paper(p.line_to, v), 0.3))
            return never;
        double sum = 10.0 * (p.tier - base);
        if (p.place != FigurePlace::between) sum += 3;
        if (!p.arrows_inside) sum += 1;
        for (const Placed& other : placed_) {
            if (other.tier == p.tier) {
                // Two lines of a tier may touch end to end; tails may lie on a neighbour's line, figures may
                // not meet.
                const double a = p.measure->from, b = p.measure->to;
                if (a < other.measure->to - 1e-6 && b > other.measure->from + 1e-6) return never;
                if (p.text_from < other.text_to + 1.0 && p.text_to > other.text_from - 1.0) return never;
                // A short stretch between two links would look like a third one, unless it is.
                const double low = std::min(b, other.measure->to), high = std::max(a, other.measure->from);
                if (high - low > 1e-6 && high - low < least_for_arrows_inside &&
                    !link_from(low, high, p.tier))
                    return never;
                // What closes such a gap belongs into it.
                if (high - low > -1e-6 && high - low < 1e-6 && b - a < least_for_arrows_inside) sum -= 12;
                if (p.line_from < other.line_to - 1e-6 && p.line_to > other.line_from + 1e-6) {
                    // The tails run over a neighbour: harmless unless arrows of one stand in the figure of
                    // the other.
                    if (p.place != FigurePlace::between || other.place != FigurePlace::between) sum += 2;
                }
                // A figure that has gone outside stands over its neighbour's span and would be read as its
                // figure.
                if (p.place != FigurePlace::between && p.text_from < other.measure->to &&
                    p.text_to > other.measure->from)
                    sum += 40;
                if (other.place != FigurePlace::between && other.text_from < b && other.text_to > a)
                    sum += 40;
                for (const double u : {other.measure->from, other.measure->to})
                    if (reads_as_open_stretch(p, u)) sum += 15;
                for (const double u : {a, b})
                    if (reads_as_open_stretch(other, u)) sum += 15;
            }
            // Extension lines of the measures farther out run through figures nearer in, and must be broken
            // there.
            for (const double u : {p.measure->from, p.measure->to})
                if (other.tier < p.tier && u > other.text_from - clear_of_text &&
                    u < other.text_to + clear_of_text)
                    sum += 25;
            for (const double u : {other.measure->from, other.measure->to})
                if (other.tier >= p.tier && u > p.text_from - clear_of_text && u < p.text_to + clear_of_text)
                    sum += 25;
        }
        for (const Measure* m : waiting_)
            for (const double u : {m->from, m->to})
                if (u > p.text_from - clear_of_text && u < p.text_to + clear_of_text &&
                    (u < p.measure->from - 1e-6 || u > p.measure->to + 1e-6 ||
                     p.place != FigurePlace::between))
                    sum += 12;
        return sum;
    }

    void place(const Measure& m, int base) {
        const double span = m.to - m.from, width = width_of_figure(m);
        const bool roomy = span >= std::max(least_for_arrows_inside, 2 * arrow_ + 1);
        Placed best;
        double best_cost = std::numeric_limits<double>::infinity();
        for (int tier = base; tier < base + 6 && best_cost > 10.0 * (tier - base); ++tier) {
            std::vector<Placed> places;
            if (span >= width + 2 * arrow_ + 1 && roomy)
                places.push_back(attempt(m, tier, FigurePlace::between, true));
            if (span >= width + 0.8) places.push_back(attempt(m, tier, FigurePlace::between, false));
            for (const FigurePlace where : {FigurePlace::beyond_to, FigurePlace::beyond_from})
                places.push_back(attempt(m, tier, where, roomy));
            for (const Placed& p : places) {
                const double c = cost(p, base);
                if (c < best_cost) best = p, best_cost = c;
            }
        }
        if (!best.measure) {
            // Nowhere free: farther out than anything else on this side, where only extension lines can be in
            // the way.
            int tier = base;
            for (const Placed& p : placed_) tier = std::max(tier, p.tier + 1);
            for (int more = 0; more < 40; ++more, ++tier) {
                best = attempt(m, tier, span >= width + 0.8 ? FigurePlace::between : FigurePlace::beyond_to,
                               roomy);
                if (block_.occupied().free_for_text(text_box(best.text), clear_of_text)) break;
            }
        }
        placed_.push_back(best);
    }

    /// Draws a line in (u, v), leaving out what lies within figures of this side.
    void broken_extension(double u, double from, double to) {
        std::vector<std::pair<double, double>> holes;
        for (const Placed& p : placed_) {
            if (u < p.text_from - clear_of_text || u > p.text_to + clear_of_text) continue;
            const Rect box = around(text_box(p.text));
            double low = 0, high = 0;
            if (turned_.level())
                low = turned_.depth(box.bottom), high = turned_.depth(box.top);
            else
                low = turned_.depth(box.left), high = turned_.depth(box.right);
            if (low > high) std::swap(low, high);
            holes.push_back({low - clear_of_text, high + clear_of_text});
        }
        std::sort(holes.begin(), holes.end());
        double at = from;
        const auto draw = [&](double a, double b) {
            if (b - a > 0.4)
                block_.line(turned_.paper(u, a), turned_.paper(u, b), Pen::thin, Role::extension);
        };
        for (const auto& [low, high] : holes) {
            if (high <= at || low >= to) continue;
            draw(at, low);
            at = std::max(at, high);
        }
        draw(at, to);
    }

    void commit() {
        // Extension lines: one per place, from the wood to the outermost tier that uses it.
        std::map<long, std::pair<double, double>> extensions;
        const auto key = [](double u) { return std::lround(u * 1000); };
        for (const Placed& p : placed_)
            for (const auto& [u, start] :
                 {std::pair{p.measure->from, p.measure->start_from}, {p.measure->to, p.measure->start_to}}) {
                const double low = turned_.depth(start) + gap, high = v_of(p.tier) + overrun;
                const auto [at, fresh] = extensions.emplace(key(u), std::pair{low, high});
                if (!fresh) at->second = {std::min(at->second.first, low), std::max(at->second.second, high)};
            }
        for (const auto& [u, reach] : extensions)
            broken_extension(static_cast<double>(u) / 1000, reach.first, reach.second);

        std::map<int, std::vector<const Placed*>> tiers;
        for (const Placed& p : placed_) tiers[p.tier].push_back(&p);
        for (const auto& [tier, list] : tiers) commit_tier(tier, list);
        for (const Placed& p : placed_) {
            block_.text(p.text);
            block_.record(p.measure->record);
        }
    }

    void commit_tier(int tier, const std::vector<const Placed*>& list) {
        const double v = v_of(tier);
        // How many short links end at a place: where two do, a dot stands for both arrows.
        std::map<long, int> short_ends;
        const auto key = [](double u) { return std::lround(u * 1000); };
        for (const Placed* p : list)
            if (!p->arrows_inside) ++short_ends[key(p->measure->from)], ++short_ends[key(p->measure->to)];

        std::vector<std::pair<double, double>> spans;
        std::set<std::pair<long, int>> arrows;
        std::set<long> dots;
        for (const Placed* p : list) {
            const Measure& m = *p->measure;
            double from = p->line_from, to = p->line_to;
            if (p->arrows_inside) {
                arrows.insert({key(m.from), -1});
                arrows.insert({key(m.to), 1});
            } else {
                for (const bool high : {false, true}) {
                    const double u = high ? m.to : m.from;
                    if (short_ends[key(u)] > 1)
                        dots.insert(key(u));
                    else
                        arrows.insert({key(u), high ? -1 : 1});
                }
                // No tail behind a dot, unless the figure stands there.
                if (dots.count(key(m.from)) && p->place != FigurePlace::beyond_from) from = m.from;
                if (dots.count(key(m.to)) && p->place != FigurePlace::beyond_to) to = m.to;
            }
            spans.push_back({from, to});
        }
        std::sort(spans.begin(), spans.end());
        std::vector<std::pair<double, double>> merged;
        for (const auto& span : spans) {
            if (!merged.empty() && span.first <= merged.back().second + 1e-6)
                merged.back().second = std::max(merged.back().second, span.second);
            else
                merged.push_back(span);
        }
        for (const auto& [from, to] : merged)
            block_.line(turned_.paper(from, v), turned_.paper(to, v), Pen::thin, Role::dimension);
        for (const auto& [u, sign] : arrows)
            block_.fill(
                {arrowhead(turned_.paper(static_cast<double>(u) / 1000, v), turned_.along(sign), arrow_)},
                Ink::black);
        for (const long u : dots) block_.dot(turned_.paper(static_cast<double>(u) / 1000, v), 1.2);
    }

    Block& block_;
    Turned turned_;
    double height_, arrow_;
    std::vector<const Measure*> waiting_;
    std::vector<Placed> placed_;
};

} // namespace

double draw_dimensions(Block& block, ViewSide side, double outline, const std::vector<MeasureString>& strings,
                       double figure_height) {
    return Side(block, Turned{side, outline}, figure_height).draw(strings);
}

} // namespace rayfleck::drawing
