// What only a PDF can get wrong, asked of qpdf, poppler and mutool. A program that is not installed is said
// so.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <regex>

#include "demo.hpp"
#include "drawing/fonts/truetype.hpp"
#include "writers/pdf.hpp"
#include "writers/pdf_file.hpp"

using namespace rayfleck::drawing;
using rayfleck::writers::PdfFailure;
using rayfleck::writers::write_pdf;

namespace {

/// True, with a word, when a program is not there.
bool lacking(const std::string& program) {
    if (demo::has_program(program)) return false;
    WARN("skipped: " << program << " is not installed");
    return true;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::size_t count(const std::string& text, const std::string& part) {
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

} // namespace

TEST_CASE("the PDF is sound for qpdf") {
    if (lacking("qpdf")) return;
    for (const bool compressed : {true, false}) {
        const auto file = demo::store(compressed ? "sound.pdf" : "sound_plain.pdf",
                                      write_pdf(demo::set(), {compressed, {}}));
        const auto answer = demo::ask("qpdf --check '" + file + "'", compressed ? "qpdf" : "qpdf_plain");
        INFO(answer.words);
        CHECK(answer.status == 0);
        CHECK_FALSE(holds(answer.words, "WARNING"));
    }
}

TEST_CASE("same set, same bytes, and another set has another identifier") {
    const std::string once = write_pdf(demo::set()), twice = write_pdf(demo::set());
    CHECK(once == twice);
    Set other = demo::set();
    std::get<Text>(other.sheets[1].items.back()).words += "!";
    const auto identifier = [](const std::string& file) { return file.substr(file.rfind("/ID")); };
    CHECK(identifier(once) != identifier(write_pdf(other)));
    CHECK(holds(once, "/ID"));
    CHECK_FALSE(holds(once, "CreationDate"));
}

TEST_CASE("a given date is written in universal time") {
    // 1,700,000,000 s after 1970 is 2023-11-14 22:13:20 UTC.
    CHECK(holds(write_pdf(demo::set(), {false, 1700000000}), "(D:20231114221320+00'00')"));
}

TEST_CASE("pages have the size of their sheets") {
    if (lacking("pdfinfo")) return;
    const auto file = demo::store("size.pdf", write_pdf(demo::set()));
    const auto answer = demo::ask("pdfinfo -f 1 -l 2 '" + file + "'", "size");
    INFO(answer.words);
    // 297 mm are 841.890 pt, 210 mm are 595.276 pt.
    CHECK(std::regex_search(answer.words, std::regex("Page +1 size: +841\\.89 x 595\\.27")));
    CHECK(std::regex_search(answer.words, std::regex("Page +2 size: +595\\.27[0-9]* x 841\\.89")));
    CHECK(holds(answer.words, "Côté table Ø 60"));
}

TEST_CASE("every font is embedded in part and can be searched") {
    if (lacking("pdffonts")) return;
    const auto file = demo::store("fonts.pdf", write_pdf(demo::set()));
    const auto answer = demo::ask("pdffonts '" + file + "'", "fonts");
    INFO(answer.words);
    CHECK(count(answer.words, "yes yes yes") == 3);
    CHECK(holds(answer.words, "DejaVuSansCondensed"));
    CHECK(holds(answer.words, "DejaVuSansCondensed-Bold"));
    CHECK(holds(answer.words, "RoutedGothic"));
    CHECK_FALSE(holds(answer.words, "Error"));
}

TEST_CASE("the parts of a letter with two accents are embedded at every level") {
    // Ǖ is built of Ü and a macron, Ü of U and a diaeresis. libharu alone embeds Ü as an empty frame.
    const std::string plain =
        write_pdf(demo::with(Text{{20, 20}, "HǕ", 5, Typeface::lettering}), {false, {}});
    const std::size_t at = plain.find(std::string("\0\1\0\0", 4));
    REQUIRE(at != std::string::npos);
    const TrueType embedded(
        std::span(reinterpret_cast<const std::uint8_t*>(plain.data()) + at, plain.size() - at));
    CHECK(embedded.extent(U'U').highest > 0);
    CHECK(embedded.extent(U'\u00DC').highest > 0);
    CHECK(embedded.extent(U'B').highest == 0);
}

TEST_CASE("text comes out as written, with accents, signs and fractions") {
    if (lacking("pdftotext")) return;
    const auto file = demo::store("text.pdf", write_pdf(demo::set()));
    const auto answer = demo::ask("pdftotext -layout '" + file + "' -", "text");
    INFO(answer.words);
    for (const char* words :
         {"SIDE TABLE 3'-6-1/2\"", "Ø 60 × 12° ±1/64", "4× R 1/2, 8/4 stock, sheet 1/3", "(23-15/16)",
          "Łącznik ≤ 3-3/4", "Čárka, Nguyễn, Ёлка, άλφα, ½ ⅜ ⌀ ✓ ☐ → − ″ <&> 木"})
        CHECK(holds(answer.words, words));
    CHECK(count(answer.words, "17-5/8") == 4);
    CHECK_FALSE(holds(answer.words, "Syntax"));
}

TEST_CASE("dashes and widths are exact") {
    const std::string plain = write_pdf(demo::set(), {false, {}});
    // 12d 3d of 0.25 mm are 8.504 and 2.126 pt.
    CHECK(holds(plain, "[8.504 2.126] "));
    // 24d 3d 0.5d 3d of 0.25 mm.
    CHECK(holds(plain, "[17.008 2.126 0.354 2.126] "));
    CHECK(holds(plain, "1.417 w"));
    CHECK(holds(plain, "0.709 w"));
    if (lacking("mutool")) return;
    const auto file = demo::store("dashes.pdf", write_pdf(demo::set()));
    const auto answer = demo::ask("mutool trace '" + file + "'", "dashes");
    INFO(answer.words);
    // The hidden line of the demo runs 174 mm up from x = 110 to 210 mm, 0.25 mm wide. 100 mm less half a
    // dash on either side of the middle: it starts 0.25 mm (0.709 pt) into a dash.
    const std::regex hidden(
        "<stroke_path linewidth=\"\\.709\"[^>]* dash_phase=\"\\.709\" dash=\"8\\.504 2\\.126\"[^>]*>"
        "\\s*<moveto x=\"311\\.811\" y=\"493\\.228\"/>\\s*<lineto x=\"595\\.276\" y=\"493\\.228\"/>");
    CHECK(std::regex_search(answer.words, hidden));
}

TEST_CASE("strokes that look alike share a path") {
    Set set;
    Sheet sheet;
    for (int i = 0; i < 100; ++i)
        sheet.items.push_back(demo::line({10.0 + i, 10}, {10.0 + i, 50}, Pen::thin));
    set.sheets.push_back(sheet);
    const std::string plain = write_pdf(set, {false, {}});
    CHECK(count(plain, "\nS\n") == 1);
}

TEST_CASE("links, table of contents, page labels and the print setting are there") {
    const std::string plain = write_pdf(demo::set(), {false, {}});
    CHECK(count(plain, "/Subtype /Link") == 1);
    CHECK(holds(plain, "/PrintScaling /None"));
    CHECK(holds(plain, "/PageLabels"));
    // The number behind the words is that of all sheets.
    CHECK(holds(plain, "(sheet 1 of )"));
    CHECK(holds(plain, "(sheet 2 of )"));
    CHECK(count(plain, "/St 2") == 2);
    Set without = demo::set();
    without.sheets[1].full_size = false;
    CHECK_FALSE(holds(write_pdf(without, {false, {}}), "/PrintScaling"));
    if (lacking("mutool")) return;
    const auto file = demo::store("outline.pdf", write_pdf(demo::set()));
    const auto answer = demo::ask("mutool show '" + file + "' outline", "outline");
    INFO(answer.words);
    CHECK(holds(answer.words, "Général — elevation"));
    CHECK(holds(answer.words, "Template"));
}

TEST_CASE("places that are none are refused, never written") {
    const double bad[] = {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                          1e7};
    for (const double value : bad) {
        CHECK_THROWS_AS(write_pdf(demo::with(demo::line({10, 10}, {value, 20}, Pen::hidden))), PdfFailure);
        CHECK_THROWS_AS(write_pdf(demo::with(Fill{{{{value, 0}, {10, 0}, {10, 10}}}, Ink::pale})),
                        PdfFailure);
        CHECK_THROWS_AS(write_pdf(demo::with(Text{{10, value}, "x", 2.5, Typeface::sans})), PdfFailure);
        CHECK_THROWS_AS(write_pdf(demo::with(Text{{10, 10}, "x", value, Typeface::sans})), PdfFailure);
        CHECK_THROWS_AS(write_pdf(demo::with(Link{{0, 0}, {value, 10}, 0})), PdfFailure);
    }
}

TEST_CASE("a text turned by no number is refused") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(write_pdf(demo::with(Text{{10, 10}, "x", 2.5, Typeface::sans, Ink::red, none})),
                    PdfFailure);
}

TEST_CASE("a set without sheets, a sheet of no size and a link to no sheet are refused") {
    CHECK_THROWS_AS(write_pdf(Set{}), PdfFailure);
    Set tiny = demo::set();
    tiny.sheets[0].width = 1;
    CHECK_THROWS_AS(write_pdf(tiny), PdfFailure);
    CHECK_THROWS_AS(write_pdf(demo::with(Link{{0, 0}, {1, 1}, 1})), PdfFailure);
    CHECK_THROWS_AS(write_pdf(demo::with(Link{{0, 0}, {1, 1}, -1})), PdfFailure);
}

TEST_CASE("empty and degenerate items draw nothing and break nothing") {
    Set set = demo::with(Stroke{});
    auto& items = set.sheets[0].items;
    items.push_back(Fill{});
    items.push_back(Text{});
    items.push_back(Stroke{{{5, 5}}, Pen::hidden, Ink::black, Role::edge});
    items.push_back(demo::line({5, 5}, {5, 5}, Pen::hidden));
    const auto file = demo::store("empty.pdf", write_pdf(set));
    if (lacking("qpdf")) return;
    CHECK(demo::ask("qpdf --check '" + file + "'", "empty").status == 0);
}
