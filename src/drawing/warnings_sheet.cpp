// The warnings page: every finding with its picture, what to do about it, and where it stands in the text.
//
// Faults first, then cautions and notes; accepted ones at the end, in green, with the reason given. Colour
// repeats what a word says, so that a print in black loses nothing. Below stand the cautions on the use of
// the program itself.

#include <algorithm>

#include "drawing/finding_picture.hpp"
#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "source/text.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double picture_width = 62, picture_height = 48;

struct Badge {
    std::string word;
    Ink ink, letters;
};

Badge badge_of(const findings::Finding& finding) {
    using findings::Severity;
    if (finding.accepted_because) return {"ACCEPTED", Ink::green, Ink::white};
    switch (finding.severity) {
    case Severity::note:
        return {"NOTE", Ink::blue, Ink::white};
    case Severity::caution:
        return {"CAUTION", Ink::amber, Ink::black};
    case Severity::fault:
    case Severity::error:
        break;
    }
    return {finding.severity == Severity::error ? "ERROR" : "FAULT", Ink::red, Ink::white};
}

/// The row of the cut list of the first part that a finding names, -1 for none.
int row_named(const Job& job, const findings::Finding& finding) {
    for (const std::string& name : finding.parts)
        for (std::size_t i = 0; i < job.model.made.size(); ++i)
            if (job.model.made[i].part->name == name && job.row_of_part[i] >= 0) return job.row_of_part[i];
    return -1;
}

/// Draws a finding of that width with its upper left corner at (0, 0).
Block finding_block(const Job& job, const findings::Finding& finding, double width) {
    Block block;
    const Badge badge = badge_of(finding);
    const Block picture = finding_picture(job, finding, picture_width - 4, picture_height - 4, badge.ink);
    double left = 0;
    if (!picture.empty()) {
        block.fill(Rect{0, -picture_height, picture_width, 0}, Ink::pale);
        block.add(picture, {2, -picture_height + 2});
        left = picture_width + 4;
    }
    const double badge_width = text_width(badge.word, note_height, Typeface::sans_bold) + 4;
    block.fill(Rect{left, -5, left + badge_width, 0}, badge.ink);
    block.text({{left + 2, -3.75}, badge.word, note_height, Typeface::sans_bold, badge.letters, 0});
    block.text({{left + badge_width + 3, -3.75},
                cut_to(finding.name, width - left - badge_width - 3, note_height, Typeface::sans_bold),
                note_height,
                Typeface::sans_bold,
                Ink::black,
                0});
    // A click on the heading or the picture leads to the drawing of the part most to blame.
    if (const int row = row_named(job, finding); row >= 0)
        block.link({0, picture.empty() ? -5 : -picture_height, width, 0}, link_to_row + row);
    double y = -7.5;
    const double room = width - left;
    const auto paragraph = [&](const std::string& label, const std::string& words, Ink ink = Ink::black) {
        if (words.empty()) return;
        const double label_width =
            label.empty() ? 0 : text_width(label, note_height, Typeface::sans_bold) + 2;
        const auto lines = wrapped(words, room - label_width, note_height, Typeface::sans);
        if (lines.empty()) return;
        if (!label.empty())
            block.text({{left, y - note_height}, label, note_height, Typeface::sans_bold, ink, 0});
        y = set_lines(block, lines, left + label_width, y, note_height, Typeface::sans, ink) - 0.8;
    };
    paragraph("", finding.message);
    paragraph("limit", finding.limit.rfind("limit ", 0) == 0 ? finding.limit.substr(6) : finding.limit);
    paragraph("mend", finding.mend);
    if (finding.accepted_because) paragraph("accepted because", *finding.accepted_because);
    if (job.wishes.texts && finding.span.file >= 0 && finding.span.file < job.wishes.texts->count()) {
        const source::Text& text = (*job.wishes.texts)[finding.span.file];
        const int line = text.line_of(std::min(finding.span.begin, text.bytes().size()));
        std::string words(text.line(line));
        words.erase(0, words.find_first_not_of(" \t"));
        // The folder differs from machine to machine, the sheet must not.
        const std::string file = text.name().substr(text.name().find_last_of('/') + 1);
        paragraph(file + ":" + std::to_string(line), words, Ink::grey);
    }
    block.claim({0, std::min(y, picture.empty() ? y : -picture_height), width, 0});
    return block;
}

