// Arrows are to scale with each other, the longest of a fixed length on paper, for true to the picture's
// scale they could not be seen: a full one for the second state (the dampest season), a broken one for the
// first (the driest). Both figures stand below. The window is the part's own picture. A part so
// slender that nothing could be told from it is shown only near the place, with a stretch six times its own
// thickness to either side. Fibres are parallel lines clipped to the face by even-odd crossing; on end grain,
// dots would be needed and none is drawn.

#include "drawing/finding_picture.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/view.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Point;
using measure::Vector;

Point2 seen_at(Point p, const solid::View& view) { return {dot(p, view.right), dot(p, view.up)}; }

/// The stretches of the segment inside a window.
std::vector<Segment2> windowed(const std::vector<Segment2>& segments, const Rect& window) {
    std::vector<Segment2> out;
    for (const Segment2& s : segments) {
        double from = 0, to = 1;
        const double dx = s.b.x - s.a.x, dy = s.b.y - s.a.y;
        const auto cut = [&](double step, double room) {
            if (std::abs(step) < 1e-12) {
                if (room < 0) from = 2;
                return;
            }
            if (step > 0)
                to = std::min(to, room / step);
            else
                from = std::max(from, room / step);
        };
        cut(-dx, s.a.x - window.left), cut(dx, window.right - s.a.x), cut(-dy, s.a.y - window.bottom),
            cut(dy, window.top - s.a.y);
        if (from < to)
            out.push_back({{s.a.x + dx * from, s.a.y + dy * from}, {s.a.x + dx * to, s.a.y + dy * to}});
    }
    return out;
}

/// Lines along the fibre on a face, as segments in the picture plane.
std::vector<Segment2> fibres_on(const solid::Placed& placed, const solid::Face& face, double grain_degrees,
                                const solid::View& view, double pitch) {
    const double a = grain_degrees * std::acos(-1.0) / 180;
    Vector fibre{std::cos(a), std::sin(a), 0};
    fibre = fibre - face.plane.normal * dot(fibre, face.plane.normal);
    if (measure::norm(fibre) < 0.5) return {};
    fibre = placed.frame.turn_out(measure::unit(fibre));
    const Vector across = cross(placed.frame.turn_out(face.plane.normal), fibre);
    // Pitch is wanted in the picture, where the direction across is shortened.
    const Point2 across_seen = seen_at(across, view), fibre_seen = seen_at(fibre, view);
    const double fibre_length = std::hypot(fibre_seen.x, fibre_seen.y);
    if (fibre_length < 0.1) return {};
    const double apart = std::abs(across_seen.x * fibre_seen.y - across_seen.y * fibre_seen.x) / fibre_length;
    const double step = pitch / std::max(apart, 0.2);
    std::vector<std::vector<Point2>> loops; // (along, across)
    double low = HUGE_VAL, high = -HUGE_VAL;
    Point origin;
    for (const auto& loop : face.loops) {
        loops.emplace_back();
        for (const Point& p : loop) {
            const Point out = placed.frame.out(p);
            if (loops.size() == 1 && loops.back().empty()) origin = out;
            loops.back().push_back({dot(out, fibre), dot(out, across)});
            low = std::min(low, loops.back().back().y);
            high = std::max(high, loops.back().back().y);
        }
    }
    const double depth = dot(origin, placed.frame.turn_out(face.plane.normal));
    std::vector<Segment2> out;
    for (double v = low + step * 0.5; v < high; v += step) {
        std::vector<double> crossings;
        for (const auto& loop : loops)
            for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++)
                if ((loop[i].y > v) != (loop[j].y > v))
                    crossings.push_back(loop[i].x +
                                        (v - loop[i].y) * (loop[j].x - loop[i].x) / (loop[j].y - loop[i].y));
        std::sort(crossings.begin(), crossings.end());
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
            // Fibres stop a little short of the edges, so that they are not taken for edges.
            const double short_by = std::min(pitch, (crossings[i + 1] - crossings[i]) / 6);
            const auto place = [&](double u) {
                return seen_at(fibre * u + across * v + placed.frame.turn_out(face.plane.normal) * depth,
                               view);
            };
            out.push_back({place(crossings[i] + short_by), place(crossings[i + 1] - short_by)});
        }
    }
    return out;
}

/// Isometric from one of the eight corners of the piece.
solid::View from_corner(double x, double y, double z) {
    solid::View view;
    view.towards = measure::unit({x, y, z});
    view.right = measure::unit({-y, x, 0});
    view.up = cross(view.towards, view.right);
    return view;
}

