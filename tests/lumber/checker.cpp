// See checker.hpp.

#include "checker.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include <fmt/format.h>

namespace rayfleck::lumber_tests {
namespace {

/// Sizes are planned in tenths, each rounded by half of one; two of them may meet.
constexpr double close = 0.11;

struct Rectangle {
    double x, y, length, width;
    double right() const { return x + length; }
    double top() const { return y + width; }
};

bool same(const Rectangle& a, const Rectangle& b) {
    return std::abs(a.x - b.x) < close && std::abs(a.y - b.y) < close &&
           std::abs(a.right() - b.right()) < close && std::abs(a.top() - b.top()) < close;
}

Rectangle place_of(const lumber::Placement& p) {
    return {p.x.value(), p.y.value(), p.along.value(), p.across.value()};
}

class Checker {
  public:
    Checker(const lumber::Plan& plan, const std::vector<lumber::Source>& sources, const piece::Shop& shop)
        : plan_(plan), sources_(sources), shop_(shop) {}

    std::vector<std::string> faults() {
        counts();
        on_hand();
        for (std::size_t s = 0; s < sources_.size(); ++s)
            for (const piece::Match& match : sources_[s].model->piece->matches) together(s, match);
        steps();
        for (const lumber::Board& board : plan_.boards) {
            inside(board);
            apart(board);
            right_wood(board);
            clear(board);
            resawn(board);
            kerfs(board);
            saw(board);
        }
        return std::move(faults_);
    }

  private:
    void fault(std::string words) { faults_.push_back(std::move(words)); }
    const cutlist::Row& row_of(const lumber::Placement& p) const {
        return sources_[p.source].cut_list->rows[p.row];
    }

    /// Nothing lies over what the shop file tells of a board on hand; over sapwood where the text allows it.
    void clear(const lumber::Board& board) {
        for (const piece::Shop::Board& own : shop_.boards) {
            if (!board.on_hand || own.id != board.mark) continue;
            const double l = own.length.value(), w = own.width.value();
            std::vector<std::pair<Rectangle, bool>> told{
                {{0, 0, l, own.sapwood_front.value()}, true},
                {{0, w - own.sapwood_back.value(), l, own.sapwood_back.value()}, true},
                {{0, 0, own.checks_left.value(), w}, false},
                {{l - own.checks_right.value(), 0, own.checks_right.value(), w}, false}};
            for (const auto& flaw : own.flaws)
                told.push_back(
                    {{flaw.along.value(), flaw.across.value(), flaw.length.value(), flaw.width.value()},
                     false});
            for (const lumber::Placement& p : board.placements) {
                const Rectangle at = place_of(p);
                const bool may_hold_sapwood =
                    std::all_of(p.leaves.begin(), p.leaves.end(), [&](const lumber::Leaf& leaf) {
                        return text_of(p.source, leaf.part).sapwood_allowed;
                    });
                for (const auto& [flaw, sapwood] : told) {
                    if (sapwood && may_hold_sapwood) continue;
                    if (flaw.length < close || flaw.width < close) continue;
                    if (at.x + close < flaw.right() && at.right() - close > flaw.x &&
                        at.y + close < flaw.top() && at.top() - close > flaw.y)
                        fault(fmt::format("{} {} lies over a flaw of {}", p.name, p.instance, board.name));
                }
            }
        }
    }

    const piece::Part& text_of(std::size_t source, int part) const {
        return *sources_[source].model->made[static_cast<std::size_t>(part)].part;
    }

    /// What becomes of a blank, or of one of those that it is resawn into.
    struct Blank {
        const lumber::Board* board;
        const lumber::Placement* at;
        const lumber::Leaf* leaf;
        std::size_t leaf_index;
    };

    std::vector<Blank> blanks_of(std::size_t source, int part) const {
        std::vector<Blank> out;
        for (const lumber::Board& board : plan_.boards)
            for (const lumber::Placement& p : board.placements)
                for (std::size_t i = 0; i < p.leaves.size(); ++i)
                    if (p.source == source && p.leaves[i].part == part)
                        out.push_back({&board, &p, &p.leaves[i], i});
        std::stable_sort(out.begin(), out.end(), [](const Blank& a, const Blank& b) {
            return std::tuple(a.leaf->instance.size(), a.leaf->instance) <
                   std::tuple(b.leaf->instance.size(), b.leaf->instance);
        });
        return out;
    }

