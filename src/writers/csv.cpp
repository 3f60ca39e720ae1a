// See csv.hpp. Lengths are printed to a thousandth of a millimetre or of an inch, volumes to a cubic
// centimetre.

#include "writers/csv.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace rayfleck::writers {
namespace {

using measure::Length;

std::string cell(const std::string& words) {
    if (words.find_first_of(",\"\r\n") == std::string::npos) return words;
    std::string quoted = "\"";
    for (const char c : words) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string line(const std::vector<std::string>& cells) {
    std::string out;
    for (const std::string& words : cells) out += (&words == &cells.front() ? "" : ",") + cell(words);
    return out + "\r\n";
}

struct Column {
    const char* name;
    Length cutlist::Row::*size;
};
constexpr Column sizes[] = {
    {"thickness", &cutlist::Row::thickness},     {"width", &cutlist::Row::width},
    {"length", &cutlist::Row::length},           {"rough_thickness", &cutlist::Row::rough_thickness},
    {"rough_width", &cutlist::Row::rough_width}, {"rough_length", &cutlist::Row::rough_length},
};

std::string title_of(const lumber::Source& piece) {
    const piece::Piece& of = *piece.model->piece;
    return of.title + (of.size_name.empty() ? "" : ", " + of.size_name);
}

struct Titled {
    std::string title;
    const cutlist::CutList* list;
};

/// The head, and the rows of the lists under it; with a column for the piece where there are several.
std::string cut_lists(const std::vector<Titled>& pieces, const measure::Manner& manner) {
    const bool inches = manner.unit == measure::Unit::in || manner.unit == measure::Unit::ft;
    std::vector<std::string> head{"reference", "name", "count", "of_them_mirrored", "wood", "sawn", "stock"};
    if (pieces.size() > 1) head.insert(head.begin(), "piece");
    for (const Column& column : sizes) head.push_back(std::string(column.name) + "_mm");
    if (inches)
        for (const Column& column : sizes) head.push_back(std::string(column.name) + "_in");
    head.insert(head.end(),
                {"volume_m3", "board_feet", "area_m2", "joinery", "remark", "weight_kg", "finish_area_m2"});

    std::string out = line(head);
    for (const Titled& piece : pieces)
        for (const cutlist::Row& row : piece.list->rows) {
            std::vector<std::string> cells;
            if (pieces.size() > 1) cells.push_back(piece.title);
            cells.insert(cells.end(), {std::to_string(row.reference), row.name, std::to_string(row.count),
                                       std::to_string(row.mirrored.size()), row.wood, row.sawn, row.stock});
            for (const Column& column : sizes)
                cells.push_back(measure::decimal((row.*column.size).in_mm(), 3));
            if (inches)
                for (const Column& column : sizes)
                    cells.push_back(measure::decimal((row.*column.size).in_inches(), 3));
            cells.push_back(fmt::format("{:.6f}", row.volume_m3));
            cells.push_back(row.board_feet > 0 ? fmt::format("{:.3f}", row.board_feet) : "");
            cells.push_back(fmt::format("{:.4f}", row.area_m2));
            cells.push_back(row.joinery);
            cells.push_back(row.remark);
            cells.push_back(row.weight_kg > 0 ? fmt::format("{:.3f}", row.weight_kg) : "");
            cells.push_back(fmt::format("{:.4f}", row.finish_area_m2));
            out += line(cells);
        }
    return out;
}

std::string mm(Length length) { return measure::decimal(length.in_mm(), 3); }

} // namespace

std::string write_csv(const cutlist::CutList& list, const measure::Manner& manner) {
    return cut_lists({{"", &list}}, manner);
}

std::string write_csv(const std::vector<lumber::Source>& pieces) {
    std::vector<Titled> titled;
    for (const lumber::Source& piece : pieces) titled.push_back({title_of(piece), piece.cut_list});
    return cut_lists(titled, pieces.front().model->piece->manner);
}

std::string write_hardware_csv(const std::vector<lumber::Source>& pieces) {
    std::string out = line({"piece", "name", "count", "from", "parts"});
    for (const lumber::Source& piece : pieces)
        for (const joinery::HardwareItem& item : piece.cut_list->hardware) {
            std::vector<std::string> parts;
            for (const int part : item.parts)
                parts.push_back(piece.model->made[static_cast<std::size_t>(part)].part->name);
            out += line({title_of(piece), item.name, std::to_string(item.count), item.from,
                         fmt::format("{}", fmt::join(parts, "; "))});
        }
    return out;
}

std::string write_blanks_csv(const lumber::Plan& plan, const std::vector<lumber::Source>& pieces) {
    std::string out = line({"board",
                            "on_hand",
                            "wood",
                            "stock",
                            "sawn",
                            "board_thickness_mm",
                            "board_width_mm",
                            "board_length_mm",
                            "piece",
                            "reference",
                            "name",
                            "instance",
                            "part",
                            "x_mm",
                            "y_mm",
                            "rough_thickness_mm",
                            "rough_width_mm",
                            "rough_length_mm",
                            "turned",
                            "resawn_of",
                            "turn"});
    for (const lumber::Board& board : plan.boards)
        for (const lumber::Placement& p : board.placements)
            for (const lumber::Leaf& leaf : p.leaves) {
                const lumber::Source& piece = pieces[p.source];
                out += line({board.name,
                             board.on_hand ? "yes" : "no",
                             board.wood,
                             board.stock,
                             board.sawn,
                             mm(board.thickness),
                             mm(board.width),
                             mm(board.length),
                             title_of(piece),
                             std::to_string(leaf.reference),
                             leaf.name,
                             leaf.instance,
                             piece.model->made[static_cast<std::size_t>(leaf.part)].part->name,
                             mm(p.x),
                             mm(p.y),
                             mm(leaf.thickness),
                             mm(p.turned ? p.along : p.across),
                             mm(p.turned ? p.across : p.along),
                             p.turned ? "yes" : "no",
                             p.leaves.size() > 1 ? std::to_string(p.leaves.size()) : "",
                             leaf.turn});
            }
    return out;
}

std::string write_purchases_csv(const lumber::Plan& plan) {
    std::string out =
        line({"count", "wood", "stock", "sawn", "thickness_mm", "width_mm", "length_mm", "random_width",
              "board_feet", "volume_m3", "area_m2", "price", "per", "each", "cost", "currency"});
    const auto money = [](bool priced, double amount) { return priced ? fmt::format("{:.2f}", amount) : ""; };
    for (const lumber::Purchase& one : plan.purchases)
        out += line({std::to_string(one.count), one.wood, one.stock, one.sawn, mm(one.thickness),
                     mm(one.width), mm(one.length), one.random_width ? "yes" : "no",
                     one.board_feet > 0 ? fmt::format("{:.3f}", one.board_feet) : "",
                     fmt::format("{:.6f}", one.volume_m3), fmt::format("{:.4f}", one.area_m2),
                     money(one.priced, one.per_unit), one.per, money(one.priced, one.each),
                     money(one.priced, one.cost), plan.currency});
    return out;
}

std::string write_steps_csv(const lumber::Plan& plan) {
    std::string out = line({"step", "machine", "work", "setting_mm", "board", "cut", "gets", "care"});
    for (const lumber::Step& step : plan.steps)
        for (const lumber::Step::On& on : step.on)
            for (std::size_t i = 0; i < std::max(on.cuts.size(), on.gets.size()); ++i)
                out += line({std::to_string(step.number), step.machine, step.what,
                             step.setting ? mm(*step.setting) : "", plan.boards[on.board].name,
                             i < on.cuts.size() ? std::to_string(on.cuts[i]) : "",
                             i < on.gets.size() ? on.gets[i] : "",
                             fmt::format("{}", fmt::join(step.cautions, "; "))});
    return out;
}

} // namespace rayfleck::writers
