// See csv.hpp. Lengths are printed to a thousandth of a millimetre or of an inch, volumes to a cubic
// centimetre.

#include "writers/csv.hpp"

#include <vector>

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

} // namespace

std::string write_csv(const cutlist::CutList& list, const measure::Manner& manner) {
    const bool inches = manner.unit == measure::Unit::in || manner.unit == measure::Unit::ft;
    std::vector<std::string> head{"reference", "name", "count", "of_them_mirrored", "wood", "sawn", "stock"};
    for (const Column& column : sizes) head.push_back(std::string(column.name) + "_mm");
    if (inches)
        for (const Column& column : sizes) head.push_back(std::string(column.name) + "_in");
    head.insert(head.end(), {"volume_m3", "board_feet", "area_m2", "joinery", "remark"});

    std::string out = line(head);
    for (const cutlist::Row& row : list.rows) {
        std::vector<std::string> cells{std::to_string(row.reference),
                                       row.name,
                                       std::to_string(row.count),
                                       std::to_string(row.mirrored.size()),
                                       row.wood,
                                       row.sawn,
                                       row.stock};
        for (const Column& column : sizes) cells.push_back(measure::decimal((row.*column.size).in_mm(), 3));
        if (inches)
            for (const Column& column : sizes)
                cells.push_back(measure::decimal((row.*column.size).in_inches(), 3));
        cells.push_back(fmt::format("{:.6f}", row.volume_m3));
        cells.push_back(row.board_feet > 0 ? fmt::format("{:.3f}", row.board_feet) : "");
        cells.push_back(fmt::format("{:.4f}", row.area_m2));
        cells.push_back(row.joinery);
        cells.push_back(row.remark);
        out += line(cells);
    }
    return out;
}

} // namespace rayfleck::writers
