// Frame of the gauge: x from the near end, y from the face edge, z from the face side; the wood is 0 … L, 0 …
// W, 0 … T. Saw cuts are half spaces; a cut with limits is a wedge. Profiles of mouldings as the legend of
// the marks states them: fillets of one eighth, quirks of one sixth, unequal rounds as quarter ellipses in
// eight chords.

#include "rebuilt.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

#include "rebuilt_mouldings.hpp"

namespace rayfleck::testing {
namespace {

using drawing::CutFigure;
using drawing::CutForm;
using drawing::CutPoint;
using drawing::CutRecord;
using solid::Box;
using solid::Frame;
using solid::Outline;
using solid::Plane;
using solid::Point;
using solid::Point2;
using solid::Shape;
using solid::Vector;

constexpr double degree = std::numbers::pi / 180;
constexpr double outside = 50; // mm that a tool may run out of the wood
const std::array<const char*, 3> sizes{"along", "across", "through"};
const std::array<const char*, 3> places{"from near end", "from face edge", "from face side"};

struct Side {
    int axis = 0;
    bool far = false;
};
std::optional<Side> side_named(const std::string& name) {
    const char* names[3][2] = {{"near end", "far end"}, {"face edge", "back edge"}, {"face side", "back"}};
    for (int axis = 0; axis < 3; ++axis)
        for (int far = 0; far < 2; ++far)
            if (name == names[axis][far]) return Side{axis, far == 1};
    return std::nullopt;
}

class Rebuilding {
  public:
    explicit Rebuilding(const std::vector<CutRecord>& records) : records_(records) {}

    Rebuilt run() {
        const CutRecord* blank = nullptr;
        const CutRecord* turned = nullptr;
        for (const CutRecord& r : records_) {
            if (r.form == CutForm::blank) blank = &r;
            if (r.form == CutForm::turned && r.whole) turned = &r;
        }
        if (!blank) {
            fault("no blank is stated");
            return std::move(result_);
        }
        for (std::size_t k = 0; k < 3; ++k) size_[static_cast<int>(k)] = one(*blank, sizes[k]);
        Shape wood = turned                  ? solid::turned(turning_axis(), stations(*turned))
                     : blank->points.empty() ? solid::box({}, {0, 0, 0}, size_)
                                             : solid::prism({}, outline(blank->points), 0, size_.z);
        double moulded_off = 0;
        for (const CutRecord& r : records_) {
            if (r.form == CutForm::tongue) continue;
            if (r.form == CutForm::edge && !blank->points.empty() && runs_round(r)) {
                moulded_off += moulding_round(r, outline(blank->points));
                continue;
            }
            cut(r);
        }
        for (int axis = 0; axis < 3; ++axis)
            for (const bool far : {false, true}) cut_round_tongues(axis, far);
        result_.solid = solid::carve(wood, tools_);
        result_.volume = result_.solid.volume - moulded_off;
        return std::move(result_);
    }

  private:
    void fault(const std::string& words) { result_.faults.push_back(words); }

    static std::vector<double> values(const CutRecord& r, const std::string& what) {
        std::vector<double> all;
        for (const CutFigure& f : r.figures)
            if (f.what == what)
                for (int i = 0; i < f.times; ++i) all.push_back(f.value + i * f.pitch);
        return all;
    }
    double one(const CutRecord& r, const std::string& what) {
        const auto all = values(r, what);
        if (all.size() != 1) fault(r.word + ": " + std::to_string(all.size()) + " figures for " + what);
        return all.empty() ? 0 : all.front();
    }
    static double or_nought(const CutRecord& r, const std::string& what, double otherwise = 0) {
        const auto all = values(r, what);
        return all.empty() ? otherwise : all.front();
    }
    /// Every place of the record; what is not told is nought.
    static std::vector<Point> all_places(const CutRecord& r) {
        std::array<std::vector<double>, 3> at;
        for (std::size_t k = 0; k < 3; ++k) {
            at[k] = values(r, places[k]);
            if (at[k].empty()) at[k] = {0};
        }
        std::vector<Point> all;
        for (const double x : at[0])
            for (const double y : at[1])
                for (const double z : at[2]) all.push_back({x, y, z});
        return all;
    }

