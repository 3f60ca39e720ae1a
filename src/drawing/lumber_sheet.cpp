// The lumber plan: what to buy and what it costs, then every board in use with its cuts, then labels to stick
// on the blanks.
//
// Boards stand one below the other in the order of the plan, as many as a sheet holds. Labels are 60 by 30 mm
// in a grid with thin lines to cut along: the piece, the part's number, name and rough size, the board it
// comes from, which way its grain runs and which side is to be planed first.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/lumber_board.hpp"
#include "drawing/marks.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double title_room = 10;

Leaf fresh_leaf(const Job& job, const std::string& title, const std::string& type) {
    Leaf leaf;
    leaf.title = title;
    leaf.document_type = type;
    const Rect usable = job.paper.usable();
    leaf.block.text({{usable.left, usable.top - heading_height},
                     title,
                     heading_height,
                     Typeface::sans_bold,
                     Ink::black,
                     0});
    return leaf;
}

FreeSpace space_of(const Job& job) {
    const Rect usable = job.paper.usable();
    FreeSpace space({usable.left, usable.bottom, usable.right, usable.top - title_room});
    space.take(grown(job.paper.title_block(), 4));
    return space;
}

std::string share(double part) { return fmt::format("{:.0f} %", 100 * part); }

Table purchases_table(const Job& job, double width) {
    const lumber::Plan& plan = *job.lumber;
    Table table;
    const auto figures = Typeface::lettering;
    table.columns = {{"off", 10, true, figures},
                     {"wood and stock", width - 134, false, Typeface::sans},
                     {"T", 14, true, figures},
                     {"W", 16, true, figures},
                     {"L", 18, true, figures},
                     {job.in_inches() ? "board feet" : "m³", 22, true, figures},
                     {"price", 30, true, figures},
                     {plan.currency.empty() ? "cost" : "cost, " + plan.currency, 24, true, figures}};
    for (const lumber::Purchase& line : plan.purchases) {
        TableRow row;
        row.cells = {std::to_string(line.count),
                     line.wood + (line.stock.empty() ? "" : ", " + line.stock),
                     job.figure(line.thickness),
                     job.figure(line.width) + (line.random_width ? " *" : ""),
                     job.figure(line.length),
                     job.in_inches() ? fmt::format("{:.2f}", line.board_feet)
                                     : fmt::format("{:.4f}", line.volume_m3),
                     line.priced ? fmt::format("{:.2f} / {}", line.each, line.per) : "–",
                     line.priced ? fmt::format("{:.2f}", line.cost) : "–"};
        table.rows.push_back(std::move(row));
    }
    TableRow total;
    total.cells = {"", "in all", "", "", "", "", "", fmt::format("{:.2f}", plan.cost)};
    total.bold = true;
    table.rows.push_back(std::move(total));
    return table;
}

Table missing_table(const lumber::Plan& plan, double width) {
    Table table;
    table.columns = {{"ref", 10, true, Typeface::sans_bold},
                     {"cannot be sawn from anything", 50, false, Typeface::sans},
                     {"off", 10, true, Typeface::lettering},
                     {"why, and what helps", width - 70, false, Typeface::sans}};
    for (const lumber::Missing& missing : plan.missing)
        table.rows.push_back({{std::to_string(missing.reference), missing.name, std::to_string(missing.count),
                               missing.reason + (missing.remedy.empty() ? "" : ": " + missing.remedy)},
                              "",
                              false,
                              -1});
    return table;
}

/// What the plan is worth, in sentences.
std::vector<std::string> summary(const Job& job) {
    const lumber::Plan& plan = *job.lumber;
    std::vector<std::string> told;
    int on_hand = 0;
    for (const lumber::Board& board : plan.boards) on_hand += board.on_hand ? 1 : 0;
    const int bought = static_cast<int>(plan.boards.size()) - on_hand;
    told.push_back(
        fmt::format("{} from the shop's own stock, {} to be bought. Of their wood {} goes into rough "
                    "blanks and {} into finished ones; offcuts worth keeping are another {}.",
                    on_hand == 1 ? "1 board" : fmt::format("{} boards", on_hand),
                    bought == 1 ? "1" : fmt::format("{}", bought), share(plan.rough_yield()),
                    share(plan.finished_yield()), share(plan.used_m3 > 0 ? plan.kept_m3 / plan.used_m3 : 0)));
    if (plan.proven_optimal)
        told.push_back(
            "No plan of the same blanks, stock and order of saws needs less: proved in whole numbers.");
    else
        told.push_back(
            fmt::format("At most {:.1f} % above the least that any plan of the same blanks, stock and "
                        "order of saws could need; a larger --effort may come nearer.",
                        100 * plan.gap));
    if (!plan.all_priced)
        told.push_back("Not all of it has a price in the shop file; the sum leaves that out.");
    for (const lumber::Purchase& line : plan.purchases)
        if (line.random_width) {
            told.push_back("* boards of random width: the width is a typical one; wider ones do as well.");
            break;
        }
    told.push_back(
        fmt::format("Kerf {} for rips, {} for crosscuts; {} off each end. Lines are for the side that "
                    "is kept: the blade runs beyond them.",
                    job.figure(plan.kerf_rip), job.figure(plan.kerf_crosscut), job.figure(plan.end_trim)));
    for (const std::string& remark : plan.remarks) told.push_back(remark);
    told.push_back(
        "Look at each board before sawing: knots and checks that the shop file does not tell of, twist and "
        "stress in the wood are not in this plan. Use guards, riving knife and push sticks as the machine's "
        "manual and local rules say; "
        "never rip a board that rocks on the table.");
    return told;
}

