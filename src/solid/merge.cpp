// Merging coincident lines.
//
// In a view square to the piece most edges lie on top of others: front and back, part against part. Lines are
// sorted by direction, then by their distance from the middle of the picture; what lies within 0.01 mm is one
// carrier. Along each carrier the stretches are swept from end to end: a place is visible if any line there
// is, and belongs to the lowest part among those that are.

#include "solid/merge.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace rayfleck::solid {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double same_carrier = 0.01;    // mm
constexpr double same_direction = 1e-5;  // radians between neighbours in the sorted order
constexpr double widest_bundle = 5e-5;   // radians within one direction
constexpr double shortest_line = 0.001;  // mm
constexpr double shortest_piece = 0.005; // mm: where lines of two parts end almost together

struct Placed2 {
    double angle = 0, length = 0;
    Point2 direction;
    double offset = 0; ///< of its middle from the picture's middle, to the left of the bundle's direction
    const Line2* line = nullptr;
};

struct End {
    double at;
    int part;
    bool visible, opens;
};

/// How many lines of each part are open; few parts at a time, so a sorted list serves best.
class OpenLines {
  public:
    void clear() { parts_.clear(); }
    bool empty() const { return parts_.empty(); }
    int lowest_part() const { return parts_.front().first; }
    void open(int part) {
        const auto at = find(part);
        if (at != parts_.end() && at->first == part)
            ++at->second;
        else
            parts_.insert(at, {part, 1});
    }
    void close(int part) {
        const auto at = find(part);
        if (at != parts_.end() && at->first == part && --at->second == 0) parts_.erase(at);
    }

  private:
    std::vector<std::pair<int, int>>::iterator find(int part) {
        return std::find_if(parts_.begin(), parts_.end(), [&](const auto& p) { return p.first >= part; });
    }
    std::vector<std::pair<int, int>> parts_;
};

struct Piece {
    double from, to;
    int part;
    bool visible;
};

/// Working memory of the sweeps, kept from one to the next.
struct Sweeping {
    std::vector<End> ends;
    std::vector<Piece> pieces;
    OpenLines seen, unseen;
};

/// Sweeps the lines of one carrier, whose ends are given.
void sweep(Sweeping& work, Point2 origin, Point2 direction, std::vector<Line2>& out) {
    auto& [ends, pieces, seen, unseen] = work;
    if (ends.size() > 2)
        std::sort(ends.begin(), ends.end(), [](const End& a, const End& b) {
            if (a.at != b.at) return a.at < b.at;
            if (a.opens != b.opens) return a.opens;
            return a.part != b.part ? a.part < b.part : a.visible < b.visible;
        });
    pieces.clear();
    seen.clear();
    unseen.clear();
    double from = 0;
    for (const End& end : ends) {
        if ((!seen.empty() || !unseen.empty()) && end.at > from) {
            const bool visible = !seen.empty();
            const int part = visible ? seen.lowest_part() : unseen.lowest_part();
            const bool joins = !pieces.empty() && pieces.back().to == from;
            if (joins && ((pieces.back().part == part && pieces.back().visible == visible) ||
                          end.at - from < shortest_piece))
                pieces.back().to = end.at;
            else
                pieces.push_back({from, end.at, part, visible});
        }
        from = end.at;
        OpenLines& lines = end.visible ? seen : unseen;
        if (end.opens)
            lines.open(end.part);
        else
            lines.close(end.part);
    }
    for (const Piece& piece : pieces) {
        if (piece.to - piece.from < shortest_line) continue;
        const auto at = [&](double t) {
            return Point2{origin.x + direction.x * t, origin.y + direction.y * t};
        };
        out.push_back({{at(piece.from), at(piece.to)}, piece.part, piece.visible});
    }
}

} // namespace

std::vector<Line2> merged(const std::vector<Line2>& lines) {
    std::vector<Placed2> all;
    all.reserve(lines.size());
    Point2 low{1e300, 1e300}, high{-1e300, -1e300};
    for (const Line2& line : lines) {
        Point2 d{line.at.b.x - line.at.a.x, line.at.b.y - line.at.a.y};
        const double length = std::hypot(d.x, d.y);
        if (length < shortest_line) continue;
        d = {d.x / length, d.y / length};
        // Directions from just under 0 to just under a half turn, so that level lines are together.
        if (d.y < -1e-3 || (d.y < 1e-3 && d.x < 0)) d = {-d.x, -d.y};
        all.push_back({std::atan2(d.y, d.x), length, d, 0, &line});
        for (const Point2 p : {line.at.a, line.at.b}) {
            low = {std::min(low.x, p.x), std::min(low.y, p.y)};
            high = {std::max(high.x, p.x), std::max(high.y, p.y)};
        }
    }
    const Point2 middle{(low.x + high.x) / 2, (low.y + high.y) / 2};
    std::stable_sort(all.begin(), all.end(),
                     [](const Placed2& a, const Placed2& b) { return a.angle < b.angle; });
    std::vector<Line2> out;
    Sweeping work;
    std::vector<End>& ends = work.ends;
    for (std::size_t i = 0; i < all.size();) {
        std::size_t end = i + 1;
        while (end < all.size() && all[end].angle - all[end - 1].angle <= same_direction &&
               all[end].angle - all[i].angle <= widest_bundle)
            ++end;
        const auto first = all.begin() + static_cast<std::ptrdiff_t>(i);
        const auto last = all.begin() + static_cast<std::ptrdiff_t>(end);
        const Point2 along = std::max_element(first, last, [](const Placed2& a, const Placed2& b) {
                                 return a.length < b.length;
                             })->direction;
        const auto place = [&](Point2 p) {
            return Point2{along.x * (p.x - middle.x) + along.y * (p.y - middle.y),
                          along.x * (p.y - middle.y) - along.y * (p.x - middle.x)};
        };
        for (auto line = first; line != last; ++line)
            line->offset = (place(line->line->at.a).y + place(line->line->at.b).y) / 2;
        std::stable_sort(first, last, [](const Placed2& a, const Placed2& b) { return a.offset < b.offset; });
        for (auto carrier = first; carrier != last;) {
            auto past = carrier;
            double longest = 0, offset = carrier->offset;
            ends.clear();
            for (; past != last; ++past) {
                if (past != carrier && (past->offset - (past - 1)->offset > same_carrier ||
                                        past->offset - carrier->offset > 2 * same_carrier))
                    break;
                // The longest line says where the carrier lies.
                if (past->length > longest) {
                    longest = past->length;
                    offset = past->offset;
                }
                const double a = place(past->line->at.a).x, b = place(past->line->at.b).x;
                ends.push_back({std::min(a, b), past->line->part, past->line->visible, true});
                ends.push_back({std::max(a, b), past->line->part, past->line->visible, false});
            }
            sweep(work, {middle.x - along.y * offset, middle.y + along.x * offset}, along, out);
            carrier = past;
        }
        i = end;
    }
    std::sort(out.begin(), out.end(), [](const Line2& a, const Line2& b) {
        if (a.part != b.part) return a.part < b.part;
        if (a.at.a.x != b.at.a.x) return a.at.a.x < b.at.a.x;
        if (a.at.a.y != b.at.a.y) return a.at.a.y < b.at.a.y;
        if (a.at.b.x != b.at.b.x) return a.at.b.x < b.at.b.x;
        return a.at.b.y < b.at.b.y;
    });
    return out;
}

} // namespace rayfleck::solid
