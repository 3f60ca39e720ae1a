// Texts that nobody writes on purpose: at the limits, beyond them, and mutated at random. Nothing crashes,
// nothing takes long, everything gets a finding at its place.

#include <catch2/catch.hpp>

#include <algorithm>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <utility>
#include <vector>

#include "texts.hpp"

using namespace rayfleck;

namespace {

std::string repeated(const std::string& piece, std::size_t times) {
    std::string out;
    out.reserve(piece.size() * times);
    for (std::size_t i = 0; i < times; ++i) out += piece;
    return out;
}

// Processor time, so that a busy machine fails no test. Sanitizers and builds without optimisation are
// slower.
#if defined(__SANITIZE_ADDRESS__)
constexpr double most_seconds = 40.0;
#elif !defined(__OPTIMIZE__)
constexpr double most_seconds = 20.0;
#else
constexpr double most_seconds = 2.0;
#endif

struct Timed {
    Parsed parsed;
    double seconds = 0;
};

Timed timed(const std::string& bytes) {
    const std::clock_t begin = std::clock();
    Timed out{parse_text("a.fleck", bytes), 0};
    out.seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    return out;
}

std::string read(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::stringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

/// The pieces that are shipped as samples, sound and faulty, in the order of their names.
std::vector<std::string> samples() {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(std::string(RAYFLECK_ROOT) + "/samples"))
        if (entry.path().extension() == ".fleck") paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> out;
    for (const auto& path : paths) out.push_back(read(path));
    return out;
}

/// All texts of the folder of tests that are right, in one.
std::string sample() {
    std::string out;
    for (const char* name : {"board", "place", "shape", "outlines", "numbers", "arithmetic", "copies",
                             "names", "rods", "joints", "piece", "recipes", "shop"})
        out += read(std::string(RAYFLECK_ROOT) + "/tests/syntax/" + name + ".fleck");
    return out;
}

} // namespace

TEST_CASE("parentheses nest as deep as the limit says and no deeper") {
    const auto nested = [](std::size_t depth) {
        return "value a = " + repeated("(", depth) + "1" + repeated(")", depth) + "\n";
    };
    CHECK(parse_text("a", nested(64)).errors.empty());
    const Parsed deep = parse_text("a", nested(65));
    CHECK(deep.errors.find("more than 64 parentheses within each other") != std::string::npos);
    CHECK(deep.count == 1);
    CHECK(parse_text("a", "value a = " + repeated("larger of ", 300) + "1\n").count == 1);
}

TEST_CASE("blocks nest as deep as the limit says") {
    std::string text;
    for (int depth = 0; depth < 9; ++depth)
        text += std::string(static_cast<std::size_t>(depth), ' ') + "recipe r\n";
    CHECK(parse_text("a", text).errors.find("more than 8 blocks") != std::string::npos);
}

TEST_CASE("a number takes fifteen digits and no more") {
    CHECK(parse_text("a", "value a = 123456789012345\n").errors.empty());
    CHECK(parse_text("a", "value a = 1234567890.12345\n").errors.empty());
    CHECK(parse_text("a", "value a = 1234567890123456\n").errors.find("16 digits") != std::string::npos);
    CHECK(parse_text("a", "value a = 12345678/1234567\n").errors.empty());
}

TEST_CASE("a line and a file beyond the limit are named as such, once") {
    const std::string phrases = repeated("20 thick, ", 500);
    const Parsed line = parse_text("a", "part a, " + phrases + "stands\npart b\n");
    CHECK(line.count == 1);
    CHECK(line.errors.find("more than 4096") != std::string::npos);
    const Parsed file = parse_text("a", repeated("# a comment\n", 400000));
    CHECK(file.count == 1);
    CHECK(file.errors.find("more than 4194304") != std::string::npos);
}

TEST_CASE("the rest beyond fifty errors is counted") {
    const Parsed parsed = parse_text("a", repeated("bad line\n", 1000));
    CHECK(parsed.count == 51);
    CHECK(parsed.errors.find("and 950 more errors in this file") != std::string::npos);
}

TEST_CASE("a file of too many phrases is read up to there") {
    const Parsed parsed = parse_text("a", repeated("part a, loose, loose\n", 100000));
    CHECK(parsed.count == 1);
    CHECK(parsed.errors.find("66667:1: from here on nothing is read") == 0);
    CHECK(parsed.tree.statements.size() == 66666);
}

TEST_CASE("a file of nothing but errors is not read to its end") {
    const Parsed parsed = parse_text("a", repeated("bad line\n", 100000));
    CHECK(parsed.count == 51);
    CHECK(parsed.errors.find("so many more errors") != std::string::npos);
}

