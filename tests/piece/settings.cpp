// What holds for the whole piece: title, units, climate, table of sizes, requirements, shop file.

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using namespace rayfleck::piece;
using rayfleck::measure::Length;

TEST_CASE("units tell how lengths are printed") {
    CHECK(elaborate_text("piece \"t\"\nunits in, to 1/64\n").piece.manner.finest == 64);
    CHECK(elaborate_text("piece \"t\"\nunits mm to 0.5\n").piece.manner.decimals == 1);
    CHECK(outcome("piece \"t\"\nunits in, to 1/5\n").find("[out-of-range]") != std::string::npos);
}

TEST_CASE("a climate is stated or named") {
    const Piece stated = elaborate_text("piece \"t\"\nclimate 6% to 10% moisture\n").piece;
    CHECK(stated.climate_stated);
    CHECK(stated.climate.driest.in_percent() == Approx(6));
    CHECK(stated.climate.dampest.in_percent() == Approx(10));
    CHECK_FALSE(elaborate_text("piece \"t\"\n").piece.climate_stated);
    CHECK(outcome("piece \"t\"\nclimate 35% to 160% humidity at 20 C\n")
              .find("humidity lies between 0% and 100%") != std::string::npos);
    CHECK(elaborate_text("piece \"t\"\nmade at 7% moisture\n").piece.made_at.in_percent() == Approx(7));
}

TEST_CASE("a table of sizes makes variants of one piece") {
    const std::string text =
        "piece \"t\"\nunits mm\nsizes\n  name width tall\n  small 400 (300 + 20)\n  large 600 500\n"
        "rod across  left 0, right width\nrod up  floor 0, high tall\n";
    CHECK(outcome(text) == "piece \"t\"\nsize small\nrod across left 0 right 400\nrod up floor 0 high 320\n");
    CHECK(outcome(text, {}, "large") ==
          "piece \"t\"\nsize large\nrod across left 0 right 600\nrod up floor 0 high 500\n");
    CHECK(outcome(text, {}, "larg").find("did you mean `large`?") != std::string::npos);
}

TEST_CASE("a requirement that fails says the maker's words and both figures") {
    CHECK(outcome("piece \"t\"\nunits mm\nvalue leg-size = 38\nrod across  left 0, right 70\n"
                  "require right - left >= 2 * leg-size \"the aprons would not fit\"\n") ==
          "5: the aprons would not fit [requirement]\n  limit: 70 mm is not at least 76 mm\n");
    CHECK(outcome("piece \"t\"\nvalue a = 3\nrequire a > 2 and a < 3 \"too much\"\n") ==
          "3: too much [requirement]\n  limit: 3 is not less than 3\n");
    CHECK(outcome("piece \"t\"\nvalue a = 3\nrequire a > 5 or a = 3 \"never\"\n") == "piece \"t\"\n");
}

TEST_CASE("a shop file gives kerfs, allowances, boards and prices") {
    const std::map<std::string, std::string> shop{
        {"shop.fleck",
         "shop file \"Hollow Lane Workshop\"\nunits mm\nkerf table saw 3\nallow 4 for planing\n"
         "limit planer width 300\nsheet A2\nprojection third angle\ntitle creator \"I. Fennimore\"\n"
         "board B1, cherry, 4/4, 190 x 2400, flat sawn, 3 off\n"
         "price cherry 4/4, 12.50 per board foot, lengths 8ft and 10ft\n"}};
    const Result result = elaborate_text("piece \"t\"\nshop \"shop.fleck\"\n", shop);
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    const Shop& s = result.piece.shop;
    CHECK(s.owner == "Hollow Lane Workshop");
    CHECK(s.creator == "I. Fennimore");
    CHECK(s.sheet == "A2");
    CHECK_FALSE(s.first_angle);
    CHECK(s.allow_thickness == Length::mm(4));
    REQUIRE(s.kerfs.size() == 1);
    CHECK(s.kerfs[0].second == Length::mm(3));
    REQUIRE(s.boards.size() == 1);
    CHECK(s.boards[0].thickness == Length::in(1));
    CHECK(s.boards[0].count == 3);
    REQUIRE(s.prices.size() == 1);
    CHECK(s.prices[0].amount == Approx(12.5));
    CHECK(s.prices[0].lengths == std::vector<Length>{Length::in(96), Length::in(120)});
    CHECK(outcome("piece \"t\"\nkerf table saw 3\n").find("[out-of-place]") != std::string::npos);
}

TEST_CASE("a piece needs a title, once") {
    CHECK(outcome("units mm\n").find("[no-title]") != std::string::npos);
    CHECK(outcome("piece \"a\"\npiece \"b\"\n").find("[said-twice]") != std::string::npos);
}
