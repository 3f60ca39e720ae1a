// The independent checker. See checker.hpp.
//
// A board begins as one piece on the saw. Each cut must find its piece there, and leaves what is below and
// above the blade. When all is cut, the parts must lie there exactly, and the leftovers be all the rest.

#include "checker.hpp"

#include <algorithm>
#include <map>

namespace rayfleck::cutting {
namespace {

using Faults = std::vector<std::string>;

std::string told(const Rectangle& r) {
    return std::to_string(r.length) + " x " + std::to_string(r.width) + " at " + std::to_string(r.x) + ", " +
           std::to_string(r.y);
}

bool inside(const Rectangle& inner, const Rectangle& outer) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.x + inner.length <= outer.x + outer.length &&
           inner.y + inner.width <= outer.y + outer.width;
}

bool take(std::vector<Rectangle>& from, const Rectangle& what) {
    const auto found = std::find(from.begin(), from.end(), what);
    if (found == from.end()) return false;
    from.erase(found);
    return true;
}

/// A cut of a later stage than the rule has may only finish one part, or take one block apart.
void look_at_stage(const Order& order, const Board& board, const Cut& cut, Faults& faults) {
    const bool first_is_crosscut = order.stages.first == Stages::First::crosscut;
    const bool odd = cut.stage % 2 == 1;
    if (cut.stage <= order.stages.count) {
        if ((cut.direction == Cut::Direction::crosscut) != (odd == first_is_crosscut))
            faults.push_back("a cut of stage " + std::to_string(cut.stage) + " in the wrong direction");
        return;
    }
    std::vector<const Placement*> on_it;
    for (const Placement& placement : board.placements)
        if (inside(placement.place, cut.piece)) on_it.push_back(&placement);
    for (const Placement* placement : on_it)
        if (on_it.size() > 1 && (!placement->sequence || placement->sequence != on_it[0]->sequence ||
                                 placement->block != on_it[0]->block))
            faults.push_back("stage " + std::to_string(cut.stage) + " parts " + told(cut.piece));
}

void saw(const Order& order, const Board& board, Faults& faults) {
    const Stock& stock = order.stocks[board.stock];
    std::vector<Rectangle> table{{0, 0, stock.length, stock.width}};
    int stage = 1;
    for (const Cut& cut : board.cuts) {
        if (!take(table, cut.piece)) {
            faults.push_back("no piece " + told(cut.piece) + " to cut");
            continue;
        }
        if (cut.stage < stage) faults.push_back("a stage goes back");
        stage = cut.stage;
        look_at_stage(order, board, cut, faults);
        Rectangle below = cut.piece, above = cut.piece;
        const bool across = cut.direction == Cut::Direction::crosscut;
        const Measure kerf = across ? order.kerf_crosscut : order.kerf_rip;
        Measure& begin = across ? above.x : above.y;
        Measure& below_size = across ? below.length : below.width;
        Measure& above_size = across ? above.length : above.width;
        const Measure end = begin + above_size;
        if (cut.at + kerf < begin || cut.at > end) faults.push_back("the blade misses " + told(cut.piece));
        below_size = std::max<Measure>(cut.at - begin, 0);
        begin = std::min(std::max(cut.at + kerf, begin), end);
        above_size = end - begin;
        for (const Rectangle& piece : {below, above})
            if (piece.length > 0 && piece.width > 0) table.push_back(piece);
    }
    for (const Placement& placement : board.placements)
        if (!take(table, placement.place)) faults.push_back("part not cut free: " + told(placement.place));
    for (const Rectangle& leftover : board.leftovers)
        if (!take(table, leftover)) faults.push_back("no leftover " + told(leftover));
    for (const Rectangle& piece : table) faults.push_back("forgotten: " + told(piece));
}

void look_at_parts(const Order& order, const Board& board, Faults& faults) {
    const Stock& stock = order.stocks[board.stock];
    for (const Placement& placement : board.placements) {
        const Part& part = order.parts[placement.part];
        const Rectangle& place = placement.place;
        if (placement.turned && !part.may_turn) faults.push_back("turned against the grain");
        const Measure length = placement.turned ? place.width : place.length;
        const Measure width = placement.turned ? place.length : place.width;
        if (length != part.length || width != part.width) faults.push_back("wrong size: " + told(place));
        if (!part.stocks.empty() &&
            std::find(part.stocks.begin(), part.stocks.end(), board.stock) == part.stocks.end())
            faults.push_back("from a stock that it may not come from");
        for (const Defect& defect : stock.defects) {
            const Measure over_x =
                std::min(place.x + place.length, defect.x + defect.length) - std::max(place.x, defect.x);
            const Measure over_y =
                std::min(place.y + place.width, defect.y + defect.width) - std::max(place.y, defect.y);
            if (over_x > 0 && over_y > 0 && defect.length > 0 && defect.width > 0 &&
                (defect.kinds & ~part.tolerates) != 0)
                faults.push_back("a defect in " + told(place));
        }
    }
}

void look_at_sequences(const Order& order, const Plan& plan, Faults& faults) {
    struct Member {
        std::size_t board = 0, member = 0;
        Placement placement;
        bool operator<(const Member& other) const { return member < other.member; }
    };
    std::map<std::pair<std::size_t, std::size_t>, std::vector<Member>> blocks;
    std::vector<std::int64_t> alone(order.parts.size());
    for (std::size_t b = 0; b < plan.boards.size(); ++b)
        for (const Placement& placement : plan.boards[b].placements) {
            if (placement.sequence)
                blocks[{*placement.sequence, placement.block}].push_back({b, placement.member, placement});
            else
                ++alone[placement.part];
        }
    for (std::size_t i = 0; i < order.parts.size(); ++i) {
        std::int64_t free = order.parts[i].count;
        for (const Sequence& sequence : order.sequences)
            free -= sequence.count * std::count(sequence.parts.begin(), sequence.parts.end(), i);
        if (alone[i] > free) faults.push_back("parts of a sequence lie alone");
    }
    std::vector<std::int64_t> made(order.sequences.size());
    for (auto& [name, members] : blocks) {
        const Sequence& sequence = order.sequences[name.first];
        ++made[name.first];
        std::sort(members.begin(), members.end());
        if (members.size() != sequence.parts.size()) {
            faults.push_back("a block without all its members");
            continue;
        }
        for (std::size_t m = 0; m < members.size(); ++m) {
            const Rectangle& here = members[m].placement.place;
            if (members[m].member != m || members[m].placement.part != sequence.parts[m])
                faults.push_back("the wrong part in a sequence");
            if (m == 0) continue;
            const Rectangle& before = members[m - 1].placement.place;
            const bool along_x =
                (sequence.towards == Sequence::Towards::along) != members[m].placement.turned;
            const bool next =
                along_x ? here.x == before.x + before.length + order.kerf_crosscut && here.y == before.y
                        : here.y == before.y + before.width + order.kerf_rip && here.x == before.x;
            if (!next || members[m].board != members[m - 1].board)
                faults.push_back("members of a sequence are no neighbours");
            if (members[m].placement.turned != members[m - 1].placement.turned)
                faults.push_back("one of a sequence is turned");
        }
    }
    for (std::size_t i = 0; i < made.size(); ++i)
        if (made[i] > order.sequences[i].count) faults.push_back("too many blocks of a sequence");
}

} // namespace

