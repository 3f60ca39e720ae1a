// Lines are sorted by direction and distance from the origin, so that overlaps are found among neighbours
// only.

#include "drawing/view.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <tuple>

#include "drawing/lines.hpp"

namespace rayfleck::drawing {
namespace {

/// Two directions or distances nearer than this are the same line: half a hundredth of a millimetre of wood.
constexpr double same_offset = 0.01, same_turn = 1e-4;
/// Parallel lines on paper, mm.
constexpr double least_gap = 0.7;

/// A segment as a stretch of an endless line.
struct OnLine {
    double turn = 0, offset = 0; ///< which line: its direction in radians, its distance from the origin
    double from = 0, to = 0;     ///< along it
    Point2 direction, foot;
    double length() const { return to - from; }
};

OnLine on_line(const Segment2& s) {
    OnLine line;
    double dx = s.b.x - s.a.x, dy = s.b.y - s.a.y;
    const double length = std::hypot(dx, dy);
    dx /= length, dy /= length;
    if (dx < -1e-6 || (std::abs(dx) <= 1e-6 && dy < 0)) dx = -dx, dy = -dy;
    line.direction = {dx, dy};
    line.turn = std::atan2(dy, dx);
    line.offset = dx * s.a.y - dy * s.a.x;
    line.foot = {-dy * line.offset, dx * line.offset};
    line.from = dx * s.a.x + dy * s.a.y;
    line.to = dx * s.b.x + dy * s.b.y;
    if (line.from > line.to) std::swap(line.from, line.to);
    return line;
}

/// The segments in groups that lie on one endless line, each sorted along it.
std::vector<std::vector<OnLine>> grouped(const std::vector<Segment2>& segments) {
    std::vector<OnLine> lines;
    lines.reserve(segments.size());
    for (const Segment2& s : segments)
        if (std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) > 1e-6) lines.push_back(on_line(s));
    std::sort(lines.begin(), lines.end(), [](const OnLine& a, const OnLine& b) {
        return std::tie(a.turn, a.offset, a.from) < std::tie(b.turn, b.offset, b.from);
    });
    std::vector<std::vector<OnLine>> groups;
    for (std::size_t i = 0; i < lines.size();) {
        std::size_t end = i + 1;
        while (end < lines.size() && lines[end].turn - lines[end - 1].turn < same_turn) ++end;
        const auto from = lines.begin() + static_cast<std::ptrdiff_t>(i),
                   to = lines.begin() + static_cast<std::ptrdiff_t>(end);
        std::sort(from, to, [](const OnLine& a, const OnLine& b) {
            return std::tie(a.offset, a.from) < std::tie(b.offset, b.from);
        });
        for (auto line = from; line != to; ++line) {
            if (line == from || line->offset - std::prev(line)->offset > same_offset) groups.emplace_back();
            groups.back().push_back(*line);
        }
        i = end;
    }
    for (auto& group : groups)
        std::sort(group.begin(), group.end(), [](const OnLine& a, const OnLine& b) {
            return std::tie(a.from, a.to) < std::tie(b.from, b.to);
        });
    return groups;
}

Segment2 segment_of(const OnLine& line, double from, double to) {
    return {{line.foot.x + line.direction.x * from, line.foot.y + line.direction.y * from},
            {line.foot.x + line.direction.x * to, line.foot.y + line.direction.y * to}};
}

void zig_zag(Block& block, double x, double low, double high) {
    const double past = 2.0, half = std::min(1.5, (high - low) / 6 + 0.6);
    const double middle = (low + high) / 2;
    block.stroke({{x, low - past},
                  {x, middle - half},
                  {x - 1.1, middle - half / 2},
                  {x + 1.1, middle + half / 2},
                  {x, middle + half},
                  {x, high + past}},
                 Pen::thin, Role::mark);
}

/// What is left between two lines of which one has been left out: a speck by itself.
bool is_stub(const std::vector<Point2>& points) {
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        length += std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    const bool closed = points.front().x == points.back().x && points.front().y == points.back().y;
    return !closed && length < least_gap;
}

} // namespace

