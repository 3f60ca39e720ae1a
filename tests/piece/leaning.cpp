// Leaning parts against closed formulas of geometry: splayed legs, canted boxes, stretchers between splayed
// legs. Source: plane and solid geometry; the compound mitre of four canted sides, tan miter = sin cant and
// sin bevel = cos cant sin 45 degrees, derived from the normals of the meeting faces.

#include <cmath>

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;
using rayfleck::measure::Point;
using rayfleck::measure::Vector;

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

const std::string rods =
    "piece \"t\"\nunits mm\n"
    "rod across  left 0, right 480\nrod deep  front 0, back 360\nrod up  floor 0, low 200, high 600\n";

Piece piece_of(const std::string& text) {
    Result result = elaborate_text(rods + text);
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    return result.piece;
}

const PlaneCut& plane_of(const Part& part, std::size_t number) {
    return std::get<PlaneCut>(part.shaping.at(number).shape);
}

/// The cut's plane in the piece's frame.
rayfleck::measure::Plane placed(const Part& part, const PlaneCut& cut) {
    const Vector n = part.frame.turn_out(cut.plane.normal);
    return {n, cut.plane.offset + dot(n, part.frame.origin)};
}

const std::string leg =
    "part leg, at each corner\n  wood cherry\n  size 30 x 40, stands, from floor to high, face side front\n"
    "  left at left, front at front\n";

} // namespace

TEST_CASE("a splayed leg keeps its top, and its foot goes out by both tangents") {
    const Piece piece = piece_of(leg + "  splayed 8 degrees left and 6 degrees front\n");
    const Part& part = piece.parts.at(0);
    CHECK_FALSE(part.upright);
    CHECK(norm(cross(part.frame.x, part.frame.y) - part.frame.z) < 1e-12);
    // The axis in front and side view.
    CHECK(part.frame.x.x / part.frame.x.z == Approx(std::tan(8 * degree)));
    CHECK(part.frame.x.y / part.frame.x.z == Approx(std::tan(6 * degree)));
    // The middle of the top stays where the upright leg had it: (20, 15, 600).
    const Point foot_to_top = part.frame.x * (1 / part.frame.x.z);
    const Point middle = part.frame.out({0, 20, 15});
    const Point top = middle + foot_to_top * (600 - middle.z);
    CHECK(top.x == Approx(20));
    CHECK(top.y == Approx(15));
    const Point foot = middle + foot_to_top * (0 - middle.z);
    CHECK(foot.x == Approx(20 - 600 * std::tan(8 * degree)));
    CHECK(foot.y == Approx(15 - 600 * std::tan(6 * degree)));
}

TEST_CASE("a splayed leg is cut level top and bottom, and its body covers the cuts") {
    const Piece piece = piece_of(leg + "  splayed 8 degrees left and 6 degrees front\n");
    for (const Part& part : piece.parts) {
        INFO(part.name);
        REQUIRE(part.shaping.size() == 2);
        const auto low = placed(part, plane_of(part, 0)), high = placed(part, plane_of(part, 1));
        CHECK(norm(low.normal - Vector{0, 0, -1}) < 1e-9);
        CHECK(low.offset == Approx(0).margin(1e-4));
        CHECK(norm(high.normal - Vector{0, 0, 1}) < 1e-9);
        CHECK(high.offset == Approx(600));
        // All four corners of each end lie at or beyond the level, and one of them on it.
        double nearest_low = -1e9, nearest_high = 1e9;
        for (const double y : {0.0, 40.0})
            for (const double z : {0.0, 30.0}) {
                nearest_low = std::max(nearest_low, part.frame.out({0, y, z}).z);
                nearest_high = std::min(nearest_high, part.frame.out({part.length.value(), y, z}).z);
            }
        CHECK(nearest_low == Approx(0).margin(1e-4));
        CHECK(nearest_high == Approx(600));
        // Saw settings: the leg lies on its face; turned across it by the lean in that face's own view.
        const Vector n = plane_of(part, 1).plane.normal;
        CHECK(plane_of(part, 1).miter->in_degrees() == Approx(std::atan(std::abs(n.y / n.x)) / degree));
        CHECK(plane_of(part, 1).bevel->in_degrees() == Approx(std::asin(std::abs(n.z)) / degree));
        CHECK(std::pow(std::cos(plane_of(part, 1).miter->in_radians()) *
                           std::cos(plane_of(part, 1).bevel->in_radians()),
                       2) ==
              Approx(1 / (1 + std::pow(std::tan(8 * degree), 2) + std::pow(std::tan(6 * degree), 2))));
    }
}