    static Outline outline(const std::vector<CutPoint>& points, Point2 by = {}) {
        Outline o;
        o.start = {points.back().x + by.x, points.back().y + by.y};
        for (const CutPoint& p : points) {
            solid::Edge2 edge{{p.x + by.x, p.y + by.y}, std::nullopt, true};
            if (p.arc) {
                edge.centre = Point2{p.centre_x + by.x, p.centre_y + by.y};
                edge.anticlockwise = p.anticlockwise;
            }
            o.edges.push_back(edge);
            o.smooth.push_back(p.smooth);
        }
        if (solid::area(o) >= 0) return o;
        // The other way round.
        Outline back;
        back.start = o.start;
        for (std::size_t i = o.edges.size(); i-- > 0;) {
            solid::Edge2 edge = o.edges[i];
            edge.to = i == 0 ? o.start : o.edges[i - 1].to;
            edge.anticlockwise = !edge.anticlockwise;
            back.edges.push_back(edge);
            back.smooth.push_back(o.smooth[i]);
        }
        return back;
    }

    Frame turning_axis() const {
        Frame frame;
        frame.origin = {0, size_.y / 2, size_.z / 2};
        return frame;
    }
    static std::vector<solid::Station> stations(const CutRecord& r) {
        std::vector<solid::Station> all;
        for (const CutPoint& p : r.points) all.push_back({p.x, p.y, p.smooth > 0});
        return all;
    }
    /// Outlines across an axis stand in the two that follow it.
    static Frame across(int axis) {
        Frame frame;
        frame.x = frame.y = frame.z = {};
        frame.x[(axis + 1) % 3] = 1;
        frame.y[(axis + 2) % 3] = 1;
        frame.z[axis] = 1;
        return frame;
    }

    void take(Shape tool) {
        tools_.push_back(std::move(tool));
        ++result_.cuts;
    }

    void cut(const CutRecord& r) {
        switch (r.form) {
        case CutForm::blank:
        case CutForm::tongue:
            return;
        case CutForm::turned:
            if (!r.whole)
                take(solid::turned_waste(turning_axis(), stations(r),
                                         std::hypot(size_.y, size_.z) / 2 + outside));
            return;
        case CutForm::hollow:
            for (const Point at : all_places(r))
                take(solid::box({}, at, at + Point{one(r, sizes[0]), one(r, sizes[1]), one(r, sizes[2])}));
            return;
        case CutForm::bore:
            return bore(r);
        case CutForm::prism:
            for (const Point at : all_places(r)) {
                const std::size_t k = static_cast<std::size_t>(r.axis);
                take(solid::prism(across(r.axis),
                                  outline(r.points, {at[(r.axis + 1) % 3], at[(r.axis + 2) % 3]}), at[r.axis],
                                  at[r.axis] + one(r, sizes[k])));
            }
            return;
        case CutForm::leaning:
            return leaning(r);
        case CutForm::saw:
        case CutForm::shoulder:
            return saw(r);
        case CutForm::rip:
            return rip(r);
        case CutForm::edge:
            return moulding(r);
        }
    }

    /// Into the wood through the side across `axis`.
    Vector direction(const CutRecord& r) const {
        Vector d;
        d[r.axis] = r.far ? -1 : 1;
        for (int k = 0; k < 3; ++k)
            if (k != r.axis)
                d[k] = std::tan(or_nought(r, std::string("lean ") + sizes[static_cast<std::size_t>(k)]) *
                                degree);
        return measure::unit(d);
    }

    /// Into the wood square to an end sawn at an angle; its place is measured along that end from two
    /// arrises.
    void bore_in_sawn_end(const CutRecord& r) {
        const CutRecord* end = nullptr;
        for (const CutRecord& other : records_)
            if (other.form == CutForm::saw && other.far == r.far) end = &other;
        if (!end) return fault(r.word + ": no sawn end");
        const Plane plane = sawn(*end, values(*end, places[0]).front());
        const Vector n = plane.normal;
        Point at;
        for (const int axis : {1, 2})
            at[axis] = one(r, std::string("on the sawn end ") + sizes[static_cast<std::size_t>(axis)]) *
                       std::sqrt(1 - n[axis] * n[axis]);
        at.x = (plane.offset - n.y * at.y - n.z * at.z) / n.x;
        Frame frame;
        frame.origin = at;
        frame.z = -n;
        frame.x = measure::unit(cross(Vector{0, 1, 0}, frame.z));
        frame.y = cross(frame.z, frame.x);
        take(solid::cylinder(frame, one(r, "diameter") / 2, -outside, one(r, "deep")));
    }

