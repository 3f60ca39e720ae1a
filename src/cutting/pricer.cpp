// Three knapsacks, one in the other. See pricer.hpp.

#include "cutting/pricer.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rayfleck::cutting {
namespace {

/// Cells of a knapsack beyond which the grid gets coarser. Strips alone are a cheaper problem.
constexpr Measure cells_of_strips = 20000, cells_of_sections = 6000;
/// Up to so many lies, sections as long as two parts in a row are among the few.
constexpr std::size_t types_in_pairs = 24;
/// Sums of prices stay below this.
constexpr double largest_value = 1 << 29;

/// Sums of the sizes, up to a limit, each size as often as told; 0 included.
std::vector<Measure> sums(const std::vector<std::pair<Measure, std::int64_t>>& sizes, Measure limit) {
    std::vector<char> reached(static_cast<std::size_t>(limit + 1));
    std::vector<std::int64_t> used(reached.size());
    reached[0] = 1;
    for (const auto& [size, most] : sizes) {
        std::fill(used.begin(), used.end(), 0);
        for (Measure at = size; at <= limit; ++at)
            if (!reached[at] && reached[at - size] && used[at - size] < most)
                reached[at] = 1, used[at] = used[at - size] + 1;
    }
    std::vector<Measure> all;
    for (Measure at = 0; at <= limit; ++at)
        if (reached[at]) all.push_back(at);
    return all;
}

} // namespace

Scaled scaled(const Model& model, const std::vector<double>& money, const std::vector<std::int64_t>& most) {
    double densest = 0, sheet = 1;
    for (const Sheet& one : model.sheets)
        sheet = std::max(sheet, static_cast<double>(one.u) * static_cast<double>(one.v));
    for (std::size_t t = 0; t < money.size(); ++t)
        densest = std::max(densest, money[t] / static_cast<double>(model.types[t].area));
    Scaled result;
    result.scale =
        densest > 0 ? static_cast<std::int64_t>(std::min(largest_value / (densest * sheet), 1e9)) : 1;
    result.scale = std::max<std::int64_t>(result.scale, 1);
    for (const double one : money)
        result.prices.of_type.push_back(
            static_cast<std::int32_t>(std::floor(std::max(one, 0.0) * static_cast<double>(result.scale))));
    result.prices.most = most;
    return result;
}

struct Pricer::Kind {
    std::vector<int> sheets;
    std::vector<Lie> lies;
    std::vector<Measure> sheet_u, sheet_v; ///< on the grid, by place in `sheets`
    Measure longest = 0, widest = 0;
    std::vector<Measure> all_lengths, few_lengths;
    std::vector<Measure> at_v; ///< where strips can end
    std::vector<std::vector<int>>
        below; ///< [level][place in at_v]: the place a strip of that level stands on
    std::unique_ptr<StripFill> fill;

    std::vector<Measure> lengths;                         ///< of the last run
    std::vector<std::int32_t> strip_values, stack_values; ///< [level][length], [place in at_v][length]
    struct Row {
        std::vector<std::int32_t> values; ///< by length of the sheet
        std::vector<std::size_t> steps;   ///< lengths worth a section
    };
    std::map<int, Row> rows; ///< sections in a row, by place in at_v

    int place_of(Measure v) const {
        return static_cast<int>(std::upper_bound(at_v.begin(), at_v.end(), v) - at_v.begin()) - 1;
    }

    void stack_all(int top, std::int64_t& work);
    void row_of(int top, Measure end, std::int64_t& work);
    std::vector<std::vector<Lie>> stack_of(int top, std::size_t length) const;
};

/// stack_values for all places up to top.
void Pricer::Kind::stack_all(int top, std::int64_t& work) {
    const std::size_t many = lengths.size(), levels = fill->levels();
    strip_values.resize(levels * many);
    std::vector<std::size_t> worth; // levels that some part of price widens
    for (std::size_t level = 0; level < levels; ++level) {
        const std::int32_t* values = fill->values(level);
        std::int32_t* to = strip_values.data() + level * many;
        for (std::size_t k = 0; k < many; ++k) to[k] = values[lengths[k]];
        if (level > 0 ? values != fill->values(level - 1) : values[lengths.back()] > 0)
            worth.push_back(level);
    }
    stack_values.assign((static_cast<std::size_t>(top) + 1) * many, 0);
    for (int at = 1; at <= top; ++at) {
        std::int32_t* __restrict to = stack_values.data() + static_cast<std::size_t>(at) * many;
        std::copy(to - many, to, to);
        for (const std::size_t level : worth) {
            const int under = below[level][at];
            if (under < 0) break;
            const std::int32_t* __restrict base =
                stack_values.data() + static_cast<std::size_t>(under) * many;
            const std::int32_t* __restrict strip = strip_values.data() + level * many;
            for (std::size_t k = 0; k < many; ++k) {
                const std::int32_t with = base[k] + strip[k];
                to[k] = to[k] > with ? to[k] : with;
            }
            work += static_cast<std::int64_t>(many) / 4 + 2;
        }
    }
}

