// Every statement and phrase of the language against its tree, every near miss against its message.
//
// Each text of this folder stands beside what is expected of it: the tree (`.tree`), the errors (`.errors`).
// Run with RAYFLECK_REWRITE=1 to write both anew, and read the difference before it is kept.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include "texts.hpp"

using namespace rayfleck;
namespace fs = std::filesystem;

namespace {

const fs::path folder = fs::path(RAYFLECK_ROOT) / "tests" / "syntax";

std::string read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::stringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

std::vector<fs::path> cases() {
    std::vector<fs::path> out;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".fleck") out.push_back(entry.path());
    std::sort(out.begin(), out.end());
    return out;
}

void compare(const fs::path& path, const std::string& found) {
    if (std::getenv("RAYFLECK_REWRITE")) {
        if (found.empty()) {
            fs::remove(path);
        } else {
            std::ofstream(path, std::ios::binary) << found;
        }
    }
    INFO(path.filename().string());
    CHECK((fs::exists(path) ? read(path) : std::string()) == found);
}

} // namespace

TEST_CASE("every case has the tree and the errors that stand beside it") {
    REQUIRE_FALSE(cases().empty());
    for (const fs::path& path : cases()) {
        const Parsed parsed = parse_text(path.filename().string(), read(path));
        fs::path tree = path, errors = path;
        tree += ".tree";
        errors += ".errors";
        const bool wrong = path.filename().string().starts_with("wrong-");
        // Of a wrong text only the errors matter, unless a tree was asked for by hand.
        if (!wrong || fs::exists(tree)) compare(tree, syntax::print(parsed.tree));
        compare(errors, parsed.errors);
        INFO(path.filename().string() << "\n" << parsed.errors);
        CHECK(wrong == !parsed.errors.empty());
    }
}

TEST_CASE("every case opens with what there is to see") {
    for (const fs::path& path : cases()) {
        INFO(path.filename().string());
        CHECK(read(path).find("# See: ") < 4);
    }
}

TEST_CASE("every expected of the grammar occurs in a case") {
    std::string all;
    for (const fs::path& path : cases()) {
        fs::path errors = path;
        errors += ".errors";
        if (fs::exists(errors)) all += read(errors);
    }
    const std::string table = read(fs::path(RAYFLECK_ROOT) / "grammar" / "expected.hpp");
    const std::regex entry("expected<([a-z_:]+)>\\{\"((?:[^\"\\\\]|\\\\.)*)\"");
    int count = 0;
    for (std::sregex_iterator it(table.begin(), table.end(), entry), end; it != end; ++it) {
        std::string what = (*it)[2];
        for (std::size_t at; (at = what.find('\\')) != std::string::npos;) what.erase(at, 1);
        what = what.substr(0, what.find(": ")); // choices stand at the end of the message
        INFO((*it)[1].str() << ": expected " << what);
        CHECK(all.find("expected " + what) != std::string::npos);
        ++count;
    }
    CHECK(count > 50);
}