std::vector<Segment2> united(const std::vector<Segment2>& segments) {
    std::vector<Segment2> out;
    for (const std::vector<OnLine>& group : grouped(segments)) {
        // The longest tells the direction best.
        const OnLine& line =
            *std::max_element(group.begin(), group.end(),
                              [](const OnLine& a, const OnLine& b) { return a.length() < b.length(); });
        for (std::size_t i = 0; i < group.size();) {
            double to = group[i].to;
            std::size_t j = i + 1;
            while (j < group.size() && group[j].from <= to + same_offset) to = std::max(to, group[j++].to);
            out.push_back(segment_of(line, group[i].from, to));
            i = j;
        }
    }
    return out;
}

std::vector<Segment2> without(const std::vector<Segment2>& segments, const std::vector<Segment2>& others) {
    return thinned(segments, same_offset, others);
}

std::vector<Segment2> thinned(const std::vector<Segment2>& segments, double gap,
                              const std::vector<Segment2>& also) {
    struct Entry {
        OnLine line;
        bool stays = false;
    };
    std::vector<Entry> all;
    for (const auto* list : {&also, &segments})
        for (const Segment2& s : *list)
            if (std::hypot(s.b.x - s.a.x, s.b.y - s.a.y) > 1e-6) all.push_back({on_line(s), list == &also});
    std::stable_sort(all.begin(), all.end(),
                     [](const Entry& a, const Entry& b) { return a.line.turn < b.line.turn; });
    std::vector<Segment2> out;
    for (std::size_t i = 0; i < all.size();) {
        std::size_t end = i + 1;
        while (end < all.size() && all[end].line.turn - all[end - 1].line.turn < same_turn) ++end;
        std::vector<Entry> parallel(all.begin() + static_cast<std::ptrdiff_t>(i),
                                    all.begin() + static_cast<std::ptrdiff_t>(end));
        i = end;
        std::stable_sort(parallel.begin(), parallel.end(), [](const Entry& a, const Entry& b) {
            if (a.stays != b.stays) return a.stays;
            // Equal lengths differ in the last bits; then the place decides.
            if (std::abs(a.line.length() - b.line.length()) > 1e-3) return a.line.length() > b.line.length();
            return a.line.offset < b.line.offset;
        });
        std::vector<OnLine> kept;
        for (const Entry& entry : parallel) {
            if (entry.stays) {
                kept.push_back(entry.line);
                continue;
            }
            std::vector<std::pair<double, double>> taken;
            for (const OnLine& other : kept)
                if (std::abs(other.offset - entry.line.offset) < gap && other.from < entry.line.to &&
                    other.to > entry.line.from)
                    taken.push_back({other.from, other.to});
            std::sort(taken.begin(), taken.end());
            double at = entry.line.from;
            const auto keep = [&](double from, double to) {
                // Between two kept lines a stub shorter than the gap says nothing.
                if (to - from <= (taken.empty() ? 0 : gap)) return;
                out.push_back(segment_of(entry.line, from, to));
                kept.push_back(entry.line);
                kept.back().from = from;
                kept.back().to = to;
            };
            for (const auto& [from, to] : taken) {
                if (to <= at || from >= entry.line.to) continue;
                if (from > at) keep(at, from);
                at = std::max(at, to);
            }
            if (entry.line.to > at) keep(at, entry.line.to);
        }
    }
    return out;
}

