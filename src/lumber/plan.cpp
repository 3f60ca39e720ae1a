// See lumber.hpp. Blanks, stock, orders, boards, then the sums. A proved least of the plan's own measure (see
// orders.hpp) gives one of money: boards on hand can count no more than all of them together, so what is
// proved beyond that is money. Where a wood has no price, nothing is proved of its money, which is 0.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <fmt/format.h>

#include "lumber/bench.hpp"
#include "lumber/lumber.hpp"
#include "wood/lumber.hpp"

namespace rayfleck::lumber {
namespace {

using measure::Rational;

double volume_m3(Length thickness, Length width, Length length) {
    return thickness.value() * width.value() * length.value() / 1e9;
}

std::string ordinal(int n) {
    const int last = n % 10, two = n % 100;
    const bool teen = two >= 11 && two <= 13;
    return fmt::format("{}{}", n,
                       teen        ? "th"
                       : last == 1 ? "st"
                       : last == 2 ? "nd"
                       : last == 3 ? "rd"
                                   : "th");
}

class Planner {
  public:
    Planner(const std::vector<Source>& sources, cutting::Effort effort)
        : sources_(sources), shop_(*shop_of(sources)), effort_(effort),
          manner_(sources.front().model->piece->manner) {}

    Plan plan() {
        plan_.kerf_rip = kerf_of_rip(shop_);
        plan_.kerf_crosscut = kerf_of_crosscut(shop_);
        plan_.end_trim = shop_.end_trim;
        blanks_ = blanks_of(sources_, shop_, plan_.remarks);
        put_together(blanks_, sources_, shop_, plan_.remarks);
        stocks_ = stock_for(blanks_, shop_);
        plan_.currency = shop_.currency;
        next_.assign(blanks_.size(), 0);
        used_.assign(stocks_.size(), 0);
        for (std::size_t b = 0; b < blanks_.size(); ++b)
            if (stocks_of(blanks_[b], stocks_, shop_).empty()) nothing_suits(blanks_[b]);
        std::vector<Problem> problems = problems_of(blanks_, stocks_, shop_);
        ask_for_matches(problems, blanks_, sources_, plan_.remarks);
        double measure = 0, least = 0;
        plan_.proven_optimal = true;
        for (Problem& problem : problems) {
            cutting::Plan cut = cutting::cut(problem.order, effort_);
            if (give_up_rows(problem, cut)) cut = cutting::cut(problem.order, effort_);
            hold_rows(problem);
            take(problem, cut);
            measure += static_cast<double>(cut.cost);
            least += static_cast<double>(cut.bound);
            plan_.proven_optimal = plan_.proven_optimal && cut.proven_optimal;
        }
        if (measure > least) plan_.gap = least > 0 ? (measure - least) / least : HUGE_VAL;
        in_order();
        tell_steps(plan_, sources_, shop_);
        sum();
        return std::move(plan_);
    }

  private:
    const cutlist::Row& row_of(const BlankType& blank) const {
        return sources_[blank.source].cut_list->rows[blank.row];
    }
    std::string shown(Length length) const { return measure::text_with_unit(length, manner_); }

    void missing(const BlankType& blank, int count, std::string reason, std::string remedy) {
        const cutlist::Row& row = row_of(blank);
        plan_.missing.push_back(
            {blank.source, blank.row, row.reference, row.name, count, std::move(reason), std::move(remedy)});
    }

    void nothing_suits(const BlankType& blank) {
        const std::string wood(blank.species->trade_name);
        if (blank.sheet)
            return missing(blank, blank.count(),
                           fmt::format("{} x {} is larger than every sheet of {}", shown(blank.width),
                                       shown(blank.length), wood),
                           "put a larger sheet among the boards of the shop file, or make the part of two");
        const Length thickest = wood::hardwood_thicknesses().back().rough_thickness;
        if (blank.thickness > thickest)
            return missing(blank, blank.count(),
                           fmt::format("{} rough is thicker than any {}: the thickest sawn is {}",
                                       shown(blank.thickness), wood, shown(thickest)),
                           "laminate it: write `laminated of 2` or more in the part");
        const Length longest = wood::standard_lengths().back();
        if (blank.length + shop_.end_trim * Rational(2) > longest)
            return missing(blank, blank.count(),
                           fmt::format("{} rough and the end trims are longer than any board of {}: the "
                                       "longest is {}",
                                       shown(blank.length), wood, shown(longest)),
                           "put a longer board in the shop file, or scarf the part of two");
        if (blank.as_bought)
            return missing(
                blank, blank.count(),
                fmt::format("no {} {} is wide enough for {}", wood, blank.stock, shown(blank.width)),
                "name wider stock in the part");
        missing(blank, blank.count(),
                fmt::format("no board of {} is {} wide and {} long, rough", wood, shown(blank.width),
                            shown(blank.length)),
                "glue it up: write `glued up of staves` in the part, or put a wider board in the shop file");
    }

