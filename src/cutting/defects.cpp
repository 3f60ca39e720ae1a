// Sections between defects. See defects.hpp.
//
// From the last section's end on, sections as long as each part are tried, begun at once or after one of the
// next defects. In a section, strips are stacked by a knapsack across v; a strip that touches defects is
// worth what goes into the clear stretches between them. The section with the most value above the going rate
// for its length is taken, its parts drawn from what is left, and so on. A defect bars the whole width of a
// strip, and parts that would bear it too; those are better served by first fit.

#include "cutting/defects.hpp"

#include <algorithm>

namespace rayfleck::cutting {
namespace {

/// Places across v beyond which they are thinned out.
constexpr std::size_t most_places = 300;
/// Defects of a section up to which the worth of strips is tabled.
constexpr std::size_t most_tabled = 8;
/// Defects ahead after which a section may begin.
constexpr std::size_t most_starts = 3;

std::vector<Lie> lies_of(const Model& model, int sheet) {
    std::vector<Lie> lies;
    for (const Type& type : model.types)
        for (const Lie& lie : type.lies)
            if (model.fits(lie, static_cast<std::size_t>(sheet))) lies.push_back(lie);
    return lies;
}

} // namespace

AroundDefects::AroundDefects(const Model& model, int sheet)
    : model_(model), number_(sheet), sheet_(model.sheets[sheet]), fill_(lies_of(model, sheet), sheet_.u),
      small_(lies_of(model, sheet), sheet_.u) {
    std::vector<char> reached(static_cast<std::size_t>(sheet_.v + 1));
    reached[0] = reached[sheet_.v] = 1;
    for (const Hole& hole : sheet_.holes) reached[hole.v_end] = 1;
    for (Measure v = 0; v <= sheet_.v; ++v)
        for (const Lie& lie : lies_of(model, sheet))
            if (reached[v] && v + lie.v <= sheet_.v) reached[v + lie.v] = 1;
    std::vector<Measure> all;
    for (Measure v = 0; v <= sheet_.v; ++v)
        if (reached[v]) all.push_back(v);
    const std::size_t every = (all.size() + most_places - 1) / most_places;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (i % every == 0 || i + 1 == all.size()) at_v_.push_back(all[i]);
    if (!model.sections) {
        lengths_.push_back(sheet_.u);
    } else {
        for (const Lie& lie : lies_of(model, sheet)) lengths_.push_back(lie.u);
        std::sort(lengths_.begin(), lengths_.end());
        lengths_.erase(std::unique(lengths_.begin(), lengths_.end()), lengths_.end());
    }
}

/// Stretches of a strip that no defect touches.
std::vector<AroundDefects::Clear> AroundDefects::clear(Measure u, Measure length, Measure v,
                                                       Measure width) const {
    std::vector<std::pair<Measure, Measure>> barred;
    for (const Hole& hole : sheet_.holes)
        if (hole.v < v + width - model_.kerf_v && hole.v_end > v && hole.u < u + length - model_.kerf_u &&
            hole.u_end > u)
            barred.emplace_back(hole.u, hole.u_end);
    std::sort(barred.begin(), barred.end());
    std::vector<Clear> stretches;
    Measure at = u;
    for (const auto& [begin, end] : barred) {
        if (begin > at) stretches.push_back({at, begin - at + model_.kerf_u});
        at = std::max(at, end);
    }
    if (u + length > at) stretches.push_back({at, u + length - at});
    return stretches;
}

/// The strips of most value in a section, with widths and places but no items yet.
std::vector<Strip> AroundDefects::stack(Measure u, Measure length, std::int64_t& value,
                                        std::int64_t& work) const {
    const std::size_t places = at_v_.size();
    std::vector<std::int64_t> best(places);
    std::vector<int> level_of(places, -1), from_of(places, -1);
    std::vector<std::size_t> under(fill_.levels()); // the highest place a strip may stand on, by level
    // What a strip is worth depends on its level and on which of the section's defects it touches.
    std::vector<const Hole*> holes;
    for (const Hole& hole : sheet_.holes)
        if (hole.u < u + length - model_.kerf_u && hole.u_end > u) holes.push_back(&hole);
    const bool tabled = holes.size() <= most_tabled;
    std::vector<std::int64_t> table(tabled ? fill_.levels() << holes.size() : 0, -1);
    const auto worth = [&](std::size_t level, Measure v) -> std::int64_t {
        if (holes.empty()) return fill_.values(level)[length];
        const Measure width = fill_.width(level);
        std::size_t touched = 0;
        for (std::size_t h = 0; h < holes.size() && tabled; ++h)
            if (holes[h]->v < v + width - model_.kerf_v && holes[h]->v_end > v)
                touched |= std::size_t{1} << h;
        if (tabled && table[(level << holes.size()) + touched] >= 0)
            return table[(level << holes.size()) + touched];
        std::int64_t sum = 0;
        for (const Clear& stretch : clear(u, length, v, width)) sum += fill_.values(level)[stretch.length];
        work += 100;
        if (tabled) table[(level << holes.size()) + touched] = sum;
        return sum;
    };
    for (std::size_t i = 1; i < places; ++i) {
        best[i] = best[i - 1];
        for (std::size_t level = 0; level < fill_.levels(); ++level) {
            const Measure width = fill_.width(level);
            if (width > at_v_[i]) break;
            if (level > 0 && fill_.values(level) == fill_.values(level - 1)) continue;
            while (under[level] + 1 < places && at_v_[under[level] + 1] + width <= at_v_[i]) ++under[level];
            const std::size_t from = under[level];
            const std::int64_t with = best[from] + worth(level, at_v_[from]);
            work += 5 + 2 * static_cast<std::int64_t>(holes.size());
            if (with > best[i])
                best[i] = with, level_of[i] = static_cast<int>(level), from_of[i] = static_cast<int>(from);
        }
    }
    value = best[places - 1];
    std::vector<Strip> strips;
    for (std::size_t i = places - 1; i > 0 && best[i] > 0;) {
        if (best[i] == best[i - 1]) {
            --i;
            continue;
        }
        const auto from = static_cast<std::size_t>(from_of[i]);
        strips.push_back({at_v_[from], fill_.width(static_cast<std::size_t>(level_of[i])), {}});
        i = from;
    }
    std::reverse(strips.begin(), strips.end());
    return strips;
}

/// Items for each strip of the section from what is left; strips in order of their width, the widest first.
void AroundDefects::refill(Section& section, Prices& prices, std::int64_t& work) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < section.strips.size(); ++i) order.push_back(i);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return section.strips[a].width > section.strips[b].width;
    });
    for (const std::size_t i : order) {
        Strip& strip = section.strips[i];
        for (const Clear& stretch : clear(section.u, section.length, strip.v, strip.width)) {
            const int level = small_.level_of(strip.width);
            if (level < 0) continue;
            small_.run(prices, std::min(stretch.length, sheet_.u), work);
            Measure at = stretch.u;
            for (const Lie& lie : small_.items(static_cast<std::size_t>(level), stretch.length)) {
                if (prices.most[lie.type] == 0) continue;
                --prices.most[lie.type];
                strip.items.push_back({lie, at});
                at += lie.u;
            }
        }
    }
    std::erase_if(section.strips, [](const Strip& strip) { return strip.items.empty(); });
}

