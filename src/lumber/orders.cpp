// See orders.hpp.

#include "lumber/orders.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rayfleck::lumber {
namespace {

using measure::Rational;

/// The usual kerf of a circular saw where the shop names none. Common practice, no published source.
const Length usual_kerf = Length::mm(3);

cutting::Cost area_cost(const StockType& stock, double per_mm2) {
    const double area = stock.width.value() * stock.length.value();
    return static_cast<cutting::Cost>(std::clamp(std::round(area * per_mm2), 1.0, 1e8));
}

cutting::Cost cost_of(const StockType& stock) {
    // A board on hand of 0.2 by 2.4 m counts half a hundredth of money; the same without a price 48.
    if (stock.on_hand > 0) return area_cost(stock, 1e-3);
    if (stock.price == nullptr) return area_cost(stock, 10);
    const double money = std::round(price_of(stock) * money_unit);
    return static_cast<cutting::Cost>(std::clamp(money, 1.0, static_cast<double>(cutting::largest_cost)));
}

/// Blanks that share stock stand in one set, told by its lowest blank.
std::vector<std::size_t> sets_of(const std::vector<std::vector<std::size_t>>& allowed, std::size_t stocks) {
    std::vector<std::size_t> set(allowed.size());
    std::iota(set.begin(), set.end(), std::size_t{0});
    std::vector<std::size_t> first_with(stocks, allowed.size());
    for (std::size_t b = 0; b < allowed.size(); ++b)
        for (const std::size_t s : allowed[b]) {
            if (first_with[s] == allowed.size()) {
                first_with[s] = b;
                continue;
            }
            const std::size_t from = std::max(set[first_with[s]], set[b]),
                              to = std::min(set[first_with[s]], set[b]);
            std::replace(set.begin(), set.end(), from, to);
        }
    return set;
}

bool has_room(const StockType& stock, const BlankType& blank, const piece::Shop& shop) {
    const cutting::Measure trim = stock.sheet ? 0 : 2 * tenths(shop.end_trim);
    const cutting::Measure length = tenths(stock.length) - trim,
                           width = tenths(stock.width) - tenths(straightened_off(stock, shop));
    const cutting::Measure along = tenths(blank.length), across = tenths(blank.width);
    return (along <= length && across <= width) || (blank.may_turn && across <= length && along <= width);
}

/// Kinds of defect: sapwood may be borne, all else not.
constexpr std::uint32_t flawed = 1, sapwood = 2;

/// What is told of a board on hand, in the frame of what the end trims and the straightened edge leave.
std::vector<cutting::Defect> defects_of(const piece::Shop::Board& board, cutting::Measure trim,
                                        cutting::Measure edge) {
    std::vector<cutting::Defect> out;
    const cutting::Measure length = tenths(board.length), width = tenths(board.width);
    const auto add = [&](cutting::Measure x, cutting::Measure y, cutting::Measure along,
                         cutting::Measure across, std::uint32_t kinds) {
        if (along > 0 && across > 0) out.push_back({x - trim, y - edge, along, across, kinds});
    };
    const cutting::Measure back = tenths(board.sapwood_back), right = tenths(board.checks_right);
    add(0, 0, length, tenths(board.sapwood_front), sapwood);
    add(0, width - back, length, back, sapwood);
    add(0, 0, tenths(board.checks_left), width, flawed);
    add(length - right, 0, right, width, flawed);
    for (const piece::Shop::Board::Flaw& flaw : board.flaws)
        add(tenths(flaw.along), tenths(flaw.across), tenths(flaw.length), tenths(flaw.width), flawed);
    return out;
}

Problem problem_of(const std::vector<std::size_t>& members, const std::vector<BlankType>& blanks,
                   const std::vector<StockType>& stocks, const std::vector<std::vector<std::size_t>>& allowed,
                   const piece::Shop& shop) {
    Problem problem;
    problem.blanks = members;
    for (std::size_t s = 0; s < stocks.size(); ++s)
        for (const std::size_t b : members)
            if (std::find(allowed[b].begin(), allowed[b].end(), s) != allowed[b].end()) {
                problem.stocks.push_back(s);
                break;
            }
    cutting::Order& order = problem.order;
    order.kerf_rip = tenths(kerf_of_rip(shop));
    order.kerf_crosscut = tenths(kerf_of_crosscut(shop));
    const bool sheet = blanks[members.front()].sheet;
    order.stages = {3, sheet ? cutting::Stages::First::rip : cutting::Stages::First::crosscut};
    for (const std::size_t s : problem.stocks) {
        const StockType& from = stocks[s];
        cutting::Stock stock;
        stock.length = tenths(from.length) - (sheet ? 0 : 2 * tenths(shop.end_trim));
        const cutting::Measure edge = tenths(straightened_off(from, shop));
        stock.width = tenths(from.width) - edge;
        stock.cost = cost_of(from);
        if (from.board) stock.defects = defects_of(*from.board, sheet ? 0 : tenths(shop.end_trim), edge);
        if (from.on_hand > 0) {
            stock.available = from.on_hand;
            problem.on_hand_at_most += stock.cost * from.on_hand;
        } else if (from.price == nullptr)
            problem.all_priced = false;
        order.stocks.push_back(std::move(stock));
    }
    for (const std::size_t b : members) {
        cutting::Part part;
        part.length = tenths(blanks[b].length);
        part.width = tenths(blanks[b].width);
        part.count = blanks[b].count();
        part.may_turn = blanks[b].may_turn;
        part.tolerates = blanks[b].sapwood ? sapwood : 0;
        for (const std::size_t s : allowed[b])
            part.stocks.push_back(static_cast<std::size_t>(
                std::find(problem.stocks.begin(), problem.stocks.end(), s) - problem.stocks.begin()));
        order.parts.push_back(std::move(part));
    }
    return problem;
}

} // namespace

