// docs/words.md names every word of the language and of the program, with where it comes from.

#include <filesystem>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "checks/checks.hpp"
#include "joinery/kinds.hpp"
#include "pages.hpp"

namespace rayfleck::docs {
namespace {

std::set<std::string> found_in(const std::string& path, const std::string& pattern) {
    std::set<std::string> words;
    const std::string text = read(path);
    const std::regex look(pattern);
    for (std::sregex_iterator i(text.begin(), text.end(), look), end; i != end; ++i) words.insert((*i)[1]);
    return words;
}

std::vector<std::string> files_of(const std::string& folder) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(RAYFLECK_ROOT) + "/" + folder))
        files.push_back(folder + "/" + entry.path().filename().string());
    return files;
}

void are_named(const std::set<std::string>& words, const std::string& where) {
    const std::set<std::string> page = first_cells("docs/words.md");
    for (const std::string& word : words) {
        INFO("`" << word << "`, " << where << ", is missing from docs/words.md");
        CHECK(page.contains(word));
    }
}

} // namespace

TEST_CASE("every keyword of the grammar is in the list of words", "[docs]") {
    std::set<std::string> words;
    for (const std::string& file : files_of("grammar"))
        if (file.ends_with(".hpp"))
            for (const std::string& word : found_in(file, "TAO_PEGTL_STRING\\(\"([a-z][a-z-]*)\"\\)"))
                words.insert(word);
    CHECK(words.size() > 80);
    are_named(words, "a keyword of grammar/");
}

TEST_CASE("every word that begins a statement or a phrase is in the list of words", "[docs]") {
    const std::set<std::string> statements = found_in("src/syntax/statements.cpp", "\\{\"([a-z]+)\", build_");
    CHECK(statements.size() > 20);
    are_named(statements, "a statement");
    const std::set<std::string> phrases = found_in("src/syntax/phrases.cpp", "\\{\"([a-z]+)\", Entry::");
    CHECK(phrases.size() > 40);
    are_named(phrases, "a phrase");
}

TEST_CASE("every joint and each of its options is in the list of words", "[docs]") {
    std::set<std::string> kinds;
    for (const joinery::Kind& kind : joinery::all_kinds()) kinds.insert(std::string(kind.name));
    const std::set<std::string> options = found_in("src/piece/joins.cpp", "[a-z_]\\{\"([a-z-]+)\"[,}]");
    CHECK(options.size() > 20);
    are_named(kinds, "a joint");
    are_named(options, "an option of a joint");
}

TEST_CASE("every check is in the list of words", "[docs]") {
    std::set<std::string> words;
    for (const checks::Check& check : checks::all()) words.insert(std::string(check.name));
    are_named(words, "a check");
}

TEST_CASE("every command and option of the command line is in the list of words", "[docs]") {
    const std::string path = "src/commands/arguments.cpp";
    const std::set<std::string> commands = found_in(path, "add_subcommand\\(\"([a-z-]+)\"");
    CHECK(commands.size() > 3);
    are_named(commands, "a command");
    const std::set<std::string> options = found_in(path, "(--[a-z]+)[\",]");
    CHECK(options.size() > 5);
    are_named(options, "an option of the command line");
}

} // namespace rayfleck::docs
