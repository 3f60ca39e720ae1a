// SVG: well-formed, in millimetres, nothing slips through unescaped.

#include <catch2/catch.hpp>

#include <limits>

#include "demo.hpp"
#include "writers/svg.hpp"

using namespace rayfleck::drawing;
using rayfleck::writers::write_svg;

TEST_CASE("an SVG sheet is well-formed XML") {
    const auto file = demo::store("sheet.svg", write_svg(demo::set().sheets[0]));
    if (!demo::has_program("xmllint")) {
        WARN("skipped: xmllint is not installed");
        return;
    }
    const auto answer = demo::ask("xmllint --noout '" + file + "'", "xmllint");
    INFO(answer.words);
    CHECK(answer.status == 0);
}

TEST_CASE("an SVG sheet has the size of the paper and y upwards") {
    Sheet sheet;
    sheet.title = "a < b & \"c\"\x01";
    sheet.items.push_back(demo::line({10, 20}, {30.5, 20}, Pen::hidden, Ink::red));
    sheet.items.push_back(Text{{10, 30}, "x<y>&z", 2.5, Typeface::sans_bold, Ink::black, 90});
    const std::string svg = write_svg(sheet);
    INFO(svg);
    CHECK(svg.find("width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\"") != std::string::npos);
    CHECK(svg.find("<title>a &lt; b &amp; &quot;c&quot;</title>") != std::string::npos);
    CHECK(svg.find("d=\"M10 190L30.5 190\"") != std::string::npos);
    CHECK(svg.find("stroke-dasharray=\"3 0.75\"") != std::string::npos);
    CHECK(svg.find("translate(10 180) rotate(-90)") != std::string::npos);
    CHECK(svg.find(">x&lt;y&gt;&amp;z</text>") != std::string::npos);
}

TEST_CASE("text in SVG names the width the layout reckons with") {
    Sheet sheet;
    sheet.items.push_back(Text{{10, 30}, "ELEVATION", 3.5, Typeface::lettering});
    const double width = text_width("ELEVATION", 3.5, Typeface::lettering);
    const std::string svg = write_svg(sheet);
    const std::string name = "textLength=\"";
    CHECK(std::stod(svg.substr(svg.find(name) + name.size())) == Approx(width).margin(0.001));
}

TEST_CASE("a place that is no number is refused in SVG too") {
    Sheet sheet;
    sheet.items.push_back(demo::line({10, 20}, {std::numeric_limits<double>::quiet_NaN(), 20}, Pen::thin));
    CHECK_THROWS_AS(write_svg(sheet), std::invalid_argument);
}