    void bore(const CutRecord& r) {
        if (!values(r, std::string("on the sawn end ") + sizes[1]).empty()) return bore_in_sawn_end(r);
        const Vector d = direction(r);
        const double radius = one(r, "diameter") / 2, slope = std::abs(d[r.axis]);
        const double slant = slope > 1 - 1e-9 ? 0 : radius * std::sqrt(1 - slope * slope) / slope + 1;
        for (Point at : all_places(r)) {
            at[r.axis] = r.far ? size_[r.axis] : 0;
            Frame frame;
            frame.origin = at;
            frame.z = d;
            int flattest = 0;
            for (int k = 1; k < 3; ++k)
                if (std::abs(d[k]) < std::abs(d[flattest])) flattest = k;
            Vector helper;
            helper[flattest] = 1;
            frame.x = measure::unit(cross(helper, d));
            frame.y = cross(d, frame.x);
            const double to = r.through ? size_[r.axis] / slope + slant : one(r, "deep");
            take(solid::cylinder(frame, radius, -slant, to));
        }
    }

    void leaning(const CutRecord& r) {
        const Vector d = direction(r);
        const int first = r.axis == 0 ? 1 : 0;
        Vector reference;
        reference[first] = 1;
        reference = measure::unit(reference - d * d[first]);
        const double twist = or_nought(r, "twist") * degree;
        Frame frame;
        frame.z = d;
        frame.x = reference * std::cos(twist) + cross(d, reference) * std::sin(twist);
        frame.y = cross(d, frame.x);
        const double a = one(r, "first side") / 2, b = one(r, "second side") / 2;
        const double to = r.through ? size_[r.axis] / std::abs(d[r.axis]) + outside : one(r, "deep");
        for (Point at : all_places(r)) {
            at[r.axis] = r.far ? size_[r.axis] : 0;
            frame.origin = at;
            Outline o;
            o.start = {-a, -b};
            for (const Point2 p : {Point2{a, -b}, {a, b}, {-a, b}, {-a, -b}})
                o.edges.push_back({p, std::nullopt, true});
            take(solid::prism(frame, o, -outside, to));
        }
    }

    /// All beyond the plane with the coordinate of an axis between two levels.
    void wedge(const Plane& plane, int axis, double low, double high) {
        if (high - low < 1e-9) return;
        const Box around{{-outside, -outside, -outside},
                         {size_.x + outside, size_.y + outside, size_.z + outside}};
        if (std::abs(plane.normal[axis]) > 1 - 1e-12) {
            Box box = around;
            const double level = plane.offset * plane.normal[axis];
            box.low[axis] = std::max(low, plane.normal[axis] > 0 ? level : low);
            box.high[axis] = std::min(high, plane.normal[axis] > 0 ? high : level);
            if (box.high[axis] > box.low[axis]) take(solid::box({}, box.low, box.high));
            return;
        }
        Frame frame;
        frame.x = {};
        frame.x[axis] = 1;
        frame.y = measure::unit(plane.normal - frame.x * plane.normal[axis]);
        frame.z = cross(frame.x, frame.y);
        const double reach = size_.x + size_.y + size_.z + 4 * outside;
        const auto level = [&](double u) {
            return (plane.offset - plane.normal[axis] * u) / dot(plane.normal, frame.y);
        };
        const double far = std::max({reach, level(low) + 1, level(high) + 1});
        Outline o;
        o.start = {low, level(low)};
        for (const Point2 p : {Point2{high, level(high)}, {high, far}, {low, far}, {low, level(low)}})
            o.edges.push_back({p, std::nullopt, true});
        take(solid::prism(frame, o, -reach, reach));
    }

