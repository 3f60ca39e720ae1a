// The assembly steps: numbered cells in columns, each with its picture, what goes where, how it is held, the
// fittings, and what to look at. The piece's own notes stand first, the usual cautions last.

#include <algorithm>

#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "drawing/step_picture.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double between = 8, heading_room = 12, under_a_cell = 6;
/// Heights that pictures may have, all of one set alike: as high as takes no more sheets than the lowest.
constexpr double picture_heights[] = {50, 56, 62, 70, 78, 88};
/// Cells stay about as wide as that, mm.
constexpr double usual_width = 118;

/// The cell without its picture, for which it leaves room; `picture_top` receives where that begins.
Block step_block(const assembly::Step& step, double width, double picture_height, double& picture_top) {
    Block block;
    const std::string number = std::to_string(step.number);
    const double badge = text_width(number, heading_height, Typeface::sans_bold) + 4;
    block.frame({0, -heading_height - 3, badge, 0}, Pen::visible, Role::mark);
    block.text({{2, -heading_height - 1.5}, number, heading_height, Typeface::sans_bold, Ink::black, 0});
    double y = -1;
    for (const std::string& line : wrapped(step.title, width - badge - 3, note_height, Typeface::sans_bold)) {
        block.text(
            {{badge + 3, y - note_height - 0.5}, line, note_height, Typeface::sans_bold, Ink::black, 0});
        y -= note_step;
    }
    y = std::min(y, -heading_height - 3) - 2;
    picture_top = y;
    y -= picture_height + 2;
    std::vector<std::string> words = step.words;
    if (!step.hardware.empty()) {
        std::string all = "Hardware: ";
        for (const assembly::Fitting& fitting : step.hardware)
            all += (&fitting == &step.hardware.front() ? "" : "; ") + std::to_string(fitting.count) + " × " +
                   fitting.name;
        words.push_back(all + ".");
    }
    for (const std::string& sentence : words)
        y = set_lines(block, wrapped(sentence, width, note_height, Typeface::sans), 0, y) - 0.6;
    block.claim({0, y, width, 0});
    return block;
}

Block list_block(const std::string& heading, const std::vector<std::string>& words, double width) {
    Block block;
    block.text({{0, -heading_height}, heading, heading_height, Typeface::lettering, Ink::black, 0});
    double y = -heading_height - 3;
    for (const std::string& sentence : words) {
        block.dot({1, y - 1.3}, 1.0);
        y = set_lines(block, wrapped(sentence, width - 4, note_height, Typeface::sans), 4, y) - 1;
    }
    block.claim({0, y, width, 0});
    return block;
}

struct Cell {
    Block block;
    const assembly::Step* step = nullptr; ///< whose picture is still missing
    double picture_top = 0;
};

/// Where cells come to stand: down one column, then the next.
struct Flow {
    std::size_t sheets = 0;
    std::vector<std::size_t> sheet_of;
    std::vector<Point2> corner_of; ///< upper left
};

Flow flow_of(const std::vector<Cell>& cells, const Rect& usable, const Rect& title, int columns,
             double width) {
    Flow flow;
    int column = columns;
    const double top = usable.top - heading_room;
    double y = 0, bottom = 0;
    const auto next_column = [&] {
        if (++column >= columns) ++flow.sheets, column = 0;
        y = top;
        const double right = usable.left + column * (width + between) + width;
        bottom = right > title.left - 2 ? title.top + 4 : usable.bottom;
    };
    for (const Cell& cell : cells) {
        const double height = cell.block.box().height();
        if (flow.sheets == 0 || y - height < bottom) next_column();
        // A column that the title block cuts short may be too short for it; a whole one is as good as it
        // gets.
        for (int tries = 0; y - height < bottom && tries < columns; ++tries) next_column();
        flow.sheet_of.push_back(flow.sheets - 1);
        flow.corner_of.push_back({usable.left + column * (width + between), y});
        y -= height + under_a_cell;
    }
    return flow;
}

/// Only those that this piece has use for.
std::vector<std::string> cautions_for(const Job& job) {
    bool glue = false, screws = false;
    for (const assembly::Move& move : job.order.moves) {
        glue = glue || move.hold == assembly::Hold::glued;
        screws = screws || move.hold == assembly::Hold::fastened;
    }
    std::vector<std::string> words{
        "Put everything together dry before anything is glued or driven home, and mark what goes to what."};
    if (glue) {
        words.push_back(
            "Glue: keep to the open time and the warmth on its label, work where the air moves, keep it off "
            "skin and eyes. No more than fits on the bench at one go.");
        words.push_back("Clamps: blocks under the jaws, pressure only until the joint closes. A clamp set "
                        "askew pulls the "
                        "frame askew; one that slips hits what is below it.");
    }
    if (screws)
        words.push_back("Screws: bore for shank and thread, drive the last turns by hand. Wear eye "
                        "protection when wood is "
                        "bored or steel is struck.");
    return words;
}

} // namespace

std::vector<Leaf> assembly_steps_sheets(const Job& job) {
    if (job.order.steps.empty()) return {};
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    const int columns =
        std::max(1, static_cast<int>((usable.width() + between) / (usual_width + between) + 0.3));
    const double width = (usable.width() - between * (columns - 1)) / columns;
    std::vector<std::string> notes;
    for (const piece::Note& note : job.model.piece->notes) notes.push_back(note.text);

    std::vector<Cell> cells;
    const auto fill = [&](double picture_height) {
        cells.clear();
        if (!notes.empty()) cells.push_back({list_block("Before you begin", notes, width), nullptr, 0});
        for (const assembly::Step& step : job.order.steps) {
            Cell cell{{}, &step, 0};
            cell.block = step_block(step, width, picture_height, cell.picture_top);
            cells.push_back(std::move(cell));
        }
        cells.push_back({list_block("At the bench", cautions_for(job), width), nullptr, 0});
        return flow_of(cells, usable, title, columns, width);
    };
    double height = picture_heights[0];
    const std::size_t sheets = fill(height).sheets;
    for (const double taller : picture_heights)
        if (fill(taller).sheets <= sheets) height = taller;
    const Flow flow = fill(height);

    std::vector<Leaf> leaves(flow.sheets);
    for (std::size_t i = 0; i < leaves.size(); ++i) {
        Leaf& leaf = leaves[i];
        leaf.title = i == 0 ? "Assembly steps" : "Assembly steps, continued";
        leaf.document_type = "assembly steps";
        leaf.block.text({{usable.left, usable.top - 5}, leaf.title, 5, Typeface::lettering, Ink::black, 0});
    }
    for (std::size_t i = 0; i < cells.size(); ++i) {
        Cell& cell = cells[i];
        if (cell.step != nullptr)
            cell.block.add(step_picture(job, *cell.step, width, height), {0, cell.picture_top - height});
        leaves[flow.sheet_of[i]].block.add(cell.block, flow.corner_of[i]);
    }
    return leaves;
}

} // namespace rayfleck::drawing
