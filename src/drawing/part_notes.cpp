// See part_notes.hpp.

#include "drawing/part_notes.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace rayfleck::drawing {

std::vector<std::string> rules_of_sizes(const Job& job) {
    // One line for each size and rule, with every figure that it gave in this piece.
    struct Rule {
        std::string what, from;
        std::vector<std::string> values;
    };
    std::vector<Rule> rules;
    for (const joinery::Joint& joint : job.model.joints)
        for (const joinery::Size& size : joint.sizes) {
            if (size.from.empty() || size.from == "stated") continue;
            auto rule = std::find_if(rules.begin(), rules.end(), [&](const Rule& r) {
                return r.what == size.what && r.from == size.from;
            });
            if (rule == rules.end()) rule = rules.insert(rules.end(), Rule{size.what, size.from, {}});
            const std::string value = size.unit == "mm"        ? job.figure(size.value)
                                      : size.unit == "degrees" ? fmt::format("{:.1f}°", size.value)
                                                               : fmt::format("{:g}", size.value);
            if (std::find(rule->values.begin(), rule->values.end(), value) == rule->values.end())
                rule->values.push_back(value);
        }
    std::vector<std::string> lines;
    for (const Rule& rule : rules)
        lines.push_back(fmt::format("{} {}: {}", rule.what, fmt::join(rule.values, ", "), rule.from));
    return lines;
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
    const auto stance = [&](int index) {
        const piece::Part& part = *job.made(index).part;
        const double edge = part.face_edge_high ? 1 : -1;
        return fmt::format("near end {}, face edge {}, face side {}{}", where_it_looks(part, {-1, 0, 0}),
                           where_it_looks(part, {0, edge, 0}), where_it_looks(part, {0, 0, 1}),
                           part.upright ? "" : ", leaning");
    };
    const std::string drawn = stance(row.parts.front());
    // Which copy is drawn matters only where they stand differently.
    const bool alike =
        std::all_of(row.parts.begin(), row.parts.end(), [&](int index) { return stance(index) == drawn; });
    const piece::Part& first = *job.made(row.parts.front()).part;
    return "in the piece: " + drawn +
           (alike || first.copy.empty() ? "" : fmt::format(" (drawn: the one at {})", first.copy));
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
