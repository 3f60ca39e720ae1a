// Edges of the cut count before edges beyond it where both would run together on paper.

#include "drawing/section_view.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "drawing/balloons.hpp"
#include "drawing/dimension.hpp"
#include "drawing/lettering.hpp"
#include "drawing/section_lines.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Length;

constexpr double least_gap = 0.7;     ///< between lines, mm of paper
constexpr double letter_height = 5.0; ///< of the letters of a section: figures times the root of two
constexpr double least_opening = 1.2; ///< on paper: below that nothing can be pointed at

/// The axis of the piece that runs along the picture's, and its sign.
std::pair<int, double> axis_of(measure::Vector direction) {
    for (int k = 0; k < 3; ++k)
        if (std::abs(direction[k]) > 0.9) return {k, direction[k] > 0 ? 1.0 : -1.0};
    return {0, 1};
}

/// Lines of the rod of an axis, ascending.
std::vector<double> rod_lines(const Job& job, int axis) {
    std::vector<double> lines;
    if (static_cast<std::size_t>(axis) < job.model.piece->rods.size())
        for (const piece::Line& line : job.model.piece->rods[static_cast<std::size_t>(axis)].lines)
            lines.push_back(line.at.value());
    std::sort(lines.begin(), lines.end());
    return lines;
}

enum class ByRods { no, follows, given };
ByRods by_rods(const std::vector<double>& lines, double from, double to) {
    const auto find = [&](double at) {
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (std::abs(lines[i] - at) < 0.01) return static_cast<int>(i);
        return -1;
    };
    const int a = find(from), b = find(to);
    if (a < 0 || b < 0) return ByRods::no;
    return std::abs(a - b) == 1 ? ByRods::given : ByRods::follows;
}

/// Where the wood nearest to the dimensions shows this place: the lowest or leftmost end of a line there.
double wood_at(const std::vector<Segment2>& lines, double at, bool level, double otherwise) {
    double found = otherwise;
    bool any = false;
    for (const Segment2& s : lines)
        for (const Point2 p : {s.a, s.b}) {
            if (std::abs((level ? p.x : p.y) - at) > 0.05) continue;
            const double across = level ? p.y : p.x;
            if (!any || across < found) found = across;
            any = true;
        }
    return found;
}

struct Paper2 {
    Point2 origin;
    double scale;
    double x(double picture) const { return origin.x + scale * picture; }
    double y(double picture) const { return origin.y + scale * picture; }
};

/// Openings between two parts that stay open to either side: not the bore of a dowel, nor a groove.
std::vector<Opening> clear_openings(const std::vector<solid::CutArea>& areas, bool level, double place,
                                    double least) {
    constexpr double beside = 5; // mm of wood
    std::vector<Opening> openings = openings_along(areas, level, place, least);
    if (openings.empty()) return openings;
    const std::vector<Opening> below = openings_along(areas, level, place - beside, 0),
                               above = openings_along(areas, level, place + beside, 0);
    const auto stays = [](const Opening& o, const std::vector<Opening>& others) {
        const double middle = (o.from + o.to) / 2;
        return std::any_of(others.begin(), others.end(),
                           [&](const Opening& other) { return other.from < middle && middle < other.to; });
    };
    std::erase_if(openings,
                  [&](const Opening& o) { return o.same_part || (!stays(o, below) || !stays(o, above)); });
    return openings;
}

/// Strings of the openings along one way, the shorter nearer to the wood.
std::vector<MeasureString> opening_strings(const Job& job, const Section& section, bool level,
                                           const std::vector<Segment2>& lines, const Paper2& paper,
                                           ToldOpenings& told) {
    const auto [axis, sign] = axis_of(level ? section.view.right : section.view.up);
    const std::vector<double> rods = rod_lines(job, axis);
    const double least = least_opening / paper.scale;
    const double edge = level ? section.cut.box.bottom : section.cut.box.left;
    std::vector<std::vector<Opening>> all;
    for (const double place : places_for_lines(section.cut.areas, level))
        if (auto openings = clear_openings(section.cut.areas, level, place, least); !openings.empty())
            all.push_back(std::move(openings));
    std::vector<MeasureString> strings;
    constexpr int most_strings = 2;
    for (int n = 0; n < most_strings; ++n) {
        // The line that tells most that is new.
        const auto fresh = [&](const Opening& o) {
            double from = sign * o.from, to = sign * o.to;
            if (from > to) std::swap(from, to);
            return by_rods(rods, from, to) != ByRods::given && !told.knows(axis, from, to);
        };
        const std::vector<Opening>* best = nullptr;
        long most = 0;
        for (const auto& openings : all) {
            const long count = std::count_if(openings.begin(), openings.end(), fresh);
            if (count > most) best = &openings, most = count;
        }
        if (!best) break;
        MeasureString string;
        for (const Opening& o : *best) {
            if (!fresh(o)) continue;
            double from = sign * o.from, to = sign * o.to;
            if (from > to) std::swap(from, to);
            told.tell(axis, from, to);
            Measure m;
            m.from = level ? paper.x(o.from) : paper.y(o.from);
            m.to = level ? paper.x(o.to) : paper.y(o.to);
            const auto start = [&](double at) {
                const double across = wood_at(lines, at, level, edge);
                return level ? paper.y(across) : paper.x(across);
            };
            m.start_from = start(o.from);
            m.start_to = start(o.to);
            m.figure = job.figure(to - from);
            const bool follows = by_rods(rods, from, to) == ByRods::follows;
            if (follows) m.figure = "(" + m.figure + ")";
            m.record = {"", "XYZ"[axis], from, to, m.figure, follows};
            string.push_back(std::move(m));
        }
        strings.push_back(std::move(string));
    }
    return strings;
}

} // namespace

