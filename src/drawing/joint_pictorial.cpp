// The eye looks into the mouth of the joint, from above where the parts do not go together upwards, and past
// the part that goes in, which stands away from it along the way of assembly. Both are broken off round the
// joint; the rims of the breaks are drawn by hand.

#include "drawing/joint_pictorial.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/section_cut.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Plane;
using measure::Point;
using measure::Vector;

solid::View view_into(Vector into) {
    // From the right, the front and above, but for the directions in which the parts go together.
    Vector eye{1, -1, 1};
    for (int k = 0; k < 3; ++k)
        if (std::abs(into[k]) > 0.3) eye[k] = into[k] > 0 ? -1 : 1;
    solid::View view;
    view.towards = measure::unit(eye);
    view.right = measure::unit(cross(Vector{0, 0, 1}, view.towards));
    view.up = cross(view.towards, view.right);
    return view;
}

std::vector<Plane> sides_of_box(const measure::Box& box, const measure::Frame& frame) {
    std::vector<Plane> planes;
    const Vector axes[] = {frame.x, frame.y, frame.z};
    for (int k = 0; k < 3; ++k) {
        planes.push_back({axes[k], box.high[k]});
        planes.push_back({-axes[k], -box.low[k]});
    }
    return planes;
}

bool lies_on(const Segment2& line, const Segment2& other) {
    const double dx = other.b.x - other.a.x, dy = other.b.y - other.a.y, length = std::hypot(dx, dy);
    if (length < 1e-6) return false;
    for (const Point2 p : {line.a, line.b}) {
        const double aside = (dx * (p.y - other.a.y) - dy * (p.x - other.a.x)) / length,
                     along = (dx * (p.x - other.a.x) + dy * (p.y - other.a.y)) / length;
        if (std::abs(aside) > 0.02 || along < -0.05 || along > length + 0.05) return false;
    }
    return true;
}

} // namespace

std::vector<Point2> drawn_by_hand(Point2 a, Point2 b) {
    // Two waves of different length, so that it does not look ruled; it starts and ends on its ends.
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const int steps = std::max(4, static_cast<int>(length / 0.8));
    const double nx = -(b.y - a.y) / length, ny = (b.x - a.x) / length;
    std::vector<Point2> points;
    for (int i = 0; i <= steps; ++i) {
        const double t = static_cast<double>(i) / steps, s = t * length;
        const double fade = std::min({1.0, s / 1.5, (length - s) / 1.5});
        const double off = fade * (0.45 * std::sin(s * 1.9) + 0.25 * std::sin(s * 0.83 + 1));
        points.push_back({a.x + (b.x - a.x) * t + nx * off, a.y + (b.y - a.y) * t + ny * off});
    }
    return points;
}

Block joint_pictorial(const Job& job, const JointDetail& detail, double most) {
    const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(detail.joint)];
    const solid::View view = view_into(detail.into);
    Vector extent = detail.focus.high - detail.focus.low;
    // Far enough for the part to come out of its socket and to leave the mouth in sight.
    const Vector way = detail.frame.turn_in(detail.into);
    double deep = 0, across = 0;
    for (int k = 0; k < 3; ++k) {
        deep += std::abs(way[k]) * extent[k];
        if (std::abs(way[k]) < 0.5) across = std::max(across, extent[k]);
    }
    const double pull = deep + std::clamp(0.5 * across, 12.0, 45.0);
    Clipped apart;
    const std::vector<Plane> planes = sides_of_box(detail.region, detail.frame);
    for (const int part : {joint.a, joint.b}) {
        const bool goes_in = part == joint.a;
        const std::size_t before = apart.placed.size();
        add_clipped(apart, job.placed[static_cast<std::size_t>(part)], planes);
        if (!goes_in || apart.placed.size() == before) continue;
        const Vector by = detail.into * -pull;
        apart.placed.back().frame.origin = apart.placed.back().frame.origin + by;
        for (auto& [a, b] : apart.rims.back()) a = a + by, b = b + by;
    }
    Block block;
    if (apart.placed.empty()) return block;
    const auto flat = [&](Point p) { return Point2{dot(p, view.right), dot(p, view.up)}; };
    std::vector<Segment2> rims, edges, breaks;
    for (const auto& of_part : apart.rims)
        for (const auto& [a, b] : of_part) rims.push_back({flat(a), flat(b)});
    for (const solid::Line2& line : solid::visible_lines(apart.placed, view)) {
        const bool broken =
            std::any_of(rims.begin(), rims.end(), [&](const Segment2& rim) { return lies_on(line.at, rim); });
        (broken ? breaks : edges).push_back(line.at);
    }
    edges = united(edges);
    breaks = without(united(breaks), edges);
    std::vector<Point2> points;
    for (const auto* list : {&edges, &breaks})
        for (const Segment2& s : *list) points.push_back(s.a), points.push_back(s.b);
    if (points.empty()) return block;
    const Rect box = around(points);
    const double true_length = std::sqrt(1.5);
    const std::vector<Scale>& list = scales(job.manner.unit);
    const Scale* scale = &list.back();
    for (const Scale& s : list)
        if (s.factor <= 1 + 1e-9 && std::max(box.width(), box.height()) * s.factor * true_length <= most) {
            scale = &s;
            break;
        }
    const double factor = scale->factor * true_length;
    const auto on_paper = [&](const std::vector<Segment2>& lines) {
        std::vector<Segment2> out;
        for (const Segment2& s : lines)
            out.push_back({{(s.a.x - box.left) * factor, (s.a.y - box.bottom) * factor},
                           {(s.b.x - box.left) * factor, (s.b.y - box.bottom) * factor}});
        return out;
    };
    const std::vector<Segment2> firm = thinned(on_paper(edges), 0.7);
    for (std::vector<Point2>& line : chained(firm))
        block.stroke(std::move(line), Pen::visible, Role::picture);
    for (const Segment2& s : thinned(on_paper(breaks), 0.7, firm))
        if (std::hypot(s.a.x - s.b.x, s.a.y - s.b.y) > 1)
            block.stroke(drawn_by_hand(s.a, s.b), Pen::thin, Role::picture);
    const std::string caption = std::string("pulled apart") + (view.towards.z < 0 ? ", from below" : "") +
                                ", " + scale->ratio + " along the axes";
    block.text({{block.box().left, block.box().bottom - 3 - note_height},
                caption,
                note_height,
                Typeface::lettering,
                Ink::black,
                0});
    return block;
}

} // namespace rayfleck::drawing
