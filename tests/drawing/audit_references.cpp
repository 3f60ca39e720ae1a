// Lists are read as a reader would: a head cell names a column, and what stands under (or above) it with the
// same right border belongs to it.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <fmt/format.h>

#include "audit_subjects.hpp"

namespace rayfleck::testing {
namespace {

using namespace drawing;

struct Balloon {
    std::string reference;
    Point2 middle;
    double radius = 0;
};

double right_end(const Text& t) { return t.at.x + text_width(t.words, t.height, t.face); }

bool is_number(const std::string& words) {
    return !words.empty() &&
           std::all_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// Circles with a number in their middle.
std::vector<Balloon> balloons_on(const Sheet& sheet) {
    std::vector<Balloon> found;
    for (const Item& item : sheet.items) {
        const auto* s = std::get_if<Stroke>(&item);
        if (!s || s->points.size() < 20) continue;
        double left = 1e9, right = -1e9, bottom = 1e9, top = -1e9;
        for (const Point2& p : s->points)
            left = std::min(left, p.x), right = std::max(right, p.x), bottom = std::min(bottom, p.y),
            top = std::max(top, p.y);
        if (std::abs((right - left) - (top - bottom)) > 0.1) continue;
        const Point2 middle{(left + right) / 2, (bottom + top) / 2};
        for (const Item& other : sheet.items) {
            const auto* t = std::get_if<Text>(&other);
            if (!t || !is_number(t->words) || t->face != Typeface::sans_bold) continue;
            const Point2 at{(t->at.x + right_end(*t)) / 2, t->at.y + t->height / 2};
            if (std::hypot(at.x - middle.x, at.y - middle.y) < 1)
                found.push_back({t->words, middle, (right - left) / 2});
        }
    }
    return found;
}

struct Row {
    std::string t, w, l;
};

/// Reference to sizes; a list without sizes leaves them empty.
/// group  name that stands over the columns T, W and L; empty for a list without groups
std::map<std::string, Row> list_on(const Sheet& sheet, const std::string& group) {
    std::vector<const Text*> texts;
    for (const Item& item : sheet.items)
        if (const auto* t = std::get_if<Text>(&item)) texts.push_back(t);
    const auto under_group = [&](const Text& head) {
        if (group.empty()) return true;
        // The nearest name above it.
        const Text* nearest = nullptr;
        double least = 40;
        for (const Text* t : texts) {
            const double away = std::abs((t->at.x + right_end(*t)) / 2 - (head.at.x + right_end(head)) / 2);
            if (t->face != Typeface::sans_bold || t->at.y < head.at.y + 1 || t->at.y > head.at.y + 6 ||
                away >= least)
                continue;
            nearest = t, least = away;
        }
        return nearest && nearest->words == group;
    };
    std::map<std::string, Row> rows;
    for (const Text* head : texts) {
        if (head->words != "ref" || head->face != Typeface::sans_bold) continue;
        for (const Text* cell : texts) {
            if (!is_number(cell->words) || cell->face != Typeface::sans_bold ||
                std::abs(right_end(*cell) - right_end(*head)) > 0.01 || cell == head)
                continue;
            Row row;
            for (const auto& [name, into] : {std::pair{"T", &Row::t}, {"W", &Row::w}, {"L", &Row::l}})
                for (const Text* column : texts) {
                    if (column->words != name || std::abs(column->at.y - head->at.y) > 0.01 ||
                        !under_group(*column))
                        continue;
                    for (const Text* size : texts)
                        if (std::abs(size->at.y - cell->at.y) < 0.01 &&
                            std::abs(right_end(*size) - right_end(*column)) < 0.05)
                            row.*into = size->words;
                }
            rows[cell->words] = row;
        }
    }
    return rows;
}

bool cross(Point2 a, Point2 b, Point2 c, Point2 d) {
    const auto side = [](Point2 p, Point2 q, Point2 r) {
        return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/// D36: outside the picture, apart, leaders not crossing and each with a balloon at one end.
void balloons(const Sheet& sheet, int number, const std::vector<Balloon>& all, Faults& faults) {
    const auto fault = [&](const std::string& words) {
        faults.push_back(fmt::format("sheet {} ({}): ", number, sheet.title) + words);
    };
    std::vector<const Stroke*> leaders;
    for (const Item& item : sheet.items) {
        const auto* s = std::get_if<Stroke>(&item);
        if (!s) continue;
        if (s->role == Role::leader && s->points.size() == 2) leaders.push_back(s);
        if (s->role != Role::picture) continue;
        for (const Balloon& b : all)
            for (const Point2& p : s->points)
                if (std::hypot(p.x - b.middle.x, p.y - b.middle.y) < b.radius)
                    fault(fmt::format("balloon {} stands on the picture", b.reference));
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = i + 1; j < all.size(); ++j)
            if (std::hypot(all[i].middle.x - all[j].middle.x, all[i].middle.y - all[j].middle.y) <
                all[i].radius + all[j].radius)
                fault(fmt::format("balloons {} and {} touch", all[i].reference, all[j].reference));
    for (std::size_t i = 0; i < leaders.size(); ++i)
        for (std::size_t j = i + 1; j < leaders.size(); ++j)
            if (cross(leaders[i]->points[0], leaders[i]->points[1], leaders[j]->points[0],
                      leaders[j]->points[1]))
                fault(fmt::format("leaders cross at {:.1f}, {:.1f}", leaders[i]->points[0].x,
                                  leaders[i]->points[0].y));
    for (const Balloon& b : all) {
        const auto count = std::count_if(leaders.begin(), leaders.end(), [&](const Stroke* s) {
            return std::any_of(s->points.begin(), s->points.end(), [&](Point2 p) {
                return std::abs(std::hypot(p.x - b.middle.x, p.y - b.middle.y) - b.radius) < 0.1;
            });
        });
        if (count != 1) fault(fmt::format("balloon {} has {} leaders", b.reference, count));
    }
}

} // namespace

void audit_references(const drawing::Set& set, Faults& faults) {
    std::multiset<std::string> in_balloons;
    std::map<std::string, Row> parts_list, cut_list;
    bool pictures = false;
    for (std::size_t i = 0; i < set.sheets.size(); ++i) {
        const Sheet& sheet = set.sheets[i];
        const bool picture = sheet.title == "Assembly" || sheet.title.starts_with("Pictorial view");
        if (picture) {
            pictures = true;
            const std::vector<Balloon> all = balloons_on(sheet);
            balloons(sheet, static_cast<int>(i) + 1, all, faults);
            for (const Balloon& b : all) in_balloons.insert(b.reference);
            const auto rows = list_on(sheet, "");
            parts_list.insert(rows.begin(), rows.end());
        }
        if (sheet.title.starts_with("Cut list")) {
            const auto rough = list_on(sheet, "rough");
            for (const auto& [reference, row] : list_on(sheet, "finished")) {
                if (row.t.empty() || row.w.empty() || row.l.empty())
                    faults.push_back(fmt::format("cut list: row {} lacks T, W or L finished", reference));
                cut_list[reference] = row;
                const Row sawn = rough.at(reference);
                if (sawn.t.empty() || sawn.w.empty() || sawn.l.empty())
                    faults.push_back(fmt::format("cut list: row {} lacks T, W or L rough", reference));
            }
        }
    }
    if (!pictures) return;
    // D37, both ways; without a parts list on the sheets of the picture the cut list is the list.
    for (const auto& [reference, row] : cut_list)
        if (const auto count = in_balloons.count(reference); count != 1)
            faults.push_back(fmt::format("row {} has {} balloons", reference, count));
    for (const std::string& reference : in_balloons) {
        if (!cut_list.count(reference)) faults.push_back(fmt::format("balloon {} has no row", reference));
        if (!parts_list.empty() && !parts_list.count(reference))
            faults.push_back(fmt::format("balloon {} is not in the parts list", reference));
    }
    // D38
    for (const auto& [reference, row] : parts_list) {
        const auto same = cut_list.find(reference);
        if (same == cut_list.end()) {
            faults.push_back(fmt::format("the parts list has a row {} that the cut list lacks", reference));
            continue;
        }
        if (!row.l.empty() && (row.t != same->second.t || row.w != same->second.w || row.l != same->second.l))
            faults.push_back(fmt::format("row {}: the lists say {} × {} × {} and {} × {} × {}", reference,
                                         row.t, row.w, row.l, same->second.t, same->second.w,
                                         same->second.l));
    }
}

} // namespace rayfleck::testing
