// The grammar's page for makers: everything that stands in its blocks is read as what the block is called.
//
// The word behind the fence says what the lines are: statements, phrases of a part, lines of a rod, and so
// on. Lines of `wrong` are a text whose findings stand in the block `shown` behind it, word for word.

#include <catch2/catch.hpp>

#include <fstream>
#include <map>
#include <sstream>
#include <vector>

#include "findings/show.hpp"
#include "texts.hpp"

using namespace rayfleck;

namespace {

struct Block {
    std::string kind;
    int line = 0;
    std::string text;
};

struct Page {
    std::vector<Block> blocks;
    /// The code that ends each row of a table of arithmetic.
    std::vector<std::string> operands;
};

Page page() {
    Page out;
    std::ifstream in(std::string(RAYFLECK_ROOT) + "/grammar/README.md");
    std::string section;
    bool inside = false;
    int number = 0;
    for (std::string line; std::getline(in, line);) {
        ++number;
        if (line.starts_with("```")) {
            inside = !inside;
            if (inside) out.blocks.push_back({line.substr(3), number, ""});
        } else if (inside) {
            out.blocks.back().text += line + "\n";
        } else if (line.starts_with("## ")) {
            section = line;
        } else if (section == "## Arithmetic" && line.starts_with("|") && line.ends_with("` |")) {
            const std::size_t end = line.size() - 3, begin = line.rfind('`', end - 1) + 1;
            out.operands.push_back(line.substr(begin, end - begin));
        }
    }
    return out;
}

std::vector<std::string> lines(const std::string& text) {
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) out.push_back(line);
    return out;
}

/// What stands between three blanks, line by line.
std::vector<std::string> columns(const std::string& text) {
    std::vector<std::string> out;
    for (const std::string& line : lines(text))
        for (std::size_t begin = 0, end; begin < line.size(); begin = end + 3) {
            end = std::min(line.find("   ", begin), line.size());
            out.push_back(line.substr(begin, end - begin));
        }
    return out;
}

/// A block's line, with the deeper lines below it, each set two blanks deeper.
std::string deeper(const std::string& text) {
    std::string out;
    for (const std::string& line : lines(text)) out += "  " + line + "\n";
    return out;
}

int margin_lines(const std::string& text) {
    int count = 0;
    for (const std::string& line : lines(text)) count += !line.starts_with(" ");
    return count;
}

} // namespace

TEST_CASE("everything on the grammar's page is read as what it is said to be") {
    std::map<std::string, int> seen;
    for (const Block& block : page().blocks) {
        INFO("grammar/README.md:" << block.line << " " << block.kind);
        ++seen[block.kind];
        std::vector<std::string> texts;
        const auto each_line = [&](const std::string& before, const std::string& after) {
            for (const std::string& line : lines(block.text)) texts.push_back(before + line + after + "\n");
        };
        const auto each_column = [&](const std::string& before) {
            for (const std::string& column : columns(block.text)) texts.push_back(before + column + "\n");
        };
        if (block.kind == "statement" || block.kind == "wrong" || block.kind == "shown") {
            if (block.kind == "statement") {
                const Parsed parsed = parse_text("a.fleck", block.text);
                INFO(parsed.errors);
                CHECK(parsed.errors.empty());
                CHECK(static_cast<int>(parsed.tree.statements.size()) == margin_lines(block.text));
            }
            continue;
        }
        if (block.kind == "phrase")
            texts.push_back("part p\n" + deeper(block.text));
        else if (block.kind == "rod")
            each_line("rod up ", "");
        else if (block.kind == "copies")
            each_line("part p, ", "");
        else if (block.kind == "option")
            each_line("join a to b with dado, ", "");
        else if (block.kind == "recipe")
            texts.push_back("recipe r\n" + deeper(block.text));
        else if (block.kind == "make")
            texts.push_back("make a from b\n" + deeper(block.text));
        else if (block.kind == "number")
            each_column("value a = ");
        else if (block.kind == "edges")
            each_column("part p\n  chamfer 3 on ");
        else if (block.kind == "part")
            each_column("part p\n  over ");
        REQUIRE_FALSE(texts.empty());
        for (const std::string& text : texts) {
            const Parsed parsed = parse_text("a.fleck", text);
            INFO(text << parsed.errors);
            CHECK(parsed.errors.empty());
        }
    }
    CHECK(seen["phrase"] > 50);
    CHECK(seen["statement"] > 25);
}

TEST_CASE("every row of the page's arithmetic is read") {
    const Page whole = page();
    CHECK(whole.operands.size() > 7);
    for (const std::string& operand : whole.operands) {
        const Parsed parsed = parse_text("a.fleck", "require " + operand + " \"so\"\n");
        INFO(operand << "\n" << parsed.errors);
        CHECK(parsed.errors.empty());
    }
}

TEST_CASE("the messages on the grammar's page are those that are given") {
    const Page whole = page();
    const Block* wrong = nullptr;
    int compared = 0;
    for (const Block& block : whole.blocks) {
        if (block.kind == "wrong") wrong = &block;
        if (block.kind != "shown") continue;
        REQUIRE(wrong);
        source::Texts texts;
        const int file = texts.add(source::Text("table.fleck", wrong->text));
        findings::Findings findings;
        syntax::parse(texts, file, findings);
        CHECK(findings::show(findings, texts, {.colour = false, .brief = true}) == block.text);
        ++compared;
    }
    CHECK(compared == 1);
}
