// Lines are looked up once for the step's parts where they stand apart; balloons are then set round the
// picture, and the picture is drawn smaller until all of it fits. Sub-assemblies carry their letter instead
// of numbers.

#include "drawing/step_picture.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drawing/apart.hpp"
#include "drawing/balloons.hpp"
#include "drawing/marks.hpp"

namespace rayfleck::drawing {
namespace {

using measure::dot;
using measure::Vector;

constexpr double gap_share = 0.16; ///< of the diagonal of the step's parts; our own choice
constexpr double most_share = 0.55;
constexpr double least_line_gap = 0.7;
constexpr double balloon_size = 7;
constexpr std::size_t most_balloons = 8, most_arrows = 12;

/// What of the picture does not depend on its scale.
struct Looked {
    std::vector<int> parts; ///< standing ones first
    std::size_t standing = 0;
    std::vector<solid::Placed> placed;
    Apart apart;
    SeenApart seen;
    Rect box;
};

Looked look_at_step(const Job& job, const assembly::Step& step) {
    Looked looked;
    looked.parts = step.standing;
    looked.standing = step.standing.size();
    for (const int m : step.moves)
        for (const int p : job.order.moves[static_cast<std::size_t>(m)].parts) looked.parts.push_back(p);
    const double size =
        diagonal(placed_apart(job, looked.parts, {std::vector<Vector>(job.placed.size()), {}}));
    looked.apart = taken_apart(job, step.moves, {gap_share * size, most_share * size, {}, {}});
    looked.placed = placed_apart(job, looked.parts, looked.apart);
    looked.seen = look_apart(looked.placed, looked.apart.traces, solid::isometric_view());
    std::vector<Point2> points;
    for (const auto* lists : {&looked.seen.of_part, &looked.seen.of_trace})
        for (const auto& lines : *lists)
            for (const Segment2& s : lines) points.push_back(s.a), points.push_back(s.b);
    looked.box = around(points);
    return looked;
}

std::vector<BalloonWanted> balloons_of(const Job& job, const assembly::Step& step, const Looked& looked) {
    const solid::View view = solid::isometric_view();
    std::vector<BalloonWanted> wanted;
    const auto add = [&](const std::string& reference, std::size_t place, int to_sheet) {
        if (wanted.size() >= most_balloons) return;
        for (const BalloonWanted& w : wanted)
            if (w.reference == reference) return;
        BalloonWanted w;
        w.reference = reference;
        w.anchors = seen_points(looked.placed, static_cast<int>(place), view);
        w.to_sheet = to_sheet;
        if (!w.anchors.empty()) wanted.push_back(std::move(w));
    };
    const auto add_part = [&](int part, std::size_t place) {
        const int row = job.row_of_part[static_cast<std::size_t>(part)];
        if (row >= 0)
            add(std::to_string(job.cut_list.rows[static_cast<std::size_t>(row)].reference), place,
                link_to_row + row);
    };
    std::size_t place = looked.standing;
    std::vector<int> joined;
    for (const int m : step.moves) {
        const assembly::Move& move = job.order.moves[static_cast<std::size_t>(m)];
        const std::size_t first = place;
        place += move.parts.size();
        for (const int j : move.joints) {
            const joinery::Joint& joint = job.model.joints[static_cast<std::size_t>(j)];
            for (const int p : {joint.a, joint.b})
                if (!std::binary_search(move.parts.begin(), move.parts.end(), p)) joined.push_back(p);
        }
        if (move.parts.size() == 1) {
            add_part(move.parts.front(), first);
            continue;
        }
        for (const assembly::SubAssembly& sub : job.order.sub_assemblies)
            for (const auto& copy : sub.copies) {
                if (copy != move.parts || sub.name.size() > 2) continue;
                // Its letter, on the part that is seen best.
                std::size_t best = first;
                for (std::size_t i = first; i < place; ++i)
                    if (looked.seen.share[i] > looked.seen.share[best]) best = i;
                add(sub.name, best, -1);
            }
    }
    for (const int p : joined)
        for (std::size_t i = 0; i < looked.standing; ++i)
            if (looked.parts[i] == p) add_part(p, i);
    return wanted;
}

Block drawn(const Job& job, const assembly::Step& step, const Looked& looked,
            const std::vector<BalloonWanted>& balloons, double factor) {
    Block block;
    const auto on_paper = [&](Point2 p) {
        return Point2{(p.x - looked.box.left) * factor, (p.y - looked.box.bottom) * factor};
    };
    const auto lines_of = [&](std::size_t from, std::size_t past) {
        std::vector<Segment2> lines;
        for (std::size_t i = from; i < past; ++i)
            for (const Segment2& s : looked.seen.of_part[i]) lines.push_back({on_paper(s.a), on_paper(s.b)});
        return united(lines);
    };
    const std::vector<Segment2> added =
        thinned(lines_of(looked.standing, looked.parts.size()), least_line_gap);
    const std::vector<Segment2> standing = thinned(lines_of(0, looked.standing), least_line_gap, added);
    for (auto& points : chained(standing)) block.stroke(std::move(points), Pen::thin, Role::picture);
    for (auto& points : chained(added)) block.stroke(std::move(points), Pen::visible, Role::picture);
    // One arrow for each move, on the longest stretch that is seen of its traces.
    std::size_t arrows = 0;
    for (const int m : step.moves) {
        std::optional<Segment2> longest;
        double length = 0;
        for (std::size_t t = 0; t < looked.apart.traces.size(); ++t) {
            if (looked.apart.traces[t].move != m) continue;
            for (const Segment2& s : looked.seen.of_trace[t])
                if (const double l = std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) * factor; l > length)
                    length = l, longest = Segment2{on_paper(s.a), on_paper(s.b)};
        }
        constexpr double head = 2.5;
        if (!longest || length < 2 * head || ++arrows > most_arrows) continue;
        Point2 from = longest->b, tip = longest->a;
        const Vector in = job.order.moves[static_cast<std::size_t>(m)].direction;
        const solid::View view = solid::isometric_view();
        if ((tip.x - from.x) * dot(in, view.right) + (tip.y - from.y) * dot(in, view.up) < 0)
            std::swap(from, tip);
        const Point2 along{(tip.x - from.x) / length, (tip.y - from.y) / length};
        block.line(from, {tip.x - along.x * head / 2, tip.y - along.y * head / 2}, Pen::thin, Role::mark);
        block.fill({arrowhead(tip, along, head)}, Ink::black);
    }
    const Rect picture = block.empty() ? Rect{0, 0, 1, 1} : block.box();
    std::vector<BalloonWanted> placed = balloons;
    for (BalloonWanted& w : placed)
        for (Point2& p : w.anchors) p = on_paper(p);
    draw_balloons(block, picture, placed, balloon_size);
    return block;
}

} // namespace

Block step_picture(const Job& job, const assembly::Step& step, double width, double height) {
    const Looked looked = look_at_step(job, step);
    const auto balloons = balloons_of(job, step, looked);
    constexpr double border = 16;
    double factor = std::min((width - border) / std::max(looked.box.width(), 1.0),
                             (height - border) / std::max(looked.box.height(), 1.0));
    for (int round = 0;; ++round) {
        const Block block = drawn(job, step, looked, balloons, factor);
        const Rect& box = block.box();
        if (round < 10 && (box.width() > width || box.height() > height)) {
            factor = smaller_factor(factor, looked.box, box, width, height);
            continue;
        }
        Block placed;
        placed.add(block, {width / 2 - box.middle().x, height / 2 - box.middle().y});
        placed.claim({0, 0, width, height});
        return placed;
    }
}

} // namespace rayfleck::drawing
