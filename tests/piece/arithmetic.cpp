// Values and arithmetic: exact fractions, units side by side, circles, and what does not go together.
// Truth: hand calculation; 1 in = 25.4 mm exactly (international inch, 1959).

#include <catch2/catch.hpp>

#include "elaborated.hpp"

using rayfleck::measure::Length;
using rayfleck::measure::Rational;
using namespace rayfleck::piece;

namespace {

/// Where a line ends up whose place is the expression.
Length line_of(const std::string& expression, const std::string& more = "",
               const std::string& units = "units mm\n") {
    const Result result =
        elaborate_text("piece \"t\"\n" + units + more + "rod across\n  here " + expression + "\n");
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    return result.piece.rods[0].lines.at(0).at;
}

std::string fault_of_line(const std::string& expression, const std::string& more = "") {
    return errors_in(
        elaborate_text("piece \"t\"\nunits mm\n" + more + "rod across\n  here " + expression + "\n"));
}

} // namespace

TEST_CASE("lengths are exact in either system") {
    struct Row {
        const char* text;
        Rational mm;
    };
    // clang-format off
    const Row rows[] = {
        {"3/4in / 3", Rational(635, 100)},                 // 1/4 in
        {"1in / 3", Rational(254, 30)},
        {"19mm + 1/16in", Rational(19) + Rational(254, 160)},
        {"2-1/2\" * 2", Rational(127)},
        {"3'-6-1/2\"", Rational(42) * Rational(254, 10) + Rational(127, 10)},
        {"10 + 1cm", Rational(20)},
        {"2 * (3 + 4)", Rational(14)},
        {"10 - 2 * 3", Rational(4)},
        {"12 / 8 * 2", Rational(3)},
        {"larger of 1in and 25", Rational(254, 10)},
        {"smaller of 1in and 25", Rational(25)},
        {"middle between 10 and 1in", Rational(177, 10)},
        {"100mm / 25mm", Rational(4)},                     // a plain number, read in the file's unit
    };
    // clang-format on
    for (const Row& row : rows) {
        INFO(row.text);
        CHECK(line_of(row.text) == Length::mm(row.mm));
    }
}

TEST_CASE("bare numbers take the unit of their file") {
    CHECK(line_of("3", "", "units in\n") == Length::in(3));
    CHECK(line_of("3 + 1mm", "", "units in\n") == Length::in(3) + Length::mm(1));
    CHECK(line_of("2 * a", "value a = 4\n", "units in\n") == Length::in(8));
    // The same values brought in from a file in millimetres.
    const Result result = elaborate_text(
        "piece \"t\"\nunits in\nbring in \"more.fleck\"\nrod across\n  a a-size\n  b a-size + 1\n",
        {{"more.fleck", "units mm\nvalue a-size = 30\n"}});
    INFO(errors_in(result));
    REQUIRE(result.findings.empty());
    CHECK(result.piece.rods[0].lines[0].at == Length::mm(30));
    CHECK(result.piece.rods[0].lines[1].at == Length::mm(30) + Length::in(1));
}

TEST_CASE("order of declarations does not matter") {
    CHECK(line_of("a", "value a = b * 2\nvalue b = c + 1\nvalue c = 4\n") == Length::mm(10));
}

TEST_CASE("a circle of values is reported once, with the whole loop") {
    CHECK(fault_of_line("a", "value a = b + 1\nvalue b = 2 * c\nvalue c = a\n") ==
          "3: `a` hangs on itself: `a` → `b` → `c` → `a` [circle]\n"
          "  4: `b` is asked for from here on\n"
          "  5: `c` is asked for from here on\n"
          "  mend: give one of them a figure of its own\n");
}

TEST_CASE("what does not go together is refused in words") {
    CHECK(fault_of_line("10 degrees") == "4: this is an angle, where a length is wanted [not-a-length]\n");
    CHECK(fault_of_line("2in * 3in") == "4: a length times a length is an area [arithmetic]\n"
                                        "  mend: multiply by a plain number\n");
    CHECK(fault_of_line("10 / (4 - 4)") == "4: division by nought [arithmetic]\n");
    CHECK(fault_of_line("10 + 5 degrees + 1in").find("an angle and a length cannot be added") !=
          std::string::npos);
    CHECK(fault_of_line("larger of 1 and 2 degrees + 1mm").find("an angle and a length") !=
          std::string::npos);
}

TEST_CASE("numbers that cannot be kept exact are reported at their place") {
    std::string values = "value a0 = 1/3\n";
    for (int i = 1; i < 60; ++i)
        values += "value a" + std::to_string(i) + " = a" + std::to_string(i - 1) + " * 7 / 11\n";
    const std::string told = fault_of_line("a59", values);
    CHECK(told.find("too large or too finely divided") != std::string::npos);
    CHECK(told.find("[too-large]") == told.rfind("[too-large]"));
    CHECK(fault_of_line("2000m").find("more than a kilometre [too-large]") != std::string::npos);
}

TEST_CASE("long chains of values end in a clear error, not in a crash") {
    // Each asks for the next: b100 for b101, and so on.
    const auto chain = [](int last) {
        std::string values;
        for (int i = 100; i < last; ++i)
            values += "value b" + std::to_string(i) + " = b" + std::to_string(i + 1) + " + 0\n";
        return values + "value b" + std::to_string(last) + " = 1\n";
    };
    CHECK(fault_of_line("b100", chain(400)).find("[too-deep]") != std::string::npos);
    CHECK(line_of("b100", chain(180)) == Length::mm(1));
    std::string terms = "1";
    for (int i = 0; i < 900; ++i) terms += " + 1";
    CHECK(line_of(terms) == Length::mm(901));
}

TEST_CASE("a misspelt value gets the near name, what hangs on it stays quiet") {
    CHECK(fault_of_line("aprn-width + 1", "value apron-width = 100\nvalue twice = 2 * aprn-width\n") ==
          "4: there is no value and no line `aprn-width` [unknown-name]\n"
          "  mend: did you mean `apron-width`?\n"
          "6: there is no value and no line `aprn-width` [unknown-name]\n"
          "  mend: did you mean `apron-width`?\n");
}
