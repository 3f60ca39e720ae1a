// See pages.hpp.

#include "pages.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include <catch2/catch.hpp>

namespace rayfleck::docs {
namespace {

namespace fs = std::filesystem;

void read_fence(Block& block, const std::string& words) {
    std::istringstream in(words);
    std::string word;
    in >> block.kind;
    while (in >> word) {
        if (word == "part") {
            block.part = true;
        } else if (word == "wrong") {
            block.wrong = true;
        } else if (word == "skeleton") {
            block.skeleton = true;
        } else if (word == "step") {
            block.step = true;
        } else if (word == "instead") {
            block.instead = true;
        } else if (word == "shown") {
            block.shown = true;
        } else if (word == "file") {
            std::string name;
            in >> name;
            block.file = name;
        } else {
            block.expected = word;
        }
    }
}

} // namespace

std::string read(const std::string& path) {
    std::ifstream in(std::string(RAYFLECK_ROOT) + "/" + path, std::ios::binary);
    INFO(path);
    REQUIRE(in.good());
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

std::vector<std::string> page_paths() {
    std::vector<std::string> paths;
    for (const auto& entry : fs::directory_iterator(std::string(RAYFLECK_ROOT) + "/docs"))
        if (entry.path().extension() == ".md") paths.push_back("docs/" + entry.path().filename().string());
    std::sort(paths.begin(), paths.end());
    paths.insert(paths.begin(), "README.md");
    return paths;
}

std::vector<Block> blocks_of(const std::string& path) {
    std::vector<Block> blocks;
    std::istringstream in(read(path));
    std::string line;
    bool inside = false;
    for (int number = 1; std::getline(in, line); ++number) {
        if (line.rfind("```", 0) == 0) {
            if (!inside) {
                blocks.emplace_back();
                blocks.back().page = path;
                blocks.back().line = number + 1;
                read_fence(blocks.back(), line.substr(3));
            }
            inside = !inside;
        } else if (inside) {
            blocks.back().text += line + "\n";
        }
    }
    INFO(path);
    CHECK_FALSE(inside);
    return blocks;
}

std::vector<Block> all_blocks() {
    std::vector<Block> all;
    for (const std::string& path : page_paths())
        for (Block& block : blocks_of(path)) all.push_back(std::move(block));
    return all;
}

std::set<std::string> first_cells(const std::string& path) {
    std::set<std::string> words;
    const std::string page = read(path);
    const std::regex row("(^|\n)\\| ([^|\n]*)"), quoted("`([^`]+)`");
    for (std::sregex_iterator i(page.begin(), page.end(), row), end; i != end; ++i) {
        const std::string cell = (*i)[2];
        for (std::sregex_iterator j(cell.begin(), cell.end(), quoted); j != end; ++j) words.insert((*j)[1]);
    }
    return words;
}

void compare_or_rewrite(const std::string& path, const std::string& expected) {
    if (std::getenv("RAYFLECK_REWRITE") != nullptr) {
        std::ofstream(std::string(RAYFLECK_ROOT) + "/" + path, std::ios::binary) << expected;
        return;
    }
    const std::string found = read(path);
    if (found == expected) return;
    // The first line that differs tells more than two whole pages.
    std::istringstream a(found), b(expected);
    std::string have, want;
    int number = 0;
    do {
        ++number;
        have = want = "(end of the page)";
        std::getline(a, have);
        std::getline(b, want);
    } while (have == want && (a || b));
    FAIL(path << ":" << number << "\n  has:    " << have << "\n  wanted: " << want
              << "\nRAYFLECK_REWRITE=1 writes the page anew");
}

} // namespace rayfleck::docs
