// Shoulders: everything at a grown end is waste, save the tongues.
//
// Square ends: the section is divided by all the borders of tongues and windows into cells; each cell is
// waste from its shoulder (or from the end of the tongue that it belongs to) to the end of the blank. Equal
// cells are put together, along the width first, as a saw would take them off.
//
//        before            after
//      +----------+      +----+-----+
//      |  blank   |      |    +--+  |   waste above, below, in front of and behind the tenon
//      |          |  ->  |    |  |  |
//      +----------+      +----+-----+
//
// Slanting shoulders: four prisms round the tongues of the joint, see waste.hpp.

#include "joinery/waste.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::joinery {
namespace {

constexpr double same_level = 1e-6; // mm; borders nearer than this are one

struct Extent {
    double low, high;
};

Extent extent_along(const Box& box, Vector direction) {
    double middle = 0, half = 0;
    for (int i = 0; i < 3; ++i) {
        middle += direction[i] * (box.low[i] + box.high[i]) / 2;
        half += std::abs(direction[i]) * (box.high[i] - box.low[i]) / 2;
    }
    return {middle - half, middle + half};
}

/// Any one border of a division, ascending, without near repeats.
std::vector<double> borders(std::vector<double> levels, double low, double high) {
    std::vector<double> all{low, high};
    for (const double level : levels)
        if (level > low + same_level && level < high - same_level) all.push_back(level);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end(), [](double a, double b) { return b - a < same_level; }),
              all.end());
    return all;
}

bool holds(const Box& box, int u, int v, double at_u, double at_v) {
    return at_u > box.low[u] && at_u < box.high[u] && at_v > box.low[v] && at_v < box.high[v];
}

/// What happens to one cell of an end: waste from `from` on, by `joint`; nothing when it stands to the very
/// end.
struct Cell {
    double from = 0;
    int standing = -1;
    bool waste = false, done = false;
    bool like(const Cell& other) const {
        return waste && other.waste && !other.done && standing == other.standing &&
               std::abs(from - other.from) < same_level;
    }
};

void cut_square_end(Bench& bench, int part_id, LocalSide side, const std::vector<const Standing*>& all,
                    const Box& blank) {
    const int k = side.axis, u = (k + 1) % 3, v = (k + 2) % 3;
    const double end = bench.grown(part_id, side).value();
    std::vector<double> us, vs;
    const auto note = [&](const Box& box) {
        us.insert(us.end(), {box.low[u], box.high[u]});
        vs.insert(vs.end(), {box.low[v], box.high[v]});
    };
    for (const Standing* standing : all) {
        note(standing->window);
        for (const Standing::Tongue& tongue : standing->tongues) note(tongue.section);
    }
    us = borders(us, blank.low[u], blank.high[u]);
    vs = borders(vs, blank.low[v], blank.high[v]);
    const std::size_t nu = us.size() - 1, nv = vs.size() - 1;
    std::vector<Cell> cells(nu * nv);
    for (std::size_t j = 0; j < nv; ++j)
        for (std::size_t i = 0; i < nu; ++i) {
            Cell& cell = cells[j * nu + i];
            const double cu = (us[i] + us[i + 1]) / 2, cv = (vs[j] + vs[j + 1]) / 2;
            bool in_tongue = false;
            double stands_to = 0;
            for (std::size_t s = 0; s < all.size(); ++s) {
                if (holds(all[s]->window, u, v, cu, cv) && cell.standing < 0) {
                    cell.standing = static_cast<int>(s);
                    cell.from = all[s]->shoulder;
                }
                for (const Standing::Tongue& tongue : all[s]->tongues)
                    if (holds(tongue.section, u, v, cu, cv)) {
                        stands_to = in_tongue ? std::max(stands_to, tongue.to) : tongue.to;
                        in_tongue = true;
                    }
            }
            if (in_tongue) cell.from = stands_to;
            if (cell.standing < 0) cell.standing = 0;
            cell.waste = cell.from < end - same_level;
        }
    for (std::size_t j = 0; j < nv; ++j)
        for (std::size_t i = 0; i < nu; ++i) {
            Cell& first = cells[j * nu + i];
            if (!first.waste || first.done) continue;
            std::size_t i_end = i + 1, j_end = j + 1;
            while (i_end < nu && first.like(cells[j * nu + i_end])) ++i_end;
            const auto row_is_like = [&](std::size_t row) {
                for (std::size_t c = i; c < i_end; ++c)
                    if (!first.like(cells[row * nu + c])) return false;
                return true;
            };
            while (j_end < nv && row_is_like(j_end)) ++j_end;
            for (std::size_t r = j; r < j_end; ++r)
                for (std::size_t c = i; c < i_end; ++c) cells[r * nu + c].done = true;
            const double near = coordinate(bench.part(part_id), side, first.from);
            const double far = coordinate(bench.part(part_id), side, end);
            Box box;
            box.low[k] = std::min(near, far);
            box.high[k] = std::max(near, far);
            box.low[u] = us[i];
            box.high[u] = us[i_end];
            box.low[v] = vs[j];
            box.high[v] = vs[j_end];
            const Standing& owner = *all[static_cast<std::size_t>(first.standing)];
            bench.cut_box(part_id, owner.joint, owner.word, part_id, box);
        }
}

