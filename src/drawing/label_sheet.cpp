// Labels to stick on the blanks, 60 by 30 mm in a grid with thin lines to cut along: the part's number and
// name, the piece, the rough size, the board it comes from, how a stave is turned, which way the grain runs.
// A blank that is resawn has one for each leaf.

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/lumber_board.hpp"
#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double title_room = 10;

Block label(const Job& job, const lumber::Board& board, const lumber::Placement& p, const lumber::Leaf& leaf,
            double width, double height) {
    Block block;
    block.frame({0, 0, width, height}, Pen::thin, Role::table);
    constexpr double inset = 2.5;
    const double room = width - 2 * inset;
    double y = height - inset - heading_height;
    const auto line = [&](const std::string& words, double cap, Typeface face, double step) {
        Text text = fitted(words, room, {cap}, face);
        text.at = {inset, y};
        block.text(text);
        y -= step;
    };
    lumber::Placement one = p;
    one.reference = leaf.reference;
    one.instance = leaf.instance;
    line(lumber::mark_of(one, job.several()) + "  " + leaf.name, heading_height, Typeface::sans_bold, 5.2);
    line(title_of(job.piece_of(p)), note_height, Typeface::sans, 4.4);
    line(fmt::format("rough T {} W {} L {}", job.figure(leaf.thickness),
                     job.figure(p.turned ? p.along : p.across), job.figure(p.turned ? p.across : p.along)),
         note_height, Typeface::sans, 4.4);
    line("from " + board.name + (leaf.turn.empty() ? ", " + board.wood : ", " + leaf.turn), note_height,
         Typeface::sans, 4.4);
    if (!board.sheet) grain_arrow(block, {width / 2, inset + 1.5}, 22, 0);
    return block;
}

} // namespace

std::vector<Leaf> label_sheets(const Job& job) {
    if (job.lumber == nullptr || job.lumber->boards.empty()) return {};
    constexpr double width = 60, height = 30;
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    std::vector<Leaf> leaves;
    std::vector<Point2> places;
    const auto open = [&] {
        leaves.push_back(
            headed_leaf(job, leaves.empty() ? "Labels for the blanks" : "Labels, continued", "labels"));
        places.clear();
        for (double top = usable.top - title_room; top - height >= usable.bottom; top -= height)
            for (double left = usable.left; left + width <= usable.right; left += width)
                if (!meet(Rect{left, top - height, left + width, top}, grown(title, 2)))
                    places.push_back({left, top - height});
    };
    std::size_t next = 0;
    for (const lumber::Board& board : job.lumber->boards)
        for (const lumber::Placement& p : board.placements)
            for (const lumber::Leaf& leaf : p.leaves) {
                if (leaves.empty() || next == places.size()) open(), next = 0;
                if (places.empty()) return {};
                leaves.back().block.add(label(job, board, p, leaf, width, height), places[next++]);
            }
    return leaves;
}

} // namespace rayfleck::drawing
