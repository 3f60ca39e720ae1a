// Random parts from fixed seeds.
//
// On a coarse grid almost every face is flush with another or touches it along a line, which is where solid
// geometry usually fails. Box parts there are checked by counting cells: volume, surface, length of edges and
// number of bodies must all agree. Parts with tools at any angle are checked by V(A - B) + V(A and B) = V(A),
// and by closing.

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>

#include "solid/solid.hpp"

using namespace rayfleck::solid;
using rayfleck::measure::unit;

namespace {

/// Linear congruential numbers (multiplier and increment from Knuth, MMIX): the same on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    /// 0 ... n - 1
    int below(int n) { return static_cast<int>(next() % static_cast<std::uint64_t>(n)); }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(next()) / 2147483648.0;
    }

  private:
    std::uint64_t next() {
        state_ = state_ * 6364136223846793005u + 1442695040888963407u;
        return state_ >> 33;
    }
    std::uint64_t state_;
};

constexpr int size_x = 7, size_y = 5, size_z = 4;

struct CellCount {
    int cells = 0, sides = 0, edges = 0, bodies = 0;
};

using Cells = std::array<bool, (size_x + 2) * (size_y + 2) * (size_z + 2)>;

bool& cell(Cells& cells, int x, int y, int z) {
    return cells[static_cast<std::size_t>(((z + 1) * (size_y + 2) + y + 1) * (size_x + 2) + x + 1)];
}

void empty_body(Cells& cells, int x, int y, int z) {
    if (!cell(cells, x, y, z)) return;
    cell(cells, x, y, z) = false;
    empty_body(cells, x - 1, y, z);
    empty_body(cells, x + 1, y, z);
    empty_body(cells, x, y - 1, z);
    empty_body(cells, x, y + 1, z);
    empty_body(cells, x, y, z - 1);
    empty_body(cells, x, y, z + 1);
}

CellCount counted(Cells cells) {
    CellCount count;
    for (int x = 0; x <= size_x; ++x)
        for (int y = 0; y <= size_y; ++y)
            for (int z = 0; z <= size_z; ++z) {
                const bool here = cell(cells, x, y, z);
                count.cells += here;
                count.sides += here != cell(cells, x - 1, y, z);
                count.sides += here != cell(cells, x, y - 1, z);
                count.sides += here != cell(cells, x, y, z - 1);
                // Round a grid edge: one or three of four cells make an edge, two across make two.
                const auto round = [&](bool a, bool b, bool c, bool d) {
                    const int sum = a + b + c + d;
                    if (sum == 1 || sum == 3) ++count.edges;
                    if (sum == 2 && a == c) count.edges += 2;
                };
                round(here, cell(cells, x - 1, y, z), cell(cells, x - 1, y - 1, z), cell(cells, x, y - 1, z));
                round(here, cell(cells, x - 1, y, z), cell(cells, x - 1, y, z - 1), cell(cells, x, y, z - 1));
                round(here, cell(cells, x, y - 1, z), cell(cells, x, y - 1, z - 1), cell(cells, x, y, z - 1));
            }
    for (int x = 0; x < size_x; ++x)
        for (int y = 0; y < size_y; ++y)
            for (int z = 0; z < size_z; ++z)
                if (cell(cells, x, y, z)) {
                    ++count.bodies;
                    empty_body(cells, x, y, z);
                }
    return count;
}

/// A right-handed frame at any angle (from a random quaternion).
Frame any_frame(Dice& dice, Point origin) {
    double q[4], sum = 0;
    for (double& part : q) {
        part = dice.between(-1, 1);
        sum += part * part;
    }
    const double s = 1 / std::sqrt(sum), w = q[0] * s, x = q[1] * s, y = q[2] * s, z = q[3] * s;
    Frame frame;
    frame.origin = origin;
    frame.x = unit({1 - 2 * (y * y + z * z), 2 * (x * y + w * z), 2 * (x * z - w * y)});
    frame.y = {2 * (x * y - w * z), 1 - 2 * (x * x + z * z), 2 * (y * z + w * x)};
    frame.y = unit(frame.y - frame.x * dot(frame.x, frame.y));
    frame.z = cross(frame.x, frame.y);
    return frame;
}

Shape any_shape(Dice& dice, const Frame& frame, double size) {
    switch (dice.below(4)) {
    case 0:
        return box(frame, {-size, -size / 2, -size / 3}, {size, size / 2, size / 3});
    case 1:
        return cylinder(frame, size / 2, -size, size);
    case 2:
        return turned(frame, {{-size, size / 4}, {0, size / 2}, {0, size / 3}, {size, size / 5}});
    default: {
        // An L, so that the outline is hollow.
        Outline l;
        l.start = {-size, -size};
        for (const Point2 p : {Point2{size, -size}, Point2{size, 0}, Point2{0, 0}, Point2{0, size},
                               Point2{-size, size}, Point2{-size, -size}})
            l.edges.push_back({p, std::nullopt, true});
        return prism(frame, l, -size / 3, size / 2);
    }
    }
}

} // namespace