TEST_CASE("four megabytes of anything are read within a second") {
    constexpr std::size_t size = 4000000;
    for (const std::string& piece :
         {std::string("("),
          std::string(")"),
          std::string("\""),
          std::string(","),
          std::string("a,\n"),
          std::string("\n"),
          std::string("a\n"),
          std::string("\0", 1),
          std::string("\xFF"),
          std::string("#"),
          std::string(" "),
          std::string("\t"),
          std::string("\xC2\xBD"),
          std::string("part a\n"),
          std::string("part a\n  wod b\n"),
          std::string("note \"x\"\n"),
          std::string("value a = (((((((\n"),
          std::string("part a\n  size 20 x 60\n"),
          std::string(" a\n  b\n"),
          std::string("\r"),
          std::string("a\rb\r\n"),
          std::string("9"),
          std::string("a"),
          std::string("rod up ,,,,,\n"),
          "value a = " + repeated("(", 60) + "1" + repeated(")", 60) + "\n",
          "value a = " + repeated("(", 2000) + "\n",
          "value a = 1" + repeated(" + 1", 900) + "\n",
          "require " + repeated("(1 < ", 64) + "2" + repeated(")", 64) + " \"m\"\n",
          "part" + repeated(" ab", 1300) + "\n",
          "part a\n  over b" + repeated(" deep", 800) + "\n",
          "part a\n  centred on" + repeated(" ab", 1300) + " + 3\n"}) {
        const Timed read = timed(repeated(piece, size / piece.size()));
        INFO(piece.substr(0, 80));
        CHECK(read.seconds < most_seconds);
        CHECK(read.parsed.count <= 51);
    }
}

TEST_CASE("a block of four megabytes is read within a second, whatever stands above it") {
    for (const auto& [above, line] : std::initializer_list<std::pair<std::string, std::string>>{
             {"part\n", "  wood y\n"},
             {"frob r\n", "  part y\n    wood y\n"},
             {"prat r\n", "  wood y\n"},
             {"part r\n", "  part y\n    wod y\n"},
             {"units mm\n", "  part y\n"},
             {"part r\n  outline\n", "    line to 3, 4\n"},
             {"part r\n  turned\n", "    diameter 3 at 4\n"},
             {"sizes\n  name a b\n", "  y 1 2\n"},
             {"rod up\n", "  y 1 after z\n"},
             {"join a to b with dado\n", "  12 deep\n"},
             {"recipe r\n", "  part y\n    wood z\n"},
             {"make a from r\n", "  left at 3\n"},
             {"part r,\n", "# a comment,\n"}}) {
        const Timed read = timed(above + repeated(line, 4000000 / line.size()));
        INFO(above << line);
        CHECK(read.seconds < most_seconds);
        CHECK(read.parsed.count <= 51);
    }
}

TEST_CASE("four megabytes of ordinary text are read within a second") {
    std::string all;
    for (const std::string& text : samples()) all += text;
    REQUIRE(all.size() > 20000);
    const Timed read = timed(repeated(all, 4100000 / all.size()));
    CHECK(read.parsed.errors.empty());
    CHECK(read.seconds < most_seconds);
}

TEST_CASE("a hundred thousand lines are read within a second") {
    std::string text;
    for (int i = 0; i < 100000; ++i) text += "value a" + std::to_string(i) + " = " + std::to_string(i) + "\n";
    const Timed read = timed(text);
    CHECK(read.parsed.errors.empty());
    CHECK(read.parsed.tree.statements.size() == 100000);
    CHECK(read.seconds < most_seconds);
}

TEST_CASE("what no editor writes is named at its place, once") {
    struct Attack {
        std::string text, says;
    };
    std::string stairs;
    for (std::size_t i = 0; i < 2000; ++i) stairs += std::string(i, ' ') + "recipe a\n";
    const std::string quiet = "part leg\n  wood oak\n";
    for (const auto& [text, says] : std::initializer_list<Attack>{
             {std::string("part a\0b\n", 9), "1:7: a control character (byte 0) stands here"},
             {quiet + "# \xE9\n", "3:3: this byte (233) is not UTF-8"},
             {"\xFF\xFEp", "1:1: this file is not UTF-8 but UTF-16"},
             {"\xED\xA0\x80\n", "1:1: this byte (237) is not UTF-8"},
             {"part a\x1B[2J\n", "1:7: a control character (byte 27) stands here"},
             {std::string(4000000, '('), "1:1: this line is 4000000 bytes long, more than 4096"},
             {"value a = \"" + std::string(4000000, 'x'), "1:1: this line is 4000011 bytes long"},
             {std::string(4194305, '\n'), "1:1: this file is 4194305 bytes long, more than 4194304"},
             {"value a = " + std::string(65, '(') + "1\n", "1:76: more than 64 parentheses"},
             {"value a = 1" + std::string(20, '0') + "\n", "1:11: a number of 21 digits, more than 15"},
             {"value a = 1/0\n", "1:11: a fraction over 0"},
             {"part a\n  size 2 x 3,", "2:13: the line ends in a comma, but nothing goes on"},
             {"note \"open\n", "1:11: expected a closing '\"' on the same line after"}}) {
        const Timed read = timed(text);
        INFO(text.substr(0, 60));
        CHECK(read.parsed.errors.substr(0, says.size()) == says);
        CHECK(read.parsed.count == 1);
        CHECK(read.seconds < most_seconds);
    }
    for (const std::string text :
         {"", "\n", "\xEF\xBB\xBF", "\xEF\xBB\xBFpart leg\r\n  wood oak\r\n", "part leg\r  wood oak\r",
          "part leg\n\twood oak", "# only this", "   \n\t\n"})
        CHECK(parse_text("a", text).errors.empty());
}