void Pricer::Kind::row_of(int top, Measure end, std::int64_t& work) {
    Row& row = rows[top];
    row.steps.clear();
    const std::int32_t* stacked = stack_values.data() + static_cast<std::size_t>(top) * lengths.size();
    // A length that shorter ones in a row are worth as much as is no step.
    std::vector<std::pair<Measure, std::int32_t>> steps;
    row.values.assign(static_cast<std::size_t>(end + 1), 0);
    std::size_t next = 0;
    for (Measure u = 1; u <= end; ++u) {
        std::int32_t best = row.values[u - 1];
        for (const auto& [length, value] : steps) best = std::max(best, row.values[u - length] + value);
        work += static_cast<std::int64_t>(steps.size());
        if (next < lengths.size() && lengths[next] == u) {
            if (stacked[next] > best) {
                best = stacked[next];
                steps.emplace_back(u, best);
                row.steps.push_back(next);
            }
            ++next;
        }
        row.values[u] = best;
    }
}

std::vector<std::vector<Lie>> Pricer::Kind::stack_of(int top, std::size_t k) const {
    std::vector<std::vector<Lie>> strips;
    const auto value = [&](int at) {
        return stack_values[static_cast<std::size_t>(at) * lengths.size() + k];
    };
    for (int at = top; at > 0 && value(at) > 0;) {
        if (value(at) == value(at - 1)) {
            --at;
            continue;
        }
        for (std::size_t level = 0; level < fill->levels(); ++level) {
            const int under = below[level][at];
            if (under < 0 || value(under) + strip_values[level * lengths.size() + k] != value(at)) continue;
            strips.push_back(fill->items(level, lengths[k]));
            at = under;
            break;
        }
    }
    return strips;
}

Pricer::Pricer(const Model& model, Rounding rounding) : model_(model) {
    Measure u = 0, v = 0;
    for (const Sheet& sheet : model.sheets) u = std::max(u, sheet.u), v = std::max(v, sheet.v);
    const Measure cells = model.sections ? cells_of_sections : cells_of_strips;
    grid_u_ = (u + cells - 1) / cells;
    grid_v_ = (v + cells_of_sections - 1) / cells_of_sections;
    if (!model.strips) grid_v_ = 1;
    const auto on_grid = [&](Measure size, Measure grid) {
        return std::max<Measure>(rounding == Rounding::up ? (size + grid - 1) / grid : size / grid, 1);
    };
    std::map<std::vector<char>, std::size_t> known;
    for (std::size_t s = 0; s < model.sheets.size(); ++s) {
        std::vector<char> allowed;
        for (const Type& type : model.types) allowed.push_back(type.allowed[s]);
        const auto [place, is_new] = known.try_emplace(allowed, kinds_.size());
        if (is_new) kinds_.push_back(std::make_unique<Kind>());
        Kind& kind = *kinds_[place->second];
        kind.sheets.push_back(static_cast<int>(s));
        kind.sheet_u.push_back(model.sheets[s].u / grid_u_);
        kind.sheet_v.push_back(model.sheets[s].v / grid_v_);
        kind.longest = std::max(kind.longest, kind.sheet_u.back());
        kind.widest = std::max(kind.widest, kind.sheet_v.back());
        kind_of_sheet_.push_back(place->second);
    }
    for (const auto& [allowed, index] : known) {
        Kind& kind = *kinds_[index];
        std::vector<std::pair<Measure, std::int64_t>> lengths, widths;
        for (std::size_t t = 0; t < model.types.size(); ++t)
            for (Lie lie : model.types[t].lies) {
                if (rounding == Rounding::down && (lie.u < grid_u_ || lie.v < grid_v_)) may_bound_ = false;
                lie.u = on_grid(lie.u, grid_u_), lie.v = on_grid(lie.v, grid_v_);
                if (!allowed[t] || lie.u > kind.longest || lie.v > kind.widest) continue;
                kind.lies.push_back(lie);
                lengths.emplace_back(lie.u, model.types[t].demand);
                widths.emplace_back(lie.v, largest_count);
            }
        kind.fill = std::make_unique<StripFill>(kind.lies, kind.longest);
        if (model.sections) {
            kind.all_lengths = sums(lengths, kind.longest);
            kind.all_lengths.erase(kind.all_lengths.begin());
            for (const auto& [length, most] : lengths)
                for (Measure n = 1; n <= most && n * length <= kind.longest; ++n)
                    kind.few_lengths.push_back(n * length);
            if (lengths.size() <= types_in_pairs)
                for (const auto& [one, a] : lengths)
                    for (const auto& [two, b] : lengths)
                        if (one < two && one + two <= kind.longest) kind.few_lengths.push_back(one + two);
        } else {
            kind.all_lengths = kind.few_lengths = kind.sheet_u;
        }
        for (std::vector<Measure>* each : {&kind.all_lengths, &kind.few_lengths}) {
            std::sort(each->begin(), each->end());
            each->erase(std::unique(each->begin(), each->end()), each->end());
        }
        if (!model.strips) continue;
        kind.at_v = sums(widths, kind.widest);
        kind.below.resize(kind.fill->levels());
        for (std::size_t level = 0; level < kind.fill->levels(); ++level)
            for (const Measure at : kind.at_v)
                kind.below[level].push_back(
                    at < kind.fill->width(level) ? -1 : kind.place_of(at - kind.fill->width(level)));
    }
}

