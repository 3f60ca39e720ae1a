// Columns: letter, number off, what is cut, its size along the length, across the width and through the
// thickness, its place from near end, face edge and face side, and the part that comes there. Columns in
// which nothing stands are left out, and what is cut gets the room. Figures that follow from the strings in
// the views stand in parentheses (rule D26 of the audit list), so each size is said once.

#include "drawing/part_table.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double same_place = 0.011; // mm: as the audit joins places

/// `32`, `32 + 11× 57.5`.
std::string run_of(const Job& job, const CutFigure& figure) {
    std::string words = job.figure(figure.value);
    if (figure.times > 1) words += fmt::format(" + {}× {}", figure.times - 1, job.figure(figure.pitch));
    return words;
}

void settle_place(const Job& job, const GaugeFrame& gauge, const ToldByStrings& told, CutRecord& record,
                  std::size_t axis) {
    const int k = static_cast<int>(axis);
    const bool at_sides = record.form == CutForm::tongue && record.axis == k;
    const auto size = values_of(record, size_names[axis]);
    const auto places = values_of(record, place_names[axis]);
    const bool both_ends = at_sides && places.size() == 2 && !size.empty() && places.front() < same_place &&
                           places.back() + size.front() > gauge.size(k) - same_place;
    for (CutFigure& figure : record.figures) {
        if (figure.what != place_names[axis]) continue;
        if (both_ends) {
            figure.shown = axis == 0 ? "both ends" : axis == 1 ? "both edges" : "both sides";
            continue;
        }
        if (at_sides && figure.times == 1 && !size.empty()) {
            // What stands at a side of the blank is placed by that side.
            if (figure.value < same_place) {
                figure.shown = side_name(k, false);
                continue;
            }
            if (figure.value + size.front() > gauge.size(k) - same_place) {
                figure.shown = side_name(k, true);
                continue;
            }
        }
        figure.auxiliary = true;
        for (int i = 0; i < figure.times; ++i)
            figure.auxiliary = figure.auxiliary && told.told(k, 0, figure.value + i * figure.pitch);
        // At the border itself there is no distance to tell.
        if (figure.value < same_place && figure.times == 1) figure.auxiliary = false;
        figure.shown = run_of(job, figure);
        if (figure.auxiliary) figure.shown = "(" + figure.shown + ")";
    }
}

std::string column_of(const CutRecord& record, const std::string& what) {
    std::string words, before;
    for (const CutFigure* figure : figures_of(record, what)) {
        if (figure->shown == before) continue;
        before = figure->shown;
        words += (words.empty() ? "" : ", ") + figure->shown;
    }
    return words;
}

constexpr double cell_air = 2.6; ///< mm in a column beside its words

/// Columns as wide as their words, within limits; where they are too many for the table the roomiest give
/// way.
void set_widths(Table& table, const std::vector<std::size_t>& kept, double width) {
    struct Limit {
        double least, most;
    };
    std::array<Limit, 10> limits{
        {{5, 9}, {8, 9}, {32, 70}, {9, 22}, {9, 22}, {9, 22}, {0, 46}, {0, 40}, {0, 40}, {13, 42}}};
    for (const std::size_t c : {6, 7, 8})
        limits[c].least = text_width(table.columns[c].head, note_height, Typeface::sans_bold) + cell_air;
    double sum = 0;
    for (const std::size_t c : kept) {
        double need = c < 3 ? 0 : limits[c].least;
        for (const TableRow& row : table.rows)
            need = std::max(need, text_width(row.cells[c], note_height, table.columns[c].face) + cell_air);
        table.columns[c].width = std::clamp(need, limits[c].least, limits[c].most);
        sum += table.columns[c].width;
    }
    for (const std::size_t c : {2, 9, 6, 7, 8}) {
        const double give = std::min(table.columns[c].width - limits[c].least, sum - width);
        if (give <= 0 || std::find(kept.begin(), kept.end(), c) == kept.end()) continue;
        table.columns[c].width -= give;
        sum -= give;
    }
}