std::vector<std::string> faults_of(const Order& order, const Plan& plan) {
    Faults faults;
    if (!plan.refusal.empty()) return {"refused: " + plan.refusal};
    std::vector<std::int64_t> parts(order.parts.size()), stocks(order.stocks.size());
    Cost cost = 0;
    for (const Board& board : plan.boards) {
        if (board.placements.empty()) faults.push_back("a board for nothing");
        saw(order, board, faults);
        look_at_parts(order, board, faults);
        cost += order.stocks[board.stock].cost;
        ++stocks[board.stock];
        for (const Placement& placement : board.placements) ++parts[placement.part];
    }
    for (const Missing& missing : plan.missing) {
        if (missing.count <= 0) faults.push_back("nothing is missing, yet it is told");
        parts[missing.part] += missing.count;
    }
    for (std::size_t i = 0; i < parts.size(); ++i)
        if (parts[i] != order.parts[i].count)
            faults.push_back("part " + std::to_string(i) + ": " + std::to_string(parts[i]) + " instead of " +
                             std::to_string(order.parts[i].count));
    for (std::size_t i = 0; i < stocks.size(); ++i)
        if (order.stocks[i].available && stocks[i] > *order.stocks[i].available)
            faults.push_back("more of stock " + std::to_string(i) + " than there is");
    look_at_sequences(order, plan, faults);
    if (cost != plan.cost) faults.push_back("the cost is not the sum of the boards");
    if (plan.bound > plan.cost) faults.push_back("the bound is above the cost");
    if (plan.proven_optimal && plan.bound != plan.cost) faults.push_back("proven without proof");
    return faults;
}

