// Cuts from a pattern. See boards.hpp.
//
// Each stage takes a piece and the stretches of it to keep, and cuts from the low end to the high: a cut
// before a stretch where waste lies before it, a cut after it where anything is left. Cuts are then put in
// order of their stages, since a shop does all the cuts of one machine before it goes to the next; a cut of a
// later stage never has to come before one of an earlier.

#include "cutting/boards.hpp"

#include <algorithm>

namespace rayfleck::cutting {
namespace {

/// A stretch that is kept, in the axis it is cut along, and what becomes of it.
struct Stretch {
    Measure begin = 0, end = 0;
    std::size_t what = 0;
};

Measure low(const Rectangle& piece, bool along_x) { return along_x ? piece.x : piece.y; }
Measure high(const Rectangle& piece, bool along_x) {
    return along_x ? piece.x + piece.length : piece.y + piece.width;
}
Rectangle part_of(Rectangle piece, bool along_x, Measure begin, Measure end) {
    (along_x ? piece.x : piece.y) = begin;
    (along_x ? piece.length : piece.width) = end - begin;
    return piece;
}

class Cutter {
  public:
    Cutter(const Order& order, const Model& model, Board& board, std::vector<std::int64_t>& placed,
           std::vector<std::size_t>& blocks)
        : order_(order), model_(model), board_(board), placed_(placed), blocks_(blocks) {}

    void cut(const Pattern& pattern, std::vector<std::vector<Source>>& left) {
        const Stock& stock = order_.stocks[board_.stock];
        const Rectangle whole{0, 0, stock.length, stock.width};
        const int first = 1, second = model_.sections ? 2 : 1, third = model_.strips ? second + 1 : second;
        std::vector<Stretch> sections;
        for (std::size_t i = 0; i < pattern.sections.size(); ++i)
            sections.push_back(stretch(pattern.sections[i].u, pattern.sections[i].length, model_.kerf_u, i));
        const auto pieces = model_.sections ? sever(whole, u_is_x(), sections, first) : one(whole);
        for (const auto& [i, piece] : pieces) {
            const Section& section = pattern.sections[i];
            std::vector<Stretch> strips;
            for (std::size_t j = 0; j < section.strips.size(); ++j)
                strips.push_back(stretch(section.strips[j].v, section.strips[j].width, model_.kerf_v, j));
            const auto planks = model_.strips ? sever(piece, !u_is_x(), strips, second) : one(piece);
            for (const auto& [j, plank] : planks) cut_strip(section.strips[j], plank, third, left);
        }
        std::stable_sort(board_.cuts.begin(), board_.cuts.end(),
                         [](const Cut& a, const Cut& b) { return a.stage < b.stage; });
    }

  private:
    using Pieces = std::vector<std::pair<std::size_t, Rectangle>>;

    bool u_is_x() const { return !model_.transposed; }
    static Pieces one(const Rectangle& piece) { return {{0, piece}}; }
    static Stretch stretch(Measure from, Measure size, Measure kerf, std::size_t what) {
        return {from, from + size - kerf, what};
    }

    void saw(const Rectangle& piece, bool along_x, Measure at, int stage) {
        board_.cuts.push_back({along_x ? Cut::Direction::crosscut : Cut::Direction::rip, piece, at, stage});
    }

    /// Cuts the stretches out of the piece; what is not kept goes to the leftovers.
    Pieces sever(Rectangle piece, bool along_x, const std::vector<Stretch>& stretches, int stage) {
        const Measure kerf = along_x ? order_.kerf_crosscut : order_.kerf_rip;
        const Measure end = high(piece, along_x);
        Pieces kept;
        for (const Stretch& stretch : stretches) {
            if (stretch.begin > low(piece, along_x)) {
                saw(piece, along_x, stretch.begin - kerf, stage);
                leave(part_of(piece, along_x, low(piece, along_x), stretch.begin - kerf));
                piece = part_of(piece, along_x, stretch.begin, end);
            }
            if (stretch.end < end) saw(piece, along_x, stretch.end, stage);
            kept.emplace_back(stretch.what, part_of(piece, along_x, stretch.begin, stretch.end));
            piece = part_of(piece, along_x, std::min(stretch.end + kerf, end), end);
        }
        leave(piece);
        return kept;
    }