void cut_slanting_end(Bench& bench, int part_id, const Standing& standing, const Box& blank) {
    const int k = standing.side.axis;
    std::vector<Box> sections;
    for (const Standing::Tongue& tongue : standing.tongues) sections.push_back(tongue.section);
    for (CutShape& waste : beyond_except(*standing.slanting, k, sections, blank))
        bench.cut(part_id, standing.joint, standing.word, std::move(waste));
    const double end = bench.grown(part_id, standing.side).value();
    for (const Standing::Tongue& tongue : standing.tongues) {
        if (tongue.to > end - same_level) continue;
        const double near = coordinate(bench.part(part_id), standing.side, tongue.to);
        const double far = coordinate(bench.part(part_id), standing.side, end);
        Box box = tongue.section;
        box.low[k] = std::min(near, far);
        box.high[k] = std::max(near, far);
        bench.cut_box(part_id, standing.joint, standing.word, part_id, box);
    }
}

} // namespace

std::optional<CutShape> beyond(const Plane& plane, int axis, double low, double high, const Box& around) {
    constexpr double margin =
        10.0; // mm, so that no side of a slanting waste comes to lie in a face of the part
    const Extent reach = extent_along(around, plane.normal);
    if (reach.high <= plane.offset + same_level) return std::nullopt;

    for (int i = 0; i < 3; ++i)
        if (std::abs(plane.normal[i]) > 1.0 - 1e-12) {
            // The plane is square to an axis: a box.
            Box box = around;
            const double level = plane.offset * plane.normal[i];
            (plane.normal[i] > 0 ? box.low : box.high)[i] = level;
            box.low[axis] = std::max(box.low[axis], low);
            box.high[axis] = std::min(box.high[axis], high);
            for (int j = 0; j < 3; ++j)
                if (!(box.high[j] - box.low[j] > same_level)) return std::nullopt;
            return piece::BoxCut{box};
        }

    if (low <= around.low[axis] + same_level) low = around.low[axis] - margin;
    if (high >= around.high[axis] - same_level) high = around.high[axis] + margin;
    if (!(high - low > same_level)) return std::nullopt;
    // In the frame u along the axis, v square to it on the waste's side, the plane is the line nu u + nv v =
    // offset.
    Vector along;
    along[axis] = 1;
    Frame frame;
    frame.x = along;
    frame.y = unit(plane.normal - along * plane.normal[axis]);
    frame.z = cross(frame.x, frame.y);
    const double nu = plane.normal[axis], nv = dot(plane.normal, frame.y);
    const double far = extent_along(around, frame.y).high + margin;
    const auto level = [&](double u) { return (plane.offset - nu * u) / nv; };
    std::vector<solid::Point2> ring;
    const double at_low = level(low), at_high = level(high);
    if (at_low >= far - same_level && at_high >= far - same_level) return std::nullopt;
    const double crossing = std::abs(nu) < 1e-12 ? 0 : (plane.offset - nv * far) / nu;
    ring.push_back(at_low < far ? solid::Point2{low, at_low} : solid::Point2{crossing, far});
    ring.push_back(at_high < far ? solid::Point2{high, at_high} : solid::Point2{crossing, far});
    if (at_high < far) ring.push_back({high, far});
    if (at_low < far) ring.push_back({low, far});
    const Extent depth = extent_along(around, frame.z);
    return piece::PrismCut{frame, polygon(ring), depth.low - margin, depth.high + margin};
}