bool ToldOpenings::knows(int axis, double from, double to) const {
    return told_.contains({axis, std::lround(from * 10), std::lround(to * 10)});
}

void ToldOpenings::tell(int axis, double from, double to) {
    told_.insert({axis, std::lround(from * 10), std::lround(to * 10)});
}

Section cut_section(const Job& job, const SectionPlane& plane, const std::string& letter) {
    Section section{plane, letter, section_view_along(job, plane.axis), {}};
    const double offset = plane.at * section.view.towards[plane.axis];
    section.cut = cut_through(job.placed, section.view, offset);
    return section;
}

Rect room_round_section(const Section& section, double scale) {
    // Two strings of sizes at the left and below, a row of numbers at the right and above, the title.
    return {-24, -24, section.cut.box.width() * scale + 22, section.cut.box.height() * scale + 36};
}

Block section_view(const Job& job, const Hatching& hatching, const Section& section, const Scale& scale,
                   ToldOpenings& told) {
    Block block;
    const Rect& box = section.cut.box;
    const Paper2 paper{{-box.left * scale.factor, -box.bottom * scale.factor}, scale.factor};
    const std::string title = section.letter + "–" + section.letter;
    std::vector<int> parts(job.placed.size());
    std::iota(parts.begin(), parts.end(), 0);
    const std::vector<Segment2> outlines =
        thinned(united(draw_cut_areas(block, job, hatching, section.cut.areas, parts, section.view,
                                      scale.factor, paper.origin, title)),
                least_gap);
    std::vector<Segment2> filled_sides, beyond;
    for (const solid::CutArea& area : section.cut.areas)
        for (const Segment2& s : sides_of(area.rings))
            filled_sides.push_back({{paper.x(s.a.x), paper.y(s.a.y)}, {paper.x(s.b.x), paper.y(s.b.y)}});
    for (const Segment2& s : section.cut.beyond)
        beyond.push_back({{paper.x(s.a.x), paper.y(s.a.y)}, {paper.x(s.b.x), paper.y(s.b.y)}});
    std::vector<Segment2> firm = outlines;
    firm.insert(firm.end(), filled_sides.begin(), filled_sides.end());
    std::vector<Segment2> edges = thinned(beyond, least_gap, united(firm));
    edges.insert(edges.end(), outlines.begin(), outlines.end());
    for (std::vector<Point2>& points : chained(united(edges)))
        if (points.size() > 2 || std::hypot(points[0].x - points[1].x, points[0].y - points[1].y) > least_gap)
            block.stroke(std::move(points), Pen::visible, Role::edge);

    std::vector<Segment2> lines = section.cut.beyond;
    for (const solid::CutArea& area : section.cut.areas) {
        const auto sides = sides_of(area.rings);
        lines.insert(lines.end(), sides.begin(), sides.end());
    }
    std::map<int, std::vector<Point2>> of_row;
    for (const solid::CutArea& area : section.cut.areas) {
        const int row = job.row_of_part[static_cast<std::size_t>(area.part)];
        if (row < 0) continue;
        for (const Point2 p : places_within(area.rings)) of_row[row].push_back({paper.x(p.x), paper.y(p.y)});
    }
    std::vector<BalloonWanted> wanted;
    for (auto& [row, places] : of_row)
        wanted.push_back({std::to_string(job.cut_list.rows[static_cast<std::size_t>(row)].reference),
                          std::move(places), link_to_row + row});
    // Figures that found no room between their lines may stand out at the right or above.
    const Rect drawn{0, 0, std::max(box.width() * scale.factor, block.box().right),
                     std::max(box.height() * scale.factor, block.box().top)};
    draw_balloons(block, drawn, wanted, 7, {false, true, true, false});
    // After the balloons, so that no figure stands in the way of a leader.
    const double figure = job.figure_height();
    draw_dimensions(block, ViewSide::below, 0, opening_strings(job, section, true, lines, paper, told),
                    figure);
    draw_dimensions(block, ViewSide::left, 0, opening_strings(job, section, false, lines, paper, told),
                    figure);

    const std::string at = scale.ratio;
    const double letters = text_width(title, letter_height, Typeface::lettering),
                 ratio = text_width(at, heading_height, Typeface::lettering);
    const double y = block.box().top + 4, x = drawn.middle().x - (letters + 4 + ratio) / 2;
    block.text({{x, y}, title, letter_height, Typeface::lettering, Ink::black, 0});
    block.text({{x + letters + 4, y}, at, heading_height, Typeface::lettering, Ink::black, 0});
    return block;
}

} // namespace rayfleck::drawing
