// A saw line is as wide as its kerf to scale, and never finer than a narrow line; what the straightening
// takes is grey. Blanks have no outline of their own, since saw lines and the board's edges bound them. A
// cut's number stands at the end of its line, outside the board where the line reaches its edge, inside where
// there is room for it, and else only in the list. What is worth keeping is named, other waste is crossed out
// (common practice, no published source).

#include "drawing/lumber_board.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

using lumber::Board;
using lumber::Cut;

constexpr double number_room = 4.5; ///< above and below the board, for the numbers of its cuts
constexpr double heading_room = 11;

std::string sizes_of(const Job& job, measure::Length t, measure::Length w, measure::Length l) {
    return fmt::format("T {} W {} L {}", job.figure(t), job.figure(w), job.figure(l));
}

/// What is done to a board, a line for each setting: `3, 4  stop 645 mm: 1 foot A; 1 foot B`.
std::vector<std::string> steps_on(const Job& job, const Board& board) {
    std::vector<std::string> lines;
    if (job.lumber == nullptr) return lines;
    for (const lumber::Step& step : job.lumber->steps)
        for (const lumber::Step::On& on : step.on) {
            if (&job.lumber->boards[on.board] != &board) continue;
            std::vector<std::string> gets;
            for (const std::string& one : on.gets)
                if (!one.empty()) gets.push_back(one);
            lines.push_back(fmt::format("{}{}{}{}", fmt::join(on.cuts, ", "), on.cuts.empty() ? "" : "  ",
                                        step.brief,
                                        gets.empty() ? "" : fmt::format(": {}", fmt::join(gets, "; "))));
        }
    return lines;
}

class Picture {
  public:
    Picture(const Job& job, const Board& board, double width) : job_(job), board_(board) {
        const std::vector<Scale>& list = scales(job.manner.unit);
        scale_ = &list.back();
        constexpr double largest = 0.2, tallest = 90;
        for (const Scale& s : list)
            if (s.factor <= largest + 1e-9 && board.length.value() * s.factor <= width &&
                board.width.value() * s.factor <= tallest) {
                scale_ = &s;
                break;
            }
    }

    const Scale& scale() const { return *scale_; }

    /// The board's lower left corner lies at (0, 0).
    Block drawn() {
        block_.frame({0, 0, x(board_.length), y(board_.width)}, Pen::visible, Role::edge);
        for (const Cut& cut : board_.cuts) saw_line(cut);
        for (const lumber::Flaw& flaw : board_.flaws) outline(flaw);
        for (const lumber::Placement& p : board_.placements) name(p);
        for (const lumber::Offcut& offcut : board_.offcuts) left_over(offcut);
        for (const lumber::Flaw& flaw : board_.flaws) name(flaw);
        for (const Cut& cut : board_.cuts)
            if (const auto line = line_of(cut)) number(cut, line->first, line->second);
        return std::move(block_);
    }

  private:
    double x(measure::Length length) const { return length.value() * scale_->factor; }
    double y(measure::Length length) const { return x(length); }

    void saw_line(const Cut& cut) {
        const Rect edge = rect_of(cut.piece_x, cut.piece_y, cut.piece_length, cut.kerf);
        if (cut.work == Cut::Work::straighten || cut.work == Cut::Work::shave) {
            block_.fill(cut.direction == Cut::Direction::rip
                            ? edge
                            : rect_of(cut.piece_x, cut.piece_y, cut.kerf, cut.piece_width),
                        Ink::grey);
            return;
        }
        const auto line = line_of(cut);
        if (!line) return;
        block_.line(line->first, line->second, Pen::thin, Role::mark);
        const double half = cut.kerf.value() / 2 * scale_->factor;
        if (2 * half <= width_of(Pen::thin)) return;
        const auto [a, b] = *line;
        block_.fill(cut.direction == Cut::Direction::crosscut ? Rect{a.x - half, a.y, a.x + half, b.y}
                                                              : Rect{a.x, a.y - half, b.x, a.y + half},
                    Ink::black);
    }

    /// A round flaw as a circle, another as a rectangle as far as it lies on the board; grey, since nothing
    /// is cut along it. Of sapwood and checks only the border towards the clear wood is drawn.
    void outline(const lumber::Flaw& flaw) {
        const double right = x(board_.length), top = y(board_.width);
        const Rect all{x(flaw.x), y(flaw.y), x(flaw.x + flaw.length), y(flaw.y + flaw.width)};
        if (flaw.round && all.left >= 0 && all.bottom >= 0 && all.right <= right && all.top <= top) {
            block_.circle(all.middle(), all.width() / 2, Pen::thin, Role::mark, Ink::grey);
            return;
        }
        const Rect rect{std::max(0.0, all.left), std::max(0.0, all.bottom), std::min(right, all.right),
                        std::min(top, all.top)};
        const auto border = [&](Point2 from, Point2 to) {
            block_.line(from, to, Pen::thin, Role::mark, Ink::grey);
        };
        if (rect.left > 0) border({rect.left, rect.bottom}, {rect.left, rect.top});
        if (rect.right < right) border({rect.right, rect.bottom}, {rect.right, rect.top});
        if (rect.bottom > 0) border({rect.left, rect.bottom}, {rect.right, rect.bottom});
        if (rect.top < top) border({rect.left, rect.top}, {rect.right, rect.top});
    }