std::vector<CutShape> beyond_except(const Plane& plane, int axis, const std::vector<Box>& tongues,
                                    const Box& around) {
    std::vector<CutShape> all;
    const auto take = [&](int along, double low, double high) {
        if (auto waste = beyond(plane, along, low, high, around)) all.push_back(std::move(*waste));
    };
    if (tongues.empty()) {
        take((axis + 1) % 3, -unlimited, unlimited);
        return all;
    }
    Box bound = tongues.front();
    for (const Box& tongue : tongues)
        for (int i = 0; i < 3; ++i) {
            bound.low[i] = std::min(bound.low[i], tongue.low[i]);
            bound.high[i] = std::max(bound.high[i], tongue.high[i]);
        }
    for (const int along : {(axis + 2) % 3, (axis + 1) % 3}) {
        if (bound.low[along] > around.low[along] + same_level) take(along, -unlimited, bound.low[along]);
        if (bound.high[along] < around.high[along] - same_level) take(along, bound.high[along], unlimited);
        std::vector<Box> sorted = tongues;
        std::sort(sorted.begin(), sorted.end(),
                  [&](const Box& a, const Box& b) { return a.low[along] < b.low[along]; });
        double reached = sorted.front().high[along];
        for (const Box& tongue : sorted) {
            if (tongue.low[along] > reached + same_level) take(along, reached, tongue.low[along]);
            reached = std::max(reached, tongue.high[along]);
        }
    }
    return all;
}

void cut_shoulders(Bench& bench, int part_id) {
    const Box blank = blank_of(bench, part_id);
    for (int axis = 0; axis < 3; ++axis)
        for (const bool high : {false, true}) {
            const LocalSide side{axis, high};
            std::vector<const Standing*> square;
            for (const Standing& standing : bench.standing(part_id)) {
                if (!(standing.side == side)) continue;
                if (standing.slanting)
                    cut_slanting_end(bench, part_id, standing, blank);
                else
                    square.push_back(&standing);
            }
            if (!square.empty()) cut_square_end(bench, part_id, side, square, blank);
        }
}

void end_cuts_with_blank(Bench& bench, int part_id) {
    const Box blank = blank_of(bench, part_id);
    std::erase_if(bench.cuts(part_id), [&](piece::Cut& cut) {
        auto* box = std::get_if<piece::BoxCut>(&cut.shape);
        if (box == nullptr) return false;
        for (int i = 0; i < 3; ++i) {
            box->box.low[i] = std::max(box->box.low[i], blank.low[i]);
            box->box.high[i] = std::min(box->box.high[i], blank.high[i]);
            if (box->box.high[i] - box->box.low[i] < same_level) return true;
        }
        return false;
    });
}

Box blank_of(const Bench& bench, int part_id) {
    const piece::Part& part = bench.part(part_id);
    Box box;
    for (int axis = 0; axis < 3; ++axis) {
        box.low[axis] = -bench.grown(part_id, {axis, false}).value();
        box.high[axis] = size_of(part, axis) + bench.grown(part_id, {axis, true}).value();
    }
    return box;
}

} // namespace rayfleck::joinery
