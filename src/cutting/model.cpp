// The order made into types, and taken apart into independent problems. See model.hpp.

#include "cutting/model.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace rayfleck::cutting {
namespace {

bool in_range(Measure size) { return size > 0 && size <= largest_measure; }

std::string nth(const char* what, std::size_t index) { return what + (" " + std::to_string(index + 1)); }

} // namespace

std::string refusal_of(const Order& order) {
    const std::string most = std::to_string(largest_measure);
    std::int64_t all = 0;
    std::vector<std::int64_t> free;
    for (std::size_t i = 0; i < order.parts.size(); ++i) {
        const Part& part = order.parts[i];
        if (!in_range(part.length) || !in_range(part.width))
            return nth("part", i) + ": length and width must be from 1 to " + most;
        if (part.count < 0 || part.count > largest_count || (all += part.count) > largest_count)
            return nth("part", i) + ": the count must be from 0 to " + std::to_string(largest_count) +
                   ", and so must the sum of all counts";
        for (const std::size_t stock : part.stocks)
            if (stock >= order.stocks.size()) return nth("part", i) + ": names a stock that is not there";
        free.push_back(part.count);
    }
    for (std::size_t i = 0; i < order.stocks.size(); ++i) {
        const Stock& stock = order.stocks[i];
        if (!in_range(stock.length) || !in_range(stock.width))
            return nth("stock", i) + ": length and width must be from 1 to " + most;
        if (stock.cost < 0 || stock.cost > largest_cost)
            return nth("stock", i) + ": the cost must be from 0 to " + std::to_string(largest_cost);
        if (stock.available && *stock.available < 0) return nth("stock", i) + ": fewer than none available";
        for (const Defect& defect : stock.defects)
            for (const Measure at : {defect.x, defect.y, defect.length, defect.width})
                if (at > largest_measure || at < -largest_measure)
                    return nth("stock", i) + ": a defect lies farther than " + most + " away";
    }
    for (std::size_t i = 0; i < order.sequences.size(); ++i) {
        const Sequence& sequence = order.sequences[i];
        if (sequence.parts.empty()) return nth("sequence", i) + ": has no parts";
        if (sequence.count < 0 || sequence.count > largest_count)
            return nth("sequence", i) + ": the count must be from 0 to " + std::to_string(largest_count);
        for (const std::size_t part : sequence.parts) {
            if (part >= order.parts.size()) return nth("sequence", i) + ": names a part that is not there";
            if ((free[part] -= sequence.count) < 0)
                return nth("sequence", i) + ": uses more of part " + std::to_string(part + 1) +
                       " than its count";
        }
    }
    for (const Measure kerf : {order.kerf_rip, order.kerf_crosscut})
        if (kerf < 0 || kerf > largest_measure) return "the kerf must be from 0 to " + most;
    if (order.stages.count < 1 || order.stages.count > 3) return "there are one, two or three stages";
    return "";
}

Extent block_of(const Order& order, const Sequence& sequence, bool turned) {
    Extent block;
    const bool along_x = (sequence.towards == Sequence::Towards::along) != turned;
    for (std::size_t i = 0; i < sequence.parts.size(); ++i) {
        const Part& part = order.parts[sequence.parts[i]];
        const Measure kerf = i == 0 ? 0 : along_x ? order.kerf_crosscut : order.kerf_rip;
        const Extent one = turned ? Extent{part.width, part.length} : Extent{part.length, part.width};
        block.x = along_x ? block.x + kerf + one.x : std::max(block.x, one.x);
        block.y = along_x ? std::max(block.y, one.y) : block.y + kerf + one.y;
    }
    return block;
}

