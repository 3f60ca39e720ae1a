// Where dashes fall.

#include <catch2/catch.hpp>

#include "drawing/lines.hpp"

#include <numeric>

using namespace rayfleck::drawing;

namespace {
/// Is there ink at this distance along a line drawn with the pattern?
bool inked(Pen pen, double start, double at) {
    const auto dashes = dashes_of(pen);
    const double period = std::accumulate(dashes.begin(), dashes.end(), 0.0);
    double place = start + at;
    while (place >= period) place -= period;
    for (std::size_t i = 0; i < dashes.size(); ++i) {
        if (place < dashes[i]) return i % 2 == 0;
        place -= dashes[i];
    }
    return false;
}
} // namespace

TEST_CASE("line widths and dashes are those of ISO 128 group 0.5") {
    CHECK(width_of(Pen::visible) == 0.5);
    CHECK(width_of(Pen::thin) == 0.25);
    CHECK(dashes_of(Pen::thin).empty());
    CHECK(dashes_of(Pen::hidden) == std::vector<double>{3, 0.75});
    CHECK(dashes_of(Pen::centre) == std::vector<double>{6, 0.75, 0.125, 0.75});
    CHECK(dashes_of(Pen::cutting_plane) == std::vector<double>{12, 1.5, 0.25, 1.5});
    CHECK(dashes_of(Pen::phantom) == std::vector<double>{6, 0.75, 0.125, 0.75, 0.125, 0.75});
}

TEST_CASE("broken lines of any length begin and end on a dash, alike at both ends") {
    for (const Pen pen : {Pen::hidden, Pen::centre, Pen::cutting_plane, Pen::phantom}) {
        for (double length = 1; length < 60; length += 0.37) {
            const double start = dash_start(pen, length);
            INFO("length " << length << " start " << start);
            CHECK(start >= 0);
            CHECK(start < dashes_of(pen).front());
            CHECK(inked(pen, start, 0.001));
            CHECK(inked(pen, start, length - 0.001));
            for (const double in : {0.3, 0.45})
                CHECK(inked(pen, start, length * in) == inked(pen, start, length * (1 - in)));
        }
    }
}

TEST_CASE("a short hidden line still shows a gap") {
    CHECK_FALSE(inked(Pen::hidden, dash_start(Pen::hidden, 2.5), 1.25));
}

TEST_CASE("dashed lines are cut at corners but not on curves") {
    CHECK(dash_pieces({{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, Pen::hidden, Ink::black, Role::edge}).size() ==
          3);
    CHECK(dash_pieces({{{0, 0}, {10, 0}, {20, 2}, {29, 5}}, Pen::hidden, Ink::black, Role::edge}).size() ==
          1);
    CHECK(dash_pieces({{{0, 0}, {10, 0}, {10, 10}}, Pen::visible, Ink::black, Role::edge}).size() == 1);
    CHECK(length_of({{0, 0}, {3, 4}, {3, 5}}) == Approx(6));
}
