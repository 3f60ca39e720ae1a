// The set of one piece: sheets are laid out kind by kind, then numbered, framed and given their title blocks.
//
// Links to part drawings are set right here, once it is known on which sheet each part stands.

#include "drawing/draw.hpp"

#include <algorithm>
#include <cctype>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {
namespace {

/// A drawing number from the title: capitals, figures and hyphens, at most 16 characters as ISO 7200 allows.
std::string number_from(const std::string& title) {
    std::string number;
    for (const char c : title) {
        const auto u = static_cast<unsigned char>(c);
        if (std::isalnum(u) && u < 128)
            number += static_cast<char>(std::toupper(u));
        else if (!number.empty() && number.back() != '-')
            number += '-';
    }
    if (number.size() > 16) {
        // Whole words, if the first of them is short enough.
        const bool between_words = number[16] == '-';
        number.resize(16);
        if (const auto last = number.rfind('-'); !between_words && last != std::string::npos)
            number.resize(last);
    }
    while (!number.empty() && number.back() == '-') number.pop_back();
    return number.empty() ? "PIECE" : number;
}

/// All woods, or the first of them and how many more there are: the field holds about thirty letters.
std::string woods_of(const cutlist::CutList& list) {
    std::string woods;
    for (const auto& total : list.totals) woods += (woods.empty() ? "" : ", ") + total.wood;
    if (woods.size() > 34 && list.totals.size() > 1)
        woods = list.totals.front().wood + " and " + std::to_string(list.totals.size() - 1) + " more";
    return woods;
}

TitleFields fields_of(const Job& job) {
    const piece::Piece& piece = *job.model.piece;
    TitleFields fields;
    fields.owner = piece.shop.owner;
    fields.creator = piece.shop.creator;
    fields.approved_by = piece.shop.approved_by;
    fields.title = title_of(piece);
    fields.identification =
        job.wishes.identification.empty() ? number_from(fields.title) : job.wishes.identification;
    fields.date = job.wishes.date;
    fields.revision = job.wishes.revision;
    fields.units = measure::name(piece.manner.unit);
    fields.material = woods_of(job.cut_list);
    fields.moisture =
        measure::decimal(measure::Rational::nearest(piece.made_at.in_percent(), 10), 1) + " % in the wood";
    fields.first_angle = job.first_angle;
    return fields;
}

} // namespace

std::string title_of(const piece::Piece& piece) {
    return piece.title + (piece.size_name.empty() ? "" : ", " + piece.size_name);
}

Set bound(const Job& job, const std::vector<Leaf>& leaves, const std::string& title) {
    Set set;
    set.title = title;
    set.creator = job.model.piece->shop.creator;
    TitleFields fields = fields_of(job);
    fields.sheets = static_cast<int>(leaves.size());
    fields.title = title;
    if (job.wishes.identification.empty()) fields.identification = number_from(title);
    const TitleFields all = fields;
    for (std::size_t i = 0; i < leaves.size(); ++i) {
        const Leaf& leaf = leaves[i];
        Sheet sheet;
        const Paper& on = leaf.paper ? *leaf.paper : job.paper;
        sheet.width = on.width;
        sheet.height = on.height;
        sheet.full_size = leaf.full_size;
        sheet.title = leaf.title;
        fields = all;
        fields.sheet = static_cast<int>(i) + 1;
        fields.document_type = leaf.document_type;
        fields.scale = leaf.scale.empty() ? "none" : leaf.scale;
        sheet_frame(on, fields).put_on(sheet);
        leaf.block.put_on(sheet);
        set.sheets.push_back(std::move(sheet));
    }
    return set;
}

Set draw(const Subject& subject, const Wishes& wishes) {
    const joinery::Model& model = subject.model;
    const cutlist::CutList& cut_list = subject.cut_list;
    const piece::Piece& piece = *model.piece;
    const assembly::Order own_order = subject.order ? assembly::Order{} : assembly::order(model);
    Job job{model,
            subject.findings,
            cut_list,
            subject.order ? *subject.order : own_order,
            wishes,
            paper(wishes.sheet.empty() ? piece.shop.sheet : wishes.sheet),
            piece.shop.first_angle,
            piece.manner,
            model.placed(),
            std::vector<int>(model.made.size(), -1),
            subject.lumber};
    for (std::size_t r = 0; r < cut_list.rows.size(); ++r)
        for (const int part : cut_list.rows[r].parts)
            job.row_of_part[static_cast<std::size_t>(part)] = static_cast<int>(r);

    WholeSeen seen;
    std::vector<Leaf> leaves = assembly_sheets(job, seen);
    const auto add = [&](std::vector<Leaf> more) {
        std::move(more.begin(), more.end(), std::back_inserter(leaves));
    };
    int letters_used = 0;
    add(section_sheets(job, seen, letters_used));
    add(exploded_sheets(job));
    add(joint_detail_sheets(job, seen, letters_used));
    std::vector<int> leaf_of_row;
    const int parts_from = static_cast<int>(leaves.size());
    for (std::vector<Leaf> more :
         {part_sheets(job, leaf_of_row), template_sheets(job), cut_list_sheets(job), lumber_sheets(job),
          saw_step_sheets(job), label_sheets(job), assembly_steps_sheets(job), season_sheets(job), warnings_sheets(job)})
        std::move(more.begin(), more.end(), std::back_inserter(leaves));

    Set set = bound(job, leaves, title_of(piece));
    set.title = piece.title;
    for (Sheet& sheet : set.sheets)
        for (Item& item : sheet.items)
            if (auto* link = std::get_if<Link>(&item); link && link->to_sheet >= link_to_row)
                link->to_sheet =
                    parts_from + leaf_of_row[static_cast<std::size_t>(link->to_sheet - link_to_row)];
    return set;
}

} // namespace rayfleck::drawing