    /// Parts that match, unless the plan says that it cannot be done.
    void together(std::size_t s, const piece::Match& match) {
        const std::string base =
            sources_[s].model->piece->parts[static_cast<std::size_t>(match.parts.front())].base;
        for (const std::string& remark : plan_.remarks)
            if (remark.rfind("match of " + base + ":", 0) == 0) return;
        std::vector<Blank> row;
        for (const int part : match.parts)
            for (const Blank& blank : blanks_of(s, part)) row.push_back(blank);
        if (match.how == syntax::Matching::book_matched) {
            for (std::size_t i = 0; i + 1 < row.size(); i += 2)
                if (row[i].at != row[i + 1].at || row[i + 1].leaf_index != row[i].leaf_index + 1)
                    fault(fmt::format("{} and {} are no pair of leaves", row[i].leaf->instance,
                                      row[i + 1].leaf->instance));
            return;
        }
        for (std::size_t i = 0; i + 1 < row.size(); ++i) {
            if (row[i].board != row[i + 1].board) fault(fmt::format("{} do not come from one board", base));
            if (match.how != syntax::Matching::in_sequence) continue;
            const Rectangle a = place_of(*row[i].at), b = place_of(*row[i + 1].at);
            if (std::abs(b.x - a.right() - kerf_told("crosscut")) > close || std::abs(a.y - b.y) > close)
                fault(fmt::format("{} are not in sequence", base));
        }
    }

    /// As the shop file says, by a reading of its own.
    double kerf_told(const std::string& work) const {
        std::map<std::string, double> told;
        for (const auto& [saw, kerf] : shop_.kerfs) told[saw] = kerf.value();
        const double rip = told.count("table saw") ? told["table saw"] : 3.0;
        if (work == "rip") return rip;
        if (work == "resaw") return told.count("band saw") ? told["band saw"] : 2.0;
        for (const auto& [saw, kerf] : shop_.kerfs)
            for (const char* name : {"miter saw", "mitre saw", "chop saw", "crosscut saw", "radial arm saw"})
                if (saw == name) return kerf.value();
        return rip;
    }

    void kerfs(const lumber::Board& board) {
        for (const lumber::Cut& cut : board.cuts) {
            double told = kerf_told(cut.direction == lumber::Cut::Direction::rip ? "rip" : "crosscut");
            if (cut.work == lumber::Cut::Work::straighten) told = shop_.straightening.value();
            // Less than a blade where nothing is left in front of it.
            const bool less =
                (cut.work == lumber::Cut::Work::shave || cut.work == lumber::Cut::Work::square) &&
                cut.kerf.value() < told + close && cut.kerf.value() > 0;
            if (!less && std::abs(cut.kerf.value() - told) > close)
                fault(fmt::format("{}: cut {} takes {} and not {}", board.name, cut.number, cut.kerf.value(),
                                  told));
        }
    }

    /// Leaves and the kerfs between them go into the blank, and the blank into the board.
    void resawn(const lumber::Board& board) {
        for (const lumber::Placement& p : board.placements) {
            if (p.leaves.empty()) {
                fault(p.name + " becomes nothing");
                continue;
            }
            double thick = -kerf_told("resaw");
            for (const lumber::Leaf& leaf : p.leaves) {
                thick += leaf.thickness.value() + kerf_told("resaw");
                const cutlist::Row& row = sources_[p.source].cut_list->rows[leaf.row];
                const piece::Part& text = text_of(p.source, leaf.part);
                const bool layers = row.rough_thickness > board.thickness ||
                                    (text.glue_up && text.glue_up->laminated) || board.sheet;
                // Dressed lumber is used as it is.
                if (!layers && leaf.thickness < std::min(row.rough_thickness, board.thickness))
                    if (leaf.thickness.value() < row.thickness.value() - close || p.leaves.size() > 1)
                        fault(leaf.name + ": a leaf too thin");
            }
            if (thick > p.thickness.value() + close)
                fault(fmt::format("{} {} is too thin to be resawn", p.name, p.instance));
        }
    }

    /// Every cut in one step, in the order of the numbers, at the setting of the step.
    void steps() {
        std::vector<int> last(plan_.boards.size(), 0);
        for (const lumber::Step& step : plan_.steps)
            for (const lumber::Step::On& on : step.on)
                for (const int number : on.cuts) {
                    const lumber::Board& board = plan_.boards[on.board];
                    if (number != ++last[on.board])
                        fault(fmt::format("{}: cut {} comes out of turn", board.name, number));
                    if (number > static_cast<int>(board.cuts.size())) continue;
                    const lumber::Cut& cut = board.cuts[static_cast<std::size_t>(number) - 1];
                    const double set = (cut.work == lumber::Cut::Work::shave ? cut.kerf : cut.fence).value();
                    if (step.setting && std::abs(step.setting->value() - set) > close)
                        fault(fmt::format("{}: cut {} is at another setting", board.name, number));
                }
        for (std::size_t b = 0; b < plan_.boards.size(); ++b)
            if (last[b] != static_cast<int>(plan_.boards[b].cuts.size()))
                fault(plan_.boards[b].name + ": a cut is in no step");
    }