std::string partner_words(const Job& job, int part, const Feature& feature) {
    std::string words;
    std::set<int> rows;
    for (const int j : feature.joints) {
        const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(j)];
        const int other = joint.a == part ? joint.b : joint.a;
        const int row = static_cast<std::size_t>(other) < job.row_of_part.size()
                            ? job.row_of_part[static_cast<std::size_t>(other)]
                            : -1;
        if (row < 0 || !rows.insert(row).second) continue;
        const cutlist::Row& r = job.cut_list.rows[static_cast<std::size_t>(row)];
        words += (words.empty() ? "" : ", ") + fmt::format("{} {}", r.reference, r.name);
    }
    return words;
}

} // namespace

ToldByStrings::ToldByStrings(const GaugeFrame& gauge, const std::vector<DimensionRecord>& strings) {
    for (const DimensionRecord& r : strings) {
        const int axis = r.axis == 'L' ? 0 : r.axis == 'W' ? 1 : r.axis == 'T' ? 2 : -1;
        if (axis < 0 || r.auxiliary) continue;
        const auto k = static_cast<std::size_t>(axis);
        for (int i = 0; i < r.times; ++i) {
            measure::Point a, b;
            const double step = (r.to - r.from) / r.times;
            a[axis] = r.from + i * step, b[axis] = r.from + (i + 1) * step;
            const std::size_t p = place(k, gauge.in(a)[axis]), q = place(k, gauge.in(b)[axis]);
            const std::size_t from = root_[k][p], to = root_[k][q];
            for (std::size_t& root : root_[k])
                if (root == from) root = to;
        }
    }
}

std::size_t ToldByStrings::place(std::size_t axis, double at) {
    for (std::size_t i = 0; i < at_[axis].size(); ++i)
        if (std::abs(at_[axis][i] - at) < same_place) return i;
    at_[axis].push_back(at);
    root_[axis].push_back(root_[axis].size());
    return at_[axis].size() - 1;
}

bool ToldByStrings::told(int axis, double a, double b) const {
    if (std::abs(a - b) < same_place) return true;
    const auto k = static_cast<std::size_t>(axis);
    std::size_t at_a = at_[k].size(), at_b = at_[k].size();
    for (std::size_t i = 0; i < at_[k].size(); ++i) {
        if (std::abs(at_[k][i] - a) < same_place) at_a = i;
        if (std::abs(at_[k][i] - b) < same_place) at_b = i;
    }
    return at_a < at_[k].size() && at_b < at_[k].size() && root_[k][at_a] == root_[k][at_b];
}

void settle_figures(const Job& job, const GaugeFrame& gauge, const ToldByStrings& told,
                    std::vector<Feature>& features) {
    for (Feature& feature : features) {
        CutRecord& record = feature.record;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const int k = static_cast<int>(axis);
            const auto at = values_of(record, place_names[axis]);
            for (CutFigure& figure : record.figures) {
                if (figure.what != size_names[axis]) continue;
                if (record.form != CutForm::blank && figure.value > gauge.size(k) - same_place) {
                    figure.shown = "whole";
                    continue;
                }
                figure.auxiliary = true;
                for (const double from : at.empty() ? std::vector<double>{0} : at)
                    figure.auxiliary = figure.auxiliary && told.told(k, from, from + figure.value);
                figure.shown = job.figure(figure.value);
                if (figure.auxiliary) figure.shown = "(" + figure.shown + ")";
            }
            settle_place(job, gauge, told, record, axis);
        }
    }
}

