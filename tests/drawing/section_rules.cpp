// The areas come from the section records of a sheet, all else from its strokes and texts. Whether two areas
// touch is told by their rings: sides that lie on one another within 0.05 mm of paper.

#include "section_rules.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

namespace rayfleck::testing {
namespace {

using drawing::Point2;
using drawing::SectionRecord;
using drawing::Sheet;

using Ring = std::vector<Point2>;

double cross(Point2 a, Point2 b) { return a.x * b.y - a.y * b.x; }
Point2 from_to(Point2 a, Point2 b) { return {b.x - a.x, b.y - a.y}; }

bool inside(const std::vector<Ring>& rings, Point2 p) {
    bool in = false;
    for (const Ring& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const Point2 a = ring[j], b = ring[i];
            if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
        }
    return in;
}

double distance_to_rim(const std::vector<Ring>& rings, Point2 p) {
    double least = 1e300;
    for (const Ring& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const Point2 side = from_to(ring[j], ring[i]), to = from_to(ring[j], p);
            const double square = side.x * side.x + side.y * side.y;
            const double t = square > 0 ? std::clamp((to.x * side.x + to.y * side.y) / square, 0.0, 1.0) : 0;
            least = std::min(least, std::hypot(to.x - t * side.x, to.y - t * side.y));
        }
    return least;
}

bool side_by_side(const SectionRecord& a, const SectionRecord& b) {
    constexpr double close = 0.05, long_enough = 1;
    for (const Ring& ring : a.rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const Point2 way = from_to(ring[j], ring[i]);
            const double length = std::hypot(way.x, way.y);
            if (length < long_enough) continue;
            for (const Ring& other : b.rings)
                for (std::size_t k = 0, l = other.size() - 1; k < other.size(); l = k++) {
                    const Point2 p = from_to(ring[j], other[l]), q = from_to(ring[j], other[k]);
                    if (std::abs(cross(way, p)) > close * length || std::abs(cross(way, q)) > close * length)
                        continue;
                    const double u = (way.x * p.x + way.y * p.y) / length,
                                 v = (way.x * q.x + way.y * q.y) / length;
                    if (std::min(length, std::max(u, v)) - std::max(0.0, std::min(u, v)) > long_enough)
                        return true;
                }
        }
    return false;
}

/// Difference of two directions without sense, degrees, 0 to 90.
double between(double a, double b) {
    const double d = std::fmod(std::abs(a - b), 180.0);
    return std::min(d, 180 - d);
}

double girth_thickness(const SectionRecord& area) {
    double girth = 0, twice = 0;
    for (const Ring& ring : area.rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            girth += std::hypot(ring[i].x - ring[j].x, ring[i].y - ring[j].y);
            twice += cross(ring[j], ring[i]);
        }
    const double half = girth / 2, extent = std::abs(twice) / 2, root = half * half - 4 * extent;
    return root > 0 ? (half - std::sqrt(root)) / 2 : std::sqrt(extent);
}

class Judge {
  public:
    explicit Judge(const drawing::Set& set) {
        for (std::size_t i = 0; i < set.sheets.size(); ++i) {
            sheet_ = &set.sheets[i];
            name_ = fmt::format("sheet {} ({})", i + 1, sheet_->title);
            if (!sheet_->sections.empty()) judge_areas();
        }
        judge_letters(set);
    }
    std::vector<std::string> faults;

  private:
    void say(const std::string& what) { faults.push_back(name_ + ": " + what); }

    void judge_areas() {
        const auto& areas = sheet_->sections;
        for (const SectionRecord& area : areas) {
            judge_hatch(area);
            const double thin = girth_thickness(area);
            if (area.filled ? thin > 2.01 : thin < 1.99)
                say(fmt::format("D20: {} is {:.2f} thick and {}", area.part, thin,
                                area.filled ? "filled" : "not filled"));
        }
        for (std::size_t i = 0; i < areas.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                const SectionRecord &a = areas[i], &b = areas[j];
                if (a.filled || b.filled || a.part == b.part || a.section != b.section) continue;
                if (between(a.turn, b.turn) < 1 && std::abs(a.pitch / b.pitch - 1) < 0.05 &&
                    side_by_side(a, b))
                    say(fmt::format("D18: {} and {} touch and are hatched alike in {}", a.part, b.part,
                                    a.section));
            }
        for (const drawing::Item& item : sheet_->items) {
            const auto* stroke = std::get_if<drawing::Stroke>(&item);
            if (stroke == nullptr) continue;
            if (stroke->role == drawing::Role::hatch) judge_hatch_line(*stroke);
            if (stroke->pen == drawing::Pen::hidden) judge_hidden(*stroke);
        }
    }

