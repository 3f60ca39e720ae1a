// Hidden lines: which stretches of the edges a face nearer to the eye covers.
//
// Faces turned to the eye are laid on the picture plane as loops with a linear depth. An edge is compared
// with every such face that its cells of a grid hold, nearest first, until it is covered from end to end: the
// stretch where the face is nearer by more than 2 µm, within the even-odd stretches of the edge's line inside
// the loops.
//
// Flush faces and edges that fall on a face's border are decided by asking twice: for the edge moved 1 µm to
// the left and 1 µm to the right. Only what is covered on both sides is hidden; a border line therefore stays
// visible. Where parts run into each other, no line is made at their meeting.
//
// Facets' smooth edges are drawn only as silhouettes: one facet looks to the eye, the other away.

#include <algorithm>
#include <cmath>

#include "solid/merge.hpp"
#include "solid/solid.hpp"

namespace rayfleck::solid {
namespace {

constexpr double faces_eye = 1e-4;   // least component of a face's normal towards the eye
constexpr double nearer_by = 0.002;  // mm
constexpr double aside = 0.001;      // mm
constexpr double end_on = 0.002;     // mm: shorter edges are points in the picture
constexpr double gap_closed = 0.005; // mm: covers that abut leave smaller gaps by rounding

struct Rectangle {
    double left = 1e300, right = -1e300, bottom = 1e300, top = -1e300;
    void take(Point2 p) {
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        bottom = std::min(bottom, p.y);
        top = std::max(top, p.y);
    }
};

/// A face turned to the eye. Depth grows towards the eye: depth = by_x x + by_y y + at_origin.
struct Cover {
    int face = 0; ///< counted through all parts
    int first_loop = 0, past_loop = 0;
    double by_x = 0, by_y = 0, at_origin = 0;
    double nearest = -1e300;
    Rectangle bounds;
};

struct EdgeInPicture {
    Point2 a, b;
    double depth_a = 0, depth_b = 0;
    int part = 0, face_left = 0, face_right = 0;
    bool looks_away = false;
};

struct Picture {
    std::vector<Cover> covers; ///< nearest first
    std::vector<Point2> points;
    std::vector<int> loops; ///< start of each loop in points, and one past the end
    std::vector<Rectangle> loop_bounds;
    std::vector<EdgeInPicture> edges;
};

/// Which lines are asked for.
enum class Wanted { all, visible };

Picture picture_of(const std::vector<Placed>& parts, const View& view, Wanted wanted) {
    Picture picture;
    int faces_before = 0;
    std::vector<double> towards;
    for (std::size_t p = 0; p < parts.size(); ++p) {
        const Solid& solid = *parts[p].solid;
        const Frame& frame = parts[p].frame;
        // The view's axes as the part sees them.
        const Vector right = frame.turn_in(view.right), up = frame.turn_in(view.up);
        const Vector eye = frame.turn_in(view.towards);
        const Vector origin{dot(view.right, frame.origin), dot(view.up, frame.origin),
                            dot(view.towards, frame.origin)};
        towards.clear();
        for (std::size_t f = 0; f < solid.faces.size(); ++f) {
            const Face& face = solid.faces[f];
            const double turned = dot(face.plane.normal, eye);
            towards.push_back(turned);
            if (turned <= faces_eye) continue;
            Cover cover;
            cover.face = faces_before + static_cast<int>(f);
            cover.by_x = -dot(face.plane.normal, right) / turned;
            cover.by_y = -dot(face.plane.normal, up) / turned;
            cover.at_origin =
                face.plane.offset / turned + origin.z - cover.by_x * origin.x - cover.by_y * origin.y;
            cover.first_loop = static_cast<int>(picture.loops.size());
            for (const auto& loop : face.loops) {
                picture.loops.push_back(static_cast<int>(picture.points.size()));
                Rectangle& bounds = picture.loop_bounds.emplace_back();
                for (const Point& q : loop) {
                    const Point2 at{dot(right, q) + origin.x, dot(up, q) + origin.y};
                    picture.points.push_back(at);
                    bounds.take(at);
                    cover.nearest = std::max(cover.nearest, dot(eye, q) + origin.z);
                }
            }
            cover.past_loop = static_cast<int>(picture.loops.size());
            cover.bounds = picture.loop_bounds[static_cast<std::size_t>(cover.first_loop)];
            picture.covers.push_back(cover);
        }
        for (const Edge& edge : solid.edges) {
            const double left = towards[edge.face_left], right_hand = towards[edge.face_right];
            if (edge.smooth && (left > faces_eye) == (right_hand > faces_eye)) continue;
            const bool looks_away = left < -faces_eye && right_hand < -faces_eye;
            if (looks_away && wanted == Wanted::visible) continue;
            EdgeInPicture drawn;
            drawn.a = {dot(right, edge.a) + origin.x, dot(up, edge.a) + origin.y};
            drawn.b = {dot(right, edge.b) + origin.x, dot(up, edge.b) + origin.y};
            if (std::hypot(drawn.b.x - drawn.a.x, drawn.b.y - drawn.a.y) < end_on) continue;
            drawn.depth_a = dot(eye, edge.a) + origin.z;
            drawn.depth_b = dot(eye, edge.b) + origin.z;
            drawn.part = static_cast<int>(p);
            drawn.face_left = faces_before + edge.face_left;
            drawn.face_right = faces_before + edge.face_right;
            drawn.looks_away = looks_away;
            picture.edges.push_back(drawn);
        }
        faces_before += static_cast<int>(solid.faces.size());
    }
    picture.loops.push_back(static_cast<int>(picture.points.size()));
    std::stable_sort(picture.covers.begin(), picture.covers.end(),
                     [](const Cover& a, const Cover& b) { return a.nearest > b.nearest; });
    return picture;
}

/// The picture cut into cells, each listing the covers whose bounds touch it, nearest first.
class Cells {
  public:
    explicit Cells(const std::vector<Cover>& covers) {
        for (const Cover& cover : covers) {
            all_.take({cover.bounds.left, cover.bounds.bottom});
            all_.take({cover.bounds.right, cover.bounds.top});
        }
        if (covers.empty()) return;
        const double width = std::max(all_.right - all_.left, 1e-3);
        const double height = std::max(all_.top - all_.bottom, 1e-3);
        const double size = std::sqrt(width * height / static_cast<double>(4 * covers.size()));
        columns_ = std::clamp(static_cast<int>(width / size), 1, 400);
        rows_ = std::clamp(static_cast<int>(height / size), 1, 400);
        cell_width_ = width / columns_;
        cell_height_ = height / rows_;
        starts_.assign(static_cast<std::size_t>(columns_ * rows_) + 1, 0);
        const auto each_cell = [&](const Cover& cover, auto callback) {
            const int left = column(cover.bounds.left), right = column(cover.bounds.right);
            const int bottom = row(cover.bounds.bottom), top = row(cover.bounds.top);
            for (int r = bottom; r <= top; ++r)
                for (int c = left; c <= right; ++c) callback(r * columns_ + c);
        };
        for (const Cover& cover : covers) each_cell(cover, [&](int cell) { ++starts_[cell + 1]; });
        for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
        members_.resize(static_cast<std::size_t>(starts_.back()));
        std::vector<int> filled(starts_.begin(), starts_.end() - 1);
        for (std::size_t i = 0; i < covers.size(); ++i)
            each_cell(covers[i], [&](int cell) { members_[filled[cell]++] = static_cast<int>(i); });
        met_.assign(covers.size(), -1);
    }

