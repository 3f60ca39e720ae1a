// First fit in a fixed order. See greedy.hpp.
//
// The first part of the order that fits opens a section as long as itself, the next one that fits above a
// strip as wide as itself; then the strip is filled with what still goes in. Where a defect is in the way, a
// part moves on along its strip, and a strip moves up to the next defect's edge. The sheet that costs least
// for the area it yields is taken, and as often as parts and sheets allow.

#include "cutting/greedy.hpp"

#include <algorithm>

namespace rayfleck::cutting {

Measure first_free(const Model& model, const Sheet& sheet, const Lie& lie, Measure from, Measure end,
                   Measure v) {
    if (v + lie.v > sheet.v) return -1;
    const std::uint32_t tolerates = model.types[static_cast<std::size_t>(lie.type)].tolerates;
    const Measure u_size = lie.u - model.kerf_u, v_size = lie.v - model.kerf_v;
    Measure u = from;
    for (bool moved = true; moved;) {
        moved = false;
        if (u + lie.u > end) return -1;
        for (const Hole& hole : sheet.holes)
            if ((hole.kinds & ~tolerates) != 0 && hole.u < u + u_size && u < hole.u_end &&
                hole.v < v + v_size && v < hole.v_end) {
                u = hole.u_end;
                moved = true;
            }
    }
    return u;
}

namespace {

/// Where a strip or a section may begin: here, and after each defect farther on.
std::vector<Measure> starts(const Sheet& sheet, Measure v) {
    std::vector<Measure> all{v};
    for (const Hole& hole : sheet.holes)
        if (hole.v_end > v) all.push_back(hole.v_end);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

class Filler {
  public:
    Filler(const Model& model, int sheet, const std::vector<Lie>& order, std::vector<std::int64_t>& residual)
        : model_(model), sheet_(model.sheets[static_cast<std::size_t>(sheet)]), order_(order),
          residual_(residual) {
        pattern_.sheet = sheet;
    }

    Pattern fill() {
        if (!model_.sections) {
            Section section{0, sheet_.u, {}};
            fill_section(section);
            if (!section.strips.empty()) pattern_.sections.push_back(section);
        }
        for (Measure u = 0; model_.sections && u < sheet_.u;) {
            Section section = open_section(u);
            if (section.length == 0) break;
            fill_section(section);
            if (section.strips.empty()) break;
            u = section.u + section.length;
            pattern_.sections.push_back(section);
        }
        count(pattern_);
        return pattern_;
    }

  private:
    std::int64_t& left(const Lie& lie) { return residual_[static_cast<std::size_t>(lie.type)]; }

    bool may(const Lie& lie) {
        return left(lie) > 0 && model_.fits(lie, static_cast<std::size_t>(pattern_.sheet));
    }

    Section open_section(Measure from) {
        for (const Measure v : starts(sheet_, 0))
            for (const Lie& lie : order_)
                if (may(lie))
                    if (const Measure u = first_free(model_, sheet_, lie, from, sheet_.u, v); u >= 0)
                        return {u, lie.u, {}};
        return {};
    }

    void fill_section(Section& section) {
        for (Measure v = 0; v < sheet_.v;) {
            Strip strip = open_strip(section, v);
            if (strip.width == 0) break;
            v = strip.v + strip.width;
            section.strips.push_back(strip);
            if (!model_.strips) break;
        }
    }

    /// The strip at v or above that the first part of the order opens, filled.
    Strip open_strip(const Section& section, Measure from) {
        for (const Measure v : starts(sheet_, from)) {
            if (!model_.strips && v > 0) break;
            Strip strip{v, model_.strips ? 0 : sheet_.v, {}};
            Measure u = section.u;
            for (const Lie& lie : order_) {
                while (may(lie) && (strip.width == 0 || lie.v <= strip.width)) {
                    const Measure at = first_free(model_, sheet_, lie, u, section.u + section.length, v);
                    if (at < 0) break;
                    if (strip.width == 0) strip.width = lie.v;
                    strip.items.push_back({lie, at});
                    --left(lie);
                    u = at + lie.u;
                }
            }
            if (!strip.items.empty()) return strip;
        }
        return {};
    }

    const Model& model_;
    const Sheet& sheet_;
    const std::vector<Lie>& order_;
    std::vector<std::int64_t>& residual_;
    Pattern pattern_;
};

double area_of(const Model& model, const Pattern& pattern) {
    double area = 0;
    for (const auto& [type, times] : pattern.counts)
        area += times * static_cast<double>(model.types[static_cast<std::size_t>(type)].area);
    return area;
}

/// Fill sheet after sheet in one order.
Solution run(const Model& model, const std::vector<Lie>& order, const std::vector<std::int64_t>& demand,
             std::vector<std::int64_t> available, std::int64_t& work) {
    Solution solution;
    std::vector<std::int64_t> residual = demand;
    for (;;) {
        Pattern best;
        double least = 0, most = 0;
        for (std::size_t s = 0; s < model.sheets.size(); ++s) {
            if (available[s] == 0) continue;
            std::vector<std::int64_t> rest = residual;
            Pattern pattern = fill_in_order(model, static_cast<int>(s), order, rest);
            work += static_cast<std::int64_t>(order.size()) * 20 + 2000;
            const double area = area_of(model, pattern);
            if (area == 0) continue;
            const double price = static_cast<double>(model.sheets[s].cost) / area;
            if (best.counts.empty() || price < least || (price == least && area > most))
                best = std::move(pattern), least = price, most = area;
        }
        if (best.counts.empty()) break;
        std::int64_t times = available[static_cast<std::size_t>(best.sheet)];
        for (const auto& [type, used] : best.counts)
            times = std::min(times, residual[static_cast<std::size_t>(type)] / used);
        for (const auto& [type, used] : best.counts) residual[static_cast<std::size_t>(type)] -= times * used;
        available[static_cast<std::size_t>(best.sheet)] -= times;
        solution.uses.push_back({std::move(best), times});
    }
    weigh(model, solution);
    return solution;
}

} // namespace

Pattern fill_in_order(const Model& model, int sheet, const std::vector<Lie>& order,
                      std::vector<std::int64_t>& residual) {
    return Filler(model, sheet, order, residual).fill();
}

Solution greedy(const Model& model, const std::vector<std::int64_t>& demand,
                const std::vector<std::int64_t>& available, std::int64_t& work) {
    std::vector<Lie> lies;
    for (const Type& type : model.types)
        for (const Lie& lie : type.lies) lies.push_back(lie);
    using Before = bool (*)(const Lie&, const Lie&);
    const Before orders[] = {
        [](const Lie& a, const Lie& b) { return a.u != b.u ? a.u > b.u : a.v > b.v; },
        [](const Lie& a, const Lie& b) { return a.v != b.v ? a.v > b.v : a.u > b.u; },
        [](const Lie& a, const Lie& b) { return a.u * a.v > b.u * b.v; },
    };
    Solution best;
    bool first = true;
    for (const Before before : orders) {
        std::stable_sort(lies.begin(), lies.end(), before);
        Solution solution = run(model, lies, demand, available, work);
        if (first || better(solution, best)) best = std::move(solution);
        first = false;
    }
    return best;
}

} // namespace rayfleck::cutting
