// Shaping phrases as cuts in the part's own frame. Truth: hand calculation.

#include <cmath>

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;

namespace {

const std::string rods =
    "piece \"t\"\nunits mm\n"
    "rod across  left 0, right 400\nrod deep  front 0, back 20\nrod up  floor 0, high 100\n";

/// A board 20 x 100 x 400 that runs across and looks to the front: x to the right, y up, z to the front.
std::string board(const std::string& shaping) {
    return rods +
           "part board\n  wood cherry, flat sawn\n  20 thick, runs across, from left to right, from floor to "
           "high, front at front\n  " +
           shaping + "\n";
}

/// The printed cuts of the board, or the errors.
std::string cuts(const std::string& shaping) {
    const std::string out = outcome(board(shaping));
    const std::size_t at = out.find("face edge +y\n");
    return at == std::string::npos ? out : out.substr(at + 13);
}

Part part_of(const std::string& shaping) {
    const Result result = elaborate_text(board(shaping));
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    return result.piece.parts.at(0);
}

} // namespace

TEST_CASE("a taper goes from its face to what is left") {
    const Part part = part_of("taper top face to 60 from left to right");
    const auto& plane = std::get<PlaneCut>(part.shaping.at(0).shape).plane;
    CHECK(dot(plane.normal, {0, 100, 0}) == Approx(plane.offset));
    CHECK(dot(plane.normal, {400, 60, 0}) == Approx(plane.offset));
    CHECK(plane.normal.y > 0);
    CHECK(std::get<PlaneCut>(part.shaping[0].shape).miter->in_degrees() ==
          Approx(std::atan(40.0 / 400) * 180 / 3.14159265358979));
    CHECK(cuts("taper top face to 160 from left to right").find("[no-taper]") != std::string::npos);
    CHECK(cuts("taper left face to 60 from left to right").find("[taper-on-end]") != std::string::npos);
    CHECK(cuts("taper top face to 60 from floor to right").find("[two-rods]") != std::string::npos);
}

TEST_CASE("edges by their names") {
    CHECK(cuts("chamfer 3 on front top edge") == "  chamfer chamfer at +z +y, 3 x 3\n");
    CHECK(cuts("round over 5 on back left edge") == "  round-over round-over at -z -x, 5 x 5\n");
    CHECK(cuts("mould ogee 12 x 8 on top front edge") == "  ogee ogee at +y +z, 12 x 8\n");
    CHECK(part_of("chamfer 2 on long edges").shaping.size() == 4);
    CHECK(part_of("chamfer 2 on end edges").shaping.size() == 8);
    CHECK(part_of("chamfer 2 on all edges").shaping.size() == 12);
    CHECK(part_of("chamfer 2 on front edges and top edges").shaping.size() == 7);
    CHECK(cuts("chamfer 25 on front top edge").find("[no-room]") != std::string::npos);
    CHECK(cuts("mould ogge 12 x 8 on front top edge").find("did you mean `ogee`?") != std::string::npos);
    CHECK(cuts("chamfer 3 on front back edge").find("[no-edge]") != std::string::npos);
}

TEST_CASE("a bevel planes the edge from the far arris") {
    const Part part = part_of("bevel 30 degrees on front top edge");
    const PlaneCut& cut = std::get<PlaneCut>(part.shaping.at(0).shape);
    CHECK(cut.bevel->in_degrees() == Approx(30));
    // Through the back top arris, and tan 30 x 20 down on the front.
    CHECK(dot(cut.plane.normal, {0, 100, 0}) == Approx(cut.plane.offset));
    CHECK(dot(cut.plane.normal, {0, 100 - 20 * std::tan(3.14159265358979 / 6), 20}) ==
          Approx(cut.plane.offset));
}

TEST_CASE("a rabbet is as wide on the first face as told") {
    CHECK(cuts("rabbet 10 wide 6 deep on front top edge") == "  rabbet (0 90 14) to (400 100 20)\n");
    CHECK(cuts("rabbet 10 wide 6 deep on top front edge") == "  rabbet (0 94 10) to (400 100 20)\n");
    CHECK(cuts("rabbet 10 wide 6 deep on front top edge stopped 30 from left and 20 from right") ==
          "  rabbet (30 90 14) to (380 100 20)\n");
}

