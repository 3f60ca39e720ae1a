// The cut list as a table, with what it adds up to and the hardware below it.
//
// The three sizes stand in columns of their own, finished apart from rough, thickness, width, length in that
// order, and length is always with the grain. A wide sheet has the remarks in a column, an upright one on a
// second line.

#include <algorithm>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

std::string volume(const Job& job, double m3, double board_feet) {
    return job.in_inches() ? (board_feet > 0 ? fmt::format("{:.2f}", board_feet) : "–")
                           : fmt::format("{:.4f}", m3);
}

std::string remarks_of(const cutlist::Row& row) {
    return row.joinery + (row.joinery.empty() || row.remark.empty() ? "" : ", ") + row.remark;
}

Table list_table(const Job& job, double width) {
    const bool wide = width > 300;
    Table table;
    const auto figures = Typeface::lettering;
    table.columns = {{"ref", wide ? 10.0 : 8.0, true, Typeface::sans_bold},
                     {"part", wide ? 62.0 : 30.0, false, Typeface::sans},
                     {"off", wide ? 10.0 : 8.0, true, figures},
                     {"wood", wide ? 46.0 : 23.0, false, Typeface::sans},
                     {"sawn", wide ? 28.0 : 15.0, false, Typeface::sans}};
    for (const char* state : {"finished", "rough"})
        for (const auto& [axis, room] : {std::pair{"T", 10.0}, {"W", 11.5}, {"L", 13.5}})
            table.columns.push_back({axis, wide ? room + 4 : room, true, figures, state});
    table.columns.push_back({job.in_inches() ? "board feet" : "m³", wide ? 20.0 : 14.0, true, figures});
    const double left_over = width - table.width();
    if (wide)
        table.columns.push_back({"joinery, remarks", left_over, false, Typeface::sans});
    else
        table.columns[1].width += left_over;
    for (std::size_t r = 0; r < job.cut_list.rows.size(); ++r) {
        const cutlist::Row& row = job.cut_list.rows[r];
        TableRow line;
        line.cells = {std::to_string(row.reference),
                      row.name,
                      std::to_string(row.count),
                      row.stock.empty() ? row.wood : row.wood + " (" + row.stock + ")",
                      row.sawn,
                      job.figure(row.thickness),
                      job.figure(row.width),
                      job.figure(row.length),
                      job.figure(row.rough_thickness),
                      job.figure(row.rough_width),
                      job.figure(row.rough_length),
                      volume(job, row.volume_m3, row.board_feet)};
        if (wide)
            line.cells.push_back(remarks_of(row));
        else
            line.below = remarks_of(row);
        line.to_sheet = link_to_row + static_cast<int>(r);
        table.rows.push_back(std::move(line));
    }
    return table;
}

Table totals_table(const Job& job) {
    Table table;
    table.columns = {{"wood, rough", 60, false, Typeface::sans},
                     {"m³", 20, true, Typeface::lettering},
                     {"board feet", 24, true, Typeface::lettering},
                     {"kg as made", 24, true, Typeface::lettering}};
    for (const auto& total : job.cut_list.totals)
        table.rows.push_back({{total.wood, fmt::format("{:.4f}", total.volume_m3),
                               total.board_feet > 0 ? fmt::format("{:.2f}", total.board_feet) : "–",
                               total.weight_kg > 0 ? fmt::format("{:.1f}", total.weight_kg) : "–"},
                              "",
                              false,
                              -1});
    double weight = 0;
    for (const auto& total : job.cut_list.totals) weight += total.weight_kg;
    if (job.cut_list.totals.size() > 1)
        table.rows.push_back({{"in all", "", "", fmt::format("{:.1f}", weight)}, "", true, -1});
    table.rows.push_back(
        {{"surface to finish", fmt::format("{:.2f} m²", job.cut_list.finish_area_m2), "", ""},
         "",
         false,
         -1});
    return table;
}

Table hardware_table(const Job& job) {
    Table table;
    table.columns = {{"hardware", 60, false, Typeface::sans},
                     {"off", 12, true, Typeface::lettering},
                     {"for", 78, false, Typeface::sans}};
    for (const auto& item : job.cut_list.hardware) {
        std::string where = item.from == "stated" ? "" : item.from;
        std::vector<int> rows;
        for (const int part : item.parts) {
            const int row = job.row_of_part[static_cast<std::size_t>(part)];
            if (row >= 0 && std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
        }
        for (std::size_t i = 0; i < rows.size(); ++i)
            where += (i == 0 ? (where.empty() ? "" : ": ") : ", ") +
                     job.cut_list.rows[static_cast<std::size_t>(rows[i])].name;
        table.rows.push_back({{item.name, std::to_string(item.count), where}, "", false, -1});
    }
    return table;
}

constexpr double heading_room = 14;

Leaf fresh_leaf(const Job& job, bool first) {
    Leaf leaf;
    const std::string title = "Cut list" + (job.of_lot.empty() ? "" : ", " + job.of_lot);
    leaf.title = first ? title : title + ", continued";
    leaf.document_type = "cut list";
    const Rect usable = job.paper.usable();
    leaf.block.text({{usable.left, usable.top - 5}, leaf.title, 5, Typeface::lettering, Ink::black, 0});
    leaf.block.text({{usable.left, usable.top - 10.5},
                     cut_to(fmt::format("T thickness, W width, L length with the grain, in {}; joints are "
                                        "included; rough sizes hold the shop's allowances",
                                        measure::name(job.manner.unit)),
                            usable.width(), note_height, Typeface::sans),
                     note_height,
                     Typeface::sans,
                     Ink::black,
                     0});
    return leaf;
}

} // namespace

std::vector<Leaf> cut_list_sheets(const Job& job) {
    std::vector<Leaf> leaves{fresh_leaf(job, true)};
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const Table table = list_table(job, usable.width());
    const auto fresh_space = [&] {
        FreeSpace space({usable.left, usable.bottom, usable.right, usable.top - heading_room});
        space.take(grown(title, 4));
        return space;
    };
    FreeSpace space = fresh_space();
    for (std::size_t row = 0; row < table.rows.size();) {
        const double height = usable.top - heading_room - title.top - 4;
        std::size_t next = row;
        const Block part = table_part(table, row, height, next);
        leaves.back().block.add(part, {usable.left, usable.top - heading_room});
        space.take(
            {usable.left, usable.top - heading_room - part.box().height() - 6, usable.right, usable.top});
        row = next;
        if (row < table.rows.size()) {
            leaves.push_back(fresh_leaf(job, false));
            space = fresh_space();
        }
    }
    std::vector<Table> more;
    if (!job.cut_list.totals.empty()) more.push_back(totals_table(job));
    if (!job.cut_list.hardware.empty()) more.push_back(hardware_table(job));
    for (const Table& extra : more)
        for (std::size_t row = 0; row < extra.rows.size();) {
            // What is left on this sheet; a long list of hardware goes on on the next.
            std::size_t next = row;
            double room = 0;
            for (const Rect& r : space.rects())
                if (r.width() >= extra.width()) room = std::max(room, r.height());
            const Block part = table_part(extra, row, room, next);
            const auto found = space.find(part.box().width() + 6, part.box().height());
            if (!found) {
                leaves.push_back(fresh_leaf(job, false));
                space = fresh_space();
                continue;
            }
            leaves.back().block.add(part, {found->left, found->top});
            space.take({found->left, found->bottom - 6, found->right + 2, found->top});
            row = next;
        }
    return leaves;
}

} // namespace rayfleck::drawing
