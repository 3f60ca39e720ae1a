// The piece through the year: one page with every part that moves, how far, and the room it has to do so.
//
// Widths stand as made, and in the driest and the dampest season of the stated climate; parts made alike
// share a line, the widest movers come first. Room and need are told where a joint lets the part move; a dash
// means that its joints hold it and the wood must bear it, which the checks look at. The table keeps to one
// page: what does not fit is counted in a last line, and it is always the parts that move least.

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "checks/season_table.hpp"
#include "checks/wording.hpp"
#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"
#include "drawing/table.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double heading_room = 20;
constexpr const char* none = "–";

std::string amount(const Job& job, double mm) { return checks::movement_text(mm, job.model); }

/// A change with its sign: `−2.4 mm`.
std::string change(const Job& job, double mm) {
    const std::string size = amount(job, std::abs(mm));
    if (size.starts_with("under") || size.starts_with("0.0 ")) return size.starts_with("0.0 ") ? "0" : size;
    return (mm < 0 ? "\u2212" : "+") + size;
}

std::string sawn_of(const piece::Part& part) {
    if (part.species->is_sheet()) return "sheet";
    const double degrees = std::abs(part.rings.in_degrees());
    const std::string name(wood::text(part.sawn));
    const double usual = wood::ring_angle(part.sawn).in_degrees();
    return std::abs(degrees - usual) < 0.5 ? name : fmt::format("{}, {:.0f}°", name, degrees);
}

std::string shape_of(const Job& job, const checks::MovingPart& row) {
    constexpr double worth_telling = 0.1;
    if (row.out_of_square >= worth_telling) return "out of square " + amount(job, row.out_of_square);
    if (row.hollow >= worth_telling) return "hollow " + amount(job, row.hollow);
    return none;
}

/// The name of the part as in the text, or of its one copy.
std::string name_of(const Job& job, const checks::MovingPart& row) {
    const piece::Part& part = *job.made(row.parts.front()).part;
    return row.parts.size() > 1 ? part.base : part.name;
}

Table parts_table(const Job& job, const checks::SeasonTable& seasons, double width) {
    // On an upright sheet the words stand on a second line, so that the figures keep their columns.
    const bool wide = width > 300;
    const auto figures = Typeface::lettering;
    const double number = wide ? 24 : 17.5, smaller = wide ? 20 : 14;
    Table table;
    table.columns = {{"part", wide ? 52.0 : 0.0, false, Typeface::sans_bold},
                     {"off", wide ? 9.0 : 8.0, true, figures},
                     {"wood", wide ? 42.0 : 24.0, false, Typeface::sans}};
    if (wide) table.columns.push_back({"sawn", 32, false, Typeface::sans});
    for (const char* state : {"made", "driest", "dampest"})
        table.columns.push_back({state, number, true, figures, "width"});
    table.columns.push_back({"in all", smaller, true, figures, "width"});
    if (wide) table.columns.push_back({"it is free", 40, false, Typeface::sans});
    for (const char* state : {"needs", "has", "leave"})
        table.columns.push_back({state, smaller, true, figures, "room there"});
    if (wide) table.columns.push_back({"out of shape", 0, false, Typeface::sans});
    // What is left over goes to the names, and on a wide sheet to the shapes.
    const double left_over = width - table.width();
    (wide ? table.columns.back() : table.columns.front()).width = left_over;
    for (const checks::MovingPart& row : seasons.parts) {
        const piece::Part& part = *job.made(row.parts.front()).part;
        const auto told = [&](const std::optional<double>& mm) {
            return mm ? amount(job, *mm) : std::string(none);
        };
        TableRow line;
        // Two lines of name at most.
        line.cells = {cut_to(name_of(job, row), 1.7 * (table.columns.front().width - 2), note_height,
                             Typeface::sans_bold),
                      std::to_string(row.parts.size()), std::string(part.species->trade_name)};
        if (wide) line.cells.push_back(sawn_of(part));
        for (const std::string& figure : {amount(job, row.width), change(job, row.dry), change(job, row.damp),
                                          amount(job, std::abs(row.range()))})
            line.cells.push_back(figure);
        if (wide) line.cells.push_back(row.where);
        for (const auto& room : {row.needs, row.room, row.leave}) line.cells.push_back(told(room));
        const std::string shape = shape_of(job, row);
        if (wide)
            line.cells.push_back(shape);
        else
            line.below = sawn_of(part) + ", " + row.where + (shape == none ? "" : ", " + shape);
        if (const int at = job.row_of_part[static_cast<std::size_t>(row.parts.front())]; at >= 0)
            line.to_sheet = link_to_row + at;
        table.rows.push_back(std::move(line));
    }
    return table;
}

