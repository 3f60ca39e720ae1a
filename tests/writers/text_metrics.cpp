// Widths of text against the programs that read the written PDF, and the rules of built fractions.

#include <catch2/catch.hpp>

#include <cmath>
#include <regex>

#include "demo.hpp"
#include "drawing/fonts/builtin_fonts.hpp"
#include "drawing/text_metrics.hpp"
#include "writers/pdf.hpp"

using namespace rayfleck::drawing;

namespace {

std::string said(const MeasuredText& text) {
    std::string out;
    for (const TextPiece& piece : text.pieces)
        out += piece.bars.empty() ? piece.runs[0].words : "[" + piece.says + "]";
    return out;
}
std::string lettered(const std::string& words) { return said(measure_text(words, 2.5, Typeface::lettering)); }

} // namespace

TEST_CASE("inch fractions are built in lettering, and only there") {
    CHECK(lettered("17-5/8") == "[17-5/8]");
    CHECK(lettered("1/2") == "[1/2]");
    CHECK(lettered("3'-6-1/2\"") == "[3'-6-1/2\"]");
    CHECK(lettered("(23-15/16)") == "[(23-15/16)]");
    CHECK(lettered("R 1/4 and 3/8.") == "R [1/4] and [3/8.]");
    CHECK(said(measure_text("17-5/8", 2.5, Typeface::sans)) == "17-5/8");
}

TEST_CASE("what is no fraction of an inch rule stays as typed") {
    for (const char* words : {"8/4 cherry", "1/3", "5/8/2024", "1.5/8", "3-1/2/4", "0/4", "1/0", "1/256",
                              "17-9/8", "17-", "/8", "1/4.5", "99999999999/99999999999"})
        CHECK(lettered(words) == words);
}

TEST_CASE("lettering falls back to sans for a whole string it cannot write") {
    CHECK(measure_text("Side table", 2.5, Typeface::lettering).face == Typeface::lettering);
    CHECK(measure_text("Łódź", 2.5, Typeface::lettering).face == Typeface::sans);
    CHECK(lettered("≤ 3-3/4") == "≤ [3-3/4]");
}

TEST_CASE("characters no font has become a box but keep what they say, and broken text never fails") {
    const MeasuredText text = measure_text("木", 2.5, Typeface::sans);
    REQUIRE(text.pieces.size() == 1);
    CHECK(text.pieces[0].runs[0].words == "□");
    CHECK(text.pieces[0].says == "木");
    CHECK(said(measure_text("a\xFFz\n\xE2\x82", 2.5, Typeface::sans)) == "a\uFFFDz \uFFFD\uFFFD");
    CHECK(measure_text("", 2.5, Typeface::sans).pieces.empty());
    CHECK(text_width("", 2.5, Typeface::sans) == 0);
}

TEST_CASE("cap heights are those of the fonts") {
    // DejaVu: H is 1493 of 2048 units high, Routed Gothic: 736 of 1024, read with fontTools.
    CHECK(font(Typeface::sans).cap_height() == Approx(1493.0 / 2048));
    CHECK(font(Typeface::lettering).cap_height() == Approx(736.0 / 1024));
    // Advance of H: 1386 of 2048 units, 712 of 1024, rounded down to thousandths.
    CHECK(text_width("H", 2.5, Typeface::sans) == Approx(0.676 * 2.5 * 2048 / 1493));
    CHECK(text_width("H", 2.5, Typeface::lettering) == Approx(0.695 * 2.5 * 1024 / 736));
}