/// The corner from which most of the first part's lines are seen, and the place in question from outside
/// rather than through the wood. From the front, the right and above if that is as good as any.
solid::View best_corner(const std::vector<solid::Placed>& parts, const std::optional<Point>& at) {
    solid::View best = solid::isometric_view();
    double best_share = -1;
    for (const double z : {1.0, -1.0})
        for (const auto& [x, y] : {std::pair{1.0, -1.0}, {-1.0, -1.0}, {1.0, 1.0}, {-1.0, 1.0}}) {
            const solid::View view = from_corner(x, y, z);
            double seen = 0;
            for (const solid::Line2& line : solid::visible_lines(parts, view))
                if (line.part == 0) seen += std::hypot(line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y);
            const double all = solid::seen_alone(parts.front(), view).length;
            double share = all > 0 ? seen / all : 0;
            if (at && parts.size() == 1) {
                // Wood between the place and the eye hides it.
                const solid::Placed& part = parts.front();
                for (const auto& [enter, leave] :
                     solid::inside_along(*part.solid, part.frame.in(*at), part.frame.turn_in(view.towards)))
                    if (leave > 0.5) {
                        share -= 0.2;
                        break;
                    }
            }
            // Only a clear gain is worth an unusual point of view.
            if (share > best_share + (best_share < 0 ? 0 : z < 0 ? 0.15 : 0.08)) {
                best = view;
                best_share = share;
            }
        }
    return best;
}

/// From `from` along `by`, with a filled head; broken when asked.
void arrow(Block& block, Point2 from, Point2 by, Ink ink, bool broken) {
    const double length = std::hypot(by.x, by.y);
    if (length < 0.3) return;
    const Point2 along{by.x / length, by.y / length}, across{-along.y, along.x};
    const double head = std::min(1.9, length);
    const Point2 tip{from.x + by.x, from.y + by.y};
    const auto back = [&](double d, double side) {
        return Point2{tip.x - along.x * d + across.x * side, tip.y - along.y * d + across.y * side};
    };
    block.fill({{tip, back(head, 0.75), back(head, -0.75)}}, ink);
    const double shaft = length - head;
    const double dash = broken ? 1.1 : shaft, gap = broken ? 0.7 : 0;
    for (double at = 0; at < shaft - 0.05; at += dash + gap) {
        const double end = std::min(shaft, at + dash);
        block.line({from.x + along.x * at, from.y + along.y * at},
                   {from.x + along.x * end, from.y + along.y * end}, Pen::visible, Role::picture, ink);
    }
}

/// Arrows for both states of every moving edge, and the line that tells their figures. `to_paper` carries a
/// place of the piece to the picture, `direction` a way of the piece to a direction on paper.
template <class Place>
void movements(Block& block, const findings::Finding& finding, const Place& to_paper, double picture_height,
               double width) {
    constexpr double longest = 7, apart = 1.0;
    double most = 0;
    for (const findings::Movement& m : finding.movements)
        most = std::max({most, std::abs(m.first), std::abs(m.second)});
    if (!(most > 0)) return;
    const auto within = [&](Point2 p) {
        return p.x >= 0 && p.x <= width && p.y >= 0 && p.y <= picture_height;
    };
    for (const findings::Movement& m : finding.movements) {
        const Point2 at = to_paper(m.at), ahead = to_paper(m.at + m.way * 10);
        const double seen = std::hypot(ahead.x - at.x, ahead.y - at.y);
        if (seen < 1e-6 || !within(at)) continue;
        const Point2 along{(ahead.x - at.x) / seen, (ahead.y - at.y) / seen};
        const auto draw = [&](double mm, double side, Ink ink, bool broken) {
            const double length = longest * mm / most;
            arrow(block, {at.x - along.y * side, at.y + along.x * side}, {along.x * length, along.y * length},
                  ink, broken);
        };
        draw(m.second, apart, Ink::blue, false);
        draw(m.first, -apart, Ink::red, true);
    }
}

/// The key below the picture: a sample of each arrow with its figure, one below the other.
void key_of(Block& block, const findings::Finding& finding, double width, double top) {
    const findings::Movement& m = finding.movements.front();
    double y = top;
    const auto entry = [&](const std::string& said, Ink ink, bool broken) {
        arrow(block, {0, y - note_height / 2}, {6, 0}, ink, broken);
        block.text({{7.5, y - note_height},
                    cut_to(said, width - 8, note_height, Typeface::sans),
                    note_height,
                    Typeface::sans,
                    Ink::black,
                    0});
        y -= note_step;
    };
    entry(m.first_said, Ink::red, true);
    entry(m.second_said, Ink::blue, false);
}

} // namespace

