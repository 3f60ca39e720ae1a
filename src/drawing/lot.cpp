// See lot.hpp. In a lot of several pieces a blank bears the number of its piece, `P2 3 A`, since the numbers
// of the parts are each piece's own.

#include "drawing/lot.hpp"

#include <fmt/format.h>

#include "drawing/lumber_board.hpp"
#include "drawing/sheets.hpp"

namespace rayfleck::drawing {
namespace {

/// What the sheets of the lumber plan look at; the rest of a set's subject is left empty.
struct Pieces {
    const std::vector<lumber::Source>& pieces;
    const lumber::Plan& plan;
    const Wishes& wishes;
    findings::Findings findings = {};
    assembly::Order order = {};

    Job job(std::size_t n, const cutlist::CutList& cut_list) const {
        const joinery::Model& model = *pieces[n].model;
        const piece::Shop& shop = pieces.front().model->piece->shop;
        Job job{model,
                findings,
                cut_list,
                order,
                wishes,
                paper(wishes.sheet.empty() ? shop.sheet : wishes.sheet),
                shop.first_angle,
                model.piece->manner,
                {},
                std::vector<int>(model.made.size(), -1),
                &plan,
                &pieces,
                {}};
        for (std::size_t r = 0; r < cut_list.rows.size(); ++r)
            for (const int part : cut_list.rows[r].parts)
                job.row_of_part[static_cast<std::size_t>(part)] = static_cast<int>(r);
        return job;
    }
};

std::string title_of_lot(const std::vector<lumber::Source>& pieces) {
    std::string title = title_of(*pieces.front().model->piece);
    if (pieces.size() == 2) title += " and " + title_of(*pieces[1].model->piece);
    if (pieces.size() > 2) title += fmt::format(" and {} more", pieces.size() - 1);
    return title;
}

} // namespace

Set draw_lot(const std::vector<lumber::Source>& pieces, const lumber::Plan& plan, const Wishes& wishes) {
    const Pieces all{pieces, plan, wishes};
    std::vector<Leaf> leaves;
    const auto add = [&](std::vector<Leaf> more) {
        std::move(more.begin(), more.end(), std::back_inserter(leaves));
    };
    std::vector<const cutlist::CutList*> lists;
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        Job job = all.job(n, *pieces[n].cut_list);
        if (pieces.size() > 1) job.of_lot = fmt::format("P{} {}", n + 1, title_of(*pieces[n].model->piece));
        add(cut_list_sheets(job));
        lists.push_back(pieces[n].cut_list);
    }
    const cutlist::CutList sum = cutlist::together(lists);
    Job whole = all.job(0, sum);
    if (pieces.size() > 1) {
        whole.of_lot = "all together";
        add(cut_list_sheets(whole));
    }
    add(lumber_sheets(whole));
    add(saw_step_sheets(whole));
    add(label_sheets(whole));
    Set set = bound(whole, leaves, title_of_lot(pieces));
    // There are no part drawings to jump to.
    for (Sheet& sheet : set.sheets)
        std::erase_if(sheet.items, [](const Item& item) { return std::holds_alternative<Link>(item); });
    return set;
}

std::vector<Sheet> board_pictures(const std::vector<lumber::Source>& pieces, const lumber::Plan& plan,
                                  const Wishes& wishes) {
    const Pieces all{pieces, plan, wishes};
    const Job job = all.job(0, *pieces.front().cut_list);
    std::vector<Sheet> sheets;
    for (const lumber::Board& board : plan.boards) {
        // 8 ft at 1:5.
        constexpr double margin = 10, width = 520;
        const Block picture = lumber_board(job, board, width);
        Block placed;
        placed.add(picture, {margin - picture.box().left, margin - picture.box().bottom});
        Sheet sheet;
        sheet.width = width + 2 * margin;
        sheet.height = picture.box().height() + 2 * margin;
        sheet.title = board.name;
        placed.put_on(sheet);
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

} // namespace rayfleck::drawing
