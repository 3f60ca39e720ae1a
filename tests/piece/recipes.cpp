// Recipes: parameters, private rods, names of what is made, copies, nesting; and those shipped with the
// program.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;
using rayfleck::measure::Length;

namespace {

const std::string frame = "piece \"t\"\nunits mm\nrod across  left 0, seam 200, right 400\nrod deep  front "
                          "0, back 300\nrod up  floor 0, high 700\n";

const std::string door =
    "recipe plank door\n  takes width, height = 300, timber = \"cherry\"\n"
    "  rod across  hinge 10, latch = hinge + width\n  rod deep  face 0, inner 20\n  rod up  low 0, high "
    "height\n"
    "  part plank\n    wood timber\n    20 thick, stands, face side front\n"
    "    from hinge to latch, from low to high, front at face\n"
    "  part cleat, top and bottom\n    wood timber\n    size 15 x 40, runs across, face side back\n"
    "    from hinge + 5 to latch - 20, front at inner, bottom at low + 30\n"
    "  join cleat to plank with screws\n";

std::vector<std::string> names(const Piece& piece) {
    std::vector<std::string> out;
    for (const Part& part : piece.parts) out.push_back(part.name);
    return out;
}

} // namespace

TEST_CASE("a made thing stands where its first lines are put") {
    const Result result = elaborate_text(
        frame + door +
        "make hatch from plank door\n  width 150\n  left at seam\n  front at front + 3\n  bottom at 50\n");
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    CHECK(names(result.piece) ==
          std::vector<std::string>{"hatch plank", "hatch cleat at bottom", "hatch cleat at top"});
    const auto box = box_of(result.piece.parts[0]);
    CHECK(box.low.x == Approx(200));
    CHECK(box.high.x == Approx(350));
    CHECK(box.low.y == Approx(3));
    CHECK(box.low.z == Approx(50));
    CHECK(result.piece.parts[1].base == "hatch cleat");
    REQUIRE(result.piece.joints.size() == 1);
    CHECK(result.piece.joints[0].a == std::vector<int>{1, 2});
}

TEST_CASE("its high side may be told instead") {
    const Result result = elaborate_text(
        frame + door + "make hatch from plank door\n  width 150\n  right at right\n  top at high\n");
    REQUIRE(result.findings.empty());
    CHECK(box_of(result.piece.parts[0]).high.x == Approx(400));
    CHECK(box_of(result.piece.parts[0]).high.z == Approx(700));
}

TEST_CASE("copies of a made thing are mirror images, with their own names and joints") {
    const Result result = elaborate_text(
        frame + door + "make door from plank door, left and right\n  width 190\n  left at left + 2\n");
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    CHECK(names(result.piece) == std::vector<std::string>{"door left plank", "door left cleat at bottom",
                                                          "door left cleat at top", "door right plank",
                                                          "door right cleat at bottom",
                                                          "door right cleat at top"});
    // The cleat is 5 from the hinge: 7 from the left, and 7 from the right.
    CHECK(box_of(result.piece.parts[1]).low.x == Approx(7));
    CHECK(box_of(result.piece.parts[4]).high.x == Approx(393));
    CHECK(result.piece.parts[4].mirrored);
    CHECK(result.piece.parts[3].base == "door plank");
    REQUIRE(result.piece.joints.size() == 2);
    CHECK(result.piece.joints[1].b == std::vector<int>{3});
}

TEST_CASE("parts of made things can be named from outside") {
    const Result result =
        elaborate_text(frame + door +
                       "make door from plank door, left and right\n  width 190\n"
                       "part strip\n  wood cherry\n  size 5 x 20, stands, from bottom of door left plank to "
                       "top of door left plank\n"
                       "  left at right of door left plank, back at front, face side front\n"
                       "hardware \"Knob 22\", 1 off, on door right plank\nhardware \"Hinge\", on door\n");
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    CHECK(box_of(result.piece.parts.back()).low.x == Approx(190));
    CHECK(result.piece.hardware[0].on == std::vector<int>{3});
    CHECK(result.piece.hardware[1].on.size() == 6);
}

TEST_CASE("parameters are held against what the recipe takes") {
    CHECK(outcome(frame + door + "make hatch from plank door\n  height 200\n")
              .find("`hatch` is made without `width` [not-given]") != std::string::npos);
    CHECK(outcome(frame + door + "make hatch from plank door\n  widht 200\n").find("did you mean `width`?") !=
          std::string::npos);
    CHECK(outcome(frame + door + "make hatch from plank dor\n  width 200\n")
              .find("did you mean `plank door`?") != std::string::npos);
}