TEST_CASE("a single splay needs a plain angled crosscut of that angle") {
    const Piece piece = piece_of(leg + "  splayed 10 degrees left\n");
    const PlaneCut& cut = plane_of(piece.parts.at(0), 0);
    REQUIRE(cut.miter);
    CHECK(cut.miter->in_degrees() == Approx(10));
    CHECK_FALSE(cut.bevel);
    // 600 / cos 10 along the axis, and the width's share of the slope at both ends.
    CHECK(piece.parts[0].length.value() == Approx(600 / std::cos(10 * degree) + 40 * std::tan(10 * degree)));
}

TEST_CASE("raked: the foot stays and the top goes") {
    const Piece piece = piece_of("part post\n  wood cherry\n  size 30 x 40, stands, from floor to high, left "
                                 "at left, front at front, face side front\n"
                                 "  raked 12 degrees back\n");
    const Part& part = piece.parts.at(0);
    const Point middle = part.frame.out({0, 20, 15});
    const Point foot = middle + part.frame.x * (-middle.z / part.frame.x.z);
    CHECK(foot.x == Approx(20));
    CHECK(foot.y == Approx(15));
    CHECK(part.frame.x.y / part.frame.x.z == Approx(std::tan(12 * degree)));
}

TEST_CASE("a part of told length leans with square ends") {
    const Piece piece = piece_of("part post\n  wood cherry\n  size 30 x 40 x 500, stands, bottom at floor, "
                                 "left at left, front at front\n"
                                 "  raked 12 degrees back\n");
    CHECK(piece.parts.at(0).length == rayfleck::measure::Length::mm(500));
    CHECK(piece.parts.at(0).shaping.empty());
}

TEST_CASE("mitred corners of a canted box have the known compound angles") {
    for (const double cant : {5.0, 15.0, 30.0}) {
        const Piece piece = piece_of("part side\n  wood cherry\n  12 thick, runs across, from left to right, "
                                     "from floor to low, front at front, face side outside\n"
                                     "  canted " +
                                     std::to_string(cant) + " degrees front\n");
        const Part& part = piece.parts.at(0);
        // The mitre plane stands upright at 45 degrees to both sides.
        PlaneCut corner;
        const Vector n = Vector{1, 1, 0} * std::sqrt(0.5);
        corner.plane.normal = part.frame.turn_in(n);
        const Vector own = corner.plane.normal;
        CHECK(std::abs(own.y / own.x) == Approx(std::sin(cant * degree)));
        CHECK(std::abs(own.z) == Approx(std::cos(cant * degree) * std::sqrt(0.5)));
        // Both long edges are ripped level, the blade tilted by the cant.
        REQUIRE(part.shaping.size() == 2);
        CHECK(plane_of(part, 0).bevel->in_degrees() == Approx(cant));
        CHECK_FALSE(plane_of(part, 0).miter);
        CHECK(part.width.value() == Approx(200 / std::cos(cant * degree) + 12 * std::tan(cant * degree)));
    }
}

TEST_CASE("boards between leaning ends are cut to them at compound angles") {
    // Butted, not mitred: the end's inside face leans by b, the side by a. In the side's own frame the face
    // has tan miter = tan b sin a ... over the slope of the side, from n = (cos b, 0, -sin b) turned by a.
    const double a = 15, b = 10;
    const Piece piece = piece_of("part end, left and right\n  wood cherry\n  12 thick, runs deep, from front "
                                 "- 60 to back + 60, from floor to low, left at left, face side outside\n"
                                 "  canted 10 degrees outside\n"
                                 "part side, front and back\n  wood cherry\n  12 thick, runs across, between "
                                 "end, from floor to low, front at front, face side outside\n"
                                 "  canted 15 degrees outside\n");
    const Part* side = nullptr;
    for (const Part& part : piece.parts)
        if (part.name == "side at front") side = &part;
    REQUIRE(side);
    REQUIRE(side->shaping.size() == 4);
    const PlaneCut& cut = plane_of(*side, 2);
    CHECK(side->shaping[2].remark == "to end at left");
    // Normal of the left end's inside face: (cos b, 0, sin b); width axis of the side: (0, -sin a, cos a).
    CHECK(std::tan(cut.miter->in_radians()) == Approx(std::tan(b * degree) * std::cos(a * degree)));
    CHECK(std::sin(cut.bevel->in_radians()) == Approx(std::sin(b * degree) * std::sin(a * degree)));
    // Its centre line, half way up, meets the inside face of the end there: 12 thick square to a leaning
    // face.
    const double inside = 6 + 6 / std::cos(b * degree) - 100 * std::tan(b * degree);
    const auto plane = placed(*side, cut);
    const Point centre = side->frame.out({0, side->width.value() / 2, 6});
    const double t = (plane.offset - dot(plane.normal, centre)) / dot(plane.normal, side->frame.x);
    CHECK((centre + side->frame.x * t).x == Approx(inside).margin(0.001));
    CHECK((centre + side->frame.x * t).z == Approx(100));
}

