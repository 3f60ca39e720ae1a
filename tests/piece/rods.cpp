// Rods: lines in any order, lines that hang on lines, even lines, names that tell their rod.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;

TEST_CASE("lines may be written in any order and in every form") {
    CHECK(outcome("piece \"t\"\nunits mm\n"
                  "rod up  top 1000, floor 0, 3 lines shelf between floor and top\n"
                  "rod across  seam = middle between left and right, left 0, right 480, rail 30 after left, "
                  "stile 40 before right\n") ==
          "piece \"t\"\n"
          "rod across left 0 rail 30 seam 240 stile 440 right 480\n"
          "rod up floor 0 shelf-1 250 shelf-2 500 shelf-3 750 top 1000\n");
}

TEST_CASE("even lines stay exact") {
    CHECK(outcome("piece \"t\"\nrod up  low 0, high 100, 2 lines mid between low and high\n") ==
          "piece \"t\"\nrod up low 0 mid-1 100/3 mid-2 200/3 high 100\n");
}

TEST_CASE("a side alone is the line of that name, else the outermost line") {
    CHECK(outcome("piece \"t\"\nrod across  a 10, b 300\nrod deep  seam = (left + right) / 2\n") ==
          "piece \"t\"\nrod across a 10 b 300\nrod deep seam 155\n");
    CHECK(outcome("piece \"t\"\nrod across  left 10, far 0, near = left + 1\n") ==
          "piece \"t\"\nrod across far 0 left 10 near 11\n");
}

TEST_CASE("line names are unique over all rods") {
    CHECK(outcome("piece \"t\"\nrod across  seam 0\nrod up  seam 10\n") ==
          "3: there are two lines `seam` [name-twice]\n"
          "  2: the first, on the rod across\n"
          "  mend: a line's name tells its rod, so every line needs a name of its own\n");
}

TEST_CASE("a circle of lines is reported with the whole loop") {
    CHECK(outcome("piece \"t\"\nrod across  a 3 after b, b 3 after a\n") ==
          "2: line a hangs on itself: line a → line b → line a [circle]\n"
          "  2: line b is asked for from here on\n"
          "  mend: give one of them a figure of its own\n");
}

TEST_CASE("a position lies on one rod") {
    const std::string text =
        "piece \"t\"\nrod across  left 0, right 100\nrod deep  front 0, back 50\nrod up  floor 0, top 90\n"
        "part p\n  wood cherry\n  size 20 x 20, stands, left at left, front at front\n";
    CHECK(outcome(text + "  from floor to right\n")
              .find("`from` is on the rod up and `to` on the rod across [two-rods]") != std::string::npos);
    CHECK(outcome(text + "  from floor to top\n  top at back\n")
              .find("its top lies on the rod up, and the position on the rod deep [two-rods]") !=
          std::string::npos);
}
