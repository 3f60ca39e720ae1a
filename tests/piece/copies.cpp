// Copies: names, mirror images with right-handed frames, rows, parts like others.
// Truth: a reflection across the middle of a rod, by hand.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;
using rayfleck::measure::Point;
using rayfleck::measure::Vector;

namespace {

const std::string rods =
    "piece \"t\"\nunits mm\n"
    "rod across  left 0, right 480\nrod deep  front 0, back 360\nrod up  floor 0, low 500, high 600\n";

const std::string legs =
    "part leg, at each corner\n  wood cherry, rift sawn, bark edge left\n  size 30 x 40, stands, from floor "
    "to high\n"
    "  left at left + 3, front at front + 5, face side front\n  taper inside faces to 22 from low to floor\n"
    "  bore 8 20 deep in front face at 100 and 20\n  groove 6 wide 8 deep in right face 10 from front "
    "stopped 30\n"
    "  chamfer 3 on front left edge\n";

std::vector<std::string> names(const Piece& piece) {
    std::vector<std::string> out;
    for (const Part& part : piece.parts) out.push_back(part.name);
    return out;
}

bool is_right_handed(const Part& part) {
    return norm(cross(part.frame.x, part.frame.y) - part.frame.z) < 1e-12;
}

/// Is the point of a part's own frame cut away by one of its cuts?
bool is_cut(const Part& part, Point p) {
    for (const Cut& cut : part.shaping) {
        if (const auto* plane = std::get_if<PlaneCut>(&cut.shape))
            if (dot(plane->plane.normal, p) > plane->plane.offset + 1e-9) return true;
        if (const auto* box = std::get_if<BoxCut>(&cut.shape)) {
            bool inside = true;
            for (int k = 0; k < 3; ++k) inside = inside && p[k] > box->box.low[k] && p[k] < box->box.high[k];
            if (inside) return true;
        }
        if (const auto* bore = std::get_if<BoreCut>(&cut.shape)) {
            Point off = p - bore->centre;
            off[bore->face.axis] = 0;
            if (norm(off) < bore->diameter / 2) return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("copies are named for where they stand, in a fixed order") {
    const Result legs_only = elaborate_text(rods + legs);
    INFO(errors_in(legs_only));
    CHECK(names(legs_only.piece) == std::vector<std::string>{"leg at front-left", "leg at front-right",
                                                             "leg at back-left", "leg at back-right"});
    const Result slats = elaborate_text(
        rods +
        "part slat, left and right, row of 2 up spaced 50\n  wood cherry\n"
        "  size 10 x 20, runs deep, from front to back, left at left, bottom at floor, face side left\n");
    INFO(errors_in(slats));
    CHECK(names(slats.piece) ==
          std::vector<std::string>{"slat at left 1", "slat at left 2", "slat at right 1", "slat at right 2"});
}

TEST_CASE("mirror images keep right-handed frames and mirror every cut") {
    const Result result = elaborate_text(rods + legs);
    INFO(errors_in(result));
    REQUIRE(result.piece.parts.size() == 4);
    const Part& first = result.piece.parts[0];
    for (const Part& part : result.piece.parts) {
        INFO(part.name);
        CHECK(is_right_handed(part));
        const bool across = part.name.find("right") != std::string::npos,
                   deep = part.name.find("back") != std::string::npos;
        CHECK(part.mirrored == (across != deep));
        // Any place of the first leg and its image lie the same way in wood or in waste.
        for (double x = 5; x < 600; x += 59)
            for (double y = 1; y < 40; y += 3.7)
                for (double z = 1; z < 30; z += 2.9) {
                    Point p = first.frame.out({x, y, z});
                    if (across) p.x = 480 - p.x;
                    if (deep) p.y = 360 - p.y;
                    const Point own = part.frame.in(p);
                    CHECK(own.x == Approx(x));
                    CHECK(is_cut(part, own) == is_cut(first, {x, y, z}));
                }
        // Bark looks to the left on left legs and to the right on right ones.
        REQUIRE(part.bark);
        const Vector bark = part.frame.turn_out({0, part.bark->high ? 1.0 : -1.0, 0});
        CHECK(bark.x == Approx(across ? 1 : -1));
    }
}

TEST_CASE("a cut mirrored twice is the cut again") {
    const Result result = elaborate_text(rods + legs);
    REQUIRE(result.piece.parts.size() == 4);
    for (const Cut& cut : result.piece.parts[0].shaping) {
        const Cut again = mirrored(mirrored(cut, 40), 40);
        if (const auto* plane = std::get_if<PlaneCut>(&cut.shape)) {
            CHECK(norm(std::get<PlaneCut>(again.shape).plane.normal - plane->plane.normal) < 1e-12);
            CHECK(std::get<PlaneCut>(again.shape).plane.offset == Approx(plane->plane.offset));
        }
    }
}

TEST_CASE("rows stand at a step, or with even gaps") {
    const std::string slat = "\n  wood cherry\n  size 10 x 20, stands, from floor to high, front at front";
    CHECK(names(elaborate_text(rods + "part slat, row of 3 across spaced 60" + slat + ", left at 30\n").piece)
              .size() == 3);
    const Result even = elaborate_text(rods + "part slat, row of 3 across from left to right" + slat + "\n");
    INFO(errors_in(even));
    REQUIRE(even.piece.parts.size() == 3);
    // (480 - 3 * 20) / 4 = 105
    CHECK(box_of(even.piece.parts[0]).low.x == Approx(105));
    CHECK(box_of(even.piece.parts[1]).low.x == Approx(230));
    CHECK(box_of(even.piece.parts[2]).high.x == Approx(375));
    CHECK(outcome(rods + "part slat, row of 30 across from left to right" + slat + "\n") ==
          "6: 30 of `slat`, each 20 mm, do not fit into 480 mm [row-too-long]\n");
    CHECK(outcome(rods + "part slat, row of 3 across" + slat + ", left at 30\n").find("[open-row]") !=
          std::string::npos);
}

TEST_CASE("each stands for the line of the copy") {
    const std::string shelf = "part shelf, at each of low and high\n  wood cherry\n  20 thick, runs across, "
                              "from left to right, from front to back\n";
    const Result result =
        elaborate_text(rods + shelf + "  bottom at each\n" +
                       "part cleat, at each of low and high\n  wood cherry\n  size 20 x 20, runs across\n"
                       "  from left to right, front at front, top at bottom of shelf\n");
    INFO(errors_in(result));
    REQUIRE(result.piece.parts.size() == 4);
    CHECK(box_of(result.piece.parts[0]).low.z == Approx(500));
    CHECK(box_of(result.piece.parts[1]).low.z == Approx(600));
    // A cleat hangs under the shelf of its own line.
    CHECK(box_of(result.piece.parts[3]).high.z == Approx(600));
    CHECK(outcome(rods + "part shelf, at each of low and hihg\n  wood cherry\n  20 thick, runs across, from "
                         "left to right, from front to back, bottom at each\n")
              .find("did you mean `high`?") != std::string::npos);
}

TEST_CASE("a part like another takes its phrases and says its own") {
    const Result result =
        elaborate_text(rods + "part long rail\n  wood cherry, quarter sawn\n  20 thick, runs across, face "
                              "side front, from left to right, top at high, 50 wide, front at front\n"
                              "part low rail like long rail\n  bottom at low, 60 wide, wood white ash\n");
    INFO(errors_in(result));
    REQUIRE(result.piece.parts.size() == 2);
    CHECK(result.piece.parts[1].species->trade_name == "white ash");
    CHECK(result.piece.parts[1].sawn == rayfleck::wood::Sawn::quarter);
    CHECK(box_of(result.piece.parts[1]).low.z == Approx(500));
    CHECK(box_of(result.piece.parts[1]).high.z == Approx(560));
    CHECK(outcome(rods + "part a like b\npart b like a\n").find("[circle]") != std::string::npos);
}

TEST_CASE("an unknown copy is told from those there are") {
    CHECK(outcome(rods + legs +
                  "part rail\n  wood cherry\n  20 thick, runs across, between leg at front-lft and leg at "
                  "front-right, from low to high, front at front\n") ==
          "16: there is no `leg at front-lft` [unknown-copy]\n"
          "  mend: did you mean `leg at front-left`?\n");
}

TEST_CASE("nothing can be mirrored without a rod") {
    CHECK(outcome("piece \"t\"\nrod up  floor 0, high 100\npart leg, left and right\n  wood cherry\n"
                  "  size 20 x 20, stands, from floor to high, left at 0mm, front at 0mm\n")
              .find("without a rod across there is nothing to mirror `leg` about [no-rod]") !=
          std::string::npos);
}
