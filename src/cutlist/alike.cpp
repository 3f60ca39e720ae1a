// See alike.hpp for the idea. A turn of a box is a signed permutation of its axes: here each axis may change
// its sign, and width and thickness may change places. Its determinant tells a turn from a mirror image.

#include "cutlist/alike.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::cutlist {
namespace {

using measure::Vector;

// Corners lie on a grid of 1/160000 mm and facets within half a step of it, so that copies of one part differ
// by far less than these; a chisel cannot tell them apart either.
constexpr double same_place = 0.01;  // mm
constexpr double same_normal = 2e-5; // of a unit vector: 0.01 mm in half a metre
constexpr double same_area = 0.1;    // mm²

struct Turn {
    double along = 1, across = 1, through = 1; ///< signs that the three axes take
    bool swapped = false;                      ///< width and thickness change places first

    Vector operator()(Vector v) const {
        if (swapped) std::swap(v.y, v.z);
        return {along * v.x, across * v.y, through * v.z};
    }
    std::array<double, 6> moments(std::array<double, 6> m) const {
        if (swapped) {
            std::swap(m[1], m[2]);
            std::swap(m[3], m[5]);
        }
        return {m[0], m[1], m[2], m[3] * along * across, m[4] * across * through, m[5] * along * through};
    }
    bool mirrors() const { return along * across * through * (swapped ? -1 : 1) < 0; }
};

bool near(Vector a, Vector b, double by) { return measure::norm(a - b) <= by; }

bool same(const Form::InPlane& a, const Form::InPlane& b, const Turn& turn, double reach) {
    if (std::abs(a.offset - b.offset) > same_place || std::abs(a.area - b.area) > same_area) return false;
    if (!near(a.normal, turn(b.normal), same_normal)) return false;
    // An area that differs within its tolerance anywhere within reach moves the moments by no more than this.
    const double slack_first = same_place * a.area + same_area * reach;
    if (!near(a.first, turn(b.first), slack_first)) return false;
    const std::array<double, 6> turned = turn.moments(b.second);
    for (std::size_t i = 0; i < 6; ++i)
        if (std::abs(a.second[i] - turned[i]) > 2 * slack_first * reach) return false;
    return true;
}

bool fits(const Form& first, const Form& other, const Turn& turn) {
    // A fibre has no front and back.
    const Vector fibre = turn(other.fibre);
    if (!near(first.fibre, fibre, 1e-6) && !near(first.fibre, -fibre, 1e-6)) return false;
    std::vector<bool> taken(other.planes.size(), false);
    for (const Form::InPlane& plane : first.planes) {
        auto candidate =
            std::lower_bound(other.planes.begin(), other.planes.end(), plane.offset - same_place,
                             [](const Form::InPlane& p, double offset) { return p.offset < offset; });
        bool found = false;
        for (; candidate != other.planes.end() && candidate->offset <= plane.offset + same_place;
             ++candidate) {
            const auto index = static_cast<std::size_t>(candidate - other.planes.begin());
            if (taken[index] || !same(plane, *candidate, turn, first.reach)) continue;
            taken[index] = true;
            found = true;
            break;
        }
        if (!found) return false;
    }
    return true;
}

void add(Form::InPlane& sum, const std::vector<measure::Point>& loop, Vector middle) {
    for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
        const std::array<Vector, 3> corner{loop[0] - middle, loop[i] - middle, loop[i + 1] - middle};
        const double area =
            measure::dot(sum.normal, measure::cross(corner[1] - corner[0], corner[2] - corner[0])) / 2;
        const Vector total = corner[0] + corner[1] + corner[2];
        sum.area += area;
        sum.first = sum.first + total * (area / 3);
        // Integral of x_i x_j over a triangle: area / 12 × (sum over corners + product of the totals).
        constexpr std::array<std::array<int, 2>, 6> pairs{{{0, 0}, {1, 1}, {2, 2}, {0, 1}, {1, 2}, {0, 2}}};
        for (std::size_t k = 0; k < 6; ++k) {
            const auto [p, q] = pairs[k];
            double product = total[p] * total[q];
            for (const Vector& c : corner) product += c[p] * c[q];
            sum.second[k] += product * area / 12;
        }
    }
}

} // namespace

Form form_of(const joinery::Made& made) {
    Form form;
    const Vector middle = (made.blank.low + made.blank.high) * 0.5;
    form.size = made.blank.high - made.blank.low;
    form.reach = measure::norm(form.size) / 2;
    form.volume = made.solid.volume;
    const piece::Part& part = *made.part;
    form.fibre = {std::cos(part.grain.in_radians()), std::sin(part.grain.in_radians()), 0};
    // Rings at 45 degrees stand to both faces alike; where the maker says nothing of rings, he does not mind.
    const bool rings_alike = !part.sawn_stated || std::abs(std::abs(part.rings.in_degrees()) - 45) < 1;
    form.quarter_turns = std::abs(form.size.y - form.size.z) <= same_place && rings_alike;

    for (const solid::Face& face : made.solid.faces) {
        Form::InPlane sum;
        sum.normal = face.plane.normal;
        sum.offset = face.plane.offset - measure::dot(face.plane.normal, middle);
        for (const std::vector<measure::Point>& loop : face.loops) add(sum, loop, middle);
        form.planes.push_back(sum);
    }
    std::stable_sort(form.planes.begin(), form.planes.end(),
                     [](const Form::InPlane& a, const Form::InPlane& b) { return a.offset < b.offset; });
    // Faces of one plane that were carved apart are one again.
    std::vector<Form::InPlane> merged;
    for (const Form::InPlane& plane : form.planes) {
        bool joined = false;
        for (auto earlier = merged.rbegin(); earlier != merged.rend(); ++earlier) {
            if (earlier->offset < plane.offset - same_place) break;
            if (!near(earlier->normal, plane.normal, same_normal)) continue;
            earlier->area += plane.area;
            earlier->first = earlier->first + plane.first;
            for (std::size_t k = 0; k < 6; ++k) earlier->second[k] += plane.second[k];
            joined = true;
            break;
        }
        if (!joined) merged.push_back(plane);
    }
    std::erase_if(merged, [](const Form::InPlane& p) { return p.area < same_area; });
    form.planes = std::move(merged);
    return form;
}

Likeness compare(const Form& first, const Form& other) {
    const double surface_slack = same_place * first.reach * first.reach;
    if (!near(first.size, other.size, same_place) || first.planes.size() != other.planes.size() ||
        std::abs(first.volume - other.volume) > surface_slack + same_place * first.volume / 1000)
        return Likeness::different;
    bool in_a_mirror = false;
    const bool quarters = first.quarter_turns && other.quarter_turns;
    for (const bool swapped : {false, true}) {
        if (swapped && !quarters) continue;
        for (const double along : {1.0, -1.0})
            for (const double across : {1.0, -1.0})
                for (const double through : {1.0, -1.0}) {
                    const Turn turn{along, across, through, swapped};
                    if (turn.mirrors() && in_a_mirror) continue;
                    if (!fits(first, other, turn)) continue;
                    if (!turn.mirrors()) return Likeness::alike;
                    in_a_mirror = true;
                }
    }
    return in_a_mirror ? Likeness::mirrored : Likeness::different;
}

} // namespace rayfleck::cutlist