TEST_CASE("the box of a text holds its fraction and turns about the anchor") {
    const auto level = text_box({{10, 20}, "17-5/8", 2.5, Typeface::lettering});
    CHECK(level[0].x == Approx(10));
    CHECK(level[1].x == Approx(10 + text_width("17-5/8", 2.5, Typeface::lettering)));
    // The bar is at half the cap height, figures of 0.62 above and below it with a gap of 0.12.
    CHECK(level[0].y == Approx(20 - 0.24 * 2.5).margin(0.1));
    CHECK(level[2].y == Approx(20 + 1.24 * 2.5).margin(0.1));
    const auto upright = text_box({{10, 20}, "17-5/8", 2.5, Typeface::lettering, Ink::black, 90});
    CHECK(upright[1].x == Approx(10 + 20 - level[0].y));
    CHECK(upright[1].y == Approx(20 + level[1].x - 10));
}

TEST_CASE("text widths agree with the boxes pdftotext finds to 0.1 mm") {
    if (!demo::has_program("pdftotext")) {
        WARN("skipped: pdftotext is not installed");
        return;
    }
    Set set;
    Sheet sheet;
    struct Case {
        const char* words;
        Typeface face;
    };
    const Case cases[] = {{"Handrail,reversed", Typeface::sans},
                          {"Čárkaÿ½≤", Typeface::sans},
                          {"WARNING:short-grain", Typeface::sans_bold},
                          {"ELEVATION", Typeface::lettering},
                          {"448.5", Typeface::lettering},
                          {"17-5/8", Typeface::lettering},
                          {"(1/2)", Typeface::lettering},
                          {"3'-11-13/16\"", Typeface::lettering},
                          {"Łuk≥3-1/32", Typeface::lettering}};
    double y = 190;
    for (const Case& c : cases) {
        sheet.items.push_back(Text{{30, y}, c.words, 5, c.face});
        y -= 20;
    }
    set.sheets.push_back(sheet);
    const auto file = demo::store("widths.pdf", rayfleck::writers::write_pdf(set));
    const auto answer = demo::ask("pdftotext -bbox '" + file + "' -", "widths");
    // <word xMin="85.039370" yMin="..." xMax="..." yMax="...">words</word>, in points
    const std::regex word(
        "<word xMin=\"([0-9.]+)\" yMin=\"[0-9.]+\" xMax=\"([0-9.]+)\" yMax=\"[0-9.]+\">([^<]*)<");
    std::size_t n = 0;
    for (std::sregex_iterator it(answer.words.begin(), answer.words.end(), word), end; it != end; ++it, ++n) {
        REQUIRE(n < std::size(cases));
        INFO(cases[n].words << " read as " << (*it)[3]);
        const double low = std::stod((*it)[1]) * 25.4 / 72, high = std::stod((*it)[2]) * 25.4 / 72;
        CHECK(low == Approx(30).margin(0.1));
        CHECK(high - low == Approx(text_width(cases[n].words, 5, cases[n].face)).margin(0.1));
    }
    CHECK(n == std::size(cases));
}

TEST_CASE("text widths agree with the places mutool gives the glyphs to 0.1 mm") {
    if (!demo::has_program("mutool")) {
        WARN("skipped: mutool is not installed");
        return;
    }
    for (const Typeface face : {Typeface::sans, Typeface::sans_bold, Typeface::lettering}) {
        const std::string words = "The quick brown fox 0123456789 jumps over Øäé";
        // A stop at the end shows where the pen stands after the words.
        const Set set = demo::with(Text{{30, 100}, words + ".", 3.5, face});
        const auto file = demo::store("glyphs" + std::to_string(static_cast<int>(face)) + ".pdf",
                                      rayfleck::writers::write_pdf(set));
        const auto answer =
            demo::ask("mutool trace '" + file + "'", "glyphs" + std::to_string(static_cast<int>(face)));
        const std::regex glyph("<g unicode=\"([^\"]*)\"[^>]* x=\"([0-9.]+)\"");
        double last = 0, first = -1;
        for (std::sregex_iterator it(answer.words.begin(), answer.words.end(), glyph), end; it != end; ++it) {
            if (first < 0) first = std::stod((*it)[2]);
            last = std::stod((*it)[2]);
        }
        CHECK((last - first) * 25.4 / 72 == Approx(text_width(words, 3.5, face)).margin(0.1));
    }
}
