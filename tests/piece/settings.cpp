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

TEST_CASE("a board on hand is told with all that is seen on it") {
    const Result r = elaborate_text(
        "piece \"Test\"\nshop \"shop.fleck\"\n",
        {{"shop.fleck", "shop file \"Hill\"\nunits mm\ncurrency \"EUR\"\nkeep offcuts 70 x 400\n"
                        "board B1, cherry, 4/4, 190 x 2400, rings at 80 degrees, heart face up,\n"
                        "  sapwood 25 on back edge, checks 80 at left end, knot 30 at 900 and 60,\n"
                        "  split from 2250 to 2500 and from 100 to 90\n"
                        "price cherry 4/4, quarter sawn, 14 per board feet, widths 9in to 5in\n"
                        "price birch plywood 1/4in, 38 per piece, sheets 1220 x 2440\n"
                        "price oak plywood 1.5mm, 20 per m2\n"}});
    INFO(errors_in(r));
    REQUIRE(r.findings.empty());
    const Shop& s = r.piece.shop;
    CHECK(s.currency == "EUR");
    CHECK(s.keep_width == Length::mm(70));
    CHECK(s.keep_length == Length::mm(400));
    REQUIRE(s.boards.size() == 1);
    const Shop::Board& b = s.boards[0];
    CHECK(b.sawn == "quarter");
    REQUIRE(b.bark);
    CHECK(*b.bark == rayfleck::syntax::Side::bottom);
    CHECK(b.sapwood_back == Length::mm(25));
    CHECK(b.sapwood_front == Length());
    CHECK(b.checks_left == Length::mm(80));
    REQUIRE(b.flaws.size() == 2);
    CHECK(b.flaws[0].round);
    CHECK(b.flaws[0].along == Length::mm(885));
    CHECK(b.flaws[0].across == Length::mm(45));
    CHECK(b.flaws[0].width == Length::mm(30));
    CHECK(b.flaws[1].kind == "split");
    CHECK(b.flaws[1].across == Length::mm(90));
    CHECK(b.flaws[1].width == Length::mm(10));
    REQUIRE(s.prices.size() == 3);
    CHECK(s.prices[0].sawn == "quarter");
    CHECK(s.prices[0].per == "board foot");
    REQUIRE(s.prices[0].widths);
    CHECK(s.prices[0].widths->first == Length::in(5));
    CHECK(*s.prices[1].thickness == Length::in(rayfleck::measure::Rational(1, 4)));
    CHECK(s.prices[1].sheet->second == Length::mm(2440));
    CHECK(*s.prices[2].thickness == Length::mm(rayfleck::measure::Rational(3, 2)));
}

TEST_CASE("what cannot be true of a board or a price is said at its place") {
    const auto errors = [](const std::string& line) {
        return errors_in(elaborate_text("piece \"Test\"\nshop \"s.fleck\"\n",
                                        {{"s.fleck", "shop file \"Hill\"\nunits mm\n" + line + "\n"}}));
    };
    const std::string board = "board B, cherry, 4/4, 190 x 2400, ";
    CHECK_THAT(errors(board + "knot 30 at 2500 and 60"), Catch::Contains("does not lie on the board"));
    CHECK_THAT(errors(board + "knot 0 at 200 and 60"), Catch::Contains("has no size"));
    CHECK_THAT(errors(board + "sapwood 200 on back edge"), Catch::Contains("wider than the board"));
    CHECK_THAT(errors(board + "sapwood 20 on left edge"), Catch::Contains("edges are front and back"));
    CHECK_THAT(errors(board + "checks 20 at back end"), Catch::Contains("ends are left and right"));
    CHECK_THAT(errors(board + "checks 2400 at left end"), Catch::Contains("as long as the board"));
    CHECK_THAT(errors(board + "bark face left"), Catch::Contains("bark-looks-elsewhere"));
    CHECK_THAT(errors(board + "rings at 100 degrees"), Catch::Contains("out-of-range"));
    CHECK_THAT(errors("price cherry 4/4, 12 per bundle"), Catch::Contains("unknown-price-unit"));
    CHECK_THAT(errors("price birch plywood 18, 12 per piece"), Catch::Contains("unknown-stock"));
    CHECK_THAT(errors("price birch plywood 1/0mm, 12 per piece"), Catch::Contains("unknown-stock"));
    CHECK_THAT(errors("price cherry 2x7, 12 per piece"), Catch::Contains("unknown-stock"));
    CHECK_THAT(errors("keep offcuts 0 x 400"), Catch::Contains("no-size"));
}