TEST_CASE("box parts on a coarse grid agree with counted cells") {
    Dice dice(20);
    const double step = 7.3;
    const Frame frame{};
    for (int part = 0; part < 400; ++part) {
        Cells cells{};
        for (int x = 0; x < size_x; ++x)
            for (int y = 0; y < size_y; ++y)
                for (int z = 0; z < size_z; ++z) cell(cells, x, y, z) = true;
        std::vector<Shape> tools;
        const int number = 1 + dice.below(8);
        for (int t = 0; t < number; ++t) {
            int low[3], high[3];
            const int size[3] = {size_x, size_y, size_z};
            for (int axis = 0; axis < 3; ++axis) {
                low[axis] = dice.below(size[axis] + 1) - 1;
                high[axis] = low[axis] + 1 + dice.below(size[axis] / 2 + 1);
            }
            tools.push_back(box(frame, {low[0] * step, low[1] * step, low[2] * step},
                                {high[0] * step, high[1] * step, high[2] * step}));
            for (int x = std::max(low[0], 0); x < std::min(high[0], size_x); ++x)
                for (int y = std::max(low[1], 0); y < std::min(high[1], size_y); ++y)
                    for (int z = std::max(low[2], 0); z < std::min(high[2], size_z); ++z)
                        cell(cells, x, y, z) = false;
        }
        const Solid solid =
            carve(box(frame, {0, 0, 0}, {size_x * step, size_y * step, size_z * step}), tools);
        const CellCount count = counted(cells);
        double edges = 0;
        for (const Edge& edge : solid.edges) edges += norm(edge.b - edge.a);
        CAPTURE(part);
        CHECK(solid.open_edges == 0);
        CHECK(solid.volume == Approx(count.cells * step * step * step).epsilon(1e-9));
        CHECK(solid.surface == Approx(count.sides * step * step).epsilon(1e-9));
        CHECK(edges == Approx(count.edges * step).epsilon(1e-6));
        CHECK(solid.bodies == count.bodies);
        for (const Face& face : solid.faces) CHECK(face.area > 0.999 * step * step);
    }
}

TEST_CASE("what a tool takes and what it leaves make the whole, at any angle") {
    Dice dice(7);
    for (int trial = 0; trial < 200; ++trial) {
        const Shape blank = box(Frame{}, {0, 0, 0}, {100, 60, 40});
        std::vector<Shape> tools;
        for (int t = dice.below(3); t > 0; --t)
            tools.push_back(any_shape(
                dice, any_frame(dice, {dice.between(0, 100), dice.between(0, 60), dice.between(0, 40)}), 15));
        const Solid a = carve(blank, tools);
        const Shape b = any_shape(
            dice, any_frame(dice, {dice.between(0, 100), dice.between(0, 60), dice.between(0, 40)}), 25);
        const Solid solid_b = carve(b, {});
        std::vector<Shape> all = tools;
        all.push_back(b);
        const Solid rest = carve(blank, all);
        const std::vector<Shape> no_tools;
        const std::vector<Placed> parts{{&a, &blank, &tools, {}}, {&solid_b, &b, &no_tools, {}}};
        const auto found = clashes(parts);
        const double common = found.empty() ? 0 : found[0].volume;
        CAPTURE(trial);
        CHECK(a.open_edges == 0);
        CHECK(solid_b.open_edges == 0);
        CHECK(rest.open_edges == 0);
        CHECK(rest.volume + common == Approx(a.volume).epsilon(1e-6));
    }
}

TEST_CASE("tools a few micrometres off flush still leave closed solids") {
    Dice dice(11);
    const auto jitter = [&] { return dice.between(-0.004, 0.004); };
    for (int trial = 0; trial < 300; ++trial) {
        const Shape blank = box(Frame{}, {0, 0, 0}, {60, 40, 20});
        std::vector<Shape> tools;
        for (int t = 0; t < 5; ++t) {
            const double x = 10 * dice.below(6), y = 10 * dice.below(4), z = 10 * dice.below(2);
            tools.push_back(box(Frame{}, {x + jitter(), y + jitter(), z + jitter()},
                                {x + 10 + jitter(), y + 10 + jitter(), z + 10 + jitter()}));
        }
        const Solid solid = carve(blank, tools);
        CAPTURE(trial);
        CHECK(solid.open_edges == 0);
        // Every tool takes a cell of 10 mm: no skin is left between two of them, and no face is a sliver.
        CHECK(std::remainder(solid.volume, 1000.0) == Approx(0).margin(10));
        for (const Face& face : solid.faces) CHECK(face.area > 99);
    }
}