    void limited(const CutRecord& r, const Plane& plane) {
        for (std::size_t k = 0; k < 3; ++k) {
            const auto low = values(r, std::string("limit low ") + sizes[k]),
                       high = values(r, std::string("limit high ") + sizes[k]);
            if (low.empty() && high.empty()) continue;
            const int axis = static_cast<int>(k);
            wedge(plane, axis, low.empty() ? -outside : low.front(),
                  high.empty() ? size_[axis] + outside : high.front());
            return;
        }
        take(solid::half_space(plane, {{0, 0, 0}, size_}));
    }

    /// The plane of a cut across the end with its long point at that place along the part.
    Plane sawn(const CutRecord& r, double x) const {
        const double miter = or_nought(r, "miter") * degree, bevel = or_nought(r, "bevel") * degree;
        const Vector n =
            Vector{std::cos(bevel) * std::cos(miter), std::cos(bevel) * std::sin(miter), std::sin(bevel)} *
            (r.far ? 1.0 : -1.0);
        Point at{x, 0, 0};
        for (const std::string& name : r.arrises)
            if (const auto side = side_named(name); side && side->far) at[side->axis] = size_[side->axis];
        return {n, dot(n, at)};
    }

    void saw(const CutRecord& r) {
        const double miter = or_nought(r, "miter") * degree, bevel = or_nought(r, "bevel") * degree;
        const double sign = r.far ? 1 : -1;
        const Vector n =
            Vector{std::cos(bevel) * std::cos(miter), std::cos(bevel) * std::sin(miter), std::sin(bevel)} *
            sign;
        if (r.arrises.size() != 2) return fault(r.word + ": no long point");
        for (const double x : values(r, places[0])) {
            Point at{x, 0, 0};
            for (const std::string& name : r.arrises) {
                const auto side = side_named(name);
                if (!side) return fault(r.word + ": no side " + name);
                if (side->far) at[side->axis] = size_[side->axis];
            }
            const Plane plane{n, dot(n, at)};
            if (r.form == CutForm::saw) {
                limited(r, plane);
                continue;
            }
            for (const int axis : {1, 2}) {
                const std::size_t k = static_cast<std::size_t>(axis);
                const double low = or_nought(r, places[k]), high = low + or_nought(r, sizes[k], size_[axis]);
                if (low > 1e-6) wedge(plane, axis, -outside, low);
                if (high < size_[axis] - 1e-6) wedge(plane, axis, high, size_[axis] + outside);
            }
        }
    }

    void rip(const CutRecord& r) {
        const int axis = r.axis, other = 3 - axis;
        const double sign = r.far ? 1 : -1, tilt = or_nought(r, "tilt") * degree;
        const double first = one(r, "first"), second = or_nought(r, "second", first);
        const double x1 = or_nought(r, "first x"), x2 = or_nought(r, "second x", size_.x);
        if (r.arrises.size() != 1) return fault(r.word + ": not said on which side it is measured");
        const auto side = side_named(r.arrises.front());
        if (!side) return fault(r.word + ": no side " + r.arrises.front());
        // In the plane of the reference side the normal is square to the line; the tilt turns it out of that
        // plane.
        const double slope = (second - first) / (x2 - x1);
        const double in_plane = std::cos(tilt);
        Vector n;
        n[axis] = sign * in_plane / std::sqrt(1 + slope * slope);
        n.x = -slope * n[axis];
        n[other] = sign * std::sin(tilt);
        Point at{x1, 0, 0};
        at[axis] = first;
        at[other] = side->far ? size_[other] : 0;
        limited(r, {n, dot(n, at)});
    }

