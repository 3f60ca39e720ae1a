// Which section: planes square to the directions of the part that goes in are tried, through the middle of
// the place where the parts meet; the one in which the outlines of the two parts have most corners there
// tells most. A second one is drawn when it tells nearly as much and has another direction. Sizes on the
// sections stand in parentheses, since the part drawings give them.

#include "drawing/joint_detail_view.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "drawing/balloons.hpp"
#include "drawing/dimension.hpp"
#include "drawing/joint_pictorial.hpp"
#include "drawing/lettering.hpp"
#include "drawing/section_lines.hpp"

namespace rayfleck::drawing {
namespace {

using measure::Box;
using measure::dot;
using measure::Vector;

constexpr double letter_height = 5.0;
constexpr double least_gap = 0.7;

struct Plane {
    int axis = 0; ///< of the detail's frame
    solid::View view;
    double offset = 0;
    double corners = 0;
};

Vector axis_of(const measure::Frame& frame, int axis) {
    return axis == 0 ? frame.x : axis == 1 ? frame.y : frame.z;
}

/// Looking square at an axis, as the principal views do: from the front, the right or above, upright where
/// that can be had.
solid::View view_along(const measure::Frame& frame, int axis) {
    Vector towards = axis_of(frame, axis);
    if (towards.x - 1.1 * towards.y + 1.2 * towards.z < 0) towards = -towards;
    Vector up = axis_of(frame, (axis + 1) % 3);
    const Vector other = axis_of(frame, (axis + 2) % 3);
    if (std::abs(other.z) > std::abs(up.z) + 1e-6 ||
        (std::abs(std::abs(other.z) - std::abs(up.z)) <= 1e-6 && std::abs(other.y) > std::abs(up.y)))
        up = other;
    if (up.z < -1e-6 || (std::abs(up.z) <= 1e-6 && up.y < 0)) up = -up;
    return {cross(up, towards), up, towards};
}

/// The region's extent in the picture plane.
Rect window(const Box& box, const measure::Frame& frame, const solid::View& view) {
    std::vector<Point2> points;
    for (int i = 0; i < 8; ++i) {
        const measure::Point p = frame.out(
            {i & 1 ? box.high.x : box.low.x, i & 2 ? box.high.y : box.low.y, i & 4 ? box.high.z : box.low.z});
        points.push_back({dot(p, view.right), dot(p, view.up)});
    }
    return around(points);
}

/// Sharp corners of the rings within a window.
struct Corners {
    double square = 0, slanting = 0;
};
Corners corners_within(const std::vector<solid::CutArea>& areas, const Rect& rect) {
    Corners count;
    for (const solid::CutArea& area : areas)
        for (const auto& ring : area.rings)
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point2 p = ring[i], before = ring[(i + ring.size() - 1) % ring.size()],
                             after = ring[(i + 1) % ring.size()];
                if (p.x < rect.left || p.x > rect.right || p.y < rect.bottom || p.y > rect.top) continue;
                const double ax = p.x - before.x, ay = p.y - before.y, bx = after.x - p.x, by = after.y - p.y;
                const double bend = std::abs(std::atan2(ax * by - ay * bx, ax * bx + ay * by));
                // A facet of a bore tells next to nothing, a slanting side (of a dovetail, of a miter) more
                // than a square one: it is seen in one direction only.
                constexpr double sharp = 0.1, corner = 0.5, long_enough = 2;
                if (bend < sharp) continue;
                const bool slants = std::hypot(ax, ay) > long_enough &&
                                    std::min(std::abs(ax), std::abs(ay)) > 0.05 * std::hypot(ax, ay);
                if (bend < corner)
                    count.square += 0.1;
                else
                    (slants ? count.slanting : count.square) += slants ? 2.5 : 1;
            }
    return count;
}

/// Round holes and straight grooves look the same along their way.
bool tells_by_one_section(const std::string& kind) {
    for (const char* word : {"screws", "dowels", "groove", "rabbet"})
        if (kind.find(word) != std::string::npos) return true;
    return false;
}

std::vector<Plane> planes_through(const Job& job, const JointDetail& detail) {
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(detail.joint)];
    const std::vector<solid::Placed> both{job.placed[static_cast<std::size_t>(joint.a)],
                                          job.placed[static_cast<std::size_t>(joint.b)]};
    std::vector<Plane> planes;
    const Vector way = detail.frame.turn_in(detail.into);
    const bool known_way = measure::norm(joint.assembly) > 0.5,
               // A miter is understood from the side on which its line slants, whatever keys it has.
        mitered = joint.kind.starts_with("miter");
    const Box& f = detail.focus;
    for (int axis = 0; axis < 3; ++axis) {
        Plane plane{axis, view_along(detail.frame, axis), 0, 0};
        const double sign = dot(plane.view.towards, axis_of(detail.frame, axis));
        const Rect near = grown(window(f, detail.frame, plane.view), 1);
        for (const double t : {0.5, 0.3}) {
            const double at = sign * (f.low[axis] + t * (f.high[axis] - f.low[axis]));
            const Corners found = corners_within(solid::section(both, plane.view, at), near);
            // Square to the way of assembly a tenon is but a rectangle in a rectangle.
            const bool across = known_way && std::abs(way[axis]) > 0.5;
            const double corners = (across ? 0.4 : 1) * found.square + (mitered ? 4 : 1) * found.slanting;
            if (corners > plane.corners + 0.5) plane.corners = corners, plane.offset = at;
        }
        if (plane.corners > 0) planes.push_back(plane);
    }
    std::stable_sort(planes.begin(), planes.end(),
                     [](const Plane& a, const Plane& b) { return a.corners > b.corners; });
    constexpr double tells_enough = 0.6;
    if (planes.size() > 1 && tells_by_one_section(joint.kind)) planes.resize(1);
    if (planes.size() > 1 && planes[1].corners < tells_enough * planes[0].corners) planes.resize(1);
    if (planes.size() > 2) planes.resize(2);
    return planes;
}

