// One part: a heading, its views, and below them in words what the views cannot show without crowding.

#include "drawing/part_cell.hpp"

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/part_notes.hpp"
#include "drawing/part_views.hpp"

namespace rayfleck::drawing {
namespace {

/// Heading: reference, name, number off; wood and sizes below it. Upper left corner at (0, 0); gives its
/// lower end.
double heading(Block& block, const Job& job, const cutlist::Row& row, const Scale& scale, double width) {
    const std::string name = fmt::format("{}  {}", row.reference, row.name);
    Text title = fitted(name, width - 40, {heading_height, note_height}, Typeface::sans_bold);
    title.at = {0, -heading_height};
    block.text(title);
    const std::string off = fmt::format("{} off    {}", row.count, scale.ratio);
    block.text({{width - text_width(off, note_height, Typeface::sans_bold), -heading_height},
                off,
                note_height,
                Typeface::sans_bold,
                Ink::black,
                0});
    std::string what = row.wood + (row.sawn.empty() ? "" : ", " + row.sawn) +
                       (row.stock.empty() ? "" : ", from " + row.stock);
    what += fmt::format(",  blank T {}  W {}  L {}", job.figure(row.thickness), job.figure(row.width),
                        job.figure(row.length));
    if (!row.joinery.empty()) what += ",  " + row.joinery;
    return set_lines(block, wrapped(what, width, note_height, Typeface::sans), 0, -heading_height - 2.2);
}

} // namespace

Block part_cell(const Job& job, const cutlist::Row& row, double width) {
    const PartViews views = part_views(job, row, width);
    // Heading above, notes below, all left-aligned with the leftmost thing drawn.
    Block cell;
    const double heading_end = heading(cell, job, row, views.scale, width);
    const Rect drawn = views.block.box();
    const Point2 by{-drawn.left, heading_end - 2 - drawn.top};
    cell.add(views.block, by);
    double y = drawn.bottom + by.y - 3;
    const auto list = [&](const std::vector<std::string>& notes) {
        for (const std::string& note : notes)
            y = set_lines(cell, wrapped(note, width, note_height, Typeface::sans), 0, y) - 0.4;
    };
    list(cut_notes(job, row));
    list(joint_notes(job, row));
    list(bench_notes(job, row));
    return cell;
}

Block rules_block(const Job& job, double width) {
    Block block;
    const std::vector<std::string> rules = rules_of_sizes(job);
    if (rules.empty()) return block;
    double y = set_lines(block, {"sizes left out, and the rules they follow"}, 0, 0, note_height,
                         Typeface::sans_bold) -
               0.8;
    for (const std::string& rule : rules)
        y = set_lines(block, wrapped(rule, width, note_height, Typeface::sans), 0, y) - 0.4;
    return block;
}

} // namespace rayfleck::drawing
