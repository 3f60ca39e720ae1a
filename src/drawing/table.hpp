#pragma once
// Tables: a head, rows of wrapped cells, thin rules; cut into parts where a sheet ends.

#include <string>
#include <vector>

#include "drawing/block.hpp"

namespace rayfleck::drawing {

struct Column {
    std::string head;
    double width = 20;         ///< mm
    bool to_the_right = false; ///< figures are set against the right border
    Typeface face = Typeface::sans;
    /// Stands above the heads of all neighbouring columns that name it, between rules.
    std::string group = {};
};

struct TableRow {
    std::vector<std::string> cells; ///< one per column
    /// A second line across the whole table, below the cells; empty for none.
    std::string below;
    bool bold = false; ///< a total or a heading
    /// Sheet to jump to when clicked; -1 for none.
    int to_sheet = -1;
};

struct Table {
    std::vector<Column> columns;
    std::vector<TableRow> rows;
    double indent = 10; ///< of the line below a row, mm
    double width() const;
    bool grouped() const;
};

/// A stretch of the table from row `first`, as many rows as fit into `height`, with the head on top. The
/// block's upper left corner is at (0, 0); it runs down. `next` receives the first row that did not fit
/// (rows.size() at the end). At least one row is set, even when it is too high.
Block table_part(const Table& table, std::size_t first, double height, std::size_t& next);

/// The list that grows upwards from a title block: head at the bottom, first row above it, in that many
/// stretches side by side (at least 1). Its lower left corner is at (0, 0).
Block rising_list(const Table& table, std::size_t stretches);

} // namespace rayfleck::drawing