TEST_CASE("grooves lie so far from a side") {
    CHECK(cuts("groove 6 wide 8 deep in front face 10 from bottom") == "  groove (0 10 12) to (400 16 20)\n");
    CHECK(cuts("groove 6 wide 8 deep in back face 10 from top stopped 30") ==
          "  groove (30 84 0) to (370 90 8)\n");
    CHECK(cuts("groove 6 wide 8 deep in front face 10 from left") == "  groove (10 0 12) to (16 100 20)\n");
    CHECK(cuts("groove 6 wide 30 deep in front face 10 from bottom").find("[no-room]") != std::string::npos);
    CHECK(cuts("groove 6 wide 8 deep in front face 10 from front").find("[which-side]") != std::string::npos);
    CHECK(cuts("groove 6 wide 8 deep in front face 10 from bottom stopped 300").find("[no-size]") !=
          std::string::npos);
}

TEST_CASE("bores by places on the rods or from the part's own sides") {
    CHECK(cuts("bore 8 in front face at 50 from left and 30 from top") ==
          "  bore 8 in +z at (50 70 20), through\n");
    CHECK(cuts("bore 8 12 deep in back face at right - 40 and floor + 30") ==
          "  bore 8 in -z at (360 30 0), 12 deep\n");
    // On no rod: the length first. Back stands at 20, and z runs to the front.
    CHECK(cuts("bore 5 10 deep in top face at 50 and 5") == "  bore 5 in +y at (50 100 15), 10 deep\n");
    CHECK(cuts("bore 5 10 deep in front face at 50 from left and 20 from bottom row of 3 every 32 across") ==
          "  bore 5 in +z at (50 20 20), 10 deep\n  bore 5 in +z at (82 20 20), 10 deep\n  bore 5 in +z at "
          "(114 20 20), 10 deep\n");
    CHECK(cuts("bore 8 in front face at 500 and 30 from top")
              .find("the hole lies outside `board` [outside-part]") != std::string::npos);
    CHECK(cuts("bore 5 in front face at 50 from left and 20 from bottom row of 30 every 32 across")
              .find("hole 12 of the row") != std::string::npos);
    CHECK(cuts("bore 8 in front face at 50 from left and 30 from right")
              .find("both places are on the same rod") != std::string::npos);
    CHECK(cuts("bore 8 in front face at 50 from left and 5 from front").find("[two-rods]") !=
          std::string::npos);
}

TEST_CASE("notches run through where nothing is told") {
    CHECK(cuts("notch from left to 30 from left and from 20 from top to high") ==
          "  notch (0 80 0) to (30 100 20)\n");
    CHECK(cuts("notch from right to right + 5").find("[outside-part]") != std::string::npos);
    CHECK(cuts("notch from left to right").find("[nothing-left]") != std::string::npos);
}

TEST_CASE("miters and compound miters") {
    const Part plain = part_of("miter 45 degrees at left end long to top");
    const PlaneCut& miter = std::get<PlaneCut>(plain.shaping.at(0).shape);
    CHECK(miter.miter->in_degrees() == Approx(45));
    CHECK_FALSE(miter.bevel);
    CHECK(dot(miter.plane.normal, {0, 100, 10}) == Approx(miter.plane.offset).margin(1e-9));
    CHECK(dot(miter.plane.normal, {100, 0, 10}) == Approx(miter.plane.offset).margin(1e-9));
    const PlaneCut compound = std::get<PlaneCut>(
        part_of("compound miter 31.6 and 26.1 degrees at right end long to top").shaping.at(0).shape);
    CHECK(compound.miter->in_degrees() == Approx(31.6));
    CHECK(compound.bevel->in_degrees() == Approx(26.1));
    CHECK(dot(compound.plane.normal, {400, 100, 20}) == Approx(compound.plane.offset));
    CHECK(cuts("miter 45 degrees at top end long to front").find("[not-an-end]") != std::string::npos);
    CHECK(cuts("miter 95 degrees at left end long to top").find("[out-of-range]") != std::string::npos);
}

