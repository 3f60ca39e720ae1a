// See bench.hpp. The line is on the side of the stop or fence; the blade and its kerf lie beyond it.
//
// The cutting room knows boards whose edges are straight. Here the edge comes back: crosscuts of the first
// stage go through the whole rough width, and every section that yields blanks gets its lower edge
// straightened before anything else is done to it, since a short edge loses less than a long one.

#include "lumber/bench.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace rayfleck::lumber {
namespace {

Cut square(const Board& board, bool left, const Takes& takes) {
    Cut cut;
    cut.work = Cut::Work::square;
    cut.stage = 0;
    cut.kerf = std::min(takes.kerf_crosscut, takes.trim);
    cut.piece_x = left ? Length() : takes.trim;
    cut.piece_length = board.length - cut.piece_x;
    cut.piece_width = board.width;
    cut.at = left ? takes.trim - cut.kerf : board.length - takes.trim;
    cut.fence = cut.at - cut.piece_x;
    cut.waste_beyond = !left;
    return cut;
}

/// Pieces as wide as the board that the first crosscuts leave.
struct Section {
    Length from, to;
    bool straight = false;
};

class Sawing {
  public:
    Sawing(Board& board, const cutting::Board& from, const Takes& takes)
        : board_(board), from_(from), takes_(takes) {}

    void saw() {
        if (takes_.trim > Length()) {
            board_.cuts.push_back(square(board_, true, takes_));
            board_.cuts.push_back(square(board_, false, takes_));
        }
        sections_ = {{takes_.trim, board_.length - takes_.trim}};
        for (const cutting::Cut& one : from_.cuts) sever(one);
        for (Section& section : sections_)
            if (std::any_of(board_.placements.begin(), board_.placements.end(), [&](const Placement& p) {
                    return p.x >= section.from && p.x + p.along <= section.to;
                }))
                straighten(section);
    }

    /// A left over piece, as wide as the rough board where its edge was never touched.
    Offcut left_over(const cutting::Rectangle& rest) const {
        Offcut offcut{from_tenths(rest.x) + takes_.trim, from_tenths(rest.y) + takes_.edge,
                      from_tenths(rest.length), from_tenths(rest.width)};
        for (const Section& section : sections_)
            if (takes_.edge > Length() && !section.straight && offcut.x == section.from &&
                offcut.x + offcut.length == section.to) {
                offcut.y = Length();
                offcut.width = board_.width;
            }
        return offcut;
    }

  private:
    void straighten(Section& section) {
        if (section.straight || takes_.edge == Length()) return;
        section.straight = true;
        Cut cut;
        cut.work = Cut::Work::straighten;
        cut.direction = Cut::Direction::rip;
        cut.piece_x = section.from;
        cut.piece_length = section.to - section.from;
        cut.piece_width = board_.width;
        cut.kerf = takes_.edge;
        board_.cuts.push_back(std::move(cut));
    }

    void sever(const cutting::Cut& one) {
        Cut cut;
        const bool rip = one.direction == cutting::Cut::Direction::rip;
        cut.direction = rip ? Cut::Direction::rip : Cut::Direction::crosscut;
        cut.stage = one.stage;
        cut.kerf = rip ? takes_.kerf_rip : takes_.kerf_crosscut;
        cut.piece_x = from_tenths(one.piece.x) + takes_.trim;
        cut.piece_y = from_tenths(one.piece.y) + takes_.edge;
        cut.piece_length = from_tenths(one.piece.length);
        cut.piece_width = from_tenths(one.piece.width);
        cut.at = rip ? from_tenths(one.at) + takes_.edge : from_tenths(one.at) + takes_.trim;
        cut.fence = cut.at - (rip ? cut.piece_y : cut.piece_x);
        if (const Length low = rip ? cut.piece_y : cut.piece_x; cut.at <= low) {
            // The blade would hang over the edge: there is nothing to lay against fence or stop.
            cut.work = Cut::Work::shave;
            cut.kerf = cut.at + cut.kerf - low;
            cut.at = low;
            cut.fence = Length();
        }
        for (std::size_t s = 0; s < sections_.size(); ++s) {
            Section& section = sections_[s];
            const Length end = cut.piece_x + cut.piece_length;
            if (cut.piece_x < section.from || end > section.to) continue;
            if (takes_.edge == Length() || rip || one.stage > 1 || section.straight) {
                straighten(section);
                break;
            }
            cut.piece_y = Length();
            cut.piece_width = board_.width;
            const Section rest{cut.at + cut.kerf, section.to};
            section.to = cut.at;
            if (rest.to > rest.from)
                sections_.insert(sections_.begin() + static_cast<std::ptrdiff_t>(s) + 1, rest);
            break;
        }
        board_.cuts.push_back(std::move(cut));
    }

    Board& board_;
    const cutting::Board& from_;
    const Takes& takes_;
    std::vector<Section> sections_;
};

} // namespace

void tell_cuts(Board& board, const cutting::Board& from, const Takes& takes, const piece::Shop& shop) {
    Sawing sawing(board, from, takes);
    sawing.saw();
    for (const cutting::Rectangle& rest : from.leftovers) {
        // A tenth is no more than rounding.
        if (rest.length <= 1 || rest.width <= 1) continue;
        Offcut offcut = sawing.left_over(rest);
        const auto large_enough = [&](Length length, Length width) {
            return length >= shop.keep_length && width >= shop.keep_width;
        };
        offcut.worth_keeping = large_enough(offcut.length, offcut.width) ||
                               (board.sheet && large_enough(offcut.width, offcut.length));
        board.offcuts.push_back(offcut);
    }
}

void tell_flaws(Board& board, const piece::Shop::Board& told) {
    const auto add = [&](const std::string& kind, bool round, Length x, Length y, Length length,
                         Length width) {
        if (length > Length() && width > Length()) board.flaws.push_back({kind, round, x, y, length, width});
    };
    add("sapwood", false, Length(), Length(), told.length, told.sapwood_front);
    add("sapwood", false, Length(), told.width - told.sapwood_back, told.length, told.sapwood_back);
    add("checks", false, Length(), Length(), told.checks_left, told.width);
    add("checks", false, told.length - told.checks_right, Length(), told.checks_right, told.width);
    for (const piece::Shop::Board::Flaw& flaw : told.flaws)
        add(flaw.kind, flaw.round, flaw.along, flaw.across, flaw.length, flaw.width);
    std::vector<std::string> seen;
    if (told.bark)
        seen.push_back(*told.bark == syntax::Side::top      ? "bark face up"
                       : *told.bark == syntax::Side::bottom ? "bark face down"
                       : *told.bark == syntax::Side::front  ? "bark edge to the front"
                                                            : "bark edge to the back");
    if (told.rings) seen.push_back(fmt::format("rings at {:g}° to the face", *told.rings));
    std::vector<std::string> kinds;
    for (const Flaw& flaw : board.flaws)
        if (std::find(kinds.begin(), kinds.end(), flaw.kind) == kinds.end()) kinds.push_back(flaw.kind);
    if (!kinds.empty()) seen.push_back(fmt::format("grey outlines: {}", fmt::join(kinds, ", ")));
    if (!seen.empty())
        board.remarks.push_back(
            fmt::format("as it lies, better face up, lower edge to the front: {}", fmt::join(seen, "; ")));
}

} // namespace rayfleck::lumber
