// The grammar itself: no rule can run for ever, every written form's example is read, the page for makers is
// complete.

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

#include <tao/pegtl/contrib/analyze.hpp>

#include "grammar/forms.hpp"
#include "syntax/entries.hpp"
#include "texts.hpp"

using namespace rayfleck;

namespace {

template <typename... Rules> std::size_t problems(syntax::EntryList<Rules...>) {
    return (std::size_t(0) + ... + tao::pegtl::analyze<typename Rules::rule>(1));
}

/// The example with `;` as line ends; `margin` before each line, two blanks more where `>` stands.
std::string lines(std::string_view example, const std::string& margin) {
    std::string out = margin;
    for (std::size_t i = 0; i < example.size(); ++i) {
        // In an outline's step `;` parts points, and a blank follows it.
        const bool ends = example[i] == ';' && i + 1 < example.size() && example[i + 1] == '>';
        if (!ends) {
            out += example[i];
            continue;
        }
        out += "\n" + margin + "  ";
        i += 2; // the `>` and its blank
    }
    return out + "\n";
}

} // namespace

TEST_CASE("no rule of the grammar is left-recursive or loops without reading") {
    CHECK(problems(syntax::Entries{}) == 0);
}

TEST_CASE("the example of every phrase is read as that phrase") {
    for (const grammar::WrittenForm& form : grammar::phrase_forms) {
        const Parsed parsed = parse_text("a.fleck", "part p\n" + lines(form.example, "  "));
        INFO(form.word << "\n" << parsed.errors);
        CHECK(parsed.errors.empty());
        CHECK(form.example.substr(0, form.word.size()) == form.word);
        CHECK(form.form.substr(0, form.word.size()) == form.word);
        REQUIRE(parsed.tree.statements.size() == 1);
        CHECK(std::get<syntax::PartIs>(parsed.tree.statements[0].says).phrases.size() == 1);
    }
}

TEST_CASE("the example of every statement is read as that statement") {
    for (const grammar::WrittenForm& form : grammar::statement_forms) {
        const Parsed parsed = parse_text("a.fleck", lines(form.example, ""));
        INFO(form.word << "\n" << parsed.errors);
        CHECK(parsed.errors.empty());
        CHECK(form.example.substr(0, form.word.size()) == form.word);
        CHECK(parsed.tree.statements.size() == 1);
    }
}

TEST_CASE("the grammar's page shows the form and the example of every phrase and statement") {
    std::ifstream in(std::string(RAYFLECK_ROOT) + "/grammar/README.md");
    std::stringstream page;
    page << in.rdbuf();
    const std::string text = page.str();
    const auto check = [&](const grammar::WrittenForm& form, const std::string& margin) {
        INFO(form.form);
        CHECK(text.find("`" + std::string(form.form) + "`") != std::string::npos);
        const std::string example = lines(form.example, margin);
        INFO(example);
        CHECK(text.find(example) != std::string::npos);
    };
    for (const grammar::WrittenForm& form : grammar::phrase_forms) check(form, "");
    for (const grammar::WrittenForm& form : grammar::statement_forms) check(form, "");
}

TEST_CASE("a name cut short by a word it cannot hold is told how it is written") {
    for (const std::string word :
         {"across", "after", "all", "and", "because", "before", "between", "by", "every", "from", "in", "of",
          "on", "or", "to", "up", "with", "x", "like"}) {
        const Parsed inside = parse_text("a.fleck", "recipe rail " + word + " end\n  takes a\n");
        INFO(word << "\n" << inside.errors);
        CHECK(inside.count == 1);
        CHECK(inside.errors.find("a name that holds '" + word + "' stands in double quotes") !=
              std::string::npos);
        CHECK(parse_text("a.fleck", "value " + word + " = 3\n").errors.find("choose another word") !=
              std::string::npos);
        CHECK(parse_text("a.fleck", "part \"rail " + word + " end\"\n").errors.empty());
    }
    for (const std::string word : {"deep", "long", "thick", "wide"}) {
        INFO(word);
        CHECK(parse_text("a.fleck", "part rail " + word + " end\n").errors.empty());
        CHECK(parse_text("a.fleck", "part " + word + " end\n").errors.empty());
        CHECK(
            parse_text("a.fleck", "part end " + word + "\n").errors.find("cannot end with '" + word + "'") !=
            std::string::npos);
        CHECK(parse_text("a.fleck", "part p\n  between rail " + word + " end\n").errors.empty());
        CHECK(parse_text("a.fleck", "part p\n  left at right of rail " + word + " end\n").errors.empty());
    }
    // A joint goes on with `deep` as an option of its own.
    CHECK(parse_text("a.fleck", "join top long rail to deep wide leg with dado, 12 deep\n").errors.empty());
}