TEST_CASE("crosscut, rip and resaw reach the told place") {
    CHECK(cuts("crosscut right end to 30 from right") == "  crosscut beyond (1 0 0) . p = 370\n");
    CHECK(cuts("rip top edge to 80") == "  rip beyond (0 1 0) . p = 80\n");
    CHECK(cuts("resaw back face to 12 from front") == "  resaw beyond (0 0 -1) . p = -8\n");
    CHECK(cuts("crosscut top end to 30").find("write `rip`") != std::string::npos);
    CHECK(cuts("crosscut right end to 600").find("[outside-part]") != std::string::npos);
    const PlaneCut lean = std::get<PlaneCut>(
        part_of("crosscut right end at 10 degrees towards top to 30 from right").shaping.at(0).shape);
    CHECK(lean.miter->in_degrees() == Approx(10));
    CHECK(dot(lean.plane.normal, {370, 100, 0}) == Approx(lean.plane.offset));
    CHECK(dot(lean.plane.normal, {370 - 100 * std::tan(10 * 3.14159265358979 / 180), 0, 0}) ==
          Approx(lean.plane.offset));
}

TEST_CASE("an edge curved by a rise is an arc") {
    const Part part = part_of("curve bottom edge by 30");
    const PrismCut& cut = std::get<PrismCut>(part.shaping.at(0).shape);
    CHECK_FALSE(rayfleck::solid::fault_of(cut.outline));
    // (400² / 4 + 30²) / 60 = 681.667; segment of that circle.
    const double r = (400.0 * 400 / 4 + 900) / 60, half = std::asin(200 / r);
    CHECK(rayfleck::solid::area(cut.outline) == Approx(r * r / 2 * (2 * half - std::sin(2 * half))));
    CHECK(norm(cut.frame.out({200, 30, 0}) - rayfleck::measure::Point{200, 30, 0}) < 1e-9);
    CHECK(cuts("curve bottom edge by 250").find("[too-steep]") != std::string::npos);
    CHECK(cuts("curve bottom edge by 120").find("[nothing-left]") != std::string::npos);
    CHECK_FALSE(rayfleck::solid::fault_of(
        std::get<PrismCut>(part_of("curve top edge by 30 from left + 50 to right - 50").shaping.at(0).shape)
            .outline));
}

TEST_CASE("an edge curved through points passes through each within the chord error") {
    const Part part = part_of("curve top edge through (0, 0) (120, 30) (240, 10) (400, 25)");
    const PrismCut& cut = std::get<PrismCut>(part.shaping.at(0).shape);
    CHECK_FALSE(rayfleck::solid::fault_of(cut.outline));
    bool passes = false;
    for (const auto& edge : cut.outline.edges)
        passes = passes || (std::abs(edge.to.x - 120) < 1e-9 && std::abs(edge.to.y - 30) < 1e-9);
    CHECK(passes);
    // v runs inwards from the top edge.
    CHECK(cut.frame.out({120, 30, 0}).y == Approx(70));
    CHECK(cuts("curve top edge through (0, 0) (120, 130) (240, 0)").find("[outside-part]") !=
          std::string::npos);
    CHECK(cuts("curve top edge through (0, 0) (120, 30) (100, 0)").find("[out-of-order]") !=
          std::string::npos);
}

TEST_CASE("a curve that comes back to its edge leaves waste on either side") {
    // The crown of an arch.
    const Part part = part_of("curve top edge through (0, 44) (200, 0) (400, 44)");
    REQUIRE(part.shaping.size() == 2);
    double low = 400, high = 0;
    for (const auto& cut : part.shaping) {
        const auto& outline = std::get<PrismCut>(cut.shape).outline;
        CHECK_FALSE(rayfleck::solid::fault_of(outline));
        CHECK(rayfleck::solid::area(outline) ==
              Approx(rayfleck::solid::area(std::get<PrismCut>(part.shaping.front().shape).outline)));
        for (const auto& edge : outline.edges) {
            CHECK(edge.to.y >= 0);
            low = std::min(low, std::abs(edge.to.x - 200));
            high = std::max(high, edge.to.y);
        }
    }
    CHECK(low == Approx(0));
    CHECK(high == Approx(44));
    // A smooth line that swings out over the edge between its points is cut off at the edge.
    const Part flat = part_of("curve top edge through (0, 44) (120, 0) (280, 0) (400, 44)");
    CHECK(flat.shaping.size() == 2);
    CHECK(cuts("curve top edge through (0, 0) (400, 0)").find("takes nothing away [bad-outline]") !=
          std::string::npos);
}