/// Doors and drawers in their openings, and miters: sentences below the table.
std::vector<std::string> sentences(const Job& job, const checks::SeasonTable& seasons) {
    std::vector<std::string> lines;
    const auto add = [&](std::string line) {
        if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
    };
    constexpr std::array<const char*, 3> ways{"across", "deep", "up"};
    for (const checks::OpeningRoom& opening : seasons.openings)
        add(fmt::format(
            "{} in its opening, {}: grows {} by the dampest season, gap {} on both sides together; "
            "leave {} when it is made, which is {} in the driest season.",
            job.made(opening.part).part->base, ways[static_cast<std::size_t>(opening.axis)],
            amount(job, opening.damp), amount(job, opening.gap), amount(job, opening.leave),
            amount(job, opening.leave - opening.dry)));
    constexpr double worth_telling = 0.1;
    for (const checks::MiterOpening& miter : seasons.miters) {
        const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(miter.joint)];
        const bool dry = std::abs(miter.dry) >= std::abs(miter.damp);
        const double most = dry ? miter.dry : miter.damp;
        if (std::abs(most) < worth_telling) continue;
        add(fmt::format("The miter of {} and {} wants to open by {} at its {} corner in the {} season.",
                        job.made(joint.a).part->base, job.made(joint.b).part->base,
                        amount(job, std::abs(most)), most > 0 ? "outer" : "inner",
                        dry ? "driest" : "dampest"));
    }
    return lines;
}

const char* const legend =
    "Needs: what the part moves there from the day it is made. Leave: the room to give it when it is made, "
    "on "
    "each side of a panel, either way at a slot. Held: its joints keep it, and what it moves they must bear. "
    "Hollow: of one board that nothing holds flat, the bark side hollow when driest, the heart side when "
    "dampest. Out of square: a square with its rings on the diagonal becomes a diamond by so much.";

} // namespace

std::vector<Leaf> season_sheets(const Job& job) {
    const checks::SeasonTable seasons = checks::season_table(job.model);
    if (seasons.parts.empty()) return {};
    const piece::Piece& piece = *job.model.piece;
    const Rect usable = job.paper.usable(), title = job.paper.title_block();
    Leaf leaf;
    leaf.title = "Through the year";
    leaf.document_type = "table of movement";
    leaf.block.text({{usable.left, usable.top - 5}, leaf.title, 5, Typeface::lettering, Ink::black, 0});
    const std::string climate =
        fmt::format("Made at {} moisture; driest {}, dampest {} ({}{}). Width is across the part; wood "
                    "hardly moves along its "
                    "grain.",
                    checks::moisture_text(piece.made_at), checks::moisture_text(piece.climate.driest),
                    checks::moisture_text(piece.climate.dampest), piece.climate.basis,
                    piece.climate_stated ? "" : ", taken because no climate is stated");
    double y = usable.top - 10.5 + note_height;
    y = set_lines(leaf.block, wrapped(climate, usable.width(), note_height, Typeface::sans), usable.left, y);

    const std::vector<std::string> lines = sentences(job, seasons);
    // Sentences stand beside the title block where there is room, so that the table has the rest of the
    // sheet.
    const double left_of_title = title.left - usable.left - 6;
    const bool beside = left_of_title > 120;
    const double sentence_width = beside ? left_of_title : usable.width();
    // Together they take a third of the sheet at most; what is left out is counted.
    const double lowest = -usable.height() / 3;
    Block words;
    double down = 0;
    const auto set = [&](const std::string& line) {
        down = set_lines(words, wrapped(line, sentence_width, note_height, Typeface::sans), 0, down) - 1;
    };
    set(legend);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const double height =
            static_cast<double>(wrapped(lines[i], sentence_width, note_height, Typeface::sans).size()) *
                note_step +
            1;
        if (down - height < lowest + note_step) {
            set(fmt::format("And {} more openings and miters.", lines.size() - i));
            break;
        }
        set(lines[i]);
    }
    const double bottom = beside ? std::max(title.top, usable.bottom - down) : title.top + 5 - down;

    Table table = parts_table(job, seasons, usable.width());
    const double room = y - 3 - (bottom + 6);
    std::size_t next = 0;
    Block block = table_part(table, 0, room, next);
    // What moves least makes room for the line that counts it.
    while (next < table.rows.size() && next > 1) {
        Table shorter = table;
        std::size_t left_out = 0;
        const std::size_t keep = next - 1;
        for (std::size_t i = keep; i < seasons.parts.size(); ++i) left_out += seasons.parts[i].parts.size();
        shorter.rows.resize(keep);
        TableRow last;
        last.cells.assign(table.columns.size(), "");
        last.cells.front() = fmt::format("{} more", left_out);
        last.below = fmt::format("each moves {} or less through the year",
                                 amount(job, std::abs(seasons.parts[keep].range())));
        shorter.rows.push_back(last);
        std::size_t reached = 0;
        block = table_part(shorter, 0, room, reached);
        if (reached >= shorter.rows.size()) break;
        --next;
    }
    leaf.block.add(block, {usable.left, y - 3});
    // Right below a short table; else as low as the sheet allows.
    leaf.block.add(words, {usable.left, std::max(bottom, y - 3 - block.box().height() - 8)});
    return {std::move(leaf)};
}

} // namespace rayfleck::drawing
