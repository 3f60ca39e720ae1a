// Texts that nobody writes on purpose: at the limits, beyond them, and mutated at random. Nothing crashes,
// nothing takes long, everything gets a finding at its place.

#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "texts.hpp"

using namespace rayfleck;

namespace {

std::string repeated(const std::string& piece, std::size_t times) {
    std::string out;
    out.reserve(piece.size() * times);
    for (std::size_t i = 0; i < times; ++i) out += piece;
    return out;
}

double seconds(const std::string& bytes) {
    const auto begin = std::chrono::steady_clock::now();
    const Parsed parsed = parse_text("a.fleck", bytes);
    CHECK(parsed.count <= 51);
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

/// All texts of the folder of tests that are right, in one.
std::string sample() {
    std::string out;
    for (const char* name : {"board", "place", "shape", "outlines", "numbers", "arithmetic", "copies", "rods",
                             "joints", "piece", "recipes", "shop"}) {
        std::ifstream in(std::string(RAYFLECK_ROOT) + "/tests/syntax/" + name + ".fleck", std::ios::binary);
        std::stringstream bytes;
        bytes << in.rdbuf();
        out += bytes.str();
    }
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

TEST_CASE("four megabytes of anything are read in no time") {
    constexpr std::size_t size = 4000000;
    for (const std::string& piece : {std::string("("),
                                     std::string("\""),
                                     std::string(","),
                                     std::string("a,\n"),
                                     std::string("\n"),
                                     std::string("a\n"),
                                     std::string("\0", 1),
                                     std::string("\xFF"),
                                     std::string("#"),
                                     std::string(" "),
                                     std::string("part a\n"),
                                     std::string("part a\n  wod b\n"),
                                     std::string("note \"x\"\n"),
                                     std::string("value a = (((((((\n"),
                                     std::string("part a\n  size 20 x 60\n"),
                                     std::string(" a\n  b\n"),
                                     std::string("\r"),
                                     std::string("9"),
                                     std::string("a"),
                                     std::string("rod up ,,,,,\n")}) {
        INFO(piece);
        CHECK(seconds(repeated(piece, size / piece.size())) < 20.0);
    }
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

TEST_CASE("two thousand random mutations of a text end in a tree, fast") {
    const std::string text = sample();
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
                                          "/0"};
    const auto begin = std::chrono::steady_clock::now();
    for (int round = 0; round < 2000; ++round) {
        std::string mutated = text;
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
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    CHECK(took.count() < 120.0);
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
