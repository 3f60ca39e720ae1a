// The cut list from the model: parts gathered into rows, rows into totals.
//
// Every part is held against the first part of each row of the same name; the shapes themselves are compared
// in alike.cpp, sizes with allowances come from rough.cpp, words from wording.cpp. Rows stand in the order of
// the text.

#include "cutlist/cutlist.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "cutlist/alike.hpp"
#include "cutlist/rough.hpp"
#include "cutlist/wording.hpp"
#include "wood/density.hpp"

namespace rayfleck::cutlist {
namespace {

constexpr double cubic_mm_per_m3 = 1e9;
constexpr double square_mm_per_m2 = 1e6;

bool same_wood(const piece::Part& a, const piece::Part& b) {
    const auto glue = [](const piece::Part& p) {
        return p.glue_up
                   ? std::tuple(1, p.glue_up->at_most_wide.value_or(Length()), p.glue_up->count.value_or(0),
                                p.glue_up->alternating, p.glue_up->same_side, p.glue_up->laminated)
                   : std::tuple(0, Length(), 0, false, false, false);
    };
    return a.species == b.species && a.sawn == b.sawn && a.stock == b.stock &&
           a.size_from_stock == b.size_from_stock && glue(a) == glue(b);
}

/// A name that tells a row from the others of the same part: its copies, or the first of them.
std::string name_of(const joinery::Model& model, const Row& row, bool alone) {
    const auto part = [&](int index) -> const piece::Part& {
        return *model.made[static_cast<std::size_t>(index)].part;
    };
    const piece::Part& first = part(row.parts.front());
    if (alone || first.copy.empty()) return first.base;
    std::vector<std::string> copies;
    for (const int index : row.parts) copies.push_back(part(index).copy);
    constexpr std::size_t shown_at_most = 4;
    if (copies.size() <= shown_at_most) return fmt::format("{} at {}", first.base, fmt::join(copies, ", "));
    return fmt::format("{} at {} and {} more", first.base, copies.front(), copies.size() - 1);
}

void measure_row(const joinery::Model& model, Row& row) {
    const joinery::Made& made = model.made[static_cast<std::size_t>(row.parts.front())];
    const piece::Part& part = *made.part;
    const bool sheet = part.species != nullptr && part.species->is_sheet();
    row.count = static_cast<int>(row.parts.size());
    if (part.species != nullptr) row.wood = std::string(part.species->trade_name);
    if (!sheet) row.sawn = std::string(wood::text(part.sawn));
    row.stock = part.stock;
    row.thickness = made.thickness;
    row.width = made.width;
    row.length = made.length;
    // What shaping leaves: an edge ripped at an angle or a foot cut short makes the part less than the blank
    // from which it is squared.
    const measure::Box& left = made.solid.box;
    constexpr double less = 0.05; // mm
    Length* const finished[] = {&row.length, &row.width, &row.thickness};
    for (int k = 0; k < 3; ++k) {
        const double size = left.high[k] - left.low[k];
        if (size > less && size < finished[k]->value() - less) *finished[k] = Length::from_geometry(size);
    }

    const RoughSize rough = rough_size(made, model.piece->shop);
    row.rough_thickness = rough.thickness;
    row.rough_width = rough.width;
    row.rough_length = rough.length;
    const double face = rough.width.value() * rough.length.value();
    row.area_m2 = row.count * face / square_mm_per_m2;
    row.volume_m3 = row.count * face * rough.thickness.value() / cubic_mm_per_m3;
    if (!sheet) row.board_feet = row.count * board_feet(rough);
    row.joinery = joinery_words(model, row.parts.front());
    row.remark = remark_words(model, row.parts, row.mirrored.size());
}

std::vector<Row> gather(const joinery::Model& model) {
    std::vector<Row> rows;
    std::vector<Form> forms; // of the first part of each row
    for (std::size_t i = 0; i < model.made.size(); ++i) {
        const joinery::Made& made = model.made[i];
        const Form form = form_of(made);
        bool placed = false;
        for (std::size_t r = 0; r < rows.size() && !placed; ++r) {
            const piece::Part& first = *model.made[static_cast<std::size_t>(rows[r].parts.front())].part;
            if (first.base != made.part->base || !same_wood(first, *made.part)) continue;
            const Likeness likeness = compare(forms[r], form);
            if (likeness == Likeness::different) continue;
            rows[r].parts.push_back(static_cast<int>(i));
            if (likeness == Likeness::mirrored) rows[r].mirrored.push_back(static_cast<int>(i));
            placed = true;
        }
        if (placed) continue;
        Row row;
        row.parts = {static_cast<int>(i)};
        rows.push_back(std::move(row));
        forms.push_back(form);
    }
    return rows;
}

CutList::Total& total_of(CutList& list, const std::string& wood) {
    for (CutList::Total& total : list.totals)
        if (total.wood == wood) return total;
    CutList::Total total;
    total.wood = wood;
    list.totals.push_back(total);
    return list.totals.back();
}

std::vector<joinery::HardwareItem> gather_hardware(const joinery::Model& model) {
    std::vector<joinery::HardwareItem> items;
    for (const joinery::HardwareItem& item : model.hardware) {
        const auto same = std::find_if(items.begin(), items.end(), [&](const auto& known) {
            return known.name == item.name && known.from == item.from;
        });
        if (same == items.end()) {
            items.push_back(item);
            continue;
        }
        same->count += item.count;
        for (const int part : item.parts)
            if (std::find(same->parts.begin(), same->parts.end(), part) == same->parts.end())
                same->parts.push_back(part);
    }
    return items;
}

} // namespace

CutList list(const joinery::Model& model) {
    CutList list;
    list.rows = gather(model);
    for (std::size_t r = 0; r < list.rows.size(); ++r) {
        Row& row = list.rows[r];
        row.reference = static_cast<int>(r + 1);
        const std::string& base = model.made[static_cast<std::size_t>(row.parts.front())].part->base;
        const auto rows_of_base = std::count_if(list.rows.begin(), list.rows.end(), [&](const Row& other) {
            return model.made[static_cast<std::size_t>(other.parts.front())].part->base == base;
        });
        row.name = name_of(model, row, rows_of_base == 1);
        measure_row(model, row);

        CutList::Total& total = total_of(list, row.wood);
        total.volume_m3 += row.volume_m3;
        total.board_feet += row.board_feet;
        total.area_m2 += row.area_m2;
        for (const int index : row.parts) {
            const joinery::Made& made = model.made[static_cast<std::size_t>(index)];
            row.finish_area_m2 += made.solid.surface / square_mm_per_m2;
            if (made.part->species == nullptr) continue;
            if (const auto per_m3 = wood::density(*made.part->species, model.piece->made_at))
                row.weight_kg += made.solid.volume / cubic_mm_per_m3 * *per_m3;
        }
        list.finish_area_m2 += row.finish_area_m2;
        total.weight_kg += row.weight_kg;
    }
    list.hardware = gather_hardware(model);
    return list;
}

CutList together(const std::vector<const CutList*>& lists) {
    CutList sum;
    for (const CutList* list : lists) {
        for (const CutList::Total& one : list->totals) {
            CutList::Total& total = total_of(sum, one.wood);
            total.volume_m3 += one.volume_m3;
            total.board_feet += one.board_feet;
            total.area_m2 += one.area_m2;
            total.weight_kg += one.weight_kg;
        }
        for (const joinery::HardwareItem& item : list->hardware) {
            const auto same = std::find_if(sum.hardware.begin(), sum.hardware.end(),
                                           [&](const auto& known) { return known.name == item.name; });
            if (same == sum.hardware.end()) {
                joinery::HardwareItem one = item;
                one.parts.clear();
                one.from.clear();
                sum.hardware.push_back(std::move(one));
            } else
                same->count += item.count;
        }
        sum.finish_area_m2 += list->finish_area_m2;
    }
    return sum;
}

} // namespace rayfleck::cutlist