    void judge_hatch(const SectionRecord& area) {
        if (area.grain != drawing::CutGrain::end_grain || area.filled) return;
        const double lean = between(area.turn, 0);
        if (std::abs(lean - 45) > 0.5 && std::abs(lean - 30) > 0.5 && std::abs(lean - 60) > 0.5)
            say(fmt::format("D17: end grain of {} is hatched at {:.1f} degrees", area.part, area.turn));
        double along = 0, all = 0;
        for (const Ring& ring : area.rings)
            for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
                const Point2 side = from_to(ring[j], ring[i]);
                const double length = std::hypot(side.x, side.y);
                all += length;
                if (between(std::atan2(side.y, side.x) * 180 / 3.14159265358979, area.turn) < 5)
                    along += length;
            }
        // Of a round or many-sided area some facet always lies so.
        if (along > 0.2 * all)
            say(fmt::format("D17: the hatch of {} runs along an edge in {}", area.part, area.section));
        // A part leans one way in all its sections.
        const bool rises = area.turn < 90;
        const auto [at, fresh] = lean_.emplace(area.part, rises);
        if (!fresh && at->second != rises) say(fmt::format("D18: {} is hatched in two ways", area.part));
    }

    void judge_hatch_line(const drawing::Stroke& stroke) {
        const Point2 a = stroke.points.front(), b = stroke.points.back(), m{(a.x + b.x) / 2, (a.y + b.y) / 2};
        for (const SectionRecord& area : sheet_->sections)
            if (!area.filled && inside(area.rings, m) && distance_to_rim(area.rings, a) < 1e300) return;
        // The samples of the legend stand in frames of their own.
        for (const drawing::Item& item : sheet_->items)
            if (const auto* frame = std::get_if<drawing::Stroke>(&item);
                frame && frame->role == drawing::Role::mark && frame->points.size() == 5 &&
                inside({frame->points}, m))
                return;
        say(fmt::format("D22: a hatch line at {:.1f}, {:.1f} lies in no cut area", m.x, m.y));
    }

    void judge_hidden(const drawing::Stroke& stroke) {
        for (std::size_t i = 0; i + 1 < stroke.points.size(); ++i) {
            const Point2 m{(stroke.points[i].x + stroke.points[i + 1].x) / 2,
                           (stroke.points[i].y + stroke.points[i + 1].y) / 2};
            for (const SectionRecord& area : sheet_->sections)
                if (inside(area.rings, m) && distance_to_rim(area.rings, m) > 0.3)
                    say(fmt::format("D22: a hidden line at {:.1f}, {:.1f} runs through {}", m.x, m.y,
                                    area.part));
        }
    }

    void judge_letters(const drawing::Set& set) {
        std::map<std::string, int> lone;
        std::vector<std::string> sections, details;
        bool legend = false, areas = false;
        for (const Sheet& sheet : set.sheets) {
            for (const drawing::Item& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item)) {
                    // Letters of steps or labels on other sheets are not meant.
                    if (!sheet.sections.empty() || sheet.title.starts_with("Section")) ++lone[text->words];
                    legend = legend || text->words == "hatches of the sections";
                }
            for (const SectionRecord& area : sheet.sections) {
                areas = true;
                auto& names = area.section.find("–") == std::string::npos ? details : sections;
                if (std::find(names.begin(), names.end(), area.section) == names.end())
                    names.push_back(area.section);
            }
        }
        name_ = "set";
        for (const std::string& section : sections) {
            const std::string letter = section.substr(0, section.find("–"));
            if (lone[letter] < 2)
                say(fmt::format("D16: the letter {} does not stand at both ends of its line", letter));
            if (lone[section] != 1)
                say(fmt::format("D16: the title {} stands {} times", section, lone[section]));
        }
        for (const std::string& detail : details)
            if (lone[detail] < 2) say(fmt::format("D23: the letter {} does not stand at its place", detail));
        if (areas && !sections.empty() && !legend) say("D19: no legend of the hatches");
    }

    const Sheet* sheet_ = nullptr;
    std::string name_;
    std::map<std::string, bool> lean_;
};

} // namespace

std::vector<std::string> faults_of_sections(const drawing::Set& set) { return Judge(set).faults; }

} // namespace rayfleck::testing
