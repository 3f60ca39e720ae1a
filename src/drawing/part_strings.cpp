// See part_strings.hpp.

#include "drawing/part_strings.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace rayfleck::drawing {
namespace {

/// One link of a string.
struct StringLink {
    double from = 0, to = 0;
    int times = 1;
    bool derived = false; ///< follows from the overall and the other links; told in parentheses
};

std::vector<StringLink> links_of(const std::vector<double>& places, double low, double high) {
    std::vector<StringLink> links;
    double at = low;
    for (const double p : places) {
        links.push_back({at, p, 1});
        at = p;
    }
    if (links.empty()) return {};
    links.push_back({at, high, 1});
    std::vector<StringLink> grouped;
    for (std::size_t i = 0; i < links.size();) {
        std::size_t j = i + 1;
        while (j < links.size() &&
               std::abs((links[j].to - links[j].from) - (links[i].to - links[i].from)) < 0.01)
            ++j;
        // Three that fill the whole are told as two of them; the third follows.
        if (j - i > 3 || (j - i == 3 && links.size() > 3)) {
            grouped.push_back({links[i].from, links[j - 1].to, static_cast<int>(j - i)});
            i = j;
        } else {
            grouped.push_back(links[i]);
            ++i;
        }
    }
    auto longest = grouped.end();
    for (auto link = grouped.begin(); link != grouped.end(); ++link)
        if (link->times == 1 &&
            (longest == grouped.end() || link->to - link->from > longest->to - longest->from))
            longest = link;
    if (longest != grouped.end())
        grouped.erase(longest);
    else
        // Only runs of equal links: the longest run is told all the same, as what it is.
        std::max_element(grouped.begin(), grouped.end(), [](const StringLink& a, const StringLink& b) {
            return a.to - a.from < b.to - b.from;
        })->derived = true;
    return grouped;
}

std::string figure_of(const Job& job, const StringLink& link) {
    const double each = (link.to - link.from) / link.times;
    const std::string figure =
        link.times > 1 ? fmt::format("{}× {}", link.times, job.figure(each)) : job.figure(each);
    return link.derived ? "(" + figure + ")" : figure;
}

/// Too many links too short for their figures: nobody finds his way in such a string, and the table of cuts
/// tells what it would tell.
bool is_crowded(const MeasureString& string, double height) {
    constexpr std::size_t most_links = 14, most_short = 3;
    const auto is_short = [&](const Measure& m) {
        return m.to - m.from < text_width(m.figure, height, Typeface::lettering) + 0.8;
    };
    return string.size() > most_links ||
           static_cast<std::size_t>(std::count_if(string.begin(), string.end(), is_short)) > most_short;
}

} // namespace

double finest_step(const Job& job) {
    const bool metric = job.manner.unit == measure::Unit::mm || job.manner.unit == measure::Unit::cm ||
                        job.manner.unit == measure::Unit::m;
    return metric ? 0.05 : std::max(0.05, 25.4 / job.manner.finest / 2 + 0.01);
}

MeasureString chain(const Job& job, const std::vector<double>& places, double low, double high, double wood,
                    const std::string& part, char axis, const OnPaper& paper) {
    MeasureString string;
    for (const StringLink& link : links_of(places, low, high)) {
        double from = paper(link.from), to = paper(link.to);
        if (from > to) std::swap(from, to);
        if (to - from < 0.05) continue;
        const std::string figure = figure_of(job, link);
        string.push_back({from,
                          to,
                          wood,
                          wood,
                          figure,
                          {part, axis, link.from, link.to, figure, link.derived, link.times}});
    }
    if (is_crowded(string, job.part_figure_height())) return {};
    std::sort(string.begin(), string.end(),
              [](const Measure& a, const Measure& b) { return a.from < b.from; });
    return string;
}

MeasureString overall(const Job& job, double low, double high, double wood, const std::string& part,
                      char axis, const OnPaper& paper) {
    double from = paper(low), to = paper(high);
    if (from > to) std::swap(from, to);
    const std::string figure = job.figure(high - low);
    return {{from, to, wood, wood, figure, {part, axis, low, high, figure, false}}};
}

} // namespace rayfleck::drawing