Pricer::~Pricer() = default;
Pricer::Pricer(Pricer&&) noexcept = default;

bool Pricer::may_bound() const { return may_bound_; }

bool Pricer::exact() const { return grid_u_ == 1 && grid_v_ == 1; }

void Pricer::run(const Prices& prices, const std::vector<std::int64_t>& wanted, Sections sections,
                 std::int64_t& work) {
    for (const std::unique_ptr<Kind>& each : kinds_) {
        Kind& kind = *each;
        Measure longest = 0, widest = 0;
        for (std::size_t i = 0; i < kind.sheets.size(); ++i)
            if (wanted[kind.sheets[i]] != 0)
                longest = std::max(longest, kind.sheet_u[i]), widest = std::max(widest, kind.sheet_v[i]);
        if (longest == 0 || kind.lies.empty()) continue;
        kind.fill->run(prices, longest, work);
        if (!model_.strips) continue;
        kind.lengths = sections == Sections::all ? kind.all_lengths : kind.few_lengths;
        while (!kind.lengths.empty() && kind.lengths.back() > longest) kind.lengths.pop_back();
        kind.rows.clear();
        if (kind.lengths.empty()) continue;
        kind.stack_all(kind.place_of(widest), work);
        if (!model_.sections) continue;
        std::map<int, Measure> ends;
        for (std::size_t i = 0; i < kind.sheets.size(); ++i)
            if (wanted[kind.sheets[i]] != 0) {
                Measure& end = ends[kind.place_of(kind.sheet_v[i])];
                end = std::max(end, kind.sheet_u[i]);
            }
        for (const auto& [top, end] : ends) kind.row_of(top, end, work);
    }
}

std::int64_t Pricer::value(int sheet) const {
    const Kind& kind = *kinds_[kind_of_sheet_[sheet]];
    const auto i = static_cast<std::size_t>(std::find(kind.sheets.begin(), kind.sheets.end(), sheet) -
                                            kind.sheets.begin());
    if (kind.lies.empty()) return 0;
    if (!model_.strips) {
        const int level = kind.fill->level_of(kind.sheet_v[i]);
        return level < 0 ? 0 : kind.fill->values(level)[kind.sheet_u[i]];
    }
    if (kind.lengths.empty()) return 0;
    const int top = kind.place_of(kind.sheet_v[i]);
    if (model_.sections) {
        const auto row = kind.rows.find(top);
        return row == kind.rows.end() ? 0 : row->second.values[kind.sheet_u[i]];
    }
    const auto k =
        std::lower_bound(kind.lengths.begin(), kind.lengths.end(), kind.sheet_u[i]) - kind.lengths.begin();
    return kind.stack_values[static_cast<std::size_t>(top) * kind.lengths.size() + k];
}

