// See blanks.hpp. A row's rough width holds the jointing allowance once for every stave that the text tells;
// where staves are chosen here, it is counted anew. Layers share the rough thickness evenly, staves the rough
// width. Of staves left open, so many are taken that they use up the least width of boards, each counted with
// what is over beside its staves; a glue line more must save a fiftieth. All staves of a part are equally
// wide.

#include "lumber/blanks.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "cutlist/rough.hpp"
#include "lumber/orders.hpp"
#include "lumber/stock.hpp"
#include "wood/lumber.hpp"

namespace rayfleck::lumber {
namespace {

using measure::Rational;

std::int64_t rounded_up(Rational number) {
    const std::int64_t whole = measure::floor(number);
    return Rational(whole) == number ? whole : whole + 1;
}

/// Plywood and veneered boards show a grain; these do not.
bool plain_sheet(const wood::Species& species) {
    return species.id == "mdf" || species.id == "particleboard" || species.id == "hardboard";
}

std::string sawn_word(const piece::Part& part) {
    if (!part.sawn_stated) return "";
    switch (part.sawn) {
    case wood::Sawn::flat:
        return "flat";
    case wood::Sawn::rift:
        return "rift";
    case wood::Sawn::quarter:
        return "quarter";
    }
    return "";
}

class Taker {
  public:
    Taker(const std::vector<Source>& sources, const piece::Shop& shop, std::vector<std::string>& remarks)
        : sources_(sources), shop_(shop), remarks_(remarks) {}

    std::vector<BlankType> take() {
        std::vector<BlankType> blanks;
        for (std::size_t s = 0; s < sources_.size(); ++s)
            for (std::size_t r = 0; r < sources_[s].cut_list->rows.size(); ++r)
                if (const auto blank = of_row(s, r)) blanks.push_back(*blank);
        return blanks;
    }

  private:
    std::optional<BlankType> of_row(std::size_t s, std::size_t r) {
        const joinery::Model& model = *sources_[s].model;
        const cutlist::Row& row = sources_[s].cut_list->rows[r];
        const joinery::Made& made = model.made[static_cast<std::size_t>(row.parts.front())];
        const piece::Part& part = *made.part;
        if (part.species == nullptr) return std::nullopt;
        BlankType blank;
        blank.source = s;
        blank.row = r;
        blank.species = part.species;
        blank.sheet = part.species->is_sheet();
        blank.may_turn = blank.sheet && plain_sheet(*part.species);
        blank.thickness = row.rough_thickness;
        blank.width = row.rough_width;
        blank.length = row.rough_length;
        blank.leaf = blank.thickness;
        if (blank.sheet) return whole(blank, row);
        blank.sawn = sawn_word(part);
        blank.sapwood = part.sapwood_allowed;
        blank.stock = part.stock;
        const auto named = part.stock.empty() ? std::nullopt : wood::lumber_named(part.stock);
        const bool laminated = part.glue_up && part.glue_up->laminated;
        if (named && named->nominal_width && made.thickness <= named->dressed_thickness && !laminated) {
            blank.as_bought = true;
            blank.thickness = blank.leaf = named->dressed_thickness;
        }
        if (laminated)
            layer(blank, row, cutlist::pieces_glued(made));
        else if (const int layers = layers_wanted(blank, made); layers > 1) {
            blank.told = false;
            blank.thickness = made.thickness + shop_.allow_thickness * Rational(layers);
            remarks_.push_back(fmt::format("{} ({}): laminated of {} layers; {} rough is thicker than any "
                                           "board of {}",
                                           row.name, row.reference, layers, shown(blank, row.rough_thickness),
                                           blank.species->trade_name));
            layer(blank, row, layers);
        } else
            glue(blank, row, made);
        return blank;
    }

    std::string shown(const BlankType& blank, Length length) const {
        return measure::text_with_unit(length, sources_[blank.source].model->piece->manner);
    }

    /// One blank for each part.
    static BlankType whole(BlankType blank, const cutlist::Row& row) {
        for (std::size_t which = 0; which < row.parts.size(); ++which)
            blank.blanks.push_back({{blank.row, row.parts[which], which, 0}});
        return blank;
    }

    /// So many blanks for each part.
    static void share(BlankType& blank, const cutlist::Row& row, int count) {
        if (count <= 1) {
            blank = whole(blank, row);
            return;
        }
        for (std::size_t which = 0; which < row.parts.size(); ++which)
            for (int n = 1; n <= count; ++n)
                blank.blanks.push_back({{blank.row, row.parts[which], which, n}});
    }

