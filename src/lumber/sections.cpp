// Sections of a board that are ripped alike stay together until they are ripped.
//
// before   | A A | B B |      crosscut, then rip both at the same fences
// after    | A A   B B |      rip once, then crosscut every strip
//
// It is the same plan with fewer cuts: one edge to straighten instead of two, a longer piece at the fence,
// and what is left over in both is one long offcut. Sections grow no longer than a maker likes to straighten
// in one piece. Left out: sections in other places of the board, since nothing is moved.

#include <algorithm>

#include "lumber/bench.hpp"

namespace rayfleck::lumber {
namespace {

using cutting::Cut;
using cutting::Measure;
using cutting::Rectangle;

/// Tenths of a millimetre: a longer section has too much bow for the straightening of a board. Our own
/// choice.
constexpr Measure longest_section = 12'000;

Measure right(const Rectangle& r) { return r.x + r.length; }
Measure top(const Rectangle& r) { return r.y + r.width; }
bool within(const Rectangle& r, Measure from, Measure to) { return r.x >= from && right(r) <= to; }

class Joining {
  public:
    /// kerf  of crosscuts;  width  of the board, straight
    Joining(cutting::Board& board, Measure kerf, Measure rip_kerf, Measure width)
        : board_(board), kerf_(kerf), rip_kerf_(rip_kerf), width_(width) {}

    void join() {
        // From the far end, so that strips are crosscut from the near end, again and again at one stop.
        for (bool any = true; any;) {
            any = false;
            for (std::size_t c = board_.cuts.size(); c-- > 0 && !any;)
                if (is_first(board_.cuts[c])) any = join_at(c);
        }
    }

  private:
    static bool is_first(const Cut& cut) {
        return cut.stage == 1 && cut.direction == Cut::Direction::crosscut;
    }

    /// The end of the section that begins there: where the next first cut is, or the end of that piece.
    Measure end_from(const Cut& cut, Measure begin) const {
        Measure end = right(cut.piece);
        for (const Cut& other : board_.cuts)
            if (is_first(other) && other.piece.x == begin && other.at > begin) end = std::min(end, other.at);
        return end;
    }

    /// Rips through a whole section.
    std::vector<Measure> rips(Measure from, Measure to) const {
        std::vector<Measure> at;
        for (const Cut& cut : board_.cuts)
            if (cut.stage == 2 && cut.direction == Cut::Direction::rip && cut.piece.x == from &&
                right(cut.piece) == to)
                at.push_back(cut.at);
        return at;
    }

    bool used(Measure from, Measure to) const {
        return std::any_of(board_.placements.begin(), board_.placements.end(),
                           [&](const auto& p) { return within(p.place, from, to); });
    }

    /// Whether a block of parts in sequence lies there; it keeps its own cuts.
    bool has_block(Measure from, Measure to) const {
        return std::any_of(board_.placements.begin(), board_.placements.end(),
                           [&](const auto& p) { return p.sequence && within(p.place, from, to); });
    }

    bool join_at(std::size_t c) {
        const Cut cut = board_.cuts[c];
        const Measure a = cut.piece.x, a_end = cut.at, b = cut.at + kerf_;
        if (a_end <= a || b >= right(cut.piece)) return false;
        const Measure b_end = end_from(cut, b);
        if (b_end - a > longest_section || !used(a, a_end) || !used(b, b_end) || has_block(a, a_end) ||
            has_block(b, b_end))
            return false;
        const std::vector<Measure> fences = rips(a, a_end);
        if (fences != rips(b, b_end)) return false;
        board_.cuts.erase(board_.cuts.begin() + static_cast<std::ptrdiff_t>(c));
        // The rips of the first run on through the second, whose own go.
        std::erase_if(board_.cuts, [&](const Cut& other) {
            return other.stage == 2 && other.piece.x == b && right(other.piece) == b_end &&
                   other.direction == Cut::Direction::rip;
        });
        for (Cut& other : board_.cuts) {
            if (is_first(other) && other.piece.x == b) {
                other.piece.length += b - a;
                other.piece.x = a;
            } else if (other.stage == 2 && other.piece.x == a && right(other.piece) == a_end)
                other.piece.length = b_end - a;
        }
        part_strips(fences, a, a_end, b, b_end);
        std::stable_sort(board_.cuts.begin(), board_.cuts.end(),
                         [](const Cut& one, const Cut& other) { return one.stage < other.stage; });
        return true;
    }

    /// Every strip that holds something is crosscut between the two; the others are one piece left over.
    void part_strips(const std::vector<Measure>& fences, Measure a, Measure a_end, Measure b, Measure b_end) {
        std::vector<Cut> more;
        Measure low = 0;
        for (std::size_t s = 0; s <= fences.size(); ++s) {
            const Measure high = s < fences.size() ? fences[s] : width_;
            const Rectangle strip{a, low, b_end - a, high - low};
            low = s < fences.size() ? fences[s] + rip_kerf_ : low;
            if (strip.width <= 0) continue;
            const bool holds =
                std::any_of(board_.placements.begin(), board_.placements.end(), [&](const auto& p) {
                    return within(p.place, a, b_end) && p.place.y >= strip.y && top(p.place) <= top(strip);
                });
            if (holds) {
                more.push_back({Cut::Direction::crosscut, strip, a_end, 3});
                continue;
            }
            const auto both = std::erase_if(board_.leftovers, [&](const Rectangle& rest) {
                return rest.y == strip.y && top(rest) == top(strip) &&
                       ((rest.x == a && right(rest) == a_end) || (rest.x == b && right(rest) == b_end));
            });
            if (both > 0) board_.leftovers.push_back(strip);
        }
        // Before the other cuts of the third stage, so that each finds its own piece.
        board_.cuts.insert(board_.cuts.begin(), more.begin(), more.end());
    }

    cutting::Board& board_;
    Measure kerf_, rip_kerf_, width_;
};

} // namespace

void join_sections(cutting::Board& board, cutting::Measure kerf_crosscut, cutting::Measure kerf_rip,
                   cutting::Measure width) {
    Joining(board, kerf_crosscut, kerf_rip, width).join();
}

} // namespace rayfleck::lumber
