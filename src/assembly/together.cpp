// The linear program: speeds v with the first part at rest, (v_a - v_b)·n <= 0 for every contact with normal
// n out of a, sum |v| <= 1, and as much movement outwards as can be had. Solved by the simplex method in a
// dense table with Bland's rule, which cannot run in circles (Bland 1977, from memory).

#include "assembly/together.hpp"

#include <algorithm>
#include <cmath>

#include "solid/passage.hpp"

namespace rayfleck::assembly {
namespace {

using measure::dot;
using measure::norm;

constexpr double tiny = 1e-9;
/// Speeds nearer than this to one another, of a sum of 1, are one speed.
constexpr double same_speed = 1e-6;

/// Rows of coefficients; a row's value must not exceed 0, but the last one's must not exceed 1.
class Program {
  public:
    explicit Program(std::size_t unknowns) : unknowns_(unknowns) {}
    void at_most_nothing(std::vector<double> row) { rows_.push_back(std::move(row)); }
    std::size_t unknowns() const { return unknowns_; }

    /// Unknowns of any sign that make `aim` as great as possible; empty when that is nothing above 0.
    std::vector<double> solve(const std::vector<double>& aim) const {
        // Each unknown is the difference of two that are not negative. The table has a column for each that
        // is 0 at present (first the unknowns, rows' slacks as they are exchanged), a row for each that is
        // not.
        const std::size_t n = 2 * unknowns_, m = rows_.size() + 1, wide = n + 1;
        std::vector<double> table((m + 1) * wide, 0.0);
        const auto row = [&](std::size_t r) { return table.data() + r * wide; };
        for (std::size_t r = 0; r < m; ++r)
            for (std::size_t u = 0; u < unknowns_; ++u) {
                const double value = r < rows_.size() ? rows_[r][u] : 1.0;
                row(r)[2 * u] = value;
                row(r)[2 * u + 1] = r < rows_.size() ? -value : 1.0;
            }
        row(m - 1)[n] = 1;
        for (std::size_t u = 0; u < unknowns_; ++u) row(m)[2 * u] = -aim[u], row(m)[2 * u + 1] = aim[u];
        std::vector<std::size_t> column(n), basis(m);
        for (std::size_t c = 0; c < n; ++c) column[c] = c;
        for (std::size_t r = 0; r < m; ++r) basis[r] = n + r;
        const std::size_t patience = 4 * (n + m);
        for (std::size_t pivots = 0; pivots < 3 * patience; ++pivots) {
            // The steepest way first; if that goes on for long, the lowest number, which cannot go in
            // circles.
            std::size_t in = n;
            for (std::size_t c = 0; c < n; ++c) {
                if (row(m)[c] >= -tiny) continue;
                if (in == n || (pivots < patience ? row(m)[c] < row(m)[in] : column[c] < column[in])) in = c;
            }
            if (in == n) break;
            std::size_t out = m;
            double least = 0;
            for (std::size_t r = 0; r < m; ++r) {
                if (row(r)[in] <= tiny) continue;
                const double ratio = row(r)[n] / row(r)[in];
                if (out == m || ratio < least - tiny || (ratio < least + tiny && basis[r] < basis[out]))
                    out = r, least = ratio;
            }
            if (out == m) break;
            double* const pivot = row(out);
            const double by = 1 / pivot[in];
            for (std::size_t c = 0; c < wide; ++c) pivot[c] *= by;
            pivot[in] = by;
            for (std::size_t r = 0; r <= m; ++r) {
                const double factor = row(r)[in];
                if (r == out || factor == 0) continue;
                double* const other = row(r);
                other[in] = 0;
                for (std::size_t c = 0; c < wide; ++c) other[c] -= factor * pivot[c];
            }
            std::swap(basis[out], column[in]);
        }
        if (row(m)[n] < 1e-4) return {};
        std::vector<double> found(unknowns_, 0.0);
        for (std::size_t r = 0; r < m; ++r)
            if (basis[r] < n) found[basis[r] / 2] += (basis[r] % 2 == 0 ? 1 : -1) * row(r)[n];
        return found;
    }