class Leaves {
  public:
    Leaves(const Job& job, std::string title, std::string type)
        : job_(job), title_(std::move(title)), type_(std::move(type)) {
        open();
    }

    /// Sets a block at the highest free place, on a new sheet where the last is full.
    void stand(const Block& block) {
        const Rect& box = block.box();
        auto found = space_->find(box.width(), box.height());
        if (!found && !fresh_) {
            open();
            found = space_->find(box.width(), box.height());
        }
        const Rect usable = job_.paper.usable();
        const Point2 at =
            found ? Point2{found->left, found->top} : Point2{usable.left, usable.top - title_room};
        leaves_.back().block.add(block, {at.x - box.left, at.y - box.top});
        constexpr double air = 7;
        space_->take({at.x - air, at.y - box.height() - air, at.x + box.width() + air, at.y + air});
        fresh_ = false;
    }

    void stand(const Table& table) {
        for (std::size_t row = 0; row < table.rows.size();) {
            double room = 0;
            for (const Rect& r : space_->rects())
                if (r.width() >= table.width()) room = std::max(room, r.height());
            std::size_t next = row;
            const Block part = table_part(table, row, std::max(room, 20.0), next);
            if (part.box().height() > room + 1e-6 && !fresh_) {
                open();
                continue;
            }
            stand(part);
            row = next;
        }
    }

    std::vector<Leaf> take() { return std::move(leaves_); }

  private:
    void open() {
        leaves_.push_back(fresh_leaf(job_, leaves_.empty() ? title_ : title_ + ", continued", type_));
        space_ = space_of(job_);
        fresh_ = true;
    }

    const Job& job_;
    std::string title_, type_;
    std::vector<Leaf> leaves_;
    std::optional<FreeSpace> space_;
    bool fresh_ = true;
};

Block label(const Job& job, const lumber::Board& board, const lumber::Placement& p, double width,
            double height) {
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
    line(blank_mark(p) + "  " + p.name, heading_height, Typeface::sans_bold, 5.2);
    line(job.model.piece->title, note_height, Typeface::sans, 4.4);
    line(fmt::format("rough T {} W {} L {}", job.figure(p.thickness),
                     job.figure(p.turned ? p.along : p.across), job.figure(p.turned ? p.across : p.along)),
         note_height, Typeface::sans, 4.4);
    line("from " + board.name + ", " + board.wood, note_height, Typeface::sans, 4.4);
    if (!board.sheet) grain_arrow(block, {width / 2, inset + 1.5}, 22, 0);
    return block;
}

} // namespace

std::vector<Leaf> lumber_sheets(const Job& job) {
    if (job.lumber == nullptr || (job.lumber->boards.empty() && job.lumber->missing.empty())) return {};
    const lumber::Plan& plan = *job.lumber;
    const Rect usable = job.paper.usable();
    Leaves leaves(job, "Lumber plan", "lumber plan");
    constexpr double widest = 250;
    const double width = std::min(widest, usable.width());
    if (!plan.purchases.empty()) leaves.stand(purchases_table(job, width));
    if (!plan.missing.empty()) leaves.stand(missing_table(plan, width));
    Block words;
    double y = 0;
    for (const std::string& sentence : summary(job))
        y = set_lines(words, wrapped(sentence, width, note_height, Typeface::sans), 0, y) - 1;
    leaves.stand(words);
    for (const lumber::Board& board : plan.boards) leaves.stand(lumber_board(job, board, usable.width()));
    return leaves.take();
}

std::vector<Leaf> label_sheets(const Job& job) {
    if (job.lumber == nullptr || job.lumber->boards.empty()) return {};
    constexpr double width = 60, height = 30;
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    std::vector<Leaf> leaves;
    std::vector<Point2> places;
    const auto open = [&] {
        leaves.push_back(
            fresh_leaf(job, leaves.empty() ? "Labels for the blanks" : "Labels, continued", "labels"));
        places.clear();
        for (double top = usable.top - title_room; top - height >= usable.bottom; top -= height)
            for (double left = usable.left; left + width <= usable.right; left += width)
                if (!meet(Rect{left, top - height, left + width, top}, grown(title, 2)))
                    places.push_back({left, top - height});
    };
    std::size_t next = 0;
    for (const lumber::Board& board : job.lumber->boards)
        for (const lumber::Placement& p : board.placements) {
            if (leaves.empty() || next == places.size()) open(), next = 0;
            if (places.empty()) return {};
            leaves.back().block.add(label(job, board, p, width, height), places[next++]);
        }
    return leaves;
}

} // namespace rayfleck::drawing
