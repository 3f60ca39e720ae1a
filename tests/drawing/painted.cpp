// The trace is XML with one element a line; only the few elements and attributes that are needed are read.
// Places are in points; the trace gives them before the page's own transformation, so y runs upwards.

#include "painted.hpp"

#include <sstream>
#include <string_view>

#include <fmt/format.h>

namespace rayfleck::testing::painted {
namespace {

constexpr double mm_per_point = 25.4 / 72;

std::string_view attribute(std::string_view line, std::string_view name) {
    const std::string key = fmt::format(" {}=\"", name);
    const std::size_t at = line.find(key);
    if (at == std::string_view::npos) return {};
    const std::size_t from = at + key.size();
    return line.substr(from, line.find('"', from) - from);
}

std::vector<double> numbers(std::string_view text) {
    std::istringstream in{std::string(text)};
    std::vector<double> all;
    for (double value = 0; in >> value;) all.push_back(value);
    return all;
}

double number(std::string_view line, std::string_view name) {
    const auto all = numbers(attribute(line, name));
    return all.empty() ? 0 : all.front();
}

} // namespace

double cap_share(bool lettering) { return lettering ? 23.0 / 32 : 1493.0 / 2048; }

std::vector<Page> pages_of(const std::string& trace) {
    std::vector<Page> pages;
    std::istringstream in(trace);
    Path path;
    bool is_stroke = false;
    Words words;
    std::vector<double> trm;
    Place first, last;
    double last_advance = 0;
    for (std::string line; std::getline(in, line);) {
        const std::size_t open = line.find('<');
        if (open == std::string::npos) continue;
        const std::string_view rest = std::string_view(line).substr(open);
        const auto is = [&](std::string_view tag) { return rest.starts_with(tag); };
        if (is("<page ")) {
            const auto box = numbers(attribute(line, "mediabox"));
            pages.push_back({});
            if (box.size() == 4)
                pages.back().width = (box[2] - box[0]) * mm_per_point,
                pages.back().height = (box[3] - box[1]) * mm_per_point;
        } else if (is("<stroke_path") || is("<fill_path")) {
            is_stroke = is("<stroke_path");
            path = {};
            path.width = number(line, "linewidth") * mm_per_point;
            path.phase = number(line, "dash_phase") * mm_per_point;
            path.dashes = numbers(attribute(line, "dash"));
            for (double& d : path.dashes) d *= mm_per_point;
        } else if (is("<moveto") || is("<lineto")) {
            if (is("<moveto") || path.lines.empty()) path.lines.emplace_back();
            path.lines.back().push_back({number(line, "x") * mm_per_point, number(line, "y") * mm_per_point});
        } else if (is("<closepath")) {
            if (!path.lines.empty()) path.lines.back().push_back(path.lines.back().front());
        } else if ((is("</stroke_path") || is("</fill_path")) && !pages.empty()) {
            (is_stroke ? pages.back().strokes : pages.back().fills).push_back(path);
        } else if (is("<span")) {
            words = {};
            words.lettering = attribute(line, "font").find("Routed") != std::string_view::npos;
            trm = numbers(attribute(line, "trm"));
            trm.resize(4);
        } else if (is("<g ")) {
            const Place at{number(line, "x") * mm_per_point, number(line, "y") * mm_per_point};
            if (words.says.empty()) first = at;
            last = at;
            last_advance = number(line, "adv");
            words.says += attribute(line, "unicode");
        } else if (is("</span") && !pages.empty()) {
            words.size = std::hypot(trm[0], trm[1]) * mm_per_point;
            const double c = trm[0] / std::hypot(trm[0], trm[1]), s = trm[1] / std::hypot(trm[0], trm[1]);
            words.turned = std::abs(s) > 0.5;
            const double along = last_advance * words.size, up = cap_share(words.lettering) * words.size;
            const Place end{last.x + c * along, last.y + s * along};
            words.box = {first, end, {end.x - s * up, end.y + c * up}, {first.x - s * up, first.y + c * up}};
            if (words.says.find_first_not_of(' ') != std::string::npos) pages.back().words.push_back(words);
        }
    }
    return pages;
}

} // namespace rayfleck::testing::painted
