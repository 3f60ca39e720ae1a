// One part: a heading, its views, and below them in words what the views cannot show without crowding.

#include "drawing/part_cell.hpp"

#include <algorithm>
#include <limits>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/part_notes.hpp"
#include "drawing/part_table.hpp"
#include "drawing/part_views.hpp"

namespace rayfleck::drawing {
namespace {

/// Heading: reference, name, number off; wood and sizes below it; how the drawn copy stands in the piece.
/// Upper left corner at (0, 0); gives its lower end.
double heading(Block& block, const Job& job, const cutlist::Row& row, const CutRecord& blank,
               const Scale& scale, double width) {
    const std::string off = fmt::format("{} off    {}", row.count, scale.ratio);
    const double off_width = text_width(off, note_height, Typeface::sans_bold);
    const std::string name = fmt::format("{}  {}", row.reference, row.name);
    Text title = fitted(name, width - off_width - 6, {heading_height, note_height}, Typeface::sans_bold);
    title.at = {0, -heading_height};
    block.text(title);
    block.text({{width - off_width, -heading_height}, off, note_height, Typeface::sans_bold, Ink::black, 0});
    std::string what = row.wood + (row.sawn.empty() ? "" : ", " + row.sawn) +
                       (row.stock.empty() ? "" : ", from " + row.stock);
    const auto size = [&](std::size_t axis) {
        const auto figures = figures_of(blank, size_names[axis]);
        return figures.empty() ? std::string() : figures.front()->shown;
    };
    what += fmt::format(",  blank T {}  W {}  L {}", size(2), size(1), size(0));
    if (!row.joinery.empty()) what += ",  " + row.joinery;
    const double below =
        set_lines(block, wrapped(what, width, note_height, Typeface::sans), 0, -heading_height - 2.2);
    return set_lines(block, wrapped(stance_line(job, row), width, note_height, Typeface::sans), 0,
                     below - 0.4);
}

std::vector<std::string> notes_of(const Job& job, const cutlist::Row& row,
                                  const std::vector<Feature>& features) {
    std::vector<std::string> notes;
    if (!features.front().below.empty()) notes.push_back("blank sawn to " + features.front().below);
    for (const std::string& line : joint_lines(job, features, row.parts.front())) notes.push_back(line);
    for (const std::string& note : bench_notes(job, row)) notes.push_back(note);
    return notes;
}

/// Width for the words: half of a room in which they stand beside the views.
double words_width(const CellRoom& room) { return room.words_beside ? (room.width - 10) / 2 : room.width; }

/// All of a cell in one room: heading, views, table, notes.
CellLaid laid_out(const Job& job, const cutlist::Row& row, std::vector<Feature> features,
                  const PartSeen& seen, const CellRoom& room, const ViewsRoom& for_views) {
    const int part = row.parts.front();
    const PartViews views = part_views(job, row, features, seen, for_views);
    const GaugeFrame gauge(job.made(part));
    settle_figures(job, gauge, ToldByStrings(gauge, views.block.dimensions()), features);
    for (Feature& feature : features) feature.record.part = row.name;
    const Rect drawn = views.block.box();
    const Block table = table_of_cuts(job, features, part, words_width(room));
    const double table_width = table.empty() ? 0 : table.box().width();
    // No wider than what stands in it, but wide enough for lines of notes.
    constexpr double least = 120, gap = 10;
    const double words = room.words_beside
                             ? words_width(room)
                             : std::min(room.width, std::max({drawn.width(), table_width, least}));
    const double width = room.words_beside ? std::min(room.width, drawn.width() + gap + words) : words;
    Block cell;
    const double heading_end = heading(cell, job, row, features.front().record, views.scale, width);
    cell.add(views.block, {-drawn.left, heading_end - 2 - drawn.top});
    const double left = room.words_beside ? drawn.width() + gap : 0;
    double y = room.words_beside ? heading_end - 4 : heading_end - 2 - drawn.height() - 3;
    if (table.empty()) {
        for (const Feature& feature : features) cell.record(feature.record);
    } else {
        cell.add(table, {left, y});
        y -= table.box().height() + 1.5;
    }
    for (const std::string& note : notes_of(job, row, features))
        y = set_lines(cell, wrapped(note, words, note_height, Typeface::sans), left, y) - 0.4;
    CellLaid laid;
    const Rect box = cell.box();
    if (room.words_beside)
        laid.covers = {{box.left, heading_end, box.right, box.top},
                       {box.left, heading_end - 2 - drawn.height(), left, box.top},
                       {left, y, box.right, box.top}};
    else
        laid.covers = {box};
    laid.block = std::move(cell);
    laid.scale = views.scale.factor;
    return laid;
}

/// Height of heading, table and notes: so much of a room the views cannot have.
double height_of_words(const Job& job, const cutlist::Row& row, const std::vector<Feature>& features,
                       double width) {
    const Block table = table_of_cuts(job, features, row.parts.front(), width);
    std::size_t lines = 0;
    for (const std::string& note : notes_of(job, row, features))
        lines += wrapped(note, width, note_height, Typeface::sans).size();
    constexpr double between = 7;
    return between + (table.empty() ? 0 : table.box().height()) +
           static_cast<double>(lines) * (note_step + 0.4);
}

/// Smaller than a fifth no joint can be read, nor thinner on paper than this, nor cuts finer than that;
/// profiles that run through are enlarged in a detail instead.
constexpr double smallest_readable = 0.2 - 1e-9, thinnest_readable = 1.5, finest_readable = 2;

/// The finest size along or across of what does not run through, mm of wood; infinity for none.
double finest_cut(const std::vector<Feature>& features, const GaugeFrame& gauge) {
    double finest = std::numeric_limits<double>::infinity();
    for (const Feature& feature : features) {
        const CutForm form = feature.record.form;
        if (form != CutForm::hollow && form != CutForm::prism && form != CutForm::tongue) continue;
        const double along = feature.places.front().high.x - feature.places.front().low.x,
                     across = feature.places.front().high.y - feature.places.front().low.y;
        if (along > gauge.size(0) - 0.01 || across > gauge.size(1) - 0.01) continue;
        finest = std::min({finest, along, across});
    }
    return finest;
}

} // namespace

PartCell::PartCell(const Job& job, const cutlist::Row& row)
    : job_(job), row_(row), features_(features_of(job, row.parts.front())),
      seen_(see_part(job, row.parts.front(), features_)) {}

PartCell::Fitting PartCell::fit(const CellRoom& room) const {
    constexpr double for_heading = 18;
    const double words = height_of_words(job_, row_, features_, words_width(room));
    Fitting fitting{room, {room.width, room.height - words - for_heading}, 0};
    if (room.words_beside) {
        // What takes more height than the sheet has beside the views does not belong there.
        if (words + for_heading > room.height) return fitting;
        fitting.views = {words_width(room), room.height - for_heading};
    }
    fitting.scale =
        layout_of(job_, job_.made(row_.parts.front()), seen_, fitting.views, usually_beside).scale.factor;
    return fitting;
}

CellLaid PartCell::laid_out_in(Fitting fitting) const {
    CellLaid cell = laid_out(job_, row_, features_, seen_, fitting.room, fitting.views);
    for (int attempt = 0; attempt < 3 && cell.block.box().height() > fitting.room.height; ++attempt) {
        fitting.views.height -= cell.block.box().height() - fitting.room.height + 0.5;
        if (fitting.views.height < 20) break;
        cell = laid_out(job_, row_, features_, seen_, fitting.room, fitting.views);
    }
    return cell;
}

void PartCell::lay_out(const std::vector<CellRoom>& rooms) {
    const measure::Box& box = job_.made(row_.parts.front()).solid.box;
    const double thickness = std::min(box.high.z - box.low.z, box.high.y - box.low.y);
    const double finest = finest_cut(features_, GaugeFrame(job_.made(row_.parts.front())));
    Fitting best;
    for (const CellRoom& room : rooms) {
        const Fitting fitting = fit(room);
        if (best.scale == 0 || fitting.scale > best.scale * 1.2) best = fitting;
        if (fitting.scale >= smallest_readable && fitting.scale * thickness >= thinnest_readable &&
            fitting.scale * finest >= finest_readable)
            break;
    }
    laid_ = laid_out_in(best);
}

bool PartCell::squeeze_into(const CellRoom& room) {
    constexpr double most_smaller = 2.6; // from 1:2 to 1:5, the widest step of the lists
    const double least = std::max(std::min(smallest_readable, laid_.scale), laid_.scale / most_smaller);
    const Fitting fitting = fit(room);
    if (fitting.scale < least) return false;
    CellLaid cell = laid_out_in(fitting);
    if (cell.scale < least || cell.block.box().width() > room.width ||
        cell.block.box().height() > room.height)
        return false;
    laid_ = std::move(cell);
    return true;
}

Block rules_block(const Job& job, double width) {
    Block block;
    const std::vector<std::string> rules = rules_of_sizes(job);
    if (rules.empty()) return block;
    double y = set_lines(block, {"sizes that were left to rules (all stand in the drawings)"}, 0, 0,
                         note_height, Typeface::sans_bold) -
               0.8;
    for (const std::string& rule : rules)
        y = set_lines(block, wrapped(rule, width, note_height, Typeface::sans), 0, y) - 0.4;
    return block;
}

} // namespace rayfleck::drawing