TEST_CASE("outlines of lines, arcs and curves") {
    const auto outline_of = [](const std::string& steps) { return part_of("outline\n" + steps); };
    const Part plain =
        outline_of("    start 0, 0\n    line to 400, 0\n    line to 400, 60\n    line to 0, 100\n    close");
    REQUIRE(plain.outline);
    CHECK(rayfleck::solid::area(*plain.outline) == Approx(400 * 80));
    // A half circle over a diameter of 100, bulging right on the way up the right end.
    const Part round = outline_of("    start 0, 0\n    line to 350, 0\n    arc to 350, 100 radius 50 bulging "
                                  "right\n    line to 0, 100\n    close");
    CHECK(rayfleck::solid::area(*round.outline) == Approx(35000 + 3.14159265358979 * 50 * 50 / 2));
    const Part through = outline_of("    start 0, 0\n    line to 350, 0\n    arc to 350, 100 through 400, "
                                    "50\n    line to 0, 100\n    close");
    CHECK(rayfleck::solid::area(*through.outline) == Approx(rayfleck::solid::area(*round.outline)));
    const Part curved = outline_of(
        "    start 0, 0\n    line to 400, 0\n    curve to 0, 50 through 300, 60; 150, 40\n    close");
    CHECK(curved.outline->edges.size() > 20);
    // Clockwise texts come out anticlockwise.
    const Part clockwise =
        outline_of("    start 0, 0\n    line to 0, 100\n    line to 400, 100\n    line to 400, 0\n    close");
    CHECK(rayfleck::solid::area(*clockwise.outline) == Approx(40000));
}

TEST_CASE("faulty outlines are told in words") {
    const auto fault = [](const std::string& steps) { return cuts("outline\n" + steps); };
    CHECK(fault("    start 0, 0\n    line to 400, 100\n    line to 400, 0\n    line to 0, 100\n    close")
              .find("[bad-outline]") != std::string::npos);
    CHECK(
        fault("    start 0, 0\n    line to 400, 0\n    line to 400, 60").find("the outline is not closed") !=
        std::string::npos);
    CHECK(fault("    start 0, 0\n    line to 450, 0\n    line to 400, 60\n    close")
              .find("reaches 50 mm beyond the body") != std::string::npos);
    CHECK(fault("    start 0, 0\n    line to 350, 0\n    arc to 350, 100 radius 20 bulging right\n    close")
              .find("does not reach over 100 mm") != std::string::npos);
    CHECK(fault("    start 0, 0\n    line to 350, 0\n    arc to 350, 100 through 350, 50\n    close")
              .find("lie on a line") != std::string::npos);
}

TEST_CASE("turned profiles keep squares and smooth curves") {
    const std::string post = rods + "part post\n  wood cherry\n  size 20 x 20 x 90, stands, bottom at floor, "
                                    "left at left, front at front\n  turned\n";
    CHECK(outcome(post + "    square to 20\n    diameter 18 at 20\n    diameter 10 at 40\n    square to 60\n "
                         "   diameter 12 at 60\n    diameter 12 at 90\n")
              .find("  turned 20:9 40:5\n  turned 60:6 90:6\n") != std::string::npos);
    const Result smooth = elaborate_text(post + "    diameter 20 at 0\n    diameter 10 at 30 smooth\n    "
                                                "diameter 16 at 60 smooth\n    diameter 10 at 90 smooth\n");
    INFO(errors_in(smooth));
    REQUIRE(smooth.findings.empty());
    const auto& profile = std::get<TurnedCut>(smooth.piece.parts.at(0).shaping.at(0).shape).profile;
    CHECK(profile.size() > 10);
    for (std::size_t i = 1; i < profile.size(); ++i) CHECK(profile[i].x > profile[i - 1].x);
    CHECK(outcome(post + "    diameter 24 at 0\n    diameter 10 at 90\n").find("[no-room]") !=
          std::string::npos);
    CHECK(outcome(post + "    diameter 10 at 50\n    diameter 10 at 20\n").find("[out-of-order]") !=
          std::string::npos);
    CHECK(outcome(post + "    diameter 10 at 50\n").find("[too-few-points]") != std::string::npos);
}
