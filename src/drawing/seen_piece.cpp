// Lines are taken once with joints cut, for what is seen, and once of whole parts, for what is hidden.

#include "drawing/seen_piece.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rayfleck::drawing {
namespace {

/// More dashed lines than this in one view hide more than they show.
constexpr std::size_t many_hidden_lines = 40, most_in_an_empty_view = 90;
/// A view that shows less than this share of all parts tells little without its hidden edges.
constexpr double little_shown = 0.5;
/// A speck seen through a gap does not tell what a part is, nor does the end of a tenon: what is seen must
/// reach over so much of the part's height and width in the picture.
constexpr double enough_seen = 0.35;
/// Places nearer than this are the same, mm of wood.
constexpr double same_place = 0.05;

void look(PieceView& v, const Job& job) {
    struct Shown {
        Rect reach;
        double length = 0;
    };
    std::vector<Shown> shown(job.placed.size());
    std::vector<Point2> points;
    for (const solid::Line2& line : solid::visible_lines(job.placed, v.view)) {
        Shown& part = shown[static_cast<std::size_t>(line.part)];
        const Rect rect = around({line.at.a, line.at.b});
        part.reach = part.length > 0 ? joined(part.reach, rect) : rect;
        part.length += std::hypot(line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y);
        v.seen.visible.push_back(line.at);
        points.push_back(line.at.a), points.push_back(line.at.b);
    }
    constexpr double enough_lines = 0.13;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const solid::Alone alone = solid::seen_alone(job.placed[i], v.view);
        const double size = alone.high.x - alone.low.x + alone.high.y - alone.low.y;
        v.shows.push_back(shown[i].length > enough_lines * alone.length &&
                          shown[i].reach.width() + shown[i].reach.height() > enough_seen * size);
    }
    if (!points.empty()) v.seen.box = around(points);
    v.seen.visible = united(v.seen.visible);
}

/// One copy in sight tells of all that share its row; dashing a single one of four legs would puzzle.
void spread_over_rows(const Job& job, std::vector<bool>& seen) {
    for (const cutlist::Row& row : job.cut_list.rows) {
        const bool any = std::any_of(row.parts.begin(), row.parts.end(),
                                     [&](int part) { return seen[static_cast<std::size_t>(part)]; });
        if (any)
            for (const int part : row.parts) seen[static_cast<std::size_t>(part)] = true;
    }
}

} // namespace

std::optional<Lean> lean_of(const piece::Part& part, const solid::View& view) {
    const std::pair<measure::Vector, double> sides[] = {{part.frame.x, part.length.value()},
                                                        {part.frame.y, part.width.value()},
                                                        {part.frame.z, part.thickness.value()}};
    double longest = 0;
    Point2 along;
    for (const auto& [direction, size] : sides) {
        const Point2 p{measure::dot(direction, view.right), measure::dot(direction, view.up)};
        const double length = std::hypot(p.x, p.y);
        if (length * size > longest + 1e-6) longest = length * size, along = {p.x / length, p.y / length};
    }
    if (longest <= 0) return std::nullopt;
    // In the plan only what lies flat: the leg of a stool leans in the front and in the side view.
    if (std::abs(view.towards.z) > 0.5 &&
        std::max({std::abs(part.frame.x.z), std::abs(part.frame.y.z), std::abs(part.frame.z.z)}) < 0.9999)
        return std::nullopt;
    Lean lean;
    if (along.y < -1e-9) along = {-along.x, -along.y};
    lean.along = along;
    lean.reference =
        std::abs(along.y) >= std::abs(along.x) - 1e-9 ? Point2{0, 1} : Point2{along.x > 0 ? 1.0 : -1.0, 0};
    lean.angle = std::acos(std::clamp(along.x * lean.reference.x + along.y * lean.reference.y, -1.0, 1.0));
    constexpr double least = 0.2 * std::numbers::pi / 180;
    if (lean.angle < least) return std::nullopt;
    return lean;
}

