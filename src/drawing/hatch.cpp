// Strokes: every edge of the rings is met with the lines it spans, lines are numbered by their distance from
// one place of the part, and the meetings of a line, sorted along it, are joined two by two. The numbers of
// the parts are a colouring of the graph of parts that lie side by side, taken greedily in the order of the
// text.
//
// Pitch: about three tenths of the lesser of thickness and width on paper, for sheet goods half of the
// thickness (German teaching); wider in wide areas.

#include "drawing/hatch.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "drawing/joint_detail.hpp"
#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Vector;

constexpr double degree = std::numbers::pi / 180;

double ring_area(const std::vector<Point2>& ring) {
    double twice = 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
        twice += ring[j].x * ring[i].y - ring[i].x * ring[j].y;
    return twice / 2;
}

bool within(const std::vector<Point2>& ring, Point2 p) {
    bool inside = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
        if ((ring[i].y > p.y) != (ring[j].y > p.y) &&
            p.x < (ring[j].x - ring[i].x) * (p.y - ring[i].y) / (ring[j].y - ring[i].y) + ring[i].x)
            inside = !inside;
    return inside;
}

/// The turn of a line, 0 to 180 degrees.
double turn_of(double dx, double dy) {
    double turn = std::atan2(dy, dx) / degree;
    if (turn < 0) turn += 180;
    return turn >= 180 - 1e-6 ? turn - 180 : turn;
}

double between_turns(double a, double b) {
    const double apart = std::abs(a - b);
    return std::min(apart, 180 - apart);
}

/// An edge of the area runs along this direction.
bool runs_along_an_edge(const Rings& rings, double turn) {
    constexpr double near = 10, long_enough = 1.5;
    for (const auto& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const double dx = ring[i].x - ring[j].x, dy = ring[i].y - ring[j].y;
            if (std::hypot(dx, dy) > long_enough && between_turns(turn_of(dx, dy), turn) < near) return true;
        }
    return false;
}

/// Pitches go in steps of this ratio, and each number of a part takes its own place within a step: so no two
/// numbers ever have the same pitch, which is all that tells long grain beside long grain apart.
constexpr double step_of_pitches = 1.6;
constexpr double place_in_step[] = {0, 3, 1, 4, 2, 5};
constexpr int numbers_there_are = 6;

bool boxes_touch(const measure::Box& a, const measure::Box& b) {
    constexpr double within = 0.1; // mm
    for (int k = 0; k < 3; ++k)
        if (a.low[k] > b.high[k] + within || b.low[k] > a.high[k] + within) return false;
    return true;
}

Vector fibre_of(const piece::Part& part) {
    const double turn = part.grain.in_degrees() * degree;
    return part.frame.x * std::cos(turn) + part.frame.y * std::sin(turn);
}

} // namespace

double area_of(const Rings& rings) {
    double area = 0;
    for (const auto& ring : rings) area += ring_area(ring);
    return std::abs(area);
}

std::vector<Rings> connected(const Rings& rings) {
    if (rings.size() == 1) return {rings};
    std::vector<Rings> found;
    for (const auto& ring : rings)
        if (ring.size() > 2 && ring_area(ring) > 0) found.push_back({ring});
    for (const auto& ring : rings) {
        if (ring.size() < 3 || ring_area(ring) > 0) continue;
        // A hole belongs to the smallest rim round it.
        Rings* best = nullptr;
        for (Rings& rim : found)
            if (within(rim.front(), ring.front()) &&
                (!best || ring_area(rim.front()) < ring_area(best->front())))
                best = &rim;
        if (best) best->push_back(ring);
    }
    return found;
}