Block table_of_cuts(const Job& job, const std::vector<Feature>& features, int part, double width) {
    Block block;
    Table table;
    table.columns = {{"", 0, false, Typeface::sans_bold},
                     {"off", 0, true},
                     {"cut", 0},
                     {"L", 0, true},
                     {"W", 0, true},
                     {"T", 0, true},
                     {"from near end", 0, true},
                     {"face edge", 0, true},
                     {"face side", 0, true},
                     {"for", 0}};
    for (const Feature& feature : features) {
        const CutRecord& record = feature.record;
        if (record.form == CutForm::blank) continue;
        TableRow row;
        row.cells = {record.letter, fmt::format("{}", record.count),
                     record.word + (feature.words.empty() ? "" : " " + feature.words)};
        for (std::size_t k = 0; k < 3; ++k) row.cells.push_back(column_of(record, size_names[k]));
        for (std::size_t k = 0; k < 3; ++k) row.cells.push_back(column_of(record, place_names[k]));
        row.cells.push_back(partner_words(job, part, feature));
        row.below = feature.below;
        table.rows.push_back(std::move(row));
    }
    if (table.rows.empty()) return block;
    // Columns in which nothing stands are left out.
    std::vector<std::size_t> kept;
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        if (c < 3 || std::any_of(table.rows.begin(), table.rows.end(),
                                 [&](const TableRow& row) { return !row.cells[c].empty(); }))
            kept.push_back(c);
    set_widths(table, kept, width);
    // What is said of a cut stands on a line of its own where its column is too narrow for it.
    std::size_t r = 0;
    for (const Feature& feature : features) {
        if (feature.record.form == CutForm::blank) continue;
        TableRow& row = table.rows[r++];
        if (feature.words.empty() ||
            text_width(row.cells[2], note_height, Typeface::sans) <= table.columns[2].width - cell_air)
            continue;
        row.cells[2] = feature.record.word;
        row.below = feature.words + (row.below.empty() ? "" : "; " + row.below);
    }
    Table shown;
    shown.indent = table.columns[0].width + table.columns[1].width + cell_air / 2;
    for (const std::size_t c : kept) shown.columns.push_back(table.columns[c]);
    for (TableRow& row : table.rows) {
        std::vector<std::string> cells;
        for (const std::size_t c : kept) cells.push_back(std::move(row.cells[c]));
        row.cells = std::move(cells);
        shown.rows.push_back(std::move(row));
    }
    std::size_t next = 0;
    block = table_part(shown, 0, 1e9, next);
    for (const Feature& feature : features) block.record(feature.record);
    return block;
}

std::vector<std::string> joint_lines(const Job& job, const std::vector<Feature>& features, int part) {
    struct Line {
        std::string words;
        std::vector<std::string> letters;
        int count = 0;
    };
    std::vector<Line> lines;
    for (std::size_t j = 0; j < job.model.joints.size(); ++j) {
        const joinery::Joint& joint = job.model.joints[j];
        if (joint.a != part && joint.b != part) continue;
        const int other = joint.a == part ? joint.b : joint.a;
        const int row = static_cast<std::size_t>(other) < job.row_of_part.size()
                            ? job.row_of_part[static_cast<std::size_t>(other)]
                            : -1;
        std::string words = joint.kind + (joint.a == part ? " into " : " for ");
        words += row < 0 ? job.made(other).part->base
                         : fmt::format("{} {}", job.cut_list.rows[static_cast<std::size_t>(row)].reference,
                                       job.cut_list.rows[static_cast<std::size_t>(row)].name);
        auto line = std::find_if(lines.begin(), lines.end(), [&](const Line& l) { return l.words == words; });
        if (line == lines.end()) line = lines.insert(lines.end(), Line{words, {}, 0});
        ++line->count;
        for (const Feature& feature : features)
            if (feature.joints.contains(static_cast<int>(j)) && !feature.record.letter.empty() &&
                std::find(line->letters.begin(), line->letters.end(), feature.record.letter) ==
                    line->letters.end())
                line->letters.push_back(feature.record.letter);
    }
    std::vector<std::string> told;
    std::string all;
    for (const Line& line : lines) {
        std::string words = line.count > 1 ? fmt::format("{}× {}", line.count, line.words) : line.words;
        if (!line.letters.empty()) words += fmt::format(" ({})", fmt::join(line.letters, ", "));
        all += (all.empty() ? "joints: " : "; ") + words;
    }
    if (!all.empty()) told.push_back(all);
    return told;
}

} // namespace rayfleck::drawing
