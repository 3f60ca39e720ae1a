// See part_notes.hpp.

#include "drawing/part_notes.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace rayfleck::drawing {

std::vector<std::string> rules_of_sizes(const Job& job) {
    std::vector<std::string> rules;
    for (const joinery::Joint& joint : job.model.joints)
        for (const joinery::Size& size : joint.sizes) {
            if (size.from.empty() || size.from == "stated") continue;
            const std::string rule = size.what + ": " + size.from;
            if (std::find(rules.begin(), rules.end(), rule) == rules.end()) rules.push_back(rule);
        }
    return rules;
}

std::string where_it_looks(const piece::Part& part, measure::Vector own) {
    const measure::Vector way = part.frame.turn_out(own);
    int axis = 0;
    for (int k = 1; k < 3; ++k)
        if (std::abs(way[k]) > std::abs(way[axis]) + 1e-6) axis = k;
    constexpr const char* words[3][2] = {{"left", "right"}, {"front", "back"}, {"bottom", "top"}};
    return words[axis][way[axis] > 0 ? 1 : 0];
}

std::string stance_line(const Job& job, const cutlist::Row& row) {
    const piece::Part& part = *job.made(row.parts.front()).part;
    const double edge = part.face_edge_high ? 1 : -1;
    const std::string copy =
        row.parts.size() > 1 && !part.copy.empty() ? " (drawn: the one at " + part.copy + ")" : "";
    return fmt::format("in the piece: near end {}, face edge {}, face side {}{}{}",
                       where_it_looks(part, {-1, 0, 0}), where_it_looks(part, {0, edge, 0}),
                       where_it_looks(part, {0, 0, 1}), part.upright ? "" : ", leaning", copy);
}

std::vector<std::string> bench_notes(const Job& job, const cutlist::Row& row) {
    const joinery::Made& made = job.made(row.parts.front());
    std::vector<std::string> notes;
    if (!row.mirrored.empty()) {
        std::vector<std::string> as_drawn, mirrored;
        for (const int p : row.parts)
            (std::find(row.mirrored.begin(), row.mirrored.end(), p) != row.mirrored.end() ? mirrored
                                                                                          : as_drawn)
                .push_back(job.made(p).part->name);
        notes.push_back(fmt::format("as drawn: {}; mirror image: {}", fmt::join(as_drawn, ", "),
                                    fmt::join(mirrored, ", ")));
    }
    std::string remark = row.remark;
    // How many are mirrored has been said above, with their names.
    if (const auto at = remark.rfind(" as drawn, "); at != std::string::npos && !row.mirrored.empty()) {
        const auto comma = remark.rfind(", ", at - 1);
        remark.resize(comma == std::string::npos ? 0 : comma);
    }
    if (!remark.empty()) notes.push_back(remark);
    for (const piece::Note& note : made.part->notes) notes.push_back(note.text);
    return notes;
}

} // namespace rayfleck::drawing
