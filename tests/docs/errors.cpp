// Every error of a text has its line in docs/language.md.

#include <filesystem>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "pages.hpp"

namespace rayfleck::docs {

TEST_CASE("every error of a text is in the reference", "[docs]") {
    std::set<std::string> names;
    const std::regex call("(?:error|report|refuse)\\([^\"()]*(?:\\{[^\"]*\\}, "
                          "*)?\"([a-z][a-z0-9]*(?:-[a-z0-9]+)+|circle|contradiction|arithmetic|alongside|"
                          "indentation|unlike)\"");
    for (const char* room : {"syntax", "piece", "joinery", "commands"})
        for (const auto& entry :
             std::filesystem::directory_iterator(std::string(RAYFLECK_ROOT) + "/src/" + room)) {
            if (entry.path().extension() != ".cpp") continue;
            const std::string text =
                read("src/" + std::string(room) + "/" + entry.path().filename().string());
            for (std::sregex_iterator i(text.begin(), text.end(), call), end; i != end; ++i)
                names.insert((*i)[1]);
        }
    CHECK(names.size() > 40);
    const std::set<std::string> page = first_cells("docs/language.md");
    for (const std::string& name : names) {
        INFO("`" << name << "` is missing from the errors of docs/language.md");
        CHECK(page.contains(name));
    }
}

} // namespace rayfleck::docs
