// The map of DEVELOPERS.md against the files: which room includes which, and whether every path named is
// there.
//
// A map that no test keeps true is soon believed by nobody, so the table itself is the rule: an arrow that is
// wanted has to be written there first.

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = RAYFLECK_ROOT;

std::vector<std::string> lines_of(const fs::path& path) {
    std::ifstream file(path);
    std::vector<std::string> lines;
    for (std::string line; std::getline(file, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> in_backticks(const std::string& text) {
    static const std::regex quoted("`([^`]+)`");
    std::vector<std::string> words;
    for (std::sregex_iterator it(text.begin(), text.end(), quoted), end; it != end; ++it)
        words.push_back((*it)[1]);
    return words;
}

std::vector<std::string> cells_of(const std::string& row) {
    // What stands before the first bar is empty, after the last there is nothing.
    std::vector<std::string> cells;
    std::istringstream stream(row);
    for (std::string cell; std::getline(stream, cell, '|');) cells.push_back(cell);
    return cells;
}

/// Room → rooms that it may see, from the table whose last column is `may see`.
std::map<std::string, std::set<std::string>> table_of_rooms() {
    std::map<std::string, std::set<std::string>> rooms;
    std::set<std::string> see_all;
    bool in_table = false;
    for (const std::string& line : lines_of(root / "DEVELOPERS.md")) {
        if (line.empty() || line.front() != '|') {
            in_table = false;
            continue;
        }
        if (line.find("may see") != std::string::npos) in_table = true;
        const std::vector<std::string> cells = cells_of(line);
        if (!in_table || cells.size() < 3) continue;
        const std::vector<std::string> name = in_backticks(cells[1]);
        if (name.empty()) continue;
        const std::string& seen = cells.back();
        const std::vector<std::string> allowed = in_backticks(seen);
        rooms[name.front()] = {allowed.begin(), allowed.end()};
        if (seen.find("every room") != std::string::npos) see_all.insert(name.front());
    }
    for (const std::string& room : see_all)
        for (const auto& [other, ignored] : rooms) rooms[room].insert(other);
    return rooms;
}

struct Include {
    fs::path file;
    std::string room;   ///< of the file
    std::string header; ///< as written, with its quotes or angles
};

std::vector<Include> includes_of_all_rooms() {
    static const std::regex include("^\\s*#\\s*include\\s*([\"<][^\">]+[\">])");
    std::vector<Include> found;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / "src")) {
        const std::string kind = entry.path().extension().string();
        if (kind != ".cpp" && kind != ".hpp") continue;
        const fs::path inside = fs::relative(entry.path(), root / "src");
        std::smatch match;
        for (const std::string& line : lines_of(entry.path()))
            if (std::regex_search(line, match, include))
                found.push_back({inside, inside.begin()->string(), match[1]});
    }
    return found;
}

} // namespace

TEST_CASE("every room of src stands in the table, and every room of the table in src") {
    std::set<std::string> listed, there;
    for (const auto& [room, ignored] : table_of_rooms()) listed.insert(room);
    for (const fs::directory_entry& entry : fs::directory_iterator(root / "src"))
        if (entry.is_directory()) there.insert(entry.path().filename().string());
    CHECK(listed == there);
}

TEST_CASE("the arrows of the table lead down only") {
    const auto rooms = table_of_rooms();
    for (const auto& [room, allowed] : rooms)
        for (const std::string& other : allowed) {
            INFO(room << " may see " << other);
            REQUIRE(rooms.count(other) == 1);
            CHECK((other == room || rooms.at(other).count(room) == 0));
        }
}

TEST_CASE("no room includes a room that it may not see") {
    const auto rooms = table_of_rooms();
    REQUIRE(rooms.size() >= 13);
    int arrows = 0;
    for (const Include& include : includes_of_all_rooms()) {
        if (include.header.front() != '"') continue;
        const std::string path = include.header.substr(1, include.header.size() - 2);
        const std::string other = path.substr(0, path.find('/'));
        INFO("src/" << include.file.string() << " includes " << include.header);
        if (other == "grammar") {
            CHECK(include.room == "syntax");
            continue;
        }
        REQUIRE(rooms.count(other) == 1);
        REQUIRE(rooms.count(include.room) == 1);
        CHECK((other == include.room || rooms.at(include.room).count(other) == 1));
        ++arrows;
    }
    CHECK(arrows > 100);
}

