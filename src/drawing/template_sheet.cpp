// Full-size templates: a page for each tile, and tables of offsets where tiles would be too many.
//
//   | part, tile, how to use it            key map |
//   | window on the net of tiles              | bars |
//   | bars                                         |
//   | title block                                  |
//
// Pages are upright A4, or Letter where the set's own paper is American; the window is the same on both. An
// outline gets tiles as long as it takes no more than six, and all templates of a set together sixty; beyond
// that its offsets are listed, station by station, to be laid off from a straight edge and joined with a
// batten. Both limits are our own choice. Two bars stand along each axis since a printer may stretch one
// only.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/sheets.hpp"
#include "drawing/table.hpp"
#include "drawing/template_tiles.hpp"

namespace rayfleck::drawing {
namespace {

using joinery::Made;

constexpr int most_tiles = 6, most_pages = 60;
constexpr double inch = 25.4;

Paper template_paper(const Job& job) {
    const bool american = job.paper.name == "Letter" || job.paper.name == "Tabloid";
    return paper(american ? "Letter" : "A4");
}

Rect window_on(const Paper& paper) {
    const double left = paper.frame().left + 3, bottom = paper.title_block().top + 15;
    return {left, bottom, left + cell_width + 2 * half_overlap, bottom + cell_height + 2 * half_overlap};
}

void words(Block& block, Point2 at, const std::string& says, double turn = 0) {
    block.text({at, says, note_height, Typeface::lettering, Ink::black, turn});
}

/// A scale bar from `at`, to the right or up, with a tick at each end and every whole step.
void bar(Block& block, Point2 at, bool up, double step, int steps, const std::string& says) {
    const auto place = [&](double along, double aside) {
        return up ? Point2{at.x - aside, at.y + along} : Point2{at.x + along, at.y + aside};
    };
    block.line(place(0, 0), place(step * steps, 0), Pen::thin, Role::mark);
    for (int i = 0; i <= steps; ++i) {
        const double tick = i == 0 || i == steps ? 2 : 1;
        block.line(place(step * i, 0), place(step * i, tick), Pen::thin, Role::mark);
    }
    words(block, place(step * steps + 2, 0), says, up ? 90 : 0);
}

void bars(Block& block, const Rect& window) {
    bar(block, {window.left, window.bottom - 6}, false, 10, 10, "100 mm");
    bar(block, {window.left, window.bottom - 12}, false, inch, 4, "4 in");
    bar(block, {window.right + 6, window.bottom}, true, 10, 10, "100 mm");
    bar(block, {window.right + 12, window.bottom}, true, inch, 4, "4 in");
}

/// The net small, with the outline, the tile of this page shaded. Its upper right corner at `corner`.
void key_map(Block& block, const TileNet& net, int row, int column, Point2 corner) {
    const double scale = std::min(36 / (net.columns * cell_width), 20 / (net.rows * cell_height));
    const Point2 low{corner.x - net.columns * cell_width * scale, corner.y - net.rows * cell_height * scale};
    const auto on_map = [&](Point2 p) { return Point2{low.x + p.x * scale, low.y + p.y * scale}; };
    const Point2 cell{(column - 1) * cell_width, (net.rows - row) * cell_height};
    const Point2 from = on_map(cell), to = on_map({cell.x + cell_width, cell.y + cell_height});
    block.fill(Rect{from.x, from.y, to.x, to.y}, Ink::pale);
    for (int i = 0; i <= net.columns; ++i)
        block.line(on_map({i * cell_width, 0}), on_map({i * cell_width, net.rows * cell_height}), Pen::thin,
                   Role::mark);
    for (int j = 0; j <= net.rows; ++j)
        block.line(on_map({0, j * cell_height}), on_map({net.columns * cell_width, j * cell_height}),
                   Pen::thin, Role::mark);
    const Rect& area = net.field->area;
    for (const auto& ring : net.shaped->rings) {
        std::vector<Point2> line;
        // Points nearer than a printed line is wide add nothing; what lies beyond the field is left out.
        for (std::size_t i = 0; i <= ring.size(); ++i) {
            const Point2 p = ring[i % ring.size()];
            const Point2 q = on_map(net.on_net(
                Point2{std::clamp(p.x, area.left, area.right), std::clamp(p.y, area.bottom, area.top)}));
            if (line.empty() || i == ring.size() ||
                std::hypot(q.x - line.back().x, q.y - line.back().y) > 0.25)
                line.push_back(q);
        }
        block.stroke(std::move(line), Pen::thin, Role::picture);
    }
}

/// The free place for a box nearest to `wanted`, all of it in the wood, on a net of points inside `room`.
std::optional<Point2> place_in_wood(const Block& block, const TileNet& net, Point2 to_net, const Rect& room,
                                    double width, double height, Point2 wanted) {
    constexpr double step = 3;
    std::optional<Point2> best;
    double nearest = 0;
    const auto wood = [&](double x, double y) {
        const Point2 p{x + to_net.x - net.shift.x, y + to_net.y - net.shift.y};
        return in_wood(*net.shaped, net.upright ? Point2{p.y, -p.x} : p);
    };
    for (double x = room.left + width / 2; x <= room.right - width / 2; x += step)
        for (double y = room.bottom + height / 2; y <= room.top - height / 2; y += step) {
            const double away = std::hypot(x - wanted.x, y - wanted.y);
            if (best && away >= nearest) continue;
            const Rect box{x - width / 2, y - height / 2, x + width / 2, y + height / 2};
            if (!block.occupied().free_for_text(corners(box), 0.8)) continue;
            const Quad at = corners(grown(box, 0.8));
            if (!std::all_of(at.begin(), at.end(), [&](Point2 p) { return wood(p.x, p.y); })) continue;
            best = Point2{x, y};
            nearest = away;
        }
    return best;
}

/// Grain arrow, part number and face edge set on the wood of one tile, clear of what the neighbours show too.
void marks_on_wood(Block& block, const cutlist::Row& row, const Made& made, const TileNet& net,
                   const Rect& window, Point2 to_net, int tile_row, int tile_column) {
    const Shaped& shaped = *net.shaped;
    Rect room = grown(window, -2);
    if (tile_column > 1) room.left = window.left + 2 * half_overlap + 1;
    if (tile_column < net.columns) room.right = window.right - 2 * half_overlap - 1;
    if (tile_row > 1) room.top = window.top - 2 * half_overlap - 1;
    if (tile_row < net.rows) room.bottom = window.bottom + 2 * half_overlap + 1;
    const Rect on_net = net.on_net(net.field->area);
    const Rect wood{on_net.left - to_net.x, on_net.bottom - to_net.y, on_net.right - to_net.x,
                    on_net.top - to_net.y};
    room = {std::max(room.left, wood.left), std::max(room.bottom, wood.bottom),
            std::min(room.right, wood.right), std::min(room.top, wood.top)};
    if (room.width() <= 0 || room.height() <= 0) return;
    const auto label = [&](const std::string& says, Point2 wanted) {
        const double width = text_width(says, note_height, Typeface::lettering), height = note_height + 1;
        for (const bool turned : {net.upright, !net.upright})
            if (const auto at = place_in_wood(block, net, to_net, room, turned ? height : width,
                                              turned ? width : height, wanted)) {
                if (turned)
                    words(block, {at->x + note_height / 2, at->y - width / 2}, says, 90);
                else
                    words(block, {at->x - width / 2, at->y - note_height / 2}, says);
                return;
            }
    };
    if (shaped.seen != Shaped::Seen::on_end && !made.part->species->is_sheet()) {
        const double turn = (shaped.seen == Shaped::Seen::on_face ? made.part->grain.in_degrees() : 0) +
                            (net.upright ? 90 : 0);
        const double radians = turn * std::numbers::pi / 180;
        for (const double length : {30.0, 18.0, 10.0})
            if (const auto at =
                    place_in_wood(block, net, to_net, room, std::abs(length * std::cos(radians)) + 2,
                                  std::abs(length * std::sin(radians)) + 2, room.middle())) {
                grain_arrow(block, *at, length, turn);
                break;
            }
    }
    label(fmt::format("{}  {}", row.reference, row.name), room.middle());
    if (shaped.turned) return;
    // The side from which all is gauged: the face edge seen on the face, the face side seen otherwise.
    const bool on_face = shaped.seen == Shaped::Seen::on_face;
    const bool high = on_face ? made.part->face_edge_high : true;
    const std::string says = on_face ? "face edge" : "face side";
    if (!high && shaped.half_width) return;
    label(says, net.upright ? Point2{high ? wood.left : wood.right, room.middle().y}
                            : Point2{room.middle().x, high ? wood.top : wood.bottom});
}

std::string seen_words(const Shaped& shaped) {
    if (shaped.turned)
        return shaped.half_width ? "half of the turned profile, above the centre line" : "turned";
    switch (shaped.seen) {
    case Shaped::Seen::on_edge:
        return "seen on the low edge, face side up";
    case Shaped::Seen::on_end:
        return "seen on the far end";
    case Shaped::Seen::on_face:
        break;
    }
    return "seen on the face side";
}

/// How many, which of them the other way round, and how much of the part is shown.
std::string use_of(const Job& job, const cutlist::Row& row, const Shaped& shaped, const TemplateField& field,
                   bool upright) {
    std::string use = fmt::format("{} off; {}", row.count, seen_words(shaped));
    if (!row.mirrored.empty() && !shaped.half_width)
        use += fmt::format("; turn it over for {} of them, the other hand", row.mirrored.size());
    if (field.broken_low || field.broken_high)
        use += fmt::format("; straight beyond the break: shown is {} to {} of {} from the {}",
                           job.figure(field.area.left - shaped.box.left),
                           job.figure(field.area.right - shaped.box.left), job.figure(shaped.box.width()),
                           upright ? "lower end" : "left end");
    const bool half_width = shaped.half_width && !shaped.turned;
    if (shaped.half_length && half_width)
        use += "; a quarter of it: turn it over on each centre line";
    else if (shaped.half_length || half_width)
        use += "; half of it: turn it over on the centre line for the other half";
    return use;
}

Leaf tile_leaf(const Job& job, const cutlist::Row& row, const Made& made, const TileNet& net,
               const Block& whole, int tile_row, int tile_column) {
    Leaf leaf;
    leaf.paper = template_paper(job);
    leaf.full_size = true;
    leaf.scale = "1:1";
    leaf.document_type = "full-size template";
    leaf.title = fmt::format("Template of part {}, tile {}.{}", row.reference, tile_row, tile_column);
    Block& block = leaf.block;
    const Rect frame = leaf.paper->frame(), window = window_on(*leaf.paper);
    const Rect seen = net.window(tile_row, tile_column);
    const Point2 to_net{seen.left - window.left, seen.bottom - window.bottom};
    block.add(cut_to_window(whole, seen), {-to_net.x, -to_net.y});
    block.frame(window, Pen::thin, Role::mark, Ink::grey);
    marks_on_wood(block, row, made, net, window, to_net, tile_row, tile_column);
    bars(block, window);

    const double left = frame.left + 3, right = frame.right - 3;
    constexpr double map_width = 40;
    key_map(block, net, tile_row, tile_column, {right, frame.top - 2.5});
    const double width = right - left - map_width - 3;
    double y = frame.top - 2 - heading_height;
    Text name = fitted(fmt::format("{}  {}", row.reference, row.name), width, {heading_height, note_height},
                       Typeface::sans_bold);
    name.at = {left, y};
    block.text(std::move(name));
    y -= 1.6 + heading_height;
    block.text({{left, y},
                fmt::format("tile {}.{} of {}.{}    print at 100 %, check the bars", tile_row, tile_column,
                            net.rows, net.columns),
                heading_height,
                Typeface::lettering,
                Ink::black,
                0});
    y -= 2;
    // What does not fit stands on the part drawing as well.
    std::vector<std::string> lines =
        wrapped(use_of(job, row, *net.shaped, *net.field, net.upright), width, note_height, Typeface::sans);
    const auto room = static_cast<std::size_t>((y - window.top - 1) / note_step);
    if (lines.size() > room) lines.resize(room);
    set_lines(block, lines, left, y);
    return leaf;
}

/// Offsets of an outline at stations along its length, from the lower side of its box.
Table offsets_of(const Job& job, const Shaped& shaped) {
    Table table;
    const auto figures = Typeface::lettering;
    table.columns = {{"from left end", 26, true, figures}};
    if (shaped.turned)
        table.columns.push_back({"diameter", 24, true, figures});
    else
        for (const char* head : {"low line", "high line"}) table.columns.push_back({head, 22, true, figures});
    const double step = job.in_inches() ? 2 * inch : 50;
    std::vector<double> stations;
    for (const TemplateField& field : shaped.fields) {
        stations.push_back(field.area.left);
        const auto first = static_cast<long>(std::floor((field.area.left - shaped.box.left) / step)) + 1;
        for (long i = first; shaped.box.left + static_cast<double>(i) * step < field.area.right - 1e-6; ++i)
            stations.push_back(shaped.box.left + static_cast<double>(i) * step);
        stations.push_back(field.area.right);
    }
    for (const double x : stations) {
        const auto reach = reach_at(shaped, std::clamp(x, shaped.box.left, shaped.box.right));
        if (!reach) continue;
        TableRow line;
        line.cells = {job.figure(x - shaped.box.left)};
        if (shaped.turned)
            line.cells.push_back(job.figure(reach->second - reach->first));
        else
            line.cells.insert(line.cells.end(), {job.figure(reach->first - shaped.box.bottom),
                                                 job.figure(reach->second - shaped.box.bottom)});
        table.rows.push_back(std::move(line));
    }
    return table;
}

/// Tables of offsets side by side on sheets of the set's own paper.
class OffsetSheets {
  public:
    explicit OffsetSheets(const Job& job) : job_(job) {}