  private:
    std::size_t unknowns_;
    std::vector<std::vector<double>> rows_;
};

/// The program of some parts: three unknowns for each but the first.
Program program_of(const Ways& ways, const std::vector<int>& parts) {
    std::vector<int> place(ways.parts(), -1);
    for (std::size_t i = 0; i < parts.size(); ++i)
        place[static_cast<std::size_t>(parts[i])] = static_cast<int>(i);
    Program program(3 * (parts.size() - 1));
    struct Known {
        int a, b;
        Vector normal;
    };
    std::vector<Known> known;
    // (v_a - v_b)·normal <= 0
    const auto add = [&](int a, int b, Vector normal) {
        for (const Known& k : known)
            if (k.a == a && k.b == b && norm(k.normal - normal) < 1e-4) return;
        known.push_back({a, b, normal});
        std::vector<double> row(program.unknowns(), 0.0);
        for (const auto& [part, sign] : {std::pair{a, 1.0}, {b, -1.0}}) {
            const int at = place[static_cast<std::size_t>(part)];
            if (at == 0) continue;
            for (int axis = 0; axis < 3; ++axis)
                row[static_cast<std::size_t>(3 * (at - 1) + axis)] += sign * normal[axis];
        }
        program.at_most_nothing(std::move(row));
    };
    const auto both = [&](int a, int b) {
        return place[static_cast<std::size_t>(a)] >= 0 && place[static_cast<std::size_t>(b)] >= 0;
    };
    for (const Bond& bond : ways.bonds()) {
        if (!bond.guided || !both(bond.a, bond.b)) continue;
        Vector across{0, 0, 1};
        if (std::abs(bond.direction.z) > 0.7) across = {1, 0, 0};
        const Vector u = unit(cross(bond.direction, across)), v = cross(bond.direction, u);
        for (const Vector side : {u, -u, v, -v}) add(bond.a, bond.b, side);
        add(bond.a, bond.b, bond.direction);
    }
    const auto guided = [&](int a, int b) {
        return std::any_of(ways.bonds().begin(), ways.bonds().end(), [&](const Bond& bond) {
            return bond.guided && ((bond.a == a && bond.b == b) || (bond.a == b && bond.b == a));
        });
    };
    for (const joinery::Contact& contact : ways.model().contacts)
        if (both(contact.a, contact.b) && !guided(contact.a, contact.b))
            add(contact.a, contact.b, contact.plane.normal);
    return program;
}

bool pass(const Ways& ways, int a, Vector speed_a, int b, Vector speed_b) {
    const Vector against = speed_a - speed_b;
    if (norm(against) < same_speed) return true;
    const Vector way = unit(against);
    if (ways.held_apart_from(a, b, way)) return false;
    const auto& placed = ways.placed();
    return !solid::Passage({placed[static_cast<std::size_t>(a)], placed[static_cast<std::size_t>(b)]}, way)
                .runs_into(0, 1);
}

std::vector<Parting> grouped(const Ways& ways, const std::vector<int>& parts,
                             const std::vector<Vector>& speeds) {
    std::vector<Parting> groups;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto known = std::find_if(groups.begin(), groups.end(), [&](const Parting& g) {
            return norm(g.speed - speeds[i]) < same_speed;
        });
        if (known != groups.end()) {
            known->parts.add(parts[i]);
        } else {
            groups.push_back({PartSet(ways.parts()), speeds[i]});
            groups.back().parts.add(parts[i]);
        }
    }
    return groups;
}

/// Speeds of the parts, the first at rest; empty when they do not come apart.
std::vector<Vector> speeds_of(const Ways& ways, const std::vector<int>& parts) {
    const Program program = program_of(ways, parts);
    const std::size_t n = parts.size();
    Vector middle;
    std::vector<Vector> places;
    for (const int p : parts) {
        places.push_back((ways.box(p).low + ways.box(p).high) * 0.5);
        middle = middle + places.back() * (1.0 / static_cast<double>(n));
    }
    double farthest = 1;
    for (const Vector place : places) farthest = std::max(farthest, norm(place - middle));
    // Outwards from the middle; then outwards along one axis, and all to one side of the first.
    std::vector<std::vector<double>> aims;
    const auto aim_at = [&](const auto& of_part) {
        std::vector<double>& aim = aims.emplace_back();
        for (std::size_t i = 1; i < n; ++i) {
            const Vector v = of_part(i) - of_part(0) * (1.0 / static_cast<double>(n));
            for (int axis = 0; axis < 3; ++axis) aim.push_back(v[axis]);
        }
    };
    aim_at([&](std::size_t i) { return (places[i] - middle) * (1 / farthest); });
    for (int axis = 0; axis < 3; ++axis)
        for (const double sign : {1.0, -1.0})
            aim_at([&](std::size_t i) {
                Vector v;
                v[axis] = i == 0 ? 0 : sign * (1 + 0.01 * static_cast<double>(i));
                return v;
            });
    // Of a few parts every single movement is tried, so that none is overlooked.
    if (n <= 8)
        for (std::size_t k = 1; k < n; ++k)
            for (int axis = 0; axis < 3; ++axis)
                for (const double sign : {1.0, -1.0})
                    aim_at([&](std::size_t i) {
                        Vector v;
                        if (i == k) v[axis] = sign;
                        return v;
                    });
    for (const std::vector<double>& aim : aims) {
        const std::vector<double> found = program.solve(aim);
        if (found.empty()) continue;
        std::vector<Vector> speeds(1);
        for (std::size_t i = 1; i < n; ++i)
            speeds.push_back({found[3 * (i - 1)], found[3 * (i - 1) + 1], found[3 * (i - 1) + 2]});
        bool free = true;
        for (std::size_t i = 0; i < n && free; ++i)
            for (std::size_t k = i + 1; k < n && free; ++k)
                free = pass(ways, parts[i], speeds[i], parts[k], speeds[k]);
        if (free && grouped(ways, parts, speeds).size() > 1) return speeds;
    }
    return {};
}

} // namespace