    void cut_round_tongues(int axis, bool far) {
        const int u = (axis + 1) % 3, v = (axis + 2) % 3;
        std::vector<Box> standing;
        double deepest = 0;
        for (const CutRecord& r : records_) {
            if (r.form != CutForm::tongue || r.axis != axis) continue;
            const Point size{one(r, sizes[0]), one(r, sizes[1]), one(r, sizes[2])};
            for (const Point at : all_places(r)) {
                const Box box{at, at + size};
                if ((box.low[axis] + box.high[axis] > size_[axis]) != far) continue;
                standing.push_back(box);
                deepest = std::max(deepest, far ? size_[axis] - box.low[axis] : box.high[axis]);
            }
        }
        if (standing.empty()) return;
        std::vector<double> us{0, size_[u]}, vs{0, size_[v]};
        for (const Box& box : standing) {
            us.insert(us.end(), {box.low[u], box.high[u]});
            vs.insert(vs.end(), {box.low[v], box.high[v]});
        }
        for (auto* levels : {&us, &vs}) {
            std::sort(levels->begin(), levels->end());
            levels->erase(
                std::unique(levels->begin(), levels->end(), [](double a, double b) { return b - a < 1e-4; }),
                levels->end());
        }
        for (std::size_t i = 0; i + 1 < us.size(); ++i)
            for (std::size_t j = 0; j + 1 < vs.size(); ++j) {
                const double cu = (us[i] + us[i + 1]) / 2, cv = (vs[j] + vs[j + 1]) / 2;
                double stands = 0; // beyond the shoulder
                for (const Box& box : standing)
                    if (cu > box.low[u] && cu < box.high[u] && cv > box.low[v] && cv < box.high[v])
                        stands = std::max(stands, far ? box.high[axis] - (size_[axis] - deepest)
                                                      : deepest - box.low[axis]);
                if (stands > deepest - 1e-4) continue;
                Box waste;
                waste.low[u] = us[i], waste.high[u] = us[i + 1];
                waste.low[v] = vs[j], waste.high[v] = vs[j + 1];
                waste.low[axis] = far ? size_[axis] - deepest + stands : 0;
                waste.high[axis] = far ? size_[axis] : deepest - stands;
                tools_.push_back(solid::box({}, waste.low, waste.high));
            }
        result_.cuts += static_cast<int>(standing.size());
    }

    void moulding(const CutRecord& r) {
        const double first = one(r, "on first"), second = or_nought(r, "on second", first);
        Box body{{0, 0, 0}, size_};
        for (std::size_t k = 0; k < 3; ++k) {
            const int axis = static_cast<int>(k);
            body.low[axis] = or_nought(r, std::string("limit low ") + sizes[k]);
            body.high[axis] = or_nought(r, std::string("limit high ") + sizes[k], size_[axis]);
        }
        for (const std::string& arris : r.arrises) {
            const auto comma = arris.find(", ");
            const auto a = side_named(arris.substr(0, comma)), b = side_named(arris.substr(comma + 2));
            if (!a || !b || a->axis == b->axis) {
                fault(r.word + ": no arris " + arris);
                continue;
            }
            const int along = 3 - a->axis - b->axis;
            Frame frame;
            frame.origin[a->axis] = a->far ? body.high[a->axis] : body.low[a->axis];
            frame.origin[b->axis] = b->far ? body.high[b->axis] : body.low[b->axis];
            frame.x = frame.y = {};
            frame.x[b->axis] = b->far ? -1 : 1;
            frame.y[a->axis] = a->far ? -1 : 1;
            frame.z = cross(frame.x, frame.y);
            const bool backwards = frame.z[along] < 0;
            take(solid::prism(frame, moulding_profile(r.side, first, second),
                              backwards ? -body.high[along] : body.low[along],
                              backwards ? -body.low[along] : body.high[along]));
        }
    }

    /// All round one face of a blank sawn to an outline.
    static bool runs_round(const CutRecord& r) {
        std::map<std::string, int> of_side;
        for (const std::string& arris : r.arrises)
            for (const char* face : {"face side", "back"})
                if (arris.substr(0, arris.find(", ")) == face || arris.substr(arris.find(", ") + 2) == face)
                    ++of_side[face];
        return std::any_of(of_side.begin(), of_side.end(), [](const auto& f) { return f.second == 4; });
    }

    double moulding_round(const CutRecord& r, const Outline& o) {
        const double first = one(r, "on first");
        ++result_.cuts;
        return moulded_off_round(o, moulding_profile(r.side, first, or_nought(r, "on second", first)));
    }

    const std::vector<CutRecord>& records_;
    Point size_;
    std::vector<Shape> tools_;
    Rebuilt result_;
};

} // namespace

Rebuilt rebuilt(const std::vector<CutRecord>& records) { return Rebuilding(records).run(); }

} // namespace rayfleck::testing
