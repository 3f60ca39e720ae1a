// Resawing: two or more thin blanks come out of one thicker, face to face, with the band saw's kerf between.
//
// The thinnest board that suits a blank tells how many of its kind it yields: thickness of the board and one
// kerf, over thickness of a leaf and one kerf. Parts that match in sequence or from one board are left alone,
// since their figure runs on in one face. Book-matched blanks are put together in pairs whatever board that
// takes: the two leaves are opened like a book, and their figure is mirrored. Left out: thicker boards than
// the thinnest that suits, even where they would yield more; the moisture within, which cups fresh leaves.

#include <algorithm>

#include <fmt/format.h>

#include "lumber/blanks.hpp"
#include "lumber/orders.hpp"
#include "lumber/stock.hpp"

namespace rayfleck::lumber {
namespace {

using measure::Rational;

class Resawing {
  public:
    Resawing(std::vector<BlankType>& blanks, const std::vector<Source>& sources, const piece::Shop& shop,
             std::vector<std::string>& remarks)
        : blanks_(blanks), sources_(sources), shop_(shop), remarks_(remarks), kerf_(kerf_of_resaw(shop)) {}

    void work() {
        for (std::size_t s = 0; s < sources_.size(); ++s)
            for (const piece::Match& match : piece_of(s).matches)
                if (match.how == syntax::Matching::book_matched) pair_up(s, match);
        std::erase_if(blanks_, [](const BlankType& blank) { return blank.blanks.empty(); });
        if (!has_band_saw(shop_)) return;
        for (BlankType& blank : blanks_)
            if (!blank.sheet && !blank.as_bought && blank.leaf == blank.thickness && blank.count() > 1 &&
                !matched(blank))
                stack(blank);
    }

  private:
    const piece::Piece& piece_of(std::size_t source) const { return *sources_[source].model->piece; }
    std::string shown(std::size_t source, Length length) const {
        return measure::text_with_unit(length, piece_of(source).manner);
    }
    const cutlist::Row& row_of(std::size_t source, std::size_t row) const {
        return sources_[source].cut_list->rows[row];
    }

    /// The least that is lost between two leaves, and the leaves of one blank together.
    Length together(Length leaf, std::int64_t count) const {
        return leaf * Rational(count) + kerf_ * Rational(count - 1);
    }

    bool matched(const BlankType& blank) const {
        for (const piece::Match& match : piece_of(blank.source).matches)
            for (const auto& one : blank.blanks)
                if (std::find(match.parts.begin(), match.parts.end(), one.front().part) != match.parts.end())
                    return true;
        return false;
    }

    bool too_high(const BlankType& blank) const { return blank.width > resaw_height(shop_); }

    void stack(BlankType& blank) {
        if (too_high(blank)) return;
        const std::vector<StockType> stocks = stock_for({blank}, shop_);
        const std::vector<std::size_t> fitting = stocks_of(blank, stocks, shop_);
        if (fitting.empty()) return;
        Length thinnest = stocks[fitting.front()].thickness;
        for (const std::size_t s : fitting) thinnest = std::min(thinnest, stocks[s].thickness);
        const std::int64_t yields =
            std::min<std::int64_t>(measure::floor((thinnest + kerf_) / (blank.leaf + kerf_)), blank.count());
        if (yields < 2) return;
        std::vector<std::vector<Becomes>> thick;
        for (const auto& one : blank.blanks) {
            if (thick.empty() || static_cast<std::int64_t>(thick.back().size()) == yields)
                thick.emplace_back();
            thick.back().push_back(one.front());
        }
        blank.blanks = std::move(thick);
        blank.thickness = together(blank.leaf, yields);
        const cutlist::Row& row = row_of(blank.source, blank.row);
        remarks_.push_back(fmt::format("{} ({}): {} out of one thickness of {}, resawn on the band saw",
                                       row.name, row.reference, yields, shown(blank.source, thinnest)));
    }

    /// Takes the pairs of a match out of their types and makes a type of them.
    void pair_up(std::size_t source, const piece::Match& match) {
        struct Found {
            std::size_t type = 0;
            Becomes leaf;
        };
        std::vector<Found> leaves;
        for (const int part : match.parts)
            for (std::size_t b = 0; b < blanks_.size(); ++b)
                if (blanks_[b].source == source)
                    for (const auto& one : blanks_[b].blanks)
                        if (one.size() == 1 && one.front().part == part) leaves.push_back({b, one.front()});
        const auto refuse = [&](const std::string& why) {
            remarks_.push_back(
                fmt::format("match of {}: {}",
                            piece_of(source).parts[static_cast<std::size_t>(match.parts.front())].base, why));
        };
        if (leaves.empty()) return;
        if (leaves.size() % 2 == 1)
            return refuse("book-matched staves come in pairs: glue it up of an even number");
        const BlankType first = blanks_[leaves.front().type];
        if (first.sheet) return refuse("sheet goods are not resawn");
        for (const Found& found : leaves) {
            const BlankType& type = blanks_[found.type];
            if (type.width != first.width || type.length != first.length || type.leaf != first.leaf ||
                type.sawn != first.sawn || type.as_bought)
                return refuse("leaves of one thickness must have the same rough size and sawing");
        }
        if (too_high(first))
            return refuse(
                fmt::format("the band saw takes {} and the leaves are {} wide rough: cut them side by "
                            "side and choose by eye",
                            shown(source, resaw_height(shop_)), shown(source, first.width)));
        BlankType pairs = first;
        pairs.blanks.clear();
        pairs.thickness = together(first.leaf, 2);
        for (std::size_t i = 0; i + 1 < leaves.size(); i += 2)
            pairs.blanks.push_back({leaves[i].leaf, leaves[i + 1].leaf});
        for (const Found& found : leaves)
            std::erase_if(blanks_[found.type].blanks, [&](const std::vector<Becomes>& one) {
                return one.front().part == found.leaf.part && one.front().glued == found.leaf.glued;
            });
        blanks_.push_back(std::move(pairs));
    }

    std::vector<BlankType>& blanks_;
    const std::vector<Source>& sources_;
    const piece::Shop& shop_;
    std::vector<std::string>& remarks_;
    Length kerf_;
};

} // namespace

void put_together(std::vector<BlankType>& blanks, const std::vector<Source>& sources, const piece::Shop& shop,
                  std::vector<std::string>& remarks) {
    Resawing(blanks, sources, shop, remarks).work();
}

} // namespace rayfleck::lumber
