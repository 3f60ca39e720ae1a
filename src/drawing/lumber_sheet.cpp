// The lumber plan: what to buy and what it costs, then every board in use with its cuts, then the work at the
// machines.
//
// Boards stand one below the other in the order of the plan, as many as a sheet holds. The work is a table of
// its own, machine by machine, so that it can lie beside the saw.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/lettering.hpp"
#include "drawing/lumber_board.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double title_room = 10;

} // namespace

Leaf headed_leaf(const Job& job, const std::string& title, const std::string& type) {
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

namespace {

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
                     {"wood, stock, sawing", width - 148, false, Typeface::sans},
                     {"T", 14, true, figures},
                     {"W", 16, true, figures},
                     {"L", 18, true, figures},
                     {job.in_inches() ? "board feet" : "m³", 22, true, figures},
                     {"price", 44, true, figures},
                     {plan.currency.empty() ? "cost" : "cost, " + plan.currency, 24, true, figures}};
    for (const lumber::Purchase& line : plan.purchases) {
        TableRow row;
        row.cells = {std::to_string(line.count),
                     line.wood + (line.stock.empty() ? "" : ", " + line.stock) +
                         (line.sawn.empty() ? "" : ", " + line.sawn + " sawn"),
                     job.figure(line.thickness),
                     job.figure(line.width) + (line.random_width ? " *" : ""),
                     job.figure(line.length),
                     job.in_inches() ? fmt::format("{:.2f}", line.board_feet)
                                     : fmt::format("{:.4f}", line.volume_m3),
                     line.priced ? fmt::format("{:.2f} / {}", line.per_unit, line.per) : "–",
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
    else if (std::isfinite(plan.gap))
        told.push_back(
            fmt::format("At most {:.1f} % above the least that any plan of the same blanks, stock and "
                        "order of saws could need; a larger --effort may come nearer.",
                        100 * plan.gap));
    else
        told.push_back("How near it is to the best plan is not proved; a larger --effort may come nearer.");
    if (!plan.all_priced)
        told.push_back("Not all of it has a price in the shop file; the sum leaves that out.");
    for (const lumber::Purchase& line : plan.purchases)
        if (line.random_width) {
            told.push_back("* boards of random width: the width is a typical one; wider ones do as well.");
            break;
        }
    told.push_back(
        fmt::format("Kerf {} for rips, {} for crosscuts; {} off each end. A setting is measured from "
                    "stop or fence to the near side of the blade: what is named lies between them, "
                    "the blade and what comes off lie beyond the line. The left end of a picture goes to "
                    "the stop, its lower edge to the fence; grey is planed off to straighten the edge.",
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
        leaves_.push_back(headed_leaf(job_, leaves_.empty() ? title_ : title_ + ", continued", type_));
        space_ = space_of(job_);
        fresh_ = true;
    }

    const Job& job_;
    std::string title_, type_;
    std::vector<Leaf> leaves_;
    std::optional<FreeSpace> space_;
    bool fresh_ = true;
};

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

std::vector<Leaf> saw_step_sheets(const Job& job) {
    if (job.lumber == nullptr || job.lumber->steps.empty()) return {};
    Leaves leaves(job, "Work at the machines", "lumber plan");
    const double width = job.paper.usable().width();
    const bool wide = width > 300;
    Table table;
    table.columns = {{"step", 12, true, Typeface::sans_bold},
                     {"machine", wide ? 30.0 : 24.0, false, Typeface::sans},
                     {"do", wide ? 92.0 : 56.0, false, Typeface::sans},
                     {"to which board, in cuts by number (what lies at stop or fence)",
                      width - (wide ? 134 : 92), false, Typeface::sans}};
    for (const lumber::Step& step : job.lumber->steps) {
        TableRow row;
        const std::string where = step.words.substr(std::min(step.words.size(), step.what.size() + 2));
        row.cells = {std::to_string(step.number), step.machine, step.what, where};
        if (!step.cautions.empty()) row.below = fmt::format("care: {}", fmt::join(step.cautions, "; "));
        table.rows.push_back(std::move(row));
    }
    leaves.stand(table);
    return leaves.take();
}

} // namespace rayfleck::drawing