    /// Rows whose parts have found no board are no longer asked for. gives  whether there were any
    bool give_up_rows(Problem& problem, const cutting::Plan& cut) {
        bool any = false;
        for (std::size_t q = problem.rows.size(); q-- > 0;) {
            const std::vector<std::size_t>& parts = problem.order.sequences[q].parts;
            const bool gone = std::any_of(cut.missing.begin(), cut.missing.end(), [&](const auto& missing) {
                return std::find(parts.begin(), parts.end(), missing.part) != parts.end();
            });
            if (!gone) continue;
            const piece::Piece& piece = *sources_[problem.rows[q].source].model->piece;
            const int first = piece.matches[problem.rows[q].match].parts.front();
            plan_.remarks.push_back(
                fmt::format("match of {}: no board is clear of flaws and sapwood for all of them together",
                            piece.parts[static_cast<std::size_t>(first)].base));
            problem.order.sequences.erase(problem.order.sequences.begin() + static_cast<std::ptrdiff_t>(q));
            problem.rows.erase(problem.rows.begin() + static_cast<std::ptrdiff_t>(q));
            any = true;
        }
        return any;
    }

    /// Blanks of rows are handed out by their place in the row, all others by turns.
    void hold_rows(const Problem& problem) {
        for (const Row& row : problem.rows)
            for (const auto& member : row.members) held_.insert(member);
    }

    /// Which of the blanks of its type lies here.
    std::size_t blank_at(const Problem& problem, const cutting::Placement& at) {
        if (at.sequence) return problem.rows[*at.sequence].members[at.member].second;
        const std::size_t type = problem.blanks[at.part];
        while (held_.count({type, next_[type]})) ++next_[type];
        return next_[type]++;
    }

    void take(const Problem& problem, const cutting::Plan& cut) {
        if (!cut.refusal.empty()) {
            for (const std::size_t b : problem.blanks)
                missing(blanks_[b], blanks_[b].count(), cut.refusal, "look at the sizes of the part");
            return;
        }
        for (const cutting::Missing& gone : cut.missing)
            missing(blanks_[problem.blanks[gone.part]], static_cast<int>(gone.count),
                    gone.why == cutting::Missing::Why::stock_is_out
                        ? "the boards on hand are used up, and the yard has none that suit"
                        : "no board has room for it, or only beside its flaws and sapwood",
                    "put more boards or a price with lengths in the shop file");
        for (const cutting::Board& board : cut.boards) add(problem, board);
        if (problem.all_priced) {
            const cutting::Cost money = cut.bound - problem.on_hand_at_most;
            if (money > 0) bound_ += static_cast<double>(money) / money_unit;
        }
    }