std::vector<std::vector<Point2>> chained(const std::vector<Segment2>& segments) {
    using Key = std::pair<long, long>;
    const auto key = [](Point2 p) { return Key{std::lround(p.x * 200), std::lround(p.y * 200)}; };
    std::map<Key, std::vector<std::size_t>> at;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        at[key(segments[i].a)].push_back(i);
        at[key(segments[i].b)].push_back(i);
    }
    std::vector<bool> used(segments.size(), false);
    std::vector<std::vector<Point2>> out;
    const auto walk = [&](std::size_t first, bool from_a) {
        std::vector<Point2> points{from_a ? segments[first].a : segments[first].b};
        std::size_t here = first;
        bool forwards = from_a;
        while (true) {
            used[here] = true;
            const Point2 end = forwards ? segments[here].b : segments[here].a;
            points.push_back(end);
            const auto& ends = at[key(end)];
            if (ends.size() != 2) break;
            const std::size_t next = ends[0] == here ? ends[1] : ends[0];
            if (used[next]) break;
            forwards = key(segments[next].a) == key(end);
            here = next;
        }
        out.push_back(std::move(points));
    };
    for (std::size_t i = 0; i < segments.size(); ++i) {
        if (used[i]) continue;
        if (at[key(segments[i].a)].size() != 2)
            walk(i, true);
        else if (at[key(segments[i].b)].size() != 2)
            walk(i, false);
    }
    for (std::size_t i = 0; i < segments.size(); ++i)
        if (!used[i]) {
            walk(i, true);
            out.back().back() = out.back().front();
        }
    return out;
}

Seen look_at(const std::vector<solid::Placed>& parts, const solid::View& view, bool with_hidden) {
    Seen seen;
    for (const solid::Line2& line :
         with_hidden ? solid::hidden_lines(parts, view) : solid::visible_lines(parts, view))
        (line.visible ? seen.visible : seen.hidden).push_back(line.at);
    seen.visible = united(seen.visible);
    seen.hidden = without(united(seen.hidden), seen.visible);
    std::vector<Point2> points;
    for (const Segment2& s : seen.visible) points.push_back(s.a), points.push_back(s.b);
    if (points.empty()) points.push_back({});
    seen.box = around(points);
    return seen;
}

LengthMap::LengthMap(double from, double to, double scale) : scale_(scale), kept_{{from, to, 0}} {}

LengthMap LengthMap::broken(double from, double to, double scale, const std::vector<double>& nodes,
                            double paper) {
    LengthMap map(from, to, scale);
    double excess = (to - from) * scale - paper;
    if (excess <= 0) return map;
    // Paper that stays on both sides of a break, and the opening between its two lines.
    constexpr double stays = 9, opening = 3;
    std::vector<double> places{from};
    for (const double node : nodes)
        if (node > places.back() + 1e-6 && node < to - 1e-6) places.push_back(node);
    places.push_back(to);
    struct Gap {
        std::size_t index;
        double room; ///< paper that a break here can save
    };
    std::vector<Gap> gaps;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        const double room = (places[i + 1] - places[i]) * scale - 2 * stays - opening;
        if (room > 5) gaps.push_back({i, room});
    }
    std::stable_sort(gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) { return a.room > b.room; });
    std::vector<double> saved(places.size(), 0.0);
    for (const Gap& gap : gaps) {
        if (excess <= 0) break;
        saved[gap.index] = std::min(gap.room, excess);
        excess -= saved[gap.index];
    }
    map.kept_.clear();
    double start = from, at = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        if (saved[i] <= 0) continue;
        const double middle = (places[i] + places[i + 1]) / 2, half = (saved[i] + opening) / scale / 2;
        map.kept_.push_back({start, middle - half, at});
        at += (middle - half - start) * scale + opening;
        start = middle + half;
    }
    map.kept_.push_back({start, to, at});
    return map;
}

double LengthMap::on_paper(double x) const {
    const Kept* before = &kept_.front();
    for (const Kept& k : kept_) {
        if (x < k.from) break;
        before = &k;
    }
    // Places left out by a break come to lie on its first line.
    const double to = before == &kept_.back() ? x : std::min(x, before->to);
    return before->at + (to - before->from) * scale_;
}