Block finding_picture(const Job& job, const findings::Finding& finding, double width, double height,
                      Ink mark) {
    Block block;
    // The key of the arrows takes a line from the picture.
    constexpr double key_room = 2 * note_step + 1;
    const bool moves = !finding.movements.empty();
    const double whole_height = height;
    if (moves) height -= key_room;
    std::vector<solid::Placed> parts;
    std::vector<int> indices;
    for (const std::string& name : finding.parts)
        for (std::size_t i = 0; i < job.model.made.size() && parts.size() < 4; ++i) {
            if (job.model.made[i].part->name != name ||
                std::find(indices.begin(), indices.end(), static_cast<int>(i)) != indices.end())
                continue;
            parts.push_back(job.placed[i]);
            indices.push_back(static_cast<int>(i));
        }
    if (parts.empty()) return block;
    const solid::View view = best_corner(parts, finding.at);
    std::vector<Segment2> blamed, others;
    for (const solid::Line2& line : solid::visible_lines(parts, view))
        (line.part == 0 ? blamed : others).push_back(line.at);
    blamed = united(blamed);
    others = without(united(others), blamed);
    if (blamed.empty()) return block;

    std::vector<Point2> points;
    for (const Segment2& s : blamed) points.push_back(s.a), points.push_back(s.b);
    const Rect whole = around(points);
    Rect window = grown(whole, 0.04 * std::max(whole.width(), whole.height()));
    const piece::Part& part = *job.made(indices.front()).part;
    const double thick = std::max(part.thickness.value(), std::min(part.width.value(), part.length.value()));
    std::optional<Point2> at;
    if (finding.at) {
        at = seen_at(*finding.at, view);
        const double reach = 6 * thick;
        // What moves at two edges is shown whole.
        if (finding.movements.size() < 2 && (whole.width() > 2.2 * reach || whole.height() > 2.2 * reach)) {
            const Rect near{at->x - reach, at->y - reach * height / width, at->x + reach,
                            at->y + reach * height / width};
            const Rect both{std::max(near.left, window.left), std::max(near.bottom, window.bottom),
                            std::min(near.right, window.right), std::min(near.top, window.top)};
            if (both.width() > 0 && both.height() > 0) window = both;
        }
        window = joined(window, grown({at->x, at->y, at->x, at->y}, 0.02 * window.width()));
    }
    // Arrows stand out beyond the part's edges.
    const double margin = moves ? 5 : 0;
    const double scale =
        std::min((width - 2 * margin) / window.width(), (height - 2 * margin) / window.height());
    const Point2 lower_left{(width - window.width() * scale) / 2, (height - window.height() * scale) / 2};
    const auto paper = [&](Point2 p) {
        return Point2{lower_left.x + (p.x - window.left) * scale,
                      lower_left.y + (p.y - window.bottom) * scale};
    };
    const auto draw = [&](const std::vector<Segment2>& segments, Pen pen, Ink ink) {
        std::vector<Segment2> on_paper;
        for (const Segment2& s : windowed(segments, window)) on_paper.push_back({paper(s.a), paper(s.b)});
        for (auto& line : chained(on_paper)) block.stroke(std::move(line), pen, Role::picture, ink);
    };
    // Fibres on the broadest face that is seen.
    const solid::Face* broadest = nullptr;
    double seen_area = 0;
    for (const solid::Face& face : parts.front().solid->faces) {
        const double facing = dot(parts.front().frame.turn_out(face.plane.normal), view.towards) * face.area;
        if (std::abs(face.plane.normal.x) < 0.7 && facing > seen_area) broadest = &face, seen_area = facing;
    }
    if (broadest)
        draw(fibres_on(parts.front(), *broadest, part.grain.in_degrees(), view, 2.4 / scale), Pen::thin,
             Ink::grey);
    draw(others, Pen::thin, Ink::black);
    draw(blamed, Pen::visible, Ink::black);
    if (at) {
        const Point2 p = paper(*at);
        if (p.x > 0 && p.x < width && p.y > 0 && p.y < height) {
            const double r = std::min({3.2, std::max(1.2, std::min({p.x, p.y, width - p.x, height - p.y}))});
            if (finding.movements.size() < 2) block.circle(p, r, Pen::visible, Role::picture, mark);
            if (finding.weak_lines.empty()) block.dot(p, 1.0, mark);
        }
    }
    const auto place = [&](Point p) { return paper(seen_at(p, view)); };
    std::vector<Segment2> breaks;
    for (const auto& [from, to] : finding.weak_lines)
        breaks.push_back({seen_at(from, view), seen_at(to, view)});
    // A crack: a zigzag that no edge and no fibre looks like.
    for (const Segment2& s : windowed(breaks, window)) {
        const Point2 from = paper(s.a), to = paper(s.b);
        const double length = std::hypot(to.x - from.x, to.y - from.y);
        if (length < 1e-6) continue;
        const Point2 along{(to.x - from.x) / length, (to.y - from.y) / length};
        const int teeth = std::max(2, static_cast<int>(length / 1.2));
        std::vector<Point2> crack;
        for (int i = 0; i <= teeth; ++i) {
            const double d = length * i / teeth, side = i == 0 || i == teeth ? 0 : i % 2 ? 0.5 : -0.5;
            crack.push_back({from.x + along.x * d - along.y * side, from.y + along.y * d + along.x * side});
        }
        block.stroke(std::move(crack), Pen::visible, Role::picture, mark);
    }
    if (moves) {
        movements(block, finding, place, height, width);
        Block lifted;
        lifted.add(block, {0, key_room});
        key_of(lifted, finding, width, note_step + note_height);
        lifted.claim({0, 0, width, whole_height});
        return lifted;
    }
    return block;
}

} // namespace rayfleck::drawing