std::vector<Point2> clipped_ring(const std::vector<Point2>& ring, const Rect& rect) {
    std::vector<Point2> kept = ring;
    for (int side = 0; side < 4; ++side) {
        const auto inside = [&](Point2 p) {
            return side == 0   ? p.x - rect.left
                   : side == 1 ? rect.right - p.x
                   : side == 2 ? p.y - rect.bottom
                               : rect.top - p.y;
        };
        std::vector<Point2> next;
        for (std::size_t i = 0; i < kept.size(); ++i) {
            const Point2 p = kept[i], q = kept[(i + 1) % kept.size()];
            const double sp = inside(p), sq = inside(q);
            if (sp >= 0) next.push_back(p);
            if ((sp > 0 && sq < 0) || (sp < 0 && sq > 0)) {
                const double t = sp / (sp - sq);
                next.push_back({p.x + (q.x - p.x) * t, p.y + (q.y - p.y) * t});
            }
        }
        kept = std::move(next);
    }
    if (kept.size() < 3) kept.clear();
    return kept;
}

std::optional<Segment2> clipped_line(Segment2 s, const Rect& rect) {
    double from = 0, to = 1;
    const double dx = s.b.x - s.a.x, dy = s.b.y - s.a.y;
    const auto cut = [&](double step, double room) {
        if (std::abs(step) < 1e-12) return room >= 0;
        (step > 0 ? to : from) = step > 0 ? std::min(to, room / step) : std::max(from, room / step);
        return from < to;
    };
    if (!cut(-dx, s.a.x - rect.left) || !cut(dx, rect.right - s.a.x) || !cut(-dy, s.a.y - rect.bottom) ||
        !cut(dy, rect.top - s.a.y))
        return std::nullopt;
    return Segment2{{s.a.x + dx * from, s.a.y + dy * from}, {s.a.x + dx * to, s.a.y + dy * to}};
}