TEST_CASE("only commands knows files, folders and threads") {
    const std::set<std::string> kept{"<fstream>",  "<filesystem>", "<thread>",
                                     "<future>",   "<unistd.h>",   "<fcntl.h>",
                                     "<iostream>", "<sys/stat.h>", "<CLI/CLI.hpp>"};
    for (const Include& include : includes_of_all_rooms()) {
        if (include.room == "commands" || kept.count(include.header) == 0) continue;
        FAIL_CHECK("src/" << include.file.string() << " includes " << include.header);
    }
}

TEST_CASE("nothing but the benchmark reads a clock, and nothing at all a random number") {
    static const std::regex clock("clock::now|\\btime\\(|gettimeofday|random_device|\\brand\\(|mt19937");
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / "src")) {
        const std::string kind = entry.path().extension().string();
        if ((kind != ".cpp" && kind != ".hpp") || entry.path().filename() == "benchmark.cpp") continue;
        for (const std::string& line : lines_of(entry.path())) {
            INFO(entry.path().string() << ": " << line);
            CHECK(!std::regex_search(line, clock));
        }
    }
}

TEST_CASE("each package stays in one room") {
    const std::map<std::string, std::string> home{{"<tao/pegtl", "syntax"},  {"<hpdf", "writers"},
                                                  {"<nlohmann/", "writers"}, {"<polyclipping", "solid"},
                                                  {"<clipper", "solid"},     {"<CLI/", "commands"},
                                                  {"<Clp", "cutting"},       {"<Coin", "cutting"}};
    std::set<std::string> used;
    for (const Include& include : includes_of_all_rooms())
        for (const auto& [package, room] : home) {
            if (include.header.rfind(package, 0) != 0) continue;
            INFO("src/" << include.file.string() << " includes " << include.header);
            CHECK(include.room == room);
            used.insert(package);
        }
    // The test would be empty if a package were spelt otherwise.
    CHECK(used.count("<nlohmann/") == 1);
    CHECK(used.count("<CLI/") == 1);
}

TEST_CASE("nothing is named after what has no name") {
    for (const char* top : {"src", "grammar", "tests"})
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / top)) {
            const std::string name = entry.path().stem().string();
            INFO(entry.path().string());
            CHECK((name != "util" && name != "utils" && name != "common" && name != "helpers" &&
                   name != "manager" && name != "misc"));
        }
}

TEST_CASE("every path that DEVELOPERS.md names is there") {
    int paths = 0;
    for (const std::string& line : lines_of(root / "DEVELOPERS.md"))
        for (const std::string& word : in_backticks(line)) {
            // A path has a slash or a known ending; commands have blanks, patterns have <> or *.
            const bool pattern = word.find_first_of(" <>*|#") != std::string::npos;
            const bool path = word.find('/') != std::string::npos || word.find(".md") != std::string::npos;
            if (pattern || !path || word.rfind("build/", 0) == 0) continue;
            INFO(word);
            CHECK(fs::exists(root / word));
            ++paths;
        }
    CHECK(paths > 10);
}

TEST_CASE("the top level holds what was agreed and dot-files") {
    const std::set<std::string> agreed{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "src",
                                       "grammar",        "tests",     "samples",       "docs"};
    for (const std::string& name : agreed) CHECK(fs::exists(root / name));
    for (const fs::directory_entry& entry : fs::directory_iterator(root)) {
        const std::string name = entry.path().filename().string();
        // Made by building, never committed.
        if (name.front() == '.' || name.rfind("build", 0) == 0 || name == "out") continue;
        INFO(name);
        CHECK(agreed.count(name) == 1);
    }
}