void draw_seen(Block& block, const Seen& seen, const LengthMap& map, Point2 origin, Role role) {
    const auto on_paper = [&](const std::vector<Segment2>& segments) {
        std::vector<Segment2> out;
        for (const Segment2& s : segments)
            for (const LengthMap::Kept& k : map.kept()) {
                Segment2 c = s;
                if (c.a.x > c.b.x) std::swap(c.a, c.b);
                if (map.is_broken()) {
                    const auto cut = [&](double x) {
                        const double t = (x - s.a.x) / (s.b.x - s.a.x);
                        return Point2{x, s.a.y + t * (s.b.y - s.a.y)};
                    };
                    const bool last = &k == &map.kept().back(), first = &k == &map.kept().front();
                    const double low = first ? c.a.x : k.from, high = last ? c.b.x : k.to;
                    if (c.b.x < low - 1e-9 || c.a.x > high + 1e-9) continue;
                    if (c.a.x < low) c.a = cut(low);
                    if (c.b.x > high) c.b = cut(high);
                }
                const auto placed = [&](Point2 p) {
                    return Point2{origin.x + k.at + (p.x - k.from) * map.scale(),
                                  origin.y + (p.y - seen.box.bottom) * map.scale()};
                };
                c = {placed(c.a), placed(c.b)};
                if (std::hypot(c.a.x - c.b.x, c.a.y - c.b.y) > 0.01) out.push_back(c);
            }
        return out;
    };
    // The outermost lines stay whatever lies beside them: they are what is measured.
    std::vector<Segment2> outermost, within;
    for (const Segment2& s : seen.visible) {
        const auto both = [](double a, double b, double border) {
            return std::abs(a - border) < same_offset && std::abs(b - border) < same_offset;
        };
        const bool outer = both(s.a.x, s.b.x, seen.box.left) || both(s.a.x, s.b.x, seen.box.right) ||
                           both(s.a.y, s.b.y, seen.box.bottom) || both(s.a.y, s.b.y, seen.box.top);
        (outer ? outermost : within).push_back(s);
    }
    std::vector<Segment2> visible = on_paper(outermost);
    const std::vector<Segment2> rest = thinned(on_paper(within), least_gap, visible);
    visible.insert(visible.end(), rest.begin(), rest.end());
    const std::vector<Segment2> hidden = thinned(on_paper(seen.hidden), least_gap, visible);
    // A splinter that makes the piece wider stays, be it a speck.
    const Rect whole{origin.x, origin.y, origin.x + map.length_on_paper(),
                     origin.y + seen.box.height() * map.scale()};
    const auto at_border = [&](const std::vector<Point2>& points) {
        return std::any_of(points.begin(), points.end(), [&](Point2 p) {
            return p.x < whole.left + 1e-6 || p.x > whole.right - 1e-6 || p.y < whole.bottom + 1e-6 ||
                   p.y > whole.top - 1e-6;
        });
    };
    for (std::vector<Point2>& points : chained(hidden)) {
        if (is_stub(points)) continue;
        // A small circle in one run of dashes has one gap and looks like a letter c; its halves have one
        // each.
        constexpr double small_circle = 12; // mm round it, on paper
        const bool closed =
            std::hypot(points.front().x - points.back().x, points.front().y - points.back().y) < 0.01;
        if (closed && points.size() > 12 && length_of(points) < small_circle) {
            const auto half = static_cast<std::ptrdiff_t>(points.size() / 2);
            block.stroke({points.begin(), points.begin() + half + 1}, Pen::hidden, role);
            points.erase(points.begin(), points.begin() + half);
        }
        block.stroke(std::move(points), Pen::hidden, role);
    }
    for (std::vector<Point2>& points : chained(visible))
        if (!is_stub(points) || at_border(points)) block.stroke(std::move(points), Pen::visible, role);
    const double top = origin.y + seen.box.height() * map.scale();
    for (std::size_t i = 0; i + 1 < map.kept().size(); ++i) {
        const LengthMap::Kept &a = map.kept()[i], &b = map.kept()[i + 1];
        zig_zag(block, origin.x + a.at + (a.to - a.from) * map.scale(), origin.y, top);
        zig_zag(block, origin.x + b.at, origin.y, top);
    }
}

void draw_seen(Block& block, const Seen& seen, double scale, Point2 origin, Role role) {
    draw_seen(block, seen, LengthMap(seen.box.left, seen.box.right, scale), origin, role);
}

} // namespace rayfleck::drawing