    static void layer(BlankType& blank, const cutlist::Row& row, int count) {
        blank.layers = count > 1;
        blank.thickness = blank.leaf = blank.thickness / Rational(count);
        share(blank, row, count);
    }

    /// Layers of a part that is thicker than any board; 1 for all others.
    int layers_wanted(const BlankType& blank, const joinery::Made& made) const {
        Length thickest = wood::hardwood_thicknesses().back().rough_thickness;
        for (const piece::Shop::Board& board : shop_.boards)
            if (shop_.find_wood(board.wood) == blank.species) thickest = std::max(thickest, board.thickness);
        if (blank.as_bought || blank.thickness <= thickest || thickest <= shop_.allow_thickness) return 1;
        const std::int64_t layers = rounded_up(made.thickness / (thickest - shop_.allow_thickness));
        return layers <= most_layers ? static_cast<int>(layers) : 1;
    }

    /// Staves: as told, or as many as the boards ask for.
    void glue(BlankType& blank, const cutlist::Row& row, const joinery::Made& made) {
        const auto& told = made.part->glue_up;
        const Length widest = clear_width(widest_for(*blank.species, blank.thickness, shop_), false, shop_);
        const int count = cutlist::pieces_glued(made);
        const bool open = told && !told->at_most_wide && !told->count;
        if ((told && told->count) || (!open && row.rough_width / Rational(count) <= widest)) {
            split(blank, row, count, row.rough_width);
            return;
        }
        const int wanted = std::max(count, staves_from_boards(blank, made.width));
        if (wanted > 1) {
            blank.told = false;
            remarks_.push_back(fmt::format(
                "{} ({}): planned as {} staves{}; the text {}", row.name, row.reference, wanted,
                told && told->alternating ? ", bark faces alternating" : "",
                open ? "leaves their number open"
                     : fmt::format("asks for {} in one width, and no board yields more than {}",
                                   shown(blank, row.rough_width / Rational(count)), shown(blank, widest))));
        }
        split(blank, row, wanted, made.width + shop_.allow_width * Rational(wanted));
    }

    /// The number of staves that uses up the least width of boards.
    int staves_from_boards(const BlankType& blank, Length finished) const {
        std::vector<double> boards;
        const auto offer = [&](Length width) {
            const Length clear = clear_width(width, false, shop_);
            if (clear > shop_.allow_width) boards.push_back(clear.value());
        };
        for (const piece::Shop::Board& board : shop_.boards)
            if (shop_.find_wood(board.wood) == blank.species && board.thickness >= blank.thickness)
                offer(board.width);
        bool told = false;
        for (const piece::Shop::Price& price : shop_.prices)
            if (shop_.find_wood(price.wood) == blank.species && price.widths) {
                offer(price.widths->first);
                offer(price.widths->second);
                told = true;
            }
        if (!told) offer(Length::in(usual_width_in));
        if (boards.empty()) return 1;
        const double allow = shop_.allow_width.value(), kerf = kerf_of_rip(shop_).value();
        const std::int64_t most = std::clamp<std::int64_t>(
            measure::floor(finished / Length::mm(Rational(narrowest_stave_mm))), 1, 1000);
        int best = static_cast<int>(most);
        double least = HUGE_VAL;
        for (int n = 1; n <= most; ++n) {
            const double stave = finished.value() / n + allow;
            for (const double board : boards) {
                const double out_of_one = std::floor((board + kerf) / (stave + kerf) + 1e-9);
                if (out_of_one < 1) continue;
                const double used = n * board / out_of_one * (1 + 0.02 * n);
                if (used < least - 1e-9) {
                    least = used;
                    best = n;
                }
            }
        }
        return best;
    }

    static void split(BlankType& blank, const cutlist::Row& row, int count, Length rough_width) {
        blank.width = rough_width / Rational(count);
        share(blank, row, count);
    }

    /// More layers than anyone glues up: such a part is missing instead.
    static constexpr int most_layers = 40;

    const std::vector<Source>& sources_;
    const piece::Shop& shop_;
    std::vector<std::string>& remarks_;
};

} // namespace

std::vector<BlankType> blanks_of(const std::vector<Source>& sources, const piece::Shop& shop,
                                 std::vector<std::string>& remarks) {
    return Taker(sources, shop, remarks).take();
}

std::string letters(std::size_t index) {
    std::string out;
    for (++index; index > 0; index = (index - 1) / 26)
        out.insert(out.begin(), static_cast<char>('A' + (index - 1) % 26));
    return out;
}

} // namespace rayfleck::lumber