bool on_border(const Segment2& s, const Rect& r) {
    const auto both = [](double a, double b, double at) {
        return std::abs(a - at) < 1e-3 && std::abs(b - at) < 1e-3;
    };
    return both(s.a.x, s.b.x, r.left) || both(s.a.x, s.b.x, r.right) || both(s.a.y, s.b.y, r.bottom) ||
           both(s.a.y, s.b.y, r.top);
}

/// Sizes along one way: between the sides of the two parts square to it, near the joint.
MeasureString sizes_along(const Job& job, const JointDetail& detail, const std::vector<solid::CutArea>& areas,
                          const solid::View& view, const Rect& near, bool level, Point2 origin,
                          double scale) {
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(detail.joint)];
    struct Place {
        double at, across;
    };
    std::vector<Place> places;
    for (const solid::CutArea& area : areas) {
        if (area.part > 1) continue;
        for (const Segment2& s : sides_of(area.rings)) {
            const double a = level ? s.a.x : s.a.y, b = level ? s.b.x : s.b.y;
            if (std::abs(a - b) > 0.01) continue;
            const double low = level ? std::min(s.a.y, s.b.y) : std::min(s.a.x, s.b.x),
                         high = level ? std::max(s.a.y, s.b.y) : std::max(s.a.x, s.b.x);
            const double near_low = level ? near.bottom : near.left,
                         near_high = level ? near.top : near.right;
            if (high - low < 1 || high < near_low || low > near_high) continue;
            if (a < (level ? near.left : near.bottom) || a > (level ? near.right : near.top)) continue;
            places.push_back({a, low});
        }
    }
    std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.at < b.at; });
    std::vector<Place> distinct;
    for (const Place& p : places)
        if (!distinct.empty() && p.at - distinct.back().at < 0.05)
            distinct.back().across = std::min(distinct.back().across, p.across);
        else
            distinct.push_back(p);
    MeasureString string;
    constexpr std::size_t most_links = 6;
    if (distinct.size() < 2 || distinct.size() > most_links + 1) return string;
    const Vector way = level ? view.right : view.up;
    int axis = 0;
    for (int k = 1; k < 3; ++k)
        if (std::abs(dot(way, axis_of(detail.frame, k))) > 0.9) axis = k;
    const double sign = dot(way, axis_of(detail.frame, axis)) > 0 ? 1 : -1;
    const piece::Part& a = *job.made(joint.a).part;
    const double zero = dot(a.frame.origin, axis_of(detail.frame, axis));
    const auto along = [&](double p) { return (level ? origin.x : origin.y) + scale * p; };
    const auto across = [&](double p) { return (level ? origin.y : origin.x) + scale * p; };
    for (std::size_t i = 0; i + 1 < distinct.size(); ++i) {
        const Place &p = distinct[i], &q = distinct[i + 1];
        if ((q.at - p.at) * scale < 0.5) continue;
        Measure m;
        m.from = along(p.at), m.to = along(q.at);
        m.start_from = across(p.across), m.start_to = across(q.across);
        double from = sign * p.at - zero, to = sign * q.at - zero;
        if (from > to) std::swap(from, to);
        // A figure that the maker's rule cannot tell would be read off the drawing as another size.
        constexpr double well_told = 0.06;
        const measure::Length size = measure::Length::from_geometry(to - from);
        if (std::abs(measure::rounded(size, job.manner).value() - (to - from)) > well_told) continue;
        m.figure = "(" + job.figure(size) + ")";
        m.record = {a.name, "LWT"[axis], from, to, m.figure, true};
        string.push_back(std::move(m));
    }
    return string;
}