TEST_CASE("a recipe sees the file's values but not its lines and parts") {
    CHECK(outcome(frame + "value stuff = 12\nrecipe r\n  rod across  a 0, b stuff\n  rod up  c 0, d 10\n  "
                          "rod deep  g 0, h 10\n"
                          "  part p\n    wood cherry\n    runs across, from a to b, from c to d, from g to "
                          "h, face side front\nmake m from r\n")
              .find("part m p: 10 x 10 x 12") != std::string::npos);
    CHECK(outcome(frame + "recipe r\n  rod across  a 0, b seam\nmake m from r\n")
              .find("`seam` [unknown-name]") != std::string::npos);
}

TEST_CASE("a requirement of a recipe fails at the make") {
    CHECK(
        outcome(
            frame +
            "recipe r\n  takes width\n  require width > 100 \"too narrow\"\nmake m from r\n  width 50\n") ==
        "9: too narrow [requirement]\n  8: the recipe requires it here\n  limit: 50 is not more than 100\n");
}

TEST_CASE("recipes within recipes, and a recipe that makes itself") {
    const Result nested =
        elaborate_text(frame + door +
                       "recipe pair\n  takes width\n  rod across  a 0, b width\n"
                       "  make leaf from plank door, left and right\n    width width / 2 - 1\n"
                       "make doors from pair\n  width 400\n");
    INFO(errors_in(nested));
    REQUIRE(nested.findings.empty());
    CHECK(nested.piece.parts.size() == 6);
    CHECK(nested.piece.parts[3].name == "doors leaf right plank");
    CHECK(box_of(nested.piece.parts[3]).high.x == Approx(400));
    CHECK(outcome(frame + "recipe r\n  make m from r\nmake thing from r\n").find("[too-deep]") !=
          std::string::npos);
    // Ten of itself within itself must end quickly too.
    std::string many = frame + "recipe r\n";
    for (int i = 0; i < 10; ++i) many += "  make m" + std::to_string(i) + " from r\n";
    CHECK(outcome(many + "make thing from r\n").find("[too-deep]") != std::string::npos);
}

TEST_CASE("every shipped recipe can be made in millimetres and in inches") {
    const std::map<std::string, std::string> given{
        {"frame-and-panel door", "width 400\n  height 600\n"},
        {"drawer", "width 400\n  height 100\n  depth 350\n"},
        {"leg-and-apron base", "width 700\n  depth 500\n  height 700\n"},
        {"dovetailed box", "width 300\n  depth 200\n  height 120\n"},
        {"carcase", "width 700\n  height 900\n  depth 300\n"}};
    const std::map<std::string, std::string> inches{
        {"frame-and-panel door", "width 16\n  height 24\n"},
        {"drawer", "width 16\n  height 4\n  depth 14\n"},
        {"leg-and-apron base", "width 28\n  depth 20\n  height 28\n"},
        {"dovetailed box", "width 12\n  depth 8\n  height 5\n"},
        {"carcase", "width 28\n  height 36\n  depth 12\n"}};
    CHECK(shipped_recipes().size() == given.size());
    for (const auto& [unit, all] :
         {std::pair(std::string("mm"), given), std::pair(std::string("in"), inches)})
        for (const auto& [name, values] : all) {
            INFO(name << " in " << unit);
            const Result result =
                elaborate_text("piece \"t\"\nunits " + unit + "\nmake it from " + name + "\n  " + values);
            INFO(errors_in(result));
            CHECK(result.findings.empty());
            CHECK(result.piece.parts.size() >= 5);
        }
}

TEST_CASE("a shipped recipe works out its sizes") {
    const Piece piece =
        elaborate_text(
            "piece \"t\"\nunits mm\nmake door from frame-and-panel door\n  width 400\n  height 600\n")
            .piece;
    REQUIRE(piece.parts.size() == 5);
    CHECK(piece.parts[2].name == "door top rail");
    CHECK(piece.parts[2].length == Length::mm(280));
    CHECK(piece.parts[4].width == Length::mm(280));
    CHECK(piece.parts[4].length == Length::mm(600 - 60 - 75));
}