    /// Nothing for a cut that the saw makes in the air at the very edge.
    std::optional<std::pair<Point2, Point2>> line_of(const Cut& cut) const {
        const double half = cut.kerf.value() / 2 * scale_->factor;
        if (cut.work == Cut::Work::straighten || cut.work == Cut::Work::shave) return std::nullopt;
        const double low_x = x(cut.piece_x), low_y = y(cut.piece_y), high_x = low_x + x(cut.piece_length),
                     high_y = low_y + y(cut.piece_width);
        const double at = x(cut.at) + half;
        if (cut.direction == Cut::Direction::crosscut) {
            if (at < low_x + 0.02 || at > high_x - 0.02) return std::nullopt;
            return std::pair{Point2{at, low_y}, Point2{at, high_y}};
        }
        if (at < low_y + 0.02 || at > high_y - 0.02) return std::nullopt;
        return std::pair{Point2{low_x, at}, Point2{high_x, at}};
    }

    bool set(const std::string& words, Point2 middle, double height, Typeface face, double turn = 0) {
        const double wide = text_width(words, height, face);
        const Point2 at = turn == 0 ? Point2{middle.x - wide / 2, middle.y - height / 2}
                                    : Point2{middle.x + height / 2, middle.y - wide / 2};
        const Text text{at, words, height, face, Ink::black, turn};
        if (!block_.occupied().free_for_text(text_box(text), 0.35)) return false;
        block_.text(text);
        return true;
    }

    /// Words in the middle of a rectangle, along it or up it, if they fit.
    bool within(const Rect& rect, const std::string& words, double height, Typeface face, double lift = 0) {
        const double wide = text_width(words, height, face) + 1.5, high = height + 1.2;
        const Point2 middle = rect.middle();
        if (rect.width() >= wide && rect.height() >= high &&
            set(words, {middle.x, middle.y + lift}, height, face))
            return true;
        return rect.height() >= wide && rect.width() >= high &&
               set(words, {middle.x - lift, middle.y}, height, face, 90);
    }

    Rect rect_of(measure::Length at_x, measure::Length at_y, measure::Length along,
                 measure::Length across) const {
        return {x(at_x), y(at_y), x(at_x) + x(along), y(at_y) + y(across)};
    }

    void name(const lumber::Placement& p) {
        const Rect rect = rect_of(p.x, p.y, p.along, p.across);
        const std::string mark = lumber::mark_of(p, job_.several()), full = mark + "  " + p.name;
        const std::string sizes = fmt::format("W {} L {}", job_.figure(p.across), job_.figure(p.along));
        constexpr double lift = 2.2;
        if (rect.height() > 10 && rect.width() > rect.height() &&
            text_width(sizes, note_height, Typeface::sans) + 1.5 < rect.width() &&
            within(rect, full, note_height, Typeface::sans_bold, lift) &&
            within(rect, sizes, note_height, Typeface::sans, -lift))
            return;
        if (within(rect, full, note_height, Typeface::sans_bold)) return;
        if (within(rect, mark, note_height, Typeface::sans_bold)) return;
        outside(rect, mark);
    }

    /// Where there is room for it.
    void name(const lumber::Flaw& flaw) {
        const Rect all = rect_of(flaw.x, flaw.y, flaw.length, flaw.width);
        const Rect rect{std::max(0.0, all.left), std::max(0.0, all.bottom),
                        std::min(x(board_.length), all.right), std::min(y(board_.width), all.top)};
        for (const double part : {0.5, 0.2, 0.8, 0.05, 0.95}) {
            // Along the flaw: its middle may be crossed by a saw line.
            const double room = rect.width() * 0.1, middle = rect.left + part * rect.width();
            const Rect here{std::max(rect.left, middle - std::max(room, 12.0)), rect.bottom,
                            std::min(rect.right, middle + std::max(room, 12.0)), rect.top};
            if (within(here, flaw.kind, note_height, Typeface::sans)) return;
        }
    }