std::string faults_in_words(const Order& order, const Plan& plan) {
    std::string words;
    for (const std::string& fault : faults_of(order, plan)) words += fault + "\n";
    return words;
}

namespace {

/// A row of numbers that look drawn by lot: the multiplier and addend of Knuth's MMIX generator, from memory.
class Lot {
  public:
    explicit Lot(unsigned number) : state_(number * 2654435761ULL + 12345) { draw(1); }

    /// From 0 to limit - 1.
    Measure draw(Measure limit) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<Measure>((state_ >> 33) % static_cast<std::uint64_t>(limit));
    }
    Measure between(Measure least, Measure most) { return least + draw(most - least + 1); }
    bool one_in(Measure n) { return draw(n) == 0; }

  private:
    std::uint64_t state_;
};

} // namespace

Order made_up_order(unsigned number) {
    Lot lot(number);
    Order order;
    order.stages.count = static_cast<int>(lot.between(1, 3));
    order.stages.first = lot.one_in(2) ? Stages::First::crosscut : Stages::First::rip;
    order.kerf_rip = lot.draw(5);
    order.kerf_crosscut = lot.draw(5);
    const Measure stocks = lot.between(1, 5);
    for (Measure i = 0; i < stocks; ++i) {
        Stock stock;
        stock.length = lot.between(100, 400);
        stock.width = lot.between(30, 120);
        stock.cost = lot.one_in(3) ? 1 : stock.length * stock.width / 100 + lot.draw(50);
        if (i > 0 || lot.one_in(4)) stock.available = lot.between(0, 4);
        for (Measure d = lot.one_in(2) ? lot.between(1, 4) : 0; d > 0; --d)
            stock.defects.push_back({lot.between(-10, stock.length), lot.between(-5, stock.width),
                                     lot.between(1, 30), lot.between(1, 15),
                                     static_cast<std::uint32_t>(lot.between(1, 3))});
        order.stocks.push_back(stock);
    }
    const Measure parts = lot.between(1, 9);
    for (Measure i = 0; i < parts; ++i) {
        Part part;
        part.length = lot.between(10, lot.one_in(3) ? 300 : 100);
        part.width = lot.between(5, lot.one_in(5) ? 90 : 40);
        part.count = lot.between(1, 6);
        part.may_turn = lot.one_in(3);
        part.tolerates = lot.one_in(3) ? static_cast<std::uint32_t>(lot.between(0, 3)) : 0;
        for (Measure s = 0; s < stocks; ++s)
            if (lot.one_in(8)) part.stocks.push_back(static_cast<std::size_t>(s));
        order.parts.push_back(part);
    }
    if (lot.one_in(2)) {
        Sequence sequence;
        sequence.towards = lot.one_in(2) ? Sequence::Towards::along : Sequence::Towards::across;
        for (Measure m = lot.between(2, 3); m > 0; --m)
            sequence.parts.push_back(static_cast<std::size_t>(lot.draw(parts)));
        for (const std::size_t part : sequence.parts) order.parts[part].count += 1;
        order.sequences.push_back(sequence);
    }
    return order;
}

} // namespace rayfleck::cutting