namespace {

/// Lies on the grid back to their own sizes, as a strip without places.
Strip strip_of(const Model& model, const std::vector<Lie>& lies) {
    Strip strip;
    for (const Lie& lie : lies)
        for (const Lie& own : model.types[lie.type].lies)
            if (own.turned == lie.turned) strip.items.push_back({own, 0});
    return strip;
}

} // namespace

Pattern Pricer::pattern(int sheet) const { return pattern(sheet, model_.sheets[sheet].u); }

Pattern Pricer::pattern(int sheet, Measure length) const {
    const Kind& kind = *kinds_[kind_of_sheet_[sheet]];
    const auto i = static_cast<std::size_t>(std::find(kind.sheets.begin(), kind.sheets.end(), sheet) -
                                            kind.sheets.begin());
    Pattern pattern;
    pattern.sheet = sheet;
    const auto add = [&](const std::vector<std::vector<Lie>>& strips) {
        Section section;
        for (const std::vector<Lie>& lies : strips) section.strips.push_back(strip_of(model_, lies));
        pattern.sections.push_back(section);
    };
    if (value(sheet) > 0) {
        if (!model_.strips) {
            add({kind.fill->items(kind.fill->level_of(kind.sheet_v[i]), kind.sheet_u[i])});
        } else if (!model_.sections) {
            const auto k = std::lower_bound(kind.lengths.begin(), kind.lengths.end(), kind.sheet_u[i]);
            add(kind.stack_of(kind.place_of(kind.sheet_v[i]),
                              static_cast<std::size_t>(k - kind.lengths.begin())));
        } else {
            const int top = kind.place_of(kind.sheet_v[i]);
            const Kind::Row& row = kind.rows.at(top);
            const std::int32_t* stacked =
                kind.stack_values.data() + static_cast<std::size_t>(top) * kind.lengths.size();
            for (Measure u = std::min(kind.sheet_u[i], length / grid_u_); u > 0 && row.values[u] > 0;) {
                if (row.values[u] == row.values[u - 1]) {
                    --u;
                    continue;
                }
                for (const std::size_t k : row.steps) {
                    const Measure rest = u - kind.lengths[k];
                    if (rest < 0 || row.values[rest] + stacked[k] != row.values[u]) continue;
                    add(kind.stack_of(top, k));
                    u = rest;
                    break;
                }
            }
        }
    }
    settle(model_, pattern);
    return pattern;
}

std::vector<Strip> Pricer::stack(int sheet, Measure length, Measure v, const Prices& prices,
                                 std::int64_t& work) {
    Kind& kind = *kinds_[kind_of_sheet_[sheet]];
    const Measure u = length / grid_u_;
    std::vector<Strip> strips;
    if (u < 1 || kind.lies.empty()) return strips;
    kind.fill->run(prices, u, work);
    if (!model_.strips) {
        const int level = kind.fill->level_of(v / grid_v_);
        if (level >= 0) strips.push_back(strip_of(model_, kind.fill->items(level, u)));
    } else {
        kind.lengths = {u};
        kind.rows.clear();
        const int top = kind.place_of(v / grid_v_);
        kind.stack_all(top, work);
        for (const std::vector<Lie>& lies : kind.stack_of(top, 0)) strips.push_back(strip_of(model_, lies));
    }
    return strips;
}

void settle(const Model& model, Pattern& pattern) {
    Measure u = 0;
    for (Section& section : pattern.sections) {
        section.u = u;
        Measure v = 0;
        section.length = 0;
        std::erase_if(section.strips, [](const Strip& strip) { return strip.items.empty(); });
        for (Strip& strip : section.strips) {
            strip.v = v;
            strip.width = model.strips ? 0 : model.sheets[pattern.sheet].v;
            Measure at = u;
            for (Item& item : strip.items) {
                item.u = at;
                at += item.lie.u;
                strip.width = std::max(strip.width, item.lie.v);
            }
            v += strip.width;
            section.length = std::max(section.length, at - u);
        }
        if (!model.sections) section.length = model.sheets[pattern.sheet].u;
        u += section.length;
    }
    std::erase_if(pattern.sections, [](const Section& section) { return section.strips.empty(); });
    count(pattern);
}

} // namespace rayfleck::cutting