int PieceView::edge_at(int axis, double place, const measure::Box& part) const {
    const bool level = axis == right;
    if (!level && axis != up) return 0;
    const double at = (level ? right_sign : up_sign) * place;
    const int other = level ? up : right;
    double low = (level ? up_sign : right_sign) * part.low[other],
           high = (level ? up_sign : right_sign) * part.high[other];
    if (low > high) std::swap(low, high);
    const auto stands = [&](const std::vector<Segment2>& lines) {
        return std::any_of(lines.begin(), lines.end(), [&](const Segment2& s) {
            const double a = level ? s.a.x : s.a.y, b = level ? s.b.x : s.b.y;
            const double c = level ? s.a.y : s.a.x, d = level ? s.b.y : s.b.x;
            const bool at_a = std::abs(a - at) < same_place, at_b = std::abs(b - at) < same_place;
            if (at_a && at_b) return std::min(high, std::max(c, d)) - std::max(low, std::min(c, d)) > 0.5;
            return (at_a && c > low - same_place && c < high + same_place) ||
                   (at_b && d > low - same_place && d < high + same_place);
        });
    };
    return stands(seen.visible) ? 2 : stands(seen.hidden) ? 1 : 0;
}

Principal look_at_piece(const Job& job) {
    Principal p;
    p.whole = whole_parts(job);
    p.front.name = "front", p.front.view = solid::front_view();
    p.plan.name = "plan", p.plan.view = solid::top_view();
    p.plan.right = 0, p.plan.up = 1;
    p.side.name = job.first_angle ? "from the left" : "from the right";
    p.side.view = job.first_angle ? solid::left_view() : solid::right_view();
    p.side.right = 1, p.side.up = 2;
    p.side.right_sign = job.first_angle ? -1 : 1;
    const std::array<PieceView*, 3> views{&p.front, &p.plan, &p.side};
    std::vector<bool> is_seen(job.placed.size(), false);
    for (PieceView* v : views) {
        look(*v, job);
        for (std::size_t part = 0; part < is_seen.size(); ++part)
            if (v->shows[part]) is_seen[part] = true;
    }
    spread_over_rows(job, is_seen);
    for (PieceView* v : views) {
        std::vector<bool> here = v->shows;
        spread_over_rows(job, here);
        const auto shown = static_cast<double>(std::count(here.begin(), here.end(), true));
        const bool tells_little = shown < little_shown * static_cast<double>(here.size());
        std::vector<Segment2> all, unseen;
        std::vector<std::vector<Segment2>> covered(job.cut_list.rows.size());
        for (const solid::Line2& line : solid::hidden_lines(p.whole.placed, v->view)) {
            if (line.visible) continue;
            const auto part = static_cast<std::size_t>(line.part);
            all.push_back(line.at);
            if (!is_seen[part]) unseen.push_back(line.at);
            if (const int row = job.row_of_part[part]; row >= 0 && !here[part])
                covered[static_cast<std::size_t>(row)].push_back(line.at);
        }
        v->seen.hidden = without(united(all), v->seen.visible);
        if (v->seen.hidden.size() <= many_hidden_lines) continue;
        v->seen.hidden = without(united(unseen), v->seen.visible);
        // Kind by kind in the order of the list, as long as the view does not fill up.
        for (std::size_t r = 0; r < covered.size(); ++r) {
            const std::vector<Segment2>& row = covered[r];
            const piece::Part& part = *job.made(job.cut_list.rows[r].parts.front()).part;
            if (row.empty() || !(tells_little || (!part.upright && lean_of(part, v->view)))) continue;
            std::vector<Segment2> more = unseen;
            more.insert(more.end(), row.begin(), row.end());
            std::vector<Segment2> lines = without(united(more), v->seen.visible);
            if (lines.size() > most_in_an_empty_view) continue;
            unseen = std::move(more);
            v->seen.hidden = std::move(lines);
        }
    }
    p.box.low = {p.front.seen.box.left, p.plan.seen.box.bottom, p.front.seen.box.bottom};
    p.box.high = {p.front.seen.box.right, p.plan.seen.box.top, p.front.seen.box.top};
    return p;
}

} // namespace rayfleck::drawing