    /// The blanks of each part together yield the part.
    void counts() {
        std::map<std::tuple<std::size_t, std::size_t, std::string>, int> instances;
        for (const lumber::Board& board : plan_.boards)
            for (const lumber::Placement& p : board.placements)
                for (const lumber::Leaf& leaf : p.leaves)
                    if (++instances[{p.source, leaf.row, leaf.instance}] > 1)
                        fault(fmt::format("{} {} is cut twice", leaf.name, leaf.instance));
        std::map<std::pair<std::size_t, std::size_t>, int> missing;
        for (const lumber::Missing& gone : plan_.missing) missing[{gone.source, gone.row}] += gone.count;
        for (std::size_t s = 0; s < sources_.size(); ++s)
            for (std::size_t r = 0; r < sources_[s].cut_list->rows.size(); ++r) {
                if (missing.count({s, r})) continue;
                const cutlist::Row& row = sources_[s].cut_list->rows[r];
                for (const int part : row.parts) one_part(s, row, part, blanks_of(s, part));
            }
    }

    void one_part(std::size_t s, const cutlist::Row& row, int part, const std::vector<Blank>& blanks) {
        if (blanks.empty()) return fault(fmt::format("{} is cut nowhere", row.name));
        const piece::Part& text = text_of(s, part);
        const auto n = static_cast<double>(blanks.size());
        // A part thicker than any board is laminated by the plan itself.
        const bool laminated =
            (text.glue_up && text.glue_up->laminated) || blanks.front().leaf->thickness < row.thickness;
        if (text.glue_up && text.glue_up->count && *text.glue_up->count != static_cast<int>(blanks.size()))
            fault(fmt::format("{}: {} blanks for {} told", row.name, n, *text.glue_up->count));
        if (text.species->is_sheet() && blanks.size() != 1) fault(row.name + ": a sheet part in pieces");
        double width = 0, thickness = 0;
        for (const Blank& blank : blanks) {
            const lumber::Placement* p = blank.at;
            const double along = (p->turned ? p->across : p->along).value();
            const double across = (p->turned ? p->along : p->across).value();
            if (along < row.rough_length.value() - close) fault(row.name + " is short");
            width += across;
            thickness += blank.leaf->thickness.value();
            if (laminated && across < row.rough_width.value() - close) fault(row.name + ": a narrow layer");
            if (!laminated && n > 1 &&
                (across - shop_.allow_width.value()) * n < row.width.value() - close * n)
                fault(row.name + ": the staves do not make up the width");
        }
        if (n == 1 && width < row.rough_width.value() - close) fault(row.name + " is narrow");
        if (laminated && thickness < row.rough_thickness.value() - close)
            fault(row.name + ": layers too thin");
    }

    void on_hand() {
        std::map<std::string, int> used;
        for (const lumber::Board& board : plan_.boards) {
            if (!board.on_hand) continue;
            ++used[board.mark];
            bool known = false;
            for (const piece::Shop::Board& there : shop_.boards) {
                if (there.id != board.mark) continue;
                known = there.width == board.width && there.length == board.length &&
                        there.thickness == board.thickness;
                if (used[board.mark] > there.count) fault("board " + board.mark + " is used too often");
            }
            if (!known) fault("there is no such board " + board.mark);
        }
    }

    double trim_of(const lumber::Board& board) const { return board.sheet ? 0 : shop_.end_trim.value(); }

    void inside(const lumber::Board& board) {
        const double trim = trim_of(board);
        for (const lumber::Placement& p : board.placements) {
            const Rectangle r = place_of(p);
            if (r.x < trim - close || r.right() > board.length.value() - trim + close || r.y < -close ||
                r.top() > board.width.value() + close)
                fault(fmt::format("{} reaches out of {}", p.name, board.name));
        }
    }

    void apart(const lumber::Board& board) {
        const double kerf_x = plan_.kerf_crosscut.value(), kerf_y = plan_.kerf_rip.value();
        for (std::size_t i = 0; i < board.placements.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                const Rectangle a = place_of(board.placements[i]), b = place_of(board.placements[j]);
                const bool x = a.x >= b.right() + kerf_x - close || b.x >= a.right() + kerf_x - close;
                const bool y = a.y >= b.top() + kerf_y - close || b.y >= a.top() + kerf_y - close;
                if (!x && !y)
                    fault(fmt::format("{} and {} on {} have no kerf between them", board.placements[i].name,
                                      board.placements[j].name, board.name));
            }
    }