TEST_CASE("a shop file brings in the list of its boards, once") {
    const std::string piece = "piece \"Test\"\nshop \"s.fleck\"\n";
    const std::string rack = "shop file \"The rack\"\nunits in\nboard B, cherry, 4/4, 7 x 90\n";
    const Result once = elaborate_text(
        piece, {{"s.fleck", "shop file \"Hill\"\nbring in \"rack.fleck\"\n"}, {"rack.fleck", rack}});
    INFO(errors_in(once));
    REQUIRE(once.findings.empty());
    REQUIRE(once.piece.shop.boards.size() == 1);
    CHECK(once.piece.shop.boards[0].width == Length::in(7));
    CHECK(once.piece.shop.owner == "Hill");
    const Result twice = elaborate_text(
        piece, {{"s.fleck", "shop file \"Hill\"\nbring in \"rack.fleck\"\nbring in \"rack.fleck\"\n"},
                {"rack.fleck", rack}});
    CHECK_THAT(errors_in(twice), Catch::Contains("brought in twice"));
}

TEST_CASE("parts match in the order in which they are named and their copies stand") {
    const std::string parts =
        "piece \"Test\"\nunits mm\nrod across left 0, right 900\nrod deep front 0, back 300\n"
        "rod up floor 0, top 300\npart front, row of 3 across from left to right\n"
        "  wood cherry, size 18 x 100 x 200, runs across, front at front, bottom at floor\n"
        "part cap\n  wood cherry, size 18 x 60 x 200, runs across\n"
        "  left at left, front at front, bottom at floor + 100, sapwood allowed\n"
        "part foot\n  wood walnut, size 18 x 60 x 200, runs across\n"
        "  left at left, front at front, bottom at floor + 200\n";
    const Result r = elaborate_text(parts + "match cap and front, in sequence\n");
    INFO(errors_in(r));
    REQUIRE(r.findings.empty());
    REQUIRE(r.piece.matches.size() == 1);
    std::vector<std::string> names;
    for (const int id : r.piece.matches[0].parts)
        names.push_back(r.piece.parts[static_cast<std::size_t>(id)].name);
    CHECK(names == std::vector<std::string>{"cap", "front at 1", "front at 2", "front at 3"});
    CHECK(r.piece.parts[3].sapwood_allowed);
    CHECK_FALSE(r.piece.parts[0].sapwood_allowed);

    const auto errors = [&](const std::string& match) { return errors_in(elaborate_text(parts + match)); };
    CHECK_THAT(errors("match front, book-matched\n"), Catch::Contains("come in pairs"));
    CHECK_THAT(errors("match front and foot, in sequence\n"), Catch::Contains("different woods"));
    CHECK_THAT(errors("match front and front at 2, in sequence\n"), Catch::Contains("named twice"));
    CHECK_THAT(errors("match front, in sequence\nmatch front at 2 and cap, from one board\n"),
               Catch::Contains("matched twice"));
    CHECK_THAT(errors("match drawer, in sequence\n"), Catch::Contains("unknown-part"));
}

TEST_CASE("a shop file says nothing that nobody will ask for") {
    const auto errors = [](const std::string& statement) {
        const std::map<std::string, std::string> shop{
            {"s.fleck", "shop file \"Hill\"\nunits mm\n" + statement}};
        return errors_in(elaborate_text("piece \"t\"\nshop \"s.fleck\"\n", shop));
    };
    CHECK(errors("limit band saw height 250\n").empty());
    CHECK_THAT(errors("limit band saw 30\n"), Catch::Contains("unknown-limit"));
    CHECK(errors("price mdf 12mm, 30 per piece, sheets 1220 x 2440\n").empty());
    CHECK_THAT(errors("price mdf 12mm, 30 per piece, widths 100 to 200\n"),
               Catch::Contains("sheet-or-board"));
    CHECK(errors("price cherry 4/4, 12 per board foot, widths 100 to 200\n").empty());
    CHECK_THAT(errors("price cherry 4/4, 12 per board foot, sheets 1220 x 2440\n"),
               Catch::Contains("sheet-or-board"));
}

TEST_CASE("a piece needs a title, once") {
    CHECK(outcome("units mm\n").find("[no-title]") != std::string::npos);
    CHECK(outcome("piece \"a\"\npiece \"b\"\n").find("[said-twice]") != std::string::npos);
}