Pattern AroundDefects::build(const Prices& asked, double worth, std::int64_t& work) {
    Prices prices = asked;
    Pattern pattern;
    pattern.sheet = number_;
    const double rate = 0.9 * worth / static_cast<double>(sheet_.u);
    for (Measure u = 0; u < sheet_.u;) {
        fill_.run(prices, sheet_.u - u, work);
        std::vector<Measure> starts{u};
        if (model_.sections) {
            std::vector<Measure> ends;
            for (const Hole& hole : sheet_.holes)
                if (hole.u_end > u) ends.push_back(hole.u_end);
            std::sort(ends.begin(), ends.end());
            for (std::size_t i = 0; i < ends.size() && i < most_starts; ++i) starts.push_back(ends[i]);
        }
        Section best;
        double most = 0;
        bool any = false;
        for (const Measure start : starts)
            for (const Measure length : lengths_) {
                if (start + length > sheet_.u) break;
                std::int64_t value = 0;
                Section section{start, length, stack(start, length, value, work)};
                if (value == 0) continue;
                const double gain =
                    static_cast<double>(value) - rate * static_cast<double>(start + length - u);
                if (any && gain <= most) continue;
                any = true, most = gain, best = std::move(section);
            }
        if (!any) break;
        refill(best, prices, work);
        if (best.strips.empty()) break;
        u = best.u + best.length;
        pattern.sections.push_back(std::move(best));
        if (!model_.sections) break;
    }
    count(pattern);
    return pattern;
}

} // namespace rayfleck::cutting