TEST_CASE("line ends and a byte order mark change nothing") {
    const std::string text = sample();
    std::string dos = "\xEF\xBB\xBF";
    for (const char c : text) dos += c == '\n' ? std::string("\r\n") : std::string(1, c);
    CHECK(syntax::print(parse_text("a", text).tree) == syntax::print(parse_text("a", dos).tree));
    CHECK(parse_text("a", dos).errors.empty());
}

TEST_CASE("every start of a text ends in a tree") {
    const std::string text = sample();
    for (std::size_t end = 0; end < text.size(); end += 7) parse_text("a", text.substr(0, end));
    SUCCEED();
}

TEST_CASE("two thousand random mutations of the samples end in a tree, fast") {
    std::vector<std::string> texts = samples();
    REQUIRE(texts.size() > 10);
    texts.push_back(sample());
    std::mt19937 random(20260103); // fixed, so that a failure comes again
    const auto below = [&](std::size_t limit) { return static_cast<std::size_t>(random() % limit); };
    const std::vector<std::string> pieces{"(",
                                          ")",
                                          "\"",
                                          ",",
                                          "\n",
                                          "#",
                                          "-",
                                          "  ",
                                          "\t",
                                          "9999999999999999",
                                          "of",
                                          "x",
                                          std::string("\0", 1),
                                          "\xC3",
                                          "\xE2\x82\xAC",
                                          "and ",
                                          "from ",
                                          "½",
                                          "'",
                                          "/0",
                                          "thickness of ",
                                          " deep ",
                                          "part ",
                                          "\r"};
    const std::clock_t begin = std::clock();
    for (std::size_t round = 0; round < 2000; ++round) {
        std::string mutated = texts[round % texts.size()];
        const std::size_t changes = 1 + below(30);
        for (std::size_t k = 0; k < changes; ++k) {
            const std::size_t at = below(mutated.size());
            switch (below(4)) {
            case 0:
                mutated[at] = static_cast<char>(below(256));
                break;
            case 1:
                mutated.erase(at, 1 + below(12));
                break;
            case 2:
                mutated.insert(at, pieces[below(pieces.size())]);
                break;
            default:
                mutated.insert(at, mutated.substr(below(mutated.size()), below(40)));
                break;
            }
        }
        const Parsed parsed = parse_text("a", mutated);
        REQUIRE(parsed.count <= 51);
        REQUIRE(parsed.tree.broken == (parsed.count > 0));
        syntax::print(parsed.tree);
    }
    CHECK(static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC < 10 * most_seconds);
}

TEST_CASE("every span lies in the text and names what it stands for") {
    source::Texts texts;
    const std::string text =
        "part long apron, front and back\n  wood cherry, 20 thick # board\n  runs across\n";
    const int file = texts.add(source::Text("a", text));
    findings::Findings findings;
    const syntax::Tree tree = syntax::parse(texts, file, findings);
    REQUIRE(tree.statements.size() == 1);
    const auto said = [&](source::Span span) { return text.substr(span.begin, span.end - span.begin); };
    CHECK(said(tree.statements[0].header) == "part long apron, front and back");
    CHECK(said(tree.statements[0].span) == text.substr(0, text.size() - 1));
    const auto& part = std::get<syntax::PartIs>(tree.statements[0].says);
    CHECK(said(part.name.span) == "long apron");
    CHECK(said(part.copies[0].span) == "front and back");
    CHECK(said(part.phrases[0].span) == "wood cherry");
    CHECK(said(std::get<syntax::WoodIs>(part.phrases[0].says).wood.span) == "cherry");
    CHECK(said(part.phrases[1].span) == "20 thick");
    CHECK(said(part.phrases[2].span) == "runs across");
}