/// The section through a joint, cropped to its region.
Block joint_section(const Job& job, const Hatching& hatching, const JointDetail& detail, const Plane& plane,
                    const std::vector<Box>& boxes, double most) {
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(detail.joint)];
    const Rect rect = window(detail.region, detail.frame, plane.view);
    // Whatever else stands in the region is cut too.
    Box round{{1e300, 1e300, 1e300}, {-1e300, -1e300, -1e300}};
    for (int i = 0; i < 8; ++i) {
        const measure::Point p = detail.frame.out({i & 1 ? detail.region.high.x : detail.region.low.x,
                                                   i & 2 ? detail.region.high.y : detail.region.low.y,
                                                   i & 4 ? detail.region.high.z : detail.region.low.z});
        for (int k = 0; k < 3; ++k)
            round.low[k] = std::min(round.low[k], p[k]), round.high[k] = std::max(round.high[k], p[k]);
    }
    std::vector<int> parts{joint.a, joint.b};
    for (std::size_t p = 0; p < boxes.size(); ++p) {
        const int part = static_cast<int>(p);
        if (part == joint.a || part == joint.b) continue;
        bool meets = true;
        for (int k = 0; k < 3; ++k)
            meets = meets && boxes[p].low[k] < round.high[k] && boxes[p].high[k] > round.low[k];
        if (meets) parts.push_back(part);
    }
    std::vector<solid::Placed> placed;
    for (const int part : parts) placed.push_back(job.placed[static_cast<std::size_t>(part)]);
    const double deep = detail.region.high[plane.axis] - detail.region.low[plane.axis];
    CutThrough cut = cut_through(placed, plane.view, plane.offset, {deep, rect});
    std::vector<solid::CutArea> shown;
    for (const solid::CutArea& area : cut.areas) {
        solid::CutArea inside{area.part, {}, 0};
        for (const auto& ring : area.rings)
            if (auto kept = clipped_ring(ring, rect); !kept.empty()) inside.rings.push_back(std::move(kept));
        if (!inside.rings.empty()) shown.push_back(std::move(inside));
    }
    const std::vector<Scale>& list = scales(job.manner.unit);
    const Scale* scale = &list.back();
    for (const Scale& s : list)
        if (s.factor <= 1 + 1e-9 && std::max(rect.width(), rect.height()) * s.factor <= most) {
            scale = &s;
            break;
        }
    Block block;
    const double f = scale->factor;
    const Point2 origin{-rect.left * f, -rect.bottom * f};
    const auto on_paper = [&](Point2 p) { return Point2{origin.x + p.x * f, origin.y + p.y * f}; };
    const Rect paper{0, 0, rect.width() * f, rect.height() * f};
    const std::vector<Segment2> outlines =
        draw_cut_areas(block, job, hatching, shown, parts, plane.view, f, origin, detail.letter);
    std::vector<Segment2> firm, breaks;
    for (const Segment2& s : outlines) (on_border(s, paper) ? breaks : firm).push_back(s);
    firm = thinned(united(firm), least_gap);
    std::vector<Segment2> beyond;
    for (const Segment2& s : cut.beyond)
        if (const auto inside = clipped_line(s, rect))
            beyond.push_back({on_paper(inside->a), on_paper(inside->b)});
    std::vector<Segment2> also = firm;
    for (const solid::CutArea& area : shown)
        for (const Segment2& s : sides_of(area.rings)) also.push_back({on_paper(s.a), on_paper(s.b)});
    std::vector<Segment2> edges = thinned(beyond, least_gap, united(also));
    edges.insert(edges.end(), firm.begin(), firm.end());
    for (std::vector<Point2>& points : chained(united(edges)))
        if (points.size() > 2 || std::hypot(points[0].x - points[1].x, points[0].y - points[1].y) > least_gap)
            block.stroke(std::move(points), Pen::visible, Role::edge);
    for (const Segment2& s : united(breaks))
        if (std::hypot(s.a.x - s.b.x, s.a.y - s.b.y) > 1)
            block.stroke(drawn_by_hand(s.a, s.b), Pen::thin, Role::mark);

    std::vector<BalloonWanted> wanted;
    for (const solid::CutArea& area : shown) {
        const int row = job.row_of_part[static_cast<std::size_t>(parts[static_cast<std::size_t>(area.part)])];
        if (row < 0) continue;
        const std::string reference =
            std::to_string(job.cut_list.rows[static_cast<std::size_t>(row)].reference);
        auto known = std::find_if(wanted.begin(), wanted.end(),
                                  [&](const BalloonWanted& w) { return w.reference == reference; });
        if (known == wanted.end()) {
            wanted.push_back({reference, {}, link_to_row + row});
            known = std::prev(wanted.end());
        }
        for (const Point2 p : places_within(area.rings)) known->anchors.push_back(on_paper(p));
    }
    std::erase_if(wanted, [](const BalloonWanted& w) { return w.anchors.empty(); });
    draw_balloons(block, paper, wanted, 7, {false, true, true, false});
    // After the balloons, so that no figure stands in the way of a leader.
    const Rect near = grown(window(detail.focus, detail.frame, plane.view), 1);
    const double figure = job.part_figure_height();
    for (const bool level : {true, false}) {
        // How thick a screw is stands in words.
        const bool across = std::abs(dot(level ? plane.view.right : plane.view.up, detail.into)) < 0.5;
        if (across && joint.kind.find("screws") != std::string::npos) continue;
        MeasureString string = sizes_along(job, detail, shown, plane.view, near, level, origin, f);
        draw_dimensions(block, level ? ViewSide::below : ViewSide::left, 0, {std::move(string)}, figure);
    }
    const std::string caption = "section, " + scale->ratio;
    block.text({{block.box().left, block.box().bottom - 3 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

} // namespace

DetailViews joint_detail_views(const Job& job, const Hatching& hatching, const JointDetail& detail,
                               const std::vector<Box>& parts) {
    constexpr double widest_section = 62, widest_picture = 92, small_picture = 66;
    DetailViews views;
    for (const Plane& plane : planes_through(job, detail))
        views.push_back(joint_section(job, hatching, detail, plane, parts, widest_section));
    const std::string& kind = job.model.joints[static_cast<std::size_t>(detail.joint)].kind;
    // Two holes need no large picture.
    const bool holes = kind.find("screws") != std::string::npos || kind.starts_with("dowels");
    views.push_back(joint_pictorial(job, detail, holes ? small_picture : widest_picture));
    std::erase_if(views, [](const Block& view) { return view.empty(); });
    return views;
}

Block joint_detail_block(const Job& job, const JointDetail& detail, const DetailViews& views, double width) {
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(detail.joint)];
    Block block;
    block.text({{0, -letter_height}, detail.letter, letter_height, Typeface::lettering, Ink::black, 0});
    const double after = text_width(detail.letter, letter_height, Typeface::lettering) + 4;
    Text title = fitted(joint.kind, width - after, {heading_height, note_height}, Typeface::sans_bold);
    title.at = {after, -letter_height};
    block.text(title);
    constexpr double air = 9;
    double x = 0, top = -letter_height - 4, low = top;
    for (const Block& view : views) {
        if (x > 0 && x + view.box().width() > width) x = 0, top = low - air;
        block.add(view, {x - view.box().left, top - view.box().top});
        low = std::min(low, top - view.box().height());
        x += view.box().width() + air;
    }
    // Words stand beside the last view where there is room, else below all.
    constexpr double least_words = 55;
    const bool beside = width - x >= least_words;
    const double left = beside ? x : 0, words = beside ? width - x : width;
    double y = beside ? top : low - 3;
    if (!detail.sizes.empty())
        y = set_lines(
                block,
                wrapped(fmt::format("{}", fmt::join(detail.sizes, "; ")), words, note_height, Typeface::sans),
                left, y) -
            0.6;
    set_lines(block,
              wrapped(fmt::format("{}", fmt::join(detail.places, "; ")), words, note_height, Typeface::sans),
              left, y);
    return block;
}

} // namespace rayfleck::drawing
