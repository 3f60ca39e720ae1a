// Part drawings: one cell for each row of the cut list, in the order of the list. Each goes on the first
// sheet with room for it; before a new sheet is begun, it is tried smaller in what is left of the others. The
// legend of the marks stands once, where there is room.

#include <algorithm>
#include <optional>

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

/// covers  what of the block is taken, in its own coordinates
bool place(Open& open, const Block& block, const std::vector<Rect>& covers) {
    const Rect& box = block.box();
    const auto found = open.space.find(box.width(), box.height());
    if (!found) return false;
    const Point2 by{found->left - box.left, found->top - box.top};
    open.leaf.block.add(block, by);
    for (const Rect& rect : covers)
        open.space.take(
            grown({rect.left + by.x, rect.bottom + by.y, rect.right + by.x, rect.top + by.y}, air));
    return true;
}
bool place(Open& open, const PartCell& cell) { return place(open, cell.laid().block, cell.laid().covers); }

/// Places a cell on the first sheet with room for it; where there is none, in what is left of a sheet if the
/// part can be drawn smaller and still be read. gives  the index of that sheet; nothing when none has room
std::optional<std::size_t> place_on_any(std::vector<Open>& open, PartCell& cell) {
    for (std::size_t s = 0; s < open.size(); ++s)
        if (place(open[s], cell)) return s;
    constexpr double least_width = 110, least_height = 55, for_words_beside = 260;
    for (std::size_t s = 0; s < open.size(); ++s) {
        std::vector<CellRoom> left;
        for (const Rect& rect : open[s].space.rects()) {
            if (rect.width() < least_width || rect.height() < least_height) continue;
            left.push_back({rect.width() - 0.01, rect.height() - 0.01});
            if (rect.width() > for_words_beside)
                left.push_back({rect.width() - 0.01, rect.height() - 0.01, true});
        }
        for (const CellRoom& room : left)
            if (cell.squeeze_into(room) && place(open[s], cell)) return s;
    }
    return std::nullopt;
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
    std::vector<Open> open;
    for (std::size_t r = 0; r < rows; ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        PartCell cell(job, row);
        cell.lay_out(rooms);
        std::optional<std::size_t> on = place_on_any(open, cell);
        if (!on) {
            on = open.size();
            open.push_back(new_leaf(job));
            if (!place(open.back(), cell)) {
                // Higher than a sheet: it stands at the top all the same, and is the only one there.
                const Rect usable = job.paper.usable(), &box = cell.laid().block.box();
                open.back().leaf.block.add(cell.laid().block, {usable.left - box.left, usable.top - box.top});
                open.back().space.take(usable);
            }
        }
        leaf_of_row[r] = static_cast<int>(*on);
        open[*on].references.push_back(row.reference);
    }
    const double width = cell_width(job);
    // The legend and the rules stand where there is room, from the last sheet back, else on a sheet of their
    // own.
    for (const Block& aside : {legend_of_marks(job), rules_block(job, width)}) {
        if (aside.empty() || open.empty()) continue;
        bool stands = false;
        for (auto leaf = open.rbegin(); leaf != open.rend() && !stands; ++leaf)
            stands = place(*leaf, aside, {aside.box()});
        if (stands) continue;
        open.push_back(new_leaf(job));
        if (!place(open.back(), aside, {aside.box()})) {
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