std::optional<std::vector<Parting>> parts_at_once(const Ways& ways, const PartSet& together) {
    const std::vector<int> parts = together.members();
    if (parts.size() < 2) return std::nullopt;
    const std::vector<Vector> speeds = speeds_of(ways, parts);
    if (speeds.empty()) return std::nullopt;
    return grouped(ways, parts, speeds);
}

std::optional<std::vector<Parting>> parts_at_once(const Ways& ways, const PartSet& together,
                                                  const PartSet& core) {
    std::vector<int> parts = core.members();
    std::vector<Vector> speeds = speeds_of(ways, parts);
    if (speeds.empty()) return std::nullopt;
    PartSet rest = together - core;
    // Neighbours first: who is bonded to what has a speed gets that speed, if it fits.
    for (bool found = true; found && !rest.empty();) {
        found = false;
        for (int p = rest.first(); p >= 0; p = rest.next(p + 1)) {
            for (const bool bonded_only : {true, false}) {
                for (std::size_t i = 0; i < parts.size(); ++i) {
                    if (bonded_only && !ways.bonded(Class::nothing, p).has(parts[i])) continue;
                    bool free = true;
                    for (std::size_t k = 0; k < parts.size() && free; ++k)
                        free = pass(ways, p, speeds[i], parts[k], speeds[k]);
                    if (!free) continue;
                    speeds.push_back(speeds[i]);
                    parts.push_back(p);
                    rest.drop(p);
                    found = true;
                    break;
                }
                if (!rest.has(p)) break;
            }
        }
    }
    if (!rest.empty()) return std::nullopt;
    return grouped(ways, parts, speeds);
}

} // namespace rayfleck::assembly
