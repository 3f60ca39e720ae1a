// Every example of the manual says what the program says.

#include <catch2/catch.hpp>

#include "pages.hpp"
#include "workbench.hpp"

namespace rayfleck::docs {
namespace {

std::string skeleton() {
    std::string found;
    for (const Block& block : all_blocks())
        if (block.skeleton) found += block.text;
    REQUIRE_FALSE(found.empty());
    return found;
}

bool says(const Compiled& compiled, const std::string& name) {
    for (const findings::Finding& finding : compiled.findings)
        if (finding.name == name) return true;
    return false;
}

} // namespace

TEST_CASE("every example of the manual compiles, and every wrong one is found wanting", "[docs]") {
    const std::string around = skeleton();
    int blocks = 0;
    for (const std::string& page : page_paths()) {
        std::map<std::string, std::string> files;
        std::string said; // of the example before
        std::string steps, steps_before_last;
        for (const Block& block : blocks_of(page)) {
            INFO(block.page << ":" << block.line);
            if (block.kind == "text" && block.shown) {
                std::string wanted = block.text;
                while (!wanted.empty() && wanted.back() == '\n') wanted.pop_back();
                INFO("shown:\n" << said);
                CHECK(said.find(wanted) != std::string::npos);
            }
            if (block.kind != "fleck") continue;
            ++blocks;
            if (block.step) {
                steps_before_last = steps;
                steps += block.text;
            }
            std::string text = block.step      ? steps
                               : block.instead ? steps_before_last + block.text
                                               : block.text;
            std::string name = block.file.value_or("example.fleck");
            const bool whole = text.rfind("piece ", 0) == 0 || text.find("\npiece ") != std::string::npos;
            if (block.file && !whole) {
                // A shop file or a file of recipes: tried by bringing it into the skeleton.
                files[*block.file] = text;
                const bool shop = text.find("shop file ") != std::string::npos;
                text = (shop ? "shop \"" : "bring in \"") + *block.file + "\"\n";
                name = "example.fleck";
            }
            if (!whole && !block.skeleton) text = in_skeleton(text, around);
            const Compiled compiled = compile(name, text, files);
            said = compiled.shown;
            INFO(text << "\n" << compiled.shown);
            if (block.wrong) {
                CHECK_FALSE(compiled.findings.empty());
                if (!block.expected.empty()) CHECK(says(compiled, block.expected));
                continue;
            }
            CHECK(compiled.compiles);
            // A part stands in no finished piece, so only a whole one is asked to be sound.
            if (whole && !block.step && !block.skeleton)
                CHECK_FALSE(compiled.findings.any(findings::Severity::fault));
            // What is called an example of a part must be one, and not a piece.
            CHECK((whole || block.part || block.skeleton || block.file));
        }
    }
    CHECK(blocks > 0);
}

} // namespace rayfleck::docs