TEST_CASE("a stretcher finds splayed legs at its own height") {
    const Piece piece = piece_of(leg + "  splayed 8 degrees left\n"
                                       "part stretcher\n  wood cherry\n  size 20 x 30, runs across, between "
                                       "leg, bottom at low, centred on leg deep, face side front\n");
    const Part& part = piece.parts.at(4);
    CHECK(part.upright);
    // At height 215 the leg's axis stands (600 - 215) tan 8 further out than its top; its face half a width
    // over cos 8.
    const double left = 20 - 385 * std::tan(8 * degree) + 20 / std::cos(8 * degree);
    const double right = 480 - left;
    // 30 high: each end is drawn out by 15 tan 8.
    CHECK(part.length.value() == Approx(right - left + 2 * 15 * std::tan(8 * degree)).margin(1e-4));
    REQUIRE(part.shaping.size() == 2);
    CHECK(plane_of(part, 0).miter->in_degrees() == Approx(8));
    CHECK(box_of(part).low.x == Approx(left - 15 * std::tan(8 * degree)).margin(1e-4));
}

TEST_CASE("centred on a leaning leg means its axis at the part's own height") {
    const Piece piece = piece_of(leg + "  splayed 6 degrees front\n"
                                       "part rail\n  wood cherry\n  size 20 x 30, runs across, from left to "
                                       "right, bottom at low, centred on leg deep, face side front\n");
    const auto box = box_of(piece.parts.at(4));
    CHECK((box.low.y + box.high.y) / 2 == Approx(15 - 385 * std::tan(6 * degree)).margin(1e-4));
}

TEST_CASE("a taper on a splayed leg begins where its axis passes the level") {
    const Piece piece =
        piece_of(leg + "  splayed 8 degrees left\n  taper right face to 20 from low to floor\n");
    const Part& part = piece.parts.at(0);
    REQUIRE(part.shaping.size() == 3);
    const PlaneCut& taper = plane_of(part, 2);
    // The plane meets the right face where the axis is 200 up: 400 / cos 8 below the top's middle.
    const double x = (20 * std::tan(8 * degree)) + 200 / std::cos(8 * degree);
    const double y = part.frame.y.x > 0 ? 40 : 0;
    CHECK(dot(taper.plane.normal, Point{x, y, 15}) == Approx(taper.plane.offset));
    CHECK(part.shaping[2].word == "taper");
}

TEST_CASE("a part from point to point lies along its line") {
    const Piece piece = piece_of("part brace\n  wood cherry\n  size 20 x 40, from point (0, 100, 0) to point "
                                 "(300, 100, 400), face side front\n");
    const Part& part = piece.parts.at(0);
    CHECK(part.length == rayfleck::measure::Length::mm(500));
    CHECK(part.frame.x.x == Approx(0.6));
    CHECK(part.frame.x.z == Approx(0.8));
    CHECK(part.frame.z.y == Approx(-1));
    const Point start = part.frame.out({0, 20, 10});
    CHECK(start.x == Approx(0).margin(1e-9));
    CHECK(start.y == Approx(100));
}

TEST_CASE("turned on plan") {
    const Piece piece = piece_of("part post\n  wood cherry\n  size 40 x 40, stands, from floor to high, "
                                 "centred across, centred deep, turned 45 degrees\n");
    const auto box = box_of(piece.parts.at(0));
    CHECK(box.high.x - box.low.x == Approx(40 * std::sqrt(2)));
    CHECK(piece.parts[0].length == rayfleck::measure::Length::mm(600));
}

TEST_CASE("a lean beyond reason is refused") {
    CHECK(outcome(rods + leg + "  splayed 85 degrees left\n")
              .find("cannot lean by more than 80 degrees [too-steep]") == std::string::npos);
    CHECK(outcome(rods + leg + "  splayed 85 degrees left\n").find("[too-steep]") != std::string::npos);
}