    void add(const Problem& problem, const cutting::Board& cut) {
        const std::size_t s = problem.stocks[cut.stock];
        const StockType& type = stocks_[s];
        Board board;
        board.on_hand = type.on_hand > 0;
        board.sheet = type.sheet;
        board.wood = std::string(type.species->trade_name);
        board.sawn = type.sawn;
        board.stock = type.stock;
        board.thickness = type.thickness;
        board.width = type.width;
        board.length = type.length;
        board.mark = type.mark;
        ++used_[s];
        if (board.on_hand)
            board.name = type.on_hand == 1
                             ? type.mark
                             : fmt::format("{} ({} of {})", type.mark, ordinal(used_[s]), type.on_hand);
        const Length trim = type.sheet ? Length() : from_tenths(tenths(shop_.end_trim));
        const Length edge = from_tenths(tenths(straightened_off(type, shop_)));
        bool any_unstated = false, any_thick = false;
        for (const cutting::Placement& at : cut.placements) {
            const BlankType& blank = blanks_[problem.blanks[at.part]];
            Placement placed;
            placed.source = blank.source;
            for (const Becomes& leaf : blank.blanks[blank_at(problem, at)]) {
                const cutlist::Row& row = sources_[blank.source].cut_list->rows[leaf.row];
                placed.leaves.push_back({leaf.row, leaf.part, row.reference, row.name,
                                         letters(leaf.which) + (leaf.glued ? std::to_string(leaf.glued) : ""),
                                         turn_of(blank, leaf), blank.leaf, leaf.glued == 0});
                plan_.finished_m3 += volume_m3(row.thickness, row.width, row.length) / shared_by(blank, leaf);
            }
            name(placed);
            placed.x = from_tenths(at.place.x) + trim;
            placed.y = from_tenths(at.place.y) + edge;
            placed.along = from_tenths(at.place.length);
            placed.across = from_tenths(at.place.width);
            placed.thickness = blank.thickness;
            placed.turned = at.turned;
            plan_.rough_m3 += volume_m3(placed.thickness, placed.along, placed.across);
            any_unstated |= board.on_hand && board.sawn.empty() && !blank.sawn.empty();
            any_thick |= !type.sheet && type.thickness.value() > 1.5 * blank.thickness.value() + 0.1;
            board.placements.push_back(std::move(placed));
        }
        if (any_unstated)
            board.remarks.push_back("how it was sawn is not told in the shop file: look at its end grain");
        if (any_thick)
            board.remarks.push_back(
                "much thicker than a blank in it needs: plane it down, or keep it for other work");
        if (type.board) tell_flaws(board, *type.board);
        cutting::Board sawn = cut;
        if (!type.sheet)
            join_sections(sawn, problem.order.kerf_crosscut, problem.order.kerf_rip,
                          problem.order.stocks[cut.stock].width);
        tell_cuts(board, sawn, {plan_.kerf_rip, plan_.kerf_crosscut, trim, edge}, shop_);
        boards_.push_back({s, std::move(board)});
    }

    /// Staves or layers that make up the part of a leaf.
    static double shared_by(const BlankType& blank, const Becomes& leaf) {
        if (leaf.glued == 0) return 1;
        int most = 0;
        for (const auto& one : blank.blanks)
            for (const Becomes& other : one)
                if (other.part == leaf.part) most = std::max(most, other.glued);
        return most;
    }

    /// Which way a stave is turned when it is glued up, as the text says.
    std::string turn_of(const BlankType& blank, const Becomes& leaf) const {
        const auto& glue =
            sources_[blank.source].model->made[static_cast<std::size_t>(leaf.part)].part->glue_up;
        if (!glue || glue->laminated || leaf.glued == 0) return "";
        if (glue->alternating) return leaf.glued % 2 == 1 ? "bark side up" : "bark side down";
        return glue->same_side ? "bark side as the others" : "";
    }

    /// The first leaf's, and the instances of all that are of its row.
    static void name(Placement& placed) {
        const Leaf& first = placed.leaves.front();
        placed.row = first.row;
        placed.part = first.part;
        placed.reference = first.reference;
        placed.name = first.name;
        placed.instance = first.instance;
        for (std::size_t i = 1; i < placed.leaves.size(); ++i) {
            const Leaf& leaf = placed.leaves[i];
            placed.instance += leaf.row == first.row ? "+" + leaf.instance
                                                     : fmt::format("+{} {}", leaf.reference, leaf.instance);
        }
    }