double strip_thickness(const Rings& rings) {
    double girth = 0;
    for (const auto& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
            girth += std::hypot(ring[i].x - ring[j].x, ring[i].y - ring[j].y);
    const double area = area_of(rings), half = girth / 2;
    // Sides a, b with a b = area and a + b = half.
    const double root = half * half - 4 * area;
    return root > 0 ? (half - std::sqrt(root)) / 2 : std::sqrt(area);
}

Hatching::Hatching(const Job& job) : job_(job), numbers_(job.model.made.size(), -1) {
    std::vector<std::vector<int>> touching(numbers_.size());
    const auto touch = [&](int a, int b) {
        touching[static_cast<std::size_t>(a)].push_back(b);
        touching[static_cast<std::size_t>(b)].push_back(a);
    };
    for (const joinery::Contact& contact : job.model.contacts) touch(contact.a, contact.b);
    for (const joinery::Joint& joint : job.model.joints) touch(joint.a, joint.b);
    // Parts may lie side by side in a section without touching by a face: their boxes tell.
    const std::vector<measure::Box> boxes = boxes_of_parts(job.placed);
    for (std::size_t a = 0; a < boxes.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            if (boxes_touch(boxes[a], boxes[b])) touch(static_cast<int>(a), static_cast<int>(b));
    // Copies of a part look alike as far as they can.
    std::vector<int> of_row(job.cut_list.rows.size(), -1);
    for (std::size_t p = 0; p < numbers_.size(); ++p) {
        bool taken[numbers_there_are] = {};
        for (const int other : touching[p])
            if (const int n = numbers_[static_cast<std::size_t>(other)]; n >= 0) taken[n] = true;
        const int row = job.row_of_part[p];
        int number = row >= 0 ? of_row[static_cast<std::size_t>(row)] : -1;
        if (number < 0 || taken[number]) {
            number = 0;
            while (number + 1 < numbers_there_are && taken[number]) ++number;
        }
        numbers_[p] = number;
        if (row >= 0 && of_row[static_cast<std::size_t>(row)] < 0)
            of_row[static_cast<std::size_t>(row)] = number;
    }
}

Hatch Hatching::of(int part, const solid::View& view, double scale, Point2 centre, const Rings& areas) const {
    const piece::Part& p = *job_.made(part).part;
    const int n = number(part);
    const auto lies = [&](Vector v) { return turn_of(dot(v, view.right), dot(v, view.up)); };
    const auto away = [&](Vector v) { return std::abs(dot(v, view.towards)); };
    const double square_enough = std::sqrt(0.5);
    const Vector fibre = fibre_of(p);
    Hatch hatch;
    const double thin = std::min(p.thickness.value(), p.width.value()) * scale;
    if (p.species != nullptr && p.species->is_sheet() && away(p.frame.z) < square_enough) {
        hatch.grain = CutGrain::sheet;
        hatch.turn = lies(p.frame.z);
        hatch.pitch = std::clamp(0.5 * p.thickness.value() * scale, 1.0, 4.0);
    } else if (away(fibre) > square_enough) {
        hatch.grain = CutGrain::end_grain;
        const bool falls = n % 2 == 1;
        for (const double lean : {45.0, 60.0, 30.0}) {
            hatch.turn = falls ? 180 - lean : lean;
            if (!runs_along_an_edge(areas, hatch.turn)) break;
        }
        hatch.pitch = std::clamp(0.3 * thin, 1.0, 3.0);
    } else {
        hatch.grain = CutGrain::long_grain;
        hatch.turn = lies(fibre);
        hatch.pitch = std::clamp(0.3 * thin, 1.0, 3.0);
    }
    // A wide area needs fewer lines to be read as wood.
    double widest = 0;
    for (const Rings& area : connected(areas)) widest = std::max(widest, strip_thickness(area));
    constexpr double wide = 15, at_most = 2.5;
    hatch.pitch *= std::clamp(widest / wide, 1.0, at_most);
    const double step =
        std::max(0.0, std::round(std::log(hatch.pitch / closest_hatch) / std::log(step_of_pitches)));
    hatch.pitch = closest_hatch * std::pow(step_of_pitches, step + place_in_step[n] / numbers_there_are);
    hatch.through = centre;
    return hatch;
}

void draw_hatch(Block& block, const Rings& rings, const Hatch& hatch, const std::vector<Quad>& texts) {
    const double c = std::cos(hatch.turn * degree), s = std::sin(hatch.turn * degree);
    // Along and across the lines; lines lie at half steps from the place given.
    const auto along = [&](Point2 p) { return p.x * c + p.y * s; };
    const double start = -hatch.through.x * s + hatch.through.y * c;
    const auto across = [&](Point2 p) { return (-p.x * s + p.y * c - start) / hatch.pitch - 0.5; };
    struct Beside {
        double at, from, to;
    };
    std::map<long, std::vector<double>> meetings;
    std::vector<Beside> beside;
    for (const auto& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const double va = across(ring[j]), vb = across(ring[i]), ua = along(ring[j]), ub = along(ring[i]);
            if (std::abs(vb - va) * hatch.pitch < 0.05 && std::abs(ub - ua) > 0.5)
                beside.push_back({(va + vb) / 2, std::min(ua, ub), std::max(ua, ub)});
            const double low = std::min(va, vb), high = std::max(va, vb);
            // Each edge owns its lower end, so that a corner is met once or twice, never by halves.
            for (long k = static_cast<long>(std::ceil(low)); static_cast<double>(k) < high; ++k)
                meetings[k].push_back(ua + (ub - ua) * (static_cast<double>(k) - va) / (vb - va));
        }
    const auto draw = [&](long k, double from, double to) {
        constexpr double shortest = 0.4;
        if (to - from < shortest) return;
        const double v = start + (static_cast<double>(k) + 0.5) * hatch.pitch;
        block.line({from * c - v * s, from * s + v * c}, {to * c - v * s, to * s + v * c}, Pen::thin,
                   Role::hatch);
    };
    for (auto& [k, places] : meetings) {
        std::sort(places.begin(), places.end());
        std::vector<std::pair<double, double>> closed;
        // A line that runs beside an edge would only make the edge look thick.
        for (const Beside& edge : beside)
            if (std::abs(edge.at - static_cast<double>(k)) * hatch.pitch < 0.35)
                closed.push_back({edge.from, edge.to});
        const double v = start + (static_cast<double>(k) + 0.5) * hatch.pitch;
        for (const Quad& text : texts) {
            double low = 1e300, high = -1e300, near = 1e300, far = -1e300;
            for (const Point2 p : text) {
                low = std::min(low, -p.x * s + p.y * c), high = std::max(high, -p.x * s + p.y * c);
                near = std::min(near, along(p)), far = std::max(far, along(p));
            }
            if (v > low && v < high) closed.push_back({near, far});
        }
        std::sort(closed.begin(), closed.end());
        for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
            double at = places[i];
            for (const auto& [from, to] : closed) {
                if (to <= at || from >= places[i + 1]) continue;
                if (from > at) draw(k, at, from);
                at = std::max(at, to);
            }
            if (places[i + 1] > at) draw(k, at, places[i + 1]);
        }
    }
}

Block legend_of_hatches(const Job& job) {
    Block block;
    constexpr double wide = 16, high = 6, step = 9;
    double top = set_lines(block, {"hatches of the sections"}, 0, 0, note_height, Typeface::sans_bold) - 1.5;
    const auto row = [&](const Hatch* hatch, const std::string& words) {
        const Rect box{0, top - high, wide, top};
        if (hatch)
            draw_hatch(block, {corners(box)}, *hatch, {});
        else
            block.fill(Rect{0, top - high / 2 - 0.7, wide, top - high / 2 + 0.7}, Ink::black);
        if (hatch) block.frame(box, Pen::visible, Role::mark);
        block.text({{wide + 4, top - high / 2 - note_height / 2},
                    words,
                    note_height,
                    Typeface::sans,
                    Ink::black,
                    0});
        top -= step;
    };
    const Hatch end{CutGrain::end_grain, 45, 1.6, {0, 0}};
    const Hatch along{CutGrain::long_grain, 0, 1.5, {wide / 2, top - step - high / 2}};
    row(&end, "end grain; neighbours lean the other way or lie closer");
    row(&along, "long grain, lines along the fibre");
    bool sheets = false;
    for (const joinery::Made& made : job.model.made)
        sheets = sheets || (made.part->species != nullptr && made.part->species->is_sheet());
    const Hatch sheet{CutGrain::sheet, 90, 2.2, {wide / 2, 0}};
    if (sheets) row(&sheet, "sheet goods, lines square to the face");
    row(nullptr, "thinner than 2 mm on this paper");
    return block;
}

} // namespace rayfleck::drawing