    /// Covers under `past_cover` in the cells that a line passes, ascending, each once. `asking` must differ
    /// from call to call.
    void along(Point2 a, Point2 b, int asking, int past_cover, std::vector<int>& found) {
        found.clear();
        if (columns_ == 0) return;
        if (a.x > b.x) std::swap(a, b);
        const double margin = 2 * aside;
        const int left = column(a.x - margin), right = column(b.x + margin);
        const double rise = b.x - a.x > 1e-9 ? (b.y - a.y) / (b.x - a.x) : 0;
        int visited = 0;
        for (int c = left; c <= right; ++c) {
            double low = std::min(a.y, b.y), high = std::max(a.y, b.y);
            if (left != right && b.x - a.x > 1e-9) {
                const double from = c == left ? a.x : std::max(a.x, all_.left + c * cell_width_ - margin);
                const double to =
                    c == right ? b.x : std::min(b.x, all_.left + (c + 1) * cell_width_ + margin);
                const double y1 = a.y + rise * (from - a.x), y2 = a.y + rise * (to - a.x);
                low = std::max(low, std::min(y1, y2));
                high = std::min(high, std::max(y1, y2));
            }
            const int bottom = row(low - margin), top = row(high + margin);
            for (int r = bottom; r <= top; ++r) {
                ++visited;
                const std::size_t cell = static_cast<std::size_t>(r * columns_ + c);
                for (int i = starts_[cell]; i < starts_[cell + 1]; ++i) {
                    const int cover = members_[i];
                    if (cover >= past_cover) break;
                    if (met_[cover] == asking) continue;
                    met_[cover] = asking;
                    found.push_back(cover);
                }
            }
        }
        if (visited > 1) std::sort(found.begin(), found.end());
    }