    /// On hand first, then bought ones, both in the order of the stock; bought ones get their numbers.
    void in_order() {
        std::stable_sort(boards_.begin(), boards_.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        int bought = 0;
        for (auto& [s, board] : boards_) {
            if (!board.on_hand) {
                board.name = fmt::format("buy {}", ++bought);
                buy(stocks_[s]);
            }
            plan_.used_m3 += volume_m3(board.thickness, board.width, board.length);
            for (const Offcut& offcut : board.offcuts)
                if (offcut.worth_keeping)
                    plan_.kept_m3 += volume_m3(board.thickness, offcut.width, offcut.length);
            plan_.boards.push_back(std::move(board));
        }
    }

    void buy(const StockType& type) {
        const std::string wood(type.species->trade_name);
        Purchase* line = nullptr;
        for (Purchase& known : plan_.purchases)
            if (known.wood == wood && known.sawn == type.sawn && known.stock == type.stock &&
                known.thickness == type.thickness && known.width == type.width && known.length == type.length)
                line = &known;
        if (line == nullptr) {
            line = &plan_.purchases.emplace_back();
            line->wood = wood;
            line->sawn = type.sawn;
            line->stock = type.stock;
            line->thickness = type.thickness;
            line->width = type.width;
            line->length = type.length;
            line->random_width = type.random_width;
            line->sheet = type.sheet;
            line->priced = type.price != nullptr;
            line->each = price_of(type);
            if (type.price != nullptr) {
                line->per = type.price->per;
                line->per_unit = type.price->amount;
            }
        }
        ++line->count;
        line->board_feet += board_feet_of(type);
        line->volume_m3 += volume_m3(type.thickness, type.width, type.length);
        line->area_m2 += type.width.value() * type.length.value() / 1e6;
        line->cost = std::round(line->each * line->count * 100) / 100;
    }

    std::string words(const Purchase& line) const {
        std::string out = fmt::format("{} {} of {}", line.count, line.sheet ? "sheets" : "boards", line.wood);
        if (line.count == 1) out = fmt::format("1 {} of {}", line.sheet ? "sheet" : "board", line.wood);
        if (!line.stock.empty()) out += " " + line.stock;
        if (!line.sawn.empty()) out += fmt::format(", {} sawn", line.sawn);
        if (line.sheet) out += fmt::format(", {} thick", shown(line.thickness));
        out += fmt::format(", {}{} wide, {} long", line.random_width ? "at least " : "", shown(line.width),
                           shown(line.length));
        if (line.board_feet > 0) out += fmt::format(", {:.1f} board feet", line.board_feet);
        if (line.sheet) out += fmt::format(", {:.2f} m2", line.area_m2);
        return out + (line.priced ? fmt::format(": {:.2f}{}", line.cost,
                                                shop_.currency.empty() ? "" : " " + shop_.currency)
                                  : ": no price in the shop file");
    }

    void sum() {
        std::vector<std::string> unpriced;
        for (Purchase& line : plan_.purchases) {
            line.words = words(line);
            plan_.cost += line.cost;
            if (line.priced) continue;
            plan_.all_priced = false;
            if (std::find(unpriced.begin(), unpriced.end(), line.wood) == unpriced.end())
                unpriced.push_back(line.wood);
        }
        plan_.cost = std::round(plan_.cost * 100) / 100;
        // Every price is whole hundredths, so is every sum: the least can be rounded up to the next.
        plan_.bound = std::min(plan_.cost, std::ceil(bound_ * 100 - 1e-6) / 100);
        if (!unpriced.empty())
            plan_.remarks.push_back(fmt::format(
                "no price in the shop file for all that is bought of {}: planned from standard sizes, cost "
                "counted as 0",
                fmt::join(unpriced, ", ")));
        for (const piece::Shop::Price& price : shop_.prices)
            if (!known_unit(price))
                plan_.remarks.push_back(fmt::format(
                    "the price of {} per {} is left out: prices are per board foot, m3, m2 or piece",
                    price.wood, price.per));
    }

    const std::vector<Source>& sources_;
    const piece::Shop& shop_;
    cutting::Effort effort_;
    const measure::Manner& manner_;
    Plan plan_;
    std::vector<BlankType> blanks_;
    std::vector<StockType> stocks_;
    std::set<std::pair<std::size_t, std::size_t>> held_; ///< blanks of rows: type, and which of its blanks
    std::vector<std::size_t> next_;                      ///< of each blank type placed
    std::vector<int> used_;                              ///< of each stock type used
    std::vector<std::pair<std::size_t, Board>> boards_;
    double bound_ = 0;
};

} // namespace

const piece::Shop* shop_of(const std::vector<Source>& sources) {
    if (sources.empty()) return nullptr;
    for (const Source& source : sources)
        if (!source.model->piece->shop.boards.empty() || !source.model->piece->shop.prices.empty())
            return &source.model->piece->shop;
    return &sources.front().model->piece->shop;
}

Plan plan(const std::vector<Source>& sources, cutting::Effort effort) {
    if (sources.empty()) return {};
    return Planner(sources, effort).plan();
}

Plan plan(const joinery::Model& model, const cutlist::CutList& cut_list, cutting::Effort effort) {
    return plan(std::vector<Source>{{&model, &cut_list}}, effort);
}

} // namespace rayfleck::lumber
