// The samples together use the whole language: every phrase and statement that the tree knows, and every
// joint.
//
// A phrase that no sample needs is one that nobody has tried on a real piece.

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "findings/finding.hpp"
#include "source/text.hpp"
#include "syntax/parse.hpp"

using namespace rayfleck;

namespace {

struct Used {
    std::set<std::size_t> phrases, statements;
    std::set<std::string> joints, copies;
};

void take(const std::vector<syntax::Statement>& statements, Used& used) {
    for (const syntax::Statement& statement : statements) {
        used.statements.insert(statement.says.index());
        if (const auto* part = std::get_if<syntax::PartIs>(&statement.says)) {
            for (const syntax::Phrase& phrase : part->phrases) used.phrases.insert(phrase.says.index());
            for (const syntax::Copies& copies : part->copies)
                used.copies.insert(std::to_string(static_cast<int>(copies.kind)));
        }
        if (const auto* join = std::get_if<syntax::JoinIs>(&statement.says))
            used.joints.insert(join->kind.text);
        if (const auto* recipe = std::get_if<syntax::RecipeIs>(&statement.says)) take(recipe->body, used);
    }
}

Used used_by_the_samples() {
    Used used;
    std::vector<std::string> paths;
    const std::string root = RAYFLECK_ROOT;
    for (const std::string folder : {"/samples", "/samples/recipes", "/src/piece/recipes"})
        for (const auto& entry : std::filesystem::directory_iterator(root + folder))
            if (entry.path().extension() == ".fleck") paths.push_back(entry.path().string());
    source::Texts texts;
    findings::Findings findings;
    for (const std::string& path : paths) {
        std::ifstream file(path, std::ios::binary);
        const int number = texts.add({path, {std::istreambuf_iterator<char>(file), {}}});
        take(syntax::parse(texts, number, findings).statements, used);
    }
    CHECK(findings.empty());
    return used;
}

/// Places in the variant that stand for what could not be read.
constexpr std::size_t broken = 0;

} // namespace

TEST_CASE("the samples use every phrase and every statement") {
    const Used used = used_by_the_samples();
    for (std::size_t i = 0; i < std::variant_size_v<decltype(syntax::Phrase::says)>; ++i) {
        INFO("phrase number " << i << " of the variant in src/syntax/tree.hpp");
        CHECK(used.phrases.contains(i) == (i != broken));
    }
    for (std::size_t i = 0; i < std::variant_size_v<decltype(syntax::Statement::says)>; ++i) {
        INFO("statement number " << i << " of the variant in src/syntax/tree.hpp");
        CHECK(used.statements.contains(i) == (i != broken));
    }
    CHECK(used.copies.size() == 6);
}

TEST_CASE("the samples use every kind of joint") {
    const Used used = used_by_the_samples();
    for (const std::string kind : {"mortise and tenon",
                                   "bridle",
                                   "half lap",
                                   "cross lap",
                                   "dado",
                                   "rabbet",
                                   "groove",
                                   "tongue and groove",
                                   "breadboard end",
                                   "dowels",
                                   "screws",
                                   "slotted screws",
                                   "buttons",
                                   "glue",
                                   "miter",
                                   "dovetail",
                                   "half-blind dovetail",
                                   "sliding dovetail",
                                   "finger joint",
                                   "notch over"}) {
        INFO(kind);
        CHECK(used.joints.contains(kind));
    }
}
