// See blanks.hpp. A row's rough width holds the jointing allowance once for every stave that the text tells;
// where staves are chosen here, it is counted anew. Layers share the rough thickness evenly, staves the rough
// width.

#include "lumber/blanks.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "cutlist/rough.hpp"
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
        blank.parts = row.parts;
        if (blank.sheet) return blank;
        blank.sawn = sawn_word(part);
        blank.sapwood = part.sapwood_allowed;
        blank.stock = part.stock;
        const auto named = part.stock.empty() ? std::nullopt : wood::lumber_named(part.stock);
        const bool laminated = part.glue_up && part.glue_up->laminated;
        if (named && named->nominal_width && made.thickness <= named->dressed_thickness && !laminated) {
            blank.as_bought = true;
            blank.thickness = named->dressed_thickness;
        }
        if (laminated) {
            blank.per_part = cutlist::pieces_glued(made);
            blank.layers = blank.per_part > 1;
            blank.thickness = row.rough_thickness / Rational(blank.per_part);
        } else
            glue(blank, row, made);
        return blank;
    }

    /// Staves: as told, or as many as the boards ask for.
    void glue(BlankType& blank, const cutlist::Row& row, const joinery::Made& made) {
        const auto& told = made.part->glue_up;
        const Length widest = widest_for(*blank.species, blank.thickness, shop_);
        if (told && told->count) {
            split(blank, cutlist::pieces_glued(made), row.rough_width);
            return;
        }
        int count = cutlist::pieces_glued(made);
        const bool open = told && !told->at_most_wide;
        const Length stave = (row.rough_width) / Rational(count);
        if (!open && stave <= widest) {
            split(blank, count, row.rough_width);
            return;
        }
        const Length usual = std::min(widest, Length::in(usual_width_in));
        const Length room = usual - shop_.allow_width;
        if (room <= Length()) return;
        const std::int64_t most =
            std::max<std::int64_t>(1, measure::floor(made.width / Length::mm(Rational(narrowest_stave_mm))));
        count = static_cast<int>(
            std::clamp<std::int64_t>(std::max<std::int64_t>(count, rounded_up(made.width / room)), 1,
                                     std::min<std::int64_t>(most, 1000)));
        if (count > 1) {
            const measure::Manner& manner = sources_[blank.source].model->piece->manner;
            remarks_.push_back(
                fmt::format("{} ({}): planned as {} staves{}; the text {}", row.name, row.reference, count,
                            told && told->alternating ? ", bark faces alternating" : "",
                            open ? "leaves their number open"
                                 : fmt::format("asks for {} in one width, and no board yields more than {}",
                                               measure::text_with_unit(stave, manner),
                                               measure::text_with_unit(widest, manner))));
        }
        split(blank, count, made.width + shop_.allow_width * Rational(count));
    }

    void split(BlankType& blank, int count, Length rough_width) {
        blank.per_part = count;
        blank.width = rough_width / Rational(count);
    }

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
