// Part drawings: one cell for each row of the cut list, in the order of the list, set side by side on as few
// sheets as they need. The legend of the marks stands once, where there is room.

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

struct Open {
    Leaf leaf;
    FreeSpace space;
    int first = 0, last = 0;
};

Open new_leaf(const Job& job) {
    Open open{{}, FreeSpace(job.paper.usable()), 0, 0};
    open.space.take(grown(job.paper.title_block(), 3));
    open.leaf.document_type = "part drawing";
    open.leaf.scale = "as stated";
    return open;
}

bool place(Open& open, const Block& cell) {
    const auto found = open.space.find(cell.box().width(), cell.box().height());
    if (!found) return false;
    const Point2 by{found->left - cell.box().left, found->top - cell.box().top};
    open.leaf.block.add(cell, by);
    open.space.take(grown(
        {found->left, found->top - cell.box().height(), found->left + cell.box().width(), found->top}, air));
    return true;
}

/// As many columns as keep cells wide enough to read.
double cell_width(const Job& job) {
    const double usable = job.paper.usable().width();
    const int columns = std::max(1, static_cast<int>((usable + air) / (170 + air)));
    return (usable - (columns - 1) * air) / columns - 0.01;
}

} // namespace

std::vector<Leaf> part_sheets(const Job& job, std::vector<int>& leaf_of_row) {
    leaf_of_row.assign(job.cut_list.rows.size(), 0);
    std::vector<Open> open;
    const double width = cell_width(job);
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        const double whole = job.paper.usable().width() - 0.01;
        const Block cell = part_cell(job, row, wants_whole_width(job, row, width, whole) ? whole : width);
        // Only the last sheets are tried, so that the order of the list can be followed.
        constexpr std::size_t tried = 3;
        std::size_t at = open.size() < tried ? 0 : open.size() - tried;
        while (at < open.size() && !place(open[at], cell)) ++at;
        if (at == open.size()) {
            open.push_back(new_leaf(job));
            open.back().first = row.reference;
            if (!place(open.back(), cell)) {
                // Higher than a sheet: it stands at the top all the same, and is the only one there.
                const Rect usable = job.paper.usable();
                open.back().leaf.block.add(cell,
                                           {usable.left - cell.box().left, usable.top - cell.box().top});
                open.back().space.take(usable);
            }
        }
        open[at].last = std::max(open[at].last, row.reference);
        leaf_of_row[r] = static_cast<int>(at);
    }
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
        o.leaf.title = o.first == 0        ? "Marks and rules"
                       : o.first == o.last ? fmt::format("Part {}", o.first)
                                           : fmt::format("Parts {} to {}", o.first, o.last);
        leaves.push_back(std::move(o.leaf));
    }
    return leaves;
}

} // namespace rayfleck::drawing