    void add(const cutlist::Row& row, const Shaped& shaped) {
        const Table table = offsets_of(job_, shaped);
        for (std::size_t at = 0; at < table.rows.size();) {
            if (leaves_.empty()) open();
            const double heading = 16;
            double room = 0;
            for (const Rect& r : space_.rects())
                if (r.width() >= table.width()) room = std::max(room, r.height());
            std::size_t next = at;
            Block block;
            if (room > heading + 4 * note_step) {
                block = table_part(table, at, room - heading, next);
                head(block, row, shaped, at > 0, table.width());
                if (const auto found = space_.find(block.box().width(), block.box().height())) {
                    leaves_.back().block.add(block,
                                             {found->left - block.box().left, found->top - block.box().top});
                    space_.take({found->left - 4, found->top - block.box().height() - 6,
                                 found->left + block.box().width() + 8, found->top});
                    at = next;
                    continue;
                }
            }
            if (fresh_) return; // not even an empty sheet holds it
            open();
            fresh_ = true;
        }
        fresh_ = false;
    }
    std::vector<Leaf> take() { return std::move(leaves_); }

  private:
    void open() {
        Leaf leaf;
        leaf.title = "Offsets of outlines";
        leaf.document_type = "offsets";
        leaf.scale = "";
        leaves_.push_back(std::move(leaf));
        space_ = FreeSpace(job_.paper.usable());
        space_.take(grown(job_.paper.title_block(), 4));
    }
    void head(Block& block, const cutlist::Row& row, const Shaped& shaped, bool goes_on, double width) {
        std::string says = fmt::format("{}  {}", row.reference, row.name) + (goes_on ? ", continued" : "");
        Text name = fitted(says, width, {note_height}, Typeface::sans_bold);
        name.at = {0, 10};
        block.text(std::move(name));
        says = std::string("offsets ") + (shaped.turned ? "of the profile" : "from the lower edge") +
               (shaped.half_length ? ", half, the other half alike" : ", full length");
        set_lines(block, wrapped(says, width, note_height, Typeface::sans), 0, 9);
    }