    void right_wood(const lumber::Board& board) {
        for (const lumber::Placement& p : board.placements) {
            const cutlist::Row& row = row_of(p);
            const piece::Part& part = *sources_[p.source].model->made[static_cast<std::size_t>(p.part)].part;
            if (row.wood != board.wood) fault(p.name + " lies on another wood");
            if (p.thickness > board.thickness + measure::Length::mm(measure::Rational(1, 20)) && !board.sheet)
                fault(p.name + " is thicker than its board");
            if (board.sheet && std::abs(board.thickness.value() - row.thickness.value()) > 0.51)
                fault(p.name + " lies on a sheet of another thickness");
            const bool grain = part.species->id != "mdf" && part.species->id != "particleboard" &&
                               part.species->id != "hardboard";
            if (p.turned && grain) fault(p.name + " lies across the grain");
            if (part.sawn_stated && !board.sawn.empty() &&
                std::string(wood::text(part.sawn)) != board.sawn + " sawn")
                fault(p.name + " lies on a board sawn otherwise");
            const bool laminated =
                (part.glue_up && part.glue_up->laminated) || p.leaves.front().thickness < row.thickness;
            if (!laminated && !board.sheet && board.thickness.value() < row.thickness.value() - close)
                fault(p.name + " is thicker finished than its board");
        }
    }

    /// Cuts the board up as told.
    void saw(const lumber::Board& board) {
        std::vector<Rectangle> pieces{{0, 0, board.length.value(), board.width.value()}};
        int number = 0;
        for (const lumber::Cut& cut : board.cuts) {
            if (cut.number != ++number) fault(board.name + ": cuts are not numbered in order");
            if (cut.words.empty()) fault(board.name + ": a cut without words");
            const Rectangle wanted{cut.piece_x.value(), cut.piece_y.value(), cut.piece_length.value(),
                                   cut.piece_width.value()};
            std::size_t found = pieces.size();
            for (std::size_t i = 0; i < pieces.size(); ++i)
                if (same(pieces[i], wanted)) found = i;
            if (found == pieces.size())
                return fault(
                    fmt::format("{}: cut {} is through a piece that is not there", board.name, number));
            const Rectangle piece = pieces[found];
            pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(found));
            const bool rip = cut.direction == lumber::Cut::Direction::rip;
            const double from = rip ? piece.y : piece.x, to = rip ? piece.top() : piece.right();
            const double at = cut.at.value(), beyond = at + cut.kerf.value();
            if (std::abs(cut.fence.value() - (at - from)) > close)
                fault(fmt::format("{}: cut {} has the wrong fence", board.name, number));
            if (at < from - close || at > to + close)
                fault(fmt::format("{}: cut {} is beside its piece", board.name, number));
            const auto keep = [&](double low, double high) {
                if (high - low < close) return;
                pieces.push_back(rip ? Rectangle{piece.x, low, piece.length, high - low}
                                     : Rectangle{low, piece.y, high - low, piece.width});
            };
            keep(from, at);
            keep(beyond, to);
        }
        const auto is_there = [&](const Rectangle& r) {
            for (std::size_t i = 0; i < pieces.size(); ++i)
                if (same(pieces[i], r)) {
                    pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(i));
                    return true;
                }
            return false;
        };
        for (const lumber::Placement& p : board.placements)
            if (!is_there(place_of(p))) fault(fmt::format("{} does not come out of {}", p.name, board.name));
        for (const lumber::Offcut& o : board.offcuts)
            if (!is_there({o.x.value(), o.y.value(), o.length.value(), o.width.value()}))
                fault("an offcut does not come out of " + board.name);
        const double trim = trim_of(board);
        for (const Rectangle& rest : pieces)
            if (rest.right() > trim + close && rest.x < board.length.value() - trim - close)
                fault(fmt::format("{}: {} x {} is left and not told", board.name, rest.length, rest.width));
    }

    const lumber::Plan& plan_;
    const std::vector<lumber::Source>& sources_;
    const piece::Shop& shop_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> faults_of(const lumber::Plan& plan, const std::vector<lumber::Source>& sources,
                                   const piece::Shop& shop) {
    return Checker(plan, sources, shop).faults();
}

} // namespace rayfleck::lumber_tests