    /// Of a blank too narrow on paper, above or below the board with a leader.
    void outside(const Rect& rect, const std::string& mark) {
        const Point2 middle = rect.middle();
        const double top = y(board_.width), off = number_room / 2, near = off - note_height / 2 - 0.4;
        for (const double aside : {0.0, 4.0, -4.0, 9.0, -9.0, 15.0, -15.0, 22.0, -22.0})
            for (const bool above : {middle.y > top / 2, middle.y <= top / 2}) {
                const Point2 end{middle.x + aside, above ? top + near : -near};
                if (end.x < 0 || end.x > x(board_.length)) continue;
                if (!block_.occupied().free_for_line(end, middle, 0.35)) continue;
                if (!set(mark, {end.x, above ? top + off : -off}, note_height, Typeface::sans_bold)) continue;
                block_.line(end, middle, Pen::thin, Role::leader);
                block_.dot(middle, 0.8);
                return;
            }
    }

    void left_over(const lumber::Offcut& offcut) {
        const Rect rect = rect_of(offcut.x, offcut.y, offcut.length, offcut.width);
        if (offcut.worth_keeping) {
            const std::string sizes =
                fmt::format("W {} L {}", job_.figure(offcut.width), job_.figure(offcut.length));
            if (within(rect, "keep  " + sizes, note_height, Typeface::sans)) return;
            if (within(rect, "keep", note_height, Typeface::sans)) return;
        }
        constexpr double least = 2;
        if (rect.width() < least || rect.height() < least) return;
        block_.line({rect.left + 0.7, rect.bottom + 0.7}, {rect.right - 0.7, rect.top - 0.7}, Pen::thin,
                    Role::hatch, Ink::grey);
    }

    void number(const Cut& cut, Point2 a, Point2 b) {
        const std::string words = std::to_string(cut.number);
        const double off = number_room / 2;
        const double wide = text_width(words, note_height, Typeface::lettering) / 2 + 0.8;
        const double top = y(board_.width);
        std::vector<Point2> places;
        if (cut.direction == Cut::Direction::crosscut) {
            if (b.y > top - 0.05) places.push_back({b.x, top + off});
            if (a.y < 0.05) places.push_back({a.x, -off});
            for (const double t : {0.85, 0.15, 0.6, 0.4})
                for (const double side : {wide, -wide}) places.push_back({a.x + side, a.y + t * (b.y - a.y)});
        } else {
            if (a.x < 0.05) places.push_back({-wide, a.y});
            if (b.x > x(board_.length) - 0.05) places.push_back({x(board_.length) + wide, b.y});
            for (const double t : {0.03, 0.97, 0.2, 0.8})
                for (const double side : {off, -off})
                    places.push_back(
                        {std::clamp(a.x + t * (b.x - a.x), a.x + wide, std::max(a.x + wide, b.x - wide)),
                         a.y + side});
        }
        for (const Point2 place : places)
            if (set(words, place, note_height, Typeface::lettering)) return;
    }

    const Job& job_;
    const Board& board_;
    const Scale* scale_;
    Block block_;
};

} // namespace

Block lumber_board(const Job& job, const Board& board, double width) {
    Block block;
    Picture picture(job, board, width - 2 * number_room);
    const std::string wood =
        board.wood + (board.stock.empty() ? "" : ", " + board.stock) +
        (board.sawn.empty()
             ? ""
             : ", " + board.sawn + (board.sawn.find("sawn") == std::string::npos ? " sawn" : ""));
    Text head =
        fitted(board.name + "  " + wood, width * 0.62, {heading_height, note_height}, Typeface::sans_bold);
    head.at = {0, -heading_height};
    block.text(head);
    block.text({{0, -heading_height - 5},
                sizes_of(job, board.thickness, board.width, board.length) +
                    (board.on_hand ? ", on hand, " : ", to be bought, ") + picture.scale().ratio,
                note_height,
                Typeface::sans,
                Ink::black,
                0});
    const Block drawn = picture.drawn();
    double low = -heading_room - number_room;
    block.add(drawn, {number_room, low - board.width.value() * picture.scale().factor});
    low -= board.width.value() * picture.scale().factor + number_room + 3;

    std::vector<std::string> lines;
    const double gap = 6;
    const int columns = std::max(1, static_cast<int>((width + gap) / (115 + gap)));
    const double column = (width - (columns - 1) * gap) / columns;
    for (const std::string& step : steps_on(job, board))
        for (std::string& line : wrapped(step, column, note_height, Typeface::sans))
            lines.push_back(std::move(line));
    const std::size_t rows =
        (lines.size() + static_cast<std::size_t>(columns) - 1) / static_cast<std::size_t>(columns);
    double lowest = low;
    for (std::size_t c = 0; c * rows < lines.size(); ++c) {
        const std::vector<std::string> some(
            lines.begin() + static_cast<std::ptrdiff_t>(c * rows),
            lines.begin() + static_cast<std::ptrdiff_t>(std::min(lines.size(), (c + 1) * rows)));
        lowest = std::min(lowest, set_lines(block, some, static_cast<double>(c) * (column + gap), low));
    }
    for (const std::string& remark : board.remarks)
        lowest = set_lines(block, wrapped(remark, width, note_height, Typeface::sans), 0, lowest - 1);
    return block;
}

} // namespace rayfleck::drawing