  private:
    int column(double x) const {
        return static_cast<int>(std::clamp(std::floor((x - all_.left) / cell_width_), 0.0, columns_ - 1.0));
    }
    int row(double y) const {
        return static_cast<int>(std::clamp(std::floor((y - all_.bottom) / cell_height_), 0.0, rows_ - 1.0));
    }
    Rectangle all_;
    int columns_ = 0, rows_ = 0;
    double cell_width_ = 1, cell_height_ = 1;
    std::vector<int> starts_, members_, met_;
};

/// Disjoint stretches along one edge, ascending.
class Stretches {
  public:
    void clear() { stretches_.clear(); }
    void add(double from, double to) {
        auto first = stretches_.begin();
        while (first != stretches_.end() && first->second < from - gap_closed) ++first;
        auto past = first;
        while (past != stretches_.end() && past->first <= to + gap_closed) {
            from = std::min(from, past->first);
            to = std::max(to, past->second);
            ++past;
        }
        if (first == past) {
            stretches_.insert(first, {from, to});
        } else {
            *first = {from, to};
            stretches_.erase(first + 1, past);
        }
    }
    bool hold(double from, double to) const {
        return stretches_.size() == 1 && stretches_[0].first <= from + gap_closed &&
               stretches_[0].second >= to - gap_closed;
    }
    const std::vector<std::pair<double, double>>& all() const { return stretches_; }

  private:
    std::vector<std::pair<double, double>> stretches_;
};

/// Finds the covered stretches of one edge after another.
class Covering {
  public:
    Covering(const Picture& picture, Cells& cells, Wanted wanted)
        : picture_(picture), cells_(cells), wanted_(wanted) {}

    /// Adds the edge's stretches that are wanted.
    void settle(const EdgeInPicture& edge, int number, std::vector<Line2>& out) {
        const double length = std::hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
        const Point2 along{(edge.b.x - edge.a.x) / length, (edge.b.y - edge.a.y) / length};
        const auto at = [&](double t) { return Point2{edge.a.x + along.x * t, edge.a.y + along.y * t}; };
        const auto add = [&](double from, double to, bool visible) {
            if (!visible && wanted_ == Wanted::visible) return;
            if (to - from > gap_closed || (from <= 0 && to >= length))
                out.push_back({{at(from), at(to)}, edge.part, visible});
        };
        if (edge.looks_away) return add(0, length, false);

        left_.clear();
        right_.clear();
        // Covers are sorted: from some number on none is nearer than the edge's farthest point.
        const double farthest = std::min(edge.depth_a, edge.depth_b) + nearer_by;
        const auto past = std::partition_point(picture_.covers.begin(), picture_.covers.end(),
                                               [&](const Cover& cover) { return cover.nearest > farthest; });
        cells_.along(edge.a, edge.b, number, static_cast<int>(past - picture_.covers.begin()), found_);
        for (const int index : found_) {
            const Cover& cover = picture_.covers[index];
            if (cover.face == edge.face_left || cover.face == edge.face_right) continue;
            if (take(edge, cover, along, length) && left_.hold(0, length) && right_.hold(0, length))
                return add(0, length, false);
        }
        // Covered on both sides: hidden. The rest, in order.
        double done = 0;
        auto l = left_.all().begin();
        auto r = right_.all().begin();
        while (l != left_.all().end() && r != right_.all().end()) {
            const double from = std::max(l->first, r->first), to = std::min(l->second, r->second);
            if (to - from > gap_closed) {
                if (from - done > gap_closed) add(done, from, true);
                add(from - done > gap_closed ? from : done, length - to > gap_closed ? to : length, false);
                done = length - to > gap_closed ? to : length;
            }
            if (l->second < r->second)
                ++l;
            else
                ++r;
        }
        if (done < length) add(done, length, true);
    }

