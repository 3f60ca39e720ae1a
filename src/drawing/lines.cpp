// Widths and dashes of ISO 128 lines, group 0.5: wide 0.5 mm, narrow 0.25 mm. Dashes are multiples of the
// line width d (ISO 128-20 and -21 as carried by the common ISO line-type file): dashed 12d 3d, long-dash dot
// 24d 3d 0.5d 3d, long-dash double-dot 24d 3d 0.5d 3d 0.5d 3d.
//
// A pattern keeps its lengths and is only shifted along the line. Either the middle of a dash or the middle
// of the stretch between two dashes is laid on the middle of the line; dashes take more than half of every
// pattern, so one of the two always ends on a dash, and both ends look alike.

#include "drawing/lines.hpp"

#include <cmath>
#include <numeric>

namespace rayfleck::drawing {
namespace {

constexpr double wide = 0.5, narrow = 0.25;

std::vector<double> multiples(std::vector<double> pattern, double width) {
    for (double& length : pattern) length *= width;
    return pattern;
}

} // namespace

double width_of(Pen pen) {
    switch (pen) {
    case Pen::visible:
    case Pen::cutting_plane:
        return wide;
    case Pen::hidden:
    case Pen::thin:
    case Pen::centre:
    case Pen::phantom:
        break;
    }
    return narrow;
}

std::vector<double> dashes_of(Pen pen) {
    switch (pen) {
    case Pen::visible:
    case Pen::thin:
        break;
    case Pen::hidden:
        return multiples({12, 3}, narrow);
    case Pen::centre:
        return multiples({24, 3, 0.5, 3}, narrow);
    case Pen::cutting_plane:
        return multiples({24, 3, 0.5, 3}, wide);
    case Pen::phantom:
        return multiples({24, 3, 0.5, 3, 0.5, 3}, narrow);
    }
    return {};
}

double dash_start(Pen pen, double length) {
    const std::vector<double> dashes = dashes_of(pen);
    if (dashes.empty()) return 0;
    const double dash = dashes.front();
    const double period = std::accumulate(dashes.begin(), dashes.end(), 0.0);
    const auto place_in_pattern = [&](double at) { return at - period * std::floor(at / period); };
    // Start when the middle of the line lies at `middle` of the pattern, and how much of a dash is left from
    // there.
    const auto start_for = [&](double middle) { return place_in_pattern(middle - length / 2); };
    const auto end_dash = [&](double start) { return start < dash ? dash - start : 0.0; };
    const double on_dash = start_for(dash / 2), on_gap = start_for((dash + period) / 2);
    // A line that would be one unbroken dash says nothing about its kind; two short dashes do, if there is
    // room.
    if (length < dash && end_dash(on_gap) > 0 && length > (period - dash) + dash / 4) return on_gap;
    return end_dash(on_dash) >= end_dash(on_gap) ? on_dash : on_gap;
}

std::vector<std::vector<Point2>> dash_pieces(const Stroke& stroke) {
    const std::vector<Point2>& p = stroke.points;
    if (p.size() < 3 || dashes_of(stroke.pen).empty()) return {p};
    std::vector<std::vector<Point2>> pieces{{p.front()}};
    const double sharp = std::cos(std::acos(-1.0) / 6);
    for (std::size_t i = 1; i < p.size(); ++i) {
        pieces.back().push_back(p[i]);
        if (i + 1 == p.size()) break;
        const Point2 in{p[i].x - p[i - 1].x, p[i].y - p[i - 1].y},
            out{p[i + 1].x - p[i].x, p[i + 1].y - p[i].y};
        const double along = in.x * out.x + in.y * out.y;
        if (along < sharp * std::hypot(in.x, in.y) * std::hypot(out.x, out.y)) pieces.push_back({p[i]});
    }
    return pieces;
}

double length_of(const std::vector<Point2>& points) {
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        length += std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    return length;
}

} // namespace rayfleck::drawing