    const Job& job_;
    std::vector<Leaf> leaves_;
    FreeSpace space_{Rect{}};
    bool fresh_ = false;
};

} // namespace

std::vector<Leaf> template_sheets(const Job& job) {
    std::vector<Leaf> leaves;
    OffsetSheets offsets(job);
    for (const cutlist::Row& row : job.cut_list.rows) {
        const Made& made = job.made(row.parts.front());
        for (const Shaped& shaped : shaped_outlines(made)) {
            std::vector<TileNet> nets;
            int tiles = 0;
            for (const TemplateField& field : shaped.fields) {
                nets.push_back(net_of(shaped, field));
                tiles += nets.back().tiles();
            }
            if (tiles > most_tiles || static_cast<int>(leaves.size()) + tiles > most_pages) {
                offsets.add(row, shaped);
                continue;
            }
            for (const TileNet& net : nets) {
                const Block whole = whole_template(net, made);
                for (int r = 1; r <= net.rows; ++r)
                    for (int c = 1; c <= net.columns; ++c)
                        leaves.push_back(tile_leaf(job, row, made, net, whole, r, c));
            }
        }
    }
    for (Leaf& leaf : offsets.take()) leaves.push_back(std::move(leaf));
    return leaves;
}

} // namespace rayfleck::drawing
