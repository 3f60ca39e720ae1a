// A profile shows in the end view when it runs along the part or lies at an end, in the view of an edge when
// it runs across the whole width. Of all profiles that are thinner on paper than can be seen, the thinnest is
// enlarged, with the wood through the whole thickness round it. The larger scale is the largest of the list
// that keeps the circle small. Views, scale and circle follow rule D23 of the audit list.

#include "drawing/part_detail.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "drawing/lettering.hpp"

namespace rayfleck::drawing {
namespace {

constexpr double least_seen = 1.5;      ///< mm on paper
constexpr double largest_circle = 17;   ///< radius on paper
constexpr double least_gain = 1.9;      ///< a detail is at least so much larger
constexpr double most_scale = 2 + 1e-9; ///< 2:1

struct Fine {
    double size = 0; ///< on paper
    measure::Box box;
    const ViewOnPaper* view = nullptr;
    const Seen* seen = nullptr;
};

std::optional<Fine> finest(const std::vector<ViewOnPaper>& views, const PartSeen& seen,
                           const GaugeFrame& gauge, const std::vector<Feature>& features) {
    std::optional<Fine> best;
    for (const Feature& feature : features) {
        const CutForm form = feature.record.form;
        if (form != CutForm::hollow && form != CutForm::prism && form != CutForm::tongue &&
            form != CutForm::edge)
            continue;
        if (feature.places.empty()) continue;
        const measure::Box& box = feature.places.front();
        const auto size = [&](int k) { return box.high[k] - box.low[k]; };
        const auto whole = [&](int k) { return size(k) > gauge.size(k) - 0.01; };
        const bool at_an_end = box.low.x < 0.01 || box.high.x > gauge.size(0) - 0.01;
        const bool in_end_view = at_an_end && !whole(1);
        for (std::size_t v = 0; v < views.size(); ++v) {
            const ViewOnPaper& view = views[v];
            const bool shows = view.side.axis == 0 ? in_end_view : view.side.axis == 1 && whole(1);
            if (!shows) continue;
            const int along = view.side.axis == 0 ? 1 : 0;
            double fine = 1e9;
            for (const int k : {along, 2})
                if (!whole(k)) fine = std::min(fine, size(k) * view.scale);
            if (fine > least_seen || (best && fine >= best->size)) continue;
            const Seen* picture = view.side.axis == 0 ? &seen.end : nullptr;
            for (const PartSeen::OnSide& on : seen.sides)
                if (local_side(on.side) == view.side) picture = &on.seen;
            best = Fine{fine, gauge.out(box), &view, picture};
        }
    }
    return best;
}

/// The part of a segment within a circle.
std::optional<std::pair<Point2, Point2>> within(Point2 a, Point2 b, Point2 middle, double radius) {
    const double dx = b.x - a.x, dy = b.y - a.y, fx = a.x - middle.x, fy = a.y - middle.y;
    const double aa = dx * dx + dy * dy, bb = 2 * (fx * dx + fy * dy),
                 cc = fx * fx + fy * fy - radius * radius;
    const double root = bb * bb - 4 * aa * cc;
    if (aa < 1e-12 || root <= 0) return std::nullopt;
    const double from = std::max(0.0, (-bb - std::sqrt(root)) / (2 * aa)),
                 to = std::min(1.0, (-bb + std::sqrt(root)) / (2 * aa));
    if (to - from < 1e-9) return std::nullopt;
    return std::pair{Point2{a.x + from * dx, a.y + from * dy}, Point2{a.x + to * dx, a.y + to * dy}};
}

/// The letter beside its circle, where it touches nothing.
std::optional<Text> letter_beside(const Block& block, Point2 middle, double radius) {
    const double width = text_width("A", note_height, Typeface::sans_bold);
    for (const double distance : {1.2, 2.5, 4.0, 6.0, 9.0})
        for (const Point2 way :
             {Point2{0.7, 0.7}, {-0.7, 0.7}, {0.7, -0.7}, {-0.7, -0.7}, {0, 1}, {0, -1}, {1, 0}, {-1, 0}}) {
            const double reach = radius + distance + note_height / 2;
            const Text text{
                {middle.x + way.x * reach - width / 2, middle.y + way.y * reach - note_height / 2},
                "A",
                note_height,
                Typeface::sans_bold,
                Ink::black,
                0};
            if (block.occupied().free_for_text(text_box(text), 0.4)) return text;
        }
    return std::nullopt;
}

} // namespace

void set_detail(Block& block, const Job& job, const std::vector<ViewOnPaper>& views, const PartSeen& seen,
                const GaugeFrame& gauge, const std::vector<Feature>& features, double width) {
    const auto fine = finest(views, seen, gauge, features);
    if (!fine || !fine->seen) return;
    const ViewOnPaper& view = *fine->view;
    const measure::Point centre = (fine->box.low + fine->box.high) * 0.5;
    const int along = view.side.axis == 0 ? 1 : 0;
    // Through the whole thickness, unless that alone would be too much.
    measure::Point own = centre;
    own.z = (view.box.low.z + view.box.high.z) / 2;
    const double thick = view.box.high.z - view.box.low.z;
    const double radius = std::max(thick * 0.62, (fine->box.high[along] - fine->box.low[along]) * 0.5 + 2);
    const Scale* larger = nullptr;
    for (const Scale& scale : scales(job.manner.unit))
        if (scale.factor <= most_scale && scale.factor * radius <= largest_circle) {
            larger = &scale;
            break;
        }
    if (!larger || larger->factor < least_gain * view.scale) return;
    const double r = radius * larger->factor, source_r = radius * view.scale;
    // Beside the end view, or below it, where nothing is drawn.
    const Rect box = block.box();
    const Rect end = views.back().place;
    constexpr double air = 5, for_title = 5.5;
    std::optional<Point2> middle;
    for (const Point2 at : {Point2{end.middle().x, end.bottom - air - r},
                            Point2{end.right + 3 * air + r, end.bottom + r + for_title},
                            Point2{box.right + air + r, end.bottom + r + for_title}}) {
        const Rect needed{at.x - r - 2, at.y - r - for_title, at.x + r + 2, at.y + r + 2};
        if (needed.right - box.left > width || needed.bottom < box.bottom || needed.top > box.top + 0.01)
            continue;
        if (!block.occupied().free_for_text(corners(needed), 1)) continue;
        middle = at;
        break;
    }
    const Point2 source = view.on_paper(measure::Box{own, own}).middle();
    const auto letter = letter_beside(block, source, source_r);
    if (!middle || !letter) return;
    const Point2 picture{dot(view.view.right, own), dot(view.view.up, own)};
    // Only what can be seen: hidden lines would fill in what the detail is to show.
    for (const Segment2& segment : fine->seen->visible)
        if (const auto part = within(segment.a, segment.b, picture, radius)) {
            const auto carried = [&](Point2 p) {
                return Point2{middle->x + (p.x - picture.x) * larger->factor,
                              middle->y + (p.y - picture.y) * larger->factor};
            };
            block.line(carried(part->first), carried(part->second), Pen::visible, Role::edge);
        }
    block.circle(*middle, r, Pen::thin, Role::mark);
    const std::string title = "A  " + larger->ratio;
    const double title_width = text_width(title, note_height, Typeface::sans_bold);
    block.text({{middle->x - title_width / 2, middle->y - r - for_title + 1},
                title,
                note_height,
                Typeface::sans_bold,
                Ink::black,
                0});
    block.circle(source, source_r, Pen::thin, Role::mark);
    block.text(*letter);
}

} // namespace rayfleck::drawing