cutting::Measure tenths(Length length) {
    return measure::floor(length.in_mm() * Rational(10) + Rational(1, 2));
}

Length from_tenths(cutting::Measure measure) { return Length::mm(Rational(measure, 10)); }

Length kerf_of_rip(const piece::Shop& shop) {
    for (const auto& [saw, kerf] : shop.kerfs)
        if (saw == "table saw") return kerf;
    return usual_kerf;
}

std::string crosscut_saw(const piece::Shop& shop) {
    for (const auto& [saw, kerf] : shop.kerfs)
        for (const char* name : {"miter saw", "mitre saw", "chop saw", "crosscut saw", "radial arm saw"})
            if (saw == name) return saw;
    return "table saw";
}

Length kerf_of_crosscut(const piece::Shop& shop) {
    const std::string name = crosscut_saw(shop);
    for (const auto& [saw, kerf] : shop.kerfs)
        if (saw == name) return kerf;
    return usual_kerf;
}

bool has_band_saw(const piece::Shop& shop) {
    return std::any_of(shop.kerfs.begin(), shop.kerfs.end(),
                       [](const auto& kerf) { return kerf.first == "band saw"; });
}

Length kerf_of_resaw(const piece::Shop& shop) {
    for (const auto& [saw, kerf] : shop.kerfs)
        if (saw == "band saw") return kerf;
    return Length::mm(2);
}

Length resaw_height(const piece::Shop& shop) {
    for (const piece::Shop::Limit& limit : shop.limits)
        if (limit.machine == "band saw" && limit.what == "height") return limit.amount;
    return Length::mm(150);
}

std::vector<std::size_t> stocks_of(const BlankType& blank, const std::vector<StockType>& stocks,
                                   const piece::Shop& shop) {
    std::vector<std::size_t> fitting;
    Length thinnest;
    for (std::size_t s = 0; s < stocks.size(); ++s) {
        if (stocks[s].length <= shop.end_trim * Rational(2) || !suits(stocks[s], blank) ||
            !has_room(stocks[s], blank, shop))
            continue;
        if (fitting.empty() || stocks[s].thickness < thinnest) thinnest = stocks[s].thickness;
        fitting.push_back(s);
    }
    const Length most =
        std::max(thinnest, blank.thickness * Rational(thick_over_rough_top, thick_over_rough_bottom));
    std::erase_if(fitting, [&](std::size_t s) { return stocks[s].thickness > most; });
    return fitting;
}

std::vector<Problem> problems_of(const std::vector<BlankType>& blanks, const std::vector<StockType>& stocks,
                                 const piece::Shop& shop) {
    std::vector<std::vector<std::size_t>> allowed;
    for (const BlankType& blank : blanks) allowed.push_back(stocks_of(blank, stocks, shop));
    const std::vector<std::size_t> set = sets_of(allowed, stocks.size());
    std::vector<Problem> problems;
    for (std::size_t head = 0; head < blanks.size(); ++head) {
        std::vector<std::size_t> members;
        for (std::size_t b = 0; b < blanks.size(); ++b)
            if (set[b] == head && !allowed[b].empty()) members.push_back(b);
        if (!members.empty()) problems.push_back(problem_of(members, blanks, stocks, allowed, shop));
    }
    return problems;
}

} // namespace rayfleck::lumber