namespace {

/// Everything that makes two types the same.
using TypeKey = std::tuple<Extent, Extent, std::uint32_t, std::vector<char>>;
using SheetKey =
    std::tuple<Measure, Measure, Cost,
               std::vector<std::tuple<Measure, Measure, Measure, Measure, std::uint32_t>>, std::vector<char>>;

void add_type(Model& model, std::map<TypeKey, std::size_t>& known, const TypeKey& key, const Source& source) {
    const auto& [straight, turned, tolerates, allowed] = key;
    const auto [place, is_new] = known.try_emplace(key, model.types.size());
    if (is_new) {
        Type type;
        type.tolerates = tolerates;
        type.allowed = allowed;
        const int number = static_cast<int>(model.types.size());
        const auto lie = [&](const Extent& extent, bool is_turned) {
            type.lies.push_back({number, (model.transposed ? extent.y : extent.x) + model.kerf_u,
                                 (model.transposed ? extent.x : extent.y) + model.kerf_v, is_turned});
        };
        lie(straight, false);
        if (turned.x > 0 && turned != straight) lie(turned, true);
        type.area = type.lies.front().u * type.lies.front().v;
        for (const Lie& one : type.lies) type.area = std::min(type.area, one.u * one.v);
        model.types.push_back(type);
    }
    model.types[place->second].demand += source.count;
    model.types[place->second].sources.push_back(source);
}

std::vector<char> allowed_of(const Order& order, const Part& part) {
    std::vector<char> allowed(order.stocks.size(), part.stocks.empty() ? 1 : 0);
    for (const std::size_t stock : part.stocks) allowed[stock] = 1;
    return allowed;
}

std::vector<Hole> holes_of(const Model& model, const Stock& stock) {
    std::vector<Hole> holes;
    for (const Defect& defect : stock.defects) {
        if (defect.length <= 0 || defect.width <= 0 || defect.kinds == 0) continue;
        const Measure x = std::max<Measure>(defect.x, 0), y = std::max<Measure>(defect.y, 0);
        const Measure x_end = std::min(defect.x + defect.length, stock.length);
        const Measure y_end = std::min(defect.y + defect.width, stock.width);
        if (x >= x_end || y >= y_end) continue;
        holes.push_back(model.transposed ? Hole{y, x, y_end, x_end, defect.kinds}
                                         : Hole{x, y, x_end, y_end, defect.kinds});
    }
    return holes;
}

/// Stocks that are alike in everything, and alike to every part, become one sheet.
void add_sheets(Model& model, const Order& order) {
    std::int64_t parts = 0;
    for (const Type& type : model.types) parts += type.demand;
    std::map<SheetKey, std::size_t> known;
    std::vector<std::size_t> sheet_of_stock;
    for (std::size_t i = 0; i < order.stocks.size(); ++i) {
        const Stock& stock = order.stocks[i];
        Sheet sheet;
        sheet.u = (model.transposed ? stock.width : stock.length) + model.kerf_u;
        sheet.v = (model.transposed ? stock.length : stock.width) + model.kerf_v;
        sheet.cost = stock.cost;
        sheet.holes = holes_of(model, stock);
        SheetKey key{sheet.u, sheet.v, sheet.cost, {}, {}};
        for (const Hole& hole : sheet.holes)
            std::get<3>(key).push_back({hole.u, hole.v, hole.u_end, hole.v_end, hole.kinds});
        for (const Type& type : model.types) std::get<4>(key).push_back(type.allowed[i]);
        const auto [place, is_new] = known.try_emplace(key, model.sheets.size());
        if (is_new) model.sheets.push_back(sheet);
        sheet_of_stock.push_back(place->second);
        const std::int64_t count = std::min(stock.available.value_or(parts), parts);
        model.sheets[place->second].available += count;
        model.sheets[place->second].sources.push_back({false, i, count});
    }
    for (Sheet& sheet : model.sheets) {
        sheet.available = std::min(sheet.available, parts);
        sheet.limited = sheet.available < parts;
    }
    for (Type& type : model.types) {
        std::vector<char> allowed(model.sheets.size());
        for (std::size_t i = 0; i < sheet_of_stock.size(); ++i) allowed[sheet_of_stock[i]] = type.allowed[i];
        type.allowed = allowed;
    }
}

} // namespace

