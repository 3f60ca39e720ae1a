// Bounded patterns. See builder.hpp.
//
// The pricer's pattern is taken where it is proper. Where it takes a type too often, its sections are gone
// through, the densest first, and those that ask for more than is left are filled anew with what is left. On
// sheets with defects, sections set between the defects are compared with several orders of first fit.

#include "cutting/builder.hpp"

#include <algorithm>

#include "cutting/greedy.hpp"

namespace rayfleck::cutting {
namespace {

/// Sheets with defects that are longer than this are filled by first fit alone.
constexpr Measure longest_in_sections = 50'000;

std::int64_t value_of(const Strip& strip, const Prices& prices) {
    std::int64_t value = 0;
    for (const Item& item : strip.items) value += prices.of_type[item.lie.type];
    return value;
}

/// Takes what the strip needs from `most`; gives back all and false when it is not there.
bool take(const Strip& strip, std::vector<std::int64_t>& most) {
    bool all = true;
    for (const Item& item : strip.items) all = --most[item.lie.type] >= 0 && all;
    if (!all)
        for (const Item& item : strip.items) ++most[item.lie.type];
    return all;
}

bool take(const Section& section, std::vector<std::int64_t>& most) {
    for (std::size_t i = 0; i < section.strips.size(); ++i)
        if (!take(section.strips[i], most)) {
            while (i-- > 0)
                for (const Item& item : section.strips[i].items) ++most[item.lie.type];
            return false;
        }
    return true;
}

Measure width_of(const Strip& strip) {
    Measure width = 0;
    for (const Item& item : strip.items) width = std::max(width, item.lie.v);
    return width;
}

} // namespace

std::int64_t value_of(const Pattern& pattern, const Prices& prices) {
    std::int64_t value = 0;
    for (const auto& [type, times] : pattern.counts) value += std::int64_t(prices.of_type[type]) * times;
    return value;
}

bool is_proper(const Pattern& pattern, const std::vector<std::int64_t>& most) {
    return std::all_of(pattern.counts.begin(), pattern.counts.end(),
                       [&](const std::pair<int, int>& each) { return each.second <= most[each.first]; });
}

std::vector<Strip> Builder::section(int sheet, Measure length, Prices& prices, std::int64_t& work) {
    std::vector<Strip> kept;
    for (Measure v = model_.sheets[sheet].v; v > 0;) {
        std::vector<Strip> strips = pricer_.stack(sheet, length, v, prices, work);
        std::stable_sort(strips.begin(), strips.end(), [&](const Strip& a, const Strip& b) {
            return value_of(a, prices) > value_of(b, prices);
        });
        bool all = true, none = true;
        for (Strip& strip : strips) {
            if (!take(strip, prices.most)) {
                all = false;
                if (!none) continue;
                // A type taken too often within one strip, lying both ways: the last of it go.
                std::erase_if(strip.items, [&](const Item& item) {
                    if (prices.most[item.lie.type] == 0) return true;
                    --prices.most[item.lie.type];
                    return false;
                });
                if (strip.items.empty()) continue;
            }
            none = false;
            v -= width_of(strip);
            kept.push_back(std::move(strip));
        }
        if (all || none || !model_.strips) break;
    }
    return kept;
}

/// The pattern made proper: what is too much goes, section by section, the densest first; what is left of
/// such a section is filled anew.
Pattern Builder::repaired(Pattern pattern, const Prices& asked, std::int64_t& work) {
    Prices prices = asked;
    const auto density = [&](const Section& section) {
        double value = 0;
        for (const Strip& strip : section.strips) value += static_cast<double>(value_of(strip, prices));
        return value / static_cast<double>(section.length);
    };
    std::stable_sort(pattern.sections.begin(), pattern.sections.end(),
                     [&](const Section& a, const Section& b) { return density(a) > density(b); });
    for (Section& section : pattern.sections)
        if (!take(section, prices.most))
            section.strips = this->section(pattern.sheet, section.length, prices, work);
    settle(model_, pattern);
    return pattern;
}

Pattern Builder::build(int sheet, const Prices& prices, std::int64_t& work) {
    if (!model_.sheets[sheet].holes.empty()) return around_defects(sheet, prices, work);
    std::vector<std::int64_t> wanted(model_.sheets.size());
    wanted[sheet] = 1;
    pricer_.run(prices, wanted, Pricer::Sections::few, work);
    Pattern pattern = pricer_.pattern(sheet);
    return is_proper(pattern, prices.most) ? pattern : repaired(std::move(pattern), prices, work);
}

Pattern Builder::around_defects(int sheet, const Prices& prices, std::int64_t& work) {
    std::vector<Lie> lies;
    for (const Type& type : model_.types)
        for (const Lie& lie : type.lies)
            if (prices.of_type[lie.type] > 0 && prices.most[lie.type] > 0) lies.push_back(lie);
    Pattern best;
    best.sheet = sheet;
    std::int64_t most = 0;
    const Sheet& its = model_.sheets[sheet];
    if (model_.strips && its.u <= longest_in_sections && its.v <= longest_in_sections) {
        std::vector<std::int64_t> wanted(model_.sheets.size());
        wanted[sheet] = 1;
        pricer_.run(prices, wanted, Pricer::Sections::few, work);
        std::unique_ptr<AroundDefects>& sections = with_defects_[sheet];
        if (!sections) sections = std::make_unique<AroundDefects>(model_, sheet);
        best = sections->build(prices, static_cast<double>(pricer_.value(sheet)), work);
        most = value_of(best, prices);
    }
    const auto density = [&](const Lie& lie) {
        return static_cast<double>(prices.of_type[lie.type]) /
               (static_cast<double>(lie.u) * static_cast<double>(lie.v));
    };
    for (int order = 0; order < 5; ++order) {
        std::stable_sort(lies.begin(), lies.end(), [&](const Lie& a, const Lie& b) {
            switch (order) {
            case 0:
                return prices.of_type[a.type] > prices.of_type[b.type];
            case 1:
                return a.u > b.u;
            case 2:
                return a.v > b.v;
            case 3:
                return density(a) > density(b);
            default:
                return a.u * a.v > b.u * b.v;
            }
        });
        std::vector<std::int64_t> rest = prices.most;
        Pattern pattern = fill_in_order(model_, sheet, lies, rest);
        work += static_cast<std::int64_t>(lies.size()) * 40;
        if (const std::int64_t value = value_of(pattern, prices); value > most)
            most = value, best = std::move(pattern);
    }
    return best;
}

} // namespace rayfleck::cutting