    void leave(const Rectangle& piece) {
        if (piece.length > 0 && piece.width > 0) board_.leftovers.push_back(piece);
    }

    void cut_strip(const Strip& strip, const Rectangle& plank, int stage,
                   std::vector<std::vector<Source>>& left) {
        std::vector<Stretch> items;
        std::vector<Source> goes_to;
        for (const Item& item : strip.items) {
            std::vector<Source>& sources = left[static_cast<std::size_t>(item.lie.type)];
            while (!sources.empty() && sources.front().count == 0) sources.erase(sources.begin());
            if (sources.empty()) continue;
            --sources.front().count;
            items.push_back(stretch(item.u, item.lie.u, model_.kerf_u, goes_to.size()));
            lies_.push_back(item.lie);
            goes_to.push_back(sources.front());
        }
        const std::size_t base = lies_.size() - goes_to.size();
        for (const auto& [i, piece] : sever(plank, u_is_x(), items, stage)) {
            const Lie lie = lies_[base + i];
            const Measure v = low(piece, !u_is_x());
            const Pieces bare = sever(piece, !u_is_x(), {{v, v + lie.v - model_.kerf_v, 0}}, stage + 1);
            place(goes_to[i], lie.turned, bare.front().second, stage + 2);
        }
    }

    void place(const Source& source, bool turned, const Rectangle& piece, int stage) {
        if (!source.sequence) {
            ++placed_[source.index];
            board_.placements.push_back({source.index, piece, turned, std::nullopt, 0, 0});
            return;
        }
        const Sequence& sequence = order_.sequences[source.index];
        const std::size_t block = blocks_[source.index]++;
        const bool along_x = (sequence.towards == Sequence::Towards::along) != turned;
        const Measure kerf = along_x ? order_.kerf_crosscut : order_.kerf_rip;
        std::vector<Stretch> members;
        Measure at = low(piece, along_x);
        for (std::size_t m = 0; m < sequence.parts.size(); ++m) {
            const Part& part = order_.parts[sequence.parts[m]];
            const Measure size = along_x != turned ? part.length : part.width;
            members.push_back({at, at + size, m});
            at += size + kerf;
        }
        for (const auto& [m, member] : sever(piece, along_x, members, stage)) {
            const Part& part = order_.parts[sequence.parts[m]];
            const Measure from = low(member, !along_x);
            const Measure size = along_x != turned ? part.width : part.length;
            const Pieces bare = sever(member, !along_x, {{from, from + size, 0}}, stage + 1);
            ++placed_[sequence.parts[m]];
            board_.placements.push_back(
                {sequence.parts[m], bare.front().second, turned, source.index, block, m});
        }
    }

    const Order& order_;
    const Model& model_;
    Board& board_;
    std::vector<std::int64_t>& placed_;
    std::vector<std::size_t>& blocks_;
    std::vector<Lie> lies_;
};

} // namespace

void Boards::add(const Model& model, const Solution& solution) {
    placed.resize(order_.parts.size());
    blocks_.resize(order_.sequences.size());
    std::vector<std::vector<Source>> parts, stocks;
    for (const Type& type : model.types) parts.push_back(type.sources);
    for (const Sheet& sheet : model.sheets) stocks.push_back(sheet.sources);
    for (const Use& use : solution.uses)
        for (std::int64_t i = 0; i < use.times; ++i) {
            std::vector<Source>& from = stocks[static_cast<std::size_t>(use.pattern.sheet)];
            while (!from.empty() && from.front().count == 0) from.erase(from.begin());
            if (from.empty()) return;
            --from.front().count;
            Board board;
            board.stock = from.front().index;
            Cutter(order_, model, board, placed, blocks_).cut(use.pattern, parts);
            boards.push_back(std::move(board));
        }
}

} // namespace rayfleck::cutting