  private:
    /// The edge does not come near a rectangle.
    static bool passes_by(const EdgeInPicture& edge, Point2 along, const Rectangle& b) {
        if (std::max(edge.a.x, edge.b.x) < b.left - aside || std::min(edge.a.x, edge.b.x) > b.right + aside ||
            std::max(edge.a.y, edge.b.y) < b.bottom - aside || std::min(edge.a.y, edge.b.y) > b.top + aside)
            return true;
        const Point2 middle{(b.left + b.right) / 2 - edge.a.x, (b.bottom + b.top) / 2 - edge.a.y};
        const double reach =
            (std::abs(along.y) * (b.right - b.left) + std::abs(along.x) * (b.top - b.bottom)) / 2;
        return std::abs(along.x * middle.y - along.y * middle.x) > reach + aside;
    }

    /// Adds what the cover hides of the edge; false when that is nothing.
    bool take(const EdgeInPicture& edge, const Cover& cover, Point2 along, double length) {
        if (passes_by(edge, along, cover.bounds)) return false;
        const auto excess = [&](Point2 p, double depth) {
            return cover.by_x * p.x + cover.by_y * p.y + cover.at_origin - depth - nearer_by;
        };
        const double at_a = excess(edge.a, edge.depth_a), at_b = excess(edge.b, edge.depth_b);
        if (at_a <= 0 && at_b <= 0) return false;
        double from = 0, to = length;
        if (at_a <= 0) from = length * at_a / (at_a - at_b);
        if (at_b <= 0) to = length * at_a / (at_a - at_b);

        crossings_[0].clear();
        crossings_[1].clear();
        for (int loop = cover.first_loop; loop < cover.past_loop; ++loop) {
            // A loop that stays clear of the edge is crossed an even number of times before it, or after.
            if (passes_by(edge, along, picture_.loop_bounds[loop])) continue;
            const int first = picture_.loops[loop], past = picture_.loops[loop + 1];
            const auto place = [&](int i) {
                const Point2 p = picture_.points[i];
                return Point2{along.x * (p.x - edge.a.x) + along.y * (p.y - edge.a.y),
                              along.x * (p.y - edge.a.y) - along.y * (p.x - edge.a.x)};
            };
            Point2 before = place(past - 1);
            for (int i = first; i < past; ++i) {
                const Point2 here = place(i);
                for (const int side : {0, 1}) {
                    const double shift = side == 0 ? aside : -aside;
                    const double h1 = before.y - shift, h2 = here.y - shift;
                    if ((h1 > 0) != (h2 > 0))
                        crossings_[side].push_back(before.x + (here.x - before.x) * (h1 / (h1 - h2)));
                }
                before = here;
            }
        }
        for (const int side : {0, 1}) {
            std::vector<double>& places = crossings_[side];
            std::sort(places.begin(), places.end());
            for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
                const double enter = std::max(places[i], from), leave = std::min(places[i + 1], to);
                if (leave > enter) (side == 0 ? left_ : right_).add(enter, leave);
            }
        }
        return true;
    }

    const Picture& picture_;
    Cells& cells_;
    Wanted wanted_;
    std::vector<int> found_;
    std::vector<double> crossings_[2];
    Stretches left_, right_;
};

std::vector<Line2> lines_of(const std::vector<Placed>& parts, const View& view, Wanted wanted) {
    const Picture picture = picture_of(parts, view, wanted);
    Cells cells(picture.covers);
    Covering covering(picture, cells, wanted);
    std::vector<Line2> lines;
    for (std::size_t i = 0; i < picture.edges.size(); ++i)
        covering.settle(picture.edges[i], static_cast<int>(i), lines);
    return merged(lines);
}

} // namespace

std::vector<Line2> hidden_lines(const std::vector<Placed>& parts, const View& view) {
    return lines_of(parts, view, Wanted::all);
}

Alone seen_alone(const Placed& part, const View& view) {
    const Picture picture = picture_of({part}, view, Wanted::visible);
    Alone alone;
    Rectangle bounds;
    for (const EdgeInPicture& edge : picture.edges) {
        bounds.take(edge.a);
        bounds.take(edge.b);
        alone.length += std::hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
    }
    if (!picture.edges.empty()) {
        alone.low = {bounds.left, bounds.bottom};
        alone.high = {bounds.right, bounds.top};
    }
    return alone;
}

std::vector<Line2> visible_lines(const std::vector<Placed>& parts, const View& view) {
    return lines_of(parts, view, Wanted::visible);
}

} // namespace rayfleck::solid
