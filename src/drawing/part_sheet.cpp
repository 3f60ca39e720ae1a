// Part drawings: one cell for each row of the cut list, packed on as few sheets as they need: each cell goes
// where it fits on the first sheet with room. That is tried in the order of the list and with the highest
// cells first, and the order of the list is kept unless the other saves a sheet. The legend of the marks
// stands once, where there is room.

#include <algorithm>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/part_cell.hpp"
#include "drawing/part_marks.hpp"
#include "drawing/part_views.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double air = 7; ///< between cells

/// A sheet that is being filled.
struct Open {
    Leaf leaf;
    FreeSpace space;
    std::vector<int> references;
};

Open new_leaf(const Job& job) {
    Open open{{}, FreeSpace(job.paper.usable()), {}};
    open.space.take(grown(job.paper.title_block(), 3));
    open.leaf.document_type = "part drawing";
    open.leaf.scale = "as stated";
    return open;
}

Rect taken(const Rect& found, const Rect& cell) {
    return grown({found.left, found.top - cell.height(), found.left + cell.width(), found.top}, air);
}

bool place(Open& open, const Block& cell) {
    const auto found = open.space.find(cell.box().width(), cell.box().height());
    if (!found) return false;
    open.leaf.block.add(cell, {found->left - cell.box().left, found->top - cell.box().top});
    open.space.take(taken(*found, cell.box()));
    return true;
}

/// On which sheet each cell goes, when they are set in that order, each on the first sheet with room for it.
std::vector<std::size_t> sheets_for(const Job& job, const std::vector<Block>& cells,
                                    const std::vector<std::size_t>& order) {
    std::vector<std::size_t> sheet_of(cells.size());
    std::vector<FreeSpace> sheets;
    for (const std::size_t c : order) {
        const Rect& box = cells[c].box();
        std::size_t s = 0;
        for (; s < sheets.size(); ++s)
            if (const auto found = sheets[s].find(box.width(), box.height())) {
                sheets[s].take(taken(*found, box));
                break;
            }
        if (s == sheets.size()) {
            sheets.push_back(new_leaf(job).space);
            const auto found = sheets.back().find(box.width(), box.height());
            // Higher than a sheet: it is the only one there.
            sheets.back().take(found ? taken(*found, box) : job.paper.usable());
        }
        sheet_of[c] = s;
    }
    return sheet_of;
}

std::size_t sheets_in(const std::vector<std::size_t>& sheet_of) {
    return sheet_of.empty() ? 0 : *std::max_element(sheet_of.begin(), sheet_of.end()) + 1;
}

/// As many columns as keep cells wide enough to read.
double cell_width(const Job& job) {
    const double usable = job.paper.usable().width();
    const int columns = std::max(1, static_cast<int>((usable + air) / (170 + air)));
    return (usable - (columns - 1) * air) / columns - 0.01;
}

/// Half a column, a whole one, the width of the sheet: what a cell may take, the least first.
std::vector<CellRoom> rooms_on(const Job& job) {
    const Rect usable = job.paper.usable(), title = grown(job.paper.title_block(), 3);
    const double narrow = cell_width(job), wide = usable.width() - 0.01;
    const double above_title = usable.top - title.top - 0.01;
    const bool beside_title = narrow <= title.left - usable.left;
    const double column = beside_title ? usable.height() - 0.01 : above_title;
    std::vector<CellRoom> rooms{{narrow, (column - air) / 2}, {narrow, column}};
    if (wide > narrow + 1) {
        rooms.push_back({wide, (above_title - air) / 2});
        rooms.push_back({wide, above_title});
        rooms.push_back({wide, above_title, true});
    }
    return rooms;
}

/// `Part 3`, `Parts 1 to 4`, `Parts 1, 3, 7`.
std::string title_of(const std::vector<int>& references) {
    if (references.empty()) return "Marks and rules";
    std::vector<int> sorted = references;
    std::sort(sorted.begin(), sorted.end());
    std::string words;
    for (std::size_t i = 0; i < sorted.size();) {
        std::size_t j = i;
        while (j + 1 < sorted.size() && sorted[j + 1] == sorted[j] + 1) ++j;
        words += words.empty() ? "" : ", ";
        words += j > i + 1 ? fmt::format("{} to {}", sorted[i], sorted[j]) : std::to_string(sorted[i]);
        i = j > i + 1 ? j + 1 : i + 1;
    }
    return (sorted.size() > 1 ? "Parts " : "Part ") + words;
}

} // namespace

std::vector<Leaf> part_sheets(const Job& job, std::vector<int>& leaf_of_row) {
    const std::size_t rows = job.cut_list.rows.size();
    leaf_of_row.assign(rows, 0);
    const std::vector<CellRoom> rooms = rooms_on(job);
    std::vector<Block> cells;
    for (const cutlist::Row& row : job.cut_list.rows)
        cells.push_back(part_cell(job, row, features_of(job, row.parts.front()), rooms));
    // In the order of the list, unless the highest first need fewer sheets.
    std::vector<std::size_t> in_order(rows), highest_first;
    for (std::size_t r = 0; r < rows; ++r) in_order[r] = r;
    highest_first = in_order;
    std::stable_sort(highest_first.begin(), highest_first.end(), [&](std::size_t a, std::size_t b) {
        return cells[a].box().height() > cells[b].box().height();
    });
    const std::vector<std::size_t> by_list = sheets_for(job, cells, in_order),
                                   by_height = sheets_for(job, cells, highest_first);
    const bool listed = sheets_in(by_list) <= sheets_in(by_height);
    const std::vector<std::size_t>& sheet_of = listed ? by_list : by_height;
    // Sheets follow one another by the first part on each.
    std::vector<int> leaf_of_sheet(sheets_in(sheet_of), -1);
    std::vector<Open> open;
    for (const std::size_t r : in_order)
        if (leaf_of_sheet[sheet_of[r]] < 0) {
            leaf_of_sheet[sheet_of[r]] = static_cast<int>(open.size());
            open.push_back(new_leaf(job));
        }
    for (const std::size_t r : listed ? in_order : highest_first) {
        leaf_of_row[r] = leaf_of_sheet[sheet_of[r]];
        Open& leaf = open[static_cast<std::size_t>(leaf_of_row[r])];
        leaf.references.push_back(job.cut_list.rows[r].reference);
        if (place(leaf, cells[r])) continue;
        const Rect usable = job.paper.usable();
        leaf.leaf.block.add(cells[r], {usable.left - cells[r].box().left, usable.top - cells[r].box().top});
        leaf.space.take(usable);
    }
    const double width = cell_width(job);
    // The legend and the rules stand where there is room, from the last sheet back, else on a sheet of their
    // own.
    for (const Block& aside : {legend_of_marks(job), rules_block(job, width)}) {
        if (aside.empty() || open.empty()) continue;
        bool stands = false;
        for (auto leaf = open.rbegin(); leaf != open.rend() && !stands; ++leaf) stands = place(*leaf, aside);
        if (stands) continue;
        open.push_back(new_leaf(job));
        if (!place(open.back(), aside)) {
            const Rect usable = job.paper.usable();
            open.back().leaf.block.add(aside, {usable.left - aside.box().left, usable.top - aside.box().top});
        }
    }
    std::vector<Leaf> leaves;
    for (Open& o : open) {
        o.leaf.title = title_of(o.references);
        leaves.push_back(std::move(o.leaf));
    }
    return leaves;
}

} // namespace rayfleck::drawing