const char* const cautions[] = {
    "This page is guidance for the workshop, worked out from tables of wood and rules of the trade. It is no "
    "engineering approval: where people "
    "could be hurt (beds, chairs, high shelves, anything that children climb on) local codes and licensed "
    "practice come first.",
    "Wood is not uniform. Figures hold for sound, dry wood without knots; look at the board in your hand "
    "before you trust a number.",
    "Machines and hand tools cut fingers as readily as wood. Keep guards in place, and make no cut that the "
    "machine or the stock is too small for.",
    "Check every size against the part that is already made before you cut the next one.",
};

Block cautions_block(double width) {
    Block block;
    block.text({{0, -heading_height},
                "On the use of this page",
                heading_height,
                Typeface::lettering,
                Ink::black,
                0});
    double y = -heading_height - 3;
    for (const char* caution : cautions) {
        block.dot({1, y - 1.3}, 1.0);
        y = set_lines(block, wrapped(caution, width - 4, note_height, Typeface::sans), 4, y) - 1;
    }
    block.claim({0, y, width, 0});
    return block;
}

int rank(const findings::Finding& finding) {
    return finding.accepted_because ? 10 : 3 - static_cast<int>(finding.severity);
}

/// How many of each kind, as the first line of the page.
std::string summary(const std::vector<const findings::Finding*>& list) {
    int faults = 0, cautions_given = 0, notes = 0, accepted = 0;
    for (const findings::Finding* f : list) {
        if (f->accepted_because)
            ++accepted;
        else if (f->severity >= findings::Severity::fault)
            ++faults;
        else
            ++(f->severity == findings::Severity::caution ? cautions_given : notes);
    }
    std::string words;
    const auto count = [&](int n, const char* one, const char* several) {
        if (n > 0) words += (words.empty() ? "" : ", ") + std::to_string(n) + " " + (n == 1 ? one : several);
    };
    count(faults, "fault", "faults"), count(cautions_given, "caution", "cautions"),
        count(notes, "note", "notes"), count(accepted, "accepted", "accepted");
    return words;
}

} // namespace

std::vector<Leaf> warnings_sheets(const Job& job) {
    std::vector<const findings::Finding*> list;
    for (const findings::Finding& finding : job.findings) list.push_back(&finding);
    std::stable_sort(list.begin(), list.end(),
                     [](const auto* a, const auto* b) { return rank(*a) < rank(*b); });

    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    constexpr double between = 8, heading_room = 16;
    const int columns = usable.width() > 300 ? 2 : 1;
    const double width = (usable.width() - between * (columns - 1)) / columns;
    std::vector<Leaf> leaves;
    int column = columns;
    double y = 0, bottom = 0;
    const auto next_column = [&] {
        if (++column >= columns) {
            Leaf leaf;
            leaf.title = leaves.empty() ? "Warnings" : "Warnings, continued";
            leaf.document_type = "warnings";
            leaf.block.text(
                {{usable.left, usable.top - 5}, leaf.title, 5, Typeface::lettering, Ink::black, 0});
            const std::string words =
                list.empty() ? "No check found anything to say about this piece." : summary(list);
            leaf.block.text(
                {{usable.left, usable.top - 10.5}, words, note_height, Typeface::sans, Ink::black, 0});
            leaves.push_back(std::move(leaf));
            column = 0;
        }
        y = usable.top - heading_room;
        const double left = usable.left + column * (width + between);
        bottom = left + width > title.left - 2 ? title.top + 4 : usable.bottom;
    };
    const auto put = [&](const Block& block, bool rule) {
        if (leaves.empty() || (y - block.box().height() < bottom && y < usable.top - heading_room))
            next_column();
        const double left = usable.left + column * (width + between);
        leaves.back().block.add(block, {left, y});
        y -= block.box().height() + 2.5;
        if (rule && y > bottom)
            leaves.back().block.line({left, y}, {left + width, y}, Pen::thin, Role::table, Ink::grey);
        y -= 3;
    };
    for (const findings::Finding* finding : list) put(finding_block(job, *finding, width), true);
    put(cautions_block(width), false);
    return leaves;
}

} // namespace rayfleck::drawing
