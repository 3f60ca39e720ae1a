// Row heights follow the tallest wrapped cell. Rules are thin and lie only between rows, under the head and
// round the whole; figures stand in their columns without vertical rules, which keeps many columns readable.

#include "drawing/table.hpp"

#include <algorithm>

#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double side_room = 1.2;
constexpr double row_room = 1.7; ///< above and below the lines of a row, together

struct SetRow {
    std::vector<std::vector<std::string>> cells;
    std::vector<std::string> below;
    double height = 0;
};

SetRow set_row(const Table& table, const TableRow& row) {
    SetRow set;
    std::size_t lines = 1;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const Typeface face = row.bold ? Typeface::sans_bold : table.columns[c].face;
        set.cells.push_back(
            c < row.cells.size()
                ? wrapped(row.cells[c], table.columns[c].width - 2 * side_room, note_height, face)
                : std::vector<std::string>{});
        lines = std::max(lines, set.cells.back().size());
    }
    if (!row.below.empty())
        set.below = wrapped(row.below, table.width() - table.indent - side_room, note_height, Typeface::sans);
    set.height = static_cast<double>(lines + set.below.size()) * note_step + row_room;
    return set;
}

/// Draws the texts of a row whose upper border is at `top`.
void draw_row(Block& block, const Table& table, const TableRow& row, const SetRow& set, double left,
              double top) {
    double x = left;
    std::size_t lines = 1;
    const double first = top - row_room * 0.75;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const Column& column = table.columns[c];
        const Typeface face = row.bold ? Typeface::sans_bold : column.face;
        for (std::size_t i = 0; i < set.cells[c].size(); ++i) {
            const std::string& words = set.cells[c][i];
            const double width = column.to_the_right ? text_width(words, note_height, face) : 0;
            const double at = column.to_the_right ? x + column.width - side_room - width : x + side_room;
            block.text({{at, first - note_height - static_cast<double>(i) * note_step},
                        words,
                        note_height,
                        face,
                        Ink::black,
                        0});
        }
        lines = std::max(lines, set.cells[c].size());
        x += column.width;
    }
    set_lines(block, set.below, left + table.indent, first - static_cast<double>(lines) * note_step);
    if (row.to_sheet >= 0) block.link({left, top - set.height, left + table.width(), top}, row.to_sheet);
}

TableRow head_of(const Table& table) {
    TableRow head;
    head.bold = true;
    for (const Column& column : table.columns) head.cells.push_back(column.head);
    return head;
}

} // namespace

double Table::width() const {
    double sum = 0;
    for (const Column& column : columns) sum += column.width;
    return sum;
}

bool Table::grouped() const {
    return std::any_of(columns.begin(), columns.end(), [](const Column& c) { return !c.group.empty(); });
}

namespace {

/// Names of groups above their columns, and a rule at either side of each group down to `bottom`.
void draw_groups(Block& block, const Table& table, double bottom) {
    double x = 0;
    for (std::size_t c = 0; c < table.columns.size();) {
        const std::string& group = table.columns[c].group;
        double width = 0;
        std::size_t end = c;
        while (end < table.columns.size() && table.columns[end].group == group)
            width += table.columns[end++].width;
        if (!group.empty()) {
            const double words = text_width(group, note_height, Typeface::sans_bold);
            block.text({{x + (width - words) / 2, -row_room * 0.75 - note_height},
                        group,
                        note_height,
                        Typeface::sans_bold,
                        Ink::black,
                        0});
            for (const double at : {x, x + width})
                block.line({at, 0}, {at, bottom}, Pen::thin, Role::table, Ink::grey);
        }
        x += width;
        c = end;
    }
}

} // namespace

Block table_part(const Table& table, std::size_t first, double height, std::size_t& next) {
    Block block;
    const double width = table.width();
    const TableRow head = head_of(table);
    const SetRow head_set = set_row(table, head);
    const double groups = table.grouped() ? note_step : 0;
    block.fill(Rect{0, -head_set.height - groups, width, 0}, Ink::pale);
    draw_row(block, table, head, head_set, 0, -groups);
    double y = -head_set.height - groups;
    block.line({0, 0}, {width, 0}, Pen::visible, Role::table);
    block.line({0, y}, {width, y}, Pen::thin, Role::table);
    next = first;
    while (next < table.rows.size()) {
        const SetRow set = set_row(table, table.rows[next]);
        if (next > first && -y + set.height > height) break;
        draw_row(block, table, table.rows[next], set, 0, y);
        y -= set.height;
        ++next;
        const bool last = next == table.rows.size();
        block.line({0, y}, {width, y}, last ? Pen::visible : Pen::thin, Role::table);
    }
    if (groups > 0) {
        // A remark across the table would be cut by the rules.
        const bool across = std::any_of(table.rows.begin(), table.rows.end(),
                                        [](const TableRow& row) { return !row.below.empty(); });
        draw_groups(block, table, across ? -head_set.height - groups : y);
    }
    return block;
}

Block rising_list(const Table& table, std::size_t stretches) {
    Block block;
    const TableRow head = head_of(table);
    const SetRow head_set = set_row(table, head);
    std::size_t row = 0;
    const std::size_t each = (table.rows.size() + stretches - 1) / stretches;
    double highest = 0;
    for (std::size_t s = 0; s < stretches && row < table.rows.size(); ++s) {
        const double left = static_cast<double>(s) * table.width(), right = left + table.width();
        block.fill(Rect{left, 0, right, head_set.height}, Ink::pale);
        draw_row(block, table, head, head_set, left, head_set.height);
        double y = head_set.height;
        for (std::size_t n = 0; n < each && row < table.rows.size(); ++n, ++row) {
            const SetRow set = set_row(table, table.rows[row]);
            block.line({left, y}, {right, y}, Pen::thin, Role::table);
            draw_row(block, table, table.rows[row], set, left, y + set.height);
            y += set.height;
        }
        highest = std::max(highest, y);
        block.line({left, y}, {right, y}, Pen::visible, Role::table);
        if (s > 0) block.line({left, 0}, {left, highest}, Pen::thin, Role::table);
    }
    block.line({0, 0}, {0, highest}, Pen::visible, Role::table);
    return block;
}

} // namespace rayfleck::drawing
