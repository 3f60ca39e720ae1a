// The shipped recipes and what each takes stand in docs/language.md, and their names in docs/words.md.

#include <catch2/catch.hpp>

#include "pages.hpp"
#include "piece/recipes.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::docs {

TEST_CASE("every shipped recipe and what it takes is in the reference", "[docs]") {
    const std::string page = read("docs/language.md");
    const std::set<std::string> names = first_cells("docs/language.md"), words = first_cells("docs/words.md");
    for (const auto& [file, text] : piece::shipped_recipes()) {
        INFO(file);
        source::Texts texts;
        findings::Findings findings;
        const int number = texts.add(source::Text(file, text));
        const syntax::Tree tree = syntax::parse(texts, number, findings);
        for (const syntax::Statement& statement : tree.statements) {
            const auto* recipe = std::get_if<syntax::RecipeIs>(&statement.says);
            if (recipe == nullptr) continue;
            CHECK(names.contains(recipe->name.text));
            CHECK(words.contains(recipe->name.text));
            const std::size_t row = page.find("| `" + recipe->name.text + "` |");
            REQUIRE(row != std::string::npos);
            const std::string line = page.substr(row, page.find('\n', row) - row);
            for (const syntax::Statement& inner : recipe->body)
                if (const auto* takes = std::get_if<syntax::Takes>(&inner.says))
                    for (const syntax::ValueIs& value : takes->values) {
                        INFO("`" << value.name.text << "`");
                        CHECK(line.find("`" + value.name.text + "`") != std::string::npos);
                    }
        }
    }
}

} // namespace rayfleck::docs