Model model_of(const Order& order) {
    Model model;
    const bool rip_first = order.stages.first == Stages::First::rip;
    model.sections = order.stages.count == 3;
    model.strips = order.stages.count >= 2;
    model.transposed = order.stages.count == 2 ? !rip_first : rip_first;
    model.kerf_u = model.transposed ? order.kerf_rip : order.kerf_crosscut;
    model.kerf_v = model.transposed ? order.kerf_crosscut : order.kerf_rip;

    std::map<TypeKey, std::size_t> known;
    std::vector<std::int64_t> free;
    for (const Part& part : order.parts) free.push_back(part.count);
    for (std::size_t i = 0; i < order.sequences.size(); ++i) {
        const Sequence& sequence = order.sequences[i];
        if (sequence.count == 0) continue;
        bool may_turn = true;
        std::uint32_t tolerates = ~0U;
        std::vector<char> allowed(order.stocks.size(), 1);
        for (const std::size_t index : sequence.parts) {
            const Part& part = order.parts[index];
            free[index] -= sequence.count;
            may_turn = may_turn && part.may_turn;
            tolerates &= part.tolerates;
            const std::vector<char> of_part = allowed_of(order, part);
            for (std::size_t s = 0; s < allowed.size(); ++s) allowed[s] = allowed[s] && of_part[s];
        }
        add_type(model, known,
                 {block_of(order, sequence, false), may_turn ? block_of(order, sequence, true) : Extent{},
                  tolerates, allowed},
                 {true, i, sequence.count});
    }
    for (std::size_t i = 0; i < order.parts.size(); ++i) {
        const Part& part = order.parts[i];
        if (free[i] == 0) continue;
        add_type(model, known,
                 {{part.length, part.width},
                  part.may_turn ? Extent{part.width, part.length} : Extent{},
                  part.tolerates,
                  allowed_of(order, part)},
                 {false, i, free[i]});
    }
    add_sheets(model, order);
    return model;
}

std::vector<Model> independent_problems(const Model& model) {
    const std::size_t types = model.types.size();
    std::vector<std::size_t> root(types + model.sheets.size());
    std::iota(root.begin(), root.end(), 0);
    const auto find = [&](std::size_t i) {
        while (root[i] != i) i = root[i] = root[root[i]];
        return i;
    };
    for (std::size_t t = 0; t < types; ++t)
        for (std::size_t s = 0; s < model.sheets.size(); ++s)
            for (const Lie& lie : model.types[t].lies)
                if (model.sheets[s].available > 0 && model.fits(lie, s)) root[find(types + s)] = find(t);

    std::vector<Model> problems;
    for (std::size_t r = 0; r < types; ++r) {
        if (find(r) != r) continue;
        std::vector<std::size_t> its_types, its_sheets;
        for (std::size_t t = 0; t < types; ++t)
            if (find(t) == r) its_types.push_back(t);
        for (std::size_t s = 0; s < model.sheets.size(); ++s)
            if (find(types + s) == r) its_sheets.push_back(s);
        if (its_sheets.empty()) continue;
        Model part = model;
        part.types.clear();
        part.sheets.clear();
        std::int64_t parts = 0;
        for (const std::size_t t : its_types) {
            Type type = model.types[t];
            for (Lie& lie : type.lies) lie.type = static_cast<int>(part.types.size());
            type.allowed.clear();
            for (const std::size_t s : its_sheets) type.allowed.push_back(model.types[t].allowed[s]);
            parts += type.demand;
            part.types.push_back(type);
        }
        for (const std::size_t s : its_sheets) {
            Sheet sheet = model.sheets[s];
            sheet.limited = sheet.available < parts;
            sheet.available = std::min(sheet.available, parts);
            part.sheets.push_back(sheet);
        }
        problems.push_back(part);
    }
    return problems;
}

} // namespace rayfleck::cutting
